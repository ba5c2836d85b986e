"""A table whose cells may run over several lines, its columns as wide as what they hold.

Numbers are lettered large; what is said of a row may run under it, across all columns.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, TITLE, Weight, width, wrap
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.tables import Cell

_PAD = 1.3
_ABOVE, _BELOW = 1.5, 1.7
_ASCENT = 1.12
_LEADING = 1.5
_UNDER = 1.6
_TICK = 6.6
_BOX = 3.4


@dataclass(frozen=True, slots=True, kw_only=True)
class Heading:
    """The heading of a column; `grows` takes what width is left over, `box` is to write in,
    `whole` is never broken over lines.
    """

    text: str
    anchor: Literal["left", "right"] = "left"
    grows: bool = False
    least: float = 0.0
    box: bool = False
    whole: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """The cells of a row, and what is said under them; a sum has no box to tick."""

    cells: tuple[str, ...]
    under: tuple[str, ...] = ()
    ticked: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Ruled:
    """A table under its title.

    `ticks` are the headings of the boxes that stand before each row. `foot` is said under the
    table. `air` makes rows higher, to write in. `under_from` is the column that what is said
    under a row begins at. `fit_to` are the rows its columns are fitted
    to, where it shows only some of them.
    """

    title: str
    columns: tuple[Heading, ...]
    rows: tuple[Row, ...]
    ticks: tuple[str, ...] = ()
    foot: tuple[str, ...] = ()
    height: float = TITLE
    air: float = 0.0
    under_from: int = 1
    fit_to: tuple[Row, ...] = ()


def _tick_widths(table: Ruled) -> tuple[float, ...]:
    return tuple(max(_TICK, width(head, TEXT, "bold") + 2 * _PAD) for head in table.ticks)


def fitted(table: Ruled, wide: float) -> tuple[float, ...]:
    """The width of each column, mm: what it wishes, or as much as its words cannot do without."""
    rows = table.fit_to or table.rows
    wish, least = [], []
    for index, column in enumerate(table.columns):
        texts = [row.cells[index] for row in rows]
        head = _on_two_lines(column.text)
        words = [width(word, table.height) for text in texts for word in text.split()] or [0.0]
        whole = max((width(text, table.height) for text in texts), default=0.0)
        bound = whole if column.whole else 0.0
        need = max(head, *words, bound, column.least) + 2 * _PAD
        least.append(need)
        wish.append(max(whole + 2 * _PAD, need))
    room = wide - sum(_tick_widths(table))
    spare = room - sum(wish)
    if spare >= 0:
        takers = [column.grows for column in table.columns]
        if not any(takers):
            takers = [True] * len(takers)
        share = spare / sum(takers)
        return tuple(w + (share if takes else 0.0) for w, takes in zip(wish, takers, strict=True))
    # Those that want least beyond their words are satisfied first: one column wraps, not all.
    left = room - sum(least)
    found = list(least)
    for index in sorted(range(len(wish)), key=lambda at: (wish[at] - least[at], at)):
        more = max(0.0, min(wish[index] - least[index], left))
        found[index] += more
        left -= more
    return tuple(found)


def _on_two_lines(head: str) -> float:
    """The least width that gives a heading two lines at most, mm."""
    words = head.split()
    halves = [(words[:n], words[n:]) for n in range(1, len(words) + 1)]
    return min(
        (max(width(" ".join(part), TEXT, "bold") for part in half) for half in halves),
        default=0.0,
    )


def _title_height(table: Ruled) -> float:
    return TITLE * _ASCENT + 2.2 if table.title else 0.0


def _head_lines(table: Ruled, widths: tuple[float, ...]) -> list[list[str]]:
    return [
        wrap(column.text, wide - 2 * _PAD, TEXT, "bold")
        for column, wide in zip(table.columns, widths, strict=True)
    ]


def _head_height(table: Ruled, widths: tuple[float, ...]) -> float:
    lines = max((len(found) for found in _head_lines(table, widths)), default=0)
    return lines * TEXT * _LEADING + 2.4 if lines else 0.0


def _row_height(table: Ruled, row: Row, widths: tuple[float, ...]) -> float:
    lines = max(
        len(wrap(text, wide - 2 * _PAD, table.height)) or 1
        for text, wide in zip(row.cells, widths, strict=True)
    )
    under = sum(len(wrap(text, _under_room(table, widths), TEXT)) for text in row.under)
    return (
        _ABOVE
        + _BELOW
        + table.air
        + table.height * _ASCENT
        + (lines - 1) * table.height * _LEADING
        + under * TEXT * _UNDER
        + (0.6 if under else 0.0)
    )


def _under_room(table: Ruled, widths: tuple[float, ...]) -> float:
    return sum(widths[table.under_from :]) - 2 * _PAD


def ruled_height(table: Ruled, wide: float) -> float:
    """What a table takes of a page, mm."""
    widths = fitted(table, wide)
    rows = sum(_row_height(table, row, widths) for row in table.rows)
    return _title_height(table) + _head_height(table, widths) + rows + _foot_height(table, wide)


def _foot_height(table: Ruled, wide: float) -> float:
    lines = sum(len(wrap(text, wide - 2 * _PAD, TEXT)) for text in table.foot)
    return 1.8 + lines * TEXT * _UNDER if lines else 0.0


def rows_that_fit(table: Ruled, wide: float, room: float) -> int:
    """How many rows a room holds under the heading; the last row keeps the foot with it."""
    widths = fitted(table, wide)
    left = room - _title_height(table) - _head_height(table, widths)
    count = 0
    for row in table.rows:
        left -= _row_height(table, row, widths)
        if left < 0:
            break
        count += 1
    return min(count, len(table.rows) - 1)


def draw_ruled(draft: Draft, table: Ruled, box: Box) -> None:
    """Draw a table from the top of a box."""
    widths = fitted(table, box.width)
    y = box.y1
    if table.title:
        base = y - TITLE * _ASCENT
        draft.add(Label(text=table.title, at=(box.x0, base), height=TITLE, weight="bold"))
        y -= _title_height(table)
    _rule(draft, box, y, heavy=True)
    y = _draw_head(draft, table, box, widths, y)
    for row in table.rows:
        if row is not table.rows[0] or any(column.text for column in table.columns):
            _rule(draft, box, y, heavy=False)
        y = _draw_row(draft, table, row, box, widths, y)
    _rule(draft, box, y, heavy=True)
    y -= 1.8
    for text in table.foot:
        for line in wrap(text, box.width - 2 * _PAD, TEXT):
            draft.add(Label(text=line, at=(box.x0 + _PAD, y - TEXT * _ASCENT)))
            y -= TEXT * _UNDER


def _rule(draft: Draft, box: Box, y: float, *, heavy: bool) -> None:
    layer: Literal["edge", "table"] = "edge" if heavy else "table"
    draft.add(Stroke(layer=layer, points=((box.x0, y), (box.x1, y))))


def _draw_head(
    draft: Draft, table: Ruled, box: Box, widths: tuple[float, ...], top: float
) -> float:
    low = top - _head_height(table, widths)
    x = box.x0
    for text, wide in zip(table.ticks, _tick_widths(table), strict=True):
        draft.add(Label(text=text, at=(x + 0.6, low + 1.3), weight="bold"))
        x += wide
    for column, lines, wide in zip(table.columns, _head_lines(table, widths), widths, strict=True):
        for up, line in enumerate(reversed(lines)):
            _cell(draft, line, column, x, wide, low + 1.3 + up * TEXT * _LEADING, TEXT, "bold")
        x += wide
    return low


def _draw_row(
    draft: Draft, table: Ruled, row: Row, box: Box, widths: tuple[float, ...], top: float
) -> float:
    low = top - _row_height(table, row, widths)
    base = top - _ABOVE - table.air / 2 - table.height * _ASCENT
    x = box.x0
    for wide in _tick_widths(table):
        if row.ticked:
            tick_box(draft, x + 0.6, base + table.height / 2)
        x += wide
    start, deepest = x + sum(widths[: table.under_from]) + _PAD, base
    for column, text, wide in zip(table.columns, row.cells, widths, strict=True):
        if column.box and not text:
            room = Box(x + 0.8, base - 1.6, x + wide - 0.8, base + table.height + 1.4)
            draft.add(Stroke(layer="table", points=room.polygon, closed=True))
        for down, line in enumerate(wrap(text, wide - 2 * _PAD, table.height)):
            at = base - down * table.height * _LEADING
            deepest = min(deepest, at)
            _cell(draft, line, column, x, wide, at, table.height, "regular")
        x += wide
    y = deepest - 0.6 - TEXT * _UNDER
    for text in row.under:
        for line in wrap(text, _under_room(table, widths), TEXT):
            draft.add(Label(text=line, at=(start, y)))
            y -= TEXT * _UNDER
    return low


def tick_box(draft: Draft, x: float, middle: float) -> None:
    """An empty box to tick, its left edge at x."""
    box = Box(x, middle - _BOX / 2, x + _BOX, middle + _BOX / 2)
    draft.add(Stroke(layer="edge_fine", points=box.polygon, closed=True))


def _cell(
    draft: Draft,
    text: str,
    column: Heading,
    x: float,
    wide: float,
    base: float,
    height: float,
    weight: Weight,
) -> None:
    at = (x + _PAD if column.anchor == "left" else x + wide - _PAD, base)
    draft.add(Label(text=text, at=at, height=height, weight=weight, anchor=column.anchor))
    draft.cells.append(Cell(text=text, room=wide - 2 * _PAD, height=height, weight=weight))
