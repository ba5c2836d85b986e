"""A pull's pocket leaves the stile, meets a slot, or leaves too thin a web behind it.

Why: pockets back to back break through; a pocket into a slot weakens the joint.
Example: 14.2 deep from both faces of a 40 leaf leaves a web of 11.6.
Source: geometry; the least web is the house's `pocket wall`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_hardware import HungPull
from parametric.rules.checked import Checked


def pocket_meets_something(job: Checked) -> Iterator[Problem]:
    """Stops, each with what it meets."""
    for leaf in job.leaves:
        for hung in leaf.pulls:
            yield from _web(job, hung)
            yield from _edges(job, leaf, hung)
            yield from _slots(job, leaf, hung)


def _web(job: Checked, hung: HungPull) -> Iterator[Problem]:
    web, least = hung.pull.web, job.shop.limits.pocket_wall
    if exceeds(least, web):
        yield Problem(
            code="pockets_leave_no_web",
            level="stop",
            message=f"The pull's pockets leave {job.fine(web)} of wood between them; at least "
            f"{job.fine(least)} is needed.",
            where=origin_line(hung.pull.body_depth),
            about=web.name or "",
            found=job.fine(web),
            allowed=f"{job.fine(least)} or more",
            fix="Use a shallower pull, a thicker leaf, or a pull on one face only.",
        )


def _edges(job: Checked, leaf: Leaf, hung: HungPull) -> Iterator[Problem]:
    pull = hung.pull
    stile = leaf.left_stile if hung.side == "left" else leaf.right_stile
    half = pull.flange_pocket_width / 2
    low = pull.up - pull.flange_pocket_length / 2
    high = pull.up + pull.flange_pocket_length / 2
    inside = pull.from_edge - half > 0 and pull.from_edge + half < stile
    if not inside or float(low) <= 0 or high >= leaf.height:
        yield Problem(
            code="pocket_off_the_stile",
            level="stop",
            message=f"The pull's pocket, {job.fine(pull.flange_pocket_width)} wide about "
            f"{job.fine(pull.from_edge)} from the edge and {job.fine(pull.up)} up, does not lie "
            f"within the stile, {job.fine(stile)} wide.",
            where=origin_line(pull.from_edge),
            about=pull.from_edge.name or "",
            found=f"{job.fine(pull.from_edge - half)} to {job.fine(pull.from_edge + half)}",
            allowed=f"within 0 to {job.fine(stile)}",
            fix="Move the pull, or make the stile wider.",
        )


def _slots(job: Checked, leaf: Leaf, hung: HungPull) -> Iterator[Problem]:
    """In width a pocket and a slot may share the stile; they then must not share a height."""
    pull = hung.pull
    stile = leaf.left_stile if hung.side == "left" else leaf.right_stile
    if not exceeds(
        pull.from_edge + pull.body_pocket_width / 2 + pull.relief_past,
        stile - leaf.joint.mortise_depth,
    ):
        return
    face_to_slot = (leaf.thickness - leaf.joint.mortise_width) / 2
    if not exceeds(pull.body_pocket_depth, face_to_slot):
        return
    for rail in leaf.rails:
        for slot in rail.slots:
            if exceeds(pull.body_pocket_high + pull.relief_past, slot.low) and exceeds(
                slot.high, pull.body_pocket_low - pull.relief_past
            ):
                yield Problem(
                    code="pocket_meets_slot",
                    level="stop",
                    message=f"The pull's pocket, {job.fine(pull.body_pocket_low)} to "
                    f"{job.fine(pull.body_pocket_high)} up, cuts into the {rail.noun}'s slot at "
                    f"{job.fine(slot.low)} to {job.fine(slot.high)}.",
                    where=origin_line(pull.up),
                    about=slot.name,
                    found=job.fine(pull.body_pocket_low),
                    allowed=f"clear of {job.fine(slot.low)} to {job.fine(slot.high)}",
                    fix="Move the pull up or down, or the rail.",
                )
