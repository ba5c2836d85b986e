"""Where locks and their strikes go on site: up from the floor, and down from the head of the jamb."""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.hardware.lock import Lock
from parametric.names import join
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.trade.printed import Printed


@dataclass(frozen=True, slots=True, kw_only=True)
class StrikePlace:
    """The middle of one strike, mm: from the datum up and from the jamb's head down.

    `into` is `jamb`, or the leaf that it came let into from the shop.
    """

    leaf: str
    into: str
    up: Figure
    down: Figure
    spindle: Figure
    lock: Lock

    def rule(self, said: Printed) -> str:
        """What is said under the height: the other measure, and where the spindle stands."""
        made = "marked from the shut leaf" if self.into == "jamb" else "let in in the shop"
        return (
            f"{said.site(self.down)} down from the jamb's head; spindle of {self.leaf} "
            f"{said.site(self.spindle)} up; {made}"
        )


def strike_places(door: Door) -> tuple[StrikePlace, ...]:
    """One for every lock, leaf by leaf."""
    other = opens_second(door)
    return tuple(
        _place(door, leaf, leaf.lock, "jamb" if other is None else other.name)
        for leaf in door.leaves
        if leaf.lock is not None
    )


def opens_second(door: Door) -> Leaf | None:
    """Of a pair that meets, the leaf that takes the strike and is held by bolts."""
    return next((leaf for leaf in door.leaves if leaf.hung.strike_edge is not None), None)


def _place(door: Door, leaf: Leaf, lock: Lock, into: str) -> StrikePlace:
    name = join(lock.name, "strike")
    return StrikePlace(
        leaf=leaf.name,
        into=into,
        up=lock.strike_above_floor,
        down=named(
            join(name, "down from the jamb's head"), door.opening.head - lock.strike_above_floor
        ),
        spindle=named(join(lock.name, "spindle above the floor"), leaf.hung.foot + lock.up),
        lock=lock,
    )
