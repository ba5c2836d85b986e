"""A lock that its stile cannot take, or whose own sizes do not go together.

Why: a mortise too wide for the leaf splits it, one too deep comes out at the inner edge; a
faceplate shorter than the mortise shows it; a spindle beside the body opens nothing.
Example: a body of 16 with 0.5 each side in a leaf of 25 leaves 4 beside it.
Source: geometry; the least wood is the house's `groove wall`, and `behind slot` at the end.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hangings.hanging import Side
from parametric.hardware.lock import Lock
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import lock_of, stile_width


def lock_does_not_fit(job: Checked) -> Iterator[Problem]:
    """Stops, and a caution for little wood behind the body."""
    for leaf in job.leaves:
        side: Side | None = leaf.hung.lock_edge
        if leaf.lock is None or side is None:
            continue
        yield from _in_the_stile(job, leaf, side, leaf.lock)
        yield from _itself(job, leaf.lock)


def _in_the_stile(job: Checked, leaf: Leaf, side: Side, lock: Lock) -> Iterator[Problem]:
    written, limits = lock.written, job.shop.limits
    if exceeds(limits.groove_wall, lock.wall):
        yield Problem(
            code="lock_leaves_no_wall",
            level="stop",
            message=f"The lock's mortise leaves {job.fine(lock.wall)} of wood each side in a leaf "
            f"{job.size(leaf.thickness)} thick; at least {job.fine(limits.groove_wall)} is needed.",
            where=written.line("body"),
            about=lock.wall.name or "",
            found=job.fine(lock.wall),
            allowed=f"{job.fine(limits.groove_wall)} or more",
            fix="Take a thinner lock or a thicker leaf.",
        )
    stile = stile_width(leaf, side)
    left = stile - lock.back_of_mortise
    if exceeds(limits.behind_slot, left):
        out = exceeds(0.0, left)
        yield Problem(
            code="lock_comes_through",
            level="stop" if out else "caution",
            message=f"The lock's mortise, {job.fine(lock.back_of_mortise)} deep, "
            + (
                f"comes out of the inner edge of a stile {job.size(stile)} wide."
                if out
                else f"leaves {job.fine(left)} of a stile {job.size(stile)} wide behind it; at "
                f"least {job.fine(limits.behind_slot)} is better."
            ),
            where=written.line("body"),
            about=lock.back_of_mortise.name or "",
            found=job.fine(left),
            allowed=f"{job.fine(limits.behind_slot)} or more",
            fix="Take a shallower lock or a wider stile.",
        )
    for taken in lock_of(leaf, side):
        if exceeds(0.0, taken.low) or exceeds(taken.high, leaf.height):
            yield Problem(
                code="lock_off_the_leaf",
                level="stop",
                message=f"The lock, {job.fine(taken.low)} to {job.fine(taken.high)} up, does not "
                f"lie on a leaf {job.size(leaf.height)} high.",
                where=written.line("height"),
                about=lock.up.name or "",
                found=f"{job.fine(taken.low)} to {job.fine(taken.high)}",
                allowed=f"within 0 to {job.size(leaf.height)}",
                fix="Write another height.",
            )


def _itself(job: Checked, lock: Lock) -> Iterator[Problem]:
    written, one = lock.written, lock.mortise
    if not lock.plate_covers and one.low is not None and one.high is not None:
        long = one.high - one.low + 2 * one.run_past
        yield Problem(
            code="faceplate_does_not_cover",
            level="stop",
            message=f"The faceplate's recess, {job.fine(one.plate_high - one.plate_low)} x "
            f"{job.fine(one.plate_width)}, does not cover the body's mortise, {job.fine(long)} x "
            f"{job.fine(one.width or 0.0)}.",
            where=written.line("faceplate"),
            about=lock.name,
            found=job.fine(one.plate_high - one.plate_low),
            allowed=f"{job.fine(long)} x {job.fine(one.width or 0.0)} or more",
            fix="Measure both again; the mortise is longer than the body for its round ends.",
        )
    if not lock.plate_lies_in:
        yield Problem(
            code="plate_over_the_bevel",
            level="stop",
            message="The bevel of the edge falls more over a plate's width than the plate is "
            "thick: on its lower side it would not be let in.",
            where=written.line("faceplate"),
            about=lock.name,
            found=job.fine(one.plate_depth),
            allowed="a thicker or narrower plate",
            fix="Take a thicker plate, or plane a smaller bevel.",
        )
    if not lock.bores_meet_body:
        across = ", ".join(
            f"{bore.name} {job.fine(bore.up)} up and {job.fine(bore.across)} in"
            for bore in lock.bores
        )
        yield Problem(
            code="bore_misses_the_lock",
            level="stop",
            message=f"A bore does not come out in the lock's body, {job.fine(one.low or 0.0)} to "
            f"{job.fine(one.high or 0.0)} up and {job.fine(lock.back_of_mortise)} deep: {across}.",
            where=written.line("backset"),
            about=lock.backset.name or "",
            found=across,
            allowed="within the body",
            fix="Measure the backset, the spindle and the keyhole again.",
        )
