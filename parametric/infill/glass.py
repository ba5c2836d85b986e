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

from parametric.figures import Figure, named
from parametric.model import Blank, Making, Mitre, Pocket
from parametric.names import join
from parametric.outlines import Outline
from parametric.written import Block, Length, LengthPair

GlassKind = Literal["toughened", "laminated", "toughened laminated", "ordinary", "mirror"]


class GlassSpec(Block):
    """Glass as written. stop: wide x deep, seen from the front and through the leaf."""

    kind: GlassKind
    thickness: Length
    true_thickness: Length | None = None
    held_by: Literal["stops", "rebate"]
    stop: LengthPair = Field(description="wide x deep")
    tape: Length
    clearance: Length
    frame_rebate: Length = Field(description="how far the glass rebate reaches into the frame")
    rebate_depth: Length = Field(description="of the glass rebate, from the back")
    muntin: Length = Field(description="width of a bar, seen from the front")
    muntin_rebate: Length = Field(description="how far the glass rebate reaches into a bar")
    bars: Literal["true"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Stops:
    """The stops round one pane, both faces, mm; `below_face` is from the frame's face to a stop's."""

    width: Figure
    depth: Figure
    below_face: Figure
    across: Figure
    up: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Pane:
    """One pane, mm; weight kg.

    `width` and `height` are those of the rectangle it is cut from. `outline` is the true edge
    of a shaped pane, from the low left corner of that rectangle, seen from the front; None
    for a plain rectangle. `left` and `foot` place that corner in the leaf. `bite` is the
    least of the glass that is covered at an edge. `daylight` is what is seen through, wide
    and high (at its tallest); `opening` what is left open if the glass breaks out.
    """

    name: str
    written: GlassSpec
    kind: GlassKind
    width: Figure
    height: Figure
    thickness: Figure
    clearance: Figure
    bite: Figure
    tape: Figure
    left: Figure
    foot: Figure
    daylight: tuple[Figure, Figure]
    opening: tuple[Figure, Figure]
    weight: Figure
    stops: Stops | None = None
    outline: Outline | None = None
    edges: tuple[Figure, ...] = ()
    """Of a shaped pane: heights of its left and right edge, radius of its curve, for reading."""


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

    Source: common practice, no source; mass by the catalogue's glass density.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    clearance = at("clearance", spec.clearance)
    thick = at("thickness", true_thickness(spec))
    width = at("width", opening_width - 2 * clearance)
    height = at("height", opening_height - 2 * clearance)
    stop_width, stop_depth = at("stop width", spec.stop[0]), at("stop depth", spec.stop[1])
    tape = at("tape thickness", spec.tape)
    return Pane(
        name=name,
        written=spec,
        kind=spec.kind,
        width=width,
        height=height,
        thickness=thick,
        clearance=clearance,
        bite=at("bite", stop_width - clearance),
        tape=tape,
        left=left + clearance,
        foot=foot + clearance,
        daylight=(opening_width - 2 * stop_width, opening_height - 2 * stop_width),
        opening=(opening_width, opening_height),
        stops=Stops(
            width=stop_width,
            depth=stop_depth,
            below_face=at("stop below the frame's face", (frame - thick) / 2 - tape - stop_depth),
            across=at("stop length across", opening_width),
            up=at("stop length up", opening_height),
        ),
        weight=at("weight", width * height * thick * per_mm / 1e6, "kg"),
    )


def true_thickness(spec: GlassSpec) -> Figure:
    """What the glass measures, mm: as bought where nobody has measured it."""
    return spec.thickness if spec.true_thickness is None else spec.true_thickness


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
        length=pane.width - 2 * pane.bite,
        width=pane.height - 2 * pane.bite,
        corner=0.0,
        depth=pane.tape,
        making=Making(by="bench", tool="tape applied in four strips"),
    )
