"""Panes that differ by a hair, which one order size may serve.

Why: a pane of one size fits every opening, one spare serves all, and none can be put into the
wrong place; a pane may be cut smaller by what its rebate or its stops still cover.
Example: panes 275 wide and panes 273: 273 for all of them, with 4 free beside the glass of the
wider openings in place of 3, and 8 covered in place of 9.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.glass_facts import ENOUGH_BITE
from parametric.problems import Problem
from parametric.resolve.one_size import OneSize, near_equal
from parametric.rules.checked import Checked


def near_equal_panes(job: Checked) -> Iterator[Problem]:
    """A note for every lot; how it is accepted, or why it is not offered."""
    for lot in near_equal(job.leaves):
        glass = lot.panes[0].written
        sizes = _counted(job, lot)
        many = f"{len(lot.panes)} panes of {len(sizes)} sizes ({', '.join(sizes)})"
        one = f"{job.fine(lot.width)} × {job.fine(lot.height)}"
        if lot.holds:
            message = (
                f"{many} differ by no more than {job.fine(lot.apart)}: {one} would serve them all, "
                f"with up to {job.fine(lot.clearance)} free at an edge and at least "
                f"{job.fine(lot.bite)} covered."
            )
            fix = "Write `ordered: one size` in the glass to have them so."
        else:
            message = (
                f"{many} differ by no more than {job.fine(lot.apart)}, but in one size only "
                f"{job.fine(lot.bite)} of some would be covered: they stay as they are."
            )
            fix = "Reach farther into the frame for one size to hold."
        yield Problem(
            code="near_equal_panes",
            level="note",
            message=message,
            where=glass.line("ordered"),
            about=lot.width.name or "",
            found=", ".join(sizes),
            allowed=f"at least {job.fine(ENOUGH_BITE)} covered",
            fix=fix,
        )


def _counted(job: Checked, lot: OneSize) -> list[str]:
    """`4 of 275 × 553.3`, the largest first."""
    counts: dict[str, int] = {}
    for pane in lot.panes:
        size = f"{job.fine(pane.width)} × {job.fine(pane.height)}"
        counts[size] = counts.get(size, 0) + 1
    return [f"{number} of {size}" for size, number in counts.items()]
