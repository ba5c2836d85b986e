"""Bars: sound on any job, and what is called proved is what an outside solver finds."""

from __future__ import annotations

import itertools

import numpy as np
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import LinearConstraint, milp

from parametric.trade.stock.bars import BarPiece, BarStock, plan_bars
from parametric.trade.stock.knapsack import best_filling
from tests.stock.replay import faults_of_bars

LENGTHS = st.integers(min_value=120, max_value=2400).map(lambda n: n / 2)
PIECES = st.lists(st.tuples(LENGTHS, st.integers(1, 9)), min_size=1, max_size=8)


def pieces_of(rows: list[tuple[float, int]]) -> list[BarPiece]:
    return [
        BarPiece(mark=f"R{n}", length=length, count=count)
        for n, (length, count) in enumerate(rows, 1)
    ]


@settings(max_examples=60, deadline=None)
@given(
    rows=PIECES,
    longs=st.lists(st.integers(1200, 3000), min_size=1, max_size=3, unique=True),
    stocked=st.lists(st.tuples(st.integers(300, 1500), st.integers(1, 3)), max_size=2),
    kerf=st.sampled_from([0.0, 3.2, 4.0]),
)
def test_every_plan_can_be_cut(
    rows: list[tuple[float, int]],
    longs: list[int],
    stocked: list[tuple[int, int]],
    kerf: float,
) -> None:
    pieces = pieces_of(rows)
    stock = [BarStock(length=a, count=n) for a, n in dict(stocked).items()]
    stock += [BarStock(length=length) for length in longs]
    plan = plan_bars(pieces, stock, kerf=kerf)
    assert faults_of_bars(plan, pieces, stock, kerf) == []
    assert plan.unfit == ()
    assert plan.bought >= plan.proof.least


def fewest_bars(lengths: list[int], room: int) -> int:
    """Which piece lies on which bar, as one programme: other than patterns in every way."""
    n = len(lengths)
    # x[i, b] for each piece and bar, then y[b]
    cost = np.concatenate([np.zeros(n * n), np.ones(n)])
    rows, low, high = [], [], []
    for i in range(n):
        row = np.zeros(n * n + n)
        row[i * n : (i + 1) * n] = 1
        rows.append(row)
        low.append(1.0)
        high.append(1.0)
    for b in range(n):
        row = np.zeros(n * n + n)
        for i in range(n):
            row[i * n + b] = lengths[i]
        row[n * n + b] = -room
        rows.append(row)
        low.append(-np.inf)
        high.append(0.0)
    found = milp(
        cost,
        constraints=LinearConstraint(np.array(rows), low, high),
        integrality=np.ones(n * n + n),
        bounds=(0, 1),
    )
    assert found.success
    return round(found.fun)


@settings(max_examples=25, deadline=None)
@given(lengths=st.lists(st.integers(20, 100), min_size=1, max_size=8))
def test_what_is_proved_is_what_another_programme_finds(lengths: list[int]) -> None:
    plan = plan_bars(
        [BarPiece(mark=f"S{n}", length=a, count=1) for n, a in enumerate(lengths)],
        [BarStock(length=100)],
    )
    assert plan.proved
    assert plan.bought == fewest_bars(lengths, 100)


@given(
    kinds=st.lists(
        st.tuples(st.integers(1, 20), st.integers(0, 30), st.integers(0, 3)),
        min_size=1,
        max_size=5,
    ),
    room=st.integers(0, 60),
)
def test_the_best_filling_is_the_best_of_all(kinds: list[tuple[int, int, int]], room: int) -> None:
    sizes, values, most = zip(*kinds, strict=True)
    every = itertools.product(*(range(count + 1) for count in most))
    best = max(
        sum(n * v for n, v in zip(counts, values, strict=True))
        for counts in every
        if sum(n * s for n, s in zip(counts, sizes, strict=True)) <= room
    )
    found = best_filling(sizes, values, most, room)
    assert found.value == found.at_most == best
    assert sum(n * s for n, s in zip(found.counts, sizes, strict=True)) <= room


def test_what_is_in_stock_goes_first_and_saves_a_bar() -> None:
    # 5 of 900 on 2440, kerf 3.2: floor(2443.2 / 903.2) = 2 a bar, 3 bars; one of them lies on
    # the offcut of 950, and 4 take 2
    pieces = [BarPiece(mark="S1", length=900.0, count=5)]
    bought = BarStock(length=2440.0)
    assert plan_bars(pieces, [bought], kerf=3.2).bought == 3
    plan = plan_bars(pieces, [BarStock(length=950.0, count=1), bought], kerf=3.2)
    assert plan.bought == 2
    assert plan.proved
    assert plan.bars[0].stock.length == 950.0
    # 950 - 900 - 3.2
    assert abs(plan.bars[0].left - 46.8) < 1e-9


def test_the_shorter_of_two_lengths_is_bought_where_it_does() -> None:
    # 2 of 1190 and 1 of 2380: one bar of 2400 each way; with lengths 2400 and 3600 to be had the
    # least is 2400 + 2400 = 4800, in steps of 1200: 4
    pieces = [BarPiece(mark="S", length=2380, count=1), BarPiece(mark="R", length=1190, count=2)]
    plan = plan_bars(pieces, [BarStock(length=2400), BarStock(length=3600)], kerf=4)
    assert (plan.bought, plan.step) == (4, 1200.0)
    assert plan.proved


def test_a_piece_longer_than_any_bar_is_told() -> None:
    long = BarPiece(mark="S", length=3100, count=2)
    plan = plan_bars([long], [BarStock(length=3000)])
    assert plan.unfit == (long,)
    assert plan.bought == 0
