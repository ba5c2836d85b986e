"""How a part of sheet material lies on the sheet it is sawn from.

Its grain runs along the sheet. What is too large for that lies across it where it can; a long
part of a run, a plinth's front or a filler, is sawn in equal lengths and joined.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from parametric.catalog.boards import Board
from parametric.figures import exceeds
from parametric.trade.cutlist import CutRow
from parametric.trade.stock.blanks import SheetPiece


@dataclass(frozen=True, slots=True, kw_only=True)
class SheetPart:
    """A row of the cut list as it is sawn: in how many lengths, whether across its grain, and
    whether it comes out of a sheet at all; `long` and `wide` are what a sheet's trim leaves, mm.
    """

    row: CutRow
    board: Board
    piece: SheetPiece
    lengths: int
    across: bool
    fits: bool
    long: float
    wide: float


def sheet_part(row: CutRow, board: Board, trim: float, *, joined: bool) -> SheetPart:
    """Lay a part on its sheet.

    Args:
        row: the part.
        board: what it is sawn from.
        trim: off every edge of a sheet, mm.
        joined: it may be sawn in lengths.
    """
    long, wide = (float(size) - 2 * float(trim) for size in (board.sheet_length, board.sheet_width))
    lengths = 1
    if joined and long > 0 and exceeds(row.length, long):
        lengths = math.ceil(float(row.length) / long - 1e-9)
    length, width = float(row.length) / lengths, float(row.width)
    along = not (exceeds(length, long) or exceeds(width, wide))
    turned = not (exceeds(width, long) or exceeds(length, wide))
    across = board.grain and turned and not along
    return SheetPart(
        row=row,
        board=board,
        piece=SheetPiece(
            mark=row.mark,
            length=length,
            width=width,
            count=row.number * lengths,
            turns=across or not board.grain,
        ),
        lengths=lengths,
        across=across,
        fits=along or (turned and (across or not board.grain)),
        long=long,
        wide=wide,
    )
