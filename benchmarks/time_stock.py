"""Timings of cutting plans against the number of pieces. Nothing is asserted.

    python benchmarks/time_stock.py [MOST]

Pieces for sheets 2440 x 1220, kerf 4, the grain along, 20 of them up to MOST (400):

1. Cases: sides, tops, shelves, backs, fronts of drawers; a dozen sizes, as kitchens have.
2. Odd sizes: every piece another, as nobody has; the worst there is.
3. Bars of 3000 for the same pieces' lengths.
"""

from __future__ import annotations

import random
import sys
import time

from parametric.trade.stock.bars import BarPiece, BarStock, plan_bars
from parametric.trade.stock.sheet_plan import SheetPiece, SheetStock
from parametric.trade.stock.sheets import plan_sheets

NUMBERS = (20, 50, 100, 200, 400)
CASES = (
    *((720, 580), (720, 320), (564, 580), (564, 560), (564, 300), (864, 560), (1964, 580)),
    *((564, 100), (864, 100), (715, 397), (140, 797), (280, 797)),
)
SHEET = SheetStock(length=2440.0, width=1220.0)
Sizes = list[tuple[float, float]]


def cases(number: int) -> Sizes:
    """A dozen sizes, as often as chance has it."""
    chance = random.Random(number)
    return [chance.choice(CASES) for _ in range(number)]


def odd(number: int) -> Sizes:
    """No two alike."""
    chance = random.Random(number)
    return [(chance.randint(200, 2000), chance.randint(80, 700)) for _ in range(number)]


def timed(what: str, sizes: Sizes) -> None:
    """One plan of sheets and one of bars."""
    counts = {size: sizes.count(size) for size in sizes}
    pieces = [
        SheetPiece(mark=str(n), length=long, width=wide, count=count)
        for n, ((long, wide), count) in enumerate(counts.items())
    ]
    start = time.perf_counter()
    plan = plan_sheets(pieces, SHEET, kerf=4.0)
    seconds = time.perf_counter() - start
    ground = "proved" if plan.proved else f"at least {plan.proof.least}"
    print(f"{what:10} {len(sizes):4} pieces {seconds:7.2f} s {plan.bought:4} sheets, {ground}")
    lengths = [BarPiece(mark=p.mark, length=p.length, count=p.count) for p in pieces]
    start = time.perf_counter()
    bars = plan_bars(lengths, [BarStock(length=3000.0)], kerf=4.0)
    seconds = time.perf_counter() - start
    ground = "proved" if bars.proved else f"at least {bars.proof.least}"
    print(f"{'':10} {'':11} {seconds:7.2f} s {bars.bought:4} bars, {ground}")


def main(most: int) -> None:
    """All of them, the smallest first."""
    for number in NUMBERS:
        if number <= most:
            timed("cases", cases(number))
            timed("odd sizes", odd(number))


if __name__ == "__main__":
    main(int(sys.argv[1]) if len(sys.argv) > 1 else max(NUMBERS))
