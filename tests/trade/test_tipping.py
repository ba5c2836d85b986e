"""Standing a case up under its ceiling, and bringing it in."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.figures import Figure
from parametric.trade.tipping import StandingUp, passes, standing_up

IN = 25.4


def up(height: float, width: float, depth: float, base: float, headroom: float) -> StandingUp:
    return standing_up(
        "case",
        height=Figure(height),
        width=Figure(width),
        depth=Figure(depth),
        base=Figure(base),
        headroom=Figure(headroom),
    )


def test_a_wardrobe_on_a_separate_plinth() -> None:
    """Brief G3: ceiling 2385 over a laser line, floor 2 over it, plinth 80, case 2273 x 580."""
    wardrobe = up(2273, 789, 580, 80, 2385 - 2)
    # hypot(2273, 580) = 2345.8
    assert round(float(wardrobe.diagonal), 1) == 2345.8
    # 2385 - 82 = 2303, less than the diagonal; 2385 - 2 = 2383, enough
    assert wardrobe.over_base == 2303
    assert wardrobe.over_floor == 2383
    assert wardrobe.order == "on the floor, then lifted"
    assert round(float(wardrobe.spare), 1) == round(2383 - 2345.8, 1)
    # sqrt(2383**2 - 580**2) = 2311.3
    assert wardrobe.tallest is not None
    assert round(float(wardrobe.tallest), 1) == 2311.3


def test_an_upper_case_on_a_counter() -> None:
    """Brief G2: 63-1/8 x 10 on a counter 31-1/4 up, under 95-7/8: 31.25 + hypot = 95.16."""
    upper = up(63.125 * IN, 46 * IN, 10 * IN, 31.25 * IN, 95.875 * IN)
    assert round(float(upper.base + upper.diagonal) / IN, 2) == 95.16
    assert upper.order == "where it stands"


@pytest.mark.parametrize(
    ("height", "width", "depth", "headroom", "order"),
    [
        # a triangle of 3, 4, 5: hypot(2000, 1500) = 2500
        (2000, 2500, 1500, 2500 + 80, "where it stands"),
        (2000, 2500, 1500, 2500, "on the floor, then lifted"),
        # hypot(2000, 1500) on its side, when it is wider than that in depth
        (2000, 1500, 2500, 2500 + 80, "from its side, where it stands"),
        (2000, 1500, 2500, 2500, "from its side on the floor, then lifted"),
        (2000, 2500, 1500, 2499.9, "not at all"),
        (2000, 1500, 2500, 2499.9, "not at all"),
    ],
)
def test_the_order_that_works(
    height: float, width: float, depth: float, headroom: float, order: str
) -> None:
    assert up(height, width, depth, 80, headroom).order == order


def test_what_fails_says_by_how_much() -> None:
    assert float(up(2000, 2500, 1500, 80, 2490).spare) == pytest.approx(-10)
    assert up(2000, 2500, 1500, 80, 1500).tallest is None


@given(st.floats(50, 3000), st.floats(50, 3000), st.floats(500, 3000), st.floats(500, 3000))
def test_an_oblong_lies_in_another_as_turning_it_finds(
    long: float, short: float, wide: float, high: float
) -> None:
    """Against turning it by every tenth of a degree; a third side as thick as nothing."""
    tried = (math.radians(step / 10) for step in range(901))
    spare = max(
        min(
            wide - long * math.cos(angle) - short * math.sin(angle),
            high - long * math.sin(angle) - short * math.cos(angle),
        )
        for angle in tried
    )
    found = passes((long, short, 1.0), (1.0, wide, high))
    # between two tries a corner moves by less than the diagonal times half a step
    near = math.hypot(long, short) * math.radians(0.05)
    if spare >= 0:
        assert found
    elif spare < -near:
        assert not found or min(long, short) <= 1.0


@pytest.mark.parametrize(
    ("sides", "way", "goes"),
    [
        # a wardrobe through a door of 762 x 1981 and along 2400: its depth with the door's width,
        # on its back
        ((789, 2273, 580), (762, 1981, 2400), True),
        # 780 deep it does not
        ((789, 2273, 780), (762, 1981, 2400), False),
        # in a lift 1100 x 2100 x 1400 a flat one leans 30 deg: 2273 cos + 200 sin = 2068,
        # 2273 sin + 200 cos = 1310
        ((200, 2273, 400), (1100, 2100, 1400), True),
        ((1200, 2273, 1150), (1100, 2100, 1400), False),
    ],
)
def test_ways_in(
    sides: tuple[float, float, float], way: tuple[float, float, float], goes: bool
) -> None:
    assert passes(sides, way) is goes
