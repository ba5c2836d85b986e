"""Paper of doors of every kind: it comes from what a door has, tracks, hinges, folds, never its name."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.model import Turn
from parametric.resolve.leaf import Leaf
from parametric.trade.hinge_places import hinge_fixings
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed
from parametric.trade.seasons import leaf_seasons
from parametric.trade.site_tables import delivery_table, fixing_table, work_table
from parametric.trade.sweeping import meetings
from tests.hangings.doors import KINDS, job_of
from tests.trade.conftest import paper_of

OF_TRACKS = ("track", "bracket", "hanger")
"""Words that no paper of a door without a track may say."""


def papered(kind: str, folder: Path) -> tuple[Job, Paperwork]:
    job = job_of(kind, folder)
    assert job.resolved is not None, [p.message for p in job.problems]
    return job, paper_of(job)


def _texts(paper: Paperwork, job: Job) -> str:
    assert job.resolved is not None
    said = printed(job.resolved)
    tables = (
        fixing_table(paper.install, said),
        work_table(paper.install),
        delivery_table(paper.delivery, said),
    )
    lines = [cell for table in tables for row in table.rows for cell in row]
    lines += [word for item in paper.hardware for word in (item.what, item.size, item.asked)]
    lines += [f"{one.of} {one.what} {one.needed}" for one in paper.data_sheets]
    lines += [*paper.install.hold, *paper.install.tools, *paper.install.cautions]
    lines += [*paper.care.upkeep, *paper.care.checks, *paper.care.cautions, *paper.finish.steps]
    return " | ".join(lines).lower().replace("tracked saw", "").replace("tracks of", "")


@pytest.mark.parametrize("kind", KINDS)
def test_paper_says_what_a_door_has_and_nothing_else(kind: str, tmp_path: Path) -> None:
    job, paper = papered(kind, tmp_path)
    assert job.resolved is not None
    hanging = job.resolved.door.hanging
    said = [step.do for step in paper.install.steps]
    text = _texts(paper, job)
    on_jambs = [hinge for hinge in paper.install.hinges if hinge.on == "jamb"]
    assert bool(hanging.tracks) == any("Fix the brackets" in step for step in said)
    assert bool(hanging.tracks) == bool(paper.install.brackets) == bool(paper.carried)
    assert bool(on_jambs) == any(step.startswith("Cut the jambs' mortises") for step in said)
    assert bool(on_jambs) == any("Knife the hinges' ends" in step for step in said)
    if not hanging.tracks:
        assert not [word for word in OF_TRACKS if word in text]
    if not any(leaf.hinges for leaf in job.resolved.door.leaves):
        assert "hinge" not in text
    assert [step.number for step in paper.install.steps] == list(range(1, len(said) + 1))
    assert said[0].startswith("Measure the opening again")
    assert "Show the client" in paper.install.steps[-1].check
    assert "Local codes" in paper.install.cautions[-1]


@pytest.mark.parametrize("kind", KINDS)
def test_every_hinge_is_bought_once_and_hung_once(kind: str, tmp_path: Path) -> None:
    """A hinge between two leaves has a seat in each, and is one hinge all the same."""
    job, paper = papered(kind, tmp_path)
    assert job.resolved is not None
    leaves = job.resolved.door.leaves
    edges = [hung for leaf in leaves for hung in leaf.hinges]
    folds = sum(leaf.hung.edge(hung.side) == "fold" for leaf in leaves for hung in leaf.hinges)
    assert folds % 2 == 0
    count = (
        sum(int(hung.hinges.count) for hung in edges)
        - sum(
            int(hung.hinges.count)
            for leaf in leaves
            for hung in leaf.hinges
            if leaf.hung.edge(hung.side) == "fold"
        )
        // 2
    )
    bought = [item for item in paper.hardware if "hinge" in item.what]
    assert sum(int(item.number) for item in bought) == count == len(paper.install.hinges)


@pytest.mark.parametrize("kind", KINDS)
def test_both_measures_of_a_hinge_meet(kind: str, tmp_path: Path) -> None:
    """Foot of the leaf over the floor, up to the middle, down to the head: the head's height."""
    job, _ = papered(kind, tmp_path)
    assert job.resolved is not None
    door = job.resolved.door
    feet = {leaf.name: float(leaf.hung.foot) for leaf in door.leaves}
    for hinge in hinge_fixings(door):
        whole = feet[hinge.leaf] + float(hinge.from_foot) + float(hinge.from_head)
        assert whole == pytest.approx(float(door.opening.head), abs=1e-9)
        assert float(hinge.low) < float(hinge.above_floor) < float(hinge.high)


def test_folding_leaves_hang_on_every_second_pin(tmp_path: Path) -> None:
    """Four to the left: B's pin stands between two pairs and carries half of each, D's one half.

    Each pair weighs two leaves, so half a pair is one leaf; A and C have no pin.
    """
    job, paper = papered("bifold four left", tmp_path)
    a, b, c, d = job.loads
    assert a.per_hanger is None
    assert c.per_hanger is None
    assert b.per_hanger is not None
    assert d.per_hanger is not None
    assert float(b.per_hanger) == pytest.approx(2 * float(b.governing))
    assert float(d.per_hanger) == pytest.approx(float(d.governing))
    (hangers,) = [item for item in paper.hardware if item.what == "hanger"]
    assert int(hangers.number) == 2


def test_of_six_to_the_right_the_pins_are_counted_from_the_right_jamb(tmp_path: Path) -> None:
    job, _ = papered("bifold six right", tmp_path)
    has = [load.per_hanger is not None for load in job.loads]
    assert has == [True, False, True, False, True, False]


def test_gaps_that_leaves_grow_into(tmp_path: Path) -> None:
    """By hand: hinge and lock gap of one leaf; jamb gap and half a fold gap of a folding one.

    Two stiles of 90 tulipwood, 0.00289 a per cent from 8 to 11 %: 2 x 90 x 0.00289 x 3 = 1.5606.
    """
    for kind, rooms in (
        ("hinged left", [2.5 + 3]),
        ("hinged pair", [2.5 + 1.5] * 2),
        ("bifold four both", [5 + 1.5, 1.5 + 4, 4 + 1.5, 1.5 + 5]),
        ("sliding left", []),
        ("bypass", []),
        ("biparting", []),
    ):
        job, _ = papered(kind, tmp_path)
        assert job.resolved is not None
        seasons = leaf_seasons(job.resolved)
        assert [float(season.room) for season in seasons] == pytest.approx(rooms), kind
        assert all(float(season.growth) == pytest.approx(1.5606) for season in seasons)


# What stands in the way -----------------------------------------------------------------------


def _opened(leaf: Leaf, angle: float) -> Leaf:
    """The same leaf, turned on by so much."""
    (turn,) = leaf.hung.motion
    assert isinstance(turn, Turn)
    signed = angle if turn.angle > 0 else -angle
    return dataclasses.replace(
        leaf,
        hung=dataclasses.replace(leaf.hung, motion=(dataclasses.replace(turn, angle=signed),)),
    )


CASED = "  wall: 150\n  casing: 70 x 18\n"


def test_a_leaf_that_opens_square_clears_the_casing_and_one_that_goes_on_does_not(
    tmp_path: Path,
) -> None:
    """Hung flush, a casing 18 out. From the pin, 6 before the wall and 1.25 in, its corner lies
    1.25 aside and 12 before; the leaf's face runs 6 behind the pin. Turned t past square they meet
    where 12 sin t - 1.25 cos t = 6: sin(t - 5.947) = 6 / 12.065, t = 35.77, 125.77 in all.
    """
    job_of("hinged left", tmp_path)
    path = tmp_path / "design.yaml"
    path.write_text(path.read_text().replace("  wall: 150\n", CASED))
    job = check(path, user_house=False)
    assert job.resolved is not None
    door = job.resolved.door
    assert meetings(door) == ()
    far = dataclasses.replace(door, leaves=tuple(_opened(leaf, 180.0) for leaf in door.leaves))
    (met,) = meetings(far)
    assert met.thing.what == "casing"
    # Looked at every 2 mm of a way 1518 long: 0.08 deg.
    assert 125.77 <= met.part * 180 <= 125.77 + 0.16
