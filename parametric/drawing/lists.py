"""The lists on paper: what is cut, and what glass is ordered, one box to tick a line.

Rows are high and letters large, since the page lies beside a saw.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

from parametric.drawing.column import Sentences, item_height, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TITLE
from parametric.drawing.papers import A4
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, Table
from parametric.trade.cutlist import CutRow, cut_list, of_timber
from parametric.trade.glass import glass_order
from parametric.trade.tables import cut_table, glass_table

ROW = 7.0
_HEAD = 6.5
_BETWEEN = 9.0
_TICK = 6.0
_TOP = 8.0

_CUT = (
    Column(head="Mark", width=14.0),
    Column(head="Part", width=38.0),
    Column(head="No.", width=10.0, anchor="right"),
    Column(head="Length", width=19.0, anchor="right"),
    Column(head="Width", width=18.0, anchor="right"),
    Column(head="Thick", width=17.0, anchor="right"),
    Column(head="", width=51.0),
)
_GLASS = (
    Column(head="Mark", width=14.0),
    Column(head="No.", width=10.0, anchor="right"),
    Column(head="Kind", width=43.0),
    Column(head="Width", width=19.0, anchor="right"),
    Column(head="Height", width=19.0, anchor="right"),
    Column(head="Thick", width=16.0, anchor="right"),
    Column(head="kg each", width=20.0, anchor="right"),
    Column(head="Class", width=26.0, anchor="right"),
)


@dataclass(frozen=True, slots=True, kw_only=True)
class _List:
    """One list: its title, its columns, its rows, what is said under it."""

    title: str
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    foot: str


def draw_lists(job: Subject, title: TitleBlock) -> tuple[Sheet, ...]:
    """As many pages as the lists take."""
    title = dataclasses.replace(title, scale="no scale")
    waiting = [part for part in _lists(job) if part.rows]
    notes = Sentences(title="Glass", kind="warning", texts=_glass_words(job))
    sheets: list[Sheet] = []
    while waiting or not sheets:
        draft = Draft(A4)
        draw_frame(draft, title)
        y = A4.frame.y1 - _TOP
        floor = title_block_box(A4, title).y1 + 6.0
        while waiting:
            room = int((y - _HEAD - floor) // ROW) - 2
            if room < 1 or (room < len(waiting[0].rows) and room < 5):
                break
            now, later = _split(waiting[0], room)
            y = _draw(draft, now, y) - _BETWEEN
            waiting[:1] = [later] if later is not None else []
            if later is not None:
                break
        if not waiting and notes.texts:
            box = Box(A4.frame.x0 + _TICK, floor, A4.frame.x1 - 4.0, y + 2.0)
            if item_height(notes, box.width) <= box.height:
                place_items(draft, [notes], [box])
                notes = dataclasses.replace(notes, texts=())
        sheets.append(draft.sheet(title))
        if not waiting and notes.texts:
            sheets.append(_notes_alone(title, notes))
    return tuple(sheets)


def _notes_alone(title: TitleBlock, notes: Sentences) -> Sheet:
    """What is said of the glass on a page of its own, where the lists fill theirs."""
    draft = Draft(A4)
    draw_frame(draft, title)
    frame = A4.frame
    box = Box(
        frame.x0 + _TICK, title_block_box(A4, title).y1 + 6.0, frame.x1 - 4.0, frame.y1 - _TOP
    )
    left_over = place_items(draft, [notes], [box])
    draft.unplaced += [item.title for item in left_over]
    return draft.sheet(title)


def _split(part: _List, room: int) -> tuple[_List, _List | None]:
    """What fits on the page, and what goes on to the next."""
    if len(part.rows) <= room:
        return part, None
    carried = part.title if part.title.endswith(", continued") else f"{part.title}, continued"
    return (
        dataclasses.replace(part, rows=part.rows[:room], foot="continued on the next page"),
        dataclasses.replace(part, title=carried, rows=part.rows[room:]),
    )


def _draw(draft: Draft, part: _List, y: float) -> float:
    """Draw a list from a height down; returns where it ends."""
    left = A4.frame.x0 + _TICK
    table = Table(
        at=(left, y - _HEAD),
        columns=part.columns,
        rows=part.rows,
        title=part.title,
        height=TITLE,
        pitch=ROW,
        band=5,
        ticked=True,
    )
    draft.add(table)
    low = table.box.y0
    draft.add(Label(text=part.foot, at=(left + 1.2, low - 5.2), height=TITLE))
    return low - 5.2


def _lists(job: Subject) -> list[_List]:
    """One cut list for each timber, then the glass."""
    unit, shop = job.resolved.design.unit, job.resolved.shop
    rows = sorted(of_timber(cut_list(job.assembly)), key=_saw_order)
    lists = []
    for timber in dict.fromkeys(row.material for row in rows):
        own = tuple(row for row in rows if row.material == timber)
        printed = cut_table(own, unit, shop).rows
        count = sum(row.number for row in own)
        lists.append(
            _List(
                title=f"Cut list, {timber}",
                columns=_CUT,
                rows=tuple((*row[:6], row[7]) for row in printed),
                foot=f"{count} pieces, length along the grain",
            )
        )
    panes = glass_order(job.resolved, job.assembly)
    lists.append(
        _List(
            title="Glass order",
            columns=_GLASS,
            rows=tuple(row[:8] for row in glass_table(panes, unit, shop).rows),
            foot=f"{sum(row.number for row in panes)} panes",
        )
    )
    return lists


def _saw_order(row: CutRow) -> tuple[float, float, float, str]:
    """By thickness, then width, then length, the large ones first."""
    return (-float(row.thickness), -float(row.width), -float(row.length), row.mark)


def _glass_words(job: Subject) -> tuple[str, ...]:
    """What must be said with the glass order, once for all panes of a size."""
    said = [p.message for p in job.problems if p.code == "glass_not_safety"]
    return tuple(dict.fromkeys(said))
