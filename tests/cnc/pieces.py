"""Parts written out by hand for the tests: brief G1's stile and rail, and a block with no symmetry."""

from __future__ import annotations

from parametric.model import (
    Assembly,
    Blank,
    Cut,
    Face,
    Groove,
    Group,
    Making,
    Material,
    Part,
    Placement,
    Pocket,
    Slot,
    Trim,
    Vector,
)

TULIPWOOD = Material(name="tulipwood", look="timber", density=480.0)
ROUTER = Making(by="router")
TWELVE = Making(by="router", cutter=12.0)
SIX = Making(by="router", cutter=6.0)
GLUED = Making(by="router", when="after glue-up", cutter=6.0)
SAW = Making(by="saw", when="after glue-up", tool="crosscut")
FENCE = Making(by="bench", when="after glue-up", cutter=6.0, tool="hand router against a fence")

SLOT_CENTRES = (71.0, 189.0, 785.0, 1416.0, 2042.0)
"""Up the stile from the finished foot, brief G1."""
TRIM = 12.0


def pull(face: Face, u: float = 1000.0, v: float = 60.0) -> tuple[Pocket, Pocket]:
    """G1's two pull pockets: flange 160.6 x 42.6 x 1.5 r 6.3, body 150.6 x 32.6 x 14.2 r 3.3."""
    flange = Pocket(
        name="pull flange",
        face=face,
        u=u,
        v=v,
        length=160.6,
        width=42.6,
        corner=6.3,
        depth=1.5,
        making=GLUED,
    )
    body = Pocket(
        name="pull body",
        face=face,
        u=u,
        v=v,
        length=150.6,
        width=32.6,
        corner=3.3,
        depth=14.2,
        surface=1.5,
        making=GLUED,
    )
    return flange, body


def stile(name: str, mark: str, *, right: bool, extra: tuple[Cut, ...] = ()) -> Part:
    """G1's stile, 2126 x 120 x 40: five slots, one stopped groove, both ends trimmed by 12."""
    slots = tuple(
        Slot(
            name="slot",
            face="high edge",
            u0=centre + TRIM - 31,
            u1=centre + TRIM + 31,
            v=20.0,
            width=12.0,
            depth=46.0,
            making=TWELVE,
        )
        for centre in SLOT_CENTRES
    )
    groove = Groove(
        name="panel groove",
        face="high edge",
        u0=226.0 + TRIM,
        u1=714.0 + TRIM,
        v=20.0,
        width=8.2,
        depth=14.0,
        corner=4.0,
        squared=True,
        making=Making(by="router", cutter=8.0),
    )
    trims = (
        Trim(name="foot trim", end="low end", length=TRIM, making=SAW),
        Trim(name="top trim", end="high end", length=TRIM, making=SAW),
    )
    place = (
        Placement(origin=(1024.5, 40.0, -TRIM), x=(0.0, 0.0, 1.0), y=(-1.0, 0.0, 0.0))
        if right
        else Placement(origin=(0.0, 0.0, -TRIM), x=(0.0, 0.0, 1.0), y=(1.0, 0.0, 0.0))
    )
    return Part(
        name=name,
        noun="stile, with pull" if extra else "stile",
        mark=mark,
        material=TULIPWOOD,
        blank=Blank(length=2126.0, width=120.0, thickness=40.0),
        placement=place,
        cuts=(*slots, groove, *trims, *extra),
        faces={
            "low end": "foot",
            "high end": "top",
            "low edge": "outer edge",
            "high edge": "inner edge",
        },
    )


def bottom_rail(name: str) -> Part:
    """G1's bottom rail, 784.5 x 240 x 40: two slots an end, a through groove, the guide groove."""
    ends: tuple[Face, Face] = ("low end", "high end")
    slots = tuple(
        Slot(
            name="slot",
            face=face,
            u0=centre - 31,
            u1=centre + 31,
            v=20.0,
            width=12.0,
            depth=46.0,
            making=TWELVE,
        )
        for face in ends
        for centre in SLOT_CENTRES[:2]
    )
    groove = Groove(
        name="panel groove",
        face="high edge",
        u0=0.0,
        u1=784.5,
        v=20.0,
        width=8.2,
        depth=14.0,
        making=Making(by="router", cutter=8.0),
    )
    guide = Groove(
        name="floor guide groove",
        face="low edge",
        u0=0.0,
        u1=784.5,
        v=20.0,
        width=9.0,
        depth=18.0,
        making=FENCE,
    )
    return Part(
        name=name,
        noun="bottom rail",
        mark="R4",
        material=TULIPWOOD,
        blank=Blank(length=784.5, width=240.0, thickness=40.0),
        placement=Placement(origin=(120.0, 40.0, 0.0), x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0)),
        cuts=(*slots, groove, guide),
        faces={"low edge": "foot edge", "high edge": "upper edge"},
    )


def reading_room() -> Assembly:
    """G1's two leaves as far as the router knows them: stiles, bottom rail and pulls.

    The pull is in the left stile of A and the right stile of B, on both faces.
    """
    pulls = (*pull("low face"), *pull("high face"))
    leaf_a = Group(
        name="leaf A",
        placement=Placement(origin=(-50.0, -66.0, 12.0)),
        parts=(
            stile("leaf A / left stile", "S1", right=False, extra=pulls),
            stile("leaf A / right stile", "S2", right=True),
            bottom_rail("leaf A / bottom rail"),
        ),
    )
    leaf_b = Group(
        name="leaf B",
        placement=Placement(origin=(854.5, -118.0, 12.0)),
        parts=(
            stile("leaf B / left stile", "S2", right=False),
            stile("leaf B / right stile", "S1", right=True, extra=pulls),
            bottom_rail("leaf B / bottom rail"),
        ),
    )
    return Assembly(name="Larch Hill reading room", groups=(leaf_a, leaf_b), states=())


ODD = Blank(length=300.0, width=90.0, thickness=50.0)
"""A block: no cut in it lies on any of its middle planes."""


def odd_pocket(face: Face, u: float, v: float) -> Pocket:
    """10 x 8, r 3, 7 deep."""
    return Pocket(
        name=f"pocket in the {face}",
        face=face,
        u=u,
        v=v,
        length=10.0,
        width=8.0,
        corner=3.0,
        depth=7.0,
        making=SIX,
    )


ODD_CUTS: tuple[Cut, ...] = (
    odd_pocket("high face", 40.0, 25.0),
    odd_pocket("low face", 50.0, 20.0),
    odd_pocket("low edge", 60.0, 12.0),
    odd_pocket("high edge", 70.0, 15.0),
    odd_pocket("low end", 30.0, 13.0),
    odd_pocket("high end", 35.0, 18.0),
)


def odd_block(
    cuts: tuple[Cut, ...] = ODD_CUTS,
    *,
    origin: Vector = (0.0, 0.0, 0.0),
    x: Vector = (1.0, 0.0, 0.0),
    y: Vector = (0.0, 1.0, 0.0),
) -> Assembly:
    """One block in one group."""
    block = Part(
        name="leaf A / block",
        noun="block",
        mark="B1",
        material=TULIPWOOD,
        blank=ODD,
        placement=Placement(origin=origin, x=x, y=y),
        cuts=cuts,
    )
    group = Group(name="leaf A", placement=Placement(), parts=(block,))
    return Assembly(name="block", groups=(group,), states=())
