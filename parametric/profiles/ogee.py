r"""An ogee: a round that runs into a hollow, between two fillets, level at both.

    face ________ width
                |  fillet
         wood    ''-.
                     \
                      '-..__  depth
                            |  the lower fillet runs out to the edge

Both arcs are of one radius and meet halfway, so that it is as wide as deep, or wider.
"""

from __future__ import annotations

import math
from typing import Literal

from parametric.figures import named
from parametric.names import join
from parametric.profiles.moulding import CannotStick, Moulding, StickingBlock, closed, refused
from parametric.units import Unit
from parametric.written import Length


class OgeeSpec(StickingBlock):
    """An ogee as written, its fillets counted into width and depth."""

    kind: Literal["ogee"]
    width: Length
    depth: Length
    fillet: Length


def size_ogee(spec: OgeeSpec, place: str, unit: Unit = "mm") -> Moulding | CannotStick:
    """Its numbers, named at their place (`leaf A / sticking`)."""
    width, depth, fillet = (
        named(join(place, key), getattr(spec, key)) for key in ("width", "depth", "fillet")
    )
    if fault := refused("ogee", unit, width=width, depth=depth, fillet=fillet, steep=False):
        return fault
    # each arc turns from level to twice the slope of the line between the ends
    bulge = math.tan(math.atan((depth - fillet) / (width - fillet)) / 2)
    return Moulding(
        name="ogee",
        width=width,
        depth=depth,
        section=closed(
            (0.0, 0.0, 0.0),
            (width, 0.0, 0.0),
            (width, fillet, -bulge),
            ((width + fillet) / 2, (depth + fillet) / 2, bulge),
            (fillet, depth, 0.0),
            (0.0, depth, 0.0),
        ),
    )
