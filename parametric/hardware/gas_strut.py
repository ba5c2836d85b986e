r"""Gas struts: they push a lift-up flap open, and hold it there.

seen from the left       _________o_____(o) hinge line
                              open  \      | shut
                                     \    o  on the flap
                                      \  /
                                       o  on the case
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, exceeds, hypot, named, root, square, whole_up
from parametric.hardware.stay import (
    HeldFlap,
    NoPlace,
    StayBlock,
    StayPlace,
    fixing_open,
    place_stay,
    stays_for,
    weight_lever,
)
from parametric.names import join
from parametric.units import STANDARD_GRAVITY
from parametric.written import Force, Length, LengthPair

IN_HAND = 1.2
"""How much more than the flap's moment struts are chosen for: they lose force with cold and with
years. Common practice, no source."""
ADJUSTED = 3.0
"""What a fixing is moved by when it is screwed on, mm. Common practice, no source."""
STEP = 10.0
"""Struts are sold in steps of this, N. Common practice, no source."""


class GasStrutSpec(StayBlock):
    """Gas struts as written, from their data sheet; `length` is pushed out."""

    kind: Literal["gas strut"]
    stroke: Length = Field(description="how far it is pushed in from its length")
    spare: Length = Field(description="of the stroke, left when the flap is shut")
    force: Force | None = Field(default=None, description="of each, pushed out")
    on_case: LengthPair | None = Field(
        default=None,
        description="its fixing behind the case's front edges x from the hinge line",
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class GasStruts:
    """The gas struts of one flap; N and N m about the hinge line, those that open it positive.

    `force` of each is as written, else the least of those that are sold that holds the flap;
    `least` holds it with nothing in hand. `takes_over` is the angle past which the flap rises by
    itself, deg, None where the struts never lift it; `to_shut` the pull on its free edge that
    starts it down.
    """

    kind: Literal["gas strut"]
    name: str
    count: Figure
    place: StayPlace
    pushed_in: Figure
    least: Figure
    force: Figure
    weight_shut: Figure
    struts_shut: Figure
    weight_open: Figure
    struts_open: Figure
    takes_over: Figure | None
    to_shut: Figure
    written: GasStrutSpec


def size_gas_struts(spec: GasStrutSpec, flap: HeldFlap) -> GasStruts | NoPlace:
    """Where they are screwed to the case, and whether they hold the flap.

    Where nothing is written of the case, both circles say it: pushed out from the fixing on the
    open flap, pushed in but for the spare from that on the shut one; of the two places the one
    farther from the hinge line. The force is reckoned the same all along the stroke.

    Args:
        spec: as written.
        flap: what they hold.

    Source: statics, moments about the hinge line; Pythagoras.
    """
    name = join(flap.leaf, "stays")

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    length = at("length", spec.length)
    pushed_in = at("pushed in as far as it goes", length - spec.stroke)
    if spec.on_case is not None:
        behind, down = spec.on_case
    else:
        shut = at("length, shut", pushed_in + spec.spare)
        found = _on_case(name, spec, flap, length, shut)
        if isinstance(found, NoPlace):
            return found
        behind, down = found
    place = place_stay(name, flap, spec.on_leaf, behind, down)
    if exceeds(pushed_in, place.shut):
        return NoPlace(name=name, why="too long to shut", has=place.shut, needs=pushed_in)
    if exceeds(place.open, length):
        return NoPlace(name=name, why="too short to open", has=length, needs=place.open)
    if exceeds(length, place.open + ADJUSTED):
        return NoPlace(name=name, why="opens too far", has=place.open, needs=length)
    if not exceeds(place.arm_open, 0.0):
        return NoPlace(name=name, why="holds nothing", has=place.arm_open, needs=Figure(0.0))
    count = stays_for(spec, flap)
    gravity = Figure(
        float(STANDARD_GRAVITY), "standard gravity", unit="N/kg", source="3rd CGPM, 1901"
    )
    heavy = at("weight of the flap", flap.weight * gravity, "N")

    def weight_moment(word: str, angle: float) -> Figure:
        lever = at(f"lever of its weight, {word}", weight_lever(flap, angle))
        return at(f"moment of its weight, {word}", -(heavy * lever) / 1000, "N m")

    weight_shut, weight_open = weight_moment("shut", 0.0), weight_moment("open", flap.angle)
    least = at("least force of each", -weight_open * 1000 / (count * place.arm_open), "N")
    force = at(
        "force of each",
        STEP * whole_up(least * IN_HAND / STEP) if spec.force is None else spec.force,
        "N",
    )
    struts_open = at("moment of the struts, open", count * force * place.arm_open / 1000, "N m")
    return GasStruts(
        kind="gas strut",
        name=name,
        count=count,
        place=place,
        pushed_in=pushed_in,
        least=least,
        force=force,
        weight_shut=weight_shut,
        struts_shut=at("moment of the struts, shut", count * force * place.arm_shut / 1000, "N m"),
        weight_open=weight_open,
        struts_open=struts_open,
        takes_over=_takes_over(name, flap, place, float(count) * float(force), heavy),
        to_shut=at(
            "pull that starts it down", (struts_open + weight_open) * 1000 / flap.height, "N"
        ),
        written=spec,
    )


def _on_case(
    name: str, spec: GasStrutSpec, flap: HeldFlap, length: Figure, shut: Figure
) -> tuple[Figure, Figure] | NoPlace:
    """Behind the case's front edges and down from the hinge line, mm: where two circles meet.

    Source: two circles about A and B, d apart, of radii a and b meet (a2 - b2 + d2) / 2d along the
    line from A to B, and as far beside it as Pythagoras says.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    open_down, open_in = fixing_open(name, flap, spec.on_leaf)
    apart_down = at("fixing on the flap travels, down", spec.on_leaf[0] - open_down)
    apart_in = at("fixing on the flap travels, in", flap.thickness + spec.on_leaf[1] - open_in)
    apart = at("fixing on the flap travels", hypot(apart_down, apart_in))
    if exceeds(length - shut, apart):
        return NoPlace(name=name, why="travels too little", has=apart, needs=length - shut)
    along = at(
        "fixing on the case, along its travel",
        (square(length) - square(shut) + square(apart)) / (2 * apart),
    )
    if exceeds(along, length):
        return NoPlace(name=name, why="too short to open", has=length, needs=apart - shut)
    aside = at("fixing on the case, beside its travel", root(square(length) - square(along)))
    into = open_in + along * apart_in / apart - aside * apart_down / apart
    down = open_down + along * apart_down / apart + aside * apart_in / apart
    return into - flap.face_out, down


_TENTHS = 10


def _takes_over(
    name: str, flap: HeldFlap, place: StayPlace, force: float, heavy: Figure
) -> Figure | None:
    """The last angle at which the flap still falls shut, to the tenth of a degree, and a tenth."""
    last = 0
    steps = round(float(flap.angle) * _TENTHS)
    deep = float(flap.thickness + place.off)
    low, into = float(place.down), float(place.behind + flap.face_out)
    for step in range(steps + 1):
        angle = step / _TENTHS
        c, s = math.cos(math.radians(angle)), math.sin(math.radians(angle))
        down = float(place.along) * c + deep * s
        within = deep * c - float(place.along) * s
        arm = (into * down - low * within) / math.hypot(low - down, into - within)
        if force * arm - float(heavy) * float(weight_lever(flap, angle)) <= 0:
            last = step + 1
    if last > steps:
        return None
    return named(
        join(name, "rises by itself past"),
        Figure(
            last / _TENTHS, op="where they balance at", args=(place.arm_open, heavy), unit="deg"
        ),
        "deg",
    )
