"""A hinge in the same wood as the rebate that glass lies in, the groove of a panel, or a moulding.

Why: a screw that comes out in a rebate stands against the glass and breaks it; in a groove it
pins the panel, which then splits as it shrinks.
Example: in a stile of 45 with a rebate 10 wide, 35 is left: screws of 38 on hinges whose
knuckles stand on the back come 3 into the rebate.
Source: geometry; the least wood between is the house's `pocket wall`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.names import short
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import grooves_of, hinges_of, mouldings_of, rebates_of, too_near


def hinge_meets_rebate(job: Checked) -> Iterator[Problem]:
    """Stop where they share wood, caution where too little is left between; once a hinge."""
    least = job.shop.limits.pocket_wall
    told: set[str] = set()
    for leaf in job.leaves:
        for hung in leaf.hinges:
            if hung.side == "top" or hung.side == "bottom":
                continue
            for one, rebate, apart in too_near(
                hinges_of(leaf, hung),
                (
                    *rebates_of(leaf, hung.side),
                    *grooves_of(leaf, hung.side),
                    *mouldings_of(leaf, hung.side),
                ),
                least,
            ):
                hinge = short(one.name)
                if hinge in told:
                    continue
                told.add(hinge)
                meets = exceeds(0.0, apart)
                yield Problem(
                    code="hinge_meets_rebate",
                    level="stop" if meets else "caution",
                    message=f"The {hinge}, {job.fine(one.far)} deep with its screws, "
                    + (
                        f"comes {job.fine(-apart)} into the {rebate.name}"
                        if meets
                        else f"leaves {job.fine(apart)} of wood before the {rebate.name}"
                    )
                    + f" that begins {job.fine(rebate.near)} in.",
                    where=hung.hinges.written.here,
                    about=one.name,
                    found=job.fine(apart),
                    allowed=f"{job.fine(least)} or more of wood between",
                    fix="Take shorter screws, a narrower flap, or a wider stile.",
                )
