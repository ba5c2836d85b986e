"""Every design at a rule's limit is made exactly; every design past it can still be shown.

At its limit a slot just misses a groove and a tenon just fills its slot: faces of cuts
lie in one plane, which is where kernels go wrong without saying so.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.problems import stops
from tests.rules.test_every_rule import CASES, Case, checked

pytestmark = pytest.mark.kernel

GEOMETRIC = {
    "cutter_too_big",
    "field_stands_proud",
    "glass_has_no_bite",
    "groove_leaves_no_wall",
    "groove_too_deep_to_saw",
    "leaves_touch",
    "little_wood_over_guide",
    "panel_cannot_be_cut",
    "panel_leaves_groove",
    "pocket_meets_slot",
    "pocket_off_the_stile",
    "pockets_leave_no_web",
    "sawn_groove_meets_slot",
    "slot_comes_through",
    "slot_finds_no_wood",
    "stops_too_deep",
    "tenon_too_big",
    "tongue_too_short",
    "tongue_too_thick",
}
"""Rules about where wood is; the others leave the parts as they are."""

TRIED = [case for case in CASES if case.code in GEOMETRIC and case.level == "stop"]


def test_every_geometric_rule_is_tried() -> None:
    assert {case.code for case in TRIED} == GEOMETRIC


@pytest.mark.parametrize("case", TRIED, ids=lambda case: case.code)
def test_at_the_limit(case: Case, tmp_path: Path) -> None:
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    job = checked(tmp_path, case.at_limit)
    assert job.assembly is not None
    if stops(job.problems):  # another rule's stop: nothing exact can be asked of it
        build_solids(job.assembly.parts, with_stops=True)
        return
    assert clashes_in_all_states(job.assembly, build_solids(job.assembly.parts)) == ()


@pytest.mark.parametrize("case", TRIED, ids=lambda case: case.code)
def test_past_the_limit(case: Case, tmp_path: Path) -> None:
    """A model not for making is still written: every part that has wood left is in it."""
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step

    assembly = checked(tmp_path, case.bad).assembly
    assert assembly is not None
    solids = build_solids(assembly.parts, with_stops=True)
    shown = [part.name for part in assembly.parts if solids.shows(part)]
    assert len(shown) >= len(assembly.parts) - 8  # a tape with no bite on any of four panes
    glb = write_glb(assembly, solids)
    step = write_step(assembly, solids).replace(b"\n", b"")
    for name in shown:
        assert f'"name":"{name}"'.encode() in glb
        assert f"'{name}'".encode() in step
