"""A case does not go through the narrowest part of its way in.

Why: it is found out on the stairs, with four people under it.
Example: a case 789 x 2273 x 780 does not go through a door 762 wide and 1981 high: none of its sides is
narrower than the door, and the two that are left do not lie in what is left of it.
Source: geometry: one side along the way's width or height, the others straight or aslant.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.problems import Problem
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_loads import CaseLoad
from parametric.trade.case_names import begun, together
from parametric.trade.tipping import passes


def case_cannot_be_brought_in(cases: CheckedCases) -> Iterator[Problem]:
    """Caution, once for cases that are alike: it may still be built in the room."""
    size = cases.job.size
    alike: dict[tuple[str, str], list[CaseLoad]] = {}
    for load in cases.loads:
        route, box = load.standing.survey.route, load.standing.case.box
        broad, deep = load.standing.case.around
        if route is not None and not passes((broad, box.highest, deep), route):
            case = f"{size(broad)} x {size(box.highest)} x {size(deep)}"
            wide, high, long = (size(side) for side in route)
            way = f"{wide} wide, {high} high and {long} long"
            alike.setdefault((case, way), []).append(load)
    for (case, way), loads in alike.items():
        names = [load.standing.name for load in loads]
        first = loads[0].standing
        does = "does" if len(names) == 1 else "do"
        yield Problem(
            code="case_cannot_be_brought_in",
            level="caution",
            message=f"{begun(together(names))}, {case}, {does} not go in "
            f"by a way {way}, however turned.",
            where=first.survey.line("route"),
            about=f"{names[0]} cannot be brought in",
            found=case,
            allowed=way,
            fix="Build it in the room, make it in two, or find another way: a window, the other door.",
        )
