"""Where leaves stand open and what they sweep over, worked by hand."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.job import check
from parametric.resolve.door import Door
from parametric.trade.standing import (
    clear_stretch,
    comes_towards,
    first_to_open,
    footprint,
    swept,
    way,
    way_of_edge,
    widest_open,
)
from tests.pack.hung_doors import DOORS, written


def door_of(path: Path) -> Door:
    job = check(path, user_house=False)
    assert job.resolved is not None, job.problems
    return job.resolved.door


@pytest.fixture
def mill_lane_door(project: Path) -> Door:
    """The hinged pair: 59-15/16 = 1522.4125 clear; leaves 757.2375 x 44.45, gaps 2.38125, 3.175."""
    return door_of(project / "examples" / "mill-lane-study" / "design.yaml")


def test_a_leaf_turned_square_stands_beside_its_pin(mill_lane_door: Door) -> None:
    """Its pin is half the gap, 1.190625, from the jamb and `out` before its face at Y = 0.

    Turned a right angle its front face, which was `out` behind the pin's line, stands `out`
    to the right of it, and its free edge 1.190625 + 757.2375 before the pin.
    """
    leaf = mill_lane_door.leaves[0]
    out = 6.0
    left = 1.190625 + out
    near = -out - 1.190625 - 757.2375
    xs, ys = zip(*footprint(leaf, 1.0), strict=True)
    assert (min(xs), max(xs)) == pytest.approx((left, left + 44.45))
    assert (min(ys), max(ys)) == pytest.approx((near, -out - 1.190625))
    assert comes_towards(leaf)


def test_the_clear_way_lies_between_leaves_that_stand_open(mill_lane_door: Door) -> None:
    """1522.4125 less, each side, half a gap, the pin's 6 and a leaf: 2 x (1.190625 + 6 + 44.45)."""
    taken = 1.190625 + 6.0 + 44.45
    state = widest_open(mill_lane_door)
    assert clear_stretch(mill_lane_door, state.open) == pytest.approx((taken, 1522.4125 - taken))
    assert float(mill_lane_door.hanging.clear_way) == pytest.approx(1522.4125 - 2 * taken)


def test_only_the_first_leaf_open_leaves_half_of_it(mill_lane_door: Door) -> None:
    """Between leaf A, shut to 2.38125 + 757.2375, and leaf B, open."""
    first = first_to_open(mill_lane_door)
    assert first is not None
    assert first.name == "leaf B"
    taken = 1.190625 + 6.0 + 44.45
    stretch = clear_stretch(mill_lane_door, {"leaf B": 1.0})
    assert stretch == pytest.approx((2.38125 + 757.2375, 1522.4125 - taken))


def test_the_free_corner_runs_on_a_circle_about_the_pin(mill_lane_door: Door) -> None:
    for leaf in mill_lane_door.leaves:
        (turn,) = leaf.hung.motion
        x, y = turn.point[0], turn.point[1]  # type: ignore[union-attr]
        far = {round(math.hypot(px - x, py - y), 6) for px, py in way_of_edge(leaf)}
        assert len(far) == 1


def test_a_leaf_sweeps_the_circle_of_its_far_corner(mill_lane_door: Door) -> None:
    """The square corner of the meeting edge, 758.428125 across and 50.45 behind the pin, swings
    out to the right until it stands level with the pin: sqrt(758.428125^2 + 50.45^2) = 760.1042
    from it. Before the wall the free edge comes 6 + 758.428125.
    """
    over = swept(mill_lane_door.leaves[0])
    far = math.hypot(758.428125, 50.45)
    assert over.left == pytest.approx(2.38125)
    assert over.right == pytest.approx(1.190625 + far, abs=0.05)
    assert over.near == pytest.approx(-6.0 - 758.428125)


def test_sliding_leaves_leave_what_the_design_promises(reading_room: Path) -> None:
    """1829 - 5 wide where narrowest, in the middle of the cover: from 2.5; 852 of it clear."""
    door = door_of(reading_room)
    assert way(door) == pytest.approx((2.5, 1826.5))
    assert clear_stretch(door, widest_open(door).open) == pytest.approx((2.5, 854.5))
    assert first_to_open(door) is None


@pytest.mark.parametrize("which", DOORS)
def test_the_widest_state_is_the_clear_way(which: str, tmp_path: Path) -> None:
    """However a door hangs, its leaves where they stand open leave what its sizes promise."""
    door = door_of(written(tmp_path, which))
    left, right = clear_stretch(door, widest_open(door).open)
    assert right - left == pytest.approx(float(door.hanging.clear_way), abs=0.02)


@pytest.mark.parametrize("which", DOORS)
def test_nothing_of_the_room_stands_where_doors_swing(which: str, tmp_path: Path) -> None:
    """The lamp and the person stand right of all that the doors ever take; the far lamp behind."""
    from parametric.catalog.room import LAMP, LAMP_SHADE, STANDING_LAMP

    shade = max(LAMP_SHADE)
    door = door_of(written(tmp_path, which))
    over = [swept(leaf) for leaf in door.leaves]
    assert STANDING_LAMP[0] - shade > 0.5  # metres, counted from the rightmost that a door comes
    assert max(one.far for one in over) / 1000 < -LAMP[2] - shade
