"""Cabinets along their wall: which stand side by side, and what each stretch of the wall is.

seen from above
    wall                                                        wall
     |~~~|  cabinet outer 1  | cabinet middle | cabinet outer 2 |~~~|
     |<->|<----------------->|<-------------->|<--------------->|<->|   adds up to the plumb
     |<--------------------- plumb clear width -------------------->|   clear width
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.names import join
from parametric.resolve.casework import StandingCase
from parametric.resolve.opening import Opening

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """One stretch of the wall, mm: where it begins from the left foot of the opening, how long it is.

    `cabinet` is the one that takes it; None of a filler, or of room left free.
    """

    cabinet: StandingCase | None
    begins: float
    size: Figure


def tiers(cases: Sequence[StandingCase]) -> tuple[tuple[StandingCase, ...], ...]:
    """Cabinets that stand side by side, the lowest tier first, each from the left.

    What stands or hangs over a cabinet of one tier belongs to the next.
    """
    found: list[list[StandingCase]] = []
    for case in sorted(cases, key=lambda one: (float(one.case.box.foot), float(one.left))):
        own = next((tier for tier in found if all(_beside(case, one) for one in tier)), None)
        if own is None:
            found.append([case])
        else:
            own.append(case)
    return tuple(tuple(sorted(tier, key=lambda one: float(one.left))) for tier in found)


def _beside(case: StandingCase, other: StandingCase) -> bool:
    """Whether a cabinet takes another stretch of the wall than one that begins no higher."""
    left, right = float(case.left), float(case.left + case.case.box.width)
    low, high = float(other.left), float(other.left + other.case.box.width)
    apart = left >= high - _SAME or right <= low + _SAME
    return apart and float(case.case.box.foot) < float(other.top) - _SAME


def along_wall(opening: Opening, tier: Sequence[StandingCase]) -> tuple[Stretch, ...]:
    """The plumb clear width, stretch by stretch: cabinets, and what is between them and the walls."""
    found: list[Stretch] = []
    at = opening.clear_left
    for case in tier:
        first = case.run and case is tier[0]
        name = _filler(case, "left") if first else join(case.name, "room at its left")
        found += _free(name, at, case.left)
        found.append(Stretch(cabinet=case, begins=float(case.left), size=case.case.box.width))
        at = case.left + case.case.box.width
    last = tier[-1]
    name = _filler(last, "right") if last.run else join(last.name, "room at its right")
    return (*found, *_free(name, at, opening.clear_left + opening.clear))


def _filler(case: StandingCase, side: str) -> str:
    return join(case.run, f"{side} filler", "at the tightest")


def _free(name: str, begins: Figure, ends: Figure) -> tuple[Stretch, ...]:
    """What is left between two places; nothing where they touch."""
    if float(ends - begins) <= _SAME:
        return ()
    return (Stretch(cabinet=None, begins=float(begins), size=named(name, ends - begins)),)


def clear_width(opening: Opening, place: str) -> Figure:
    """The plumb clear width, mm; `place` tells one of several rooms."""
    return named(join(place, "plumb clear width"), opening.clear) if place else opening.clear


def frame_openings(case: StandingCase) -> tuple[Figure, ...]:
    """The openings of a cabinet's face frame from the left, mm: what its stiles leave between them."""
    frame = case.case.frame
    if frame is None:
        return ()
    lefts = [frame.opening_left, *(left + frame.centre_stile for left in case.centre_stiles)]
    rights = [*case.centre_stiles, frame.opening_left + frame.opening]
    several = len(lefts) > 1
    return tuple(
        named(join(case.name, "face frame", f"opening {n}", "width"), right - left)
        if several
        else frame.opening
        for n, (left, right) in enumerate(zip(lefts, rights, strict=True), 1)
    )
