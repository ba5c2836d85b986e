"""Drawer boxes: two sides, a front and a back between them, a bottom in grooves all round.

from above                                   section, from the side
   |room| side                                ___                       ___
 __|    |_____________________                | |                       | |  back
|  |    |  back          |    |               | |  front (box)          | |
|  |    |________________|    |               |  ______________________  |
|  |    | bottom         |    |               |_|______________________|_|  bottom
|  |    |________________|    |               |_|  bottom up            |_|
case    |  front         |
        |<-- between --->|

A drawer's own front is planted on the box's, and is none of its parts; one behind a door has none.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from parametric.cases.drawer_corners import Corner, GrooveBand, size_corner
from parametric.cases.drawer_written import (
    CornerWord,
    DrawerSpec,
    SideSlidesSpec,
    UnderSlidesSpec,
    WoodenRunnersSpec,
)
from parametric.catalog.boards import Board
from parametric.catalog.screw_holes import DENSE_FROM
from parametric.catalog.timbers import Timber
from parametric.figures import Figure, largest, named, whole_down
from parametric.loaded import is_over
from parametric.names import join

WOODEN_RUN = Figure(
    2 / 3,
    "part of its length that a drawer on wooden runners draws out",
    origin="catalogue",
    unit="",
    source="common practice, no source: a third stays in, or it falls out",
)


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawerBox:
    """A drawer box resolved. Lengths mm, weight kg.

    `planted`: a front of its own covers the box's. `width` is over both sides; `between` inside them. `foot` is its low edge over the foot of
    its opening; `room_beside` each side of it, `room_above` and `room_behind` what its opening
    leaves. `weight` takes joints and grooves for wood, `contents` is what is laid in it.
    `least_above` and `least_behind` are what it asks for.
    """

    name: str
    written: DrawerSpec
    planted: bool
    width: Figure
    between: Figure
    height: Figure
    length: Figure
    foot: Figure
    side: Figure
    end: Figure
    room_beside: Figure
    room_above: Figure
    room_behind: Figure
    least_above: Figure
    least_behind: Figure
    clear_width: Figure
    clear_height: Figure
    clear_depth: Figure
    groove: GrooveBand
    bottom_thickness: Figure
    bottom_width: Figure
    bottom_length: Figure
    front: Corner
    back: Corner
    side_length: Figure
    front_length: Figure
    back_length: Figure
    draws_out: Figure
    stuff: Timber | Board
    bottom_stuff: Board
    weight: Figure
    contents: Figure


def size_drawer(
    spec: DrawerSpec,
    *,
    name: str,
    clear_width: Figure,
    clear_height: Figure,
    clear_depth: Figure,
    stuff: Timber | Board,
    bottom_stuff: Board,
    planted: bool = True,
) -> DrawerBox:
    """Size a drawer box for the opening in its case.

    Outside width: the opening less the room at both sides, or the inside width of the slides'
    data sheet and both sides; between: less both sides; bottom: that and two grooves less two
    clearances, both ways.

    Args:
        spec: the box as written.
        name: its name (`leaf E / drawer`).
        clear_width: between the sides of the case, or whatever its slides are screwed to, mm.
        clear_height: of its opening, or of its share of one, mm.
        clear_depth: from the back of its front to the case's back, mm.
        stuff: what sides, front and back are made of.
        bottom_stuff: what the bottom is made of.
        planted: whether a front of its own is planted on it; behind a door it has none.

    Source: common practice, no source; what slides ask, their data sheet.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    wide, high, deep = (
        at("clear width", clear_width),
        at("clear height", clear_height),
        at("clear depth", clear_depth),
    )
    side = at("side thickness", spec.sides)
    end = at("front and back thickness", side if spec.ends is None else spec.ends)
    foot, above = at("below the box", spec.below), at("least room above", spec.above)
    behind = at("least room behind", spec.behind)
    width = at("width", _width(spec, wide, side, name))
    between = at("between the sides", width - 2 * side)
    height = at(
        "height", _highest(spec, high - foot, above) if spec.height is None else spec.height
    )
    length = at("length", _longest(spec, deep - behind) if spec.length is None else spec.length)
    depth, clearance = (
        at("bottom groove depth", spec.bottom_groove),
        at("bottom clearance", spec.bottom_clearance),
    )
    thick = at("bottom thickness", spec.bottom)
    up = at("bottom groove up", spec.bottom_up)
    groove = GrooveBand(low=up, high=at("bottom groove top", up + thick), width=thick, depth=depth)
    bottom_width = at("bottom width", between + 2 * depth - 2 * clearance)
    bottom_length = at("bottom length", length - 2 * end + 2 * depth - 2 * clearance)
    front, back = (
        size_corner(
            spec,
            word,
            place=join(name, f"{where} corners"),
            height=height,
            side=side,
            end=end,
            groove=groove,
            dense=float(stuff.density) >= float(DENSE_FROM),
        )
        for where, word in (("front", spec.joint), ("back", back_joint(spec)))
    )
    density = at("density", stuff.density, "kg/m3")
    frame = (2 * length * side + 2 * between * end) * height * density
    sheet = bottom_width * bottom_length * thick * bottom_stuff.density
    return DrawerBox(
        name=name,
        written=spec,
        planted=planted,
        width=width,
        between=between,
        height=height,
        length=length,
        foot=foot,
        side=side,
        end=end,
        room_beside=at("room beside", (wide - width) / 2),
        room_above=at("room above", high - foot - height),
        room_behind=at("room behind", deep - length),
        least_above=above,
        least_behind=behind,
        clear_width=wide,
        clear_height=high,
        clear_depth=deep,
        groove=groove,
        bottom_thickness=thick,
        bottom_width=bottom_width,
        bottom_length=bottom_length,
        front=front,
        back=back,
        side_length=at("side length", length - front.lap - back.lap),
        front_length=at("front length", between + 2 * front.reach),
        back_length=at("back length", between + 2 * back.reach),
        draws_out=at("draws out", _draws_out(spec, length)),
        stuff=stuff,
        bottom_stuff=bottom_stuff,
        weight=at("weight", (frame + sheet) / 1e9, "kg"),
        contents=at("contents", _contents(spec.load, between, length - 2 * end), "kg"),
    )


def _contents(load: Figure, wide: Figure, deep: Figure) -> Figure:
    """What is laid in a drawer, by its inside."""
    if is_over(load):
        return load * wide * deep / 1e6
    return load * wide / 1e3


def _width(spec: DrawerSpec, clear: Figure, side: Figure, name: str) -> Figure:
    match spec:
        case SideSlidesSpec():
            return clear - 2 * named(join(name, "room for a slide"), spec.slides)
        case UnderSlidesSpec():
            less = named(join(name, "inside width less than the opening"), spec.inside_less)
            return clear - less + 2 * side
        case WoodenRunnersSpec():
            return clear - 2 * named(join(name, "room at a side"), spec.beside)
        case _:
            assert_never(spec)


def _highest(spec: DrawerSpec, room: Figure, above: Figure) -> Figure:
    """The highest box that fits, under what it needs above it, or under its kickers."""
    if isinstance(spec, WoodenRunnersSpec) and spec.kicker is not None:
        return room - largest(above, spec.kicker[1] + spec.kicker_gap)
    return room - above


def _longest(spec: DrawerSpec, room: Figure) -> Figure:
    """The longest box that fits: of the lengths slides are sold in, where it runs on slides."""
    match spec:
        case SideSlidesSpec() | UnderSlidesSpec():
            every = spec.lengths_every
            return whole_down(room / every) * every
        case WoodenRunnersSpec():
            return room
        case _:
            assert_never(spec)


def _draws_out(spec: DrawerSpec, length: Figure) -> Figure:
    """As written; else slides draw out to their whole length."""
    if spec.draws_out is not None:
        return spec.draws_out
    return length * WOODEN_RUN if isinstance(spec, WoodenRunnersSpec) else length


def back_joint(spec: DrawerSpec) -> CornerWord:
    """The joint of the back corners: as written, else the front's.

    Tails need not be blind there; over slides that hide beneath the box they cannot be at all,
    for the notch in the back cuts off its lowest pin.
    """
    if spec.back_joint is not None:
        return spec.back_joint
    if spec.joint not in ("half-blind dovetail", "through dovetail"):
        return spec.joint
    return "dowel" if isinstance(spec, UnderSlidesSpec) else "through dovetail"
