"""The leaf is too heavy for its hangers, or nobody wrote what they carry.

Why: a leaf that falls off its track hurts someone.
Example: 35.9 kg on two hangers is 18 kg each.
Source: statics; ratings are the supplier's.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.printed import weight, weight_limit


def hanger_overloaded(job: Checked) -> Iterator[Problem]:
    """Stop over the rating, caution without one; the larger of the two weights counts."""
    shares = [load.per_hanger for load in job.loads if load.per_hanger is not None]
    if job.door.track is None or not shares:
        return
    worst, carries = max(shares, key=float), job.door.track.carries
    track, unit = job.door.track.written, job.design.unit
    if carries is None:
        yield Problem(
            code="hanger_rating_unknown",
            level="caution",
            message=f"Each hanger carries {weight(worst, unit)}; what the track's maker "
            "rates it for is not written.",
            where=track.here,
            about="hanger rating unknown",
            found="not known",
            allowed=f"{weight(worst, unit)} or more a hanger",
            fix="Read it off the track's data sheet and write "
            f"`carries: ... {'kg' if unit == 'mm' else 'lb'}` under `track`.",
        )
    elif exceeds(worst, carries):
        yield Problem(
            code="hanger_overloaded",
            level="stop",
            message=f"Each hanger would carry {weight(worst, unit)} and is rated for "
            f"{weight_limit(carries, unit)}.",
            where=track.line("carries"),
            about=worst.name or "",
            found=weight(worst, unit),
            allowed=weight_limit(carries, unit),
            fix="Choose a heavier track, more hangers, or a lighter leaf.",
        )
