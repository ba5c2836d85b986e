"""A leaf is more than one person should carry.

Why: backs and toes. Example: 23.7 kg without its glass, 35.8 kg with it.
Source: common practice, no source; the limit is the house's `one person`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds, whole_up
from parametric.problems import Problem
from parametric.rules.checked import Checked
from parametric.trade.printed import weight, weight_limit


def heavy_leaf(job: Checked) -> Iterator[Problem]:
    """A note for the delivery and the hanging."""
    limit = job.shop.limits.one_person
    heavy = [
        (leaf, load)
        for leaf, load in zip(job.leaves, job.loads, strict=True)
        if exceeds(load.governing, limit)
    ]
    unit = job.design.unit
    alike = len({weight(load.governing, unit) for load in job.loads}) == 1
    for leaf, load in heavy[:1] if alike else heavy:
        who = (
            f"L{leaf.name[1:]}" if not alike else "Each leaf" if len(job.loads) > 1 else "The leaf"
        )
        stopped = any(pane.stops is not None for lite in leaf.lites for pane in lite.panes)
        glass = (
            f" Carried in before glazing it weighs {weight(load.bare, unit)}." if stopped else ""
        )
        yield Problem(
            code="heavy_leaf",
            level="note",
            message=f"{who} weighs {weight(load.governing, unit)}: {_people(load.governing, limit)} "
            f"to lift and hang it.{glass}",
            where=leaf.written.here,
            about=load.governing.name or "",
            found=weight(load.governing, unit),
            allowed=f"{weight_limit(limit, unit)} for one person",
        )


def _people(mass: Figure, limit: Figure) -> str:
    count = int(whole_up(mass / limit))
    return "two people" if count == 2 else f"{count} people"
