"""Whether a case tips over when what is in it stands open, and what the law asks of it.

          the case's weight, behind its foot          weights of what is open, before it
                    |                                        |        |
      back  ________v____________  front edges               v        v
           |                     |==== drawer, open =========[]   child of 60 lb
           |_____________________|
                          ^ foot: its front edge, or the kick's, is the line it turns on

Holding is weight x distance behind the foot line, turning weight x distance before it; the
case stands as long as the first is more. This is statics on a hard floor: no test of any
standard, and no leave to stand a case free.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.case_facts import (
    CHILD,
    CLOTHES,
    TIPS_FROM_HEIGHT,
    TIPS_FROM_ROOM,
    TIPS_FROM_WEIGHT,
)
from parametric.figures import Figure, exceeds, named
from parametric.names import join


@dataclass(frozen=True, slots=True, kw_only=True)
class Opens:
    """A drawer or a door of a case: `weight` kg with what is in it; mm from the case's foot line.

    `shut` is how far its middle stands behind that line when shut, less than nothing before it;
    `ahead` how far before it when open; `edge` how far its front or its outer edge does then.
    """

    name: str
    weight: Figure
    shut: Figure
    ahead: Figure
    edge: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class TipOver:
    """How firmly a case stands that nothing holds: holding over turning; under 1 it tips.

    `all_open` with everything open at once, None where nothing opens; `leant_on` with only the
    worst of it open and a child's weight on its edge, `worst` which that is.
    """

    place: str
    holding: Figure
    all_open: Figure | None
    leant_on: Figure | None
    worst: str

    @property
    def tips(self) -> bool:
        """True when it goes over by either."""
        return any(f is not None and f < 1 for f in (self.all_open, self.leant_on))


def tip_over(place: str, *, weight: Figure, behind: Figure, opens: tuple[Opens, ...]) -> TipOver:
    """A case that stands on the floor and leans on nothing.

    Args:
        place: `cabinet middle`.
        weight: of the case without what opens, kg.
        behind: how far its middle lies behind its foot line, mm.
        opens: its drawers and doors.
    """

    def at(quantity: str) -> str:
        return join(place, quantity)

    holding = named(at("moment that holds it"), weight * behind, "kg mm")
    if not opens:
        return TipOver(place=place, holding=holding, all_open=None, leant_on=None, worst="")
    turning = _sum(tuple(one.weight * one.ahead for one in opens))
    all_open = named(
        at("how firmly it stands with all open"),
        holding / named(at("moment of all that is open"), turning, "kg mm"),
        "",
    )
    each = tuple(_leant_on(place, holding, one, opens) for one in opens)
    least = min(range(len(each)), key=lambda i: float(each[i]))
    return TipOver(
        place=place,
        holding=holding,
        all_open=all_open,
        leant_on=named(at("how firmly it stands when leant on"), each[least], ""),
        worst=opens[least].name,
    )


def _leant_on(place: str, holding: Figure, one: Opens, opens: tuple[Opens, ...]) -> Figure:
    """One stands open with a child on its edge; the others are shut, and hold or turn as they lie."""
    shut = [other for other in opens if other is not one]
    held = _sum((holding, *(other.weight * other.shut for other in shut if other.shut >= 0)))
    turned = _sum(
        (
            one.weight * one.ahead,
            CHILD * one.edge,
            *(other.weight * -other.shut for other in shut if other.shut < 0),
        )
    )
    return named(join(place, one.name, "moment that holds the case"), held, "kg mm") / named(
        join(place, one.name, "moment when leant on"), turned, "kg mm"
    )


def _sum(moments: tuple[Figure, ...]) -> Figure:
    total = moments[0]
    for more in moments[1:]:
        total = total + more
    return total


def clothes_in(name: str, *, width: Figure, height: Figure, length: Figure) -> Figure:
    """What a drawer is reckoned to hold, kg, by the inside of its box, mm."""
    return named(name, width * height * length * CLOTHES / 1e9, "kg")


def within_the_rule(*, height: Figure, weight: Figure, enclosed: Figure) -> bool:
    """True where the law on tip-over would speak of the case, stood free and used for clothes.

    Args:
        height: of the case on what it stands on, mm.
        weight: of it empty, kg.
        enclosed: room behind its drawers and doors, mm3.

    Source: 16 CFR 1261 (ASTM F2057-23): stands free, 27 in or more high, 30 lb or more heavy,
    3.2 ft3 or more enclosed. What is fixed to the building for good is out of it.
    """
    return not (
        exceeds(TIPS_FROM_HEIGHT, height)
        or exceeds(TIPS_FROM_WEIGHT, weight)
        or exceeds(TIPS_FROM_ROOM, enclosed)
    )
