"""Fronts whose grain runs on: sets, blanks, marks, labels, the order at the bench, the plan read back.

The press of tests/rules/chest.yaml: 789 wide, a pair of doors over three drawers, frames 80 and
60 wide with panels of 9 board let in 10 less 1.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from parametric.drawing import draw
from parametric.drawing.audit import audit
from parametric.figures import named
from parametric.job import Job, check
from parametric.pack.verifying.cutting_plan import PLAN, check_cutting_plan
from parametric.pack.verifying.known import Known
from parametric.pack.verifying.lists import CUT_LIST, check_lists
from parametric.resolve.matched_fronts import matched_sets
from parametric.trade.bench_order import shop_order
from parametric.trade.cutlist import cut_list
from parametric.trade.cutting_tables import cutting_table, matched_words
from parametric.trade.paperwork import paperwork
from parametric.trade.printed import printed
from parametric.trade.sheet_order import BoardLot, board_order
from parametric.trade.tables import cut_table
from parametric.writers.csv import write_csv
from tests.rules.matched_fronts import ACROSS, CHEST, FRONTS, UP, Lines, veneered

HOUSE = Path(__file__).parents[2] / "examples/house.yaml"


def press(folder: Path, lines: Lines) -> Job:
    text = CHEST.read_text(encoding="utf-8")
    for old, new in lines.items():
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, house=HOUSE, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    return job


def lots_of(job: Job) -> tuple[BoardLot, ...]:
    assert job.resolved is not None
    assert job.assembly is not None
    return board_order(job.resolved, job.assembly)


def known_of(job: Job) -> Known:
    """What a reader of a pack is told of the design."""
    assert job.resolved is not None
    assert job.assembly is not None
    return Known(
        assembly=job.assembly,
        figures={"saw kerf": named("saw kerf", job.resolved.shop.saw.kerf)},
        opening=(),
        fingerprint="",
        unit="mm",
        wood_step=Fraction(1, 2),
        fine_step=Fraction(1, 10),
    )


def read_back(job: Job, swap: tuple[str, str] | None = None) -> tuple[str, ...]:
    """What the reader of a pack finds wrong with the plan, as it is or with words changed."""
    assert job.resolved is not None
    assert job.assembly is not None
    table = cutting_table(lots_of(job), printed(job.resolved))
    text = write_csv(table.header, table.rows).decode()
    if swap is not None:
        assert swap[0] in text, text
        text = text.replace(*swap, 1)
    return check_cutting_plan({PLAN: text.encode()}, known_of(job)).faults


def test_the_cut_list_tells_each_panel_s_place_and_is_held_to_it(tmp_path: Path) -> None:
    job = press(tmp_path, UP)
    assert job.resolved is not None
    assert job.assembly is not None
    table = cut_table(cut_list(job.assembly), "mm", job.resolved.shop)
    text = write_csv(table.header, table.rows).decode()
    assert "set 1: 5 of 5" in text

    def faults(said: str) -> str:
        return "\n".join(check_lists({CUT_LIST: said.encode()}, known_of(job)).faults)

    assert faults(text) == ""
    assert "P1: 'set 1: 4 of 5' is said" in faults(text.replace("5 of 5", "4 of 5"))
    assert "P1: '' is said" in faults(text.replace("set 1: 5 of 5", ""))


def test_a_stack_is_one_blank_from_the_foot_up(tmp_path: Path) -> None:
    job = press(tmp_path, UP)
    assert job.resolved is not None
    (own,) = matched_sets(job.resolved.doors)
    # leaves A and B are the pair, C to E the drawers from the top
    assert [[panel.leaf for panel in row.panels] for row in own.rows] == [
        ["leaf E"],
        ["leaf D"],
        ["leaf C"],
        ["leaf B", "leaf A"],
    ]
    # between two drawers' panels stand 60 of either frame and the gap of 3, less 9 in each groove:
    # 60 + 3 + 60 - 18 = 105; under the doors 60 + 3 + 80 - 18 = 125
    assert [float(row.hidden or 0) for row in own.rows] == [0, 105, 105, 125]
    # the pair's panels lie as far apart as they stand: 644 - 249.5 = 394.5
    assert [float(panel.at) for panel in own.rows[3].panels] == [0, 394.5]
    (lot,) = (lot for lot in lots_of(job) if lot.matched)
    (one,) = lot.matched
    assert (one.piece.length, one.piece.width) == (1459 + 3 * 118 + 3 * 4, 644)
    assert matched_words(one, float(lot.kerf), printed(job.resolved)) == (
        "Set 1: triangle over the blank before it is sawn apart, its point to the top; "
        "P5, P4, P3, P2, P1 follow from the foot. A saw cut takes 4 of the figure where frames "
        "and gap hide 105 to 125."
    )
    assert read_back(job) == ()


def test_a_row_is_one_blank_from_the_left(tmp_path: Path) -> None:
    job = press(tmp_path, ACROSS)
    assert job.resolved is not None
    (own,) = matched_sets(job.resolved.doors)
    assert [panel.leaf for panel in own.panels] == ["leaf A", "leaf B"]
    (lot,) = (lot for lot in lots_of(job) if lot.matched)
    # two panels 249.5 along their level grain and a cut of 4
    assert (lot.matched[0].piece.length, lot.matched[0].piece.width) == (503, 1459)
    assert read_back(job) == ()


def test_every_panel_of_a_set_has_a_mark_and_a_place_of_its_own(tmp_path: Path) -> None:
    plain, job = press(tmp_path, {}), press(tmp_path, UP)
    assert plain.assembly is not None
    assert job.assembly is not None
    assert job.resolved is not None
    numbers = {row.mark: row.number for row in cut_list(plain.assembly) if row.mark[0] == "P"}
    assert numbers == {"P1": 2, "P2": 3}
    rows = [row for row in cut_list(job.assembly) if row.mark[0] == "P"]
    assert [(row.number, row.note) for row in rows] == [
        (1, "set 1: 5 of 5"),
        (1, "set 1: 4 of 5"),
        (1, "set 1: 3 of 5"),
        (1, "set 1: 2 of 5"),
        (1, "set 1: 1 of 5"),
    ]
    # nothing else of the job is another for it
    sizes = [
        sorted((p.name, *map(float, p.finished)) for p in one.assembly.parts if p.material)
        for one in (plain, job)
        if one.assembly is not None
    ]
    assert sizes[0] == sizes[1]
    paper = paperwork(job.resolved, job.assembly, job.loads)
    told = [label for label in paper.labels if label.matched]
    assert [(label.code, label.matched) for label in told] == [
        (f"P{n}-1", f"set 1: {6 - n} of 5") for n in range(1, 6)
    ]
    assert all(label.matched in label.readable for label in told)
    steps = shop_order(paper, job.assembly)
    (matched,) = (step for step in steps if step.work.startswith("Matched sets"))
    (sawn,) = (step for step in steps if step.work.startswith("Saw boards"))
    assert steps.index(matched) < steps.index(sawn)
    assert matched.marks == ("P1", "P2", "P3", "P4", "P5")
    assert {matched.page, sawn.page} == {"cutting plan"}


def test_the_sheets_say_it_and_stand_clear(tmp_path: Path) -> None:
    job = press(tmp_path, UP)
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    drawn = draw(job.resolved, job.assembly, job.loads, job.problems, mark="0000-0000", paper=paper)
    sets = {own.file: own.sheets for own in drawn.sets}
    texts = {
        file: " ".join(getattr(e, "text", "") for sheet in sheets for e in sheet.elements)
        for file, sheets in sets.items()
    }
    assert "set 1: 2 of 5" in texts["shop/labels"]
    assert "point to the top" in texts["shop/cutting-plan"]
    plan = sets["shop/cutting-plan"]
    assert [fault for sheet in plan for fault in audit(sheet)] == []
    triangles = [
        element.points
        for sheet in plan
        for element in sheet.elements
        if len(getattr(element, "points", ())) == 3
        and getattr(element, "view", "").startswith("sheet")
    ]
    assert len(triangles) == 1
    # on leaf E, the lowest, its left side comes from under the stile where it is 9 in: it rises
    # 1825 over half of 644, so 9 x 1825 / 322 = 51.01 over the panel's foot, which is 60 - 9 up
    slices = [
        (element, sheet)
        for sheet in sets["shop/drawings"]
        for element in sheet.elements
        if getattr(element, "layer", "") == "hatch" and getattr(element, "view", "") == "leaf E"
    ]
    (view,) = {view for _, sheet in slices for view in sheet.views if view.name == "leaf E"}
    (x0, y0), (x1, y1) = view.at((80.0, 51 + 9 * 1825 / 322)), view.at((80.0, 0.0))
    assert x0 == x1
    ends = [point for element, _ in slices for point in getattr(element, "points", ())]
    assert any(x == pytest.approx(x0) and y == pytest.approx(y0) for x, y in ends), ends
    assert all(y > y1 for _, y in ends)
    # its point is at the end that was the top: right, where the grain runs to
    xs = [x for x, _ in triangles[0]]
    assert xs[2] > xs[0] == xs[1]


def test_a_set_too_long_comes_out_of_two_blanks(tmp_path: Path) -> None:
    job = press(tmp_path, veneered("1824.5 x 1220"))
    (lot,) = (lot for lot in lots_of(job) if lot.matched)
    # three drawers in one, and the pair side by side in another
    assert [(one.name, len(one.rows)) for one in lot.matched] == [("set 1a", 3), ("set 1b", 1)]
    assert lot.matched[0].piece.length == 3 * 118 + 2 * 4
    assert read_back(job) == ()


@pytest.mark.parametrize(
    ("swap", "says"),
    [
        (("P5, P4, P3", "P4, P5, P3"), "set 1 gives P4 P5 P3 P2 P1, and they stand P5 P4 P3 P2 P1"),
        (("set 1", "strip"), "set 1 goes on one sheet, and has 0 blanks"),
        (("set 1", "set 7"), "there is no such piece as set 7"),
    ],
)
def test_a_plan_that_breaks_a_set_is_found(
    tmp_path: Path, swap: tuple[str, str], says: str
) -> None:
    faults = "\n".join(read_back(press(tmp_path, UP), swap))
    assert says in faults, faults


@settings(max_examples=12, deadline=None)
@given(
    heights=st.lists(st.integers(150, 320), min_size=1, max_size=5),
    pair=st.booleans(),
    width=st.integers(420, 1100),
)
def test_any_stack_comes_out_of_one_blank_in_the_order_it_stands(
    tmp_path_factory: pytest.TempPathFactory, heights: list[int], pair: bool, width: int
) -> None:
    fronts = ", ".join(
        ["door pair: rest" if pair else "door: rest", *(f"drawer: {high}" for high in heights)]
    )
    lines = {
        **veneered("2900 x 1220"),
        FRONTS: f"[{fronts}]",
        "cabinet press: 789": f"cabinet press: {width}",
    }
    lines["widths: {middle: 800}"] = f"widths: {{middle: {width + 11}}}"
    if not pair:
        lines[f"[{fronts}]"] = f"[{fronts}]".replace("door: rest", "{door: rest, hinge side: left}")
    job = press(tmp_path_factory.mktemp("press"), lines)
    (lot,) = (lot for lot in lots_of(job) if lot.matched)
    (one,) = lot.matched
    laid = [blank for sheet in lot.plan.sheets for blank in sheet.blanks]
    assert [blank.piece for blank in laid] == [one.piece]
    assert read_back(job) == ()
    # the solids, from the foot up: what stands lower lies nearer the blank's low end
    assert job.assembly is not None
    foot = {
        part.mark: group.placement.origin[2] + part.placement.origin[2]
        for group in job.assembly.groups
        for part in group.parts
        if part.matched
    }
    (sheet,) = (sheet for sheet in lot.plan.sheets if sheet.blanks)
    lie = {s.piece.mark: s.area.x for s in sheet.pieces if s.piece.mark in foot}
    assert len(lie) == len(foot)
    assert sorted(lie, key=lambda mark: (lie[mark], mark)) == sorted(
        foot, key=lambda mark: (foot[mark], mark)
    )
