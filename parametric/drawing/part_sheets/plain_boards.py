"""Boards of casework that are only sawn to size, in one list: what has no cut has no sheet of its own."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from parametric.drawing.draft import Draft
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.lettering import TEXT
from parametric.drawing.papers import drawing_papers
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, Table, fitted
from parametric.model import Part
from parametric.names import SEPARATOR, short
from parametric.trade.edge_band import banded_words

_CASEWORK = ("C", "W", "X", "Y")
"""What the marks of boards of cases, drawers, backs and runs begin with."""
_PITCH = 5.2
_TOP = 16.0
_EDGE = 8.0
_COLUMNS = (
    Column(head="Mark", width=16.0),
    Column(head="Board", width=46.0),
    Column(head="No.", width=12.0, anchor="right"),
    Column(head="Length", width=24.0, anchor="right"),
    Column(head="Width", width=24.0, anchor="right"),
    Column(head="Thick", width=22.0, anchor="right"),
    Column(head="Of", width=36.0),
    Column(head="Banded", width=30.0),
    Column(head="Where", width=106.0),
    Column(head="Then", width=48.0),
)


def plain_boards(parts: Iterable[Part]) -> dict[str, list[Part]]:
    """Boards of casework with no cut, or none before they are fitted to the room, by mark."""
    found: dict[str, list[Part]] = {}
    for part in parts:
        if part.mark[:1] in _CASEWORK and not part.supplied and fitted_on_site(part):
            found.setdefault(part.mark, []).append(part)
    return found


def fitted_on_site(part: Part) -> bool:
    """Whether a part leaves the shop as it was sawn."""
    return all(cut.making.when == "on site" for cut in part.cuts)


def draw_plain_boards(job: Subject, title: TitleBlock) -> tuple[Sheet, ...]:
    """The list, on as many sheets as it takes; none where every board is cut or there is none."""
    rows = [_row(job, mark, own) for mark, own in plain_boards(job.assembly.parts).items()]
    paper = drawing_papers(job)[0]
    block = title_block_box(paper, title)
    room = paper.frame.y1 - _TOP - block.y1 - 14.0
    most = int(room / _PITCH) - 1
    title = dataclasses.replace(
        title, document="Plain boards", second_line="Sawn to size, no other cut", scale="none"
    )
    sheets = []
    for start in range(0, len(rows), most):
        draft = Draft(paper)
        draw_frame(draft, title)
        some = rows[start : start + most]
        at = (paper.frame.x0 + _EDGE, paper.frame.y1 - _TOP)
        wide = paper.frame.width - 2 * _EDGE
        share = wide / sum(column.width for column in _COLUMNS)
        columns = [dataclasses.replace(c, width=c.width * share) for c in _COLUMNS]
        table = Table(
            at=at,
            columns=fitted(columns, some),
            rows=tuple(some),
            title="Boards that are only sawn to size",
            pitch=_PITCH,
            band=5,
        )
        draft.add(table)
        low = at[1] - _PITCH * (len(some) + 1) - 6.0
        draft.add(
            Label(
                text="Length is along the grain. Sizes are sawn sizes, before a band goes on. "
                "Flat, and square at every corner.",
                at=(at[0], low - TEXT / 2),
            )
        )
        sheets.append(draft.sheet(title))
    return tuple(sheets)


def _row(job: Subject, mark: str, own: list[Part]) -> tuple[str, ...]:
    first = own[0]
    blank = first.blank
    bands = banded_words(first)
    return (
        mark,
        ", ".join(dict.fromkeys(part.noun for part in own)),
        str(len(own)),
        *(job.wood(value) for value in (blank.length, blank.width, blank.thickness)),
        first.material.name,
        ", ".join(bands) or "–",
        _where(own),
        "scribed on site" if first.cuts else "",
    )


_MANY = 3
"""Homes that are named; more are counted."""


def _where(own: list[Part]) -> str:
    """Which cabinets or runs they go to, how many to each where there are several."""
    homes: dict[str, int] = {}
    for part in own:
        home = part.name.partition(SEPARATOR)[0]
        homes[home] = homes.get(home, 0) + 1
    said = [home if count == 1 else f"{count} in {home}" for home, count in homes.items()]
    if len(said) > _MANY:
        said = [*said[:_MANY], f"{len(said) - _MANY} more"]
    return ", ".join(said) or short(own[0].name)
