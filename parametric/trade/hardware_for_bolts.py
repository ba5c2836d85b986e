"""Bolts: what holds the leaf of a pair that opens second, and ties the two leaves of a dutch door."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import largest
from parametric.resolve.door import Resolved
from parametric.trade.hardware_item import SUPPLIER, HardwareItem, counted, whole
from parametric.trade.lock_places import opens_second
from parametric.trade.printed import Printed


def hardware_for_bolts(resolved: Resolved, said: Printed) -> Iterator[HardwareItem]:
    """One line where leaves of the door hold one another; nothing where each is held by itself.

    Source: common practice, no source: a leaf that another closes on is bolted at head and foot.
    """
    door = resolved.door
    second = opens_second(door)
    if second is not None:
        yield HardwareItem(
            what="bolt",
            number=counted("bolts", whole(2)),
            unit="off",
            size=f"for a leaf {said.wood(second.thickness)} thick",
            length=None,
            known_by=SUPPLIER,
            asked=f"one at the head and one at the foot of {second.name}, which opens second; "
            f"{_throws(resolved, said)}, with its plate or socket",
        )
    elif (gap := door.hanging.split_gap) is not None:
        yield HardwareItem(
            what="bolt",
            number=counted("bolts", whole(1)),
            unit="off",
            size=f"for leaves {said.wood(door.leaves[0].thickness)} thick",
            length=None,
            known_by=SUPPLIER,
            asked=f"ties the upper leaf to the lower over a gap of {said.wood(gap)}, with its plate",
        )


def _throws(resolved: Resolved, said: Printed) -> str:
    """How far it must shoot before it holds: the gap at the head, the widest over the floor."""
    door = resolved.door
    floor = largest(door.hanging.floor_gap, *(gap for _, gap in door.gaps))
    head = door.hanging.head_gap
    over = "" if head is None else f"{said.wood(head)} over the leaf and "
    return f"shoots past gaps of {over}{said.wood(floor)} under it"
