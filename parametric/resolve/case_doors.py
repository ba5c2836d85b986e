"""The fronts of cases as doors: sized, lettered and hung as any other, and stood on their case."""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.cases.case import FrontOpening, TurnedFront
from parametric.catalog.shop import Shop
from parametric.design import Design
from parametric.design.survey import SurveySpec
from parametric.figures import Figure
from parametric.hangings.cabinet import CabinetSpec as FrontsSpec
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
    for hung in (hung for standing in casework.cases for hung in _hung(standing)):
        case = hung.case
        door, found = resolve_one_door(
            design,
            shop,
            name=hung.name,
            spec=hung.fronts,
            survey=_of_the_case(case.survey),
            opening=_opening(hung.opening),
            first=first,
        )
        first += len(hung.fronts.leaf_blocks)
        # Cases of one block share every line of the file: one of them says what is wrong.
        problems += [problem for problem in found if problem not in problems]
        if door is None:
            whole = False
            continue
        doors.append(dataclasses.replace(door, stands=hung.stands, case=case.name))
    return (tuple(doors) if whole else None), tuple(problems)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Hung:
    """The fronts of one face of a case, what they are called by, and what they hang in."""

    case: StandingCase
    name: str
    fronts: FrontsSpec
    opening: FrontOpening
    stands: Placement


def _hung(case: StandingCase) -> Iterator[_Hung]:
    """Every face of a case that has fronts: two round an inside corner."""
    own = case.case
    if not own.turned_fronts:
        if case.fronts is not None:
            out = 0.0 if own.frame is None else float(own.frame.thickness)
            at = (float(case.left + own.opening.left), case.front - out, 0.0)
            stands = Placement(origin=case.room.point(at), x=case.room.x, y=case.room.y)
            yield _Hung(
                case=case, name=case.name, fronts=case.fronts, opening=own.opening, stands=stands
            )
        return
    for turned, fronts in zip(own.turned_fronts, (case.fronts, case.beyond), strict=False):
        if fronts is None:
            continue
        arm = turned.arm.removesuffix(" front")
        yield _Hung(
            case=case,
            name=f"{case.name} {arm}".rstrip(),
            fronts=fronts,
            opening=turned.opening,
            stands=front_stands(case, turned),
        )


def front_stands(case: StandingCase, turned: TurnedFront) -> Placement:
    """Where the frame of fronts that are turned from the wall's line stands, heights the floor's."""
    c, s = (_whole(f(math.radians(turned.turn))) for f in (math.cos, math.sin))
    along = float(turned.opening.left)
    x, y = turned.at[0] + c * along, turned.at[1] + s * along
    room = case.room
    return Placement(
        origin=room.point((float(case.left) + x, case.front + y, 0.0)),
        x=room.direction((c, s, 0.0)),
        y=room.direction((-s, c, 0.0)),
    )


def _whole(value: float) -> float:
    """A square turn is square to the last bit."""
    return round(value) + 0.0 if abs(value - round(value)) < 1e-12 else value


def _of_the_case(survey: SurveySpec) -> SurveySpec:
    """A case is made true; nothing that was measured of the room is asked of it."""
    made: SurveySpec = SurveySpec.model_construct(widths=(), fixing="solid timber")
    made.stands_for(survey)
    return made


def _opening(own: FrontOpening) -> Opening:
    """What the fronts hang in or over, as a door's opening."""
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
