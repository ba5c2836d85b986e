"""Open paths of lines and arcs: which way they go, how far a point is off them, what lies beside."""

from __future__ import annotations

import math
from collections.abc import Iterator

from parametric.outlines import Arc, Outline, Vertex, arc_of

Point = tuple[float, float]
_SAME = 1e-9


def heading(a: Vertex, b: Vertex, at: Point) -> Point:
    """The way a piece of a path goes at a place on it, a unit vector."""
    arc = arc_of(a, b)
    if arc is None:
        long = math.hypot(b.x - a.x, b.y - a.y)
        return ((b.x - a.x) / long, (b.y - a.y) / long)
    x, y = (at[0] - arc.x) / arc.radius, (at[1] - arc.y) / arc.radius
    return (-y, x) if arc.sweep > 0 else (y, -x)


def off(a: Vertex, b: Vertex, point: Point) -> float:
    """How far a point lies to the left of a piece of a path, square to it, mm."""
    arc = arc_of(a, b)
    if arc is None:
        x, y = heading(a, b, point)
        return x * (point[1] - a.y) - y * (point[0] - a.x)
    out = math.hypot(point[0] - arc.x, point[1] - arc.y) - arc.radius
    return -out if arc.sweep > 0 else out


def beside(path: Outline, by: float) -> Outline:
    """The path moved to its left, square to itself; arcs keep their centres.

    Its pieces must run smoothly one into the next.
    """
    made: list[Vertex] = []
    for index, vertex in enumerate(path):
        last = index == len(path) - 1
        a, b = (path[-2], path[-1]) if last else (vertex, path[index + 1])
        x, y = _left_of(a, b, (vertex.x, vertex.y))
        made.append(Vertex(vertex.x + x * by, vertex.y + y * by, vertex.bulge))
    return tuple(made)


def _left_of(a: Vertex, b: Vertex, at: Point) -> Point:
    x, y = heading(a, b, at)
    return (-y, x)


def turn(arc: Arc, begins: Point, ends: Point) -> float:
    """How far round an arc's centre it is from one point to another, the way the arc goes, rad.

    A run may be cut off just before where it begins; then it is a little less than nothing.
    """
    start = math.atan2(begins[1] - arc.y, begins[0] - arc.x)
    stop = math.atan2(ends[1] - arc.y, ends[0] - arc.x)
    far = (stop - start) % math.tau if arc.sweep > 0 else -((start - stop) % math.tau)
    if abs(far - arc.sweep) > math.pi:
        far += math.copysign(math.tau, arc.sweep - far)
    return far


def short_turn(arc: Arc, begins: Point, ends: Point) -> float:
    """The way round an arc's centre from one point to another that is less than half a turn, rad."""
    start = math.atan2(begins[1] - arc.y, begins[0] - arc.x)
    stop = math.atan2(ends[1] - arc.y, ends[0] - arc.x)
    return math.remainder(stop - start, math.tau)


def nearest_meeting(one: Outline, other: Outline, guess: Point) -> Point:
    """Where the lines or circles of two edges meet, nearest to a place.

    Raises:
        ValueError: they do not.
    """
    found = list(_meetings(one, other))
    if not found:
        raise ValueError("the end of a run does not reach across it")
    return min(found, key=lambda p: math.hypot(p[0] - guess[0], p[1] - guess[1]))


def _meetings(one: Outline, other: Outline) -> Iterator[Point]:
    (a, b), (c, d) = one, other
    first, second = arc_of(a, b), arc_of(c, d)
    if first is None and second is None:
        dx, dy, ex, ey = b.x - a.x, b.y - a.y, d.x - c.x, d.y - c.y
        across = dx * ey - dy * ex
        if abs(across) > _SAME:
            share = ((c.x - a.x) * ey - (c.y - a.y) * ex) / across
            yield (a.x + dx * share, a.y + dy * share)
        return
    if first is None:
        assert second is not None
        yield from _line_and_circle(a, b, second)
    elif second is None:
        yield from _line_and_circle(c, d, first)
    else:
        yield from _circles(first, second)


def _line_and_circle(a: Vertex, b: Vertex, arc: Arc) -> Iterator[Point]:
    x, y = heading(a, b, (a.x, a.y))
    along = (arc.x - a.x) * x + (arc.y - a.y) * y
    foot = (a.x + along * x, a.y + along * y)
    room = arc.radius**2 - (foot[0] - arc.x) ** 2 - (foot[1] - arc.y) ** 2
    # a line that touches the circle may miss it by the last figure
    if room < -_SAME * arc.radius:
        return
    half = math.sqrt(max(room, 0.0))
    yield (foot[0] + half * x, foot[1] + half * y)
    yield (foot[0] - half * x, foot[1] - half * y)


def _circles(one: Arc, other: Arc) -> Iterator[Point]:
    dx, dy = other.x - one.x, other.y - one.y
    far = math.hypot(dx, dy)
    if far < _SAME:
        return
    along = (far**2 + one.radius**2 - other.radius**2) / (2 * far)
    room = one.radius**2 - along**2
    if room < -_SAME * one.radius:
        return
    half = math.sqrt(max(room, 0.0))
    x, y = dx / far, dy / far
    yield (one.x + along * x - half * y, one.y + along * y + half * x)
    yield (one.x + along * x + half * y, one.y + along * y - half * x)
