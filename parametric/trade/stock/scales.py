"""Why fewer sheets cannot do: lengths and widths measured on other scales.

A scale gives every size a share, so that whatever pieces lie one behind another on a sheet,
their shares never come to more than 1. With one scale along the sheet and one across it, the
products of the pieces on one sheet never come to more than 1 either; so as many sheets are
needed as all products add up to, however they are cut.

    sheet 1220 wide, pieces 580: two lie side by side and never three, so each may count
    for 1/2, though 580 is less than half of 1220.

Source: Fekete and Schepers, A general framework for bounds for higher-dimensional orthogonal
packing problems, Mathematical Methods of Operations Research 60 (2004) 311-329; scales with
rounded steps after Carlier, Clautiaux and Moukrim, Computers & Operations Research 34 (2007)
2223-2250 (both from memory). Whatever a scale came from, the fullest that pieces can lie is
worked out for it exactly before it is used.
"""

from __future__ import annotations

import itertools
from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from parametric.trade.stock.knapsack import best_filling
from parametric.trade.stock.laying import Kind, Stocked
from parametric.trade.stock.patterns import FINE, Offer, generate
from parametric.trade.stock.programme import Column
from parametric.trade.stock.proof import Proof

_STEPS = 12
_LEAST_SIZES = 12
"""So many sizes of a direction are tried as the least that counts, spread over all there are."""
_TRIED = 8
_ROUNDS = 6
_MOST_BENT = 60
"""Scales with more sizes than this are not bent: it takes longer than it is worth."""
_WEIGHT = 10_000


@dataclass(frozen=True, slots=True, kw_only=True)
class Direction:
    """Along or across: a sheet's room, and how many pieces can lie with each size that way."""

    room: int
    counts: Mapping[int, int]

    def fullest(self, shares: Mapping[int, int], room: int) -> int:
        """What pieces in a room are worth at most."""
        sizes = list(self.counts)
        values = [shares[size] for size in sizes]
        return best_filling(sizes, values, [self.counts[s] for s in sizes], room).at_most


@dataclass(frozen=True, slots=True, kw_only=True)
class Scale:
    """The share of every size; `full` is what a sheet holds at most."""

    shares: Mapping[int, int]
    full: int


def by_area(kinds: Sequence[Kind], sheet: Stocked, offcuts: Sequence[Stocked]) -> Proof:
    """All areas, the kerf in them, less what lies in stock."""
    area = sum(kind.long * kind.wide * kind.count for kind in kinds)
    area -= sum(one.long * one.wide * (one.count or 0) for one in offcuts)
    return Proof.of(max(Fraction(0), Fraction(area, sheet.long * sheet.wide)), "size")


def by_scales(
    kinds: Sequence[Kind], sheet: Stocked, offcuts: Sequence[Stocked], *, enough: int
) -> Proof:
    """The most sheets that two scales ask for; looks no further than `enough`.

    First the usual scales by pairs, then the best of them bent in turn to what serves most.
    """
    along, across = directions(kinds, sheet)
    pairs = sorted(
        itertools.product([*_usual(along)], [*_usual(across)]),
        key=lambda pair: -_counted(kinds, sheet, pair) / (pair[0].full * pair[1].full),
    )
    best = Proof(least=0, asks=0.0, by="scales")
    for pair in pairs[:_TRIED]:
        best = _more(best, _needed(kinds, sheet, offcuts, (along, across), pair))
        if best.least >= enough:
            return best
    # what may be turned counts as it counts least: there is no one scale to bend
    if any(kind.turns for kind in kinds) or max(len(along.counts), len(across.counts)) > _MOST_BENT:
        return best
    f, g = pairs[0]
    for _ in range(_ROUNDS):
        f = _bent(along, _weights(kinds, g.shares, along=True), f)
        g = _bent(across, _weights(kinds, f.shares, along=False), g)
        better = _more(best, _needed(kinds, sheet, offcuts, (along, across), (f, g)))
        if better.least >= enough or better.asks <= best.asks:
            return better
        best = better
    return best


def _more(a: Proof, b: Proof) -> Proof:
    return max(a, b, key=lambda proof: (proof.least, proof.asks))


def directions(kinds: Sequence[Kind], sheet: Stocked) -> tuple[Direction, Direction]:
    """The two of a sheet; a piece that may be turned counts in both with both its sizes."""
    along, across = Counter[int](), Counter[int]()
    for kind in kinds:
        for a, b, _ in kind.lies():
            along[a] += kind.count
            across[b] += kind.count
    return Direction(room=sheet.long, counts=along), Direction(room=sheet.wide, counts=across)


def _usual(direction: Direction) -> Iterator[Scale]:
    """Sizes as they are; small ones as nothing and the rest of their sheets as all; steps."""
    room, sizes = direction.room, sorted(direction.counts)
    tables = [{s: s for s in sizes}]
    halves = [s for s in sizes if 2 * s <= room]
    for least in halves[:: max(1, -(-len(halves) // _LEAST_SIZES))]:
        tables.append({s: 0 if s < least else room if s > room - least else s for s in sizes})
        tables.append({s: _by_pieces_of(s, least, room) for s in sizes})
    tables += [{s: _stepped(s, steps, room) for s in sizes} for steps in range(1, _STEPS + 1)]
    seen: list[dict[int, int]] = []
    for shares in tables:
        full = direction.fullest(shares, room)
        if full and shares not in seen:
            seen.append(shares)
            yield Scale(shares=shares, full=full)


def _stepped(size: int, steps: int, room: int) -> int:
    """Whole steps of the room where the size is none of them; else its own share."""
    whole, over = divmod((steps + 1) * size, room)
    return size * steps if over == 0 else whole * room


def _by_pieces_of(size: int, least: int, room: int) -> int:
    """In how many pieces of the least size it lies; one over half, by how few lie beside it."""
    if 2 * size > room:
        return 2 * (room // least - (room - size) // least)
    return room // least if 2 * size == room else 2 * (size // least)


Pair = tuple[Scale, Scale]


def _share(kind: Kind, pair: Pair, sheet: Stocked) -> int:
    """What one piece counts at least, whichever way it lies."""
    f, g = pair
    return min(
        f.shares[a] * g.shares[b] for a, b, _ in kind.lies() if a <= sheet.long and b <= sheet.wide
    )


def _counted(kinds: Sequence[Kind], sheet: Stocked, pair: Pair) -> int:
    return sum(kind.count * _share(kind, pair, sheet) for kind in kinds)


def _needed(
    kinds: Sequence[Kind],
    sheet: Stocked,
    offcuts: Sequence[Stocked],
    ways: tuple[Direction, Direction],
    pair: Pair,
) -> Proof:
    """Sheets to buy: what all pieces come to, less the most that each offcut can carry."""
    (along, across), (f, g) = ways, pair
    counted = _counted(kinds, sheet, pair)
    for one in offcuts:
        most = along.fullest(f.shares, one.long) * across.fullest(g.shares, one.wide)
        counted -= most * (one.count or 0)
    return Proof.of(Fraction(max(0, counted), f.full * g.full), "scales")


def _weights(kinds: Sequence[Kind], shares: Mapping[int, int], *, along: bool) -> Counter[int]:
    """What each size weighs in one direction when the other direction's scale is settled."""
    weights = Counter[int]()
    for kind in kinds:
        size, other = (kind.long, kind.wide) if along else (kind.wide, kind.long)
        weights[size] += kind.count * shares[other]
    most = max(weights.values(), default=1) or 1
    return Counter({size: -(-weight * _WEIGHT // most) for size, weight in weights.items()})


def _bent(direction: Direction, weights: Mapping[int, int], scale: Scale) -> Scale:
    """The scale on which the weighed sizes come to most: the prices of a plan in one direction."""
    sizes = list(direction.counts)
    most = [direction.counts[size] for size in sizes]

    def price(values: Sequence[int]) -> list[Offer]:
        best = best_filling(sizes, values, most, direction.room)
        return [Offer(gives=best.counts, stock=0, worth=best.value, at_most=best.at_most)]

    alone = [Column(cost=1.0, gives=tuple(int(s == size) for s in sizes)) for size in sizes]
    made = generate([weights[size] for size in sizes], [None], [1], price, alone, enough=FINE)
    shares = dict(zip(sizes, made.prices, strict=True))
    full = direction.fullest(shares, direction.room)
    return Scale(shares=shares, full=full) if full else scale
