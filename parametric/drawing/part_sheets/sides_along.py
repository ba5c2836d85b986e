"""How the sides of a part lie along its sheet: one over the other, or the back beside the face."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.drawing.part_sheets.breaks import Lie, lie_along
from parametric.drawing.part_sheets.cross_sections import Chosen
from parametric.drawing.part_sheets.cut_shapes import span_along
from parametric.drawing.part_sheets.ends import APART, widest_number
from parametric.drawing.part_sheets.shaped_cuts import changing_stops
from parametric.drawing.part_sheets.stacks import STACK_WIDE
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.plane import Box
from parametric.drawing.subject import Subject
from parametric.model import Drilled, Groove, Pocket, Slot
from parametric.trade.part_cuts import CutRow, PartCuts, Size

EDGE = 6.0
"""Between the frame and what is drawn, mm."""
GAP = 6.0
ENDS: tuple[Side, ...] = ("left", "right")
_WORD = 15.0
"""Room for the name of a side before its left end, mm."""
_PAST = 4.0
"""Room past a right end that nothing stands beside, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class PartOnSheet:
    """A part on its sheet: what does not change from one scale to the next."""

    job: Subject
    own: PartCuts
    part: Unfolded
    all_cuts: tuple[PartCuts, ...]
    sides: tuple[Side, ...]
    ends: tuple[Side, ...]
    sizes: dict[Side, list[tuple[float, Size]]]
    sections: tuple[Chosen, ...]
    stacks: dict[Side, list[CutRow]]


def lies_of(
    plan: PartOnSheet, frame: Box, scale: float, *, abreast: bool
) -> dict[Side, Lie] | None:
    """How each side lies along the sheet: all in one column, or the back in a second one.

    Args:
        plan: the part.
        frame: of the paper, mm.
        scale: mm of the part to one of paper.
        abreast: whether the back lies beside the face.

    Returns:
        None where there is no room, or where two columns would have to be broken.
    """
    left, right = frame.x0 + EDGE, frame.x1 - EDGE
    beside = (_beside(plan, "left", scale), _beside(plan, "right", scale))
    first = _lie(plan, left + beside[0], right - beside[1], scale)
    if first is None:
        return None
    if not abreast:
        return dict.fromkeys(plan.sides, first)
    # ends and balloons stand beside the face alone
    second = _lie(plan, first.right + beside[1] + GAP + _WORD, right - _PAST, scale)
    if second is None or first.breaks or second.breaks:
        return None
    return {side: second if side == "back" else first for side in plan.sides}


def _beside(plan: PartOnSheet, side: Side, scale: float) -> float:
    """What stands beside one end of the sides: the view of the end, balloons, a name."""
    if side not in plan.ends:
        room = _WORD if side == "left" else _PAST
        return max(room, STACK_WIDE) if side in plan.stacks else room
    out = widest_number(plan.own, plan.part, side, plan.job.rules)
    wide = APART + plan.part.thickness / scale + max(out, 2.0)
    return max(wide, _WORD if side == "left" else 0.0)


def _lie(plan: PartOnSheet, x0: float, x1: float, scale: float) -> Lie | None:
    part = plan.part
    spans = [span for cut in part.part.cuts if (span := span_along(cut, part)) is not None]
    milled = [
        span
        for cut in part.part.cuts
        if isinstance(cut, (Slot, Groove, Pocket, Drilled))
        and (span := span_along(cut, part)) is not None
    ]
    return lie_along(
        (-part.foot, part.length + part.head),
        [*(at for span in spans for at in span), *changing_stops(part)],
        milled,
        scale=scale,
        left=x0,
        room=x1 - x0,
    )
