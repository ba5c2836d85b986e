"""Sheets: every plan can be sawn as it says, and what is called proved is true."""

from __future__ import annotations

import functools
import subprocess
import sys
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from parametric.trade.stock.blanks import SheetPiece
from parametric.trade.stock.laying import Kind, Stocked, laid_freely, laid_in_strips
from parametric.trade.stock.sheet_plan import SheetPlan, SheetStock, kept
from parametric.trade.stock.sheets import plan_sheets
from tests.stock.replay import faults_of_sheets

SHEET = SheetStock(length=2440.0, width=1220.0)


def pieces_of(*rows: tuple[float, float, int], turns: bool = False) -> list[SheetPiece]:
    return [
        SheetPiece(mark=f"C{n}", length=a, width=b, count=count, turns=turns)
        for n, (a, b, count) in enumerate(rows, 1)
    ]


def sound(
    pieces: list[SheetPiece],
    sheet: SheetStock = SHEET,
    offcuts: tuple[SheetStock, ...] = (),
    kerf: float = 4.0,
) -> SheetPlan:
    plan = plan_sheets(pieces, sheet, offcuts, kerf=kerf)
    assert faults_of_sheets(plan, pieces, sheet, offcuts, kerf) == []
    assert plan.bought >= plan.proof.least
    return plan


WARDROBE = ((2273.0, 580.0, 6), (753.0, 580.0, 6), (752.0, 560.0, 8))
"""Sides, tops and bottoms, shelves of three cases 789 wide and 580 deep, of 18 mm board."""


def test_three_cases_of_a_wardrobe_take_six_sheets_and_never_five() -> None:
    # Two sides lie on a sheet (2 x 580 + 4 <= 1220 < 3 x 580), so a side counts for 1/2; of the
    # others three lie in a row (3 x 753 + 8 <= 2440 < 4 x 752) and two rows on a sheet: 1/6.
    # 6 / 2 + 14 / 6 = 5.33
    plan = sound(pieces_of(*WARDROBE))
    assert plan.bought == 6
    assert plan.proved
    assert plan.proof.asks == pytest.approx(6 / 2 + 14 / 6)


def test_a_trim_of_ten_costs_the_wardrobe_no_sheet() -> None:
    # 2440 - 20 = 2420 and 1220 - 20 = 1200 still hold 2273, 3 x 753 + 8 and 2 x 580 + 4
    plan = sound(pieces_of(*WARDROBE), SheetStock(length=2440.0, width=1220.0, trim=10.0))
    assert plan.bought == 6
    assert plan.proved


def test_offcuts_go_first_and_save_a_sheet() -> None:
    # an offcut 2440 x 600 holds a side, two of 800 x 600 a shelf each: 5 / 2 + 12 / 6 = 4.5
    offcuts = (
        SheetStock(length=2440.0, width=600.0, count=1),
        SheetStock(length=800.0, width=600.0, count=2),
    )
    plan = sound(pieces_of(*WARDROBE), SHEET, offcuts)
    assert plan.bought == 5
    assert plan.proved
    assert [sheet.times for sheet in plan.sheets if sheet.stock in offcuts] == [1, 2]


def test_rests_worth_keeping_are_told_and_others_are_not() -> None:
    plan = sound(pieces_of(*WARDROBE))
    rests = dict(kept(plan.sheets, 400.0, 100.0))
    assert [(rest.length, rest.width) for rest in rests] == [(1684.0, 1220.0)]
    # 2440 - 752 - 4 = 1684; the strips of 52 and 92 are too narrow, those of 163 too short
    assert 1684.0 == 2440 - 752 - 4


def test_48_pieces_with_their_grain_along_and_turned() -> None:
    rows = (
        *((720, 580, 8), (564, 580, 6), (564, 100, 6), (720, 564, 4), (2100, 580, 2)),
        *((564, 560, 8), (397, 715, 6), (797, 140, 4), (797, 280, 4)),
    )
    for turns in (False, True):
        plan = sound(pieces_of(*rows, turns=turns))
        # the areas with their kerfs ask for 5.18
        assert (plan.bought, plan.proved) == (6, True)


def test_seven_pieces_that_no_rule_lays_on_one_sheet_lie_on_one() -> None:
    rows = (
        *((640.0, 380.0, 1), (1110.0, 300.0, 1), (1180.0, 450.0, 1), (1280.0, 360.0, 1)),
        *((400.0, 490.0, 1), (700.0, 290.0, 1), (1160.0, 500.0, 1)),
    )
    plan = sound(pieces_of(*rows))
    assert (plan.bought, plan.proved) == (1, True)
    kinds = [Kind(long=round(a) + 4, wide=round(b) + 4, count=1, turns=False) for a, b, _ in rows]
    sheet = Stocked(long=2444, wide=1224, count=None)
    ways = (*laid_in_strips(kinds, [sheet]), *laid_freely(kinds, [sheet]))
    assert min(map(len, ways)) == 2


def test_a_piece_larger_than_the_sheet_is_told() -> None:
    plan = sound(pieces_of((2500.0, 300.0, 1), (600.0, 300.0, 1)))
    assert [piece.mark for piece in plan.unfit] == ["C1"]
    assert plan.bought == 1


SIZES = st.tuples(
    st.integers(40, 1000).map(lambda n: n * 2.5),
    st.integers(20, 500).map(lambda n: n * 2.5),
    st.integers(1, 6),
)


@settings(max_examples=60, deadline=None)
@given(
    rows=st.lists(SIZES, min_size=1, max_size=6),
    turns=st.booleans(),
    trim=st.sampled_from([0.0, 8.0]),
    kerf=st.sampled_from([0.0, 3.2, 4.0]),
    stocked=st.lists(
        st.tuples(st.integers(300, 2000), st.integers(200, 1000), st.integers(1, 2)), max_size=2
    ),
)
def test_every_plan_can_be_sawn(
    rows: list[tuple[float, float, int]],
    turns: bool,
    trim: float,
    kerf: float,
    stocked: list[tuple[int, int, int]],
) -> None:
    offcuts = tuple(
        SheetStock(length=float(a), width=float(b), count=n)
        for (a, b), n in {(a, b): n for a, b, n in stocked}.items()
    )
    sheet = SheetStock(length=2440.0, width=1220.0, trim=trim)
    sound(pieces_of(*rows, turns=turns), sheet, offcuts, kerf)


def fits_on_one(pieces: tuple[tuple[int, int], ...], long: int, wide: int) -> bool:
    """Whether pieces come out of one sheet, by trying every cut and every way to share them."""

    @functools.cache
    def fits(own: frozenset[int], long: int, wide: int) -> bool:
        if not own:
            return True
        if sum(pieces[i][0] * pieces[i][1] for i in own) > long * wide:
            return False
        if len(own) == 1:
            (i,) = own
            return pieces[i][0] <= long and pieces[i][1] <= wide
        members = sorted(own)
        for mask in range(1, 2 ** (len(members) - 1)):
            one = frozenset(m for n, m in enumerate(members) if mask >> n & 1)
            other = own - one
            if any(
                fits(one, x, wide) and fits(other, long - x, wide) for x in range(1, long)
            ) or any(fits(one, long, y) and fits(other, long, wide - y) for y in range(1, wide)):
                return True
        return False

    return fits(frozenset(range(len(pieces))), long, wide)


def fewest_sheets(pieces: tuple[tuple[int, int], ...], long: int, wide: int) -> int:
    """By trying every way to share pieces among sheets."""

    @functools.cache
    def fewest(own: frozenset[int]) -> int:
        if not own:
            return 0
        first, *others = sorted(own)
        best = len(own)
        for mask in range(2 ** len(others)):
            one = frozenset({first, *(m for n, m in enumerate(others) if mask >> n & 1)})
            if fits_on_one(tuple(pieces[i] for i in sorted(one)), long, wide):
                best = min(best, 1 + fewest(own - one))
        return best

    return fewest(frozenset(range(len(pieces))))


@settings(max_examples=40, deadline=None)
@given(rows=st.lists(st.tuples(st.integers(2, 9), st.integers(2, 6)), min_size=1, max_size=5))
def test_what_is_proved_is_what_trying_everything_finds(rows: list[tuple[int, int]]) -> None:
    plan = sound(
        [SheetPiece(mark=f"C{n}", length=a, width=b, count=1) for n, (a, b) in enumerate(rows)],
        SheetStock(length=10.0, width=7.0),
        kerf=0.0,
    )
    assert plan.unfit == ()
    fewest = fewest_sheets(tuple(rows), 10, 7)
    assert plan.proof.least <= fewest <= plan.bought
    if plan.proved:
        assert plan.bought == fewest


PLAN = """
import sys
from parametric.trade.stock.blanks import SheetPiece
from parametric.trade.stock.sheet_plan import SheetStock
from parametric.trade.stock.sheets import plan_sheets
rows = ((720, 580, 8), (564, 580, 6), (564, 100, 6), (720, 564, 4), (2100, 580, 2),
        (564, 560, 8), (397, 715, 6), (797, 140, 4), (797, 280, 4))
pieces = [SheetPiece(mark=f"C{n}", length=a, width=b, count=c) for n, (a, b, c) in enumerate(rows)]
plan = plan_sheets(pieces, SheetStock(length=2440, width=1220), kerf=4)
assert "highspy" in sys.modules
print(plan)
"""


def test_two_processes_make_the_same_plan_and_say_nothing_else(project: Path) -> None:
    said = [
        subprocess.run(
            [sys.executable, "-c", PLAN],
            cwd=project,
            capture_output=True,
            check=True,
            env={"PYTHONPATH": str(project), "PYTHONHASHSEED": seed},
        ).stdout
        for seed in ("1", "2")
    ]
    assert said[0] == said[1]
    assert said[0].startswith(b"SheetPlan(")


def test_a_small_job_needs_no_solver(project: Path) -> None:
    script = PLAN[: PLAN.index("rows =")] + (
        "pieces = [SheetPiece(mark='C1', length=753, width=580, count=6)]\n"
        "assert plan_sheets(pieces, SheetStock(length=2440, width=1220), kerf=4).proved\n"
        "assert 'highspy' not in sys.modules and 'numpy' not in sys.modules\n"
    )
    subprocess.run(
        [sys.executable, "-c", script], cwd=project, check=True, env={"PYTHONPATH": str(project)}
    )
