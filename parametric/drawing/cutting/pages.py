"""The pages of a cutting plan: what is bought and why no less, a page for every sheet, the bars."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.cutting.bar_view import bar_blocks
from parametric.drawing.cutting.sheet_view import MARGIN, OVER, draw_sheet_view, grain_arrow
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, TITLE, wrap
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper, scale_words
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.ruled import Heading, Row, Ruled, draw_ruled, rows_that_fit, ruled_height
from parametric.drawing.running import Block, Points, run_on
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.cautions import BARS, DUST, LOCAL, SAW, SHEETS
from parametric.trade.cutting_tables import (
    counted,
    cut_rows,
    given,
    matched_words,
    offcut_lines,
    proof_words,
    sheet_name,
)
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import Printed, printed
from parametric.trade.sheet_order import BoardLot
from parametric.trade.stock.sheet_plan import SawnSheet

_SCALES = {"mm": (10.0, 15.0, 20.0, 30.0, 50.0), "inch": (12.0, 16.0, 24.0, 32.0, 48.0)}
_LIST = 90.0
"""The list of cuts beside a sheet, mm wide."""
_GAP = 8.0
_UNDER = 21.0
"""Under the picture: the grain, and what comes off the sheet in two lines."""


def draw_cutting_plan(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """All of it; nothing where nothing is sawn from sheets or from lengths."""
    if not paper.boards and not paper.bars:
        return ()
    said = printed(job.resolved)
    sheets = [*_first_page(job, paper, title, said)]
    for lot in paper.boards:
        for number, sheet in counted(lot.plan.sheets):
            sheets += _sheet_page(job, title, lot, number, sheet, said)
    return tuple(sheets)


def _first_page(
    job: Subject, paper: Paperwork, title: TitleBlock, said: Printed
) -> tuple[Sheet, ...]:
    """What is bought, the proof, what is left, the cautions; then the bars."""
    blocks: list[Block] = [
        Ruled(
            title="Sheets",
            columns=(
                Heading(text="board"),
                Heading(text="thick", anchor="right"),
                Heading(text="sheet"),
                Heading(text="buy", anchor="right"),
                Heading(text="from stock", anchor="right"),
                Heading(text="would fewer do?", grows=True),
            ),
            rows=tuple(_lot_row(lot, said) for lot in paper.boards),
            ticks=("",),
        ),
        *bar_blocks(paper.bars, said),
        Points(
            title='Left and worth keeping: lines that may stand under "offcuts" in the house file',
            mark="none",
            texts=offcut_lines(paper.boards, paper.bars, said),
            height=TITLE,
        ),
        Points(
            title="Cautions",
            mark="warning",
            texts=(
                *SAW,
                *(SHEETS if paper.boards else ()),
                *(BARS if paper.bars else ()),
                *DUST,
                LOCAL,
            ),
        ),
    ]
    under = (
        f"All sizes in {job.rules.unit_words}, length along the grain first. "
        f"Kerf {said.setting(job.resolved.shop.saw.kerf)}: measure yours in a test cut before the first sheet."
    )
    own = dataclasses.replace(title, document="Cutting plan", second_line=under, scale="no scale")
    return run_on(bench_paper(job, lying=True), own, blocks)


def _lot_row(lot: BoardLot, said: Printed) -> Row:
    used = sum(sheet.times for sheet in lot.plan.sheets if sheet.stock.count is not None)
    return Row(
        cells=(
            lot.board,
            said.wood(lot.thickness, down=True),
            f"{said.wood(lot.sheet_length)} × {said.wood(lot.sheet_width)}",
            str(int(lot.sheets)),
            str(used) if used else "",
            proof_words(lot),
        )
    )


# --- a page for every sheet ----------------------------------------------------------------


def _sheet_page(
    job: Subject,
    title: TitleBlock,
    lot: BoardLot,
    number: str,
    sheet: SawnSheet,
    said: Printed,
) -> tuple[Sheet, ...]:
    """The sheet at the left, its cuts at the right; a list that is longer goes on on a page."""
    total = sum(one.times for one in lot.plan.sheets)
    alike = f", {sheet.times} cut alike" if sheet.times > 1 else ""
    heading = f"{lot.board.capitalize()} {said.wood(lot.thickness, down=True)}: {number} of {total}"
    under = f"{sheet_name(sheet.stock, said).replace(' x ', ' × ').capitalize()}{alike}"
    paper = bench_paper(job, lying=True)
    cuts = _cut_list(sheet, said)
    draft = Draft(paper)
    body = draw_page(draft, dataclasses.replace(title, document=heading, second_line=under))
    room = Box(body.x0, body.y0, body.x1 - _LIST - _GAP, body.y1)
    lines = [w for text in _words(lot, sheet, said) for w in wrap(text, room.width - MARGIN, TITLE)]
    under_it = _UNDER + max(0, len(lines) - 2) * TITLE * 1.6
    scale = next(
        (
            one
            for one in _SCALES[said.unit]
            if sheet.stock.length / one + MARGIN <= room.width
            and sheet.stock.width / one + OVER + MARGIN + under_it <= room.height
        ),
        _SCALES[said.unit][-1],
    )
    own = dataclasses.replace(
        title, document=heading, second_line=under, scale=scale_words(scale, said.unit)
    )
    draft = Draft(paper)
    draw_page(draft, dataclasses.replace(own, second_line=f"{under} · {own.scale}"))
    corner = (room.x0 + MARGIN, room.y1 - sheet.stock.width / scale - OVER)
    taken = draw_sheet_view(draft, job, sheet, f"sheet {number}", scale, corner, lot)
    _under_picture(draft, lot, lines, Box(room.x0, room.y0, room.x1, taken.y0))
    aside = Box(body.x1 - _LIST, body.y0, body.x1, body.y1)
    if ruled_height(cuts, _LIST) <= aside.height:
        draw_ruled(draft, cuts, aside)
        return (draft.sheet(own),)
    fits = rows_that_fit(cuts, _LIST, aside.height)
    draw_ruled(draft, dataclasses.replace(cuts, rows=cuts.rows[:fits], foot=()), aside)
    rest = dataclasses.replace(cuts, title="Cuts, continued", rows=cuts.rows[fits:])
    return (draft.sheet(own), *run_on(paper, own, [rest]))


def _cut_list(sheet: SawnSheet, said: Printed) -> Ruled:
    """Every cut in its turn, and where the fence stands for it."""
    trim = sheet.stock.trim
    first = (
        (Row(cells=("", "trim", said.fine(trim), "every edge", ""), ticked=False),) if trim else ()
    )
    return Ruled(
        title="Cuts in their order",
        columns=(
            Heading(text="cut", whole=True),
            Heading(text="way"),
            Heading(text="fence", anchor="right", whole=True),
            Heading(text="in"),
            Heading(text="gives", grows=True),
        ),
        rows=(
            *first,
            *(Row(cells=(cut.replace(" to ", "–"), *row)) for cut, *row in cut_rows(sheet, said)),
        ),
        foot=(
            "Part 1 is what cut 1 gave between fence and blade, past 1 what lay beyond its kerf. "
            "The fence is set to the finished size.",
        ),
        height=TEXT + 0.5,
    )


def _under_picture(draft: Draft, lot: BoardLot, lines: Sequence[str], box: Box) -> None:
    """Which way the grain runs, and what the sheet gives."""
    words = "may lie either way: no grain" if lot.turned else "grain"
    y = box.y1 - 3.0
    grain_arrow(draft, (box.x0 + MARGIN, y), words)
    y -= 6.0
    for line in lines:
        draft.add(Label(text=line, at=(box.x0 + MARGIN, y - TITLE), height=TITLE))
        y -= TITLE * 1.6


def _words(lot: BoardLot, sheet: SawnSheet, said: Printed) -> list[str]:
    """What the sheet gives, and how the blanks of matched sets are kept in order."""
    names = {blank.piece.mark for blank in sheet.blanks}
    return [
        f"Gives {given(lot, sheet)}.",
        *(matched_words(one, float(lot.kerf), said) for one in lot.matched if one.name in names),
    ]
