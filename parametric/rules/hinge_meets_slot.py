"""A hinge in the same wood as a rail's joint: its screws, its cup or its pin comes into the slot.

Why: a screw in a slot holds in the tenon's glue line or in nothing; a cup bored into it weakens
the joint.
Example: in a stile of 45 with slots 30 deep only 15 is left behind them: screws of 38 come 23
into the slot.
Source: geometry; the least wood between is the house's `pocket wall`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.names import short
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import hinges_of, slots_of, too_near


def hinge_meets_slot(job: Checked) -> Iterator[Problem]:
    """Stop where they share wood, caution where too little is left between; once a place."""
    least = job.shop.limits.pocket_wall
    told: set[tuple[str, str]] = set()
    for leaf in job.leaves:
        for hung in leaf.hinges:
            if hung.side == "top" or hung.side == "bottom":
                continue
            written = hung.hinges.written
            for one, slot, apart in too_near(
                hinges_of(leaf, hung), slots_of(leaf, hung.side), least
            ):
                hinge = short(one.name)
                if (hinge, slot.name) in told:
                    continue
                told.add((hinge, slot.name))
                meets = exceeds(0.0, apart)
                yield Problem(
                    code="hinge_meets_slot",
                    level="stop" if meets else "caution",
                    message=f"The {hinge}, {job.fine(one.low)} to {job.fine(one.high)} up, "
                    + (
                        f"comes {job.fine(-apart)} into the {slot.name}'s slot"
                        if meets
                        else f"leaves {job.fine(apart)} of wood beside the {slot.name}'s slot"
                    )
                    + f" at {job.fine(slot.low)} to {job.fine(slot.high)}.",
                    where=written.here,
                    about=one.name,
                    found=job.fine(apart),
                    allowed=f"{job.fine(least)} or more of wood between",
                    fix="Move the hinge, take shorter screws, make the slots shallower or the "
                    "stile wider.",
                )
