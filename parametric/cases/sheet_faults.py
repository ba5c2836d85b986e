"""A sheet is seldom as thick as it is sold: whether anybody measured it, and whether that can be.

Boards sold as 3/4 in are 18.26 to 19.84 mm (PS 1), as 18 mm 17.1 to 18.7: a dado cut to what the
yard calls them holds the board loose, or not at all. Each is cut to what a gauge says.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from parametric.catalog.boards import Board, sold_between
from parametric.figures import Figure, Where, exceeds, origin_line
from parametric.names import join
from parametric.problems import Problem

Said = Callable[[float], str]
"""How a length is said, in the design's unit."""

_LOOSE = 0.3
"""A board that may be this much more or less than it is sold as is loose in what is cut to that,
mm. Common practice, no source."""
_MISREAD = 0.1
"""A part of what it is sold as: more than this off, and no standard known, it was read wrongly."""


def sheet_faults(
    board: Board, thickness: Figure, *, name: str, let_in: bool, said: Said, here: Where
) -> Iterator[Problem]:
    """What is to be said of the board of one case, or of several alike.

    Args:
        board: the board.
        thickness: what the case goes by, mm.
        name: of the case, or of all of them, as a sentence begins.
        let_in: whether dadoes are cut to that.
        said: how a length is said.
        here: the line of the case, or of the first.
    """
    if board.measured is not None and board.nominal is not None:
        yield from _misread(board, board.measured, board.nominal, said, here)
    elif let_in:
        yield _not_measured(board, thickness, name, said, here)


def _not_measured(board: Board, thickness: Figure, name: str, said: Said, here: Where) -> Problem:
    sold = sold_between(board.name, thickness)
    far = "is seldom exactly that"
    close = False
    if sold is not None:
        far = f"may be {said(sold.least)} to {said(sold.most)}"
        close = not exceeds(
            max(float(thickness) - sold.least, sold.most - float(thickness)), _LOOSE
        )
    return Problem(
        code="board_not_measured",
        level="note" if close else "caution",
        message=f"{name}: dadoes are cut {said(thickness)} wide, as the board is sold, and "
        f"{board.name} sold as {said(thickness)} {far}.",
        where=origin_line(thickness) or here,
        about=join(board.name, "thickness"),
        found=said(thickness),
        allowed="what a gauge says, on the sheets themselves",
        fix=f"Measure the sheets, and write it: board {board.name}: {{measured: ...}}.",
    )


def _misread(
    board: Board, measured: Figure, nominal: Figure, said: Said, here: Where
) -> Iterator[Problem]:
    sold = sold_between(board.name, nominal)
    if sold is None:
        off = abs(float(measured) - float(nominal)) / float(nominal) if float(nominal) else 0.0
        wrong, allowed = exceeds(off, _MISREAD), f"about {said(nominal)}"
    else:
        wrong = exceeds(sold.least, measured) or exceeds(measured, sold.most)
        allowed = f"{said(sold.least)} to {said(sold.most)} ({sold.source})"
    if wrong:
        yield Problem(
            code="board_measured_wrong",
            level="caution",
            message=f"{board.name} sold as {said(nominal)} was measured as {said(measured)}.",
            where=origin_line(measured) or here,
            about=board.name,
            found=said(measured),
            allowed=allowed,
            fix="Measure it again, at an edge that was not sanded, or write what it is sold as.",
        )
