"""Something in a case cannot be bored: a shelf without pins, a plate on a dowel, a joint too short.

Why: a shelf that lies on nothing, a hinge that holds in nothing, a board that turns on one dowel.
Example: a door's hinge at 619 has its upper screw at 635, and a fixed shelf's dado begins at 640:
2.5 of wood are left beside a hole of 5 where 5 are wanted.
Source: the line 37 from the front and the pitch of 32 are common practice, no source.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from parametric.cases.boring_faults import (
    block_faults,
    joint_faults,
    pin_faults,
    plate_faults,
    slide_faults,
)
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import Case
from parametric.cases.lines import CaseBayLine, CaseLine, InsideLine
from parametric.cases.pin_rows import NoPins
from parametric.figures import Where
from parametric.problems import Problem
from parametric.resolve.bored_case import BayPins, BoredCase
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun, together


def case_cannot_be_bored(cases: CheckedCases) -> Iterator[Problem]:
    """Everything that the boring of each case meets.

    Cases of one block are told once, and what is said of whole cases in the same words names them
    together.
    """
    told: dict[tuple[str, ...], tuple[Problem, list[str]]] = {}
    for own in cases.casework.bored:
        heading = cases.casework.case(own.name).case.spec.heading
        for problem in _of_case(cases, own):
            of_the_case = problem.message.startswith(f"{own.name}: ")
            said = problem.message.removeprefix(own.name) if of_the_case else problem.message
            words = (problem.code, "" if of_the_case else heading, said.replace(own.name, heading))
            _, names = told.setdefault(words, (problem, []))
            if own.name not in names:
                names.append(own.name)
    for problem, names in told.values():
        if len(names) > 1 and problem.message.startswith(f"{names[0]}: "):
            message = begun(together(names)) + problem.message.removeprefix(names[0])
            yield dataclasses.replace(problem, message=message)
        else:
            yield problem


def _of_case(cases: CheckedCases, own: BoredCase) -> Iterator[Problem]:
    said = cases.job.fine
    joints = (
        problem
        for joint in own.joints
        for problem in joint_faults(
            joint.held,
            own.spec,
            said,
            taken=joint.taken,
            own=joint.own,
            end=joint.end,
            covered=joint.covered,
        )
    )
    if own.frame is not None:
        joined = [
            problem
            for held, _ in own.frame.counted
            for problem in joint_faults(held, own.spec, said, end=own.frame.thickness)
        ]
        yield from {problem.code: problem for problem in reversed(joined)}.values()
    # what is wrong with one joint of a case is wrong with most of them
    yield from {problem.code: problem for problem in reversed(list(joints))}.values()
    for side in own.plates:
        yield from plate_faults(
            side.plates,
            own.spec,
            said,
            taken=side.taken,
            thickness=side.board.thickness,
            depth=side.depth,
            case=own.name,
        )
        if side.blocks is not None:
            yield from block_faults(side.blocks, own.spec, said, side.crossing)
    case = cases.casework.case(own.name).case
    for slide in own.slides:
        if slide.in_board is not None:
            yield from slide_faults(slide.screws, own.spec, said, slide.taken, case=own.name)
    for pins in own.pins:
        for problem in pin_faults(pins.rows, own.spec, said, case=own.name):
            if isinstance(pins.rows, NoPins):
                yield dataclasses.replace(problem, where=_shelves_line(case, pins))
            else:
                yield problem


def _shelves_line(case: Case, pins: BayPins) -> Where:
    """Where the shelves of a bay are asked for: in its inside, at a front, of the bay or the case."""
    left = pins.left.x + float(pins.left.thickness)
    bay = min(case.bays, key=lambda one: abs(float(one.left) - left))
    line = case.spec.bays[bay.number - 1]
    asks: tuple[InsideLine | CaseLine | CaseBayLine | CabinetSpec, ...]
    asks = (*(line.inside or ()), *(line.top_to_bottom or ()), line, case.spec)
    return next((one for one in asks if one.shelves), case.spec).line("shelves")
