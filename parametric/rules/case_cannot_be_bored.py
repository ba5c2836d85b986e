"""Something in a case cannot be bored: a shelf without pins, a plate on a dowel, a joint too short.

Why: a shelf that lies on nothing, a hinge that holds in nothing, a board that turns on one dowel.
Example: a door's hinge at 619 has its upper screw at 635, and a fixed shelf's dado begins at 640:
2.5 of wood are left beside a hole of 5 where 5 are wanted.
Source: the line 37 from the front and the pitch of 32 are common practice, no source.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator

from parametric.cases.boring_faults import joint_faults, pin_faults, plate_faults
from parametric.problems import Problem
from parametric.resolve.bored_case import BoredCase
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
    for pins in own.pins:
        yield from pin_faults(pins.rows, own.spec, said, case=own.name)
