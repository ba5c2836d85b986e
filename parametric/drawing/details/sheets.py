"""The details of a job, packed on as many sheets as they take."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.details.arch_set_out import arch_set_out
from parametric.drawing.details.board import Detail, carried
from parametric.drawing.details.case_edge import case_edge
from parametric.drawing.details.floor_guide import floor_guide
from parametric.drawing.details.glass_in_rebate import glass_in_rebate
from parametric.drawing.details.glass_in_stops import glass_in_stops
from parametric.drawing.details.glazing_bar import glazing_bar
from parametric.drawing.details.head_and_foot import foot_gap, head_gap
from parametric.drawing.details.head_and_track import head_and_track
from parametric.drawing.details.hinge_jamb import hinge_jamb
from parametric.drawing.details.loose_tenon_joint import loose_tenon_joint
from parametric.drawing.details.meeting_stiles import meeting_stiles
from parametric.drawing.details.moulded_corner import moulded_corner
from parametric.drawing.details.panel_in_stile import panel_in_stile
from parametric.drawing.details.passing_leaves import passing_leaves
from parametric.drawing.details.pull_pockets import pull_pockets
from parametric.drawing.details.stopped_groove import stopped_groove
from parametric.drawing.details.stub_tenon_joint import stub_tenon_joint
from parametric.drawing.details.words import scales_said
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import newest_only
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TEXT, TITLE, width, wrap
from parametric.drawing.papers import drawing_papers
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Circle, Label, Stroke
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.trade.paperwork import Paperwork

_GUTTER = 12.0
_SIDE, _EDGE = 7.0, 5.5
"""From the frame line to the nearest thing, aside and over or under, mm."""
_SPREAD = 16.0
"""The most that spare width or height adds to a gutter, mm."""
_RING = 4.0
_NAME = 10.5
"""From the left of a caption to its words, mm."""
_GAP = 5.0
"""From a drawing to its caption, mm."""
_LINE = 1.7 * TEXT
_BETWEEN = 6.0
"""From one shelf's captions to the next shelf's drawings, mm."""
_LEAST = 74.0
"""A caption's words are not wrapped narrower than this, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Called:
    """A detail with its number and the sheet it stands on."""

    number: int
    sheet: int
    detail: Detail


@dataclass(frozen=True, slots=True, kw_only=True)
class Details:
    """Every detail of a job: its sheets, and where each is to be found."""

    sheets: tuple[Sheet, ...] = ()
    called: tuple[Called, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class _Block:
    """What a detail takes on a shelf, mm: its drawing with the caption under it."""

    detail: Detail
    lines: tuple[str, ...]
    wide: float
    tall: float
    under: float


@dataclass(frozen=True, slots=True, kw_only=True)
class _Shelf:
    """Details side by side on one caption line; `top` is where the tallest drawing begins."""

    top: float
    blocks: tuple[_Block, ...]

    @property
    def line(self) -> float:
        """Where all drawings stand."""
        return self.top - max(b.tall for b in self.blocks)

    @property
    def foot(self) -> float:
        """Where the longest caption ends."""
        return self.line - max(b.under for b in self.blocks)

    @property
    def wide(self) -> float:
        """With the least gutters."""
        return sum(b.wide for b in self.blocks) + _GUTTER * (len(self.blocks) - 1)


def draw_details(job: Subject, paper: Paperwork, title: TitleBlock, first_sheet: int) -> Details:
    """Draw, pack and number the details.

    Args:
        job: the job.
        paper: its lists and set-ups.
        title: what the sheets' title blocks say.
        first_sheet: the number that the first of the sheets will have in its group.
    """
    blocks = [_block(detail) for detail in every_detail(job, paper)]
    # Here the whole table of revisions would cost a shelf.
    title = newest_only(title)
    for size in drawing_papers(job):
        packed = _packed(blocks, size, title)
        if packed is not None:
            return _drawn(job, packed, size, title, first_sheet)
    raise ValueError("a detail is larger than the largest sheet")


def every_detail(job: Subject, paper: Paperwork) -> tuple[Detail, ...]:
    """Each detail whose thing is there, in the order they are numbered."""
    found = (
        panel_in_stile(job, paper),
        glass_in_stops(job),
        glass_in_rebate(job),
        glazing_bar(job),
        arch_set_out(job),
        moulded_corner(job),
        loose_tenon_joint(job, paper),
        stub_tenon_joint(job),
        stopped_groove(job),
        pull_pockets(job),
        floor_guide(job, paper),
        head_and_track(job, paper),
        passing_leaves(job, paper),
        meeting_stiles(job),
        hinge_jamb(job),
        case_edge(job),
        head_gap(job),
        foot_gap(job),
    )
    return tuple(detail for detail in found if detail is not None)


def _block(detail: Detail) -> _Block:
    box = detail.box
    lines = tuple(wrap(detail.second, max(_LEAST, box.width) - _NAME))
    words = max(width(detail.title, TITLE, "bold"), *(width(line) for line in lines))
    return _Block(
        detail=detail,
        lines=lines,
        wide=max(box.width, _NAME + words),
        tall=box.height,
        under=_GAP + TITLE + 2.6 + TEXT + (len(lines) - 1) * _LINE + 0.9,
    )


def _packed(
    blocks: Sequence[_Block], paper: Paper, title: TitleBlock
) -> tuple[tuple[_Shelf, ...], ...] | None:
    """Shelves from the top, first fit, sheet by sheet; None where one block fits no sheet."""
    sheets: list[list[_Shelf]] = []
    for block in blocks:
        if sheets and _shelved(sheets[-1], block, paper, title):
            continue
        sheets.append([])
        if not _shelved(sheets[-1], block, paper, title):
            return None
    return tuple(tuple(shelves) for shelves in sheets)


def _shelved(shelves: list[_Shelf], block: _Block, paper: Paper, title: TitleBlock) -> bool:
    """Put a block on a shelf that has room, or on a new one; False where the sheet is full."""
    for index, shelf in enumerate(shelves):
        wider = dataclasses.replace(shelf, blocks=(*shelf.blocks, block))
        lower = wider.foot < shelf.foot - 1e-9
        if lower and index < len(shelves) - 1:
            continue
        if _fits(wider, paper, title):
            shelves[index] = wider
            return True
    top = shelves[-1].foot - _BETWEEN if shelves else paper.frame.y1 - _EDGE
    new = _Shelf(top=top, blocks=(block,))
    if not _fits(new, paper, title):
        return False
    shelves.append(new)
    return True


def _limit(shelf: _Shelf, paper: Paper, title: TitleBlock) -> float:
    """How far right a shelf may reach: the title block is in the way of the low ones."""
    taken = title_block_box(paper, title)
    return taken.x0 - _SIDE if shelf.foot < taken.y1 + 4.0 else paper.frame.x1 - _SIDE


def _fits(shelf: _Shelf, paper: Paper, title: TitleBlock) -> bool:
    left = paper.frame.x0 + _SIDE
    return left + shelf.wide <= _limit(shelf, paper, title) and shelf.foot >= paper.frame.y0 + _EDGE


def _aired(shelves: tuple[_Shelf, ...], paper: Paper, title: TitleBlock) -> tuple[_Shelf, ...]:
    """Spare height shared out between shelves, as far as the title block lets them down."""
    spare = shelves[-1].foot - paper.frame.y0 - _EDGE
    for share in (1.0, 0.75, 0.5, 0.25):
        step = min(_SPREAD, spare / (len(shelves) + 1)) * share
        moved = tuple(
            dataclasses.replace(shelf, top=shelf.top - step * (i + 0.5))
            for i, shelf in enumerate(shelves)
        )
        if all(_fits(shelf, paper, title) for shelf in moved):
            return moved
    return shelves


def _drawn(
    job: Subject,
    packed: tuple[tuple[_Shelf, ...], ...],
    paper: Paper,
    title: TitleBlock,
    first_sheet: int,
) -> Details:
    sheets: list[Sheet] = []
    called: list[Called] = []
    for index, shelves in enumerate(packed):
        blocks = [block for shelf in shelves for block in shelf.blocks]
        first, last = len(called) + 1, len(called) + len(blocks)
        scales = sorted({scale for block in blocks for scale in block.detail.scales})
        own = dataclasses.replace(
            title,
            second_line=f"Details {first} to {last}" if last > first else f"Detail {first}",
            scale=scales_said(job, scales),
        )
        draft = Draft(paper)
        draw_frame(draft, own)
        for shelf in _aired(shelves, paper, title):
            at = paper.frame.x0 + _SIDE
            spare = _limit(shelf, paper, title) - at - shelf.wide
            gutter = _GUTTER + min(_SPREAD, spare / len(shelf.blocks))
            for block in shelf.blocks:
                number = len(called) + 1
                stood = _stand(draft, block, number, (at, shelf.line))
                called.append(Called(number=number, sheet=first_sheet + index, detail=stood))
                at += block.wide + gutter
        sheets.append(draft.sheet(own))
    return Details(sheets=tuple(sheets), called=tuple(called))


def _stand(draft: Draft, block: _Block, number: int, at: Point) -> Detail:
    """A detail where it belongs, with its caption under it."""
    box = block.detail.box
    x, y = at
    detail = carried(block.detail, (x - box.x0, y - box.y0))
    draft.views += detail.views
    draft.add(*detail.elements)
    draft.unplaced += detail.unplaced
    base = y - _GAP - TITLE
    draft.add(
        Circle(layer="edge", centre=(x + _RING, base - 0.6), radius=_RING),
        Label(
            text=str(number),
            at=(x + _RING, base - 0.6 - TITLE / 2),
            height=TITLE,
            anchor="centre",
            weight="bold",
        ),
        Label(text=detail.title, at=(x + _NAME, base), height=TITLE, weight="bold"),
    )
    name = width(detail.title, TITLE, "bold")
    words = max(name, *(width(line) for line in block.lines))
    end = x + _NAME + words
    draft.add(Stroke(layer="table", points=((x + _NAME, base - 1.4), (end, base - 1.4))))
    for index, line in enumerate(block.lines):
        down = base - 2.6 - TEXT - index * _LINE
        draft.add(Label(text=line, at=(x + _NAME, down)))
    return detail
