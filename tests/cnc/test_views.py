"""Each face of a block with no symmetry, as the cutter sees it: a mirror would show at once."""

from __future__ import annotations

import dataclasses

import pytest

from parametric.cnc.setups import SetUp, set_ups
from parametric.cnc.views import leaf_side, outward, part_view
from parametric.model import FACES, Face, Placement, Vector, face_point
from parametric.outlines import bounds_of
from tests.cnc.pieces import GLUED, ODD, odd_block, odd_pocket


def centre(set_up: SetUp) -> tuple[float, float]:
    (operation,) = set_up.operations
    x0, y0, x1, y1 = bounds_of(operation.outline)
    return ((x0 + x1) / 2, (y0 + y1) / 2)


@pytest.mark.parametrize(
    ("face", "size", "at"),
    [
        # the block is 300 long (x), 90 wide (y), 50 thick (z); where a cutter above the
        # face meets the pocket, by hand, with the block turned in the hand:
        # face up, foot end at the left: x and y as they are
        ("high face", (300, 90, 50), (40, 25)),
        # rolled over about the length: x stays, y runs from the high edge, 90 - 20
        ("low face", (300, 90, 50), (50, 70)),
        # low edge up, low face towards the operator: y runs with the thickness
        ("low edge", (300, 50, 90), (60, 12)),
        # high edge up, high face towards the operator: 50 - 15
        ("high edge", (300, 50, 90), (70, 35)),
        # standing on its low end, low face towards the operator: low edge at the left
        ("high end", (90, 50, 300), (35, 18)),
        # standing on its high end, high face towards the operator, low edge still at
        # the left: 50 - 13
        ("low end", (90, 50, 300), (30, 37)),
    ],
)
def test_each_face_as_the_cutter_sees_it(
    face: Face, size: tuple[float, float, float], at: tuple[float, float]
) -> None:
    (set_up,) = (s for s in set_ups(odd_block()) if s.face == face)
    assert (set_up.length, set_up.width, set_up.thickness) == size
    assert centre(set_up) == pytest.approx(at)


@pytest.mark.parametrize("face", FACES)
def test_x_cross_y_points_at_the_cutter(face: Face) -> None:
    view = part_view(face, ODD)

    def part(x: float, y: float) -> Vector:
        # the face's u and v of a point of the file: the view is its own inverse up to signs
        u = (x - view.origin[0]) * view.u[0] + (y - view.origin[1]) * view.u[1]
        v = (x - view.origin[0]) * view.v[0] + (y - view.origin[1]) * view.v[1]
        return face_point(face, ODD, u, v, 0.0)

    o, px, py = part(0, 0), part(1, 0), part(0, 1)
    a = [p - q for p, q in zip(px, o, strict=True)]
    b = [p - q for p, q in zip(py, o, strict=True)]
    cross = (
        a[1] * b[2] - a[2] * b[1],
        a[2] * b[0] - a[0] * b[2],
        a[0] * b[1] - a[1] * b[0],
    )
    assert cross == outward(face)


def test_the_words_of_the_datum() -> None:
    words = {s.face: (s.x_from, s.y_from) for s in set_ups(odd_block())}
    assert words == {
        "low end": ("low edge", "high face"),
        "high end": ("low edge", "low face"),
        "low edge": ("low end", "low face"),
        "high edge": ("low end", "high face"),
        "low face": ("low end", "high edge"),
        "high face": ("low end", "low edge"),
    }


# a part lies in a leaf in four ways: two stiles, a rail, and a piece turned end for end
UP, RIGHT = (0.0, 0.0, 1.0), (1.0, 0.0, 0.0)
DOWN, LEFT = (0.0, 0.0, -1.0), (-1.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("origin", "x", "y", "low_face", "leaf_size", "front", "back"),
    [
        # a left stile: foot down, low face to the front. Pocket (40, 25) on the high face is
        # 25 from the left and 40 up: seen on the back 90 - 25 from the left.
        # Pocket (50, 20) on the low face is seen on the front as it lies.
        ((0, 0, 0), UP, RIGHT, "front", (90, 300), (20, 50), (65, 40)),
        # a right stile: turned about its length, high face to the front.
        # High face pocket 90 - 25 from the left; low face pocket, on the back, is 20 from
        # the stile's own outer edge, which is at the left from there.
        ((90, 50, 0), UP, LEFT, "back", (90, 300), (65, 40), (20, 50)),
        # a rail: foot edge down, high face to the front (x right, y up, z = x × y = -Y)
        ((0, 50, 0), RIGHT, UP, "back", (300, 90), (40, 25), (250, 20)),
        # a rail turned end for end in its own plane: from the far corner
        ((300, 50, 90), LEFT, DOWN, "back", (300, 90), (260, 65), (50, 70)),
    ],
)
def test_a_glued_leaf_from_the_front_and_turned_over(
    origin: Vector,
    x: Vector,
    y: Vector,
    low_face: str,
    leaf_size: tuple[float, float],
    front: tuple[float, float],
    back: tuple[float, float],
) -> None:
    assert leaf_side("low face", Placement(origin=origin, x=x, y=y)) == low_face
    pockets = (odd_pocket("high face", 40.0, 25.0), odd_pocket("low face", 50.0, 20.0))
    cuts = tuple(dataclasses.replace(p, making=GLUED) for p in pockets)
    found = {s.face_up: s for s in set_ups(odd_block(cuts, origin=origin, x=x, y=y))}
    assert list(found) == ["front", "back"]
    for side, at in (("front", front), ("back", back)):
        set_up = found[side]
        assert (set_up.length, set_up.width) == pytest.approx(leaf_size)
        assert set_up.thickness == 50
        assert centre(set_up) == pytest.approx(at)
