"""What holds a flap open: what every kind of stay has, and where its two ends are screwed.

seen from the left, the flap shut; both ways of a flap have one frame, in which `down` is away
from its hinge line along the shut flap and `in` is into the case from the flap's face

      hinge line (o)-------- down = 0
        face |      | back
             |      o  on the leaf: along from the hinge edge, off the back
             |       \
             |        o  on the case: behind its front edges, down from the hinge line
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal

from pydantic import AfterValidator, Field

from parametric.figures import Figure, cosine, hypot, named, sine
from parametric.names import join
from parametric.written import Angle, Block, Count, Length, LengthPair, Words, refuse

StayKind = Literal["lid stay", "gas strut"]
NoWay = Literal[
    "too short to open", "too long to shut", "travels too little", "opens too far", "holds nothing"
]
MOST_STAYS = 2
"""One on each side: there is nowhere else to put one."""
ONE_UP_TO = 600.0
"""A flap no wider than this is held by one stay, mm. Common practice, no source."""
ONE_UP_TO_WEIGHT = 4.0
"""A flap no heavier than this is held by one stay, kg. Common practice, no source."""
LEAST_ANGLE, MOST_ANGLE = 60.0, 120.0
"""Open less, a flap is in the way; cup hinges open no farther, deg. Common practice, no source."""


def _one_or_two(count: Figure) -> Figure:
    if not 1 <= count <= MOST_STAYS:
        raise refuse(
            "not_a_count",
            f"A flap is held by 1 or {MOST_STAYS} stays, not {int(count)}.",
            found=f"{int(count)}",
            allowed=f"1 or {MOST_STAYS}",
        )
    return count


def _open(angle: Figure) -> Figure:
    if not LEAST_ANGLE <= angle <= MOST_ANGLE:
        raise refuse(
            "wrong_value",
            f"A flap is held open at {LEAST_ANGLE:g} to {MOST_ANGLE:g} deg, not {float(angle):g}.",
            found=f"{float(angle):g} deg",
            allowed=f"{LEAST_ANGLE:g} to {MOST_ANGLE:g} deg",
        )
    return angle


class StayBlock(Block):
    """What is written of every kind of stay."""

    count: Annotated[Count, AfterValidator(_one_or_two)] | None = None
    opens: Annotated[Angle, AfterValidator(_open)] = Field(
        description="how far it holds the flap open, from shut"
    )
    length: Length = Field(description="between the middles of its fixings, the flap open")
    on_leaf: LengthPair = Field(description="from the hinge edge x off the flap's back")
    beside: Length = Field(description="its middle off the case's side")
    fixing: LengthPair = Field(description="a pilot at each of its ends, wide x deep")
    measured: Words | None = None
    maker_mark: Words | None = None
    price: Words | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class HeldFlap:
    """A flap that stays are sized for, mm, kg and deg.

    `face_out` is how far its face stands before the case's front edges; `lifts` says that it
    opens upwards, by its top.
    """

    leaf: str
    lifts: bool
    width: Figure
    height: Figure
    thickness: Figure
    weight: Figure
    angle: Figure
    face_out: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class StayPlace:
    """Where a stay is screwed, and how it lies, mm.

    `along` is from the hinge edge and `off` from the flap's back, `behind` from the case's front
    edges and `down` from the hinge line, away from it along the shut flap. `shut` and `open` are
    between its two fixings, `arm_shut` and `arm_open` how far the line through them then passes
    the hinge line: less than nothing where a push there presses the flap shut.
    """

    along: Figure
    off: Figure
    behind: Figure
    down: Figure
    shut: Figure
    open: Figure
    arm_shut: Figure
    arm_open: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class NoPlace:
    """A stay that cannot be put as it is written: why, what it has and what it would need, mm."""

    name: str
    why: NoWay
    has: Figure
    needs: Figure


def stays_for(spec: StayBlock, flap: HeldFlap) -> Figure:
    """How many hold a flap: as written, else one where it is narrow and light.

    Source: common practice, no source.
    """
    name = join(flap.leaf, "stays", "count")
    if spec.count is not None:
        return named(name, spec.count, "")
    light = float(flap.width) <= ONE_UP_TO and float(flap.weight) <= ONE_UP_TO_WEIGHT
    return named(name, Figure(1.0 if light else 2.0, unit=""), "")


def turned_by(along: Figure, deep: Figure, angle: float) -> tuple[Figure, Figure]:
    """Where a point of the flap is, down and in, when it has opened by an angle, deg, mm.

    Args:
        along: from the hinge line, mm.
        deep: behind the flap's face, mm.
        angle: from shut, deg.

    Source: geometry of the turn.
    """
    down = along * cosine(angle) + deep * sine(angle)
    return down, deep * cosine(angle) - along * sine(angle)


def weight_lever(flap: HeldFlap, angle: float) -> Figure:
    """How far the flap's middle stands out before its hinge line, mm; its weight acts there."""
    _, into = turned_by(flap.height / 2, flap.thickness / 2, angle)
    return -into


def fixing_open(name: str, flap: HeldFlap, on_leaf: tuple[Figure, Figure]) -> tuple[Figure, Figure]:
    """Where the fixing on the open flap is, down from the hinge line and in, mm.

    Args:
        name: `leaf A / stays`.
        flap: what is held.
        on_leaf: from the hinge edge, and off the flap's back, mm.
    """
    down, into = turned_by(on_leaf[0], flap.thickness + on_leaf[1], flap.angle)
    words = ("from the hinge line", "behind the shut face")
    first, second = (
        named(join(name, "fixing on the open flap", word), value)
        for word, value in zip(words, (down, into), strict=True)
    )
    return first, second


def place_stay(
    name: str, flap: HeldFlap, on_leaf: tuple[Figure, Figure], behind: Figure, down: Figure
) -> StayPlace:
    """A stay with both its fixings given.

    Args:
        name: `leaf A / stays`.
        flap: what it holds.
        on_leaf: from the hinge edge, and off the flap's back, mm.
        behind: of its fixing on the case, from the front edges, mm.
        down: the same, from the hinge line, mm.

    Source: Pythagoras; the lever of a force is the cross product of its line with its distance.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    along = at("fixing on the flap, from its hinge edge", on_leaf[0])
    off = at("fixing on the flap, off its back", on_leaf[1])
    back = at("fixing on the case, behind its front edges", behind)
    low = at("fixing on the case, from the hinge line", down)
    deep, into = flap.thickness + off, back + flap.face_out
    open_down, open_in = fixing_open(name, flap, on_leaf)
    shut = at("between its fixings, shut", hypot(low - along, into - deep))
    opened = at("between its fixings, open", hypot(low - open_down, into - open_in))
    return StayPlace(
        along=along,
        off=off,
        behind=back,
        down=low,
        shut=shut,
        open=opened,
        arm_shut=at("lever, shut", (into * along - low * deep) / shut),
        arm_open=at("lever, open", (into * open_down - low * open_in) / opened),
    )
