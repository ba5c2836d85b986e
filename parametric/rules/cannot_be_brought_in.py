"""A leaf does not go through the narrowest part of its way in.

Why: it is found out on the stairs, with the van outside.
Example: a leaf 2102 x 1024.5 x 40 does not stand in a lift 900 wide, 2000 high and 1100 long, nor
lean in it: the corner over its foot needs more.
Source: geometry: one side along the way's width or height, the others straight or aslant.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.tipping import passes


def cannot_be_brought_in(job: Checked) -> Iterator[Problem]:
    """Caution: walls and windows have been taken out before, but not unawares."""
    route = job.door.survey.route
    if route is None:
        return
    wide, high, long = route
    way = f"{job.size(wide)} wide, {job.size(high)} high and {job.size(long)} long"
    for leaf in job.leaves:
        if passes((leaf.width, leaf.height, leaf.thickness), (wide, high, long)):
            continue
        size = f"{job.size(leaf.width)} x {job.size(leaf.height)} x {job.size(leaf.thickness)}"
        yield Problem(
            code="cannot_be_brought_in",
            level="caution",
            message=f"L{leaf.name[1:]}, {size}, does not go in by a way {way}, however it is turned.",
            where=job.door.survey.line("route"),
            about=f"{leaf.name} cannot be brought in",
            found=size,
            allowed=way,
            fix="Measure the way again, or find another: a window, a stair, the other door.",
        )
