"""Every size of pane from the front: which way it stands, its two sizes, where its mark goes."""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from parametric.catalog.glass_facts import SAFETY_KINDS
from parametric.drawing.draft import Draft
from parametric.drawing.full_size.outlines import drawn
from parametric.drawing.hatching import glass_seen
from parametric.drawing.lettering import TEXT, TITLE, width
from parametric.drawing.papers import scale_words
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Fill, Label, Stroke, arrowhead
from parametric.drawing.running import Picture
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.infill.glass import SpacerGrid
from parametric.trade.glass import GlassRow
from parametric.trade.printed import Printed

_SCALES: dict[str, tuple[float, ...]] = {
    "mm": (10.0, 20.0, 50.0),
    "inch": (12.0, 16.0, 24.0, 48.0),
}
_LEFT, _RIGHT = 13.0, 16.0
_SECOND = 9.0
"""What the height of a shaped pane's right edge takes up beside it, mm."""
_PLACES = 11.0
"""What the places of a unit's spacer bars take up over it and beside it, mm."""
_BELOW, _ABOVE = 12.0, 6.5
_STAMP = 3.2
_ROW = 6.0
_TITLE_AIR = 8.0


def pane_picture(
    job: Subject, rows: Sequence[GlassRow], said: Printed, wide: float, most_high: float
) -> tuple[Picture, float]:
    """All sizes side by side, at one scale, as many rows of them as they take; and how wide.

    Args:
        job: its unit says which scales there are.
        rows: the order.
        said: how sizes are printed.
        wide: what the page has across, mm.
        most_high: how tall the tallest pane is drawn at most, mm.
    """
    scales = _SCALES[job.rules.wood.unit]
    tallest = max(float(row.height) for row in rows)
    widest = max(float(row.width) for row in rows)
    beside = max(_beside(row) for row in rows)
    scale = next(
        (s for s in scales if tallest / s <= most_high and widest / s + beside <= wide),
        scales[-1],
    )
    shelves = _shelves(rows, scale, wide)
    height = sum(_shelf_height(shelf, scale) for shelf in shelves) + _ROW * (len(shelves) - 1)

    def draw(draft: Draft, box: Box) -> None:
        top = box.y1
        for shelf in shelves:
            low = top - _shelf_height(shelf, scale) + _BELOW
            left = box.x0
            for row in shelf:
                _draw_pane(draft, row, said, scale, (left + _LEFT, low))
                left += _span(row, scale)
            top -= _shelf_height(shelf, scale) + _ROW

    words = scale_words(scale, job.rules.wood.unit)
    title = f"Seen from the front  {words}"
    across = max(sum(_span(row, scale) for row in shelf) for shelf in shelves)
    across = max(across, width(title, TITLE, "bold") + _TITLE_AIR)
    return Picture(title=title, height=height, draw=draw), across


def _span(row: GlassRow, scale: float) -> float:
    return float(row.width) / scale + _beside(row)


def _beside(row: GlassRow) -> float:
    shaped = 0.0 if row.template is None else _SECOND
    return _LEFT + _RIGHT + shaped + (0.0 if row.grid is None else _PLACES)


def _shelf_height(shelf: Sequence[GlassRow], scale: float) -> float:
    over = _PLACES if any(row.grid is not None for row in shelf) else 0.0
    return over + _ABOVE + max(float(row.height) for row in shelf) / scale + _BELOW


def _shelves(rows: Sequence[GlassRow], scale: float, wide: float) -> list[list[GlassRow]]:
    shelves: list[list[GlassRow]] = [[]]
    used = 0.0
    for row in rows:
        if shelves[-1] and used + _span(row, scale) > wide:
            shelves.append([])
            used = 0.0
        shelves[-1].append(row)
        used += _span(row, scale)
    return shelves


def _draw_pane(
    draft: Draft, row: GlassRow, said: Printed, scale: float, low_left: tuple[float, float]
) -> None:
    x, y = low_left
    pane = Box(x, y, x + float(row.width) / scale, y + float(row.height) / scale)
    view = draft.view(f"pane {row.mark}", scale, low_left)
    across = said.fine(row.width, down=True)
    beside = 0.0 if row.grid is None else _PLACES
    if row.template is None:
        draft.add(Stroke(layer="cut", points=pane.polygon, closed=True, view=view.name))
        draft.add(glass_seen(pane, view.name))
        _sizes(draft, pane, across, said.fine(row.height, down=True))
        _upward(draft, (pane.x1 + 5.0 + beside, pane.centre[1]))
    else:
        left, right = row.template.edges
        draft.add(*drawn(row.template.outline, view, "cut"))
        level = Box(pane.x0, pane.y0, pane.x1, view.y(min(left, right, key=float)))
        draft.add(glass_seen(level, view.name))
        _sizes(draft, pane, across, said.fine(left, down=True), view.y(left))
        _up_an_edge(draft, pane, 1.0, view.y(right), said.fine(right, down=True))
        _upward(draft, (pane.x1 + 5.0 + beside + _SECOND, pane.centre[1]))
    if row.grid is not None:
        past = pane.x1 + (0.0 if row.template is None else _SECOND)
        _grid(draft, row.grid, view, pane, past, said)
    if row.kind in SAFETY_KINDS:
        _stamp(draft, pane)
    within = (pane.x0 + pane.width * 0.34, pane.centre[1] - TITLE / 2)
    over = (pane.centre[0], pane.y1 + 1.6)
    places = (within, over) if row.grid is None else _between(row, row.grid, view, pane)
    draft.add_first(
        [Label(text=row.mark, at=at, height=TITLE, anchor="centre", weight="bold") for at in places]
    )


def _between(row: GlassRow, grid: SpacerGrid, view: View, pane: Box) -> list[Point]:
    """Where a mark stands clear of a unit's bars: between two of them, else left of the top corner."""
    wide = width(row.mark, TITLE, "bold")
    lines = [pane.x0, *(view.x(float(x)) for x in grid.uprights), pane.x1]
    levels = [pane.y0, *(view.y(float(y)) for y in grid.levels), pane.y1]
    return [
        *(
            ((x0 + x1) / 2, (y0 + y1) / 2 - TITLE / 2)
            for y0, y1 in reversed([*itertools.pairwise(levels)])
            for x0, x1 in itertools.pairwise(lines)
            if x1 - x0 > wide + 2.0 and y1 - y0 > TITLE + 2.0
        ),
        (pane.x0 - wide / 2 - 1.5, pane.y1 + 1.6),
    ]


def _grid(
    draft: Draft, grid: SpacerGrid, view: View, pane: Box, past: float, said: Printed
) -> None:
    """The middles of the bars between a unit's panes, each with its place from the left or the foot;
    these stand past what is measured at the right edge.
    """
    for middle in grid.uprights:
        x = view.x(float(middle))
        draft.line("centre", (x, pane.y0), (x, pane.y1 + 1.6), view.name)
        draft.add_first(
            [
                Label(
                    text=said.fine(middle),
                    at=(x + aside, pane.y1 + 2.4),
                    turned=90,
                    layer="dims",
                )
                for aside in (TEXT / 2, TEXT * 1.1, -TEXT * 0.1)
            ]
        )
    for middle in grid.levels:
        y = view.y(float(middle))
        draft.line("centre", (pane.x0, y), (past + 1.6, y), view.name)
        draft.add_first(
            [
                Label(text=said.fine(middle), at=(past + 2.4, y + aside), layer="dims")
                for aside in (-TEXT / 2, -TEXT * 1.1, TEXT * 0.1)
            ]
        )


def _stamp(draft: Draft, pane: Box) -> None:
    """Where the maker's mark goes; its word inside the pane where there is room."""
    side = min(_STAMP, pane.height / 3, pane.width / 3)
    stamp = Box(pane.x0 + 1.6, pane.y0 + 1.6, pane.x0 + 1.6 + side, pane.y0 + 1.6 + side)
    draft.add(Stroke(layer="edge", points=stamp.polygon, closed=True))
    draft.add_first(
        [
            Label(text="mark", at=(stamp.x1 + 1.2, stamp.y0 + 0.3)),
            Label(text="mark", at=(pane.x1 + 1.6, pane.y0 - 4.5)),
            Label(text="mark", at=(pane.x1 + 3.0, pane.y0 - 11.0)),
            Label(text="mark", at=(pane.x0 - 1.6, pane.y0 - 4.5), anchor="right"),
        ]
    )


def _sizes(draft: Draft, pane: Box, across: str, up: str, top: float | None = None) -> None:
    """The two sizes as the order prints them: rounded down, so no pane comes out too large."""
    line = pane.y0 - 6.5
    for at in (pane.x0, pane.x1):
        draft.line("dims", (at, pane.y0 - 1.2), (at, line - 1.6))
        draft.line("dim_ticks", (at - 0.9, line - 0.9), (at + 0.9, line + 0.9))
    draft.line("dims", (pane.x0, line), (pane.x1, line))
    draft.add_first(
        [
            Label(text=across, at=(pane.centre[0], y), anchor="centre", layer="dims")
            for y in (line + 1.0, line - 2.2 - TEXT)
        ]
    )
    _up_an_edge(draft, pane, -1.0, pane.y1 if top is None else top, up)


def _up_an_edge(draft: Draft, pane: Box, way: float, top: float, up: str) -> None:
    """The height of a pane's left or right edge."""
    edge = pane.x0 if way < 0 else pane.x1
    side = edge + way * 6.5
    for at in (pane.y0, top):
        draft.line("dims", (edge + way * 1.2, at), (side + way * 1.6, at))
        draft.line("dim_ticks", (side - 0.9, at - 0.9), (side + 0.9, at + 0.9))
    draft.line("dims", (side, pane.y0), (side, top))
    # A value longer than its pane stands clear of the ends of its own lines.
    middle = pane.centre[1] if top == pane.y1 else (pane.y0 + top) / 2
    places = (side - 1.0, side - 2.6) if way < 0 else (side - 1.0, side + 2.6 + TEXT)
    draft.add_first(
        [Label(text=up, at=(x, middle), anchor="centre", turned=90, layer="dims") for x in places]
    )


def _upward(draft: Draft, at: tuple[float, float]) -> None:
    """Which way is up."""
    x, y = at
    tip = (x, y + 5.0)
    draft.add(
        Stroke(layer="edge", points=((x, y - 3.0), (x, tip[1] - 2.4))),
        Fill(layer="dims", points=arrowhead(tip, (x, y - 3.0), 3.0, 0.9)),
        Label(text="up", at=(x, y - 6.4), anchor="centre"),
    )
