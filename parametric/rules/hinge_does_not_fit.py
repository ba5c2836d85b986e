"""A hinge that its stile cannot take: off the leaf's end, over the next one, through its far face.

Why: a flap wider than the leaf shows on the other face; a mortise without depth is a hinge that
is not let in; a knuckle nearer the face than half its own width would have to be sunk in it.
Example: a flap of 40 in a leaf of 35 comes through by 5.
Source: geometry; the least wood left is the house's `groove wall`.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from typing import assert_never

from parametric.figures import Figure, exceeds
from parametric.hardware.butt_hinge import ButtHinges
from parametric.hardware.cup_hinge import CupHinges
from parametric.hardware.hinge_kinds import AnyHinges
from parametric.hardware.pivot import Pivots
from parametric.names import short
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import stile_width


def hinge_does_not_fit(job: Checked) -> Iterator[Problem]:
    """Stops, each once for the hinges of a block."""
    told: set[tuple[str, str]] = set()
    for leaf in job.leaves:
        for hung in leaf.hinges:
            hinges = hung.hinges
            if hung.side == "top" or hung.side == "bottom":
                continue
            stile = stile_width(leaf, hung.side)
            for problem in (*_along(job, leaf, hinges), *_across(job, leaf, stile, hinges)):
                if (problem.code, problem.message) not in told:
                    told.add((problem.code, problem.message))
                    yield problem


def _along(job: Checked, leaf: Leaf, hinges: AnyHinges) -> Iterator[Problem]:
    written = hinges.written
    for place in hinges.places:
        if exceeds(0.0, place.low) or exceeds(place.high, leaf.height):
            yield Problem(
                code="hinge_off_the_leaf",
                level="stop",
                message=f"The {short(place.name)}, {job.fine(place.low)} to "
                f"{job.fine(place.high)} up, does not lie on a leaf {job.size(leaf.height)} high.",
                where=written.here,
                about=place.name,
                found=f"{job.fine(place.low)} to {job.fine(place.high)}",
                allowed=f"within 0 to {job.size(leaf.height)}",
                fix="Set the hinges nearer the ends.",
            )
    for upper, lower in itertools.pairwise(hinges.places):
        if exceeds(lower.high, upper.low):
            yield Problem(
                code="hinges_overlap",
                level="stop",
                message=f"The {short(lower.name)} reaches {job.fine(lower.high)} up, and the "
                f"{short(upper.name)} begins at {job.fine(upper.low)}: they overlap.",
                where=written.here,
                about=lower.name,
                found=job.fine(lower.high),
                allowed=f"up to {job.fine(upper.low)}",
                fix="Take fewer or shorter hinges, or set them nearer the ends.",
            )


def _across(
    job: Checked, leaf: Leaf, stile: Figure, hinges: ButtHinges | CupHinges | Pivots
) -> Iterator[Problem]:
    match hinges:
        case ButtHinges():
            yield from _flap(job, leaf, hinges)
        case CupHinges():
            yield from _cup(job, leaf, stile, hinges)
        case Pivots():
            yield from _pin(job, leaf, stile, hinges)
        case _:
            assert_never(hinges)


def _flap(job: Checked, leaf: Leaf, hinges: ButtHinges) -> Iterator[Problem]:
    mortise, least = hinges.mortise, job.shop.limits.groove_wall
    written = hinges.written
    if exceeds(least, mortise.behind):
        yield Problem(
            code="flap_too_wide",
            level="stop",
            message=f"The flap goes {job.fine(mortise.width)} into a leaf "
            f"{job.size(leaf.thickness)} thick and leaves {job.fine(mortise.behind)} behind it; "
            f"at least {job.fine(least)} is needed.",
            where=written.line("leaf" if written.leaf is not None else "behind"),
            about=mortise.width.name or "",
            found=job.fine(mortise.behind),
            allowed=f"{job.fine(least)} or more",
            fix="Take a narrower flap or a thicker leaf.",
        )
    if not exceeds(mortise.depth, 0.0):
        yield Problem(
            code="flap_not_let_in",
            level="stop",
            message=f"The mortises of the flaps come to {job.fine(mortise.depth)} deep: the flaps "
            "stand nearer together, shut, than the hinge gap asks even when they are not let in.",
            where=written.line("shut gap"),
            about=mortise.depth.name or "",
            found=job.fine(mortise.depth),
            allowed="more than 0",
            fix="Make the hinge gap smaller, or choose hinges with a wider gap between the flaps.",
        )
    if exceeds(hinges.knuckle / 2, hinges.pin_out):
        yield Problem(
            code="knuckle_in_the_wood",
            level="stop",
            message=f"The pin stands {job.fine(hinges.pin_out)} proud, and half the knuckle is "
            f"{job.fine(hinges.knuckle / 2)}: the knuckle would lie in the wood.",
            where=written.line("pin out"),
            about=hinges.pin_out.name or "",
            found=job.fine(hinges.pin_out),
            allowed=f"{job.fine(hinges.knuckle / 2)} or more",
            fix="Measure both again.",
        )
    if not mortise.squared and exceeds(mortise.cutter / 2, mortise.corner):
        yield Problem(
            code="hinge_cutter_too_big",
            level="stop",
            message=f"A cutter of {job.fine(mortise.cutter)} leaves a corner of "
            f"{job.fine(mortise.cutter / 2)}; the flap's is {job.fine(mortise.corner)}.",
            where=written.line("cutter" if written.cutter is not None else "corner"),
            about=mortise.cutter.name or "",
            found=job.fine(mortise.cutter / 2),
            allowed=f"{job.fine(mortise.corner)} or less",
            fix="Write a smaller `cutter`, or `corners: square` and chop them.",
        )


def _cup(job: Checked, leaf: Leaf, stile: Figure, hinges: CupHinges) -> Iterator[Problem]:
    least, written = job.shop.limits.groove_wall, hinges.written
    left = stile - hinges.from_edge - hinges.cup
    if exceeds(0.0, left):
        yield Problem(
            code="cup_off_the_stile",
            level="stop",
            message=f"A cup of {job.fine(hinges.cup)} that begins {job.fine(hinges.from_edge)} in "
            f"ends {job.fine(-left)} beyond the stile, {job.size(stile)} wide.",
            where=written.line("cup from edge"),
            about=hinges.boring.name or "",
            found=job.fine(hinges.from_edge + hinges.cup),
            allowed=f"within {job.size(stile)}",
            fix="Take a wider stile or a smaller cup.",
        )
    if exceeds(least, hinges.behind):
        yield Problem(
            code="cup_too_deep",
            level="stop",
            message=f"A cup {job.fine(hinges.depth)} deep leaves {job.fine(hinges.behind)} of a "
            f"leaf {job.size(leaf.thickness)} thick; at least {job.fine(least)} is needed.",
            where=written.line("depth"),
            about=hinges.depth.name or "",
            found=job.fine(hinges.behind),
            allowed=f"{job.fine(least)} or more",
            fix="Take a shallower cup or a thicker leaf.",
        )


def _pin(job: Checked, leaf: Leaf, stile: Figure, hinges: Pivots) -> Iterator[Problem]:
    half, least = hinges.width / 2, job.shop.limits.groove_wall
    for key, middle, room, of in (
        ("from edge", hinges.from_edge, stile, "stile"),
        ("from face", hinges.from_face, leaf.thickness, "leaf's thickness"),
    ):
        wall = min(middle - half, room - middle - half, key=float)
        if exceeds(least, wall):
            yield Problem(
                code="pivot_leaves_no_wall",
                level="stop",
                message=f"A pin of {job.fine(hinges.width)} about {job.fine(middle)} in leaves "
                f"{job.fine(wall)} of the {of}, {job.size(room)}; at least {job.fine(least)} is "
                "needed.",
                where=hinges.written.line(key),
                about=middle.name or "",
                found=job.fine(wall),
                allowed=f"{job.fine(least)} or more",
                fix="Move the pins nearer the middle, or take thinner ones.",
            )
