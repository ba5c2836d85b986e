"""What holds of every head, whatever its shape and size."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import assume, example, given
from hypothesis import strategies as st

from parametric.outlines import Outline, Vertex, arc_of, area_of, backwards
from parametric.shapes.curve import (
    HeadCurve,
    area_under,
    beside,
    height_at,
    highest,
    length_along,
    mirrored,
    part_of,
)
from tests.shapes.heads import (
    SHAPES,
    chain_edges,
    chain_length,
    head,
    heads,
    inside,
    points_on,
)

SHARE = st.floats(0.0, 1.0)


def same(one: Outline, other: Outline, within: float = 1e-7) -> None:
    assert len(one) == len(other)
    for a, b in zip(one, other, strict=True):
        assert (a.x, a.y) == pytest.approx((b.x, b.y), abs=within)
        assert a.bulge == pytest.approx(b.bulge, abs=1e-9)


def closed(chain: Outline) -> Outline:
    """A chain with the springing line under it."""
    first, last = chain[0], chain[-1]
    return (Vertex(first.x, 0.0), Vertex(last.x, 0.0), *backwards(chain))


@given(heads())
def test_it_runs_from_springing_point_to_springing_point(curve: HeadCurve) -> None:
    edge = curve.edge
    assert (edge[0].x, edge[-1].x) == (0.0, float(curve.span))
    ends = {round(edge[0].y, 6), round(edge[-1].y, 6)}
    assert ends in ({0.0}, {0.0, round(float(curve.rise), 6)})
    assert float(height_at(curve, curve.crown_at, "crown")) == pytest.approx(
        float(curve.rise), abs=1e-6
    )


@given(heads(), st.lists(SHARE, min_size=1, max_size=4))
def test_parts_add_up_to_the_whole(curve: HeadCurve, shares: list[float]) -> None:
    places = sorted({0.0, 1.0, *shares})
    assume(all(b - a > 1e-6 for a, b in itertools.pairwise(places)))
    xs = [inside(curve, share) for share in places]
    parts = [part_of(curve, a, b) for a, b in itertools.pairwise(xs)]
    whole = curve.edge
    assert sum(map(chain_length, parts)) == pytest.approx(chain_length(whole), rel=1e-9)
    assert float(length_along(curve, xs[0], xs[-1])) == pytest.approx(chain_length(whole), rel=1e-9)
    area = sum(float(area_under(curve, a, b)) for a, b in itertools.pairwise(xs))
    assert area == pytest.approx(float(area_under(curve, xs[0], xs[-1])), rel=1e-9)
    assert area == pytest.approx(area_of(closed(whole)), rel=1e-9)
    for one, other in itertools.pairwise(parts):
        assert (one[-1].x, one[-1].y) == (other[0].x, other[0].y)


@given(heads(), SHARE, SHARE)
def test_area_and_length_of_a_part_are_those_of_its_outline(
    curve: HeadCurve, one: float, other: float
) -> None:
    assume(abs(one - other) > 1e-3)
    x0, x1 = (inside(curve, share) for share in sorted((one, other)))
    chain = part_of(curve, x0, x1)
    assert float(area_under(curve, x0, x1)) == pytest.approx(area_of(closed(chain)), rel=1e-8)
    assert float(length_along(curve, x0, x1)) == pytest.approx(chain_length(chain), rel=1e-8)


@given(heads(), SHARE, st.floats(0.0, 30.0))
def test_heights_lie_on_the_arcs(curve: HeadCurve, share: float, by: float) -> None:
    """Each edge's circle is found again from its ends and bulge alone."""
    line = beside(curve, by)
    x = inside(line, share)
    y = float(height_at(line, x, "height"))
    for a, b in chain_edges(line.edge):
        if not a.x <= x <= b.x:
            continue
        arc = arc_of(a, b)
        if arc is None:
            on = a.y + (b.y - a.y) * (x - a.x) / (b.x - a.x)
            assert y == pytest.approx(on, abs=1e-7)
        else:
            assert math.hypot(x - arc.x, y - arc.y) == pytest.approx(arc.radius, abs=1e-6)


@given(heads(), st.floats(0.1, 40.0))
def test_out_and_in_again_is_the_curve(curve: HeadCurve, by: float) -> None:
    out = beside(curve, by)
    back = beside(out, -by)
    same(back.edge, curve.edge)
    for one, other in (
        (back.rise, curve.rise),
        (back.crown_at, curve.crown_at),
        (back.left, curve.left),
        (back.right, curve.right),
    ):
        assert float(one) == pytest.approx(float(other), abs=1e-8)


@given(heads(("segmental", "half round", "elliptical")), st.floats(0.5, 40.0), SHARE)
def test_a_curve_beside_a_smooth_one_is_as_far_off_everywhere(
    curve: HeadCurve, by: float, share: float
) -> None:
    """The nearest of many places on the curve, and none nearer than that."""
    line = beside(curve, by)
    x = inside(line, share)
    y = float(height_at(line, x, "height"))
    gaps = [math.hypot(x - u, y - v) for u, v in points_on(curve.edge, 200)]
    assert min(gaps) >= by - 1e-6
    # Places are this far apart at most; the sagitta over half of that is what they may miss.
    step = chain_length(curve.edge) / 200
    assert min(gaps) <= math.hypot(by, step)


@given(heads(("pointed",)), st.floats(0.5, 40.0))
def test_a_point_stays_a_point(curve: HeadCurve, by: float) -> None:
    """Both arcs go on about their own centres until they meet over the middle."""
    line = beside(curve, by)
    left, right = chain_edges(line.edge)
    for (a, b), (c, d) in zip((left, right), chain_edges(curve.edge), strict=True):
        wide, own = arc_of(a, b), arc_of(c, d)
        assert wide is not None
        assert own is not None
        assert wide.radius == pytest.approx(own.radius + by, abs=1e-6)
        assert (wide.x, wide.y) == pytest.approx((own.x, own.y), abs=1e-6)
    assert left[1].x == float(curve.span) / 2
    assert left[1].y == pytest.approx(float(line.rise), abs=1e-9)
    assert left[1].y > float(curve.rise) + by


@given(heads(("segmental", "half round", "elliptical")), st.floats(0.0, 30.0))
def test_smooth_heads_have_no_corner(curve: HeadCurve, by: float) -> None:
    """Where two arcs meet, both centres and the joint lie on one line."""
    edges = chain_edges(beside(curve, by).edge)
    for (a, b), (c, d) in itertools.pairwise(edges):
        one, other = arc_of(a, b), arc_of(c, d)
        assert one is not None
        assert other is not None
        out = math.atan2(b.x - one.x, b.y - one.y)
        onwards = math.atan2(c.x - other.x, c.y - other.y)
        assert out == pytest.approx(onwards, abs=1e-7)


@given(heads(), SHARE)
def test_seen_from_behind(curve: HeadCurve, share: float) -> None:
    back = mirrored(curve)
    x = inside(curve, share)
    assert float(height_at(back, float(curve.span) - x, "y")) == pytest.approx(
        float(height_at(curve, x, "y")), abs=1e-5
    )
    same(mirrored(back).edge, curve.edge)
    assert float(area_under(back, back.left, back.right)) == pytest.approx(
        float(area_under(curve, curve.left, curve.right)), rel=1e-12
    )


@given(heads(("segmental", "half round", "pointed", "elliptical")))
def test_arches_are_symmetrical(curve: HeadCurve) -> None:
    same(mirrored(curve).edge, curve.edge, within=1e-6)


@given(heads(), SHARE, SHARE, st.floats(0.0, 20.0))
def test_highest(curve: HeadCurve, one: float, other: float, by: float) -> None:
    """No place between is higher, and one is as high."""
    assume(abs(one - other) > 1e-3)
    line = beside(curve, by)
    x0, x1 = (inside(line, share) for share in sorted((one, other)))
    most = float(highest(line, x0, x1, "most"))
    ys = [y for _, y in points_on(part_of(line, x0, x1), 200)]
    assert max(ys) <= most + 1e-6
    assert most - max(ys) <= 1e-4 * float(curve.span)


@given(heads(("half round", "pointed", "elliptical")), st.floats(0.5, 30.0))
def test_glass_over_an_upright_springing_begins_on_its_line(curve: HeadCurve, by: float) -> None:
    """The glass edge stands `by` outside the springing point, at its level."""
    line = beside(curve, by)
    assert (float(line.left), float(line.right)) == pytest.approx(
        (-by, float(curve.span) + by), abs=1e-6
    )
    assert float(height_at(line, -by, "y")) == pytest.approx(0.0, abs=0.02)


@given(st.floats(400.0, 2000.0), st.floats(0.05, 0.4), st.floats(1.0, 12.0))
def test_a_low_arc_goes_on_below_its_springing(span: float, share: float, past: float) -> None:
    """By Pythagoras about the arc's own centre, out where there is wood only."""
    curve = head("segmental", span, round(span * share, 3))
    rise = float(curve.rise)
    radius = (span**2 + 4 * rise**2) / (8 * rise)
    assume(radius > span / 2 + past)
    y = float(height_at(curve, -past, "y"))
    assert y < 0
    assert y == pytest.approx(
        math.sqrt(radius**2 - (span / 2 + past) ** 2) - (radius - rise), abs=1e-6
    )
    chain = part_of(curve, -past, span / 2)
    assert chain[0].y == pytest.approx(y)
    assert len(chain) == 2


@pytest.mark.parametrize("shape", SHAPES)
def test_nothing_is_asked_backwards_or_beyond(shape: str) -> None:
    curve = head(
        shape,  # type: ignore[arg-type]
        900.0,
        {"segmental": 100.0, "pointed": 700.0, "elliptical": 200.0, "raked": 120.0}.get(shape),
        "left" if shape == "raked" else None,
    )
    with pytest.raises(ValueError, match="no way to the right"):
        part_of(curve, 500.0, 400.0)
    if shape == "raked":
        assert curve.tightest is None
        return
    with pytest.raises(ValueError, match="outside the circle"):
        height_at(curve, -5000.0, "y")
    assert curve.tightest is not None
    with pytest.raises(ValueError, match="there is none"):
        beside(curve, -float(curve.tightest))


@given(heads())
@example(head("half round", 800.0, None))
def test_every_radius_and_centre_has_its_name(curve: HeadCurve) -> None:
    for piece in curve.pieces:
        radius = getattr(piece, "radius", None)
        if radius is not None:
            assert radius.name.startswith("arch / ")
            assert radius.name.endswith("radius")
