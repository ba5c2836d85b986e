"""What slides, slides as the resolved motion states say: by the files' own words, to 0.1 mm.

The GLB says it twice, in the extras of a leaf's node (axis, travel in metres from shut) and
as an animation that a viewer plays; the USDZ once. Each is applied as a viewer would and
held against every state of the design.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any

import numpy as np
import pytest

from parametric.job import check
from parametric.model import Assembly, Group, State, displaced
from parametric.names import join
from parametric.pack.numbers import figures
from parametric.resolve.door import Resolved
from tests.solids.models import HAND_MADE, NAMES, assembly_of, solids_of

pytestmark = pytest.mark.kernel

NEAR = 0.1  # mm
AXES = {"x": (1.0, 0.0, 0.0), "y": (0.0, 1.0, 0.0), "z": (0.0, 0.0, 1.0)}


@dataclass(frozen=True, kw_only=True)
class Glb:
    """A GLB's description and its numbers."""

    scene: Mapping[str, Any]
    binary: bytes

    def node(self, name: str) -> Mapping[str, Any]:
        (found,) = (node for node in self.scene["nodes"] if node["name"] == name)
        return dict(found)

    def numbers(self, accessor: int) -> Any:
        spec = self.scene["accessors"][accessor]
        view = self.scene["bufferViews"][spec["bufferView"]]
        width = {"SCALAR": 1, "VEC3": 3}[spec["type"]]
        held = np.frombuffer(self.binary, "<f4", spec["count"] * width, view["byteOffset"])
        return held.reshape(-1, width).astype(float)

    def by_extras(self, group: str, opened: float) -> Any:
        """Where a node stands when it has gone a part of its travel along its axis, metres."""
        node = self.node(group)
        shut = np.array(node.get("translation", (0.0, 0.0, 0.0)))
        said = node["extras"]
        if "axis" not in said:
            return shut
        low, high = said["travel"]
        return shut + np.array(AXES[said["axis"]]) * (low + (high - low) * opened)

    def by_animation(self, group: str, opened: float) -> Any:
        """Where a node stands at that part of its animation; keys are joined by straight lines."""
        node = self.node(group)
        index = self.scene["nodes"].index(node)
        for animation in self.scene["animations"]:
            for channel in animation["channels"]:
                if channel["target"] == {"node": index, "path": "translation"}:
                    sampler = animation["samplers"][channel["sampler"]]
                    assert sampler["interpolation"] == "LINEAR"
                    times = self.numbers(sampler["input"])[:, 0]
                    keys = self.numbers(sampler["output"])
                    now = times[0] + (times[-1] - times[0]) * opened
                    return np.array([np.interp(now, times, keys[:, k]) for k in range(3)])
        return np.array(node.get("translation", (0.0, 0.0, 0.0)))


@cache
def glb_of(name: str) -> Glb:
    from parametric.writers.glb import write_glb

    data = write_glb(assembly_of(name), solids_of(name))
    length = struct.unpack_from("<I", data, 12)[0]
    return Glb(scene=json.loads(data[20 : 20 + length]), binary=data[28 + length :])


def in_the_scene(group: Group, state: State) -> Any:
    """Where the design has a group in a state: metres, Y up, the room at +Z."""
    x, y, z = map(float, displaced(group, state).origin)
    return np.array([x, z, -y]) / 1000


STATES = [
    pytest.param(name, state, id=f"{name}, {state.name}")
    for name in NAMES
    for state in assembly_of(name).states
]


@pytest.mark.parametrize(("name", "state"), STATES)
def test_nodes_go_where_the_states_say(name: str, state: State) -> None:
    """Shut, half open and open: every group, by extras and by animation."""
    glb = glb_of(name)
    for group in assembly_of(name).groups:
        opened = state.open.get(group.name, 0.0)
        wanted = in_the_scene(group, state)
        for found in (glb.by_extras(group.name, opened), glb.by_animation(group.name, opened)):
            assert np.abs(found - wanted).max() * 1000 <= NEAR, (group.name, found, wanted)


@pytest.mark.parametrize("name", NAMES)
def test_the_file_stands_shut(name: str) -> None:
    """As written, before anything moves, each group is where the state `shut` has it."""
    (shut,) = (state for state in assembly_of(name).states if state.name == "shut")
    assert set(shut.open.values()) <= {0.0}
    for group in assembly_of(name).groups:
        stands = np.array(glb_of(name).node(group.name).get("translation", (0.0, 0.0, 0.0)))
        assert np.abs(stands - in_the_scene(group, shut)).max() * 1000 <= NEAR


def clear_way(resolved: Resolved, assembly: Assembly, state: State, glb: Glb) -> float:
    """What the leaves leave free of the narrowest way, mm, by where the file puts them."""
    door = resolved.door
    narrow = float(door.opening.narrowest)
    middle = float(door.hanging.lefts[0]) + float(door.hanging.cover) / 2
    edges = [middle - narrow / 2]
    for leaf in door.leaves:
        left = glb.by_extras(leaf.name, state.open.get(leaf.name, 0.0))[0] * 1000
        edges += [left, left + float(leaf.width)]
    edges.append(middle + narrow / 2)
    assert assembly.groups[0].name == door.leaves[0].name
    return max(edges[1] - edges[0], edges[-1] - max(edges[2], edges[4]))


def test_the_way_is_clear_by_what_is_promised(reading_room: Path) -> None:
    """Larch Hill: cover 1929, smallest width 1824 in its middle: from 2.5 to 1826.5.

    Left leaf slid away by its travel 904.5: -50 + 904.5 = 854.5, on the right leaf; the way
    is clear from 2.5 to 854.5 = 852. Right leaf slid away: it covers -50 to 974.5, and
    1826.5 - 974.5 = 852 is clear.
    """
    job = check(reading_room, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    promised = float(figures(job.resolved, job.loads)[join("clear way")])
    assert promised == 852.0
    states = {state.name: state for state in job.assembly.states}
    for opened in ("open to the left", "open to the right"):
        found = clear_way(job.resolved, job.assembly, states[opened], glb_of("reading room"))
        assert abs(found - promised) <= NEAR, opened


@pytest.mark.parametrize("name", NAMES)
def test_the_model_for_phones_says_the_same_slides(name: str, tmp_path: Path) -> None:
    """Read by OpenUSD: a leaf's axis and travel, from where its own matrix has it shut."""
    from pxr import Usd, UsdGeom

    from parametric.writers.client_page import Palette
    from parametric.writers.usdz import write_usdz

    path = tmp_path / "model.usdz"
    path.write_bytes(write_usdz(assembly_of(name), solids_of(name), Palette()))
    stage = Usd.Stage.Open(str(path))
    prims = {prim.GetDisplayName(): prim for prim in stage.GetDefaultPrim().GetChildren()}
    places = UsdGeom.XformCache()
    for group in assembly_of(name).groups:
        prim = prims[group.name]
        shut = np.array(places.GetLocalToWorldTransform(prim).ExtractTranslation())
        axis, travel = (prim.GetCustomDataByKey(key) for key in ("axis", "travel"))
        assert (axis is None) == (travel is None) == (group.slide is None)
        for state in assembly_of(name).states:
            opened = state.open.get(group.name, 0.0)
            found = shut if axis is None else shut + np.array(AXES[axis]) * travel * opened
            assert np.abs(found - in_the_scene(group, state)).max() * 1000 <= NEAR


def test_the_states_are_worth_holding_against() -> None:
    """Leaves that slide both ways, and states that are neither shut nor open."""
    ways = {
        float(g.slide.travel) * g.slide.direction[0] > 0
        for g in assembly_of(HAND_MADE).groups
        if g.slide is not None
    }
    assert ways == {True, False}
    assert all(
        {0.5} & {far for state in assembly_of(name).states for far in state.open.values()}
        for name in NAMES
    )
