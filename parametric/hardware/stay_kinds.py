"""Every kind of stay as one: which Spec reads it, what it holds, how it is sized."""

from __future__ import annotations

from typing import assert_never

from parametric.hardware.gas_strut import GasStruts, GasStrutSpec, size_gas_struts
from parametric.hardware.lid_stay import LidStays, LidStaySpec, size_lid_stays
from parametric.hardware.stay import HeldFlap, NoPlace, StayBlock

StaySpec = LidStaySpec | GasStrutSpec
"""Stays of any kind as written."""
Stays = LidStays | GasStruts
"""Stays of any kind, resolved."""
STAY_KINDS: dict[str, type[StayBlock]] = {"lid stay": LidStaySpec, "gas strut": GasStrutSpec}
"""The word after `kind:` in a stay, and the Spec it is read by."""


def lifts(spec: StaySpec) -> bool:
    """Whether it holds what opens upwards; the others hold what drops down."""
    match spec:
        case GasStrutSpec():
            return True
        case LidStaySpec():
            return False
        case _:
            assert_never(spec)


def size_stays(spec: StaySpec, flap: HeldFlap) -> Stays | NoPlace:
    """The stays of one flap, or why they cannot be put as they are written."""
    match spec:
        case GasStrutSpec():
            return size_gas_struts(spec, flap)
        case LidStaySpec():
            return size_lid_stays(spec, flap)
        case _:
            assert_never(spec)
