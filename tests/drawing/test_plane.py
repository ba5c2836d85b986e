"""Cutting lines and circles at outlines, and pushing numbers apart, by hand-worked figures."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.drawing.plane import (
    Box,
    Region,
    cut_circle,
    cut_line,
    cut_path,
    inside,
    left_of,
    outside_all,
    rectangle,
    spread,
)

# A channel, 10 x 10 with a slot 2 wide and 4 deep from the top: the line y = 8 is cut in two.
CHANNEL = (
    (0.0, 0.0),
    (10.0, 0.0),
    (10.0, 10.0),
    (6.0, 10.0),
    (6.0, 6.0),
    (4.0, 6.0),
    (4.0, 10.0),
    (0.0, 10.0),
)


def test_a_line_through_a_channel_falls_in_two() -> None:
    pieces = list(cut_line((-5.0, 8.0), (15.0, 8.0), (CHANNEL,), keep_inside=True))
    assert pieces == [
        (pytest.approx((0.0, 8.0)), pytest.approx((4.0, 8.0))),
        (pytest.approx((6.0, 8.0)), pytest.approx((10.0, 8.0))),
    ]
    outside = list(cut_line((-5.0, 8.0), (15.0, 8.0), (CHANNEL,), keep_inside=False))
    assert sum(math.dist(*p) for p in outside) == pytest.approx(20.0 - 8.0)


def test_a_hole_is_left_out() -> None:
    """A box of 10 with a hole of 4 in it, even-odd: 3 + 3 of the middle line is left."""
    region: Region = (rectangle(0, 0, 10, 10), rectangle(3, 3, 7, 7))
    pieces = list(cut_line((-1.0, 5.0), (11.0, 5.0), region, keep_inside=True))
    assert sum(math.dist(*p) for p in pieces) == pytest.approx(6.0)


def test_a_circle_about_a_corner_keeps_a_quarter() -> None:
    """About the low corner of a square, only 0 to 90 degrees lies inside."""
    arcs = list(cut_circle((0.0, 0.0), 5.0, (rectangle(0, 0, 10, 10),)))
    assert sum(end - start for start, end in arcs) == pytest.approx(90.0)


def test_a_circle_inside_stays_whole() -> None:
    assert list(cut_circle((5.0, 5.0), 2.0, (rectangle(0, 0, 10, 10),))) == [(0.0, 360.0)]
    assert list(cut_circle((5.0, 5.0), 20.0, (rectangle(0, 0, 10, 10),))) == []


def test_a_path_is_kept_in_runs() -> None:
    path = [(-1.0, 2.0), (3.0, 2.0), (3.0, 12.0), (5.0, 12.0), (5.0, 2.0)]
    runs = list(cut_path(path, (rectangle(0, 0, 10, 10),)))
    assert [len(run) for run in runs] == [3, 2]
    assert runs[0][0] == pytest.approx((0.0, 2.0))


def test_what_nearer_things_cover_is_not_seen() -> None:
    seen = outside_all(
        (0.0, 5.0), (100.0, 5.0), [rectangle(10, 0, 20, 10), rectangle(15, 0, 40, 10)]
    )
    assert [(a[0], b[0]) for a, b in seen] == [
        (pytest.approx(0.0), pytest.approx(10.0)),
        (pytest.approx(40.0), pytest.approx(100.0)),
    ]


def test_half_of_a_rectangle_is_left_of_its_middle() -> None:
    assert set(left_of(rectangle(0, 0, 10, 4), 5.0)) == {
        (0.0, 0.0),
        (5.0, 0.0),
        (5.0, 4.0),
        (0.0, 4.0),
    }


def test_a_box_touched_along_its_edge_is_not_crossed() -> None:
    box = Box(0, 0, 10, 10)
    assert not box.crossed((0.0, 10.0), (10.0, 10.0))
    assert box.crossed((-1.0, 5.0), (11.0, 5.1))
    assert not box.crossed((-1.0, 12.0), (11.0, 11.0))


@given(st.lists(st.floats(-100, 100), min_size=1, max_size=20), st.floats(0.5, 8))
def test_numbers_pushed_apart_keep_order_and_pitch(wanted: list[float], pitch: float) -> None:
    wanted = sorted(wanted)
    places = spread(wanted, pitch)
    gaps = [b - a for a, b in itertools.pairwise(places)]
    assert all(gap >= pitch - 1e-6 for gap in gaps)
    # What is pushed about is pushed about its own middle: the mean stays.
    assert sum(places) == pytest.approx(sum(wanted), abs=1e-6)


@given(
    st.tuples(st.floats(-20, 20), st.floats(-20, 20)),
    st.tuples(st.floats(-20, 20), st.floats(-20, 20)),
)
def test_inside_and_outside_are_the_whole_line(
    a: tuple[float, float], b: tuple[float, float]
) -> None:
    kept = [math.dist(*p) for p in cut_line(a, b, (CHANNEL,), keep_inside=True)]
    left = [math.dist(*p) for p in cut_line(a, b, (CHANNEL,), keep_inside=False)]
    assert sum(kept) + sum(left) == pytest.approx(math.dist(a, b), abs=1e-5)


def test_a_point_in_the_slot_is_outside() -> None:
    assert not inside((5.0, 8.0), (CHANNEL,))
    assert inside((5.0, 5.0), (CHANNEL,))
