"""Loose tenons: a slot in each member, a shop-made tenon glued into both.

stile            rail
________ | _______________
    ____ | ____
   (____   ____)  slot, round ended, `deep` into each member
         |
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, named
from parametric.joints.joint import JointBlock
from parametric.model import Blank, By, Making, RoundArrises, Slot
from parametric.names import join
from parametric.written import Length, LengthTriple


class LooseTenonSpec(JointBlock):
    """The joint as written. slot: wide x long x deep; tenon: thick x wide x long."""

    kind: Literal["loose tenon"]
    slot: LengthTriple = Field(description="wide x long x deep")
    tenon: LengthTriple = Field(description="thick x wide x long")
    off_groove: Length
    off_end: Length


@dataclass(frozen=True, slots=True, kw_only=True)
class LooseTenon:
    """Slot and tenon sizes, mm."""

    slot_width: Figure
    slot_length: Figure
    slot_depth: Figure
    tenon_thickness: Figure
    tenon_width: Figure
    tenon_length: Figure
    off_groove: Figure
    off_end: Figure

    @property
    def mortise_depth(self) -> Figure:
        """How deep the stile is cut for it."""
        return self.slot_depth

    @property
    def mortise_width(self) -> Figure:
        """How wide that cut is."""
        return self.slot_width


@dataclass(frozen=True, slots=True, kw_only=True)
class SlotPlace:
    """One slot of a rail, up from the finished foot of the leaf, mm."""

    name: str
    low: Figure
    centre: Figure
    high: Figure


def size_loose_tenon(spec: LooseTenonSpec, place: str) -> LooseTenon:
    """Name the joint's numbers at their place (`leaf A / joint`)."""

    def at(quantity: str, value: Figure) -> Figure:
        return named(join(place, quantity), value)

    return LooseTenon(
        slot_width=at("slot width", spec.slot[0]),
        slot_length=at("slot length", spec.slot[1]),
        slot_depth=at("slot depth", spec.slot[2]),
        tenon_thickness=at("tenon thickness", spec.tenon[0]),
        tenon_width=at("tenon width", spec.tenon[1]),
        tenon_length=at("tenon length", spec.tenon[2]),
        off_groove=at("off groove", spec.off_groove),
        off_end=at("off end", spec.off_end),
    )


def place_slots(
    joint: LooseTenon,
    *,
    rail: str,
    count: int,
    foot: Figure,
    height: Figure,
    low_groove: Figure | None,
    high_groove: Figure | None,
    low_end: bool,
    high_end: bool,
) -> tuple[SlotPlace, ...]:
    """Where a rail's slots lie up the leaf.

    A single tenon sits in the middle of the wood that the rail's grooves leave, a groove
    keeping `off groove` beyond its own depth. Two or more spread to the ends of that wood,
    the outermost at `off end` from an end of the leaf; the rest at equal pitch.

    Args:
        joint: the joint's sizes.
        rail: the rail's name.
        count: how many tenons stand in the rail.
        foot: the rail's low edge above the finished foot, mm.
        height: the rail's own width, mm.
        low_groove: depth of the panel groove in the low edge, None without one.
        high_groove: the same for the high edge.
        low_end: the low edge is the foot of the leaf.
        high_end: the high edge is the top of the leaf.

    Source: common practice, no source.
    """
    low = foot if low_groove is None else foot + low_groove + joint.off_groove
    top = foot + height
    high = top if high_groove is None else top - high_groove - joint.off_groove
    half = joint.slot_length / 2
    if count == 1:
        centres = [(low + high) / 2]
    else:
        if low_groove is None:
            low = low + (joint.off_end if low_end else joint.off_groove)
        if high_groove is None:
            high = high - (joint.off_end if high_end else joint.off_groove)
        pitch = (high - low - joint.slot_length) / (count - 1)
        centres = [low + half + i * pitch if i else low + half for i in range(count)]
    places = []
    for index, centre in enumerate(centres):
        name = join(rail, f"slot {index + 1}" if count > 1 else "slot")
        middle = named(join(name, "centre"), centre)
        places.append(
            SlotPlace(
                name=name,
                low=named(join(name, "low end"), middle - half),
                centre=middle,
                high=named(join(name, "high end"), middle + half),
            )
        )
    return tuple(places)


def stile_slot(
    joint: LooseTenon, place: SlotPlace, *, noun: str, shift: float, middle: float
) -> Slot:
    """The slot in a stile's inner edge; `shift` turns leaf heights into heights on the blank."""
    return Slot(
        name=f"slot, tenon in {noun}",
        face="high edge",
        u0=place.low + shift,
        u1=place.high + shift,
        v=middle,
        width=joint.slot_width,
        depth=joint.slot_depth,
        making=_making(joint),
    )


def rail_slot(
    joint: LooseTenon,
    place: SlotPlace,
    *,
    face: Literal["low end", "high end"],
    foot: float,
    middle: float,
    shoulder: float | None = None,
) -> Slot:
    """The matching slot in a rail's end, at the same height from the same numbers.

    `shoulder` is how far its shoulder lies in from the end of its blank, None at the end itself.
    """
    return Slot(
        name="slot, tenon in stile",
        face=face,
        u0=place.low - foot,
        u1=place.high - foot,
        v=middle,
        width=joint.slot_width,
        depth=joint.slot_depth if shoulder is None else shoulder + joint.slot_depth,
        surface=0.0 if shoulder is None else shoulder,
        making=_making(joint),
    )


def tenon_blank(joint: LooseTenon) -> Blank:
    """The tenon's blank: along the grain first."""
    return Blank(
        length=joint.tenon_length, width=joint.tenon_width, thickness=joint.tenon_thickness
    )


def tenon_arrises(joint: LooseTenon) -> RoundArrises:
    """The tenon's edges rounded to half its thickness, to enter a round-ended slot."""
    by: By = "bench"
    return RoundArrises(
        name="edges rounded to the slot",
        radius=joint.tenon_thickness / 2,
        making=Making(by=by, tool="round-over cutter or block plane"),
    )


def _making(joint: LooseTenon) -> Making:
    return Making(by="router", cutter=joint.slot_width, tool="slot cutter or spiral cutter")
