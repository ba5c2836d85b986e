"""Leaves that turn: where a file's animation and words put them, against the model's own steps.

The animation is played by scipy, as the glTF 2.0 specification has it (section 3.11 and
appendix C: places joined by straight lines, turns by spherical linear interpolation); the words
are followed with scipy's rotations. Neither knows of the writers.
"""

from __future__ import annotations

import dataclasses
import io
import json
import shutil
from collections.abc import Mapping, Sequence
from functools import cache
from itertools import product
from pathlib import Path
from typing import Any

import numpy as np
import pytest
import trimesh
from scipy.spatial.transform import Rotation, Slerp

from parametric.model import Assembly, Group, Slide, State, Turn, along, displaced
from parametric.writers.client_page import Palette, go_together
from tests.solids.swinging import FOLDING, HALVES, HINGED, NAMES, PIN, THICK, solids_of, swinging
from tests.writers.test_glb import VALIDATOR, node, numbers, unpacked, validated

pytestmark = pytest.mark.kernel

AT_KEYS, BETWEEN = 1e-6, 1e-4  # m
FRACTIONS = (0.0, 0.25, 0.5, 0.75, 1.0)
ODD = tuple(n / 997 for n in range(0, 998, 7))
Points = Any


@cache
def glb(name: str) -> bytes:
    from parametric.writers.glb import write_glb

    return write_glb(swinging(name), solids_of(name))


def corners(group: Group) -> list[tuple[float, float, float]]:
    """The corners of a leaf in its own frame, mm."""
    points = [
        part.placement.point(local)
        for part in group.parts
        for local in product(
            (0.0, part.blank.length), (0.0, part.blank.width), (0.0, part.blank.thickness)
        )
    ]
    low, high = np.min(points, axis=0), np.max(points, axis=0)
    return [(float(x), float(y), float(z)) for x, y, z in product(*zip(low, high, strict=True))]


def designed(group: Group, part: float) -> Points:
    """Where the model has a leaf's corners, in the scene: metres, Y up, the room at +Z."""
    stands = along(group.placement, group.motion, part)
    world = np.array([stands.point(corner) for corner in corners(group)])
    return world[:, [0, 2, 1]] * (1, 1, -1) / 1000


def sampled(file: Mapping[str, Any], binary: bytes, group: Group) -> dict[str, Any]:
    """The keys of a leaf's animation by what they move."""
    index = file["nodes"].index(node(file, group.name))
    (animation,) = (a for a in file["animations"] if a["channels"][0]["target"]["node"] == index)
    found = {}
    for channel in animation["channels"]:
        sampler = animation["samplers"][channel["sampler"]]
        assert channel["target"]["node"] == index
        assert sampler["interpolation"] == "LINEAR"
        times = numbers(file, binary, sampler["input"]).astype(float).ravel()
        keys = numbers(file, binary, sampler["output"]).astype(float)
        found[channel["target"]["path"]] = (times, keys)
    return found


def played(file: Mapping[str, Any], binary: bytes, group: Group, part: float) -> Points:
    """Where the animation has a leaf's corners when it has played that part."""
    keys = sampled(file, binary, group)
    times, places = keys["translation"]
    now = times[0] + (times[-1] - times[0]) * part
    place = [np.interp(now, times, places[:, k]) for k in range(3)]
    turn = Slerp(keys["rotation"][0], Rotation.from_quat(keys["rotation"][1]))(now)
    own = np.array(corners(group))[:, [0, 2, 1]] * (1, 1, -1) / 1000
    return turn.apply(own) + place


@pytest.mark.parametrize("name", NAMES)
def test_an_animation_keeps_to_the_way(name: str) -> None:
    """Every corner at shut, quarters and open to 1e-6 m; to 0.1 mm at 143 places between keys."""
    file, binary = unpacked(glb(name))
    for group in swinging(name).groups:
        for part in FRACTIONS:
            off = np.abs(played(file, binary, group, part) - designed(group, part)).max()
            assert off <= AT_KEYS, (group.name, part)
        for part in ODD:
            off = np.linalg.norm(played(file, binary, group, part) - designed(group, part), axis=1)
            assert off.max() <= BETWEEN, (group.name, part)


def test_where_leaves_end_by_hand() -> None:
    """Worked with the arithmetic shown, so that the model's steps are not all that is trusted.

    Hinged, by -95 deg about (1.5, -6): the front corner of the free edge, (803, 0), stands
    (801.5, 6) off the pin. cos 95 = -0.0871557, sin 95 = 0.9961947. Clockwise that is
    (801.5 c + 6 s, -801.5 s + 6 c) = (-63.878, -798.973), so (-62.378, -804.973).

    Folding: the second leaf turns +176 about (505, 46) and -88 about (1.5, -6), as if +88 in
    all. The fold's pin goes to: (503.5, 52) off the jamb's, by -88 (c = 0.0348995,
    s = 0.9993908): (17.572 + 51.968, -503.193 + 1.815) = (69.540, -501.378), so (71.040,
    -507.378). The front corner of leaf B's free edge, (987, 0), is (482, -46) off the fold;
    by +88: (482 c + 46 s, 482 s - 46 c) = (62.793, 480.101). Together (133.833, -27.277).
    """
    hinged = swinging(HINGED).groups[0]
    file, binary = unpacked(glb(HINGED))
    ends = played(file, binary, hinged, 1.0) * 1000
    assert np.abs(ends[:, [0, 2]] - (-62.378, 804.973)).sum(axis=1).min() < 2e-3
    second = swinging(FOLDING).groups[1]
    file, binary = unpacked(glb(FOLDING))
    ends = played(file, binary, second, 1.0) * 1000
    assert np.abs(ends[:, [0, 2]] - (133.833, 27.277)).sum(axis=1).min() < 2e-3
    assert (PIN, THICK) == (6.0, 40.0)


@pytest.mark.parametrize("name", NAMES)
def test_the_file_stands_shut_as_trimesh_reads_it(name: str) -> None:
    scene = trimesh.load(io.BytesIO(glb(name)), file_type="glb")
    for group in swinging(name).groups:
        turn, _ = scene.graph.get(group.name)
        own = np.array(corners(group))[:, [0, 2, 1]] * (1, 1, -1) / 1000
        assert trimesh.transform_points(own, turn) == pytest.approx(designed(group, 0.0), abs=1e-9)


@pytest.mark.skipif(
    shutil.which("node") is None or not Path(VALIDATOR).exists(),
    reason="node or gltf-validator is not here",
)
@pytest.mark.parametrize("name", NAMES)
def test_the_reference_validator_finds_nothing(name: str, tmp_path: Path) -> None:
    report = validated(glb(name), tmp_path)
    issues = report["issues"]
    assert (issues["numErrors"], issues["numWarnings"], issues["numInfos"]) == (0, 0, 0), issues
    assert report["info"]["animationCount"] == len(swinging(name).groups)


def followed(said: Sequence[Mapping[str, Any]], points: Points, part: float) -> Points:
    """The words of a motion followed step by step."""
    for step in said:
        if "slide" in step:
            points = points + np.array(step["slide"]) * part
        else:
            turn = Rotation.from_rotvec(np.radians(step["turn"] * part) * np.array(step["axis"]))
            points = turn.apply(points - step["point"]) + step["point"]
    return points


@pytest.mark.parametrize("name", NAMES)
def test_what_the_files_say_leads_there_too(name: str, tmp_path: Path) -> None:
    """The extras of the GLB, and the words that OpenUSD reads out of the USDZ, are one motion."""
    from pxr import Usd

    from parametric.writers.usdz import write_usdz

    path = tmp_path / "model.usdz"
    path.write_bytes(write_usdz(swinging(name), solids_of(name), Palette()))
    stage = Usd.Stage.Open(str(path))
    prims = {prim.GetDisplayName(): prim for prim in stage.GetDefaultPrim().GetChildren()}
    file, _ = unpacked(glb(name))
    for group in swinging(name).groups:
        extras = node(file, group.name)["extras"]
        assert extras.keys() == {"role", "motion"}
        assert json.loads(prims[group.name].GetCustomDataByKey("motion")) == extras["motion"]
        for part in FRACTIONS:
            found = followed(extras["motion"], designed(group, 0.0), part)
            assert np.abs(found - designed(group, part)).max() <= AT_KEYS, (group.name, part)


@pytest.mark.parametrize("name", NAMES)
def test_the_states_are_on_the_way(name: str) -> None:
    file, binary = unpacked(glb(name))
    for group, state in product(swinging(name).groups, swinging(name).states):
        stands = displaced(group, state)
        opened = state.open.get(group.name, 0.0)
        off = played(file, binary, group, opened) - designed(group, opened)
        assert np.abs(off).max() <= AT_KEYS
        assert stands == along(group.placement, group.motion, opened)


def test_a_leaf_that_slides_out_and_turns_about_an_odd_line() -> None:
    """A slide, a turn about a leaning line and a turn about another: the way is kept all the same.

    The even turn between two keys is not the way here, so it is the keys that must lie close.
    """
    from parametric.writers.glb import write_glb

    leaf = dataclasses.replace(
        swinging(HINGED).groups[0],
        motion=(
            Slide(direction=(0.6, -0.8, 0.0), travel=120.0),
            Turn(point=(10.0, 20.0, 30.0), axis=(0.48, 0.6, 0.64), angle=70.0),
            Turn(point=(-40.0, 0.0, 0.0), axis=(0.0, 0.0, 1.0), angle=-200.0),
        ),
    )
    assembly = Assembly(name="odd", groups=(leaf,), states=())
    file, binary = unpacked(write_glb(assembly, solids_of(HINGED)))
    for part in (*FRACTIONS, *ODD):
        off = np.linalg.norm(played(file, binary, leaf, part) - designed(leaf, part), axis=1)
        assert off.max() <= (AT_KEYS if part in FRACTIONS else BETWEEN), part


def test_as_few_keys_as_it_takes() -> None:
    """An arc's height over its chord, r (1 - cos(a / 2)), may be 0.05; keys double until it is.

    A turn is exact between keys, so only the way of the leaf's own corner counts. Hinged: it
    stands 6.2 from the pin (1.5 and 6) and goes 95 deg: 6.2 (1 - cos(95 / 8)) = 0.13 with 4
    pieces, 0.033 with 8. The second folding leaf's is carried 505 about the jamb by 88 deg:
    505 (1 - cos(88 / 64)) = 0.15 with 32, 0.036 with 64.
    """
    for name, index, count in ((HINGED, 0, 8), (FOLDING, 1, 64)):
        file, binary = unpacked(glb(name))
        times, _ = sampled(file, binary, swinging(name).groups[index])["translation"]
        assert len(times) == count + 1


def test_leaves_go_together_where_no_state_has_them_apart() -> None:
    assert _together(FOLDING) == {"leaf A": "leaf A", "leaf B": "leaf A"}
    assert _together(HALVES) == {"leaf A": "", "leaf B": ""}
    assert _together(HINGED) == {"leaf A": ""}


def test_two_sets_that_fold_apart_go_each_alone() -> None:
    """Four leaves, two to a jamb, and states that only ever have all of them open."""
    (first, second), states = swinging(FOLDING).groups, swinging(FOLDING).states
    other = Turn(point=(988.5, -6.0, 0.0), axis=(0.0, 0.0, 1.0), angle=88.0)
    motions = {
        "leaf A": first.motion,
        "leaf B": second.motion,
        "leaf C": (*second.motion[:1], other),
        "leaf D": (other,),
    }
    alike = tuple(
        State(name=state.name, open=dict.fromkeys(motions, state.open["leaf A"]))
        for state in states
    )
    assert list(go_together(motions, alike).values()) == ["leaf A", "leaf A", "leaf C", "leaf C"]
    shut = (State(name="shut", open={}),)
    assert set(go_together(motions, shut).values()) == {""}


def _together(name: str) -> Mapping[str, str]:
    made = swinging(name)
    return go_together({group.name: group.motion for group in made.groups}, made.states)
