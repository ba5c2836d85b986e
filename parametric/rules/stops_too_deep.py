"""Glass, tape and stops are together thicker than the frame, or hold the glass by too little.

Why: a stop that stands out of the face is hit by the passing leaf; a pane with no bite
falls out.
Example: 14.5 + 1.5 + 6 + 1.5 + 14.5 is 38 in a 40 frame: the stops lie 1 below each face.
Source: geometry of the section.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def stops_too_deep(job: Checked) -> Iterator[Problem]:
    """Stops, the first lite of a leaf speaking for those like it."""
    for leaf in (leaf for leaf in job.leaves if leaf.lites):
        pane = leaf.lites[0].pane
        stops = pane.stops
        if stops is None:
            continue
        if float(stops.below_face) < 0:
            yield Problem(
                code="stops_too_deep",
                level="stop",
                message=f"The stops stand {job.fine(-stops.below_face)} out of each face of "
                f"the {job.fine(leaf.thickness)} frame.",
                where=origin_line(stops.depth),
                about=stops.below_face.name or "",
                found=job.fine(stops.depth),
                allowed=f"{job.fine(stops.depth + stops.below_face)} or less",
                fix="Make the stops shallower, the tape or glass thinner, or the frame thicker.",
            )
        if float(pane.bite) <= 0:
            yield Problem(
                code="glass_has_no_bite",
                level="stop",
                message=f"The stops are {job.fine(stops.width)} wide and the glass clears the "
                f"opening by {job.fine(pane.clearance)}: nothing holds it.",
                where=origin_line(stops.width),
                about=pane.bite.name or "",
                found=job.fine(pane.bite),
                allowed="more than 0",
                fix="Make the stops wider or the clearance smaller.",
            )
