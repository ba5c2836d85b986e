"""A left stile and a top rail with one moulding between them, straight or under an arch.

The leaf is seen from the front: X from the stile's outer edge, Y up from its foot, mm. The
front is the stile's low face and the rail's high one, as in a framed leaf.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Literal

from parametric.figures import Figure
from parametric.model import Blank, Cut, Making, Material, Part, Placement, Shaped
from parametric.outlines import Outline, Vertex
from parametric.profiles.bead import BeadSpec, size_bead
from parametric.profiles.chamfer import ChamferSpec, size_chamfer
from parametric.profiles.meeting import laid
from parametric.profiles.moulding import CannotStick, Meets, Moulding
from parametric.profiles.ogee import OgeeSpec, size_ogee
from parametric.profiles.on_rails import rail_cuts, under_outline
from parametric.profiles.on_stiles import Opening, stile_cuts
from parametric.profiles.ovolo import OvoloSpec, size_ovolo
from parametric.profiles.sticking import Sticking

Head = Literal["straight", "springs here", "rises into it", "half round"]
OAK = Material(name="oak", look="timber", density=700)
BY = Making(by="bench")
THICK, STILE, LONG, RAIL, SHOULDERS, FOOT = 44.0, 95.0, 700.0, 180.0, 400.0, 80.0
"""Thickness, stile width and length, rail width and shoulder length, top of the rail below."""


def made(moulding: Moulding | CannotStick) -> Moulding:
    assert isinstance(moulding, Moulding)
    return moulding


def ovolo(width: str = "12", depth: str = "12", fillet: str = "2") -> Moulding:
    spec = OvoloSpec.model_validate(
        {"kind": "ovolo", "corners": "mitred", "width": width, "depth": depth, "fillet": fillet}
    )
    return made(size_ovolo(spec, "leaf / sticking"))


def ogee(width: str = "16", depth: str = "12", fillet: str = "2") -> Moulding:
    spec = OgeeSpec.model_validate(
        {"kind": "ogee", "corners": "mitred", "width": width, "depth": depth, "fillet": fillet}
    )
    return made(size_ogee(spec, "leaf / sticking"))


def chamfer(width: str = "10", depth: str = "8") -> Moulding:
    spec = ChamferSpec.model_validate(
        {"kind": "chamfer", "corners": "mitred", "width": width, "depth": depth}
    )
    return made(size_chamfer(spec, "leaf / sticking"))


def bead(across: str = "8", quirk: str = "2", sunk: str = "0.5") -> Moulding:
    spec = BeadSpec.model_validate(
        {"kind": "bead", "corners": "mitred", "round": across, "quirk": quirk, "sunk": sunk}
    )
    return made(size_bead(spec, "leaf / sticking"))


MOULDINGS = {"chamfer": chamfer(), "ovolo": ovolo(), "ogee": ogee(), "bead": bead()}
WAYS = [
    (name, meets)
    for name, moulding in MOULDINGS.items()
    for meets in ("coped", "mitred")
    if moulding.copes or meets == "mitred"
]


def sight_edge(head: Head) -> Outline:
    """The top rail's sight edge in the leaf, from the stile to the right, the wood above it.

    Its blank's low edge is at the springing, Y = LONG - RAIL.
    """
    low, right = LONG - RAIL, STILE + SHOULDERS
    if head == "straight":
        return (Vertex(STILE, low), Vertex(right, low))
    if head == "half round":
        # a quarter of a circle of 400 would take the whole rail: one of 150, and level on
        return (
            Vertex(STILE, low, -math.tan(math.pi / 8)),
            Vertex(STILE + 150.0, low + 150.0),
            Vertex(right, low + 150.0),
        )
    # lowest at the stile and level at the right; or still rising where it meets the stile
    radius, middle = (
        (650.0, STILE + SHOULDERS) if head == "springs here" else (1400.0, STILE - 120.0)
    )
    lowest = min(math.sqrt(radius**2 - (x - middle) ** 2) for x in (STILE, right))
    ends = [(x, math.sqrt(radius**2 - (x - middle) ** 2) - lowest + low) for x in (STILE, right)]
    sweep = math.asin((right - middle) / radius) - math.asin((STILE - middle) / radius)
    return (Vertex(*ends[0], -math.tan(sweep / 4)), Vertex(*ends[1]))


@dataclass(frozen=True, kw_only=True)
class Corner:
    """Both members, and what they were made from."""

    stile: Part
    rail: Part
    sticking: Sticking
    path: Outline

    @property
    def members(self) -> tuple[Part, Part]:
        return (self.stile, self.rail)


def corner(name: str, meets: Meets, head: Head, *, both: bool = False) -> Corner:
    moulding = MOULDINGS[name]
    width = float(moulding.width)
    path = sight_edge(head)
    of_stile = Sticking(
        moulding=moulding, faces=("low face", "high face") if both else ("low face",), meets=meets
    )
    of_rail = Sticking(
        moulding=moulding, faces=("high face", "low face") if both else ("high face",), meets=meets
    )
    stile_blank = Blank(length=Figure(LONG), width=Figure(STILE), thickness=Figure(THICK))
    below = laid(
        (Vertex(STILE + SHOULDERS, FOOT), Vertex(STILE, FOOT)), (0.0, 0.0), (0.0, 1.0), (1.0, 0.0)
    )
    above = laid(path, (0.0, 0.0), (0.0, 1.0), (1.0, 0.0))
    stile = Part(
        name="stile",
        noun="stile",
        mark="S1",
        material=OAK,
        blank=stile_blank,
        placement=Placement(x=(0.0, 0.0, 1.0), y=(1.0, 0.0, 0.0)),
        cuts=stile_cuts(
            of_stile,
            stile_blank,
            edge="high edge",
            wood=(0.0, LONG),
            openings=(Opening(low=below, high=above),),
        ),
    )
    rail_blank = Blank(
        length=Figure(SHOULDERS + width), width=Figure(RAIL), thickness=Figure(THICK)
    )
    low = laid(path, (STILE - width, LONG - RAIL), (1.0, 0.0), (0.0, 1.0))
    cuts: list[Cut] = []
    if head != "straight":
        cuts.append(
            Shaped(
                name="arched underside",
                face="high face",
                outline=under_outline(low, rail_blank),
                depth=THICK,
                making=BY,
            )
        )
    cuts += rail_cuts(of_rail, rail_blank, low=low, high=None, ends=(True, False))
    rail = Part(
        name="rail",
        noun="top rail",
        mark="R1",
        material=OAK,
        blank=rail_blank,
        placement=Placement(
            origin=(STILE - width, THICK, LONG - RAIL), x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0)
        ),
        cuts=tuple(cuts),
    )
    return Corner(stile=stile, rail=rail, sticking=of_rail, path=path)
