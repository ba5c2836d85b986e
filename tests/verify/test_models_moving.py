"""Leaves that swing and fold, told or played otherwise than the design has them.

Each fault is seeded alone into a sound file. What a viewer would show is spoiled apart from
what the file says of it, for either is read by somebody.
"""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Callable
from functools import cache
from typing import Any

import numpy as np
import pytest

from parametric.model import Slide, Turn
from parametric.pack.verifying.known import Known
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.model_usdz import check_usdz
from parametric.pack.verifying.usdz_file import unpacked
from tests.solids.swinging import FOLDING, HALVES, HINGED, NAMES, solids_of, swinging
from tests.verify.lopsided import known
from tests.verify.seeds import changed_scene

pytestmark = pytest.mark.kernel

Scene = dict[str, Any]


def design(name: str) -> Known:
    return dataclasses.replace(known(), assembly=swinging(name))


@cache
def glb(name: str) -> bytes:
    from parametric.writers.glb import write_glb

    return write_glb(swinging(name), solids_of(name))


@cache
def usdz(name: str) -> bytes:
    from parametric.writers.client_page import Palette
    from parametric.writers.usdz import write_usdz

    return write_usdz(swinging(name), solids_of(name), Palette())


def in_glb(name: str, change: Callable[[Scene, bytearray], None]) -> str:
    return "\n".join(check_glb(changed_scene(glb(name), change), design(name)).faults)


def steps(scene: Scene, leaf: str) -> list[dict[str, Any]]:
    (found,) = (node for node in scene["nodes"] if node.get("name") == leaf)
    said: list[dict[str, Any]] = found["extras"]["motion"]
    return said


def keys(scene: Scene, binary: bytearray, leaf: str, path: str) -> Any:
    """The keys of a leaf's animation, to be written into."""
    index = next(i for i, node in enumerate(scene["nodes"]) if node.get("name") == leaf)
    for animation in scene["animations"]:
        for channel in animation["channels"]:
            if channel["target"] == {"node": index, "path": path}:
                accessor = scene["accessors"][animation["samplers"][channel["sampler"]]["output"]]
                view = scene["bufferViews"][accessor["bufferView"]]
                wide = 4 if path == "rotation" else 3
                held = np.frombuffer(
                    memoryview(binary), np.float32, accessor["count"] * wide, view["byteOffset"]
                )
                return held.reshape(-1, wide)
    raise AssertionError(leaf)


@pytest.mark.parametrize("name", NAMES)
def test_sound_files_pass_and_say_how_many_turn(name: str) -> None:
    verdict = check_glb(glb(name), design(name))
    assert verdict.faults == ()
    count = len(swinging(name).groups)
    assert (verdict.looked_at["sliding"], verdict.looked_at["turning"]) == (0, count)
    assert check_usdz(usdz(name), design(name)).faults == ()


@pytest.mark.parametrize(
    ("name", "leaf", "change"),
    [
        (HINGED, "leaf A", lambda s: s[0].update(turn=95.0)),  # the other way round
        (HINGED, "leaf A", lambda s: s[0].update(turn=-94.999)),
        (HINGED, "leaf A", lambda s: s[0]["point"].__setitem__(0, 0.0016)),
        (HINGED, "leaf A", lambda s: s[0].update(axis=[0.0, 0.0, 1.0])),
        (FOLDING, "leaf B", lambda s: s.reverse()),  # the outer step first
        (FOLDING, "leaf B", lambda s: s.pop()),
        (FOLDING, "leaf B", lambda s: s.append({"slide": [0.0, 0.0, 0.00001]})),
        (HALVES, "leaf B", lambda s: s[0].update(turn=-89.0)),
    ],
)
def test_what_is_said_otherwise_is_found(
    name: str, leaf: str, change: Callable[[list[dict[str, Any]]], None]
) -> None:
    said = in_glb(name, lambda scene, _: change(steps(scene, leaf)))
    assert said.startswith(f"{leaf}: says it moves ")
    assert "\n" not in said


@pytest.mark.parametrize(
    "change",
    [
        lambda s: s[0].pop("turn"),
        lambda s: s[0].update(point=[0.0, 0.0]),
        lambda s: s[0].update(axis="y"),
        lambda s: s.__setitem__(0, None),
    ],
)
def test_what_cannot_be_followed_is_found(change: Callable[[list[Any]], None]) -> None:
    said = in_glb(HINGED, lambda scene, _: change(steps(scene, "leaf A")))
    assert said == "leaf A: does not say how it moves"


def test_an_animation_that_begins_or_ends_elsewhere() -> None:
    def raised(scene: Scene, binary: bytearray) -> None:
        keys(scene, binary, "leaf A", "translation")[:, 1] += 0.01

    assert "leaf A: begins to move 10.000 off where it stands shut" in in_glb(HINGED, raised)

    def short(scene: Scene, binary: bytearray) -> None:
        turns = keys(scene, binary, "leaf A", "rotation")
        turns[-1] = turns[-2]

    assert in_glb(HINGED, short).endswith("off its way, 100% open")


def test_keys_too_far_apart_leave_the_way_between_them() -> None:
    """Every key right, and too few of them: a viewer cuts the arc short."""

    # the clock is one accessor of both channels, so each is thinned a single time
    def thinned(scene: Scene, binary: bytearray) -> None:
        accessors = {
            sampler[end]
            for animation in scene["animations"]
            for sampler in animation["samplers"]
            for end in ("input", "output")
        }
        for index in accessors:
            accessor = scene["accessors"][index]
            view = scene["bufferViews"][accessor["bufferView"]]
            wide = {"SCALAR": 1, "VEC3": 3, "VEC4": 4}[accessor["type"]]
            held = np.frombuffer(
                memoryview(binary), np.float32, accessor["count"] * wide, view["byteOffset"]
            ).reshape(-1, wide)
            kept = held[::4].copy()
            held[: len(kept)] = kept
            accessor["count"] = len(kept)

    said = in_glb(FOLDING, thinned)
    assert "leaf B: moves" in said
    assert "off its way between keys" in said


def test_a_turn_the_long_way_round() -> None:
    """A quaternion and its negative are one turn; a viewer takes the short way between them."""

    def negated(scene: Scene, binary: bytearray) -> None:
        turns = keys(scene, binary, "leaf A", "rotation")
        turns[::2] *= -1

    assert in_glb(HINGED, negated) == ""


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (lambda s: s["animations"].clear(), "leaf A: moves not at all, and the design does"),
        (
            lambda s: s["animations"][0]["samplers"][0].update(interpolation="STEP"),
            "cannot be read back",
        ),
        (
            lambda s: s["animations"][0]["channels"][1]["target"].update(path="scale"),
            "cannot be read back",
        ),
    ],
)
def test_an_animation_that_is_none(change: Callable[[Scene], None], says: str) -> None:
    assert in_glb(HINGED, lambda scene, _: change(scene)).startswith(says)


def test_what_should_stand_still_and_what_should_slide() -> None:
    """The same file held against designs in which the leaf does something else."""
    leaf = swinging(HINGED).groups[0]
    slides = (Slide(direction=(1.0, 0.0, 0.0), travel=400.0),)
    for motion, says in (((), "leaf A: moves, and should not"), (slides, "leaf A: says it slides")):
        made = dataclasses.replace(leaf, motion=motion)
        changed = dataclasses.replace(swinging(HINGED), groups=(made,))
        faults = check_glb(glb(HINGED), dataclasses.replace(known(), assembly=changed)).faults
        assert any(fault.startswith(says) for fault in faults), faults


@pytest.mark.parametrize(
    ("old", "new"),
    [("-95.0", "-90.0"), ("-95.0", "95.0"), ("0.0015", "0.0"), ("turn", "turned")],
)
def test_usdz_that_says_otherwise(old: str, new: str) -> None:
    from parametric.writers.usdz import archive

    ((name, layer),) = unpacked(usdz(HINGED))
    text = layer.decode()
    lines = [line for line in text.split("\n") if "string motion" in line]
    assert len(lines) == 1
    assert old in lines[0]
    changed = archive({name: text.replace(lines[0], lines[0].replace(old, new)).encode()})
    assert "leaf A: " in "\n".join(check_usdz(changed, design(HINGED)).faults)


def test_the_words_are_those_of_the_design() -> None:
    """By hand: -95 about (1.5, -6) of the world is about (0.0015, 0, 0.006) with y up."""
    scene: Scene = {}
    changed_scene(glb(HINGED), lambda found, _: scene.update(json.loads(json.dumps(found))))
    assert steps(scene, "leaf A") == [
        {"turn": -95.0, "point": [0.0015, 0.0, 0.006], "axis": [0.0, 1.0, 0.0]}
    ]
    (turn,) = swinging(HINGED).groups[0].motion
    assert turn == Turn(point=(1.5, -6.0, 0.0), axis=(0.0, 0.0, 1.0), angle=-95.0)
