"""One sheet of board to scale: pieces with their marks, cuts with their numbers, rests hatched.

    ________________________________
(2)-|--------------------------------|   a rip's number stands before its line
    |   C1            |  C1          |
(1)-|-----------------|--------------|
    |   C2   |   C2   |  / / / / / / |   what is left
    |________|________|______________|
            (3)      (4)                 a crosscut's number below its line
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.drawing.cutting.shapes import draw_shape
from parametric.drawing.draft import Draft, Segment
from parametric.drawing.hatching import metal, wall
from parametric.drawing.lettering import CELL_LABEL, TEXT, TITLE
from parametric.drawing.match_marks import triangle
from parametric.drawing.plane import Box, Point, along, edges
from parametric.drawing.primitives import Circle, Fill, Label, Stroke, Turn, arrowhead
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.infill.panel_kinds import PANEL_NOUNS
from parametric.trade.matched_blanks import MatchedBlank
from parametric.trade.sheet_order import BoardLot
from parametric.trade.stock.sheet_plan import Area, SawnPiece, SawnSheet, SheetCut, is_kept

MARGIN = 15.0
"""Room for numbers before the sheet and below it, mm of paper."""
OVER = 7.0
"""And over it."""
_RING = 2.3
_ON = 1e-6
_OUT = 1.6
_STEP = 5.0
_PLACES = (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.12, 0.88, 0.06, 0.94)
_AIR = 0.3
_SPARSE, _DENSE = 4.2, 1.5


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """A cut on paper: its two ends, and whether they lie on the edge of what the sheet is sawn
    to after its trim.
    """

    cut: SheetCut
    start: Point
    end: Point
    from_edge: bool
    to_edge: bool


def draw_sheet_view(
    draft: Draft,
    job: Subject,
    sheet: SawnSheet,
    name: str,
    scale: float,
    corner: Point,
    lot: BoardLot,
) -> Box:
    """Draw it, its low left corner at a point; returns what it takes of the page.

    Args:
        draft: the page.
        job: for how sizes are said, and what is worth keeping.
        sheet: what is drawn.
        name: of the view.
        scale: model mm to one of paper.
        corner: where the sheet's corner lies; numbers stand up to `MARGIN` before and below it.
        lot: the board it is of, with what every mark is, and its matched sets, which wear their
            triangle.
    """
    view = draft.view(name, scale, corner)
    stock = sheet.stock
    outline = _box(view, Area(x=0.0, y=0.0, length=stock.length, width=stock.width))
    if sheet.stock.trim:
        draft.path("hidden", _box(view, sheet.whole).polygon, name, closed=True)
    _hatch_rests(draft, job, sheet, view)
    lines = [_line(view, sheet, cut) for cut in sheet.cuts]
    marks = _mark_sets(draft, sheet, view, lot.matched)
    marks += (line for sawn in sheet.pieces for line in draw_shape(draft, job, sawn, view))
    _number_cuts(draft, lines, outline, name, marks)
    draft.path("cut", outline.polygon, name, closed=True)
    for blank in sheet.blanks:
        _name_blank(draft, blank, view)
    panels = {row.mark for row in lot.pieces if row.noun in PANEL_NOUNS}
    for sawn in sheet.pieces:
        _name_piece(draft, job, sawn, view, down=sawn.piece.mark in panels)
    _name_rests(draft, job, sheet, view)
    return Box(outline.x0 - MARGIN, outline.y0 - MARGIN, outline.x1, outline.y1)


def grain_arrow(draft: Draft, at: Point, words: str) -> None:
    """Which way the grain runs: along the sheet."""
    x, y = at
    tip = (x + 22.0, y)
    draft.add(
        Stroke(layer="edge", points=(at, tip)),
        Fill(layer="edge", points=arrowhead(tip, at, 3.0, 0.8)),
        Label(text=words, at=(x + 25.0, y - TEXT / 2)),
    )


def _box(view: View, area: Area) -> Box:
    x, y = view.at((area.x, area.y))
    return Box(x, y, x + area.length / view.scale, y + area.width / view.scale)


def _line(view: View, sheet: SawnSheet, cut: SheetCut) -> _Line:
    """The middle of the kerf, right across what is cut."""
    of, whole = cut.of, sheet.whole
    if cut.way == "rip":
        y = of.y + cut.at
        ends = ((of.x, y), (of.x + of.length, y))
        low, high = of.x - whole.x, whole.x + whole.length - of.x - of.length
    else:
        x = of.x + cut.at
        ends = ((x, of.y), (x, of.y + of.width))
        low, high = of.y - whole.y, whole.y + whole.width - of.y - of.width
    start, end = (view.at(point) for point in ends)
    return _Line(cut=cut, start=start, end=end, from_edge=low < _ON, to_edge=high < _ON)


# --- cuts and their numbers ----------------------------------------------------------------


def _number_cuts(
    draft: Draft, lines: Sequence[_Line], outline: Box, name: str, marks: Sequence[Segment]
) -> None:
    """Each cut with its number in a ring: before the sheet where it begins there, else on it."""
    for line in lines:
        others: list[Segment] = [*((o.start, o.end) for o in lines if o is not line), *marks]
        rings = [*_outside(line, outline), *_on(line), *_beside(line)]
        ring = next((at for at in rings if _is_free(draft, at, others, outline)), None)
        crowded = ring is None
        if ring is None:
            ring = next((at for at in _led(line) if _leads(draft, line, at)), None)
            if ring is not None:
                middle = along(line.start, line.end, 0.5)
                draft.add(Stroke(layer="dims", points=(middle, _towards(ring, middle))))
        if ring is None:
            draft.unplaced.append(f"cut {line.cut.number}")
            ring = rings[-1]
        _ring(draft, ring, line.cut.number, mask=crowded)
        for a, b in _around_ring(line, ring):
            draft.add(Stroke(layer="edge", points=(a, b), view=name))


def _outside(line: _Line, outline: Box) -> Iterator[Point]:
    """Places outside the sheet, from its edge outwards: before it and below it, then past it."""
    (x, y), rip = line.start, line.cut.way == "rip"
    for out in (_OUT + _RING, _OUT + _RING + _STEP):
        if line.from_edge:
            yield (outline.x0 - out, y) if rip else (x, outline.y0 - out)
    if line.to_edge:
        out = _OUT + _RING
        yield (outline.x1 + out, y) if rip else (x, outline.y1 + out)


def _on(line: _Line) -> Iterator[Point]:
    """Places on the line, from its middle outwards."""
    return (along(line.start, line.end, t) for t in _PLACES)


def _beside(line: _Line) -> Iterator[Point]:
    """Places that touch the line, in what is cut off it: where another line runs close past it."""
    off = _RING + 0.25
    for x, y in _on(line):
        yield (x, y - off) if line.cut.way == "rip" else (x - off, y)


def _led(line: _Line) -> Iterator[Point]:
    """Places aside that a thin line leads to: where lines run too close for a number between."""
    x, y = along(line.start, line.end, 0.5)
    for far, (dx, dy) in itertools.product((5.0, 8.0, 11.0), ((-1, -1), (1, -1), (-1, 1), (1, 1))):
        yield x + dx * far, y + dy * far


def _leads(draft: Draft, line: _Line, at: Point) -> bool:
    middle = along(line.start, line.end, 0.5)
    return draft.off_other_texts(_ring_box(at).grown(0.3)) and draft.off_texts((middle, at))


def _towards(ring: Point, end: Point) -> Point:
    """Where a line from an end meets a ring."""
    return along(ring, end, _RING / math.dist(ring, end))


def _is_free(draft: Draft, at: Point, others: Sequence[Segment], outline: Box) -> bool:
    box = _ring_box(at)
    outside = not outline.holds(Box(*at, *at))
    edge = zip(outline.polygon, (*outline.polygon[1:], outline.polygon[0]), strict=True)
    crossing = [*others, *(() if outside else edge)]
    lead = _lead(at, outline)
    return (
        draft.off_other_texts(box.grown(0.3))
        and not any(box.crossed(a, b) for a, b in crossing)
        and (lead is None or draft.off_texts(lead))
    )


def _lead(at: Point, outline: Box) -> Segment | None:
    """From a ring outside the sheet to its edge."""
    x, y = at
    off = _RING + 0.1
    if x < outline.x0:
        return ((x + off, y), (outline.x0, y))
    if x > outline.x1:
        return ((x - off, y), (outline.x1, y))
    if y < outline.y0:
        return ((x, y + off), (x, outline.y0))
    if y > outline.y1:
        return ((x, y - off), (x, outline.y1))
    return None


def _ring_box(at: Point) -> Box:
    return Box(at[0] - _RING, at[1] - _RING, at[0] + _RING, at[1] + _RING)


def _ring(draft: Draft, at: Point, number: int, *, mask: bool) -> None:
    text = str(number)
    height = TEXT if len(text) < 3 else CELL_LABEL
    draft.add(
        Circle(layer="edge_fine", centre=at, radius=_RING),
        Label(
            text=text,
            at=(at[0], at[1] - height / 2),
            height=height,
            anchor="centre",
            weight="bold",
            mask=mask,
        ),
    )
    draft.reserve(_ring_box(at))


def _around_ring(line: _Line, ring: Point) -> Iterator[Segment]:
    """The line of a cut, with a gap where its number stands on it, or brought out to it."""
    along_x = line.cut.way == "rip"
    low, high = (p[0] if along_x else p[1] for p in (line.start, line.end))
    middle = ring[0] if along_x else ring[1]
    other = line.start[1] if along_x else line.start[0]

    def at(value: float) -> Point:
        return (value, other) if along_x else (other, value)

    if abs((ring[1] if along_x else ring[0]) - other) > _ON:
        yield at(low), at(high)
        return
    if middle < low:
        yield at(middle + _RING), at(high)
        return
    if middle > high:
        yield at(low), at(middle - _RING)
        return
    if middle - _RING > low:
        yield at(low), at(middle - _RING)
    if middle + _RING < high:
        yield at(middle + _RING), at(high)


def _mark_sets(
    draft: Draft, sheet: SawnSheet, view: View, matched: Sequence[MatchedBlank]
) -> list[Segment]:
    """The triangle over every blank that is kept in order; returns its lines.

    The grain of fronts matched up runs to their top, that of fronts matched across from the left:
    either way the sheet's face is seen as the fronts will be.
    """
    drawn: list[Segment] = []
    ways = {one.name: one.of.way for one in matched}
    for own in sheet.blanks:
        area = own.area
        corners = tuple(
            view.at((area.x + x, area.y + y))
            for x, y in triangle(ways[own.piece.mark], area.length, area.width)
        )
        draft.path("edge_fine", corners, view.name, closed=True)
        drawn += edges(corners)
    return drawn


# --- pieces and rests ----------------------------------------------------------------------


def _name_blank(draft: Draft, blank: SawnPiece, view: View) -> None:
    """Which set it is."""
    box, mark = _box(view, blank.area), blank.piece.mark
    tries: tuple[tuple[float, Turn], ...] = ((TEXT, 0), (TEXT, 90), (CELL_LABEL, 0))
    if any(_write(draft, box, ((mark, tall),), turn, mask=False) for tall, turn in tries):
        return
    if not _write_over(draft, box, mark):
        draft.unplaced.append(mark)


def _name_piece(draft: Draft, job: Subject, sawn: SawnPiece, view: View, *, down: bool) -> None:
    """Its mark and its size as the cut list has it, length first, along its own length."""
    piece = sawn.piece
    size = f"{job.wood(piece.length, down=down)} × {job.wood(piece.width, down=down)}"
    box = _box(view, sawn.area)
    first: Turn = 90 if sawn.turned else 0
    turns: tuple[Turn, Turn] = (first, 0 if sawn.turned else 90)
    tries = [
        *((((piece.mark, TITLE), (size, TEXT)), turn) for turn in turns),
        *(
            (((f"{piece.mark}  {size}", height),), turn)
            for height in (TEXT, CELL_LABEL)
            for turn in turns
        ),
        *((((piece.mark, height),), turn) for height in (TEXT, CELL_LABEL) for turn in turns),
    ]
    if any(_write(draft, box, rows, turn, mask=False) for rows, turn in tries):
        return
    if not _write_over(draft, box, f"{piece.mark}  {size}"):
        draft.unplaced.append(f"{piece.mark} on a sheet")


def _write_over(draft: Draft, box: Box, text: str) -> bool:
    """Letter what is narrower than any letter over its edges, its lines masked."""
    for at in _spots(box):
        labels = _labels(((text, CELL_LABEL),), at, 0 if box.width > box.height else 90, mask=True)
        if all(draft.off_other_texts(label.box.grown(_AIR)) for label in labels):
            draft.add(*labels)
            return True
    return False


_Rows = tuple[tuple[str, float], ...]


def _write(draft: Draft, box: Box, rows: _Rows, turn: Turn, *, mask: bool) -> bool:
    """Letter rows into a box where they stand clear of all else; False where they do not."""
    for at in _spots(box):
        labels = _labels(rows, at, turn, mask=mask)
        boxes = [label.box for label in labels]
        if all(box.holds(one.grown(_AIR)) and draft.free(one) for one in boxes):
            draft.add(*labels)
            return True
    return False


def _spots(box: Box) -> Iterator[Point]:
    """The middle of a box, then places round it."""
    x, y = box.centre
    for far, (dx, dy) in itertools.product(
        (0.0, 0.18, 0.3, 0.38), ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, -1))
    ):
        yield x + dx * far * box.width, y + dy * far * box.height


def _labels(rows: _Rows, at: Point, turn: Turn, *, mask: bool) -> list[Label]:
    """Rows about a middle, the first on top (or to the left, where they are turned)."""
    tall = sum(height for _, height in rows) + 1.6 * (len(rows) - 1)
    down = tall / 2
    made = []
    for row, (text, height) in enumerate(rows):
        down -= height
        base = (at[0], at[1] + down) if turn == 0 else (at[0] - down, at[1])
        made.append(
            Label(
                text=text,
                at=base,
                height=height,
                anchor="centre",
                turned=turn,
                weight="bold" if row == 0 and height == TITLE else "regular",
                mask=mask,
            )
        )
        down -= 1.6
    return made


def _hatch_rests(draft: Draft, job: Subject, sheet: SawnSheet, view: View) -> None:
    """Wide apart what is kept, close what is not."""
    for rest in sheet.rests:
        region = (_box(view, rest).polygon,)
        if _kept(job, rest):
            draft.add(wall(region, view.name, _SPARSE))
        else:
            draft.add(metal(region, view.name, _DENSE))


def _name_rests(draft: Draft, job: Subject, sheet: SawnSheet, view: View) -> None:
    """The size of what is kept; of what is not, where there is room for it."""
    for rest in sheet.rests:
        size = f"{job.wood(rest.length, down=True)} × {job.wood(rest.width, down=True)}"
        box = _box(view, rest)
        keeps = _kept(job, rest)
        rows: _Rows = (("keep", TEXT), (size, TEXT)) if keeps else ((size, TEXT),)
        tries: list[tuple[_Rows, Turn]] = [(rows, 0), (rows, 90)]
        if keeps:
            line: _Rows = ((f"keep {size}", TEXT),)
            small: _Rows = ((size, CELL_LABEL),)
            tries += [(line, 0), (line, 90), (small, 0), (small, 90)]
        if any(_write(draft, box, own, turn, mask=True) for own, turn in tries) or not keeps:
            continue
        if not _write_over(draft, box, size):
            draft.unplaced.append(f"a rest of {size}")


def _kept(job: Subject, rest: Area) -> bool:
    wide, long = job.resolved.shop.blanks.keep_offcut
    return is_kept(rest, long, wide)
