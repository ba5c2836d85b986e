"""A board of a cabinet, of a run or of a drawer is larger than the sheet it is to be sawn from.

Why: its grain runs along the sheet. What lies across it instead shows its grain the other way;
a plinth or a filler in lengths shows a joint; nobody joins a side.
Example: a side 2500 long does not come out of a sheet 2440 x 1220; a back 2078 wide and 600 high
does, its grain level.
Source: geometry; the sheet is the catalogue's, or the `board` block's.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Where, exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.rules.panel_larger_than_sheet import trim_words
from parametric.trade.sheet_order import sheet_parts
from parametric.trade.sheet_pieces import SheetPart


def board_larger_than_sheet(cases: CheckedCases) -> Iterator[Problem]:
    """Stop where no sheet is large enough; a caution of what lies across or is joined.

    Panels of fronts are told by themselves.
    """
    job = cases.job
    panels = {field.name for leaf in job.resolved.leaves for field in leaf.panels}
    for part in sheet_parts(job.resolved, job.assembly):
        if part.row.names[0] in panels:
            continue
        if not part.fits:
            yield _too_large(cases, part)
        elif part.across:
            yield _across(cases, part)
        elif part.lengths > 1:
            yield _in_lengths(cases, part)


def _too_large(cases: CheckedCases, part: SheetPart) -> Problem:
    said, row = cases.said.wood, part.row
    is_long = exceeds(part.piece.length, part.long)
    size, sheet = (row.length, part.long) if is_long else (row.width, part.wide)
    return Problem(
        code="board_larger_than_sheet",
        level="stop",
        message=f"The {row.noun} {row.mark} is {said(size)} {'long' if is_long else 'wide'} and a "
        f"sheet of {part.board.name} is {said(sheet)}{trim_words(cases.job)}.",
        where=_where(cases, part),
        about=row.names[0],
        found=said(size),
        allowed=f"{said(sheet)} or less",
        fix=_what_to_do(row.noun),
    )


def _what_to_do(noun: str) -> str:
    if noun != "back":
        return "Write the larger sheet under `board`, or make the cabinet smaller."
    return (
        "Write the larger sheet under `board`; or let a partition or a fixed shelf stand where the "
        "back may be joined; or write `strip: 80` in the back, with as much room behind it (`from "
        "back`) as it is thick, and it is joined over a strip."
    )


def _across(cases: CheckedCases, part: SheetPart) -> Problem:
    said, row = cases.said.wood, part.row
    return Problem(
        code="board_lies_across",
        level="caution",
        message=f"The {row.noun} {row.mark}, {said(row.length)} long and {said(row.width)} wide, lies "
        f"across a sheet of {part.board.name}: its grain runs over its width.",
        where=_where(cases, part),
        about=row.names[0],
        found=f"{said(row.length)} x {said(row.width)}",
        allowed=f"{said(part.long)} x {said(part.wide)} or less",
        fix="Leave it where it does not show, or write the larger sheet under `board`.",
    )


def _in_lengths(cases: CheckedCases, part: SheetPart) -> Problem:
    said, row = cases.said.wood, part.row
    return Problem(
        code="board_in_lengths",
        level="caution",
        message=f"The {row.noun} {row.mark} is {said(row.length)} long and a sheet of "
        f"{part.board.name} is {said(part.long)}: it is sawn in {part.lengths} lengths of "
        f"{said(part.piece.length)} and joined.",
        where=_where(cases, part),
        about=row.names[0],
        found=said(row.length),
        allowed=f"{said(part.long)} or less in one",
        fix="Say so to the client, and let the joint stand under a front's edge; or write the longer "
        "sheet under `board`.",
    )


def _where(cases: CheckedCases, part: SheetPart) -> Where:
    return origin_line(part.board.sheet_length) or _near(cases, part.row.names[0])


def _near(cases: CheckedCases, name: str) -> Where:
    """The cabinet it is of, or the first of its run."""
    standing = cases.casework.cases
    own = (case for case in standing if name.startswith(f"{case.name} / "))
    return next(own, standing[0]).case.spec.here
