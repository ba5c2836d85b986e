"""Chains of dimensions, placed so that no value is touched by a line or by another text.

        a link        stop
    |---- 904.5 ----/-- 120 --/---- 904.5 ----|      dimension line
    |               |         |               |      extension lines
    ============================================     the thing measured

All lines of a view's chains are laid down first; then the values are placed, the
innermost chain first, each in the first of a fixed list of places that is free.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.drawing.dimensions import TICK, Axis, Dimension
from parametric.drawing.draft import CLEAR, Draft, Segment, segments
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Label
from parametric.drawing.printing import MM, Rule
from parametric.drawing.sheet import View, primitives
from parametric.figures import Figure

FIRST = 10.0
"""From the outermost thing on a side to the innermost chain, mm."""
NEXT = 8.0
"""From one chain to the next, mm, in millimetres; a rule's `next_chain` knows it for any unit."""
GAP = 1.2
"""From the thing measured to its extension line, mm."""
OVER = 1.6
"""How far an extension line passes the dimension line, mm."""
ABOVE = 1.05
"""From the dimension line to the foot of its value, mm."""
APART = 0.7
"""What a value keeps clear of another text where its link has the room, mm."""
SIDES = 1.8
"""What a value needs beside its own width to stand inside its link, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Stop:
    """A place that a chain reads to.

    Args:
        at: the model coordinate along the chain, mm.
        foot: the paper coordinate, across the chain, of the thing measured; None where the
            chain runs to an edge that the view draws anyway.
        inner: the place is carried on from a chain nearer the thing, whose line is at `foot`.
    """

    at: float
    foot: float | None
    inner: bool = False


@dataclass(frozen=True, slots=True, kw_only=True)
class Link:
    """What a chain prints between two stops: a figure, and words round it.

    `reference` puts it in brackets: another sheet owns the number. `left_out` is what a
    break leaves out between the stops, mm.
    """

    figure: Figure
    before: str = ""
    after: str = ""
    rule: Rule = MM
    reference: bool = False
    left_out: float = 0.0

    @property
    def text(self) -> str:
        """The value with its words."""
        value = self.rule.dimension(self.figure)
        value = f"({value})" if self.reference else value
        return " ".join(word for word in (self.before, value, self.after) if word)


@dataclass(frozen=True, slots=True, kw_only=True)
class Chain:
    """A row of links along one line.

    Args:
        view: the view it measures in.
        axis: the direction it measures along.
        line: the paper coordinate of its dimension line.
        stops: in order along the axis.
        links: one fewer than stops; None leaves a gap in the chain.
    """

    view: View
    axis: Axis
    line: float
    stops: tuple[Stop, ...]
    links: tuple[Link | None, ...]


def place_chains(draft: Draft, chains: Sequence[Chain]) -> None:
    """Draw the chains of a view, innermost first.

    A value that finds no place is named in the draft's `unplaced`.
    """
    bare = [(chain, tuple(_bare(chain))) for chain in chains]
    for _, links in bare:
        for dimension in links:
            draft.hold(_lines(dimension))
    for chain, links in bare:
        for index, dimension in enumerate(links):
            _place_value(draft, chain, dimension, first=index == 0, last=index == len(links) - 1)


def _lines(dimension: Dimension) -> Iterator[Segment]:
    for primitive in primitives(dimension):
        yield from segments(primitive)


def _on_paper(chain: Chain, along: float, across: float) -> Point:
    return (along, across) if chain.axis == "across" else (across, along)


def _bare(chain: Chain) -> Iterator[Dimension]:
    """The links of a chain with their lines, values still to be placed."""
    view = chain.view
    scaled = view.x if chain.axis == "across" else view.y
    for index, link in enumerate(chain.links):
        if link is None:
            continue
        start, end = chain.stops[index : index + 2]
        after = chain.links[index + 1] if index + 1 < len(chain.links) else None
        a = _on_paper(chain, scaled(start.at), chain.line)
        b = _on_paper(chain, scaled(end.at), chain.line)
        feet = [_foot(chain, scaled(stop.at), stop) for stop in (start, end)]
        across = [chain.line if stop.foot is None else stop.foot for stop in (start, end)]
        yield Dimension(
            figure=link.figure.name or "",
            value=float(link.figure),
            text=link.text,
            before=link.before,
            after=link.after,
            rule=link.rule,
            axis=chain.axis,
            p1=view.back(_on_paper(chain, scaled(start.at), across[0])),
            p2=view.back(_on_paper(chain, scaled(end.at), across[1])),
            a=a,
            b=b,
            feet=(feet[0], feet[1] if after is None else None),
            ticks=(True, after is None),
            reference=link.reference,
            left_out=link.left_out,
            label=Label(
                text=link.text,
                at=a,
                anchor="centre",
                layer="dims",
                view=view.name,
                stacked=link.rule.stacked,
            ),
            view=view.name,
        )


def _foot(chain: Chain, along: float, stop: Stop) -> Point | None:
    """Where an extension line begins: off the thing, or where an inner chain's line ends."""
    if stop.foot is None:
        return None
    away = 1.0 if chain.line >= stop.foot else -1.0
    return _on_paper(chain, along, stop.foot + away * (OVER if stop.inner else GAP))


def _place_value(
    draft: Draft, chain: Chain, dimension: Dimension, *, first: bool, last: bool
) -> None:
    places = tuple(_places(chain, dimension, first=first, last=last))
    on_link = [place for place in places if not place[1]]
    tries = ((place, apart) for apart, some in ((APART, on_link), (0.0, places)) for place in some)
    found = next(
        (place for place, apart in tries if draft.free(place[0].box, _clear(place), apart=apart)),
        None,
    )
    if found is None:
        draft.unplaced.append(dimension.text)
    label, tail = found or places[0]
    draft.add(dataclasses.replace(dimension, label=label, tail=tail))


def _clear(place: tuple[Label, tuple[Point, ...]]) -> float:
    """A value on its own link may stand close to that link's strokes; beside it, as any text."""
    return CLEAR if place[1] else 0.1


def _places(
    chain: Chain, dimension: Dimension, *, first: bool, last: bool
) -> Iterator[tuple[Label, tuple[Point, ...]]]:
    """The places a value may take, best first, each with the line that carries it."""
    which = 0 if chain.axis == "across" else 1
    low, high = sorted((dimension.a[which], dimension.b[which]))
    room = high - low
    ink = dimension.label.ink
    wide = ink.width
    middle = (low + high) / 2
    # Values stand above a level line and left of an upright one, read from the right;
    # letters that hang below their line keep clear of it too.
    above = max(ABOVE, ink.below + 0.5)
    side = above if chain.axis == "across" else -above

    def label(along: float, lift: float = 0.0) -> Label:
        return Label(
            text=dimension.text,
            at=_on_paper(chain, along, chain.line + side + lift),
            anchor="centre",
            turned=0 if chain.axis == "across" else 90,
            layer="dims",
            view=dimension.view,
            stacked=dimension.label.stacked,
        )

    def beside(end: float, outwards: float) -> tuple[Label, tuple[Point, ...]]:
        centre = end + outwards * (wide / 2 + TICK + 0.7)
        far = centre + outwards * wide / 2
        return label(centre), (
            _on_paper(chain, end, chain.line),
            _on_paper(chain, far, chain.line),
        )

    fits = wide + SIDES <= room

    def moved() -> Iterator[tuple[Label, tuple[Point, ...]]]:
        play = (room - wide - SIDES) / 2
        off = 2.0
        while off <= play:
            yield label(middle + off), ()
            yield label(middle - off), ()
            off += 2.0

    if fits:
        yield label(middle), ()
    long = room > 2 * wide
    if fits and long:
        yield from moved()
    if first:
        yield beside(low, -1.0)
    if last:
        yield beside(high, 1.0)
    if fits and not long:
        yield from moved()
    # Off the line, on the side away from the thing, with a short line to the link it belongs to.
    feet = [stop.foot for stop in chain.stops if stop.foot is not None]
    away = 1.0 if not feet or chain.line >= feet[0] else -1.0
    for row in (0.0, max(TEXT * 1.45, ink.above + ink.below + 0.6)):
        lift = OVER + 0.5 + row + (0.0 if away * side > 0 else ink.above + above)
        for along in (middle, high + wide / 2 + 1.0, low - wide / 2 - 1.0):
            start = _on_paper(chain, middle, chain.line)
            end = _on_paper(chain, along, chain.line + away * (OVER + row - 0.2))
            yield label(along, away * lift), (start, end)
