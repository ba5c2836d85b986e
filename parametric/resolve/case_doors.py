"""The fronts of cases as doors: sized, lettered and hung as any other, and stood on their case."""

from __future__ import annotations

import dataclasses

from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.design.survey import SurveySpec
from parametric.figures import Figure
from parametric.model import Placement
from parametric.problems import Problem
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.one_door import Door, resolve_one_door
from parametric.resolve.opening import Opening


def resolve_case_doors(
    design: Design, shop: Shop, casework: Casework, *, first: int
) -> tuple[tuple[Door, ...] | None, tuple[Problem, ...]]:
    """The doors of every case that has fronts, from the left; None when a stop leaves no size.

    Args:
        design: the blocks that the fronts call.
        shop: the workshop.
        casework: the cases where they stand.
        first: the number in the job of the first leaf.
    """
    doors: list[Door] = []
    problems: list[Problem] = []
    whole = True
    for case in casework.cases:
        if case.fronts is None:
            continue
        door, found = resolve_one_door(
            design,
            shop,
            name=case.name,
            spec=case.fronts,
            survey=_of_the_case(case.survey),
            opening=_opening(case),
            first=first,
        )
        first += len(case.fronts.leaf_blocks)
        # Cases of one block share every line of the file: one of them says what is wrong.
        problems += [problem for problem in found if problem not in problems]
        if door is None:
            whole = False
            continue
        doors.append(dataclasses.replace(door, stands=_stands(case), case=case.name))
    return (tuple(doors) if whole else None), tuple(problems)


def _stands(case: StandingCase) -> Placement:
    """Where the frame of a case's fronts stands: heights are the floor's already."""
    frame = case.case.frame
    out = 0.0 if frame is None else float(frame.thickness)
    at = (float(case.left + case.case.opening.left), case.front - out, 0.0)
    return Placement(origin=case.room.point(at), x=case.room.x, y=case.room.y)


def _of_the_case(survey: SurveySpec) -> SurveySpec:
    """A case is made true; nothing that was measured of the room is asked of it."""
    made: SurveySpec = SurveySpec.model_construct(widths=(), fixing="solid timber")
    made.stands_for(survey)
    return made


def _opening(case: StandingCase) -> Opening:
    """What the fronts hang in or over, as a door's opening."""
    own = case.case.opening
    high = own.head - own.foot
    return Opening(
        widths={"middle": own.width},
        heights={"middle": high},
        lean={"middle": Figure(0.0)},
        widest=own.width,
        narrowest=own.width,
        clear=own.width,
        clear_left=Figure(0.0),
        head=own.head,
        floor={"middle": Figure(0.0)},
        floor_fall=Figure(0.0),
        fixing="solid timber",
        board=None,
        foot=own.foot,
    )
