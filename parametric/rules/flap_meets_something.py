"""A flap hits what stands over it, under it or beside it before it is open.

Why: it is found out when the flap first opens, and then an edge is dented, or a strut bent.
Example: a flap that opens by 110 deg with 40 between its hinge line and the ceiling: 340 high, its
edge rises by 340 x sin(20) = 116.
Source: geometry, the flap's outline at 30 places of its way.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun
from parametric.trade.flap_ways import flap_meets


def flap_meets_something(cases: CheckedCases) -> Iterator[Problem]:
    """A stop where it hits what is still, a caution where two fronts cannot both be open."""
    resolved = cases.job.resolved
    for met in flap_meets(cases.casework, resolved.doors, cases.job.assembly):
        flap = met.leaf.hung.flap
        assert flap is not None, "only flaps are looked at"
        opens = float(flap.angle)
        at = opens * met.part
        spec = met.door.written
        if met.open:
            yield Problem(
                code="flap_and_front_meet",
                level="caution",
                message=f"{begun(met.leaf.name)} and {met.what} meet when both are open.",
                where=spec.here,
                about=met.leaf.name,
                found=f"meets {met.what} at {at:.0f} deg",
                allowed="clear of one another",
                fix="Tell the client to open one at a time, or let the flap open less far.",
            )
            continue
        yield Problem(
            code="flap_meets_something",
            level="stop",
            message=f"{begun(met.leaf.name)} hits {met.what} when it has opened {at:.0f} deg of "
            f"{opens:g}.",
            where=spec.here,
            about=met.leaf.name,
            found=f"{at:.0f} deg",
            allowed=f"{opens:g} deg",
            fix="Let its stay hold it less far open, hang it by its other edge, or move what it "
            "hits.",
        )
