"""Models that do not show the parts: each way it can go wrong is found."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Callable
from typing import Any

import pytest

from parametric.model import Placement, Slide
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.model_step import check_step
from tests.verify.lopsided import assembly, known
from tests.verify.models import glb, solids, step
from tests.verify.seeds import changed_scene

pytestmark = pytest.mark.kernel


def in_glb(change: Callable[[dict[str, Any], bytearray], None]) -> str:
    return "\n".join(check_glb(changed_scene(glb(), change), known()).faults)


def node(scene: dict[str, Any], name: str) -> dict[str, Any]:
    return next(node for node in scene["nodes"] if node.get("name") == name)


def test_sound_models_pass() -> None:
    verdict = check_glb(glb(), known())
    assert verdict.faults == ()
    assert verdict.looked_at == {"parts": 9, "meshes": 8, "sliding": 1}
    verdict = check_step(step(), known())
    assert verdict.faults == ()
    assert verdict.looked_at == {"products": 11, "pieces": 11, "solids measured": 8}


def test_names_of_the_scene() -> None:
    assert "leaf A / peg: is missing" in in_glb(
        lambda s, _: node(s, "leaf A / peg").update(name="peg")
    )
    assert "peg: there is no such part" in in_glb(
        lambda s, _: node(s, "leaf A / peg").update(name="peg")
    )
    assert "is there 2 times" in in_glb(
        lambda s, _: node(s, "leaf A / peg").update(name="leaf A / pane")
    )
    assert "has no mesh" in in_glb(lambda s, _: node(s, "leaf A / peg").pop("mesh"))
    assert "is marked S9" in in_glb(
        lambda s, _: node(s, "leaf A / peg")["extras"].update(mark="S9")
    )


def test_a_part_of_the_scene_hangs_elsewhere() -> None:
    def rehung(scene: dict[str, Any], _: bytearray) -> None:
        index = scene["nodes"].index(node(scene, "leaf A / peg"))
        node(scene, "leaf A")["children"].remove(index)
        node(scene, "rods")["children"].append(index)

    said = in_glb(rehung)
    assert "leaf A / peg: hangs on rods, not on leaf A" in said
    assert "leaf A / peg: its box is" in said


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (
            lambda n: n["translation"].__setitem__(0, n["translation"][0] + 1e-5),
            "its box is 0.010 off",
        ),
        (lambda n: n.update(scale=[1.0, 1.0, 1.001]), "stretched"),
        (lambda n: n.update(rotation=[0.0, 0.0, 0.0, 1.0]), "is turned otherwise than the part"),
    ],
    ids=["a hundredth aside", "stretched", "not turned"],
)
def test_one_part_of_the_scene_stands_otherwise(
    change: Callable[[dict[str, Any]], Any], says: str
) -> None:
    said = in_glb(lambda scene, _: change(node(scene, "leaf A / panel")))
    assert says in said
    assert "leaf A / post" not in said


def test_a_leaf_that_slides_otherwise() -> None:
    assert "leaf A: says it slides" in in_glb(
        lambda s, _: node(s, "leaf A")["extras"].update(travel=[0.0, 0.43001])
    )
    assert "leaf A: says it slides" in in_glb(
        lambda s, _: node(s, "leaf A")["extras"].update(axis="y")
    )
    assert "leaf A: slides not at all" in in_glb(lambda s, _: s.pop("animations"))
    leaf = assembly().groups[0]
    back = Slide(direction=(1.0, 0.0, 0.0), travel=-430.0)
    for other in ((), (back,)):
        group = dataclasses.replace(leaf, motion=other)
        changed = dataclasses.replace(assembly(), groups=(group, *assembly().groups[1:]))
        faults = check_glb(glb(), dataclasses.replace(known(), assembly=changed)).faults
        assert any("leaf A: slides" in fault for fault in faults)


def test_a_hole_in_a_skin_and_a_skin_turned_out() -> None:
    def holed(scene: dict[str, Any], _: bytearray) -> None:
        index = scene["meshes"][0]["primitives"][0]["indices"]
        scene["accessors"][index]["count"] -= 3

    def inside_out(scene: dict[str, Any], binary: bytearray) -> None:
        from tests.verify.models import _array

        order = _array(scene, binary, scene["meshes"][0]["primitives"][0]["indices"]).reshape(-1, 3)
        order[:] = order[:, ::-1].copy()

    assert "mesh of S1: 3 edges do not close" in in_glb(holed)
    assert "mesh of S1: is inside out" in in_glb(inside_out)


def test_a_mesh_of_a_slightly_other_part() -> None:
    """The files of the true leaf against a leaf in which one slot is 1 mm further along."""
    post, *others = assembly().groups[0].parts
    cuts = tuple(
        dataclasses.replace(cut, u0=41.0, u1=91.0) if cut.name == "low slot" else cut  # type: ignore[call-arg]
        for cut in post.cuts
    )
    leaf = dataclasses.replace(
        assembly().groups[0], parts=(dataclasses.replace(post, cuts=cuts), *others)
    )
    changed = dataclasses.replace(assembly(), groups=(leaf, *assembly().groups[1:]))
    other = dataclasses.replace(known(), assembly=changed)
    assert any(
        "low slot at 66;17 does not reach to 91;17" in fault
        for fault in check_glb(glb(), other).faults
    )
    assert any("S1 post: its middle is" in fault for fault in check_step(step(), other).faults)


def test_files_that_cannot_be_read() -> None:
    for data in (b"", b"glTF", glb()[:-4], b"\0" * 40):
        assert check_glb(data, known()).faults[0].startswith("cannot be read back")
    for data in (b"", b"ISO-10303-21;", step()[: len(step()) // 2], "ü".encode()):
        assert check_step(data, known()).faults[0].startswith("cannot be read back")


def in_step(old: str, new: str) -> str:
    text = step().decode()
    assert old in text, old
    return "\n".join(check_step(text.replace(old, new).encode(), known()).faults)


def test_step_in_another_unit() -> None:
    assert "lengths are in METRE" in in_step("SI_UNIT(.MILLI.,.METRE.)", "SI_UNIT($,.METRE.)")


def test_step_with_other_names() -> None:
    said = in_step("'leaf A / peg'", "'leaf A / pin'")
    assert "leaf A / pin: there is no such part" in said
    assert "leaf A / peg: is missing" in said
    assert "leaf A / peg: is a T1 pin, not a T1 peg" in in_step("'T1 peg'", "'T1 pin'")


def test_step_with_a_piece_moved() -> None:
    moved = re.sub(r"\(400\.,40\.,150\.\)", "(400.,40.,151.)", step().decode(), count=1)
    assert moved != step().decode()
    faults = check_step(moved.encode(), known()).faults
    assert faults == ("leaf A / panel: does not stand where the part stands",)


def test_step_with_a_corner_moved() -> None:
    """One vertex of the panel's tongue drawn 1 mm further out."""
    text = step().decode()
    changed = text.replace("(330.,260.,11.)", "(331.,260.,11.)")
    assert changed != text
    faults = check_step(changed.encode(), known()).faults
    assert any(fault.startswith("P1 raised panel") for fault in faults)


def test_step_of_a_leaf_that_is_turned() -> None:
    from parametric.writers.step import write_step

    leaf = assembly().groups[0]
    panel = next(part for part in leaf.parts if part.name == "leaf A / panel")
    over = Placement(origin=(140.0, 40.0, 480.0), x=(0.0, 0.0, -1.0), y=(1.0, 0.0, 0.0))
    parts = tuple(
        dataclasses.replace(part, placement=over) if part is panel else part for part in leaf.parts
    )
    turned = dataclasses.replace(
        assembly(), groups=(dataclasses.replace(leaf, parts=parts), *assembly().groups[1:])
    )
    faults = check_step(write_step(turned, solids()), known()).faults
    assert faults == ("leaf A / panel: does not stand where the part stands",)
