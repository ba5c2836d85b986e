"""One pane in a rebate: its daylight and the rebates beside it, less the clearance at each edge."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.glass_facts import MASS
from parametric.figures import Figure, named
from parametric.infill.glass import (
    GlassSpec,
    Pane,
    glass_in_it,
    nominal_thickness,
    true_thickness,
    unit_sizes,
)
from parametric.names import join
from parametric.outlines import Vertex, area_of, backwards, moved
from parametric.resolve.head import LeafHead


@dataclass(frozen=True, slots=True, kw_only=True)
class Daylight:
    """What is seen through one pane, and how far the rebates beside it reach in, mm.

    `across` and `up` are its size, `up` to the springing under a curve; `frame` is the rebate
    of the frame, by which the curve's lies outside it.
    """

    left: Figure
    foot: Figure
    across: Figure
    up: Figure
    at_left: Figure
    at_foot: Figure
    at_right: Figure
    at_top: Figure
    frame: Figure


def pane_in_rebate(glass: GlassSpec, name: str, day: Daylight, head: LeafHead | None) -> Pane:
    """A pane bedded in its rebates; under a curve it follows that.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    left, foot, across, up = day.left, day.foot, day.across, day.up
    clear = at("clearance", glass.clearance)
    thick = at("thickness", true_thickness(glass))
    solid = glass_in_it(glass)
    low = left - day.at_left + clear
    floor = foot - day.at_foot + clear
    width = at("width", across + day.at_left + day.at_right - 2 * clear)
    bites = [reach - clear for reach in (day.at_left, day.at_foot, day.at_right, day.at_top)]
    daylight = (across, up)
    outline = None
    edges: tuple[Figure, ...] = ()
    if head is None:
        height = at("height", up + day.at_foot + day.at_top - 2 * clear)
        area: float = width * height
    else:
        out = named(join(name, "glass outside the arch"), day.frame - clear)
        right = low + width
        edges = (
            at("left edge height", head.height(low, join(name, "left edge"), out=out) - floor),
            at("right edge height", head.height(right, join(name, "right edge"), out=out) - floor),
        )
        chain = head.edge(float(low), float(right), out=out)
        outline = moved(
            (
                Vertex(float(low), float(floor)),
                Vertex(float(right), float(floor)),
                *backwards(chain),
            ),
            -float(low),
            -float(floor),
        )
        height = at("height", head.most(low, right, join(name, "highest"), out=out) - floor)
        area = Figure(area_of(outline), op="area of the outline", unit="mm2")
        left_day = head.height(left, join(name, "daylight at the left"))
        right_day = head.height(left + across, join(name, "daylight at the right"))
        daylight = (
            across,
            at("daylight height", head.most(left, left + across, join(name, "daylight to")) - foot),
        )
        edges = (
            *edges,
            at("daylight at the left edge", left_day - foot),
            at("daylight at the right edge", right_day - foot),
        )
    return Pane(
        name=name,
        written=glass,
        kind=glass.kind,
        width=width,
        height=height,
        nominal=at("nominal thickness", nominal_thickness(glass)),
        thickness=thick,
        clearance=clear,
        bite=at("bite", min(bites, key=float)),
        tape=at("tape thickness", glass.tape),
        left=low,
        foot=floor,
        daylight=daylight,
        opening=daylight,
        weight=at("weight", area * (thick if solid is None else solid) * MASS / 1e6, "kg"),
        outline=outline,
        unit=unit_sizes(glass, name),
        edges=edges,
    )
