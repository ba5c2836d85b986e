"""A segmental head: one arc, less than half of its circle.

seen from the front
     ___-----___
 _--             --_   rise
+-------------------+
        span
         :  radius; the centre lies below the springing line
"""

from __future__ import annotations

from parametric.figures import Figure, named, square
from parametric.names import join
from parametric.shapes.curve import Bow, HeadCurve


def segmental(span: Figure, rise: Figure, place: str) -> HeadCurve:
    """The arc through both springing points and the crown.

    Args:
        span: between the springing points, mm.
        rise: at the middle, mm; half the span at most.
        place: `arch`.

    Source: chord and sagitta of a circle, radius = (span squared + 4 rise squared) / (8 rise).
    """
    radius = named(join(place, "radius"), (square(span) + 4 * square(rise)) / (8 * rise))
    middle = named(join(place, "centre across"), span / 2)
    below = named(join(place, "centre below the springing"), radius - rise)
    return HeadCurve(
        span=span,
        rise=rise,
        crown_at=middle,
        left=Figure(0.0),
        right=span,
        pieces=(Bow(x=middle, below=below, radius=radius),),
    )
