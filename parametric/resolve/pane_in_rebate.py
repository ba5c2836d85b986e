"""One pane in a rebate: its daylight and the rebates beside it, less the clearance at each edge."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.glass_facts import MASS
from parametric.figures import Figure, named, smallest
from parametric.infill.glass import (
    GlassSpec,
    Pane,
    bites,
    glass_in_it,
    nominal_thickness,
    real_clearances,
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


def pane_in_rebate(
    glass: GlassSpec,
    name: str,
    day: Daylight,
    head: LeafHead | None,
    one: tuple[Figure, Figure] | None = None,
) -> Pane:
    """A pane bedded in its rebates; under a curve it follows that.

    Args:
        glass: as written.
        name: the pane's name.
        day: what is seen through it, and the rebates beside that.
        head: the curve over it, if any.
        one: the size it shares with others, mm, where it is ordered so.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    left, foot, across, up = day.left, day.foot, day.across, day.up
    clear = at("clearance", glass.clearance)
    thick = at("thickness", true_thickness(glass))
    solid = glass_in_it(glass)
    wide, high = across + day.at_left + day.at_right, up + day.at_foot + day.at_top
    width = at("width", wide - 2 * clear if one is None else one[0])
    level = high - 2 * clear if one is None else one[1]
    clears = real_clearances(name, clear, (wide - width, high - level), shared=one is not None)
    low = left - day.at_left + clears[0]
    floor = foot - day.at_foot + clears[1]
    daylight = (across, up)
    outline = None
    edges: tuple[Figure, ...] = ()
    if head is None:
        height = at("height", level)
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
        clearances=clears,
        bites=bites(
            name,
            smallest(day.at_left, day.at_right) - clears[0],
            smallest(day.at_foot, day.at_top) - clears[1],
        ),
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
