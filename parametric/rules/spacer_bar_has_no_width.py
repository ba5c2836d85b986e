"""A bar over an insulated unit is too narrow to hide the bar between its panes.

Why: the spacer bar is seen aslant beside the one that is planted over it.
Example: a bar of 4 leaves 4 - 2 x 2 = 0 for the spacer bar; one of 12 leaves 8.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def spacer_bar_has_no_width(job: Checked) -> Iterator[Problem]:
    """Stop, where there is nothing left for it."""
    for leaf in job.leaves:
        for lite in leaf.lites:
            grid = lite.pane.grid
            if grid is None or lite.section is None or float(grid.most) > 0:
                continue
            yield Problem(
                code="spacer_bar_has_no_width",
                level="stop",
                message=f"A bar {job.size(lite.section.face)} wide hides no spacer bar: "
                f"{job.fine(grid.most)} would be left for it.",
                where=origin_line(lite.section.face),
                about=grid.most.name or "",
                found=job.fine(grid.most),
                allowed="more than 0",
                fix="Make the bars wider (`muntin`), or write `bars: applied`.",
            )
