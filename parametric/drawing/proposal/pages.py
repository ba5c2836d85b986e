"""The pages of a proposal, in order: the doors, the drawing, what you get, yes.

+------------------+  +------------------+  +------------------+  +------------------+
|     picture      |  | elevation | side |  | included | agree |  | what is agreed   |
|                  |  |                  |  |                  |  | [ ] [ ] ticks    |
|------------------|  | shut ----------- |  | swatches         |  |                  |
| job, words       |  | open ----------- |  | living with them |  | name ___  code   |
+------------------+  +------------------+  +------------------+  +------------------+
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from parametric.drawing.cases.room import Room, rooms
from parametric.drawing.draft import Draft
from parametric.drawing.labels.code import dark_boxes, modules
from parametric.drawing.lettering import is_printable, printable, width
from parametric.drawing.plane import Box, rectangle
from parametric.drawing.primitives import Fill, Stroke
from parametric.drawing.proposal.cabinets_front import cabinets_tints
from parametric.drawing.proposal.cabinets_page import draw_cabinets_page
from parametric.drawing.proposal.content import DrawingWords, Pair, ProposalContent, Swatches
from parametric.drawing.proposal.drawing_page import draw_doors
from parametric.drawing.proposal.front import front_tints
from parametric.drawing.proposal.setting import (
    FOOT,
    GUTTER,
    HEAD,
    NOTE,
    TEXT,
    ProposalPage,
    Tint,
    columns,
    lines_of,
    pitch,
    proposal_paper,
    rule,
    says_anything,
    set_lines,
    set_text,
    title_lines,
)
from parametric.drawing.proposal.swatches import swatch_tints
from parametric.drawing.sheet import Paper, TitleBlock
from parametric.drawing.subject import Subject

_PICTURE = 0.60
"""How much of the first page is picture."""
_BOX = 4.2
"""A box to tick."""
_CODE = 26.0
"""The small square code with its quiet zone."""
_BETWEEN = 3.0
"""From one square of finish to the next."""
_Told = Literal["with notes", "alone", "not at all"]
"""How much the third page says of the sizes, which stand on the drawing too."""
_LINES = 3
"""Lines that one thing a maker wrote may take in a list."""


def draw_proposal(
    job: Subject, said: ProposalContent, title: TitleBlock, *, pictured: float | None
) -> tuple[ProposalPage, ...]:
    """All of them.

    Args:
        job: the job.
        said: its words.
        title: whose it is, for the file's own title.
        pictured: how wide a picture of the first page is for its height; None where the doors
            are drawn in its place.
    """
    paper = proposal_paper(job)
    walls = [job.of(door) for door in job.resolved.walls]
    return (
        _doors(job, said, title, paper, pictured),
        *(
            _drawing(one, said, own, title, paper, number)
            for number, (one, own) in enumerate(zip(walls, said.drawings, strict=True), 2)
        ),
        *(
            _cabinets(job, room, said, own, title, paper, number)
            for number, (room, own) in enumerate(
                zip(rooms(job), said.rooms, strict=True), 2 + len(walls)
            )
        ),
        _get(said, title, paper),
        _yes(said, title, paper),
    )


def _pages(said: ProposalContent) -> int:
    """How many there are: the doors, a drawing of each, what you get, yes."""
    return 3 + len(said.drawings) + len(said.rooms)


def _named(job: str, said: ProposalContent) -> str:
    """The job as it can be printed, or by its mark."""
    return printable(job) if says_anything(job) else said.no_name


def _foot(draft: Draft, said: ProposalContent, number: int, *, made_with: bool = False) -> Box:
    """Whose page it is; what is left above."""
    frame = draft.paper.frame
    rule(draft, frame, frame.y0 + FOOT - 3.0, "table")
    page = said.page.format(number, _pages(said))
    room = frame.width - width(page, NOTE) - 6.0
    if made_with:
        made = said.made_with
        middle = frame.x1 - width(page, NOTE) - 6.0 - width(made, NOTE)
        set_lines(draft, [made], (middle, frame.y0 + pitch(NOTE)), NOTE, layer="table")
        room -= width(made, NOTE) + 6.0
    mark = " · ".join(pair.text for pair in said.stamp[-1:] if pair.text)
    tail = f" · {said.foot}"
    name = lines_of(_named(said.job, said), room - width(tail, NOTE), NOTE, most=1)
    assert mark in said.foot
    y = frame.y0 + pitch(NOTE)
    set_lines(draft, [f"{name[0]}{tail}"], (frame.x0, y), NOTE, layer="table")
    set_lines(draft, [page], (frame.x1, y), NOTE, layer="table", anchor="right")
    return Box(frame.x0, frame.y0 + FOOT, frame.x1, frame.y1)


def _page(
    draft: Draft, title: TitleBlock, tints: Sequence[Tint], picture: Box | None = None
) -> ProposalPage:
    return ProposalPage(sheet=draft.sheet(title), tints=tuple(tints), picture=picture)


def _doors(
    job: Subject, said: ProposalContent, title: TitleBlock, paper: Paper, pictured: float | None
) -> ProposalPage:
    """Page 1."""
    draft = Draft(paper)
    box = _foot(draft, said, 1)
    high = paper.height * _PICTURE
    if pictured is not None:
        high = min(high, paper.width / pictured)
    picture = Box(0.0, paper.height - high, paper.width, paper.height)
    tints = _fronts(job, said, picture) if pictured is None else ()
    y = paper.height - max(high, paper.height * (_PICTURE - 0.06)) - 2.0
    y = set_text(draft, said.caption, box, y, NOTE, layer="table", most=2) - 3.5
    wide, narrow = columns(box, 0, 4), columns(box, 4, 2)
    top = y
    height, lines = title_lines(_named(said.job, said), wide.width)
    y = set_lines(draft, lines, (wide.x0, y), height, weight="bold")
    if not all(is_printable(text) for text in (said.job, *said.under, said.stamp[0].text)):
        y = set_text(draft, said.unprintable, wide, y - 0.5, NOTE, layer="table")
    for text in said.under:
        y = set_text(draft, text, wide, y, TEXT, layer="table", most=2)
    room = int((y - 2.5 - box.y0) / pitch(TEXT))
    words = said.paragraph
    if len(lines_of(words, wide.width, TEXT)) > room and words != said.brief:
        words = said.brief
    set_text(draft, words, wide, y - 2.5, TEXT, stacked=said.fractions)
    _pairs(draft, said.stamp, narrow, top - 1.6, stacked=False)
    return _page(draft, title, tints, None if pictured is None else picture)


def _fronts(job: Subject, said: ProposalContent, picture: Box) -> tuple[Tint, ...]:
    """Every door from the front, and every room of cabinets, beside one another."""
    walls = [job.of(door) for door in job.resolved.walls]
    cabinets = rooms(job)
    step = picture.width / (len(walls) + len(cabinets))
    boxes = [
        Box(picture.x0 + n * step, picture.y0, picture.x0 + (n + 1) * step, picture.y1)
        for n in range(len(walls) + len(cabinets))
    ]
    tints: list[Tint] = []
    for one, box in zip(walls, boxes, strict=False):
        tints += front_tints(one, said.dress, box)
    for room, box in zip(cabinets, boxes[len(walls) :], strict=True):
        tints += cabinets_tints(room, said.dress, box)
    return tuple(tints)


def _pairs(draft: Draft, pairs: Sequence[Pair], box: Box, y: float, *, stacked: bool) -> float:
    """Each name over what is said of it, a thin line between."""
    for index, pair in enumerate(pairs):
        if index:
            rule(draft, box, y - 0.8, "table")
            y -= 1.6
        y = set_text(draft, pair.name, box, y, NOTE, layer="table")
        y = set_text(draft, pair.text, box, y, TEXT, stacked=stacked, most=_LINES)
    return y


def _drawing(
    job: Subject,
    said: ProposalContent,
    own: DrawingWords,
    title: TitleBlock,
    paper: Paper,
    number: int,
) -> ProposalPage:
    """Page 2, and one more for every further door."""
    draft = Draft(paper)
    box = _foot(draft, said, number)
    return _page(draft, title, draw_doors(draft, job, said, own, box))


def _cabinets(
    job: Subject,
    room: Room,
    said: ProposalContent,
    own: DrawingWords,
    title: TitleBlock,
    paper: Paper,
    number: int,
) -> ProposalPage:
    """The cabinets of one room, after the doors in walls."""
    draft = Draft(paper)
    box = _foot(draft, said, number)
    return _page(draft, title, draw_cabinets_page(draft, job, room, said, own, box))


def _get(said: ProposalContent, title: TitleBlock, paper: Paper) -> ProposalPage:
    """The page before the last; where a maker's lists are long, sizes go without their notes, then go."""
    room = paper.frame.y0 + FOOT
    told: tuple[_Told, ...] = ("with notes", "alone", "not at all")
    tried = (_what_you_get(said, title, paper, sizes) for sizes in told)
    page, low = next(tried)
    while low < room and (following := next(tried, None)) is not None:
        page, low = following
    return page


def _what_you_get(
    said: ProposalContent, title: TitleBlock, paper: Paper, sizes: _Told
) -> tuple[ProposalPage, float]:
    """The page, and how low it comes."""
    draft = Draft(paper)
    box = _foot(draft, said, _pages(said) - 1)
    top = _heading(draft, said.get_head, box, box.y1)
    left, right = columns(box, 0, 3), columns(box, 3, 3)
    low = _points(draft, said.included_head, said.included, left, top, said.fractions)
    y = top
    if said.not_included:
        y = _points(draft, said.not_included_head, said.not_included, right, y, False) - 2.0
    y = min(low, _points(draft, said.to_agree_head, said.to_agree, right, y, False)) - 5.0
    tints: list[Tint] = []
    for group in said.swatches:
        y = _swatches(draft, group, box, y, tints) - 2.5
    y = set_text(draft, said.sample, columns(box, 1, 5), y, NOTE, layer="table") - 4.0
    if sizes == "not at all":
        rule(draft, box, y, "table")
    else:
        y = _sizes(draft, said, box, y, notes=sizes == "with notes")
    y -= 3.0
    for pair in said.living:
        set_text(draft, pair.name, columns(box, 0, 1), y, TEXT, weight="bold")
        rest = columns(box, 1, 5)
        y = set_text(draft, pair.text, rest, y, TEXT, stacked=said.fractions) - 2.0
    return _page(draft, title, tints), y


def _sizes(draft: Draft, said: ProposalContent, box: Box, y: float, *, notes: bool) -> float:
    """Every size that the page tells, in two columns, the first one a row longer."""
    y = set_text(draft, said.sizes_head, box, y, TEXT, weight="bold") - 1.0
    half = (len(said.sizes) + 1) // 2
    ends = []
    for first, sizes in ((0, said.sizes[:half]), (3, said.sizes[half:])):
        side, down = columns(box, first, 3), y
        for size in sizes:
            rule(draft, side, down, "table")
            down -= 1.0
            label = Box(side.x0, 0, side.x0 + side.width * 0.42, 0)
            value = Box(label.x1 + 2.0, 0, side.x1, 0)
            low = set_text(draft, size.label, label, down, NOTE, layer="table")
            down = set_text(
                draft, size.value, value, down, NOTE, weight="bold", stacked=said.fractions
            )
            note = size.note if notes else ""
            down = set_text(draft, note, value, down, NOTE, stacked=said.fractions)
            down = min(low, down) - 1.0
        ends.append(down)
    rule(draft, box, min(ends), "table")
    return min(ends)


def _heading(draft: Draft, words: str, box: Box, y: float) -> float:
    y = set_text(draft, words, box, y, HEAD, weight="bold")
    rule(draft, box, y - 1.2)
    return y - 5.0


def _points(
    draft: Draft, head: str, points: Sequence[str], box: Box, y: float, stacked: bool
) -> float:
    """A list under its head."""
    y = set_text(draft, head, box, y, TEXT, weight="bold") - 1.0
    for point in points:
        rule(draft, box, y, "table")
        y = set_text(draft, point, box, y - 1.0, TEXT, stacked=stacked, most=_LINES + 1) - 1.0
    return y


def _swatches(draft: Draft, group: Swatches, box: Box, y: float, tints: list[Tint]) -> float:
    """A kind of finish: what may be chosen, square by square."""
    side = columns(box, 0, 1)
    low = set_text(draft, group.heading, side, y, TEXT, weight="bold")
    low = set_text(draft, group.beside, side, low, NOTE, layer="table")
    rest = columns(box, 1, 5)
    count = max(6, len(group.choices))
    step = (rest.width + _BETWEEN) / count
    for index, choice in enumerate(group.choices):
        x = rest.x0 + index * step
        square = Box(x, y - 13.0, x + step - _BETWEEN, y)
        tints += swatch_tints(choice, square)
        draft.path("table", square.polygon, closed=True)
        below = square.y0 - 0.8
        if group.box_each:
            _tick_box(draft, (x, below - 0.6), 3.0)
        name = Box(x + (4.2 if group.box_each else 0.0), 0, square.x1 + 1.5, 0)
        low = min(low, set_text(draft, choice.name, name, below, NOTE, most=2))
    return low


def _tick_box(draft: Draft, at: tuple[float, float], side: float = _BOX) -> None:
    """A box to tick, its upper left corner at a place."""
    x, y = at
    draft.add(Stroke(layer="edge", points=rectangle(x, y - side, x + side, y), closed=True))


def _yes(said: ProposalContent, title: TitleBlock, paper: Paper) -> ProposalPage:
    """The last page."""
    draft = Draft(paper)
    box = _foot(draft, said, _pages(said), made_with=True)
    y = _heading(draft, said.yes_head, box, box.y1)
    for pair in said.summary:
        set_text(draft, pair.name, columns(box, 0, 1), y, TEXT, layer="table")
        rest = columns(box, 1, 5)
        if pair.text:
            y = set_text(draft, pair.text, rest, y, TEXT, stacked=said.fractions, most=_LINES)
        else:
            y -= pitch(TEXT) + 1.2
            draft.line("edge_fine", (rest.x0, y + 1.2), (rest.x1, y + 1.2))
        y -= 1.4
    rule(draft, box, y, "table")
    y -= 4.0
    if said.ticks:
        y = set_text(draft, said.ticks_head, box, y, TEXT, weight="bold") - 2.0
    for tick in said.ticks:
        _tick_box(draft, (box.x0, y - 0.9))
        text = Box(box.x0 + _BOX + 3.5, 0, columns(box, 0, 5).x1, 0)
        y = set_text(draft, tick, text, y, TEXT, stacked=said.fractions) - 3.0
    y = set_text(draft, said.superseded, columns(box, 0, 5), y - 1.0, NOTE, layer="table")
    _signing(draft, said, box, y - 7.0)
    return _page(draft, title, ())


def _signing(draft: Draft, said: ProposalContent, box: Box, y: float) -> None:
    """The words, the lines to sign on, the mark in a code; under them room for what is not right yet."""
    rule(draft, box, y)
    y -= 4.0
    wide, side = columns(box, 0, 4), columns(box, 4, 2)
    room = Box(side.x1 - _CODE, y - _CODE, side.x1, y)
    for dark in dark_boxes(modules(said.code), room):
        draft.add(Fill(layer="edge", points=dark.polygon))
    words = Box(side.x0, 0, side.x1, 0)
    low = set_text(draft, said.code_says, words, room.y0 - 0.5, NOTE, layer="table", most=5)
    y = set_text(draft, said.say_it, wide, y, HEAD, weight="bold")
    for row in said.sign:
        y -= 13.0
        step = (wide.width + GUTTER) / len(row)
        for index, name in enumerate(row):
            under = Box(wide.x0 + index * step, 0, wide.x0 + (index + 1) * step - GUTTER, 0)
            draft.line("edge", (under.x0, y), (under.x1, y))
            set_text(draft, name, under, y - 0.6, NOTE, layer="table", most=1)
        y -= pitch(NOTE)
    y = min(low, y) - 6.0
    rule(draft, box, y, "table")
    y = set_text(draft, said.not_yet, box, y - 3.0, TEXT, weight="bold") - 9.0
    while y > box.y0 + 5.0:
        rule(draft, box, y, "table")
        y -= 9.0
