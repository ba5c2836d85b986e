"""A glazed opening: between stops one pane; in a rebate as many panes as its bars make.

seen from the front          section through an upright bar, front below
| pane | pane |              glass ====|  |==== glass
|------+------|  level bar         ___|  |___     rebates from the back
| pane | pane |                    |________|     the bar's face
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.glass_facts import MASS
from parametric.design.leaf import Band as WrittenBand
from parametric.figures import Figure, named
from parametric.infill.glass import GlassSpec, Pane, size_pane, true_thickness
from parametric.names import join
from parametric.outlines import Vertex, area_of, backwards, moved
from parametric.resolve.bands import Band
from parametric.resolve.head import LeafHead


@dataclass(frozen=True, slots=True, kw_only=True)
class Rebate:
    """The rebate that glass lies in, from the back of the leaf, mm.

    `lip` is the wood before it; `bite` how much of the glass the frame covers; `web` what two
    rebates leave of a bar, and `face` the bar's own width.
    """

    frame: Figure
    bar: Figure
    depth: Figure
    lip: Figure
    bite: Figure
    face: Figure
    web: Figure


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
class Lite:
    """A glazed opening, mm. `height` and `top` are to the springing where a curve stands over it."""

    name: str
    foot: Figure
    height: Figure
    top: Figure
    width: Figure
    panes: tuple[Pane, ...]
    weight: Figure
    bars: tuple[Bar, ...] = ()
    rebate: Rebate | None = None
    head: LeafHead | None = None
    bar_area: Figure | None = None

    @property
    def pane(self) -> Pane:
        """Its first pane, the only one where it is not divided."""
        return self.panes[0]


def resolve_lite(
    band: Band,
    glass: GlassSpec,
    *,
    left: Figure,
    shoulder: Figure,
    thickness: Figure,
    head: LeafHead | None,
) -> Lite:
    """A lite with its panes and bars.

    Args:
        band: the opening's line.
        glass: the glass as written.
        left: the opening's left edge in the leaf, mm.
        shoulder: between the stiles, mm.
        thickness: of the frame, mm.
        head: the curve over it, if any.
    """
    width = named(join(band.name, "width"), shoulder)
    if glass.held_by == "stops":
        pane = size_pane(
            glass,
            name=join(band.name, "glass"),
            left=left,
            foot=band.foot,
            opening_width=width,
            opening_height=band.height,
            frame=thickness,
            per_mm=MASS,
        )
        return Lite(
            name=band.name,
            foot=band.foot,
            height=band.height,
            top=band.top,
            width=width,
            panes=(pane,),
            weight=pane.weight,
        )
    return _in_rebate(band, glass, left=left, width=width, thickness=thickness, head=head)


def _in_rebate(
    band: Band,
    glass: GlassSpec,
    *,
    left: Figure,
    width: Figure,
    thickness: Figure,
    head: LeafHead | None,
) -> Lite:
    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(band.name, quantity), value, unit)

    wide, high = _panes(band.written)
    face = at("bar width", glass.muntin)
    rebate = Rebate(
        frame=at("rebate in the frame", glass.frame_rebate),
        bar=at("rebate in the bars", glass.muntin_rebate),
        depth=at("rebate depth", glass.rebate_depth),
        lip=at("wood before the glass", thickness - glass.rebate_depth),
        bite=at("bite in the frame", glass.frame_rebate - glass.clearance),
        face=face,
        web=at("web of a bar", face - 2 * glass.muntin_rebate),
    )
    across = at("daylight width", (width - (wide - 1) * face) / wide)
    up = at("daylight height", (band.height - (high - 1) * face) / high)
    columns = [at(f"column {c + 1} left", left + c * (across + face)) for c in range(wide)]
    feet = [at(f"row {high - r} foot", band.foot + r * (up + face)) for r in range(high)]
    panes = tuple(
        _pane(
            glass,
            rebate,
            name=join(band.name, f"row {row + 1}", f"pane {column + 1}")
            if wide * high > 1
            else join(band.name, "glass"),
            left=columns[column],
            foot=feet[high - 1 - row],
            across=across,
            up=up,
            first=(column == 0, row == high - 1),
            last=(column == wide - 1, row == 0),
            head=head if row == 0 else None,
        )
        for row in range(high)
        for column in range(wide)
    )
    bars = (
        *(_upright(band, c + 1, columns[c] + across, face, head) for c in range(wide - 1)),
        *(
            _level(band, high - 1 - r, feet[r] + up, face, left, width)
            for r in reversed(range(high - 1))
        ),
    )
    bar_area = at("bar area", _bar_area(band, wide, high, face, width, head, bars), "mm2")
    whole = width * band.height if head is None else width * band.height + head.area
    daylight = at("daylight area", whole - bar_area, "mm2")
    thick = at("glass thickness", true_thickness(glass))
    return Lite(
        name=band.name,
        foot=band.foot,
        height=band.height,
        top=band.top,
        width=width,
        panes=panes,
        weight=at("glass weight", daylight * thick * MASS / 1e6, "kg"),
        bars=bars,
        rebate=rebate,
        head=head,
        bar_area=bar_area,
    )


def _panes(line: WrittenBand) -> tuple[int, int]:
    """How many panes wide and high."""
    return (
        1 if line.wide is None else int(line.wide),
        1 if line.high is None else int(line.high),
    )


def _pane(
    glass: GlassSpec,
    rebate: Rebate,
    *,
    name: str,
    left: Figure,
    foot: Figure,
    across: Figure,
    up: Figure,
    first: tuple[bool, bool],
    last: tuple[bool, bool],
    head: LeafHead | None,
) -> Pane:
    """One pane: its daylight and the rebates beside it, less the clearance at each edge.

    `first` says whether it stands at the left side and at the foot of the lite, `last` at the
    right side and at the head. Source: HR7 of the trade, common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    def beside(frame: bool) -> Figure:
        return rebate.frame if frame else rebate.bar

    clear = at("clearance", glass.clearance)
    thick = at("thickness", true_thickness(glass))
    low = left - beside(first[0]) + clear
    floor = foot - beside(first[1]) + clear
    width = at("width", across + beside(first[0]) + beside(last[0]) - 2 * clear)
    bites = [beside(edge) - clear for edge in (*first, *last)]
    daylight = (across, up)
    outline = None
    edges: tuple[Figure, ...] = ()
    if head is None:
        height = at("height", up + beside(first[1]) + beside(last[1]) - 2 * clear)
        area: float = width * height
    else:
        out = named(join(name, "glass outside the arch"), rebate.frame - clear)
        right = low + width
        edges = (
            at("left edge height", head.height(low, join(name, "left edge"), out=out) - floor),
            at("right edge height", head.height(right, join(name, "right edge"), out=out) - floor),
        )
        chain = head.edge(float(low), float(right), out=out)
        outline = moved(
            (
                Vertex(float(low), float(floor)),
                Vertex(float(right), float(floor)),
                *backwards(chain),
            ),
            -float(low),
            -float(floor),
        )
        height = at("height", head.most(low, right, join(name, "highest"), out=out) - floor)
        area = Figure(area_of(outline), op="area of the outline", unit="mm2")
        left_day = head.height(left, join(name, "daylight at the left"))
        right_day = head.height(left + across, join(name, "daylight at the right"))
        daylight = (
            across,
            at("daylight height", head.most(left, left + across, join(name, "daylight to")) - foot),
        )
        edges = (
            *edges,
            at("daylight at the left edge", left_day - foot),
            at("daylight at the right edge", right_day - foot),
        )
    return Pane(
        name=name,
        written=glass,
        kind=glass.kind,
        width=width,
        height=height,
        thickness=thick,
        clearance=clear,
        bite=at("bite", min(bites, key=float)),
        tape=at("tape thickness", glass.tape),
        left=low,
        foot=floor,
        daylight=daylight,
        opening=daylight,
        weight=at("weight", area * thick * MASS / 1e6, "kg"),
        outline=outline,
        edges=edges,
    )


def _upright(band: Band, number: int, low: Figure, face: Figure, head: LeafHead | None) -> Bar:
    name = join(band.name, f"upright bar {number}")
    edge = named(join(name, "left edge"), low)
    far = named(join(name, "right edge"), low + face)
    end: Figure = band.top
    if head is not None:
        end = head.most(edge, far, join(name, "longest to"))
    return Bar(name=name, upright=True, low=edge, high=far, start=band.foot, end=end)


def _level(band: Band, number: int, low: Figure, face: Figure, left: Figure, width: Figure) -> Bar:
    name = join(band.name, f"level bar {number}")
    return Bar(
        name=name,
        upright=False,
        low=named(join(name, "lower edge"), low),
        high=named(join(name, "upper edge"), low + face),
        start=left,
        end=left + width,
    )


def _bar_area(
    band: Band,
    wide: int,
    high: int,
    face: Figure,
    width: Figure,
    head: LeafHead | None,
    bars: tuple[Bar, ...],
) -> Figure:
    """What the bars take of the opening: uprights to the middle of their slanting end, levels between.

    Source: trapezia, where the arc over a bar's width is taken as its chord.
    """
    total = (high - 1) * face * (width - (wide - 1) * face)
    for bar in bars:
        if not bar.upright:
            continue
        rise: float = band.height
        if head is not None:
            low = head.height(bar.low, join(bar.name, "arch at its left edge"))
            far = head.height(bar.high, join(bar.name, "arch at its right edge"))
            rise = (low + far) / 2 - band.foot
        total = total + face * rise
    return total
