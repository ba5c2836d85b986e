"""The sheet of small parts: stops and loose tenons, one above the other.

mark, how many
balloons
+--------------------------------+     +--+
|                                |     |  |   section        list, what is complete
+--------------------------------+     +--+
0                        784.5
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.column import Item, Sentences, TableItem, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.fitting import first_that_fits
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TITLE
from parametric.drawing.marks import caption
from parametric.drawing.papers import papers_and_scales, scale_words
from parametric.drawing.part_sheets import cross_sections
from parametric.drawing.part_sheets.balloons import place_balloons
from parametric.drawing.part_sheets.breaks import lie_along
from parametric.drawing.part_sheets.cross_sections import Chosen
from parametric.drawing.part_sheets.cut_list import PITCH, completeness, cut_list
from parametric.drawing.part_sheets.cut_shapes import own_side, span_along
from parametric.drawing.part_sheets.long_part import call_section
from parametric.drawing.part_sheets.running_sizes import (
    numbers_tall,
    place_along,
    places_along,
    sizes_by_side,
)
from parametric.drawing.part_sheets.shaped_cuts import changing_stops
from parametric.drawing.part_sheets.strips import lay_strip, mark_grain, strip_call
from parametric.drawing.part_sheets.unfolded import unfolded
from parametric.drawing.part_sheets.words import how_many, notes, scales_said
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Paper, Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, Table
from parametric.model import Edge
from parametric.trade.part_cuts import PartCuts

_METRIC = ((2.0, 5.0), (2.0, 5.0, 10.0))
_INCH = ((2.0, 4.0), (2.0, 4.0, 8.0))
_EDGE = 6.0
_HEAD = 7.0
_BALLOONS = 5.6
_SECTION = 34.0
"""Room for a section with its two sizes beside a strip, mm."""
_SHARES = (0.25, 0.75, 0.35, 0.65, 0.2, 0.8, 0.15, 0.85, 0.5, 0.4, 0.6)
"""Where along a strip the name of an edge is tried, in turn."""
_DROP = 9.0
_BETWEEN = 9.0


def draw_small_parts(
    job: Subject,
    parts: Sequence[PartCuts],
    all_cuts: tuple[PartCuts, ...],
    letters: Sequence[str],
    title: TitleBlock,
) -> tuple[Sheet, ...]:
    """Small parts, as many to a sheet as stand clear on it.

    Args:
        job: the job.
        parts: the small parts.
        all_cuts: those of every part.
        letters: what their sections may be called, one a part.
        title: the title block of the group.
    """
    sheets: list[Sheet] = []
    waiting = list(parts)
    used = 0
    while waiting:
        for count in range(len(waiting), 0, -1):
            sheet = _sheet(job, waiting[:count], all_cuts, letters[used:], title)
            if count == 1 or not sheet.unplaced:
                break
        sheets.append(sheet)
        used += count
        waiting = waiting[count:]
    return tuple(sheets)


def _sheet(
    job: Subject,
    parts: Sequence[PartCuts],
    all_cuts: tuple[PartCuts, ...],
    letters: Sequence[str],
    title: TitleBlock,
) -> Sheet:
    marks = ", ".join(own.part.mark for own in parts)
    title = dataclasses.replace(
        title,
        document=f"Part {marks}" if len(parts) == 1 else f"Parts {marks}",
        second_line="Small parts",
    )

    def attempt(paper: Paper, scale: float, block: TitleBlock) -> Sheet | None:
        return _draw(job, parts, all_cuts, letters, paper, scale, block)

    return first_that_fits(
        papers_and_scales(job, mm=_METRIC, inch=_INCH),
        title,
        attempt,
        too_large=f"{marks} are past the largest sheet",
    )


def _draw(
    job: Subject,
    parts: Sequence[PartCuts],
    all_cuts: tuple[PartCuts, ...],
    letters: Sequence[str],
    paper: Paper,
    scale: float,
    title: TitleBlock,
) -> Sheet | None:
    frame, block = paper.frame, title_block_box(paper, title)
    title = dataclasses.replace(title, scale=scales_said(job, (scale, 1.0)))
    draft = Draft(paper)
    draw_frame(draft, title)
    words: list[Item] = []
    down = frame.y1 - 5.0
    for own, letter in zip(parts, letters, strict=False):
        low, items = _block(draft, job, own, letter, scale, down)
        if low is None:
            return None
        words += items
        for text in (f"{how_many(own)}.", *notes(job, own, unfolded(own.part), all_cuts)):
            words.append(_sentence(own, text))
        down = low - _BETWEEN
    if down < frame.y0:
        return None
    items = _gathered(words)
    gap = 6.0
    wide = block.width - gap
    columns = [
        Box(
            frame.x0 + _EDGE + k * (wide + gap),
            frame.y0 + 4.0,
            frame.x0 + _EDGE + k * (wide + gap) + wide,
            down,
        )
        for k in range(2)
    ]
    columns.append(Box(block.x0, block.y1 + 4.0, frame.x1 - _EDGE, down))
    left_over = place_items(draft, items, columns)
    draft.unplaced += [item.title for item in left_over]
    return draft.sheet(title)


def _sentence(own: PartCuts, text: str) -> Sentences:
    return Sentences(title=own.part.mark, kind="numbered", texts=(text,))


def _gathered(items: Sequence[Item]) -> list[Item]:
    """The sentences of one part under one heading, after the tables."""
    tables = [item for item in items if isinstance(item, TableItem)]
    said: dict[str, list[str]] = {}
    for item in items:
        if isinstance(item, Sentences):
            said.setdefault(item.title, []).extend(item.texts)
    return [
        *tables,
        *(Sentences(title=mark, kind="numbered", texts=tuple(t)) for mark, t in said.items()),
    ]


def _block(
    draft: Draft, job: Subject, own: PartCuts, letter: str, scale: float, top: float
) -> tuple[float | None, list[Item]]:
    """One part: its strip, its section, its list; returns how far down it reaches."""
    part, frame = unfolded(own.part), draft.paper.frame
    name = f"{own.part.mark}  {own.part.noun}  {scale_words(scale, job.rules.unit)}"
    left = frame.x0 + _EDGE + 4.0
    # The list stands at the right: it is measured before the strip is laid.
    probe = cut_list(job, own, (0.0, 0.0), own.part.mark)
    list_left = frame.x1 - _EDGE - probe.width
    spans = [span for cut in part.part.cuts if (span := span_along(cut, part)) is not None]
    lie = lie_along(
        (-part.foot, part.length + part.head),
        [*(at for span in spans for at in span), *changing_stops(part)],
        [],
        scale=scale,
        left=left,
        room=list_left - _SECTION - part.width - left - 12.0,
    )
    if lie is None:
        return None, []
    caption(draft, (frame.x0 + _EDGE, top - TITLE), name)
    strip_top = top - _HEAD - _BALLOONS - 4.4
    base = strip_top - part.width / scale
    strip = lay_strip(draft, part, "face", lie, base)
    sizes = sizes_by_side(own, part, ["face"]).get("face", [])
    place_along(draft, strip, places_along(strip, sizes, job.rules), _DROP)
    rows = [row for row in own.rows if own_side(row.cut, part) == "face"]
    ballooned = place_balloons(
        draft, [strip_call(row, part, strip) for row in rows], strip.top + _BALLOONS
    )
    # Off the middle, so that the edges' names have room on a short piece.
    runs = ((part.length * 0.62, part.length * 0.9), (0.0, part.length))
    chosen = Chosen(letter=letter, runs=runs, cuts=(), shows=())
    call_section(draft, chosen, strip)
    _edge_words(draft, own, strip.base, strip.top, lie.left, lie.right)
    mark_grain(draft, strip)
    drawn = cross_sections.prepare(chosen, own, part, job.rules)
    corner = (lie.right + 14.0 + drawn.left, top - _HEAD - drawn.tall - 4.0)
    cross_sections.draw(draft, drawn, part, corner, "", scale_words(drawn.scale, job.rules.unit))
    listed = dataclasses.replace(
        probe, at=(list_left, top - 4.0), title=f"Every cut in {own.part.mark}"
    )
    draft.add(listed)
    counted = _counted(own, listed, ballooned)
    draft.add(counted)
    lowest = min(
        base - _DROP - numbers_tall(sizes, job.rules),
        corner[1] - drawn.below,
        counted.box.y0,
    )
    return lowest, []


def _counted(own: PartCuts, listed: Table, ballooned: Sequence[int]) -> Table:
    rows, wrong = completeness(own, listed, ballooned, (1, 1), (0, 0))
    return Table(
        at=(listed.at[0], listed.box.y0 - 4.0),
        columns=(
            Column(head="Complete when", width=50.0),
            Column(head="here", width=12.0, anchor="right"),
            Column(head="needed", width=16.0, anchor="right"),
        ),
        rows=rows,
        wrong=wrong,
        pitch=PITCH,
    )


def _edge_words(
    draft: Draft, own: PartCuts, base: float, top: float, left: float, right: float
) -> None:
    """The names of the edges that have one, above and below the strip."""
    named = own.part.faces
    rows: tuple[tuple[Edge, tuple[float, float]], ...] = (
        ("high edge", (top + 1.4, top + 5.2)),
        ("low edge", (base - 4.0, base - 7.8)),
    )
    for face, ys in rows:
        word = named.get(face)
        if word:
            xs = [left + (right - left) * share for share in _SHARES]
            draft.add_first([Label(text=word, at=(x, y), anchor="centre") for y in ys for x in xs])
