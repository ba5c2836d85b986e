"""A panel with its grain level in a tall opening moves up and down instead of across.

Why: it is accepted, but the movement then works against the rails, and most panels stand
upright.
Example: a panel 485 high with level grain moves along its height.
Source: Wood Handbook (FPL-GTR-190) eq. 13-2.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def panel_moves_upright(job: Checked) -> Iterator[Problem]:
    """A note with the movement both ways."""
    for _, field in job.panels:
        panel = field.panel
        if panel.grain != "level" or not panel.moves:
            continue
        rate = panel.movement / panel.across
        other = rate * panel.along
        yield Problem(
            code="panel_moves_upright",
            level="note",
            message=f"The panel's grain lies level, so it moves {job.fine(panel.movement)} up and "
            f"down over the year, in a height of {job.size(panel.across)}; upright it would move "
            f"{job.fine(other)} across.",
            where=origin_line(panel.groove_depth),
            about=panel.movement.name or "",
            found=job.fine(panel.movement),
            allowed=job.fine(other),
        )
