"""Outlines of lines and arcs as polygons, and what one leaves of another: shaped cuts in pictures."""

from __future__ import annotations

import itertools
import math

from parametric.drawing.plane import Point, Polygon
from parametric.model import Shaped
from parametric.outlines import Outline, Vertex, arc_of, edges

BOW = 0.01
"""How far a chord may leave its arc in a drawing, mm."""
_SAME = 1e-6


def flattened(outline: Outline) -> Polygon:
    """An outline as a polygon; its arcs as chords that leave them by `BOW` at most."""
    points: list[Point] = []
    for a, b in edges(outline):
        points += [(float(a.x), float(a.y)), *_between(a, b)]
    return tuple(points)


def middle_of(a: Vertex, b: Vertex) -> Point:
    """The point halfway along an edge."""
    arc = arc_of(a, b)
    if arc is None:
        return ((a.x + b.x) / 2, (a.y + b.y) / 2)
    turn = arc.start + arc.sweep / 2
    return (arc.x + arc.radius * math.cos(turn), arc.y + arc.radius * math.sin(turn))


def _between(a: Vertex, b: Vertex) -> list[Point]:
    """The points of an arc between its ends; none of a straight edge."""
    arc = arc_of(a, b)
    if arc is None:
        return []
    step = 2 * math.acos(max(-1.0, 1 - BOW / arc.radius))
    count = max(2, math.ceil(abs(arc.sweep) / step))
    return [
        (
            arc.x + arc.radius * math.cos(arc.start + arc.sweep * i / count),
            arc.y + arc.radius * math.sin(arc.start + arc.sweep * i / count),
        )
        for i in range(1, count)
    ]


def less(ring: Polygon, taken: Polygon) -> Polygon:
    """What is left of a ring when a piece that is open to one stretch of its edge is taken away.

    Both run anticlockwise. A piece that nowhere lies along the ring's edge is a hole and
    leaves the ring as it is.
    """
    sides = list(zip(taken, (*taken[1:], taken[0]), strict=True))
    inner = [not _along(ring, a, b) for a, b in sides]
    if all(inner) or not any(inner):
        return ring
    # the one run of sides that cut through the ring, from where it enters to where it leaves
    start = next(i for i in range(len(sides)) if inner[i] and not inner[i - 1])
    run: list[Point] = [sides[start][0]]
    for k in range(len(sides)):
        if not inner[(start + k) % len(sides)]:
            break
        run.append(sides[(start + k) % len(sides)][1])
    enters, leaves = _place(ring, run[0]), _place(ring, run[-1])
    if enters is None or leaves is None:
        return ring
    kept: list[Point] = list(reversed(run))
    count = len(ring)
    first, last = math.floor(enters) + 1, math.floor(leaves)
    if leaves < enters:
        last += count
    kept += [ring[i % count] for i in range(first, last + 1)]
    return _without_doubles(kept)


def across(taken: Polygon, at: float) -> tuple[tuple[float, float], ...]:
    """Where an upright line at x = `at` runs inside a polygon, as stretches of y."""
    meets: list[float] = []
    for (x0, y0), (x1, y1) in zip(taken, (*taken[1:], taken[0]), strict=True):
        if (x0 > at) != (x1 > at):
            meets.append(y0 + (at - x0) * (y1 - y0) / (x1 - x0))
    meets.sort()
    return tuple(itertools.pairwise(meets))[::2]


def open_to(cut: Shaped, depth: float) -> bool:
    """Whether a shaped cut takes the wood at a depth behind its face."""
    return float(cut.surface) - _SAME <= depth <= float(cut.depth) + _SAME


def _along(ring: Polygon, a: Point, b: Point) -> bool:
    """Whether a side lies in one side of the ring."""
    for p, q in zip(ring, (*ring[1:], ring[0]), strict=True):
        if _off(p, q, a) is not None and _off(p, q, b) is not None:
            return True
    return False


def _place(ring: Polygon, point: Point) -> float | None:
    """Where on the ring a point lies: the number of its side and how far along that it is."""
    for i, (p, q) in enumerate(zip(ring, (*ring[1:], ring[0]), strict=True)):
        share = _off(p, q, point)
        if share is not None and share < 1 - 1e-9:
            return i + max(share, 0.0)
    return None


def _off(p: Point, q: Point, point: Point) -> float | None:
    """How far along a side a point lies on it, 0 to 1; None where it lies beside it."""
    dx, dy = q[0] - p[0], q[1] - p[1]
    long = math.hypot(dx, dy)
    if long < _SAME:
        return None
    u, v = point[0] - p[0], point[1] - p[1]
    share = (u * dx + v * dy) / long**2
    beside = abs(u * dy - v * dx) / long
    return share if beside < 1e-4 and -_SAME <= share <= 1 + _SAME else None


def _without_doubles(points: list[Point]) -> Polygon:
    kept: list[Point] = []
    for point in points:
        if not kept or math.dist(kept[-1], point) > _SAME:
            kept.append(point)
    if len(kept) > 1 and math.dist(kept[0], kept[-1]) <= _SAME:
        kept.pop()
    return tuple(kept)
