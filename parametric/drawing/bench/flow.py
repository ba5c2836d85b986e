"""Long lists on as many pages as they take: heads repeated, rows ticked, long cells in lines.

A row is 7 high and its text 3.5: it is read and ticked lying beside the saw.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.bench.saying import broken
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import BENCH, TITLE, Weight, width
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Anchor, Label, Stroke
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Cell

ROW = 7.0
_LINE = 5.4
"""A further line of the same row, mm."""
_TICK = 6.4
_AIR = 1.6
"""On either side of a cell, mm."""
_BETWEEN = 7.0
_TITLE = BENCH + 2.6
_THICKER = 5
"""Every so many rows the rule is thicker."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One column: as wide as its widest cell, or, where it `gives`, what the others leave."""

    head: str
    anchor: Anchor = "left"
    gives: bool = False
    weight: Weight = "regular"


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """One row of cells, with a box to tick or without."""

    cells: tuple[str, ...]
    tick: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Band:
    """A line across the table that heads the rows under it; `under` is said below it, smaller."""

    text: str
    under: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Block:
    """One table of a list: its title, its rows, what is said under it."""

    title: str
    columns: tuple[Column, ...]
    lines: tuple[Line | Band, ...]
    foot: tuple[str, ...] = ()
    new_page: bool = False


def flow(
    job: Subject, title: TitleBlock, blocks: Sequence[Block], *, lying: bool = False
) -> tuple[Sheet, ...]:
    """Draw a list.

    Args:
        job: for its paper.
        title: of its pages; the `document` is their heading.
        blocks: in the order they are read; empty ones are left out.
        lying: on paper with its long side level.
    """
    title = dataclasses.replace(title, scale="no scale")
    sheets: list[Sheet] = []
    draft, body = _page(job, title, lying)
    y = body.y1
    for block in blocks:
        if not block.lines:
            continue
        room = body.width - _TICK
        widths = _widths(block, room)
        heights = [_height(line, block, widths) for line in block.lines]
        foot = _foot_lines(block, room)
        if y < body.y1 and (
            block.new_page or y - body.y0 < _least(block, heights, foot, body.height)
        ):
            sheets.append(draft.sheet(title))
            draft, body = _page(job, title, lying)
            y = body.y1
        y = _head(draft, block, block.title, widths, body.x0 + _TICK, y)
        start = 0
        for index, line in enumerate(block.lines):
            tail = len(foot) * _LINE + 2.0 if foot else 0.0
            after = _together(block, heights, index, body.height, tail)
            if y - heights[index] - after < body.y0 - 1e-9:
                sheets.append(draft.sheet(title))
                draft, body = _page(job, title, lying)
                carried = f"{block.title}, continued" if block.title else "continued"
                y = _head(draft, block, carried, widths, body.x0 + _TICK, body.y1)
                start = index
            y = _row(draft, block, line, widths, body.x0, y, index - start)
        draft.line("edge", (body.x0 + _TICK, y), (body.x0 + _TICK + sum(widths), y))
        for text in foot:
            y -= _LINE
            draft.add(Label(text=text, at=(body.x0 + _TICK + _AIR, y), height=TITLE))
        y -= _BETWEEN
    sheets.append(draft.sheet(title))
    return tuple(sheets)


def _page(job: Subject, title: TitleBlock, lying: bool) -> tuple[Draft, Box]:
    draft = Draft(bench_paper(job, lying=lying))
    return draft, draw_page(draft, title)


def _least(block: Block, heights: list[float], foot: list[str], page: float) -> float:
    """What must be free for a table to begin: all of a short one, the head and three rows of a long."""
    whole = _head_height(block) + sum(heights) + len(foot) * _LINE + 2.0
    return whole if whole <= page * 0.6 else _head_height(block) + sum(heights[:3])


def _together(block: Block, heights: list[float], index: int, page: float, tail: float) -> float:
    """What must follow a row on its page: the foot, `tail` high, the last; a band all of its rows,
    of many the first.
    """
    rest = block.lines[index + 1 :]
    if not isinstance(block.lines[index], Band):
        return 0.0 if rest else tail
    rows = next((n for n, line in enumerate(rest) if isinstance(line, Band)), len(rest))
    whole = sum(heights[index + 1 : index + 1 + rows]) + (tail if rows == len(rest) else 0.0)
    return whole if whole <= page * 0.4 else sum(heights[index + 1 : index + 3])


def _head_height(block: Block) -> float:
    return (_TITLE if block.title else 0.0) + (ROW if _headed(block) else 0.0)


def _headed(block: Block) -> bool:
    return any(column.head for column in block.columns)


# --- how wide and how tall -----------------------------------------------------------------


def _cells(block: Block) -> list[tuple[str, ...]]:
    return [line.cells for line in block.lines if isinstance(line, Line)]


def _widths(block: Block, room: float) -> list[float]:
    """Every column its widest cell; those that give share what is left by what they would like."""
    wanted = [
        max(
            width(column.head, TITLE, "bold"),
            *(width(cells[index], TITLE, column.weight) for cells in _cells(block)),
        )
        + 2 * _AIR
        for index, column in enumerate(block.columns)
    ]
    giving = [index for index, column in enumerate(block.columns) if column.gives]
    fixed = sum(w for index, w in enumerate(wanted) if index not in giving)
    left = room - fixed
    liked = sum(wanted[index] for index in giving)
    shared = {index: left * wanted[index] / liked for index in giving}
    if any(shared[index] < _longest_word(block, index) for index in giving):
        shared = _by_words(block, room, wanted)
    for index, wide in shared.items():
        wanted[index] = wide
    return wanted


def _longest_word(block: Block, index: int) -> float:
    """What a column cannot go under: its longest word."""
    column = block.columns[index]
    words = [word for cells in _cells(block) for word in cells[index].split()]
    longest = max((width(word, TITLE, column.weight) for word in words), default=0.0)
    return 2 * _AIR + max(width(column.head, TITLE, "bold"), longest)


def _by_words(block: Block, room: float, wanted: Sequence[float]) -> dict[int, float]:
    """Where little is left, every column of words gives: each has its longest word, and of the
    rest a share of what it would like.
    """
    giving = [i for i, column in enumerate(block.columns) if column.anchor == "left"]
    least = {index: _longest_word(block, index) for index in giving}
    fixed = sum(w for index, w in enumerate(wanted) if index not in giving)
    spare = max(0.0, room - fixed - sum(least.values()))
    more = sum(wanted[index] - least[index] for index in giving) or 1.0
    return {i: least[i] + spare * (wanted[i] - least[i]) / more for i in giving}


def _broken(line: Line, block: Block, widths: list[float]) -> list[list[str]]:
    return [
        broken(text, wide - 2 * _AIR + 1e-6, TITLE, column.weight)
        for text, column, wide in zip(line.cells, block.columns, widths, strict=True)
    ]


def _height(line: Line | Band, block: Block, widths: list[float]) -> float:
    if isinstance(line, Band):
        further = broken(line.under, sum(widths) - 2 * _AIR, TITLE)
        return ROW + (4.6 if line.under else 0.0) + len(further) * _LINE
    return ROW + _LINE * (max(1, *(len(c) for c in _broken(line, block, widths))) - 1)


def _foot_lines(block: Block, room: float) -> list[str]:
    return [line for text in block.foot for line in broken(text, room - 2 * _AIR, TITLE)]


# --- drawn ---------------------------------------------------------------------------------


def _head(
    draft: Draft, block: Block, title: str, widths: list[float], left: float, y: float
) -> float:
    if block.title:
        y -= BENCH + 1.0
        draft.add(Label(text=title, at=(left, y), height=BENCH, weight="bold"))
        room = draft.paper.frame.x1 - left
        draft.cells.append(Cell(text=title, room=room, height=BENCH, weight="bold"))
        y -= 1.6
    right = left + sum(widths)
    draft.line("edge", (left, y), (right, y))
    if not _headed(block):
        return y
    _letter_cells(
        draft,
        [[column.head] if column.head else [] for column in block.columns],
        [dataclasses.replace(column, weight="bold") for column in block.columns],
        widths,
        left,
        y,
    )
    draft.line("edge", (left, y - ROW), (right, y - ROW))
    return y - ROW


def _row(
    draft: Draft,
    block: Block,
    line: Line | Band,
    widths: list[float],
    left: float,
    y: float,
    index: int,
) -> float:
    """One row; returns where it ends."""
    x = left + _TICK
    if index:
        banded = isinstance(line, Band) or index % _THICKER == 0
        draft.line("edge" if banded else "table", (x, y), (x + sum(widths), y))
    if isinstance(line, Band):
        tall = BENCH if line.under else TITLE
        base = y - tall - (3.4 if line.under else (ROW - TITLE) / 2)
        room = sum(widths) - 2 * _AIR
        draft.add(Label(text=line.text, at=(x + _AIR, base), height=tall, weight="bold"))
        draft.cells.append(Cell(text=line.text, room=room, height=tall, weight="bold"))
        for text in broken(line.under, room, TITLE):
            base -= _LINE
            draft.add(Label(text=text, at=(x + _AIR, base), height=TITLE))
        return y - _height(line, block, widths)
    if line.tick:
        box = Box(left + 0.9, y - ROW / 2 - 2.0, left + 4.9, y - ROW / 2 + 2.0)
        draft.add(Stroke(layer="edge", points=box.polygon, closed=True))
    _letter_cells(draft, _broken(line, block, widths), block.columns, widths, x, y)
    return y - _height(line, block, widths)


def _letter_cells(
    draft: Draft,
    cells: list[list[str]],
    columns: Sequence[Column],
    widths: list[float],
    left: float,
    y: float,
) -> None:
    for lines, column, wide in zip(cells, columns, widths, strict=True):
        across = {
            "left": left + _AIR,
            "centre": left + wide / 2,
            "right": left + wide - _AIR,
        }[column.anchor]
        base = y - ROW + (ROW - TITLE) / 2
        for text in lines:
            draft.add(
                Label(
                    text=text,
                    at=(across, base),
                    height=TITLE,
                    anchor=column.anchor,
                    weight=column.weight,
                )
            )
            draft.cells.append(
                Cell(text=text, room=wide - 2 * _AIR + 1e-5, height=TITLE, weight=column.weight)
            )
            base -= _LINE
        left += wide
