"""A glazed opening: one pane, or as many as its true bars make; or one with bars planted on it.

seen from the front          section through an upright bar, front below
| pane | pane |              glass ====|  |==== glass     a true one, rebated from the back
|------+------|  level bar         ___|  |___
| pane | pane |                    |________|
                             glass ============ glass     planted bars, on both faces
                                   |_|    |_|
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping
from dataclasses import dataclass
from typing import assert_never

from parametric.catalog.glass_facts import MASS
from parametric.design.leaf import Band as WrittenBand
from parametric.figures import Figure, named
from parametric.infill.glass import (
    GlassSpec,
    Pane,
    glass_in_it,
    size_pane,
    true_thickness,
)
from parametric.names import join
from parametric.resolve.arched_stops import arched_pane_in_stops
from parametric.resolve.bands import Band
from parametric.resolve.bar_places import (
    Bar,
    BarPlaces,
    BarSection,
    FullBar,
    PlantedBar,
    RebatedBar,
    Span,
    place_bars,
)
from parametric.resolve.head import LeafHead
from parametric.resolve.pane_in_rebate import Daylight, pane_in_rebate
from parametric.resolve.planting import plant_bars

Sizes = Mapping[str, tuple[Figure, Figure]]
"""Width and height of panes that share one size with others, by name, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Rebate:
    """The rebate that glass lies in, from the back of the leaf, mm.

    `lip` is the wood before it; `bite` how much of the glass the frame covers.
    """

    frame: Figure
    depth: Figure
    lip: Figure
    bite: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Lite:
    """A glazed opening, mm. `height` and `top` are to the springing where a curve stands over it.

    `section` is how its bars are made, `cell` the daylight between two of them, across and up;
    `sight` is the curve that planted bars end on; `columns` and `rows` are the left edges and the feet of what they leave, rows from the lowest.
    """

    name: str
    foot: Figure
    height: Figure
    top: Figure
    width: Figure
    panes: tuple[Pane, ...]
    weight: Figure
    bars: tuple[Bar, ...] = ()
    section: BarSection | None = None
    cell: tuple[Figure, Figure] | None = None
    columns: tuple[Figure, ...] = ()
    rows: tuple[Figure, ...] = ()
    rebate: Rebate | None = None
    head: LeafHead | None = None
    sight: LeafHead | None = None
    bar_area: Figure | None = None

    @property
    def pane(self) -> Pane:
        """Its first pane, the only one where it is not divided."""
        return self.panes[0]

    @property
    def framed_bars(self) -> tuple[Bar, ...]:
        """The bars that are glued into the frame: true ones."""
        return () if isinstance(self.section, PlantedBar) else self.bars


def resolve_lite(
    band: Band,
    glass: GlassSpec,
    *,
    left: Figure,
    shoulder: Figure,
    thickness: Figure,
    head: LeafHead | None,
    sizes: Sizes,
) -> Lite:
    """A lite with its panes and bars.

    Args:
        band: the opening's line.
        glass: the glass as written.
        left: the opening's left edge in the leaf, mm.
        shoulder: between the stiles, mm.
        thickness: of the frame, mm.
        head: the curve over it, if any.
        sizes: width and height of panes that share one, by name, mm.
    """
    width = named(join(band.name, "width"), shoulder)
    span = Span(left=left, foot=band.foot, width=width, height=band.height, top=band.top, head=head)
    divided = _panes(band.written) != (1, 1)
    match glass.bars:
        case "true":
            lite = (
                _between_stops(band, glass, span, thickness, sizes)
                if glass.held_by == "stops"
                else _in_rebate(band, glass, span, thickness, sizes)
            )
        case "applied" | "spaced":
            lite = _whole(band, glass, span, thickness, sizes)
            if divided:
                lite = _with_planted_bars(lite, band, glass, span, thickness)
        case _:
            assert_never(glass.bars)
    return lite


def _panes(line: WrittenBand) -> tuple[int, int]:
    """How many panes wide and high."""
    return (
        1 if line.wide is None else int(line.wide),
        1 if line.high is None else int(line.high),
    )


def _between_stops(
    band: Band, glass: GlassSpec, span: Span, thickness: Figure, sizes: Sizes
) -> Lite:
    """One pane between stops, or one in every opening that bars as thick as the frame leave."""
    counts = _panes(band.written)
    if counts == (1, 1):
        return _whole(band, glass, span, thickness, sizes)
    face = named(join(band.name, "bar width"), glass.muntin)
    places = place_bars(band.name, counts, span, face)
    panes = tuple(
        size_pane(
            glass,
            name=name,
            left=left,
            foot=foot,
            opening_width=places.across,
            opening_height=places.up,
            frame=thickness,
            per_mm=MASS,
            one=sizes.get(name),
        )
        for name, (left, foot) in _cells(band.name, counts, places).items()
    )
    return Lite(
        name=band.name,
        foot=band.foot,
        height=band.height,
        top=band.top,
        width=span.width,
        panes=panes,
        weight=named(join(band.name, "glass weight"), _added([p.weight for p in panes]), "kg"),
        bars=places.bars,
        section=FullBar(
            face=face,
            tenon_length=named(join(band.name, "tenon of a bar"), glass.bar_tenon),
            tenon_thickness=named(join(band.name, "thickness of a bar's tenon"), thickness / 3),
        ),
        cell=(places.across, places.up),
        columns=places.columns,
        rows=places.feet,
        bar_area=places.area,
    )


def _cells(
    place: str, counts: tuple[int, int], places: BarPlaces
) -> dict[str, tuple[Figure, Figure]]:
    """Every pane of a divided opening with its low left corner, from the top left, row by row."""
    wide, high = counts
    return {
        join(place, f"row {row + 1}", f"pane {column + 1}"): (
            places.columns[column],
            places.feet[high - 1 - row],
        )
        for row in range(high)
        for column in range(wide)
    }


def _whole(band: Band, glass: GlassSpec, span: Span, thickness: Figure, sizes: Sizes) -> Lite:
    """One pane in the whole opening."""
    name = join(band.name, "glass")
    rebate = None
    if glass.held_by == "stops" and span.head is not None:
        pane = arched_pane_in_stops(glass, name, span, span.head, thickness)
    elif glass.held_by == "stops":
        pane = size_pane(
            glass,
            name=name,
            left=span.left,
            foot=band.foot,
            opening_width=span.width,
            opening_height=band.height,
            frame=thickness,
            per_mm=MASS,
            one=sizes.get(name),
        )
    else:
        rebate = _rebate(band, glass, thickness)
        day = Daylight(
            left=span.left,
            foot=band.foot,
            across=span.width,
            up=band.height,
            at_left=rebate.frame,
            at_foot=rebate.frame,
            at_right=rebate.frame,
            at_top=rebate.frame,
            frame=rebate.frame,
        )
        pane = pane_in_rebate(glass, name, day, span.head, sizes.get(name))
    return Lite(
        name=band.name,
        foot=band.foot,
        height=band.height,
        top=band.top,
        width=span.width,
        panes=(pane,),
        weight=pane.weight if rebate is None else _seen_weight(band, glass, span, None),
        rebate=rebate,
        head=span.head,
    )


def _rebate(band: Band, glass: GlassSpec, thickness: Figure) -> Rebate:
    def at(quantity: str, value: float) -> Figure:
        return named(join(band.name, quantity), value)

    return Rebate(
        frame=at("rebate in the frame", glass.frame_rebate),
        depth=at("rebate depth", glass.rebate_depth),
        lip=at("wood before the glass", thickness - glass.rebate_depth),
        bite=at("bite in the frame", glass.frame_rebate - glass.clearance),
    )


def _in_rebate(band: Band, glass: GlassSpec, span: Span, thickness: Figure, sizes: Sizes) -> Lite:
    """One pane in the frame's rebate, or one in each opening between rebated bars."""
    counts = wide, high = _panes(band.written)
    if counts == (1, 1):
        return _whole(band, glass, span, thickness, sizes)

    def at(quantity: str, value: float) -> Figure:
        return named(join(band.name, quantity), value)

    rebate = _rebate(band, glass, thickness)
    face = at("bar width", glass.muntin)
    section = RebatedBar(
        face=face,
        rebate=at("rebate in the bars", glass.muntin_rebate),
        web=at("web of a bar", face - 2 * glass.muntin_rebate),
    )
    places = place_bars(band.name, counts, span, face)

    def beside(frame: bool) -> Figure:
        return rebate.frame if frame else section.rebate

    panes = tuple(
        pane_in_rebate(
            glass,
            name,
            Daylight(
                left=left,
                foot=foot,
                across=places.across,
                up=places.up,
                at_left=beside(index % wide == 0),
                at_foot=beside(index // wide == high - 1),
                at_right=beside(index % wide == wide - 1),
                at_top=beside(index // wide == 0),
                frame=rebate.frame,
            ),
            span.head if index // wide == 0 else None,
            sizes.get(name),
        )
        for index, (name, (left, foot)) in enumerate(_cells(band.name, counts, places).items())
    )
    return Lite(
        name=band.name,
        foot=band.foot,
        height=band.height,
        top=band.top,
        width=span.width,
        panes=panes,
        weight=_seen_weight(band, glass, span, places.area),
        bars=places.bars,
        section=section,
        cell=(places.across, places.up),
        columns=places.columns,
        rows=places.feet,
        rebate=rebate,
        head=span.head,
        bar_area=places.area,
    )


def _seen_weight(band: Band, glass: GlassSpec, span: Span, bars: Figure | None) -> Figure:
    """The glass that is seen, kg: what lies in the rebates is counted as wood, as the frame is whole."""

    def at(quantity: str, value: float, unit: str) -> Figure:
        return named(join(band.name, quantity), value, unit)

    opening = span.width * band.height
    whole = opening if span.head is None else opening + span.head.area
    daylight = at("daylight area", whole if bars is None else whole - bars, "mm2")
    thick = at("glass thickness", true_thickness(glass), "mm")
    solid = glass_in_it(glass)
    return at("glass weight", daylight * (thick if solid is None else solid) * MASS / 1e6, "kg")


def _with_planted_bars(
    lite: Lite, band: Band, glass: GlassSpec, span: Span, thickness: Figure
) -> Lite:
    """The bars on both faces of its one pane."""
    before = None if lite.rebate is None else lite.rebate.lip + lite.pane.tape
    planting = plant_bars(
        glass, band.name, _panes(band.written), span, lite.pane, thickness, before
    )
    return dataclasses.replace(
        lite,
        panes=(dataclasses.replace(lite.pane, grid=planting.grid),),
        bars=planting.places.bars,
        section=planting.section,
        cell=(planting.places.across, planting.places.up),
        columns=planting.places.columns,
        rows=planting.places.feet,
        bar_area=planting.places.area,
        sight=planting.sight,
    )


def _added(weights: list[Figure]) -> Figure:
    total = weights[0]
    for weight in weights[1:]:
        total = total + weight
    return total
