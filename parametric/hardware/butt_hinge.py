"""Butt hinges: a flap let into the edge of the stile, another into the jamb, a knuckle between.

seen from above, shut
            (o)  knuckle, its pin proud of the face
   jamb ====| |====____ stile    flap: let in from the knuckle face, as deep as it is thick
            | |        |         behind: wood left behind the flap
            gap
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from pydantic import Field

from parametric.catalog.screw_holes import DENSE_FROM, LEAD_IN_DENSE, LEAD_IN_LIGHT, ROOT
from parametric.figures import Figure, exceeds, named
from parametric.hardware.hinge import (
    CountedHinges,
    Hinges,
    HungEdge,
    count_hinges,
    load_of,
    place_hinges,
)
from parametric.hardware.wood_taken import OnFace, Taken, through
from parametric.model import Cut, Making, Shaped
from parametric.names import join
from parametric.outlines import Radii, rounded_rectangle
from parametric.written import Length, LengthPair

KnuckleFace = Literal["low face", "high face"]
"""The face of the stile's own frame that the knuckles stand on."""


class ButtHingeSpec(CountedHinges):
    """Butt hinges as written, with callipers from the real thing."""

    kind: Literal["butt"]
    length: Length = Field(description="of the knuckle, end to end")
    leaf: Length | None = Field(
        default=None, description="how wide the flap is, from its edge to the knuckle"
    )
    behind: Length = Field(description="wood left behind the flap, where its width is not written")
    thick: Length = Field(description="of one flap")
    knuckle: Length = Field(description="across it")
    pin_out: Length | None = Field(
        default=None, description="the pin's middle proud of the face; half the knuckle"
    )
    shut_gap: Length | None = Field(
        default=None, description="between the flaps, shut; as the hinge gap"
    )
    from_top: Length = Field(description="from the leaf's top to the top hinge's near end")
    from_bottom: Length = Field(description="from the leaf's foot to the bottom hinge's near end")
    corners: Literal["square", "round"]
    corner: Length | None = Field(default=None, description="radius of the flap's round corners")
    cutter: Length | None = None
    screw: LengthPair | None = Field(default=None, description="thick x long")
    screw_from_edge: Length | None = Field(
        default=None, description="the far row of screws, from the flap's edge"
    )


@dataclass(frozen=True, slots=True, kw_only=True)
class FlapMortise:
    """What is taken out for one flap, alike in the leaf's edge and in the jamb, mm.

    `width` in from the knuckle face; `behind` is the wood left beyond it; `corner` of the two
    inner corners, 0 where they are chopped square; the other two are open at the face.
    """

    length: Figure
    width: Figure
    depth: Figure
    behind: Figure
    corner: Figure
    cutter: Figure
    squared: bool


@dataclass(frozen=True, slots=True, kw_only=True)
class JambMortise:
    """Where one flap goes in the jamb, mm: up from the floor, and down from the head.

    `below_head` is to the mortise's upper end, None where the leaf has no gap above it.
    """

    name: str
    low: Figure
    high: Figure
    below_head: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class HingeScrew:
    """A hinge's screws, mm: `from_far_face` is from their far row to the leaf's far face, if known.

    `pilot` is the drill for their holes in the leaf.
    """

    thick: Figure
    long: Figure
    pilot: Figure
    from_far_face: Figure | None


@dataclass(frozen=True, slots=True, kw_only=True)
class ButtHinges(Hinges):
    """The butt hinges of one edge of a leaf."""

    flap: Figure
    knuckle: Figure
    mortise: FlapMortise
    jamb: tuple[JambMortise, ...]
    screw: HingeScrew | None
    pilot_share: Figure
    """The drill for screws in the leaf, as a share of their thickness."""
    written: ButtHingeSpec


def butt_pin_out(spec: ButtHingeSpec) -> Figure:
    """How far the pin's middle stands proud: as written, else with the knuckle against the face."""
    return spec.knuckle / 2 if spec.pin_out is None else spec.pin_out


def size_butt_hinges(spec: ButtHingeSpec, edge: HungEdge) -> ButtHinges:
    """Count, places, loads and mortises of butt hinges.

    A flap lies flush, so its mortise is as deep as it is thick; where the hinge leaves another
    gap between its flaps than the leaf to the jamb, each mortise takes half the difference.

    Args:
        spec: as written.
        edge: what they hang.

    Source: common practice, no source.
    """
    place = join(edge.leaf, "hinges")

    def at(quantity: str, value: float) -> Figure:
        return named(join(place, quantity), value)

    counted = count_hinges(spec, name=place, height=edge.height, weight=edge.weight)
    length = at("length", spec.length)
    half = length / 2
    places = place_hinges(
        edge.leaf,
        count=int(counted.count),
        top=edge.height - at("from the top", spec.from_top) - half,
        bottom=at("from the bottom", spec.from_bottom) + half,
        half=half,
    )
    knuckle = at("knuckle", spec.knuckle)
    pin_out = at("pin proud of the face", butt_pin_out(spec))
    if spec.leaf is None:
        behind = at("wood behind the flap", spec.behind)
        let_in = at("mortise width", edge.thickness - behind)
        flap = at("flap width", let_in + pin_out - knuckle / 2)
    else:
        flap = at("flap width", spec.leaf)
        let_in = at("mortise width", flap + knuckle / 2 - pin_out)
        behind = at("wood behind the flap", edge.thickness - let_in)
    share = named(join(place, "screw pilot by its thickness"), pilot_share(edge.density), "")
    return ButtHinges(
        kind="butt",
        name=place,
        places=places,
        counted=counted,
        load=load_of(
            spec,
            name=place,
            weight=edge.weight,
            arm=edge.width / 2,
            spread=places[0].centre - places[-1].centre,
            carriers=counted.count,
        ),
        pin_out=pin_out,
        pin_beside=at("pin beyond the edge", edge.gap / 2),
        flap=flap,
        knuckle=knuckle,
        mortise=_mortise(spec, place, length, let_in, behind, edge.gap, edge.cutters),
        jamb=tuple(
            JambMortise(
                name=join(one.name, "in the jamb"),
                low=named(join(one.name, "in the jamb", "low end"), one.low + edge.foot),
                high=named(join(one.name, "in the jamb", "high end"), one.high + edge.foot),
                below_head=None
                if edge.head_gap is None
                else named(
                    join(one.name, "in the jamb", "below the head"),
                    edge.height - one.high + edge.head_gap,
                ),
            )
            for one in places
        ),
        pilot_share=share,
        screw=_screw(spec, place, behind, share),
        written=spec,
    )


def _mortise(
    spec: ButtHingeSpec,
    place: str,
    length: Figure,
    width: Figure,
    behind: Figure,
    gap: Figure,
    cutters: tuple[Figure, ...],
) -> FlapMortise:
    depth: Figure = named(join(place, "flap thickness"), spec.thick)
    if spec.shut_gap is not None:
        depth = depth + (named(join(place, "gap between the flaps"), spec.shut_gap) - gap) / 2
    squared = spec.corners == "square"
    limit = spec.corner * 2 if spec.corner is not None and not squared else width
    fitting = [c for c in cutters if not exceeds(c, limit)]
    own = spec.cutter
    if own is None:
        own = max(fitting, key=float) if fitting else min(cutters, key=float)
    cutter = named(join(place, "cutter"), own)
    if squared:
        corner = Figure(0.0)
    else:
        corner = cutter / 2 if spec.corner is None else spec.corner
    return FlapMortise(
        length=named(join(place, "mortise length"), length),
        width=width,
        depth=named(join(place, "mortise depth"), depth),
        behind=behind,
        corner=named(join(place, "mortise corner"), corner),
        cutter=cutter,
        squared=squared,
    )


def pilot_share(density: Figure) -> Figure:
    """The drill for a wood screw's hole, as a share of its thickness, by the wood it goes into."""
    return (LEAD_IN_DENSE if exceeds(density, DENSE_FROM) else LEAD_IN_LIGHT) * ROOT


def _screw(spec: ButtHingeSpec, place: str, behind: Figure, share: Figure) -> HingeScrew | None:
    if spec.screw is None:
        return None
    far = None
    if spec.screw_from_edge is not None:
        row = named(join(place, "far screws from the flap's edge"), spec.screw_from_edge)
        far = named(join(place, "far screws from the far face"), behind + row)
    thick = named(join(place, "screw thickness"), spec.screw[0])
    return HingeScrew(
        thick=thick,
        pilot=named(join(place, "screw pilot"), share * thick),
        long=named(join(place, "screw length"), spec.screw[1]),
        from_far_face=far,
    )


def hinge_mortises(
    hinges: ButtHinges, *, knuckles: KnuckleFace, thickness: float, shift: float
) -> tuple[Cut, ...]:
    """The flaps' mortises in a stile's outer edge, cut once the leaf is glued and trimmed.

    Args:
        hinges: the leaf's hinges.
        knuckles: the face of the stile's own frame that the knuckles stand on.
        thickness: of the stile, mm.
        shift: turns heights above the finished foot into heights on the blank, mm.
    """
    mortise, deep = hinges.mortise, float(thickness)
    width, corner = float(mortise.width), float(mortise.corner)
    low, high = (0.0, width) if knuckles == "low face" else (deep - width, deep)
    # round where the mortise ends in the wood, open where it comes out at the knuckle face
    radii: Radii = (
        (0.0, corner, corner, 0.0) if knuckles == "low face" else (corner, 0.0, 0.0, corner)
    )
    making = (
        Making(
            by="bench",
            when="after glue-up",
            tool="marked from the hinge, routed against a template, corners chopped square",
        )
        if mortise.squared
        else Making(
            by="router",
            when="after glue-up",
            cutter=mortise.cutter,
            tool="straight cutter against a template on the edge",
        )
    )
    return tuple(
        Shaped(
            name="hinge mortise",
            face="low edge",
            outline=rounded_rectangle(
                (float(place.low) + shift, low, float(place.high) + shift, high), radii
            ),
            depth=mortise.depth,
            making=making,
        )
        for place in reversed(hinges.places)
    )


def butt_wood(hinges: ButtHinges, *, knuckles: OnFace, thickness: Figure) -> tuple[Taken, ...]:
    """The wood that flaps and screws take from the stile."""
    front, back = through(knuckles, hinges.mortise.width, thickness)
    deep = hinges.mortise.depth
    if hinges.screw is not None and exceeds(hinges.screw.long, deep):
        deep = hinges.screw.long
    return tuple(
        Taken(
            name=place.name,
            low=place.low,
            high=place.high,
            near=Figure(0.0),
            far=deep,
            front=front,
            back=back,
        )
        for place in hinges.places
    )
