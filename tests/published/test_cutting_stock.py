"""Cutting plans against published instances whose optimum is known."""

from __future__ import annotations

import pytest

from parametric.trade.stock.bars import BarPiece, BarStock, plan_bars
from parametric.trade.stock.guillotine import Best, grid
from parametric.trade.stock.laying import Kind
from parametric.trade.stock.limited import Limited
from parametric.trade.stock.spots import Spot, pieces_of
from tests.stock.replay import faults_of_bars


def planned(stock: int, widths: list[int], demand: list[int]) -> int:
    pieces = [
        BarPiece(mark=str(width), length=width, count=count)
        for width, count in zip(widths, demand, strict=True)
    ]
    bars = [BarStock(length=stock)]
    plan = plan_bars(pieces, bars)
    assert faults_of_bars(plan, pieces, bars, 0.0) == []
    assert plan.proved
    return plan.bought


def test_thirteen_widths_from_rolls_of_5600() -> None:
    # Wikipedia, "Cutting stock problem", the worked example: 73 rolls, where first fit by
    # falling width takes 82. The lengths alone ask for 407160 / 5600 = 72.71.
    widths = [1380, 1520, 1560, 1710, 1820, 1880, 1930, 2000, 2050, 2100, 2140, 2150, 2200]
    demand = [22, 25, 12, 14, 18, 18, 20, 10, 12, 14, 16, 18, 20]
    assert sum(w * d for w, d in zip(widths, demand, strict=True)) == 407160
    assert planned(5600, widths, demand) == 73


def test_four_widths_from_rolls_of_100() -> None:
    # Chvatal, Linear Programming, 1983, ch. 13, the worked example (from memory): 453 rolls;
    # the linear programme asks for 452.25, first fit by falling width takes 485.
    assert planned(100, [45, 36, 31, 14], [97, 610, 395, 211]) == 453


GCUT1 = (
    (167, 184),
    (114, 118),
    (167, 152),
    (83, 140),
    (70, 86),
    (143, 166),
    (120, 160),
    (66, 148),
    (87, 141),
    (69, 165),
)


@pytest.mark.parametrize(("turns", "most"), [(False, 56460), (True, 58136)])
def test_ten_pieces_as_often_as_one_likes(turns: bool, most: int) -> None:
    # Beasley, Journal of the Operational Research Society 36 (1985) 297-306, gcut1: a sheet
    # 250 x 250, each piece worth its area; 56460 of 62500, and 58136 where pieces may be turned.
    kinds = [Kind(long=a, wide=b, count=9, turns=turns) for a, b in GCUT1]
    made = grid(kinds, 250, 250, 10**9)
    assert made is not None
    assert made.every_cut
    best = Best(made, [a * b for a, b in GCUT1])
    assert best.of(250, 250) == most
    top = best.cut_up(Spot(0, 0, 250, 250))
    laid = [GCUT1[spot.kind] for spot in pieces_of(top)]
    assert sum(a * b for a, b in laid) == most


CGCUT1 = (
    (8, 4, 2, 66),
    (3, 7, 1, 35),
    (8, 2, 3, 24),
    (3, 4, 5, 17),
    (3, 3, 2, 11),
    (3, 2, 2, 8),
    (2, 1, 1, 2),
)


def test_seven_pieces_no_oftener_than_there_are() -> None:
    # Christofides and Whitlock, Operations Research 25 (1977) 30-44, the first of their
    # instances (cgcut1): a sheet 15 x 10, pieces long, wide, at most, worth; 244.
    kinds = [Kind(long=a, wide=b, count=most, turns=False) for a, b, most, _ in CGCUT1]
    made = grid(kinds, 15, 10, 10**9)
    assert made is not None
    best = Best(made, [worth for *_, worth in CGCUT1])
    assert best.of(15, 10) > 244
    limited = Limited(best)
    assert limited.most(15, 10) == 244
    top = Spot(0, 0, 15, 10)
    assert limited.cut_up(top, 244)
    laid = [spot.kind for spot in pieces_of(top)]
    assert sum(CGCUT1[kind][3] for kind in laid) == 244
    assert all(laid.count(kind) <= CGCUT1[kind][2] for kind in laid)


@pytest.mark.parametrize(
    ("stock", "piece", "kerf", "pieces"),
    [(96 * 25.4, 24 * 25.4, 25.4 / 8, 3), (2440.0, 610.0, 3.2, 3), (2440.0, 610.0, 0.0, 4)],
)
def test_a_kerf_costs_the_last_piece(stock: float, piece: float, kerf: float, pieces: int) -> None:
    # floor((S + k) / (p + k)): (96 + 1/8) / (24 + 1/8) = 3.98, so 3; (2440 + 3.2) / 613.2 = 3.98
    wanted = [BarPiece(mark="S", length=piece, count=pieces + 1)]
    plan = plan_bars(wanted, [BarStock(length=stock)], kerf=kerf)
    assert sorted(len(bar.pieces) for bar in plan.bars) == [1, pieces]
    assert plan.proved
