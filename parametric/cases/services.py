"""What equipment in a case asks of its back: a way for cables, and air in below and out above.

seen from the front, one space for equipment
 _______________________
|        ======         |  air out: a slot near its head
|                       |
|                       |
|   o    ======         |  air in near its foot; the cable way beside it
|_______________________|
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import Case, CaseBay, CaseBox, Service
from parametric.figures import Figure, exceeds, named
from parametric.names import join
from parametric.problems import Problem
from parametric.units import Unit, length_text

FROM_ENDS = Figure(
    40.0,
    "air slot from the end of its space",
    origin="catalogue",
    source="common practice, no source",
)
"""From the foot or the head of a space to the edge of a slot, mm."""


LEAST_BETWEEN = Figure(
    10.0,
    "least board between two holes in a back",
    origin="catalogue",
    source="common practice, no source",
)


def services(spec: CabinetSpec, box: CaseBox, bays: tuple[CaseBay, ...]) -> Iterator[Service]:
    """For every space that holds equipment, from the left, from the top.

    Args:
        spec: the cabinet as written.
        box: its box.
        bays: its bays.
    """
    number = 0
    for bay in bays:
        for space in reversed(bay.spaces):
            if space.what != "equipment":
                continue
            number += 1
            name = join(box.name, f"equipment {number}")
            middle = bay.left + bay.width / 2
            slots: tuple[tuple[Figure, Figure], ...] = ()
            area: Figure = Figure(0.0)
            if spec.air is not None:
                half = spec.air[1] / 2
                slots = (
                    (middle, space.head - FROM_ENDS - half),
                    (middle, space.foot + FROM_ENDS + half),
                )
                area = 2 * spec.air[0] * spec.air[1]
            cable = None
            if spec.cable_way is not None:
                cable = (bay.left + bay.width / 8, space.foot + FROM_ENDS + spec.cable_way / 2)
            yield Service(
                name=name,
                slots=slots,
                slot=spec.air,
                cable=cable,
                across=spec.cable_way,
                room=(bay.left, bay.width, space.foot, space.head),
                free_area=named(join(name, "free area for air"), area, "mm2"),
            )


def service_faults(spec: CabinetSpec, case: Case, unit: Unit) -> tuple[Problem, ...]:
    """Slots and ways that their space has no room for."""
    found = []
    for service in case.services:
        x, width, foot, head = service.room
        if service.slot is not None:
            long, high = service.slot
            need = 2 * (FROM_ENDS + high) + LEAST_BETWEEN
            if exceeds(need, head - foot) or exceeds(long + 2 * FROM_ENDS, width):
                found.append(
                    _no_room(spec, "air", service, f"{length_text(float(need), unit)} high", unit)
                )
        if service.cable is not None and service.across is not None:
            slot_left = x + width / 2 - (service.slot[0] / 2 if service.slot else 0.0)
            beside = service.cable[0] + service.across / 2 + LEAST_BETWEEN
            low = exceeds(2 * FROM_ENDS + service.across, head - foot)
            if (
                low
                or exceeds(beside, slot_left)
                or exceeds(x, service.cable[0] - service.across / 2)
            ):
                allowed = "a smaller hole, or a wider space"
                found.append(_no_room(spec, "cable way", service, allowed, unit))
    return tuple(found)


def _no_room(spec: CabinetSpec, key: str, service: Service, allowed: str, unit: Unit) -> Problem:
    x, width, foot, head = service.room
    del x
    size = (
        f"{length_text(float(width), unit)} wide and {length_text(float(head - foot), unit)} high"
    )
    return Problem(
        code="no_room_in_the_back",
        level="stop",
        message=f'{service.name} is {size}; its back has no room for "{key}".',
        where=spec.line(key),
        about=service.name,
        found=size,
        allowed=allowed,
        fix="Make it smaller, or the space larger.",
    )
