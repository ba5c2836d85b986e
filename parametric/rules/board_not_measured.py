"""Dadoes are cut as wide as the yard says its board is thick, and nobody has measured it.

Why: a board that is thinner stands loose in its dado, one that is thicker does not go in.
Example: 3/4 in plywood of PS 1 may be 18.26 to 19.84 mm; its label may say 0.734 in.
Source: PS 1 and ANSI A208.2 for what is sold as a thickness.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.sheet_faults import sheet_faults
from parametric.catalog.boards import Board
from parametric.problems import Problem
from parametric.resolve.casework import StandingCase
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun, together


def board_not_measured(cases: CheckedCases) -> Iterator[Problem]:
    """A caution, once a board, for the cases whose boards are let in; a note where it hardly matters."""
    alike: dict[tuple[Board, float, bool], list[StandingCase]] = {}
    for standing in cases.casework.cases:
        box = standing.case.box
        key = standing.board, float(box.thickness), box.let_in > 0
        alike.setdefault(key, []).append(standing)
    for (board, _, let_in), own in alike.items():
        yield from sheet_faults(
            board,
            own[0].case.box.thickness,
            name=begun(together([standing.name for standing in own])),
            let_in=let_in,
            said=cases.job.fine,
            here=own[0].case.spec.here,
        )
