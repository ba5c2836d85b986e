"""Where the hardware of a leaf goes on it: the length that takes a hanger's screws, the middle line.

top of the leaf, seen from above
 _________________________________________________
|  stile   [====  tenon  ... clear ...  ====]     |
|__________|________________________________|_____|
 <- clear ->|<--------- hangers ---------->|<- clear
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.names import join
from parametric.resolve.door import Door


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafHardware:
    """One leaf, mm from its left edge, seen from the front.

    `first` to `last` is the top rail between its tenon slots, `room` long: there the grain
    runs level and nothing is cut away, so a hanger's screws hold. `middle` is from the face.
    """

    leaf: str
    first: Figure
    room: Figure
    last: Figure
    kept_right: Figure
    middle: Figure


def leaf_hardware(door: Door) -> tuple[LeafHardware, ...]:
    """Every leaf of a door.

    Source: screws hold badly in end grain, and a tenon's slot leaves little over it (common
    practice, no source).
    """
    found = []
    for leaf in door.leaves:
        place = join(leaf.name, "hangers")
        deep = leaf.joint.mortise_depth
        first = named(join(place, "from the left edge at least"), leaf.left_stile + deep)
        kept = named(join(place, "from the right edge at least"), leaf.right_stile + deep)
        last = named(join(place, "from the left edge at most"), leaf.width - kept)
        found.append(
            LeafHardware(
                leaf=leaf.name,
                first=first,
                room=named(join(place, "room between the tenons"), last - first),
                last=last,
                kept_right=kept,
                middle=named(join(leaf.name, "middle from the face"), leaf.thickness / 2),
            )
        )
    return tuple(found)
