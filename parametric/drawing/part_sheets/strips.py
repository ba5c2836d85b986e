"""One side of a part lying along the sheet: outline, cuts, trim lines, breaks, middle lines.

Every stretch between two breaks is a view of its own at true scale, so that whatever is
measured in it is measured true.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.drawing.draft import Draft
from parametric.drawing.finished_outline import bevels, cut_off, finished_outline, through_cuts
from parametric.drawing.lettering import TEXT, TITLE
from parametric.drawing.marks import grain, wave
from parametric.drawing.part_sheets.balloons import Call
from parametric.drawing.part_sheets.breaks import Lie, kept
from parametric.drawing.part_sheets.cut_shapes import lines_of, own_side, span_along, target
from parametric.drawing.part_sheets.drilled_cuts import drilled_middles
from parametric.drawing.part_sheets.shaped_cuts import Bow, Line, bevelled_lines, finished_lines
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.pieces import face_outline
from parametric.drawing.plane import Box, Point, Polygon, around, inside
from parametric.drawing.primitives import Arc, Label, Stroke
from parametric.drawing.shaped import flattened
from parametric.drawing.sheet import View
from parametric.model import Drilled, Groove, Mitre, Pocket, RoundCorners, Shaped, Slot
from parametric.trade.part_cuts import CutRow

_PAST = 2.5
"""How far a middle line passes what it is the middle of, mm on paper."""
_PAST_HOLE = 1.2
"""Of a bored hole, of which there are many in a row."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Strip:
    """A side where it lies: one view a stretch, from the left; `base` is its low edge on paper."""

    side: Side
    lie: Lie
    views: tuple[View, ...]
    base: float
    top: float

    def view(self, along: float) -> View:
        """The view in which a place along the part is drawn."""
        return self.views[self.lie.index(along)]

    def at(self, point: Point) -> Point:
        """A point of the side on paper."""
        return (self.lie.x(point[0]), self.base + point[1] / self.lie.scale)


def lay_strip(draft: Draft, part: Unfolded, side: Side, lie: Lie, base: float) -> Strip:
    """Draw one side of a part; `base` is where its low edge lies on paper, mm."""
    name = f"{part.part.mark} {part.word(side)}"
    views = tuple(
        draft.view(name if n == 1 else f"{name} {n}", lie.scale, (stretch.zero, base))
        for n, stretch in enumerate(lie.stretches, 1)
    )
    strip = Strip(
        side=side, lie=lie, views=views, base=base, top=base + part.height(side) / lie.scale
    )
    for line in (*_outline(part, side), *_cut_lines(part, side), *_middles(part, side, lie)):
        _draw(draft, strip, line)
    for left, right in itertools.pairwise(views):
        index = views.index(left)
        for view, along in (
            (left, lie.stretches[index].high),
            (right, lie.stretches[index + 1].low),
        ):
            x = view.x(along)
            wave(draft, (x, base), (x, strip.top), view.name, amplitude=0.9)
    return strip


def strip_call(row: CutRow, part: Unfolded, strip: Strip) -> Call:
    """The balloon of a cut on a strip; where its middle is broken out, on what is left of it."""
    along, up = target(row.cut, part)
    span = span_along(row.cut, part)
    if span is not None and not any(s.holds(along) for s in strip.lie.stretches):
        left = next(s for s in strip.lie.stretches if s.high > span[0] + 1e-6)
        along = (max(left.low, span[0]) + min(left.high, span[1])) / 2
    return Call(number=row.number, target=strip.at((along, up)), view=strip.view(along).name)


def _draw(draft: Draft, strip: Strip, line: Line | Bow) -> None:
    last = len(strip.views) - 1
    for index, (view, stretch) in enumerate(zip(strip.views, strip.lie.stretches, strict=True)):
        # Only a break ends a line; what runs past the ends of the wood is drawn to its own end.
        low = stretch.low if index else float("-inf")
        high = stretch.high if index < last else float("inf")
        if isinstance(line, Bow):
            draft.add(*_arcs(line, view, low, high))
            continue
        for points, closed in kept(line.points, line.closed, low, high):
            draft.add(
                Stroke(layer=line.layer, points=view.path(points), closed=closed, view=view.name)
            )


def _arcs(bow: Bow, view: View, low: float, high: float) -> Iterator[Arc]:
    """What of a bow lies between two places along."""
    for start, end in bow.between(low, high):
        yield Arc(
            layer=bow.layer,
            centre=view.at(bow.centre),
            radius=bow.radius / view.scale,
            start=start,
            end=end,
            view=view.name,
        )


def _outline(part: Unfolded, side: Side) -> Iterator[Line | Bow]:
    """The blank; a mitred, rounded or shaped piece as it ends up, with what is cut off it."""
    low, high = -part.foot, part.length + part.head
    box: Polygon = (
        (low, 0.0),
        (high, 0.0),
        (high, part.height(side)),
        (low, part.height(side)),
    )
    if side in ("face", "back") and through_cuts(part.part):
        yield from finished_lines(part, side)
        for stretch in cut_off(part.part):
            ends = part.path("high face", stretch, side)
            yield Line(side=side, layer="adjacent", points=ends, closed=False)
        return
    if side in ("over", "under") and any(
        isinstance(cut, Shaped) and bevels(cut, part.part) for cut in part.part.cuts
    ):
        yield from bevelled_lines(part, side)
        return
    shaped = any(isinstance(cut, (Mitre, RoundCorners)) for cut in part.part.cuts)
    if side != "face" or not shaped:
        yield Line(side=side, layer="edge", points=box)
        return
    ring = tuple(part.place("face", (x, y, 0.0)) for x, y in face_outline(part.part))
    yield Line(side=side, layer="edge", points=ring)
    yield Line(side=side, layer="adjacent", points=box)


def _cut_lines(part: Unfolded, side: Side) -> Iterator[Line | Bow]:
    """Each once: a cut on the face that lies on the outline of another draws no second line."""
    seen: dict[tuple[str, Polygon], None] = {}
    for cut in part.part.cuts:
        if isinstance(cut, (Mitre, RoundCorners)):
            continue
        for line in lines_of(cut, part):
            key = (line.layer, line.points)
            if line.side == side and key not in seen:
                seen[key] = None
                yield line


def _middles(part: Unfolded, side: Side, lie: Lie) -> Iterator[Line]:
    """Middle lines: along an edge from end to end, across a pocket both ways."""
    past = _PAST * lie.scale
    levels: dict[float, None] = {}
    for cut in part.part.cuts:
        if isinstance(cut, Drilled) and own_side(cut, part) == side:
            yield from drilled_middles(cut, part, side, _PAST_HOLE * lie.scale)
        if not isinstance(cut, (Slot, Groove, Pocket)) or own_side(cut, part) != side:
            continue
        if side in ("over", "under"):
            level = part.on_face(cut.face, 0.0, float(cut.v), 0.0, side)[1]
            levels[round(level, 6)] = None
        elif isinstance(cut, Pocket):
            x, y = part.on_face(cut.face, float(cut.u), float(cut.v), 0.0, side)
            half, rise = float(cut.length) / 2 + past, float(cut.width) / 2 + past
            for line in (((x - half, y), (x + half, y)), ((x, y - rise), (x, y + rise))):
                if not any(_inside(cut, other) for other in part.part.cuts):
                    yield Line(side=side, layer="centre", points=line, closed=False)
    for level in levels:
        ends = ((-part.foot - past, level), (part.length + part.head + past, level))
        yield Line(side=side, layer="centre", points=ends, closed=False)


def _inside(cut: Pocket, other: object) -> bool:
    """Whether a pocket lies in another on the same middle, whose lines then serve for both."""
    return (
        isinstance(other, Pocket)
        and other.face == cut.face
        and (float(other.u), float(other.v)) == (float(cut.u), float(cut.v))
        and float(other.length) > float(cut.length)
    )


def mark_face(draft: Draft, part: Unfolded, strip: Strip, *, lettered: bool) -> None:
    """Letter FACE and draw the grain's arrow, where the wood is plain if it is anywhere."""
    cuts = [
        around(strip.at(point) for point in line.points).grown(1.0)
        for line in _cut_lines(part, "face")
    ]

    wood = _left(part, strip)

    def on_cut(place: tuple[View, float, float]) -> bool:
        _, x, y = place
        own = Box(x - 8.0, y - 2.4, x + 8.0, y + 2.4)
        off = wood and not all(inside(corner, (wood,)) for corner in own.polygon)
        return bool(off) or any(own.meets(cut) for cut in cuts)

    places = sorted(_places(strip), key=on_cut) or list(_middle_places(strip))
    if not places:
        draft.unplaced.append("FACE")
        return
    plain = [place for place in places if not on_cut(place)] or places
    if lettered:
        draft.add_first(
            [
                Label(
                    text="FACE",
                    at=(x, y - TITLE / 2),
                    height=TITLE,
                    anchor="centre",
                    weight="bold",
                    view=view.name,
                )
                for view, x, y in places
            ]
        )
    # The arrow takes the place farthest from the mark: both are then found at a glance.
    _grain_arrow(draft, (*reversed(plain), *places))


def _left(part: Unfolded, strip: Strip) -> Polygon:
    """What is left of a face that is cut through, on paper; empty for a plain one."""
    if not through_cuts(part.part):
        return ()
    ring = part.path("high face", flattened(finished_outline(part.part)), strip.side)
    return tuple(strip.at(point) for point in ring)


def mark_grain(draft: Draft, strip: Strip) -> None:
    """Draw the grain's arrow alone, on a piece that has no face of its own."""
    _grain_arrow(draft, tuple(_places(strip)) or tuple(_middle_places(strip)))


def _grain_arrow(draft: Draft, places: Sequence[tuple[View, float, float]]) -> None:
    draft.add_first_clear(
        [grain((x, y), "across", view.name, long) for long in (14.0, 9.0) for view, x, y in places],
        "grain",
    )


def _middle_places(strip: Strip) -> Iterator[tuple[View, float, float]]:
    """On a narrow or a short piece: in the middle of each stretch, over one another where it is wide."""
    tall = strip.top - strip.base
    for share in (0.5, 0.72, 0.28, 0.86, 0.14):
        y = strip.base + tall * share
        if share != 0.5 and min(y - strip.base, strip.top - y) < 2 * TEXT:
            continue
        for view, stretch in zip(strip.views, strip.lie.stretches, strict=True):
            yield view, (view.x(stretch.low) + view.x(stretch.high)) / 2, y


def _places(strip: Strip) -> Iterator[tuple[View, float, float]]:
    """Places on a side, from the left, the middle of its height first."""
    tall = strip.top - strip.base
    for share in (0.5, 0.72, 0.28):
        y = strip.base + tall * share
        if min(y - strip.base, strip.top - y) < TEXT:
            continue
        for view, stretch in zip(strip.views, strip.lie.stretches, strict=True):
            x, end = view.x(stretch.low) + 12.0, view.x(stretch.high) - 12.0
            while x <= end:
                yield view, x, y
                x += 4.0


_WIDE = 25.0
"""A strip higher than this on paper has more than one place beside it for its name, mm."""


_ASIDE = (3.0, 8.0, 11.0, 14.0)
"""How far farther out the name of a side may stand together, mm."""


def word_beside(draft: Draft, strip: Strip, word: str) -> None:
    """What the shop calls a side, before its left end."""
    words = word.split(" ", 1)
    middle, high = (strip.base + strip.top) / 2, strip.top - strip.base
    x = strip.lie.left - 3.2 if strip.side in ("over", "under") else strip.lie.left - 2.6
    # on a wide board there is room above or below what stands at the middle
    tries = [_rows(words, middle + part * high) for part in (0.0, 0.25, -0.25, 0.4, -0.4)]

    def stands(rows: list[tuple[str, float]]) -> bool:
        return all(draft.free(Label(text=t, at=(x, y), anchor="right").box) for t, y in rows)

    rows = next((rows for rows in tries if high > _WIDE and stands(rows)), tries[0])
    # one word past a thing that stands in its way; both past the name of an end, where that does
    for text, y in rows:
        own = [Label(text=text, at=(x - dx, y), anchor="right") for dx in (0.0, 3.0)]
        if draft.first_free(own) is None and _both_aside(draft, rows, x):
            return
    for text, y in rows:
        draft.add_first([Label(text=text, at=(x - dx, y), anchor="right") for dx in (0.0, 3.0)])


def _both_aside(draft: Draft, rows: Sequence[tuple[str, float]], x: float) -> bool:
    """Letter the words of a side farther out, together; False where they do not stand clear there."""
    for aside in _ASIDE:
        labels = [Label(text=t, at=(x - aside, y), anchor="right") for t, y in rows]
        if all(draft.free(label.box) for label in labels):
            draft.add(*labels)
            return True
    return False


def _rows(words: Sequence[str], middle: float) -> list[tuple[str, float]]:
    pitch = TEXT * 1.6
    top = middle + (len(words) - 1) * pitch / 2 - TEXT / 2
    return [(word, top - k * pitch) for k, word in enumerate(words)]
