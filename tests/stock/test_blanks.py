"""Blanks of matched sets: one piece of one sheet, sawn apart in order, whatever lies beside it."""

from __future__ import annotations

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from parametric.trade.stock.blanks import InBlank, SheetPiece, blank, in_order
from parametric.trade.stock.sheet_plan import SheetPlan, SheetStock
from parametric.trade.stock.sheets import plan_sheets
from tests.stock.replay import faults_of_sheets

SHEET = SheetStock(length=2440.0, width=1220.0)


def piece(mark: str, length: float, width: float, count: int = 1) -> SheetPiece:
    return SheetPiece(mark=mark, length=length, width=width, count=count)


def row(*pieces: tuple[str, float, float, float]) -> list[InBlank]:
    return [InBlank(piece=piece(mark, long, wide), at=at) for mark, long, wide, at in pieces]


def sound(
    blanks: list[SheetPiece], others: list[SheetPiece], sheet: SheetStock, kerf: float
) -> SheetPlan:
    """Every cut right across, every piece once, and each blank's in order out of its own place."""
    plan = plan_sheets([*blanks, *others], sheet, kerf=kerf)
    each = [one for own in blanks for one in in_order(own.rows)]
    assert faults_of_sheets(plan, [*each, *others], sheet, (), kerf) == []
    laid = [(sheet, own) for sheet in plan.sheets for own in sheet.blanks]
    assert sorted(own.piece.mark for _, own in laid) == sorted(own.mark for own in blanks)
    for sawn, own in laid:
        area, places = own.area, {one.piece.mark: one.area for one in sawn.pieces}
        first = next(cut for cut in sawn.cuts if cut.of == area)
        # the blank is cut free whole: the saw makes it before it makes any of its pieces
        freed = [cut.number for cut in sawn.cuts if area in (cut.first, cut.second)]
        assert all(number < first.number for number in freed)
        assert freed or area == sawn.whole
        x = area.x
        for line in own.piece.rows:
            y = area.y
            for one in line:
                at = places[one.piece.mark]
                assert at.x == pytest.approx(x, abs=1e-5)
                assert at.y >= y - 1e-5
                # no farther from its line than a strip that the saw leaves nothing of
                assert abs(at.y - area.y - one.at) <= kerf + 1.0 + 1e-5
                y = at.y + at.width + kerf
            x += line[0].piece.length + kerf
        assert x - kerf == pytest.approx(area.x + area.length, abs=1e-5)
    return plan


def test_a_stack_of_four_takes_the_kerf_between_and_no_more() -> None:
    # 3 drawers 118 high and a pair of doors 698.5: 3 x 118 + 698.5 + 3 x 4 = 1064.5;
    # across, the pair's panels keep to the outer edges of the drawers': 644 - 249.5 = 394.5
    rows = [
        *(row((f"P{n}", 118.0, 644.0, 0.0)) for n in (1, 2, 3)),
        row(("P4", 698.5, 249.5, 0.0), ("P5", 698.5, 249.5, 394.5)),
    ]
    own = blank("set 1", rows, kerf=4.0)
    assert (own.length, own.width) == (1064.5, 644.0)
    plan = sound([own], [], SHEET, 4.0)
    (sheet,) = plan.sheets
    at = {one.piece.mark: (one.area.x, one.area.y) for one in sheet.pieces}
    assert at == {
        "P1": (0.0, 0.0),
        "P2": (122.0, 0.0),
        "P3": (244.0, 0.0),
        "P4": (366.0, 0.0),
        "P5": (366.0, 394.5),
    }
    # what is ripped out between the pair: 644 - 2 x 249.5 - 2 x 4 = 137
    assert (698.5, 137.0) in [(rest.length, rest.width) for rest in sheet.rests]
    # two cuts free the blank, each right across what there is
    assert {(cut.way, cut.at) for cut in sheet.cuts[:2]} == {("rip", 644.0), ("crosscut", 1064.5)}


def test_what_is_too_narrow_to_rip_out_is_left_away() -> None:
    rows = [row(("P1", 400.0, 300.0, 0.0), ("P2", 400.0, 300.0, 304.5))]
    own = blank("set 1", rows, kerf=4.0)
    # 304.5 - 300 = 4.5: the saw takes 4, and no strip of 0.5 is left to rip out
    assert own.width == 300.0 + 4.0 + 300.0
    sound([own], [], SHEET, 4.0)


def test_a_whole_sheet_may_be_one_blank() -> None:
    rows = [row((f"P{n}", 809.0, 1196.0, 0.0)) for n in range(3)]
    own = blank("set 1", rows, kerf=6.5)
    assert (own.length, own.width) == (2440.0, 1196.0)
    plan = sound([own], [], SHEET, 6.5)
    assert plan.bought == 1


@st.composite
def sets(draw: st.DrawFn) -> list[SheetPiece]:
    """Blanks of stacks of fronts, some with pairs, all of which go on a sheet."""
    kerf, found = draw(st.sampled_from([0.0, 3.2, 4.0])), []
    for number in range(draw(st.integers(1, 3))):
        wide = draw(st.integers(120, 500)) * 2.0
        rows = []
        for line in range(draw(st.integers(2, 5))):
            long = draw(st.integers(100, 470)) * 1.0
            name = f"S{number}-{line}"
            if draw(st.booleans()):
                rows.append(row((name, long, wide, 0.0)))
            else:
                half = draw(st.integers(40, int(wide // 2) - 4)) * 1.0
                rows.append(
                    row((f"{name}a", long, half, 0.0), (f"{name}b", long, half, wide - half))
                )
        found.append(blank(f"set {number + 1}", rows, kerf=kerf))
    return found


@settings(max_examples=60, deadline=None)
@given(
    blanks=sets(),
    others=st.lists(
        st.tuples(st.integers(100, 2400), st.integers(50, 1200), st.integers(1, 4)), max_size=5
    ),
    kerf=st.sampled_from([0.0, 3.2, 4.0]),
)
def test_sets_stay_together_in_any_plan(
    blanks: list[SheetPiece], others: list[tuple[int, int, int]], kerf: float
) -> None:
    own = [blank(one.mark, one.rows, kerf=kerf) for one in blanks]
    loose = [piece(f"C{n}", float(a), float(b), count) for n, (a, b, count) in enumerate(others)]
    sound(own, loose, SHEET, kerf)
