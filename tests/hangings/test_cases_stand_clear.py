"""Fronts of cases as solids: valid, of their parts' volumes, and clear of one another in every state."""

from __future__ import annotations

import itertools
import math
from pathlib import Path

import pytest

from parametric.design.starters import templates
from parametric.job import Job, check
from parametric.model import Placement, Turn, along
from parametric.writers.client_page import go_together
from tests.hangings.cases import DRAWERS, REST, case_job

BAYS = """
bay: {top to bottom: [drawer: 160, door: rest]}
bay high: {top to bottom: [door pair: 300, door pair: rest]}
"""


def every_way(folder: Path) -> dict[str, Job]:
    """The starter, and cases that meet at partitions, without one, and door over door."""
    return {
        "starter": check(templates() / "cabinet.yaml", user_house=False),
        "inset": case_job(
            f"fronts: inset\nfront gap: 2\n{DRAWERS}"
            "left to right: [bay: 1 part, bay high: 2 parts]",
            folder,
            REST + BAYS,
        ),
        "half overlay, no partition": case_job(
            f"fronts: half overlay\npartition: 0\n{DRAWERS}"
            "left to right: [door: 400, drawer: 200, door: equal]",
            folder,
        ),
    }


@pytest.mark.kernel
@pytest.mark.parametrize("name", ["starter", "inset", "half overlay, no partition"])
def test_nothing_overlaps_in_any_state(name: str, tmp_path: Path) -> None:
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    job = every_way(tmp_path)[name]
    assert job.assembly is not None, [problem.message for problem in job.problems]
    assert {"shut", "half open", "open"} <= {state.name for state in job.assembly.states}
    solids = build_solids(job.assembly.parts, None)
    assert clashes_in_all_states(job.assembly, solids) == ()


def test_fronts_of_a_case_move_alone(tmp_path: Path) -> None:
    """Drawers draw out alike and doors over doors share a hinge line, and yet none takes another."""
    for job in every_way(tmp_path).values():
        assert job.assembly is not None
        motions = {group.name: group.motion for group in job.assembly.groups}
        assert set(go_together(motions, job.assembly.states).values()) == {""}


def test_the_hinge_edge_keeps_to_its_own_side_of_the_gap(tmp_path: Path) -> None:
    """A door on cups turns about its front edge: no point of it passes that edge sideways.

    Source: the turn about a corner carries a rectangle into its own quarter (geometry).
    """
    job = every_way(tmp_path)["starter"]
    assert job.resolved is not None
    for leaf in (one for one in job.resolved.door.leaves if one.hinges):
        (turn,) = leaf.hung.motion
        assert isinstance(turn, Turn)
        assert turn.point[0] == pytest.approx(
            float(leaf.hung.left + (0 if leaf.hung.edge("left") == "hinge" else leaf.width))
        )
        for x, y in itertools.product((0.0, float(leaf.width)), (0.0, float(leaf.thickness))):
            front = -float(leaf.hung.plane) - float(leaf.thickness) / 2
            shut = Placement(origin=(float(leaf.hung.left) + x, front + y, 0.0))
            for part in range(21):
                across = along(shut, leaf.hung.motion, part / 20).origin[0]
                off = across - turn.point[0]
                assert (off if leaf.hung.edge("left") == "hinge" else -off) >= -1e-9


def test_a_gap_that_a_closing_edge_does_not_pass_is_a_stop(tmp_path: Path) -> None:
    """300 wide and 20 thick swings out hypot(300, 20) - 300 = 0.666: a gap of 0.6 holds it."""
    door = "fronts: inset\npartition: 18\nleft to right: [door: {wide}, door: equal]"
    needs = math.hypot(300, 20) - 300
    for gap, stops in ((0.6, True), (0.7, False)):
        job = case_job(f"front gap: {gap}\n" + door.replace("{wide}", str(300 + 2 * gap)), tmp_path)
        assert job.resolved is not None
        clear = job.resolved.door.hanging.clearances[0]
        assert float(clear.needs) == pytest.approx(needs)
        told = {problem.code for problem in job.problems if problem.level == "stop"}
        assert ("leaf_binds" in told) is stops


def test_two_doors_that_hang_at_one_gap_need_it_twice(tmp_path: Path) -> None:
    """Hinges that ask for 1.6 beside them: 3 is enough for one door, and not for two, 3.2."""
    rest = REST.replace("{kind: cup,", "{kind: cup, least gap: 1.6,")
    doors = "[{door: equal, hinge side: SIDE}, {door: equal, hinge side: left}]"
    for side, stops in (("left", False), ("right", True)):
        door = f"fronts: overlay\nleft to right: {doors.replace('SIDE', side)}"
        job = case_job(door, tmp_path, rest)
        assert job.resolved is not None
        needs = [
            float(clear.needs)
            for clear in job.resolved.door.hanging.clearances
            if "hinges" in clear.where
        ]
        assert needs == ([3.2, 3.2] if stops else [1.6])
        told = {problem.code for problem in job.problems if problem.level == "stop"}
        assert ("leaf_binds" in told) is stops
