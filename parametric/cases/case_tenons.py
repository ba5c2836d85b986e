"""Loose tenons between the boards of a case: a slot in the face of the one, its mate in the end.

upright board, on its face       level board, on its end      through both
     front                        front                        |     |_________
----|--e--|------|------|       |--e-(====)  (====)  |        =|=====|===|    tenon: into the
    (====)  (====)              |____________________|         |     |_________   face less
    |<long>|<-pitch              v: half its thickness         |     |            deep
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.cases.boring import Bite, BoringSpec
from parametric.cases.butt_joints import InEnd, OnFace
from parametric.cases.drawer_corners import DEEP_IN_SIDE, GLUE_ROOM
from parametric.cases.fixings import Fixings, Joint, TooShort, slots_along
from parametric.figures import Figure, named, smallest
from parametric.model import Making, Pocket, Slot
from parametric.names import join

IN_END_SLOT = Making(by="bench", tool="slot mortiser, or a router in a jig")


@dataclass(frozen=True, slots=True, kw_only=True)
class Tenons:
    """Loose tenons of one joint, mm, and their slots: as wide as a tenon is thick."""

    places: Fixings
    thick: Figure
    wide: Figure
    long: Figure
    slot_long: Figure
    in_face: Figure
    in_end: Figure
    middle: Figure


def size_tenons(spec: BoringSpec, joint: Joint) -> Tenons | TooShort:
    """Loose tenons of one joint; its name is `cabinet base / bottom / left end`.

    Args:
        spec: how the workshop bores.
        joint: the joint.

    Two thirds of the face's board, less where that leaves too little behind, or where the board
    has slots in both its faces; the rest and room for glue into the end. Common practice, no
    source.
    """
    thick, wide, long = spec.loose_tenon
    slot_long = wide + spec.tenon_play
    places = slots_along(spec, joint, long=slot_long, wide=thick)
    if isinstance(places, TooShort):
        return places

    def at(quantity: str, value: float) -> Figure:
        return named(join(joint.name, quantity), value)

    wood = joint.face - spec.behind
    in_face = at(
        "into the face",
        smallest(joint.face * DEEP_IN_SIDE, wood / 2 if joint.both_faces else wood),
    )
    return Tenons(
        places=places,
        thick=at("tenon thick", thick),
        wide=at("tenon wide", wide),
        long=at("tenon long", long),
        slot_long=at("slot long", slot_long),
        in_face=in_face,
        in_end=at("into the end", long - in_face + GLUE_ROOM),
        middle=at("middle of the end", joint.end / 2),
    )


def tenons_in_face(tenons: Tenons, on: OnFace) -> Iterator[Pocket]:
    """Round-ended slots across the face of the board that the other stands on."""
    for place in tenons.places.figures:
        yield Pocket(
            name="tenon slot",
            face=on.face,
            u=on.up,
            v=place + on.front if on.front else place,
            length=tenons.thick,
            width=tenons.slot_long,
            corner=tenons.thick / 2,
            depth=tenons.in_face,
            making=Making(
                by="router", cutter=tenons.thick, tool="straight cutter against a straight edge"
            ),
        )


def tenons_in_end(tenons: Tenons, on: InEnd) -> Iterator[Slot]:
    """Their mates in the end of the other, which lies with its front edge low."""
    half = tenons.slot_long / 2
    for place in tenons.places.figures:
        middle = place + on.front if on.front else place
        yield Slot(
            name="tenon slot",
            face=on.end,
            u0=middle - half,
            u1=middle + half,
            v=tenons.middle,
            width=tenons.thick,
            depth=tenons.in_end,
            making=dataclasses.replace(IN_END_SLOT, cutter=tenons.thick),
        )


def tenon_bites(tenons: Tenons, *, up: Figure, front: float = 0.0) -> tuple[Bite, ...]:
    """What the slots take from the face, as bites in the case.

    Args:
        tenons: of the joint.
        up: the middle of the joint from the case's foot, mm.
        front: how far behind the front edges its boards begin, mm.
    """
    half, long = float(tenons.thick) / 2, float(tenons.slot_long) / 2
    return tuple(
        Bite(
            name=f"{tenons.places.name}, a tenon's slot",
            low=float(up) - half,
            high=float(up) + half,
            near=front + place - long,
            far=front + place + long,
        )
        for place in tenons.places.places
    )
