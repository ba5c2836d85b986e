"""Doors that swing and fold as they are pictured: where they stand, how they are lit, what is cropped."""

from __future__ import annotations

import dataclasses
from functools import cache
from itertools import product

import numpy as np
import pytest

from parametric.model import Group, State, displaced
from parametric.pack.pictures import SIZE, picture_scene
from parametric.writers.client_page import Scenery
from parametric.writers.picture_room import things
from parametric.writers.picture_scene import Away, PictureScene, Shot
from parametric.writers.picture_shapes import Staged, staged
from tests.browser.swinging import swinging_page
from tests.solids.swinging import FOLDING, HALVES, HINGED, NAMES, solids_of, swinging

pytestmark = pytest.mark.kernel

ASPECT = SIZE[0] / SIZE[1]
TO_SCENE = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])


@cache
def scene(name: str) -> PictureScene:
    return picture_scene(swinging_page(name), swinging(name))


@cache
def stage(name: str) -> Staged:
    from parametric.writers.glb import write_glb

    return staged(scene(name), write_glb(swinging(name), solids_of(name)))


def half_open(name: str) -> Shot:
    return next(shot for shot in scene(name).shots if shot.name.startswith("2-half-open"))


def boxes(group: Group, state_name: str, name: str) -> np.ndarray:
    """The corners of every piece of a leaf in a state, in the scene, m."""
    state = next(state for state in swinging(name).states if state.name == state_name)
    frame = displaced(group, state)
    found = [
        frame.point(part.placement.point(corner))
        for part in group.parts
        for corner in product(
            (0.0, part.blank.length), (0.0, part.blank.width), (0.0, part.blank.thickness)
        )
    ]
    return np.array(found) @ TO_SCENE.T / 1000


@pytest.mark.parametrize("name", [HINGED, FOLDING])
def test_what_stands_half_open_stands_as_the_model_has_it(name):
    """Every piece's own corners, carried from where it is shut, are where the model puts them."""
    shot = half_open(name)
    for group in swinging(name).groups:
        shut = boxes(group, "shut", name)
        assert shot.moved[group.name].turn is not None
        there = shot.moved[group.name].carried(shut)
        assert there == pytest.approx(boxes(group, "half open", name), abs=1e-9)


def test_a_turn_by_hand():
    """Half of -95 deg about (1.5, -6): cos 47.5 = 0.6755902, sin 47.5 = 0.7372773.

    The free edge's front corner (803, 0) is (801.5, 6) off the pin; clockwise (801.5 c + 6 s,
    6 c - 801.5 s) = (545.909, -586.874), so it stands 547.409 across and 592.874 nearer.
    """
    found = half_open(HINGED).moved["leaf A"].carried(np.array([[0.803, 1.0, 0.0]]))
    assert found[0] == pytest.approx((0.547409, 1.0, 0.592874), abs=1e-6)


@pytest.mark.parametrize("name", [HINGED, FOLDING])
def test_pieces_are_lit_as_they_are_turned(name):
    """Shapes of the pictures: unit normals, those of the leaf's front turned with the leaf."""
    shot = half_open(name)
    shapes = list(stage(name).shapes(shot))
    wood = [shape for shape in shapes if shape.at is not None and shape.normals is not None]
    assert len(wood) == sum(
        part.material.look == "timber" for group in swinging(name).groups for part in group.parts
    )
    for skin, shape in zip(stage(name).wood, wood, strict=True):
        away = shot.moved[skin.group]
        assert np.linalg.norm(shape.normals, axis=1) == pytest.approx(1.0, abs=1e-6)
        front = skin.normals[:, 2] > 0.999
        assert front.any()
        assert shape.normals[front] == pytest.approx(
            np.tile(np.array(away.turn)[:, 2], (front.sum(), 1)), abs=1e-6
        )
        # corners and normals stay at right angles on every flat triangle
        a, b, c = (shape.corners[shape.triangles[:, k]] for k in range(3))
        flat = np.cross(b - a, c - a)
        flat /= np.linalg.norm(flat, axis=1, keepdims=True)
        mean = shape.normals[shape.triangles].mean(axis=1)
        assert (np.sum(flat * mean, axis=1) > 0.9).all()


@pytest.mark.parametrize("name", NAMES)
def test_nothing_that_swings_out_is_cropped(name):
    for shot in scene(name).shots:
        if "pull" in shot.name:
            continue
        for group in swinging(name).groups:
            shut = boxes(group, "shut", name)
            for at in shot.moved.get(group.name, Away()).carried(shut):
                across, down = shot.camera.seen(tuple(at), ASPECT)
                assert 0.02 < across < 0.98
                assert 0.02 < down < 0.98


def test_one_looks_in_past_the_free_edge():
    """Hung on the left, a leaf that comes towards one leaves the way clear on its right."""
    assert half_open(HINGED).camera.turn > 0
    # hung on the left and folding to the left as well
    assert half_open(FOLDING).camera.turn > 0
    for shot in scene(HINGED).shots:
        if shot.name != half_open(HINGED).name:
            assert shot.camera.turn <= 0


def test_the_words_say_how_many_are_open():
    assert "the door half open" in half_open(HINGED).caption
    assert "the doors half open" in half_open(FOLDING).caption
    assert "one door half open" in half_open(HALVES).caption


def test_half_of_the_first_that_opens_where_no_state_is_half_open():
    """A door in two halves: shut, upper open, open; half of the second is pictured."""
    lower, upper = swinging(HALVES).groups
    assert not [s for s in swinging(HALVES).states if s.name.startswith("half open")]
    half = State(name="by hand", open={upper.name: 0.5, lower.name: 0.0})
    shut = boxes(upper, "shut", HALVES)
    (there,) = half_open(HALVES).moved[upper.name].carried(shut[:1])
    frame = displaced(upper, half)
    part = upper.parts[0]
    at = np.array(frame.point(part.placement.point((0.0, 0.0, 0.0)))) @ TO_SCENE.T / 1000
    assert there == pytest.approx(at, abs=1e-9)
    assert half_open(HALVES).moved[lower.name] == Away()


def test_what_stands_round_the_opening_is_whole():
    """A casing of three sides, 70 wide, as one outline round a corner: closed, of its volume.

    Seen from the front: 70 x 2000 each side and 70 x (900 + 140) over it, 18 thick:
    (2 x 140000 + 72800) x 18 = 6350400 mm3.
    """
    outline = (
        (0, 0),
        (0, 2000),
        (900, 2000),
        (900, 0),
        (970, 0),
        (970, 2070),
        (-70, 2070),
        (-70, 0),
    )
    page = swinging_page(HINGED, scenery=Scenery(trims=((outline, -18.0, 0.0),)))
    for points in (outline, outline[::-1]):
        trimmed = dataclasses.replace(page, scenery=Scenery(trims=((points, -18.0, 0.0),)))
        made = picture_scene(trimmed, swinging(HINGED))
        (trim,) = [
            thing
            for thing in things(made, ())
            if thing.corners.shape == (16, 3) and thing.corners[:, 1].max() == pytest.approx(2.07)
        ]
        assert trim.corners[:, 2].min() == 0
        assert trim.corners[:, 2].max() == pytest.approx(0.018)
        a, b, c = (trim.corners[trim.triangles[:, k]] for k in range(3))
        faces = trim.triangles[: 2 * (len(outline) - 2)]
        front = np.cross(*(trim.corners[faces[:, k]] - trim.corners[faces[:, 0]] for k in (1, 2)))
        assert np.abs(front[:, 2]).sum() / 2 / 2 == pytest.approx(352800e-6)
        edges = np.concatenate([trim.triangles[:, [i, (i + 1) % 3]] for i in range(3)])
        there = {tuple(edge) for edge in edges.tolist()}
        assert len(there) == len(edges)
        assert {(y, x) for x, y in there} == there  # every edge has a face on either side
        volume = abs(float(np.einsum("ij,ij->i", a, np.cross(b, c)).sum())) / 6
        assert volume == pytest.approx(6350400e-9)
