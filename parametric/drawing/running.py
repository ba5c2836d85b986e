"""Pages that are written from the top down and go on to the next: orders and site papers.

Each block says how tall it is before it is drawn. A table or a list that does not fit goes
on with its heading repeated; a picture or a row of lines to fill in is never parted.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import BENCH, TEXT, TITLE, width, wrap
from parametric.drawing.page import draw_page
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label, Stroke, warning_triangle
from parametric.drawing.ruled import Ruled, draw_ruled, rows_that_fit, ruled_height, tick_box
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.tables import Cell

ASCENT = 1.12
"""Letters like t and l stand above capitals, in heights of capitals."""
_LEADING = 1.62
_BETWEEN = (7.0, 5.5, 4.0)
"""Air between blocks, mm: the widest that costs no page."""
_AFTER = 1.5
_INSET = 4.0
_MORE = ", continued"
_INDENT = 6.4
_FRAME_HEAD = 3.6 + BENCH * ASCENT + 3.4


@dataclass(frozen=True, slots=True, kw_only=True)
class Points:
    """Sentences under a heading, each with its number, a box to tick, a triangle, or nothing."""

    title: str
    mark: Literal["number", "box", "warning", "none"]
    texts: tuple[str, ...]
    height: float = TEXT
    start: int = 1


@dataclass(frozen=True, slots=True, kw_only=True)
class Field:
    """Something said after its name; a line to fill in where there is nothing yet."""

    name: str
    value: str = ""
    share: float = 1.0


@dataclass(frozen=True, slots=True, kw_only=True)
class Fields:
    """Rows of fields, those of one row side by side."""

    rows: tuple[tuple[Field, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Picture:
    """A drawing of a fixed height; it is given the box it may use."""

    title: str
    height: float
    draw: Callable[[Draft, Box], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Framed:
    """Blocks in a heavy frame: what must be done before anything else on the page."""

    title: str
    parts: tuple[Ruled | Points | Fields, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Beside:
    """A picture at the left, `wide` mm of the page, and what is said of it at its right."""

    picture: Picture
    wide: float
    parts: tuple[Points, ...]


Block = Ruled | Points | Fields | Picture | Framed | Beside


def run_on(paper: Paper, title: TitleBlock, blocks: Sequence[Block]) -> tuple[Sheet, ...]:
    """Write blocks on as many pages as they take.

    Args:
        paper: every page's size.
        title: the heading and what stands in the foot.
        blocks: in the order they are read; empty ones are left out.
    """
    wanted = [block for block in blocks if not _empty(block)]
    tries = [_pages(paper, title, wanted, between) for between in _BETWEEN]
    return min(tries, key=len)


def _pages(
    paper: Paper, title: TitleBlock, blocks: Sequence[Block], between: float
) -> tuple[Sheet, ...]:
    waiting = list(blocks)
    sheets: list[Sheet] = []
    while waiting or not sheets:
        draft = Draft(paper)
        body = draw_page(draft, title)
        y, first = body.y1, True
        while waiting:
            room = y - body.y0
            now, later = parted(waiting[0], body.width, room, rows=1 if first else 2)
            if now is None and not first:
                break
            if now is None:
                # Taller than a page and in one piece: drawn all the same, and said.
                now, later = waiting[0], None
                draft.unplaced.append(_title(now) or "a block")
            y = draw_block(draft, now, Box(body.x0, body.y0, body.x1, y)) - between
            waiting[:1] = [] if later is None else [later]
            first = False
            if later is not None:
                break
        sheets.append(draft.sheet(title))
    return tuple(sheets)


def block_height(block: Block, wide: float) -> float:
    """What a block takes of a page, mm."""
    match block:
        case Ruled():
            return ruled_height(block, wide)
        case Points():
            lines = sum(len(_wrapped(block, text, wide)) for text in block.texts)
            gaps = _gap(block) * (len(block.texts) - 1)
            return _head(block.title) + lines * block.height * _LEADING + gaps
        case Fields():
            return 9.0 * len(block.rows)
        case Picture():
            return _head(block.title) + block.height
        case Beside():
            right = wide - block.wide
            said = sum(block_height(part, right) for part in block.parts)
            return max(block_height(block.picture, block.wide), said + _apart(block))
        case Framed():
            inner = wide - 2 * _INSET
            parts = sum(block_height(part, inner) for part in block.parts)
            air = 3.0 * (len(block.parts) - 1)
            return _FRAME_HEAD + parts + air + _INSET
        case _:
            assert_never(block)


def parted(
    block: Block, wide: float, room: float, rows: int = 2
) -> tuple[Block | None, Block | None]:
    """What of a block a room holds, and what must go on to the next page.

    Args:
        block: what is to be written.
        wide: the page's width, mm.
        room: its height, mm.
        rows: the fewest that may begin a table there.
    """
    if block_height(block, wide) <= room:
        return block, None
    match block:
        case Ruled():
            fits = rows_that_fit(block, wide, room)
            return (None, block) if fits < rows else _cut(block, fits)
        case Points():
            for count in range(len(block.texts) - 1, 0, -1):
                now = dataclasses.replace(block, texts=block.texts[:count])
                if block_height(now, wide) <= room:
                    return now, dataclasses.replace(
                        block,
                        title=_again(block.title),
                        texts=block.texts[count:],
                        start=block.start + count,
                    )
            return None, block
        case Framed():
            return _frame_parted(block, wide, room)
        case Fields() | Picture() | Beside():
            return None, block
        case _:
            assert_never(block)


def _cut(table: Ruled, count: int) -> tuple[Ruled, Ruled]:
    whole = table.fit_to or table.rows
    return (
        dataclasses.replace(table, rows=table.rows[:count], foot=(), fit_to=whole),
        dataclasses.replace(
            table, title=_again(table.title), rows=table.rows[count:], fit_to=whole
        ),
    )


def _frame_parted(block: Framed, wide: float, room: float) -> tuple[Framed | None, Framed | None]:
    left = room - _FRAME_HEAD - _INSET
    inner = wide - 2 * _INSET
    now: list[Ruled | Points | Fields] = []
    later = list(block.parts)
    while later:
        here, rest = parted(later[0], inner, left)
        if here is None:
            break
        assert isinstance(here, (Ruled, Points, Fields))
        now.append(here)
        left -= block_height(here, inner) + 3.0
        if rest is not None:
            assert isinstance(rest, (Ruled, Points, Fields))
            later[0] = rest
            break
        later.pop(0)
    if not now or (len(now) == 1 and isinstance(now[0], Points) and len(block.parts) > 1):
        return None, block
    again = dataclasses.replace(block, title=_again(block.title), parts=tuple(later))
    return dataclasses.replace(block, parts=tuple(now)), again


def _apart(block: Beside) -> float:
    return 4.0 * (len(block.parts) - 1)


def _again(title: str) -> str:
    return f"{title.removesuffix(_MORE)}{_MORE}" if title else ""


def _title(block: Block) -> str:
    match block:
        case Fields():
            return ""
        case Beside():
            return block.picture.title
        case _:
            return block.title


def _empty(block: Block) -> bool:
    match block:
        case Ruled() | Fields():
            return not block.rows
        case Points():
            return not block.texts
        case Picture():
            return block.height <= 0.0
        case Beside():
            return False
        case Framed():
            return all(_empty(part) for part in block.parts)
        case _:
            assert_never(block)


def _head(title: str) -> float:
    return TITLE * ASCENT + 2.6 if title else 0.0


def _gap(block: Points) -> float:
    return 0.55 * block.height


def _wrapped(block: Points, text: str, wide: float) -> list[str]:
    return wrap(text, wide - (0.0 if block.mark == "none" else _INDENT), block.height)


def draw_block(draft: Draft, block: Block, box: Box) -> float:
    """Draw a block from the top of a box; returns where it ends.

    Args:
        draft: the page.
        block: what to draw; it has been seen to fit.
        box: the room, filled from its top.
    """
    match block:
        case Ruled():
            draw_ruled(draft, block, box)
        case Points():
            _draw_points(draft, block, box)
        case Fields():
            _draw_fields(draft, block, box)
        case Picture():
            low = box.y1 - _head(block.title)
            _heading(draft, block.title, box)
            block.draw(draft, Box(box.x0, low - block.height, box.x1, low))
        case Beside():
            draw_block(draft, block.picture, Box(box.x0, box.y0, box.x0 + block.wide, box.y1))
            y = box.y1
            for part in block.parts:
                y = draw_block(draft, part, Box(box.x0 + block.wide, box.y0, box.x1, y)) - 4.0
        case Framed():
            _draw_framed(draft, block, box)
        case _:
            assert_never(block)
    return box.y1 - block_height(block, box.width)


def _heading(draft: Draft, title: str, box: Box) -> None:
    if title:
        at = (box.x0, box.y1 - TITLE * ASCENT)
        draft.add(Label(text=title, at=at, height=TITLE, weight="bold"))


def _draw_points(draft: Draft, block: Points, box: Box) -> None:
    _heading(draft, block.title, box)
    pitch = block.height * _LEADING
    y = box.y1 - _head(block.title)
    left = box.x0 + (0.0 if block.mark == "none" else _INDENT)
    for number, text in enumerate(block.texts, block.start):
        base = y - block.height * ASCENT
        middle = base + block.height / 2
        match block.mark:
            case "number":
                draft.add(Label(text=str(number), at=(box.x0, base), height=block.height))
            case "box":
                tick_box(draft, box.x0, middle)
            case "warning":
                draft.add(*warning_triangle((box.x0, middle - 1.5)))
            case "none":
                pass
            case _:
                assert_never(block.mark)
        for line in _wrapped(block, text, box.width):
            draft.add(Label(text=line, at=(left, y - block.height * ASCENT), height=block.height))
            y -= pitch
        y -= _gap(block)


def _draw_fields(draft: Draft, block: Fields, box: Box) -> None:
    y = box.y1
    for row in block.rows:
        base = y - 6.2
        whole = sum(field.share for field in row)
        x = box.x0
        for field in row:
            wide = box.width * field.share / whole
            end = x + wide - (0.0 if field is row[-1] else _AFTER + 2.5)
            draft.add(Label(text=field.name, at=(x, base)))
            start = x + width(field.name) + 2.4
            if field.value:
                height = TITLE if width(field.value, TITLE) <= end - start else TEXT
                draft.add(Label(text=field.value, at=(start, base), height=height))
                _keep(draft, field.value, end - start, height)
            else:
                draft.add(Stroke(layer="table", points=((start, base - 1.0), (end, base - 1.0))))
            x += wide
        y -= 9.0


def _keep(draft: Draft, text: str, room: float, height: float) -> None:
    draft.cells.append(Cell(text=text, room=room, height=height, weight="regular"))


def _draw_framed(draft: Draft, block: Framed, box: Box) -> None:
    tall = block_height(block, box.width)
    frame = Box(box.x0, box.y1 - tall, box.x1, box.y1)
    draft.add(Stroke(layer="cut_heavy", points=frame.polygon, closed=True))
    x0, x1 = box.x0 + _INSET, box.x1 - _INSET
    base = box.y1 - 3.6 - BENCH * ASCENT
    draft.add(Label(text=block.title, at=(x0, base), height=BENCH, weight="bold"))
    y = base - 3.4
    for part in block.parts:
        y = draw_block(draft, part, Box(x0, frame.y0, x1, y)) - 3.0
