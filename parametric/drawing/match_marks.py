r"""The cabinetmaker's triangle of a matched set: whole on its blank, in slices on its panels.

up          across
/\          ___/\___
/__\        |  /  \  |
/____\       | / |  \ |
/______\      |/  |   \|
"""

from __future__ import annotations

from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point, edges
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.model import Group
from parametric.resolve.leaf import Leaf
from parametric.resolve.matched_fronts import Way
from parametric.trade.sheet_order import set_blanks
from parametric.trade.stock.blanks import places


def triangle(way: Way, length: float, width: float) -> tuple[Point, Point, Point]:
    """Its corners on a blank, along the grain and across it, mm; its point is to the fronts' top."""
    if way == "up":
        return ((0.0, 0.0), (0.0, width), (length, width / 2))
    return ((0.0, 0.0), (length, 0.0), (length / 2, width))


def draw_slices(draft: Draft, job: Subject, leaf: Leaf, group: Group, view: View) -> None:
    """What is seen of its set's triangle on each matched panel of a leaf, from the front."""
    parts = {part.mark: part for part in group.parts if part.matched is not None}
    if not parts:
        return
    panels = {field.name: field.panel for field in leaf.panels}
    kerf = float(job.resolved.shop.saw.kerf)
    for blank in set_blanks(job.resolved, job.assembly):
        mark = triangle(blank.of.way, blank.piece.length, blank.piece.width)
        for piece, x, y in places(blank.piece, kerf):
            if piece.mark not in parts:
                continue
            part = parts[piece.mark]
            panel = panels[part.name]
            # what stands in the frame's grooves is not seen
            hidden = (float(panel.end_engagement), float(panel.engagement_made))
            room = Box(*hidden, piece.length - hidden[0], piece.width - hidden[1])
            for a, b in edges(mark):
                kept = _within((a[0] - x, a[1] - y), (b[0] - x, b[1] - y), room)
                if kept is not None:
                    start, end = (part.placement.point((u, v, 0.0)) for u, v in kept)
                    ends = (view.at((at[0], at[2])) for at in (start, end))
                    draft.path("hatch", tuple(ends), view.name)


def _within(a: Point, b: Point, room: Box) -> tuple[Point, Point] | None:
    """The stretch of a line that lies in a box; None where none does.

    Source: Liang and Barsky, A new concept and method for line clipping, ACM Transactions on
    Graphics 3 (1984) 1-22 (from memory).
    """
    low, high = 0.0, 1.0
    across, up = b[0] - a[0], b[1] - a[1]
    for step, free in (
        (-across, a[0] - room.x0),
        (across, room.x1 - a[0]),
        (-up, a[1] - room.y0),
        (up, room.y1 - a[1]),
    ):
        if step == 0.0:
            if free < 0.0:
                return None
        elif step < 0.0:
            low = max(low, free / step)
        else:
            high = min(high, free / step)
    if high - low <= 0.0:
        return None

    def along(part: float) -> Point:
        return (a[0] + part * across, a[1] + part * up)

    return along(low), along(high)
