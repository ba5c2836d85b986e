"""A lock in the same wood as a rail's slot, a glass rebate, a panel's groove or a moulding.

Why: a lock's mortise through the lock rail's joint cuts the tenon that holds the leaf together.
Example: a body 80 deep in a stile of 110 reaches 16 into slots 46 deep: with the rail's slot at
960 to 1020 up, a lock about 1000 cuts it.
Source: geometry; the least wood between is the house's `pocket wall`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hangings.hanging import Side
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import (
    grooves_of,
    lock_of,
    mouldings_of,
    rebates_of,
    slots_of,
    too_near,
)

_SIDES: tuple[Side, Side] = ("left", "right")


def lock_meets_something(job: Checked) -> Iterator[Problem]:
    """Stop where they share wood, caution where too little is left between."""
    least = job.shop.limits.pocket_wall
    for leaf in job.leaves:
        for side in _SIDES:
            lock = leaf.lock or leaf.strike
            if lock is None:
                continue
            others = (
                *(("slot", one) for one in slots_of(leaf, side)),
                *(("", one) for one in rebates_of(leaf, side)),
                *(("", one) for one in grooves_of(leaf, side)),
                *(("", one) for one in mouldings_of(leaf, side)),
            )
            for word, other in others:
                for one, _, apart in too_near(lock_of(leaf, side), (other,), least):
                    meets = exceeds(0.0, apart)
                    what = f"{other.name}'s {word}" if word else other.name
                    yield Problem(
                        code="lock_meets_something",
                        level="stop" if meets else "caution",
                        message=f"The {one.name}, {job.fine(one.low)} to {job.fine(one.high)} up "
                        f"and {job.fine(one.far)} deep, "
                        + (
                            f"cuts {job.fine(-apart)} into the {what}"
                            if meets
                            else f"leaves {job.fine(apart)} of wood beside the {what}"
                        )
                        + f" at {job.fine(other.low)} to {job.fine(other.high)}.",
                        where=lock.written.line("height"),
                        about=lock.name,
                        found=job.fine(apart),
                        allowed=f"{job.fine(least)} or more of wood between",
                        fix="Move the lock up or down, choose a shallower one, or make the stile "
                        "wider.",
                    )
