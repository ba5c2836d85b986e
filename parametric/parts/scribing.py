"""Boards scribed on site to a line of the room as it was measured."""

from __future__ import annotations

import math
from collections.abc import Sequence

from parametric.model import Cut, Face, Making, Shaped
from parametric.outlines import Outline, Vertex
from parametric.resolve.room_lines import Point

SCRIBED = Making(
    by="bench", when="on site", tool="scribed to the room, then planed or sanded to it"
)
_SAME = 1e-6


def scribe_cuts(
    face: Face, line: Sequence[Point], low: bool, width: float, depth: float
) -> list[Cut]:
    """The wood beyond a line of (u, v) on a face, to its low or its high edge; none where there is none."""
    edge = 0.0 if low else width
    kept = [(u, min(max(v, 0.0), width)) for u, v in line]
    if all(abs(v - edge) < _SAME for _, v in kept):
        return []
    (first, _), (last, _) = kept[0], kept[-1]
    if low:
        corners = [(first, 0.0), (last, 0.0), *reversed(kept)]
    else:
        corners = [*kept, (last, width), (first, width)]
    return [
        Shaped(
            name="scribed",
            face=face,
            outline=_without_doubles(corners),
            depth=depth,
            making=SCRIBED,
        )
    ]


def _without_doubles(corners: Sequence[Point]) -> Outline:
    found: list[Vertex] = []
    for u, v in corners:
        if not found or math.hypot(u - found[-1].x, v - found[-1].y) > _SAME:
            found.append(Vertex(u, v))
    if math.hypot(found[0].x - found[-1].x, found[0].y - found[-1].y) <= _SAME:
        found.pop()
    return tuple(found)
