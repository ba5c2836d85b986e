"""A panel of sheet material is larger than the sheet it is to be sawn from.

Why: its grain runs along the sheet, and a joint in a board panel shows. A board without a
grain may be sawn either way round; what is trimmed off a sheet's edges is no use.
Example: a panel 2500 long does not come out of a sheet 2440 x 1220.
Source: geometry; the sheet is the catalogue's, or the `board` block's.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.boards import Board
from parametric.figures import Figure, exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def panel_larger_than_sheet(job: Checked) -> Iterator[Problem]:
    """Stop: no sheet is long or wide enough."""
    for _, field in job.panels:
        panel, board = field.panel, field.panel.material
        if not isinstance(board, Board):
            continue
        long, wide = (trimmed(size, job) for size in (board.sheet_length, board.sheet_width))
        if not board.grain and not (exceeds(panel.along, wide) or exceeds(panel.across, long)):
            continue
        for size, sheet, word in ((panel.along, long, "long"), (panel.across, wide, "wide")):
            if exceeds(size, sheet):
                yield Problem(
                    code="panel_larger_than_sheet",
                    level="stop",
                    message=f"The panel is {job.size(size)} {word} and a "
                    f"sheet of {board.name} is {job.size(sheet)}{trim_words(job)}.",
                    where=origin_line(board.sheet_length) or origin_line(panel.thickness),
                    about=size.name or "",
                    found=job.size(size),
                    allowed=f"{job.size(sheet)} or less",
                    fix="Write the larger sheet under `board`, turn the grain, or divide the "
                    "opening with a rail.",
                )


def trimmed(size: Figure, job: Checked) -> Figure:
    """What a trim of both edges leaves of a sheet."""
    trim = job.shop.blanks.sheet_trim
    return size - 2 * trim if trim else size


def trim_words(job: Checked) -> str:
    """Said after a sheet's size that is less than it is sold as."""
    trim = job.shop.blanks.sheet_trim
    return f" once {job.size(trim)} is trimmed off its edges" if trim else ""
