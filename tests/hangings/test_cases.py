"""Fronts of a case worked out by hand; the sums stand beside. The opening is that of `cases.py`.

Widths 1002, 1000, 1001 with the left side leaning in 0.5 at the middle: right sides at 1002,
1000.5 and 1001, so plumb clear 1000.5 - 0.5 = 1000 from 0.5; widest 1002. Heights 700 and 702:
inset fronts take 700, overlays 702. The foot of the opening is 118 above the floor.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.hardware.cup_hinge import CupHinges
from parametric.job import Job
from parametric.model import Slide, Turn
from parametric.pack.numbers import figures
from tests.hangings.cases import DRAWERS, HEAD, REST, case_job

THICK = 20.0


def at(job: Job) -> dict[str, tuple[float, float, float, float]]:
    """Left, foot, width and height of every front by its letter."""
    assert job.resolved is not None, [problem.message for problem in job.problems]
    return {
        leaf.letter: tuple(
            round(float(v), 6)
            for v in (leaf.hung.left, leaf.hung.foot, leaf.hung.width, leaf.hung.height)
        )
        for leaf in job.resolved.door.leaves
    }


def test_inset_single(tmp_path: Path) -> None:
    job = case_job(
        "fronts: inset\nfront gap: 2\ntop to bottom: [{door: rest, hinge side: left}]", tmp_path
    )
    # 1000 - 2 x 2 wide from 0.5 + 2; 700 - 2 x 2 high from 118 + 2
    assert at(job) == {"A": (2.5, 120.0, 996.0, 696.0)}
    assert job.resolved is not None
    (leaf,) = job.resolved.door.leaves
    # flush with the case's edges, and turning about its own front edge
    assert float(leaf.hung.plane) == -THICK / 2
    (turn,) = leaf.hung.motion
    assert isinstance(turn, Turn)
    assert turn.point == (2.5, 0.0, 0.0)
    assert turn.angle == -90.0
    (clear,) = job.resolved.door.hanging.clearances
    assert float(clear.has) == 2.0
    # its far back corner comes round on the diagonal (Pythagoras)
    assert float(clear.needs) == pytest.approx(math.hypot(996, 20) - 996)
    assert job.resolved.door.hanging.clear_way is None


def test_inset_pair(tmp_path: Path) -> None:
    job = case_job("fronts: inset\nfront gap: 2\ntop to bottom: [door pair: rest]", tmp_path)
    # (996 - 2) / 2 each; B from 2.5 + 497 + 2
    assert at(job) == {"A": (2.5, 120.0, 497.0, 696.0), "B": (501.5, 120.0, 497.0, 696.0)}
    assert job.resolved is not None
    roles = [(leaf.hung.left_edge, leaf.hung.right_edge) for leaf in job.resolved.door.leaves]
    assert roles == [("hinge", "meeting"), ("meeting", "hinge")]


def test_full_overlay_pair(tmp_path: Path) -> None:
    job = case_job("fronts: overlay\ntop to bottom: [door pair: rest]", tmp_path)
    # sides 18, reveal 1.5: over each by 16.5; (1002 + 33 - 3) / 2; 702 + 33 high from 118 - 16.5
    assert at(job) == {"A": (-16.5, 101.5, 516.0, 735.0), "B": (502.5, 101.5, 516.0, 735.0)}
    assert job.resolved is not None
    assert float(job.resolved.door.leaves[0].hung.plane) == THICK / 2
    numbers = {name: float(value) for name, value in figures(job.resolved, job.loads).items()}
    assert numbers["side lap"] == numbers["head lap"] == 16.5
    assert numbers["cover"] == 1035.0
    assert numbers["leaf A / hinges / boring centre from the edge"] == 5 + 35 / 2


def test_half_overlay_run_of_three(tmp_path: Path) -> None:
    job = case_job(
        "fronts: half overlay\npartition: 20\n"
        "left to right: [door: 300, {door: equal, hinge side: left}, door: equal]",
        tmp_path,
    )
    # bays: 1002 - 2 x 20 = 962; 300, then (962 - 300) / 2 = 331 each
    # over a shared side 18 / 2 - 3 / 2 = 7.5, over a partition 20 / 2 - 3 / 2 = 8.5
    wide = [300 + 7.5 + 8.5, 331 + 2 * 8.5, 331 + 8.5 + 7.5]
    assert at(job) == {
        "A": (-7.5, 101.5, wide[0], 735.0),
        "B": (300 + 20 - 8.5, 101.5, wide[1], 735.0),
        "C": (300 + 20 + 331 + 20 - 8.5, 101.5, wide[2], 735.0),
    }
    assert job.resolved is not None
    hanging = job.resolved.door.hanging
    # the middle of each gap is the middle of its partition: 310 and 661
    for left, right, middle in ((0, 1, 310.0), (1, 2, 661.0)):
        a, b = hanging.leaves[left], hanging.leaves[right]
        assert float(a.left + a.width + b.left) / 2 == middle
        assert float(b.left - a.left - a.width) == 3.0
    assert hanging.case is not None
    assert [float(x) for x in hanging.case.partitions] == [300.0, 651.0]
    # first and last hang on the case's sides, where nobody says otherwise
    assert [leaf.side_of("hinge") for leaf in hanging.leaves] == ["left", "left", "right"]
    # every closing edge has a neighbour's front beyond the gap
    assert len(hanging.clearances) == 3


def test_drawers_over_doors_line_up_with_a_bank_of_drawers(tmp_path: Path) -> None:
    job = case_job(
        f"fronts: inset\nfront gap: 2\n{DRAWERS}"
        "left to right: [bay: equal, bay bank: 382, {bay: equal, hinge side: left}]",
        tmp_path,
        REST + "bay: {top to bottom: [drawer: 160, door: rest]}\n"
        "bay bank: {top to bottom: [drawer: 160, drawer: equal, drawer: equal]}\n",
    )
    # bays: 1000 - 2 x 18 - 382 = 582, 291 each; fronts stand 2 within
    # heights: 700 - 2 x 2 = 696; 696 - 2 - 160 = 534 and (696 - 4 - 160) / 2 = 266
    found = at(job)
    top = 118 + 700 - 2
    assert found["A"] == (2.5, top - 160, 287.0, 160.0)
    assert found["B"] == (2.5, 120.0, 287.0, 534.0)
    assert found["C"] == (0.5 + 291 + 18 + 2, top - 160, 378.0, 160.0)
    assert found["D"] == (311.5, 120 + 266 + 2, 378.0, 266.0)
    assert found["E"] == (311.5, 120.0, 378.0, 266.0)
    assert found["F"] == (0.5 + 291 + 18 + 382 + 18 + 2, top - 160, 287.0, 160.0)
    assert found["G"][1:] == (120.0, 287.0, 534.0)
    # drawers line up, and so do the feet of what stands at the foot
    assert {found[letter][1] for letter in "ACF"} == {656.0}
    assert {found[letter][1] for letter in "BEG"} == {120.0}
    assert job.resolved is not None
    (out,) = job.resolved.door.leaves[0].hung.motion
    assert out == Slide(direction=(0.0, -1.0, 0.0), travel=450.0)
    assert job.resolved.door.leaves[0].hinges == ()


def test_a_wardrobe_s_doors(tmp_path: Path) -> None:
    """Three fitted cases: clear 753 between sides of 18, fronts 1.5 off their edges and 3 apart."""
    head = HEAD.replace("{top: 1002, middle: 1000, bottom: 1001}", "{top: 753, middle: 753}")
    head = head.replace("{left: 700, right: 702}", "{left: 2237, right: 2237}")
    head = head.replace("{bottom: 0, middle: 0.5, top: 0}", "plumb")
    rest = REST.replace(
        "top rail: 60, panel: rest", "top rail: 60, panel: equal, mid rail: 60, panel: equal"
    )
    job = case_job("fronts: overlay\ntop to bottom: [door pair: rest]", tmp_path, rest, head)
    # (789 - 2 x 1.5 - 3) / 2 = 391.5; 2273 - 2 x 1.5 = 2270
    assert [found[2:] for found in at(job).values()] == [(391.5, 2270.0)] * 2
    assert job.resolved is not None
    for leaf in job.resolved.door.leaves:
        (hung,) = leaf.hinges
        # past 2000 and within 2400: five, (2270 - 2 x 100) / 4 apart
        assert int(hung.hinges.count) == 5
        assert isinstance(hung.hinges, CupHinges)
        assert float(hung.hinges.pitch) == 517.5


def test_three_drawers_under_a_pair(tmp_path: Path) -> None:
    """The middle case of the same wardrobe: 2270 - 3 x (220 + 3) = 1601, past 1600 by 1: 4 hinges."""
    head = HEAD.replace("{top: 1002, middle: 1000, bottom: 1001}", "{top: 753, middle: 753}")
    head = head.replace("{left: 700, right: 702}", "{left: 2237, right: 2237}")
    head = head.replace("{bottom: 0, middle: 0.5, top: 0}", "plumb")
    job = case_job(
        f"fronts: overlay\n{DRAWERS}"
        "top to bottom: [door pair: rest, drawer: 220, drawer: 220, drawer: 220]",
        tmp_path,
        head=head,
    )
    found = at(job)
    assert [found[letter][2:] for letter in "AB"] == [(391.5, 1601.0)] * 2
    assert [found[letter][2:] for letter in "CDE"] == [(786.0, 220.0)] * 3
    assert job.resolved is not None
    (hung,) = job.resolved.door.leaves[0].hinges
    assert int(hung.hinges.count) == 4
    saving = hung.hinges.counted.saving
    assert saving is not None
    assert (float(saving.over), int(saving.saved)) == (1.0, 1)


STOPS: dict[str, tuple[str, str, str]] = {
    "over-full across": (
        "fronts: inset\nleft to right: [door: 600, door: 500]",
        "fronts_do_not_add_up",
        # 1000 - 18 = 982 for bays of 1100
        "Your bays add to 1100; the case has 982 for them, partitions taken off. So they are 118 too much.",
    ),
    "under-full up": (
        f"fronts: inset\nfront gap: 2\n{DRAWERS}top to bottom: [drawer: 200, door pair: 450]",
        "fronts_do_not_add_up",
        # 700 - 4 - 2 = 694 for fronts of 650
        "Your fronts add to 650; the case has 694 for them, gaps taken off. So 44 is left over.",
    ),
    "nothing left": (
        f"fronts: inset\nfront gap: 2\n{DRAWERS}top to bottom: [drawer: 694, door pair: rest]",
        "fronts_do_not_add_up",
        "Your fronts add to 694; the case has 694 for them, gaps taken off. "
        "So nothing is left for the rest.",
    ),
    "no gap": (
        "fronts: inset\nfront gap: 0\ntop to bottom: [door pair: rest]",
        "no_front_gap",
        "Fronts with no gap between them bind.",
    ),
    "inset with a reveal": (
        "fronts: inset\nedge reveal: 2\ntop to bottom: [door pair: rest]",
        "fronts_contradict",
        'An "edge reveal" is what fronts over a case leave of its edge',
    ),
    "all reveal": (
        "fronts: overlay\nedge reveal: 18\ntop to bottom: [door pair: rest]",
        "fronts_contradict",
        "The reveal is all of the case's edge",
    ),
    "no partition behind the hinges": (
        "fronts: inset\npartition: 0\nleft to right: [door: equal, {door: equal, hinge side: left}]",
        "no_wood_to_hang_on",
        "A door hangs by its left side, and there is no partition behind it",
    ),
    "no side said": (
        "fronts: inset\ntop to bottom: [door: rest]",
        "missing_key",
        "A single door says by which side it hangs.",
    ),
    "no side said in the middle": (
        "fronts: inset\nleft to right: [door: equal, door: equal, door: equal]",
        "missing_key",
        "A single door says by which side it hangs where it stands between two others.",
    ),
    "no travel said": (
        "fronts: inset\ndrawer leaf: front\ntop to bottom: [drawer: rest]",
        "missing_key",
        "does not say how far they draw out",
    ),
    "both lists": (
        "fronts: inset\ntop to bottom: [door pair: rest]\nleft to right: [door pair: rest]",
        "two_lists",
        "door takes one of them",
    ),
    "no list": ("fronts: inset", "missing_key", "door needs one of them"),
    "a bay that is not there": (
        "fronts: inset\nleft to right: [bay tall: equal]",
        "unknown_name",
        'uses "bay tall", but there is no block "bay tall"',
    ),
    "a bay without a block": (
        "fronts: inset\nleft to right: [bay: equal]",
        "missing_block",
        "there is no block to say what is in it",
    ),
    "a flap": (
        "fronts: inset\ntop to bottom: [flap: rest]",
        "not_built_yet",
        '"flap" in a case cannot be built by this version yet.',
    ),
    "rest twice": (
        f"fronts: inset\n{DRAWERS}top to bottom: [drawer: rest, door pair: rest]",
        "rest_twice",
        '"rest" takes what is left, and only one line can.',
    ),
    "a word of other doors": (
        "fronts: inset\nhead gap: 3\ntop to bottom: [door pair: rest]",
        "unknown_key",
        '"head gap" belongs to',
    ),
    "a floor gap": (
        "fronts: inset\nfloor gap: 3\ntop to bottom: [door pair: rest]",
        "unknown_key",
        'Did you mean "front gap"?',
    ),
    "a pair by one side": (
        "fronts: inset\ntop to bottom: [{door pair: rest, hinge side: left}]",
        "fronts_contradict",
        "A pair hangs by both its sides",
    ),
    "a drawer on hinges": (
        f"fronts: inset\n{DRAWERS}top to bottom: [{{drawer: rest, hinge side: left}}]",
        "fronts_contradict",
        "A drawer front has no hinges.",
    ),
    "a leaf that is not there": (
        "fronts: inset\ntop to bottom: [{door pair: rest, leaf: glased}]",
        "unknown_name",
        'there is no "leaf glased"',
    ),
}


@pytest.mark.parametrize("name", STOPS)
def test_what_cannot_be_is_told(name: str, tmp_path: Path) -> None:
    door, code, words = STOPS[name]
    job = case_job(door, tmp_path)
    assert job.resolved is None or code == "not_built_yet"
    told = [problem for problem in job.problems if problem.level == "stop"]
    assert [problem.code for problem in told] == [code], [problem.message for problem in told]
    assert words in told[0].message
    assert told[0].where is not None
    assert told[0].where.line > 11


@pytest.mark.parametrize(("fronts", "kind"), [("overlay", "butt"), ("inset", "pivot")])
def test_hinges_that_cannot_carry_fronts_are_told(fronts: str, kind: str, tmp_path: Path) -> None:
    rest = REST[: REST.index("hinge:")] + f"hinge: {{kind: {kind}, from edge: 20, pin: 8 x 20}}\n"
    if kind == "butt":
        rest = REST[: REST.index("hinge:")] + "hinge: {kind: butt}\n"
    job = case_job(f"fronts: {fronts}\ntop to bottom: [door pair: rest]", tmp_path, rest)
    told = [problem.code for problem in job.problems if problem.level == "stop"]
    assert told == ["hinge_of_another_kind"]


def test_a_partition_left_out_is_only_a_gap(tmp_path: Path) -> None:
    job = case_job(
        "fronts: inset\nfront gap: 2\npartition: 0\nleft to right: [door: 400, door: equal]",
        tmp_path,
    )
    # half of the gap on either side of 0.5 + 400
    assert at(job) == {
        "A": (2.5, 120.0, 400 - 2 - 1, 696.0),
        "B": (0.5 + 400 + 1, 120.0, 600 - 2 - 1, 696.0),
    }
