"""Lid stays: an arm that folds as a drop-down flap shuts, and is taut when it lies open.

seen from the left               o on the case
                              .-'
         _____________o____.-'__(o) hinge line
        <- leant on      on the flap
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, exceeds, named, root, sine, square
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
from parametric.written import Length, Mass


class LidStaySpec(StayBlock):
    """Lid stays as written, from their data sheet."""

    kind: Literal["lid stay"]
    behind: Length = Field(description="of its fixing on the case, from the case's front edges")
    carries: Mass | None = Field(default=None, description="the pull that one is made for")
    leant_on: Mass = Field(description="what is reckoned with on the free edge of the open flap")


@dataclass(frozen=True, slots=True, kw_only=True)
class LidStays:
    """The lid stays of one flap; kg and kg mm.

    `turning` is the moment about the hinge line that the flap and who leans on it drop it with,
    `pull` what it makes along each stay; `carries` what one is made for, None where nobody wrote
    it.
    """

    kind: Literal["lid stay"]
    name: str
    count: Figure
    place: StayPlace
    turning: Figure
    pull: Figure
    carries: Figure | None
    written: LidStaySpec


def size_lid_stays(spec: LidStaySpec, flap: HeldFlap) -> LidStays | NoPlace:
    """Where they are screwed to the case for the flap to lie as far open as is written.

    Args:
        spec: as written.
        flap: what they hold.

    Source: Pythagoras; moments about the hinge line: pull x lever x stays = weight x its lever +
    what leans on the edge x the edge's lever (statics).
    """
    name = join(flap.leaf, "stays")

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    length = at("length", spec.length)
    down, into = fixing_open(name, flap, spec.on_leaf)
    level = at("reach from the open flap back", spec.behind + flap.face_out - into)
    if not exceeds(length, level):
        return NoPlace(name=name, why="too short to open", has=length, needs=at("needs", level))
    place = place_stay(
        name, flap, spec.on_leaf, spec.behind, down + root(square(length) - square(level))
    )
    if not exceeds(place.arm_open, 0.0):
        return NoPlace(name=name, why="holds nothing", has=place.arm_open, needs=Figure(0.0))
    count = stays_for(spec, flap)
    edge = at("lever of the free edge", flap.height * sine(flap.angle))
    turning = at(
        "moment to hold, open",
        flap.weight * at("lever of its weight, open", weight_lever(flap, flap.angle))
        + spec.leant_on * edge,
        "kg mm",
    )
    return LidStays(
        kind="lid stay",
        name=name,
        count=count,
        place=place,
        turning=turning,
        pull=at("pull on each", turning / (place.arm_open * count), "kg"),
        carries=None if spec.carries is None else at("rating", spec.carries, "kg"),
        written=spec,
    )
