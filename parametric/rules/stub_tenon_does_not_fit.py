"""A stub tenon does not go home in the panel's groove, or holds too little.

Why: it stands in the groove that takes the panels: longer than that is deep it keeps the
shoulder open, much shorter it is a tongue. Its cheeks are all that is glued.
Example: a tenon of 10 in a groove 9 deep leaves the shoulder 1 open.
Source: common practice, no source; what a groove leaves of the stile is the house's `behind slot`,
and what is too heavy for it the house's `one person`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds, origin_line
from parametric.joints.stub_tenon import StubTenon
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked


def stub_tenon_does_not_fit(job: Checked) -> Iterator[Problem]:
    """Stops: longer than its groove, no stile behind it, no wood left of it in a narrow rail;
    cautions: shorter than thick, little stile behind it, a heavy leaf.
    """
    for leaf in job.leaves:
        joint = leaf.joint
        if isinstance(joint, StubTenon):
            yield from _in_groove(job, joint)
            yield from _behind(job, leaf, joint)
            yield from _left_of_it(job, leaf, joint)
            yield from _heavy(job, leaf, joint)


def _in_groove(job: Checked, joint: StubTenon) -> Iterator[Problem]:
    if exceeds(joint.length, joint.groove_depth):
        yield Problem(
            code="stub_tenon_too_long",
            level="stop",
            message=f"The stub tenon is {job.fine(joint.length)} long and its groove "
            f"{job.fine(joint.groove_depth)} deep: the shoulder stays "
            f"{job.fine(joint.length - joint.groove_depth)} open.",
            where=origin_line(joint.length),
            about=joint.length.name or "",
            found=job.fine(joint.length),
            allowed=f"{job.fine(joint.groove_depth)} or less",
            fix="Make the tenon shorter or the panel's groove deeper.",
        )
    elif exceeds(joint.thickness, joint.length):
        yield Problem(
            code="stub_tenon_too_short",
            level="caution",
            message=f"The stub tenon is {job.fine(joint.length)} long and "
            f"{job.fine(joint.thickness)} thick: shorter than thick it holds little.",
            where=origin_line(joint.length),
            about=joint.length.name or "",
            found=job.fine(joint.length),
            allowed=f"{job.fine(joint.thickness)} or more",
            fix="Make the tenon longer and the panel's groove as deep, or take loose tenons.",
        )


def _behind(job: Checked, leaf: Leaf, joint: StubTenon) -> Iterator[Problem]:
    narrow = min(leaf.left_stile, leaf.right_stile, key=float)
    behind: Figure = narrow - joint.groove_depth
    through = float(behind) <= 0
    if through or exceeds(job.shop.limits.behind_slot, behind):
        yield Problem(
            code="groove_comes_through",
            level="stop" if through else "caution",
            message=f"The groove comes out of the far edge of the stile by {job.fine(-behind)}."
            if through
            else f"The groove leaves {job.fine(behind)} of stile behind the tenons; at least "
            f"{job.fine(job.shop.limits.behind_slot)} is better.",
            where=origin_line(joint.groove_depth),
            about=joint.groove_depth.name or "",
            found=job.fine(behind),
            allowed=f"{job.fine(job.shop.limits.behind_slot)} or more",
            fix="Make the groove shallower or the stile wider.",
        )


def _left_of_it(job: Checked, leaf: Leaf, joint: StubTenon) -> Iterator[Problem]:
    """The panel's groove goes through the tenon: from one edge of the rail, or from both."""
    for rail in leaf.rails:
        left = rail.height
        for groove in (rail.low_groove, rail.high_groove):
            left = left if groove is None else left - groove
        if not exceeds(left, joint.thickness):
            yield Problem(
                code="stub_tenon_finds_no_wood",
                level="stop",
                message=f"Between its grooves the {rail.noun} has {job.fine(left)} left for a "
                f"tenon {job.fine(joint.thickness)} thick.",
                where=origin_line(rail.height),
                about=rail.name,
                found=job.fine(left),
                allowed=f"more than {job.fine(joint.thickness)}",
                fix="Make the rail wider, or the groove shallower.",
            )


def _heavy(job: Checked, leaf: Leaf, joint: StubTenon) -> Iterator[Problem]:
    """A cupboard's door hangs on stub tenons; a room's does not for long."""
    weight, most = leaf.weights.estimate, job.shop.limits.one_person
    if exceeds(weight, most):
        yield Problem(
            code="stub_tenon_overloaded",
            level="caution",
            message=f"The leaf weighs {float(weight):.1f} kg, and its rails hold on stub tenons "
            f"{job.fine(joint.length)} long: those are for cupboard doors.",
            where=origin_line(joint.length),
            about=weight.name or "",
            found=f"{float(weight):.1f} kg",
            allowed=f"{float(most):g} kg or less",
            fix="Join it with loose tenons: `kind: loose tenon`.",
        )
