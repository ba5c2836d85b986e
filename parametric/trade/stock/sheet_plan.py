"""A sheet's cutting plan as the saw follows it: each cut in its turn, mm from the sheet's corner.

y ^   ____________________________________
  |  |  rest                              |
  |  |------------------------------------|  2  rip, fence at 560
  |  |  C4        |  C4        | rest      |     4, 5  crosscut, fence at 752
  |  |------------------------------------|  1  rip, fence at 580
  |  |  C1                        | rest   |     3  crosscut, fence at 2273
  |  |____________________________________|
  +------------------------------------------> x, along the sheet
"""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.trade.stock.blanks import SheetPiece, apart, in_order
from parametric.trade.stock.exact import in_mm, piece_size, stock_size
from parametric.trade.stock.proof import Proof
from parametric.trade.stock.spots import NOTHING, Spot, Way, likeness


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetStock:
    """A sheet or an offcut, mm: so many in stock, or as many as one likes to buy.

    `trim` comes off each of its four edges before anything else.
    """

    length: float
    width: float
    count: int | None = None
    trim: float = 0.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Area:
    """A rectangle of a sheet, mm: its corner, its size along the sheet and across it."""

    x: float
    y: float
    length: float
    width: float


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetCut:
    """One cut, right across `of`: the fence stands at `at`, the first part's size.

    `second` is None where no more than the kerf or less is left.
    """

    number: int
    way: Way
    at: float
    of: Area
    first: Area
    second: Area | None


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnPiece:
    """A piece where it lies; `turned` has its length across the sheet."""

    piece: SheetPiece
    area: Area
    turned: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class SawnSheet:
    """Sheets that are cut alike: every cut, piece and rest, in the order of the saw.

    `blanks` lie where they are cut apart.
    """

    stock: SheetStock
    times: int
    whole: Area
    cuts: tuple[SheetCut, ...]
    pieces: tuple[SawnPiece, ...]
    rests: tuple[Area, ...]
    blanks: tuple[SawnPiece, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPlan:
    """All sheets, offcuts first; `unfit` come out of none. `bought` counts whole sheets."""

    sheets: tuple[SawnSheet, ...]
    unfit: tuple[SheetPiece, ...]
    bought: int
    proof: Proof

    @property
    def proved(self) -> bool:
        """True when fewer sheets cannot hold the pieces."""
        return self.bought <= self.proof.least


def settled(spot: Spot) -> Spot:
    """The same pieces from the same cuts, in the order that suits the saw; begins at 0, 0.

    Of parts that are cut off one after another those of one size stand together, the largest
    first, and what is left of them is one rest, at the far edge.
    """
    if spot.way is None:
        return Spot(0, 0, spot.long, spot.wide, kind=spot.kind, turned=spot.turned)
    way = spot.way
    parts = sorted(
        (settled(part) for part in _chain(spot, way) if _useful(part)),
        key=lambda part: (-_size(part, way), likeness(part)),
    )
    if left := _size(spot, way) - sum(_size(part, way) for part in parts):
        across = (spot.long, left) if way == "rip" else (left, spot.wide)
        parts.append(Spot(0, 0, *across))
    if len(parts) == 1:
        return parts[0]
    at = 0
    for part in parts:
        _move(part, *((0, at) if way == "rip" else (at, 0)))
        at += _size(part, way)
    return Spot(0, 0, spot.long, spot.wide, way=way, parts=parts)


def _move(spot: Spot, x: int, y: int) -> None:
    spot.x += x
    spot.y += y
    for part in spot.parts:
        _move(part, x, y)


def _chain(spot: Spot, way: Way) -> Iterator[Spot]:
    """Everything that is cut off the same way, one after another."""
    if spot.way != way:
        yield spot
        return
    for part in spot.parts:
        yield from _chain(part, way)


def _size(spot: Spot, way: Way) -> int:
    return spot.wide if way == "rip" else spot.long


def _useful(spot: Spot) -> bool:
    return spot.kind != NOTHING or any(_useful(part) for part in spot.parts)


def sawn_sheet(
    top: Spot, stock: SheetStock, times: int, kerf: float, pieces: Iterator[SheetPiece]
) -> SawnSheet:
    """Write a settled sheet down: its cuts numbered in the order they are made.

    Args:
        top: the sheet, settled.
        stock: what it is sawn from.
        times: how many are cut so.
        kerf: mm.
        pieces: which piece each place becomes, in the order they are met.
    """
    saw, trim = piece_size(kerf), stock_size(stock.trim)

    def area(spot: Spot) -> Area:
        return Area(
            x=in_mm(spot.x + trim),
            y=in_mm(spot.y + trim),
            length=in_mm(max(0, spot.long - saw)),
            width=in_mm(max(0, spot.wide - saw)),
        )

    cuts: list[SheetCut] = []
    sawn: list[SawnPiece] = []
    blanks: list[SawnPiece] = []
    rests: list[Area] = []
    numbers = itertools.count(1)

    def follow(spot: Spot, pieces: Iterator[SheetPiece]) -> None:
        if spot.way is None:
            if spot.kind != NOTHING:
                piece = next(pieces)
                own = SawnPiece(piece=piece, area=area(spot), turned=spot.turned)
                if piece.rows:
                    blanks.append(own)
                    follow(apart(spot, piece.rows, saw), in_order(piece.rows))
                else:
                    sawn.append(own)
            elif spot.long > saw and spot.wide > saw:
                rests.append(area(spot))
            return
        uncut = dataclasses.replace(spot)
        for part in spot.parts[:-1]:
            of, size = area(uncut), _size(part, spot.way)
            if spot.way == "rip":
                uncut = dataclasses.replace(uncut, y=uncut.y + size, wide=uncut.wide - size)
            else:
                uncut = dataclasses.replace(uncut, x=uncut.x + size, long=uncut.long - size)
            first = area(part)
            cuts.append(
                SheetCut(
                    number=next(numbers),
                    way=spot.way,
                    at=first.width if spot.way == "rip" else first.length,
                    of=of,
                    first=first,
                    second=area(uncut) if _size(uncut, spot.way) > saw else None,
                )
            )
        for part in spot.parts:
            follow(part, pieces)

    follow(top, pieces)
    return SawnSheet(
        stock=stock,
        times=times,
        whole=area(top),
        cuts=tuple(cuts),
        pieces=tuple(sawn),
        rests=tuple(rests),
        blanks=tuple(blanks),
    )


def kept(sheets: Sequence[SawnSheet], long: float, wide: float) -> Iterator[tuple[Area, int]]:
    """The rests worth keeping, and how many of each there are, in the order they come.

    Args:
        sheets: sawn.
        long: the least length along the grain, mm.
        wide: the least width, mm.
    """
    for sheet in sheets:
        for rest in sheet.rests:
            if is_kept(rest, long, wide):
                yield rest, sheet.times


def is_kept(rest: Area, long: float, wide: float) -> bool:
    """True when a rest is large enough to keep."""
    return rest.length >= long - 1e-6 and rest.width >= wide - 1e-6
