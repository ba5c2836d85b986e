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
from parametric.model import alike
from parametric.names import join
from parametric.units import INCH, Unit


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """One sheet material as the yard sells it: kg/m3, and a sheet's length and width, mm.

    `nominal` is the thickness that it is asked for by, `measured` what a gauge found: grooves,
    dadoes and everything between two boards go by that.
    What has no `grain` may be sawn from a sheet either way round.
    """

    name: str
    density: Figure
    sheet_length: Figure
    sheet_width: Figure
    source: str
    nominal: Figure | None = None
    measured: Figure | None = None
    grain: bool = True

    def sold_as(self, thickness: float) -> float:
        """What a sheet of that real thickness is asked for by: its nominal one where it is told."""
        real, nominal = self.measured, self.nominal
        if real is None or nominal is None or not alike(float(thickness), float(real)):
            return thickness
        return nominal


@dataclass(frozen=True, slots=True, kw_only=True)
class SoldThickness:
    """From what to what a sheet may be, mm, that is sold as one thickness."""

    least: float
    most: float
    source: str


_PLYWOOD = f"hardwood plywood, 550 to 700 kg/m3 by species{RECALLED}"
_FIBRE = f"medium density fibreboard, 700 to 800 kg/m3{RECALLED}"
_CHIP = f"particleboard of ANSI A208.1 grade M-2, about 713 kg/m3{RECALLED}"
_SHEET = "the usual sheet: 2440 x 1220 in mm, 8 x 4 ft in inches; common practice, no source"

_FACTS: Mapping[str, tuple[float, bool, str]] = MappingProxyType(
    {
        "plywood": (650.0, True, _PLYWOOD),
        "fibreboard": (750.0, False, _FIBRE),
        "chipboard": (713.0, False, _CHIP),
    }
)
"""kg/m3, whether it has a grain that shows, and where the weight is from."""
BOARDS: tuple[str, ...] = tuple(_FACTS)
"""Boards whose facts the tool knows."""


def known_board(name: str, unit: Unit) -> Board | None:
    """The catalogue's board of that name, in the sheets that a job in that unit buys."""
    if name not in _FACTS:
        return None
    density, grain, source = _FACTS[name]
    long, wide = (96 * float(INCH), 48 * float(INCH)) if unit == "inch" else (2440.0, 1220.0)

    def fact(quantity: str, value: float, kind: str, said: str) -> Figure:
        return Figure(value, join(name, quantity), origin="catalogue", unit=kind, source=said)

    return Board(
        name=name,
        density=fact("density", density, "kg/m3", source),
        sheet_length=fact("sheet length", long, "mm", _SHEET),
        sheet_width=fact("sheet width", wide, "mm", _SHEET),
        source=source,
        grain=grain,
    )


_PS1 = "PS 1, thickness of sanded panels, at most and at least"
_BIRCH = "birch plywood in mm, 18 sanded: +0.7, -0.9; makers' tables"
_A208 = "ANSI A208.2, thickness of fibreboard: within 0.125 of what it is sold as"
_SOLD: Mapping[str, Mapping[float, SoldThickness]] = MappingProxyType(
    {
        "plywood": MappingProxyType(
            {
                6.35: SoldThickness(least=5.56, most=7.14, source=_PS1),
                12.7: SoldThickness(least=11.91, most=13.49, source=_PS1),
                18.0: SoldThickness(least=17.1, most=18.7, source=_BIRCH),
                19.05: SoldThickness(least=18.26, most=19.84, source=_PS1),
                25.4: SoldThickness(least=24.13, most=26.67, source=_PS1),
            }
        )
    }
)
_FIBREBOARD_WITHIN = 0.125


def sold_between(name: str, nominal: float) -> SoldThickness | None:
    """What a sheet that is sold as one thickness may really be; None where no standard is known.

    Args:
        name: of the board.
        nominal: the thickness it is asked for by, mm.
    """
    if name == "fibreboard":
        low, high = float(nominal) - _FIBREBOARD_WITHIN, float(nominal) + _FIBREBOARD_WITHIN
        return SoldThickness(least=low, most=high, source=_A208)
    for thick, found in _SOLD.get(name, {}).items():
        if alike(thick, float(nominal)):
            return found
    return None


def usual_thickness(unit: Unit) -> Figure:
    """What cases are made of where nobody says: 18 mm, or 3/4 in."""
    return Figure(
        0.75 * float(INCH) if unit == "inch" else 18.0,
        "usual thickness of a case's board",
        origin="catalogue",
        source="common practice, no source",
    )
