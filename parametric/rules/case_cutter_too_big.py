"""A groove, a dado or a tenon's slot of a case is narrower than every cutter of the house.

Why: a groove wider than the board in it shows, and lets the board rattle; so does a loose tenon.
Example: a back of 5.5 wants a groove of 5.5, and cutters of 6, 8 and 12 are all wider.
Source: geometry.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.case_tenons import Tenons
from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases


def case_cutter_too_big(cases: CheckedCases) -> Iterator[Problem]:
    """Stop, once for a width of which several cases have one."""
    cutters, fine = cases.job.shop.router.cutters, cases.job.fine
    smallest = min(cutters)
    told: set[tuple[str, float]] = set()
    tenons_of = {
        bored.name: held
        for bored in cases.casework.bored
        for held in (
            *(joint.held for joint in bored.joints),
            *(own for own, _ in (() if bored.frame is None else bored.frame.counted)),
        )
        if isinstance(held, Tenons)
    }
    for standing in cases.casework.cases:
        own = standing.case
        let_in = [("dado", own.box.thickness, "butt the boards")] if own.box.let_in > 0 else []
        if own.back is not None and own.back.held == "groove":
            way = "let the back into a rebate (`held: rebate`)"
            let_in.append(("groove for the back", own.back.thickness, way))
        tenons = tenons_of.get(own.name)
        if tenons is not None:
            let_in.append(("slot for the loose tenons", tenons.thick, "take thicker tenons"))
        for what, width, other_way in let_in:
            if (what, float(width)) in told or not exceeds(smallest, width):
                continue
            told.add((what, float(width)))
            yield Problem(
                code="case_cutter_too_big",
                level="stop",
                message=f"The {what} of {own.name} is {fine(width)} wide and your smallest cutter "
                f"is {fine(smallest)}.",
                where=origin_line(width) or own.spec.here,
                about=width.name or "",
                found=fine(smallest),
                allowed=f"{fine(width)} or less",
                fix=f"Take a thicker board, {other_way}, or add the cutter under `router`.",
            )
