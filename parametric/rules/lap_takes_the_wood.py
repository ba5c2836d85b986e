"""A step along a leaf's edge that takes the joint, the groove or the whole of what it is cut in.

Why: where two leaves lap, each loses half its thickness along that edge; a slot behind it would
come out in the step.
Example: a step of 70 in a stile of 110 whose slots are 45 deep cuts 5 into them; a step of 130 in
a bottom rail of 120 leaves no rail behind it.
Source: geometry; the least wood between is the house's `pocket wall`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds
from parametric.hangings.hanging import EdgeRebate, Side
from parametric.hardware.wood_taken import Taken, through
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import (
    grooves_of,
    mouldings_of,
    rebates_of,
    slots_of,
    stile_width,
    too_near,
)

_SIDES: tuple[Side, Side] = ("left", "right")


def lap_takes_the_wood(job: Checked) -> Iterator[Problem]:
    """Stop where a step takes what lies behind it, caution where too little is left."""
    for leaf in job.leaves:
        for step in leaf.hung.rebates:
            key = "split rebate" if step.edge in ("foot", "top") else "meeting rebate"
            found = _member(job, leaf, step, key)
            yield from _behind(job, leaf, step, key) if found is None else (found,)


def _member(job: Checked, leaf: Leaf, step: EdgeRebate, key: str) -> Problem | None:
    """A step as wide as the stile or the rail it is cut in."""
    noun, wide = _in(leaf, step)
    if not exceeds(step.width, wide) and float(step.width) != float(wide):
        return None
    return Problem(
        code="lap_takes_the_wood",
        level="stop",
        message=f"The {key} of {job.fine(step.width)} takes all of {leaf.name}'s {noun}, "
        f"{job.fine(wide)} wide.",
        where=job.door.written.line(key),
        about=f"{leaf.name} / {noun}",
        found=job.fine(step.width),
        allowed=f"less than {job.fine(wide)}",
        fix=f"Make the {key} narrower, or the {noun} wider.",
    )


def _in(leaf: Leaf, step: EdgeRebate) -> tuple[str, Figure]:
    """What a step is cut in, and how wide that is."""
    match step.edge:
        case "left" | "right":
            return f"{step.edge} stile", stile_width(leaf, step.edge)
        case "foot" | "top":
            rail = leaf.rails[-1 if step.edge == "foot" else 0]
            return rail.noun, rail.height


def _behind(job: Checked, leaf: Leaf, step: EdgeRebate, key: str) -> Iterator[Problem]:
    least = job.shop.limits.pocket_wall
    sides = (step.edge,) if step.edge == "left" or step.edge == "right" else _SIDES
    for side in sides:
        mine = (_taken(leaf, step, side, key),)
        for what, others in (
            ("rail's slot", slots_of(leaf, side)),
            ("glass rebate", rebates_of(leaf, side)),
            ("panel groove", grooves_of(leaf, side)),
            # at a step along the foot or the top a stile's moulding ends
            ("moulding", mouldings_of(leaf, side) if len(sides) == 1 else ()),
        ):
            for _, other, apart in too_near(mine, others, least):
                meets = exceeds(0.0, apart)
                named = f"{other.name}'s slot" if what == "rail's slot" else what
                yield Problem(
                    code="lap_takes_the_wood",
                    level="stop" if meets else "caution",
                    message=f"The {key} of {job.fine(step.width)} "
                    + (
                        f"cuts {job.fine(-apart)} into the {named}"
                        if meets
                        else f"leaves {job.fine(apart)} of wood before the {named}"
                    )
                    + f" of {leaf.name}.",
                    where=job.door.written.line(key),
                    about=f"{leaf.name} / {key}",
                    found=job.fine(apart),
                    allowed=f"{job.fine(least)} or more of wood between",
                    fix=f"Make the {key} narrower, or the wood behind it wider.",
                )


def _taken(leaf: Leaf, step: EdgeRebate, side: Side, key: str) -> Taken:
    """The wood that a step takes from a stile."""
    front, back = through(step.face, step.depth, leaf.thickness)
    nothing, width = Figure(0.0), stile_width(leaf, side)
    upright = step.edge in ("left", "right")
    return Taken(
        name=key,
        low=leaf.height - step.width if step.edge == "top" else nothing,
        high=step.width if step.edge == "foot" else leaf.height,
        near=nothing,
        far=step.width if upright else width,
        front=front,
        back=back,
    )
