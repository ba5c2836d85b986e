"""A tenon slot comes out of the far side, or lies where there is no wood for it.

Why: a slot that comes through shows; one that meets a groove or the end of the leaf holds
nothing.
Example: a slot 46 deep in a stile 40 wide comes out by 6.
Source: geometry; the least behind a slot is the house's `behind slot`.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from parametric.figures import Figure, exceeds, origin_line
from parametric.joints.loose_tenon import LooseTenon
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked, with_article


def slot_comes_through(job: Checked) -> Iterator[Problem]:
    """Stop through the edge, caution with little wood behind; stop out of the rail's own wood."""
    for leaf in job.leaves:
        joint = leaf.joint
        if isinstance(joint, LooseTenon):
            yield from _through(job, leaf, joint)
            yield from _outside_rail(job, leaf, joint)
            yield from _walls(job, leaf, joint)
            yield from _tenon(job, joint)


def _through(job: Checked, leaf: Leaf, joint: LooseTenon) -> Iterator[Problem]:
    depth = joint.slot_depth
    for word, stile in (("left", leaf.left_stile), ("right", leaf.right_stile)):
        if word == "right" and float(stile) == float(leaf.left_stile):
            continue
        behind = stile - depth
        if float(behind) <= 0:
            yield Problem(
                code="slot_comes_through",
                level="stop",
                message=f"The slot comes out of the far edge of the stile by {job.fine(-behind)}; "
                "make it shallower or the stile wider.",
                where=origin_line(depth),
                about=depth.name or "",
                found=f"{job.fine(depth)} deep in {job.fine(stile)}",
                allowed=f"{job.fine(stile - job.shop.limits.behind_slot)} or less",
                fix="Make the slot shallower or the stile wider.",
            )
        elif exceeds(job.shop.limits.behind_slot, behind):
            yield Problem(
                code="slot_comes_through",
                level="caution",
                message=f"The slots leave {job.fine(behind)} of stile behind them; at least "
                f"{job.fine(job.shop.limits.behind_slot)} is better.",
                where=origin_line(depth),
                about="wood behind the slots",
                found=job.fine(behind),
                allowed=f"{job.fine(job.shop.limits.behind_slot)} or more",
                fix="Make the slot shallower or the stile wider.",
            )
    for rail in leaf.rails:
        if exceeds(2 * depth, rail.length):
            yield Problem(
                code="slot_comes_through",
                level="stop",
                message=f"The slots in the two ends of the {rail.noun} meet: each is "
                f"{job.fine(depth)} deep and the rail is {job.fine(rail.length)} long.",
                where=origin_line(depth),
                about=rail.name,
                found=job.fine(2 * depth),
                allowed=f"less than {job.fine(rail.length)}",
                fix="Make the slots shallower.",
            )


def _outside_rail(job: Checked, leaf: Leaf, joint: LooseTenon) -> Iterator[Problem]:
    """The slots must lie between the rail's edges, off its grooves, and clear of one another."""
    for rail in leaf.rails:
        low, high = rail.foot, rail.top
        if rail.low_groove is not None:
            low = low + rail.low_groove + joint.off_groove
        if rail.high_groove is not None:
            high = high - rail.high_groove - joint.off_groove
        slots = rail.slots
        overlap = any(exceeds(a.high, b.low) for a, b in itertools.pairwise(slots))
        if exceeds(low, slots[0].low) or exceeds(slots[-1].high, high) or overlap:
            room: Figure = high - low
            yield Problem(
                code="slot_finds_no_wood",
                level="stop",
                message=f"The {rail.noun} has {job.fine(room)} of wood clear of its grooves; "
                f"{len(slots)} slot{'s' if len(slots) > 1 else ''} of "
                f"{job.fine(joint.slot_length)} do{'es' if len(slots) == 1 else ''} not fit.",
                where=origin_line(rail.height),
                about=rail.name,
                found=job.fine(room),
                allowed=f"{job.fine(joint.slot_length * len(slots))} or more",
                fix="Make the rail wider, the slot shorter, or the tenons fewer.",
            )


def _walls(job: Checked, leaf: Leaf, joint: LooseTenon) -> Iterator[Problem]:
    width, thick = joint.slot_width, leaf.thickness
    if not exceeds(thick, width):
        yield Problem(
            code="slot_comes_through",
            level="stop",
            message=f"The slot is {job.fine(width)} wide in {with_article(job.fine(thick))} frame: no cheeks "
            "are left.",
            where=origin_line(width),
            about=width.name or "",
            found=job.fine(width),
            allowed=f"about a third of {job.fine(thick)}",
            fix="Make the slot narrower.",
        )


def _tenon(job: Checked, joint: LooseTenon) -> Iterator[Problem]:
    """The tenon must enter its slots."""
    pairs = (
        ("thick", joint.tenon_thickness, joint.slot_width),
        ("wide", joint.tenon_width, joint.slot_length),
        ("long", joint.tenon_length, 2 * joint.slot_depth),
    )
    for word, tenon, room in pairs:
        if exceeds(tenon, room):
            yield Problem(
                code="tenon_too_big",
                level="stop",
                message=f"The tenon is {job.fine(tenon)} {word} and its slots take "
                f"{job.fine(room)}: it does not go home.",
                where=origin_line(tenon),
                about=tenon.name or "",
                found=job.fine(tenon),
                allowed=f"{job.fine(room)} or less",
                fix="Make the tenon smaller or the slots larger.",
            )
