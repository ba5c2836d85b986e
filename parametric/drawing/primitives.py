"""What every drawing comes down to: strokes, circles, arcs, black fills and lines of text.

Positions are mm on paper from the sheet's low left corner; `view` names the view that a
thing belongs to, "" is the paper itself.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.drawing import lettering
from parametric.drawing.fractions import set_stacked
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import TEXT, Extent, Weight
from parametric.drawing.plane import Box, Point, Polygon, arc_points, around

Anchor = Literal["left", "centre", "right"]
Turn = Literal[0, 90]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stroke:
    """A line or a polyline."""

    layer: Layer
    points: Polygon
    closed: bool = False
    view: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Circle:
    """A full circle."""

    layer: Layer
    centre: Point
    radius: float
    view: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Arc:
    """A part of a circle, anticlockwise from start to end, degrees."""

    layer: Layer
    centre: Point
    radius: float
    start: float
    end: float
    view: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Fill:
    """A small black area: an arrowhead, a dot."""

    layer: Layer
    points: Polygon
    view: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Label:
    """One line of text on its base line. `mask` whitens what lies under it.

    `stacked` sets its fractions of an inch one numeral over the other; the code that prints
    a length says so, since a date or "1/2" in a sentence is no length.
    """

    text: str
    at: Point
    height: float = TEXT
    anchor: Anchor = "left"
    turned: Turn = 0
    weight: Weight = "regular"
    layer: Layer = "text"
    view: str = ""
    mask: bool = False
    stacked: bool = False

    @property
    def ink(self) -> Extent:
        """How wide it is, and how far it hangs below its line and stands above."""
        if self.stacked:
            return set_stacked(self.text, self.height, self.weight).ink
        return lettering.extent(self.text, self.height, self.weight)

    @property
    def box(self) -> Box:
        """What its ink takes up."""
        ink = self.ink
        back = {"left": 0.0, "centre": ink.width / 2, "right": ink.width}[self.anchor]
        x, y = self.at
        if self.turned == 0:
            return Box(x - back, y - ink.below, x - back + ink.width, y + ink.above)
        return Box(x - ink.above, y - back, x + ink.below, y - back + ink.width)


Primitive = Stroke | Circle | Arc | Fill | Label


def reach(primitive: Primitive) -> Box:
    """The box round a primitive, mm on paper."""
    match primitive:
        case Stroke() | Fill():
            return around(primitive.points)
        case Circle():
            (x, y), r = primitive.centre, primitive.radius
            return Box(x - r, y - r, x + r, y + r)
        case Arc():
            a = primitive
            return around(arc_points(a.centre, a.radius, a.start, a.end, a.radius / 4))
        case Label():
            return primitive.box
        case _:
            assert_never(primitive)


def arrowhead(tip: Point, tail: Point, length: float, half: float = 0.32) -> Polygon:
    """A filled arrowhead at the tip of a line that comes from the tail."""
    far = math.dist(tip, tail)
    ux, uy = (tail[0] - tip[0]) / far, (tail[1] - tip[1]) / far
    bx, by = tip[0] + ux * length, tip[1] + uy * length
    return (tip, (bx - uy * half, by + ux * half), (bx + uy * half, by - ux * half))


def warning_triangle(at: Point) -> tuple[Primitive, ...]:
    """The triangle of a warning, 3.6 wide, its low left corner at a point."""
    x, y = at
    corners = ((x, y), (x + 3.6, y), (x + 1.8, y + 3.2))
    return (
        Stroke(layer="warning", points=corners, closed=True),
        Label(text="!", at=(x + 1.8, y + 0.5), height=1.8, anchor="centre", weight="bold"),
    )
