r"""A pointed head: two arcs of one radius that meet over the middle, centred on the springing line.

seen from the front
        /\
      /    \       equilateral: each centre is the other side's springing point, radius = span
     /      \      lower (drop): the centres lie within the span
    +--------+     higher (lancet): they lie beyond it
       span
"""

from __future__ import annotations

from parametric.figures import Figure, named, square
from parametric.names import join
from parametric.shapes.curve import Bow, HeadCurve


def pointed(span: Figure, rise: Figure, place: str) -> HeadCurve:
    """The arcs that leave both springing points upright and meet at the crown.

    Args:
        span: between the springing points, mm.
        rise: at the point, mm; more than half the span.
        place: `arch`.

    Source: geometry of the circle: (radius - span / 2) squared + rise squared = radius squared.
    Centres on the springing line: common practice, no source.
    """
    radius = named(join(place, "radius"), (square(span) + 4 * square(rise)) / (4 * span))
    middle = named(join(place, "point across"), span / 2)
    level = Figure(0.0)
    return HeadCurve(
        span=span,
        rise=rise,
        crown_at=middle,
        left=Figure(0.0),
        right=span,
        pieces=(
            Bow(x=named(join(place, "left arc centre across"), radius), below=level, radius=radius),
            Bow(
                x=named(join(place, "right arc centre across"), span - radius),
                below=level,
                radius=radius,
            ),
        ),
        joints=(middle,),
        pointed=True,
    )
