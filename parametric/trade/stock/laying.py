"""Pieces laid on sheets one after another, by many rules; the best of them is kept.

No one rule is best: which piece comes next, which place it takes, and which way the place is
then cut are tried against each other.

Source: guillotine placement as compared by Jylänki, A thousand ways to pack the bin, 2010
(from memory); common practice at the saw for strips.
"""

from __future__ import annotations

import heapq
import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Literal, assert_never, get_args

from parametric.trade.stock.spots import Spot, Way, cut


@dataclass(frozen=True, slots=True, kw_only=True)
class Kind:
    """Pieces of one size, whole and with the kerf; `turns` may lie either way."""

    long: int
    wide: int
    count: int
    turns: bool

    def lies(self) -> tuple[tuple[int, int, bool], ...]:
        """How it may lie: its size along and across the sheet, and whether it is turned."""
        if self.turns and self.long != self.wide:
            return ((self.long, self.wide, False), (self.wide, self.long, True))
        return ((self.long, self.wide, False),)

    def fits(self, long: int, wide: int) -> bool:
        """Whether one can be sawn from a room."""
        return any(a <= long and b <= wide for a, b, _ in self.lies())


@dataclass(frozen=True, slots=True, kw_only=True)
class Stocked:
    """A sheet of stock in whole sizes, one kerf added; `count` None is without limit."""

    long: int
    wide: int
    count: int | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Laid:
    """A sheet that was laid: which stock it is, and how it is cut."""

    stock: int
    top: Spot


_Scored = tuple[bool, int, int, int, int]
"""Whether it is on a sheet to be bought, how it is liked, sheet, place, which way it lies."""

Order = Literal["widest", "longest", "largest", "long side", "short side", "way round"]
"""Which piece comes next."""
Choice = Literal["width", "length", "closest", "area", "tightest"]
"""Of what a place may have least over."""
Split = Literal[
    "rip",
    "crosscut",
    "shorter side",
    "shorter rest",
    "longer rest",
    "largest rest",
    "even rests",
]
"""Which way a place is cut first."""

_STRIPS: tuple[Split, ...] = ("rip", "crosscut")
_FREELY: tuple[Split, ...] = (
    "shorter side",
    "shorter rest",
    "longer rest",
    "largest rest",
    "even rests",
)
_OFTEN: tuple[Order, ...] = ("widest", "longest", "largest")


def _first(order: Order, kind: Kind) -> tuple[int, int]:
    """The higher, the sooner."""
    match order:
        case "widest":
            return kind.wide, kind.long
        case "longest":
            return kind.long, kind.wide
        case "largest":
            return kind.long * kind.wide, kind.long
        case "long side":
            return max(kind.long, kind.wide), min(kind.long, kind.wide)
        case "short side":
            return min(kind.long, kind.wide), max(kind.long, kind.wide)
        case "way round":
            return kind.long + kind.wide, kind.long
        case _:
            assert_never(order)


def _over(choice: Choice, place: Spot, a: int, b: int) -> int:
    """What a place has over for a piece; the lower, the better."""
    match choice:
        case "width":
            return place.wide - b
        case "length":
            return place.long - a
        case "closest":
            return min(place.long - a, place.wide - b)
        case "area":
            return place.long * place.wide - a * b
        case "tightest":
            return max(place.long - a, place.wide - b)
        case _:
            assert_never(choice)


def _cut_first(split: Split, place: Spot, a: int, b: int) -> Way:
    """Rip or crosscut, when a piece lies in the corner of a place."""
    match split:
        case "rip" | "crosscut":
            return split
        case "shorter side":
            rip = place.long <= place.wide
        case "shorter rest":
            rip = place.long - a <= place.wide - b
        case "longer rest":
            rip = place.long - a > place.wide - b
        case "largest rest":
            rip = place.long * (place.wide - b) >= place.wide * (place.long - a)
        case "even rests":
            rip = place.long * (place.wide - b) < place.wide * (place.long - a)
        case _:
            assert_never(split)
    return "rip" if rip else "crosscut"


MOST_WORK = 40_000
"""Kinds times pieces: over this only the rules that serve most often are tried."""


def laid_in_strips(kinds: Sequence[Kind], stock: Sequence[Stocked]) -> Iterator[tuple[Laid, ...]]:
    """Plans that the saw is set for least often."""
    yield from _by_rules(kinds, stock, _STRIPS)


def laid_freely(kinds: Sequence[Kind], stock: Sequence[Stocked]) -> Iterator[tuple[Laid, ...]]:
    """Plans that turn from rip to crosscut as each place asks."""
    yield from _by_rules(kinds, stock, _FREELY)


def _by_rules(
    kinds: Sequence[Kind], stock: Sequence[Stocked], splits: Sequence[Split]
) -> Iterator[tuple[Laid, ...]]:
    work = len(kinds) * sum(kind.count for kind in kinds)
    orders = _OFTEN if work > MOST_WORK else get_args(Order)
    for order, choice, split in itertools.product(orders, get_args(Choice), splits):
        yield lay(kinds, stock, order, choice, split)


def lay(
    kinds: Sequence[Kind],
    stock: Sequence[Stocked],
    order: Order,
    choice: Choice,
    split: Split,
) -> tuple[Laid, ...]:
    """Lay every piece in the place that its rule likes best; offcuts before sheets.

    Args:
        kinds: all of which fit the stock that is without limit.
        stock: offcuts with their counts, and one kind without limit.
        order: which comes next.
        choice: which place it takes.
        split: which way the place is cut first.
    """
    endless = next(i for i, one in enumerate(stock) if one.count is None)
    sheets = [
        Laid(stock=i, top=Spot(0, 0, one.long, one.wide))
        for i, one in sorted(enumerate(stock), key=lambda s: (s[1].long * s[1].wide, s[0]))
        for _ in range(one.count or 0)
    ]
    in_stock = len(sheets)
    # open places by the sheet they are on
    places = dict(enumerate((n, sheet.top) for n, sheet in enumerate(sheets)))
    numbers = itertools.count(len(places))
    waiting = sorted(range(len(kinds)), key=lambda k: _first(order, kinds[k]), reverse=True)
    for at, kind in enumerate(waiting):
        lies = kinds[kind].lies()
        later = [kinds[k] for k in waiting[at:]]

        best = [
            one
            for number, (sheet, place) in places.items()
            for one in _scored(lies, choice, place, (sheet >= in_stock, sheet, number))
        ]
        heapq.heapify(best)
        for _ in range(kinds[kind].count):
            while best and best[0][3] not in places:
                heapq.heappop(best)
            if not best:
                room = stock[endless]
                sheets.append(Laid(stock=endless, top=Spot(0, 0, room.long, room.wide)))
                number = next(numbers)
                places[number] = (len(sheets) - 1, sheets[-1].top)
                own = (True, len(sheets) - 1, number)
                best = [*_scored(lies, choice, sheets[-1].top, own)]
                heapq.heapify(best)
            _, _, sheet, number, way = best[0]
            _, place = places.pop(number)
            a, b, turned = lies[way]
            for rest in _place(place, kind, a, b, turned, _cut_first(split, place, a, b)):
                if any(one.fits(rest.long, rest.wide) for one in later):
                    number = next(numbers)
                    places[number] = (sheet, rest)
                    for score in _scored(lies, choice, rest, (sheet >= in_stock, sheet, number)):
                        heapq.heappush(best, score)
    return tuple(sheet for sheet in sheets if sheet.top.parts or sheet.top.kind >= 0)


def _scored(
    lies: Sequence[tuple[int, int, bool]], choice: Choice, place: Spot, own: tuple[bool, int, int]
) -> Iterator[_Scored]:
    """How a place is liked, each way that a piece may lie in it."""
    bought, sheet, number = own
    for way, (a, b, _) in enumerate(lies):
        if a <= place.long and b <= place.wide:
            yield (bought, _over(choice, place, a, b), sheet, number, way)


def _place(place: Spot, kind: int, a: int, b: int, turned: bool, first_way: Way) -> list[Spot]:
    """Put a piece into the corner of a place; returns what is left beside and behind it."""
    rests = []
    own = place
    ways: tuple[tuple[Way, int], ...] = (("rip", b), ("crosscut", a))
    for way, at in ways if first_way == "rip" else reversed(ways):
        own, rest = cut(own, way, at)
        if rest is not None:
            rests.append(rest)
    own.kind, own.turned = kind, turned
    return rests
