"""What is written beside a row of bored holes: once for the row, not hole by hole.

37 |   o   o   o   o   o
|   12 × 5 dia, 13 deep, at 32
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, width
from parametric.drawing.part_sheets.cross_sections import drawn_rule
from parametric.drawing.part_sheets.strips import Strip
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.part_sheets.words import runs_said
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Anchor, Label
from parametric.drawing.printing import Rules
from parametric.model import Drilled
from parametric.trade.cut_quantities import Quantity
from parametric.trade.part_cuts import CutRow, PartCuts, Said, Size

_BEFORE = 5.0
"""From the first hole of a row to the dimension of the row's own line, mm on paper."""
_STEP = 6.0
"""Between the dimensions of two rows that begin at one place, mm on paper."""
_CLEAR = 2.2
"""Between a hole and the words beside it, mm on paper."""
_PAST_END = 3.5
"""From the end of a side too small for words to words beside it, mm on paper."""
_TRIED = 5.0
"""In what steps along a side words are tried, mm on paper."""
_LEAST = 2.0
"""A row nearer to the edge than this on paper has no room for its dimension, mm."""

_Spot = tuple[str, Point, Anchor]
"""The view that words belong to, where they stand on paper and by which end."""


def dimension_rows(
    draft: Draft, own: PartCuts, part: Unfolded, strips: Mapping[Side, Strip], rules: Rules
) -> None:
    """Beside every row along the part its words, and how far its line stands from the low edge."""
    rows = [
        (row, row.cut, strip)
        for row in own.rows
        if isinstance(row.cut, Drilled)
        and row.cut.count > 1
        and (strip := strips.get(part.side(row.cut.face))) is not None
    ]
    begun: dict[tuple[Side, float], int] = {}
    lines: set[tuple[Side, float]] = set()
    for row, cut, strip in rows:
        line = (strip.side, round(float(cut.v), 3))
        if strip.side in ("face", "back") and cut.along == "u" and line not in lines:
            lines.add(line)
            key = (strip.side, round(float(cut.u), 3))
            begun[key] = turn = begun.get(key, -1) + 1
            across = next(d for d in row.degrees if d.quantity == "across")
            assert isinstance(across, Size)
            _line_of(draft, across, cut, part, strip, rules, turn)
    # words stand where no line is drawn: after them all, and once for rows that are alike
    alike: dict[tuple[Side, str], list[tuple[CutRow, Drilled, Strip]]] = {}
    for found in rows:
        alike.setdefault((found[2].side, row_words(found[0], rules)), []).append(found)
    for (_, text), own_rows in alike.items():
        _words_of(draft, text, own_rows, part)


def _line_of(
    draft: Draft,
    size: Size,
    cut: Drilled,
    part: Unfolded,
    strip: Strip,
    rules: Rules,
    turn: int,
) -> None:
    """A dimension from the low edge up to the row: before its first hole, else after its last."""
    places = [part.on_face(cut.face, u, v, 0.0, strip.side) for u, v in cut.places]
    level = places[0][1]
    _, foot = part.on_face(cut.face, float(cut.u), 0.0, 0.0, strip.side)
    if abs(level - foot) / strip.lie.scale < _LEAST:
        return
    off = float(cut.diameter) / 2 / strip.lie.scale + _BEFORE + _STEP * turn
    low, high = sorted((strip.at((0.0, foot))[1], strip.at((0.0, level))[1]))
    tried = [(places[0][0], -off - more) for more in (0.0, _STEP, 2 * _STEP)]
    tried += [(places[-1][0], off + more) for more in (0.0, _STEP, 2 * _STEP)]

    def stands(spot: tuple[float, float]) -> bool:
        x = strip.lie.x(spot[0]) + spot[1]
        # on the side itself: beside it stands what it is called
        on_side = strip.lie.left < x - TEXT - 1.8 and x < strip.lie.right
        return on_side and draft.free(Box(x - TEXT - 1.8, low + 0.4, x + 0.4, high - 0.4))

    along, aside = next((spot for spot in tried if stands(spot)), tried[0])
    view = strip.view(along)
    chain = Chain(
        view=view,
        axis="up",
        line=view.x(along) + aside,
        stops=tuple(
            Stop(at=y, foot=view.x(along) if y == level else None) for y in sorted((foot, level))
        ),
        links=(Link(figure=size.figure, rule=drawn_rule(size, rules)),),
    )
    place_chains(draft, [chain])


def _words_of(
    draft: Draft, text: str, rows: Sequence[tuple[CutRow, Drilled, Strip]], part: Unfolded
) -> None:
    """`12 × 5 dia, 13 deep, at 32` beside its row; elsewhere on the side, by its number.

    Rows that are alike have it once, with the numbers of all.
    """
    strip = rows[0][2]
    numbered = f"{runs_said([row.number for row, _, _ in rows])}: {text}"
    near: list[Label] = []
    for _, cut, _ in rows:
        places = [part.on_face(cut.face, u, v, 0.0, strip.side) for u, v in cut.places]
        off = float(cut.diameter) / 2 / strip.lie.scale + _CLEAR
        across = abs(places[-1][0] - places[0][0]) < 1e-6
        spots = _beside(places, strip, off) if across else _over_and_under(places, strip, off)
        said = text if len(rows) == 1 else numbered
        near += [Label(text=said, at=at, anchor=way, view=view) for view, at, way in spots]
    far = [Label(text=numbered, at=at, view=view) for view, at in _anywhere(strip, numbered)]
    for _, cut, _ in rows:
        u, v = cut.places[0]
        _, up = strip.at(part.on_face(cut.face, u, v, 0.0, strip.side))
        view = strip.views[-1].name
        far += [
            Label(text=numbered, at=(strip.lie.right + _PAST_END, up + more), view=view)
            for more in (-TEXT / 2, TEXT, -2 * TEXT)
        ]
    # at last by the first of them alone: the list says that the others are alike
    first = f"{rows[0][0].number}: {text}"
    short = [Label(text=first, at=at, view=view) for view, at in _anywhere(strip, first)]
    draft.add_first([*near, *far, *short])


def _over_and_under(places: Sequence[Point], strip: Strip, off: float) -> Iterator[_Spot]:
    """Over and under a row that runs along the part."""
    for share in (0.5, 0.4, 0.6, 0.3, 0.7, 0.2, 0.8, 0.1, 0.9):
        along, level = places[min(len(places) - 1, int(len(places) * share))]
        x, y = strip.at((along, level))
        for up in (off, -off - TEXT, off + 4.0, -off - TEXT - 4.0):
            yield strip.view(along).name, (x, y + up), "centre"


def _beside(places: Sequence[Point], strip: Strip, off: float) -> Iterator[_Spot]:
    """Right and left of a row that stands across the part: between two holes, then past its ends."""
    view, on_paper = strip.view(places[0][0]).name, [strip.at(place) for place in places]
    x, ups = on_paper[0][0], [y for _, y in on_paper]
    levels = [(a + b) / 2 - TEXT / 2 for a, b in itertools.pairwise(ups)]
    levels += [max(ups) + off, min(ups) - off - TEXT]
    for y in levels:
        yield view, (x + off, y), "left"
        yield view, (x - off, y), "right"


def _anywhere(strip: Strip, text: str) -> Iterator[tuple[str, Point]]:
    """Places all over a side, the low ones first."""
    y, long = strip.base + _CLEAR, width(text) + _CLEAR
    while y < strip.top - TEXT - _CLEAR:
        for view, stretch in zip(strip.views, strip.lie.stretches, strict=True):
            x, end = view.x(stretch.low) + _CLEAR, view.x(stretch.high) - long
            while x < end:
                yield view.name, (x, y)
                x += _TRIED
        y += TEXT


def row_words(row: CutRow, rules: Rules) -> str:
    """A row of holes in words: how many, how wide, how deep, how far apart."""

    def said(quantity: Quantity) -> str:
        degree = next(d for d in row.degrees if d.quantity == quantity)
        if isinstance(degree, Said):
            return degree.words
        return drawn_rule(degree, rules).text(degree.figure)

    deep = said("deep")
    deep = deep if deep == "through" else f"{deep} deep"
    return f"{said('holes')} × {said('width')} dia, {deep}, at {said('apart')}"
