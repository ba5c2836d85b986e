"""Leaves that slide past one another, or shut on one another, catch a finger.

Why: a moving leaf shears past a still one, or closes on it; a pocket draws a hand in.
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
    if track is None:
        return
    if gap is None:
        yield from _where_they_shut(job)
        return
    room = gap - job.shop.limits.passing
    # Over the wall the track's data sheet sets the leaves apart, in the opening the design.
    where = (
        track.written.line("spacing")
        if job.door.hanging.on_wall
        else job.door.written.line("between leaves")
    )
    if float(gap) <= 0:
        yield Problem(
            code="leaves_touch",
            level="stop",
            message=f"The leaves cannot pass: {job.size(gap)} between them.",
            where=where,
            about=gap.name or "",
            found=job.size(gap),
            allowed=f"{job.size(job.shop.limits.passing)} or more",
            fix="Set the tracks farther apart or make the leaves thinner."
            if job.door.hanging.on_wall
            else "Make `between leaves` more.",
        )
        return
    yield Problem(
        code="fingers_between_leaves",
        level="caution",
        message=f"{job.size(gap)} between the passing leaves: fingers can be caught. Nothing may "
        f"stand out more than {job.size(room)}.",
        where=where,
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


def _where_they_shut(job: Checked) -> Iterator[Problem]:
    """Sliding leaves that do not pass: they meet one another, or go into the wall."""
    hanging = job.door.hanging
    if hanging.swings:
        return
    if hanging.pocket is not None:
        said = "A leaf that slides into its pocket draws in the hand that pushes it flat."
    elif hanging.meeting_gap is not None:
        said = "The leaves slide shut edge to edge: fingers can be caught where they meet."
    else:
        return
    yield Problem(
        code="fingers_where_leaves_shut",
        level="caution",
        message=said,
        where=job.door.written.here,
        about="fingers where leaves shut",
        found="finger trap",
        allowed="no finger trap",
        fix="Tell the client, above all where there are children; stops can keep the last of the "
        "travel.",
    )
