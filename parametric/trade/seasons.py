"""How much wider a leaf stands in the dampest season, and what its gaps then leave.

jamb |gap|_stile_|______________|_stile_|gap| next leaf or jamb
          <- grows ->            <- grows ->    rails hardly grow along their grain
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import assert_never

from parametric.catalog.shop import Shop
from parametric.figures import Figure, largest, named
from parametric.hangings.hanging import EdgeRole, Hanging
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
    """Every leaf that stands between gaps; one with an edge that is free has room enough."""
    found = []
    for hanging, leaf in ((door.hanging, leaf) for door in resolved.doors for leaf in door.leaves):
        room = _room(hanging, leaf)
        if room is None:
            continue
        growth = stile_growth(leaf, resolved.shop)
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


def _room(hanging: Hanging, leaf: Leaf) -> Figure | None:
    """Its gap to a jamb, and its half of one shared with the next leaf; None where an edge is free."""
    total = Figure(0.0)
    for role in (leaf.hung.left_edge, leaf.hung.right_edge):
        gap = _gap_at(hanging, role)
        if gap is None:
            return None
        total = total + gap
    return named(join(leaf.name, "gaps at its edges"), total)


def _gap_at(hanging: Hanging, role: EdgeRole) -> Figure | None:
    match role:
        case "hinge":
            return hanging.hinge_gap
        case "pivot":
            return hanging.jamb_gap
        case "closing":
            return hanging.jamb_gap if hanging.lock_gap is None else hanging.lock_gap
        case "meeting":
            return None if hanging.meeting_gap is None else hanging.meeting_gap / 2
        case "fold":
            return None if hanging.fold_gap is None else hanging.fold_gap / 2
        case "free" | "back":
            return None
        case _:
            assert_never(role)
