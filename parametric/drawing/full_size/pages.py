"""Full-size templates put on paper: each whole on a page of its own size, or in tiles."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.full_size.bars import END, bars_for, rows_deep
from parametric.drawing.full_size.template import Template, draw_template
from parametric.drawing.full_size.tiles import LAP, Board, draw_tiles
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper, scale_words
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject


def boards_of(job: Subject, templates: Iterable[Template], title: TitleBlock) -> tuple[Board, ...]:
    """Templates drawn whole, each under its own title."""
    scale = scale_words(1, job.resolved.design.unit)
    return tuple(
        draw_template(
            own,
            dataclasses.replace(
                title, scale=scale, document=own.document, second_line=own.second_line
            ),
        )
        for own in templates
    )


def whole(job: Subject, boards: Sequence[Board]) -> tuple[Sheet, ...]:
    """Each on a page of its own size."""
    unit = job.resolved.design.unit
    return tuple(
        sheet
        for board in boards
        for sheet in draw_tiles(board, _page(job, board), board.sheet.title, unit)
    )


def in_tiles(job: Subject, boards: Sequence[Board]) -> tuple[Sheet, ...]:
    """Each on plain paper, in tiles where one page does not hold it."""
    unit = job.resolved.design.unit
    return tuple(
        sheet
        for board in boards
        for sheet in draw_tiles(board, bench_paper(job), board.sheet.title, unit)
    )


def _page(job: Subject, board: Board) -> Paper:
    """The smallest page that holds a template with its bars, no narrower than plain paper."""
    usual = bench_paper(job)
    trial = dataclasses.replace(
        usual, name="template", width=max(usual.width, board.area.width + 2 * LAP + 40.0)
    )
    body = draw_page(Draft(trial), board.sheet.title)
    around = trial.height - body.height
    bars = rows_deep(len(bars_for(job.resolved.design.unit, body.width)))
    return dataclasses.replace(trial, height=board.area.height + around + bars + 0.5 + END)
