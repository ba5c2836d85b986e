"""A lid comes down by itself, on a hand or a head.

Why: it is held by whoever looks for something under it, with the other hand inside. Example: a seat's
lid of 1200 x 500 x 25 weighs some 10 kg, and half of that is on the fingers at its front edge.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.names import join
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.printed import weight


def lid_falls(cases: CheckedCases) -> Iterator[Problem]:
    """Caution, always, where a case has a lid; those of one weight are told once."""
    groups = {group.name: group for group in cases.job.assembly.groups}
    told: set[str] = set()
    for standing in cases.casework.cases:
        group = groups.get(join(standing.name, "lid"))
        if group is None:
            continue
        heavy = weight(sum(part.mass for part in group.parts), cases.job.design.unit)
        if heavy in told:
            continue
        told.add(heavy)
        yield Problem(
            code="lid_falls",
            level="caution",
            message=f"The lid of {standing.name} weighs {heavy} and falls shut when it is let go, on "
            "a hand or a head; fingers can be caught along its edges.",
            where=standing.case.spec.line("lid"),
            about=join(standing.name, "lid"),
            found="falling lid, finger trap",
            allowed="held whenever it moves",
            fix="Give it stays that hold it where it is let go, and a finger's room at its front "
            "edge; tell the client, above all where there are children.",
        )
