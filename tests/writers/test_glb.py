"""The GLB, read back as JSON and numbers, by trimesh, and by the reference validator.

The validator (npm `gltf-validator`) is looked for in web/node_modules, or where
STILEWRIGHT_GLTF_VALIDATOR says.
"""

from __future__ import annotations

import io
import json
import math
import os
import shutil
import struct
import subprocess
from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path
from typing import Any, assert_never

import numpy as np
import pytest
import trimesh

from parametric.model import (
    Assembly,
    Groove,
    Group,
    Island,
    Mitre,
    Part,
    Placement,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    Slide,
    Slot,
    Tongue,
    Trim,
)
from tests.solids.models import HAND_MADE, NAMES, assembly_of, solids_of
from tests.solids.pair import ASH, BRASS, at, made

pytestmark = pytest.mark.kernel

WEB = Path(__file__).parents[2] / "web" / "node_modules" / "gltf-validator"
VALIDATOR = os.environ.get("STILEWRIGHT_GLTF_VALIDATOR", str(WEB))


@pytest.fixture(scope="module", params=NAMES)
def name(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@cache
def written(name: str) -> bytes:
    from parametric.writers.glb import write_glb

    return write_glb(assembly_of(name), solids_of(name))


def unpacked(data: bytes) -> tuple[dict[str, Any], bytes]:
    """The two chunks of a GLB, by the layout of the glTF 2.0 specification, section 4.4."""
    magic, version, length = struct.unpack_from("<4sII", data)
    assert (magic, version, length) == (b"glTF", 2, len(data))
    size, kind = struct.unpack_from("<I4s", data, 12)
    assert kind == b"JSON"
    assert size % 4 == 0
    text = json.loads(data[20 : 20 + size])
    binary_size, binary_kind = struct.unpack_from("<I4s", data, 20 + size)
    assert binary_kind == b"BIN\0"
    assert 28 + size + binary_size == len(data)
    return text, data[28 + size :]


def numbers(file: dict[str, Any], binary: bytes, accessor: int) -> np.ndarray[Any, Any]:
    """The rows of an accessor."""
    spec = file["accessors"][accessor]
    view = file["bufferViews"][spec["bufferView"]]
    width = {"SCALAR": 1, "VEC3": 3, "VEC4": 4}[spec["type"]]
    kind = {5126: "<f4", 5123: "<u2", 5125: "<u4"}[spec["componentType"]]
    held = np.frombuffer(binary, kind, spec["count"] * width, view["byteOffset"])
    return held.reshape(-1, width)


def node(file: dict[str, Any], called: str) -> dict[str, Any]:
    (found,) = (n for n in file["nodes"] if n.get("name") == called)
    return dict(found)


def validated(data: bytes, folder: Path) -> dict[str, Any]:
    """What the reference validator reports of a GLB."""
    path = folder / "model.glb"
    path.write_bytes(data)
    code = (
        "const fs = require('fs');"
        "require(process.argv[1]).validateBytes(new Uint8Array(fs.readFileSync(process.argv[2])))"
        ".then(report => console.log(JSON.stringify(report)))"
    )
    ran = subprocess.run(
        ["node", "-e", code, VALIDATOR, str(path)], check=True, capture_output=True, text=True
    )
    return dict(json.loads(ran.stdout))


@pytest.mark.skipif(
    shutil.which("node") is None or not Path(VALIDATOR).exists(),
    reason="node or gltf-validator is not here",
)
def test_the_reference_validator_finds_nothing(name: str, tmp_path: Path) -> None:
    report = validated(written(name), tmp_path)
    issues = report["issues"]
    assert (issues["numErrors"], issues["numWarnings"], issues["numInfos"]) == (0, 0, 0), issues
    assert report["info"]["animationCount"] == 2
    assert report["info"]["materialCount"] == len(
        {part.material.name for part in assembly_of(name).parts}
    )


def test_nodes_are_the_job_its_groups_and_their_parts(name: str) -> None:
    file, _ = unpacked(written(name))
    assembly = assembly_of(name)
    (root,) = file["scenes"][file["scene"]]["nodes"]
    assert file["nodes"][root]["name"] == assembly.name
    groups = [file["nodes"][i] for i in file["nodes"][root]["children"]]
    assert [g["name"] for g in groups] == [g.name for g in assembly.groups]
    for group, item in zip(assembly.groups, groups, strict=True):
        pieces = [file["nodes"][i] for i in item["children"]]
        assert [p["name"] for p in pieces] == [p.name for p in group.parts]
        assert [p["extras"] for p in pieces] == [
            {"mark": p.mark, "noun": p.noun} for p in group.parts
        ]


def test_twins_share_a_mesh_of_one_primitive(name: str) -> None:
    file, _ = unpacked(written(name))
    assembly, solids = assembly_of(name), solids_of(name)
    mesh_of = {n["name"]: n["mesh"] for n in file["nodes"] if "mesh" in n}
    by_shape: dict[tuple[str, str], set[int]] = {}
    for part in assembly.parts:
        kind = (solids.key(part), part.material.name)
        by_shape.setdefault(kind, set()).add(mesh_of[part.name])
    assert all(len(meshes) == 1 for meshes in by_shape.values())
    assert len(file["meshes"]) == len(by_shape)
    assert all(len(mesh["primitives"]) == 1 for mesh in file["meshes"])


def test_corners_are_in_the_parts_own_frame_with_exact_bounds(name: str) -> None:
    """A mesh spans its finished piece, metres, x along the grain; min and max are the floats held."""
    file, binary = unpacked(written(name))
    for part in assembly_of(name).parts:
        (primitive,) = file["meshes"][node(file, part.name)["mesh"]]["primitives"]
        corners = numbers(file, binary, primitive["attributes"]["POSITION"])
        accessor = file["accessors"][primitive["attributes"]["POSITION"]]
        assert accessor["min"] == [float(v) for v in corners.min(axis=0)]
        assert accessor["max"] == [float(v) for v in corners.max(axis=0)]
        spans = (corners.max(axis=0) - corners.min(axis=0)) * 1000
        assert spans == pytest.approx(tuple(map(float, part.finished)), abs=2e-4), part.name


def test_normals_are_crisp_on_flats_and_smooth_on_rounds(name: str) -> None:
    """Every normal is a unit vector within half a chord's turn of its triangle's own.

    A face's corners are its own, so flats meet at a sharp edge; where a round runs into a
    flat, the normals of the two agree along the line they share.
    """
    from parametric.solids.mesh import TURN

    file, binary = unpacked(written(name))
    for mesh in file["meshes"]:
        (primitive,) = mesh["primitives"]
        corners = numbers(file, binary, primitive["attributes"]["POSITION"]).astype(float)
        normals = numbers(file, binary, primitive["attributes"]["NORMAL"]).astype(float)
        triangles = numbers(file, binary, primitive["indices"]).reshape(-1, 3)
        assert np.allclose(np.linalg.norm(normals, axis=1), 1, atol=1e-6)
        a, b, c = (corners[triangles[:, k]] for k in range(3))
        own = np.cross(b - a, c - a)
        own /= np.linalg.norm(own, axis=1)[:, None]
        for k in range(3):
            agreeing = np.einsum("ij,ij->i", own, normals[triangles[:, k]])
            assert agreeing.min() > math.cos(TURN / 2) - 1e-4, mesh["name"]


def test_trimesh_reads_closed_parts_where_they_stand_and_not_mirrored(name: str) -> None:
    """Volume as its part's within what chords lose, and the middle of mass where the solid's is.

    World (x right, y away, z up) in mm is (x, z, -y) in metres in the scene.
    """
    from OCP.BRepGProp import BRepGProp
    from OCP.GProp import GProp_GProps

    from parametric.solids.mesh import VOLUME_LOSS

    scene = trimesh.load(io.BytesIO(written(name)), file_type="glb")
    assembly, solids = assembly_of(name), solids_of(name)
    assert set(scene.graph.nodes_geometry) == {part.name for part in assembly.parts}
    for group in assembly.groups:
        for part in group.parts:
            turn, geometry = scene.graph.get(part.name)
            assert np.linalg.det(turn[:3, :3]) == pytest.approx(1, abs=1e-6)
            mesh = scene.geometry[geometry].copy()
            mesh.apply_transform(turn)
            mesh.merge_vertices(merge_norm=True, merge_tex=True)
            assert mesh.is_watertight, part.name
            assert mesh.is_winding_consistent, part.name
            assert mesh.volume * 1e9 == pytest.approx(part.volume, rel=VOLUME_LOSS), part.name
            exact = GProp_GProps()
            BRepGProp.VolumeProperties_s(solids.of(part), exact)
            x, y, z = group.placement.point(part.placement.point(exact.CentreOfMass().Coord()))
            assert mesh.center_mass * 1000 == pytest.approx((x, z, -y), abs=0.02), part.name


def rounds_of(part: Part) -> float:
    """The volume of all the whole rounds that a part's round corners make up, mm3."""
    total = 0.0
    for cut in part.cuts:
        match cut:
            case Slot():
                total += math.pi * (cut.width / 2) ** 2 * cut.depth
            case Pocket():
                total += math.pi * cut.corner**2 * (cut.depth - cut.surface)
            case Groove():
                corner = 0.0 if cut.squared else cut.corner
                total += math.pi * corner**2 * (cut.depth - cut.surface)
            case RoundArrises():
                total += math.pi * cut.radius**2 * part.blank.length
            case RoundCorners():
                total += math.pi * cut.radius**2 * part.blank.thickness
            case Island():
                total += math.pi * (cut.corner**2 + cut.outer**2) * cut.depth
            case Trim() | Mitre() | RaisedBevel() | Tongue():
                pass  # flat
            case _:
                assert_never(cut)
    return total


def test_only_rounds_lose_volume_to_chords(name: str) -> None:
    """A chord turning by t leaves sin t / t of a round; flat-faced parts lose nothing.

    Corners are held in single precision, good for 1e-6 of the blank here.
    """
    from parametric.solids.mesh import VOLUME_LOSS

    scene = trimesh.load(io.BytesIO(written(name)), file_type="glb")
    for part in assembly_of(name).parts:
        _, geometry = scene.graph.get(part.name)
        off = abs(scene.geometry[geometry].volume * 1e9 - part.volume)
        assert off <= VOLUME_LOSS * rounds_of(part) + 1e-6 * part.blank.volume, part.name


def test_leaves_say_how_they_slide_and_do(name: str) -> None:
    """Extras and animation of each leaf agree with its slide; what is fixed has neither."""
    file, binary = unpacked(written(name))
    assembly = assembly_of(name)
    moving = [group for group in assembly.groups if group.slide is not None]
    assert [a["name"] for a in file["animations"]] == [f"{g.name} slides" for g in moving]
    for group, animation in zip(moving, file["animations"], strict=True):
        slide = group.slide
        assert slide is not None
        travel = float(slide.travel) * slide.direction[0] / 1000
        item = node(file, group.name)
        assert item["extras"]["role"] == "leaf"
        assert item["extras"]["axis"] == "x"
        assert item["extras"]["travel"] == pytest.approx([0, travel], abs=1e-9)
        (channel,), (sampler,) = animation["channels"], animation["samplers"]
        assert channel["target"] == {"node": file["nodes"].index(item), "path": "translation"}
        shut, opened = numbers(file, binary, sampler["output"])
        assert shut == pytest.approx(item["translation"], abs=1e-6)
        assert opened - shut == pytest.approx((travel, 0, 0), abs=1e-6)
        assert numbers(file, binary, sampler["input"])[0] == 0
    for group in assembly.groups:
        if group.slide is None:
            assert node(file, group.name)["extras"] == {"role": "fixed"}


def test_materials_go_by_name_and_glass_is_seen_through(name: str) -> None:
    file, _ = unpacked(written(name))
    looks: Mapping[str, str] = {p.material.name: p.material.look for p in assembly_of(name).parts}
    assert {m["name"]: m["extras"]["look"] for m in file["materials"]} == looks
    for material in file["materials"]:
        seen_through = looks[material["name"]] == "glass"
        assert (material.get("alphaMode") == "BLEND") is seen_through
        factors = material["pbrMetallicRoughness"]
        assert (factors["baseColorFactor"][3] < 1) is seen_through
        assert factors["metallicFactor"] == (1.0 if looks[material["name"]] == "metal" else 0.0)
    used = {mesh["primitives"][0]["material"] for mesh in file["meshes"]}
    assert used == set(range(len(file["materials"])))


def test_parts_turned_every_way_stand_as_placed() -> None:
    """All 24 square stances and one crooked one, in a crooked group, by trimesh's own transforms."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb

    axes = [tuple(float(v) for v in sign * row) for row in np.eye(3) for sign in (1, -1)]
    square = [(x, y) for x in axes for y in axes if abs(np.dot(x, y)) < 0.5]
    assert len(square) == 24
    crooked = ((0.6, 0.8, 0.0), (-0.48, 0.36, 0.8))
    block = made("", "X1", "block", (50.0, 20.0, 10.0))
    parts: list[Part] = [
        at(replace(block, name=f"block {i}"), (100.0 * i, 7.0 * i, 3.0 * i), x, y)
        for i, (x, y) in enumerate([*square, crooked])
    ]
    frame = Placement(origin=(5.0, -6.0, 7.0), x=(0.8, 0.0, 0.6), y=(0.0, 1.0, 0.0))
    assembly = Assembly(
        name="blocks",
        groups=(Group(name="crooked", placement=frame, parts=tuple(parts)),),
        states=(),
    )
    scene = trimesh.load(io.BytesIO(write_glb(assembly, build_solids(parts))), file_type="glb")
    for part in parts:
        turn, _ = scene.graph.get(part.name)
        for local in ((0.0, 0.0, 0.0), (50.0, 0.0, 0.0), (0.0, 20.0, 0.0), (0.0, 0.0, 10.0)):
            x, y, z = frame.point(part.placement.point(local))
            here = turn @ [local[0] / 1000, local[1] / 1000, local[2] / 1000, 1]
            assert here[:3] * 1000 == pytest.approx((x, z, -y), abs=1e-5), part.name


def test_slides_up_and_away_and_askew() -> None:
    """Up is +y in the scene, away from the viewer -z; along no axis it is told as a step."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb

    block = made("block", "X1", "block", (50.0, 20.0, 10.0))
    solids = build_solids([block])

    def extras(direction: tuple[float, float, float]) -> dict[str, Any]:
        group = Group(
            name="sash",
            placement=Placement(),
            parts=(block,),
            motion=(Slide(direction=direction, travel=250.0),),
        )
        file, _ = unpacked(write_glb(Assembly(name="window", groups=(group,), states=()), solids))
        return dict(node(file, "sash")["extras"])

    assert extras((0.0, 0.0, 1.0)) == {"role": "leaf", "axis": "y", "travel": [0.0, 0.25]}
    assert extras((0.0, 1.0, 0.0)) == {"role": "leaf", "axis": "z", "travel": [0.0, -0.25]}
    assert extras((-1.0, 0.0, 0.0)) == {"role": "leaf", "axis": "x", "travel": [0.0, -0.25]}
    askew = {"role": "leaf", "motion": [{"slide": [0.15, 0.0, -0.2]}]}
    assert extras((0.6, 0.8, 0.0)) == askew


def test_one_shape_in_two_timbers_is_two_meshes() -> None:
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb

    pieces = (
        made("left", "A1", "cap", (50.0, 20.0, 10.0)),
        made("right", "A1", "cap", (50.0, 20.0, 10.0), material=replace(ASH, name="walnut")),
    )
    group = Group(name="caps", placement=Placement(), parts=pieces)
    file, _ = unpacked(
        write_glb(Assembly(name="caps", groups=(group,), states=()), build_solids(pieces))
    )
    assert [m["name"] for m in file["materials"]] == ["ash", "walnut"]
    assert len(file["meshes"]) == 2


def test_a_group_that_may_be_ghosted_says_so_and_nothing_else_is_other() -> None:
    from parametric.writers.glb import write_glb

    plain = assembly_of(HAND_MADE)
    first = plain.groups[0]
    ghosted = replace(plain, groups=(replace(first, see_through=True), *plain.groups[1:]))
    file, binary = unpacked(write_glb(ghosted, solids_of(HAND_MADE)))
    before, same = unpacked(written(HAND_MADE))
    node(before, first.name)["extras"]["seeThrough"] = True
    for part in first.parts:
        if part.material.look != "metal":
            node(before, part.name)["extras"]["seeThrough"] = True
    assert file == before
    assert binary == same


def test_what_hides_is_what_stands_round_and_not_what_is_looked_for() -> None:
    """Of a case the boards round it; of a drawer its front, not the box; metal never."""
    from parametric.writers.see_through import hides
    from tests.solids.run_of_cases import run_of_cases

    case, left, _, drawer, _ = run_of_cases(1).groups
    hiding = {part.noun for part in case.parts if hides(case, part)}
    assert hiding == {"side", "top", "bottom", "back"}
    assert {part.noun for part in case.parts} - hiding == {"shelf"}
    assert all(hides(left, part) for part in left.parts)
    assert [part.noun for part in drawer.parts if hides(drawer, part)] == ["front"]
    knob = replace(left.parts[0], material=BRASS)
    assert not hides(left, knob)
    assert not any(hides(replace(case, see_through=False), part) for part in case.parts)


def test_two_writings_are_the_same_bytes() -> None:
    from parametric.writers.glb import write_glb

    assert write_glb(assembly_of(HAND_MADE), solids_of(HAND_MADE)) == written(HAND_MADE)
