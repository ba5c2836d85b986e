"""What is said of cases that are no rectangle from above: how they are held, their hinges, counters."""

from __future__ import annotations

from parametric.cases.plan_shape import SQUARE, CasePlan
from parametric.drawing.subject import Subject
from parametric.names import join
from parametric.resolve.casework import StandingCase
from parametric.units import mm_text


def plan_notes(job: Subject, standing: StandingCase, plan: CasePlan) -> list[str]:
    """How its boards are held, hinges for a front on the slant, backs that no screw reaches.

    Args:
        job: the job.
        standing: the case.
        plan: it, from above.
    """
    found = [
        "Screwed from outside: holes in edges are bored through those of the boards that they "
        "stand against, clamped."
    ]
    angles = (plan.sides[0].angle, plan.side("right side").angle)
    if standing.case.spec.has_doors and any(abs(float(a) - SQUARE) > 1e-6 for a in angles):
        left, right = (f"{mm_text(float(angle), 0.1)}°" for angle in angles)
        found.append(
            f"Its front stands at {left} to the left side and at {right} to the right one, inside: "
            "hinges for that angle; their plates are set by their own sheet."
        )
    if plan.in_a_corner and not _backs_are_screwed(job, standing):
        found.append("No screw reaches the joint of the backs square: glue, and a block inside.")
    return found


def _backs_are_screwed(job: Subject, standing: StandingCase) -> bool:
    casework = job.resolved.casework
    assert casework is not None, "it has cases"
    both = {join(standing.name, "left back"), join(standing.name, "right back")}
    return any(
        {joint.board, joint.into} == both
        for own in casework.bored
        if own.name == standing.name
        for joint in own.joints
    )


def counter_joints(job: Subject, names: set[str]) -> tuple[str, ...]:
    """Where the counters of two runs meet over a case in the corner.

    Args:
        job: the job.
        names: of the runs along the wall that is drawn.
    """
    casework = job.resolved.casework
    found = []
    for case in casework.cases if casework else ():
        plan = case.case.plan
        if plan is None or not case.returns_in or case.counter is None:
            continue
        if not {case.run, case.returns_in} & names:
            continue
        to = (
            "inside corner of their fronts"
            if plan.word == "inside corner"
            else "middle of the slant before it"
        )
        found.append(
            f"Counters meet over {case.name} in a mitre, from the corner of the walls to the {to}."
        )
    return tuple(found)
