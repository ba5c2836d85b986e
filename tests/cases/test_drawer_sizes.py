"""Sizes of a drawer's box, worked by hand beside each number.

The wardrobe's drawers: a case 789 wide of 18 board, clear inside 789 - 2*18 = 753; slides take
12.7 each side, sides 15, box 160 high and 550 long; bottom 9 in grooves 7 deep, 0.5 clear.
"""

from __future__ import annotations

import pytest

from parametric.cases.drawer_corners import BoxCorner, DovetailCorner, DowelCorner, RebateCorner
from parametric.figures import arithmetic, formula
from tests.cases.drawers import box_of


def test_the_wardrobes_drawer() -> None:
    box = box_of()
    # 753 - 2*12.7 = 727.6
    assert float(box.width) == pytest.approx(727.6, abs=1e-9)
    # 727.6 - 2*15 = 697.6
    assert float(box.between) == pytest.approx(697.6, abs=1e-9)
    # 697.6 + 2*7 - 2*0.5 = 710.6
    assert float(box.bottom_width) == pytest.approx(710.6, abs=1e-9)
    # 550 - 2*15 + 2*7 - 2*0.5 = 533
    assert float(box.bottom_length) == pytest.approx(533.0, abs=1e-9)
    assert (float(box.height), float(box.length)) == (160.0, 550.0)
    assert float(box.room_beside) == pytest.approx(12.7, abs=1e-9)
    # 196 - 12 - 160 = 24 above it; 562 - 550 = 12 behind it
    assert (float(box.room_above), float(box.room_behind)) == (24.0, 12.0)
    assert arithmetic(box.width) == "753 - 2 * 12.7"
    assert formula(box.between) == (
        "[leaf E / drawer / width] - 2 * [leaf E / drawer / side thickness]"
    )


def test_its_weight() -> None:
    """(2*550*15 + 2*697.6*15)*160*650/1e9 = 3.8925 and 710.6*533*9*650/1e9 = 2.2157, in plywood."""
    assert float(box_of().weight) == pytest.approx(3.8925 + 2.2157, abs=1e-4)


def test_over_slides_that_hide_under_it() -> None:
    """Inside 753 - 42 = 711, whatever the sides; 711 + 2*16 = 743 over them, 5 left each side."""
    box = box_of(kind="under slides", sides=16)
    assert float(box.between) == pytest.approx(711.0)
    assert float(box.width) == pytest.approx(743.0)
    assert float(box.room_beside) == pytest.approx(5.0)
    assert float(box.groove.low) == 13.0


def test_on_wooden_runners() -> None:
    """753 - 2*1 = 751; two thirds of 550 draw out, 366.67."""
    box = box_of(kind="wooden runners")
    assert float(box.width) == 751.0
    assert float(box.foot) == 20.0
    assert float(box.draws_out) == pytest.approx(550 * 2 / 3)
    assert float(box_of().draws_out) == 550.0


def test_a_box_that_says_no_height_and_no_length_takes_what_there_is() -> None:
    """Inches: 196 - 12.7 below - 6.35 above; slides by the 2 inches, 3.175 free behind them."""
    free = box_of(unit="inch")
    assert float(free.height) == pytest.approx(196.0 - 12.7 - 6.35)
    # 562 - 3.175 = 558.825 in steps of 2 in: 11 of them, 22 in
    assert float(free.length) == pytest.approx(22 * 25.4)
    assert float(box_of(deep=503.0, unit="inch").length) == pytest.approx(18 * 25.4)
    # on runners 3/4 up, under kickers of 1/2 with 1/16 between: 196 - 19.05 - 12.7 - 1.5875
    kicked = box_of(unit="inch", kind="wooden runners", kicker="1-1/4 x 1/2")
    assert float(kicked.height) == pytest.approx(196 - 19.05 - 12.7 - 1.5875)


def test_half_blind_dovetails_before_and_through_ones_behind() -> None:
    """A third of 15 is the lap: 5, tails 10 long; 160/35 = 4.57, so 5 tails, 32 from one to the next.

    A pin of 10 at its narrow side is 10 + 2*10/8 = 12.5 at its wide one; tails 32 - 10 = 22 and
    32 - 12.5 = 19.5. Behind, tails 15 long: 10 + 2*15/8 = 13.75. Sides 550 - 5 = 545.
    """
    box = box_of(joint="half-blind dovetail")
    front, back = box.front, box.back
    assert isinstance(front, DovetailCorner)
    assert isinstance(back, DovetailCorner)
    assert (front.kind, back.kind) == ("half-blind dovetail", "through dovetail")
    assert (float(front.lap), float(front.tail), int(front.count)) == (5.0, 10.0, 5)
    assert (float(front.pitch), float(front.pin_root)) == (32.0, 12.5)
    assert (float(front.tail_tip), float(front.tail_root)) == (22.0, 19.5)
    assert float(back.pin_root) == 13.75
    assert float(box.side_length) == 545.0
    assert float(box.front_length) == pytest.approx(727.6)


def test_a_tail_is_found_for_the_bottoms_groove() -> None:
    """With the groove from 27 to 36, tails 32 apart (5) would cut through it: 26 to 38 is pin.

    4 tails stand 40 apart, the first from 6.25 to 33.75: no. 6 stand 26.67 apart, the second from
    32.9: no. 3 stand 53.33 apart, the first from 6.25 to 47.08: yes.
    """
    corner = box_of(joint="half-blind dovetail", bottom_up=27).front
    assert isinstance(corner, DovetailCorner)
    assert int(corner.count) == 3


def test_fingers() -> None:
    """160/10 = 16: 15 and 17 are as near; of 17 the second has 9.41 to 18.8, of 15 10.67 to 21.33,

    and the groove is from 12 to 21.
    """
    corner = box_of(joint="box").front
    assert isinstance(corner, BoxCorner)
    assert int(corner.count) == 15
    assert float(corner.finger) == pytest.approx(160 / 15)


def test_rebates_and_dowels() -> None:
    """Half of 15 into each side: 697.6 + 2*7.5 = 712.6 long.

    Dowels from 12 + 9 + 16 = 37 to 160 - 16 = 144: 107, in 3 of 35.67. 8 x 30, two thirds of 15
    in the side, 10, and 20 in the end with 2 for glue.
    """
    rebated = box_of(joint="rebate")
    assert isinstance(rebated.front, RebateCorner)
    assert float(rebated.front_length) == pytest.approx(712.6)
    corner = box_of(joint="dowel").front
    assert isinstance(corner, DowelCorner)
    assert [float(up) for up in corner.places] == pytest.approx(
        [37, 37 + 107 / 3, 144 - 107 / 3, 144]
    )
    assert (float(corner.in_side), float(corner.in_end)) == pytest.approx((10.0, 22.0))
