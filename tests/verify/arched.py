"""A leaf of shaped parts in which nothing is even: arch, rebates, notches, cheeks, bevel, pane.

No piece of it is its own mirror image, and every way a shaped cut is made is on it: by the
router on a loose part and on the glued leaf, by saw and at the bench.
"""

from __future__ import annotations

import functools
import math
from fractions import Fraction

from parametric.model import (
    Assembly,
    Groove,
    Group,
    Making,
    Placement,
    Shaped,
    Slide,
    State,
    Trim,
)
from parametric.outlines import Outline, Vertex, rectangle
from parametric.pack.verifying.known import Known
from tests.verify.lopsided import (
    ACROSS,
    BACK,
    BENCH,
    EARLY,
    FINGERPRINT,
    GLASS,
    LATE,
    SAW,
    UP,
    part,
)

LONG, WIDE, THICK = 400.0, 110.0, 45.0
CENTRE, RADIUS = (130.0, -620.0), 680.0
"""The arch over the low edge of the rail: 60 high at x = 130, 47.4 at the left, 4.3 at the right."""
DEEP, REACH = 19.0, 9.5


def height(x: float, out: float = 0.0) -> float:
    return math.sqrt((RADIUS + out) ** 2 - (x - CENTRE[0]) ** 2) + CENTRE[1]


def bow(x0: float, x1: float, out: float = 0.0) -> float:
    far = RADIUS + out
    turn = math.asin((x0 - CENTRE[0]) / far) - math.asin((x1 - CENTRE[0]) / far)
    return math.tan(turn / 4)


def between(x0: float, x1: float, out: float) -> Outline:
    """Between the arch and the arc outside it."""
    return (
        Vertex(x0, height(x0), bow(x0, x1)),
        Vertex(x1, height(x1)),
        Vertex(x1, height(x1, out), bow(x1, x0, out)),
        Vertex(x0, height(x0, out)),
    )


UNDER: Outline = (
    Vertex(0, 0),
    Vertex(LONG, 0),
    Vertex(LONG, height(LONG), bow(LONG, 0)),
    Vertex(0, height(0)),
)
LEANING: Outline = (Vertex(90, 0), Vertex(115, 0), Vertex(150, 80), Vertex(125, 80))
"""Across the post from edge to edge: turned over it has the same box, area and middle."""
EIGHTH, QUARTER = math.tan(math.pi / 16), math.tan(math.pi / 8)
RUN, RISE = 8 * math.sin(math.pi / 4), 8 * (1 - math.cos(math.pi / 4))
WAVE: Outline = (
    Vertex(20, 6, EIGHTH),
    Vertex(20 + RUN, 6 + RISE, -QUARTER),
    Vertex(20 + RUN + 14, 6 + RISE, EIGHTH),
    Vertex(34 + 2 * RUN, 6, QUARTER),
    Vertex(42 + 2 * RUN, 14),
    Vertex(42 + 2 * RUN, 20, QUARTER),
    Vertex(34 + 2 * RUN, 28, 0.2),
    Vertex(20, 28, 1.0),
)
LEAN = THICK * math.tan(math.radians(3))
NOTCHED = Making(by="bench", tool="chisel, to the bar's own end")


@functools.cache
def assembly() -> Assembly:
    """One leaf that slides, its front at the Y of 0."""
    rail = part(
        "leaf A / top rail",
        "top rail",
        "R1",
        (LONG, WIDE, THICK),
        Placement(origin=(80, THICK, 700), x=ACROSS, y=UP),
        Shaped(name="arched underside", face="high face", outline=UNDER, depth=THICK, making=EARLY),
        Shaped(
            name="glass rebate",
            face="low face",
            outline=between(0, LONG, REACH),
            depth=DEEP,
            making=EARLY,
        ),
        Shaped(
            name="notch for a bar",
            face="low face",
            outline=between(210, 216, REACH),
            surface=DEEP,
            depth=32.0,
            making=NOTCHED,
        ),
        Shaped(
            name="edge bevel",
            face="low end",
            outline=(Vertex(WIDE - LEAN, 0), Vertex(WIDE, 0), Vertex(WIDE, THICK)),
            depth=LONG,
            making=BENCH,
        ),
    )
    post = part(
        "leaf A / post",
        "post",
        "S1",
        (820, 80, THICK),
        Placement(origin=(0, 0, -9), x=UP, y=ACROSS),
        Trim(name="foot", end="low end", length=9, making=SAW),
        Trim(name="top", end="high end", length=4, making=SAW),
        Shaped(name="housing", face="low face", outline=LEANING, depth=7.0, making=LATE),
        Shaped(
            name="trough",
            face="high face",
            outline=tuple(v._replace(x=v.x + 300) for v in WAVE),
            depth=11.0,
            making=LATE,
        ),
        Shaped(
            name="wave",
            face="high edge",
            outline=tuple(v._replace(x=v.x + 500) for v in WAVE),
            depth=6.0,
            making=EARLY,
        ),
        Shaped(
            name="long bevel",
            face="low end",
            outline=(Vertex(0, 0), Vertex(LEAN, 0), Vertex(0, THICK)),
            surface=200,
            depth=816,
            making=BENCH,
        ),
    )
    bar = part(
        "leaf A / bar",
        "level bar",
        "B1",
        (330, 22, THICK),
        Placement(origin=(430, 0, 300), x=BACK, y=UP),
        *(
            Groove(
                name="glass rebate",
                face="high face",
                u0=0,
                u1=330,
                v=v,
                width=8,
                depth=DEEP,
                making=SAW,
            )
            for v in (4.0, 18.0)
        ),
        Shaped(
            name="shoulder", face="low face", outline=rectangle(0, 0, 9, 8), depth=26, making=SAW
        ),
        Shaped(
            name="shoulder", face="low face", outline=rectangle(0, 14, 9, 22), depth=26, making=SAW
        ),
        Shaped(
            name="tongue, from the face",
            face="low face",
            outline=rectangle(0, 8, 9, 14),
            depth=13,
            making=SAW,
        ),
        Shaped(
            name="end to a curve",
            face="low face",
            outline=(Vertex(330, 8), Vertex(330, 14, -0.1), Vertex(327, 8)),
            depth=THICK,
            making=NOTCHED,
        ),
    )
    pane = part(
        "leaf A / pane",
        "toughened glass",
        "G1",
        (230, 180, 6),
        Placement(origin=(120, 30, 360), x=ACROSS, y=UP),
        Shaped(
            name="shaped edge",
            face="high face",
            outline=(Vertex(230, 131), Vertex(230, 180), Vertex(0, 180), Vertex(0, 166, -0.08)),
            depth=6,
            making=BENCH,
        ),
        material=GLASS,
    )
    leaf = Group(
        name="leaf A",
        placement=Placement(origin=(-35, -80, 11)),
        parts=(post, rail, bar, pane),
        motion=(Slide(direction=(1.0, 0.0, 0.0), travel=430),),
    )
    return Assembly(
        name="Arched",
        groups=(leaf,),
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
