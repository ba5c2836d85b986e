r"""A bead: half a round along the edge, with a quirk behind it.

    face _______            the top of the bead lies `sunk` below the face
                |  .-''-.
         wood   | /      \
                |_|      |  depth: down to the middle of the round
          quirk            edge

The bead is sunk by a shaving or two, so that cleaning off the face leaves it round (common
practice, no source).
"""

from __future__ import annotations

from typing import Literal

from parametric.figures import exceeds, named
from parametric.names import join
from parametric.outlines import HALF
from parametric.profiles.moulding import CannotStick, Moulding, StickingBlock, closed
from parametric.units import Unit, length_text
from parametric.written import Length


class BeadSpec(StickingBlock):
    """A bead as written: its diameter, the quirk's width, and how far below the face it lies."""

    kind: Literal["bead"]
    round: Length
    quirk: Length
    sunk: Length


def size_bead(spec: BeadSpec, place: str, unit: Unit = "mm") -> Moulding | CannotStick:
    """Its numbers, named at their place (`leaf A / sticking`)."""
    across, quirk, sunk = (
        named(join(place, key), getattr(spec, key)) for key in ("round", "quirk", "sunk")
    )
    for key, value in (("round", across), ("quirk", quirk), ("sunk", sunk)):
        if not exceeds(value, 0.0):
            said = length_text(value, unit)
            return CannotStick(
                message=f"The bead's {key} is {said}.",
                found=said,
                allowed="more than 0",
                fix=f"Write its {key}.",
                key=key,
            )
    width = named(join(place, "width"), across + quirk)
    depth = named(join(place, "depth"), sunk + across / 2)
    return Moulding(
        name="bead",
        width=width,
        depth=depth,
        section=closed(
            (0.0, 0.0, 0.0),
            (width, 0.0, 0.0),
            (width, depth, 0.0),
            (across, depth, -HALF),
            (0.0, depth, 0.0),
        ),
        copes=False,
    )
