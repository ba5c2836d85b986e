"""How heavy each timber is, and how much it moves across the grain.

Movement is per 1 % of moisture content: a board `w` wide moves `w * C` for every per
cent. A flat-sawn board's width runs round the growth rings (tangential), a
quarter-sawn board's across them (radial). Along the grain a door part does not move.

    flat-sawn  ___________        quarter-sawn  ___________
              |  .-----.  |                    | | | | | | |
              |.'       '.|  tangential        |_|_|_|_|_|_|  radial

The coefficients hold from 6 to 14 % moisture (see moisture.py). Every specific gravity
is weight ovendry over volume at 12 % moisture; timbers that the handbook gives on green
volume only are converted here, and their density shows the sum.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal, NamedTuple, assert_never

from parametric.figures import Figure, named
from parametric.names import join

Sawn = Literal["flat", "quarter"]

HANDBOOK = "Wood Handbook, FPL-GTR-190 (2010)"
RECALLED = ", from memory"
"""Ends a citation whose number was not read in the document itself."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Timber:
    """One timber as the yard sells it.

    `density` is kg/m3 at 12 % moisture; `tangential` and `radial` are the movement
    coefficients, per 1 % of moisture content.
    """

    name: str
    density: Figure
    tangential: Figure
    radial: Figure
    source: str

    def across(self, sawn: Sawn) -> Figure:
        """The movement coefficient over the width of a board sawn this way, per %."""
        match sawn:
            case "flat":
                return self.tangential
            case "quarter":
                return self.radial
            case _:
                assert_never(sawn)


class _Number(NamedTuple):
    value: float
    source: str


def _gravity(value: float) -> _Number:
    return _Number(value, f"{HANDBOOK}, table 5-3b, volume at 12 % moisture")


def _green(value: float) -> _Number:
    return _Number(value, f"{HANDBOOK}, chapter 5, imported woods, green volume")


def _moves(value: float) -> _Number:
    return _Number(value, f"{HANDBOOK}, table 13-5")


def _recalled(number: _Number) -> _Number:
    return _Number(number.value, number.source + RECALLED)


def _density(name: str, gravity: _Number) -> Figure:
    """kg/m3 at 12 % moisture from a specific gravity.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 4: density = 1000 G (1 + M/100);
    and for green volume G12 = G / (1 - 0.265 a G), a = (30 - 12)/30, from memory.
    """
    written = Figure(
        gravity.value,
        join(name, "specific gravity"),
        origin="catalogue",
        unit="",
        source=gravity.source,
    )
    at_12 = written
    if "green volume" in gravity.source:
        at_12 = written / (1 - 0.265 * ((30 - 12) / 30) * written)
    return named(join(name, "density"), 1000 * at_12 * (1 + 12 / 100), "kg/m3")


def _timber(
    name: str, species: str, gravity: _Number, tangential: _Number, radial: _Number
) -> Timber:
    def coefficient(quantity: str, number: _Number) -> Figure:
        return Figure(
            number.value,
            join(name, quantity),
            origin="catalogue",
            unit="per %",
            source=f"{number.source}, {species}",
        )

    sources = dict.fromkeys((gravity.source, tangential.source, radial.source))
    return Timber(
        name=name,
        density=_density(name, _Number(gravity.value, f"{gravity.source}, {species}")),
        tangential=coefficient("tangential movement", tangential),
        radial=coefficient("radial movement", radial),
        source=f"{species}: " + "; ".join(sources),
    )


_ALL = (
    _timber(
        "tulipwood",
        "yellow-poplar",
        _recalled(_gravity(0.42)),
        _recalled(_moves(0.00289)),
        _recalled(_moves(0.00158)),
    ),
    _timber(
        "white oak",
        "oak, commercial white",
        _recalled(_gravity(0.68)),
        _moves(0.00365),
        _moves(0.00180),
    ),
    _timber(
        "red oak",
        "oak, commercial red",
        _recalled(_gravity(0.63)),
        _moves(0.00369),
        _moves(0.00158),
    ),
    _timber("ash", "ash, white", _gravity(0.60), _moves(0.00274), _moves(0.00169)),
    _timber(
        "black walnut",
        "walnut, black",
        _recalled(_gravity(0.55)),
        _moves(0.00274),
        _moves(0.00190),
    ),
    _timber("cherry", "cherry, black", _gravity(0.50), _moves(0.00248), _moves(0.00126)),
    _timber(
        "hard maple", "maple, sugar", _recalled(_gravity(0.63)), _moves(0.00353), _moves(0.00165)
    ),
    _timber("soft maple", "maple, red", _gravity(0.54), _moves(0.00289), _moves(0.00137)),
    _timber("beech", "beech, American", _gravity(0.64), _moves(0.00431), _moves(0.00190)),
    _timber("birch", "birch, yellow", _gravity(0.62), _moves(0.00338), _moves(0.00256)),
    _timber("red alder", "alder, red", _gravity(0.41), _moves(0.00256), _moves(0.00151)),
    _timber("aspen", "aspen, quaking", _gravity(0.38), _moves(0.00234), _moves(0.00119)),
    _timber("basswood", "basswood, American", _gravity(0.37), _moves(0.00330), _moves(0.00230)),
    _timber("butternut", "butternut", _gravity(0.38), _moves(0.00223), _moves(0.00116)),
    _timber(
        "hickory",
        "hickory, true (gravity: shagbark)",
        _gravity(0.72),
        _moves(0.00411),
        _recalled(_moves(0.00259)),
    ),
    _timber("pecan", "hickory, pecan", _recalled(_gravity(0.66)), _moves(0.00315), _moves(0.00169)),
    _timber("sweetgum", "sweetgum", _recalled(_gravity(0.52)), _moves(0.00365), _moves(0.00183)),
    _timber(
        "sycamore",
        "sycamore, American",
        _recalled(_gravity(0.49)),
        _moves(0.00296),
        _moves(0.00172),
    ),
    _timber(
        "douglas fir",
        "Douglas-fir, coast",
        _recalled(_gravity(0.48)),
        _moves(0.00267),
        _recalled(_moves(0.00165)),
    ),
    _timber(
        "western red cedar",
        "redcedar, western",
        _recalled(_gravity(0.32)),
        _recalled(_moves(0.00234)),
        _recalled(_moves(0.00111)),
    ),
    _timber(
        "redwood",
        "redwood, old-growth",
        _gravity(0.40),
        _recalled(_moves(0.00205)),
        _recalled(_moves(0.00120)),
    ),
    _timber(
        "eastern white pine",
        "pine, eastern white",
        _recalled(_gravity(0.35)),
        _recalled(_moves(0.00212)),
        _recalled(_moves(0.00071)),
    ),
    _timber(
        "ponderosa pine",
        "pine, ponderosa",
        _gravity(0.40),
        _recalled(_moves(0.00216)),
        _recalled(_moves(0.00133)),
    ),
    _timber(
        "sugar pine",
        "pine, sugar",
        _gravity(0.36),
        _recalled(_moves(0.00194)),
        _recalled(_moves(0.00099)),
    ),
    _timber(
        "white fir",
        "fir, white",
        _recalled(_gravity(0.39)),
        _recalled(_moves(0.00245)),
        _recalled(_moves(0.00112)),
    ),
    _timber(
        "sitka spruce",
        "spruce, Sitka",
        _recalled(_gravity(0.40)),
        _recalled(_moves(0.00263)),
        _recalled(_moves(0.00148)),
    ),
    _timber(
        "mahogany",
        "mahogany, true",
        _green(0.45),
        _recalled(_moves(0.00238)),
        _recalled(_moves(0.00172)),
    ),
    _timber(
        "african mahogany",
        "mahogany, African (khaya)",
        _recalled(_green(0.42)),
        _recalled(_moves(0.00201)),
        _recalled(_moves(0.00141)),
    ),
    _timber(
        "teak",
        "teak",
        _green(0.55),
        _moves(0.00186),
        _recalled(_moves(0.00101)),
    ),
)

TIMBERS: Mapping[str, Timber] = MappingProxyType({timber.name: timber for timber in _ALL})
"""Every timber the tool knows, by the name the yard uses, in lower case."""
