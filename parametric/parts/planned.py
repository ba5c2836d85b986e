"""Boards of a case that is no rectangle from above: cut to shape from a rectangle, edges planed to a bevel.

level board, on its upper face        a side, on its low end
     ______________                    _________________
    |              |                  |                .'   planed off, as long as the board
    |              |                  |_______________.'
    '.             |
 sawn  '.__________|
  off
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.cases.case import CaseBoard
from parametric.cases.plan_boards import turned_points
from parametric.cases.plan_shape import CasePlan, Point
from parametric.model import Cut, CutEdge, Face, Making, Placement, Shaped, Vector
from parametric.outlines import Outline, Vertex, area_of

SAWN = Making(by="saw", tool="track saw or bandsaw to the line, then trimmed flush")
BEVELLED = Making(by="saw", tool="blade tilted to the angle")
_SAME = 1e-6
_TINY = 1e-4
"""mm2: less than this is nothing."""


def planned_placement(board: CaseBoard, ways: tuple[Vector, Vector]) -> Placement:
    """Where a board's low corner stands; an upright board's thickness runs to the left of its frame.

    Args:
        board: the board.
        ways: which way its length and its width run where it is not turned.
    """
    across = float(board.thickness) if board.lies == "upright" else 0.0
    dx, dy, _ = turned_way((across, 0.0, 0.0), board.turn)
    return Placement(
        origin=(board.x + dx, board.y + dy, board.z),
        x=turned_way(ways[0], board.turn),
        y=turned_way(ways[1], board.turn),
    )


def turned_way(way: Vector, turn: float) -> Vector:
    """A direction turned about the upright, deg, round to the left as seen from above."""
    (x, y), *_ = turned_points([(way[0], way[1])], turn)
    return (x, y, way[2])


def planned_faces(plan: CasePlan, board: CaseBoard) -> dict[Face, str]:
    """The shop's words for a board's faces."""
    own = board.name.rsplit(" / ", 1)[-1]
    upright: dict[Face, str] = {"low end": "foot", "high end": "top"}
    if board.lies == "upright":
        inner, outer = ("inside", "outside") if own == "left side" else ("outside", "inside")
        edges: dict[Face, str] = {"low edge": "front edge", "high edge": "back edge"}
        return {**upright, **edges, "low face": inner, "high face": outer}
    if board.lies == "facing":
        edges = {"low edge": "left edge", "high edge": "right edge"}
        return {**upright, **edges, "low face": "inside", "high face": "outside"}
    faces: dict[Face, str] = {"high face": "upper face", "low face": "under face"}
    if plan.in_a_corner:
        return {**faces, "low edge": "low edge", "high edge": "edge at the left back"}
    return {**faces, "low edge": "front edge", "high edge": "back edge"}


def outline_cuts(board: CaseBoard) -> Iterator[Cut]:
    """What is taken off a rectangle to leave a board's outline, corner by corner."""
    if not board.outline:
        return
    level = board.lies == "level"
    wide = float(board.width)
    size = (float(board.length), wide) if level else (wide, float(board.thickness))
    for outline, sides in outside(board.outline, size):
        words = [board.sides[at].word for at in sides] if level else []
        yield Shaped(
            name=f"along the {' and the '.join(words)}" if level else _bevel(board, outline),
            face="high face" if level else "low end",
            outline=outline,
            depth=board.thickness if level else board.length,
            making=SAWN if level else BEVELLED,
        )


def _bevel(board: CaseBoard, outline: Outline) -> str:
    """What an upright board's bevel is there for: its front, or what its other edge stands against."""
    near = min(v.x for v in outline) < _SAME
    if board.lies == "upright":
        return "bevel to the front" if near else "bevel to the wall"
    own = board.name.rsplit(" / ", 1)[-1]
    if own == "left back":
        return "bevel to the left side" if near else "bevel to the right wall"
    return "bevel to the left back" if near else "bevel to the right side"


def banded_edges(board: CaseBoard) -> tuple[CutEdge, ...]:
    """The edges of a shaped board that wear a band."""
    return tuple(
        CutEdge(name=f"{side.word} edge", length=side.length) for side in board.sides if side.banded
    )


def outside(
    outline: Sequence[Point], size: tuple[float, float]
) -> Iterator[tuple[Outline, tuple[int, ...]]]:
    """What of a rectangle lies outside a shape that touches all its four sides, piece by piece.

    Each with the numbers of the shape's sides that it is cut along.

    Args:
        outline: the shape, round to the left.
        size: the rectangle's, from (0, 0), mm.
    """
    wide, high = size
    points = list(outline)
    count = len(points)
    on = [_sides(p, wide, high) for p in points]
    starts = [i for i in range(count) if on[i]]
    for i, start in enumerate(starts):
        end = starts[(i + 1) % len(starts)]
        chain, sides, at = [points[start]], [], start
        while at != end:
            sides.append(at)
            at = (at + 1) % count
            chain.append(points[at])
        if len(chain) == 2 and on[start] & on[end]:
            continue
        # from the chain's end back to its start, along the rectangle, to the right round
        corners = _corners_between(chain[-1], chain[0], wide, high)
        piece = tuple(Vertex(x, y) for x, y in (*chain, *corners))
        if abs(area_of(piece)) > _TINY:
            yield (piece if area_of(piece) > 0 else tuple(reversed(piece))), tuple(sides)


def _sides(point: Point, wide: float, high: float) -> frozenset[str]:
    """Which sides of the rectangle a point is on."""
    x, y = point
    found = {
        "low": abs(y) < _SAME,
        "right": abs(x - wide) < _SAME,
        "high": abs(y - high) < _SAME,
        "left": abs(x) < _SAME,
    }
    return frozenset(word for word, there in found.items() if there)


def _corners_between(begins: Point, ends: Point, wide: float, high: float) -> list[Point]:
    """The rectangle's corners from one point of its rim to another, round to the right."""
    corners = [(0.0, 0.0), (wide, 0.0), (wide, high), (0.0, high)]
    round_it = 2 * (wide + high)

    def along(point: Point) -> float:
        x, y = point
        if abs(y) < _SAME:
            return x
        if abs(x - wide) < _SAME:
            return wide + y
        if abs(y - high) < _SAME:
            return wide + high + (wide - x)
        return 2 * wide + high + (high - y)

    first, last = along(begins), along(ends)
    span = (first - last) % round_it
    found = []
    for corner in corners:
        back = (first - along(corner)) % round_it
        if _SAME < back < span - _SAME:
            found.append((back, corner))
    return [corner for _, corner in sorted(found)]
