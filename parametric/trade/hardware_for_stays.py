"""What holds flaps open, as it is bought: how many, how long, how strong."""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from parametric.hardware.gas_strut import GasStruts
from parametric.hardware.lid_stay import LidStays
from parametric.hardware.stay import NoPlace
from parametric.hardware.stay_kinds import Stays
from parametric.resolve.door import Resolved
from parametric.trade.hardware_item import DESIGN, HardwareItem, counted
from parametric.trade.printed import Printed, force, weight, weight_limit


def hardware_for_stays(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    """One line for every sort of stay; nothing where no flap is held."""
    lots: dict[tuple[str, str, str], list[Stays]] = {}
    for leaf in resolved.leaves:
        if leaf.stays is None or isinstance(leaf.stays.sized, NoPlace):
            continue
        stays = leaf.stays.sized
        key = (stays.kind, _size(stays, said), _asked(stays, said))
        lots.setdefault(key, []).append(stays)
    words = [what for what, _, _ in lots]
    for index, ((what, size, asked), found) in enumerate(lots.items(), 1):
        number = found[0].count
        for more in found[1:]:
            number = number + more.count
        yield HardwareItem(
            what=what,
            number=counted(f"{what}s" if words.count(what) == 1 else f"{what}s {index}", number),
            unit="off",
            size=size,
            length=None,
            known_by=DESIGN,
            asked=asked,
        )


def _size(stays: Stays, said: Printed) -> str:
    mark = f", {stays.written.maker_mark}" if stays.written.maker_mark else ""
    long = said.fine(stays.written.length)
    match stays:
        case GasStruts():
            stroke = said.fine(stays.written.stroke)
            return f"{long} between fixings pushed out, stroke {stroke}{mark}"
        case LidStays():
            return f"{long} between fixings taut{mark}"
        case _:
            assert_never(stays)


def _asked(stays: Stays, said: Printed) -> str:
    unit = said.unit
    match stays:
        case GasStruts():
            known = "as written" if stays.written.force is not None else "the next that is sold"
            return (
                f"{force(stays.force, unit)} each, {known}; {force(stays.least, unit)} holds the "
                "flap with nothing in hand; both alike, with their fixings"
            )
        case LidStays():
            pull = weight(stays.pull, unit)
            if stays.carries is None:
                return f"made for a pull of {pull} each or more; with their fixings"
            return (
                f"made for a pull of {weight_limit(stays.carries, unit)} each as written, and "
                f"takes {pull}; with their fixings"
            )
        case _:
            assert_never(stays)
