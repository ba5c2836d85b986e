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
                if not _in(back, x, z):
                    continue
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
        if service.cable is not None and service.across is not None and _in(back, *service.cable):
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


def _in(back: CaseBoard, x: float, z: float) -> bool:
    """Whether a place is in this back, or in another piece of it."""
    return back.x <= float(x) <= back.x + float(back.width) and back.z <= float(
        z
    ) <= back.z + float(back.length)
