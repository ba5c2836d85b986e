"""The story stick drawn: a line for every mark, its number, and the parts between the lines.

A number sits on its own line; where two lines leave no room between them it is moved to the
nearest free place, and a thin jogged line leads to it.

    0            36         60
    | heights ->  | <- widths |
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.drawing.dimensions import Ordinate
from parametric.drawing.draft import Draft
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import BENCH, PITCH, TEXT, TITLE, Weight, wrap
from parametric.drawing.plane import Box, Point, Polygon
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import TitleBlock, View
from parametric.drawing.subject import Subject
from parametric.trade.story_stick import Kind, StickBand, StickMark, StoryStick

WIDE = 60.0
"""Width of the stick, mm."""
BEYOND = 8.0
"""How far the stick goes past its outermost marks, mm."""
_SPINE = 36.0
"""Where the heights end and the widths begin, mm from the edge of the heights."""
_OVER_WIDTHS = 14.0
"""How far the spine goes past the widest mark, mm; over it the heights have the whole stick."""
_IN = 2.5
"""From the marking edge to a number, mm."""
_TICK = 8.0
_ON = 0.6
"""What hangs lowest of a number or its words, over their line, mm."""
_OVER = 0.9
"""From words to the number or the line they belong to, mm."""
_SAME = 0.05
"""Marks nearer than this are one line, mm."""
_CLEAR = 0.3

_ORDER: tuple[Kind, ...] = ("datum", "edge", "pull", "trim", "floor", "stop", "slot")
"""Whose number is placed first."""
_LINES: dict[Kind, Layer] = {
    "datum": "edge",
    "edge": "edge",
    "pull": "centre",
    "trim": "edge",
    "floor": "edge",
    "stop": "edge",
    "slot": "hidden",
}


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """One edge of the stick and the room for what is lettered from it, mm across the stick."""

    edge: float
    inwards: float
    far: float

    def x(self, off: float) -> float:
        """A place so far in from the edge."""
        return self.edge + self.inwards * off


@dataclass(frozen=True, slots=True, kw_only=True)
class _Line:
    """Every mark that one line stands for, and how its number and its words are printed."""

    marks: tuple[StickMark, ...]
    rule: Rule
    text: str
    words: str

    @property
    def first(self) -> StickMark:
        """The mark that the number is printed for."""
        return self.marks[0]

    @property
    def weight(self) -> Weight:
        """The zero is bold."""
        return "bold" if self.first.kind == "datum" else "regular"


def draw_stick(
    draft: Draft, view: View, stick: StoryStick, job: Subject, title: TitleBlock
) -> None:
    """Draw a stick in a full-size view whose zero is the datum at the edge of the heights."""
    spine_top = max(float(mark.at) for mark in stick.widths) + _OVER_WIDTHS
    low, high = stick.low - BEYOND, stick.high + BEYOND
    draft.path("edge", view.path(Box(0.0, low, WIDE, high).polygon), view.name, closed=True)
    spine_top = min(spine_top, high)
    draft.path("edge_fine", view.path(((_SPINE, low), (_SPINE, spine_top))), view.name)
    heights = _Side(edge=0.0, inwards=1.0, far=_SPINE)
    widths = _Side(edge=WIDE, inwards=-1.0, far=_SPINE)
    lines = [(line, _side(line, heights, spine_top)) for line in _lines(stick.heights, job)]
    lines += [(line, widths) for line in _lines(stick.widths, job)]
    for line, side in lines:
        _draw_lines(draft, view, line, side)
    for line, side in sorted(lines, key=lambda own: _ORDER.index(own[0].first.kind)):
        _letter(draft, view, line, side)
    for band in stick.bands:
        _name_band(draft, view, band, WIDE if float(band.low) > spine_top else _SPINE)
    _whose(draft, view, stick, title, spine_top)


def _side(line: _Line, heights: _Side, spine_top: float) -> _Side:
    """Over the widths the heights run across the whole stick."""
    if float(line.first.at) > spine_top:
        return _Side(edge=heights.edge, inwards=heights.inwards, far=WIDE)
    return heights


def _lines(marks: Sequence[StickMark], job: Subject) -> list[_Line]:
    """Marks that lie on one another as one line, from the foot up."""
    groups: list[list[StickMark]] = []
    for mark in sorted(marks, key=lambda m: (float(m.at), _ORDER.index(m.kind))):
        last = groups[-1] if groups else None
        if (
            last is not None
            and float(mark.at) - float(last[0].at) < _SAME
            and (mark.zero == last[0].zero)
            and _text(mark, job) == _text(last[0], job)
        ):
            last.append(mark)
        else:
            groups.append([mark])
    return [_line(tuple(sorted(own, key=lambda m: _ORDER.index(m.kind))), job) for own in groups]


def _rule(mark: StickMark, job: Subject) -> Rule:
    return job.rules.fine if mark.fine else job.rules.wood


def _text(mark: StickMark, job: Subject) -> str:
    rule = _rule(mark, job)
    return rule.text(mark.figure, down=True) if mark.down else rule.dimension(mark.figure)


def _line(marks: tuple[StickMark, ...], job: Subject) -> _Line:
    first = marks[0]
    words = _together(tuple(dict.fromkeys(mark.words for mark in marks)))
    away = float(first.at) - first.zero
    if away < 0:
        words = f"under: {words}"
    elif first.zero:
        words = f"over: {words}"
    return _Line(marks=marks, rule=_rule(first, job), text=_text(first, job), words=words)


def _together(words: Sequence[str]) -> str:
    """`glass G1, G2`: what several begin with is said once."""
    said = [words[0]]
    for before, own in itertools.pairwise(words):
        noun, _, rest = own.partition(" ")
        said.append(rest if rest and before.startswith(f"{noun} ") else own)
    return ", ".join(said)


def _draw_lines(draft: Draft, view: View, line: _Line, side: _Side) -> None:
    for mark in line.marks:
        far = side.x(_TICK) if mark.kind == "slot" else side.far
        points = view.path(((side.edge, float(mark.at)), (far, float(mark.at))))
        draft.path(_LINES[mark.kind], points, view.name)


# --- numbers -------------------------------------------------------------------------------


def _letter(draft: Draft, view: View, line: _Line, side: _Side) -> None:
    """The number and its words in the first place that has room for both."""
    taken = [e.box for e in draft.elements if isinstance(e, Label)]
    taken += [e.label.box for e in draft.elements if isinstance(e, Ordinate)]
    first: tuple[Label, tuple[Label, ...], Polygon] | None = None
    for number, words, points in _places(view, line, side):
        first = first or (number, words, points)
        if _stands(draft, view, side, number, words) and not _runs_over(points, taken):
            _add(draft, view, line, number, words, points)
            return
    assert first is not None
    draft.unplaced.append(f"{line.text} {line.words}")
    _add(draft, view, line, *first)


def _stands(draft: Draft, view: View, side: _Side, number: Label, words: tuple[Label, ...]) -> bool:
    low, high = sorted((view.x(side.edge), view.x(side.far)))
    return all(
        low + 0.5 <= label.box.x0 and label.box.x1 <= high - 0.5 and draft.free(label.box, _CLEAR)
        for label in (number, *words)
    ) and not any(number.box.meets(label.box) for label in words)


def _runs_over(points: Polygon, boxes: Sequence[Box]) -> bool:
    return any(
        box.grown(_CLEAR).crossed(a, b) for a, b in itertools.pairwise(points) for box in boxes
    )


def _places(
    view: View, line: _Line, side: _Side
) -> Iterator[tuple[Label, tuple[Label, ...], Polygon]]:
    """Where number and words may stand, best first, with the line that leads to the number."""
    y = view.y(float(line.first.at))
    slot = line.first.kind == "slot"
    start = _TICK + 2.5 if slot else _IN
    sample = _number(view, line, (0.0, 0.0), side)
    middle = sample.height / 2
    hangs = max(sample.ink.below, Label(text=line.words, at=(0.0, 0.0)).ink.below)
    base = y - middle if slot else y + _ON + hangs
    lead = ((view.x(side.x(_TICK if slot else 0.0)), y), (view.x(side.x(start - 1.0)), y))
    number = _number(view, line, (view.x(side.x(start)), base), side)
    for words in _beside(view, line, number, side, y):
        yield number, words, lead
    for off in range(15):
        for way in (1.0, -1.0):
            moved = y + way * (4.5 + 1.5 * off)
            at = (view.x(side.x(10.8)), moved - middle)
            number = _number(view, line, at, side)
            jog: Polygon = (
                lead[0],
                (view.x(side.x(_TICK)), y),
                (view.x(side.x(10.0)), moved),
            )
            for words in _beside(view, line, number, side, None):
                yield number, words, jog
    # Under its own line, where another lies close over it.
    number = _number(view, line, (view.x(side.x(start)), y - 0.9 - sample.box.y1), side)
    for words in _beside(view, line, number, side, None):
        yield number, words, lead


def _number(view: View, line: _Line, at: Point, side: _Side) -> Label:
    return Label(
        text=line.text,
        at=at,
        height=TITLE,
        anchor="left" if side.inwards > 0 else "right",
        weight=line.weight,
        layer="dims",
        view=view.name,
        stacked=line.rule.stacked,
    )


def _beside(
    view: View, line: _Line, number: Label, side: _Side, under: float | None
) -> Iterator[tuple[Label, ...]]:
    """The words after the number, under its line, or over or under the number."""
    box = number.box
    outer = box.x0 if side.inwards > 0 else box.x1
    inner = (box.x1 if side.inwards > 0 else box.x0) + side.inwards * 1.4
    room = abs(view.x(side.far) - outer) - 1.0
    rows = tuple(wrap(line.words, room))
    deep = (len(rows) - 1) * TEXT * PITCH
    ink = Label(text=line.words, at=(0.0, 0.0)).ink
    yield _rows(view, (line.words,), (inner, number.at[1]), number)
    yield _rows(view, rows, (outer, box.y1 + _OVER + ink.below + deep), number)
    low = box.y0 if under is None else under
    yield _rows(view, rows, (outer, low - _OVER - ink.above), number)


def _rows(view: View, rows: Sequence[str], at: Point, number: Label) -> tuple[Label, ...]:
    return tuple(
        Label(
            text=text,
            at=(at[0], at[1] - row * TEXT * PITCH),
            anchor=number.anchor,
            view=view.name,
        )
        for row, text in enumerate(rows)
    )


def _add(
    draft: Draft,
    view: View,
    line: _Line,
    number: Label,
    words: tuple[Label, ...],
    points: Polygon,
) -> None:
    mark = line.first
    draft.add(*words)
    if line.text != line.rule.dimension(mark.figure):
        # Rounded down, as the lists say it: the line still stands at the true place.
        draft.add(Stroke(layer="dims", points=points, view=view.name), number)
        return
    draft.add(
        Ordinate(
            figure=mark.figure.name or "",
            value=float(mark.figure),
            text=number.text,
            rule=line.rule,
            axis="up",
            zero=(0.0, mark.zero),
            point=(0.0, float(mark.at)),
            lines=(points,),
            label=number,
            view=view.name,
        )
    )


# --- parts and whose it is -----------------------------------------------------------------


def _name_band(draft: Draft, view: View, band: StickBand, wide: float) -> None:
    """The mark of the part between two lines, large, and what it is called."""
    x = view.x(wide / 2)
    low, high = float(band.low), float(band.high)
    options = [
        _named(view, band, (x, view.y((low + high) / 2 + shift)), height)
        for height in (7.0, BENCH, TITLE)
        for shift in sorted(_shifts((high - low) / 2 - height), key=abs)
    ]
    fallback = [_named(view, band, (x, view.y((low + high) / 2)), TITLE)]
    _add_first(draft, options or fallback, f"{band.mark} {band.noun}")


def _shifts(play: float) -> Iterator[float]:
    off = 0.0
    while off <= max(play, 0.0):
        yield off
        if off:
            yield -off
        off += 4.0


def _named(view: View, band: StickBand, middle: Point, height: float) -> list[Label]:
    x, y = middle
    mark = Label(
        text=band.mark,
        at=(x, y - height / 2 + 1.5),
        height=height,
        anchor="centre",
        weight="bold",
        view=view.name,
    )
    noun = Label(
        text=band.noun,
        at=(x, mark.at[1] - TEXT * 1.9),
        anchor="centre",
        view=view.name,
    )
    return [mark, noun] if band.mark else [noun]


def _whose(
    draft: Draft, view: View, stick: StoryStick, title: TitleBlock, spine_top: float
) -> None:
    """Job, leaves and state of the design on the stick itself: it is cut out of its page."""
    letters = " and ".join(stick.leaves)
    revision = f"rev. {title.revision}" if title.revision else ""
    options: list[list[Label]] = []
    short: list[list[Label]] = []
    bands = sorted(stick.bands, key=lambda b: float(b.low) - float(b.high))
    for band in sorted(bands, key=lambda b: float(b.low) < spine_top):
        wide = WIDE if float(band.low) > spine_top else _SPINE
        lines = [
            *wrap(title.title, wide - 5.0),
            *wrap(
                f"story stick, {'leaf' if len(stick.leaves) == 1 else 'leaves'} {letters}",
                wide - 5.0,
            ),
            "  ".join(word for word in (title.number, revision, title.fingerprint) if word),
        ]
        options += _down(view, band, wide, lines)
        # a stick of a low front has room for what tells it from others, and no more
        short += _down(view, band, wide, [f"{letters}  {title.fingerprint}"])
    _add_first(draft, [*options, *short], f"story stick {letters}")


def _down(view: View, band: StickBand, wide: float, lines: Sequence[str]) -> Iterator[list[Label]]:
    """Lines of text in one band, from its top down."""
    deep = len(lines) * TEXT * PITCH
    top = float(band.high) - 8.0
    while top - deep > float(band.low) + 4.0:
        yield [
            Label(
                text=text,
                at=(view.x(wide / 2), view.y(top - (row + 1) * TEXT * PITCH)),
                anchor="centre",
                view=view.name,
            )
            for row, text in enumerate(lines)
        ]
        top -= 6.0


def _add_first(draft: Draft, options: Sequence[list[Label]], what: str) -> None:
    """The first of several groups that stands well clear, else that stands clear at all."""
    for clear in (4.0, 1.5, _CLEAR):
        for group in options:
            if all(draft.free(label.box, clear) for label in group):
                draft.add(*group)
                return
    draft.unplaced.append(what)
