"""Every kind of hinge as one: which Spec reads it, how it is sized, what it cuts, what wood it takes."""

from __future__ import annotations

from typing import Literal, assert_never

from parametric.figures import Figure, named
from parametric.hardware.butt_hinge import (
    ButtHinges,
    ButtHingeSpec,
    butt_pin_out,
    butt_wood,
    hinge_mortises,
    size_butt_hinges,
)
from parametric.hardware.cup_hinge import (
    CupHinges,
    CupHingeSpec,
    cup_bores,
    cup_wood,
    size_cup_hinges,
)
from parametric.hardware.hinge import HingeBlock, HungEdge
from parametric.hardware.pivot import Pivots, PivotSpec, pin_bores, pivot_wood, size_pivots
from parametric.hardware.wood_taken import OnFace, Taken
from parametric.model import Cut

HingeSpec = ButtHingeSpec | CupHingeSpec | PivotSpec
"""Hinges of any kind as written."""
AnyHinges = ButtHinges | CupHinges | Pivots
"""Hinges of any kind, resolved."""
HINGE_KINDS: dict[str, type[HingeBlock]] = {
    "butt": ButtHingeSpec,
    "cup": CupHingeSpec,
    "pivot": PivotSpec,
}
"""The word after `kind:` in a hinge, and the Spec it is read by."""


def pin_out_of(spec: HingeSpec, thickness: Figure) -> Figure:
    """The pin's middle proud of the knuckle face, mm, before anything else is known of the leaf."""
    match spec:
        case ButtHingeSpec():
            return butt_pin_out(spec)
        case CupHingeSpec():
            return Figure(0.0)
        case PivotSpec():
            return -(thickness / 2 if spec.from_face is None else spec.from_face)
        case _:
            assert_never(spec)


def pin_beside_of(spec: HingeSpec) -> Figure | None:
    """The pin's middle beyond the hinge edge, mm; None for hinges that have it in the gap's middle."""
    match spec:
        case ButtHingeSpec():
            return None
        case CupHingeSpec():
            return named("pin beyond the edge", 0.0)
        case PivotSpec():
            return named("pin beyond the edge", -spec.from_edge)
        case _:
            assert_never(spec)


def least_gap_of(spec: HingeSpec) -> Figure | None:
    """What a hinge's data sheet asks for beside the leaf's hinge edge, mm; None where it says none."""
    if not isinstance(spec, CupHingeSpec) or spec.least_gap is None:
        return None
    return named("least gap beside the hinges", spec.least_gap)


def size_hinges(spec: HingeSpec, edge: HungEdge) -> AnyHinges:
    """The hinges of one edge of a leaf."""
    match spec:
        case ButtHingeSpec():
            return size_butt_hinges(spec, edge)
        case CupHingeSpec():
            return size_cup_hinges(spec, edge)
        case PivotSpec():
            return size_pivots(spec, edge)
        case _:
            assert_never(spec)


def hinge_cuts(
    hinges: AnyHinges,
    *,
    knuckles: Literal["low face", "high face"],
    back: Literal["low face", "high face"],
    thickness: float,
    shift: float,
) -> tuple[Cut, ...]:
    """What hinges cut in the stile that carries the leaf, from the foot up.

    Args:
        hinges: the leaf's hinges.
        knuckles: the face of the stile's own frame that knuckles stand on: it opens towards it.
        back: the face of the stile's own frame that is the leaf's back.
        thickness: of the stile, mm.
        shift: the trim at the foot, and at the top, mm.
    """
    match hinges:
        case ButtHinges():
            return hinge_mortises(hinges, knuckles=knuckles, thickness=thickness, shift=shift)
        case CupHinges():
            return cup_bores(hinges, back=back, shift=shift)
        case Pivots():
            return pin_bores(hinges, opens_to=knuckles, thickness=thickness, trimmed=shift)
        case _:
            assert_never(hinges)


def hinge_wood(hinges: AnyHinges, *, knuckles: OnFace, thickness: Figure) -> tuple[Taken, ...]:
    """The wood that hinges take from the stile, for whatever else is cut there."""
    match hinges:
        case ButtHinges():
            return butt_wood(hinges, knuckles=knuckles, thickness=thickness)
        case CupHinges():
            return cup_wood(hinges, thickness=thickness)
        case Pivots():
            return pivot_wood(hinges, opens_to=knuckles, thickness=thickness)
        case _:
            assert_never(hinges)
