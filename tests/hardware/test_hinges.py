"""How many hinges, where, and what they carry: the sums of the briefs, quoted beside each."""

from __future__ import annotations

import itertools
import math

import pytest
from pydantic import ValidationError

from parametric.figures import Figure, arithmetic, formula
from parametric.hardware.butt_hinge import ButtHinges, ButtHingeSpec
from parametric.hardware.hinge_kinds import hinge_wood, pin_out_of
from parametric.hardware.pivot import PivotSpec
from parametric.hardware.wood_taken import kept_apart
from tests.hardware.hung import (
    BUTT,
    INCH,
    POUND,
    butts,
    cups,
    edge,
    pivots,
    spec_of,
    steps,
)

MILL_LANE = butts(
    edge(
        height=81.375 * INCH,
        width=29.8125 * INCH,
        thickness=1.75 * INCH,
        gap=3 / 32 * INCH,
        foot=0.5 * INCH,
        head_gap=INCH / 8,
        weight=81.5 * POUND,
    ),
    count="3",
    length='4-1/2"',
    from_top='7"',
    from_bottom='11"',
)


def test_mill_lane_centres() -> None:
    """81.375 - 7 - 2.25 = 72.125; 11 + 2.25 = 13.25; (72.125 + 13.25)/2 = 42.6875 in."""
    assert [float(place.centre) / INCH for place in MILL_LANE.places] == pytest.approx(
        [72.125, 42.6875, 13.25], abs=1e-12
    )
    assert [place.name for place in MILL_LANE.places] == [
        "leaf A / top hinge",
        "leaf A / middle hinge",
        "leaf A / bottom hinge",
    ]
    for place in MILL_LANE.places:
        assert float(place.high - place.low) / INCH == pytest.approx(4.5)


def test_mill_lane_pull_on_the_top_hinge() -> None:
    """81.5 * (29.8125/2) / (72.125 - 13.25) = 20.6 lb."""
    by_hand = 81.5 * (29.8125 / 2) / (72.125 - 13.25)
    assert by_hand == pytest.approx(20.6, abs=0.05)
    assert float(MILL_LANE.load.pull) / POUND == pytest.approx(by_hand)
    assert float(MILL_LANE.load.share) / POUND == pytest.approx(81.5 / 3)
    assert formula(MILL_LANE.load.pull) == (
        "weight * (leaf width / 2) / [leaf A / hinges / top to bottom]"
    )


@pytest.mark.parametrize("hinges", [MILL_LANE, butts(edge(weight=63.0), from_top="120", count="4")])
def test_the_leaf_hangs_in_balance(hinges: ButtHinges) -> None:
    """Forces on a leaf: its weight, a pull at the top, a push at the bottom, hinges holding it up.

    Statics: the moments about any point whatever come to nothing.
    """
    top, bottom = float(hinges.places[0].centre), float(hinges.places[-1].centre)
    width = 29.8125 * INCH if hinges is MILL_LANE else 800.0
    weight, pull = float(hinges.load.weight), float(hinges.load.pull)
    # x from the hinge edge, y up: (x, y, force along x, force along y)
    forces = [
        (width / 2, 1000.0, 0.0, -weight),
        (0.0, top, -pull, 0.0),
        (0.0, bottom, pull, 0.0),
        *((0.0, float(p.centre), 0.0, float(hinges.load.share)) for p in hinges.places),
    ]
    assert sum(f[2] for f in forces) == pytest.approx(0.0, abs=1e-9)
    assert sum(f[3] for f in forces) == pytest.approx(0.0, abs=1e-9)
    for about in ((0.0, 0.0), (311.0, -47.0), (-90.0, 1700.0)):
        moment = sum((x - about[0]) * fy - (y - about[1]) * fx for x, y, fx, fy in forces)
        assert moment == pytest.approx(0.0, abs=1e-6 * weight * width)


def test_fen_road_counts_pitch_and_cup_centre() -> None:
    """max(5, ceil(7.9/4.5)) = 5; (2270 - 200)/4 = 517.5; 5 + 35/2 = 22.5."""
    tall = cups(height=2270.0, weight=7.9)
    assert (int(tall.count), tall.counted.by) == (max(5, math.ceil(7.9 / 4.5)), "height")
    assert tall.counted.by_height == 5.0
    assert tall.counted.by_weight == 2.0
    assert float(tall.pitch) == 517.5
    assert float(tall.boring) == 22.5
    assert arithmetic(tall.boring) == "5 + 35 / 2"
    ups = [float(place.centre) for place in tall.places]
    assert ups == [2170.0, 1652.5, 1135.0, 617.5, 100.0]
    assert {a - b for a, b in itertools.pairwise(ups)} == {517.5}


def test_fen_road_one_mm_less_saves_one_hinge_a_door() -> None:
    """1601 is over the step of 1600 by 1: 4 hinges, and 3 at 1600; two doors save two."""
    middle = cups(height=1601.0, weight=5.5)
    saving = middle.counted.saving
    assert int(middle.count) == 4
    assert saving is not None
    assert (saving.step, saving.over, saving.saved) == (1600.0, 1.0, 1.0)
    at_the_step = cups(height=1600.0, weight=5.5)
    assert int(at_the_step.count) == 3
    assert 4 * int(cups(height=2270.0, weight=7.9).count) + 2 * int(middle.count) == 28


def test_a_step_saves_nothing_where_weight_asks_for_as_many() -> None:
    """16 kg / 4.5 = 3.6, so 4 by weight: no lower leaf of that weight takes 3."""
    heavy = cups(height=1601.0, weight=16.0)
    assert (int(heavy.count), heavy.counted.by, heavy.counted.saving) == (
        4,
        "height and weight",
        None,
    )


@pytest.mark.parametrize(
    ("weight", "count", "by"),
    [(13.5, 4, "height"), (18.0, 4, "height and weight"), (18.1, 5, "weight")],
)
def test_weight_decides_beyond_what_one_carries(weight: float, count: int, by: str) -> None:
    """13.5/4.5 = 3, 18/4.5 = 4, 18.1/4.5 = 4.02 and so 5; the height of 1700 asks for 4."""
    hinges = cups(height=1700.0, weight=weight)
    assert (int(hinges.count), hinges.counted.by) == (count, by)
    assert len(hinges.places) == count
    assert float(hinges.load.share) <= 4.5


def test_a_written_count_stands_and_what_was_asked_is_kept() -> None:
    hinges = cups(height=2270.0, weight=7.9, count="4")
    assert (int(hinges.count), hinges.counted.by) == (4, "written")
    assert hinges.counted.by_height == 5.0
    assert hinges.counted.saving is None


def test_above_the_last_step_nothing_is_made_up() -> None:
    counted = cups(height=2401.0, weight=7.9).counted
    assert counted.past == 2400.0
    assert counted.by_height is None
    assert cups(height=2400.0, weight=7.9).counted.past is None


def test_a_rating_of_the_set_is_shared() -> None:
    """Three hinges rated for 90 kg together are rated for 30 each."""
    hinges = butts(count="3", set_carries="90 kg")
    assert hinges.load.rating == 30.0
    assert butts(count="3").load.rating is None


def test_steps_are_read_in_the_unit_of_their_file() -> None:
    """60 in = 1524 mm: a leaf of 1524 takes two, one of 1525 three."""
    written = steps({"60": "2", '90"': "3", "3048 mm": "4"}, "inch")
    assert int(butts(edge(height=1524.0), steps=written).count) == 2
    assert int(butts(edge(height=1525.0), steps=written).count) == 3
    assert int(butts(edge(height=2286.5), steps=written).count) == 4


@pytest.mark.parametrize(
    ("of", "says"),
    [
        ({"1600": "3", "900": "2"}, "goes up from line to line: 900 stands after 1600"),
        ({"900": "3", "1600": "2"}, "A leaf of 1600 would take fewer hinges than one of 900"),
        ({"900": "1"}, "2 to 12 hinges"),
        ({"900": "two"}, "2 to 12 hinges"),
        ({"tall": "2"}, '"tall" is not a length'),
        ({}, "nothing in"),
    ],
)
def test_steps_that_cannot_be(of: dict[str, str], says: str) -> None:
    with pytest.raises(ValidationError, match=says):
        spec_of(ButtHingeSpec, BUTT, steps=steps(of))


def test_a_leaf_hangs_on_two_at_least() -> None:
    with pytest.raises(ValidationError, match="2 to 12 hinges, not 1"):
        spec_of(ButtHingeSpec, {**BUTT, "steps": steps({"900": "2"})}, count="1")


def test_the_flap_and_its_mortise() -> None:
    """44 thick less 6 behind is a mortise of 38; a flap of 35 leaves 9."""
    derived = butts()
    assert (derived.mortise.width, derived.mortise.behind, derived.flap) == (38.0, 6.0, 38.0)
    assert (derived.pin_out, derived.pin_beside) == (6.0, 1.5)
    measured = butts(leaf="35")
    assert (measured.mortise.width, measured.mortise.behind) == (35.0, 9.0)
    # a pin 8 out holds a knuckle of 12 off the face by 2: so much of the flap stays out
    assert butts(leaf="35", pin_out="8").mortise.width == 33.0
    assert derived.mortise.depth == 3.0
    # flaps that stand 2 apart in a gap of 3 lie 0.5 less deep each; 5 apart, 1 deeper
    assert butts(shut_gap="2").mortise.depth == 2.5
    assert butts(shut_gap="5").mortise.depth == 4.0


def test_round_corners_take_a_cutter_that_fits() -> None:
    """Cutters of 6, 8 and 12: a corner of 5 takes the 8; without one it is the cutter's own."""
    of_hinge = butts(corners="round", corner="5").mortise
    assert (of_hinge.cutter, of_hinge.corner, of_hinge.squared) == (8.0, 5.0, False)
    of_cutter = butts(corners="round").mortise
    assert (of_cutter.cutter, of_cutter.corner) == (12.0, 6.0)
    assert butts(corners="square").mortise.corner == 0.0


def test_the_jamb_is_marked_from_the_head_and_from_the_floor() -> None:
    """Mill Lane: the top mortise begins 7 + 1/8 below the head, the bottom one 11 + 1/2 up."""
    top, bottom = MILL_LANE.jamb[0], MILL_LANE.jamb[-1]
    assert top.below_head is not None
    assert float(top.below_head) / INCH == pytest.approx(7.125)
    assert float(bottom.low) / INCH == pytest.approx(11.5)
    assert float(bottom.high) / INCH == pytest.approx(16.0)
    # head to floor: 81.375 + 1/8 + 1/2 = 82
    assert float(top.below_head + top.high) / INCH == pytest.approx(82.0)
    assert butts(edge(head_gap=None)).jamb[0].below_head is None


def test_a_pivot_stands_in_the_leaf_and_the_lower_one_carries_it() -> None:
    """40 kg, 800 wide, pins 40 in and 2000 apart: 40 * (400 - 40)/2000 = 7.2 kg sideways."""
    one = pivots(carries="50 kg")
    assert (one.pin_out, one.pin_beside) == (-22.0, -40.0)
    assert (one.load.share, one.load.rating) == (40.0, 50.0)
    assert float(one.load.pull) == pytest.approx(7.2)
    off_middle = spec_of(
        PivotSpec, {"kind": "pivot", "pin": "12 x 30", "from edge": "40"}, from_face="15"
    )
    assert pin_out_of(off_middle, Figure(44.0)) == -15.0


def test_wood_taken_and_kept_apart() -> None:
    """Cups 35 wide and 13 deep, 5 in: up 2152.5 to 2187.5, in 5 to 40, from 9 to 22 of 22."""
    tall = hinge_wood(cups(height=2270.0, weight=7.9), knuckles="front", thickness=Figure(22.0))
    top = tall[0]
    assert (top.low, top.high, top.near, top.far, top.front, top.back) == (
        2152.5,
        2187.5,
        5.0,
        40.0,
        9.0,
        22.0,
    )
    # the next one down ends at 1652.5 + 17.5 = 1670
    assert kept_apart(top, tall[1]) == 2152.5 - 1670.0
    assert kept_apart(tall[1], top) == 2152.5 - 1670.0
    # with itself it shares all its wood: it must move by its least side, 13
    assert kept_apart(top, top) == -13.0


def test_screws_reach_deeper_than_the_flap() -> None:
    """A screw of 38 under a flap of 3 ends 38 in; its far row of 8 stands 6 + 8 off the face."""
    hinges = butts(screw="4.5 x 38", screw_from_edge="8")
    assert hinges.screw is not None
    assert hinges.screw.from_far_face == 14.0
    front = hinge_wood(hinges, knuckles="front", thickness=Figure(44.0))[0]
    assert (front.far, front.front, front.back) == (38.0, 0.0, 38.0)
    back = hinge_wood(hinges, knuckles="back", thickness=Figure(44.0))[0]
    assert (back.front, back.back) == (6.0, 44.0)
