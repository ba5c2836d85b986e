"""Bars planted on the glass stand out of the frame's face.

Why: a passing leaf hits them, and whatever is leant against the door rests on them.
Example: glass of 6 in the middle of a 40 frame has 17 before it: tape 1 and a bar of 16 fill
that, one of 16.5 stands 0.5 out.
Source: geometry of the section.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.resolve.bar_places import PlantedBar
from parametric.rules.checked import Checked


def bars_stand_proud(job: Checked) -> Iterator[Problem]:
    """Stop, for the face and for the back."""
    for leaf in job.leaves:
        for lite in leaf.lites:
            own = lite.section
            if not isinstance(own, PlantedBar):
                continue
            for side, below, thick in (
                ("face", own.below_face, own.front),
                ("back", own.below_back, own.back),
            ):
                if not exceeds(0.0, below):
                    continue
                yield Problem(
                    code="bars_stand_proud",
                    level="stop",
                    message=f"The bars on the {'glass' if side == 'face' else 'back of the glass'} "
                    f"stand {job.fine(-below)} out of the {side} of the "
                    f"{job.fine(leaf.thickness)} frame.",
                    where=origin_line(thick),
                    about=below.name or "",
                    found=job.fine(thick),
                    allowed=f"{job.fine(thick + below)} or less",
                    fix="Make the bars thinner (`bar thickness: front x back`) or the frame thicker.",
                )
