"""A router cutter leaves a larger corner than the hardware has, or no cutter owned fits.

Why: a round corner of the cutter's own radius stays in the pocket, and the pull sits on it.
Example: corner 3 + 0.3 takes a cutter of 6 (radius 3); one of 8 leaves 4.
Source: geometry.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def cutter_too_big(job: Checked) -> Iterator[Problem]:
    """Stop for the cutter that is set; a note naming the next one owned that must not be used."""
    yield from _pull_cutters(job)
    yield from _narrow_cuts(job)


def _pull_cutters(job: Checked) -> Iterator[Problem]:
    owned = job.shop.router.cutters
    for hung in job.leaf.pulls:
        pull = hung.pull
        corner = pull.body_pocket_corner
        fitting = [c for c in owned if not exceeds(c / 2, corner)]
        largest = f" The largest that fits is {job.size(max(fitting))}." if fitting else ""
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
                fix="Write a smaller `cutter`, or square the corners of the pocket by hand and "
                "say so.",
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


def _narrow_cuts(job: Checked) -> Iterator[Problem]:
    """Slots, grooves and the guide groove need a cutter no wider than they are."""
    leaf = job.leaf
    widths: list[tuple[str, Figure]] = [("slot", leaf.joint.slot_width)]
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
