"""One line of what is bought for the job beside timber, glass and finish."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable
from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.names import SEPARATOR, join

DESIGN = "design"
SUPPLIER = "by supplier"


@dataclass(frozen=True, slots=True, kw_only=True)
class HardwareItem:
    """One line: `number` of it in `unit`; `size` in words; `length` mm where one is cut or least.

    `known_by` says whether this design fixes it, or the supplier does; `asked` is what the
    supplier's must then do.
    """

    what: str
    number: Figure
    unit: str
    size: str
    length: Figure | None
    known_by: str
    asked: str


def counted(what: str, value: float) -> Figure:
    """A number of the hardware list, under its name."""
    return named(join("hardware", what), value, "")


def whole(value: int) -> Figure:
    """A count."""
    return Figure(value, unit="")


def together(items: Iterable[HardwareItem]) -> tuple[HardwareItem, ...]:
    """One line for what several doors ask for in the same words, in the order they come."""
    lots: dict[tuple[object, ...], list[HardwareItem]] = {}
    for item in items:
        length = None if item.length is None else round(float(item.length), 6)
        same = (item.what, item.unit, item.size, length, item.known_by, item.asked)
        lots.setdefault(same, []).append(item)
    return tuple(_summed(own) for own in lots.values())


def _summed(items: list[HardwareItem]) -> HardwareItem:
    first, *others = items
    if not others:
        return first
    number = first.number
    for item in others:
        number = number + item.number
    places = [(item.number.name or "").partition(SEPARATOR) for item in items]
    doors = " and ".join(place for place, _, _ in places)
    return dataclasses.replace(first, number=named(f"{places[0][2]} of {doors}", number, ""))
