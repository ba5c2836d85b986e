"""Cross-sections of a part: one for each different set of cuts, seen to the top, face up."""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Callable, Sequence
from dataclasses import dataclass

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.dimensions import Axis
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board, end_grain
from parametric.drawing.marks import caption
from parametric.drawing.part_sheets.cut_shapes import Milled, shape_on_face, span_along
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.pieces import Piece, cut_through, rounded
from parametric.drawing.plane import Box, Point, Polygon, around, around_boxes
from parametric.drawing.primitives import Stroke
from parametric.drawing.printing import Rule, Rules
from parametric.drawing.sheet import View
from parametric.figures import Figure
from parametric.model import (
    Groove,
    Part,
    Placement,
    Pocket,
    RoundArrises,
    Shaped,
    Slot,
    face_point,
)
from parametric.trade.cut_quantities import Quantity
from parametric.trade.part_cuts import CutRow, PartCuts, Size

FIRST = 6.5
"""From the section to its innermost dimension, mm on paper."""
CAPTION = 10.0
"""What the caption takes, mm on paper."""
_SMALL = 60.0
"""A part up to this wide is cut at full size, mm."""
_THIN, _NARROW = 20.0, 100.0
"""So is a wider one that is thin: what is cut in it stands close, mm."""

_SHALLOW = 30.0
"""A cut that goes less far into an end has no room for a section line, mm."""

_ALL = 1e-3
"""mm: a section that is this near to the whole blank is all of it."""

_CLEAR = 40.0
"""A shorter run hardly holds the mark of a section line, mm."""

Shape = tuple[object, ...]
_Add = Callable[[Side, tuple[float, float], Size, tuple[object, ...]], None]


@dataclass(frozen=True, slots=True, kw_only=True)
class Chosen:
    """A section that is drawn: its letter, the runs along the part where it may lie, its cuts.

    It is cut in the first of the runs, and looks the same in all. `shows` are the rows it is the section of; `cuts` all that it passes through.
    """

    letter: str
    runs: tuple[tuple[float, float], ...]
    cuts: tuple[CutRow, ...]
    shows: tuple[int, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class Measure:
    """A dimension of a section: from where to where, on which side, how far out."""

    side: Side
    ends: tuple[float, float]
    figure: Figure
    level: int
    rule: Rule


@dataclass(frozen=True, slots=True, kw_only=True)
class Drawn:
    """A section ready to be placed: its sizes on paper and its dimensions."""

    chosen: Chosen
    scale: float
    measures: tuple[Measure, ...]
    wide: float
    tall: float
    left: float
    right: float
    above: float
    below: float


def shape(row: CutRow, part: Unfolded) -> Shape:
    """The same for two cuts that look alike in a section."""
    cut = row.cut
    assert isinstance(cut, (Slot, Groove, Pocket))
    side = part.side(cut.face)
    across = tuple(
        round(float(d.figure), 4)
        for d in row.degrees
        if (isinstance(d, Size) and d.quantity in ("across", "width", "deep", "begins"))
        or (isinstance(d, Size) and d.quantity in ("from", "to") and side in ("left", "right"))
    )
    ends: Side = "left" if side in ("left", "right") else side
    return (type(cut).__name__, ends, *across)


def choose(own: PartCuts, part: Unfolded, letters: Sequence[str]) -> tuple[Chosen, ...]:
    """The fewest sections that show every different cut, in order along the part.

    Args:
        own: the cuts.
        part: the part opened out.
        letters: what to letter them with, as many as ever needed.
    """
    rows = [
        row
        for row in own.rows
        if isinstance(row.cut, (Slot, Groove, Pocket)) and not on_end(row, part)
    ]
    spans = {row.number: _inside(span_along(row.cut, part), part) for row in rows}
    other = [
        _inside(span_along(cut, part), part)
        for cut in part.part.cuts
        if isinstance(cut, Shaped) and "end" not in cut.face
    ]
    stops = sorted({at for span in (*spans.values(), *other) for at in span})
    runs = []
    for low, high in itertools.pairwise(stops):
        middle = (low + high) / 2
        here = tuple(r for r in rows if spans[r.number][0] < middle < spans[r.number][1])
        if here and high - low > 1e-6:
            runs.append((low, high, here))

    def shapes(run: tuple[float, float, tuple[CutRow, ...]]) -> int:
        """How many shapes lie in a run and may take away what is measured there."""
        return sum(low < run[1] - 1e-6 and high > run[0] + 1e-6 for low, high in other)

    def looks(here: Sequence[CutRow]) -> set[Shape]:
        return {shape(row, part) for row in here}

    seen: set[Shape] = set()
    picked = []
    while missing := [run for run in runs if looks(run[2]) - seen]:
        # A run with room for a section line; then what shows most that is new and least that
        # is not; of equals the longest, and the one nearest the foot.
        low, high, here = min(
            missing,
            key=lambda run: (
                run[1] - run[0] < _CLEAR,
                shapes(run),
                -len(looks(run[2]) - seen),
                len(looks(run[2])),
                run[0] - run[1],
                run[0],
            ),
        )
        new = looks(here) - seen
        seen |= new
        alike = tuple(r.number for r in rows if shape(r, part) in new)
        same = [(a, b) for a, b, cuts in runs if looks(cuts) == looks(here)]
        same.sort(key=lambda run: (run != (low, high), run))
        picked.append((tuple(same), here, alike))
    picked.sort(key=lambda one: one[0][0])
    return tuple(
        Chosen(letter=letter, runs=same, cuts=here, shows=alike)
        for letter, (same, here, alike) in zip(letters, picked, strict=False)
    )


def on_end(row: CutRow, part: Unfolded) -> bool:
    """True for a cut so shallow in an end that it is measured on the end itself."""
    cut = row.cut
    if not isinstance(cut, (Slot, Groove, Pocket)) or cut.face not in ("low end", "high end"):
        return False
    low, high = _inside(span_along(cut, part), part)
    return high - low < _SHALLOW


def _inside(span: tuple[float, float] | None, part: Unfolded) -> tuple[float, float]:
    assert span is not None
    return (max(0.0, round(span[0], 6)), min(part.length, round(span[1], 6)))


def prepare(chosen: Chosen, own: PartCuts, part: Unfolded, rules: Rules) -> Drawn:
    """Work out a section's dimensions and the room it takes."""
    thin = part.thickness <= _THIN and part.width <= _NARROW
    broad = 4.0 if rules.unit == "inch" else 5.0
    scale = 1.0 if part.width <= _SMALL or thin else 2.0 if part.width < 320 else broad
    measures = tuple(_measures(chosen, own, part, rules))
    step = rules.fine.next_chain

    def margin(side: Side, least: float) -> float:
        levels = [m.level for m in measures if m.side == side]
        # Values stand above a level line, so under the wood the line itself is the last.
        past = 2.0 if side == "under" else 4.6
        return max(least, FIRST + step * max(levels) + past) if levels else least

    return Drawn(
        chosen=chosen,
        scale=scale,
        measures=measures,
        wide=part.width / scale,
        tall=part.thickness / scale,
        left=margin("left", 1.0),
        right=margin("right", 2.0),
        above=margin("over", 2.0),
        below=margin("under", 1.0) + CAPTION,
    )


def draw(draft: Draft, drawn: Drawn, part: Unfolded, at: Point, words: str, scale: str) -> View:
    """Draw a section; `at` is the low left corner of the wood on paper."""
    chosen = drawn.chosen
    view = draft.view(f"{part.part.mark} {chosen.letter}-{chosen.letter}", drawn.scale, at)
    low, high = chosen.runs[0]
    middle = (low + high) / 2
    outline = tuple(part.cross(y, z) for y, z in _outline(part.part, middle + part.foot))
    holes = tuple(_holes(chosen, part))
    region = tuple(view.path(ring) for ring in (outline, *holes))
    small = drawn.wide < 16
    draft.add(
        board(region, view.name)
        if part.part.material.look == "board"
        else end_grain(
            region, view.name, "below", 1.9 if small else 2.4, max(25.0, 0.75 * drawn.wide)
        )
    )
    for ring in region:
        draft.add(
            Stroke(
                layer="cut_heavy" if drawn.scale <= 2 else "cut",
                points=ring,
                closed=True,
                view=view.name,
            )
        )
    for start, end in _middles(chosen, part):
        draft.add(Stroke(layer="centre", points=view.path((start, end)), view=view.name))
    reach = _reach(chosen, part)
    sawn = _sawn_away(drawn, part, reach)
    for gone in sawn:
        draft.add(Stroke(layer="adjacent", points=view.path(gone), view=view.name))
    reach = around_boxes([reach, *(around(gone) for gone in sawn)])
    place_chains(draft, [_chain(measure, view, reach) for measure in drawn.measures])
    low = at[1] - (drawn.below - CAPTION) - 5.4
    caption(draft, (at[0], low), f"{chosen.letter}-{chosen.letter}  {scale}", words)
    return view


def _sawn_away(drawn: Drawn, part: Unfolded, reach: Box) -> list[Polygon]:
    """The blank beyond a shaped edge, where a place across the part is measured from it."""
    ends = {end for m in drawn.measures if m.side in ("over", "under") for end in m.ends}
    return [
        ((wood, 0.0), (blank, 0.0), (blank, part.thickness), (wood, part.thickness))
        for blank, wood in ((0.0, reach.x0), (part.width, reach.x1))
        if abs(wood - blank) > _ALL and any(abs(end - blank) < _ALL for end in ends)
    ]


def _outline(part: Part, at: float) -> Polygon:
    """The wood at a place along the blank, in its y and z, without what comes in from the ends."""
    rounding = next((cut for cut in part.cuts if isinstance(cut, RoundArrises)), None)
    if rounding is not None:
        blank = part.blank
        radius = float(rounding.radius)
        return rounded(0.0, 0.0, float(blank.width), float(blank.thickness), radius)
    stands = Placement(x=(0.0, 0.0, 1.0), y=(1.0, 0.0, 0.0))
    cut = cut_through(Piece(part=part, group="", stands=stands), "level", at)
    assert cut is not None, f"{part.name} is not cut at {at}"
    return cut.outline


def drawn_rule(size: Size, rules: Rules) -> Rule:
    """How a dimension of a cut is printed: the decimal of an inch stands in the list alone."""
    return dataclasses.replace(rules.fine, decimals=False) if size.fine else rules.wood


def _holes(chosen: Chosen, part: Unfolded) -> list[Polygon]:
    """What comes in from the ends, as the section meets it."""
    holes = []
    for row in chosen.cuts:
        cut = row.cut
        if isinstance(cut, (Slot, Groove, Pocket)) and cut.face in ("low end", "high end"):
            ring = shape_on_face(cut, part)
            holes.append(tuple(part.cross(y, z) for y, z in ring))
    return holes


def _middles(chosen: Chosen, part: Unfolded) -> list[tuple[Point, Point]]:
    """The middle line of each cut, a little past its mouth and its bottom."""
    lines: dict[tuple[Point, Point], None] = {}
    for row in chosen.cuts:
        cut = row.cut
        assert isinstance(cut, (Slot, Groove, Pocket))
        blank, deep = part.part.blank, float(cut.depth)
        if cut.face in ("low end", "high end"):
            far = (float(cut.u0), float(cut.u1)) if not isinstance(cut, Pocket) else (0.0, 0.0)
            ends = [(u, float(cut.v)) for u in (far[0] - 5.0, far[1] + 5.0)]
            a, b = (part.cross(*end) for end in ends)
        else:
            points = [face_point(cut.face, blank, 0.0, float(cut.v), d) for d in (-5.0, deep + 5.0)]
            a, b = (part.cross(float(y), float(z)) for _, y, z in points)
        lines[a, b] = None
    return list(lines)


def _measures(chosen: Chosen, own: PartCuts, part: Unfolded, rules: Rules) -> list[Measure]:
    """Each different number of the cuts once, on the side the cut comes from; the blank's sizes."""
    found: list[Measure] = []
    taken: set[tuple[object, ...]] = set()
    levels: dict[Side, int] = {}

    def add(side: Side, ends: tuple[float, float], size: Size, key: tuple[object, ...]) -> None:
        value = round(float(size.figure), 4)
        if (value, *key) in taken or value == 0:
            return
        taken.add((value, *key))
        level = levels.get(side, 0)
        levels[side] = level + 1
        rule = drawn_rule(size, rules)
        found.append(Measure(side=side, ends=ends, figure=size.figure, level=level, rule=rule))

    rows = sorted(chosen.cuts, key=lambda row: float(row.size("width") or 0.0))
    # Where one cut lies in another, their widths stand outside the way to their middle.
    nested = sum(isinstance(row.cut, Pocket) for row in rows) > 1
    for quantity in ("across", "width", "deep") if nested else ("width", "across", "deep"):
        for row in rows:
            for size in row.degrees:
                if isinstance(size, Size) and size.quantity == quantity:
                    _measure(row, size, part, add)
    reach = _reach(chosen, part)
    whole: list[tuple[Side, float, Figure]] = []
    # a blank's size is measured where all of it is there
    if reach.width > part.width - _ALL:
        whole.append(("under", part.width, own.width))
    if reach.height > part.thickness - _ALL:
        whole.append(("left", part.thickness, own.thickness))
    for side, far, figure in whole:
        level = levels.get(side, 0)
        found.append(
            Measure(
                side=side,
                ends=(0.0, far),
                figure=figure,
                level=level,
                rule=rules.wood,
            )
        )
    return found


def _reach(chosen: Chosen, part: Unfolded) -> Box:
    """The box of the wood that a section cuts."""
    whole = Box(0.0, 0.0, part.width, part.thickness)
    if not any(isinstance(cut, Shaped) for cut in part.part.cuts):
        return whole
    low, high = chosen.runs[0]
    ring = _outline(part.part, (low + high) / 2 + part.foot)
    return around(part.cross(y, z) for y, z in ring)


def _measure(row: CutRow, size: Size, part: Unfolded, add: _Add) -> None:
    """One number of one cut as a dimension of the section."""
    cut = row.cut
    assert isinstance(cut, (Slot, Groove, Pocket))
    side = part.side(cut.face)
    quantity: Quantity = size.quantity
    v, half, deep = float(cut.v), float(cut.width) / 2, float(cut.depth)
    flat = side in ("face", "back")
    if quantity == "deep":
        if side in ("left", "right"):
            return
        mouth = _cross_on(cut, part, 0.0)
        bottom = _cross_on(cut, part, deep)
        start = (mouth[1], bottom[1]) if flat else (mouth[0], bottom[0])
        where: Side = "right" if flat else "over"
        add(where, _sorted(start), size, ("deep", "flat" if flat else side))
        return
    low, high = _cross_at(cut, part, v - half), _cross_at(cut, part, v + half)
    middle = _cross_at(cut, part, v)
    if flat:
        where = "over"
        origin = part.cross(0.0, 0.0)[0]
        ends = (low[0], high[0]) if quantity == "width" else (origin, middle[0])
    else:
        # The right side of a section is the edge that lies below the face.
        where = "left" if side == "over" else "right"
        ends = (low[1], high[1]) if quantity == "width" else (middle[1], part.thickness)
    add(where, _sorted(ends), size, (quantity, "flat" if flat else "edge"))


def _cross_on(cut: Milled, part: Unfolded, depth: float) -> Point:
    _, y, z = face_point(cut.face, part.part.blank, 0.0, float(cut.v), depth)
    return part.cross(float(y), float(z))


def _cross_at(cut: Milled, part: Unfolded, v: float) -> Point:
    """A place across a cut's mouth, in the section."""
    if cut.face in ("low end", "high end"):
        return part.cross(0.0, v)
    _, y, z = face_point(cut.face, part.part.blank, 0.0, v, 0.0)
    return part.cross(float(y), float(z))


def _sorted(ends: tuple[float, float]) -> tuple[float, float]:
    return (min(ends), max(ends))


def _chain(measure: Measure, view: View, reach: Box) -> Chain:
    out = FIRST + measure.rule.next_chain * measure.level
    low, high = view.at((reach.x0, reach.y0)), view.at((reach.x1, reach.y1))
    axis: Axis
    match measure.side:
        case "over":
            axis, line, foot = "across", high[1] + out, high[1]
        case "under":
            axis, line, foot = "across", low[1] - out, low[1]
        case "left":
            axis, line, foot = "up", low[0] - out, low[0]
        case _:
            axis, line, foot = "up", high[0] + out, high[0]
    stops = tuple(Stop(at=at, foot=foot) for at in measure.ends)
    return Chain(
        view=view,
        axis=axis,
        line=line,
        stops=stops,
        links=(Link(figure=measure.figure, rule=measure.rule),),
    )
