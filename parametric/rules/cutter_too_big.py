"""A router cutter leaves a larger corner than the hardware has, or no cutter owned fits.

Why: a round corner of the cutter's own radius stays in the pocket, and the pull sits on it.
Example: corner 3 + 0.3 takes a cutter of 6 (radius 3); one of 8 leaves 4. Where the house
relieves corners the 8 is run 0.2 past the sides of the pocket, under the flange.
Source: geometry.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.hardware.pull import Pull
from parametric.joints.loose_tenon import LooseTenon
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked


def cutter_too_big(job: Checked) -> Iterator[Problem]:
    """Stop for the cutter that is set; a note naming the next one owned that must not be used."""
    yield from _pull_cutters(job)
    for leaf in job.leaves:
        yield from _narrow_cuts(job, leaf)


def _pull_cutters(job: Checked) -> Iterator[Problem]:
    owned = job.shop.router.cutters
    for hung in (hung for leaf in job.leaves for hung in leaf.pulls):
        pull = hung.pull
        corner = pull.body_pocket_corner
        fitting = [c for c in owned if not exceeds(c / 2, corner)]
        largest = f" The largest that fits is {job.size(max(fitting))}." if fitting else ""
        if exceeds(pull.relief, 0.0):
            yield from _relieved(job, pull)
            continue
        if exceeds(pull.cutter / 2, corner):
            yield Problem(
                code="cutter_too_big",
                level="stop",
                message=f"A cutter of {job.size(pull.cutter)} leaves a corner of "
                f"{job.fine(pull.cutter / 2)}; the pull's is {job.fine(corner)}.{largest}",
                where=origin_line(pull.cutter),
                about=pull.cutter.name or "",
                found=job.fine(pull.cutter / 2),
                allowed=f"{job.fine(corner)} or less",
                fix="Write a smaller `cutter`, or, where the flange covers it, let it run into the "
                "corners: `inside corners: relieve` under `router`.",
            )
            continue
        bigger = [c for c in owned if exceeds(c / 2, corner)]
        if bigger:
            yield Problem(
                code="cutter_too_big",
                level="note",
                message=f"Cut the pull's pockets with the {job.size(pull.cutter)} cutter: the "
                f"{job.size(min(bigger))} leaves a corner of {job.fine(min(bigger) / 2)}, and the "
                f"pull's is {job.fine(corner)}.",
                where=origin_line(pull.cutter),
                about=pull.cutter.name or "",
                found=job.size(pull.cutter),
                allowed=f"radius {job.fine(corner)} or less",
            )


def _relieved(job: Checked, pull: Pull) -> Iterator[Problem]:
    """A relief must not show: not round the flange, nor past it."""
    flange = pull.flange_pocket_corner
    if exceeds(pull.cutter / 2, flange):
        what = f"A cutter of {job.size(pull.cutter)} leaves a corner of {job.fine(pull.cutter / 2)}"
        found, allowed = job.fine(pull.cutter / 2), f"{job.fine(flange)} or less"
        seen = f"{what}; the pull's flange is {job.fine(flange)}, and a relief there is seen."
    elif not pull.relief_hidden:
        found = f"{job.fine(pull.relief_past)} past the pocket"
        allowed = "all of it under the flange"
        seen = (
            f"The pocket's corners, relieved by the {job.size(pull.cutter)} cutter, reach "
            f"{job.fine(pull.relief_past)} past its sides and show beside the flange."
        )
    else:
        yield Problem(
            code="corners_relieved",
            level="note",
            message=f"The {job.size(pull.cutter)} cutter is run into the corners of the pull's "
            f"pocket, {job.fine(pull.relief_past)} past its sides: the flange covers it.",
            where=origin_line(pull.cutter),
            about=pull.relief.name or "",
            found=job.fine(pull.relief_past),
            allowed="all of it under the flange",
        )
        return
    yield Problem(
        code="cutter_too_big",
        level="stop",
        message=seen,
        where=origin_line(pull.cutter),
        about=pull.cutter.name or "",
        found=found,
        allowed=allowed,
        fix="Write a smaller `cutter`.",
    )


def _narrow_cuts(job: Checked, leaf: Leaf) -> Iterator[Problem]:
    """Slots, grooves and the guide groove need a cutter no wider than they are."""
    joint = leaf.joint
    widths = [("slot", joint.slot_width)] if isinstance(joint, LooseTenon) else []
    widths += [
        ("panel groove", f.panel.groove_width) for f in leaf.panels if f.panel.groove_by == "router"
    ]
    for what, width in widths:
        if any(not exceeds(cutter, width) for cutter in job.shop.router.cutters):
            continue
        smallest = min(job.shop.router.cutters)
        yield Problem(
            code="cutter_too_big",
            level="stop",
            message=f"The {what} is {job.fine(width)} wide and your smallest cutter is "
            f"{job.fine(smallest)}.",
            where=origin_line(width),
            about=width.name or "",
            found=job.fine(smallest),
            allowed=f"{job.fine(width)} or less",
            fix=f"Make the {what} wider, or add the cutter under `router`.",
        )
    guide = leaf.guide
    if guide is not None and exceeds(guide.cutter, guide.width):
        yield Problem(
            code="cutter_too_big",
            level="stop",
            message=f"A cutter of {job.fine(guide.cutter)} does not go into a guide groove "
            f"{job.fine(guide.width)} wide.",
            where=origin_line(guide.cutter),
            about=guide.cutter.name or "",
            found=job.fine(guide.cutter),
            allowed=f"{job.fine(guide.width)} or less",
            fix="Write the cutter you will use.",
        )
