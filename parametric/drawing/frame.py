"""Paper, frame line, grid and title block.

Source: ISO 5457 (sizes, frame, fields of about 50 mm, centring marks) and ISO 7200 (what
a title block must say), both from memory.
"""

from __future__ import annotations

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import (
    BENCH,
    CELL_LABEL,
    TEXT,
    TITLE,
    Weight,
    shortened,
    width,
    wrap,
)
from parametric.drawing.marks import projection_sign
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Paper, Revision, TitleBlock
from parametric.drawing.tables import Cell

BLOCK_WIDTH = 120.0
_ROWS = (9.0, 13.0, 10.0, 10.0)
_BANNER = 9.0
_REVISION_ROW = 5.0
_REVISION_COLUMNS = (("Rev.", 10.0), ("Change", 68.0), ("Date", 22.0), ("By", 20.0))
_MOST_REVISIONS = 4
_LINE = 4.2
"""A further line of a revision's reason, mm."""
_STAMP, _STAMPED = 56.0, 4.0
"""The cell of what is not approved, beside the title, and the height of its letters, mm."""
_MARGIN = 1.2
NOT_YET = "not yet"


def title_block_box(paper: Paper, title: TitleBlock) -> Box:
    """What the title block takes of the sheet, with all that stands on it."""
    frame = paper.frame
    height = sum(_ROWS)
    if title.not_for_making:
        height += _BANNER
    if title.revisions:
        height += sum(_row_height(row) for row in _revision_rows(title))
    return Box(frame.x1 - BLOCK_WIDTH, frame.y0, frame.x1, frame.y0 + height)


def draw_frame(draft: Draft, title: TitleBlock) -> None:
    """Frame line, grid letters, centring marks and title block."""
    paper = draft.paper
    draft.path("sheet_frame", paper.frame.polygon, closed=True)
    _grid(draft, paper)
    _centring(draft, paper, title_block_box(paper, title))
    _title_block(draft, title)


def _grid(draft: Draft, paper: Paper) -> None:
    frame = paper.frame
    for k in range(paper.columns):
        x = frame.x0 + frame.width * k / paper.columns
        middle = x + frame.width / paper.columns / 2
        for low, high, base in (
            (frame.y0 - 5, frame.y0, frame.y0 - 3.8),
            (frame.y1, frame.y1 + 5, frame.y1 + 1.3),
        ):
            if k:
                draft.line("sheet_thin", (x, low), (x, high))
            _grid_letter(draft, str(k + 1), middle, base)
    for k in range(paper.rows):
        y = frame.y1 - frame.height * k / paper.rows
        middle = y - frame.height / paper.rows / 2 - TEXT / 2
        for left, right, at in (
            (frame.x0 - 5, frame.x0, frame.x0 - 2.5),
            (frame.x1, frame.x1 + 5, frame.x1 + 2.5),
        ):
            if k:
                draft.line("sheet_thin", (left, y), (right, y))
            _grid_letter(draft, "ABCDEFGHJKLM"[k], at, middle)


def _grid_letter(draft: Draft, letter: str, x: float, y: float) -> None:
    draft.add(Label(text=letter, at=(x, y), anchor="centre", layer="sheet_frame"))


def _centring(draft: Draft, paper: Paper, block: Box) -> None:
    """Marks at the middle of each side; none runs into the title block."""
    frame = paper.frame
    cx, cy = frame.centre
    up = 0.0 if block.x0 < cx else 5.0
    for a, b in (
        ((cx, frame.y1 + 5), (cx, frame.y1 - 5)),
        ((cx, frame.y0 - 5), (cx, frame.y0 + up)),
        ((frame.x0 - 5, cy), (frame.x0 + 5, cy)),
        ((frame.x1 + 5, cy), (frame.x1 - 5, cy)),
    ):
        draft.line("sheet_frame", a, b)


def _title_block(draft: Draft, title: TitleBlock) -> None:
    outer = title_block_box(draft.paper, title)
    left, right, low = outer.x0, outer.x1, outer.y0
    tops = [low + sum(_ROWS[i:]) for i in range(len(_ROWS))]
    draft.path("cut", ((left, low), (left, tops[0]), (right, tops[0])), closed=False)
    for y in tops[1:]:
        draft.line("sheet_thin", (left, y), (right, y))
    scale_row = (
        ("Drawn", title.drawn, 19.0, TEXT, "regular"),
        ("Approved", title.approved, 20.0, TEXT, "regular"),
        ("Date of issue", title.date, 24.0, TEXT, "regular"),
        ("Scale", title.scale, 23.0, TEXT, "regular"),
        ("Sizes and tolerance", title.sizes, 34.0, TEXT, "regular"),
    )
    number_row = (
        ("Drawing number", title.number, 50.0, TITLE, "bold"),
        ("Rev.", title.revision, 12.0, TITLE, "bold"),
        ("Sheet", "", 20.0, TITLE, "bold"),
        ("Fingerprint of the design", title.fingerprint, 38.0, TEXT, "regular"),
    )
    owner_row = (
        ("Owner", title.owner, 60.0, TEXT, "bold"),
        ("Document type", title.document, 39.0, TEXT, "regular"),
    )
    _cells(draft, left, tops[0], _ROWS[0], owner_row)
    draft.line("sheet_thin", (left + 99.0, tops[0]), (left + 99.0, tops[1]))
    projection_sign(draft, (left + 109.5, tops[1] + _ROWS[0] / 2), title.projection)
    _cells(draft, left, tops[2], _ROWS[2], scale_row)
    _cells(draft, left, tops[3], _ROWS[3], number_row)
    _title(draft, left, tops[1], title)
    if title.not_approved:
        _stamp(draft, right, tops[1], title)
    top = tops[0]
    if title.not_for_making:
        top = _banner(draft, left, right, top, "NOT FOR MAKING")
    if title.revisions:
        _revisions(draft, left, right, top, title)
    draft.reserve(outer)


def _cells(
    draft: Draft,
    left: float,
    top: float,
    row: float,
    cells: tuple[tuple[str, str, float, float, str], ...],
) -> None:
    x = left
    for index, (name, value, wide, height, weight) in enumerate(cells):
        if index:
            draft.line("sheet_thin", (x, top), (x, top - row))
        draft.add(Label(text=name, at=(x + _MARGIN, top - 2.7), height=CELL_LABEL))
        at = (x + _MARGIN, top - row + 1.7)
        if name == "Sheet":
            draft.number_at = (at, height)
        else:
            _value(draft, value, at, wide, height, weight == "bold")
        x += wide


def _title(draft: Draft, left: float, top: float, title: TitleBlock) -> None:
    room = BLOCK_WIDTH - (_STAMP if title.not_approved else 0.0)
    draft.add(Label(text="Title", at=(left + _MARGIN, top - 2.7), height=CELL_LABEL))
    _value(draft, title.title, (left + _MARGIN, top - 7.6), room, TITLE, True)
    _value(draft, title.second_line, (left + _MARGIN, top - 11.7), room, TEXT, False)


def _value(
    draft: Draft, text: str, at: tuple[float, float], room: float, height: float, bold: bool
) -> None:
    """A value in its cell; a long one drops to the next height, then its end is left out."""
    text = text or NOT_YET
    weight: Weight = "bold" if bold else "regular"
    room = room - 2 * _MARGIN
    if height > TEXT and width(text, height, weight) > room:
        height = TEXT
    text = shortened(text, room, height, weight)
    draft.cells.append(Cell(text=text, room=room, height=height, weight=weight))
    draft.add(Label(text=text, at=at, height=height, weight=weight))


def _banner(draft: Draft, left: float, right: float, low: float, words: str) -> float:
    """The words that keep a faulty design off the bench, across the top of the block."""
    top = low + _BANNER
    draft.path("cut", ((left, low), (left, top), (right, top)))
    draft.add(
        Label(
            text=words,
            at=((left + right) / 2, low + 2.0),
            height=BENCH,
            anchor="centre",
            weight="bold",
        )
    )
    return top


def _stamp(draft: Draft, right: float, top: float, title: TitleBlock) -> None:
    """NOT APPROVED, and what moved, beside the title: nothing else on the sheet gives way."""
    left, low = right - _STAMP, top - _ROWS[1]
    draft.path("cut", ((left, low), (left, top)))
    draft.add(
        Label(
            text="NOT APPROVED",
            at=((left + right) / 2, top - 5.2),
            height=_STAMPED,
            anchor="centre",
            weight="bold",
        )
    )
    for index, line in enumerate(stamp_lines(title.moved)):
        draft.cells.append(
            Cell(text=line, room=_STAMP - 2 * _MARGIN, height=TEXT, weight="regular")
        )
        draft.add(Label(text=line, at=(left + _MARGIN, top - 9.0 - 3.2 * index)))


def stamp_lines(words: str) -> list[str]:
    """Words in lines as wide as the stamp; it holds two."""
    return wrap(words, _STAMP - 2 * _MARGIN)


def _shown(title: TitleBlock) -> tuple[Revision, ...]:
    """The revisions that the table has room for: the last four."""
    return title.revisions[-_MOST_REVISIONS:]


def _change_head(title: TitleBlock) -> str:
    """The heading of the changes; it says when some of them stand elsewhere."""
    if title.earlier:
        return f"Change; earlier ones {title.earlier_at}"
    shown = len(_shown(title))
    return "Change" if shown == len(title.revisions) else f"Change; the last {shown}"


_Row = tuple[str, tuple[str, ...], str, str]
"""Letter, change in lines, date, who."""


def _revision_rows(title: TitleBlock) -> list[_Row]:
    """Headings, then the revisions shown, the newest last."""
    room, by = (_REVISION_COLUMNS[i][1] - _MARGIN for i in (1, 3))
    return [
        ("Rev.", (_change_head(title),), "Date", "By"),
        *(
            (r.letter, tuple(wrap(r.change, room)) or ("",), r.date, shortened(r.by or NOT_YET, by))
            for r in _shown(title)
        ),
    ]


def _row_height(row: _Row) -> float:
    return _REVISION_ROW + _LINE * (len(row[1]) - 1)


def _revisions(draft: Draft, left: float, right: float, low: float, title: TitleBlock) -> None:
    """The newest revision next to the block, headings on top."""
    rows = _revision_rows(title)
    y = top = low + sum(map(_row_height, rows))
    draft.add(Stroke(layer="edge", points=((left, low), (left, top), (right, top))))
    for index, row in enumerate(rows):
        if index:
            draft.line("sheet_thin", (left, y), (right, y))
        x = left
        letter, change, date, by = row
        for (_, wide), lines in zip(
            _REVISION_COLUMNS, ((letter,), change, (date,), (by,)), strict=True
        ):
            weight: Weight = "bold" if index == 0 else "regular"
            for down, text in enumerate(lines):
                base = y - _REVISION_ROW + 1.3 - _LINE * down
                draft.cells.append(Cell(text=text, room=wide - _MARGIN, height=TEXT, weight=weight))
                draft.add(Label(text=text, at=(x + _MARGIN, base), weight=weight))
            x += wide
        y -= _row_height(row)
