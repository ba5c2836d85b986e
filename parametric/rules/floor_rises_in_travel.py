"""The floor rises on the way of a leaf, so that it stands nearer there than under the shut door.

Why: a leaf that hangs clear when shut drags on a floor that rises where it opens.
Example: a gap of 1/2 over a floor that rises 3/16 in the swing is 5/16 at the worst point.
Source: arithmetic.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked


def floor_rises_in_travel(job: Checked) -> Iterator[Problem]:
    """Caution where it rises at all, stop where the leaf would drag."""
    hanging, rise = job.door.hanging, job.door.survey.floor_in_travel
    left = hanging.travel_gap
    if left is None or not isinstance(rise, Figure) or not exceeds(rise, 0.0):
        return
    way = "swing" if hanging.swings else "travel"
    drags = not exceeds(left, 0.0)
    yield Problem(
        code="floor_rises_in_travel",
        level="stop" if drags else "caution",
        message=f"The floor rises {job.size(rise)} in the {way} of the leaves, above that under "
        f"them shut: of the {job.size(hanging.floor_gap)} gap {_left(job, left)} at the worst "
        "point.",
        where=job.door.survey.line("floor in travel"),
        about="floor in the travel",
        found=_left(job, left),
        allowed="more than 0",
        fix=f"Make the floor gap more than {job.size(rise)}, or level the floor."
        if drags
        else "Say so to the client, and think of mats and carpets; a larger floor gap gives more.",
    )


def _left(job: Checked, left: Figure) -> str:
    if exceeds(left, 0.0):
        return f"{job.size(left)} is left"
    return "nothing is left" if float(left) > -1e-6 else f"{job.size(-left)} is missing"
