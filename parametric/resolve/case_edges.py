"""What closes cabinets to walls, ceiling and floor, sized from the survey."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from parametric.cases.run import RunSpec
from parametric.cases.run_edges import Filler, size_filler
from parametric.figures import Figure, exceeds, named, smallest
from parametric.names import join
from parametric.resolve.casework import Edges, StandingCase
from parametric.resolve.opening import Opening


@dataclass(frozen=True, slots=True, kw_only=True)
class Ends:
    """Where a run ends on all sides: its cases' left and right, foot and top, mm."""

    name: str
    opening: Opening
    left: Figure
    right: Figure
    foot: Figure
    head: Figure


def ceiling_over(opening: Opening, left: Figure, right: Figure) -> Mapping[str, Figure]:
    """The ceiling over a stretch of the room, by place, above the highest floor, mm.

    A ceiling that is meant level is told as it was read; one that slopes, at the stretch's ends.
    """
    if not opening.slopes:
        return opening.ceiling
    low, high = opening.ceiling["left"], opening.ceiling["right"]
    climb = (high - low) / opening.widest
    return {
        "left": named("ceiling at the left end", low + climb * left),
        "right": named("ceiling at the right end", low + climb * right),
    }


def lowest_ceiling(opening: Opening, left: Figure, right: Figure) -> Figure:
    """The ceiling where it is lowest over a stretch of the room, mm."""
    over = ceiling_over(opening, left, right)
    return named("lowest ceiling", smallest(*over.values()))


def own_edges(name: str, opening: Opening, case: StandingCase, spare: Figure) -> Edges:
    """What closes a cabinet in no run to the ceiling.

    Args:
        name: of the cabinet.
        opening: the room around it.
        case: where it stands.
        spare: added to what is scribed, mm.
    """
    slope = case.case.box.slope
    if slope is not None:
        # along the top, square to it
        seen = {"left": slope.open, "right": slope.open}
    else:
        over = ceiling_over(opening, case.left, case.left + case.case.box.width)
        seen = {place: up - case.top for place, up in over.items()}
    top = size_filler(join(name, "top filler"), seen, spare)
    return Edges(name=name, left=None, right=None, top=top, plinth=None)


def run_edges(spec: RunSpec, ends: Ends, spare: Figure) -> Edges:
    """What closes a run on every side where it asks for it.

    Args:
        spec: the run as written.
        ends: where it ends.
        spare: added to what is scribed, mm.
    """
    lines, opening, name = spec.left_to_right, ends.opening, ends.name
    left_wall, right_wall = walls(opening)

    def filler(word: str, seen: Mapping[str, Figure]) -> Filler:
        return size_filler(join(name, word), seen, spare)

    left = right = top = plinth = from_line = None
    if lines[0].filler is not None:
        left = filler("left filler", {p: ends.left - x for p, x in left_wall.items()})
    if lines[-1].filler is not None:
        right = filler("right filler", {p: x - ends.right for p, x in right_wall.items()})
    if spec.top_filler is not None and not opening.slopes:
        top = filler("top filler", {p: up - ends.head for p, up in opening.ceiling.items()})
    if exceeds(spec.plinth, 0.0) and spec.above_floor is None:
        plinth = filler("plinth", {p: ends.foot - z for p, z in opening.floor.items()})
        if opening.high_floor is not None:
            above = ends.foot + opening.high_floor
            from_line = named(join(name, "plinth", "top from the line"), above)
    return Edges(
        name=name, left=left, right=right, top=top, plinth=plinth, plinth_from_line=from_line
    )


def walls(opening: Opening) -> tuple[dict[str, Figure], dict[str, Figure]]:
    """The left and the right wall by place, from the left foot of the opening, mm."""
    left = {
        place: named(f"left wall {place}", opening.lean[place])
        for place in opening.widths
        if place in opening.lean
    }
    right = {
        place: named(f"right wall {place}", opening.widths[place] + left[place]) for place in left
    }
    return left, right
