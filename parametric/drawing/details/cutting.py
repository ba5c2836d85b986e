"""Parts cut at a place and drawn large: clipped to a window, broken ends waved, hatched by grain.

A window's sides cut only what runs through them: there the piece ends in a wave, or in a
zigzag where it is glass, and no outline is drawn.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field

from parametric.drawing.draft import Draft
from parametric.drawing.hatching import Bow, Run, board, end_grain, glass_cut, long_grain, tape
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import TITLE
from parametric.drawing.pieces import CutPiece, Piece, Plane, cut_through
from parametric.drawing.plane import Box, Point, Polygon, along, around, cut_line, edges, inside
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import View
from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.model import Part, Pocket, Shaped
from parametric.outlines import bounds_of
from parametric.trade.glue_up import PanelGlueUp

_SAME = 1e-7
_CELL = 2.5
"""Texts are kept off cut material square by square, mm."""
_WAVE = 0.9


@dataclass(frozen=True, slots=True, kw_only=True)
class Looks:
    """How cut pieces are told apart.

    Args:
        glue_ups: panels as they are glued up, by their mark.
        letters: a text that stands in the middle of a piece, by the part's name.
        bows: the side of the pith, by the part's name, where a fixed one reads better.
    """

    glue_ups: Mapping[str, PanelGlueUp] = field(default_factory=dict)
    letters: Mapping[str, str] = field(default_factory=dict)
    bows: Mapping[str, Bow] = field(default_factory=dict)


def cut_in_window(
    pieces: Iterable[Piece], plane: Plane, at: float, window: Box
) -> tuple[CutPiece, ...]:
    """The pieces that a section meets within a window; tape only where it lies."""
    found: list[CutPiece] = []
    for piece in pieces:
        cut = cut_through(piece, plane, at)
        if cut is None:
            continue
        strips = _tapes(cut) if piece.part.material.look == "tape" else (cut,)
        found += [c for c in strips if around(c.outline).meets(window)]
    return tuple(found)


def _tapes(cut: CutPiece) -> tuple[CutPiece, ...]:
    """The two strips of tape that a section meets: the part is drawn with its sight size out."""
    part, box = cut.piece.part, around(cut.outline)
    seen = _sight_size(part)
    if seen is None:
        return (cut,)
    level = box.width > box.height
    long = box.width if level else box.height
    runs = abs(long - float(part.blank.length)) < abs(long - float(part.blank.width))
    sight = seen[0] if runs else seen[1]
    bite = (long - sight) / 2
    if level:
        ends = (
            Box(box.x0, box.y0, box.x0 + bite, box.y1),
            Box(box.x1 - bite, box.y0, box.x1, box.y1),
        )
    else:
        ends = (
            Box(box.x0, box.y0, box.x1, box.y0 + bite),
            Box(box.x0, box.y1 - bite, box.x1, box.y1),
        )
    return tuple(CutPiece(piece=cut.piece, outline=end.polygon, run=cut.run) for end in ends)


def _sight_size(part: Part) -> tuple[float, float] | None:
    """How wide and high the tape of a pane leaves it free; None of a strip without a hole in it."""
    for cut in part.cuts:
        if isinstance(cut, Pocket):
            return (float(cut.length), float(cut.width))
        if isinstance(cut, Shaped) and cut.name == "sight size":
            x0, y0, x1, y1 = bounds_of(cut.outline)
            return (x1 - x0, y1 - y0)
    return None


def clipped(polygon: Polygon, window: Box) -> Polygon:
    """What of a polygon lies in a window; after Sutherland and Hodgman."""
    sides = (
        (0, window.x0, 1.0),
        (0, window.x1, -1.0),
        (1, window.y0, 1.0),
        (1, window.y1, -1.0),
    )
    for which, limit, sign in sides:
        kept: list[Point] = []
        for a, b in edges(polygon):
            da, db = sign * (a[which] - limit), sign * (b[which] - limit)
            if da >= 0:
                kept.append(a)
            if (da < 0) != (db < 0) and abs(da) > _SAME and abs(db) > _SAME:
                kept.append(along(a, b, da / (da - db)))
        polygon = tuple(dict.fromkeys(kept))
        if len(polygon) < 3:
            return ()
    return polygon


def draw_cut(
    draft: Draft,
    view: View,
    cuts: Sequence[CutPiece],
    window: Box,
    looks: Looks,
    outline: Layer = "cut_heavy",
) -> None:
    """Cut pieces in a window, and texts kept off them.

    Args:
        draft: the board.
        view: the section.
        cuts: the cut pieces.
        window: what is shown, mm in the view's model.
        looks: how they are told apart.
        outline: the layer of made material's outline.
    """
    paper = Box(*view.at((window.x0, window.y0)), *view.at((window.x1, window.y1)))
    taken: list[Polygon] = []
    for index, cut in enumerate(cuts):
        polygon = clipped(view.path(cut.outline), paper)
        if not polygon:
            continue
        look = cut.piece.part.material.look
        layer: Layer = outline
        if look == "tape":
            layer = "edge_fine"
        elif cut.piece.part.supplied and look != "glass":
            layer = "adjacent"
        region = _outlined(draft, view, polygon, paper, layer, glass=look == "glass")
        holes = _lettered(draft, view, cut, polygon, looks)
        _textured(draft, view, cut, (region, *holes), index, looks)
        taken.append(polygon)
    for polygon in taken:
        keep_off(draft, polygon)


def keep_off(draft: Draft, polygon: Polygon) -> None:
    """Keep texts off an area of paper."""
    box = around(polygon)
    columns = max(1, math.ceil(box.width / _CELL))
    rows = max(1, math.ceil(box.height / _CELL))
    wide, tall = box.width / columns, box.height / rows
    for i in range(columns):
        for j in range(rows):
            cell = Box(
                box.x0 + i * wide,
                box.y0 + j * tall,
                box.x0 + (i + 1) * wide,
                box.y0 + (j + 1) * tall,
            )
            if inside(cell.centre, (polygon,)):
                draft.reserve(cell)


def _lettered(
    draft: Draft, view: View, cut: CutPiece, polygon: Polygon, looks: Looks
) -> tuple[Polygon, ...]:
    """A letter in the middle of a piece, and the hole it leaves in the hatching."""
    text = looks.letters.get(cut.piece.part.name)
    if text is None:
        return ()
    x, y = around(polygon).centre
    label = Label(
        text=text,
        at=(x, y - TITLE / 2),
        height=TITLE,
        anchor="centre",
        weight="bold",
        view=view.name,
    )
    draft.add(label)
    return (label.box.grown(0.7).polygon,)


def _outlined(
    draft: Draft, view: View, polygon: Polygon, paper: Box, layer: Layer, *, glass: bool
) -> Polygon:
    """Draw the outline but where the window breaks it; returns the region with its waves."""
    region: list[Point] = []
    runs: list[list[Point]] = []
    open_run: list[Point] = []
    for a, b in edges(polygon):
        region.append(a)
        if not _on_side(a, b, paper):
            open_run = open_run or [a]
            open_run.append(b)
            continue
        if open_run:
            runs.append(open_run)
        open_run = []
        wave = _broken(a, b, glass=glass)
        region += wave[1:-1]
        draft.path("breaks", _zigzag(a, b) if glass else wave, view.name)
    if open_run:
        if runs and math.dist(open_run[-1], runs[0][0]) < _SAME:
            runs[0] = [*open_run, *runs[0][1:]]
        else:
            runs.append(open_run)
    for run in runs:
        closed = len(runs) == 1 and math.dist(run[0], run[-1]) < _SAME
        points = tuple(run[:-1] if closed else run)
        draft.add(Stroke(layer=layer, points=points, closed=closed, view=view.name))
    return tuple(region)


def _on_side(a: Point, b: Point, paper: Box) -> bool:
    return any(
        abs(a[i] - limit) < _SAME and abs(b[i] - limit) < _SAME
        for i, limit in ((0, paper.x0), (0, paper.x1), (1, paper.y0), (1, paper.y1))
    )


def _broken(a: Point, b: Point, *, glass: bool) -> Polygon:
    """A broken end: one wave from corner to corner; straight where it is glass."""
    far = math.dist(a, b)
    if glass or far < 1.0:
        return (a, b)
    high = min(_WAVE, far / 9)
    ux, uy = (b[0] - a[0]) / far, (b[1] - a[1]) / far
    points = []
    for i in range(25):
        t, off = far * i / 24, high * math.sin(2 * math.pi * i / 24)
        points.append((a[0] + ux * t - uy * off, a[1] + uy * t + ux * off))
    return (a, *points[1:-1], b)


def _zigzag(a: Point, b: Point) -> Polygon:
    """The break of glass and board: past the outline, one Z in the middle."""
    far = math.dist(a, b) or 1.0
    ux, uy = (b[0] - a[0]) / far, (b[1] - a[1]) / far

    def at(t: float, off: float) -> Point:
        return (a[0] + ux * t - uy * off, a[1] + uy * t + ux * off)

    middle = far / 2
    return (
        at(-1.6, 0.0),
        at(middle - 0.8, 0.0),
        at(middle - 0.4, 0.8),
        at(middle + 0.4, -0.8),
        at(middle + 0.8, 0.0),
        at(far + 1.6, 0.0),
    )


def _textured(
    draft: Draft,
    view: View,
    cut: CutPiece,
    region: tuple[Polygon, ...],
    index: int,
    looks: Looks,
) -> None:
    match cut.piece.part.material.look:
        case "glass":
            draft.add(glass_cut(region, view.name))
        case "tape":
            draft.add(tape(region, view.name))
        case "timber":
            _wood(draft, view, cut, region, index, looks)
        case "board":
            draft.add(board(region, view.name, 1.2))
        case _:
            pass


def _wood(
    draft: Draft,
    view: View,
    cut: CutPiece,
    region: tuple[Polygon, ...],
    index: int,
    looks: Looks,
) -> None:
    """Rings on an end, lines along the grain; a glued panel board by board."""
    if cut.run != "end":
        run: Run = "across" if cut.run == "long across" else "up"
        draft.add(long_grain(region, view.name, run, 1.75))
        return
    boards = _boards(draft, view, cut, region[0], looks)
    for number, one in enumerate(boards):
        box = around(one)
        level = box.width > box.height
        ways: tuple[Bow, Bow] = ("below", "above") if level else ("left", "right")
        bow = looks.bows.get(cut.piece.part.name, ways[(index + number) % 2])
        if number % 2 and cut.piece.part.name in looks.bows:
            bow = _OTHER[bow]
        small = max(box.width, box.height) < 16.0
        far = min(60.0, max(25.0, 0.75 * max(box.width, box.height)))
        draft.add(end_grain((one, *region[1:]), view.name, bow, 1.9 if small else 2.4, far))


_OTHER: dict[Bow, Bow] = {"left": "right", "right": "left", "above": "below", "below": "above"}


def _boards(
    draft: Draft, view: View, cut: CutPiece, region: Polygon, looks: Looks
) -> list[Polygon]:
    """The boards of a glued panel as a section meets them, their joints drawn."""
    part = cut.piece.part
    glue_up = looks.glue_ups.get(part.mark)
    if glue_up is None or part.noun not in PANEL_NOUNS:
        return [region]
    whole, seen = around(view.path(cut.outline)), around(region)
    which = 0 if whole.width > whole.height else 1
    wide = float(glue_up.board_width) / view.scale
    over = (float(glue_up.width) - float(part.blank.width)) / 2 / view.scale
    start = (whole.x0, whole.y0)[which] - over
    low, high = (seen.x0, seen.x1) if which == 0 else (seen.y0, seen.y1)
    joints = [
        at
        for k in range(1, int(glue_up.boards))
        if low + 0.5 < (at := start + k * wide) < high - 0.5
    ]
    found: list[Polygon] = []
    stops = [low - 1.0, *joints, high + 1.0]
    for a, b in itertools.pairwise(stops):
        strip = (
            Box(a, seen.y0 - 1.0, b, seen.y1 + 1.0)
            if which == 0
            else Box(seen.x0 - 1.0, a, seen.x1 + 1.0, b)
        )
        kept = clipped(region, strip)
        if kept:
            found.append(kept)
    for at in joints:
        ends = (
            ((at, seen.y0 - 1.0), (at, seen.y1 + 1.0))
            if which == 0
            else ((seen.x0 - 1.0, at), (seen.x1 + 1.0, at))
        )
        for a_end, b_end in cut_line(*ends, (region,), keep_inside=True):
            draft.line("edge_fine", a_end, b_end, view.name)
    return found
