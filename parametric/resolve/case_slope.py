"""Tops that follow a sloping ceiling: how high they stand at either end, and what they cannot have."""

from __future__ import annotations

from parametric.cases.back import BackSpec
from parametric.cases.cabinet import CabinetSpec
from parametric.figures import Figure
from parametric.problems import Problem
from parametric.resolve.case_edges import ceiling_over
from parametric.resolve.opening import Opening


def slope_over(
    spec: CabinetSpec, opening: Opening, left: Figure, width: Figure, foot: Figure
) -> tuple[Figure, Figure] | None:
    """The height at the left and the right of a case whose top follows the ceiling, mm.

    Args:
        spec: the cabinet as written.
        opening: the room around it.
        left: its left, from the left foot of the opening, mm.
        width: of it, mm.
        foot: its foot above the highest floor, mm.
    """
    if spec.top != "follows rake" or not opening.slopes:
        return None
    over = ceiling_over(opening, left, left + width)
    return over["left"] - spec.top_gap - foot, over["right"] - spec.top_gap - foot


def slope_faults(spec: CabinetSpec, opening: Opening, back: BackSpec | None) -> tuple[Problem, ...]:
    """A top that should follow a slope where there is none, or that nothing else can follow yet."""
    if spec.top != "follows rake":
        return ()
    found: list[tuple[str, str, str, str]] = []
    if not opening.slopes:
        found.append(
            (
                "no_slope",
                "follows the rake of the ceiling, and the survey has none",
                "`rake: {left: ..., right: ...}` in the survey",
                "Measure from the floor to the ceiling at both ends, or leave the top level.",
            )
        )
    if spec.kind == "face frame" or spec.has_fronts:
        found.append(
            (
                "not_built_yet",
                "has a top that slopes, and fronts or a frame under a slope cannot be built by "
                "this version yet",
                "an open cabinet without a frame; or level tops that step",
                "Leave it open, or take `top` out: cabinets of a run then step with the slope.",
            )
        )
    if back is not None and back.held != "planted":
        found.append(
            (
                "back_under_a_slope",
                "has a top that slopes, and its back is let into a groove that the slope would "
                "cut open",
                "`held: planted`, or `back: none`",
                "Write `back: {held: planted}`.",
            )
        )
    return tuple(
        Problem(
            code=code,
            level="stop",
            message=f"{spec.heading} {said}.",
            where=spec.line("top"),
            about=spec.heading,
            found="follows rake",
            allowed=allowed,
            fix=fix,
        )
        for code, said, allowed, fix in found
    )
