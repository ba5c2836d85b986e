"""A sheet while it is being planned: every cut goes right across what it cuts.

    ____________________________           rip: along the sheet, sets a width
    |  first                   |
    |__________________________|   rip     crosscut: across it, sets a length
    |  second    |             |
    |____________|_____________|   crosscut in the second

Sizes are whole, the kerf in every piece (`exact.py`); x runs along the sheet from a corner.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal

Way = Literal["rip", "crosscut"]
NOTHING = -1


@dataclass(slots=True)
class Spot:
    """A rectangle of a sheet: a piece of some kind, a rest, or cut into parts."""

    x: int
    y: int
    long: int
    wide: int
    kind: int = NOTHING
    turned: bool = False
    way: Way | None = None
    parts: list[Spot] = field(default_factory=list)


def cut(spot: Spot, way: Way, at: int) -> tuple[Spot, Spot | None]:
    """Cut a spot in two, the first as wide (or long) as said; no cut where that is all of it."""
    whole = spot.wide if way == "rip" else spot.long
    if at == whole:
        return spot, None
    if way == "rip":
        first = Spot(spot.x, spot.y, spot.long, at)
        second = Spot(spot.x, spot.y + at, spot.long, spot.wide - at)
    else:
        first = Spot(spot.x, spot.y, at, spot.wide)
        second = Spot(spot.x + at, spot.y, spot.long - at, spot.wide)
    spot.way, spot.parts = way, [first, second]
    return first, second


def pieces_of(spot: Spot) -> Iterator[Spot]:
    """The pieces that come out of it, in the order they lie."""
    if spot.kind != NOTHING:
        yield spot
    for part in spot.parts:
        yield from pieces_of(part)


def cuts_of(spot: Spot) -> int:
    """How often it is sawn."""
    return max(0, len(spot.parts) - 1) + sum(cuts_of(part) for part in spot.parts)


def rests_of(spot: Spot) -> Iterator[Spot]:
    """What is left of it."""
    if spot.way is None and spot.kind == NOTHING:
        yield spot
    for part in spot.parts:
        yield from rests_of(part)


def without_idle_cuts(spot: Spot) -> None:
    """What no piece comes out of stays in one."""
    for part in spot.parts:
        without_idle_cuts(part)
    if spot.parts and not any(True for _ in pieces_of(spot)):
        spot.way, spot.parts = None, []


def likeness(spot: Spot) -> tuple[object, ...]:
    """Equal for two spots that are cut alike into the same kinds of pieces."""
    return (
        spot.long,
        spot.wide,
        spot.kind,
        spot.turned,
        spot.way or "",
        *(likeness(part) for part in spot.parts),
    )
