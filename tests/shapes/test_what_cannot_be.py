"""What a maker may write of an arch, and what is answered where there is no such arch."""

from __future__ import annotations

import math

import pytest

from parametric.figures import Figure, formula
from parametric.outlines import arc_of
from parametric.shapes.arch import ArchSpec, CannotArch, head_curve
from parametric.shapes.curve import HeadCurve, height_at
from parametric.units import Unit
from tests.shapes.heads import chain_edges, head


def answer(unit: Unit = "mm", span: float = 800.0, **written: str) -> HeadCurve | CannotArch:
    keys = {"across": "leaf", **{key.replace("_", " "): value for key, value in written.items()}}
    return head_curve(ArchSpec.model_validate(keys), Figure(span, "span"), "arch", unit)


def refused(unit: Unit = "mm", span: float = 800.0, **written: str) -> CannotArch:
    found = answer(unit, span, **written)
    assert isinstance(found, CannotArch)
    return found


def test_a_segmental_arch_past_half_a_circle() -> None:
    found = refused(shape="segmental", rise="400.5")
    assert found.message == (
        "A segmental arch over 800 rises 400 at most, when it is half a circle, "
        "and 400.5 is written."
    )
    assert (found.found, found.allowed, found.key) == ("400.5", "up to 400", "rise")
    assert isinstance(answer(shape="segmental", rise="400"), HeadCurve)


def test_a_pointed_arch_no_higher_than_half_its_span() -> None:
    found = refused(shape="pointed", rise="400")
    assert found.message == (
        "A pointed arch over 800 rises more than half of that, 400, and 400 is written."
    )
    assert found.allowed == "more than 400"
    assert isinstance(answer(shape="pointed", rise="400.1"), HeadCurve)


def test_a_half_round_arch_finds_its_rise() -> None:
    curve = answer(shape="half round")
    assert isinstance(curve, HeadCurve)
    assert curve.rise == 400
    assert curve.rise.name == "arch / rise"
    assert formula(curve.rise) == "[arch / radius]"
    assert isinstance(answer(shape="half round", rise="400"), HeadCurve)


def test_a_half_round_arch_with_another_rise() -> None:
    found = refused(shape="half round", rise="390")
    assert found.message == (
        "A half round arch over 800 rises half of that, 400, and 390 is written."
    )
    assert found.fix == "Leave `rise` out: it is found from the width."


def test_inches_are_told_in_inches() -> None:
    found = refused("inch", 50.75 * 25.4, shape="segmental", rise="30 in")
    assert found.message == (
        "A segmental arch over 50-3/4 rises 25-3/8 at most, when it is half a circle, "
        "and 30 is written."
    )


@pytest.mark.parametrize("shape", ["segmental", "pointed", "elliptical", "raked"])
def test_no_rise_or_none_written(shape: str) -> None:
    side = {"rises_to": "left"} if shape == "raked" else {}
    assert refused(shape=shape, **side).found == "no rise"
    none = refused(shape=shape, rise="0", **side)
    assert (none.found, none.allowed) == ("0", "more than 0")


def test_an_ellipse_too_flat_or_too_steep() -> None:
    flat = refused(shape="elliptical", rise="19.99")
    assert "too flat" in flat.message
    assert flat.allowed == "20 to 8000"
    assert isinstance(answer(shape="elliptical", rise="20"), HeadCurve)
    assert "too steep" in refused(shape="elliptical", span=200.0, rise="2001").message


def test_a_raked_head_says_where_it_rises_to_and_no_other_does() -> None:
    assert refused(shape="raked", rise="100").key == "shape"
    other = refused(shape="segmental", rise="100", rises_to="left")
    assert other.key == "rises to"
    assert other.message == "A segmental arch rises to its middle, not to the left."


def test_stiles_that_leave_nothing() -> None:
    assert refused(span=0.0, shape="segmental", rise="100").key == "across"
    assert refused(span=-10.0, shape="half round").found == "-10"


def test_a_raked_head() -> None:
    """100 over 800: a quarter of the way in 25 up; beside it by 8, farther by 8 hypot(1, 1/8)."""
    curve = head("raked", 800.0, 100.0, "right")
    assert float(height_at(curve, 200.0, "y")) == pytest.approx(25.0)
    assert [(v.x, v.y, v.bulge) for v in curve.edge] == [(0.0, 0.0, 0.0), (800.0, 100.0, 0.0)]
    assert (curve.rise, curve.crown_at) == (100, 800)
    left = head("raked", 800.0, 100.0, "left")
    assert float(height_at(left, 200.0, "y")) == pytest.approx(75.0)
    assert (left.rise, left.crown_at) == (100, 0)


def test_an_equilateral_point() -> None:
    """Rise = span sqrt(3) / 2: each arc has the span for its radius, its centre the other springing point."""
    curve = head("pointed", 800.0, round(800 * math.sqrt(3) / 2, 9))
    (a, b), (c, d) = chain_edges(curve.edge)
    left, right = arc_of(a, b), arc_of(c, d)
    assert left is not None
    assert right is not None
    assert left.radius == pytest.approx(800.0, abs=1e-6)
    assert (left.x, left.y) == pytest.approx((800.0, 0.0), abs=1e-6)
    assert (right.x, right.y) == pytest.approx((0.0, 0.0), abs=1e-6)
    assert (b.x, b.y) == pytest.approx((400.0, 692.820323), abs=1e-6)


def test_lower_and_higher_points() -> None:
    """Centres within the span below the equilateral one, beyond it above.

    500 over 800: (800**2 + 4*500**2)/(4*800) = 512.5, centres at 512.5 and 287.5.
    1000 over 800: (800**2 + 4*1000**2)/(4*800) = 1450, centres at 1450 and -650.
    """
    for rise, radius in ((500.0, 512.5), (1000.0, 1450.0)):
        (a, b), (c, d) = chain_edges(head("pointed", 800.0, rise).edge)
        left, right = arc_of(a, b), arc_of(c, d)
        assert left is not None
        assert right is not None
        assert (left.x, left.radius) == pytest.approx((radius, radius))
        assert (right.x, right.radius) == pytest.approx((800 - radius, radius))
