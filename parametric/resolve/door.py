"""The whole design resolved: its doors, each with a place to stand in the room."""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.design.settings import FinishSpec
from parametric.design.survey import SurveySpec
from parametric.figures import collect
from parametric.problems import Problem
from parametric.resolve.beside import right_of, stood_side_by_side
from parametric.resolve.calls import called
from parametric.resolve.case_boring import with_boring
from parametric.resolve.case_doors import resolve_case_doors
from parametric.resolve.case_drawers import with_drawers
from parametric.resolve.case_stays import with_stays
from parametric.resolve.casework import Casework
from parametric.resolve.leaf import Leaf
from parametric.resolve.one_door import Door, resolve_one_door
from parametric.resolve.opening import resolve_opening
from parametric.resolve.pins import compare_pins
from parametric.resolve.stand_cases import resolve_casework
from parametric.resolve.told_apart import told_apart
from parametric.written import Block

__all__ = ["Door", "Resolved", "resolve"]


@dataclass(frozen=True, slots=True, kw_only=True)
class Resolved:
    """The whole design, resolved; `job` is named as papers and files name it.

    `doors` are all of the job, or the one that it was narrowed to.
    """

    job: str
    design: Design
    shop: Shop
    doors: tuple[Door, ...]
    finish: FinishSpec | None
    casework: Casework | None = None
    """The cabinets, whose fronts are among the doors."""

    @property
    def door(self) -> Door:
        """The one door of a job of one, or of what was narrowed to one."""
        (door,) = self.doors
        return door

    @property
    def leaves(self) -> tuple[Leaf, ...]:
        """Every leaf of every door, in the order of their letters."""
        return tuple(leaf for door in self.doors for leaf in door.leaves)

    @property
    def walls(self) -> tuple[Door, ...]:
        """The doors that stand in or before a wall: all but the fronts of cases."""
        return tuple(door for door in self.doors if not door.case)

    def of(self, door: Door) -> Resolved:
        """The same job, narrowed to one of its doors."""
        return dataclasses.replace(self, doors=(door,))


def resolve(design: Design, shop: Shop) -> tuple[Resolved | None, tuple[Problem, ...]]:
    """Resolve every door of the design; None when a stop leaves no size to go on with."""
    problems: list[Problem] = []
    doors: list[Door] = []
    first = 0
    for name, spec in design.doors:
        survey = design.block("survey", spec.in_)
        assert isinstance(survey, SurveySpec)
        opening, found = resolve_opening(survey, shop, fit=spec.fit, unit=design.unit)
        problems += found
        if opening is not None:
            door, more = resolve_one_door(
                design, shop, name=name, spec=spec, survey=survey, opening=opening, first=first
            )
            problems += more
            doors += [] if door is None else [door]
        first += len(spec.leaf_blocks)
    if len(doors) < len(design.doors):
        return None, tuple(problems)
    stood = stood_side_by_side(tuple(doors))
    casework, told = resolve_casework(design, shop, begins=right_of(stood))
    problems += told
    hung: tuple[Door, ...] | None = ()
    if casework is not None:
        hung, told = resolve_case_doors(design, shop, casework, first=first)
        problems += told
    if hung is None or (casework is None and design.named("cabinet")):
        return None, tuple(problems)
    every = (*stood, *hung)
    for door in every:
        problems += [problem for problem in _pins(door, design) if problem not in problems]
    told_doors = told_apart(every, shop, casework)
    if casework is not None:
        told_doors = with_stays(design, casework, told_doors)
        fronts = tuple(door for door in told_doors if door.case)
        casework, told = with_drawers(design, shop, casework, fronts)
        problems += told
        casework = with_boring(design, casework, fronts)
    calls: list[Block] = [door.written for door in every]
    calls += design.named("cabinet").values()
    resolved = Resolved(
        job=design.titled,
        design=design,
        shop=shop,
        doors=told_doors,
        finish=called(design, calls[0], "finish", FinishSpec),
        casework=casework,
    )
    return resolved, tuple(problems)


def _pins(door: Door, design: Design) -> list[Problem]:
    """What a door and its leaves hold to a value; leaves of one block share its pins."""
    known = collect(door)
    own = {leaf.written.heading: leaf.written.pinned for leaf in door.leaves}
    return [
        problem
        for pins in (door.written.pinned, *own.values())
        for problem in compare_pins(pins or {}, known, design.unit)
    ]
