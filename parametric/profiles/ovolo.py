r"""An ovolo: a round between two fillets, level where it leaves the upper one.

    face ________ width
                |  fillet
         wood    ''-.
                     \
                      |__  depth; the lower fillet runs out to the edge
                         |

As wide as deep it is a quarter of a circle; wider, a shorter arc.
"""

from __future__ import annotations

import math
from typing import Literal

from parametric.figures import named
from parametric.names import join
from parametric.profiles.moulding import CannotStick, Moulding, StickingBlock, closed, refused
from parametric.units import Unit
from parametric.written import Length


class OvoloSpec(StickingBlock):
    """An ovolo as written, its fillets counted into width and depth."""

    kind: Literal["ovolo"]
    width: Length
    depth: Length
    fillet: Length


def size_ovolo(spec: OvoloSpec, place: str, unit: Unit = "mm") -> Moulding | CannotStick:
    """Its numbers, named at their place (`leaf A / sticking`)."""
    width, depth, fillet = (
        named(join(place, key), getattr(spec, key)) for key in ("width", "depth", "fillet")
    )
    if fault := refused("ovolo", unit, width=width, depth=depth, fillet=fillet, steep=False):
        return fault
    # from level, the arc turns through twice the slope of its chord
    quarter = math.atan((depth - fillet) / (width - fillet)) / 2
    return Moulding(
        name="ovolo",
        width=width,
        depth=depth,
        section=closed(
            (0.0, 0.0, 0.0),
            (width, 0.0, 0.0),
            (width, fillet, -math.tan(quarter)),
            (fillet, depth, 0.0),
            (0.0, depth, 0.0),
        ),
    )
