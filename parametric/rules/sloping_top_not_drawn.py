"""A cabinet's top follows a sloping ceiling, and its pack cannot be drawn truly yet.

Why: its numbers, boards and solids are right, but the drawings would show its boards level, and a
maker would believe them. Example: a bookcase under a roof.
Source: none; what this version does.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun


def sloping_top_not_drawn(cases: CheckedCases) -> Iterator[Problem]:
    """A stop for each of them."""
    for case in cases.casework.cases:
        if case.case.box.slope is None:
            continue
        yield Problem(
            code="not_built_yet",
            level="stop",
            message=f"{begun(case.name)} has a top that slopes, and boards under a slope cannot be "
            "drawn by this version yet.",
            where=case.case.spec.line("top"),
            about=case.name,
            found="follows rake",
            allowed="a level top",
            fix="Take `top` out: cabinets then step with the slope, each as high as it leaves.",
        )
