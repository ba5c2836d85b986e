"""A case without a filler or a scribed frame stands a little off a wall, and nothing closes the gap.

Why: whoever pays sees a slot as wide as a thumb that nobody spoke of, and dust. Example: shelves 46
wide between walls 47-1/2 apart: 3/4 at either side.
Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.bench import GAP_SEEN, STANDS_FREE
from parametric.figures import Figure, exceeds
from parametric.problems import Problem
from parametric.resolve.casework import StandingCase
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.along_wall import along_wall, tiers
from parametric.trade.case_names import begun, listed


def gap_beside_case(cases: CheckedCases) -> Iterator[Problem]:
    """A note for each case that stands in no run and has no face frame, with what would close it."""
    for case in cases.casework.cases:
        if case.run or case.case.frame is not None:
            continue
        gaps = {side: gap for side, gap in _beside(cases, case) if _wants_closing(gap)}
        if not gaps:
            continue
        sizes = [f"{cases.job.size(gap)} from the wall at its {side}" for side, gap in gaps.items()]
        yield Problem(
            code="gap_beside_case",
            level="note",
            message=f"{begun(case.name)} stands {listed(sizes)} where it is tightest, and nothing "
            "closes that. Scribe a strip to the wall against its side, or agree with the client to "
            "leave it as a shadow gap.",
            where=case.case.spec.here,
            about=f"{case.name} / beside it",
            found="an open gap at the wall",
            allowed="a scribed strip, or a gap that is agreed",
        )


def _beside(cases: CheckedCases, case: StandingCase) -> Iterator[tuple[str, Figure]]:
    """What is free between a case and the walls of its opening, where it stands next to them."""
    heading = case.survey.heading
    own = [one for one in cases.casework.cases if one.survey.heading == heading]
    tier = next(tier for tier in tiers(own) if any(one is case for one in tier))
    stretches = along_wall(case.opening, tier)
    for side, first, next_to in (("left", 0, 1), ("right", -1, -2)):
        at_the_wall = len(stretches) > 1 and stretches[first].cabinet is None
        if at_the_wall and stretches[next_to].cabinet is case:
            yield side, stretches[first].size


def _wants_closing(gap: Figure) -> bool:
    """More than it takes to get a case in, less than stands free."""
    return exceeds(gap, GAP_SEEN) and exceeds(STANDS_FREE, gap)
