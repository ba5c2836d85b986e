"""A pane that is no rectangle cannot be ordered by two numbers.

Why: the glazier cuts to a pattern; toughened glass cannot be trimmed when it comes back wrong.
Example: a pane under an arch, 10-17/32 wide, 15-3/16 high at one edge and 19-1/4 at the other.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked import Checked


def shaped_pane_needs_template(job: Checked) -> Iterator[Problem]:
    """A note, once for the job."""
    shaped = [
        pane
        for leaf in job.door.leaves
        for lite in leaf.lites
        for pane in lite.panes
        if pane.outline is not None
    ]
    if not shaped:
        return
    many = len(shaped) > 1
    said = (
        f"{len(shaped)} panes are no rectangles: they go to the glazier as full-size templates"
        if many
        else "One pane is no rectangle: it goes to the glazier as a full-size template"
    )
    yield Problem(
        code="shaped_pane_needs_template",
        level="note",
        message=f"{said} and {'outlines' if many else 'an outline'} in DXF, not as two numbers.",
        where=shaped[0].written.here,
        about=shaped[0].name,
        found=f"{len(shaped)} shaped",
        allowed="a template for each",
    )
