"""Textures: inside their outline, quiet, and the same wherever the piece lies."""

from __future__ import annotations

import itertools
import math

import pytest

from parametric.drawing.hatching import board, end_grain, glass_cut, long_grain, wall
from parametric.drawing.plane import Point, Polygon, arc_points, inside
from parametric.drawing.sheet import Hatch

# A rail of 24 x 4 mm with a groove in its upper edge.
RAIL: Polygon = (
    (0.0, 0.0),
    (4.0, 0.0),
    (4.0, 24.0),
    (2.4, 24.0),
    (2.4, 22.6),
    (1.6, 22.6),
    (1.6, 24.0),
    (0.0, 24.0),
)
PIECES = {
    "wall": lambda p: wall((p,), "v"),
    "end grain": lambda p: end_grain((p,), "v", "left", 1.05, 18.0),
    "long grain": lambda p: long_grain((p,), "v", "up", 0.95),
    "board": lambda p: board((p,), "v"),
    "glass": lambda p: glass_cut((p,), "v"),
}


def points(hatch: Hatch) -> list[Point]:
    """Points along everything a texture draws, its very ends left out."""
    found = list(hatch.dots)
    for stroke in hatch.strokes:
        for a, b in itertools.pairwise(stroke):
            found += [
                (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t) for t in (0.02, 0.5, 0.98)
            ]
    for centre, radius, start, end in hatch.arcs:
        found += list(arc_points(centre, radius, start + 1e-3, end - 1e-3, 0.2))
    return found


def moved(polygon: Polygon, by: Point) -> Polygon:
    return tuple((x + by[0], y + by[1]) for x, y in polygon)


@pytest.mark.parametrize("name", PIECES)
def test_a_texture_stays_in_its_piece(name: str) -> None:
    drawn = points(PIECES[name](RAIL))
    assert drawn
    outside = [p for p in drawn if not inside(p, (RAIL,))]
    # A point on the outline may fall either side by a rounding.
    near = [p for p in outside if min(abs(p[0]), abs(p[0] - 4), abs(p[1]), abs(p[1] - 24)) > 1e-6]
    assert near == []


@pytest.mark.parametrize("name", PIECES)
def test_a_texture_moves_with_its_piece(name: str) -> None:
    by = (137.25, 61.5)
    here, there = points(PIECES[name](RAIL)), points(PIECES[name](moved(RAIL, by)))
    assert len(here) == len(there)
    assert all(
        math.dist((a[0] + by[0], a[1] + by[1]), b) < 1e-6 for a, b in zip(here, there, strict=True)
    )


def test_hatching_leaves_a_letter_free() -> None:
    letter = ((1.0, 10.0), (3.0, 10.0), (3.0, 13.0), (1.0, 13.0))
    hatch = end_grain((RAIL, letter), "v", "left", 1.05, 18.0)
    assert all(not (1.01 < x < 2.99 and 10.01 < y < 12.99) for x, y in points(hatch))


def test_the_gap_is_the_gap() -> None:
    """45 degree lines 1.6 apart on a 16 square: its diagonal 22.63 / 1.6 is 14.1 lines."""
    square = ((0.0, 0.0), (16.0, 0.0), (16.0, 16.0), (0.0, 16.0))
    assert len(wall((square,), "v", 1.6).strokes) in (14, 15)
