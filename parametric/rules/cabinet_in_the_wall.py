"""A cabinet does not fit its opening: a wall or the ceiling stands where it should.

Why: it cannot be put there, whatever is scribed. Example: 46 in between walls of 45-1/2 in plumb.
Source: arithmetic on the readings.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.figures import Figure, exceeds
from parametric.hangings.hanging import Side
from parametric.problems import Problem
from parametric.resolve.casework import StandingCase
from parametric.resolve.room_lines import between, wall_line
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun


def cabinet_in_the_wall(cases: CheckedCases) -> Iterator[Problem]:
    """A stop for each wall, and for the ceiling, that a cabinet stands in."""
    for case in cases.casework.cases:
        for what, deep in _into(case, cases.casework.depth):
            if exceeds(deep, 0.0):
                size = cases.said.fine(deep)
                yield Problem(
                    code="cabinet_in_the_wall",
                    level="stop",
                    message=f"{begun(case.name)} stands {size} in the {what}.",
                    where=case.case.spec.here,
                    about=case.name,
                    found=size,
                    allowed="within the opening as measured",
                    fix="Make it smaller, or move it."
                    if what != "ceiling"
                    else "Make it lower, or leave its height to `top filler`.",
                )


def _into(case: StandingCase, depth: Figure) -> Iterator[tuple[str, float]]:
    box, left = case.case.box, float(case.left)
    foot = float(box.foot)
    sides: tuple[Side, ...] = ("left", "right")
    for side in sides:
        head = foot + float(box.high_at(side))
        wall = [x for _, x in between(wall_line(case.opening, side), foot, head)]
        if side == "left":
            yield "left wall", max(wall) - left
        else:
            yield "right wall", left + float(box.width) - min(wall)
    if case.case.plan is not None:
        yield "wall behind it", case.front + float(box.depth) - float(depth)
    if not case.opening.slopes:
        yield (
            "ceiling",
            foot + float(box.height) - min(float(up) for up in case.opening.ceiling.values()),
        )
