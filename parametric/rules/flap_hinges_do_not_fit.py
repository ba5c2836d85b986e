"""A flap's hinges do not fit the rail that they are bored in.

Why: a cup over the joint of a rail and a stile cuts the joint, and one in the panel's groove lets
the panel out.
Example: stiles of 90 and a hinge 100 from the end: its cup of 35 begins at 82.5, in the joint.
Source: arithmetic; least wood beside a cup, the house's.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator

from parametric.figures import Figure, exceeds
from parametric.hardware.cup_hinge import CupHinges
from parametric.joints.loose_tenon import LooseTenon
from parametric.names import short
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked_cases import CheckedCases


def flap_hinges_do_not_fit(cases: CheckedCases) -> Iterator[Problem]:
    """Stops, each once for flaps that are alike."""
    told: set[tuple[str, str]] = set()
    for leaf in cases.job.resolved.leaves:
        if leaf.hung.flap is None or not leaf.hinges:
            continue
        hinges = leaf.hinges[0].hinges
        assert isinstance(hinges, CupHinges), "the reader has seen that a flap hangs on cups"
        for problem in _in_rail(cases, leaf, hinges):
            if (problem.code, problem.message) not in told:
                told.add((problem.code, problem.message))
                yield problem


def _in_rail(cases: CheckedCases, leaf: Leaf, hinges: CupHinges) -> Iterator[Problem]:
    assert leaf.hung.flap is not None, "asked only of flaps"
    said, written = cases.job.fine, hinges.written
    least = cases.job.shop.limits.groove_wall
    rail = leaf.rails[0] if leaf.hung.flap.side == "top" else leaf.rails[-1]

    def _problem(
        code: str, message: str, key: str, found: float, allowed: str, fix: str
    ) -> Problem:
        return Problem(
            code=code,
            level="stop",
            message=message,
            where=written.line(key),
            about=hinges.boring.name or "",
            found=said(found),
            allowed=allowed,
            fix=fix,
        )

    for one, other in itertools.pairwise(hinges.places):
        if exceeds(one.high, other.low):
            yield _problem(
                "hinges_overlap",
                f"The {short(one.name)} of {leaf.name} reaches {said(one.high)} from its left end, "
                f"and the {short(other.name)} begins at {said(other.low)}: they overlap.",
                "from ends",
                one.high,
                f"up to {said(other.low)}",
                "Set the hinges nearer the ends, or make the flap wider.",
            )
    # a stub tenon is of the rail's own wood; a loose one is let into the rail as into the stile
    deep = leaf.joint.mortise_depth if isinstance(leaf.joint, LooseTenon) else Figure(0.0)
    low, high = leaf.left_stile + deep, leaf.width - leaf.right_stile - deep
    for place in hinges.places:
        if exceeds(low, place.low) or exceeds(place.high, high):
            yield _problem(
                "cup_on_a_joint",
                f"The {short(place.name)} of {leaf.name} is bored from {said(place.low)} to "
                f"{said(place.high)} from its left end, and the joints of its {rail.noun} keep "
                f"{said(low)} to {said(high)} free.",
                "from ends",
                place.low,
                f"within {said(low)} to {said(high)}",
                "Set the hinges farther from the ends.",
            )
    groove = max(
        (field.panel.groove_depth for field in leaf.panels), key=float, default=Figure(0.0)
    )
    left = rail.height - groove - hinges.from_edge - hinges.cup
    if exceeds(least, left):
        yield _problem(
            "cup_off_the_rail",
            f"A cup of {said(hinges.cup)} that begins {said(hinges.from_edge)} in leaves "
            f"{said(left)} of the {rail.noun} of {leaf.name}, {said(rail.height)} wide"
            + (f" with a groove of {said(groove)}" if groove > 0 else "")
            + f"; at least {said(least)} is needed.",
            "cup from edge",
            left,
            f"{said(least)} or more",
            "Take a wider rail or a smaller cup.",
        )
    if exceeds(least, hinges.behind):
        yield _problem(
            "cup_too_deep",
            f"A cup {said(hinges.depth)} deep leaves {said(hinges.behind)} of {leaf.name}, "
            f"{said(leaf.thickness)} thick; at least {said(least)} is needed.",
            "depth",
            hinges.behind,
            f"{said(least)} or more",
            "Take a shallower cup or a thicker leaf.",
        )
