"""Glass: what is written of it, a pane of it, and the mitred stops that hold it in a plain opening.

section at the edge of a lite held by stops
frame |##| stop
______|##|tape
      |  =================  glass, `clearance` short of the opening all round
______|##|tape
frame |##| stop
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, exceeds, named
from parametric.model import Blank, Making, Mitre, Pocket
from parametric.names import join
from parametric.outlines import Outline
from parametric.written import Block, Length, LengthPair, LengthTriple

GlassKind = Literal["toughened", "laminated", "toughened laminated", "ordinary", "mirror"]


class GlassSpec(Block):
    """Glass as written. stop: wide x deep, seen from the front and through the leaf."""

    kind: GlassKind
    thickness: Length | None = Field(default=None, description="as it is sold")
    unit: LengthTriple | None = Field(default=None, description="pane x space x pane")
    true_thickness: Length | None = Field(default=None, description="as measured, over all")
    held_by: Literal["stops", "rebate"]
    stop: LengthPair = Field(description="wide x deep")
    tape: Length
    clearance: Length
    frame_rebate: Length = Field(description="how far the glass rebate reaches into the frame")
    rebate_depth: Length = Field(description="of the glass rebate, from the back")
    muntin: Length = Field(description="width of a bar, seen from the front")
    muntin_rebate: Length = Field(description="how far the glass rebate reaches into a bar")
    bars: Literal["true", "applied", "spaced"]
    bar_tenon: Length = Field(description="of a true bar between stops, into the frame")
    bar_thickness: LengthPair = Field(description="front x back of an applied bar, off the glass")
    bar_tape: Length = Field(description="under an applied bar; 0 where it is bonded")
    bar_crossings: Literal["half lapped", "butted"]
    ordered: Literal["own sizes", "one size"]
    one_size_within: Length = Field(description="the most that panes of one size may differ by")


@dataclass(frozen=True, slots=True, kw_only=True)
class SpacerGrid:
    """The bars between the panes of an insulated unit, mm: the glazier's, under the applied ones.

    `uprights` are their middles from the left edge of the glass seen from the front, `levels`
    from its lower edge; `most` is the widest that an applied bar still hides.
    """

    uprights: tuple[Figure, ...]
    levels: tuple[Figure, ...]
    most: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchedStop:
    """The stop under a curve, mm: sawn to it from a board `length` x `height`, from stile to stile.

    `foot` is where the board's low edge stands in the leaf, `along` the length of its outer edge.
    It ends level on the upright stops, which are `left_up` and `right_up` long. `outer` and
    `inner` are its edges from left to right, from the board's low left corner: the inner one with
    its level ends. `sight` is what is seen through, from the low left corner of the pane.
    """

    length: Figure
    height: Figure
    foot: Figure
    left_up: Figure
    right_up: Figure
    along: Figure
    outer: Outline
    inner: Outline
    sight: Outline


@dataclass(frozen=True, slots=True, kw_only=True)
class Stops:
    """The stops round one pane, both faces, mm; `below_face` is from the frame's face to a stop's.

    `left` and `foot` are where their outer edges stand in the leaf; under a curve `up` is to its
    springing, and `arch` the stop that follows it.
    """

    width: Figure
    depth: Figure
    below_face: Figure
    across: Figure
    up: Figure
    left: Figure
    foot: Figure
    arch: ArchedStop | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Pane:
    """One pane, mm; weight kg.

    `width` and `height` are those of the rectangle it is cut from. `outline` is the true edge
    of a shaped pane, from the low left corner of that rectangle, seen from the front; None
    for a plain rectangle. `left` and `foot` place that corner in the leaf. `nominal` is the
    thickness people say, `thickness` the true one; of an insulated unit, whose two panes and
    space are `unit`, over all. `clearance` is what is asked at each edge; `clearances`, across and up, are what it
    has, more where it was ordered in one size with others. `bites` are the least of the glass
    that is covered at its upright edges and at its level ones, `bite` the lesser. `daylight` is what is seen through, wide
    and high (at its tallest); `opening` what is left open if the glass breaks out.
    """

    name: str
    written: GlassSpec
    kind: GlassKind
    width: Figure
    height: Figure
    nominal: Figure
    thickness: Figure
    clearance: Figure
    clearances: tuple[Figure, Figure]
    bites: tuple[Figure, Figure]
    tape: Figure
    left: Figure
    foot: Figure
    daylight: tuple[Figure, Figure]
    opening: tuple[Figure, Figure]
    weight: Figure
    stops: Stops | None = None
    outline: Outline | None = None
    unit: tuple[Figure, Figure, Figure] | None = None
    grid: SpacerGrid | None = None
    edges: tuple[Figure, ...] = ()
    """Of a shaped pane: heights of its left and right edge, radius of its curve, for reading."""

    @property
    def bite(self) -> Figure:
        """The least of the glass that is covered at an edge, mm."""
        return min(self.bites, key=float)

    @property
    def true_differs(self) -> bool:
        """Whether it measures other than it is sold as."""
        return exceeds(self.nominal, self.thickness) or exceeds(self.thickness, self.nominal)


def size_pane(
    spec: GlassSpec,
    *,
    name: str,
    left: Figure,
    foot: Figure,
    opening_width: Figure,
    opening_height: Figure,
    frame: Figure,
    per_mm: Figure,
    one: tuple[Figure, Figure] | None = None,
) -> Pane:
    """Glass between stops: the opening less twice the edge clearance.

    Args:
        spec: the glass as written.
        name: the pane's name (`leaf A / lite 1 / glass`).
        left: the opening's left edge in the leaf, mm.
        foot: the opening's lower edge in the leaf, mm.
        opening_width: between the stiles, mm.
        opening_height: between the rails, mm.
        frame: thickness of the frame, mm.
        per_mm: kg/m2 of glass per mm of thickness.
        one: the size it shares with others, mm, where it is ordered so.

    Source: common practice, no source; mass by the catalogue's glass density.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    clearance = at("clearance", spec.clearance)
    thick = at("thickness", true_thickness(spec))
    solid = glass_in_it(spec)
    width = at("width", opening_width - 2 * clearance if one is None else one[0])
    height = at("height", opening_height - 2 * clearance if one is None else one[1])
    clearances = real_clearances(
        name, clearance, (opening_width - width, opening_height - height), shared=one is not None
    )
    stop_width = spec.stop[0]
    return Pane(
        name=name,
        written=spec,
        kind=spec.kind,
        width=width,
        height=height,
        nominal=at("nominal thickness", nominal_thickness(spec)),
        thickness=thick,
        clearance=clearance,
        clearances=clearances,
        bites=bites(name, *(stop_width - clear for clear in clearances)),
        tape=at("tape thickness", spec.tape),
        left=left + clearances[0],
        foot=foot + clearances[1],
        daylight=(opening_width - 2 * stop_width, opening_height - 2 * stop_width),
        opening=(opening_width, opening_height),
        stops=stops_round(spec, name, (left, foot), (opening_width, opening_height), frame),
        weight=at(
            "weight", width * height * (thick if solid is None else solid) * per_mm / 1e6, "kg"
        ),
        unit=unit_sizes(spec, name),
    )


def stops_round(
    spec: GlassSpec,
    name: str,
    corner: tuple[Figure, Figure],
    opening: tuple[Figure, Figure],
    frame: Figure,
    arch: ArchedStop | None = None,
) -> Stops:
    """The stops in an opening: where its low left corner is in the leaf, and how wide and high it is."""

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    width, depth = at("stop width", spec.stop[0]), at("stop depth", spec.stop[1])
    before = (frame - true_thickness(spec)) / 2 - spec.tape
    return Stops(
        width=width,
        depth=depth,
        below_face=at("stop below the frame's face", before - depth),
        across=at("stop length across", opening[0]),
        up=at("stop length up", opening[1]),
        left=corner[0],
        foot=corner[1],
        arch=arch,
    )


def real_clearances(
    name: str, asked: Figure, spare: tuple[Figure, Figure], *, shared: bool
) -> tuple[Figure, Figure]:
    """What is free at the upright and at the level edges, mm: as asked, or half of what is spare."""
    if not shared:
        return (asked, asked)
    return (
        named(join(name, "clearance across"), spare[0] / 2),
        named(join(name, "clearance up"), spare[1] / 2),
    )


def bites(name: str, across: Figure, up: Figure) -> tuple[Figure, Figure]:
    """What is covered at the upright and at the level edges, mm; one number where that is the same."""
    if not exceeds(across, up) and not exceeds(up, across):
        both = named(join(name, "bite"), across)
        return (both, both)
    return (named(join(name, "bite across"), across), named(join(name, "bite up"), up))


def nominal_thickness(spec: GlassSpec) -> Figure:
    """What the glass is sold as, mm; of an insulated unit, both panes and the space between them."""
    if spec.unit is not None:
        return spec.unit[0] + spec.unit[1] + spec.unit[2]
    assert spec.thickness is not None, "the reader has seen to that"
    return spec.thickness


def true_thickness(spec: GlassSpec) -> Figure:
    """What the glass measures over all, mm: as bought where nobody has measured it."""
    return nominal_thickness(spec) if spec.true_thickness is None else spec.true_thickness


def unit_sizes(spec: GlassSpec, name: str) -> tuple[Figure, Figure, Figure] | None:
    """Front pane, space and back pane of an insulated unit, mm; None for one pane."""
    if spec.unit is None:
        return None
    front, space, back = spec.unit
    return (
        named(join(name, "front pane thickness"), front),
        named(join(name, "space"), space),
        named(join(name, "back pane thickness"), back),
    )


def glass_in_it(spec: GlassSpec) -> Figure | None:
    """How much of an insulated unit's thickness is glass, mm; None where all of it is."""
    return None if spec.unit is None else spec.unit[0] + spec.unit[2]


def glass_name(pane: Pane) -> str:
    """What a pane is, sizes in mm: `toughened glass`; a unit by its panes and the bars between them."""
    if pane.unit is None:
        return f"{pane.kind} glass"
    build = " / ".join(f"{float(size):g}" for size in pane.unit)
    bars = ""
    if pane.grid is not None:
        upright, level = len(pane.grid.uprights), len(pane.grid.levels)
        bars = f", spacer bars {upright} upright and {level} level"
    return f"{pane.kind} unit {build}{bars}"


def pane_blank(pane: Pane) -> Blank:
    """The pane: its width is laid along x, so that the cut list reads width first."""
    return Blank(length=pane.width, width=pane.height, thickness=pane.thickness)


def stop_blank(stops: Stops, length: Figure) -> Blank:
    """A stop before its mitres."""
    return Blank(length=length, width=stops.width, thickness=stops.depth)


def stop_mitres() -> tuple[Mitre, Mitre]:
    """Both ends at 45 degrees; the edge against the frame stays full length."""
    making = Making(by="saw", tool="45 degrees, against a stop block")
    return (
        Mitre(name="mitre", end="low end", keeps="low edge", making=making),
        Mitre(name="mitre", end="high end", keeps="low edge", making=making),
    )


def tape_blank(pane: Pane) -> Blank:
    """The glazing tape of one face, taken as one piece the size of the pane."""
    return Blank(length=pane.width, width=pane.height, thickness=pane.tape)


def tape_window(pane: Pane) -> Pocket:
    """What the tape leaves free: it covers the bite of the stops."""
    return Pocket(
        name="sight size",
        face="high face",
        u=pane.width / 2,
        v=pane.height / 2,
        length=pane.width - 2 * pane.bites[0],
        width=pane.height - 2 * pane.bites[1],
        corner=0.0,
        depth=pane.tape,
        making=Making(by="bench", tool="tape applied in four strips"),
    )
