"""The column of tables, warnings and notes at the edge of a sheet.

Each item says how tall it is before it is drawn; items run down one column and then the
next, and what finds no room is given back.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, wrap
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Label, Stroke, warning_triangle
from parametric.drawing.tables import Column, Table
from parametric.units import Unit

WIDTH = 84.0
_INCH_LISTS = 92.0
GUTTER = 6.0
_BETWEEN = (6.0, 4.4, 3.2)
"""Air between items, mm: as much as lets all of them in, else the least."""
_HEAD = 2.0 * TEXT
_LINE = 1.64 * TEXT
_ASCENT = 1.12 * TEXT
"""Letters like t and l stand above capitals."""
_MORE = ", continued"
_INDENT: dict[str, float] = {"warning": 5.4, "numbered": 4.6}


@dataclass(frozen=True, slots=True, kw_only=True)
class TableItem:
    """A table under its title."""

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    pitch: float = 5.2
    height: float = TEXT
    wrong: frozenset[int] = frozenset()


@dataclass(frozen=True, slots=True, kw_only=True)
class Sentences:
    """Sentences under a heading: warnings with their triangle, or numbered notes."""

    title: str
    kind: Literal["warning", "numbered"]
    texts: tuple[str, ...]
    framed: bool = False
    start: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A small view that hangs in the column; `draw` is given its top left corner."""

    title: str
    height: float
    draw: Callable[[Draft, Point], None]


Item = TableItem | Sentences | Picture


def list_width(unit: Unit) -> float:
    """How wide a column is that holds a cut list, mm: fractions of an inch take more room."""
    return WIDTH if unit == "mm" else _INCH_LISTS


def item_height(item: Item, width: float = WIDTH) -> float:
    """What an item takes up in the column, mm."""
    match item:
        case TableItem():
            return _head(item.title) + item.pitch * (len(item.rows) + 1)
        case Sentences():
            gap = 0.9 if item.kind == "warning" else 0.0
            lines = sum(len(_wrapped(item, text, width)) for text in item.texts)
            return _HEAD + lines * _LINE + gap * len(item.texts) + (4.0 if item.framed else 0.0)
        case Picture():
            return _HEAD + item.height
        case _:
            assert_never(item)


def place_items(draft: Draft, items: Sequence[Item], columns: Sequence[Box]) -> tuple[Item, ...]:
    """Run items down the columns; returns those that found no room.

    Args:
        draft: the sheet.
        items: in the order they are read; empty tables and lists are left out.
        columns: boxes on paper, the first one filled first.
    """
    wanted = [item for item in items if not _empty(item)]
    tries = [_run_down(wanted, columns, between) for between in _BETWEEN]
    placed, left_over = next((found for found in tries if not found[1]), tries[-1])
    for item, at, width in placed:
        _draw(draft, item, at, width)
    return left_over


_Placed = tuple[Item, Point, float]


def _run_down(
    items: Sequence[Item], columns: Sequence[Box], between: float
) -> tuple[list[_Placed], tuple[Item, ...]]:
    """Where each item stands and how wide its column is, and what finds no room.

    A list of sentences that a column cannot hold goes on in the next.
    """
    placed: list[_Placed] = []
    waiting = list(items)
    for box in columns:
        top = box.y1
        while waiting:
            tall = item_height(waiting[0], box.width)
            if top - tall < box.y0 - 1e-9:
                now, later = _parted(waiting[0], box.width, top - box.y0)
                if now is not None:
                    placed.append((now, (box.x0, top), box.width))
                    waiting[0] = later
                break
            placed.append((waiting.pop(0), (box.x0, top), box.width))
            top -= tall + (_gap(waiting[0], between) if waiting else 0.0)
    return placed, tuple(waiting)


def _parted(item: Item, width: float, room: float) -> tuple[Item | None, Item]:
    """As many sentences as a room holds, and the rest; nothing of what cannot be parted."""
    if isinstance(item, Sentences) and not item.framed:
        for count in range(len(item.texts) - 1, 0, -1):
            now = dataclasses.replace(item, texts=item.texts[:count])
            if item_height(now, width) <= room:
                return now, dataclasses.replace(
                    item,
                    title=f"{item.title.removesuffix(_MORE)}{_MORE}",
                    texts=item.texts[count:],
                    start=item.start + count,
                )
    return None, item


def _head(title: str) -> float:
    """What a heading takes; a table without one stands close under the table it belongs to."""
    return _HEAD if title else 0.0


def _gap(item: Item, between: float) -> float:
    """From the item above, mm; a table without a title belongs to the one above it."""
    return between if item.title else 3.0


def _empty(item: Item) -> bool:
    match item:
        case TableItem():
            return not item.rows
        case Sentences():
            return not item.texts
        case Picture():
            return False
        case _:
            assert_never(item)


def _wrapped(item: Sentences, text: str, width: float) -> list[str]:
    spare = _INDENT[item.kind] + (4.0 if item.framed else 0.0)
    return wrap(text, width - spare)


def _draw(draft: Draft, item: Item, at: Point, width: float) -> None:
    match item:
        case TableItem():
            table = Table(
                at=(at[0], at[1] - _head(item.title)),
                columns=item.columns,
                rows=item.rows,
                title=item.title,
                height=item.height,
                pitch=item.pitch,
                wrong=item.wrong,
            )
            draft.add(table)
        case Sentences():
            _sentences(draft, item, at, width)
        case Picture():
            draft.add(Label(text=item.title, at=(at[0], at[1] - _ASCENT), weight="bold"))
            item.draw(draft, (at[0], at[1] - _HEAD))
        case _:
            assert_never(item)


def _sentences(draft: Draft, item: Sentences, at: Point, width: float) -> None:
    x, y = at
    if item.framed:
        tall = item_height(item, width)
        box = Box(x, y - tall, x + width, y)
        draft.add(Stroke(layer="cut", points=box.polygon, closed=True))
        x, y = x + 2.0, y - 2.0
    y -= _ASCENT
    draft.add(Label(text=item.title, at=(x, y), weight="bold"))
    y -= _HEAD
    for number, text in enumerate(item.texts, start=item.start):
        if item.kind == "warning":
            draft.add(*warning_triangle((x, y - 0.4)))
        else:
            draft.add(Label(text=str(number), at=(x, y)))
        for line in _wrapped(item, text, width):
            draft.add(Label(text=line, at=(x + _INDENT[item.kind], y)))
            y -= _LINE
        if item.kind == "warning":
            y -= 0.9
