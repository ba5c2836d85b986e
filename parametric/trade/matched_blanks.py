"""The blanks of matched fronts: the panels of a set out of one piece of one sheet, in their order.

A set that is longer than a sheet comes out of as few blanks as can be; its grain does not run on
from one of them into the next.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import count

from parametric.figures import exceeds
from parametric.names import leaf_letter
from parametric.resolve.matched_fronts import MatchedRow, MatchedSet
from parametric.trade.sheet_pieces import SheetPart
from parametric.trade.stock.blanks import InBlank, SheetPiece, blank


@dataclass(frozen=True, slots=True, kw_only=True)
class MatchedBlank:
    """One blank of a set: `name` is `set 1`, or of a set in several `set 1a`."""

    name: str
    of: MatchedSet
    rows: tuple[MatchedRow, ...]
    piece: SheetPiece


def matched_blanks(
    sets: Sequence[MatchedSet], parts: Sequence[SheetPart], kerf: float
) -> tuple[tuple[MatchedBlank, ...], tuple[SheetPart, ...]]:
    """What of a board is sawn in sets, and what is sawn piece by piece.

    Args:
        sets: of the job.
        parts: all that is sawn from one board of one thickness.
        kerf: what the saw takes, mm.
    """
    own = {part.row.names[0]: part for part in parts if part.row.matched is not None}
    blanks = tuple(
        found
        for one in sets
        if one.rows[0].panels[0].name in own
        for found in _blanks(one, own, kerf)
    )
    taken = {panel.name for found in blanks for row in found.rows for panel in row.panels}
    return blanks, tuple(part for part in parts if part.row.names[0] not in taken)


def _blanks(one: MatchedSet, parts: dict[str, SheetPart], kerf: float) -> list[MatchedBlank]:
    """As few as can be, each of as many rows as a sheet is long enough for."""
    together: list[list[MatchedRow]] = []
    for row in one.rows:
        sheet = parts[row.panels[0].name]
        if not _lies(_sawn(one.name, [row], parts, kerf), sheet):
            together.append([])
            continue
        if together and _lies(_sawn(one.name, [*together[-1], row], parts, kerf), sheet):
            together[-1].append(row)
        else:
            together.append([row])
    together = [rows for rows in together if sum(len(row.panels) for row in rows) > 1]
    several = len(together) > 1
    names = (f"{one.name}{leaf_letter(number).lower() if several else ''}" for number in count())
    return [
        MatchedBlank(name=name, of=one, rows=tuple(rows), piece=_sawn(name, rows, parts, kerf))
        for name, rows in zip(names, together, strict=False)
    ]


def _lies(piece: SheetPiece, part: SheetPart) -> bool:
    return not (exceeds(piece.length, part.long) or exceeds(piece.width, part.wide))


def _sawn(
    name: str, rows: Sequence[MatchedRow], parts: dict[str, SheetPart], kerf: float
) -> SheetPiece:
    edge = min(float(panel.at) for row in rows for panel in row.panels)
    return blank(
        name,
        [
            [
                InBlank(piece=parts[panel.name].piece, at=float(panel.at) - edge)
                for panel in sorted(row.panels, key=lambda panel: float(panel.at))
            ]
            for row in rows
        ],
        kerf=kerf,
    )
