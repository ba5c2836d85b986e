"""A leaf is more than one person should carry.

Why: backs and toes. Example: 23.7 kg without its glass, 35.8 kg with it.
Source: common practice, no source; the limit is the house's `one person`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.printed import weight, weight_limit


def heavy_leaf(job: Checked) -> Iterator[Problem]:
    """A note for the delivery and the hanging."""
    limit = job.shop.limits.one_person
    worst = max(job.loads, key=lambda load: load.governing)
    if not exceeds(worst.governing, limit):
        return
    unit = job.design.unit
    glass = (
        f" Carried in before glazing it weighs {weight(worst.bare, unit)}."
        if job.leaf.lites
        else ""
    )
    yield Problem(
        code="heavy_leaf",
        level="note",
        message=f"Each leaf weighs {weight(worst.governing, unit)}: two people to lift and hang "
        f"it.{glass}",
        where=job.leaf.written.here,
        about=worst.governing.name or "",
        found=weight(worst.governing, unit),
        allowed=f"{weight_limit(limit, unit)} for one person",
    )
