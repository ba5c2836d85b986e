"""The raised panel's bevel is wider than the tilted blade can cut, or nearly so.

Why: a blade stands lower when it is tilted; one that only just reaches leaves a ridge.
Example: a blade of 79 upright reaches 78.1 at 8.7 degrees; a bevel of 75 leaves 3.1.
Source: trigonometry; the 5 % is the house's `reach spare`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.infill.raised_panel import RaisedPanel
from parametric.problems import Problem
from parametric.rules.checked import Checked


def blade_will_not_reach(job: Checked) -> Iterator[Problem]:
    """Stop when the blade is too low, caution when it reaches by less than the spare."""
    spare = float(job.shop.limits.reach_spare) / 100
    for _, field in job.panels:
        panel = field.panel
        if not isinstance(panel, RaisedPanel):
            continue
        run, reach = panel.bevel_run, panel.blade_reach
        if not exceeds(run * (1 + spare), reach):
            continue
        short = exceeds(run, reach)
        yield Problem(
            code="blade_will_not_reach",
            level="stop" if short else "caution",
            message=f"The bevel needs a blade height of {job.fine(run)} at {float(panel.tilt):.1f} "
            f"deg; tilted so far, your saw reaches {job.fine(reach)}"
            + (
                ": it does not get there."
                if short
                else f", {job.fine(reach - run)} more than it must: set it on a test piece."
            ),
            where=origin_line(run),
            about="blade reach",
            found=job.fine(reach),
            allowed=f"{job.fine(run * (1 + spare))} or more for a comfortable cut",
            fix="Make the bevel run shorter, or cut it on a saw with a larger blade.",
        )
