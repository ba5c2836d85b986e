"""The arc of a glazed pair, worked by hand in inches: every sum stands beside its answer.

The sums go on from numbers rounded to four places, as a maker's do, so they are met to two
units of the fourth place; the same sums at full precision are met to 1e-9.
"""

from __future__ import annotations

import math

import pytest

from parametric.figures import Figure, arithmetic, formula, inputs, leaves
from parametric.outlines import area_of, backwards
from parametric.shapes.arch import ArchSpec, head_curve
from parametric.shapes.curve import Bow, HeadCurve, area_under, beside, height_at, part_of

INCH = 25.4
CHORD = 2 * 29.8125 + 1 / 8 - 2 * 4.5
RISE = 6.0
MIDDLE = CHORD / 2
RADIUS = (CHORD**2 + 4 * RISE**2) / (8 * RISE)
OUT = 0.375 - 0.0625
"""Frame rebate less clearance: how far the glass reaches past the arc."""


@pytest.fixture
def curve() -> HeadCurve:
    spec = ArchSpec.model_validate({"shape": "segmental", "across": "pair", "rise": f"{RISE} in"})
    span = Figure(CHORD * INCH, "arch / span")
    found = head_curve(spec, span, "arch", "inch")
    assert isinstance(found, HeadCurve)
    return found


def height(curve: HeadCurve, from_middle: float) -> float:
    """Inches above the springing at a distance from the middle of the pair."""
    return float(height_at(curve, (MIDDLE - from_middle) * INCH, "height")) / INCH


def exactly(from_middle: float, radius: float = RADIUS) -> float:
    """The circle about the arc's centre, by Pythagoras."""
    return math.sqrt(radius**2 - from_middle**2) - (RADIUS - RISE)


def test_chord_and_radius(curve: HeadCurve) -> None:
    # 2*29.8125 + 1/8 - 2*4.5 = 50.75; (50.75**2 + 4*6**2)/(8*6) = 56.6576
    assert float(curve.span) / INCH == pytest.approx(50.75, abs=1e-12)
    (bow,) = curve.pieces
    assert isinstance(bow, Bow)
    assert float(bow.radius) / INCH == pytest.approx(56.6576, abs=5e-5)
    assert float(bow.radius) / INCH == pytest.approx(RADIUS, abs=1e-12)
    assert bow.radius.name == "arch / radius"
    assert float(bow.below) / INCH == pytest.approx(56.6576 - 6, abs=5e-5)


def test_the_sum_that_is_printed_is_the_sum_that_ran(curve: HeadCurve) -> None:
    (bow,) = curve.pieces
    assert isinstance(bow, Bow)
    assert (
        formula(bow.radius)
        == "(square([arch / span]) + 4 * square([arch / rise])) / (8 * [arch / rise])"
    )
    at = height_at(curve, Figure(20 * INCH, "x"), "leaf A / arch height at the right stile")
    assert at.name == "leaf A / arch height at the right stile"
    assert formula(at) == (
        "root(square([arch / radius]) - square(x - [arch / centre across]))"
        " - [arch / centre below the springing]"
    )
    assert list(inputs(at)) == [
        "arch / radius",
        "x",
        "arch / centre across",
        "arch / centre below the springing",
    ]
    assert {leaf.name for leaf in leaves(at)} >= {"arch / span", "x"}
    assert arithmetic(bow.radius) == "(square(1289.05) + 4 * square(152.4)) / (8 * 152.4)"


@pytest.mark.parametrize(
    ("where", "from_middle", "printed"),
    [
        # sqrt(56.6576**2 - 4.5625**2) - (56.6576 - 6) = 5.816
        ("meeting stile, 1/16 + 4-1/2", 4.5625, 5.816),
        # sqrt(56.6576**2 - 15.4062**2) - (56.6576 - 6) = 3.8652
        ("bar edge nearer the hinge, 50.75/2 - 9.9688", 15.40625, 3.8652),
        # sqrt(56.6576**2 - 14.5312**2) - (56.6576 - 6) = 4.1049
        ("bar edge nearer the middle, 15.4062 - 7/8", 14.53125, 4.1049),
        ("springing", 50.75 / 2, 0.0),
        ("crown", 0.0, 6.0),
    ],
)
def test_heights(curve: HeadCurve, where: str, from_middle: float, printed: float) -> None:
    assert height(curve, from_middle) == pytest.approx(printed, abs=1e-4), where
    assert height(curve, -from_middle) == pytest.approx(height(curve, from_middle), abs=1e-10)
    assert height(curve, from_middle) == pytest.approx(exactly(from_middle), abs=1e-9)


def test_the_glass_lies_on_a_concentric_arc(curve: HeadCurve) -> None:
    # 56.6576 + 0.375 - 0.0625 = 56.9701
    glass = beside(curve, OUT * INCH)
    (bow,), (own,) = glass.pieces, curve.pieces
    assert isinstance(bow, Bow)
    assert isinstance(own, Bow)
    assert float(bow.radius) / INCH == pytest.approx(56.9701, abs=5e-5)
    assert (bow.x, bow.below) == (own.x, own.below)
    assert height(glass, 0.0) == pytest.approx(6 + OUT, abs=1e-10)
    assert float(glass.rise) / INCH == pytest.approx(6 + OUT, abs=1e-10)


@pytest.mark.parametrize(
    ("edge", "from_middle", "printed"),
    [
        # 14.7335 + 0.25 + sqrt(56.9701**2 - 25.6875**2) - (56.6576 - 6) = 15.1761
        ("hinge pane, hinge edge: 50.75/2 + 0.375 - 0.0625", 25.6875, 15.1761),
        # 14.7335 + 0.25 + sqrt(56.9701**2 - 15.1562**2) - (56.6576 - 6) = 19.2429
        ("hinge pane, bar edge: 15.4062 - 0.3125 + 0.0625", 15.15625, 19.2429),
        # 14.7335 + 0.25 + sqrt(56.9701**2 - 14.7812**2) - (56.6576 - 6) = 19.3451
        ("middle pane, bar edge: 14.5312 + 0.3125 - 0.0625", 14.78125, 19.3451),
        # 14.7335 + 0.25 + sqrt(56.9701**2 - 4.25**2) - (56.6576 - 6) = 21.1373
        ("middle pane, meeting edge: 4.5625 - 0.375 + 0.0625", 4.25, 21.1373),
    ],
)
@pytest.mark.parametrize("leaf", ["A", "B"])
def test_pane_edges(
    curve: HeadCurve, edge: str, from_middle: float, printed: float, leaf: str
) -> None:
    """Four edges in each of the two leaves; the first lies past the springing, below its line's circle."""
    glass = beside(curve, OUT * INCH)
    way = 1.0 if leaf == "A" else -1.0
    found = 14.7335 + 0.25 + height(glass, way * from_middle)
    assert found == pytest.approx(printed, abs=1e-4), edge
    assert height(glass, way * from_middle) == pytest.approx(
        exactly(from_middle, RADIUS + OUT), abs=1e-9
    )


def test_the_row_over_the_springing(curve: HeadCurve) -> None:
    """Daylight of the top row: hinge light 14.7335 to 18.5987, middle light 18.8384 to 20.5495."""
    for from_middle, printed in (
        (MIDDLE, 14.7335),
        (15.40625, 18.5987),
        (14.53125, 18.8384),
        (4.5625, 20.5495),
    ):
        assert 14.7335 + height(curve, from_middle) == pytest.approx(printed, abs=1e-4)


def test_area_under_one_leaf_s_half(curve: HeadCurve) -> None:
    """Hinge edge to meeting edge, the circle's own integral: 75.531 sq in."""

    def part(x: float) -> float:
        return (
            RADIUS**2 / 2 * (math.asin(x / RADIUS) + x / RADIUS * math.sqrt(1 - (x / RADIUS) ** 2))
        )

    # (R**2/2)*((asin(25.375/R) + ...) - (asin(4.5625/R) + ...)) - (R - 6)*(25.375 - 4.5625)
    by_hand = part(MIDDLE) - part(4.5625) - (RADIUS - RISE) * (MIDDLE - 4.5625)
    assert by_hand == pytest.approx(75.531, abs=5e-4)
    near = float(area_under(curve, 0.0, (MIDDLE - 4.5625) * INCH)) / INCH**2
    far = float(area_under(curve, (MIDDLE + 4.5625) * INCH, curve.span)) / INCH**2
    assert near == pytest.approx(by_hand, abs=1e-9)
    assert far == pytest.approx(by_hand, abs=1e-9)
    chain = part_of(curve, 0.0, (MIDDLE - 4.5625) * INCH)
    closed = (chain[-1]._replace(y=0.0), *backwards(chain))
    assert area_of(closed) / INCH**2 == pytest.approx(by_hand, abs=1e-9)
