r"""A half round head: half a circle, as high as half its span.

seen from the front
    _-----_
  /         \
 +-----+-----+   the centre lies on the springing line
      span
"""

from __future__ import annotations

from parametric.figures import Figure, named
from parametric.names import join
from parametric.shapes.curve import Bow, HeadCurve


def half_round(span: Figure, place: str) -> HeadCurve:
    """The half circle over a span; its rise is found.

    Args:
        span: between the springing points, mm.
        place: `arch`.
    """
    radius = named(join(place, "radius"), span / 2)
    middle = named(join(place, "centre across"), span / 2)
    return HeadCurve(
        span=span,
        rise=named(join(place, "rise"), radius),
        crown_at=middle,
        left=Figure(0.0),
        right=span,
        pieces=(Bow(x=middle, below=Figure(0.0), radius=radius),),
    )
