"""Cuts that stand over one another at an end of a part: tails, fingers, a row of dowel holes.

(5)--| ___
(4)--||___       their balloons stand beside the end, each level with its cut
(3)--| ___
(2)--||___
"""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.part_sheets.balloons import PITCH, RADIUS, place_beside
from parametric.drawing.part_sheets.cut_shapes import own_side, span_along
from parametric.drawing.part_sheets.strips import Strip, strip_call
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.trade.part_cuts import CutRow, PartCuts

_LEAST = 3
"""Two cuts over one another wear their balloons over the side, as all others do."""
_NEAR = 0.2
"""The part of its length that is an end of a part."""
_BESIDE = 9.0
"""From an end to the middle of the balloons there, mm."""
STACK_WIDE = _BESIDE + PITCH + RADIUS
"""How far balloons reach from an end where there are so many that they stand in two columns, mm."""


def stacked(own: PartCuts, part: Unfolded, ends: tuple[Side, ...]) -> dict[Side, list[CutRow]]:
    """The cuts in the face that stand over one another at each of its ends, which is not drawn itself.

    Args:
        own: the part's cuts.
        part: the part, opened out.
        ends: the ends that are drawn beside the face, where there is no room.
    """
    lots: dict[tuple[float, float], list[CutRow]] = {}
    for row in own.rows:
        span = span_along(row.cut, part)
        if span is not None and own_side(row.cut, part) == "face":
            lots.setdefault((round(span[0], 4), round(span[1], 4)), []).append(row)
    found: dict[Side, list[CutRow]] = {}
    for (low, high), rows in lots.items():
        side: Side = "left" if (low + high) / 2 < part.length / 2 else "right"
        off = high if side == "left" else part.length - low
        if len(rows) >= _LEAST and off <= _NEAR * part.length and side not in ends:
            found.setdefault(side, []).extend(rows)
    return found


def balloon_stack(
    draft: Draft, part: Unfolded, strip: Strip, end: Side, rows: Sequence[CutRow]
) -> tuple[int, ...]:
    """Their balloons beside the end; returns the numbers that were drawn.

    Args:
        draft: the sheet.
        part: the part.
        strip: its face, as it lies.
        end: at which end they stand.
        rows: the cuts.
    """
    x, _ = strip.at((-part.foot if end == "left" else part.length + part.head, 0.0))
    way = -1.0 if end == "left" else 1.0
    return place_beside(
        draft,
        [strip_call(row, part, strip) for row in rows],
        x + way * _BESIDE,
        tall=strip.top - strip.base,
        away=way * PITCH,
    )
