"""Locks and latches: sizes worked by hand, a body that goes home, and the cuts as solids."""

from __future__ import annotations

import math

import pytest

from parametric.figures import Figure
from parametric.hardware.lock import Lock, lock_wood
from parametric.hardware.lock_cuts import lock_cuts, strike_cuts
from parametric.model import Cut, Making, Shaped
from parametric.outlines import Vertex
from tests.hardware.hung import lock
from tests.hardware.solid import holds

THICK, WIDE, LONG, TRIM = 44.0, 110.0, 1500.0, 12.0


def test_the_sizes_of_a_lock() -> None:
    """The spindle 1000 up and the leaf 10 off the floor: 990. The body reaches 45 above it.

    Mortise: 150 + 2*0.5 = 151 long from 990 + 45 - 150 - 0.5 = 884.5 to 1035.5, 16 + 2*0.5 = 17
    wide, 3 + 80 + 2 = 85 deep. Faceplate about the same middle 960, 201 long, 23 wide, 3 deep.
    Beside the body (44 - 17)/2 = 13.5 of wood.
    """
    one = lock()
    in_edge = one.mortise
    assert one.up == 990.0
    assert (in_edge.low, in_edge.high, in_edge.width, in_edge.deep) == (884.5, 1035.5, 17.0, 85.0)
    assert (in_edge.plate_low, in_edge.plate_high) == (859.5, 1060.5)
    assert (in_edge.plate_width, in_edge.plate_depth) == (23.0, 3.0)
    assert one.wall == 13.5
    assert [(b.name, b.up, b.across, b.width) for b in one.bores] == [
        ("keyhole bore", 990.0 - 72, 55.0, 16.0),
        ("spindle bore", 990.0, 55.0, 20.0),
    ]
    # the strike's middle is the faceplate's: 960 + 10
    assert one.strike_above_floor == 970.0
    assert one.plate_covers
    assert one.bores_meet_body


def test_a_latch_has_no_keyhole() -> None:
    assert [bore.name for bore in lock(kind="mortise latch").bores] == ["spindle bore"]


def test_a_square_body_goes_home_between_round_ends() -> None:
    """Ends of radius 8.5 hold a body 16 wide back by 8.5 - sqrt(8.5**2 - 8**2) = 5.628.

    So far each end runs past. Checked by the body's corners: none is farther from the middle
    of its round end than the radius, and with no run past they would be.
    """
    one = lock().mortise
    assert one.low is not None
    assert one.high is not None
    run = float(one.run_past)
    assert run == pytest.approx(8.5 - math.sqrt(8.5**2 - 8**2))

    def corner_from_middle(past: float) -> float:
        middle = float(one.high or 0.0) + past - 8.5
        return math.hypot(float(one.high or 0.0) - middle, 8.0)

    assert corner_from_middle(run) == pytest.approx(8.5)
    assert corner_from_middle(0.0) > 8.5


def test_what_does_not_fit_is_told() -> None:
    """A plate of 160 does not cover 151 + 2*5.6; a keyhole 110 down misses the body."""
    assert not lock(faceplate="160 x 22 x 3").plate_covers
    assert not lock(faceplate="200 x 15 x 3").plate_covers
    assert not lock(keyhole_below="110").bores_meet_body
    assert not lock(backset="80").bores_meet_body


def test_a_bevel_moves_what_is_measured_from_the_edge() -> None:
    """3 deg over 44 takes 2.306 off one side and 1.153 off the middle, where the plate lies."""
    one = lock(bevel=3.0)
    off = 22 * math.tan(math.radians(3))
    assert float(one.bores[0].across) == pytest.approx(55 + off)
    assert float(one.back_of_mortise) == pytest.approx(85 + off)
    assert one.bevel is not None
    assert float(one.bevel) == pytest.approx(off)
    assert one.plate_lies_in
    # 11.5 to the plate's side at 15 deg is 3.08: more than the 3 that it is let in
    assert not lock(bevel=15.0).plate_lies_in
    assert lock(bevel=0.0).bores[0].across == 55.0


def bevel(planed: str) -> Shaped:
    off = THICK * math.tan(math.radians(3))
    corner = Vertex(off, 0.0) if planed == "low face" else Vertex(off, THICK)
    return Shaped(
        name="edge bevel",
        face="low end",
        outline=(Vertex(0.0, 0.0), corner, Vertex(0.0, THICK)),
        surface=0.0,
        depth=LONG,
        making=Making(by="bench"),
    )


@pytest.mark.kernel
def test_a_lock_in_a_square_edge() -> None:
    """Plate 201 x 23 x 3; mortise 162.256 x 17 with round ends, 82 behind it; four bores 13.5 deep."""
    cuts = lock_cuts(lock(), front="low face", thickness=THICK, shift=TRIM)
    past = 8.5 - math.sqrt(8.5**2 - 8**2)
    mortise = ((151 + 2 * past - 17) * 17 + math.pi * 8.5**2) * 82
    bores = 2 * 13.5 * math.pi * (10**2 + 8**2)
    up = 990 + TRIM
    holds(
        cuts,
        size=(LONG, WIDE, THICK),
        removed=201 * 23 * 3 + mortise + bores,
        gone=(
            (up, 55, 1),
            (up, 55, 43),
            (up - 72, 55, 1),
            (960 + TRIM, 84, 22),
            (1058 + TRIM, 2, 22),
        ),
        left=((up, 86, 22), (up, 70, 10), (up + 60, 20, 22), (up, 1, 9)),
    )


@pytest.mark.kernel
@pytest.mark.parametrize("planed", ["low face", "high face"])
def test_a_lock_in_a_bevelled_edge(planed: str) -> None:
    """Floors 3 and 85 under the middle of the bevel, and no wood taken twice.

    What lies above the middle on one side of the plate lies under it on the other, so beyond
    the bevel plate, mortise and bores take what they take in a square edge.
    """
    cuts: tuple[Cut, ...] = (
        bevel(planed),
        *lock_cuts(lock(bevel=3.0), front="high face", thickness=THICK, shift=TRIM),
    )
    half = 22 * math.tan(math.radians(3))
    past = 8.5 - math.sqrt(8.5**2 - 8**2)
    mortise = ((151 + 2 * past - 17) * 17 + math.pi * 8.5**2) * 82
    bores = 2 * 13.5 * math.pi * (10**2 + 8**2)
    full = 33.0 if planed == "low face" else 11.0
    holds(
        cuts,
        size=(LONG, WIDE, THICK),
        removed=half * THICK * LONG + 201 * 23 * 3 + mortise + bores,
        gone=(
            (870 + TRIM, half + 2.9, 12),
            (870 + TRIM, half + 2.9, 32),
            (870 + TRIM, 0.7, full),
            (960 + TRIM, half + 84.9, 22),
            (990 + TRIM, 55, 1),
        ),
        left=(
            (870 + TRIM, half + 3.1, 12),
            (960 + TRIM, half + 85.1, 22),
            (858 + TRIM, 2 * half, full),
        ),
    )


@pytest.mark.kernel
def test_the_strike_in_the_other_leaf() -> None:
    """Plate 60 x 22 x 2 and a box 40 x 14 x 15 behind it, both with 0.5 round them."""
    one = lock(strike="60 x 22 x 2", box="40 x 14 x 15")
    cuts = strike_cuts(one, thickness=THICK, shift=TRIM)
    past = 7.5 - math.sqrt(7.5**2 - 7**2)
    box = ((41 + 2 * past - 15) * 15 + math.pi * 7.5**2) * 17
    assert [cut.name for cut in cuts] == ["strike plate", "strike box"]
    holds(
        cuts,
        size=(LONG, WIDE, THICK),
        removed=61 * 23 * 2 + box,
        gone=((960 + TRIM, 18, 22), (960 + 28 + TRIM, 1, 22)),
        left=((960 + TRIM, 19.5, 22), (960 + 28 + TRIM, 3, 22)),
    )
    assert strike_cuts(lock(), thickness=THICK, shift=TRIM) == ()


def test_wood_that_a_lock_takes() -> None:
    """From the plate's 859.5 to 1060.5, 85 in, between walls of 13.5; a wider plate takes more."""
    taken = lock_wood(lock(), thickness=Figure(44.0))
    assert (taken.low, taken.high, taken.near, taken.far) == (859.5, 1060.5, 0.0, 85.0)
    assert (taken.front, taken.back) == (13.5, 30.5)


def test_router_and_bench_share_the_work() -> None:
    """A round-ended plate is routed, a square one chopped; bores are bored from both faces."""

    def by(one: Lock) -> list[tuple[str, str]]:
        return [
            (cut.name, cut.making.by)
            for cut in lock_cuts(one, front="low face", thickness=THICK, shift=TRIM)
            if isinstance(cut, Shaped) and cut.face == "low edge"
        ]

    assert by(lock()) == [("lock faceplate", "bench"), ("lock mortise", "router")]
    assert by(lock(faceplate_corner="11")) == [
        ("lock faceplate", "router"),
        ("lock mortise", "router"),
    ]
