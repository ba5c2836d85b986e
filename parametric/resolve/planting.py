"""Bars planted on the faces of one pane: where they stand, how deep they lie, what goes under them.

section through an upright bar, front below

 ---------------------------  the frame's back
          |____|    a back bar, off its bed by its thickness
 ===========================  glass, tape between
          |    |    a front bar
 ---------------------------  the frame's face
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.glass_facts import SPACER_SHY
from parametric.figures import Figure, named
from parametric.infill.glass import GlassSpec, Pane, SpacerGrid
from parametric.names import join
from parametric.resolve.bar_places import BarPlaces, PlantedBar, Span, place_bars
from parametric.resolve.head import LeafHead


@dataclass(frozen=True, slots=True, kw_only=True)
class Planting:
    """The bars of one pane: their places and section, the curve they end on, the grid in the unit."""

    section: PlantedBar
    places: BarPlaces
    sight: LeafHead | None
    grid: SpacerGrid | None


def plant_bars(
    glass: GlassSpec,
    place: str,
    counts: tuple[int, int],
    span: Span,
    pane: Pane,
    thickness: Figure,
    before: Figure | None,
) -> Planting:
    """Bars from sight edge to sight edge, front and back over one another.

    Args:
        glass: as written.
        place: the lite's name.
        counts: how many openings wide and high they make.
        span: the lite between stiles and rails.
        pane: its one pane.
        thickness: of the frame, mm.
        before: wood and tape before glass in a rebate, mm; None in the middle of the leaf.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    face = at("bar width", glass.muntin)
    sight = span
    if pane.stops is not None:
        stop = pane.stops.width
        levels = 2 if span.head is None else 1
        sight = Span(
            left=at("sight edge at the left", span.left + stop),
            foot=at("sight edge at the foot", span.foot + stop),
            width=at("sight width", span.width - 2 * stop),
            height=at("sight height", span.height - levels * stop),
            top=at("sight edge at the top", span.top - stop),
            head=None if span.head is None else span.head.inside(stop),
        )
    front = at("wood to the glass", (thickness - pane.thickness) / 2 if before is None else before)
    places = place_bars(place, counts, sight, face)
    front_bed = at("bed of the front bars", front - glass.bar_tape)
    back_bed = at("bed of the back bars", front + pane.thickness + glass.bar_tape)
    off = glass.bar_thickness
    return Planting(
        section=PlantedBar(
            face=face,
            front=at("thickness of a front bar", off[0]),
            back=at("thickness of a back bar", off[1]),
            tape=at("tape under a bar", glass.bar_tape),
            front_bed=front_bed,
            back_bed=back_bed,
            below_face=at("front bars below the frame's face", front_bed - off[0]),
            below_back=at("back bars below the frame's back", thickness - back_bed - off[1]),
            half_lapped=glass.bar_crossings == "half lapped",
        ),
        places=places,
        sight=sight.head,
        grid=_spacer_grid(pane, places, face) if glass.bars == "spaced" else None,
    )


def _spacer_grid(pane: Pane, places: BarPlaces, face: Figure) -> SpacerGrid:
    """Under the middle of every planted bar, and narrower than it."""

    def at(quantity: str, value: float) -> Figure:
        return named(join(pane.name, quantity), value)

    uprights = [bar for bar in places.bars if bar.upright]
    levels = [bar for bar in reversed(places.bars) if not bar.upright]
    return SpacerGrid(
        uprights=tuple(
            at(f"upright spacer bar {n} from the left edge", (bar.low + bar.high) / 2 - pane.left)
            for n, bar in enumerate(uprights, start=1)
        ),
        levels=tuple(
            at(f"level spacer bar {n} from the lower edge", (bar.low + bar.high) / 2 - pane.foot)
            for n, bar in enumerate(levels, start=1)
        ),
        most=at("widest spacer bar", face - 2 * SPACER_SHY),
    )
