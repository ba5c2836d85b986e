"""A leaf is more than one person should carry.

Why: backs and toes. Example: 23.7 kg without its glass, 35.8 kg with it.
Source: common practice, no source; the limit is the house's `one person`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked


def heavy_leaf(job: Checked) -> Iterator[Problem]:
    """A note for the delivery and the hanging."""
    limit = job.shop.limits.one_person
    worst = max(job.loads, key=lambda load: load.governing)
    if not exceeds(worst.governing, limit):
        return
    glass = (
        f" Carried in before glazing it weighs {float(worst.bare):.1f} kg."
        if job.leaf.lites
        else ""
    )
    yield Problem(
        code="heavy_leaf",
        level="note",
        message=f"Each leaf weighs {float(worst.governing):.1f} kg: two people to lift and hang "
        f"it.{glass}",
        where=job.leaf.written.here,
        about=worst.governing.name or "",
        found=f"{float(worst.governing):.1f} kg",
        allowed=f"{float(limit):g} kg for one person",
    )
