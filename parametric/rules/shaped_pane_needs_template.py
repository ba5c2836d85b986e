"""A pane that is no rectangle cannot be ordered by two numbers.

Why: the glazier cuts to a pattern; toughened glass cannot be trimmed when it comes back wrong.
Example: a pane under an arch, 10-17/32 wide, 15-3/16 high at one edge and 19-1/4 at the other.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.glass import TEMPLATES, glass_order


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
    files = [
        row.template.outline_file
        for row in glass_order(job.resolved, job.assembly)
        if row.template is not None
    ]
    told = files[0] if len(files) == 1 else f"{', '.join(files[:-1])} and {files[-1]}"
    many = len(shaped) > 1
    who = f"{len(shaped)} panes are no rectangles" if many else "One pane is no rectangle"
    how = "they go" if many else "it goes"
    yield Problem(
        code="shaped_pane_needs_template",
        level="note",
        message=(
            f"{who}: {how} to the glazier as {TEMPLATES}.pdf at full size and as {told} to cut "
            "from, not as two numbers."
        ),
        where=shaped[0].written.here,
        about=shaped[0].name,
        found=f"{len(shaped)} shaped",
        allowed="a template for each",
    )
