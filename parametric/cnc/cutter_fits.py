"""Whether a round cutter, run along the inside of an outline, leaves it as drawn.

The cutter touches one wall after the other; nowhere may it reach into another wall. Where an
outline lies along the edge of the wood there is no wall: the cutter runs past.

Its middle runs beside a wall, on a line or an arc, and round a corner of wood. It is nearest to another wall where it
begins or ends, beside an end of the other, or on the line through the other's centre: to look
there is to look everywhere.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence

from parametric.outlines import Outline, Vertex, arc_of, edges

Point = tuple[float, float]
Edge = tuple[Vertex, Vertex]
Limits = tuple[float, float, float, float]
"""Where the wood of a face begins and ends: low u, low v, high u, high v, mm."""

_SAME = 1e-6
"""mm"""


def walls(outline: Outline, wood: Limits) -> tuple[Edge, ...]:
    """The edges of an outline that leave wood standing: all but those along the wood's own edge."""
    return tuple((a, b) for a, b in edges(outline) if not along_wood(a, b, wood))


def along_wood(a: Vertex, b: Vertex, wood: Limits) -> bool:
    """Whether an edge lies along an edge of the wood."""
    if a.bulge:
        return False
    u0, v0, u1, v1 = wood
    return (
        max(a.x, b.x) <= u0 + _SAME
        or min(a.x, b.x) >= u1 - _SAME
        or max(a.y, b.y) <= v0 + _SAME
        or min(a.y, b.y) >= v1 - _SAME
    )


def fits(cutter: float, inside: Sequence[Edge]) -> bool:
    """Whether a cutter of this diameter, mm, cuts all of these walls and nothing beyond them."""
    radius = cutter / 2
    middles = [middle for wall in inside for middle in _middles(wall, inside, radius)]
    middles += [
        middle
        for wall, following in itertools.permutations(inside, 2)
        for middle in _round_corner(wall, following, inside, radius)
    ]
    return all(_distance(middle, other) >= radius - _SAME for middle in middles for other in inside)


def square_between(wall: Edge, following: Edge) -> bool:
    """Whether a wall runs into the one that follows it at an inside corner that is not round."""
    if math.dist(wall[1][:2], following[0][:2]) > _SAME:
        return False
    into, out = _heading(*wall, at_end=True), _heading(*following, at_end=False)
    return (out - into + math.pi) % math.tau - math.pi > _SAME


def _heading(a: Vertex, b: Vertex, *, at_end: bool) -> float:
    """Which way an edge runs where it begins or ends, rad."""
    chord, arc = math.atan2(b.y - a.y, b.x - a.x), arc_of(a, b)
    half = 0.0 if arc is None else arc.sweep / 2
    return chord + half if at_end else chord - half


def smallest_corner(outline: Outline) -> float:
    """The smallest radius of a round inside corner or a hollow wall, mm; 0 where there is none."""
    arcs = (arc_of(a, b) for a, b in edges(outline))
    return min((arc.radius for arc in arcs if arc is not None and arc.sweep > 0), default=0.0)


def _middles(wall: Edge, others: Sequence[Edge], radius: float) -> Iterator[Point]:
    """Where the cutter's middle stands as it touches a wall, at every place that matters."""
    a, b = wall
    marks = [mark for other in others if other != wall for mark in _marks(other)]
    arc = arc_of(a, b)
    if arc is None:
        dx, dy = b.x - a.x, b.y - a.y
        long = math.hypot(dx, dy)
        shares = [((x - a.x) * dx + (y - a.y) * dy) / long**2 for x, y in marks]
        for share in (0.0, 1.0, *(s for s in shares if 0 < s < 1)):
            # the inside lies to the left of an outline that runs anticlockwise
            yield (
                a.x + dx * share - dy / long * radius,
                a.y + dy * share + dx / long * radius,
            )
        return
    way = math.copysign(1.0, arc.sweep)
    turns = [0.0, abs(arc.sweep)]
    for x, y in marks:
        for opposite in (0.0, math.pi):
            turn = (math.atan2(y - arc.y, x - arc.x) + opposite - arc.start) * way % math.tau
            if turn < abs(arc.sweep):
                turns.append(turn)
    far = arc.radius - way * radius
    for turn in turns:
        angle = arc.start + way * turn
        yield (arc.x + far * math.cos(angle), arc.y + far * math.sin(angle))


def _round_corner(
    wall: Edge, following: Edge, others: Sequence[Edge], radius: float
) -> Iterator[Point]:
    """Where it stands as it turns about a corner of wood, at every place that matters."""
    here = following[0]
    if math.dist(wall[1][:2], here[:2]) > _SAME:
        return
    into, out = _heading(*wall, at_end=True), _heading(*following, at_end=False)
    turn = (into - out) % math.tau
    if not _SAME < turn < math.pi:
        return
    for other in others:
        for x, y in (*_marks(other), *_foot((here.x, here.y), other)):
            for opposite in (0.0, math.pi):
                angle = math.atan2(y - here.y, x - here.x) + opposite
                # it stands to the left of the way the outline runs, and turns clockwise
                if (into + math.pi / 2 - angle) % math.tau < turn:
                    yield (here.x + radius * math.cos(angle), here.y + radius * math.sin(angle))


def _foot(point: Point, edge: Edge) -> Iterator[Point]:
    """The foot of a point on the line of a straight edge."""
    a, b = edge
    if a.bulge:
        return
    dx, dy = b.x - a.x, b.y - a.y
    share = ((point[0] - a.x) * dx + (point[1] - a.y) * dy) / (dx**2 + dy**2)
    if 0 < share < 1:
        yield (a.x + dx * share, a.y + dy * share)


def _marks(edge: Edge) -> list[Point]:
    """Its two ends, and the centre of one that is an arc."""
    a, b = edge
    arc = arc_of(a, b)
    ends = [(a.x, a.y), (b.x, b.y)]
    return ends if arc is None else [*ends, (arc.x, arc.y)]


def _distance(point: Point, edge: Edge) -> float:
    """From a point to the nearest of an edge, mm."""
    a, b = edge
    to_ends = min(math.dist(point, (a.x, a.y)), math.dist(point, (b.x, b.y)))
    arc = arc_of(a, b)
    if arc is None:
        dx, dy = b.x - a.x, b.y - a.y
        share = ((point[0] - a.x) * dx + (point[1] - a.y) * dy) / (dx**2 + dy**2)
        if not 0 < share < 1:
            return to_ends
        return abs((point[0] - a.x) * dy - (point[1] - a.y) * dx) / math.hypot(dx, dy)
    turn = math.atan2(point[1] - arc.y, point[0] - arc.x) - arc.start
    if turn * math.copysign(1.0, arc.sweep) % math.tau > abs(arc.sweep):
        return to_ends
    return abs(math.dist(point, (arc.x, arc.y)) - arc.radius)
