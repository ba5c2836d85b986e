"""Standing a case up under a ceiling: on what it stands on, or on the floor first, or not at all.

    ______________________________ ceiling
         .
        / `.    the corner over the foot it turns on
       /    `.  comes highest: the diagonal
      /  case `.
      `.      /      |<- depth ->|
        `.   /       a case brought upright from its back turns on its lower back edge,
     _____`./____    one from its side on the lower edge of that side
     plinth, counter or floor

Source: geometry: the diagonal of a box turned about an edge.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure, exceeds, hypot, named, root, square
from parametric.names import join

Order = Literal[
    "where it stands",
    "on the floor, then lifted",
    "from its side, where it stands",
    "from its side on the floor, then lifted",
    "not at all",
]


@dataclass(frozen=True, slots=True, kw_only=True)
class StandingUp:
    """A case and the room over it, mm.

    `diagonal` over its height and depth, `on_side` over its height and width; `over_base` is
    what lies between the ceiling and what it stands on, `over_floor` between ceiling and floor;
    `base` what it stands on. `spare` is what the way it goes leaves, less than nothing where it
    goes no way; `tallest` the height of a case of its depth that stands up on the floor.
    """

    place: str
    height: Figure
    diagonal: Figure
    on_side: Figure
    base: Figure
    over_base: Figure
    over_floor: Figure
    order: Order
    spare: Figure
    tallest: Figure | None


def standing_up(
    place: str,
    *,
    height: Figure,
    width: Figure,
    depth: Figure,
    base: Figure,
    headroom: Figure,
    beside: Figure | None = None,
) -> StandingUp:
    """How a case that is carried in lying down comes to stand.

    Args:
        place: `cabinet outer 1`.
        height: of the case, without what it stands on, mm.
        width: of it, mm.
        depth: of it, mm.
        base: how high above the floor it stands, mm: plinth, or the counter of the case below.
        headroom: from the highest floor to the lowest ceiling over it, mm.
        beside: the same where it is tipped up on the floor, if that is another.
    """

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    back = at("diagonal when tipped up", hypot(height, depth))
    side = at("diagonal when tipped up from its side", hypot(height, width))
    over_base = at("headroom over what it stands on", headroom - base)
    over_floor = at("headroom over the floor", headroom if beside is None else beside)
    ways: tuple[tuple[Order, Figure, Figure], ...] = (
        ("where it stands", over_base, back),
        ("on the floor, then lifted", over_floor, back),
        ("from its side, where it stands", over_base, side),
        ("from its side on the floor, then lifted", over_floor, side),
    )
    order: Order = "not at all"
    # what fails is told by the way that asks least
    room, needs = over_floor, min(back, side)
    for way, above, diagonal in ways:
        if not exceeds(diagonal, above):
            order, room, needs = way, above, diagonal
            break
    return StandingUp(
        place=place,
        height=height,
        diagonal=back,
        on_side=side,
        base=base,
        over_base=over_base,
        over_floor=over_floor,
        order=order,
        spare=at("spare when tipped up", room - needs),
        tallest=at("tallest that tips up on the floor", root(square(over_floor) - square(depth)))
        if over_floor > depth
        else None,
    )


def passes(sides: tuple[float, float, float], way: tuple[float, float, float]) -> bool:
    """True for a box that goes through a way so wide, so high and so long, in mm.

    One of its sides lies along the way's width, or its height; the other two lie straight or
    aslant in what is left: on end, on edge, flat, or tilted on its corner.
    """
    wide, high, long = way
    for first in range(3):
        one, (two, three) = sides[first], [s for i, s in enumerate(sides) if i != first]
        for across, rest in ((wide, (high, long)), (high, (wide, long))):
            if not exceeds(one, across) and _lies_in((two, three), rest):
                return True
    return False


def _lies_in(piece: tuple[float, float], room: tuple[float, float]) -> bool:
    """True for an oblong that lies in another, straight or turned.

    Source: Carver, American Mathematical Monthly 64 (1957), solution E 1225, from memory.
    """
    q, p = sorted(float(side) for side in piece)
    b, a = sorted(float(side) for side in room)
    if exceeds(q, b):
        return False
    if not exceeds(p, a):
        return True
    reach = math.hypot(p, q)
    needed = (2 * p * q * a + (p**2 - q**2) * math.sqrt(reach**2 - a**2)) / reach**2
    return not exceeds(needed, b)
