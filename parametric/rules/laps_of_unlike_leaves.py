"""Two leaves that lap one another and are not of one thickness.

Why: each is stepped by half its own thickness; a thick leaf's step and a thin leaf's lip meet, or
stand apart, by half of what they differ.
Example: a lip of 21.25 on a leaf of 44 before a step 20.75 deep in a leaf of 40 rubs by 0.5.
Source: arithmetic.
"""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from parametric.problems import Problem
from parametric.rules.checked import Checked


def laps_of_unlike_leaves(job: Checked) -> Iterator[Problem]:
    """Stop, for each two neighbours that are stepped."""
    for one, other in pairwise(job.leaves):
        if not one.hung.rebates or not other.hung.rebates:
            continue
        thick, thin = one.thickness, other.thickness
        if abs(float(thick) - float(thin)) <= 1e-6:
            continue
        yield Problem(
            code="laps_of_unlike_leaves",
            level="stop",
            message=f"{one.name[0].upper()}{one.name[1:]} is {job.size(thick)} thick and "
            f"{other.name} {job.size(thin)}: leaves that lap one another are of one thickness.",
            where=other.written.line("thickness"),
            about=other.thickness.name or "",
            found=f"{job.size(thick)} and {job.size(thin)}",
            allowed="one thickness",
            fix="Write one thickness in both leaves.",
        )
