"""The cutting plan of a job: its own parts, the house's stock, and what it says of both."""

from __future__ import annotations

from pathlib import Path

import pytest
from ruamel.yaml import YAML

from parametric.commands import lists
from parametric.job import Job, check
from parametric.trade.bar_order import bar_order
from parametric.trade.cutting_tables import (
    bar_proof_words,
    cutting_table,
    offcut_lines,
    offcuts_table,
    proof_words,
)
from parametric.trade.printed import printed
from parametric.trade.sheet_order import BoardLot, board_order
from parametric.trade.stock.blanks import SheetPiece
from parametric.trade.stock.sheet_plan import SheetStock
from parametric.trade.timber import timber_order
from tests.stock.replay import faults_of_sheets

ROOT = Path(__file__).parents[2]
CABINET = (ROOT / "templates/cabinet.yaml").read_text(encoding="utf-8")
STOCK = ROOT / "tests/designs/old/version-1-stock.yaml"
FEN_ROAD = ROOT / "examples/fen-road-wardrobe/design.yaml"
HOUSE = ROOT / "examples/house.yaml"


def job_of(folder: Path, text: str) -> Job:
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    return job


def boards_of(job: Job) -> tuple[BoardLot, ...]:
    assert job.resolved is not None
    assert job.assembly is not None
    return board_order(job.resolved, job.assembly)


def stops(job: Job) -> list[str]:
    return [p.message for p in job.problems if p.level == "stop"]


@pytest.fixture(scope="module")
def fen_road() -> Job:
    return check(FEN_ROAD, house=HOUSE, user_house=False)


def test_every_part_of_sheet_material_is_sawn_from_a_sheet(fen_road: Job) -> None:
    assert fen_road.assembly is not None
    wanted = sum(part.material.look == "board" for part in fen_road.assembly.parts)
    lots = boards_of(fen_road)
    given = sum(sheet.times * len(sheet.pieces) for lot in lots for sheet in lot.plan.sheets)
    assert given == wanted > 50
    for lot in lots:
        pieces = [
            SheetPiece(mark=r.mark, length=float(r.length), width=float(r.width), count=r.number)
            for r in lot.pieces
        ]
        sheet = SheetStock(length=2440.0, width=1220.0)
        assert faults_of_sheets(lot.plan, pieces, sheet, (), 4.0) == []


def test_the_wardrobe_takes_six_sheets_of_18_with_plinth_and_fillers(fen_road: Job) -> None:
    # By hand without plinth and fillers: 3 + 1 + 2 = 6; those are sawn from what is left of them.
    lots = {float(lot.thickness): lot for lot in boards_of(fen_road)}
    assert [int(lots[thick].sheets) for thick in (18.0, 15.0, 9.0, 8.0)] == [6, 1, 2, 3]
    assert all(lot.plan.proved for lot in lots.values())
    # three backs 767 wide: one a sheet, 2 x 767 + 4 = 1538 > 1220
    assert lots[8.0].plan.sheets[0].times == 3
    assert proof_words(lots[8.0]) == (
        "No: fewer than 3 cannot hold them; by how few lie side by side and end to end they ask "
        "for 3 sheets."
    )
    assert proof_words(lots[15.0]) == "One is needed."


def test_an_offcut_serves_before_a_sheet_and_only_in_its_thickness(tmp_path: Path) -> None:
    (lot,) = boards_of(job_of(tmp_path, CABINET))
    assert int(lot.sheets) == 1
    whole = "offcuts: {plywood: [1220 x 9 x 2440]}\n"
    (lot,) = boards_of(job_of(tmp_path, CABINET + whole))
    assert int(lot.sheets) == 0
    assert proof_words(lot) == "None is bought: the offcuts in stock hold everything."
    other = whole.replace(" 9 ", " 12 ")
    (lot,) = boards_of(job_of(tmp_path, CABINET + other))
    assert int(lot.sheets) == 1


def test_a_trim_and_a_kerf_are_the_house_s(tmp_path: Path) -> None:
    text = CABINET + "blanks: {sheet trim: 10}\nsaw: {kerf: 4.4}\n"
    job = job_of(tmp_path, text)
    (lot,) = boards_of(job)
    assert (float(lot.trim), float(lot.kerf)) == (10.0, 4.4)
    whole = lot.plan.sheets[0].whole
    assert (whole.x, whole.y, whole.length, whole.width) == (10.0, 10.0, 2420.0, 1200.0)
    assert job.resolved is not None
    rows = cutting_table([lot], printed(job.resolved)).rows
    assert {row[6] for row in rows} == {"10"}


def test_what_has_no_grain_may_be_turned(tmp_path: Path) -> None:
    assert not boards_of(job_of(tmp_path, CABINET))[0].turned
    loose = CABINET + "board plywood: {grain: none}\n"
    assert boards_of(job_of(tmp_path, loose))[0].turned
    fibre = CABINET.replace("board: plywood", "board: fibreboard")
    assert boards_of(job_of(tmp_path, fibre))[0].turned
    veneered = fibre + "board fibreboard: {grain: along}\n"
    assert not boards_of(job_of(tmp_path, veneered))[0].turned


def test_a_part_of_a_run_longer_than_a_sheet_is_sawn_in_lengths(tmp_path: Path) -> None:
    # the niche a metre wider: the plinth's front is 3367 and the top filler 3435.8 long
    text = FEN_ROAD.read_text(encoding="utf-8")
    wider = text.replace("2440, middle: 2431, top: 2436", "3440, middle: 3431, top: 3436")
    path = tmp_path / "design.yaml"
    path.write_text(wider, encoding="utf-8")
    job = check(path, house=HOUSE, user_house=False)
    assert stops(job) == []
    told = [p.message for p in job.problems if p.code == "board_in_lengths"]
    assert any("top filler" in words and "in 2 lengths of" in words for words in told)
    lots = boards_of(job)
    sawn = [one for lot in lots for sheet in lot.plan.sheets for one in sheet.pieces]
    rows = {row.mark: row for lot in lots for row in lot.pieces}
    for one in sawn:
        row = rows[one.piece.mark]
        lengths = 2 if row.length > 2440 else 1
        assert one.piece.length == pytest.approx(row.length / lengths)
        assert one.piece.count == row.number * lengths
    assert all(not lot.plan.unfit for lot in lots)


@pytest.mark.parametrize("units", ["mm", "inch"])
def test_what_is_left_may_stand_in_a_house_file_of_either_unit(tmp_path: Path, units: str) -> None:
    job = check(STOCK, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    lots = boards_of(job)
    bars = bar_order(job.resolved, timber_order(job.resolved, job.assembly))
    lines = offcut_lines(lots, bars, printed(job.resolved))
    assert {line.partition(":")[0] for line in lines} == {"birch ply", "white oak"}
    house = tmp_path / "house.yaml"
    body = "".join(f"  {line}\n" for line in lines)
    house.write_text(f"stilewright: 1\nunits: {units}\noffcuts:\n{body}", encoding="utf-8")
    kept = YAML(typ="safe").load(house.read_text(encoding="utf-8"))["offcuts"]
    design = tmp_path / "design.yaml"
    design.write_text(CABINET, encoding="utf-8")
    shop = check(design, house=house, user_house=False).shop
    assert shop is not None
    assert len(shop.offcuts) == sum(map(len, kept.values()))
    sizes = {
        (o.material, float(o.width), float(o.thickness), float(o.length)) for o in shop.offcuts
    }
    for row in offcuts_table(lots, bars, printed(job.resolved)).rows:
        assert (row[0], float(row[1]), float(row[2]), float(row[3])) in sizes


def test_bars_are_planned_where_the_yard_s_lengths_are_written() -> None:
    job = check(STOCK, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    order = timber_order(job.resolved, job.assembly)
    bars = bar_order(job.resolved, order)
    planed = [float(blank.number) for lot in order.lots for blank in lot.blanks]
    cut = sum(bar.times * len(bar.pieces) for lot in bars for bar in lot.plan.bars)
    assert cut == sum(planed)
    # the offcut, 150 x 52 x 1210, serves the rails of 115 + 6 and is cut first
    rails = next(lot for lot in bars if float(lot.width) == 121.0)
    assert rails.plan.bars[0].stock.length == 1210.0
    said = printed(job.resolved)
    assert "of length bought, and less cannot hold them" in bar_proof_words(rails, said)
    plain = check(ROOT / "tests/designs/old/version-1-board.yaml", user_house=False)
    assert plain.resolved is not None
    assert plain.assembly is not None
    assert bar_order(plain.resolved, timber_order(plain.resolved, plain.assembly)) == ()


@pytest.mark.parametrize(
    ("block", "said"),
    [
        ("offcuts: {plywood: [600 x 18]}", "takes three sizes"),
        ("offcuts: {plywood: 600 x 18 x 2440}", "list"),
        ("offcuts: {plywood: [600 x 0 x 2440]}", "An offcut of plywood has no size."),
        ("offcuts: [600 x 18 x 2440]", "takes keys on the lines under it, not a list"),
        ("timber tulipwood: {lengths: []}", "more than 0"),
        ("timber tulipwood: {lengths: [2400, 0]}", "more than 0"),
        ("board plywood: {grain: across}", '"across"'),
        ("blanks: {keep offcut: 100}", "takes two sizes"),
        ("blanks: {sheet trim: 1300}", "once 1300 is trimmed off its edges"),
    ],
)
def test_what_cannot_be_is_answered(tmp_path: Path, block: str, said: str) -> None:
    path = tmp_path / "design.yaml"
    path.write_text(f"{CABINET}{block}\n", encoding="utf-8")
    job = check(path, user_house=False)
    assert any(said in message for message in stops(job)), stops(job)
    assert all(p.where is not None for p in job.problems if p.level == "stop")


def test_a_job_without_glass_has_no_list_of_it(fen_road: Job) -> None:
    assert list(lists(fen_road)) == ["Cut list"]
    glazed = check(ROOT / "examples/mill-lane-study/design.yaml", house=HOUSE, user_house=False)
    assert list(lists(glazed)) == ["Cut list", "Glass"]
