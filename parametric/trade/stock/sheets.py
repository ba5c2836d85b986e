"""Sheets: pieces sawn from full sheets and from offcuts, every cut right across.

Rules of laying come first: they give a plan at once. When another ground shows that fewer
sheets cannot do, that is the end of it; else patterns are worked out one by one, and either a
plan with fewer sheets is found, or a better ground, or the doubt that is left is said.
"""

from __future__ import annotations

import dataclasses
import functools
import itertools
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence

from parametric.trade.stock.blanks import SheetPiece
from parametric.trade.stock.exact import piece_size, stock_size
from parametric.trade.stock.laying import Kind, Laid, Stocked, laid_freely, laid_in_strips
from parametric.trade.stock.proof import Proof
from parametric.trade.stock.scales import by_area, by_scales
from parametric.trade.stock.sheet_patterns import on_one_sheet, planned_by_patterns
from parametric.trade.stock.sheet_plan import (
    SawnSheet,
    SheetPlan,
    SheetStock,
    sawn_sheet,
    settled,
)
from parametric.trade.stock.spots import Spot, cuts_of, likeness, pieces_of, rests_of

_Way = tuple[Laid, ...]
_LAYING = (laid_in_strips, laid_freely)


def plan_sheets(
    pieces: Sequence[SheetPiece],
    sheet: SheetStock,
    offcuts: Sequence[SheetStock] = (),
    *,
    kerf: float = 0.0,
) -> SheetPlan:
    """Saw pieces from as few full sheets as can be, and from what is in stock before them.

    Args:
        pieces: what is wanted; one that comes out of no full sheet is `unfit`.
        sheet: what is bought, without limit.
        offcuts: what is in stock, each with its count.
        kerf: what the saw takes, mm.
    """
    return _plan(tuple(pieces), sheet, tuple(offcuts), kerf)


@functools.lru_cache(maxsize=32)
def _plan(
    pieces: tuple[SheetPiece, ...], sheet: SheetStock, offcuts: tuple[SheetStock, ...], kerf: float
) -> SheetPlan:
    """Kept for the readers of a pack, who ask for the plan again that its writers had."""
    saw = piece_size(kerf)
    stock = [*(_stocked(one, saw) for one in offcuts), _stocked(sheet, saw)]
    fits = [p for p in pieces if p.count and _kind(p, saw).fits(stock[-1].long, stock[-1].wide)]
    unfit = tuple(piece for piece in pieces if piece.count and piece not in fits)
    kinds = _kinds(fits, saw)
    if not kinds:
        nothing = Proof(least=0, asks=0.0, by="nothing")
        return SheetPlan(sheets=(), unfit=unfit, bought=0, proof=nothing)
    way, proof = _planned(kinds, stock)
    return SheetPlan(
        sheets=_written(way, kinds, fits, [*offcuts, sheet], kerf),
        unfit=unfit,
        bought=_bought(way, len(stock) - 1),
        proof=proof,
    )


def _kind(piece: SheetPiece, saw: int) -> Kind:
    return Kind(
        long=piece_size(piece.length) + saw,
        wide=piece_size(piece.width) + saw,
        count=piece.count,
        turns=piece.turns,
    )


def _kinds(pieces: Sequence[SheetPiece], saw: int) -> list[Kind]:
    """Pieces of one size are one kind, whatever their marks."""
    counts: Counter[tuple[int, int, bool]] = Counter()
    for piece in pieces:
        kind = _kind(piece, saw)
        counts[kind.long, kind.wide, kind.turns] += kind.count
    return [
        Kind(long=long, wide=wide, count=count, turns=turns)
        for (long, wide, turns), count in sorted(counts.items(), reverse=True)
    ]


def _stocked(one: SheetStock, saw: int) -> Stocked:
    off = 2 * stock_size(one.trim) - saw
    return Stocked(
        long=stock_size(one.length) - off, wide=stock_size(one.width) - off, count=one.count
    )


def _bought(way: Iterable[Laid], full: int) -> int:
    return sum(sheet.stock == full for sheet in way)


def _planned(kinds: Sequence[Kind], stock: Sequence[Stocked]) -> tuple[_Way, Proof]:
    """The best plan found, and how few would do."""
    full = len(stock) - 1
    sheet, offcuts = stock[full], stock[:full]
    best = min(map(_settled, laid_in_strips(kinds, stock)), key=lambda way: _liking(way, full))
    proof = by_area(kinds, sheet, offcuts)
    if _bought(best, full) > proof.least:
        scaled = by_scales(kinds, sheet, offcuts, enough=_bought(best, full))
        proof = scaled if scaled.least > proof.least else proof
    if _bought(best, full) > proof.least:
        freely = map(_settled, laid_freely(kinds, stock))
        best = min(itertools.chain((best,), freely), key=lambda way: _liking(way, full))
    if _bought(best, full) > proof.least:
        way, by_patterns = planned_by_patterns(kinds, stock, best)
        best = min((best, _settled(way)), key=lambda one: _liking(one, full))
        proof = by_patterns if by_patterns.least > proof.least else proof
    if not offcuts and _bought(best, full) > proof.least == 1:
        way, proof = on_one_sheet(kinds, sheet, best, proof)
        best = _settled(way)
    return _laid_again(best, kinds, stock), proof


def _laid_again(way: _Way, kinds: Sequence[Kind], stock: Sequence[Stocked]) -> _Way:
    """The same pieces on each sheet, each sheet by the rule that suits it best alone."""
    known: dict[tuple[object, ...], Laid] = {}
    for sheet in way:
        key = (sheet.stock, likeness(sheet.top))
        if key not in known:
            known[key] = _alone(sheet, kinds, stock[sheet.stock])
    return tuple(known[sheet.stock, likeness(sheet.top)] for sheet in way)


def _alone(sheet: Laid, kinds: Sequence[Kind], stock: Stocked) -> Laid:
    counts = Counter(spot.kind for spot in pieces_of(sheet.top))
    numbers = sorted(counts)
    own = [dataclasses.replace(kinds[k], count=counts[k]) for k in numbers]
    endless = [dataclasses.replace(stock, count=None)]
    best = (Laid(stock=0, top=sheet.top),)
    for way in map(_settled, itertools.chain(*(lay(own, endless) for lay in _LAYING))):
        if len(way) == 1:
            for spot in pieces_of(way[0].top):
                spot.kind = numbers[spot.kind]
            best = min(best, way, key=lambda one: _liking(one, 0))
    return Laid(stock=sheet.stock, top=best[0].top)


def _settled(way: _Way) -> _Way:
    return tuple(Laid(stock=sheet.stock, top=settled(sheet.top)) for sheet in way)


def _liking(way: _Way, full: int) -> tuple[int, int, int, int]:
    """Fewest sheets bought; then most from stock, fewest cuts where sheets alike are cut as one,
    and the largest rest.
    """
    alike = {likeness(sheet.top): sheet.top for sheet in way}
    from_stock = sum(
        spot.long * spot.wide
        for sheet in way
        if sheet.stock != full
        for spot in pieces_of(sheet.top)
    )
    rests = [rest.long * rest.wide for sheet in way for rest in rests_of(sheet.top)]
    return (
        _bought(way, full),
        -from_stock,
        sum(map(cuts_of, alike.values())),
        -max(rests, default=0),
    )


def _written(
    way: _Way,
    kinds: Sequence[Kind],
    pieces: Sequence[SheetPiece],
    stock: Sequence[SheetStock],
    kerf: float,
) -> tuple[SawnSheet, ...]:
    """Every sheet with the marks of its pieces, those cut alike together, offcuts first."""
    saw = piece_size(kerf)
    waiting: dict[tuple[int, int, bool], list[SheetPiece]] = {}
    for piece in pieces:
        kind = _kind(piece, saw)
        waiting.setdefault((kind.long, kind.wide, kind.turns), []).extend([piece] * piece.count)
    for own in waiting.values():
        own.sort(key=lambda piece: piece.mark)
    ordered = sorted(way, key=lambda sheet: (sheet.stock, -_used(sheet), likeness(sheet.top)))
    sheets = [
        sawn_sheet(sheet.top, stock[sheet.stock], 1, kerf, _marked(sheet.top, kinds, waiting))
        for sheet in ordered
    ]
    return tuple(
        dataclasses.replace(sheet, times=len([*alike]))
        for sheet, alike in itertools.groupby(sheets)
    )


def _used(sheet: Laid) -> int:
    return sum(spot.long * spot.wide for spot in pieces_of(sheet.top))


def _marked(
    top: Spot, kinds: Sequence[Kind], waiting: dict[tuple[int, int, bool], list[SheetPiece]]
) -> Iterator[SheetPiece]:
    """The next piece of its kind for every place of a sheet."""
    for spot in pieces_of(top):
        kind = kinds[spot.kind]
        yield waiting[kind.long, kind.wide, kind.turns].pop(0)
