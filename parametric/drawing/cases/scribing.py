"""Sections through all that is scribed to the room, each where it was measured, one row a piece.

level, at the left wall                      upright, at the ceiling
 ///////|                                    ////////////
 ///////|------|   what lies in the wall     |  #####   |  off
        |######|   comes off; the plumb      |  #####   |
     |  off | seen  |   line that the wall   |  #####   |  seen
     |     blank    |   is measured from     |__________|
"""

from __future__ import annotations

import dataclasses
import itertools
from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.cases.room import Room
from parametric.drawing.cases.words import case_words
from parametric.drawing.chains import FIRST, Chain, Link, Stop, place_chains
from parametric.drawing.column import WIDTH, Sentences, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.hatching import board, end_grain, wall
from parametric.drawing.leaf_views import degrees
from parametric.drawing.lettering import TITLE, width
from parametric.drawing.marks import wave
from parametric.drawing.papers import Scales, papers_and_scales, scale_words
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Paper, Sheet, TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.model import Part
from parametric.names import SEPARATOR
from parametric.trade.case_names import listed
from parametric.trade.scribing import Scribed, ScribedAt, scribed_to_levels, scribed_to_walls

_MM: Scales = ((1.0, 2.0, 5.0), (1.0, 2.0, 5.0))
_INCH: Scales = ((1.0, 2.0, 4.0), (1.0, 2.0, 4.0))
_ROOM = 9.0
"""How much of wall, ceiling or floor is hatched beyond what lies in it, mm on paper."""
_BEHIND = 12.0
"""How far back the wall and the cabinet are shown, mm on paper."""
_BEYOND = 12.0
"""How much is shown past the true edge, mm on paper."""
_BEFORE = 3.0
_CAPTION = 11.0
_OVER = 10.0
"""What the distance of the wall from the plumb line takes over a section, mm on paper."""
_BESIDE = 16.0
_SIZE = 20.0
"""How long a size and its word are, mm on paper."""


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """One piece with its sections: what all of them show, from low to high, mm, so that they line up."""

    one: Scribed
    part: Part
    low: float
    high: float
    of: str = ""
    """The cabinets that it closes, where several pieces would be called the same."""

    @property
    def thick(self) -> float:
        """How thick the piece is."""
        return float(self.part.blank.thickness)

    def size(self, scale: float, step: float) -> tuple[float, float]:
        """What one of its sections takes on paper, across and up."""
        long = (self.high - self.low) / scale + _ROOM + _BEYOND
        deep = self.thick / scale + _BEHIND + _BEFORE
        if self.one.upright:
            over = _OVER if self.one.meets == "left wall" else 0.0
            return long + 2 * _BESIDE, deep + _CAPTION + over + FIRST + step + 5.0
        return deep + FIRST + step + 2 * _BESIDE, long + _CAPTION + 5.0 + self.under(scale)

    def under(self, scale: float) -> float:
        """What sizes take under an upright section that is too low for them, mm on paper."""
        return max(0.0, _SIZE - (self.high - self.low) / scale)


def draw_scribing(job: Subject, room: Room, title: TitleBlock) -> tuple[Sheet, ...]:
    """Every scribed piece of a room, a section at each place, on as many sheets as they take."""
    rows = _rows(room)
    return _sheets(job, rows, title) if rows else ()


def _sheets(job: Subject, rows: Sequence[_Row], title: TitleBlock) -> tuple[Sheet, ...]:
    """On one sheet, or half of the pieces on each of two where no paper has room for all."""
    options = papers_and_scales(job, mm=_MM, inch=_INCH)
    if len(rows) > 1 and not any(_grid(job, rows, *option) for option in options):
        half = len(rows) // 2
        return (*_sheets(job, rows[:half], title), *_sheets(job, rows[half:], title))

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        grid = _grid(job, rows, paper, scale)
        return None if grid is None else _draw(job, rows, paper, scale, grid, block)

    return (
        first_that_fits(
            options, title, attempt, too_large=f"{rows[0].one.name} is past the largest sheet"
        ),
    )


def _rows(room: Room) -> list[_Row]:
    parts = {piece.part.name: piece.part for piece in room.fixed}
    found = []
    for one in (
        *scribed_to_walls(room.runs, room.cases),
        *scribed_to_levels(room.runs, room.cases, room.own_edges),
    ):
        # a plinth is several boards, as high as one another
        part = next(own for name, own in parts.items() if f"{name} / ".startswith(f"{one.name} / "))
        plumb = [0.0] if one.meets == "left wall" else []
        across = [one.made, one.true, *(float(at.room) for at in one.at), *plumb]
        found.append(_Row(one=one, part=part, low=min(across), high=max(across)))
    several = Counter((row.one.noun, row.one.meets) for row in found)
    named = [
        dataclasses.replace(row, of=case_words(row.one.name.split(SEPARATOR)[0]))
        if several[row.one.noun, row.one.meets] > 1
        else row
        for row in found
    ]
    return [
        dataclasses.replace(rows[0], of=listed([row.of for row in rows]) if rows[0].of else "")
        for rows in _alike(named)
    ]


def _alike(rows: Sequence[_Row]) -> list[list[_Row]]:
    """Rows that show the same: what lies along a slope is the same all along, on every case."""
    found: list[list[_Row]] = []
    for row in rows:
        slope = row.one.slope
        if slope is not None:
            (at, *_) = row.one.at
            one = dataclasses.replace(row.one, at=(dataclasses.replace(at, where="all along"),))
            row = dataclasses.replace(row, one=one)
            shown = _shown(row)
            same = (own for own in found if own[0].one.slope is not None)
            if (other := next((own for own in same if _shown(own[0]) == shown), None)) is not None:
                other.append(row)
                continue
        found.append([row])
    return found


def _shown(row: _Row) -> tuple[float, ...]:
    one = row.one
    assert one.slope is not None
    sizes = (abs(float(one.slope)), float(one.blank), float(one.at[0].seen), row.thick)
    return tuple(round(size, 6) for size in sizes)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Grid:
    """Where the sections stand: how wide each is, how high each row."""

    left: float
    top: float
    wide: float
    highs: tuple[float, ...]


def _grid(job: Subject, rows: Sequence[_Row], paper: Paper, scale: float) -> _Grid | None:
    """Rows under one another, None where the paper has no room for them."""
    frame, step = paper.frame, job.rules.wood.next_chain
    sizes = [row.size(scale, step) for row in rows]
    words = max(width(_where(job, row.one, at)) for row in rows for at in row.one.at)
    wide = max(words + 8.0, *(across for across, _ in sizes))
    left, top = frame.x0 + 6.0, frame.y1 - 5.5
    highs = tuple(up for _, up in sizes)
    count = max(len(row.one.at) for row in rows)
    if left + count * wide > frame.x1 - WIDTH - 10.0 or top - sum(highs) < frame.y0 + 4.0:
        return None
    return _Grid(left=left, top=top, wide=wide, highs=highs)


def _draw(
    job: Subject,
    rows: Sequence[_Row],
    paper: Paper,
    scale: float,
    grid: _Grid,
    title: TitleBlock,
) -> Sheet:
    draft = Draft(paper)
    title = dataclasses.replace(title, scale=scale_words(scale, job.rules.unit))
    draw_frame(draft, title)
    frame, block, top = paper.frame, title_block_box(paper, title), grid.top
    for row, high in zip(rows, grid.highs, strict=True):
        for column, at in enumerate(row.one.at):
            left = grid.left + column * grid.wide
            _section(draft, job, row, at, Box(left, top - high, left + grid.wide, top), scale)
        top -= high
    left = frame.x1 - 5.5 - WIDTH
    notes = Box(left, block.y1 + 4.0, left + WIDTH, frame.y1 - 6.0)
    left_over = place_items(draft, [_notes(rows)], [notes])
    draft.unplaced += [getattr(item, "title", "") or "a table" for item in left_over]
    return draft.sheet(title)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Frame:
    """How one section lies on paper: `u` towards the room's surface and back, `v` from the front
    backwards, both mm; `out` is the way along `u` in which the wall, ceiling or floor lies.
    """

    view: View
    upright: bool
    back: float
    out: float

    def at(self, u: float, v: float) -> Point:
        """A place of the section on paper."""
        return self.view.at((u, v) if self.upright else (self.back * v, u))

    def face(self) -> float:
        """Where the front of the piece lies across its chains, mm on paper."""
        x, y = self.at(0.0, 0.0)
        return y if self.upright else x


def _section(draft: Draft, job: Subject, row: _Row, at: ScribedAt, cell: Box, scale: float) -> None:
    """One section: the room, the piece as made and what is kept of it, what is behind, the sizes."""
    one, step = row.one, job.rules.wood.next_chain
    out = -1.0 if one.meets in ("left wall", "floor") else 1.0
    before = _ROOM if out < 0 else _BEYOND
    deep = row.thick / scale + _BEHIND
    if one.upright:
        origin = (
            cell.x0 + _BESIDE + before - row.low / scale,
            cell.y0 + FIRST + step + 4.0,
        )
        back = 1.0
    else:
        back = 1.0 if job.third_angle else -1.0
        x = cell.x0 + _BESIDE + (FIRST + step if back > 0 else deep)
        origin = (x, cell.y0 + 3.0 + row.under(scale) + before - row.low / scale)
    view = draft.view(f"{one.name} {at.where}", scale, origin)
    lies = _Frame(view=view, upright=one.upright, back=back, out=out)
    _room(draft, lies, row, at, scale)
    _piece(draft, lies, row, at)
    _cabinet(draft, lies, row, scale)
    place_chains(draft, _chains(job, lies, one, at))
    if one.meets == "left wall":
        _plumb(draft, job, lies, row, at, scale)
    _caption(draft, job, row, at, cell)


def _room(draft: Draft, lies: _Frame, row: _Row, at: ScribedAt, scale: float) -> None:
    """Wall, ceiling or floor, its face where it was measured."""
    face, back = float(at.room), row.thick + _BEHIND * scale
    end = (row.low if lies.out < 0 else row.high) + lies.out * _ROOM * scale
    front = -_BEFORE * scale
    corners = ((face, front), (face, back), (end, back), (end, front))
    body = tuple(lies.at(u, v) for u, v in corners)
    draft.add(wall((body,), lies.view.name))
    draft.line("cut", body[0], body[1], lies.view.name)
    for a, b in ((body[1], body[2]), (body[2], body[3]), (body[3], body[0])):
        wave(draft, a, b, lies.view.name)


def _piece(draft: Draft, lies: _Frame, row: _Row, at: ScribedAt) -> None:
    """As it is made in chain line, what is kept of it cut."""
    one, view = row.one, lies.view
    for edge, layer in ((one.made, "adjacent"), (float(at.room), "cut_heavy")):
        corners = ((edge, 0.0), (one.true, 0.0), (one.true, row.thick), (edge, row.thick))
        outline = tuple(lies.at(u, v) for u, v in corners)
        draft.path(
            "adjacent" if layer == "adjacent" else "cut_heavy", outline, view.name, closed=True
        )
    if row.part.material.look == "timber":
        draft.add(end_grain((outline,), view.name, "below", 2.0, 30.0))
    else:
        draft.add(board((outline,), view.name))


def _cabinet(draft: Draft, lies: _Frame, row: _Row, scale: float) -> None:
    """The cabinet that stands at the true edge of a filler or on a plinth."""
    one = row.one
    if not one.filler:
        return
    far, back = one.true - lies.out * _BEYOND * scale, row.thick + _BEHIND * scale
    corners = ((far, 0.0), (one.true, 0.0), (one.true, back), (far, back))
    points = tuple(lies.at(u, v) for u, v in corners)
    for a, b in itertools.pairwise(points[:3]):
        draft.line("edge", a, b, lies.view.name)
    wave(draft, points[2], points[3], lies.view.name)


def _chains(job: Subject, lies: _Frame, one: Scribed, at: ScribedAt) -> list[Chain]:
    """What comes off and what is seen, then the blank."""
    rule, face = job.rules.wood, lies.face()
    away = -1.0 if lies.upright or lies.back > 0 else 1.0
    line = face + away * (FIRST - 1.0)
    places = sorted((one.made, float(at.room), one.true))
    links = [
        Link(figure=at.off, after="off", rule=rule),
        Link(figure=at.seen, after="seen", rule=rule),
    ]
    if one.true < one.made:
        links.reverse()
    axis = "across" if lies.upright else "up"
    return [
        Chain(
            view=lies.view,
            axis="across" if axis == "across" else "up",
            line=line,
            stops=tuple(Stop(at=place, foot=face) for place in places),
            links=tuple(links),
        ),
        Chain(
            view=lies.view,
            axis="across" if axis == "across" else "up",
            line=line + away * rule.next_chain,
            stops=tuple(Stop(at=place, foot=line, inner=True) for place in (places[0], places[-1])),
            links=(Link(figure=one.blank, after="blank", rule=rule),),
        ),
    ]


def _plumb(
    draft: Draft, job: Subject, lies: _Frame, row: _Row, at: ScribedAt, scale: float
) -> None:
    """The plumb line on end, and how far the wall stands from it."""
    low, high = lies.at(0.0, -_BEFORE * scale), lies.at(0.0, row.thick + _BEHIND * scale)
    draft.line("datum", (low[0], low[1] - 1.0), (high[0], high[1] + 2.0), lies.view.name)
    ends = sorted((0.0, float(at.room)))
    off, words = at.room, "from plumb"
    if at.behind is not None:
        off, words = at.behind, "behind plumb"
    place_chains(
        draft,
        [
            Chain(
                view=lies.view,
                axis="across",
                line=high[1] + 4.5,
                stops=tuple(Stop(at=place, foot=high[1]) for place in ends),
                links=(Link(figure=off, after=words, rule=job.rules.wood),),
            )
        ],
    )


def _caption(draft: Draft, job: Subject, row: _Row, at: ScribedAt, cell: Box) -> None:
    """Which piece, at which of its places, and where that is."""
    one = row.one
    x, y = cell.x0 + 4.0, cell.y1 - TITLE - 1.0
    side = f"{one.meets.removesuffix(' wall')} " if one.upright else ""
    words = f"{side}{one.noun}{f' of {row.of}' if row.of else ''}, {at.where}"
    draft.add(
        Label(text=words[:1].upper() + words[1:], at=(x, y), height=TITLE, weight="bold"),
        Label(text=_where(job, one, at), at=(x, y - 4.4)),
    )


def _where(job: Subject, one: Scribed, at: ScribedAt) -> str:
    """Where a section is cut, and where the room stands there that no chain can reach."""
    said = job.rules.arrangement.text
    if one.slope is not None:
        return f"Square to the slope, {degrees(abs(float(one.slope)))} off the level"
    if not one.upright:
        return f"{one.meets.capitalize()} {said(at.room)} from the datum"
    wall = f", wall {said(at.room)} from plumb" if one.meets == "right wall" else ""
    return f"{said(at.along)} above the datum{wall}"


def _notes(rows: Sequence[_Row]) -> Sentences:
    texts = [
        "Level sections are seen from above, upright ones as section B-B is. The datum is the "
        "highest floor; walls are straight between their readings.",
        "Chain line: the piece as it is made. What lies in wall, ceiling or floor comes off: "
        "scribe to the room itself; the numbers say how much to expect.",
    ]
    if any(row.one.filler for row in rows):
        texts.append("A blank is as wide as the most that is seen of it, and its spare.")
    return Sentences(title="Notes", kind="numbered", texts=tuple(texts))
