"""An elliptical head: half an ellipse, cut and drawn as true arcs that touch one another.

seen from the front
    __---------__
 _--             --_    rise
|                   |   it leaves both springing points upright
+-------------------+
        span
"""

from __future__ import annotations

import math

from parametric.figures import Figure, exceeds, named
from parametric.names import join
from parametric.shapes.curve import Bow, HeadCurve
from parametric.shapes.ellipse_arcs import quarter_arcs
from parametric.shapes.segmental import segmental

LONGEST_TO_SHORTEST = 20
"""An ellipse whose half axes differ more turns its ends on next to nothing. Common practice, no source."""


def elliptical(span: Figure, rise: Figure, place: str) -> HeadCurve:
    """Half an ellipse over a span, as few arcs as keep within 0.02 mm of it.

    Arcs are numbered from the springing points to the middle one, which both sides share. An
    ellipse as high as half its span is a circle, and one arc.

    Args:
        span: between the springing points, mm.
        rise: at the middle, mm.
        place: `arch`.

    Source: ellipse with half axes span / 2 and rise; the arcs by ellipse_arcs.
    """
    if not (exceeds(span / 2, rise) or exceeds(rise, span / 2)):
        return segmental(span, rise, place)

    def at(quantity: str, value: float, op: str) -> Figure:
        return named(join(place, quantity), Figure(value, op=op, args=(span, rise)))

    half = float(span) / 2
    arcs = quarter_arcs(half, float(rise))
    middle = named(join(place, "centre across"), span / 2)
    left: list[Bow] = []
    joints: list[Figure] = []
    for number, arc in enumerate(arcs, 1):
        last = number == len(arcs)
        of = f"of arc {number} of {len(arcs)} to an ellipse"
        radius = at(f"arc {number} radius", arc.radius, f"radius {of}")
        across = at(f"arc {number} centre across", half - arc.x, f"centre across {of}")
        below = at(f"arc {number} centre below the springing", -arc.y, f"centre below {of}")
        left.append(
            Bow(
                x=middle if last else across,
                below=Figure(0.0) if number == 1 and half > float(rise) else below,
                radius=radius,
            )
        )
        if not last:
            end = half - arc.x - arc.radius * math.cos(arc.until)
            joints.append(Figure(end, op=f"end {of}", args=(span, rise)))
    right = [Bow(x=span - bow.x, below=bow.below, radius=bow.radius) for bow in reversed(left[:-1])]
    return HeadCurve(
        span=span,
        rise=rise,
        crown_at=middle,
        left=Figure(0.0),
        right=span,
        pieces=(*left, *right),
        joints=(*joints, *(span - x for x in reversed(joints))),
    )
