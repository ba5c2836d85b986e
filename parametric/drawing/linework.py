"""Linework of an elevation: what is seen, what is hidden, and nothing drawn twice."""

from __future__ import annotations

import itertools
import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from parametric.drawing.laps import laps_in_front
from parametric.drawing.layers import Layer
from parametric.drawing.pieces import (
    Piece,
    Shown,
    covers,
    front,
    nearer,
    shown_in_front,
)
from parametric.drawing.plane import Point, Polygon, cut_line, edges, outside_all

Segment = tuple[Point, Point]
_DIGITS = 6
_STRENGTH: tuple[Layer, ...] = ("cut_heavy", "cut", "edge", "edge_fine", "adjacent", "hidden")
"""Where lines of two layers lie over one another, the earlier one here is drawn."""


class Linework:
    """Lines collected layer by layer; collinear ones are joined, covered ones dropped."""

    def __init__(self) -> None:
        self._lines: defaultdict[Layer, list[Segment]] = defaultdict(list)
        self._curves: dict[tuple[Layer, Polygon], None] = {}

    def line(self, layer: Layer, a: Point, b: Point) -> None:
        """Add a straight line."""
        if math.dist(a, b) > 1e-6:
            self._lines[layer].append((a, b))

    def curve(self, layer: Layer, points: Polygon) -> None:
        """Add a closed outline that is kept whole."""
        self._curves[layer, points] = None

    def shown(self, shown: Shown, before: Sequence[Polygon]) -> None:
        """Add what can be seen of a piece's line past what lies nearer."""
        if shown.closed and len(shown.points) > 4:
            self.curve(shown.layer, shown.points)
            return
        pairs = (
            edges(shown.points)
            if shown.closed
            else zip(shown.points, shown.points[1:], strict=False)
        )
        for a, b in pairs:
            for p, q in outside_all(a, b, before):
                self.line(shown.layer, p, q)

    def strokes(self) -> Iterator[Shown]:
        """The finished lines, the strongest layers first."""
        taken: defaultdict[tuple[float, float, float], list[tuple[float, float]]] = defaultdict(
            list
        )
        for layer in _STRENGTH:
            for key, spans in sorted(_by_carrier(self._lines[layer]).items()):
                for low, high in _less(_joined(spans), _joined(taken[key])):
                    yield Shown(layer=layer, points=_points(key, low, high))
                taken[key] += spans
            for own, points in self._curves:
                if own == layer:
                    yield Shown(layer=layer, points=points, closed=True)


def seen(all_pieces: Sequence[Piece], wanted: Iterable[Piece]) -> Linework:
    """The visible linework of some pieces, with all pieces in the way."""
    work = Linework()
    found = covers(all_pieces)
    for piece in wanted:
        near = front(piece)
        for shown in shown_in_front(piece):
            work.shown(shown, nearer(found, near, shown.points))
        for shown, behind in laps_in_front(piece, found):
            work.shown(shown, nearer(found, near + behind, shown.points, but=piece))
    return work


def hide_behind(
    work: Linework, outline: Polygon, covers: Sequence[Polygon], *, closed: bool
) -> None:
    """Add, dashed, what of an outline lies behind some covers."""
    pairs = edges(outline) if closed else itertools.pairwise(outline)
    for a, b in pairs:
        for cover in covers:
            for p, q in cut_line(a, b, (cover,), keep_inside=True):
                work.line("hidden", p, q)


def _carrier(a: Point, b: Point) -> tuple[tuple[float, float, float], tuple[float, float]]:
    """The endless line through two points, and where along it they lie."""
    far = math.dist(a, b)
    ux, uy = (b[0] - a[0]) / far, (b[1] - a[1]) / far
    if ux < -1e-9 or (abs(ux) <= 1e-9 and uy < 0):
        ux, uy = -ux, -uy
    ux, uy = round(ux, 9) + 0.0, round(uy, 9) + 0.0
    off = round(-uy * a[0] + ux * a[1], _DIGITS) + 0.0
    along = sorted((ux * a[0] + uy * a[1], ux * b[0] + uy * b[1]))
    return (ux, uy, off), (along[0], along[1])


def _by_carrier(
    lines: Iterable[Segment],
) -> dict[tuple[float, float, float], list[tuple[float, float]]]:
    found: dict[tuple[float, float, float], list[tuple[float, float]]] = {}
    for a, b in lines:
        key, span = _carrier(a, b)
        found.setdefault(key, []).append(span)
    return found


def _points(key: tuple[float, float, float], low: float, high: float) -> Polygon:
    ux, uy, off = key
    return (
        (round(ux * low - uy * off, _DIGITS), round(uy * low + ux * off, _DIGITS)),
        (round(ux * high - uy * off, _DIGITS), round(uy * high + ux * off, _DIGITS)),
    )


def _joined(spans: Iterable[tuple[float, float]]) -> list[tuple[float, float]]:
    """Overlapping and touching spans as one."""
    joined: list[tuple[float, float]] = []
    for low, high in sorted(spans):
        if joined and low <= joined[-1][1] + 1e-6:
            joined[-1] = (joined[-1][0], max(high, joined[-1][1]))
        else:
            joined.append((low, high))
    return joined


def _less(
    spans: list[tuple[float, float]], taken: list[tuple[float, float]]
) -> Iterator[tuple[float, float]]:
    """What of the spans the taken ones leave."""
    for low, high in spans:
        start = low
        for a, b in taken:
            if b <= start or a >= high:
                continue
            if a > start + 1e-6:
                yield start, a
            start = max(start, b)
        if high > start + 1e-6:
            yield start, high
