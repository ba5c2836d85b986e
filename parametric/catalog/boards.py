"""Sheet material: how heavy each board is, and the sheets it comes in.

Boards are made so that they hardly move with moisture: plies cross one another, fibres lie
every way. What is left is taken as nothing.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from parametric.catalog.timbers import RECALLED
from parametric.figures import Figure
from parametric.names import join
from parametric.units import INCH, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """One sheet material as the yard sells it: kg/m3, and a sheet's length and width, mm."""

    name: str
    density: Figure
    sheet_length: Figure
    sheet_width: Figure
    source: str


_PLYWOOD = f"hardwood plywood, 550 to 700 kg/m3 by species{RECALLED}"
_FIBRE = f"medium density fibreboard, 700 to 800 kg/m3{RECALLED}"
_CHIP = f"particleboard of ANSI A208.1 grade M-2, about 713 kg/m3{RECALLED}"
_SHEET = "the usual sheet: 2440 x 1220 in mm, 8 x 4 ft in inches; common practice, no source"

_FACTS: Mapping[str, tuple[float, str]] = MappingProxyType(
    {"plywood": (650.0, _PLYWOOD), "fibreboard": (750.0, _FIBRE), "chipboard": (713.0, _CHIP)}
)
BOARDS: tuple[str, ...] = tuple(_FACTS)
"""Boards whose facts the tool knows."""


def known_board(name: str, unit: Unit) -> Board | None:
    """The catalogue's board of that name, in the sheets that a job in that unit buys."""
    if name not in _FACTS:
        return None
    density, source = _FACTS[name]
    long, wide = (96 * float(INCH), 48 * float(INCH)) if unit == "inch" else (2440.0, 1220.0)

    def fact(quantity: str, value: float, kind: str, said: str) -> Figure:
        return Figure(value, join(name, quantity), origin="catalogue", unit=kind, source=said)

    return Board(
        name=name,
        density=fact("density", density, "kg/m3", source),
        sheet_length=fact("sheet length", long, "mm", _SHEET),
        sheet_width=fact("sheet width", wide, "mm", _SHEET),
        source=source,
    )


def usual_thickness(unit: Unit) -> Figure:
    """What cases are made of where nobody says: 18 mm, or 3/4 in."""
    return Figure(
        0.75 * float(INCH) if unit == "inch" else 18.0,
        "usual thickness of a case's board",
        origin="catalogue",
        source="common practice, no source",
    )
