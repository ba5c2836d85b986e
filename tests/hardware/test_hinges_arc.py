"""Edges that come round on a circle: the sums of the brief, and a leaf turned step by step."""

from __future__ import annotations

import math

import pytest

from parametric.figures import Figure
from parametric.hangings.closing_arc import (
    bevel_across,
    casing_cleared,
    closing_gap,
    heel_gap,
    swing_out,
)
from parametric.hangings.swinging import swing_of
from parametric.model import Placement, along


def test_mill_lane_swing_out() -> None:
    """sqrt(29.8125**2 + 1.75**2) - 29.8125 = 0.0513 in."""
    by_hand = math.sqrt(29.8125**2 + 1.75**2) - 29.8125
    assert by_hand == pytest.approx(0.0513, abs=5e-5)
    assert float(swing_out(29.8125, 1.75, "swing-out")) == pytest.approx(by_hand, abs=1e-12)
    about_its_corner = closing_gap(
        width=29.8125, thickness=1.75, pin_out=0.0, pin_beside=0.0, name="gap"
    )
    assert float(about_its_corner) == pytest.approx(by_hand, abs=1e-12)


def test_mill_lane_bevel() -> None:
    """1.75 * tan(3 deg) = 0.092 in; planed so, the edge asks for no gap at all."""
    bevel = bevel_across(1.75, 3.0, "bevel")
    assert float(bevel) == pytest.approx(1.75 * math.tan(math.radians(3)), abs=1e-12)
    assert float(bevel) == pytest.approx(0.092, abs=5e-4)
    planed = closing_gap(
        width=29.8125, thickness=1.75, pin_out=0.24, pin_beside=3 / 64, bevel=bevel, name="gap"
    )
    assert float(planed) == 0.0


def turned(
    width: float, thickness: float, out: float, beside: float, bevel: float, neighbour: float
) -> float:
    """The least gap, found by turning every point of the edge through a right angle, a little at a time.

    x from the hinge edge, z in from the knuckle face, the pin at (-beside, -out). The other leaf
    takes up z from 0 to the thickness, its own edge set back by its bevel.
    """
    least = 0.0
    for part in range(41):
        z = thickness * part / 40
        x = width - bevel * part / 40
        radius = math.hypot(x + beside, z + out)
        begin = math.atan2(z + out, x + beside)
        for step in range(4001):
            angle = begin - step * 0.0001
            level = radius * math.sin(angle) - out
            if level < 0:
                break
            edge = width + neighbour * level / thickness
            least = max(least, radius * math.cos(angle) - beside - edge)
    return least


@pytest.mark.parametrize(
    ("width", "thickness", "out", "beside", "bevel", "neighbour"),
    [
        (757.0, 44.45, 6.0, 1.2, 0.0, 0.0),
        (757.0, 44.45, 6.0, 1.2, 1.0, 0.0),
        (757.0, 44.45, 6.0, 1.2, 2.33, 2.33),
        (300.0, 44.0, 6.0, 1.5, 2.3, 2.3),
        (300.0, 60.0, 12.0, 1.5, 4.0, 0.0),
        (800.0, 44.0, -22.0, -40.0, 0.0, 0.0),
        (400.0, 60.0, -15.0, -40.0, 1.0, 0.0),
    ],
)
def test_a_leaf_turned_step_by_step_needs_the_gap_that_is_said(
    width: float, thickness: float, out: float, beside: float, bevel: float, neighbour: float
) -> None:
    said = closing_gap(
        width=width,
        thickness=thickness,
        pin_out=out,
        pin_beside=beside,
        bevel=bevel or None,
        name="gap",
    )
    # a step of 0.0001 rad passes the level of the face within 0.0001 * thickness
    found = turned(width, thickness, out, beside, bevel, neighbour)
    assert float(said) == pytest.approx(found, abs=2e-3)


def test_the_heel_of_a_leaf_on_pivots() -> None:
    """Pins 40 in and 22 from the face: sqrt(40**2 + 22**2) - 40 = 5.651."""
    by_hand = math.sqrt(40**2 + 22**2) - 40
    assert float(heel_gap(from_edge=40.0, from_face=22.0, name="heel")) == pytest.approx(by_hand)
    # turned step by step: how far beyond the hinge edge the near corner comes
    begin = math.atan2(-22.0, -40.0)
    beyond = max(
        -math.hypot(40.0, 22.0) * math.cos(begin - step * 0.0001) - 40.0 for step in range(16000)
    )
    assert by_hand == pytest.approx(beyond, abs=1e-4)


def test_a_leaf_on_pivots_turns_about_its_pins() -> None:
    """A leaf 800 x 44 in a gap of 6, pins 40 in and 22 from the face: each corner keeps its circle.

    Opened by 90 deg its heel has come 40 out of the wall's face and the rest 800 - 40 into the
    room, less the 22: 738; it takes up 6 + 40 + 22 of the way, and nothing goes past the jamb.
    """
    swing = swing_of(
        name="leaf A",
        hinge_side="left",
        opens="towards you",
        left=Figure(6.0),
        width=Figure(800.0),
        thickness=Figure(44.0),
        gap=Figure(6.0),
        pin_out=Figure(-22.0),
        pin_beside=Figure(-40.0),
        wall=None,
    )
    assert swing.turn.point == (46.0, 22.0, 0.0)
    assert float(swing.in_the_way) == 6 + 40 + 22
    assert float(swing.reach) == 800 - 40 - 22
    corners = [(x, y, 0.0) for x in (6.0, 806.0) for y in (0.0, 44.0)]
    left = right = 0.0
    for part in range(1001):
        placed = [
            along(Placement(origin=corner), (swing.turn,), part / 1000).origin for corner in corners
        ]
        left = min(left, *(p[0] for p in placed))
        right = max(right, *(p[0] for p in placed if p[1] >= 0))
    # the heel needs sqrt(40**2 + 22**2) - 40 = 5.65 of the 6; the far edge what is said
    assert left == 0.0
    assert right - 806 == pytest.approx(float(swing.needs), abs=1e-3)
    opened = [along(Placement(origin=c), (swing.turn,), 1.0).origin for c in corners]
    assert max(p[0] for p in opened) == pytest.approx(68.0)
    assert min(p[1] for p in opened) == pytest.approx(-738.0)


def test_a_casing_that_a_leaf_lies_back_on() -> None:
    """A pin 14 proud turns the face from 14 behind it to 14 before it: a casing of 28."""
    assert casing_cleared(14.0, "casing cleared") == 28.0
