"""Where a groove runs out: at the end of its piece, at a shoulder, or into wood that is gone already.

along the inside of a drawer's front
 socket for a tail                 rebate for the front
 |     |______________             |     |______________
 |     |______________  groove     |_____|______________  groove
 |     |                           |     |
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import assert_never

from parametric.model import Blank, Cut, Face, Groove, Shaped, Vector, face_point, face_size
from parametric.outlines import Outline, edges
from parametric.trade.moulded_runs import wood_along

_SAME = 1e-6
_PAST = 1e-4
"""How far past its end, and within its walls, a groove is looked for in what is gone, mm."""


def runs_out(cut: Groove, blank: Blank, cuts: Sequence[Cut]) -> tuple[bool, bool]:
    """Whether a groove runs out at its low and at its high end.

    Args:
        cut: the groove.
        blank: what it is cut in.
        cuts: every cut of the piece.
    """
    near, far = 0.0, float(face_size(cut.face, blank)[0])
    if cut.face not in ("low end", "high end"):
        near, far = wood_along(blank, cuts)
    low, high = float(cut.u0), float(cut.u1)
    return (
        low <= near + _SAME or _gone(cut, low - _PAST, blank, cuts),
        high >= far - _SAME or _gone(cut, high + _PAST, blank, cuts),
    )


def _gone(cut: Groove, u: float, blank: Blank, cuts: Sequence[Cut]) -> bool:
    """Whether one square cut has taken all the wood that the groove would come to at `u`."""
    half = float(cut.width) / 2 - _PAST
    corners = [
        face_point(cut.face, blank, u, float(cut.v) + side, deep)
        for side in (-half, half)
        for deep in (float(cut.surface) + _PAST, float(cut.depth) - _PAST)
    ]
    return any(
        all(_taken(point, other, blank) for point in corners)
        for other in cuts
        if isinstance(other, Shaped) and not any(vertex.bulge for vertex in other.outline)
    )


def _taken(point: Vector, cut: Shaped, blank: Blank) -> bool:
    u, v, deep = _on_face(cut.face, point, blank)
    return float(cut.surface) <= deep <= float(cut.depth) and _within(u, v, cut.outline)


def _within(u: float, v: float, outline: Outline) -> bool:
    """Whether a point lies within straight walls, by how often a line to its right crosses them."""
    crossed = False
    for a, b in edges(outline):
        if (a.y > v) != (b.y > v) and u < a.x + (b.x - a.x) * (v - a.y) / (b.y - a.y):
            crossed = not crossed
    return crossed


def _on_face(face: Face, point: Vector, blank: Blank) -> Vector:
    """A point of the piece as (u, v, depth) of a face."""
    x, y, z = point
    match face:
        case "low end":
            return (y, z, x)
        case "high end":
            return (y, z, float(blank.length) - x)
        case "low edge":
            return (x, z, y)
        case "high edge":
            return (x, z, float(blank.width) - y)
        case "low face":
            return (x, y, z)
        case "high face":
            return (x, y, float(blank.thickness) - z)
        case _:
            assert_never(face)
