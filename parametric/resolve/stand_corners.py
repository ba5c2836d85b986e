"""The corners that cabinets stand in, as they are found while cabinets are stood."""

from __future__ import annotations

from collections.abc import Callable

from parametric.cases.cabinet import CabinetSpec
from parametric.cases.run import RunSpec, share_run
from parametric.design import Design
from parametric.design.survey import SurveySpec
from parametric.figures import Figure, exceeds
from parametric.problems import Problem
from parametric.resolve.corners import (
    WallCorner,
    corner_faults,
    in_a_corner,
    left_of,
    line_of,
    right_of,
    wall_corner,
)
from parametric.resolve.opening import Opening

Openings = Callable[[str | None], tuple[SurveySpec, Opening | None]]
"""A survey by its name, and its wall worked out."""


class Corners:
    """Where walls of one design meet, and what runs say of the cases that fill those corners."""

    def __init__(self, design: Design, opening: Openings, problems: list[Problem]) -> None:
        """What is wrong with a corner is put with the other `problems`."""
        self._design, self._opening, self._problems = design, opening, problems

    def _opening_on(self, survey: SurveySpec) -> Opening | None:
        return self._opening(survey.heading.removeprefix("survey").strip() or None)[1]

    def of_run(self, spec: RunSpec, survey: SurveySpec) -> dict[int, WallCorner] | None:
        """The corners that its cases fill, by the numbers of their lines; None after a stop."""
        found: dict[int, WallCorner] = {}
        for at, line in enumerate(spec.left_to_right):
            cabinet = None
            if line.called is not None:
                cabinet = self._design.block("cabinet", str(line.called))
            if not isinstance(cabinet, CabinetSpec) or not in_a_corner(cabinet):
                continue
            begins = left_of(self._design, survey) if at == 0 else None
            corner = self.of(cabinet, survey if begins is None else begins)
            if corner is None:
                return None
            found[at] = corner
        offs = [corner.off(survey) for corner in found.values()]
        if len(offs) > 1 and exceeds(max(offs), min(offs)):
            self._problems.append(
                Problem(
                    code="corners_unlike",
                    level="stop",
                    message=f"{spec.heading} stands between two corners, and what leans in there "
                    "puts its ends at unlike distances off its wall.",
                    where=spec.line("left to right"),
                    about=spec.heading,
                    found="walls that lean at both ends",
                    allowed="one corner in a run, or walls that are plumb at both",
                    fix="Let one of the two corners be a square cabinet and a filler.",
                )
            )
            return None
        return found

    def of(self, spec: CabinetSpec, left: SurveySpec) -> WallCorner | None:
        """The corner that a cabinet stands in; None after a stop.

        Args:
            spec: the cabinet as written.
            left: the wall to the left of its corner.
        """
        if faults := corner_faults(spec, self._design, left):
            self._problems += [fault for fault in faults if fault not in self._problems]
            return None
        right = right_of(self._design, left)
        assert right is not None, "the faults have seen it"
        opening = self._opening_on(left)
        beyond = self._opening_on(right)
        if opening is None or beyond is None:
            return None
        return wall_corner(spec.heading, left, opening, right, beyond)

    def returns_in(self, spec: CabinetSpec, corner: WallCorner) -> str:
        """The run on the right wall that a case in the corner begins."""
        line = line_of(self._design, corner.right, _name(spec))
        return "" if line is None else line.heading

    def right_width(self, spec: CabinetSpec, corner: WallCorner) -> Figure | None:
        """What the run on the right wall gives a case in the corner; None where it is in no run."""
        name = _name(spec)
        line = line_of(self._design, corner.right, name)
        opening = self._opening_on(corner.right)
        if line is None or opening is None:
            return None
        across = share_run(
            line.run,
            name=line.heading,
            left=opening.clear_left + corner.late,
            room=opening.clear - corner.late,
        )
        return across.widths[line.at]


def _name(spec: CabinetSpec) -> str:
    return spec.heading.removeprefix("cabinet").strip()
