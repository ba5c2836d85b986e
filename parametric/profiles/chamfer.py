r"""A chamfer: the arris taken off flat.

face ____________
\
           wood       \
                       |  edge
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import named
from parametric.names import join
from parametric.profiles.moulding import CannotStick, Moulding, StickingBlock, closed, refused
from parametric.units import Unit
from parametric.written import Length


class ChamferSpec(StickingBlock):
    """A chamfer as written: how far in across the face, how far down the edge."""

    kind: Literal["chamfer"]
    width: Length
    depth: Length


def size_chamfer(spec: ChamferSpec, place: str, unit: Unit = "mm") -> Moulding | CannotStick:
    """Its numbers, named at their place (`leaf A / sticking`)."""
    width, depth = (named(join(place, key), getattr(spec, key)) for key in ("width", "depth"))
    if fault := refused("chamfer", unit, width=width, depth=depth):
        return fault
    return Moulding(
        name="chamfer",
        width=width,
        depth=depth,
        section=closed((0.0, 0.0, 0.0), (width, 0.0, 0.0), (0.0, depth, 0.0)),
    )
