"""A leaf on pivots whose heel binds: behind the pins its near corner comes round to the jamb.

Why: a butt hinge takes the whole edge away from the jamb; a pivot in the leaf's thickness turns
the wood behind it towards the jamb first.
Example: pins 38 in from the edge and 22 from the face need sqrt(38**2 + 22**2) - 38 = 5.9 of gap.
Source: Pythagoras, the circle of the corner about the pin.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hangings.closing_arc import heel_gap
from parametric.hardware.pivot import Pivots
from parametric.names import join
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.printed import printed


def heel_binds(job: Checked) -> Iterator[Problem]:
    """Stop where the gap on the hinge side is less than the heel needs; once for a door."""
    gap = job.door.hanging.hinge_gap
    said = printed(job.resolved)
    for leaf in job.leaves:
        for hung in leaf.hinges:
            hinges = hung.hinges
            if gap is None or not isinstance(hinges, Pivots):
                continue
            needs = heel_gap(
                from_edge=hinges.from_edge,
                from_face=hinges.from_face,
                name=join(hinges.name, "gap that the heel needs"),
            )
            if not exceeds(needs, gap):
                continue
            yield Problem(
                code="heel_binds",
                level="stop",
                message=f"The hinge gap is {said.gauge(gap)}, and behind pins "
                f"{job.fine(hinges.from_edge)} in from the edge and {job.fine(hinges.from_face)} "
                f"from the face the leaf needs {said.gauge(needs)} as it turns: its heel binds.",
                where=job.door.written.line("hinge gap"),
                about=needs.name or "",
                found=said.gauge(gap),
                allowed=f"{said.gauge(needs)} or more",
                fix="Make the hinge gap larger, or set the pins nearer the face it opens towards.",
            )
            return
