"""The backs of cabinets: which block says how, and what board they are sawn from."""

from __future__ import annotations

from parametric.cases.back import BackSpec
from parametric.cases.back_pieces import SheetRoom
from parametric.cases.cabinet import CabinetSpec
from parametric.catalog.boards import Board
from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.resolve.panel_field import resolve_board


def back_of(design: Design, spec: CabinetSpec) -> BackSpec | None:
    """The back that a cabinet calls; None where it has none, or its own boards close it."""
    if spec.plan is not None:
        return None
    if spec.back is not None and str(spec.back) == "none":
        return None
    found = design.block("back", None if spec.back is None else str(spec.back))
    assert isinstance(found, BackSpec), "every job has one"
    return found


def back_board(design: Design, spec: CabinetSpec, back: BackSpec | None) -> Board | None:
    """What it is sawn from: its own board, else the case's."""
    return None if back is None else resolve_board(design, str(back.board or spec.board))


def sheet_room(board: Board | None, shop: Shop) -> SheetRoom | None:
    """How large a piece comes out of a sheet of it."""
    if board is None:
        return None
    off = 2 * shop.blanks.sheet_trim
    return SheetRoom(
        long=board.sheet_length - off if off else board.sheet_length,
        wide=board.sheet_width - off if off else board.sheet_width,
        turns=not board.grain,
    )
