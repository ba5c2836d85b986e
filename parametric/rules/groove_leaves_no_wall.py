"""A panel groove leaves too thin a wall beside it.

Why: the wall breaks off when the panel is pressed in or knocked.
Example: a groove 14 wide in an 18 frame leaves 2 each side.
Source: common practice, no source; the least is the house's `groove wall`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked, with_article


def groove_leaves_no_wall(job: Checked) -> Iterator[Problem]:
    """Stop below the least wall."""
    least = job.shop.limits.groove_wall
    for leaf, field in job.panels:
        width = field.panel.groove_width
        wall = (leaf.thickness - width) / 2
        if exceeds(least, wall):
            yield Problem(
                code="groove_leaves_no_wall",
                level="stop",
                message=f"The groove is {job.fine(width)} wide in "
                f"{with_article(job.fine(leaf.thickness))} frame and leaves {job.fine(wall)} "
                f"each side; at least {job.fine(least)} is needed.",
                where=origin_line(width),
                about=width.name or "",
                found=job.fine(wall),
                allowed=f"{job.fine(least)} or more",
                fix="Make the groove narrower or the frame thicker.",
            )
