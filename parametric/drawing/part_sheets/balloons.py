"""Numbered balloons: one a cut, its number that of its row in the list."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.dimensions import DOT
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import Point, arc_points, spread
from parametric.drawing.primitives import Circle, Fill, Label, Stroke

RADIUS = 2.9
PITCH = 2 * RADIUS + 0.9
_CLEAR = 0.4
"""From a ring to where a leader that has passed it may turn, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Call:
    """A cut that is to wear a balloon: its row, where its leader ends on paper, in which view."""

    number: int
    target: Point
    view: str


def place_balloons(draft: Draft, calls: Sequence[Call], level: float) -> tuple[int, ...]:
    """Balloons in a row at one level, in the order of what they point at, so none cross.

    Args:
        draft: the sheet.
        calls: the cuts.
        level: the height of the rings' middles on paper, mm.

    Returns:
        The numbers that were drawn.
    """
    ordered = sorted(calls, key=lambda call: (call.target[0], call.number))
    wanted = spread([call.target[0] for call in ordered], PITCH)
    last = draft.paper.frame.x1 - RADIUS - 1.0 - (len(ordered) - 1) * PITCH
    for index, (call, x) in enumerate(zip(ordered, wanted, strict=True)):
        balloon(draft, call, (min(x, last + index * PITCH), level))
    return tuple(call.number for call in ordered)


def place_beside(
    draft: Draft, calls: Sequence[Call], x: float, *, tall: float = math.inf, away: float = 0.0
) -> tuple[int, ...]:
    """Balloons in a column, each as near as can be to the level of its cut.

    Args:
        draft: the sheet.
        calls: the cuts.
        x: where the rings' middles stand on paper, mm.
        tall: how high the column may be; where it would be higher there are two, in turn.
        away: how far off the second column stands, mm.

    Returns:
        The numbers that were drawn.
    """
    ordered = sorted(calls, key=lambda call: (call.target[1], call.number))
    columns = 2 if len(ordered) * PITCH > tall else 1
    wanted = spread([c.target[1] for c in ordered], PITCH / columns)
    # from the second column a leader runs level between the rings of the first
    past = x - math.copysign(RADIUS + _CLEAR, away)
    for index, (call, y) in enumerate(zip(ordered, wanted, strict=True)):
        second = index % columns == 1
        balloon(draft, call, (x + away * second, y), knee=(past, y) if second else None)
    return tuple(call.number for call in ordered)


def balloon(draft: Draft, call: Call, centre: Point, knee: Point | None = None) -> None:
    """One balloon: ring, number, and a leader from the ring, round a `knee`, to a dot in the cut."""
    x, y = centre
    tx, ty = call.target if knee is None else knee
    far = math.dist(centre, (tx, ty))
    start = (x + (tx - x) / far * RADIUS, y + (ty - y) / far * RADIUS)
    draft.add(
        Circle(layer="edge_fine", centre=centre, radius=RADIUS, view=call.view),
        Label(
            text=str(call.number),
            at=(x, y - TEXT / 2),
            anchor="centre",
            weight="bold",
            view=call.view,
        ),
        Stroke(
            layer="dims",
            points=(start, *(() if knee is None else (knee,)), call.target),
            view=call.view,
        ),
        Fill(layer="dims", points=arc_points(call.target, DOT, 0, 360, 0.15), view=call.view),
    )
