r"""A set-up sheet: one setting of one machine on one page, read from a metre away.

+-------------------------------------------------------------+
| M4  Table saw: bevel of the raised panel                    |
+-----------------------------+-------------------------------+
|   the piece in the machine  |  (a)  8.7°   blade tilt       |
|   with letters where the    |  (b)  75     blade height     |
|   numbers are measured      |  (c)  15     fence to blade   |
+-----------------------------+-------------------------------+
| Run    P1 × 2, one spare first          | /!\ one warning    |
| Order  end grain first ...              |                    |
+-------------------------------------------------------------+
"""

from __future__ import annotations

import dataclasses
from collections.abc import Callable
from dataclasses import dataclass

from parametric.drawing.bench.saying import broken
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import BENCH, width
from parametric.drawing.page import draw_page
from parametric.drawing.papers import bench_paper
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Circle, Label, Stroke
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Cell

MOST_KEYS = 5
KEY = 14.0
SMALLER_KEY = 10.0
"""Where a number in fractions leaves no room for its name."""
AFTER = 7.0
PITCH = 7.5
"""Line to line of the text, mm."""
LETTER_RADIUS = 4.2

_KEY_ROW = 17.0
_PICTURE = 78.0
_SHARE = 0.46
_HEAD_GAP = 4.0
_GAP = 5.0
_LEAST_NAME = 36.0

Drawer = Callable[[Draft, Box], None]
"""Draws a picture into a box."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Key:
    """One number to set: the letter it has in the picture, what stands behind it, its name."""

    number: str
    name: str
    letter: str = ""
    after: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Row:
    """One line of the foot."""

    head: str
    text: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SetUp:
    """What one set-up sheet says; `seen` tells from where its picture is seen.

    `wide` has the picture across the page and the numbers under it.
    """

    title: str
    under: str
    keys: tuple[Key, ...]
    rows: tuple[Row, ...]
    warning: str
    picture: Drawer
    seen: str
    wide: bool = False


def draw_set_up(
    job: Subject, title: TitleBlock, code: str, set_up: SetUp
) -> tuple[Sheet, tuple[Row, ...]]:
    """Draw it; returns the sheet, and the rows of its foot that must go on to the next page.

    Args:
        job: for its paper.
        title: of the group.
        code: the number of the set-up, lettered large.
        set_up: what it says.
    """
    assert len(set_up.keys) <= MOST_KEYS
    title = dataclasses.replace(
        title, document=set_up.title, second_line=set_up.under, scale="no scale"
    )
    for kept in range(len(set_up.rows), -1, -1):
        draft = Draft(bench_paper(job, lying=True))
        body = draw_page(draft, title, number=code)
        rows = set_up.rows[:kept]
        foot = _foot_height(rows, set_up.warning, body.width)
        upper = Box(body.x0, body.y0 + foot + _GAP, body.x1, body.y1)
        if _fits(set_up, upper) or not kept:
            break
    draft.line("edge", (body.x0, body.y0 + foot), (body.x1, body.y0 + foot))
    _foot(draft, rows, set_up.warning, Box(body.x0, body.y0, body.x1, body.y0 + foot - 2.5))
    if set_up.wide:
        low = _wide_height(set_up.keys, upper.width, upper.height)
        _keys_in_columns(draft, set_up.keys, Box(upper.x0, upper.y0, upper.x1, upper.y0 + low))
        place = Box(upper.x0, upper.y0 + low + 2.0, upper.x1, upper.y1)
    else:
        parted = upper.x0 + upper.width * _SHARE
        _keys(draft, set_up.keys, Box(parted + _GAP, upper.y0, upper.x1, upper.y1))
        place = Box(upper.x0, upper.y0, parted, upper.y1)
    above = Box(place.x0, place.y0 + BENCH + 3.5, place.x1, place.y1)
    draft.add(Label(text=set_up.seen, at=(place.x0, place.y0 + 1.6), height=BENCH))
    draft.cells.append(Cell(text=set_up.seen, room=place.width, height=BENCH, weight="regular"))
    set_up.picture(draft, above)
    return draft.sheet(title), set_up.rows[kept:]


def _fits(set_up: SetUp, box: Box) -> bool:
    """Whether picture and numbers find room over the foot."""
    if set_up.wide:
        low = _wide_height(set_up.keys, box.width, box.height)
        return box.height - low >= _PICTURE * 0.7
    across = box.width * (1 - _SHARE) - _GAP
    return box.height >= _PICTURE and sum(_laid(set_up.keys, across, box.height).rows) <= box.height


def letter(draft: Draft, text: str, at: Point) -> None:
    """A letter in its ring: the same in the picture and before its number."""
    draft.add(
        Circle(layer="edge", centre=at, radius=LETTER_RADIUS),
        Label(
            text=text, at=(at[0], at[1] - BENCH / 2), height=BENCH, anchor="centre", weight="bold"
        ),
    )


# --- the numbers ---------------------------------------------------------------------------


def _number_width(key: Key, height: float) -> float:
    after = 2.0 + width(key.after, AFTER) if key.after else 0.0
    return width(key.number, height, "bold") + after


@dataclass(frozen=True, slots=True, kw_only=True)
class _Laid:
    """How numbers stand in a column: their height, where names begin, how tall each row is."""

    height: float
    lettered: float
    names: float
    rows: tuple[float, ...]


def _laid(keys: tuple[Key, ...], across: float, room: float) -> _Laid:
    """As large as the names leave room for; smaller only where the rows would not fit."""
    lettered = 2 * LETTER_RADIUS + 4.0 if any(key.letter for key in keys) else 0.0
    tries = []
    for height in (KEY, SMALLER_KEY):
        names = lettered + max(_number_width(key, height) for key in keys) + 5.0
        lines = [len(broken(key.name, max(across - names, 20.0), BENCH)) for key in keys]
        rows = tuple(max(_KEY_ROW, count * PITCH + 2.5) for count in lines)
        tries.append(_Laid(height=height, lettered=lettered, names=names, rows=rows))
        if across - names >= _LEAST_NAME and sum(rows) <= room:
            return tries[-1]
    return min(tries, key=lambda one: (sum(one.rows) > room, one.height))


def _keys(draft: Draft, keys: tuple[Key, ...], box: Box) -> None:
    """One under another; they share the height, and the names begin on one line."""
    laid = _laid(keys, box.width, box.height)
    spare = max(0.0, box.height - sum(laid.rows)) / len(keys)
    more = min(spare, 9.0)
    top = box.y1 - (spare - more) * len(keys) / 2
    for index, (key, row) in enumerate(zip(keys, laid.rows, strict=True)):
        if index:
            draft.line("table", (box.x0, top), (box.x1, top))
        middle = top - (row + more) / 2
        _key(draft, key, (box.x0, middle), laid.lettered, laid.height)
        _name(draft, key, (box.x0 + laid.names, middle), box.width - laid.names)
        top -= row + more


def _columns(keys: tuple[Key, ...], across: float) -> list[tuple[Key, ...]]:
    """Under a wide picture numbers stand in two columns where there is room for them."""
    if len(keys) == 1 or across < 200.0:
        return [keys]
    half = -(-len(keys) // 2)
    return [keys[:half], keys[half:]]


def _wide_height(keys: tuple[Key, ...], across: float, room: float) -> float:
    columns = _columns(keys, across)
    each = across / len(columns) - _GAP
    return max(sum(_laid(own, each, room).rows) for own in columns)


def _keys_in_columns(draft: Draft, keys: tuple[Key, ...], box: Box) -> None:
    columns = _columns(keys, box.width)
    across = box.width / len(columns)
    for index, own in enumerate(columns):
        left = box.x0 + across * index
        _keys(draft, own, Box(left, box.y0, left + across - _GAP, box.y1))


def _key(draft: Draft, key: Key, at: Point, lettered: float, height: float) -> None:
    x, middle = at
    if key.letter:
        letter(draft, key.letter, (x + LETTER_RADIUS, middle))
    base = middle - height / 2
    left = x + lettered
    draft.add(Label(text=key.number, at=(left, base), height=height, weight="bold"))
    if key.after:
        after = left + width(key.number, height, "bold") + 2.0
        draft.add(Label(text=key.after, at=(after, base), height=AFTER))


def _name(draft: Draft, key: Key, at: Point, room: float) -> None:
    lines = broken(key.name, room, BENCH)
    y = at[1] + (len(lines) - 1) * PITCH / 2 - BENCH / 2
    for line in lines:
        draft.add(Label(text=line, at=(at[0], y), height=BENCH))
        draft.cells.append(Cell(text=line, room=room, height=BENCH, weight="regular"))
        y -= PITCH


# --- the foot ------------------------------------------------------------------------------


_SHARES = (0.58, 0.63, 0.68, 0.73)
"""Of the page's width, for the rows; what is left is the warning's. The first that is lowest."""


def _parts(rows: tuple[Row, ...], across: float, warning: str) -> tuple[float, float]:
    """What rows and warning have across the page, so that both together stand lowest."""
    if not warning:
        return across, 0.0
    share = min(_SHARES, key=lambda one: _tall(rows, across * one, across, warning))
    return across * share, across * (1 - share) - _GAP


def _tall(rows: tuple[Row, ...], room: float, across: float, warning: str) -> float:
    """How high rows stand that have this room, and the warning that has what they leave."""
    own = room - _heads(rows)
    lines = sum(len(broken(row.text, own, BENCH)) for row in rows)
    tall = lines * PITCH + len(rows) * 1.0
    if not warning:
        return tall
    aside = across - room - _GAP
    return max(tall, len(broken(warning, aside - 19.0, BENCH)) * PITCH + 5.0, 18.0)


def _heads(rows: tuple[Row, ...]) -> float:
    """What the words before the rows take."""
    return max((width(row.head, BENCH, "bold") for row in rows), default=0.0) + _HEAD_GAP


def _foot_height(rows: tuple[Row, ...], warning: str, across: float) -> float:
    return _tall(rows, _parts(rows, across, warning)[0], across, warning) + 3.5


def _foot(draft: Draft, rows: tuple[Row, ...], warning: str, box: Box) -> None:
    room, aside = _parts(rows, box.width, warning)
    y = box.y1 - BENCH - 1.2
    heads = _heads(rows)
    for row in rows:
        draft.add(Label(text=row.head, at=(box.x0, y), height=BENCH, weight="bold"))
        for line in broken(row.text, room - heads, BENCH):
            draft.add(Label(text=line, at=(box.x0 + heads, y), height=BENCH))
            y -= PITCH
        y -= 1.0
    if warning:
        place = Box(box.x1 - aside, box.y0, box.x1, box.y1)
        draft.add(Stroke(layer="cut", points=place.polygon, closed=True))
        lines = broken(warning, aside - 19.0, BENCH)
        draw_triangle(draft, (place.x0 + 2.2, place.centre[1] - 5.4))
        y = place.centre[1] + (len(lines) - 1) * PITCH / 2 - BENCH / 2
        for line in lines:
            draft.add(Label(text=line, at=(place.x0 + 16.5, y), height=BENCH))
            y -= PITCH


def draw_triangle(draft: Draft, at: Point) -> None:
    """The triangle of a warning, large: 12 wide, its low left corner at a point."""
    x, y = at
    corners = ((x, y), (x + 12.0, y), (x + 6.0, y + 10.8))
    draft.add(
        Stroke(layer="cut_heavy", points=corners, closed=True),
        Label(text="!", at=(x + 6.0, y + 1.6), height=BENCH, anchor="centre", weight="bold"),
    )
