"""One sliding leaf in which nothing is even: no cut lies in a middle, no two ends are alike.

Every kind of cut is on it. Turned over, mirrored or turned end for end, no part of it is
what it was.
"""

from __future__ import annotations

import functools
from fractions import Fraction

from parametric.cnc.bench_work import bench_work
from parametric.cnc.notes import Stamp
from parametric.cnc.setups import SetUp, set_ups
from parametric.cnc.tool_list import BENCH_LIST_HEADER, TOOL_LIST_HEADER, bench_list, tool_list
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
)
from parametric.pack.verifying.known import Known
from parametric.trade.fingerprint import mark
from parametric.writers.csv import write_csv
from parametric.writers.dxf import write_cnc_dxf

ASH = Material(name="ash", look="timber", density=640)
STEEL = Material(name="steel", look="metal", density=7850)
GLASS = Material(name="toughened glass", look="glass", density=2500)
EARLY = Making(by="router", cutter=6.0)
LATE = Making(by="router", when="after glue-up", cutter=6.0)
SAW = Making(by="saw", tool="saw")
BENCH = Making(by="bench", when="after glue-up", tool="by hand")
FINGERPRINT = "0123abcd" * 8
UP, ACROSS, BACK = (0.0, 0.0, 1.0), (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)


def part(
    name: str,
    noun: str,
    mark: str,
    size: tuple[float, float, float],
    place: Placement,
    *cuts: Cut,
    material: Material = ASH,
    supplied: bool = False,
) -> Part:
    return Part(
        name=name,
        noun=noun,
        mark=mark,
        material=material,
        blank=Blank(length=size[0], width=size[1], thickness=size[2]),
        placement=place,
        cuts=cuts,
        supplied=supplied,
    )


def post() -> Part:
    """720 x 110 x 45; 9 comes off the foot and 14 off the top; its low face is the leaf's front."""
    flange = Pocket(
        name="flange",
        face="low face",
        u=405.0,
        v=47.0,
        length=100.6,
        width=30.6,
        corner=6.3,
        depth=1.5,
        making=LATE,
    )
    body = Pocket(
        name="body",
        face="low face",
        u=402.0,
        v=46.0,
        length=90.6,
        width=20.6,
        corner=3.3,
        depth=13.7,
        surface=1.5,
        making=LATE,
    )
    cuts = (
        Slot(
            name="low slot", face="high edge", u0=40, u1=90, v=17, width=10, depth=31, making=EARLY
        ),
        Slot(
            name="high slot",
            face="high edge",
            u0=610,
            u1=655,
            v=28,
            width=12,
            depth=26,
            making=EARLY,
        ),
        Groove(
            name="panel groove",
            face="high edge",
            u0=150,
            u1=520,
            v=19,
            width=8.2,
            depth=11,
            corner=4,
            squared=True,
            making=EARLY,
        ),
        Groove(
            name="short groove",
            face="low edge",
            u0=30,
            u1=200,
            v=30,
            width=7,
            depth=6,
            corner=3.5,
            making=EARLY,
        ),
        Slot(name="hole", face="low edge", u0=300, u1=312, v=13, width=12, depth=29, making=EARLY),
        Slot(
            name="window", face="high face", u0=250, u1=290, v=80, width=14, depth=45, making=EARLY
        ),
        flange,
        body,
        Trim(name="trim foot", end="low end", length=9, making=SAW),
        Trim(name="trim top", end="high end", length=14, making=SAW),
        Groove(
            name="guide groove",
            face="high end",
            u0=0,
            u1=110,
            v=26,
            width=9,
            depth=32,
            surface=14,
            making=BENCH,
        ),
    )
    faces = {
        "low end": "foot",
        "high end": "top",
        "low edge": "outer edge",
        "high edge": "inner edge",
        "low face": "face",
        "high face": "back",
    }
    made = part(
        "leaf A / post", "post", "S1", (720, 110, 45), Placement(origin=(0, 0, -9), x=UP, y=ACROSS)
    )
    return Part(
        name=made.name,
        noun=made.noun,
        mark=made.mark,
        material=made.material,
        blank=made.blank,
        placement=made.placement,
        cuts=cuts,
        faces=faces,  # type: ignore[arg-type]
    )


def rail(name: str, x: float, z: float, *, turned: bool) -> Part:
    """390 x 80 x 45, sawn along one edge and bored at one end; twice, once turned over end for end."""
    place = (
        Placement(origin=(x + 390, 0, z), x=BACK, y=UP)
        if turned
        else Placement(origin=(x, 45, z), x=ACROSS, y=UP)
    )
    return part(
        name,
        "rail",
        "R1",
        (390, 80, 45),
        place,
        Slot(name="slot", face="low end", u0=12, u1=52, v=17, width=10, depth=30, making=EARLY),
        Pocket(
            name="bore",
            face="high end",
            u=61,
            v=30,
            length=13,
            width=13,
            corner=6.5,
            depth=22,
            making=EARLY,
        ),
        Pocket(
            name="upright slot",
            face="high face",
            u=330,
            v=41,
            length=16,
            width=44,
            corner=8,
            depth=10,
            making=EARLY,
        ),
        Groove(
            name="sawn groove",
            face="low edge",
            u0=110,
            u1=260,
            v=12,
            width=7,
            depth=9,
            ramp=100,
            making=SAW,
        ),
    )


def panel() -> Part:
    return part(
        "leaf A / panel",
        "raised panel",
        "P1",
        (330, 260, 26),
        Placement(origin=(400, 40, 150), x=UP, y=BACK),
        RaisedBevel(name="bevel", run=50, edge=12, foot=23, making=SAW),
        Tongue(name="tongue", thickness=8, length=13, back=3, edge=12, slope=11 / 50, making=SAW),
    )


@functools.cache
def assembly() -> Assembly:
    """The leaf with all its parts, shut at the left, and a rod that stays."""
    bead = part(
        "leaf A / bead",
        "bead",
        "L1",
        (300, 14, 11),
        Placement(origin=(120, 50, 500), x=ACROSS, y=UP),
        Mitre(name="mitre", end="high end", keeps="low edge", making=SAW),
    )
    peg = part(
        "leaf A / peg",
        "peg",
        "T1",
        (70, 38, 10),
        Placement(origin=(100, 60, 600), x=ACROSS, y=UP),
        RoundArrises(name="rounding", radius=5, making=SAW),
    )
    pane = part(
        "leaf A / pane",
        "toughened glass",
        "G1",
        (270, 150, 6),
        Placement(origin=(120, 70, 560), x=ACROSS, y=UP),
        material=GLASS,
    )
    pull = part(
        "leaf A / pull",
        "pull",
        "U1",
        (100, 30, 13),
        Placement(origin=(30, 60, 200), x=UP, y=ACROSS),
        RoundCorners(name="corners", radius=6, making=BENCH),
        Island(
            name="body",
            face="low face",
            length=90,
            width=20,
            corner=3,
            outer=6,
            depth=11,
            making=BENCH,
        ),
        Pocket(
            name="hollow",
            face="high face",
            u=47,
            v=14,
            length=80,
            width=16,
            corner=2,
            depth=9,
            making=BENCH,
        ),
        material=STEEL,
        supplied=True,
    )
    leaf = Group(
        name="leaf A",
        placement=Placement(origin=(-35, -80, 11)),
        parts=(
            post(),
            rail("leaf A / low rail", 110, 20, turned=False),
            rail("leaf A / high rail", 110, 610, turned=True),
            panel(),
            bead,
            peg,
            pane,
            pull,
        ),
        motion=(Slide(direction=(1.0, 0.0, 0.0), travel=430),),
    )
    rod = part(
        "rods / rod",
        "rod",
        "K1",
        (900, 20, 20),
        Placement(origin=(-35, -40, 760), x=ACROSS, y=(0.0, 1.0, 0.0)),
        material=STEEL,
        supplied=True,
    )
    fixed = Group(name="rods", placement=Placement(), parts=(rod,))
    return Assembly(
        name="Lopsided",
        groups=(leaf, fixed),
        states=(State(name="shut", open={}), State(name="open", open={"leaf A": 1.0})),
    )


@functools.cache
def known() -> Known:
    return Known(
        assembly=assembly(),
        figures={},
        opening=(),
        fingerprint=FINGERPRINT,
        unit="mm",
        wood_step=Fraction(1, 2),
        fine_step=Fraction(1, 10),
    )


def cutting(made: Assembly | None = None) -> dict[str, bytes]:
    """The machine files and lists of an assembly, as a pack holds them."""
    whole = assembly() if made is None else made
    found = set_ups(whole)
    return {
        **{f"cnc/{one.file}": written(one) for one in found},
        "cnc/tool-list.csv": write_csv(TOOL_LIST_HEADER, tool_list(found)),
        "cnc/saw-and-bench-work.csv": write_csv(BENCH_LIST_HEADER, bench_list(bench_work(whole))),
    }


def written(one: SetUp) -> bytes:
    return write_cnc_dxf(one, Stamp(job="Lopsided", fingerprint=mark(FINGERPRINT), revision="A"))
