"""The story stick: every line of a leaf from one datum, so that nothing is measured twice.

One edge of the stick carries the heights from the finished foot, the other the widths from
the left edge; both begin at the same zero.

heights                      widths
2102 |---------------|  top
     |      R1       |
1982 |---------------|
     |      G1       |-------| 1024.5  leaf
     |               |-------|  904.5  right stile
   0 |---------------|-------|  0
 -12 |---------------|  trim
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, named
from parametric.model import Assembly
from parametric.names import SEPARATOR, join
from parametric.resolve.bar_places import Bar
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf

Kind = Literal["datum", "edge", "stop", "pull", "trim", "floor", "slot"]


@dataclass(frozen=True, slots=True, kw_only=True)
class StickMark:
    """One mark across the stick, mm.

    `at` is where it lies from the stick's zero, `figure` the number printed there, counted
    from `zero`: a trim is counted from the end it comes off. `down` is printed to the step
    below and `fine` to the finer step, as the lists print panels and panes.
    """

    kind: Kind
    at: float
    figure: Figure
    words: str
    zero: float = 0.0
    down: bool = False
    fine: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class StickBand:
    """What lies between two heights, mm: the mark of its part and what it is called."""

    low: Figure
    high: Figure
    mark: str
    noun: str


@dataclass(frozen=True, slots=True, kw_only=True)
class StoryStick:
    """One stick, for every leaf that it fits, mm. `low` and `high` are its outermost marks."""

    leaves: tuple[str, ...]
    heights: tuple[StickMark, ...]
    bands: tuple[StickBand, ...]
    widths: tuple[StickMark, ...]

    @property
    def low(self) -> float:
        """The lowest mark."""
        return min(float(mark.at) for mark in self.heights)

    @property
    def high(self) -> float:
        """The highest mark."""
        return max(float(mark.at) for mark in (*self.heights, *self.widths))


def story_sticks(resolved: Resolved, assembly: Assembly) -> tuple[StoryStick, ...]:
    """One stick for all leaves that share every mark, in the order of the leaves."""
    marks = {part.name: part.mark for part in assembly.parts}
    found: dict[tuple[object, ...], list[tuple[Leaf, StoryStick]]] = {}
    for door, leaf in ((one, leaf) for one in resolved.doors for leaf in one.leaves):
        on_a_case = door.hanging.case is not None
        stick = StoryStick(
            leaves=(leaf.letter,),
            heights=tuple(_heights(leaf, None if on_a_case else leaf.hung.foot)),
            bands=tuple(_bands(leaf, marks)),
            widths=tuple(_widths(leaf, marks)),
        )
        found.setdefault(_key(stick), []).append((leaf, stick))
    return tuple(
        StoryStick(
            leaves=tuple(leaf.letter for leaf, _ in own),
            heights=own[0][1].heights,
            bands=own[0][1].bands,
            widths=own[0][1].widths,
        )
        for own in found.values()
    )


def _key(stick: StoryStick) -> tuple[object, ...]:
    """Equal for leaves that one stick serves; floats that differ in their last bits are equal."""
    lines = tuple(
        (mark.kind, mark.words, round(float(mark.at), 6))
        for mark in (*stick.heights, *stick.widths)
    )
    return (*lines, tuple((band.mark, band.noun) for band in stick.bands))


def _heights(leaf: Leaf, floor_gap: Figure | None) -> Iterator[StickMark]:
    """Up from the finished foot, and down to the floor where the leaf stands over one."""
    trim = float(leaf.trim)
    bands = leaf.bands[::-1]
    yield StickMark(kind="datum", at=0.0, figure=bands[0].foot, words="datum, foot")
    for band in bands[:-1]:
        words = f"top of the {'rail' if band.is_rail else 'opening'}"
        if band is leaf.bands[1] and leaf.rails[0].head is not None:
            words = "springing"
        yield StickMark(kind="edge", at=float(band.top), figure=band.top, words=words)
    yield StickMark(kind="edge", at=float(leaf.height), figure=leaf.height, words="finished top")
    if trim > 0:
        yield StickMark(kind="trim", at=-trim, figure=leaf.trim, words="blank")
        top = float(leaf.height)
        yield StickMark(kind="trim", at=top + trim, figure=leaf.trim, words="blank", zero=top)
    if floor_gap is not None and float(floor_gap) > 0:
        yield StickMark(kind="floor", at=-float(floor_gap), figure=floor_gap, words="floor")
    if leaf.guide is not None:
        yield StickMark(
            kind="stop", at=float(leaf.guide.depth), figure=leaf.guide.depth, words="guide groove"
        )
    for field in leaf.panels:
        for stop in () if field.through else (field.groove_low, field.groove_high):
            yield StickMark(kind="stop", at=float(stop), figure=stop, words="groove stops")
    for bar in _bars(leaf, upright=False):
        for edge in (bar.low, bar.high):
            yield StickMark(kind="edge", at=float(edge), figure=edge, words=_bar_words(bar))
    for edge_hung in leaf.hinges if leaf.hung.flap is None else ():
        for hinge in edge_hung.hinges.places:
            word = hinge.name.rpartition(SEPARATOR)[2]
            for end in (hinge.low, hinge.high):
                yield StickMark(kind="stop", at=float(end), figure=end, words=word)
    if leaf.lock is not None:
        yield StickMark(kind="pull", at=float(leaf.lock.up), figure=leaf.lock.up, words="spindle")
    for word, let_in in (
        ("lock", None if leaf.lock is None else leaf.lock.mortise),
        ("strike", None if leaf.strike is None else leaf.strike.strike),
    ):
        if let_in is not None:
            for end in (let_in.plate_low, let_in.plate_high):
                yield StickMark(kind="stop", at=float(end), figure=end, words=f"{word} plate")
    for hung in leaf.pulls:
        yield StickMark(kind="pull", at=float(hung.pull.up), figure=hung.pull.up, words="pull")
    for rail in leaf.rails:
        for place in rail.slots:
            yield StickMark(kind="slot", at=float(place.centre), figure=place.centre, words="slot")


def _bars(leaf: Leaf, *, upright: bool) -> Iterator[Bar]:
    """The bars of all lites that run one way; those alike of two lites are marked once."""
    told: set[float] = set()
    for lite in leaf.lites:
        for bar in lite.bars:
            if bar.upright == upright and round(float(bar.low), 6) not in told:
                told.add(round(float(bar.low), 6))
                yield bar


def _bar_words(bar: Bar) -> str:
    """`level bar 2`."""
    return bar.name.rpartition(SEPARATOR)[2]


def _bands(leaf: Leaf, marks: dict[str, str]) -> Iterator[StickBand]:
    """Rails, panels and lites from the foot up; a lite is named by its glass."""
    for band in leaf.bands[::-1]:
        mark = marks.get(band.name) or marks.get(join(band.name, "glass"), "")
        yield StickBand(low=band.foot, high=band.top, mark=mark, noun=band.noun)


def _widths(leaf: Leaf, marks: dict[str, str]) -> Iterator[StickMark]:
    """From the left edge of the leaf: its own lines, then lengths that are cut to them."""
    yield StickMark(kind="datum", at=0.0, figure=leaf.bands[-1].foot, words="left edge")
    right = named(join(leaf.name, "right shoulder line"), leaf.width - leaf.right_stile)
    for figure, words in (
        (leaf.left_stile, "left stile"),
        (right, "right stile"),
        (leaf.width, "leaf"),
    ):
        yield StickMark(kind="edge", at=float(figure), figure=figure, words=words)
    for bar in _bars(leaf, upright=True):
        for edge in (bar.low, bar.high):
            yield StickMark(kind="edge", at=float(edge), figure=edge, words=_bar_words(bar))
    yield StickMark(kind="stop", at=float(leaf.shoulder), figure=leaf.shoulder, words="rails, long")
    said: set[str] = set()
    for field in leaf.panels:
        words = f"panel {marks.get(field.name, '')}".strip() + ", wide"
        if words not in said:
            said.add(words)
            width = field.panel.width
            yield StickMark(kind="stop", at=float(width), figure=width, words=words, down=True)
    for pane in (pane for lite in leaf.lites for pane in lite.panes):
        words = f"glass {marks.get(pane.name, '')}".strip() + ", wide"
        if words not in said:
            said.add(words)
            width = pane.width
            yield StickMark(
                kind="stop", at=float(width), figure=width, words=words, down=True, fine=True
            )
