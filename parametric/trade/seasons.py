"""How much wider a leaf stands in the dampest season, and what its gaps then leave.

jamb |gap|_stile_|______________|_stile_|gap| next leaf or jamb
          <- grows ->            <- grows ->    rails hardly grow along their grain
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.figures import Figure, largest, named
from parametric.hangings.hanging import Hanging
from parametric.names import join
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf


@dataclass(frozen=True, slots=True, kw_only=True)
class LeafSeason:
    """One leaf between its gaps, mm: `growth` from its making to the dampest season, `room` of
    its gaps, `left` of them then.
    """

    leaf: str
    growth: Figure
    room: Figure
    left: Figure


def leaf_seasons(resolved: Resolved) -> tuple[LeafSeason, ...]:
    """Every leaf that stands in a chain of gaps; one that slides past everything has none."""
    hanging, shop = resolved.door.hanging, resolved.shop
    found = []
    for leaf in resolved.door.leaves:
        room = _room(hanging, leaf.name)
        if room is None:
            continue
        growth = stile_growth(leaf, shop)
        found.append(
            LeafSeason(
                leaf=leaf.name,
                growth=growth,
                room=room,
                left=named(join(leaf.name, "gaps left in the dampest season"), room - growth),
            )
        )
    return tuple(found)


def stile_growth(leaf: Leaf, shop: Shop) -> Figure:
    """How much wider the two stiles are in the dampest season than when they were made, mm.

    Source: Wood Handbook (FPL-GTR-190) eq. 13-2; growth along the grain is taken as none.
    """
    moisture = shop.moisture
    rise = largest(
        Figure(0.0, unit="%"),
        named("moisture dampest", moisture.dampest, "%")
        - named("moisture made", moisture.made, "%"),
    )
    moves = leaf.timber.across(leaf.written.sawn)
    return named(
        join(leaf.name, "seasonal growth"), (leaf.left_stile + leaf.right_stile) * moves * rise
    )


def _room(hanging: Hanging, leaf: str) -> Figure | None:
    """The gap to a jamb, and half of one that is shared with the next leaf; None where it laps."""
    spans = hanging.across
    at = next((i for i, span in enumerate(spans) if (span.what, span.name) == ("leaf", leaf)), None)
    if at is None or at == 0 or at == len(spans) - 1:
        return None
    room = Figure(0.0)
    for gap, beyond in ((at - 1, at - 2), (at + 1, at + 2)):
        if spans[gap].what != "gap":
            return None
        shared = 0 <= beyond < len(spans) and spans[beyond].what == "leaf"
        room = room + (spans[gap].size / 2 if shared else spans[gap].size)
    return named(join(leaf, "gaps at its edges"), room)
