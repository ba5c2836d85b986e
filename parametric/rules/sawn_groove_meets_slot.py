"""A groove stopped on the saw runs on past its stop and cuts into a tenon slot.

Why: the blade is round; where it is stopped it leaves a ramp half a chord long, hidden by
the rail but not by the slot behind it.
Example: a 203 dado set, 14 deep, ramps 51.4: from a stop at 226 down to 174.6, through a
slot at 158 to 220.
Source: geometry of the circle.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds, origin_line
from parametric.problems import Problem
from parametric.rules.checked import Checked


def sawn_groove_meets_slot(job: Checked) -> Iterator[Problem]:
    """Stop when the design saws the groove; a note when it is routed, so that nobody saws it."""
    yield from _too_deep_to_saw(job)
    for leaf, field in job.panels:
        low, high = field.ramp_low, field.ramp_high
        hit = sorted(
            (
                slot
                for rail in leaf.rails
                for slot in rail.slots
                if exceeds(high, slot.low) and exceeds(slot.high, low)
            ),
            key=lambda slot: slot.low,
        )
        if not hit:
            continue
        slots = " and ".join(f"{job.size(s.low)} to {job.size(s.high)}" for s in hit)
        sawn = field.panel.groove_by == "saw"
        yield Problem(
            code="sawn_groove_meets_slot",
            level="stop" if sawn else "note",
            message=f"{'Run' if sawn else 'Do not run this groove'} on the saw with the "
            f"{job.size(field.blade)} dado set{' the stile groove' if sawn else ': it'} would ramp "
            f"{job.fine(field.ramp)} past each stop, to {job.fine(low)} and {job.fine(high)}, "
            f"through the slot{'s' if len(hit) > 1 else ''} at {slots}.",
            where=origin_line(field.panel.groove_depth),
            about=field.ramp.name or "",
            found=f"{job.fine(low)} to {job.fine(high)}",
            allowed=f"{job.size(field.groove_low)} to {job.size(field.groove_high)}",
            fix="Rout the groove: `groove by: router`." if sawn else "",
        )


def _too_deep_to_saw(job: Checked) -> Iterator[Problem]:
    """A blade stands less than its radius out of the table."""
    for _, field in job.panels:
        deep, reach = field.panel.groove_depth, field.blade / 2
        if field.panel.groove_by == "saw" and deep >= reach:
            yield Problem(
                code="groove_too_deep_to_saw",
                level="stop",
                message=f"A groove {job.fine(deep)} deep cannot be sawn with a dado set of "
                f"{job.size(field.blade)}.",
                where=origin_line(deep),
                about=deep.name or "",
                found=job.fine(deep),
                allowed=f"less than {job.fine(reach)}",
                fix="Rout the groove: `groove by: router`.",
            )
