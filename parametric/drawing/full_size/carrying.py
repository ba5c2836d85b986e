"""Things drawn on one sheet carried on to another: shifted, and cut off where a tile ends."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from typing import assert_never

from parametric.drawing.dimensions import Dimension, Leader, Ordinate
from parametric.drawing.plane import Box, Point, Polygon, along, cut_circle, cut_path, edges
from parametric.drawing.primitives import Arc, Circle, Fill, Label, Primitive, Stroke, reach
from parametric.drawing.sheet import Element, Hatch, primitives
from parametric.drawing.tables import Table

_LEAST = 1e-6
"""An arc shorter than this is a point, degrees."""


def moved(element: Element, by: Point) -> Element:
    """The same thing elsewhere on paper."""

    def point(p: Point) -> Point:
        return (p[0] + by[0], p[1] + by[1])

    def path(points: Polygon) -> Polygon:
        return tuple(point(p) for p in points)

    def label(own: Label) -> Label:
        return dataclasses.replace(own, at=point(own.at))

    match element:
        case Stroke() | Fill():
            return dataclasses.replace(element, points=path(element.points))
        case Circle() | Arc():
            return dataclasses.replace(element, centre=point(element.centre))
        case Label():
            return label(element)
        case Hatch():
            return dataclasses.replace(
                element,
                strokes=tuple(path(stroke) for stroke in element.strokes),
                arcs=tuple((point(c), r, start, end) for c, r, start, end in element.arcs),
                dots=path(element.dots),
            )
        case Dimension():
            a, b = element.feet
            return dataclasses.replace(
                element,
                a=point(element.a),
                b=point(element.b),
                feet=(None if a is None else point(a), None if b is None else point(b)),
                label=label(element.label),
                tail=path(element.tail),
            )
        case Ordinate():
            return dataclasses.replace(
                element,
                lines=tuple(path(line) for line in element.lines),
                label=label(element.label),
                ring=None if element.ring is None else point(element.ring),
            )
        case Leader():
            return dataclasses.replace(
                element,
                points=path(element.points),
                labels=tuple(label(own) for own in element.labels),
            )
        case Table():
            return dataclasses.replace(element, at=point(element.at))
        case _:
            assert_never(element)


def cut_off(element: Element, window: Box) -> Iterator[Element]:
    """What of an element a window shows: itself where it lies inside, else its parts cut off.

    A text is shown whole or not at all.
    """
    parts = tuple(primitives(element))
    if all(window.holds(reach(part)) for part in parts):
        yield element
        return
    for part in parts:
        yield from _cut(part, window)


def _cut(part: Primitive, window: Box) -> Iterator[Primitive]:
    region = (window.polygon,)
    box = reach(part)
    if window.holds(box):
        yield part
        return
    match part:
        case Label():
            return
        case Stroke():
            points = (*part.points, part.points[0]) if part.closed else part.points
            for run in cut_path(points, region):
                yield dataclasses.replace(part, points=run, closed=False)
        case Fill():
            kept = _within(part.points, window)
            if len(kept) > 2:
                yield dataclasses.replace(part, points=kept)
        case Circle():
            for start, end in cut_circle(part.centre, part.radius, region):
                yield Arc(
                    layer=part.layer,
                    centre=part.centre,
                    radius=part.radius,
                    start=start,
                    end=end,
                    view=part.view,
                )
        case Arc():
            for start, end in cut_circle(part.centre, part.radius, region):
                for low, high in _shared((part.start, part.end), (start, end)):
                    yield dataclasses.replace(part, start=low, end=high)
        case _:
            assert_never(part)


def _shared(a: tuple[float, float], b: tuple[float, float]) -> Iterator[tuple[float, float]]:
    """What two arcs of one circle share, degrees; either may run past a full turn."""
    for turn in (-720.0, -360.0, 0.0, 360.0, 720.0):
        low, high = max(a[0], b[0] + turn), min(a[1], b[1] + turn)
        if high - low > _LEAST:
            yield low, high


def _within(points: Polygon, window: Box) -> Polygon:
    """What of a polygon lies in a box, cut side by side after Sutherland and Hodgman."""
    for which, limit, sign in (
        (0, window.x0, 1.0),
        (0, window.x1, -1.0),
        (1, window.y0, 1.0),
        (1, window.y1, -1.0),
    ):
        kept: list[Point] = []
        for a, b in edges(points):
            inside_a, inside_b = (sign * (p[which] - limit) >= 0 for p in (a, b))
            if inside_a:
                kept.append(a)
            if inside_a != inside_b:
                kept.append(along(a, b, (limit - a[which]) / (b[which] - a[which])))
        points = tuple(kept)
        if not points:
            return ()
    return points
