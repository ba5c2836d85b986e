"""Glass has less air at its edges than it and its opening may be out by.

Why: a pane that comes out at the top of its tolerance, in an opening that came out small, does
not go in, and toughened glass cannot be cut again.
Example: glass cut within 1.6 of its size, in an opening that marking and clamping leave within
0.3 each: (1.6 + 0.3 + 0.3) / 2 = 1.1 at each edge. A clearance of 1 is a caution.
Source: plus or minus 1/16 in on cut sizes, ASTM C1036, from memory; the opening by the shop's
own `accuracy`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.bench import GLASS_TOLERANCE
from parametric.figures import Figure, exceeds, named, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def glass_clearance_too_small(job: Checked) -> Iterator[Problem]:
    """Caution, once for each glass block."""
    accuracy = job.shop.accuracy
    opening = accuracy.marking + accuracy.clamping
    least = named("least glass clearance", (GLASS_TOLERANCE + opening) / 2)
    for clearance in _asked(job):
        if not exceeds(least, clearance):
            continue
        yield Problem(
            code="glass_clearance_too_small",
            level="caution",
            message=f"The glass is {job.fine(clearance)} clear at each edge. It may come out "
            f"{job.fine(GLASS_TOLERANCE)} too large, and its opening {job.fine(opening)} too small: "
            f"{job.fine(least)} at each edge is needed.",
            where=origin_line(clearance),
            about="glass clearance",
            found=job.fine(clearance),
            allowed=f"{job.fine(least)} or more",
            fix="Make the clearance larger; or order the glass when the openings are measured, to "
            "what was found.",
        )


def _asked(job: Checked) -> list[Figure]:
    """What each glass block asks for, the first pane speaking for those like it."""
    found: dict[object, Figure] = {}
    for leaf in job.leaves:
        for lite in leaf.lites:
            for pane in lite.panes:
                found.setdefault(pane.written.here, pane.clearance)
    return list(found.values())
