"""A leaf that cannot turn: an edge needs more room on its way than its gap gives.

A square edge 44 thick on a leaf 757 wide swings 1.7 past its own width; with a gap of 1.5 it
binds, and planed 3 degrees it clears. A chain of folding leaves grows longer before it grows
shorter, for its hinges lie on the faces and its pins in the middle.

Source: geometry of the turn (see the hanging's own file).
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.printed import printed


def leaf_binds(job: Checked) -> Iterator[Problem]:
    """Each gap that an edge must pass."""
    said = printed(job.resolved)
    for gap in job.door.hanging.clearances:
        if not exceeds(gap.needs, gap.has):
            continue
        yield Problem(
            code="leaf_binds",
            level="stop",
            message=f"The {gap.where} is {said.gauge(gap.has)}, and the edge needs "
            f"{said.gauge(gap.needs)} as the leaf turns: it binds.",
            where=job.door.written.line(gap.key),
            about=gap.needs.name or gap.where,
            found=said.gauge(gap.has),
            allowed=f"{said.gauge(gap.needs)} or more",
            fix=f"Make the {gap.key} larger"
            + (", or plane the edge to a larger bevel." if job.door.hanging.hinge_gap else "."),
        )
