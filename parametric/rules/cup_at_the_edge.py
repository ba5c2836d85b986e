"""A hinge's cup is bored so near the edge of its leaf that the wood beside it breaks out.

Why: the wall between cup and edge is all that holds the hinge against being levered out.
Example: a cup that begins 1 from the edge breaks through as its screws are driven.
Source: cups begin 3 to 7 from the edge: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hardware.cup_hinge import CupHinges
from parametric.problems import Problem
from parametric.rules.checked import Checked

_LEAST = 3.0
"""From the leaf's edge to its cup, mm."""


def cup_at_the_edge(job: Checked) -> Iterator[Problem]:
    """Stop, once for the hinges of a block."""
    told: set[str] = set()
    for hung in (hung for leaf in job.leaves for hung in leaf.hinges):
        hinges = hung.hinges
        if not isinstance(hinges, CupHinges) or not exceeds(_LEAST, hinges.from_edge):
            continue
        if hinges.written.heading in told:
            continue
        told.add(hinges.written.heading)
        yield Problem(
            code="cup_at_the_edge",
            level="stop",
            message=f"A cup that begins {job.fine(hinges.from_edge)} in leaves too little wood "
            f"beside it at the leaf's edge; at least {job.fine(_LEAST)} is needed.",
            where=hinges.written.line("cup from edge"),
            about=hinges.from_edge.name or "",
            found=job.fine(hinges.from_edge),
            allowed=f"{job.fine(_LEAST)} or more",
            fix="Bore the cup farther in, as the hinge's data sheet says.",
        )
