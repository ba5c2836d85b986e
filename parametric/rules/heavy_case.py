"""A case is more than one person should carry.

Why: backs, toes and door frames. Example: 64 kg without its shelves: three people; its doors, 7.9 kg,
are carried by one.
Source: common practice, no source; the limit is the house's `one person`.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun, together
from parametric.trade.printed import weight, weight_limit


def heavy_case(cases: CheckedCases) -> Iterator[Problem]:
    """A note for the delivery, once for cases that weigh alike."""
    limit, unit = cases.job.shop.limits.one_person, cases.job.design.unit
    alike: dict[tuple[str, str, int], list[int]] = {}
    for index, load in enumerate(cases.loads):
        if exceeds(load.carried, limit):
            front = weight(load.fronts[0], unit) if load.fronts else ""
            key = (weight(load.carried, unit), front, int(load.people))
            alike.setdefault(key, []).append(index)
    for (carried, front, people), found in alike.items():
        loads = [cases.loads[index] for index in found]
        who = "two people carry it" if people == 2 else f"{people} people carry it"
        fronts = ""
        if front:
            one = not exceeds(loads[0].fronts[0], limit)
            fronts = f" Its heaviest door or drawer is {front}, {'for one person' if one else 'for two'}."
        each = "Each of " if len(loads) > 1 else ""
        names = together([load.standing.name for load in loads])
        yield Problem(
            code="heavy_case",
            level="note",
            message=f"{each}{names if each else begun(names)} weighs {carried} without fronts and "
            f"loose shelves: {who}.{fronts}",
            where=loads[0].standing.case.spec.here,
            about=loads[0].carried.name or "",
            found=carried,
            allowed=f"{weight_limit(limit, unit)} for one person",
        )
