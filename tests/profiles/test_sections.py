"""Each moulding's section against plane geometry, and what is refused. mm, mm2."""

from __future__ import annotations

import math

import pytest

from parametric.outlines import bounds_of
from parametric.profiles.moulding import CannotStick
from parametric.profiles.ogee import OgeeSpec, size_ogee
from parametric.profiles.ovolo import OvoloSpec, size_ovolo
from parametric.sections import spans_at
from tests.profiles.corners import MOULDINGS, bead, chamfer, ogee, ovolo

PI = math.pi


def test_a_chamfer_is_a_triangle() -> None:
    # half of 10 x 8; half as deep, half as far in is left
    assert chamfer("10", "8").area == pytest.approx(40.0, abs=1e-12)
    assert chamfer("10", "8").section_at(4.0) == pytest.approx(5.0, abs=1e-12)
    assert chamfer("10", "8").section_at(0.0) == pytest.approx(10.0, abs=1e-12)
    assert chamfer("10", "8").section_at(8.0) == 0.0


def test_a_square_ovolo_is_a_quarter_round_between_fillets() -> None:
    # 12 x 12 less the quarter of radius 10 that stands in its inner corner, and less the
    # strip beside it: the wood left in the 12 x 12 is 2 wide under... none: only the quarter
    # 12 * 12 - pi 10^2 / 4 = 144 - 78.5398 = 65.4602
    made = ovolo("12", "12", "2")
    assert made.area == pytest.approx(144.0 - PI * 100 / 4, abs=1e-10)
    # 7 down, the round of radius 10 about (12, 12) stands at 12 - sqrt(100 - 25)
    assert made.section_at(7.0) == pytest.approx(12.0 - math.sqrt(75.0), abs=1e-12)
    assert made.section_at(1.0) == pytest.approx(12.0, abs=1e-12)  # beside the upper fillet
    assert made.section_at(11.999999) == pytest.approx(2.0, abs=1e-2)  # above the lower one


def test_a_wide_ovolo_is_the_arc_that_leaves_level() -> None:
    # from (14, 0) to (0, 7): radius (14^2 + 7^2) / (2 * 7) = 17.5, about (14, 17.5).
    # At 7 down: 14 - sqrt(17.5^2 - 10.5^2) = 14 - 14 = 0; at 3.5: 14 - sqrt(17.5^2 - 14^2) = 3.5
    made = ovolo("14", "7", "0")
    assert made.section_at(3.5) == pytest.approx(3.5, abs=1e-12)
    assert made.section_at(6.9999999999) == pytest.approx(0.0, abs=1e-8)


def test_an_ogee_is_half_of_the_rectangle_between_its_fillets() -> None:
    # the curve is its own image turned half round its middle, so it halves 14 x 10 = 140;
    # with the strip above, 16 x 2 = 32, and beside, 2 x 10 = 20: 70 + 32 + 20 = 122
    made = ogee("16", "12", "2")
    assert made.area == pytest.approx(122.0, abs=1e-10)
    assert made.section_at(7.0) == pytest.approx(9.0, abs=1e-10)  # the middle


def test_a_bead_leaves_half_a_round() -> None:
    # 10 wide, 4.5 deep, less half a circle of radius 4: 45 - 8 pi = 19.8673
    made = bead("8", "2", "0.5")
    assert (float(made.width), float(made.depth)) == (10.0, 4.5)
    assert made.area == pytest.approx(45.0 - 8 * PI, abs=1e-10)
    # 2.5 down, 2 above the middle: the round reaches sqrt(16 - 4) to either side of x = 4
    half = math.sqrt(12.0)
    assert made.spans_at(2.5) == (
        (0.0, pytest.approx(4 - half)),
        (pytest.approx(4 + half), 10.0),
    )
    assert not made.copes


@pytest.mark.parametrize("name", MOULDINGS)
def test_a_section_fills_its_box_and_its_spans_add_up_to_it(name: str) -> None:
    made = MOULDINGS[name]
    assert bounds_of(made.section) == pytest.approx(
        (0.0, 0.0, float(made.width), float(made.depth)), abs=1e-9
    )
    # the sum of 40000 strips, by the midpoint rule: an independent area
    steps, deep = 40000, float(made.depth)
    strips = sum(
        high - low
        for i in range(steps)
        for low, high in spans_at(made.section, deep * (i + 0.5) / steps)
    )
    assert strips * deep / steps == pytest.approx(made.area, rel=1e-5)


def test_what_cannot_be_stuck_is_told() -> None:
    deep = OvoloSpec.model_validate(
        {"kind": "ovolo", "corners": "mitred", "width": 8, "depth": 12, "fillet": 1}
    )
    found = size_ovolo(deep, "leaf / sticking")
    assert isinstance(found, CannotStick)
    assert (found.key, found.found, found.allowed) == ("depth", "12", "up to its width, 8")
    thin = OgeeSpec.model_validate(
        {"kind": "ogee", "corners": "mitred", "width": 8, "depth": 6, "fillet": 6}
    )
    found = size_ogee(thin, "leaf / sticking")
    assert isinstance(found, CannotStick)
    assert (found.key, found.allowed) == ("fillet", "from 0 to less than 6")


def test_at_the_limit_an_ogee_is_as_deep_as_wide() -> None:
    # two quarters of radius 5 between fillets of 2: they meet upright in the middle
    made = ogee("12", "12", "2")
    assert made.section_at(6.9999999) == pytest.approx(7.0, abs=2e-3)
    assert made.area == pytest.approx(50.0 + 24.0 + 20.0, abs=1e-10)
