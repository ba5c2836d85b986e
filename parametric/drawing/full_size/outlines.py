"""Outlines of templates: straight lines and true arcs, and the strip that says which side is waste.

A vertex is (x, y, bulge). The bulge belongs to the edge that leaves it: the tangent of a
quarter of the arc's angle, 0 for a straight line, positive when the arc turns
anticlockwise. Outlines run anticlockwise.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from typing import Literal, NamedTuple

from parametric.drawing.layers import Layer
from parametric.drawing.plane import Box, Point, Polygon, along, arc_points, around, cut_line, edges
from parametric.drawing.primitives import Arc, Primitive, Stroke
from parametric.drawing.sheet import View
from parametric.model import relief_chord, relief_turn

Waste = Literal["inside", "outside"]

STRIP = 5.0
"""Width of the hatched strip on the waste side, mm."""
_GAP = 1.8
_CHORD = 0.2
_QUARTER = math.tan(math.pi / 8)
_SAME = 1e-9


class Vertex(NamedTuple):
    """A corner of an outline and the bulge of the edge that leaves it."""

    x: float
    y: float
    bulge: float = 0.0


Outline = tuple[Vertex, ...]


def square(box: Box) -> Outline:
    """A box."""
    return tuple(Vertex(x, y) for x, y in box.polygon)


def rounded(box: Box, radius: float, relief: float = 0.0) -> Outline:
    """A box with round corners, or with a larger cutter run into each of them.

    Args:
        box: its sides, mm.
        radius: of the corners.
        relief: radius of the cutter that relieves them; none where it is no larger.
    """
    if radius <= _SAME and relief <= radius:
        return square(box)
    off, bulge = radius, _QUARTER
    if relief > radius:
        off, bulge = relief_chord(radius, relief), math.tan(relief_turn(radius, relief) / 4)
    x0, y0, x1, y1 = box
    return (
        Vertex(x1 - off, y0, bulge),
        Vertex(x1, y0 + off),
        Vertex(x1, y1 - off, bulge),
        Vertex(x1 - off, y1),
        Vertex(x0 + off, y1, bulge),
        Vertex(x0, y1 - off),
        Vertex(x0, y0 + off, bulge),
        Vertex(x0 + off, y0),
    )


def arched(width: float, spring: float, rise: float) -> Outline:
    """A light with a segmental or round head, its low left corner at zero.

    Args:
        width: between the sides, mm.
        spring: height of the sides.
        rise: of the arc over them, no more than half the width.
    """
    return (
        Vertex(0.0, 0.0),
        Vertex(width, 0.0),
        # The tangent of a quarter of the angle is the rise over half the chord.
        Vertex(width, spring, rise / (width / 2)),
        Vertex(0.0, spring),
    )


def _arc(a: Vertex, b: Vertex) -> tuple[Point, float, float, float]:
    """Centre, radius, start and end of the edge between two vertices, anticlockwise, degrees."""
    off = (1 / a.bulge - a.bulge) / 4
    centre = ((a.x + b.x) / 2 - (b.y - a.y) * off, (a.y + b.y) / 2 + (b.x - a.x) * off)
    radius = math.dist((a.x, a.y), centre)
    start = math.degrees(math.atan2(a.y - centre[1], a.x - centre[0]))
    sweep = math.degrees(4 * math.atan(a.bulge))
    return (
        (centre, radius, start, start + sweep)
        if sweep > 0
        else (
            centre,
            radius,
            start + sweep,
            start,
        )
    )


def drawn(outline: Outline, view: View, layer: Layer = "edge") -> Iterator[Primitive]:
    """An outline on paper: lines and arcs, each edge on its own."""
    for a, b in itertools.pairwise((*outline, outline[0])):
        if math.dist((a.x, a.y), (b.x, b.y)) <= _SAME:
            continue
        if a.bulge == 0.0:
            points = (view.at((a.x, a.y)), view.at((b.x, b.y)))
            yield Stroke(layer=layer, points=points, view=view.name)
            continue
        centre, radius, start, end = _arc(a, b)
        yield Arc(
            layer=layer,
            centre=view.at(centre),
            radius=radius / view.scale,
            start=start,
            end=end,
            view=view.name,
        )


def polygon(outline: Outline) -> Polygon:
    """An outline with its arcs as short chords, mm."""
    points: list[Point] = []
    for a, b in itertools.pairwise((*outline, outline[0])):
        if a.bulge == 0.0:
            points.append((a.x, a.y))
            continue
        centre, radius, start, end = _arc(a, b)
        run = arc_points(centre, radius, start, end, _CHORD)
        points += (run if a.bulge > 0 else run[::-1])[:-1]
    return tuple(points)


# --- the waste side ------------------------------------------------------------------------


def waste_strip(outline: Outline, waste: Waste) -> tuple[tuple[Point, Point], ...]:
    """Hatch lines on the waste side of an outline, no further from it than the strip is wide.

    Each level of the hatching is cut at the outline, and of what lies on the waste side only
    what is near enough to some edge is kept: no corner needs a rule of its own.
    """
    shape = polygon(outline)
    box = around(shape).grown(STRIP)
    slope = 1.0 if waste == "inside" else -1.0
    found: list[tuple[Point, Point]] = []
    long = box.height
    start, end = (box.x0 - long, box.x1) if slope > 0 else (box.x0, box.x1 + long)
    step = _GAP * math.sqrt(2)
    for index in range(math.ceil(start / step), math.floor(end / step) + 1):
        x = index * step
        a, b = (x, box.y0), (x + slope * long, box.y1)
        for p, q in cut_line(a, b, (shape,), keep_inside=waste == "inside"):
            found += [(along(p, q, low), along(p, q, high)) for low, high in _near(p, q, shape)]
    return tuple(found)


def _near(p: Point, q: Point, shape: Polygon) -> list[tuple[float, float]]:
    """Which parts of the way from p to q lie within the strip's width of a side of the shape."""
    spans = sorted(span for a, b in edges(shape) if (span := _capsule(p, q, a, b)) is not None)
    joined: list[tuple[float, float]] = []
    for low, high in spans:
        if joined and low <= joined[-1][1] + _SAME:
            joined[-1] = (joined[-1][0], max(high, joined[-1][1]))
        else:
            joined.append((low, high))
    return [(low, high) for low, high in joined if high - low > _SAME]


def _capsule(p: Point, q: Point, a: Point, b: Point) -> tuple[float, float] | None:
    """The part of the way from p to q that is within the strip's width of the line from a to b.

    All points that near make a shape with no hollow, so what they leave of a line is one run.
    """
    if any(
        min(a[k], b[k]) - STRIP > max(p[k], q[k]) or max(a[k], b[k]) + STRIP < min(p[k], q[k])
        for k in (0, 1)
    ):
        return None
    found = [span for end in (a, b) if (span := _disc(p, q, end)) is not None]
    ex, ey = b[0] - a[0], b[1] - a[1]
    far = math.hypot(ex, ey)
    if far > _SAME:
        ux, uy = ex / far, ey / far
        # p and q as seen from a, along a-b and square to it: a box to be clipped to.
        seen = [
            ((c[0] - a[0]) * ux + (c[1] - a[1]) * uy, (c[1] - a[1]) * ux - (c[0] - a[0]) * uy)
            for c in (p, q)
        ]
        low, high = 0.0, 1.0
        for (s, e), (least, most) in zip(
            zip(*seen, strict=True), ((0.0, far), (-STRIP, STRIP)), strict=True
        ):
            if abs(e - s) < _SAME:
                if not least <= s <= most:
                    low, high = 1.0, 0.0
                continue
            first, last = sorted(((least - s) / (e - s), (most - s) / (e - s)))
            low, high = max(low, first), min(high, last)
        if low < high:
            found.append((low, high))
    if not found:
        return None
    return min(low for low, _ in found), max(high for _, high in found)


def _disc(p: Point, q: Point, centre: Point) -> tuple[float, float] | None:
    """The part of the way from p to q that lies within the strip's width of a point."""
    dx, dy = q[0] - p[0], q[1] - p[1]
    fx, fy = p[0] - centre[0], p[1] - centre[1]
    a, b, c = dx * dx + dy * dy, 2 * (fx * dx + fy * dy), fx * fx + fy * fy - STRIP**2
    under = b * b - 4 * a * c
    if a < _SAME or under <= 0:
        return None
    half = math.sqrt(under)
    low, high = max(0.0, (-b - half) / (2 * a)), min(1.0, (-b + half) / (2 * a))
    return (low, high) if low < high else None
