"""Flaps of cabinets: what they hang on, what is bored for them, how they open, what holds them."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.cases.case import CaseBoard
from parametric.job import Job, check
from parametric.model import Placement, Turn, along
from parametric.pack.case_facts import CaseFacts
from parametric.pack.case_places import front_name
from parametric.problems import stops
from parametric.trade.paperwork import paperwork
from tests.cases.flaps import apart, cups, plates, stays_in

HERE = Path(__file__).parents[1]
LIFT, BUREAU = HERE / "rules/lift.yaml", HERE / "rules/bureau.yaml"
MANY = HERE / "designs/old/version-1-flaps.yaml"
"""Flaps over an open door pair, over one another, in bays, over and within the case."""


def job_of(path: Path) -> Job:
    job = check(path, user_house=False)
    assert not stops(job.problems), [p.message for p in job.problems]
    return job


@pytest.fixture(scope="module")
def lift() -> Job:
    return job_of(LIFT)


@pytest.fixture(scope="module")
def bureau() -> Job:
    return job_of(BUREAU)


@pytest.fixture(scope="module")
def many() -> Job:
    return job_of(MANY)


def board(job: Job, case: str, name: str) -> CaseBoard:
    assert job.resolved is not None
    assert job.resolved.casework is not None
    own = job.resolved.casework.case(case).case
    return next(one for one in own.boards if one.name == f"{case} / {name}")


def test_a_fixed_shelf_parts_a_flap_from_what_is_under_it(lift: Job, bureau: Job) -> None:
    """720 less reveals of 1.5 at each end is 717; the flap's 340 end at 720 - 1.5 - 340 = 378.5, and
    the middle of the gap of 3 is 377: a board of 18 from 368 to 386, let be by both fronts. Inset:
    700 - 18 - 3 - 420 = 259, less 1.5: from 248.5, and 20 behind the front edges, behind the fronts.
    """
    assert board(lift, "cabinet over", "fixed shelf 1").z == pytest.approx(368)
    shelf = board(bureau, "cabinet bureau", "fixed shelf 1")
    assert (shelf.z, shelf.y) == (pytest.approx(248.5), pytest.approx(20))


def test_plates_are_bored_where_the_cups_come(lift: Job, bureau: Job) -> None:
    """Over the lift-up flap in the under face of the top, 18 below 1450 + 720; under the drop-down one
    in the upper face of the fixed shelf, at 700 + 266.5.
    """
    for job, case, name, up, face in (
        (lift, "cabinet over", "top", 1450 + 720 - 18, "under face"),
        (bureau, "cabinet bureau", "fixed shelf 1", 700 + 248.5 + 18, "upper face"),
    ):
        found = plates(job, case, name)
        assert [x for x, _, _ in found] == pytest.approx(cups(job, "leaf A"))
        assert {(round(z, 6), on) for _, z, on in found} == {(up, face)}


def test_cups_are_bored_in_the_rail_it_hangs_by(lift: Job, bureau: Job) -> None:
    """22.5 from its hinge edge: 5 and half of 35."""
    for job, rail, up in ((lift, "top rail", 60 - 22.5), (bureau, "bottom rail", 22.5)):
        assert job.assembly is not None
        parts = {part.name: part for part in job.assembly.parts}
        bored = [
            (sum(float(v.y) for v in cut.outline) / len(cut.outline), cut.face)
            for cut in parts[f"leaf A / {rail}"].cuts
            if cut.name == "hinge cup"
        ]
        assert bored == [(pytest.approx(up), "low face")] * 2
        assert parts[f"leaf A / {rail}"].faces["low face"] == "back"


@pytest.mark.parametrize("path", [LIFT, BUREAU, MANY], ids=lambda p: p.stem)
def test_stays_are_as_long_as_their_holes_are_apart(path: Path) -> None:
    """From the pilot in the case's side to that in the stile's back, in the room: shut and open."""
    job = job_of(path)
    shut, opened = list(stays_in(job, "shut")), list(stays_in(job, "open"))
    assert shut
    for before, after in zip(shut, opened, strict=True):
        assert before.leaf.stays is not None
        place = before.leaf.stays.sized.place  # type: ignore[union-attr]
        assert apart(before) == pytest.approx(float(place.shut), abs=1e-6)
        assert apart(after) == pytest.approx(float(place.open), abs=1e-6)
        assert before.on_case == pytest.approx(after.on_case)
        # the stay stands upright beside the case's side, 12 off it
        off = 12.0 if before.side == "left" else -12.0
        assert before.on_flap[0] - before.on_case[0] == pytest.approx(off)


def test_each_turns_about_the_corner_of_its_face(many: Job) -> None:
    """Its hinge edge stays where it is, its free edge goes round it and out towards the room."""
    assert many.resolved is not None
    flaps = [leaf for leaf in many.resolved.leaves if leaf.hung.flap is not None]
    assert [leaf.hung.flap.side for leaf in flaps if leaf.hung.flap] == [
        *("top", "bottom", "top", "bottom", "bottom")
    ]
    for leaf in flaps:
        (turn,) = leaf.hung.motion
        assert isinstance(turn, Turn)
        flap = leaf.hung.flap
        assert flap is not None
        high = float(leaf.height)
        a = math.radians(float(flap.angle))
        line = float(flap.line)
        up = -1.0 if flap.side == "top" else 1.0
        assert float(flap.tip) == pytest.approx(line + up * high * math.cos(a))
        face = -float(leaf.hung.plane + leaf.thickness / 2)
        edge = along(Placement(origin=(0.0, face, line + up * high)), leaf.hung.motion, 1.0).origin
        assert edge[1:] == pytest.approx((face - high * math.sin(a), float(flap.tip)))


def test_its_free_edge_needs_a_gap(tmp_path: Path) -> None:
    """Its inner corner turns on a circle of root(340^2 + 20^2) = 340.588: 0.588 past its height."""
    text = LIFT.read_text(encoding="utf-8")
    for gap, binds in (("0.5", True), ("0.6", False)):
        path = tmp_path / "design.yaml"
        path.write_text(
            text.replace("fronts: overlay", f"fronts: overlay\n  front gap: {gap}"),
            encoding="utf-8",
        )
        told = [p.message for p in check(path, user_house=False).problems if p.code == "leaf_binds"]
        assert (
            any("at the free edge of leaf A is 0.5, and the edge needs 0.6" in m for m in told)
            == binds
        )
    assert job_of(LIFT).resolved is not None
    needs = {
        gap.where: float(gap.needs)
        for door in job_of(LIFT).resolved.doors  # type: ignore[union-attr]
        for gap in door.hanging.clearances
    }
    assert needs["front gap at the free edge of leaf A"] == pytest.approx(0.5877, abs=1e-4)


def test_a_stay_that_says_none_is_none(many: Job) -> None:
    told = {problem.code: problem.about for problem in many.problems}
    assert told["flap_has_no_stay"] == "leaf G"


def test_what_is_bought(many: Job) -> None:
    """Struts of two forces are two lines; both writing flaps' stays are alike but for their pull."""
    assert many.resolved is not None
    assert many.assembly is not None
    paper = paperwork(many.resolved, many.assembly, many.loads)
    stays = [one for one in paper.hardware if one.what in ("gas strut", "lid stay")]
    assert sum(int(one.number) for one in stays if one.what == "gas strut") == 3
    assert sum(int(one.number) for one in stays if one.what == "lid stay") == 4
    assert any("60 N each, as written" in one.asked for one in stays)
    asked = {one.of for one in paper.data_sheets}
    assert {"gas strut", "lid stay", "hinge"} <= asked
    (hinge,) = (one for one in paper.hardware if one.what == "cup hinge")
    assert int(hinge.number) == sum(
        int(own.hinges.count) for leaf in many.resolved.leaves for own in leaf.hinges
    )


def test_what_the_fitter_and_the_client_are_told(lift: Job) -> None:
    assert lift.resolved is not None
    assert lift.assembly is not None
    paper = paperwork(lift.resolved, lift.assembly, lift.loads)
    assert paper.fitting is not None
    said = [step.do for step in paper.fitting.steps]
    assert any(words.startswith("Leaf A: plates to the bored holes") for words in said)
    assert any("propped open at 90 deg, the struts last" in words for words in said)
    assert any("prop it" in words for words in paper.fitting.cautions)
    assert any("Nobody sits or climbs on an open flap" in words for words in paper.care.cautions)
    assert front_name(lift.resolved.leaves[0]) == "Flap A"
    facts = CaseFacts(lift.resolved, lift.assembly, lift.loads, lift.problems, (), ())
    assert "two doors, one flap" in "".join(str(piece) for piece in facts.thing())


@pytest.mark.kernel
@pytest.mark.parametrize("path", [LIFT, BUREAU, MANY], ids=lambda p: p.stem)
def test_nothing_overlaps_in_any_state(path: Path) -> None:
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    job = job_of(path)
    assert job.assembly is not None
    solids = build_solids(job.assembly.parts, None)
    assert clashes_in_all_states(job.assembly, solids) == ()


ANSWERS = {
    "no edge said": (LIFT, "      hinge side: top\n", "", "A flap says by which edge it hangs"),
    "a side": (LIFT, "hinge side: top", "hinge side: left", "what hangs by a side is a door."),
    "a door by its top": (
        LIFT,
        "- door pair: rest",
        "- door: rest\n      hinge side: top",
        "what hangs by another is a flap.",
    ),
    "struts on a flap that drops": (
        LIFT,
        "hinge side: top",
        "hinge side: bottom",
        "a gas strut would throw it open: a lid stay holds it.",
    ),
    "lid stays on one that lifts": (
        BUREAU,
        "hinge side: bottom",
        "hinge side: top",
        "a lid stay only keeps one from falling: a gas strut holds it up.",
    ),
    "three stays": (LIFT, "count: 2", "count: 3", "A flap is held by 1 or 2 stays, not 3."),
    "hardly open": (
        LIFT,
        "count: 2",
        "count: 2\n  opens: 45 deg",
        "A flap is held open at 60 to 120 deg, not 45.",
    ),
    "on butts": (
        BUREAU,
        "{kind: cup, carries: 4.5 kg, from ends: 100}",
        "{kind: butt}",
        "cannot hang on butt hinges",
    ),
    "in a face frame": (
        BUREAU,
        "  fronts: inset\n",
        "  kind: face frame\n",
        "A flap in a face frame cannot be built by this version yet.",
    ),
    "a stay for nothing": (
        LIFT,
        "  fronts: overlay\n  top to bottom:\n    - flap: 340\n      hinge side: top\n",
        "  fronts: overlay\n  stay: lifts\n  top to bottom:\n",
        "cabinet over has no flap that its stay could hold.",
    ),
    "no such stay": (LIFT, "  fronts: overlay\n", "  fronts: overlay\n  stay: lift\n", "lift"),
}


@pytest.mark.parametrize("name", ANSWERS)
def test_what_cannot_be_is_answered(name: str, tmp_path: Path) -> None:
    design, old, new, says = ANSWERS[name]
    text = design.read_text(encoding="utf-8")
    assert old in text
    path = tmp_path / "design.yaml"
    text = text.replace(old, new, 1)
    if name == "a stay for nothing":
        text = text.replace("\nstay:", "\nstay lifts:")
    path.write_text(text, encoding="utf-8")
    found = stops(check(path, user_house=False).problems)
    assert any(says in problem.message for problem in found), [p.message for p in found]
    assert all(problem.where is not None and problem.where.line > 0 for problem in found)
