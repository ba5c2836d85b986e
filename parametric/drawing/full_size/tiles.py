"""A full-size sheet in tiles for a plain printer, and how the tiles go together again.

+-------------+
|   tile 2    |      tiles lap by 10; a cross every 100 lies in the middle of the lap,
+ - - x - - - +      on both tiles, with the same name on both
+-----x-------+
|   tile 1    |      tile 2 is cut on its dashed line and laid over tile 1, cross on cross
+-------------+
"""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.drawing.draft import Draft
from parametric.drawing.full_size.bars import (
    END,
    NO_FITTING,
    bars_for,
    draw_bars,
    rows_deep,
    short_bars,
)
from parametric.drawing.full_size.carrying import cut_off, moved
from parametric.drawing.lettering import TEXT, width, wrap
from parametric.drawing.page import draw_page
from parametric.drawing.plane import Box, Point, outside_all
from parametric.drawing.primitives import Fill, Label
from parametric.drawing.sheet import Element, Paper, Sheet, TitleBlock, View, primitives
from parametric.units import Unit

LAP = 10.0
"""How far neighbouring tiles show the same, mm."""
GRID = 100.0
"""Cross to cross, mm."""
_ARM = 3.0
_AIR = 3.0
_WIDEST = 120.0
"""The widest tile of several, mm: beside it stand upright bars and the key."""
_NAME_OFFS = ((1.0, 1.0), (1.0, 4.5), (1.0, 8.0), (4.5, 1.0), (4.5, 4.5), (8.0, 1.0))
"""How far above or below a cross its name stands, and how far beside it, the nearest first, mm."""
_KEY_AIR = 2.0
"""What a cell of the key is larger than its number at least, mm."""
_ROWS = "ABCDEFGHJKLMNPQRSTUVWXYZ"


@dataclass(frozen=True, slots=True, kw_only=True)
class Board:
    """What is cut into tiles: a full-size view on a sheet, and the part of its model shown, mm.

    Crosses stand every 100 both ways from `cross`, a point of the model.
    """

    sheet: Sheet
    view: str
    area: Box
    cross: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Cross:
    """One register cross: its name, by row from the foot and column from the left, and its place."""

    name: str
    at: Point

    @property
    def arms(self) -> tuple[tuple[Point, Point], tuple[Point, Point]]:
        """Its two strokes, mm of the model."""
        x, y = self.at
        return ((x - _ARM, y), (x + _ARM, y)), ((x, y - _ARM), (x, y + _ARM))


@dataclass(frozen=True, slots=True, kw_only=True)
class Tile:
    """One tile: what of the model it shows, mm, and where it goes."""

    number: int
    row: int
    column: int
    window: Box
    joint_below: float | None
    joint_left: float | None


def draw_tiles(board: Board, paper: Paper, title: TitleBlock, unit: Unit) -> tuple[Sheet, ...]:
    """A board on as many pages of a plain paper as it takes, row by row from the foot.

    Args:
        board: what is shown, drawn whole.
        paper: each page.
        title: of the whole; each tile adds which of how many it is.
        unit: of the design, for the check bars.
    """
    tiles = tiles_of(board, paper, title, unit)
    source = board.sheet.view(board.view)
    shown: dict[int, list[Element]] = {tile.number: [] for tile in tiles}
    homeless: list[Label] = []
    for element in board.sheet.elements:
        if element.view != board.view:
            continue
        placed = [(tile, tuple(cut_off(element, _on(source, tile.window)))) for tile in tiles]
        for tile, parts in placed:
            shown[tile.number] += parts
        lettered = {
            part
            for _, parts in placed
            for own in parts
            for part in primitives(own)
            if isinstance(part, Label)
        }
        homeless += [
            part for part in primitives(element) if isinstance(part, Label) and part not in lettered
        ]
    return tuple(
        _draw(board, source, tile, tiles, shown[tile.number], homeless, paper, title, unit)
        for tile in tiles
    )


def _on(view: View, window: Box) -> Box:
    """A window of the model on the whole sheet's paper."""
    return Box(*view.at((window.x0, window.y0)), *view.at((window.x1, window.y1)))


def _room(paper: Paper, title: TitleBlock, unit: Unit, number: str) -> Box:
    """What a page leaves for a tile, over the level bars."""
    body = draw_page(Draft(paper), title, number=number)
    bars = rows_deep(len(bars_for(unit, body.width)))
    return Box(body.x0, body.y0 + bars + 0.5, body.x1, body.y1)


def _upright(unit: Unit) -> float:
    """The width of the bars that stand beside a tile, mm."""
    return rows_deep(len(short_bars(unit))) + _AIR


# --- which tiles ---------------------------------------------------------------------------


def tiles_of(board: Board, paper: Paper, title: TitleBlock, unit: Unit) -> tuple[Tile, ...]:
    """One tile where the whole fits beside its bars, else as many as it takes."""
    alone, among = (_room(paper, title, unit, number) for number in ("", "1"))
    area = board.area
    if area.width <= alone.width - 2 * LAP and area.height <= alone.height:
        return (Tile(number=1, row=0, column=0, window=area, joint_below=None, joint_left=None),)
    columns = _windows(area.x0, area.x1, board.cross[0], _WIDEST)
    rows = _windows(area.y0, area.y1, board.cross[1], among.height)
    return tuple(
        Tile(
            number=row * len(columns) + column + 1,
            row=row,
            column=column,
            window=Box(x0, y0, x1, y1),
            joint_below=y0 + LAP / 2 if row else None,
            joint_left=x0 + LAP / 2 if column else None,
        )
        for row, (y0, y1) in enumerate(rows)
        for column, (x0, x1) in enumerate(columns)
    )


def _windows(low: float, high: float, zero: float, room: float) -> list[tuple[float, float]]:
    """From the low end on: each as large as the room, joined where crosses lie."""
    found: list[tuple[float, float]] = []
    start = low
    while high - start > room:
        joint = zero + math.floor((start + room - LAP / 2 - zero) / GRID + 1e-9) * GRID
        found.append((start, joint + LAP / 2))
        start = joint - LAP / 2
    return [*found, (start, high)]


def crosses(board: Board) -> tuple[Cross, ...]:
    """Every register cross of a board, lettered by row from the foot, numbered from the left."""
    return register(board.area, board.cross)


def register(area: Box, cross: Point) -> tuple[Cross, ...]:
    """The crosses over some of a model, one of them at a place of it, mm."""
    ups = _grid(area.y0, area.y1, cross[1])
    alongs = _grid(area.x0, area.x1, cross[0])
    return tuple(
        Cross(name=f"{_row_name(row)}{column}", at=(x, y))
        for row, y in enumerate(ups)
        for column, x in enumerate(alongs, 1)
    )


def _grid(low: float, high: float, zero: float) -> list[float]:
    first = math.ceil((low - zero) / GRID - 1e-9)
    last = math.floor((high - zero) / GRID + 1e-9)
    return [zero + GRID * n for n in range(first, last + 1)]


def _row_name(row: int) -> str:
    turn, letter = divmod(row, len(_ROWS))
    return (_ROWS[turn - 1] if turn else "") + _ROWS[letter]


# --- one tile ------------------------------------------------------------------------------


def _draw(
    board: Board,
    source: View,
    tile: Tile,
    tiles: Sequence[Tile],
    elements: Sequence[Element],
    homeless: Sequence[Label],
    paper: Paper,
    title: TitleBlock,
    unit: Unit,
) -> Sheet:
    several = len(tiles) > 1
    words = f", tile {tile.number} of {len(tiles)}" if several else ""
    title = dataclasses.replace(title, second_line=f"{title.second_line}{words}")
    draft = Draft(paper)
    body = draw_page(draft, title, number=str(tile.number) if several else "")
    bars = bars_for(unit, body.width)
    draw_bars(draft, bars, (body.x0 + 1.0, body.y0), "across")
    floor = body.y0 + rows_deep(len(bars)) + 0.5
    window = tile.window
    # The tile stands on its bars, or hangs from the heading when it is the last and low.
    origin = (body.x0 - window.x0, floor - window.y0)
    view = draft.view(board.view, 1.0, origin)
    by = (origin[0] - source.origin[0], origin[1] - source.origin[1])
    draft.add(*(moved(element, by) for element in elements))
    here = Box(*view.at((window.x0, window.y0)), *view.at((window.x1, window.y1)))
    draw_bars(draft, bars_for(unit, here.height - END), (here.x1 + _AIR, floor + END), "up")
    if tile.number == 1:
        draft.unplaced += board.sheet.unplaced
    if several:
        _cut_lines(draft, view, tile)
        _crosses(draft, view, board, tile)
        left = here.x1 + _upright(unit) + _AIR
        side = Box(left, floor, body.x1, body.y1)
        top = _key(draft, tile, tiles, side)
        _words(draft, board, tile, tiles, homeless, Box(side.x0, side.y0, side.x1, top))
    else:
        draft.unplaced += [label.text for label in homeless]
    return draft.sheet(title)


def _boxes(draft: Draft) -> Iterator[Box]:
    for element in draft.elements:
        for part in primitives(element):
            if isinstance(part, Label):
                yield part.box.grown(0.6)


def _cut_lines(draft: Draft, view: View, tile: Tile) -> None:
    """Dashed, where this tile is laid over those below and on its left; never through a text."""
    window = tile.window
    lines: list[tuple[Point, Point]] = []
    if tile.joint_below is not None:
        lines.append(((window.x0, tile.joint_below), (window.x1, tile.joint_below)))
    if tile.joint_left is not None:
        lines.append(((tile.joint_left, window.y0), (tile.joint_left, window.y1)))
    texts = [box.polygon for box in _boxes(draft)]
    for a, b in lines:
        for start, end in outside_all(view.at(a), view.at(b), texts):
            draft.line("hidden", start, end)


def _crosses(draft: Draft, view: View, board: Board, tile: Tile) -> None:
    window = tile.window
    for cross in crosses(board):
        x, y = cross.at
        if not (window.x0 <= x <= window.x1 and window.y0 <= y <= window.y1):
            continue
        at = view.at(cross.at)
        inside = Box(*view.at((window.x0, window.y0)), *view.at((window.x1, window.y1)))
        for dx, dy in ((_ARM, 0.0), (0.0, _ARM)):
            a = (max(at[0] - dx, inside.x0), max(at[1] - dy, inside.y0))
            b = (min(at[0] + dx, inside.x1), min(at[1] + dy, inside.y1))
            draft.line("edge", a, b)
        draft.add_first(
            [
                Label(
                    text=cross.name,
                    at=(at[0] + sx, at[1] + sy),
                    anchor="left" if sx > 0 else "right",
                )
                for up, away in _NAME_OFFS
                for sx, sy in (
                    (away, up),
                    (-away, up),
                    (away, -up - TEXT),
                    (-away, -up - TEXT),
                )
            ]
        )


def _key(draft: Draft, tile: Tile, tiles: Sequence[Tile], side: Box) -> float:
    """All tiles small, this one marked; returns where it ends.

    Numbers stand upright where they are too wide for their cells, and are left out where they
    are too tall as well: the page has its own beside its title.
    """
    rows, columns = tiles[-1].row + 1, tiles[-1].column + 1
    wide, tall = min(12.0, (side.width - 2.0) / columns), min(8.0, 90.0 / rows)
    longest = max(width(str(own.number), TEXT, "bold") for own in tiles)
    level = longest + _KEY_AIR <= wide and tall * 0.6 >= TEXT
    upright = not level and longest + _KEY_AIR <= tall and wide >= TEXT + 1.2
    x0, y1 = side.x0, side.y1 - TEXT * 1.7
    draft.add(Label(text="Tiles", at=(x0, side.y1 - TEXT), weight="bold"))
    for own in tiles:
        low = y1 - (rows - own.row) * tall
        cell = Box(x0 + own.column * wide, low, x0 + (own.column + 1) * wide, low + tall)
        draft.path("edge", cell.polygon, closed=True)
        mark = Box(cell.x0 + 0.8, cell.y0 + 0.8, cell.x0 + 2.4, cell.y1 - 0.8)
        if level or upright:
            number = Label(
                text=str(own.number),
                at=(cell.x1 - 1.2, cell.centre[1] - TEXT / 2)
                if level
                else (cell.centre[0] + TEXT / 2, cell.y1 - 1.0),
                anchor="right",
                turned=0 if level else 90,
                weight="bold" if own is tile else "regular",
            )
            draft.add(number)
            mark = (
                mark._replace(x1=min(mark.x1, number.box.x0 - 0.4))
                if level
                else Box(cell.x0 + 0.8, cell.y0 + 0.8, cell.x1 - 0.8, number.box.y0 - 0.4)
            )
        if own is tile:
            draft.add(Fill(layer="edge", points=mark.polygon))
    return y1 - rows * tall - 2 * TEXT


def _words(
    draft: Draft,
    board: Board,
    tile: Tile,
    tiles: Sequence[Tile],
    homeless: Sequence[Label],
    room: Box,
) -> None:
    """What to do with this tile, and what is lettered on no tile because a joint runs through it."""
    places = {(own.row, own.column): own.number for own in tiles}
    texts = [NO_FITTING]
    under = [
        f"tile {places[at]}"
        for at in ((tile.row - 1, tile.column), (tile.row, tile.column - 1))
        if at in places
    ]
    if under:
        window = tile.window
        shared = [
            cross.name
            for cross in crosses(board)
            if (tile.joint_below is not None and abs(cross.at[1] - tile.joint_below) < 1e-6)
            or (tile.joint_left is not None and abs(cross.at[0] - tile.joint_left) < 1e-6)
            if window.x0 <= cross.at[0] <= window.x1 and window.y0 <= cross.at[1] <= window.y1
        ]
        texts.append(
            f"Cut on the dashed line and lay over {' and '.join(under)}: crosses "
            f"{', '.join(shared)} come together."
        )
    if tile.number == 1:
        texts += list(dict.fromkeys(label.text for label in homeless))
    y = room.y1
    for text in texts:
        for line in wrap(text, room.width - 1.0):
            draft.add_first([Label(text=line, at=(room.x0, y))])
            y -= TEXT * 1.7
        y -= TEXT
