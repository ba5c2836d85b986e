"""One door as its sizes are told a client: where its leaves stand, what they are called."""

from __future__ import annotations

from parametric.figures import Figure, collect
from parametric.names import join
from parametric.pack.door_words import door_names
from parametric.pack.page_lengths import wood_amount
from parametric.resolve.door import Resolved
from parametric.writers.client_page import Amount


class DoorSizes:
    """The sizes of one door, each with its figure's name and its place in the world, mm."""

    def __init__(self, resolved: Resolved) -> None:
        self.resolved, self.door = resolved, resolved.door
        self.hanging = self.door.hanging
        self.leaf = self.door.leaves[0]
        self.foot = float(self.hanging.floor_gap)
        self.fronts = tuple(
            -float(plane) - float(leaf.thickness) / 2
            for plane, leaf in zip(self.hanging.planes, self.door.leaves, strict=True)
        )
        self.foremost = min(self.fronts)
        self.names = door_names(self.door)

    def named(self, quantity: str) -> Figure | None:
        """A number of the door by what it is; None where the door has none."""
        return collect(self.door).get(join(self.door.place, quantity))

    def size(self, figure: Figure) -> Amount:
        """As wood is printed."""
        return wood_amount(self.resolved, figure)
