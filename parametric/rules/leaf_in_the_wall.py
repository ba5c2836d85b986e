"""A leaf over the face of a wall that would stand in it.

Three tracks 52 apart, the outermost 86 off the wall, put the innermost 18 behind its face.

Source: arithmetic; a leaf that touches plaster scrapes it (common practice, no source).
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked


def leaf_in_the_wall(job: Checked) -> Iterator[Problem]:
    """The air behind the leaf nearest the wall."""
    hanging, track = job.door.hanging, job.door.track
    if not hanging.on_wall or hanging.wall_gap is None or track is None:
        return
    if exceeds(hanging.wall_gap, 0.0):
        return
    yield Problem(
        code="leaf_in_the_wall",
        level="stop",
        message=f"The leaf nearest the wall would stand {job.size(-hanging.wall_gap)} in it.",
        where=track.written.line("off wall"),
        about=hanging.wall_gap.name or "",
        found=job.size(hanging.wall_gap),
        allowed="more than 0",
        fix="Hang the tracks farther off the wall, or nearer one another.",
    )
