"""An ellipse in true arcs, against the ellipse's own equation.

x = a cos t, y = b sin t about the middle of the springing line. Nothing here knows how the
arcs were found.
"""

from __future__ import annotations

import itertools
import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.integrate import quad
from scipy.optimize import linprog, minimize_scalar

from parametric.outlines import Outline, arc_of
from parametric.shapes.curve import area_under, beside, height_at, length_along
from parametric.shapes.ellipse_arcs import CLOSE
from tests.shapes.heads import chain_edges, head, points_on

CASES = (
    (900.0, 200.0),
    (1300.0, 150.0),
    (600.0, 200.0),
    (800.0, 390.0),
    (700.0, 500.0),
    (900.0, 30.0),
)


def from_ellipse(x: float, y: float, a: float, b: float) -> float:
    """Distance to the ellipse, less than nothing inside it: the nearest of its points."""

    def far(t: float) -> float:
        return math.hypot(x - a * math.cos(t), y - b * math.sin(t))

    ts = np.linspace(0, math.pi, 721)
    best = ts[int(np.argmin(np.hypot(x - a * np.cos(ts), y - b * np.sin(ts))))]
    step = ts[1]
    found = minimize_scalar(
        far, bounds=(best - step, best + step), method="bounded", options={"xatol": 1e-10}
    )
    return math.copysign(float(found.fun), (x / a) ** 2 + (y / b) ** 2 - 1)


@pytest.mark.parametrize(("span", "rise"), CASES)
def test_no_arc_leaves_the_ellipse(span: float, rise: float) -> None:
    edge = head("elliptical", span, rise).edge
    off = [from_ellipse(x - span / 2, y, span / 2, rise) for x, y in points_on(edge, 24)]
    assert max(map(abs, off)) <= CLOSE
    assert (edge[0].x, edge[0].y) == (0.0, pytest.approx(0.0, abs=1e-6))
    assert (edge[-1].x, edge[-1].y) == (span, pytest.approx(0.0, abs=1e-6))


@given(st.integers(200, 3000), st.floats(0.026, 1.5))
def test_no_arc_leaves_any_ellipse(span: int, share: float) -> None:
    rise = round(span * share, 3)
    edge = head("elliptical", float(span), rise).edge
    for x, y in points_on(edge, 7):
        assert abs(from_ellipse(x - span / 2, y, span / 2, rise)) <= CLOSE + 1e-6


@pytest.mark.parametrize(("span", "rise"), CASES)
def test_it_stands_off_as_much_outside_as_inside_by_turns(span: float, rise: float) -> None:
    """The sign of a best fit: between every two joints the same most, first one side, then the other."""
    edge = head("elliptical", span, rise).edge
    most: list[float] = []
    for a, b in chain_edges(edge)[: len(edge) // 2]:
        off = [from_ellipse(x - span / 2, y, span / 2, rise) for x, y in points_on((a, b), 200)]
        most += [max(off), -min(off)] if not most else [-min(off), max(off)]
    # The first arc leaves the springing point outside only (a lying ellipse), the middle one
    # comes to the crown from inside only; an upright one the other way.
    inner = most[2:-2]
    assert max(inner) == pytest.approx(min(inner), rel=2e-3)
    assert max(most) == pytest.approx(max(inner), rel=2e-3)


def best_with_two(a: float, b: float) -> float:
    """The least that two arcs to a quarter stand off it, every joint tried.

    With the joint's facing given, upright at the springing and level at the crown, both ends
    fix both radii; the arcs' tangents are compared with the ellipse's of the same facing.
    """
    facings = np.linspace(0, math.pi / 2, 721)
    own = np.hypot(a * np.cos(facings), b * np.sin(facings))
    best = math.inf
    for joint in np.linspace(0.005, math.pi / 2 - 0.005, 1500):
        c, s = math.cos(joint), math.sin(joint)
        first, second = np.linalg.solve([[1 - c, c], [s, 1 - s]], [a, b])
        x, y = (first - second) * c + a - first, (first - second) * s
        off = np.where(
            facings <= joint,
            (a - first) * np.cos(facings) + first - own,
            x * np.cos(facings) + y * np.sin(facings) + second - own,
        )
        best = min(best, float(np.abs(off).max()))
    return best


def best_with(a: float, b: float, joints: tuple[float, ...]) -> float:
    """The least that arcs with these joints stand off a quarter, all radii free: a linear programme."""
    ends = [0.0, *joints, math.pi / 2]
    count = len(ends) - 1
    facings = np.linspace(0, math.pi / 2, 181)
    rows = np.array(
        [
            [
                math.cos(t - min(ends[j + 1], t)) - math.cos(t - ends[j]) if t > ends[j] else 0.0
                for j in range(count)
            ]
            for t in facings
        ]
    )
    wanted = np.hypot(a * np.cos(facings), b * np.sin(facings)) - a * np.cos(facings)
    up = np.diff(np.sin(ends))
    along = -np.diff(np.cos(ends))
    one = np.ones((len(facings), 1))
    found = linprog(
        [0.0] * count + [1.0],
        A_ub=np.vstack([np.hstack([rows, -one]), np.hstack([-rows, -one])]),
        b_ub=np.concatenate([wanted, -wanted]),
        A_eq=np.array([[*along, 0.0], [*up, 0.0]]),
        b_eq=[a, b],
        bounds=[(0, None)] * (count + 1),
    )
    return float(found.fun) if found.status == 0 else math.inf


def quarter_count(edge: Outline) -> int:
    """Arcs to a quarter, the shared one counted to both."""
    return len(edge) // 2


def test_two_arcs_are_all_that_a_nearly_round_one_takes() -> None:
    assert quarter_count(head("elliptical", 300.0, 149.5).edge) == 2
    assert best_with_two(150.0, 149.5) <= CLOSE


@pytest.mark.parametrize(("span", "rise"), [(300.0, 147.0), (800.0, 396.0)])
def test_three_arcs_where_two_will_not_do(span: float, rise: float) -> None:
    assert quarter_count(head("elliptical", span, rise).edge) == 3
    assert best_with_two(span / 2, rise) > CLOSE


def test_four_arcs_where_three_will_not_do() -> None:
    """Every pair of joints on a grid of three degrees; the best of them is nowhere near."""
    span, rise = 800.0, 390.0
    assert quarter_count(head("elliptical", span, rise).edge) == 4
    grid = [math.radians(d) for d in range(4, 88, 3)]
    assert (
        min(best_with(span / 2, rise, pair) for pair in itertools.combinations(grid, 2))
        > 1.5 * CLOSE
    )


def test_as_high_as_half_its_span_it_is_half_round() -> None:
    edge = head("elliptical", 800.0, 400.0).edge
    assert len(edge) == 2
    arc = arc_of(edge[0], edge[1])
    assert arc is not None
    assert arc.radius == pytest.approx(400.0)
    assert (arc.x, arc.y) == pytest.approx((400.0, 0.0), abs=1e-9)


@pytest.mark.parametrize(("span", "rise"), CASES)
def test_area_and_length(span: float, rise: float) -> None:
    """Half an ellipse: pi a b / 2; its length by the integral, which no closed form has."""
    curve = head("elliptical", span, rise)
    a, b = span / 2, rise
    length, _ = quad(lambda t: math.hypot(a * math.sin(t), b * math.cos(t)), 0, math.pi)
    assert float(length_along(curve, 0.0, span)) == pytest.approx(length, abs=CLOSE)
    assert float(area_under(curve, 0.0, span)) == pytest.approx(
        math.pi * a * b / 2, abs=CLOSE * length / 4
    )


def test_heights_over_a_door() -> None:
    """900 wide, 200 high, a quarter of the way in: 200 sqrt(1 - (225/450)**2) = 173.205."""
    curve = head("elliptical", 900.0, 200.0)
    assert float(height_at(curve, 225.0, "y")) == pytest.approx(173.205, abs=CLOSE)
    assert float(height_at(curve, 450.0, "y")) == pytest.approx(200.0, abs=1e-9)


def test_glass_edge_is_of_the_arcs() -> None:
    """Each radius so much larger, about the same centre; an ellipse has no ellipse beside it."""
    curve = head("elliptical", 900.0, 200.0)
    for (a, b), (c, d) in zip(
        chain_edges(curve.edge), chain_edges(beside(curve, 8.0).edge), strict=True
    ):
        own, out = arc_of(a, b), arc_of(c, d)
        assert own is not None
        assert out is not None
        assert out.radius == pytest.approx(own.radius + 8.0, abs=1e-6)
        assert (out.x, out.y) == pytest.approx((own.x, own.y), abs=1e-6)


def test_the_same_bytes_twice() -> None:
    one, other = (head("elliptical", 913.7, 211.3).edge for _ in range(2))
    assert one == other
