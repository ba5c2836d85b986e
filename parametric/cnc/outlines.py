"""Closed outlines of the finished edge: straight lines and true arcs.

A vertex is (x, y, bulge). The bulge belongs to the edge that leaves the vertex: the
tangent of a quarter of the arc's angle, 0 for a straight line, positive when the arc
turns counter-clockwise. Every outline here runs counter-clockwise, so a positive bulge
is a round inside corner and the wood to be taken away lies on the left.
"""

from __future__ import annotations

import math
from typing import NamedTuple

from parametric.model import relief_chord, relief_turn

QUARTER = math.tan(math.pi / 8)
HALF = 1.0
_SAME = 1e-9
"""mm: two points nearer than this are one point."""


class Vertex(NamedTuple):
    """A corner of an outline and the bulge of the edge that leaves it."""

    x: float
    y: float
    bulge: float = 0.0


Outline = tuple[Vertex, ...]
Bounds = tuple[float, float, float, float]
"""x low, y low, x high, y high, mm."""
Radii = tuple[float, float, float, float]
"""Corner radii, mm: low right, high right, high left, low left."""


def rectangle(x0: float, y0: float, x1: float, y1: float) -> Outline:
    """A square-cornered outline."""
    return (Vertex(x0, y0), Vertex(x1, y0), Vertex(x1, y1), Vertex(x0, y1))


def rounded_rectangle(bounds: Bounds, radii: Radii) -> Outline:
    """A rectangle with a radius at each corner, 0 for a square one.

    Two radii that meet become one half circle, so that a round-ended slot has two arcs
    and a hole has two halves.

    Raises:
        ValueError: the radii do not fit the sides.
    """
    x0, y0, x1, y1 = bounds
    low_right, high_right, high_left, low_left = radii
    sides = (
        (low_right + high_right, y1 - y0),
        (high_right + high_left, x1 - x0),
        (high_left + low_left, y1 - y0),
        (low_left + low_right, x1 - x0),
    )
    if min(radii) < 0 or any(used > side + _SAME for used, side in sides):
        raise ValueError(f"corner radii {radii} do not fit {x1 - x0} x {y1 - y0}")
    corners = (
        ((x1 - low_right, y0), (x1, y0 + low_right), low_right),
        ((x1, y1 - high_right), (x1 - high_right, y1), high_right),
        ((x0 + high_left, y1), (x0, y1 - high_left), high_left),
        ((x0, y0 + low_left), (x0 + low_left, y0), low_left),
    )
    vertices: list[Vertex] = []
    for enter, leave, radius in corners:
        if radius == 0:
            vertices.append(Vertex(*enter))
        else:
            vertices.extend((Vertex(*enter, QUARTER), Vertex(*leave)))
    return _half_circles(_no_short_edges(vertices))


def relieved_rectangle(bounds: Bounds, corner: float, relief: float) -> Outline:
    """A rectangle into each of whose corners, round or square, a larger cutter is run.

    Raises:
        ValueError: the reliefs do not fit the sides.
    """
    x0, y0, x1, y1 = bounds
    chord = relief_chord(corner, relief)
    if 2 * chord > min(x1 - x0, y1 - y0) + _SAME:
        raise ValueError(f"corners relieved by r {relief} do not fit {x1 - x0} x {y1 - y0}")
    bulge = math.tan(relief_turn(corner, relief) / 4)
    corners = (
        ((x1 - chord, y0), (x1, y0 + chord)),
        ((x1, y1 - chord), (x1 - chord, y1)),
        ((x0 + chord, y1), (x0, y1 - chord)),
        ((x0, y0 + chord), (x0 + chord, y0)),
    )
    arcs = [v for enter, leave in corners for v in (Vertex(*enter, bulge), Vertex(*leave))]
    return tuple(_no_short_edges(arcs))


def _no_short_edges(vertices: list[Vertex]) -> list[Vertex]:
    following = vertices[1:] + vertices[:1]
    return [
        a
        for a, b in zip(vertices, following, strict=True)
        if math.hypot(b.x - a.x, b.y - a.y) > _SAME
    ]


def _half_circles(vertices: list[Vertex]) -> Outline:
    """Join neighbouring quarter turns about one centre into half turns."""
    start = next((i for i, v in enumerate(vertices) if v.bulge == 0), 0)
    turned = vertices[start:] + vertices[:start]
    joined: list[Vertex] = []
    for vertex in turned:
        if vertex.bulge == QUARTER and joined and joined[-1].bulge == QUARTER:
            joined[-1] = joined[-1]._replace(bulge=HALF)
        else:
            joined.append(vertex)
    return tuple(joined)


def bounds_of(outline: Outline) -> Bounds:
    """The smallest box round an outline; an arc may reach beyond its two ends."""
    points = [(v.x, v.y) for v in outline]
    following = outline[1:] + outline[:1]
    for a, b in zip(outline, following, strict=True):
        if a.bulge:
            points.extend(_furthest(a, b))
    xs, ys = zip(*points, strict=True)
    return (min(xs), min(ys), max(xs), max(ys))


def _furthest(a: Vertex, b: Vertex) -> list[tuple[float, float]]:
    """The points of a counter-clockwise arc that lie furthest right, up, left or down."""
    # the centre stands off the middle of the chord by half the chord / tan(half the angle)
    off = (1 / a.bulge - a.bulge) / 4
    x, y = (a.x + b.x) / 2 - (b.y - a.y) * off, (a.y + b.y) / 2 + (b.x - a.x) * off
    radius = math.hypot(a.x - x, a.y - y)
    start, sweep = math.atan2(a.y - y, a.x - x), 4 * math.atan(a.bulge)
    ways = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))
    return [
        (x + radius * way[0], y + radius * way[1])
        for way in ways
        if (math.atan2(way[1], way[0]) - start) % math.tau <= sweep
    ]
