"""Behind a face frame the sides of a case stand back, and slides are screwed to nothing.

Why: a slide bent over to a side that stands back binds, or pulls its screws out.
Example: a frame 5/16 proud of the sides at either side of a drawer: strips of 5/16 behind its slides.
Source: geometry; what to do about it, common practice, no source.
"""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.drawer_written import WoodenRunnersSpec
from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.resolve.case_drawer import CaseDrawer
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import listed


def slides_need_packing(cases: CheckedCases) -> Iterator[Problem]:
    """Note, for drawers on slides that pass through less than their bay; those alike together."""
    lots: dict[tuple[str, str], list[CaseDrawer]] = {}
    for drawer in cases.casework.drawers:
        if exceeds(drawer.pack, 0.0) and not isinstance(drawer.box.written, WoodenRunnersSpec):
            lots.setdefault((drawer.case, cases.said.fine(drawer.pack)), []).append(drawer)
    for (case, pack), lot in lots.items():
        first = lot[0]
        yield Problem(
            code="slides_need_packing",
            level="note",
            message=f"The slides of {listed(own.name for own in lot)} are packed out {pack} from the "
            f"sides of {case}, which stand back behind its face frame: by strips that are in the cut "
            "list.",
            where=first.box.written.here,
            about=first.name,
            found=f"{pack} behind each slide",
            allowed="strips of that thickness behind them",
            fix="Glue and screw the strips to the sides, level, before the slides.",
        )
