"""Closed outlines of the finished edge: straight lines and true arcs.

A vertex is (x, y, bulge). The bulge belongs to the edge that leaves the vertex: the
tangent of a quarter of the arc's angle, 0 for a straight line, positive when the arc
turns counter-clockwise. Every outline runs counter-clockwise, so a positive bulge bulges
outwards (a round inside corner of what is taken away) and the inside lies on the left.
"""

from __future__ import annotations

import math
from typing import NamedTuple

QUARTER = math.tan(math.pi / 8)
HALF = 1.0
SAME = 1e-9
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
    if min(radii) < 0 or any(used > side + SAME for used, side in sides):
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
    return _half_circles(no_short_edges(vertices))


def no_short_edges(vertices: list[Vertex]) -> list[Vertex]:
    """The vertices of an outline without those that lie on the next one."""
    following = vertices[1:] + vertices[:1]
    return [
        a
        for a, b in zip(vertices, following, strict=True)
        if math.hypot(b.x - a.x, b.y - a.y) > SAME
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
    for a, b in edges(outline):
        points.extend(_furthest(a, b))
    xs, ys = zip(*points, strict=True)
    return (min(xs), min(ys), max(xs), max(ys))


def edges(outline: Outline) -> list[tuple[Vertex, Vertex]]:
    """The edges of a closed outline, each from the vertex it leaves to the one it meets."""
    return list(zip(outline, outline[1:] + outline[:1], strict=True))


class Arc(NamedTuple):
    """The circle that an edge runs on: centre, radius, where it begins and how far it turns, rad."""

    x: float
    y: float
    radius: float
    start: float
    sweep: float


def arc_of(a: Vertex, b: Vertex) -> Arc | None:
    """The circle of the edge that leaves `a` for `b`; None for a straight one."""
    if a.bulge == 0:
        return None
    # the centre stands off the middle of the chord by half the chord / tan(half the angle)
    off = (1 / a.bulge - a.bulge) / 4
    x, y = (a.x + b.x) / 2 - (b.y - a.y) * off, (a.y + b.y) / 2 + (b.x - a.x) * off
    return Arc(
        x=x,
        y=y,
        radius=math.hypot(a.x - x, a.y - y),
        start=math.atan2(a.y - y, a.x - x),
        sweep=4 * math.atan(a.bulge),
    )


def _furthest(a: Vertex, b: Vertex) -> list[tuple[float, float]]:
    """The points of an edge that lie furthest right, up, left or down, but for its ends."""
    arc = arc_of(a, b)
    if arc is None:
        return []
    start = arc.start if arc.sweep > 0 else arc.start + arc.sweep
    ways = ((1.0, 0.0), (0.0, 1.0), (-1.0, 0.0), (0.0, -1.0))
    return [
        (arc.x + arc.radius * way[0], arc.y + arc.radius * way[1])
        for way in ways
        if (math.atan2(way[1], way[0]) - start) % math.tau <= abs(arc.sweep)
    ]


def area_of(outline: Outline) -> float:
    """Area inside an outline, mm2; negative where it runs clockwise.

    Source: the trapezium rule over its corners, and a circular segment for each arc.
    """
    total = 0.0
    for a, b in edges(outline):
        total += (a.x * b.y - b.x * a.y) / 2
        arc = arc_of(a, b)
        if arc is not None:
            total += arc.radius**2 * (arc.sweep - math.sin(arc.sweep)) / 2
    return total


def length_of(outline: Outline) -> float:
    """Length once round an outline, mm."""
    total = 0.0
    for a, b in edges(outline):
        arc = arc_of(a, b)
        total += math.hypot(b.x - a.x, b.y - a.y) if arc is None else arc.radius * abs(arc.sweep)
    return total


def moved(outline: Outline, dx: float, dy: float) -> Outline:
    """The same outline elsewhere."""
    return tuple(Vertex(v.x + dx, v.y + dy, v.bulge) for v in outline)


def turned_over(outline: Outline, *, across: float) -> Outline:
    """The outline seen from behind: x becomes `across` less x; it still runs the same way round.

    An edge is left by its other end, so each bulge moves on to that one.
    """
    mirrored = [Vertex(across - b.x, b.y, a.bulge) for a, b in edges(outline)]
    return tuple(reversed(mirrored))


def turned_upside_down(outline: Outline, *, up: float) -> Outline:
    """The outline mirrored from foot to top: y becomes `up` less y; it runs the same way round."""
    mirrored = [Vertex(b.x, up - b.y, a.bulge) for a, b in edges(outline)]
    return tuple(reversed(mirrored))


def turned_round(outline: Outline, *, across: float, up: float) -> Outline:
    """The outline turned through half a circle in its own plane."""
    return tuple(Vertex(across - v.x, up - v.y, v.bulge) for v in outline)


def backwards(chain: Outline) -> Outline:
    """An open chain run from its other end."""
    turned = [*(-vertex.bulge for vertex in reversed(chain[:-1])), 0.0]
    return tuple(
        Vertex(vertex.x, vertex.y, bulge)
        for vertex, bulge in zip(reversed(chain), turned, strict=True)
    )
