"""What glass weighs, how thick it truly is, and where it must be safety glass."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from types import MappingProxyType
from typing import Literal

from parametric.figures import Figure
from parametric.names import join

GlassKind = Literal["toughened", "laminated", "toughened laminated", "ordinary", "mirror"]
Category = Literal["I", "II"]

KINDS: tuple[GlassKind, ...] = (
    "toughened",
    "laminated",
    "toughened laminated",
    "ordinary",
    "mirror",
)

SAFETY_KINDS: frozenset[GlassKind] = frozenset(("toughened", "laminated", "toughened laminated"))
"""Kinds that are made to break safely. A pane still has to carry the mark of its class.

Source: the two materials that EN 12600 grades as break types C (toughened) and B
(laminated), type letters from memory.
"""

MASS = Figure(
    2.5,
    "glass mass per mm",
    origin="catalogue",
    unit="kg/m2 per mm",
    source="soda-lime glass 2500 kg/m3, EN 572-1, number of the standard from memory",
)

DENSITY = Figure(
    2500.0,
    "glass density",
    origin="catalogue",
    unit="kg/m3",
    source="soda-lime glass 2500 kg/m3, EN 572-1, number of the standard from memory",
)

SPACER_SHY = Figure(
    2.0,
    "spacer bar behind each edge of the bar over it",
    origin="catalogue",
    source="common practice, no source: seen aslant it must not look out",
)

ENOUGH_BITE = Figure(
    4.0,
    "bite that must stay where panes are ordered in one size",
    origin="catalogue",
    source="common practice, no source: for glass within a house, in stops or bedded",
)

SHORT_GRAIN = Figure(
    45.0,
    "most a sawn stop may run off its grain",
    origin="catalogue",
    unit="deg",
    source="common practice, no source",
)

SAFETY_MARK = "Every safety pane carries its maker's permanent mark: IRC R308.1, from memory."


@dataclass(frozen=True, slots=True, kw_only=True)
class Thickness:
    """One thickness glass is sold in: what it is called, and what it measures, mm."""

    nominal: float
    inch_name: str
    thinnest: Figure
    thickest: Figure


def _thickness(nominal: float, inch_name: str, thinnest: float, thickest: float) -> Thickness:
    def limit(quantity: str, value: float, source: str) -> Figure:
        name = join(f"glass {nominal:g}", quantity)
        return Figure(value, name, origin="catalogue", source=source)

    return Thickness(
        nominal=nominal,
        inch_name=inch_name,
        thinnest=limit(
            "thinnest", thinnest, "ASTM C1036, thickness table, designation from memory"
        ),
        thickest=limit("thickest", thickest, "ASTM C1036, thickness table, from memory"),
    )


THICKNESSES: Mapping[float, Thickness] = MappingProxyType(
    {
        row.nominal: row
        for row in (
            _thickness(2.5, "3/32", 2.16, 2.57),
            _thickness(3, "1/8", 2.92, 3.40),
            _thickness(4, "5/32", 3.78, 4.19),
            _thickness(5, "3/16", 4.57, 5.05),
            _thickness(6, "1/4", 5.56, 6.20),
            _thickness(8, "5/16", 7.42, 8.43),
            _thickness(10, "3/8", 9.02, 10.31),
            _thickness(12, "1/2", 11.91, 13.49),
            _thickness(19, "3/4", 18.26, 19.84),
        )
    }
)
"""By the metric name, mm. The inch name is never the thickness: 1/4 in glass is under 6.2 mm."""


def sold_as(measured: float) -> Thickness | None:
    """The thickness that a pane measuring this much is sold as; None when it is none of them."""
    fits = (row for row in THICKNESSES.values() if row.thinnest <= measured <= row.thickest)
    return next(fits, None)


CATEGORY_I_LARGEST = Figure(
    9 * 304.8**2,
    "largest category I pane",
    origin="catalogue",
    unit="mm2",
    source="16 CFR 1201.2(a)(3): no single piece greater than 9 square feet",
)

EXEMPT_BALL = Figure(
    3 * 25.4,
    "ball that an exempt opening stops",
    origin="catalogue",
    source="16 CFR 1201.1(c)(1) and IRC 2015 R308.4.1, exception: a 3 in sphere cannot pass",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Glazing:
    """What the safety rule asks of one pane in a door.

    `exempt` panes fill an opening so narrow that the ball cannot pass; `category` is then
    None. `because` is the sentence for the sheet.
    """

    exempt: bool
    category: Category | None
    because: str
    source: str


def stops_the_ball(width: float, height: float) -> bool:
    """True when a 76 mm (3 in) ball cannot pass an opening of this size, mm."""
    return min(width, height) < EXEMPT_BALL


def safety_glazing(
    pane_width: float,
    pane_height: float,
    *,
    opening_width: float | None = None,
    opening_height: float | None = None,
    patio_slider: bool = False,
) -> Glazing:
    """The class a pane in a door must meet, or that it is exempt.

    Args:
        pane_width: one piece of glass, mm.
        pane_height: the same, mm.
        opening_width: what is left open if the glass breaks out, mm; the pane's own size
            where it is not given, which errs to the safe side.
        opening_height: the same, mm.
        patio_slider: a sliding glass door of the patio type, category II whatever its area.

    This grades one pane; the rule grades the door by its largest, so ask `door_category`
    for the class to order. Local codes may ask for more, and they decide.

    Source: 16 CFR 1201.2(a)(3) and (4); exemption 16 CFR 1201.1(c)(1), paragraph from
    memory, and IRC 2015 R308.4.1.
    """
    width = pane_width if opening_width is None else opening_width
    height = pane_height if opening_height is None else opening_height
    if stops_the_ball(width, height):
        return Glazing(
            exempt=True,
            category=None,
            because="a 76 mm (3 in) ball cannot pass the opening",
            source="16 CFR 1201.1(c)(1); IRC 2015 R308.4.1, exception",
        )
    if patio_slider:
        return Glazing(
            exempt=False,
            category="II",
            because="a sliding glass door of the patio type, whatever the area",
            source="16 CFR 1201.2(a)(4)",
        )
    # A thousandth of a square millimetre is the float's doing, not the pane's.
    if float(pane_width) * float(pane_height) > CATEGORY_I_LARGEST + 0.001:
        return Glazing(
            exempt=False,
            category="II",
            because="the pane is over 9 square feet (0.836 m2)",
            source="16 CFR 1201.2(a)(4)",
        )
    return Glazing(
        exempt=False,
        category="I",
        because="the pane is 9 square feet (0.836 m2) or less",
        source="16 CFR 1201.2(a)(3)",
    )


def door_category(panes: Iterable[Glazing]) -> Category | None:
    """The class that every pane of a door must meet: that of the largest; None if all are exempt.

    Source: 16 CFR 1201.2(a)(3) and (4): a door is in category I only when no single
    piece in it is greater than 9 square feet.
    """
    found = {pane.category for pane in panes}
    if "II" in found:
        return "II"
    return "I" if "I" in found else None
