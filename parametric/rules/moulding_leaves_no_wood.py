"""A moulding cuts into what lies behind it, or leaves too thin an edge before it.

Why: a moulding as deep as the groove's own wall opens the groove; a stop that stands beside a
moulding touches no wood where it is seen.
Example: in a 40 frame a groove 8 wide leaves 16 before it, an ovolo 12 deep 4 of that.
Source: geometry; before a groove or a rebate the least is the house's `groove wall`. A rail's
slot may come as near as it likes: a tenon that lies level with the moulding is common practice.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds, origin_line
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.resolve.sticking import FrameSticking
from parametric.rules.checked import Checked


def moulding_leaves_no_wood(job: Checked) -> Iterator[Problem]:
    """Stops, the first thing of each kind in a leaf speaking for those like it."""
    for leaf in job.leaves:
        if leaf.sticking is None:
            continue
        depth, least = leaf.sticking.moulding.depth, job.shop.limits.groove_wall
        for field in leaf.panels[:1]:
            wall = (leaf.thickness - field.panel.groove_width) / 2
            yield from _before(job, leaf, "the panel's groove", wall - depth, least)
        for lite in leaf.lites[:1]:
            if lite.rebate is not None:
                yield from _before(job, leaf, "the glass rebate", lite.rebate.lip - depth, least)
            elif (stops := lite.pane.stops) is not None and exceeds(depth, stops.below_face):
                yield _stop(
                    job,
                    leaf,
                    f"The {leaf.sticking.moulding.name} is {job.fine(depth)} deep, and the glass "
                    f"stops lie {job.fine(stops.below_face)} below the face: they would stand "
                    "beside nothing.",
                    found=job.fine(depth),
                    allowed=f"up to {job.fine(stops.below_face)}",
                    fix="Make the stops shallower, or hold the glass in a rebate.",
                )
        before = (leaf.thickness - leaf.joint.mortise_width) / 2
        if exceeds(depth, before):
            yield _stop(
                job,
                leaf,
                f"The {leaf.sticking.moulding.name} is {job.fine(depth)} deep and cuts into the "
                f"rails' slots, which begin {job.fine(before)} behind the face.",
                found=job.fine(depth),
                allowed=f"up to {job.fine(before)}",
                fix="Make the moulding shallower, or the slots narrower.",
            )
        yield from _pulls(job, leaf, leaf.sticking)
        yield from _steps(job, leaf, leaf.sticking)


def _stop(job: Checked, leaf: Leaf, message: str, *, found: str, allowed: str, fix: str) -> Problem:
    assert leaf.sticking is not None
    return Problem(
        code="moulding_leaves_no_wood",
        level="stop",
        message=message,
        where=origin_line(leaf.sticking.moulding.depth) or leaf.written.line("sticking"),
        about=leaf.sticking.moulding.depth.name or job.design.file,
        found=found,
        allowed=allowed,
        fix=fix,
    )


def _before(job: Checked, leaf: Leaf, what: str, left: Figure, least: Figure) -> Iterator[Problem]:
    """What a moulding leaves before a groove or a rebate."""
    assert leaf.sticking is not None
    moulding = leaf.sticking.moulding
    if exceeds(least, left):
        yield _stop(
            job,
            leaf,
            f"The {moulding.name}, {job.fine(moulding.depth)} deep, "
            + (
                f"leaves {job.fine(left)} of wood before {what}; at least {job.fine(least)} is "
                "needed."
                if float(left) > 0
                else f"cuts {job.fine(-left)} into {what}."
            ),
            found=job.fine(left),
            allowed=f"{job.fine(least)} or more",
            fix="Make the moulding shallower, or the frame thicker.",
        )


def _pulls(job: Checked, leaf: Leaf, sticking: FrameSticking) -> Iterator[Problem]:
    """A pull that is let into the face is let into plain wood."""
    for hung in leaf.pulls:
        pull = hung.pull
        stile = leaf.left_stile if hung.side == "left" else leaf.right_stile
        far = pull.from_edge + pull.flange_pocket_width / 2
        plain = stile - sticking.moulding.width
        if "front" in pull.faces and exceeds(far, plain):
            yield _stop(
                job,
                leaf,
                f"The pull's pocket reaches {job.fine(far)} in from the edge, and the "
                f"{sticking.moulding.name} begins {job.fine(plain)} in.",
                found=job.fine(far),
                allowed=f"up to {job.fine(plain)}",
                fix="Move the pull, or make the stile wider.",
            )


def _steps(job: Checked, leaf: Leaf, sticking: FrameSticking) -> Iterator[Problem]:
    """A rebate along the leaf's own foot or top, taken from the back, and the moulding before it."""
    for step in leaf.hung.rebates:
        left = leaf.thickness - step.depth - sticking.moulding.depth
        if step.face == "back" and step.edge in ("foot", "top"):
            yield from _before(job, leaf, f"the leaf's rebate at its {step.edge}", left, Figure(0))
