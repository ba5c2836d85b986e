"""The shape that is cut out of a rectangle later, on the rectangle as it lies on its sheet."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.drawing.draft import Draft, Segment
from parametric.drawing.finished_outline import finished_outlines, through_cuts
from parametric.drawing.part_sheets.unfolded import unfolded
from parametric.drawing.plane import Point, edges
from parametric.drawing.shaped import flattened
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.model import Part
from parametric.trade.stock.sheet_plan import SawnPiece

_SAME = 1e-6


def draw_shape(draft: Draft, job: Subject, sawn: SawnPiece, view: View) -> list[Segment]:
    """The lines along which a piece is cut to its shape, its face up; none of a plain one."""
    drawn: list[Segment] = []
    mark, area = sawn.piece.mark, sawn.area
    part = next((p for p in job.assembly.parts if p.mark == mark and through_cuts(p)), None)
    if part is None or abs(float(part.blank.length) - sawn.piece.length) > _SAME:
        return drawn
    for ends in _walls(part):
        laid = [
            (area.x + sawn.piece.width - y, area.y + x) if sawn.turned else (area.x + x, area.y + y)
            for x, y in ends
        ]
        start, end = view.path(tuple(laid))
        draft.path("hidden", (start, end), view.name)
        drawn.append((start, end))
    return drawn


def _walls(part: Part) -> Iterator[tuple[Point, Point]]:
    """The sides of the finished face that are none of its rectangle's."""
    own, size = unfolded(part), (float(part.blank.length), float(part.blank.width))
    for outline in finished_outlines(part):
        ring = own.path("high face", flattened(outline), "face")
        for a, b in edges(ring):
            on_rim = any(
                abs(a[axis] - at) + abs(b[axis] - at) <= _SAME
                for axis in (0, 1)
                for at in (0.0, size[axis])
            )
            if not on_rim:
                yield a, b
