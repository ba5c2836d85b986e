"""The pages of bench, orders and site: one subject each, read at arm's length or a metre.

+------------------------------------------+
| 7  Saw: bevel of the raised panel        |   heading, 7 high, and a set-up's number, 14
+------------------------------------------+
|                                          |
|                body                      |
|                                          |
+------------------------------------------+
| job      | number | rev | sheet | mark    |   foot: whose page it is, and of which design
+------------------------------------------+
"""

from __future__ import annotations

from parametric.drawing.draft import Draft
from parametric.drawing.frame import NOT_YET
from parametric.drawing.lettering import BENCH, CELL_LABEL, TEXT, TITLE, shortened, width, wrap
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import TitleBlock
from parametric.drawing.tables import Cell

FOOT = 11.0
"""Height of the strip at the foot, mm."""
NUMBER = 14.0
"""Height of a set-up's number: read from across the bench."""
HEADING = 7.0
ASCENT = 1.12
"""Letters like t and l stand above capitals, in heights of capitals."""
_ROUND = 1.02
"""Round letters stand a little above capitals, in heights of capitals."""
_AIR = 4.0
_FOOT_LINES = 2
_FOOT_PITCH = 1.5 * TEXT
_SHARES = (
    ("Job", 0.34),
    ("Made by", 0.20),
    ("Number", 0.14),
    ("Rev.", 0.06),
    ("Sheet", 0.09),
    ("Fingerprint", 0.17),
)
"""The cells of the foot, as shares of its width."""


def draw_page(draft: Draft, title: TitleBlock, *, number: str = "") -> Box:
    """Heading and foot of a page; returns the box that is left for what it says.

    The heading is the title's `document`, the line under it its `second_line`.

    Args:
        draft: an empty page.
        title: what it says of itself.
        number: of the set-up, lettered large; empty where the page is none.
    """
    frame = draft.paper.frame
    _foot(draft, title)
    low = frame.y0 + FOOT + _AIR
    top = _heading(draft, title, number)
    return Box(frame.x0, low, frame.x1, top)


def _heading(draft: Draft, title: TitleBlock, number: str) -> float:
    frame = draft.paper.frame
    left, tall = frame.x0, HEADING
    if number:
        draft.add(
            Label(
                text=number,
                at=(left, frame.y1 - NUMBER * _ROUND),
                height=NUMBER,
                weight="bold",
                layer="text",
            )
        )
        left += width(number, NUMBER, "bold") + 6.0
        tall = NUMBER
    room = frame.x1 - left
    height = next(
        (h for h in (HEADING, BENCH, TITLE) if width(title.document, h, "bold") <= room), TITLE
    )
    y = frame.y1 - height * ASCENT
    draft.add(Label(text=title.document, at=(left, y), height=height, weight="bold"))
    draft.cells.append(Cell(text=title.document, room=room, height=height, weight="bold"))
    for line in wrap(title.second_line, room, TITLE):
        y -= TITLE * 1.75
        draft.add(Label(text=line, at=(left, y), height=TITLE))
    low = min(y - 2.2, frame.y1 - tall - 2.2)
    for flag in _flags(title):
        low -= BENCH + 3.0
        draft.add(Label(text=flag, at=(frame.x0, low + 1.5), height=BENCH, weight="bold"))
    for line in wrap(title.moved, frame.width, TITLE) if title.not_approved else ():
        low -= TITLE * 1.55
        draft.add(Label(text=line, at=(frame.x0, low + 1.5), height=TITLE))
    draft.add(Stroke(layer="cut", points=((frame.x0, low), (frame.x1, low))))
    return low - _AIR


def _flags(title: TitleBlock) -> tuple[str, ...]:
    """What keeps a page off the bench."""
    return tuple(
        words
        for words, wanted in (
            ("NOT FOR MAKING", title.not_for_making),
            ("NOT APPROVED", title.not_approved),
        )
        if wanted
    )


def _foot(draft: Draft, title: TitleBlock) -> None:
    frame = draft.paper.frame
    top = frame.y0 + FOOT
    draft.add(Stroke(layer="edge", points=((frame.x0, top), (frame.x1, top))))
    values = {
        "Job": title.title,
        "Made by": title.owner,
        "Number": title.number,
        "Rev.": title.revision,
        "Sheet": "",
        "Fingerprint": title.fingerprint,
    }
    x = frame.x0
    for name, share in _SHARES:
        wide = frame.width * share
        if x > frame.x0:
            draft.line("sheet_thin", (x, top), (x, frame.y0))
        draft.add(Label(text=name, at=(x + 1.2, top - 3.0), height=CELL_LABEL))
        at = (x + 1.2, frame.y0 + 1.8)
        if name == "Sheet":
            draft.number_at = (at, TITLE)
        else:
            _value(draft, values[name] or NOT_YET, at, wide - 2.4)
        x += wide


def _value(draft: Draft, text: str, at: tuple[float, float], room: float) -> None:
    """A value of the foot: a long one smaller, then on two lines, the rest of it left out."""
    height = TITLE if width(text, TITLE) <= room else TEXT
    lines = wrap(text, room, height)
    if len(lines) > _FOOT_LINES:
        lines = [*lines[: _FOOT_LINES - 1], shortened(" ".join(lines[_FOOT_LINES - 1 :]), room)]
    lines = [shortened(line, room, height) for line in lines]
    if len(lines) > 1:
        at = (at[0], at[1] - 0.8)
    for index, line in enumerate(reversed(lines)):
        draft.add(Label(text=line, at=(at[0], at[1] + index * _FOOT_PITCH), height=height))
        draft.cells.append(Cell(text=line, room=room, height=height, weight="regular"))
