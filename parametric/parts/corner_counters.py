"""The counter of a run past a case in the corner: to a mitre that the other run's counter meets.

seen from above
    _____________________ corner of the walls
   |                   .'|
   |  this run's     .'  |
   |______________ .'    |    the joint goes from there to the inside corner of the counter, or to
                  `.     |    the middle of its slanting edge
                    |    |
"""

from __future__ import annotations

from parametric.cases.plan_shape import FRONTS, Point, SideWord, meeting
from parametric.model import Placement
from parametric.resolve.casework import Casework, StandingCase, StandingRun


def counter_outline(
    run: StandingRun, casework: Casework, rectangle: tuple[float, float, float, float], out: float
) -> tuple[Point, ...]:
    """A run's counter from above, in its wall's frame, round to the left.

    Args:
        run: where it stands.
        casework: all cabinets.
        rectangle: its left, front, right and back over cases that are square, mm.
        out: how far it stands before the front edges of cases, mm.
    """
    left, front, right, back = rectangle
    begins: list[Point] = [(left, back), (left, front)]
    ends: list[Point] = [(right, front), (right, back)]
    for case in casework.cases:
        plan = case.case.plan
        if plan is None or run.name not in (case.run, case.returns_in):
            continue
        words: list[SideWord] = [side.word for side in plan.sides if side.word in FRONTS]
        lines = [_seen(case, run, plan.line(word, -out)) for word in words]
        straight = ((left, front), (1.0, 0.0))
        if plan.word == "angled end":
            side, at_left = _free_side(case)
            free = _seen(case, run, plan.line(side))
            if at_left:
                begins = [(left, back), meeting(lines[0], free), meeting(lines[0], straight)]
            else:
                ends = [meeting(lines[0], straight), meeting(lines[0], free), (right, back)]
            continue
        (corner, _) = _seen(case, run, plan.line("left back"))
        if plan.word == "inside corner":
            joint = [meeting(lines[0], lines[1])]
        else:
            near = _seen(case, run, plan.line("left side"))
            far = _seen(case, run, plan.line("right side"))
            joint = [_middle(meeting(lines[0], near), meeting(lines[0], far))]
            joint.insert(0, meeting(lines[0], straight))
        if case.returns_in == run.name:
            begins = [corner, *reversed(joint)]
        else:
            ends = [*joint, corner]
    return (*begins, *ends)


def _free_side(case: StandingCase) -> tuple[SideWord, bool]:
    """The shallower side of an angled end, and whether that is its left one."""
    spec = case.case.spec
    return ("left side", True) if spec.left_depth is not None else ("right side", False)


def _middle(a: Point, b: Point) -> Point:
    return (a[0] + b[0]) / 2, (a[1] + b[1]) / 2


def _seen(case: StandingCase, run: StandingRun, line: tuple[Point, Point]) -> tuple[Point, Point]:
    """A line of a case as its run's wall has it."""
    (x, y), (dx, dy) = line
    place = Placement(
        origin=case.stands.point((x, y, 0.0)),
        x=case.stands.direction((dx, dy, 0.0)),
        y=case.stands.z,
    ).seen_from(run.stands)
    return (place.origin[0], place.origin[1]), (place.x[0], place.x[1])
