"""Tops that follow a sloping ceiling: how high they stand at either end, and what they cannot have."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.cases.at_least import AtLeast, least_of
from parametric.cases.back import BackSpec
from parametric.cases.cabinet import CabinetSpec
from parametric.cases.slope import Under
from parametric.figures import Figure
from parametric.problems import Problem
from parametric.resolve.case_edges import ceiling_over
from parametric.resolve.opening import Opening


def _level_only(spec: CabinetSpec, over: Figure | None) -> Iterator[tuple[str, object | None]]:
    """What a cabinet with a top that slopes has no use for, or no place: its word, None where unwritten."""
    yield "height", spec.height if isinstance(spec.height, Figure) else None
    yield "stretchers", spec.stretchers
    yield "counter", over
    yield "lid", spec.lid


def gap_under(spec: CabinetSpec, filler: Figure | AtLeast | None) -> Figure:
    """What is left over a top that slopes, plumb, mm: for what closes it, or to put it in.

    Args:
        spec: the cabinet as written, with a filler of its own or not.
        filler: what closes its run to the ceiling.
    """
    filling = filler if spec.top_filler is None else spec.top_filler
    return spec.top_gap if filling is None else least_of(filling)


def slope_over(
    spec: CabinetSpec, opening: Opening, left: Figure, width: Figure, foot: Figure, gap: Figure
) -> Under | None:
    """Where the top of a case that follows the ceiling ends; None of a level one.

    Args:
        spec: the cabinet as written.
        opening: the room around it.
        left: its left, from the left foot of the opening, mm.
        width: of it, mm.
        foot: its foot above the highest floor, mm.
        gap: what is left over it, plumb, mm.
    """
    if spec.top != "follows rake" or not opening.slopes:
        return None
    over = ceiling_over(opening, left, left + width)
    return Under(left=over["left"] - gap - foot, right=over["right"] - gap - foot, gap=gap)


def slope_faults(
    spec: CabinetSpec, opening: Opening, back: BackSpec | None, over: Figure | None
) -> tuple[Problem, ...]:
    """A top that should follow a slope where there is none, or that nothing else can follow yet.

    Args:
        spec: the cabinet as written.
        opening: the room around it.
        back: its back as written; None for none.
        over: how thick the counter over it is; None for none.
    """
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
    if spec.kind == "face frame":
        found.append(
            (
                "not_built_yet",
                "has a top that slopes, and a face frame under a slope cannot be built by this "
                "version yet",
                "`kind: frameless`; or level tops that step",
                "Make it frameless, or take `top` out: cabinets then step with the slope.",
            )
        )
    elif any(spec.fronts_of(bay)[0].kind != "open" for bay in spec.bays):
        found.append(
            (
                "not_built_yet",
                "has a top that slopes, and a front that reaches up to a slope cannot be built by "
                "this version yet",
                "`open` at the top of each bay, and fronts below it",
                "Write `open: rest` first in the list of the bay, then the fronts with their "
                "heights; or take `top` out: cabinets then step with the slope.",
            )
        )
    if level := [word for word, value in _level_only(spec, over) if value is not None]:
        found.append(
            (
                "slopes_and_level",
                f"has a top that slopes, and {' and '.join(f'`{word}`' for word in level)} with it: that "
                "goes with a level top",
                "one of the two",
                "Take `top: follows rake` out, or the other.",
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
