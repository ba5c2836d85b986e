"""Hinge screws so near the leaf's far face, or so long, that they split it or come through.

Why: wood splits along the grain from a screw close to its edge, and the hinge then hangs loose.
Example: screws of 4.5 whose far row stands 10 from the face: 3 x 4.5 = 13.5 is the least.
Source: EN 1995-1-1, table 8.2, spacing from an unloaded edge with bored holes: 3 times the
screw's thickness; from memory.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.hardware.butt_hinge import ButtHinges
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.rules.stile_wood import stile_width

_TIMES = 3
"""The least distance, in thicknesses of the screw."""


def screws_near_edge(job: Checked) -> Iterator[Problem]:
    """Caution beside the far face, stop through the stile; once for the hinges of a block."""
    told: set[str] = set()
    for leaf in job.leaves:
        for hung in leaf.hinges:
            hinges = hung.hinges
            if hung.side == "top" or hung.side == "bottom":
                continue
            if not isinstance(hinges, ButtHinges) or hinges.screw is None:
                continue
            screw, written = hinges.screw, hinges.written
            least = screw.thick * _TIMES
            far = screw.from_far_face
            if far is not None and exceeds(least, far) and "near" not in told:
                told.add("near")
                yield Problem(
                    code="screws_near_edge",
                    level="caution",
                    message=f"The far row of hinge screws stands {job.fine(far)} "
                    f"from the leaf's far face; {_TIMES} times their thickness is "
                    f"{job.fine(least)}: bore for them, or the edge splits.",
                    where=written.line("screw from edge"),
                    about="screws near the edge",
                    found=job.fine(far),
                    allowed=f"{job.fine(least)} or more",
                    fix="Take thinner screws, a narrower flap or a thicker leaf.",
                )
            stile = stile_width(leaf, hung.side)
            if exceeds(screw.long, stile - job.shop.limits.pocket_wall) and "long" not in told:
                told.add("long")
                yield Problem(
                    code="hinge_screws_come_through",
                    level="stop",
                    message=f"Hinge screws {job.fine(screw.long)} long leave "
                    f"{job.fine(stile - screw.long)} of a stile {job.size(stile)} wide.",
                    where=written.line("screw"),
                    about=screw.long.name or "",
                    found=job.fine(screw.long),
                    allowed=f"{job.fine(stile - job.shop.limits.pocket_wall)} or less",
                    fix="Take shorter screws.",
                )
