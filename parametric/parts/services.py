"""Slots for air and ways for cables, through the back of a case."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.case import Case, CaseBoard
from parametric.model import Cut, Drilled, Making, Pocket

SLOTTED = Making(by="router", tool="straight cutter, through")
SAWN = Making(by="bench", tool="hole saw, through from the face")


def service_cuts(case: Case, back: CaseBoard) -> Iterator[Cut]:
    """What the spaces for equipment ask of their back, on its inside."""
    for service in case.services:
        if service.slot is not None:
            long, high = service.slot
            for x, z in service.slots:
                yield Pocket(
                    name="air slot",
                    face="low face",
                    u=float(z) - back.z,
                    v=float(x) - back.x,
                    length=float(high),
                    width=float(long),
                    corner=float(high) / 2,
                    depth=float(back.thickness),
                    making=SLOTTED,
                )
        if service.cable is not None and service.across is not None:
            x, z = service.cable
            yield Drilled(
                name="cable way",
                face="low face",
                u=float(z) - back.z,
                v=float(x) - back.x,
                diameter=float(service.across),
                depth=float(back.thickness),
                making=SAWN,
            )
