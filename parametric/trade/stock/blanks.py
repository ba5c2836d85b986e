"""Pieces that are sawn from one blank, in an order that is kept.

 ________________________________
|   1    |k|   2    |k|    4     |    crosscut into rows from its low end,
|        |k|        |k|----------|    each row ripped to its pieces
|________|k|________|k|____3_____|
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.trade.stock.exact import in_mm, piece_size
from parametric.trade.stock.spots import Spot


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPiece:
    """Pieces of one mark, mm: length along the grain; `turns` may lie across the sheet as well.

    A blank has `rows`: what it is sawn apart into.
    """

    mark: str
    length: float
    width: float
    count: int
    turns: bool = False
    rows: tuple[tuple[InBlank, ...], ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class InBlank:
    """A piece of a blank: `at` is its low edge from the blank's, mm."""

    piece: SheetPiece
    at: float


_STRIP = piece_size(1.0)
"""From this width on a strip between two pieces of a row is sawn out; what is narrower is left
away, and they lie so much closer."""


def blank(mark: str, rows: Sequence[Sequence[InBlank]], *, kerf: float) -> SheetPiece:
    """The blank that rows come out of, each with the kerf to the next.

    Args:
        mark: of the blank.
        rows: in their order from its low end, in each the pieces from its low edge.
        kerf: what the saw takes, mm.
    """
    saw = piece_size(kerf)
    return SheetPiece(
        mark=mark,
        length=in_mm(sum(_long(row, saw) for row in rows) - saw),
        width=in_mm(max(_ends(row, saw)[-1][1] for row in rows) - saw),
        count=1,
        rows=tuple(tuple(row) for row in rows),
    )


def places(piece: SheetPiece, kerf: float) -> Iterator[tuple[SheetPiece, float, float]]:
    """Every piece of a blank with its low corner, along and across from the blank's, mm."""
    saw, x = piece_size(kerf), 0
    for row in piece.rows:
        for one, (y, _) in zip(row, _ends(row, saw), strict=True):
            yield one.piece, in_mm(x), in_mm(y)
        x += _long(row, saw)


def in_order(rows: Sequence[Sequence[InBlank]]) -> Iterator[SheetPiece]:
    """The pieces as they are sawn off."""
    return (one.piece for row in rows for one in row)


def apart(spot: Spot, rows: Sequence[Sequence[InBlank]], saw: int) -> Spot:
    """A blank's place on a sheet, cut into its pieces and what lies between them."""
    parts: list[Spot] = []
    x = spot.x
    for row in rows:
        long = _long(row, saw)
        parts.append(_ripped(Spot(x, spot.y, long, spot.wide), row, saw))
        x += long
    if len(parts) == 1:
        return parts[0]
    return dataclasses.replace(spot, way="crosscut", parts=parts)


def _long(row: Sequence[InBlank], saw: int) -> int:
    return piece_size(row[0].piece.length) + saw


def _ends(row: Sequence[InBlank], saw: int) -> list[tuple[int, int]]:
    """Where each piece of a row begins, and ends with its kerf."""
    ends: list[tuple[int, int]] = []
    y = 0
    for one in row:
        at = piece_size(one.at)
        y = at if at - y >= saw + _STRIP else y
        ends.append((y, y + piece_size(one.piece.width) + saw))
        y = ends[-1][1]
    return ends


def _ripped(spot: Spot, row: Sequence[InBlank], saw: int) -> Spot:
    parts: list[Spot] = []
    y = 0
    for low, high in _ends(row, saw):
        if low > y:
            parts.append(Spot(spot.x, spot.y + y, spot.long, low - y))
        parts.append(Spot(spot.x, spot.y + low, spot.long, high - low, kind=0))
        y = high
    if y < spot.wide:
        parts.append(Spot(spot.x, spot.y + y, spot.long, spot.wide - y))
    return parts[0] if len(parts) == 1 else dataclasses.replace(spot, way="rip", parts=parts)
