"""Models of the right shape in the wrong size, the wrong way up or the wrong way round.

Each fault is seeded alone into a sound file, and made whole in itself where it can be: a
file in inches has every one of its lengths in inches.
"""

from __future__ import annotations

import dataclasses
import math
import re
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import pytest

from parametric.model import Assembly, Placement
from parametric.pack.verifying.expected import wood
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.model_step import check_step
from parametric.pack.verifying.model_usdz import check_usdz
from parametric.pack.verifying.usdz_file import unpacked
from tests.verify.lopsided import assembly, known
from tests.verify.models import _array, glb, solids, usdz
from tests.verify.seeds import changed_scene

if TYPE_CHECKING:
    from parametric.solids.solid_set import Solids

pytestmark = pytest.mark.kernel

Scene = dict[str, Any]


def in_glb(change: Callable[[Scene, bytearray], None]) -> str:
    return "\n".join(check_glb(changed_scene(glb(), change), known()).faults)


def root(scene: Scene) -> Scene:
    found: Scene = scene["nodes"][scene["scenes"][0]["nodes"][0]]
    return found


def in_other_lengths(times: float) -> Callable[[Scene, bytearray], None]:
    """Every length of a scene another number: places, meshes, travels and keys."""

    def change(scene: Scene, binary: bytearray) -> None:
        for node in scene["nodes"]:
            if "translation" in node:
                node["translation"] = [v * times for v in node["translation"]]
            if "travel" in node.get("extras", {}):
                node["extras"]["travel"] = [v * times for v in node["extras"]["travel"]]
        lengths = {
            primitive["attributes"]["POSITION"]
            for mesh in scene["meshes"]
            for primitive in mesh["primitives"]
        } | {one["samplers"][0]["output"] for one in scene["animations"]}
        for index in lengths:
            _array(scene, binary, index)[:] *= times

    return change


@pytest.mark.parametrize("times", [1 / 0.0254, 1000.0, 100.0], ids=["inches", "mm", "cm"])
def test_a_scene_in_another_unit(times: float) -> None:
    said = in_glb(in_other_lengths(times))
    assert "leaf A / post: its box is" in said
    assert "mesh of S1" in said
    assert "leaf A: says it slides" in said
    assert "leaf A: begins to slide" in said


@pytest.mark.parametrize("scale", [1 / 25.4, 25.4])
def test_a_scene_scaled_at_its_root(scale: float) -> None:
    said = in_glb(lambda scene, _: root(scene).update(scale=[scale] * 3))
    assert "leaf A / post: is stretched on its way into the scene" in said


@pytest.mark.parametrize(
    "axis", [(1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0)], ids=["Z up", "round", "over"]
)
@pytest.mark.parametrize("quarters", [1, 2, 3])
def test_a_scene_that_is_turned(axis: tuple[float, float, float], quarters: int) -> None:
    """A quarter about x lays it down; a half about y shows its back; a half about z its foot up."""
    half = math.radians(90 * quarters) / 2
    turn = [v * math.sin(half) for v in axis] + [math.cos(half)]
    said = in_glb(lambda scene, _: root(scene).update(rotation=turn))
    assert "leaf A / post: is turned otherwise than the part" in said


def test_a_slide_that_begins_open() -> None:
    """Both keys 0.2 further along: the way is right, and the leaf jumps when it starts."""

    def later(scene: Scene, binary: bytearray) -> None:
        _array(scene, binary, scene["animations"][0]["samplers"][0]["output"])[:, 0] += 0.2

    assert "leaf A: begins to slide 200.000 off" in in_glb(later)


def test_what_is_fixed_says_that_it_slides() -> None:
    def said(scene: Scene, _: bytearray) -> None:
        rods = next(node for node in scene["nodes"] if node.get("name") == "rods")
        rods["extras"].update(axis="x", travel=[0.0, 0.4])

    assert "rods: slides, and should not" in in_glb(said)


def test_glass_that_looks_like_wood() -> None:
    def swapped(scene: Scene, _: bytearray) -> None:
        materials = {m["extras"]["look"]: m for m in scene["materials"]}
        materials["glass"]["extras"]["look"] = "timber"

    assert "leaf A / pane: looks like timber, the part like glass" in in_glb(swapped)


# --- STEP ----------------------------------------------------------------------------------


def step_of(made: Assembly) -> tuple[str, ...]:
    from parametric.writers.step import write_step

    return check_step(write_step(made, solids()), known()).faults


def turned(frame: Placement) -> Assembly:
    """The lopsided leaf, all of it seen from another frame."""
    from parametric.solids.placing import within

    groups = tuple(
        dataclasses.replace(group, placement=within(frame, group.placement))
        for group in assembly().groups
    )
    return dataclasses.replace(assembly(), groups=groups)


@pytest.mark.parametrize(
    "frame",
    [
        Placement(x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0)),
        Placement(x=(-1.0, 0.0, 0.0), y=(0.0, -1.0, 0.0)),
        Placement(x=(-1.0, 0.0, 0.0), y=(0.0, 1.0, 0.0)),
    ],
    ids=["Y up", "seen from behind", "on its head"],
)
def test_step_that_is_turned(frame: Placement) -> None:
    faults = step_of(turned(frame))
    assert faults == tuple(
        f"{group.name}: does not stand where the part stands" for group in assembly().groups
    )


def mirrored_solids(axis: int) -> Solids:
    """Every solid its own mirror image through its middle: boxes and volumes stay what they were."""
    from OCP.BRepBuilderAPI import BRepBuilderAPI_Transform
    from OCP.gp import gp_Ax2, gp_Dir, gp_Pnt, gp_Trsf

    from parametric.solids.solid_set import Solids

    sound, shapes = solids(), {}
    for part in assembly().parts:
        low, high = wood(part)
        size = (low + high, float(part.blank.width), float(part.blank.thickness))
        way = [0.0, 0.0, 0.0]
        way[axis] = 1.0
        mirror = gp_Trsf()
        mirror.SetMirror(gp_Ax2(gp_Pnt(*(v / 2 for v in size)), gp_Dir(*way)))
        shapes[sound.key(part)] = BRepBuilderAPI_Transform(sound.of(part), mirror, True).Shape()
    return Solids(shapes=shapes, keys=sound.keys)


MIRRORS = pytest.mark.parametrize("axis", [0, 1, 2], ids=["along", "across", "through"])


@MIRRORS
def test_step_whose_solids_are_mirrored(axis: int) -> None:
    from parametric.writers.step import write_step

    faults = check_step(write_step(assembly(), mirrored_solids(axis)), known()).faults
    assert any(fault.startswith("S1 post: ") for fault in faults)
    assert not any("mm3" in fault or "its box" in fault for fault in faults)


def test_step_drawn_in_inches() -> None:
    """In inches and said to be; and every number in inches where the file says millimetres."""
    from OCP.Interface import Interface_Static

    from parametric.writers import step as writer

    settings = dict(writer._SETTINGS)
    try:
        writer._SETTINGS["write.step.unit"] = "INCH"
        data = writer.write_step(assembly(), solids())
    finally:
        writer._SETTINGS.update(settings)
        Interface_Static.SetCVal_s("write.step.unit", "MM")
    assert b"25.4" in data
    faults = check_step(data, known()).faults
    assert any(fault.startswith("lengths are in") for fault in faults)
    # as small as that, and called millimetres: what stands in it is wrong all the same
    units = re.sub(
        rb"\( CONVERSION_BASED_UNIT\('INCH',[^)]*\) LENGTH_UNIT\(\) NAMED_UNIT\([^)]*\) \)|"
        rb"\(CONVERSION_BASED_UNIT\([^)]*\)LENGTH_UNIT\(\)NAMED_UNIT\([^)]*\)\)",
        b"( LENGTH_UNIT() NAMED_UNIT(*) SI_UNIT(.MILLI.,.METRE.) )",
        data.replace(b"\n", b""),
    )
    faults = check_step(units, known()).faults
    assert any("leaf A: does not stand" in fault for fault in faults)
    assert any(fault.startswith("S1 post: ") and "mm3" in fault for fault in faults)


# --- USDZ ----------------------------------------------------------------------------------


def in_usdz(old: str, new: str, times: int = 1) -> str:
    from parametric.writers.usdz import archive

    ((name, layer),) = unpacked(usdz())
    text = layer.decode()
    assert old in text, old
    changed = archive({name: text.replace(old, new, times).encode()})
    return "\n".join(check_usdz(changed, known()).faults)


def test_a_sound_usdz_passes() -> None:
    verdict = check_usdz(usdz(), known())
    assert verdict.faults == ()
    assert verdict.looked_at == {"parts": 9, "meshes": 8}


@pytest.mark.parametrize("metres", ["0.01", "0.001", "0.0254"])
def test_usdz_in_another_unit(metres: str) -> None:
    said = in_usdz("metersPerUnit = 1\n", f"metersPerUnit = {metres}\n")
    assert "leaf A / post: is stretched on its way into the scene" in said


def test_usdz_that_lies_down_or_is_mirrored() -> None:
    said = in_usdz('upAxis = "Y"', 'upAxis = "Z"')
    assert "leaf A / post: is turned otherwise than the part" in said
    # the first matrix is that of the whole leaf
    said = in_usdz("( (1, 0, 0, 0), (0, 1, 0, 0),", "( (-1, 0, 0, 0), (0, 1, 0, 0),")
    assert "leaf A / post: is mirrored on its way into the scene" in said


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        ('displayName = "leaf A / peg"', 'displayName = "peg"', "leaf A / peg: is missing"),
        ('string mark = "S1"', 'string mark = "S9"', "is marked S9"),
        ("double travel = 0.43", "double travel = 0.43001", "leaf A: says it slides"),
        ("float inputs:opacity = 1\n", "float inputs:opacity = 0.5\n", "covers 0.5"),
        ("rel material:binding = <", "rel material:binding = </nowhere", "cannot be read back"),
        ("UsdPreviewSurface", "UsdOther", "is no preview material"),
        ('"none"', '"catmullClark"', "is smoothed"),
        ("float3[] extent = [(0,", "float3[] extent = [(0.1,", "its extent is not"),
        ("def Xform", "def Sphere", "cannot be read back"),
        ("class Scope", "def Scope", "holds more than finishes"),
        ("#usda 1.0", "#usda 1.1", "cannot be read back"),
    ],
)
def test_usdz_otherwise_wrong(old: str, new: str, says: str) -> None:
    assert says in in_usdz(old, new)


@MIRRORS
def test_usdz_whose_solids_are_mirrored(axis: int) -> None:
    from parametric.writers.client_page import Palette
    from parametric.writers.usdz import write_usdz

    faults = check_usdz(write_usdz(assembly(), mirrored_solids(axis), Palette()), known()).faults
    assert any(fault.startswith("mesh of S1: ") for fault in faults)
    assert not any("mm3" in fault or "its box" in fault for fault in faults)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda data: data[:-1],
        lambda data: data + b"\0",
        lambda data: data[:20],
        lambda data: data.replace(b"model.usda", b"model.usdb"),
        # the layer moved on by one byte, with its padding
        lambda data: data[:28] + bytes([data[28] + 1]) + data[29:44] + b"\0" + data[44:],
        # one letter of the layer
        lambda data: data.replace(b"Lopsided", b"Lopsider"),
        # said to be packed
        lambda data: data[:8] + b"\x08" + data[9:],
    ],
)
def test_usdz_that_is_no_plain_archive(spoil: Callable[[bytes], bytes]) -> None:
    spoiled = spoil(usdz())
    assert spoiled != usdz()
    assert check_usdz(spoiled, known()).faults[0].startswith("cannot be read back")
