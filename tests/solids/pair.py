"""A small sliding pair made by hand: every kind of cut, no two faces of a part alike.

Two leaves of 400 x 700 x 40 on two tracks, a raised panel below glass, sliding past each
other by 340. The left stile of B is the right stile of A turned about. Lengths in mm.
"""

from __future__ import annotations

from dataclasses import replace
from itertools import product

from parametric.model import (
    Assembly,
    Blank,
    Cut,
    Groove,
    Group,
    Island,
    Making,
    Material,
    Mitre,
    Part,
    Placement,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    Slide,
    Slot,
    State,
    Tongue,
    Trim,
    Vector,
)

ASH = Material(name="ash", look="timber", density=640)
GLASS = Material(name="toughened glass", look="glass", density=2500)
BRASS = Material(name="aged brass", look="metal", density=8500)
STEEL = Material(name="steel", look="metal", density=7850)

SAW, ROUTER, BENCH = Making(by="saw"), Making(by="router", cutter=6.0), Making(by="bench")

UP, DOWN, RIGHT, LEFT = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0), (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)
AWAY = (0.0, 1.0, 0.0)


def made(
    name: str,
    mark: str,
    noun: str,
    size: tuple[float, float, float],
    *cuts: Cut,
    material: Material = ASH,
) -> Part:
    """A part at the origin."""
    blank = Blank(length=size[0], width=size[1], thickness=size[2])
    return Part(
        name=name,
        noun=noun,
        mark=mark,
        material=material,
        blank=blank,
        placement=Placement(),
        cuts=cuts,
    )


def at(part: Part, origin: Vector, x: Vector, y: Vector) -> Part:
    """The part stood somewhere."""
    return replace(part, placement=Placement(origin=origin, x=x, y=y))


def stile(name: str, mark: str, noun: str, inner: str, pull: bool) -> Part:
    """700 finished, 12 to trim at each end; grain up, high face to the front."""
    edge = "low edge" if inner == "low" else "high edge"
    cuts: list[Cut] = [
        Trim(name="foot trim", end="low end", length=12.0, making=SAW),
        Trim(name="head trim", end="high end", length=12.0, making=SAW),
        Groove(
            name="panel groove",
            face=edge,
            u0=12 + 70.0,
            u1=12 + 340.0,
            v=20.0,
            width=8.2,
            depth=10.0,
            making=ROUTER,
            corner=3.0,
            squared=True,
        ),
    ]
    for label, low in (("bottom", 20.0), ("middle", 350.0), ("top", 655.0)):
        slot = Slot(
            name=f"{label} slot",
            face=edge,
            u0=12 + low,
            u1=12 + low + 32,
            v=20.0,
            width=10.0,
            depth=24.0,
            making=ROUTER,
        )
        cuts.append(slot)
    if pull:
        pocket = Pocket(
            name="flange pocket",
            face="high face",
            u=12 + 300.0,
            v=30.0,
            length=100.6,
            width=30.6,
            corner=6.3,
            depth=1.5,
            making=ROUTER,
        )
        deep = replace(
            pocket,
            name="body pocket",
            length=90.6,
            width=20.6,
            corner=3.3,
            depth=13.7,
            surface=1.5,
        )
        cuts += [pocket, deep]
    return made(name, mark, noun, (724.0, 60.0, 40.0), *cuts)


def rail(name: str, mark: str, noun: str, width: float, slot: float, groove: str | None) -> Part:
    """280 between the stiles; grain across, high face to the front, `slot` up from its foot."""
    cuts: list[Cut] = [
        Slot(
            name=f"{end} slot",
            face=end,
            u0=slot,
            u1=slot + 32,
            v=20.0,
            width=10.0,
            depth=24.0,
            making=ROUTER,
        )
        for end in ("low end", "high end")
    ]
    if groove is not None:
        cuts.append(
            Groove(
                name="panel groove",
                face="low edge" if groove == "low" else "high edge",
                u0=0.0,
                u1=280.0,
                v=20.0,
                width=8.2,
                depth=10.0,
                making=SAW,
            )
        )
    return made(name, mark, noun, (280.0, width, 40.0), *cuts)


def raised_panel(name: str) -> Part:
    """Grain up, field to the front."""
    slope = (26.5 - 15) / 40
    return made(
        name,
        "P1",
        "panel",
        (267.0, 296.0, 28.0),
        RaisedBevel(name="bevel", run=40.0, edge=15.0, foot=26.5, making=SAW),
        Tongue(
            name="tongue", thickness=8.0, length=11.0, back=5.0, edge=15.0, slope=slope, making=SAW
        ),
    )


def stop(name: str, mark: str, length: float) -> Part:
    """10 wide, 13 deep, mitred at both ends."""
    return made(
        name,
        mark,
        "glass stop",
        (length, 10.0, 13.0),
        Mitre(name="low mitre", end="low end", keeps="low edge", making=SAW),
        Mitre(name="high mitre", end="high end", keeps="low edge", making=SAW),
    )


def pull(name: str) -> Part:
    """A dished flush pull: flange 100 x 30, body 90 x 20, hollow from the front."""
    return made(
        name,
        "H1",
        "flush pull",
        (100.0, 30.0, 13.5),
        RoundCorners(name="flange corners", radius=6.0, making=BENCH),
        Island(
            name="body",
            face="low face",
            length=90.0,
            width=20.0,
            corner=3.0,
            outer=6.0,
            depth=12.0,
            making=BENCH,
        ),
        Pocket(
            name="dish",
            face="high face",
            u=50.0,
            v=15.0,
            length=86.0,
            width=16.0,
            corner=2.0,
            depth=11.0,
            making=BENCH,
        ),
        material=BRASS,
    )


def leaf_parts(leaf: str) -> tuple[Part, ...]:
    """The 22 pieces of a leaf, in the leaf's frame (x right, y away, z up)."""
    tenon = made(
        "",
        "T1",
        "loose tenon",
        (44.0, 30.0, 10.0),
        RoundArrises(name="round edges", radius=5.0, making=ROUTER),
    )
    on_left = at(
        stile(f"{leaf} / left stile", "S1", "stile, with pull", "low", pull=True),
        (60.0, 40.0, -12.0),
        UP,
        LEFT,
    )
    on_right = at(
        stile(f"{leaf} / right stile", "S2", "stile", "high", pull=False),
        (400.0, 40.0, -12.0),
        UP,
        LEFT,
    )
    if leaf == "leaf B":
        on_left = at(replace(on_right, name=f"{leaf} / left stile"), (0.0, 0.0, -12.0), UP, RIGHT)
        on_right = at(
            stile(f"{leaf} / right stile", "S3", "stile, with pull", "high", pull=True),
            (400.0, 40.0, -12.0),
            UP,
            LEFT,
        )
    parts = [
        on_left,
        on_right,
        at(
            rail(f"{leaf} / bottom rail", "R1", "bottom rail", 80, 20, "high"),
            (60, 40, 0),
            RIGHT,
            UP,
        ),
        at(rail(f"{leaf} / lock rail", "R2", "lock rail", 60, 20, "low"), (60, 40, 330), RIGHT, UP),
        at(rail(f"{leaf} / top rail", "R3", "top rail", 60, 15, None), (60, 40, 640), RIGHT, UP),
        at(raised_panel(f"{leaf} / panel"), (60 + 140 + 148, 29, 80 - 8.5), UP, LEFT),
    ]
    for (label, foot), (side, x) in product(
        (("bottom rail", 21.0), ("lock rail", 351.0), ("top rail", 656.0)),
        (("left", 38.0), ("right", 318.0)),
    ):
        piece = replace(tenon, name=f"{leaf} / {label} / {side} tenon")
        parts.append(at(piece, (x, 25.0, foot), RIGHT, UP))
    glass = made(f"{leaf} / glass", "G1", "glass", (276.0, 246.0, 6.0), material=GLASS)
    parts.append(at(glass, (62.0, 23.0, 392.0), RIGHT, UP))
    for side, y, turned in (("front", 17.0, False), ("back", 23.0, True)):
        for label, length, start, x, end, inwards in (
            ("foot", 280.0, (60.0, 390.0), RIGHT, (340.0, 390.0), UP),
            ("head", 280.0, (340.0, 640.0), LEFT, (60.0, 640.0), DOWN),
            ("left", 250.0, (60.0, 640.0), DOWN, (60.0, 390.0), RIGHT),
            ("right", 250.0, (340.0, 390.0), UP, (340.0, 640.0), LEFT),
        ):
            corner = end if turned else start
            along = (-x[0], -x[1], -x[2]) if turned else x
            piece = stop(f"{leaf} / {side} {label} stop", "B1" if length == 280 else "B2", length)
            parts.append(at(piece, (corner[0], y, corner[1]), along, inwards))
    x = 45.0 if leaf == "leaf A" else 385.0
    parts.append(at(pull(f"{leaf} / pull"), (x, 13.5, 250.0), UP, LEFT))
    return tuple(parts)


def pair() -> Assembly:
    """Leaf A on the front track at the left, leaf B behind it at the right, two tracks above."""
    track = made("tracks / front track", "K1", "track", (800.0, 40.0, 30.0), material=STEEL)
    return Assembly(
        name="Hand-made pair",
        groups=(
            Group(
                name="leaf A",
                placement=Placement(origin=(0.0, -106.0, 12.0)),
                parts=leaf_parts("leaf A"),
                motion=(Slide(direction=(1.0, 0.0, 0.0), travel=340.0),),
            ),
            Group(
                name="leaf B",
                placement=Placement(origin=(340.0, -54.0, 12.0)),
                parts=leaf_parts("leaf B"),
                motion=(Slide(direction=(-1.0, 0.0, 0.0), travel=340.0),),
            ),
            Group(
                name="tracks",
                placement=Placement(),
                parts=(
                    at(track, (-30.0, -106.0, 722.0), RIGHT, AWAY),
                    at(
                        replace(track, name="tracks / back track"),
                        (-30.0, -54.0, 722.0),
                        RIGHT,
                        AWAY,
                    ),
                ),
            ),
        ),
        states=(
            State(name="shut", open={}),
            State(name="half", open={"leaf A": 0.5, "leaf B": 0.5}),
            State(name="open", open={"leaf A": 1.0, "leaf B": 1.0}),
        ),
    )
