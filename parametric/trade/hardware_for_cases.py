"""What cases are put together with, and what their shelves lie on: dowels, tenons, screws, pins."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from parametric.cases.butt_joints import CarcassScrews, Dowels
from parametric.cases.case_tenons import Tenons
from parametric.cases.fixings import TooShort
from parametric.cases.pin_rows import PinRows
from parametric.cases.pocket_screws import PocketScrews
from parametric.resolve.bored_case import BoredCase
from parametric.resolve.casework import Casework
from parametric.trade.hardware_item import DESIGN, HardwareItem, counted, whole
from parametric.trade.printed import Printed

_Line = tuple[str, str, str, float | None]
"""What it is, its size, what is asked of it, and how long it is, mm."""


def hardware_for_cases(casework: Casework | None, said: Printed) -> Iterator[HardwareItem]:
    """One line for every sort of fixing and of shelf pin.

    Args:
        casework: the cabinets; None where there are none.
        said: how the job's lengths are said.

    The screws of hinge plates come with the hinges.
    """
    if casework is None:
        return
    lots: dict[_Line, int] = {}
    for own in casework.bored:
        shelves = len(casework.case(own.name).case.of_role("shelf"))
        for line, many in (*_fixings(own, said), *_pins(own, shelves, said)):
            lots[line] = lots.get(line, 0) + many
    words = [what for what, *_ in lots]
    for index, ((what, size, asked, long), many) in enumerate(lots.items(), 1):
        name = f"{what}s" if words.count(what) == 1 else f"{what}s {index}"
        yield HardwareItem(
            what=what,
            number=counted(name, whole(many)),
            unit="off",
            size=size,
            length=None if long is None else counted(f"{name} length", long),
            known_by=DESIGN,
            asked=asked,
        )


def _fixings(own: BoredCase, said: Printed) -> Iterator[tuple[_Line, int]]:
    joints = [(joint.held, 1) for joint in own.joints]
    for held, ends in (*joints, *(() if own.frame is None else own.frame.counted)):
        match held:
            case Dowels():
                what, thick, asked = "case dowel", held.thick, "fluted, to the holes drilled"
            case CarcassScrews():
                what, thick = "one-piece carcass screw", held.shank
                asked = (
                    f"stepped: head {said.fine(held.head)}, shank {said.fine(held.shank)}, thread "
                    f"to cut into a hole of {said.fine(held.thread)}"
                )
            case PocketScrews():
                what, thick = "pocket screw", held.thick
                asked = (
                    f"pan head, to sink into pockets of {said.fine(held.wide)}; no hole before it"
                )
            case Tenons():
                size = " × ".join(said.fine(v) for v in (held.thick, held.wide, held.long))
                asked = f"beech, its edges rounded, to slots {said.fine(held.slot_long)} long"
                yield ("loose tenon", size, asked, held.long), ends * int(held.places.count)
                continue
            case TooShort():
                continue
            case _:
                assert_never(held)
        size = f"{said.fine(thick)} × {said.fine(held.long)}"
        yield (what, size, asked, held.long), ends * int(held.places.count)


def _pins(own: BoredCase, shelves: int, said: Printed) -> Iterator[tuple[_Line, int]]:
    rows = [pins.rows for pins in own.pins if isinstance(pins.rows, PinRows)]
    if rows and shelves:
        deep = min((one.deep for one in rows), key=float)
        asked = f"its stem no longer than {said.fine(deep)}"
        each = own.pins[0].a_shelf
        yield ("shelf pin", f"{said.fine(rows[0].across)} dia", asked, None), each * shelves
