"""The outline of a pocket whose corners are run into by a larger cutter."""

from __future__ import annotations

import math

from parametric.model import relief_chord, relief_turn
from parametric.outlines import SAME, Bounds, Outline, Vertex, no_short_edges


def relieved_rectangle(bounds: Bounds, corner: float, relief: float) -> Outline:
    """A rectangle into each of whose corners, round or square, a larger cutter is run.

    Raises:
        ValueError: the reliefs do not fit the sides.
    """
    x0, y0, x1, y1 = bounds
    chord = relief_chord(corner, relief)
    if 2 * chord > min(x1 - x0, y1 - y0) + SAME:
        raise ValueError(f"corners relieved by r {relief} do not fit {x1 - x0} x {y1 - y0}")
    bulge = math.tan(relief_turn(corner, relief) / 4)
    corners = (
        ((x1 - chord, y0), (x1, y0 + chord)),
        ((x1, y1 - chord), (x1 - chord, y1)),
        ((x0 + chord, y1), (x0, y1 - chord)),
        ((x0, y0 + chord), (x0 + chord, y0)),
    )
    arcs = [v for enter, leave in corners for v in (Vertex(*enter, bulge), Vertex(*leave))]
    return tuple(no_short_edges(arcs))
