"""A raked head: one straight slope, as under stairs or a roof.

seen from the front
          ____+
   ____---    |  height at the right
+--           |
+-------------+
     span
"""

from __future__ import annotations

from parametric.figures import Figure, largest, named
from parametric.names import join
from parametric.shapes.curve import HeadCurve, Slope


def raked(span: Figure, left: Figure, right: Figure, place: str) -> HeadCurve:
    """The slope between two heights.

    Args:
        span: on the level, mm.
        left: height above the springing line at the left end, mm.
        right: height above it at the right end, mm.
        place: `arch`.
    """
    climb = named(join(place, "climb from left to right"), right - left)
    start = Figure(0.0)
    return HeadCurve(
        span=span,
        rise=named(join(place, "rise"), largest(left, right)),
        crown_at=span if float(climb) > 0 else start,
        left=start,
        right=span,
        pieces=(Slope(x=start, y=left, run=span, climb=climb),),
    )
