"""Where the bars of a divided opening stand, and how they are made.

seen from the front
| pane | pane |   columns from the left, rows from the top; `across` and `up` are what the
|------+------|   bars leave between them, alike in every column and row
| pane | pane |
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.names import join
from parametric.resolve.head import LeafHead


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One glazing bar: `low` and `high` are its edges, across for an upright one, up for a level one.

    `start` and `end` are where its face meets the frame, along its length; an upright bar
    under a curve ends on it, and `end` is then where it is longest.
    """

    name: str
    upright: bool
    low: Figure
    high: Figure
    start: Figure
    end: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class RebatedBar:
    """A true bar with its rebates, mm: `rebate` is how far each reaches in, `web` what they leave."""

    face: Figure
    rebate: Figure
    web: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class FullBar:
    """A true bar as thick as the frame, mm: panes stand between stops on either side of it.

    Its tenons go `tenon_length` into the frame, `tenon_thickness` thick and as wide as its face.
    """

    face: Figure
    tenon_length: Figure
    tenon_thickness: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class PlantedBar:
    """A bar planted on both faces of one pane, mm.

    `front` and `back` are how far it stands off its bed, `tape` the bed's thickness, none where
    it is bonded. `front_bed` and `back_bed` are how deep in the leaf its two bedded faces lie;
    `below_face` and `below_back` how far its own faces lie inside those of the frame.
    """

    face: Figure
    front: Figure
    back: Figure
    tape: Figure
    front_bed: Figure
    back_bed: Figure
    below_face: Figure
    below_back: Figure
    half_lapped: bool


BarSection = RebatedBar | FullBar | PlantedBar


@dataclass(frozen=True, slots=True, kw_only=True)
class Span:
    """What bars divide, from sight edge to sight edge, mm; to the springing where a curve stands over it."""

    left: Figure
    foot: Figure
    width: Figure
    height: Figure
    top: Figure
    head: LeafHead | None


@dataclass(frozen=True, slots=True, kw_only=True)
class BarPlaces:
    """Bars in their places, mm: left edges of the columns, feet of the rows from the lowest up.

    `area` is what the bars take of the opening, mm2.
    """

    across: Figure
    up: Figure
    columns: tuple[Figure, ...]
    feet: tuple[Figure, ...]
    bars: tuple[Bar, ...]
    area: Figure


def place_bars(place: str, counts: tuple[int, int], span: Span, face: Figure) -> BarPlaces:
    """Columns alike and rows alike between bars of one width.

    Args:
        place: the opening's name.
        counts: how many panes wide and high.
        span: what they divide.
        face: width of a bar seen from the front, mm.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(place, quantity), value, unit)

    wide, high = counts
    across = at("daylight width", (span.width - (wide - 1) * face) / wide)
    up = at("daylight height", (span.height - (high - 1) * face) / high)
    columns = tuple(
        at(f"column {c + 1} left", span.left + c * (across + face)) for c in range(wide)
    )
    feet = tuple(at(f"row {high - r} foot", span.foot + r * (up + face)) for r in range(high))
    bars = (
        *(_upright(place, c + 1, columns[c] + across, face, span) for c in range(wide - 1)),
        *(_level(place, high - 1 - r, feet[r] + up, face, span) for r in reversed(range(high - 1))),
    )
    return BarPlaces(
        across=across,
        up=up,
        columns=columns,
        feet=feet,
        bars=bars,
        area=at("bar area", _area(counts, face, span, bars), "mm2"),
    )


def _upright(place: str, number: int, low: Figure, face: Figure, span: Span) -> Bar:
    name = join(place, f"upright bar {number}")
    edge = named(join(name, "left edge"), low)
    far = named(join(name, "right edge"), low + face)
    end: Figure = span.top
    if span.head is not None:
        end = span.head.most(edge, far, join(name, "longest to"))
    return Bar(name=name, upright=True, low=edge, high=far, start=span.foot, end=end)


def _level(place: str, number: int, low: Figure, face: Figure, span: Span) -> Bar:
    name = join(place, f"level bar {number}")
    return Bar(
        name=name,
        upright=False,
        low=named(join(name, "lower edge"), low),
        high=named(join(name, "upper edge"), low + face),
        start=span.left,
        end=span.left + span.width,
    )


def _area(counts: tuple[int, int], face: Figure, span: Span, bars: tuple[Bar, ...]) -> Figure:
    """What the bars take: uprights to the middle of their slanting end, levels between them.

    Source: trapezia, where the arc over a bar's width is taken as its chord.
    """
    wide, high = counts
    total = (high - 1) * face * (span.width - (wide - 1) * face)
    for bar in bars:
        if not bar.upright:
            continue
        rise: float = span.height
        if span.head is not None:
            low = span.head.height(bar.low, join(bar.name, "arch at its left edge"))
            far = span.head.height(bar.high, join(bar.name, "arch at its right edge"))
            rise = (low + far) / 2 - span.foot
        total = total + face * rise
    return total
