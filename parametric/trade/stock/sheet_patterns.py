"""Sheets by patterns: whole cuttings of a sheet, each worked out when it is worth having.

Where sizes are few enough every cutting right across is looked at, and what the patterns show
is true of all of them. Where they are not, fewer places of cuts are looked at: the plan is as
sound, but shows nothing of other cuttings.
"""

from __future__ import annotations

import copy
from collections.abc import Sequence

from parametric.trade.stock.exact import PER_MM
from parametric.trade.stock.guillotine import Best, Grid, grid
from parametric.trade.stock.laying import Kind, Laid, Stocked
from parametric.trade.stock.limited import Limited, TooManyMixesError
from parametric.trade.stock.patterns import MOST_ROUNDS, Offer, generate
from parametric.trade.stock.programme import Column, solve
from parametric.trade.stock.proof import Proof
from parametric.trade.stock.spots import NOTHING, Spot, pieces_of, without_idle_cuts

MOST_ON_ONE = 16
"""More pieces than these make more mixes than can be followed."""
MOST_WORK = 25_000_000
"""Cuts of rectangles tried for one pattern: a quarter of a second."""
MOST_WORK_IN_ALL = 400_000_000
"""And for all patterns of a plan; a quarter of it where they show nothing."""


def planned_by_patterns(
    kinds: Sequence[Kind], stock: Sequence[Stocked], known: tuple[Laid, ...]
) -> tuple[tuple[Laid, ...], Proof]:
    """A plan from patterns, the known plan's among them, and what they show.

    Args:
        kinds: what is wanted.
        stock: offcuts with their counts, then the sheet that is bought.
        known: a plan.
    """
    long, wide = max(s.long for s in stock), max(s.wide for s in stock)
    made = grid(kinds, long, wide, MOST_WORK)
    nothing_shown = Proof(least=0, asks=0.0, by="nothing")
    if made is None:
        return known, nothing_shown
    search = _Search(kinds, stock, made)
    for sheet in known:
        search.keep(sheet.stock, copy.deepcopy(sheet.top))
    wanted, stocked = [kind.count for kind in kinds], [one.count for one in stock]
    full = len(stock) - 1
    found = generate(
        wanted,
        stocked,
        search.costs,
        search.offers,
        [*search.tops],
        enough=sum(sheet.stock == full for sheet in known),
        rounds=min(
            MOST_ROUNDS, MOST_WORK_IN_ALL // (made.work if made.every_cut else 4 * made.work)
        ),
    )
    solved = solve(found.columns, wanted, stocked, whole=True)
    way = search.laid(found.columns, solved.times)
    proof = Proof.of(found.bound, "patterns") if made.every_cut else nothing_shown
    return way or known, proof


def on_one_sheet(
    kinds: Sequence[Kind], sheet: Stocked, known: tuple[Laid, ...], shown: Proof
) -> tuple[tuple[Laid, ...], Proof]:
    """All pieces on one sheet, or proof that they never lie on one; else what was known.

    Every mix of pieces that can still become all of them is followed, exactly.
    """
    if sum(kind.count for kind in kinds) > MOST_ON_ONE:
        return known, shown
    made = grid(kinds, sheet.long, sheet.wide, MOST_WORK)
    if made is None or not made.every_cut:
        return known, shown
    # areas in square millionths are too long for the table; thousandths of them are not
    areas = [max(1, kind.long * kind.wide // PER_MM) for kind in kinds]
    top = Spot(0, 0, sheet.long, sheet.wide)
    mark = sum(kind.count * area for kind, area in zip(kinds, areas, strict=True))
    try:
        if Limited(Best(made, areas)).cut_up(top, mark):
            return (Laid(stock=0, top=top),), shown
    except TooManyMixesError:
        return known, shown
    two = Proof(least=2, asks=shown.asks, by="every pattern")
    return known, two


class _Search:
    """The patterns met so far, and how each is cut."""

    def __init__(self, kinds: Sequence[Kind], stock: Sequence[Stocked], made: Grid) -> None:
        self.kinds, self.stock, self.grid = kinds, stock, made
        self.costs = [int(one.count is None) for one in stock]
        self.tops: dict[Column, Spot] = {}

    def keep(self, stock: int, top: Spot) -> tuple[int, ...]:
        """Remember how a pattern is cut; returns what it gives."""
        counts = [0] * len(self.kinds)
        for spot in pieces_of(top):
            counts[spot.kind] += 1
        gives = tuple(counts)
        column = Column(cost=float(self.costs[stock]), gives=gives, stock=stock)
        self.tops.setdefault(column, top)
        return gives

    def offers(self, values: Sequence[int]) -> list[Offer]:
        """The best cutting of each kind of stock."""
        best = Best(self.grid, values)
        offers = []
        for number, one in enumerate(self.stock):
            top = Spot(0, 0, one.long, one.wide)
            worth = best.of(one.long, one.wide)
            best.cut_up(top)
            gives = self.keep(number, top)
            offers.append(Offer(gives=gives, stock=number, worth=worth, at_most=worth))
        return offers

    def laid(self, columns: Sequence[Column], times: Sequence[float]) -> tuple[Laid, ...] | None:
        """The sheets of a solution, pieces too many left uncut; None where it wants some."""
        left = [kind.count for kind in self.kinds]
        way = []
        for column, often in zip(columns, times, strict=True):
            for _ in range(round(often)):
                top = copy.deepcopy(self.tops[column])
                for spot in pieces_of(top):
                    if left[spot.kind]:
                        left[spot.kind] -= 1
                    else:
                        spot.kind = NOTHING
                without_idle_cuts(top)
                if any(True for _ in pieces_of(top)):
                    way.append(Laid(stock=column.stock, top=top))
        return None if any(left) else tuple(way)
