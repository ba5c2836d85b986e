"""Sections of mouldings: what is taken at each depth, and sums through the depth.

A section is the wood taken away along an edge, seen on end: x in from the edge across the
face, y from the face into the wood.

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

from parametric.outlines import Arc, Outline, Vertex, arc_of, bounds_of, edges

Span = tuple[float, float]
_SAME = 1e-9
_NODES = 20


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
