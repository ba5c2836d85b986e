"""Points inside and outside skins of triangles: against sums for a box with a box cut out of it."""

from __future__ import annotations

import itertools

import numpy as np
import pytest

from parametric.pack.verifying import inside_skin
from parametric.pack.verifying.inside_skin import Floats, inside

Corner = tuple[float, float, float]
BOARD = (0.0, 0.0, 0.0), (600.0, 300.0, 18.0)
POCKET = (100.0, 40.0, 6.0), (180.0, 90.0, 12.0)
"""A hollow that is shut all round, so that its skin is within the board's."""


def box(low: Corner, high: Corner, *, hollow: bool = False) -> Floats:
    """Twelve triangles, right way out; the other way of what is hollow."""
    faces = []
    for axis in range(3):
        for end in (0, 1):
            across, up = (axis + 1) % 3, (axis + 2) % 3
            corners = []
            for a, b in ((0, 0), (1, 0), (1, 1), (0, 1)):
                corner = [0.0, 0.0, 0.0]
                corner[axis] = (low, high)[end][axis]
                corner[across] = (low, high)[a][across]
                corner[up] = (low, high)[b][up]
                corners.append(corner)
            if (end == 0) != hollow:
                corners.reverse()
            faces += [corners[:3], [corners[0], corners[2], corners[3]]]
    return np.array(faces)


SKIN = np.concatenate([box(*BOARD), box(*POCKET, hollow=True)])


def is_in(point: Corner) -> bool:
    def between(box: tuple[Corner, Corner]) -> bool:
        return all(a < x < b for a, x, b in zip(box[0], point, box[1], strict=True))

    return between(BOARD) and not between(POCKET)


def test_points_anywhere() -> None:
    points = np.random.default_rng(7).uniform((-60, -30, -6), (660, 330, 24), (4000, 3))
    found = inside(points, SKIN)
    assert found == [is_in(tuple(point)) for point in points]
    assert 800 < sum(found) < 3200


def test_points_a_hair_from_every_side() -> None:
    """As solids are probed: a tenth inside and a tenth outside of sides, edges and corners."""
    lines = [
        sorted({a + way for a in (*low, *high)[axis::3] for way in (-0.1, 0.1)})
        for low, high in (BOARD, POCKET)
        for axis in range(3)
    ]
    points = [point for board in (lines[:3], lines[3:]) for point in itertools.product(*board)]
    assert inside(np.array(points), SKIN) == [is_in(point) for point in points]


def test_a_line_through_an_edge_is_left_to_the_angle(monkeypatch: pytest.MonkeyPatch) -> None:
    """Points whose slanting line runs exactly through a corner of the board's top."""
    slant, angle = np.array([*inside_skin._SLANT, 1.0]), inside_skin._seen_all_round
    asked = []

    def counted(points: Floats, triangles: Floats) -> object:
        asked.append(len(points))
        return angle(points, triangles)

    monkeypatch.setattr(inside_skin, "_seen_all_round", counted)
    corners = np.array([(0.0, 0.0, 18.0), (600.0, 300.0, 18.0), (180.0, 90.0, 12.0)])
    points = np.concatenate([corners - slant * deep for deep in (1.0, 3.0, 30.0)])
    assert inside(points, SKIN) == [is_in(tuple(point)) for point in points]
    assert sum(asked) == len(points)


def test_the_line_and_the_angle_agree() -> None:
    points = np.random.default_rng(3).uniform((90, 30, 0), (190, 100, 18), (500, 3))
    assert inside(points, SKIN) == list(inside_skin._seen_all_round(points, SKIN))
