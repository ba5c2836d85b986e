"""What stands where in a picture: rules of framing, and leaves where the job's states have them."""

from __future__ import annotations

import dataclasses

import pytest

from parametric.model import displaced
from parametric.pack.pictures import CAPTIONS, FOLDER, SIZE, captions, picture_scene
from parametric.writers.client_page import OwnPlace
from parametric.writers.picture_model import read_pieces
from parametric.writers.picture_scene import Away
from tests.pictures.larch_hill import model, pictured

ASPECT = SIZE[0] / SIZE[1]
WHOLE = ("1-facing-shut-day", "2-half-open-day", "4-evening")


def shot_named(name):
    return next(shot for shot in pictured().scene.shots if shot.name == name)


def corners_of(shot):
    """The eight corners of each leaf as it stands in a picture, in the scene, m."""
    for leaf in pictured().page.leaves:
        dx, dy, dz = shot.moved.get(leaf.name, Away()).shift
        front = -leaf.front / 1000
        yield {
            (i, j, k): (
                (leaf.x + i * leaf.width) / 1000 + dx,
                (leaf.foot + j * leaf.height) / 1000 + dy,
                front - k * leaf.thickness / 1000 + dz,
            )
            for i in (0, 1)
            for j in (0, 1)
            for k in (0, 1)
        }


def test_the_set_is_four_pictures_each_with_its_words():
    found = captions(pictured().page, pictured().assembly)
    assert list(found) == [
        f"{FOLDER}/{name}.png" for name in (*WHOLE[:2], "3-at-the-pull-day", WHOLE[2])
    ]
    assert len(set(found.values())) == 4
    assert CAPTIONS not in found


@pytest.mark.parametrize("name", WHOLE)
def test_doors_and_floor_stand_where_they_should(name):
    """Doors 62 to 72 % of the height where they are looked at; the floor 18 to 24 % from the foot."""
    shot = shot_named(name)
    page, camera = pictured().page, shot.camera
    x, z = camera.pivot
    foot = min(leaf.foot for leaf in page.leaves) / 1000
    head = max(leaf.foot + leaf.height for leaf in page.leaves) / 1000
    _, low = camera.seen((x, foot, z), ASPECT)
    _, high = camera.seen((x, head, z), ASPECT)
    assert 0.62 <= low - high <= 0.72
    _, floor = camera.seen((x, 0.0, z), ASPECT)
    assert 0.18 <= 1 - floor <= 0.24


@pytest.mark.parametrize("shot", pictured().scene.shots, ids=lambda shot: shot.name)
def test_uprights_are_exactly_upright(shot):
    """Two ends of an upright are in one column, 1e-9 of the picture's width, near and far."""
    for corners in corners_of(shot):
        for (i, j, k), at in corners.items():
            if j == 0:
                across, _ = shot.camera.seen(at, ASPECT)
                above, _ = shot.camera.seen(corners[i, 1, k], ASPECT)
                assert above == pytest.approx(across, abs=1e-9)


@pytest.mark.parametrize("name", WHOLE)
def test_nothing_that_is_sold_is_cropped(name):
    shot = shot_named(name)
    for corners in corners_of(shot):
        for at in corners.values():
            across, down = shot.camera.seen(at, ASPECT)
            assert 0.02 < across < 0.98
            assert 0.02 < down < 0.98


def test_what_stands_open_stands_as_the_job_has_it():
    """Half open: leaf A by half its travel of 904.5, so 452.25 to the right; leaf B shut."""
    shot = shot_named("2-half-open-day")
    assert shot.moved["leaf A"].shift == pytest.approx((0.45225, 0.0, 0.0), abs=1e-9)
    assert shot.moved["leaf B"] == Away()
    assert not shot_named("1-facing-shut-day").moved
    state = next(s for s in pictured().assembly.states if s.name == "half open, left leaf")
    for group in pictured().assembly.groups:
        x, y, z = displaced(group, state).origin
        there = (x / 1000, z / 1000, -y / 1000)
        a, b, c = group.placement.origin
        home = (a / 1000, c / 1000, -b / 1000)
        moved = shot.moved[group.name].shift
        assert tuple(h + m for h, m in zip(home, moved, strict=True)) == pytest.approx(there)


def test_the_light_comes_from_the_side_that_is_open():
    shot = shot_named("2-half-open-day")
    assert shot.moved["leaf A"].shift[0] > 0  # away from the left, so the way is open there
    assert shot.camera.turn < 0  # and the eye is on that side too


@pytest.mark.kernel
def test_every_piece_of_the_model_is_read_where_its_part_stands():
    """A piece's low corner in the scene is its part's placement and its group's, in metres."""
    pieces = {piece.name: piece for piece in read_pieces(model())}
    parts = [(group, part) for group in pictured().assembly.groups for part in group.parts]
    assert set(pieces) == {part.name for _, part in parts}
    for group, part in parts:
        x, y, z = (
            g + p for g, p in zip(group.placement.origin, part.placement.origin, strict=True)
        )
        assert pieces[part.name].stand * 1000 == pytest.approx((x, z, -y), abs=1e-3)


def test_a_place_of_the_clients_own_stands_in_for_the_sofa():
    stairs = OwnPlace(name="the stairs", seated=False, far=4200.0, side="right")
    page = dataclasses.replace(pictured().page, places=(stairs,))
    shot = picture_scene(page, pictured().assembly).shots[1]
    assert shot.caption == "From the stairs, one door half open, by day"
    assert shot.camera.height == 1.45  # standing, as before the doors
    assert shot.camera.turn == -shot_named("2-half-open-day").camera.turn > 0
