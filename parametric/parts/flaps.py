"""What is bored in a flap: its hinges' cups in the back of a rail, its stays' pilots in the stiles."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.hangings.hanging import Side
from parametric.hardware.cup_hinge import CupHinges, cup_bores
from parametric.model import Cut, Drilled, Face, Making
from parametric.parts.lying import rail_left
from parametric.resolve.leaf import Leaf
from parametric.resolve.rail import Rail

PILOTS = Making(by="bench", when="after glue-up", tool="twist bit with a stop")


def flap_cups(leaf: Leaf, rail: Rail) -> tuple[Cut, ...]:
    """The cups in the back of the rail that a flap hangs by."""
    flap = leaf.hung.flap
    hangs_by = leaf.rails[0] if flap is not None and flap.side == "top" else leaf.rails[-1]
    if flap is None or rail is not hangs_by:
        return ()
    return tuple(
        cut
        for own in leaf.hinges
        if isinstance(own.hinges, CupHinges)
        for cut in cup_bores(
            own.hinges,
            back="low face",
            shift=-rail_left(leaf, rail),
            far_edge=rail.height if flap.side == "top" else None,
        )
    )


def stay_pilots(leaf: Leaf, side: Side, back: Face) -> Iterator[Cut]:
    """The pilot of the stay on one side, in the back of that stile."""
    if leaf.stays is None:
        return
    wide, deep = leaf.stays.pilot
    for own in leaf.stays.sides:
        if own.side != side:
            continue
        yield Drilled(
            name="stay fixing",
            face=back,
            u=own.up + leaf.trim,
            v=own.across if side == "left" else leaf.width - own.across,
            diameter=wide,
            depth=deep,
            making=PILOTS,
        )
