"""Mouldings as a design file asks for them: its words, its numbers, and what is stopped. mm."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.figures import collect
from parametric.job import check
from parametric.model import Groove, Moulded, Slot
from parametric.problems import Problem
from parametric.trade.machine_work import machine_work
from parametric.trade.milling import milling_list
from parametric.trade.moulded_runs import edge_beside, shoulders
from tests.profiles.moulded_doors import (
    ARCHED,
    GLAZED,
    PANELLED,
    STOPS,
    checked,
    design,
    leaf_of,
    part,
    written,
)


def stopped(folder: Path, text: str) -> Problem:
    (only,) = [
        p for p in check(written(folder, text), user_house=False).problems if p.level == "stop"
    ]
    return only


# --- words ---------------------------------------------------------------------------------


def test_a_leaf_without_a_word_is_square(tmp_path: Path) -> None:
    leaf = leaf_of(checked(tmp_path, design(None)))
    assert leaf.sticking is None
    assert [float(rail.blank) for rail in leaf.rails] == [680, 680, 680]


def test_a_word_alone_has_the_usual_sizes(tmp_path: Path) -> None:
    sticking = leaf_of(checked(tmp_path, design("ovolo"))).sticking
    assert sticking is not None
    assert (float(sticking.moulding.width), float(sticking.moulding.depth)) == (12, 10)
    assert sticking.corners == "coped"
    bead = leaf_of(checked(tmp_path, design("bead"))).sticking
    assert bead is not None
    # 8 of round and 2 of quirk; half of the round, and 0.5 below the face
    assert (float(bead.moulding.width), float(bead.moulding.depth)) == (10, 4.5)
    assert bead.corners == "mitred"


def test_sizes_of_its_own_under_the_moulding_s_name(tmp_path: Path) -> None:
    own = design("ovolo", blocks="sticking ovolo: {width: 14, corners: mitred}\n")
    sticking = leaf_of(checked(tmp_path, own)).sticking
    assert sticking is not None
    assert float(sticking.moulding.width) == 14
    assert float(sticking.moulding.depth) == 10
    assert sticking.corners == "mitred"
    drawn = design("drawn", blocks="sticking drawn: {kind: ogee, width: 16}\n")
    sticking = leaf_of(checked(tmp_path, drawn)).sticking
    assert sticking is not None
    assert (sticking.moulding.name, float(sticking.moulding.width)) == ("ogee", 16)


def test_a_block_without_a_name_is_every_leaf_s(tmp_path: Path) -> None:
    everywhere = "sticking: {kind: cove}\n"
    sticking = leaf_of(checked(tmp_path, design(None, blocks=everywhere))).sticking
    assert sticking is not None
    assert sticking.moulding.name == "cove"
    assert leaf_of(checked(tmp_path, design("square", blocks=everywhere))).sticking is None


def test_a_job_in_inches_has_usual_sizes_in_sixteenths(tmp_path: Path) -> None:
    text = Path(__file__).parents[1].joinpath("rules/hinged-pair.yaml").read_text(encoding="utf-8")
    text = text.replace("  stiles: 4-1/2\n", "  stiles: 4-1/2\n  sticking: ovolo\n")
    text = text.replace("thickness: 1/4}", "thickness: 1/4, held by: rebate}")
    sticking = leaf_of(checked(tmp_path, text)).sticking
    assert sticking is not None
    assert float(sticking.moulding.width) == 25.4 / 2
    assert float(sticking.moulding.depth) == pytest.approx(25.4 * 3 / 8, abs=1e-12)


def test_an_option_may_be_moulded(tmp_path: Path) -> None:
    text = design("square") + "option B: {called: moulded, leaf: {sticking: ogee}}\n"
    job = check(written(tmp_path, text), user_house=False, option="B")
    sticking = leaf_of(job).sticking
    assert sticking is not None
    assert sticking.moulding.name == "ogee"


def test_a_word_that_is_none(tmp_path: Path) -> None:
    found = stopped(tmp_path, design("ovlo"))
    assert 'Did you mean "ovolo"?' in found.message
    assert found.allowed == "chamfer, ovolo, ogee, cove, bead, square"
    assert found.where is not None
    assert "sticking" in design("ovlo").splitlines()[found.where.line - 1]
    named = design("square", blocks="sticking square: {kind: cove}\n")
    assert "cannot be called" in stopped(tmp_path, named).message


# --- numbers -------------------------------------------------------------------------------


def test_a_rail_goes_past_its_shoulders_by_the_moulding(tmp_path: Path) -> None:
    job = checked(tmp_path, design("ovolo"))
    leaf = leaf_of(job)
    for rail in leaf.rails:
        assert (float(rail.length), float(rail.reach), float(rail.blank)) == (680, 12, 704)
        assert [float(at) for at in rail.shoulders] == [12, 692]
    names = collect(leaf)
    for name, value in (
        ("leaf A / sticking / width", 12),
        ("leaf A / sticking / depth", 10),
        ("leaf A / sticking / fillet", None),
        ("leaf A / rails past their shoulders", 12),
        ("leaf A / top rail / blank length", 704),
        ("leaf A / top rail / length", 680),
    ):
        assert (float(names[name]) if name in names else None) == value, name
    lock = part(job, "lock rail")
    # 110 - 12 from the leaf's left edge
    assert lock.placement.origin[0] == 98
    assert lock.blank.length == 704
    groove = next(cut for cut in lock.cuts if isinstance(cut, Groove) and "edge" in cut.face)
    assert (float(groove.u0), float(groove.u1)) == (12, 692)
    slots = [cut for cut in lock.cuts if isinstance(cut, Slot)]
    assert [(float(s.surface), float(s.depth)) for s in slots] == [(12, 58), (12, 58)]
    own = [c for c in part(job, "left stile").cuts if isinstance(c, Slot)]
    assert {float(slot.depth) for slot in own} == {46}


def chamfered(corners: str) -> str:
    own = f"sticking chamfer: {{width: 10, depth: 8, corners: {corners}}}\n"
    return design("chamfer", blocks=own, bands=GLAZED)


BEHIND = 10 * 16 * 680 + 2 * ((62 - 12) * 12 + math.pi * 36) * 46
"""The bottom rail's glass rebate, between its shoulders, and its two slots of a 12 cutter."""
SPREAD = 100 * 8 / 3
"""The integral of (10 (1 - t / 8)) squared over the 8 of the chamfer's depth."""


def test_a_coped_rail_by_hand(tmp_path: Path) -> None:
    rail = part(checked(tmp_path, chamfered("coped")), "bottom rail")
    # 680 and 10 past either shoulder
    blank = 700 * 220 * 44
    # the ends are cut back by 10, but for the half of 10 x 8 that fills the stile's chamfer
    ends = 2 * (10 * 44 - 40) * 220
    # 40 of section over 680, and over either cope as far as it has taken the stile's wood
    run = 40 * 680 + 2 * SPREAD
    assert rail.volume == pytest.approx(blank - ends - run - BEHIND, rel=1e-12)


def test_a_mitred_rail_by_hand(tmp_path: Path) -> None:
    rail = part(checked(tmp_path, chamfered("mitred")), "bottom rail")
    blank = 700 * 220 * 44
    shoulders = 2 * 10 * (44 - 8) * 220
    # past the corners the run spreads by as much as it is wide, along half a square at each end
    run = 40 * 680 + 2 * SPREAD / 2
    corners = 2 * 10 * 10 / 2 * 8
    assert rail.volume == pytest.approx(blank - shoulders - run - corners - BEHIND, rel=1e-12)


@pytest.mark.parametrize("corners", ["coped", "mitred"])
@pytest.mark.parametrize("kind", ["chamfer", "ovolo", "ogee", "cove"])
def test_stiles_and_rails_fill_the_frame_once(tmp_path: Path, kind: str, corners: str) -> None:
    """What the members hold together is the frame, less what is let into it and its mouldings.

    An opening W wide and H high loses the section along its sides, and past its corners as
    much as the moulding spreads there: 2 A (W + H) + 4 times the integral of p squared.
    """
    own = f"sticking {kind}: {{corners: {corners}}}\n"
    job = checked(tmp_path, design(kind, blocks=own, bands=GLAZED))
    square = checked(tmp_path, design("square", bands=GLAZED))
    sticking = leaf_of(job).sticking
    assert sticking is not None
    names = ("left stile", "right stile", "top rail", "bottom rail")
    plain, moulded = (sum(part(one, name).volume for name in names) for one in (square, job))
    steps = 20000
    deep = float(sticking.moulding.depth)
    # the midpoint rule: an independent integral
    squares = sum(sticking.moulding.section_at(deep * (i + 0.5) / steps) ** 2 for i in range(steps))
    squares *= deep / steps
    area, wide, high = sticking.moulding.area, 680, 2047 - 110 - 220
    # where a coped stile's run goes on beside a rail, the rail's end fills it
    taken = 2 * area * (wide + high) + 4 * squares
    assert plain - moulded == pytest.approx(taken, abs=0.2)


# --- stops ---------------------------------------------------------------------------------


def test_bars_within_a_moulding_are_not_built(tmp_path: Path) -> None:
    barred = PANELLED.replace("- lite: rest", "- {lite: rest, wide: 2}")
    found = stopped(tmp_path, design("ovolo", bands=barred))
    assert found.code == "not_built_yet"
    assert found.message.startswith("A moulding round a lite that bars divide")


@pytest.mark.parametrize(
    ("blocks", "kind", "says"),
    [
        ("sticking bead: {corners: coped}\n", "bead", "A bead cannot be coped"),
        ("sticking ovolo: {width: 8}\n", "ovolo", "would be undercut"),
        (
            "sticking chamfer: {width: 20, depth: 44}\n",
            "chamfer",
            "The chamfer is 44 deep in a frame 44 thick.",
        ),
        (
            "sticking chamfer: {width: 80}\n",
            "chamfer",
            "The lock rail is 160 wide, and its chamfer takes 160 of that.",
        ),
    ],
)
def test_what_cannot_be_stuck(tmp_path: Path, blocks: str, kind: str, says: str) -> None:
    text = design(kind, blocks=blocks)
    found = stopped(tmp_path, text)
    assert says in found.message
    assert found.no_size
    assert found.where is not None
    assert "sticking" in text.splitlines()[found.where.line - 1]


def test_just_room_for_two_mouldings(tmp_path: Path) -> None:
    # 160 of lock rail: 79.9 from either edge leaves 0.2
    checked(tmp_path, design("chamfer", blocks="sticking chamfer: {width: 79.9}\n"))


def test_an_arch_whose_mitre_comes_out_at_the_top_is_told(tmp_path: Path) -> None:
    """A raked head that rises 300 in 680 leans by 24 deg and meets its higher stile at 66.

    The mitre halves that: 90 in, it is 90 / tan(33) = 138 up, and the leaf goes on for 110; 60 in,
    it is 92 up.
    """
    wide = "sticking chamfer: {width: 90, corners: mitred}\n"
    raked = design("chamfer", blocks=wide, bands=ARCHED).replace(
        "shape: segmental, across: leaf, rise: 90",
        "shape: raked, rises to: left, across: leaf, rise: 300",
    )
    found = stopped(tmp_path, raked)
    assert found.code == "moulding_does_not_fit"
    assert found.message == (
        "The chamfer cannot be run along this arch: openings are so near one another, or the "
        "stile's end, that their mitres cross."
    )
    checked(tmp_path, raked.replace("width: 90", "width: 60"))


# --- at the bench --------------------------------------------------------------------------


def test_slots_come_before_copes_and_copes_before_mouldings(tmp_path: Path) -> None:
    job = checked(tmp_path, design("ovolo", held=STOPS))
    assert job.assembly is not None
    early = [s for s in milling_list(job.assembly) if s.when == "before glue-up"]
    kinds = [setting.kind for setting in early]
    assert max(i for i, k in enumerate(kinds) if k == "slot") < kinds.index("cope")
    assert kinds.index("cope") < kinds.index("moulding")
    # a stile's slots are 46 deep, a rail's 12 + 46 from the end that is still square
    slots = [s for s in early if s.kind == "slot"]
    assert sorted(float(s.depth or 0) for s in slots) == [46, 58]
    cope = next(s for s in early if s.kind == "cope")
    assert (float(cope.width or 0), float(cope.depth or 0)) == (12, 44)
    assert int(cope.cuts) == 6


def test_the_runs_of_a_steep_pointed_head_go_along_its_edge(tmp_path: Path) -> None:
    """Each half rises 700 in 340: steeper than it is long, and still no end of the rail."""
    text = design("ovolo", bands=ARCHED).replace(
        "shape: segmental, across: leaf, rise: 90", "shape: pointed, across: leaf, rise: 700"
    )
    job = checked(tmp_path, text)
    rail = part(job, "top rail")
    beside = [edge_beside(cut) for cut in rail.cuts if isinstance(cut, Moulded)]
    assert sorted(beside) == ["high end", "low edge", "low edge", "low end"]
    assert shoulders(rail.blank, rail.cuts) == (12, 692)
    assert job.assembly is not None
    cope = next(s for s in milling_list(job.assembly) if s.kind == "cope")
    # two rails, both ends
    assert int(cope.cuts) == 4


def test_a_groove_between_shoulders_is_open(tmp_path: Path) -> None:
    job = checked(tmp_path, design("ogee"))
    lock = part(job, "lock rail")
    grooves = [cut for cut in lock.cuts if isinstance(cut, Groove)]
    assert len(grooves) == 2
    for cut in grooves:
        ((work, _, _),) = machine_work(cut, lock)
        assert not work.stopped
    assert sum(isinstance(cut, Moulded) for cut in lock.cuts) == 4
