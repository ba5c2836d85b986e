"""The story stick's pages: whole on one long page, and in tiles."""

from __future__ import annotations

import dataclasses

from parametric.drawing.column import Sentences, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.full_size.bars import END, bars_for, draw_bars, rows_deep, short_bars
from parametric.drawing.full_size.stick import BEYOND, WIDE, draw_stick
from parametric.drawing.full_size.tiles import Board, draw_tiles
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper, scale_words
from parametric.drawing.plane import Box
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.paperwork import Paperwork
from parametric.trade.story_stick import StoryStick

_WIDE_PAGE = 240.0
_EDGE = 10.0
_BESIDE = 25.0
"""From the stick to the end of its tiles, mm: crosses stand beside it, 20 off its edges."""
_CROSS = -20.0
_AROUND = 1.0


def draw_story_stick(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """One long page a stick."""
    return tuple(board.sheet for board in _boards(job, paper, title))


def draw_story_stick_tiles(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Sheet, ...]:
    """Every stick on plain paper."""
    unit = job.resolved.design.unit
    return tuple(
        tile
        for board in _boards(job, paper, title)
        for tile in draw_tiles(board, bench_paper(job), board.sheet.title, unit)
    )


def _boards(job: Subject, paper: Paperwork, title: TitleBlock) -> tuple[Board, ...]:
    return tuple(_board(job, stick, title) for stick in paper.story_sticks)


def leaf_words(letters: tuple[str, ...]) -> str:
    """`leaf A`, `leaves A and B`."""
    return f"{'leaf' if len(letters) == 1 else 'leaves'} {' and '.join(letters)}"


def _board(job: Subject, stick: StoryStick, title: TitleBlock) -> Board:
    unit = job.resolved.design.unit
    words = leaf_words(stick.leaves)
    title = dataclasses.replace(
        title, document="Story stick", second_line=f"For {words}", scale=scale_words(1, unit)
    )
    low, high = stick.low - BEYOND - _AROUND, stick.high + BEYOND + _AROUND
    # The heading is as tall as its words make it: it is drawn once to be measured.
    trial = Paper(name="story stick", width=_WIDE_PAGE, height=1000.0, filing=_EDGE, edge=_EDGE)
    around = trial.height - draw_page(Draft(trial), title).height
    page = dataclasses.replace(trial, height=high - low + around)
    draft = Draft(page)
    body = draw_page(draft, title)
    view = draft.view(f"story stick, {words}", 1.0, (body.x0 + _BESIDE, body.y0 - low))
    draw_stick(draft, view, stick, job, title)
    _beside(draft, Box(view.x(WIDE) + 14.0, body.y0, body.x1, body.y1), job)
    area = Box(-_BESIDE, low, WIDE + _BESIDE, high)
    return Board(sheet=draft.sheet(title), view=view.name, area=area, cross=(_CROSS, 0.0))


def _beside(draft: Draft, room: Box, job: Subject) -> None:
    """Bars both ways at the foot, how the stick is used over them."""
    unit = job.resolved.design.unit
    bars = short_bars(unit)
    draw_bars(draft, bars, (room.x0, room.y0), "across")
    deep = rows_deep(len(bars))
    upright = bars_for(unit, room.height / 2)
    low = room.y0 + deep + 4.0 + END
    draw_bars(draft, upright, (room.x0, low), "up")
    items = [
        Sentences(
            title="How the stick is used",
            kind="numbered",
            texts=(
                "Print at actual size, no fitting. Lay a rule on the bars both ways before the "
                "stick is used.",
                "Glue it to a straight batten, its left edge along the batten's edge, or carry "
                "the lines over to a batten with a knife.",
                "Left edge: heights from the finished foot. Lay it along each piece, a stile's own "
                "ends on the lines of its blank, and mark what lies on that piece.",
                "Joined from tiles, check it whole with a steel tape.",
                "Right edge: widths from the left edge of the leaf, and the lengths that are cut "
                "to them.",
                "Dashed ticks are middles of slots. A number that is not on its line is led to it "
                "by a thin line.",
                "What is marked from one stick agrees with itself: mark all pieces from this one.",
            ),
        )
    ]
    width = 84.0
    box = Box(room.x0, low + upright[-1].length + 10.0, room.x0 + width, room.y1 - 4.0)
    left = place_items(draft, items, [box])
    draft.unplaced += [item.title for item in left]
