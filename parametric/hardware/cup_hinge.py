"""Cup hinges: a round cup bored into the back of the leaf, an arm to the side of the case.

back of the leaf
 ______________
|      _
|--->(   )      cup from edge: from the leaf's edge to the cup's own
|      -        boring centre: that and half the cup
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.figures import Figure, named
from parametric.hardware.bore import circle
from parametric.hardware.hinge import (
    LEVEL_ENDS,
    UPRIGHT_ENDS,
    CountedHinges,
    Hinges,
    HungEdge,
    count_hinges,
    load_of,
    place_hinges,
)
from parametric.hardware.wood_taken import Taken, through
from parametric.model import Cut, Face, Making, Shaped
from parametric.names import join
from parametric.written import Length, LengthPair


class CupHingeSpec(CountedHinges):
    """Cup hinges as written, from their data sheet."""

    kind: Literal["cup"]
    cup: Length = Field(description="across it")
    cup_from_edge: Length = Field(description="from the leaf's edge to the cup's own")
    from_ends: Length = Field(description="from the leaf's ends to the middle of the first hinge")
    depth: Length
    screws: LengthPair | None = Field(default=None, description="apart x behind the cup's middle")
    pilot: LengthPair = Field(description="wide x deep")
    least_gap: Length | None = Field(
        default=None, description="what the leaf needs free beside its hinge edge as it opens"
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class PilotBores:
    """Two bores for a cup's screws, mm: how far apart, how far behind the cup's middle."""

    apart: Figure
    behind: Figure
    width: Figure
    depth: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class CupHinges(Hinges):
    """The cup hinges of one leaf, mm.

    They move on links: `pin_out` and `pin_beside`, both 0, only stand for them where a leaf is
    shown turning. `behind` is the wood left between a cup's floor and the leaf's face.
    """

    cup: Figure
    from_edge: Figure
    boring: Figure
    depth: Figure
    behind: Figure
    pitch: Figure
    pilots: PilotBores | None
    written: CupHingeSpec


def size_cup_hinges(spec: CupHingeSpec, edge: HungEdge) -> CupHinges:
    """Count, places, loads and bores of a leaf's cup hinges.

    Args:
        spec: as written.
        edge: what they hang.

    Source: the cup's middle is half its width in from its own edge (arithmetic).
    """
    place = join(edge.leaf, "hinges")

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    counted = count_hinges(spec, name=place, height=edge.height, weight=edge.weight)
    cup, ends = at("cup", spec.cup), at("from the ends", spec.from_ends)
    far, words = edge.height - ends, LEVEL_ENDS if edge.level else UPRIGHT_ENDS
    places = place_hinges(
        edge.leaf,
        count=int(counted.count),
        top=ends if edge.level else far,
        bottom=far if edge.level else ends,
        half=cup / 2,
        ends=words,
    )
    from_edge, depth = at("cup from the edge", spec.cup_from_edge), at("cup depth", spec.depth)
    pilots = None
    if spec.screws is not None:
        pilots = PilotBores(
            apart=at("screws apart", spec.screws[0]),
            behind=at("screws behind the cup's middle", spec.screws[1]),
            width=at("pilot width", spec.pilot[0]),
            depth=at("pilot depth", spec.pilot[1]),
        )
    return CupHinges(
        kind="cup",
        name=place,
        places=places,
        counted=counted,
        load=load_of(
            spec,
            name=place,
            weight=edge.weight,
            # a flap hangs under or stands on all its hinges alike: none is pulled aside
            arm=Figure(0.0) if edge.level else edge.width / 2,
            spread=places[-1].centre - places[0].centre
            if edge.level
            else places[0].centre - places[-1].centre,
            carriers=counted.count,
            ends=words,
        ),
        pin_out=at("pin proud of the face", 0.0),
        pin_beside=at("pin beyond the edge", 0.0),
        cup=cup,
        from_edge=from_edge,
        boring=at("boring centre from the edge", from_edge + cup / 2),
        depth=depth,
        behind=at("wood behind the cup", edge.thickness - depth),
        pitch=at("pitch", (edge.height - 2 * ends) / (counted.count - 1)),
        pilots=pilots,
        written=spec,
    )


def cup_bores(
    hinges: CupHinges, *, back: Face, shift: float, far_edge: Figure | None = None
) -> tuple[Cut, ...]:
    """The cups and their screws' pilots in the back of a stile, from the foot up; of a flap in
    that of a rail.

    Args:
        hinges: the leaf's hinges.
        back: the face of the piece's own frame that is the leaf's back.
        shift: turns heights above the finished foot, of a flap places from its left end, into
            places along the blank, mm.
        far_edge: how wide the piece is whose high edge the hinges are at, mm; None where they
            are at its low one.
    """

    def across(off_edge: Figure) -> Figure:
        return off_edge if far_edge is None else far_edge - off_edge

    cuts: list[Cut] = []
    for place in sorted(hinges.places, key=lambda one: float(one.centre)):
        up = place.centre + shift
        cuts.append(_bore("hinge cup", back, up, across(hinges.boring), hinges.cup, hinges.depth))
        if hinges.pilots is not None:
            one = hinges.pilots
            behind = across(hinges.boring + one.behind)
            cuts += [
                _bore("hinge screw pilot", back, side, behind, one.width, one.depth)
                for side in (up - one.apart / 2, up + one.apart / 2)
            ]
    return tuple(cuts)


def _bore(name: str, face: Face, u: Figure, v: Figure, wide: Figure, deep: Figure) -> Shaped:
    return Shaped(
        name=name,
        face=face,
        outline=circle(u, v, wide),
        depth=deep,
        making=Making(
            by="bench",
            when="after glue-up",
            tool="hinge-boring bit in a drill stand, slow, against a fence"
            if name == "hinge cup"
            else "twist bit with a stop",
        ),
    )


def cup_wood(hinges: CupHinges, *, thickness: Figure) -> tuple[Taken, ...]:
    """The wood that cups take from the back of the stile."""
    front, back = through("back", hinges.depth, thickness)
    return tuple(
        Taken(
            name=place.name,
            low=place.low,
            high=place.high,
            near=hinges.from_edge,
            far=hinges.from_edge + hinges.cup,
            front=front,
            back=back,
        )
        for place in hinges.places
    )
