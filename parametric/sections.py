"""Mouldings as arithmetic: what a section takes at each depth, and how much wood its run takes.

A section is the wood taken away along an edge, seen on end: x in from the edge across the
face, y from the face into the wood. Its run follows a path on the face with the wood on its
left, so a place of the section at x runs along the path moved x to the left. A run's ends are
lines on the face; at each depth the run is a flat figure of lines and arcs, exactly known, and
its volume is the integral of these figures through the depth.

    face  ____________ x = width
                      |        y = 0
          wood        (
                       '- .__  y = depth
                             | x = 0, the edge
"""

from __future__ import annotations

import functools
import itertools
import math
from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from parametric.outlines import (
    Arc,
    Bounds,
    Outline,
    Vertex,
    arc_of,
    area_of,
    backwards,
    bounds_of,
    edges,
    moved,
)

Point = tuple[float, float]
Vector = tuple[float, float, float]
Span = tuple[float, float]
_SAME = 1e-9
_NODES = 40


@dataclass(frozen=True, slots=True, kw_only=True)
class RunEnd:
    """Where a run of moulding ends on the face.

    `line` is an open chain from the path into the wood, as far as the section is wide.
    `open` says that nothing the run must spare stands past it, so that a cutter may go on.

    A coped end lies over another moulding, whose section is `over`: past its line, straight
    then and the other's edge, the run goes on at each depth as far as that one has taken the
    wood. `floor` is what the wood past the line stands on: a chain from the path's end onwards.
    """

    line: Outline
    open: bool = True
    over: Outline = ()
    floor: Outline = ()


@dataclass(frozen=True, slots=True)
class _Slope:
    """A stretch of a section's edge with one x for each y between `low` and `high`."""

    low: float
    high: float
    x: Callable[[float], float]


def spans_at(section: Outline, depth: float) -> tuple[Span, ...]:
    """From where to where, in from the edge, a section takes the wood at a depth, mm.

    At the depth of a step it is what is taken just below it.
    """
    meets = sorted(s.x(depth) for s in _slopes(section) if s.low <= depth < s.high)
    return tuple(itertools.pairwise(meets))[::2]


def reach_of(section: Outline) -> float:
    """How far in from the edge a section goes at its widest, mm."""
    return bounds_of(section)[2]


def depth_of(section: Outline) -> float:
    """How deep a section goes, mm."""
    return bounds_of(section)[3]


def steps_of(*sections: Outline) -> tuple[float, ...]:
    """The depths at which one of the sections begins, ends, turns a corner or turns back, mm."""
    found: list[float] = []
    for depth in sorted(
        d for section in sections for s in _slopes(section) for d in (s.low, s.high)
    ):
        if not found or depth - found[-1] > _SAME:
            found.append(depth)
    return tuple(found)


def through(figure: Callable[[float], float], steps: Iterable[float]) -> float:
    """The integral of a figure over the depth, between each two steps.

    Sections are smooth between their steps but for the square-root run of an arc into its
    level tangent; with the sine of an angle for the depth that run is smooth too, and the
    sum is exact to the last figures. Source: Gauss and Legendre's rule.
    """
    total = 0.0
    for low, high in itertools.pairwise(steps):
        middle, half = (low + high) / 2, (high - low) / 2
        for node, weight in _gauss(_NODES):
            turn = node * math.pi / 2
            depth = middle + half * math.sin(turn)
            total += weight * math.pi / 2 * half * math.cos(turn) * figure(depth)
    return total


@functools.lru_cache(maxsize=1024)
def run_volume(section: Outline, path: Outline, start: RunEnd, end: RunEnd) -> float:
    """The wood that a run of moulding takes, mm3."""

    def at(depth: float) -> float:
        return sum(abs(area_of(f)) for f in run_figures(section, path, start, end, depth))

    return through(at, steps_of(*(s for s in (section, start.over, end.over) if s)))


def run_figures(
    section: Outline, path: Outline, start: RunEnd, end: RunEnd, depth: float
) -> Iterator[Outline]:
    """What a run takes on the face at a depth, as figures that touch but do not overlap."""
    for span in spans_at(section, depth):
        yield _figure(path, start.line, end.line, span)
        for one, piece in ((start, path[:2]), (end, path[-2:])):
            if one.over and (past := spans_at(one.over, depth)):
                yield _past(one, piece, span, past)


def _past(end: RunEnd, piece: Outline, span: Span, over: tuple[Span, ...]) -> Outline:
    """What a run takes past its line, over a moulding that is taken as far as `over`.

    Raises:
        ValueError: one of the two is not taken from its edge on, in one stretch.
    """
    if len(over) > 1 or max(span[0], over[0][0]) > _SAME:
        raise ValueError("a moulding with a quirk is not coped")
    line, (_, by), (_, far) = end.line, span, over[0]
    onwards = math.copysign(1.0, _past_line(line, end.floor[-1]))
    stop = _shifted(line, onwards * far)
    floor: list[Vertex] = []
    for a, b in itertools.pairwise(end.floor):
        low, high = (onwards * _past_line(line, v) for v in (a, b))
        if high < far - _SAME:
            floor.append(a)
            continue
        share = (far - low) / (high - low)
        guess = (a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
        last = nearest_meeting((a, b), stop, guess)
        arc = arc_of(a, b)
        bulge = 0.0 if arc is None else math.tan(_turn(arc, (a.x, a.y), last) / 4)
        floor += [Vertex(a.x, a.y, bulge), Vertex(*last)]
        break
    inner, outer = _crossing(line, piece, by), _crossing(stop, piece, by)
    arc = arc_of(*piece)
    bulge = 0.0 if arc is None else math.tan(_turn_short(arc, outer, inner) / 4)
    return (*floor, Vertex(*outer, bulge), Vertex(*inner))


def _past_line(line: Outline, point: Vertex) -> float:
    """How far a point lies to the left of a straight line, mm."""
    return off(line[0], line[-1], (point.x, point.y))


def _shifted(line: Outline, by: float) -> Outline:
    """A straight line moved to its left."""
    x, y = heading(line[0], line[-1], (line[0].x, line[0].y))
    return moved((line[0], line[-1]), -y * by, x * by)


def _turn_short(arc: Arc, begins: Point, ends: Point) -> float:
    """The way round an arc's centre from one point to another that is less than half a turn, rad."""
    start = math.atan2(begins[1] - arc.y, begins[0] - arc.x)
    stop = math.atan2(ends[1] - arc.y, ends[0] - arc.x)
    return math.remainder(stop - start, math.tau)


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


def _left_of(a: Vertex, b: Vertex, at: Point) -> Point:
    x, y = heading(a, b, at)
    return (-y, x)


def _figure(path: Outline, start: Outline, end: Outline, span: Span) -> Outline:
    """What lies between two ends of a run, from one place of its section to another."""
    near, far = (_between_ends(path, start, end, by) for by in span)
    ahead, behind = _stretch(end, path[-2:], span), _stretch(start, path[:2], span)
    turned = backwards(far)
    return (
        *near[:-1],
        *ahead[:-1],
        *turned[:-1],
        *backwards(behind)[:-1],
    )


def _between_ends(path: Outline, start: Outline, end: Outline, by: float) -> Outline:
    """The path moved to its left, from one end line to the other."""
    made = list(beside(path, by))
    first = _crossing(start, path[:2], by)
    last = _crossing(end, path[-2:], by)
    for index, (a, b) in enumerate(itertools.pairwise(path)):
        arc = arc_of(a, b)
        begins = first if index == 0 else (made[index].x, made[index].y)
        ends = last if index == len(path) - 2 else (made[index + 1].x, made[index + 1].y)
        bulge = 0.0 if arc is None else math.tan(_turn(arc, begins, ends) / 4)
        made[index] = Vertex(*begins, bulge)
    made[-1] = Vertex(*last)
    return tuple(made)


def _turn(arc: Arc, begins: Point, ends: Point) -> float:
    """How far round an arc's centre it is from one point to another, the way the arc goes, rad.

    A run may be cut off just before where it begins; then it is a little less than nothing.
    """
    start = math.atan2(begins[1] - arc.y, begins[0] - arc.x)
    stop = math.atan2(ends[1] - arc.y, ends[0] - arc.x)
    turn = (stop - start) % math.tau if arc.sweep > 0 else -((start - stop) % math.tau)
    if abs(turn - arc.sweep) > math.pi:
        turn += math.copysign(math.tau, arc.sweep - turn)
    return turn


def _stretch(line: Outline, piece: Outline, span: Span) -> Outline:
    """The part of an end line between two distances from the path."""
    made: list[Vertex] = []
    points = [_crossing(line, piece, by) for by in span]
    inner = [
        v
        for v in line[1:-1]
        if span[0] + _SAME < off(piece[0], piece[1], (v.x, v.y)) < span[1] - _SAME
    ]
    stops = [points[0], *((v.x, v.y) for v in inner), points[1]]
    for begins, ends in itertools.pairwise(stops):
        middle = ((begins[0] + ends[0]) / 2, (begins[1] + ends[1]) / 2)
        a, b = _piece_at(line, piece, off(piece[0], piece[1], middle))
        arc = arc_of(a, b)
        bulge = 0.0 if arc is None else math.tan(_turn(arc, begins, ends) / 4)
        made.append(Vertex(*begins, bulge))
    return (*made, Vertex(*points[1]))


def _piece_at(line: Outline, piece: Outline, by: float) -> tuple[Vertex, Vertex]:
    """The piece of an end line on which it is so far from the path; its last ones go on."""
    pieces = list(itertools.pairwise(line))
    for a, b in pieces[:-1]:
        if by <= off(piece[0], piece[1], (b.x, b.y)):
            return a, b
    return pieces[-1]


def _crossing(line: Outline, piece: Outline, by: float) -> Point:
    """Where an end line is so far from the path.

    Raises:
        ValueError: it never is.
    """
    a, b = _piece_at(line, piece, by)
    low, high = (off(piece[0], piece[1], (v.x, v.y)) for v in (a, b))
    share = (by - low) / (high - low) if abs(high - low) > _SAME else 0.0
    guess = (a.x + (b.x - a.x) * share, a.y + (b.y - a.y) * share)
    return nearest_meeting((a, b), beside(piece, by), guess)


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


@functools.cache
def _slopes(section: Outline) -> tuple[_Slope, ...]:
    return tuple(slope for a, b in edges(section) for slope in _slopes_of(a, b))


def _slopes_of(a: Vertex, b: Vertex) -> Iterator[_Slope]:
    arc = arc_of(a, b)
    if arc is None:
        if abs(b.y - a.y) > _SAME:
            lean = (b.x - a.x) / (b.y - a.y)
            yield _Slope(min(a.y, b.y), max(a.y, b.y), lambda y: a.x + (y - a.y) * lean)
        return
    start, stop = sorted((arc.start, arc.start + arc.sweep))
    # an arc turns back where it is highest and lowest: at a quarter and three quarters of a turn
    first = math.ceil((start - math.pi / 2) / math.pi)
    turns = [math.pi / 2 + math.pi * k for k in range(first, first + 3)]
    stops = [start, *(t for t in turns if start + _SAME < t < stop - _SAME), stop]
    for low, high in itertools.pairwise(stops):
        side = math.copysign(1.0, math.cos((low + high) / 2))
        ys = sorted(arc.y + arc.radius * math.sin(t) for t in (low, high))
        yield _Slope(ys[0], ys[1], functools.partial(_on_arc, arc, side))


def _on_arc(arc: Arc, side: float, y: float) -> float:
    return arc.x + side * math.sqrt(max(arc.radius**2 - (y - arc.y) ** 2, 0.0))


@functools.cache
def _gauss(count: int) -> tuple[tuple[float, float], ...]:
    """The places and weights of the rule between -1 and 1: roots of Legendre's polynomial."""
    found: list[tuple[float, float]] = []
    for index in range(count):
        x = math.cos(math.pi * (index + 0.75) / (count + 0.5))
        slope = 1.0
        for _ in range(50):
            before, here = 1.0, x
            for k in range(2, count + 1):
                before, here = here, ((2 * k - 1) * x * here - (k - 1) * before) / k
            slope = count * (x * here - before) / (x * x - 1)
            step = here / slope
            x -= step
            if abs(step) < 1e-15:
                break
        found.append((x, 2 / ((1 - x * x) * slope * slope)))
    return tuple(found)


def run_bounds(section: Outline, path: Outline, start: RunEnd, end: RunEnd) -> Bounds:
    """The box of a run on its face: x low, y low, x high, y high, mm."""
    boxes = [
        bounds_of(figure)
        for low, high in itertools.pairwise(steps_of(section))
        for depth in (low, (low + high) / 2)
        for figure in run_figures(section, path, start, end, depth)
    ]
    return (
        min(box[0] for box in boxes),
        min(box[1] for box in boxes),
        max(box[2] for box in boxes),
        max(box[3] for box in boxes),
    )


def run_middle(section: Outline, path: Outline, start: RunEnd, end: RunEnd) -> Vector:
    """The middle of what a run takes: on the face, and down from it, mm."""
    steps = steps_of(*(s for s in (section, start.over, end.over) if s))

    def moment(depth: float, way: int) -> float:
        total = 0.0
        for figure in run_figures(section, path, start, end, depth):
            area = area_of(figure)
            share = depth * area if way == 2 else _moment(figure, way)
            total += math.copysign(1.0, area) * share
        return total

    volume = run_volume(section, path, start, end)
    x, y, z = (through(functools.partial(moment, way=way), steps) / volume for way in (0, 1, 2))
    return (x, y, z)


def _moment(figure: Outline, way: int) -> float:
    """Area times how far its middle is along x (0) or y (1), mm3.

    Source: triangles from the origin, and a circular segment for each arc, whose middle is
    4 r sin3(a / 2) / 3 (a - sin a) from the centre.
    """
    total = 0.0
    for a, b in edges(figure):
        total += (a.x * b.y - b.x * a.y) / 2 * (a[way] + b[way]) / 3
        arc = arc_of(a, b)
        if arc is not None:
            segment = arc.radius**2 * (arc.sweep - math.sin(arc.sweep)) / 2
            middle = arc.start + arc.sweep / 2
            towards = math.sin(middle) if way else math.cos(middle)
            total += segment * (arc.y if way else arc.x)
            total += 2 / 3 * arc.radius**3 * math.sin(arc.sweep / 2) ** 3 * towards
    return total
