"""Where the weight of a case lies that is no rectangle from above: behind the line of its front."""

from __future__ import annotations

import math
from collections.abc import Sequence

from parametric.cases.case import CaseBoard
from parametric.cases.plan_boards import turned_points
from parametric.cases.plan_shape import CasePlan, Point
from parametric.catalog.boards import Board
from parametric.figures import Figure


def middle_behind(plan: CasePlan, boards: Sequence[CaseBoard], of: Board) -> Figure:
    """How far behind the line from side to side the middle of all its boards lies, mm.

    Args:
        plan: the case from above.
        boards: of it, all of one board.
        of: that board.
    """
    (ax, ay), (bx, by) = plan.front_line
    long = math.hypot(bx - ax, by - ay)
    moment = weight = 0.0
    for board in boards:
        area, (x, y) = _middle(board)
        tall = board.thickness if board.lies == "level" else board.length
        own = area * float(tall) * float(of.density)
        behind = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / long
        moment, weight = moment + own * behind, weight + own
    return Figure(moment / weight, op="middle of all its boards by weight")


def _middle(board: CaseBoard) -> tuple[float, Point]:
    """A board's area from above, mm2, and where its middle stands in the case.

    Source: the centre of an area inside straight sides, by the sums over its corners.
    """
    size = (board.length, board.width) if board.lies == "level" else (board.width, board.thickness)
    wide, high = float(size[0]), float(size[1])
    points = board.outline or ((0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high))
    area = x = y = 0.0
    for (ax, ay), (bx, by) in zip(points, (*points[1:], points[0]), strict=True):
        cross = ax * by - bx * ay
        area, x, y = area + cross / 2, x + (ax + bx) * cross / 6, y + (ay + by) * cross / 6
    u, v = x / area, y / area
    if board.lies == "upright":
        u, v = float(board.thickness) - v, u
    (dx, dy), *_ = turned_points([(u, v)], board.turn)
    return area, (board.x + dx, board.y + dy)
