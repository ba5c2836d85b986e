"""Backs that no sheet is large enough for: where they are joined, and that the pieces are parts."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from parametric.drawing.audit import audit
from parametric.drawing.cases import draw_casework
from parametric.drawing.dimensions import Dimension
from parametric.drawing.subject import subject
from parametric.job import Job, check
from parametric.model import Drilled, Part, Pocket
from parametric.solids.clash import clashes_in_all_states
from parametric.solids.solid_set import build_solids
from parametric.trade.paperwork import paperwork
from parametric.trade.sheet_order import board_order
from tests.cases.test_case_sheets import BLOCK

WIDE = Path(__file__).with_name("wide.yaml")
BAYS = "  left to right: [bay: equal, bay: equal]\n"
OPEN = "  top to bottom: [open: rest]\n"
BACK = "back: {thickness: 6,"


def made(folder: Path, lines: dict[str, str]) -> Job:
    text = WIDE.read_text(encoding="utf-8")
    for old, new in lines.items():
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return check(path, user_house=False)


def behind(job: Job, case: str) -> dict[str, Part]:
    """Pieces and strips of a case's back, by their own names."""
    assert job.assembly is not None, [p.message for p in job.problems]
    return {
        part.name.rpartition(" / ")[2]: part
        for part in job.assembly.parts
        if part.name.startswith(f"cabinet {case} / ") and part.mark.startswith("X")
    }


def place(part: Part) -> tuple[float, float, float, float]:
    """Left and foot, width and height, in the case."""
    (x, _, z), blank = part.placement.origin, part.blank
    upright = part.placement.x[2] > 0.5
    wide, high = (blank.width, blank.length) if upright else (blank.length, blank.width)
    return float(x), float(z), float(wide), float(high)


def stops(job: Job) -> list[str]:
    return [problem.message for problem in job.problems if problem.level == "stop"]


def test_two_pieces_meet_on_the_middle_of_a_partition(tmp_path: Path) -> None:
    job = made(tmp_path, {})
    assert stops(job) == []
    pieces = behind(job, "long")
    # 1900 - 2 x 18 = 1864 clear, 5 into either groove: 1874 from 18 - 5 = 13 on; the partition's
    # middle is the case's, 950: 950 - 13 = 937 each; 1600 - 36 + 10 = 1574 high
    assert {name: place(part) for name, part in pieces.items()} == {
        "left back": (13, 13, 937, 1574),
        "right back": (950, 13, 937, 1574),
    }
    assert len({part.mark for part in pieces.values()}) == 1


def test_two_pieces_meet_on_the_middle_of_a_fixed_shelf(tmp_path: Path) -> None:
    job = made(tmp_path, {})
    # 1000 - 36 + 2 x 7 = 978 wide; 3100 - 36 + 14 = 3078 high from 18 - 7 = 11 on. The upper space
    # is 1200: its shelf lies 3082 - 1200 - 18 = 1864 to 1882 up, its middle 1873: 1873 - 11 = 1862
    assert {name: place(part) for name, part in behind(job, "tall").items()} == {
        "lower back": (11, 11, 978, 1862),
        "upper back": (11, 1873, 978, 1216),
    }


def test_without_a_board_to_meet_on_it_is_a_stop_that_says_what_to_do(tmp_path: Path) -> None:
    job = made(tmp_path, {BAYS: OPEN})
    (stop,) = (problem for problem in job.problems if problem.level == "stop")
    assert stop.code == "board_larger_than_sheet"
    assert all(word in stop.fix for word in ("partition", "fixed shelf", "strip: 80", "from back"))


def test_a_strip_covers_a_joint_that_nothing_else_does(tmp_path: Path) -> None:
    job = made(tmp_path, {BAYS: OPEN, BACK: "back: {strip: 80, thickness: 6,"})
    assert stops(job) == []
    pieces = behind(job, "long")
    # 950 - 40 = 910; between bottom and top with 1 free: 18 + 1, and 1564 - 2
    assert {name: place(part) for name, part in pieces.items()} == {
        "left back": (13, 13, 937, 1574),
        "right back": (950, 13, 937, 1574),
        "cover strip": (910, 19, 80, 1562),
    }
    # the back stands 300 - 12 - 6 = 282 from the front, its strip behind it at 288, in 12 of room
    assert {float(part.placement.origin[1]) for part in pieces.values()} == {282, 288}
    # a strip as thick as its back wants as much room: 6 are enough, 5 are not
    fits = {
        BAYS: OPEN,
        "6, from back: 12, clearance: 1}": "6, from back: 6, clearance: 1, strip: 80}",
    }
    assert stops(made(tmp_path, fits)) == []
    short = {
        BAYS: OPEN,
        "6, from back: 12, clearance: 1}": "6, from back: 5, clearance: 1, strip: 80}",
    }
    assert len(stops(made(tmp_path, short))) == 1


def test_what_goes_through_a_back_goes_through_its_own_piece(tmp_path: Path) -> None:
    bays = (
        "  cable way: 60\n  air: 150 x 40\n  left to right:\n"
        "    - {bay: equal, inside: [equipment: rest]}\n"
        "    - {bay: equal, inside: [equipment: rest]}\n"
    )
    pieces = behind(made(tmp_path, {BAYS: bays}), "long")
    for part in pieces.values():
        assert sum(isinstance(cut, Pocket) for cut in part.cuts) == 2
        assert sum(isinstance(cut, Drilled) for cut in part.cuts) == 1
    # a joint that would go through a hole is none
    one = bays.partition("  left")[0] + "  inside: [equipment: rest]\n"
    job = made(tmp_path, {BAYS: one, BACK: "back: {strip: 80, thickness: 6,"})
    assert len(stops(job)) == 1


def test_pieces_are_in_solids_lists_and_on_clean_sheets(tmp_path: Path) -> None:
    job = made(tmp_path, {})
    assert job.assembly is not None
    assert job.resolved is not None
    solids = build_solids(job.assembly.parts, None)
    assert list(clashes_in_all_states(job.assembly, solids)) == []
    marks = {part.mark for case in ("long", "tall") for part in behind(job, case).values()}
    lots = board_order(job.resolved, job.assembly)
    assert marks <= {row.mark for lot in lots for row in lot.pieces}
    assert all(not lot.plan.unfit for lot in lots)
    paper = paperwork(job.resolved, job.assembly, job.loads)
    sheets = draw_casework(subject(job.resolved, job.assembly, job.loads, job.problems), BLOCK)
    assert [fault for sheet in sheets for fault in audit(sheet)] == []
    sized = {e.figure for sheet in sheets for e in sheet.elements if isinstance(e, Dimension)}
    assert sized >= {f"cabinet long / {side} back / width" for side in ("left", "right")}
    assert {label.place for label in paper.labels} >= {"left back", "upper back"}


@settings(max_examples=40, deadline=None)
@given(bays=st.integers(1, 5), width=st.integers(1250, 3400), high=st.integers(1250, 2300))
def test_any_back_is_covered_once_and_comes_out_of_its_sheets(
    tmp_path_factory: pytest.TempPathFactory, bays: int, width: int, high: int
) -> None:
    lines = {
        "  width: 1900\n": f"  width: {width}\n",
        "  height: 1600\n": f"  height: {high}\n",
        BAYS: f"  left to right: [{', '.join(['bay: equal'] * bays)}]\n",
        "widths: {middle: 3600}": "widths: {middle: 6000}",
        "  from left: 2100\n": "  from left: 4900\n",
    }
    job = made(tmp_path_factory.mktemp("wide"), lines)
    pieces = [place(part) for part in behind(job, "long").values()]
    left = min(x for x, _, _, _ in pieces)
    assert sum(wide * tall for _, _, wide, tall in pieces) == pytest.approx(
        (width - 26) * (high - 26)
    )
    assert max(x + wide for x, _, wide, _ in pieces) - left == pytest.approx(width - 26)
    too_large = any(wide > 1220 or tall > 3200 for _, _, wide, tall in pieces)
    across = len(pieces) == 1 and width - 26 <= 3200 and high - 26 <= 1220
    assert bool(stops(job)) == (too_large and not across), stops(job)
    # a back that partitions could hold is never left in one
    if bays > 1 and (width - 36) / bays + 18 <= 1220:
        assert not stops(job)
