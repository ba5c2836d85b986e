"""What cannot be of a case, whatever stands in it: boards that leave nothing between them."""

from __future__ import annotations

from parametric.cases.at_least import AtLeast
from parametric.cases.back import BackSpec
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.case import Case, CaseBox
from parametric.cases.face_frame import FaceFrame
from parametric.figures import Figure, exceeds, origin_line
from parametric.problems import Problem
from parametric.units import Unit, length_text


def impossible_case(
    spec: CabinetSpec, box: CaseBox, back: BackSpec | None, unit: Unit
) -> tuple[Problem, ...]:
    """A case without width, height or depth inside, or cut through by what is let into it."""
    found: list[Problem] = []

    def told(code: str, message: str, value: Figure, allowed: str, fix: str, no: bool) -> None:
        found.append(
            Problem(
                code=code,
                level="stop",
                message=message,
                where=origin_line(value) or spec.here,
                about=box.name,
                found=length_text(float(value), unit),
                allowed=allowed,
                fix=fix,
                no_size=no,
            )
        )

    for what, inside, outside in (
        ("width", box.clear_width, box.width),
        ("height", box.clear_height, box.height),
    ):
        if not exceeds(inside, 0.0):
            told(
                "no_size",
                f"{box.name} is {length_text(float(outside), unit)} in {what}, and its own boards "
                "take all of that.",
                outside,
                "more than its boards take",
                f"Give it more {what}.",
                True,
            )
    behind = box.depth if back is None else box.depth - back.from_back - back.thickness
    if not exceeds(behind, 0.0):
        said = f"{box.name} has no depth left before its back."
        told("no_size", said, spec.depth, "more than the back takes", "Make it deeper.", True)
    if exceeds(box.let_in, box.thickness - LEAST_LEFT):
        told(
            "dado_too_deep",
            f"{box.name}: boards let in {length_text(float(box.let_in), unit)} leave "
            f"{length_text(float(box.thickness - box.let_in), unit)} of its sides.",
            box.let_in,
            f"at least {length_text(float(LEAST_LEFT), unit)} left",
            "Let them in less deeply.",
            False,
        )
    if back is not None and back.held != "planted":
        if exceeds(back.groove, box.thickness - LEAST_LEFT):
            told(
                "groove_through",
                f"{box.name}: the back's groove is {length_text(float(back.groove), unit)} deep "
                f"in a board of {length_text(float(box.thickness), unit)}.",
                back.groove,
                f"at least {length_text(float(LEAST_LEFT), unit)} left behind it",
                "Make the groove shallower.",
                False,
            )
        if not exceeds(back.groove, back.clearance):
            told(
                "back_falls_out",
                f"{box.name}: the back's clearance is all of its groove.",
                back.clearance,
                "less than the groove is deep",
                "Write a smaller clearance.",
                False,
            )
    if box.kick_deep is not None and not exceeds(behind, box.kick_deep):
        said = f"{box.name}: the kick is as deep as the case."
        told("no_size", said, box.kick_deep, "less than its depth", "Make it less deep.", True)
    return tuple(found)


def let_in_from_both(case: Case, unit: Unit) -> tuple[Problem, ...]:
    """Partitions that shelves are let into from both sides at one height, with too little between."""
    box, spec = case.box, case.spec
    left = box.thickness - 2 * box.let_in
    fixed = case.of_role("fixed shelf")
    if not exceeds(LEAST_LEFT, left) or not exceeds(box.let_in, 0.0):
        return ()
    for partition in case.of_role("partition"):
        beyond = partition.x + float(partition.thickness)
        before = [b for b in fixed if partition.x < b.x + float(b.length) < beyond]
        after = [b for b in fixed if partition.x < b.x < beyond]
        for one in before:
            for other in after:
                if abs(one.z - other.z) < float(one.thickness):
                    return (
                        Problem(
                            code="dadoes_meet",
                            level="stop",
                            message=f"{box.name}: fixed shelves let in "
                            f"{length_text(float(box.let_in), unit)} from both sides at one height "
                            f"leave {length_text(float(left), unit)} of the partition between them.",
                            where=origin_line(box.let_in) or spec.here,
                            about=box.name,
                            found=length_text(float(left), unit),
                            allowed=f"at least {length_text(float(LEAST_LEFT), unit)} left",
                            fix="Let them in less deeply, or set the shelves at unlike heights.",
                        ),
                    )
    return ()


def no_height_left(
    spec: CabinetSpec, name: str, left: Figure, filling: Figure | AtLeast, unit: Unit
) -> Problem:
    """A case that what is under it and over it leave no height."""
    above = filling.where if isinstance(filling, AtLeast) else origin_line(filling)
    return Problem(
        code="no_size",
        level="stop",
        message=f"What is under {name} and over it leaves {length_text(float(left), unit)} of the "
        "room's height for it.",
        where=above or spec.here,
        about=name,
        found=length_text(float(left), unit),
        allowed="more than 0",
        fix="Look at the readings, at what it stands on, and at what closes it to the ceiling.",
        no_size=True,
    )


def no_width_left(spec: CabinetSpec, frame: FaceFrame, unit: Unit) -> Problem:
    """A face frame whose wall stiles take all of the wall."""
    return Problem(
        code="no_size",
        level="stop",
        message=f"The wall stiles of {spec.heading}'s face frame leave "
        f"{length_text(float(frame.opening), unit)} between them.",
        where=origin_line(frame.left.shows) or spec.here,
        about=spec.heading,
        found=length_text(float(frame.opening), unit),
        allowed="more than 0",
        fix="Write narrower `wall stiles`.",
        no_size=True,
    )


LEAST_LEFT = Figure(
    5.0,
    "least board behind a groove",
    origin="catalogue",
    source="common practice, no source",
)
