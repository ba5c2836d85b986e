"""The board order: which sheets the panels of sheet material are sawn from, and how many.

Pieces lie in strips along the sheet, their grain along it, a kerf between any two:

    sheet ______________________________
         |  panel   |  panel   |        |  strip, as wide as its first piece
         |__________|__________|________|
         | panel |  panel |             |
         |_______|________|_____________|
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.boards import Board
from parametric.figures import Figure, exceeds, named, plain
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.trade.cutlist import CutRow, cut_list


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardLot:
    """One board of one thickness, mm: how many sheets, and what is sawn from them."""

    board: str
    thickness: Figure
    sheet_length: Figure
    sheet_width: Figure
    sheets: Figure
    pieces: tuple[CutRow, ...]


@dataclass(slots=True)
class _Strip:
    """A strip of one sheet: how wide, and how much of its length is taken."""

    wide: float
    taken: float


def board_order(resolved: Resolved, assembly: Assembly) -> tuple[BoardLot, ...]:
    """Every board that panels are sawn from, thickest first.

    Source: first fit in strips, the widest piece first; common practice, no source.
    """
    boards: dict[str, Board] = {}
    for leaf in resolved.leaves:
        for field in leaf.panels:
            if isinstance(field.panel.material, Board):
                boards[field.name] = field.panel.material
    lots: dict[tuple[str, float], list[CutRow]] = {}
    for row in cut_list(assembly):
        if row.names[0] in boards:
            lots.setdefault((row.material, round(float(row.thickness), 6)), []).append(row)
    kerf = named("saw kerf", resolved.shop.saw.kerf)
    return tuple(
        _lot(boards[rows[0].names[0]], rows, kerf)
        for _, rows in sorted(lots.items(), key=lambda lot: (-lot[0][1], lot[0][0]))
    )


def _lot(board: Board, rows: list[CutRow], kerf: Figure) -> BoardLot:
    place = join("board order", f"{board.name} {plain(Figure(rows[0].thickness))} mm")
    sizes = [(float(row.width), float(row.length)) for row in rows for _ in row.names]
    count = _sheets(sizes, float(board.sheet_length), float(board.sheet_width), float(kerf))
    return BoardLot(
        board=board.name,
        thickness=named(join(place, "thickness"), board.sold_as(rows[0].thickness)),
        sheet_length=named(join(place, "sheet length"), board.sheet_length),
        sheet_width=named(join(place, "sheet width"), board.sheet_width),
        sheets=named(
            join(place, "sheets"),
            Figure(
                float(count),
                op="sheets laid in strips",
                args=(*(row.length for row in rows), *(row.width for row in rows), kerf),
                unit="",
            ),
            "",
        ),
        pieces=tuple(rows),
    )


def _sheets(sizes: list[tuple[float, float]], long: float, wide: float, kerf: float) -> int:
    """How many sheets pieces of (width, length) take; one that fits none takes one of its own."""
    sheets: list[list[_Strip]] = []
    for width, length in sorted(sizes, reverse=True):
        strip = next(
            (
                one
                for sheet in sheets
                for one in sheet
                if not exceeds(width, one.wide) and not exceeds(one.taken + kerf + length, long)
            ),
            None,
        )
        if strip is not None:
            strip.taken += kerf + length
            continue
        new = _Strip(wide=width, taken=length)
        for sheet in sheets:
            if not exceeds(sum(one.wide + kerf for one in sheet) + width, wide):
                sheet.append(new)
                break
        else:
            sheets.append([new])
    return len(sheets)
