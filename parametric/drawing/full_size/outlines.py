"""Outlines of templates on paper: straight lines and true arcs, and the strip that is waste."""

from __future__ import annotations

import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence
from itertools import pairwise
from typing import Literal

from parametric.drawing.layers import Layer
from parametric.drawing.plane import Box, Point, Polygon, along, arc_points, around, cut_line, edges
from parametric.drawing.primitives import Arc, Primitive, Stroke
from parametric.drawing.sheet import View
from parametric.model import relief_chord, relief_turn
from parametric.outlines import QUARTER, Outline, Vertex, arc_of

Waste = Literal["inside", "outside"]
Side = tuple[Point, Point]

STRIP = 5.0
"""Width of the hatched strip on the waste side, mm."""
_GAP = 1.8
_CHORD = 0.2
_SAGITTA = 2e-4
"""Of the chords of a flat arc, mm: short ones where it is tight, no more than it takes elsewhere."""
_WIDE, _TRUE = 60.0, 0.002
"""From this radius on chords may be longer; how far off the arc they may lie, mm."""
_SAME = 1e-9


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
    off, bulge = radius, QUARTER
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


def drawn(outline: Outline, view: View, layer: Layer = "edge") -> Iterator[Primitive]:
    """A closed outline on paper: lines and arcs, each edge on its own."""
    return drawn_chain((*outline, outline[0]), view, layer)


def drawn_chain(chain: Outline, view: View, layer: Layer = "edge") -> Iterator[Primitive]:
    """An open chain on paper: lines and arcs, each edge on its own."""
    for a, b in pairwise(chain):
        if math.dist((a.x, a.y), (b.x, b.y)) <= _SAME:
            continue
        arc = arc_of(a, b)
        if arc is None:
            points = (view.at((a.x, a.y)), view.at((b.x, b.y)))
            yield Stroke(layer=layer, points=points, view=view.name)
            continue
        start, sweep = math.degrees(arc.start), math.degrees(arc.sweep)
        yield Arc(
            layer=layer,
            centre=view.at((arc.x, arc.y)),
            radius=arc.radius / view.scale,
            start=min(start, start + sweep),
            end=max(start, start + sweep),
            view=view.name,
        )


def polygon(outline: Outline) -> Polygon:
    """An outline with its arcs as short chords, mm."""
    return chords((*outline, outline[0]))[:-1]


def chords(chain: Outline) -> Polygon:
    """An open chain with its arcs as short chords, mm."""
    points: list[Point] = []
    for a, b in pairwise(chain):
        arc = arc_of(a, b)
        if arc is None:
            points.append((a.x, a.y))
            continue
        start, sweep = math.degrees(arc.start), math.degrees(arc.sweep)
        low, high = min(start, start + sweep), max(start, start + sweep)
        chord = max(_CHORD, math.sqrt(8 * arc.radius * _SAGITTA))
        run = arc_points((arc.x, arc.y), arc.radius, low, high, chord)
        points += (run if sweep > 0 else run[::-1])[:-1]
    return (*points, (chain[-1].x, chain[-1].y))


# --- the waste side ------------------------------------------------------------------------


def waste_strip(
    outline: Outline, waste: Waste, along_only: Outline | None = None
) -> tuple[tuple[Point, Point], ...]:
    """Hatch lines on the waste side of an outline, no further from it than the strip is wide.

    With an open chain of its edges, only along that.

    Each level of the hatching is cut at the outline, and of what lies on the waste side only
    what is near enough to some edge is kept: no corner needs a rule of its own.
    """
    shape = polygon(outline)
    sides = edges(shape) if along_only is None else pairwise(chords(along_only))
    box = around(shape).grown(STRIP)
    slope = 1.0 if waste == "inside" else -1.0
    found: list[tuple[Point, Point]] = []
    long = box.height
    start, end = (box.x0 - long, box.x1) if slope > 0 else (box.x0, box.x1 + long)
    step = _GAP * math.sqrt(2)
    near_to = _by_level(sides, box.y0, slope, step)
    for index in range(math.ceil(start / step), math.floor(end / step) + 1):
        near = near_to.get(index)
        if near is None:
            continue
        x = index * step
        a, b = (x, box.y0), (x + slope * long, box.y1)
        for p, q in cut_line(a, b, (shape,), keep_inside=waste == "inside"):
            found += [(along(p, q, low), along(p, q, high)) for low, high in _near(p, q, near)]
    return tuple(found)


def _by_level(
    sides: Iterable[Side], foot: float, slope: float, step: float
) -> dict[int, list[Side]]:
    """The sides that each level of the hatching can be near to.

    A curve is many short sides, and a level comes near few of them.
    """
    found: defaultdict[int, list[Side]] = defaultdict(list)
    # A strip of paper at 45 degrees is so much wider measured level; a hair more is as good.
    wide = STRIP * math.sqrt(2) + 1e-6
    for side in sides:
        low, high = sorted(x - slope * (y - foot) for x, y in side)
        for index in range(math.floor((low - wide) / step), math.ceil((high + wide) / step) + 1):
            found[index].append(side)
    return found


def _near(p: Point, q: Point, sides: Sequence[Side]) -> list[tuple[float, float]]:
    """Which parts of the way from p to q lie within the strip's width of one of the sides."""
    spans = sorted(span for a, b in sides if (span := _capsule(p, q, a, b)) is not None)
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
