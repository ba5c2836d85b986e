"""Dadoes are cut as wide as the yard says its board is thick, and nobody has measured it.

Why: a board that is thinner stands loose in its dado, one that is thicker does not go in.
Example: 3/4 in plywood of PS 1 may be 18.26 to 19.84 mm; its label may say 0.734 in.
Source: PS 1 and ANSI A208.2 for what is sold as a thickness.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.sheet_faults import sheet_faults
from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases


def board_not_measured(cases: CheckedCases) -> Iterator[Problem]:
    """A caution for every block of cases whose boards are let in; a note where it hardly matters."""
    told: set[str] = set()
    for standing in cases.casework.cases:
        own = standing.case
        if own.spec.heading not in told:
            told.add(own.spec.heading)
            yield from sheet_faults(
                standing.board,
                own.box.thickness,
                name=own.spec.heading,
                let_in=own.box.let_in > 0,
                said=cases.job.fine,
                here=own.spec.here,
            )
