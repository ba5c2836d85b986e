"""What is cut in one stile, as boxes of wood: hinges, locks, slots, rebates, grooves, mouldings.

A rule that asks whether two of them meet compares these; none asks how they are cut.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from parametric.figures import Figure, exceeds
from parametric.hangings.hanging import Side
from parametric.hardware.hinge_kinds import hinge_wood
from parametric.hardware.lock import lock_wood, strike_wood
from parametric.hardware.wood_taken import Taken, kept_apart, through
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_hardware import HungHinges


def hinges_of(leaf: Leaf, hung: HungHinges) -> tuple[Taken, ...]:
    """The flaps with their screws, the cups or the pins."""
    return hinge_wood(hung.hinges, knuckles=hung.face, thickness=leaf.thickness)


def lock_of(leaf: Leaf, side: Side) -> tuple[Taken, ...]:
    """The lock in this stile, or the strike of the other leaf's."""
    if leaf.lock is not None and leaf.hung.lock_edge == side:
        return (lock_wood(leaf.lock, thickness=leaf.thickness),)
    if leaf.strike is not None and leaf.hung.strike_edge == side:
        return strike_wood(leaf.strike, thickness=leaf.thickness)
    return ()


def slots_of(leaf: Leaf, side: Side) -> tuple[Taken, ...]:
    """The rails' slots in the inner edge."""
    joint, width = leaf.joint, stile_width(leaf, side)
    near = width - joint.mortise_depth
    half = joint.mortise_width / 2
    return tuple(
        Taken(
            name=rail.noun,
            low=slot.low,
            high=slot.high,
            near=near,
            far=width,
            front=leaf.thickness / 2 - half,
            back=leaf.thickness / 2 + half,
        )
        for rail in leaf.rails
        for slot in rail.slots
    )


def rebates_of(leaf: Leaf, side: Side) -> tuple[Taken, ...]:
    """The rebates that glass lies in, from the back; beside a curve as high as that is."""
    width = stile_width(leaf, side)
    return tuple(
        Taken(
            name="glass rebate",
            low=lite.foot - lite.rebate.frame,
            high=lite.top
            + lite.rebate.frame
            + (0.0 if lite.head is None else float(lite.head.crown)),
            near=width - lite.rebate.frame,
            far=width,
            front=through("back", lite.rebate.depth, leaf.thickness)[0],
            back=leaf.thickness,
        )
        for lite in leaf.lites
        if lite.rebate is not None
    )


def grooves_of(leaf: Leaf, side: Side) -> tuple[Taken, ...]:
    """The grooves that panels stand in."""
    width = stile_width(leaf, side)
    return tuple(
        Taken(
            name="panel groove",
            low=field.groove_low,
            high=field.groove_high,
            near=width - field.panel.groove_depth,
            far=width,
            front=(leaf.thickness - field.panel.groove_width) / 2,
            back=(leaf.thickness + field.panel.groove_width) / 2,
        )
        for field in leaf.panels
    )


def mouldings_of(leaf: Leaf, side: Side) -> tuple[Taken, ...]:
    """The moulding along the inner edge, from the face; mitred it leaves room for the rails' own."""
    if leaf.sticking is None:
        return ()
    width, moulding = stile_width(leaf, side), leaf.sticking.moulding
    return (
        Taken(
            name=moulding.name,
            low=Figure(0.0),
            high=leaf.height,
            near=width - moulding.width,
            far=width,
            front=Figure(0.0),
            back=moulding.depth,
        ),
    )


def stile_width(leaf: Leaf, side: Side) -> Figure:
    """The width of the left or the right stile, mm."""
    return leaf.left_stile if side == "left" else leaf.right_stile


def too_near(
    ones: Iterable[Taken], others: Iterable[Taken], least: float
) -> Iterator[tuple[Taken, Taken, Figure]]:
    """Pairs with less wood between them than `least`, mm, and how much there is."""
    others = tuple(others)
    for one in ones:
        for other in others:
            apart = kept_apart(one, other)
            if exceeds(least, apart):
                yield one, other, apart
