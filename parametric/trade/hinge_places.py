"""Where hinges go on site: up from a leaf's foot, and down from the head of the jamb.

jamb's head ____________________
             |  down            | head gap
             v                  |________
     [=] seat in the jamb      [=] seat in the leaf
                                |  ^
                                |  | up
                                |__|_____ foot
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.figures import Figure, named
from parametric.hangings.hanging import Side
from parametric.hardware.butt_hinge import ButtHinges
from parametric.hardware.cup_hinge import CupHinges
from parametric.hardware.hinge import HingePlace
from parametric.hardware.hinge_kinds import AnyHinges
from parametric.hardware.pivot import Pivots
from parametric.names import join
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_hardware import HungHinges


@dataclass(frozen=True, slots=True, kw_only=True)
class Seat:
    """What is taken out for one flap, alike in leaf and jamb, mm; `corner` 0 is chopped square."""

    length: Figure
    width: Figure
    depth: Figure
    corner: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeFixing:
    """One hinge to hang a leaf by, mm: its middle, thrice measured, and its two ends on the jamb.

    `on` is what carries the leaf there: `jamb`, or the next leaf. `above_floor` is from the
    datum, `face` where the knuckles stand; `near_end` is the end of the jamb's seat nearer the head, down from it.
    """

    leaf: str
    word: str
    side: Side
    on: str
    low: Figure
    high: Figure
    from_foot: Figure
    from_head: Figure
    near_end: Figure
    above_floor: Figure
    face: Literal["front", "back"]
    seat: Seat | None


def hinge_fixings(door: Door) -> tuple[HingeFixing, ...]:
    """Every hinge of an upright edge once, leaf by leaf from the top down; one between two leaves
    with the first.
    """
    return tuple(
        _fixing(door, leaf, hung, hung.side, place, on)
        for leaf, hung, on in hung_edges(door)
        if hung.side == "left" or hung.side == "right"
        for place in hung.hinges.places
    )


def hung_edges(door: Door) -> Iterator[tuple[Leaf, HungHinges, str]]:
    """Each edge that hinges hang, once: at a jamb, or between a leaf and the next to its right."""
    for index, leaf in enumerate(door.leaves):
        for hung in leaf.hinges:
            if leaf.hung.edge(hung.side) != "fold":
                yield leaf, hung, "jamb"
            elif hung.side == "right":
                yield leaf, hung, door.leaves[index + 1].name


def seat_of(hinges: AnyHinges) -> Seat | None:
    """The mortise of a flap; a cup and a pin are bored, not let in."""
    match hinges:
        case ButtHinges():
            one = hinges.mortise
            return Seat(length=one.length, width=one.width, depth=one.depth, corner=one.corner)
        case CupHinges() | Pivots():
            return None
        case _:
            assert_never(hinges)


def _fixing(
    door: Door, leaf: Leaf, hung: HungHinges, side: Side, place: HingePlace, on: str
) -> HingeFixing:
    def at(quantity: str, value: Figure) -> Figure:
        return named(join(place.name, quantity), value)

    foot, head = leaf.hung.foot, door.opening.head
    above = at("above the floor", foot + place.centre)
    return HingeFixing(
        leaf=leaf.name,
        word=place.name.rpartition(" / ")[2],
        side=side,
        on=on,
        low=at("low end above the floor", foot + place.low),
        high=at("high end above the floor", foot + place.high),
        from_foot=place.centre,
        from_head=at("down from the jamb's head", head - above),
        near_end=at("near end down from the jamb's head", head - foot - place.high),
        above_floor=above,
        face=hung.face,
        seat=seat_of(hung.hinges),
    )
