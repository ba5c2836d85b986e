"""The stays of one flap where they are screwed: to its back, and to the case beside it."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure
from parametric.hangings.hanging import Side
from parametric.hardware.stay import NoPlace
from parametric.hardware.stay_kinds import Stays, StaySpec


@dataclass(frozen=True, slots=True, kw_only=True)
class StaySide:
    """One stay of a flap, mm: `across` its fixing from the leaf's left edge and `up` from the
    leaf's foot; on the case `case_up` from the case's foot and `behind` its front edges.
    """

    name: str
    side: Side
    across: Figure
    up: Figure
    case_up: Figure
    behind: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafStays:
    """What holds one flap open: how it is reckoned, and each stay of it.

    `pilot` is the hole at each fixing, wide and deep. Where there is no place for them, `sized`
    says why, and there are none.
    """

    sized: Stays | NoPlace
    written: StaySpec
    pilot: tuple[Figure, Figure]
    sides: tuple[StaySide, ...] = ()
