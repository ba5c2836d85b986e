"""Runs of moulding: how much wood a section takes along a path on a face.

The path has the wood on its left, so what a section takes at x in from the edge runs along
the path moved x to the left. A run's ends are lines on the face. At each depth a run is a flat
figure of lines and arcs, exactly known, and its volume is the integral of these figures
through the depth.
"""

from __future__ import annotations

import functools
import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.outlines import (
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
from parametric.paths import Point, beside, heading, nearest_meeting, off, short_turn, turn
from parametric.sections import Span, spans_at, steps_of, through

Vector = tuple[float, float, float]
_SAME = 1e-9


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


@functools.lru_cache(maxsize=1024)
def run_volume(section: Outline, path: Outline, start: RunEnd, end: RunEnd) -> float:
    """The wood that a run of moulding takes, mm3."""

    def at(depth: float) -> float:
        return sum(abs(area_of(f)) for f in run_figures(section, path, start, end, depth))

    return through(at, steps_of(*(s for s in (section, start.over, end.over) if s)))


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


def run_line(path: Outline, start: RunEnd, end: RunEnd, by: float) -> Outline:
    """The line along a run that is so far in from its edge, between its ends, mm."""
    return _on_way(path, end_at(start, path[:2], by), end_at(end, path[-2:], by), by)


def end_at(end: RunEnd, piece: Outline, by: float) -> Point:
    """Where a run ends that far in from its edge, mm.

    A coped one ends where the moulding under it is as far in from its own edge: where the two
    are of one section, there they meet.

    Args:
        end: the end.
        piece: the stretch of the path that it is the end of.
        by: how far in.
    """
    if not end.over:
        return _crossing(end.line, piece, by)
    onwards = math.copysign(1.0, _past_line(end.line, end.floor[-1]))
    return _crossing(_shifted(end.line, onwards * by), piece, by)


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
        bulge = 0.0 if arc is None else math.tan(turn(arc, (a.x, a.y), last) / 4)
        floor += [Vertex(a.x, a.y, bulge), Vertex(*last)]
        break
    inner, outer = _crossing(line, piece, by), _crossing(stop, piece, by)
    arc = arc_of(*piece)
    bulge = 0.0 if arc is None else math.tan(short_turn(arc, outer, inner) / 4)
    return (*floor, Vertex(*outer, bulge), Vertex(*inner))


def _past_line(line: Outline, point: Vertex) -> float:
    """How far a point lies to the left of a straight line, mm."""
    return off(line[0], line[-1], (point.x, point.y))


def _shifted(line: Outline, by: float) -> Outline:
    """A straight line moved to its left."""
    x, y = heading(line[0], line[-1], (line[0].x, line[0].y))
    return moved((line[0], line[-1]), -y * by, x * by)


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
    return _on_way(path, _crossing(start, path[:2], by), _crossing(end, path[-2:], by), by)


def _on_way(path: Outline, first: Point, last: Point, by: float) -> Outline:
    """The path moved to its left, from one point of it to another."""
    made = list(beside(path, by))
    for index, (a, b) in enumerate(itertools.pairwise(path)):
        arc = arc_of(a, b)
        begins = first if index == 0 else (made[index].x, made[index].y)
        ends = last if index == len(path) - 2 else (made[index + 1].x, made[index + 1].y)
        bulge = 0.0 if arc is None else math.tan(turn(arc, begins, ends) / 4)
        made[index] = Vertex(*begins, bulge)
    made[-1] = Vertex(*last)
    return tuple(made)


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
        bulge = 0.0 if arc is None else math.tan(turn(arc, begins, ends) / 4)
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
