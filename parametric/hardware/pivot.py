"""Pivots: a pin up into the leaf's foot, another down into its top; the lower one carries all.

seen from above
 __________________________
|   (o)                     |    from edge: the pins' line in from the hinge edge
|___________________________|    from face: in from the face it opens towards; half way
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, named
from parametric.hardware.bore import circle
from parametric.hardware.hinge import HingeBlock, HingeCount, HingePlace, Hinges, HungEdge, load_of
from parametric.hardware.wood_taken import OnFace, Taken
from parametric.model import Cut, End, Making, Shaped
from parametric.names import join
from parametric.written import Length, LengthPair


class PivotSpec(HingeBlock):
    """Pivots as written; `carries` is what the lower one carries."""

    kind: Literal["pivot"]
    pin: LengthPair = Field(description="wide x deep")
    from_edge: Length = Field(description="the pins' line from the hinge edge")
    from_face: Length | None = Field(
        default=None, description="in from the face it opens towards; the middle"
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class Pivots(Hinges):
    """The two pivots of one leaf, mm; `from_face` is in from the face that it opens towards."""

    width: Figure
    depth: Figure
    from_edge: Figure
    from_face: Figure
    written: PivotSpec


def size_pivots(spec: PivotSpec, edge: HungEdge) -> Pivots:
    """Pins, loads and where the leaf turns.

    The lower pivot carries the whole leaf; both hold it upright, a leaf's height apart.

    Args:
        spec: as written.
        edge: what they hang.

    Source: statics.
    """
    place = join(edge.leaf, "hinges")

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    wide, deep = at("pin width", spec.pin[0]), at("pin depth", spec.pin[1])
    from_edge = at("pins from the edge", spec.from_edge)
    from_face = at(
        "pins from the face", edge.thickness / 2 if spec.from_face is None else spec.from_face
    )
    top, bottom = join(edge.leaf, "top pivot"), join(edge.leaf, "bottom pivot")
    places = (
        HingePlace(
            name=top,
            centre=named(join(top, "centre"), edge.height - deep / 2),
            low=named(join(top, "low end"), edge.height - deep),
            high=named(join(top, "high end"), edge.height),
        ),
        HingePlace(
            name=bottom,
            centre=named(join(bottom, "centre"), deep / 2),
            low=named(join(bottom, "low end"), 0.0),
            high=named(join(bottom, "high end"), deep),
        ),
    )
    two = Figure(2.0, unit="")
    return Pivots(
        kind="pivot",
        name=place,
        places=places,
        counted=HingeCount(
            count=named(join(place, "count"), two, ""),
            by="written",
            by_height=None,
            by_weight=None,
            past=None,
            saving=None,
        ),
        load=load_of(
            spec,
            name=place,
            weight=edge.weight,
            arm=edge.width / 2 - from_edge,
            spread=edge.height,
            carriers=Figure(1.0, unit=""),
        ),
        pin_out=at("pin proud of the face", -from_face),
        pin_beside=at("pin beyond the edge", -from_edge),
        width=wide,
        depth=deep,
        from_edge=from_edge,
        from_face=from_face,
        written=spec,
    )


def pin_bores(
    pivots: Pivots,
    *,
    opens_to: Literal["low face", "high face"],
    thickness: float,
    trimmed: float,
) -> tuple[Cut, ...]:
    """A bore up into a stile's foot and one down into its top, after both ends are trimmed.

    Args:
        pivots: the leaf's pivots.
        opens_to: the face of the stile's own frame that the leaf opens towards.
        thickness: of the stile, mm.
        trimmed: taken off each end first, mm.
    """
    ends: tuple[End, End] = ("low end", "high end")
    through = pivots.from_face if opens_to == "low face" else thickness - pivots.from_face
    return tuple(
        Shaped(
            name="pivot bore",
            face=end,
            outline=circle(pivots.from_edge, through, pivots.width),
            surface=trimmed,
            depth=trimmed + pivots.depth,
            making=Making(
                by="bench", when="after glue-up", tool="bored square to the end in a guide"
            ),
        )
        for end in ends
    )


def pivot_wood(pivots: Pivots, *, opens_to: OnFace, thickness: Figure) -> tuple[Taken, ...]:
    """The wood that the pins take from the stile's ends."""
    half = pivots.width / 2
    middle = pivots.from_face if opens_to == "front" else thickness - pivots.from_face
    return tuple(
        Taken(
            name=place.name,
            low=place.low,
            high=place.high,
            near=pivots.from_edge - half,
            far=pivots.from_edge + half,
            front=middle - half,
            back=middle + half,
        )
        for place in pivots.places
    )
