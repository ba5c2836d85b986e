"""A leaf that turns shuts on fingers: at its hinges, and between leaves that fold together.

Why: beside the hinges the gap on the far face opens wide and closes with the leaf's whole
leverage.
Example: any hinged leaf; opened by 90 deg a leaf 45 thick stands 45 and more off its jamb there.
Source: common practice, no source; CEN/TR 13387 treats gaps of 5 to 12 as finger traps.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Where
from parametric.problems import Problem
from parametric.resolve.leaf import Leaf
from parametric.rules.checked import Checked


def fingers_at_hinges(job: Checked) -> Iterator[Problem]:
    """Caution, always, where a leaf turns."""
    turning = [leaf for leaf in job.door.leaves if leaf.hung.turns]
    if not turning:
        return
    folds = any("fold" in (leaf.hung.left_edge, leaf.hung.right_edge) for leaf in turning)
    where = "at the hinge edge of every leaf"
    if folds:
        where += " and between the leaves that fold together"
    yield Problem(
        code="fingers_at_hinges",
        level="caution",
        message=f"Fingers can be caught {where}: the gap opens with the leaf and shuts with all "
        "its force.",
        where=_line(job, turning[0]),
        about="fingers at the hinges",
        found="finger trap",
        allowed="no finger trap",
        fix="Tell the client, above all where there are children; strips that cover the gap can "
        "be bought.",
    )


def _line(job: Checked, leaf: Leaf) -> Where:
    """Of the door; of the hinges, which cabinets share, so that it is said of all of them once."""
    if job.door.case and leaf.hinges:
        return leaf.hinges[0].hinges.written.here
    return job.door.written.here
