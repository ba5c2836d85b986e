"""A door that leaves nothing to walk through, however it is opened.

Why: leaves that lap one another all the way, a leaf left out of its pocket as far as it is wide,
or folded leaves that stack to more than their opening are no door.
Example: a pair 1698 wide each that laps 1700 over 1696 can move nowhere.
Source: arithmetic.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.resolve.hung_sizes import chosen_cause
from parametric.rules.checked import Checked


def no_way_through(job: Checked) -> Iterator[Problem]:
    """Stop, with the largest number that was chosen of those it follows from."""
    way = job.door.hanging.clear_way
    if way is None or float(way) > 0:
        return
    cause = chosen_cause(way)
    said = "nothing" if float(way) == 0 else f"{job.size(way)}, less than nothing,"
    yield Problem(
        code="no_way_through",
        level="stop",
        message=f"Open as far as it goes, the door leaves {said} to walk through."
        + (
            ""
            if cause is None
            else f" The largest choice behind that: {cause.name} {job.size(cause)}."
        ),
        where=job.door.written.here if cause is None else cause.where,
        about=way.name or "",
        found=job.size(way),
        allowed="more than 0",
        fix="Make that less, or the opening wider.",
        no_size=True,
    )
