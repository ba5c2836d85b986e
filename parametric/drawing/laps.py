"""Laps of rebated leaves seen from the front: the edge that lies deeper, and the step down to it."""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence

from parametric.drawing.pieces import (
    Cover,
    Piece,
    Shown,
    front,
    nearer,
    outline_layer,
    set_back,
    silhouette,
)
from parametric.drawing.plane import (
    Point,
    Polygon,
    around,
    cut_line,
    edges,
    inside,
    outside_all,
    swollen,
)

_HAIR = 1e-2
"""How far beside a line one looks for what lies there, mm."""


def laps_in_front(piece: Piece, view: Sequence[Cover]) -> Iterator[tuple[Shown, float]]:
    """The edges of what is set back from a leaf's own edge, and how far behind its face they lie, mm.

    A tongue, which lies within the leaf, shows nothing; nor does a hole within the face.
    """
    set_in = set_back(piece)
    if not set_in:
        return
    own = [cover for cover in view if cover.piece.group == piece.group]
    outline, layer = silhouette(piece), outline_layer(piece)
    steps = [
        (step, depth)
        for step, depth in set_in
        if not all(_within(outline, a, b) for a, b in edges(step))
        and not any(
            inside(around(step).centre, (other,))
            for other in nearer(own, front(piece) + depth, step, but=piece)
        )
    ]
    lower = [swollen(step) for step, _ in steps]
    for index, (step, depth) in enumerate(steps):
        for a, b in edges(outline):
            for p, q in cut_line(a, b, (lower[index],), keep_inside=True):
                yield Shown(layer=layer, points=(p, q)), depth
        others = [*lower[:index], *lower[index + 1 :]]
        for a, b in edges(step):
            if _within(outline, a, b):
                for p, q in outside_all(a, b, others):
                    yield Shown(layer=layer, points=(p, q)), depth


def _within(outline: Polygon, a: Point, b: Point) -> bool:
    """Whether a line parts what an outline holds: what it holds lies on both sides of its middle."""
    far = math.dist(a, b)
    if far < 1e-6:
        return False
    x, y = (a[0] + b[0]) / 2, (a[1] + b[1]) / 2
    dx, dy = (b[1] - a[1]) / far * _HAIR, -(b[0] - a[0]) / far * _HAIR
    return inside((x + dx, y + dy), (outline,)) and inside((x - dx, y - dy), (outline,))
