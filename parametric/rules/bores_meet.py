"""What is bored into a board of a case from one face meets what is cut into it from another.

Why: a dowel's hole in the end of a partition runs into the screw of a hinge plate on its face, or a
plate's screw comes out in the dado on the other side: neither holds, and the glue runs out.
Example: a dowel goes 20 into the end of a partition; a plate's screw of 5 stands 19 from that end and
37 from the front, the dowel 34.5: they run into one another.
Source: what is left is arithmetic; how much is wanted is `behind` of the boring, common practice.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from parametric.cases.boring import BoringSpec
from parametric.model import Part
from parametric.problems import Problem
from parametric.resolve.casework import StandingCase
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.wood_left import TooNear, too_near


def bores_meet(cases: CheckedCases) -> Iterator[Problem]:
    """A stop for every two kinds of cut of one block's cases that leave too little between them."""
    groups = {group.name: group.parts for group in cases.job.assembly.groups}
    seen: set[str] = set()
    told: set[tuple[str, ...]] = set()
    for bored in cases.casework.bored:
        standing = cases.casework.case(bored.name)
        for part, near in _near(groups[bored.name], bored.spec, seen):
            kinds = (standing.case.spec.heading, part.noun, near.one.name, near.other.name)
            if kinds not in told:
                told.add(kinds)
                yield _problem(cases, standing, bored.spec, part, near)


def _near(
    parts: Sequence[Part], spec: BoringSpec, seen: set[str]
) -> Iterator[tuple[Part, TooNear]]:
    """Of boards that are alike the first is looked at."""
    for part in parts:
        if part.mark not in seen:
            seen.add(part.mark)
            for near in too_near(part, spec.behind):
                yield part, near


def _problem(
    cases: CheckedCases, standing: StandingCase, spec: BoringSpec, part: Part, near: TooNear
) -> Problem:
    said = cases.job.fine
    meets = near.left <= 0.0
    one, other = (
        f"its {own.name} in the {part.faces.get(own.face, own.face)}"
        for own in (near.one, near.other)
    )
    left = "run into" if meets else f"leave {said(near.left)} of wood before"
    return Problem(
        code="bores_meet",
        level="stop",
        message=f"{part.name[:1].upper()}{part.name[1:]}: {one} {left} {other}.",
        where=standing.case.spec.here,
        about=part.name,
        found=said(near.left),
        allowed=f"at least {said(spec.behind)} of wood",
        fix="Move the hinge, the shelf or the front that one of them is for; or write another "
        "`dowel from edge` or `dowel pitch` under `boring`.",
    )
