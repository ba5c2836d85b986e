"""The raised panel's sizes contradict one another: the saw would cut away what must stay.

Why: the tongue is cut from under the bevel, and the field is what the bevel leaves.
Example: edge 15, tongue 8 with 5 rebated behind it: 2 of bevel stands over the tongue.
Source: geometry of the section.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def panel_cannot_be_cut(job: Checked) -> Iterator[Problem]:
    """Stops: tongue outside the edge, bevel past the middle, tongue longer than the bevel."""
    for _, field in job.panels:
        panel = field.panel
        needs = panel.tongue_thickness + panel.back_rebate
        faults = (
            (
                exceeds(needs, panel.edge_thickness),
                f"tongue and back rebate need {job.fine(needs)} and the edge is "
                f"{job.fine(panel.edge_thickness)} thick",
                panel.edge_thickness,
                f"{job.fine(needs)} or more",
            ),
            (
                not exceeds(panel.foot_thickness, panel.edge_thickness),
                f"the edge is {job.fine(panel.edge_thickness)} thick and the fillet's foot "
                f"{job.fine(panel.foot_thickness)}: there is no bevel",
                panel.edge_thickness,
                f"less than {job.fine(panel.foot_thickness)}",
            ),
            (
                not exceeds(panel.bevel_run, panel.tongue_length),
                f"the tongue is {job.fine(panel.tongue_length)} long and the bevel only "
                f"{job.fine(panel.bevel_run)}",
                panel.tongue_length,
                f"less than {job.fine(panel.bevel_run)}",
            ),
            (
                not exceeds(min(panel.width, panel.height), 2 * panel.bevel_run),
                f"two bevels of {job.size(panel.bevel_run)} leave no field on a panel "
                f"{job.size(min(panel.width, panel.height))} across",
                panel.bevel_run,
                f"less than {job.size(min(panel.width, panel.height) / 2)}",
            ),
        )
        for wrong, why, blame, allowed in faults:
            if wrong:
                yield Problem(
                    code="panel_cannot_be_cut",
                    level="stop",
                    message=f"The panel cannot be cut: {why}.",
                    where=origin_line(blame),
                    about=blame.name or "",
                    found=job.fine(blame),
                    allowed=allowed,
                    fix="Change one of the two.",
                )
