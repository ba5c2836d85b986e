"""Bored holes and rows of them, on a blank no two sides of which are alike: 300 x 120 x 40.

A hole takes pi d2 / 4 times its depth; each adds two faces, a wall and a floor, and a hole
right through one.
"""

from __future__ import annotations

import math
from typing import Literal

import pytest

from parametric.model import Drilled, Face, Making
from tests.solids.test_cuts import Case, hold

pytestmark = pytest.mark.kernel

BY = Making(by="router")


def bored(
    face: Face,
    at: tuple[float, float],
    size: tuple[float, float],
    *,
    count: int = 1,
    pitch: float = 0.0,
    along: Literal["u", "v"] = "u",
    surface: float = 0.0,
) -> Drilled:
    return Drilled(
        name="hole",
        face=face,
        u=at[0],
        v=at[1],
        diameter=size[0],
        depth=size[1],
        making=BY,
        count=count,
        pitch=pitch,
        along=along,
        surface=surface,
    )


CASES = (
    Case(
        label="one hole in the high face",
        cuts=(bored("high face", (60, 30), (20, 15)),),
        removed=math.pi * 10**2 * 15,
        faces=6 + 2,
        gone=((60, 30, 26), (69, 30, 39)),
        left=((60, 30, 24), (71, 30, 39), (60, 90, 39), (240, 30, 39), (60, 30, 1)),
    ),
    Case(
        label="a row of five along the low face",
        cuts=(bored("low face", (50, 37), (5, 13), count=5, pitch=32),),
        removed=5 * math.pi * 2.5**2 * 13,
        faces=6 + 5 * 2,
        # 50, 82, 114, 146, 178
        gone=tuple((50 + 32 * n, 37, 12) for n in range(5)),
        left=((18, 37, 1), (210, 37, 1), (66, 37, 1), (50, 37, 14), (50, 83, 1), (50, 37, 39)),
    ),
    Case(
        label="a row of three across, right through",
        cuts=(bored("high face", (200, 20), (10, 40), count=3, pitch=35, along="v"),),
        removed=3 * math.pi * 5**2 * 40,
        faces=6 + 3,
        gone=((200, 20, 1), (200, 55, 20), (200, 90, 39)),
        left=((200, 37, 20), (235, 20, 20), (200, 108, 20), (100, 20, 20)),
    ),
    Case(
        label="in an end, along its width",
        cuts=(bored("high end", (24, 12), (8, 30), count=3, pitch=32),),
        removed=3 * math.pi * 4**2 * 30,
        faces=6 + 3 * 2,
        gone=((271, 24, 12), (299, 56, 12), (280, 88, 12)),
        left=((269, 24, 12), (280, 24, 28), (280, 40, 12), (20, 24, 12)),
    ),
    Case(
        label="in an edge, up its thickness",
        cuts=(bored("low edge", (70, 10), (6, 25), count=2, pitch=18, along="v"),),
        removed=2 * math.pi * 3**2 * 25,
        faces=6 + 2 * 2,
        gone=((70, 24, 10), (70, 1, 28)),
        left=((70, 26, 10), (88, 1, 10), (70, 1, 19), (70, 119, 10)),
    ),
    Case(
        label="stepped: the narrow hole starts at the floor of the wide one, and goes through",
        cuts=(
            bored("high face", (100, 50), (14, 9)),
            bored("high face", (100, 50), (8, 40), surface=9),
        ),
        removed=math.pi * 7**2 * 9 + math.pi * 4**2 * 31,
        # two walls and the ring between them
        faces=6 + 3,
        gone=((100, 50, 1), (106, 50, 32)),
        left=((106, 50, 30), (108, 50, 39)),
    ),
)


@pytest.mark.parametrize("case", CASES, ids=lambda case: case.label)
def test_bored(case: Case) -> None:
    hold(case)


def test_a_long_row_of_a_case_side_is_one_solid() -> None:
    """2273 x 560 x 18, two rows of 59: 118 pi 2.5^2 13 = 30 120 mm3 of 22 911 840."""
    from parametric.solids.shape import part_solid, volume
    from tests.solids.test_cuts import part_of

    rows = tuple(
        bored("high face", (204.5, across), (5, 13), count=59, pitch=32) for across in (37, 517)
    )
    side = Case(
        label="side",
        cuts=rows,
        size=(2273.0, 560.0, 18.0),
        removed=0,
        faces=0,
        gone=(),
        left=(),
    )
    taken = 118 * math.pi * 2.5**2 * 13
    assert taken == pytest.approx(30_120, abs=1)
    assert volume(part_solid(part_of(side))) == pytest.approx(2273 * 560 * 18 - taken, rel=1e-9)
