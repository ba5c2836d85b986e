"""The panel's field stands out beyond the frame's face, on leaves that pass one another.

Why: what stands proud eats the gap between passing leaves.
Example: frame 40, tongue 8, back rebate 5, panel 28: 1 below the face.
Source: geometry of the section.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def field_stands_proud(job: Checked) -> Iterator[Problem]:
    """Stop: doors that pass one another must be flush or below."""
    if job.door.hanging.passing_gap is None:
        return
    for _, field in job.panels:
        panel, below = field.panel, field.panel.field_below_face
        if float(below) >= 0:
            continue
        yield Problem(
            code="field_stands_proud",
            level="stop",
            message=f"The panel's {'field' if panel.tongue else 'face'} stands {job.fine(-below)} out of the frame's face, and the "
            "leaves pass one another.",
            where=origin_line(panel.thickness),
            about=below.name or "",
            found=job.fine(-below),
            allowed="0 or below the face",
            fix=f"Cut a back rebate {job.fine(panel.tongue.back - below)} deep, or make the "
            "panel thinner."
            if panel.tongue
            else "Make the panel thinner.",
        )
