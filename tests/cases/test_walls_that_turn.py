"""Cabinets round a corner: where the next wall's cabinets stand, and what is said when they meet."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.problems import Problem

DESIGN = Path(__file__).parents[1] / "designs/old/version-1-corner.yaml"
DEEP, WIDE = 560.0, 2400.0
"""The cabinets', and the first wall's."""


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


def changed(tmp_path: Path, was: str, now: str) -> tuple[Problem, ...]:
    text = DESIGN.read_text(encoding="utf-8")
    assert was in text
    path = tmp_path / "design.yaml"
    path.write_text(text.replace(was, now), encoding="utf-8")
    return check(path, user_house=False).problems


def test_a_square_corner_at_the_right(job: Job) -> None:
    assert job.resolved is not None
    assert job.resolved.casework is not None
    case = job.resolved.casework.case("cabinet a 2")
    # the corner is at (2400, 560): wide along the first wall, and as deep as cabinets stand before
    # it. The next wall runs towards the room, so its cabinets, 640 from the corner, begin at
    # (2400 - 560, 560 - 640), and their own x runs towards the room too
    assert case.stands.origin == pytest.approx((WIDE - DEEP, DEEP - 640, 100))
    assert case.stands.x == (0.0, -1.0, 0.0)
    assert case.stands.y == (1.0, 0.0, 0.0)


def test_a_corner_of_135_degrees_at_the_left(job: Job) -> None:
    assert job.resolved is not None
    assert job.resolved.casework is not None
    casework = job.resolved.casework
    run = next(run for run in casework.runs if run.name == "run slanted")
    # seen from above the wall comes to the first one's left end at 180 - 135 = 45 deg to it, so
    # that its right end, 1400 along it and 560 in, is the corner (0, 560)
    end = run.stands.point((1400.0, DEEP, 0.0))
    assert end == pytest.approx((0.0, DEEP, 0.0), abs=1e-9)
    half = math.sqrt(0.5)
    assert run.stands.x == pytest.approx((half, half, 0.0))


def test_cabinets_that_stand_in_one_another_are_a_stop(tmp_path: Path) -> None:
    found = changed(tmp_path, "space: 640", "space: 540")
    told = [p for p in found if p.code == "cabinets_overlap"]
    # the corner cabinet ends at the wall, 560 before it: 20 of the next one's are within it
    assert [(p.level, p.message) for p in told] == [
        (
            "stop",
            "Cabinet corner and cabinet a 2 stand in the same place: they are 20 into one another.",
        )
    ]
    assert told[0].where is not None


def test_doors_that_meet_at_the_corner_are_told(job: Job) -> None:
    told = [p.message for p in job.problems if p.code == "fronts_meet_at_corner"]
    assert told == ["Leaf F and leaf G meet at the corner when both are open."]


def test_a_drawer_that_hits_the_front_round_the_corner_is_a_stop(tmp_path: Path) -> None:
    text = "cabinet a: equal, cabinet b: equal, cabinet corner: 1000"
    found = changed(tmp_path, text, "cabinet a: equal, cabinet corner: 1000, cabinet b: 600")
    told = [p.message for p in found if p.code == "fronts_meet_at_corner" and p.level == "stop"]
    assert told, [p.message for p in found]


def test_a_cabinet_in_the_wall_is_a_stop(tmp_path: Path) -> None:
    text = DESIGN.read_text(encoding="utf-8") + (
        "cabinet tall: {in: window, height: 2450, width: 300, depth: 300, from left: 2200,"
        " above floor: 1000}\n"
    )
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    told = [p.message for p in check(path, user_house=False).problems]
    assert "Cabinet tall stands 100 in the right wall." in told
    assert "Cabinet tall stands 1050 in the ceiling." in told


def test_a_wall_that_turns_from_itself_is_a_stop(tmp_path: Path) -> None:
    found = changed(tmp_path, "  right of: window", "  right of: side")
    assert [p.code for p in found if p.level == "stop"] == ["turns_from_itself"]
