"""How stiff each timber and each board is: its modulus of elasticity, N/mm2.

A timber's figure is that of clear straight wood at 12 % moisture, bent along the grain. It is
measured in bending and holds the shear of a short beam in it, so a long shelf is a little
stiffer. A board's is the least of what is sold under its name.
"""

from __future__ import annotations

from collections.abc import Mapping
from types import MappingProxyType

from parametric.catalog.timbers import HANDBOOK, RECALLED
from parametric.figures import Figure, named, smallest
from parametric.names import join
from parametric.units import STIFFNESS

_TABLE = f"{HANDBOOK}, table 5-3b, 12 % moisture"
_IMPORTED = f"{HANDBOOK}, chapter 5, imported woods, 12 % moisture"

_READ: Mapping[str, float] = MappingProxyType(
    {
        "red oak": 1.82,
        "red alder": 1.38,
        "ash": 1.74,
        "aspen": 1.18,
        "basswood": 1.46,
        "beech": 1.72,
        "birch": 2.01,
        "butternut": 1.18,
        "cherry": 1.49,
        "soft maple": 1.64,
        "hickory": 2.16,
        "ponderosa pine": 1.29,
        "redwood": 1.34,
        "sugar pine": 1.19,
    }
)
_RECALLED: Mapping[str, float] = MappingProxyType(
    {
        "tulipwood": 1.58,
        "white oak": 1.78,
        "black walnut": 1.68,
        "pecan": 1.73,
        "hard maple": 1.83,
        "sweetgum": 1.64,
        "sycamore": 1.42,
        "douglas fir": 1.95,
        "western red cedar": 1.11,
        "eastern white pine": 1.24,
        "white fir": 1.50,
        "sitka spruce": 1.57,
    }
)
_BROUGHT: Mapping[str, tuple[float, str]] = MappingProxyType(
    {
        "mahogany": (1.50, _IMPORTED),
        "teak": (1.55, _IMPORTED),
        "african mahogany": (1.40, _IMPORTED + RECALLED),
    }
)
"""Millions of psi, as the handbook prints them."""

_PSI = float(STIFFNESS.sizes["psi"])


def _of_millions(name: str, millions: float, source: str) -> Figure:
    printed = Figure(
        millions,
        join(name, "stiffness in millions of psi"),
        origin="catalogue",
        unit="million psi",
        source=source,
    )
    return named(join(name, "stiffness"), printed * 1e6 * _PSI, "N/mm2")


TIMBER_STIFFNESS: Mapping[str, Figure] = MappingProxyType(
    {
        **{name: _of_millions(name, value, _TABLE) for name, value in _READ.items()},
        **{name: _of_millions(name, value, _TABLE + RECALLED) for name, value in _RECALLED.items()},
        **{name: _of_millions(name, value, source) for name, (value, source) in _BROUGHT.items()},
    }
)
"""Every timber the tool knows, N/mm2."""

BOARD_STIFFNESS: Mapping[str, Figure] = MappingProxyType(
    {
        "plywood": _of_millions(
            "plywood",
            0.95,
            "Architectural Woodwork Standards, table 4.4.14.10: fir plywood 950 000 psi; with "
            "hardwood faces up to 1 800 000",
        ),
        "fibreboard": Figure(
            2160.0,
            "fibreboard / stiffness",
            origin="catalogue",
            unit="N/mm2",
            source=f"ANSI A208.2, grade 130{RECALLED}",
        ),
        "chipboard": Figure(
            2250.0,
            "chipboard / stiffness",
            origin="catalogue",
            unit="N/mm2",
            source="ANSI A208.1, grade M-2",
        ),
    }
)
"""Boards by name, N/mm2."""


def least_stiff_board(name: str) -> Figure:
    """What is taken for a board of which nobody says how stiff it is: the least of those known."""
    return named(join(name or "board", "stiffness"), smallest(*BOARD_STIFFNESS.values()), "N/mm2")
