"""The board order: which sheets the panels of sheet material are sawn from, and how many.

Offcuts in stock go first; every other sheet is bought. What is sawn from which, in which
order, is the cutting plan's (`stock/`): pieces with a grain lie along the sheet, every cut
goes right across, a kerf between any two pieces.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from parametric.catalog.boards import Board
from parametric.catalog.shop import Offcut, Shop
from parametric.figures import Figure, named, plain
from parametric.model import Assembly
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.resolve.matched_fronts import MatchedSet, matched_sets
from parametric.resolve.panel_field import resolve_board
from parametric.trade.cutlist import CutRow, cut_list, of_sheets
from parametric.trade.matched_blanks import MatchedBlank, matched_blanks
from parametric.trade.sheet_pieces import SheetPart, sheet_part
from parametric.trade.stock.sheet_plan import SheetPlan, SheetStock
from parametric.trade.stock.sheets import plan_sheets

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class BoardLot:
    """One board of one thickness, mm: how many sheets, what is sawn from them, and how.

    `turned`: pieces may lie either way round.
    """

    board: str
    thickness: Figure
    sheet_length: Figure
    sheet_width: Figure
    trim: Figure
    kerf: Figure
    turned: bool
    sheets: Figure
    pieces: tuple[CutRow, ...]
    plan: SheetPlan
    matched: tuple[MatchedBlank, ...] = ()
    """Blanks among what is laid out, each sawn apart into the panels of a set."""


def board_order(resolved: Resolved, assembly: Assembly) -> tuple[BoardLot, ...]:
    """Everything of sheet material, by the board and the thickness it is sold as; thickest first."""
    sets = matched_sets(resolved.doors)
    return tuple(_lot(parts, resolved.shop, sets) for parts in _by_board(resolved, assembly))


def set_blanks(resolved: Resolved, assembly: Assembly) -> tuple[MatchedBlank, ...]:
    """The blanks of all matched sets, wherever they are laid."""
    sets, kerf = matched_sets(resolved.doors), float(resolved.shop.saw.kerf)
    if not sets:
        return ()
    lots = _by_board(resolved, assembly)
    return tuple(one for parts in lots for one in matched_blanks(sets, parts, kerf)[0])


def _by_board(resolved: Resolved, assembly: Assembly) -> list[list[SheetPart]]:
    """What is sawn from sheets, by the board and the thickness it is sold as; thickest first."""
    lots: dict[tuple[str, float], list[SheetPart]] = {}
    for part in sheet_parts(resolved, assembly):
        sold = round(float(part.board.sold_as(part.row.thickness)), 6)
        lots.setdefault((part.board.name, sold), []).append(part)
    return [own for _, own in sorted(lots.items(), key=lambda lot: (-lot[0][1], lot[0][0]))]


def sheet_parts(resolved: Resolved, assembly: Assembly) -> tuple[SheetPart, ...]:
    """Every row of the cut list that is sawn from sheets, as it lies on its own."""
    trim = resolved.shop.blanks.sheet_trim
    runs = () if resolved.casework is None else [run.name for run in resolved.casework.runs]
    boards: dict[str, Board] = {}
    found = []
    for row in of_sheets(cut_list(assembly)):
        board = boards.setdefault(row.material, resolve_board(resolved.design, row.material))
        joined = any(row.names[0].startswith(join(run, "")) for run in runs)
        found.append(sheet_part(row, board, trim, joined=joined))
    return tuple(found)


def _lot(parts: list[SheetPart], shop: Shop, sets: Sequence[MatchedSet]) -> BoardLot:
    board, rows = parts[0].board, [part.row for part in parts]
    place = join("board order", f"{board.name} {plain(Figure(rows[0].thickness))} mm")
    kerf = named("saw kerf", shop.saw.kerf)
    trim = named("sheet trim", shop.blanks.sheet_trim)
    thickness = named(join(place, "thickness"), board.sold_as(rows[0].thickness))
    blanks, others = matched_blanks(sets, parts, kerf)
    plan = plan_sheets(
        [*(blank.piece for blank in blanks), *(part.piece for part in others)],
        SheetStock(
            length=float(board.sheet_length), width=float(board.sheet_width), trim=float(trim)
        ),
        _in_stock(board.name, (thickness, rows[0].thickness), shop.offcuts),
        kerf=float(kerf),
    )
    # a piece that comes out of no sheet is a stop; until it is mended it counts for one
    bought = plan.bought + sum(piece.count for piece in plan.unfit)
    return BoardLot(
        board=board.name,
        thickness=thickness,
        sheet_length=named(join(place, "sheet length"), board.sheet_length),
        sheet_width=named(join(place, "sheet width"), board.sheet_width),
        trim=trim,
        kerf=kerf,
        turned=not board.grain,
        sheets=named(
            join(place, "sheets"),
            Figure(
                float(bought),
                op="sheets of the cutting plan for",
                args=(*(row.length for row in rows), *(row.width for row in rows), kerf, trim),
                unit="",
            ),
            "",
        ),
        pieces=tuple(rows),
        plan=plan,
        matched=blanks,
    )


def _in_stock(
    board: str, thicknesses: tuple[float, ...], offcuts: tuple[Offcut, ...]
) -> tuple[SheetStock, ...]:
    """What there is of a board, as thick as it is sold as or as it is; one size counted together."""
    counts: dict[tuple[float, float], int] = {}
    for one in offcuts:
        if one.material == board and any(abs(one.thickness - t) < _SAME for t in thicknesses):
            size = (float(one.length), float(one.width))
            counts[size] = counts.get(size, 0) + 1
    return tuple(
        SheetStock(length=long, width=wide, count=count) for (long, wide), count in counts.items()
    )
