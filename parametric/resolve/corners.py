"""The corner that a case stands in: its two walls, and how far it stands off either of them.

seen from above: a wall that leans in is met where it leans most, and what stands in the corner,
with all that stands beside it, is moved off the other wall so that both runs still add up

        left wall
     _______________________
        |   off it      |   |
        |_______________|off|  right wall
        the case's corner ^ |
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.cases.cabinet import CabinetSpec
from parametric.cases.plan_shape import SQUARE
from parametric.cases.run import RunSpec
from parametric.design import Design
from parametric.design.survey import SurveySpec
from parametric.figures import Figure, Where, cosine, exceeds, named
from parametric.names import join
from parametric.problems import Problem
from parametric.resolve.opening import Opening

IN_A_CORNER = ("diagonal corner", "inside corner")


@dataclass(frozen=True, slots=True, kw_only=True)
class WallCorner:
    """Where two walls meet: the angle between them, deg, and what stands there off each, mm."""

    right: SurveySpec
    angle: Figure
    off_left: Figure
    off_right: Figure
    late: Figure
    """How far after its tightest place the run on the right wall begins, in an acute corner."""

    def off(self, wall: SurveySpec) -> Figure:
        """How far what stands along one of its walls stands off that wall, mm."""
        return self.off_right if wall is self.right else self.off_left


def in_a_corner(spec: CabinetSpec) -> bool:
    """Whether a cabinet stands against two walls."""
    return spec.plan in IN_A_CORNER


def right_of(design: Design, survey: SurveySpec) -> SurveySpec | None:
    """The wall that goes on to the right of another, round a corner."""
    if survey.left_of is not None:
        found = design.block("survey", str(survey.left_of))
        return found if isinstance(found, SurveySpec) else None
    name = survey.heading.removeprefix("survey").strip()
    for block in design.named("survey").values():
        if isinstance(block, SurveySpec) and str(block.right_of or "") == name != "":
            return block
    return None


def left_of(design: Design, survey: SurveySpec) -> SurveySpec | None:
    """The wall that goes on to the left of another, round a corner."""
    for block in design.named("survey").values():
        if isinstance(block, SurveySpec) and right_of(design, block) is survey:
            return block
    return None


def wall_corner(
    name: str, left: SurveySpec, opening: Opening, right: SurveySpec, beyond: Opening
) -> WallCorner:
    """Where a case stands that fills the corner of two walls.

    Args:
        name: of the case.
        left: the wall to the left of the corner.
        opening: the same, worked out.
        right: the wall to the right of it.
        beyond: the same, worked out.
    """
    written = right.turns if right.right_of is not None else left.turns
    angle = Figure(SQUARE, unit="deg") if written is None else written
    angle = named(join(name, "walls meet at"), angle, "deg")
    cos, sin = cosine(angle), cosine(SQUARE - angle)
    leans = opening.widest - opening.clear_left - opening.clear
    begins = beyond.clear_left
    off: Figure = (begins - leans * cos) / sin
    late = Figure(0.0)
    if exceeds(0.0, off):
        # the case would stand in the left wall: it stands against it, farther along the right one
        off, late = Figure(0.0), leans * cos - begins
    return WallCorner(
        right=right,
        angle=angle,
        off_left=named(join(name, "off the left wall"), off),
        off_right=named(join(name, "off the right wall"), leans * sin - off * cos),
        late=named(join(name, "begins late on the right wall"), late),
    )


def corner_faults(spec: CabinetSpec, design: Design, survey: SurveySpec) -> tuple[Problem, ...]:
    """A corner case whose corner was not measured, or that stands in its runs where no corner is."""
    name = spec.heading.removeprefix("cabinet").strip()
    right = right_of(design, survey)
    if right is None:
        return (
            _stop(
                spec,
                "corner_not_measured",
                f"{spec.heading} stands in the corner at the right of {survey.heading}, and no "
                "survey goes on from there.",
                spec.line("plan"),
                f"`right of: {survey.heading.removeprefix('survey').strip()}` in the other survey",
                "Measure the other wall too, and the angle between them: `turns: 90 deg`.",
            ),
        )
    lines = [line_of(design, wall, name) for wall in (survey, right)]
    found = [line for line in lines if line is not None]
    if len(found) == 1:
        run, other = found[0].run, right if lines[1] is None else survey
        return (
            _stop(
                spec,
                "corner_in_one_run",
                f"{spec.heading} stands in {run.heading}, and in no run along {other.heading}.",
                run.line("left to right"),
                "the last line of the left wall's run and the first of the right wall's",
                f"Write `- {spec.heading}: ` and its width there in that run too.",
            ),
        )
    if len(found) == 2 and not (found[0].is_last and found[1].is_first):
        return (
            _stop(
                spec,
                "corner_out_of_place",
                f"{spec.heading} fills a corner: it ends the run along {survey.heading} and begins "
                f"that along {right.heading}.",
                found[0].run.line("left to right"),
                "the last line of the left wall's run and the first of the right wall's",
                "Move its lines to where the walls meet.",
            ),
        )
    alone = next((line for line in found if line.is_alone), None)
    if alone is not None:
        return (
            _stop(
                spec,
                "corner_alone_in_its_run",
                f"{alone.run.heading} holds {spec.heading} alone.",
                alone.run.line("left to right"),
                "another cabinet beside it on either wall; or no runs, and its own `width` and "
                "`right width`",
                "Write another cabinet into that run.",
            ),
        )
    if len(found) == 2:
        return _counters_unlike(spec, found[0].run, found[1].run)
    return ()


def _counters_unlike(spec: CabinetSpec, left: RunSpec, right: RunSpec) -> tuple[Problem, ...]:
    """Runs that meet at a corner with unlike counters, plinths or places over the floor."""
    for key in ("counter", "plinth", "above floor"):
        a, b = (getattr(run, key.replace(" ", "_")) for run in (left, right))
        if (a is None) != (b is None) or (a is not None and abs(float(a) - float(b)) > 1e-6):
            return (
                _stop(
                    spec,
                    "runs_unlike_at_corner",
                    f"{spec.heading} stands in {left.heading} and {right.heading}, which are unlike "
                    f'in their "{key}".',
                    right.line(key),
                    f"the same `{key}` in both",
                    "Write it alike in both runs.",
                ),
            )
    return ()


@dataclass(frozen=True, slots=True, kw_only=True)
class RunsLine:
    """Where a run calls a cabinet: its heading, the run, and the number of the line."""

    heading: str
    run: RunSpec
    at: int

    @property
    def is_first(self) -> bool:
        """Whether it begins its run."""
        return self.at == 0

    @property
    def is_last(self) -> bool:
        """Whether it ends its run."""
        return self.at == len(self.run.left_to_right) - 1

    @property
    def is_alone(self) -> bool:
        """Whether no other cabinet stands in its run."""
        return sum(line.cabinet is not None for line in self.run.left_to_right) == 1


def line_of(design: Design, survey: SurveySpec, cabinet: str) -> RunsLine | None:
    """The line of a run along a wall that calls a cabinet, by its name."""
    for name, run in design.named("run").items():
        if not isinstance(run, RunSpec):
            continue
        if design.block("survey", run.in_) is not survey:
            continue
        for at, line in enumerate(run.left_to_right):
            if line.called is not None and str(line.called) == cabinet:
                return RunsLine(heading=f"run {name}".strip(), run=run, at=at)
    return None


def _stop(
    spec: CabinetSpec, code: str, message: str, where: Where, allowed: str, fix: str
) -> Problem:
    return Problem(
        code=code,
        level="stop",
        message=message,
        where=where,
        about=spec.heading,
        found=str(spec.plan),
        allowed=allowed,
        fix=fix,
    )
