"""How sawn timber is sold: by thickness class, by the board foot, by the cubic metre.

rough  ____________      a class is the sawn thickness in quarters of an inch;
      |____________|     planed on two sides it is thinner by a known amount
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, largest
from parametric.names import join
from parametric.units import INCH

_RULES = "NHLA Rules for the Measurement and Inspection of Hardwood and Cypress"

BOARD_FOOT = Figure(
    float(144 * INCH**3),
    "board foot",
    origin="catalogue",
    unit="mm3",
    source=f"144 cubic inches: {_RULES}, board measure",
)

LEAST_COUNTED = Figure(
    float(INCH),
    "least thickness counted in board feet",
    origin="catalogue",
    source=f"lumber under 1 inch is counted as 1 inch: {_RULES}",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class ThicknessClass:
    """One thickness timber is sawn to: its name, sawn, and planed on two sides, mm."""

    name: str
    rough: Figure
    surfaced: Figure


def _class(name: str, rough: float, surfaced: float) -> ThicknessClass:
    def size(quantity: str, inches: float) -> Figure:
        return Figure(
            inches * float(INCH),
            join(f"sawn {name}", quantity),
            origin="catalogue",
            source=f"{_RULES}, standard thicknesses, rough and surfaced two sides",
        )

    return ThicknessClass(
        name=name, rough=size("rough", rough), surfaced=size("surfaced", surfaced)
    )


CLASSES: tuple[ThicknessClass, ...] = (
    _class("3/8", 3 / 8, 3 / 16),
    _class("1/2", 1 / 2, 5 / 16),
    _class("5/8", 5 / 8, 7 / 16),
    _class("3/4", 3 / 4, 9 / 16),
    _class("4/4", 1, 13 / 16),
    _class("5/4", 5 / 4, 1 + 1 / 16),
    _class("6/4", 6 / 4, 1 + 5 / 16),
    _class("8/4", 2, 1 + 3 / 4),
    _class("12/4", 3, 2 + 3 / 4),
    _class("16/4", 4, 3 + 3 / 4),
)


def sawn_for(finished: float) -> ThicknessClass | None:
    """The thinnest class that planes to this thickness; None when it is thicker than any."""
    return next((c for c in CLASSES if float(c.surfaced) >= float(finished) - 1e-6), None)


def board_feet(area: float, thickness: float) -> Figure:
    """Board feet of boards with this face in mm2, at their sawn thickness in mm.

    Unrounded: the rules' own surface measure is rounded board by board when a load is
    tallied, and a yard may round up; an order is not a tally.

    Source: NHLA rules, board measure; under 1 inch counts as 1 inch.
    """
    return area * largest(thickness, LEAST_COUNTED) / BOARD_FOOT
