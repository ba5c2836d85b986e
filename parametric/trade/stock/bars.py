"""Bars: pieces of one section sawn from lengths of stock, one after another.

|== 1380 ==|k|==== 1820 ====|k|==== 2200 ====|k| left |
"""

from __future__ import annotations

import itertools
import math
from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.trade.stock.exact import in_mm, piece_size, stock_size
from parametric.trade.stock.knapsack import best_filling
from parametric.trade.stock.patterns import MOST_ROUNDS, Offer, generate
from parametric.trade.stock.programme import Column, solve
from parametric.trade.stock.proof import Proof

MOST_WORK = 8000
"""Sizes times rounds of looking for patterns: beyond, a ground is as good as it has become."""
MOST_PATTERNS = 4000
"""So many patterns can all be looked at, where those that were generated leave a doubt."""


@dataclass(frozen=True, slots=True, kw_only=True)
class BarPiece:
    """Pieces of one mark, mm."""

    mark: str
    length: float
    count: int


@dataclass(frozen=True, slots=True, kw_only=True)
class BarStock:
    """A length that is to be had, mm: so many in stock, or as many as one likes to buy."""

    length: float
    count: int | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnBar:
    """Bars that are cut alike: pieces in the order they are cut, and what is left, mm."""

    stock: BarStock
    times: int
    pieces: tuple[BarPiece, ...]
    left: float


@dataclass(frozen=True, slots=True, kw_only=True)
class BarPlan:
    """Every bar; `unfit` are longer than any. `bought` and the proof count in steps of `step` mm:
    one bar, where only one length is to be bought.
    """

    bars: tuple[SawnBar, ...]
    unfit: tuple[BarPiece, ...]
    bought: int
    step: float
    proof: Proof

    @property
    def proved(self) -> bool:
        """True when no other plan buys less."""
        return self.bought <= self.proof.least


Pattern = tuple[int, tuple[int, ...]]
"""Which stock, and how many of each kind of piece."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Job:
    """The same in whole sizes, the kerf in them; lengths that differ, longest first."""

    sizes: tuple[int, ...]
    wanted: tuple[int, ...]
    rooms: tuple[int, ...]
    stocked: tuple[int | None, ...]
    costs: tuple[int, ...]


def plan_bars(
    pieces: Sequence[BarPiece], stock: Sequence[BarStock], *, kerf: float = 0.0
) -> BarPlan:
    """Saw pieces from bars, buying as little length as can be; what is in stock goes first.

    Args:
        pieces: what is wanted.
        stock: lengths in stock, each with its count, and lengths to buy; at least one to buy.
        kerf: what the saw takes between two pieces, mm.
    """
    step = math.gcd(*(stock_size(one.length) for one in stock if one.count is None))
    saw = piece_size(kerf)
    rooms = [stock_size(one.length) + saw for one in stock]
    fits = [p for p in pieces if p.count and piece_size(p.length) + saw <= max(rooms)]
    lengths = Counter[int]()
    for piece in fits:
        lengths[piece_size(piece.length) + saw] += piece.count
    sizes = tuple(sorted(lengths, reverse=True))
    job = _Job(
        sizes=sizes,
        wanted=tuple(lengths[size] for size in sizes),
        rooms=tuple(rooms),
        stocked=tuple(one.count for one in stock),
        costs=tuple(stock_size(one.length) // step if one.count is None else 0 for one in stock),
    )
    patterns, proof = _planned(job)
    return BarPlan(
        bars=_sawn(patterns, stock, fits, job, saw),
        unfit=tuple(piece for piece in pieces if piece.count and piece not in fits),
        bought=_cost(job, patterns),
        step=in_mm(step),
        proof=proof,
    )


def _cost(job: _Job, patterns: Sequence[Pattern]) -> int:
    return sum(job.costs[stock] for stock, _ in patterns)


def _planned(job: _Job) -> tuple[list[Pattern], Proof]:
    """The best plan found, and why less would not do."""
    if not job.sizes:
        return [], Proof(least=0, asks=0.0, by="nothing")
    ways = [_laid(job, best_fit=best_fit) for best_fit in (True, False)]
    best = min(ways, key=lambda way: _cost(job, way))
    proof = _by_length(job)
    if _cost(job, best) <= proof.least:
        return best, proof
    columns = [
        Column(cost=float(job.costs[stock]), gives=gives, stock=stock)
        for stock, gives in dict.fromkeys(itertools.chain(*ways))
    ]
    made = generate(
        job.wanted,
        job.stocked,
        job.costs,
        lambda values: _offers(job, values),
        columns,
        enough=_cost(job, best),
        rounds=min(MOST_ROUNDS, MOST_WORK // len(job.sizes)),
    )
    proof = max(proof, Proof.of(made.bound, "patterns"), key=lambda one: one.least)
    if _cost(job, best) <= proof.least:
        return best, proof
    best = _better(job, made.columns, best)
    if _cost(job, best) > proof.least and (every := _every_pattern(job)) is not None:
        solved = solve(every, job.wanted, job.stocked, whole=True)
        best = min(best, _patterns(job, every, solved.times), key=lambda way: _cost(job, way))
        if solved.finished:
            proof = Proof(least=_cost(job, best), asks=float(made.bound), by="every pattern")
    return best, proof


def _better(job: _Job, columns: Sequence[Column], best: list[Pattern]) -> list[Pattern]:
    solved = solve(columns, job.wanted, job.stocked, whole=True)
    return min(best, _patterns(job, columns, solved.times), key=lambda way: _cost(job, way))


def _by_length(job: _Job) -> Proof:
    """All pieces end to end, less what is in stock, in steps of what is bought."""
    whole = sum(size * count for size, count in zip(job.sizes, job.wanted, strict=True))
    best = 0.0
    worth = whole
    for room, count, cost in zip(job.rooms, job.stocked, job.costs, strict=True):
        if count is None:
            best = max(best, room / cost)
        else:
            worth -= count * room
    asks = max(0.0, worth / best)
    return Proof(least=math.ceil(asks - 1e-9), asks=asks, by="size")


def _offers(job: _Job, values: Sequence[int]) -> list[Offer]:
    offers = []
    for stock, room in enumerate(job.rooms):
        best = best_filling(job.sizes, values, job.wanted, room)
        offers.append(Offer(gives=best.counts, stock=stock, worth=best.value, at_most=best.at_most))
    return offers


def _laid(job: _Job, *, best_fit: bool) -> list[Pattern]:
    """Longest first, each into the bar with least room left for it, or into the first.

    What is in stock is filled first, the shortest first, each as full as it can be.
    """
    left = list(job.wanted)
    plan: list[Pattern] = []
    for stock in sorted(range(len(job.rooms)), key=lambda s: job.rooms[s]):
        for _ in range(job.stocked[stock] or 0):
            full = best_filling(job.sizes, job.sizes, left, job.rooms[stock])
            if not full.value:
                break
            plan.append((stock, full.counts))
            left = [count - taken for count, taken in zip(left, full.counts, strict=True)]
    buys = [s for s, count in enumerate(job.stocked) if count is None]
    longest = max(buys, key=lambda s: job.rooms[s])
    open_bars: list[tuple[int, list[int]]] = []
    for kind, size in enumerate(job.sizes):
        for _ in range(left[kind]):
            fits = [i for i, (room, _) in enumerate(open_bars) if room >= size]
            if fits:
                at = min(fits, key=lambda i: open_bars[i][0]) if best_fit else fits[0]
                room, gives = open_bars[at]
            else:
                at, room, gives = len(open_bars), job.rooms[longest], [0] * len(job.sizes)
                open_bars.append((room, gives))
            gives[kind] += 1
            open_bars[at] = (room - size, gives)
    return plan + [_in_the_shortest(job, buys, tuple(gives)) for _, gives in open_bars]


def _in_the_shortest(job: _Job, buys: Sequence[int], gives: tuple[int, ...]) -> Pattern:
    long = sum(size * count for size, count in zip(job.sizes, gives, strict=True))
    return min((s for s in buys if job.rooms[s] >= long), key=lambda s: job.costs[s]), gives


def _patterns(job: _Job, columns: Sequence[Column], times: Sequence[float]) -> list[Pattern]:
    """A plan from how often each pattern is cut; pieces too many are not cut."""
    left = list(job.wanted)
    plan: list[Pattern] = []
    buys = [s for s, count in enumerate(job.stocked) if count is None]
    for column, often in zip(columns, times, strict=True):
        for _ in range(round(often)):
            gives = tuple(min(a, b) for a, b in zip(column.gives, left, strict=True))
            left = [count - taken for count, taken in zip(left, gives, strict=True)]
            if not any(gives):
                continue
            bought = job.stocked[column.stock] is None
            plan.append(_in_the_shortest(job, buys, gives) if bought else (column.stock, gives))
    # a solver that stopped early may have left some out
    return plan if not any(left) else _laid(job, best_fit=True)


def _every_pattern(job: _Job) -> list[Column] | None:
    """All patterns that no piece could be added to; None where there are too many."""
    found: list[Column] = []
    for stock, room in enumerate(job.rooms):
        for gives in _full(job.sizes, job.wanted, room):
            found.append(Column(cost=float(job.costs[stock]), gives=gives, stock=stock))
            if len(found) > MOST_PATTERNS:
                return None
    return found


def _full(sizes: Sequence[int], most: Sequence[int], room: int) -> Iterator[tuple[int, ...]]:
    """Every way to fill a room so that nothing more fits; sizes fall."""
    if len(sizes) == 1:
        yield (min(most[0], room // sizes[0]),)
        return
    for count in range(min(most[0], room // sizes[0]), -1, -1):
        left = room - count * sizes[0]
        for rest in _full(sizes[1:], most[1:], left):
            unused = left - sum(s * c for s, c in zip(sizes[1:], rest, strict=True))
            if count == most[0] or unused < sizes[0]:
                yield (count, *rest)


def _sawn(
    patterns: Sequence[Pattern],
    stock: Sequence[BarStock],
    pieces: Sequence[BarPiece],
    job: _Job,
    saw: int,
) -> tuple[SawnBar, ...]:
    """Patterns with the marks of their pieces, those cut alike together, the fullest first."""
    waiting: dict[int, list[BarPiece]] = {}
    for piece in pieces:
        waiting.setdefault(piece_size(piece.length) + saw, []).extend([piece] * piece.count)
    cut: Counter[tuple[int, tuple[BarPiece, ...]]] = Counter()
    order = sorted(patterns, key=lambda one: (job.costs[one[0]] > 0, one[0], [-n for n in one[1]]))
    for one, gives in order:
        taken = tuple(
            waiting[size].pop(0)
            for size, count in zip(job.sizes, gives, strict=True)
            for _ in range(count)
        )
        cut[one, taken] += 1
    return tuple(
        SawnBar(
            stock=stock[one],
            times=times,
            pieces=taken,
            left=in_mm(
                max(0, job.rooms[one] - sum(piece_size(p.length) + saw for p in taken) - saw)
            ),
        )
        for (one, taken), times in cut.items()
    )
