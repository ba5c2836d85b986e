"""What a leaf weighs before it is cut: gross volumes of wood, and its glass."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.timbers import Timber
from parametric.figures import Figure, named
from parametric.names import join
from parametric.resolve.bar_places import PlantedBar
from parametric.resolve.lite import Lite
from parametric.resolve.panel_field import PanelField
from parametric.resolve.rail import Rail


@dataclass(frozen=True, slots=True, kw_only=True)
class Weights:
    """What a leaf weighs by gross volumes, kg: to lift, to carry in, to hang."""

    frame_volume: Figure
    frame: Figure
    panels: Figure
    glass: Figure
    estimate: Figure
    without_glass: Figure


def weigh_leaf(
    place: str,
    height: Figure,
    thickness: Figure,
    left: Figure,
    right: Figure,
    rails: tuple[Rail, ...],
    lites: tuple[Lite, ...],
    panels: tuple[PanelField, ...],
    timber: Timber,
) -> Weights:
    """Gross volumes times density: tenons and slots cancel, stops and hardware left out.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "kg") -> Figure:
        return named(join(place, quantity), value, unit)

    stiles = (left + right) * height * thickness
    sections: Figure = rails[0].height
    for rail in rails[1:]:
        sections = sections + rail.height
    gross = stiles + sections * rails[0].length * thickness
    for rail in rails:
        if rail.head is not None:
            gross = gross - rail.head.area * thickness
    for lite in lites:
        if lite.bar_area is not None:
            gross = gross + lite.bar_area * _bar_thickness(lite, thickness)
    volume = at("frame volume", gross, "mm3")
    frame = at("frame weight", volume * timber.density / 1e9)
    panel = at("panel weight", _total([p.panel.weight for p in panels]))
    glass = at("glass weight", _total([lite.weight for lite in lites]))
    bare = at("weight without glass", frame + panel)
    return Weights(
        frame_volume=volume,
        frame=frame,
        panels=panel,
        glass=glass,
        estimate=at("weight estimate", bare + glass),
        without_glass=bare,
    )


def _bar_thickness(lite: Lite, frame: Figure) -> Figure:
    """How much wood stands through the leaf in a bar: as the frame, or planted on both faces."""
    planted = lite.section
    return planted.front + planted.back if isinstance(planted, PlantedBar) else frame


def _total(values: list[Figure]) -> Figure:
    total = values[0] if values else Figure(0.0, unit="kg")
    for value in values[1:]:
        total = total + value
    return total
