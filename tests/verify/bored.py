"""Two boards bored in every face, nothing even: rows along and across, stepped, through, in edges and ends.

The side, 640 x 310 x 18, stands; the shelf, 400 x 290 x 17.6, lies against its high face.
"""

from __future__ import annotations

import functools
from fractions import Fraction
from typing import Literal

from parametric.model import (
    Assembly,
    Drilled,
    Face,
    Group,
    Making,
    Material,
    Part,
    Placement,
    State,
)
from parametric.pack.verifying.known import Known
from tests.verify.lopsided import ACROSS, FINGERPRINT, UP, part

BOARD = Material(name="birch plywood", look="board", density=680)
BORED = Making(by="router")
HAND = Making(by="bench", tool="doweling jig")
LATE = Making(by="router", when="after glue-up")


def bores(
    name: str,
    face: Face,
    at: tuple[float, float],
    size: tuple[float, float],
    *,
    count: int = 1,
    pitch: float = 0.0,
    along: Literal["u", "v"] = "u",
    surface: float = 0.0,
    making: Making = BORED,
) -> Drilled:
    return Drilled(
        name=name,
        face=face,
        u=at[0],
        v=at[1],
        diameter=size[0],
        depth=size[1],
        making=making,
        count=count,
        pitch=pitch,
        along=along,
        surface=surface,
    )


def side() -> Part:
    return part(
        "case / left side",
        "side",
        "C1",
        (640, 310, 18),
        Placement(x=UP, y=(0.0, 1.0, 0.0)),
        bores("pin holes", "high face", (101, 37), (5, 13), count=12, pitch=32),
        bores("pin holes", "high face", (101, 261), (5, 13), count=11, pitch=32),
        bores("plate holes", "high face", (53, 30), (4.5, 11), count=2, pitch=32, along="v"),
        # a stepped screw: 7 wide through the first 6, then 4.5 wide to the other side
        bores("screw head", "low face", (620, 80), (7, 6), count=3, pitch=71, along="v"),
        bores(
            "screw shank",
            "low face",
            (620, 80),
            (4.5, 18),
            count=3,
            pitch=71,
            along="v",
            surface=6,
        ),
        bores("cable hole", "high face", (540, 200), (22, 18)),
        bores("dowel holes", "low end", (44, 7.5), (8, 24), count=4, pitch=64),
        bores("dowel holes", "high edge", (70, 10), (8, 21), count=5, pitch=96, making=HAND),
        bores("catch", "low face", (330, 150), (10, 9), making=LATE),
        material=BOARD,
    )


def shelf() -> Part:
    return part(
        "case / shelf",
        "shelf",
        "C2",
        (400, 290, 17.6),
        Placement(origin=(18.0, 4.0, 300.0), x=ACROSS, y=(0.0, 1.0, 0.0)),
        bores("dowel holes", "high end", (51, 8.1), (8, 26.5), count=3, pitch=96),
        bores("one hole", "low edge", (333, 6), (6, 30)),
        material=BOARD,
    )


@functools.cache
def assembly() -> Assembly:
    group = Group(
        name="case", placement=Placement(origin=(20.0, 5.0, 80.0)), parts=(side(), shelf())
    )
    return Assembly(name="Bored", groups=(group,), states=(State(name="shut", open={}),))


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
