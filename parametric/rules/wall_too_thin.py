"""A leaf that slides into a wall no thicker than itself.

Why: a pocket has a skin of the wall on either side of the leaf, and air between.
Example: a leaf 40 thick in a wall of 40 leaves nothing on either side.
Source: arithmetic; how thick the frame of a pocket must be is its maker's to say.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked import Checked


def wall_too_thin(job: Checked) -> Iterator[Problem]:
    """Stop, where a pocket's wall leaves nothing beside the leaf; caution, where nobody measured it."""
    hanging, survey = job.door.hanging, job.door.survey
    if hanging.pocket is None:
        return
    thick = job.leaves[0].thickness
    if hanging.wall_gap is None:
        yield Problem(
            code="wall_too_thin",
            level="caution",
            message="The wall was not measured: whether it is thick enough for a leaf of "
            f"{job.size(thick)} and the frame of a pocket is not known.",
            where=survey.line("wall"),
            about="wall",
            found="not measured",
            allowed=f"more than {job.size(thick)}",
            fix="Measure the wall before anything is made.",
        )
        return
    if float(hanging.wall_gap) > 0:
        return
    wall = 2 * hanging.wall_gap + thick
    yield Problem(
        code="wall_too_thin",
        level="stop",
        message=f"The wall is {job.size(wall)} thick and the leaf {job.size(thick)}: it leaves "
        f"{job.size(hanging.wall_gap)} on either side, and no leaf slides into that.",
        where=survey.line("wall"),
        about=hanging.wall_gap.name or "",
        found=job.size(wall),
        allowed=f"more than {job.size(thick)}",
        fix="Measure the wall again, make the leaf thinner, or hang it on the wall.",
    )
