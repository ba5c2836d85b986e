"""Mill Lane study's paper, in inches and pounds: hinges, gaps, seasons, glass, against the brief's sums."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.cnc.bench_work import bench_work
from parametric.figures import Figure
from parametric.job import Job, check
from parametric.pack.numbers import figures
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed
from parametric.trade.site_tables import fixing_table
from tests.trade.conftest import paper_of

DESIGN = Path(__file__).parents[2] / "examples/mill-lane-study/design.yaml"
INCH = 25.4
POUND = 0.45359237


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


@pytest.fixture(scope="module")
def paper(job: Job) -> Paperwork:
    return paper_of(job)


@pytest.fixture(scope="module")
def numbers(job: Job, paper: Paperwork) -> dict[str, Figure]:
    assert job.resolved is not None
    return dict(figures(job.resolved, job.loads, paper))


def test_hinges_are_placed_from_both_ends(paper: Paperwork) -> None:
    """Up: 81.375 - 7 - 2.25 = 72.125, 11 + 2.25 = 13.25, half way 42.6875.

    Down from a head 82 over the datum, feet 1/2 over it: 82 - 0.5 - up.
    """
    up = [72.125, 42.6875, 13.25]
    for leaf, side in (("leaf A", "left"), ("leaf B", "right")):
        own = [hinge for hinge in paper.install.hinges if hinge.leaf == leaf]
        assert {hinge.side for hinge in own} == {side}
        assert [float(hinge.from_foot) / INCH for hinge in own] == pytest.approx(up)
        down = [82 - 0.5 - one for one in up]
        assert [float(hinge.from_head) / INCH for hinge in own] == pytest.approx(down)
        # Its end nearer the head: head gap 1/8 and 7 from the leaf's top.
        assert float(own[0].near_end) / INCH == pytest.approx(7.125)


def test_both_measures_are_printed(job: Job, paper: Paperwork) -> None:
    assert job.resolved is not None
    rows = fixing_table(paper.install, printed(job.resolved)).rows
    said = {(row[0], row[1]): row[2] for row in rows}
    for word, up, down in (
        ("top", "72-1/8", "9-3/8"),
        ("middle", "42-11/16", "38-13/16"),
        ("bottom", "13-1/4", "68-1/4"),
    ):
        who = f"{word} hinge, middle"
        assert said[f"{who}, leaves A and B", "leaf's foot, up"] == up
        assert said[f"{who}, jamb of leaves A and B", "jamb's head, down"] == down


def test_gaps_all_round(job: Job, paper: Paperwork) -> None:
    """Hinges 3/32, meeting 1/8, head 1/8; floor 5/8 and 1/2, 1/2 - 3/16 = 5/16 in the swing."""
    assert job.resolved is not None
    rows = fixing_table(paper.install, printed(job.resolved)).rows
    gaps = {row[0]: row[2] for row in rows if row[0].startswith("gap")}
    assert gaps == {
        "gap at the hinges": "3/32",
        "gap where leaves meet": "1/8",
        "gap under the head": "1/8",
        "gap under the leaves, left": "5/8",
        "gap under the leaves, right": "1/2",
        "gap under the leaves, least in the swing": "5/16",
    }
    assert any("3/32 at the hinges" in point for point in paper.install.hold)


def test_what_the_hinges_carry(job: Job, numbers: dict[str, Figure]) -> None:
    """81.5 lb on three; sideways 81.5 x (29.8125 / 2) / (72.125 - 13.25) = 20.6."""
    assert job.resolved is not None
    leaf = job.resolved.door.leaves[0]
    (hung,) = leaf.hinges
    estimate = float(leaf.weights.estimate) / POUND
    assert estimate == pytest.approx(81.5, abs=0.1)
    worked = estimate * (29.8125 / 2) / (72.125 - 13.25)
    assert float(hung.hinges.load.pull) / POUND == pytest.approx(worked)
    # The brief goes on from 81.5.
    assert worked == pytest.approx(20.6, abs=0.06)
    (load,) = job.loads[0].on_hinges
    governing = float(job.loads[0].governing)
    assert governing >= float(leaf.weights.estimate)
    assert float(load.share) == pytest.approx(governing / 3)
    assert float(load.pull) == pytest.approx(governing * (29.8125 / 2) / (72.125 - 13.25))
    assert "leaf A / hinges / governing pull on the top hinge" in numbers


def test_hardware_is_hinges_and_what_the_glass_takes(paper: Paperwork) -> None:
    """Six hinges 4-1/2 long; two blocks to each of 16 panes; compound once round every pane.

    A rectangle's round is twice its two sides; of the four under the arch it lies between that
    of the rectangle under their lower edge and of the one that they are cut from.
    """
    found = {item.what: item for item in paper.hardware}
    assert int(found["butt hinge"].number) == 6
    assert found["butt hinge"].size.startswith("4-1/2 long")
    assert int(found["setting block"].number) == 32
    assert "glass stop pin" not in found
    plain = 4 * 2 * (10.53125 + 15.296) + 8 * 2 * (10.53125 + 15.2335)
    least = plain + 2 * 2 * (10.53125 + 15.1761) + 2 * 2 * (10.53125 + 19.3451)
    most = plain + 2 * 2 * (10.53125 + 19.2429) + 2 * 2 * (10.53125 + 21.1373)
    run = float(found["glazing compound"].number) * 1000 / INCH
    assert least < run < most


def test_seasons(numbers: dict[str, Figure]) -> None:
    """2 x 4.5 x 0.00365 x 4 = 0.131 of 3/32 + 1/16 = 0.156: 0.025 is left."""
    for leaf in ("leaf A", "leaf B"):
        growth = float(numbers[f"{leaf} / seasonal growth"]) / INCH
        room = float(numbers[f"{leaf} / gaps at its edges"]) / INCH
        left = float(numbers[f"{leaf} / gaps left in the dampest season"]) / INCH
        assert growth == pytest.approx(2 * 4.5 * 0.00365 * 4)
        assert (growth, room, left) == pytest.approx((0.131, 0.156, 0.025), abs=0.0006)


def test_the_bevel_off_the_far_side_is_said(paper: Paperwork) -> None:
    """1.75 x tan 3 deg = 0.092."""
    assert 1.75 * math.tan(math.radians(3)) == pytest.approx(0.092, abs=0.0005)
    assert any("planed 3 deg, 0.092 off the far side" in step.do for step in paper.install.steps)


def test_steps_are_in_the_order_of_the_work(paper: Paperwork) -> None:
    said = [step.do for step in paper.install.steps]

    def at(words: str) -> int:
        return next(i for i, text in enumerate(said) if words in text)

    order = [
        "Measure the opening again",
        "offer up leaves A and B",
        "Plane the foot",
        "Knife the hinges' ends",
        "Cut the jambs' mortises",
        "Hang leaf A, then leaf B",
        "Shut both leaves",
        "Try the swing",
        "plant the stops",
        "Open and shut every leaf",
    ]
    assert [at(words) for words in order] == list(range(len(said)))
    cautions = " ".join(paper.install.cautions)
    for word in ("Two people", "beside the hinges", "chisels", "lead", "Glass", "Local codes"):
        assert word in cautions


def test_bedded_glass_travels_in_its_leaf(paper: Paperwork) -> None:
    assert not paper.delivery.glazed_on_site
    leaves = [item for item in paper.delivery.items if item.what.startswith("leaf")]
    assert [int(item.people) for item in leaves] == [2, 2]
    for item in leaves:
        assert item.weight is not None
        assert float(item.weight) / POUND == pytest.approx(81.5, abs=0.3)
    assert "bedded in its rebates" in paper.delivery.because


def test_problems_at_their_levels_and_no_others(job: Job) -> None:
    """Growth and the floor are cautions, template and safety glass notes; nothing of jambs that
    differ by 1/8, of the meeting edge, nor of a gap that runs from 5/8 to 1/2.
    """
    found = {(p.code, p.level) for p in job.problems}
    assert {
        ("leaf_grows_tight", "caution"),
        ("floor_rises_in_travel", "caution"),
        ("shaped_pane_needs_template", "note"),
        ("glass_not_safety", "note"),
    } <= found
    assert not {code for code, _ in found} & {
        "leaf_binds",
        "uneven_floor_gap",
        "survey_contradicts_itself",
        "reading_far_off",
    }
    (glass,) = [p for p in job.problems if p.code == "glass_not_safety"]
    assert "toughened" in glass.message
    assert job.exit_status == 0


def test_sixteen_panes_can_be_ordered_again(paper: Paperwork) -> None:
    marks = [pane.mark for pane in paper.care.panes]
    assert len(marks) == 16
    assert len(set(marks)) == 4
    shaped = [pane for pane in paper.care.panes if "template" in pane.corners]
    assert len(shaped) == 4
    assert all(pane.stop_width is None for pane in paper.care.panes)


def test_the_glazier_cuts_the_glass(job: Job, paper: Paperwork) -> None:
    """Shaped panes are bought by their templates: nothing here is set up for them."""
    assert job.assembly is not None
    panes = [part for part in job.assembly.parts if part.material.look == "glass" and part.cuts]
    assert len(panes) == 4
    run = {name for setting in paper.milling for one in setting.runs for name in one.names}
    assert not run & {part.name for part in panes}
    assert not [cut for cut in bench_work(job.assembly) if cut.mark.startswith("G")]


def test_edges_are_planed_before_hinges_are_let_in(paper: Paperwork) -> None:
    late = [s for s in paper.milling if s.when == "after glue-up"]
    assert [s.title for s in late] == ["trim the ends", "edge bevel", "hinge mortise"]
    assert {run.face for run in late[1].runs} == {"outer edge"}


def test_the_leaf_that_opens_second_is_named(job: Job, paper: Paperwork) -> None:
    """The one without the lock's edge is the one that bolts hold."""
    assert job.resolved is not None
    (second,) = [leaf for leaf in job.resolved.door.leaves if leaf.hung.lock_edge is None]
    said = " ".join(step.do for step in paper.install.steps)
    assert f"Bolts at head and foot of {second.name}, which opens second." in said
