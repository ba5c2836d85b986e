"""One line of what is bought for the job beside timber, glass and finish."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.names import join

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
