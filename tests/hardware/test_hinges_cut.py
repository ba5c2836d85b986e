"""What hinges cut: volumes by hand, the right side of the wood, and none of it twice."""

from __future__ import annotations

import math
from typing import Literal

import pytest

from parametric.hardware.hinge_kinds import hinge_cuts
from parametric.model import Groove, Making, Slot, Trim
from tests.hardware.hung import butts, cups, pivots
from tests.hardware.solid import holds

pytestmark = pytest.mark.kernel

TRIM, THICK, WIDE = 12.0, 44.0, 110.0
LONG = 2000 + 2 * TRIM
SAW = Making(by="saw", when="after glue-up")
TRIMS = (
    Trim(name="trim foot", end="low end", length=TRIM, making=SAW),
    Trim(name="trim top", end="high end", length=TRIM, making=SAW),
)
WASTE = 2 * TRIM * WIDE * THICK
Broad = Literal["low face", "high face"]
# what else a stile holds: a tenon's slot of 12 x 62, 46 deep, and a rebate of 10 x 16 beside it
SLOT = Slot(
    name="slot",
    face="high edge",
    u0=1790.0,
    u1=1852.0,
    v=22.0,
    width=12.0,
    depth=46.0,
    making=Making(by="router"),
)
REBATE = Groove(
    name="glass rebate",
    face="high face",
    u0=300.0,
    u1=1700.0,
    v=105.0,
    width=10.0,
    depth=16.0,
    making=Making(by="router"),
)
OTHERS = (50 * 12 + math.pi * 36) * 46 + 1400 * 10 * 16


@pytest.mark.parametrize("knuckles", ["low face", "high face"])
def test_butt_hinges_with_square_corners(knuckles: Broad) -> None:
    """Three of 100 x 38 x 3, the top one from 2000 - 150 - 100 = 1750 above the foot."""
    cuts = hinge_cuts(
        butts(count="3"), knuckles=knuckles, back="high face", thickness=THICK, shift=TRIM
    )
    assert [cut.name for cut in cuts] == ["hinge mortise"] * 3
    near, far = (1.0, 43.0) if knuckles == "low face" else (43.0, 1.0)
    holds(
        (*TRIMS, SLOT, REBATE, *cuts),
        size=(LONG, WIDE, THICK),
        removed=WASTE + OTHERS + 3 * 100 * 38 * 3,
        gone=(
            (1751 + TRIM, 2.9, near),
            (1849 + TRIM, 2.9, near),
            (1800 + TRIM, 1, 22),
            (226 + TRIM, 1, near),
        ),
        left=(
            (1749 + TRIM, 1, near),
            (1851 + TRIM, 1, near),
            (1800 + TRIM, 3.1, near),
            (1800 + TRIM, 1, far),
            (224 + TRIM, 1, near),
        ),
    )


@pytest.mark.parametrize("knuckles", ["low face", "high face"])
def test_butt_hinges_with_round_corners(knuckles: Broad) -> None:
    """Two inner corners of 5 each leave (4 - pi)/2 * 25; the outer two stay square at the face."""
    cuts = hinge_cuts(
        butts(count="2", corners="round", corner="5"),
        knuckles=knuckles,
        back="high face",
        thickness=THICK,
        shift=TRIM,
    )
    each = (100 * 38 - (4 - math.pi) / 2 * 25) * 3
    at_face, inner = (0.1, 37.9) if knuckles == "low face" else (43.9, 6.1)
    holds(
        (*TRIMS, *cuts),
        size=(LONG, WIDE, THICK),
        removed=WASTE + 2 * each,
        gone=((1750.1 + TRIM, 1, at_face), (1849.9 + TRIM, 1, at_face), (1800 + TRIM, 1, inner)),
        left=((1750.1 + TRIM, 1, inner), (1849.9 + TRIM, 1, inner)),
    )


@pytest.mark.parametrize("back", ["low face", "high face"])
def test_cup_hinges(back: Broad) -> None:
    """Four cups of 35, 13 deep, about 22.5 in; beside each two pilots of 2.5 x 10, 48 apart."""
    hinges = cups(height=1700.0, weight=5.0, screws="48 x 6")
    cuts = hinge_cuts(hinges, knuckles="low face", back=back, thickness=22.0, shift=TRIM)
    assert len(cuts) == 4 * 3
    each = math.pi * 17.5**2 * 13 + 2 * math.pi * 1.25**2 * 10

    def into(deep: float) -> float:
        return deep if back == "low face" else 22 - deep

    # the top one is 100 below 1700
    up = 1600 + TRIM
    holds(
        cuts,
        size=(1700 + 2 * TRIM, 80.0, 22.0),
        removed=4 * each,
        gone=(
            (up, 22.5, into(12.9)),
            (up, 5.1, into(1)),
            (up, 39.9, into(1)),
            (up + 24, 28.5, into(9.9)),
            (up - 24, 28.5, into(9.9)),
        ),
        left=(
            (up, 22.5, into(13.1)),
            (up, 4.9, into(1)),
            (up, 40.1, into(1)),
            (up + 24, 28.5, into(10.1)),
        ),
    )


@pytest.mark.parametrize("opens_to", ["low face", "high face"])
def test_pivots_after_the_trim(opens_to: Broad) -> None:
    """Two bores of 12 x 30 from the trimmed ends, 40 in and 15 from the face it opens towards."""
    hinges = pivots(from_face="15")
    cuts = hinge_cuts(hinges, knuckles=opens_to, back="high face", thickness=THICK, shift=TRIM)
    z = 15.0 if opens_to == "low face" else 29.0
    holds(
        (*TRIMS, *cuts),
        size=(LONG, WIDE, THICK),
        removed=WASTE + 2 * math.pi * 36 * 30,
        gone=((TRIM + 29.9, 40, z), (TRIM + 2000 - 29.9, 40, z), (TRIM + 1, 45.9, z)),
        left=((TRIM + 30.1, 40, z), (TRIM + 2000 - 30.1, 40, z), (TRIM + 1, 46.1, z)),
    )
