"""Whether a leaf gets past its jamb and its neighbour: circles about the pin, seen from above.

        pin
   . (o)_______________________ . far
   | |     knuckle face         | corner
   | |__________________________|. . as it opens, the far corner comes round on its circle
   jamb                           gap  until it is level with the knuckle face, and out

The jamb or the other leaf stands flush with the knuckle face and no farther out.
"""

from __future__ import annotations

from parametric.figures import Figure, hypot, largest, named, root, square, tangent


def swing_out(width: float, thickness: float, name: str) -> Figure:
    """How far past its width a square-edged leaf reaches when it turns about its own corner, mm.

    Source: its diagonal less its width (Pythagoras).
    """
    return named(name, hypot(width, thickness) - width)


def bevel_across(thickness: float, angle: float, name: str) -> Figure:
    """How far a bevel sets one face's edge back over the thickness, mm; angle in deg."""
    return named(name, thickness * tangent(angle))


def closing_gap(
    *,
    width: float,
    thickness: float,
    pin_out: float,
    pin_beside: float,
    name: str,
    bevel: float | None = None,
) -> Figure:
    """The least gap that lets a leaf's far edge past the jamb, or past a leaf that stays shut.

    Every point of that edge runs on a circle about the pin, and is past once it is level with
    the knuckle face; of a pin that stands within the thickness, once it is level with the pin.
    Along a straight edge the squared reach is a parabola that opens upwards, so one of the
    corners decides: the near one needs nothing. A bevel on the other leaf is no help, for the
    corner comes closest where that leaf is full.

    Args:
        width: of the leaf on its knuckle face, mm.
        thickness: of the leaf, mm.
        pin_out: the pin's middle proud of the knuckle face, mm; less than nothing within it.
        pin_beside: the pin's middle beyond the hinge edge, mm; less than nothing within it.
        name: of the result.
        bevel: how far the far corner is set back by a bevel, mm; None for a square edge.

    Source: Pythagoras.
    """
    arm = width + pin_beside
    set_back = arm if bevel is None else arm - bevel
    reach = hypot(set_back, thickness + pin_out)
    out = reach if float(pin_out) <= 0 else root(square(reach) - square(pin_out))
    return named(name, largest(0.0, out - arm))


def heel_gap(*, from_edge: float, from_face: float, name: str) -> Figure:
    """The least gap at the hinge jamb for a leaf on pivots: its near corner comes round too, mm.

    Args:
        from_edge: the pins' line in from the hinge edge, mm.
        from_face: in from the face that the leaf opens towards, mm; for one that opens both
            ways, from the farther face.
        name: of the result.

    Source: Pythagoras.
    """
    return named(name, hypot(from_edge, from_face) - from_edge)


def casing_cleared(pin_out: float, name: str) -> Figure:
    """How proud of the knuckle face a casing may stand for the leaf to lie right back on it, mm.

    Turned half a circle, the knuckle face lies as far out from the pin as it did in.
    Source: geometry.
    """
    return named(name, 2 * pin_out)
