"""Leaves that pass one another leave a gap that a finger goes into.

Why: a moving leaf shears past a still one.
Example: 12 between two leaves on tracks 52 apart, 40 thick.
Source: common practice, no source; CEN/TR 13387 treats gaps of 5 to 12 as finger traps.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def fingers_between_leaves(job: Checked) -> Iterator[Problem]:
    """Caution, always; stop when the leaves or their pulls would touch."""
    gap, track = job.door.hanging.passing_gap, job.door.track
    if gap is None or track is None:
        return
    room = gap - job.shop.limits.passing
    if float(gap) <= 0:
        yield Problem(
            code="leaves_touch",
            level="stop",
            message=f"The leaves cannot pass: {job.size(gap)} between them.",
            where=track.written.line("spacing"),
            about=gap.name or "",
            found=job.size(gap),
            allowed=f"{job.size(job.shop.limits.passing)} or more",
            fix="Set the tracks farther apart or make the leaves thinner.",
        )
        return
    yield Problem(
        code="fingers_between_leaves",
        level="caution",
        message=f"{job.size(gap)} between the passing leaves: fingers can be caught. Nothing may "
        f"stand out more than {job.size(room)}.",
        where=track.written.line("spacing"),
        about="fingers between leaves",
        found=job.size(gap),
        allowed="no finger trap",
        fix="Tell the client, above all where there are children.",
    )
    for hung in (hung for leaf in job.leaves for hung in leaf.pulls):
        out = hung.pull.stands_out
        if exceeds(out, room):
            yield Problem(
                code="pull_hits_leaf",
                level="stop",
                message=f"The pull stands {job.fine(out)} out of the face; the leaves pass with "
                f"{job.size(gap)} between them, so it may stand out {job.size(room)} at most.",
                where=origin_line(out),
                about=out.name or "",
                found=job.fine(out),
                allowed=f"{job.size(room)} or less",
                fix="Choose a flush pull, or set the tracks farther apart.",
            )
