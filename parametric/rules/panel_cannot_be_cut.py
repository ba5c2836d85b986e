"""A panel's sizes contradict one another: the saw would cut away what must stay.

Why: the tongue is cut from under the bevel, and the field is what the bevel leaves.
Example: edge 15, tongue 8 with 5 rebated behind it: 2 of bevel stands over the tongue. A flat
panel 18 thick leaves a tongue of 9 with 5 behind it, and 4 in front.
Source: geometry of the section.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import assert_never

from parametric.figures import Figure, exceeds, origin_line
from parametric.infill.board_panel import BoardPanel
from parametric.infill.flat_panel import FlatPanel
from parametric.infill.raised_panel import RaisedPanel
from parametric.problems import Problem
from parametric.rules.checked import Checked

_Fault = tuple[bool, str, Figure, str]
"""Whether it is so, why that cannot be cut, what is to blame, what would do."""


def panel_cannot_be_cut(job: Checked) -> Iterator[Problem]:
    """Stops: tongue outside the edge, bevel past the middle, tongue longer than the bevel."""
    for _, field in job.panels:
        panel = field.panel
        match panel:
            case RaisedPanel():
                faults = _raised(job, panel)
            case FlatPanel():
                faults = _flat(job, panel)
            case BoardPanel():
                faults = ()
            case _:
                assert_never(panel)
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


def _raised(job: Checked, panel: RaisedPanel) -> tuple[_Fault, ...]:
    needs = panel.tongue_thickness + panel.back_rebate
    return (
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


def _flat(job: Checked, panel: FlatPanel) -> tuple[_Fault, ...]:
    tongue = panel.tongue
    if tongue is None:
        return ()
    needs, least = tongue.thickness + tongue.back, min(panel.width, panel.height)
    return (
        (
            exceeds(needs, panel.thickness),
            f"tongue and back rebate need {job.fine(needs)} and the panel is "
            f"{job.fine(panel.thickness)} thick",
            panel.thickness,
            f"{job.fine(needs)} or more",
        ),
        (
            not exceeds(panel.thickness, tongue.thickness),
            f"the tongue is as thick as the panel, {job.fine(panel.thickness)}: leave `tongue` out",
            tongue.thickness,
            f"less than {job.fine(panel.thickness)}",
        ),
        (
            not exceeds(least, 2 * tongue.length),
            f"two tongues of {job.size(tongue.length)} leave no field on a panel "
            f"{job.size(least)} across",
            tongue.length,
            f"less than {job.size(least / 2)}",
        ),
    )
