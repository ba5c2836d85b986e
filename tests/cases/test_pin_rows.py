"""Rows of shelf pins: sums by hand, both boards of a bay alike, and always clear of what is cut.

The line 37 from the front, the pitch of 32 and the hole of 5 are common practice, no source.
"""

from __future__ import annotations

import itertools

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.cases.boring import Bite
from parametric.cases.boring_faults import pin_faults
from parametric.cases.pin_rows import (
    LeftOut,
    NoPins,
    PinRows,
    PinSpace,
    lying_on,
    pin_cuts,
    pin_rows,
)
from parametric.figures import Figure, arithmetic, plain
from tests.cases.boards import board, boring, ends_of, mm

SIDE = 2273.0
"""The wardrobe's sides, 2273 x 580 x 18; a back 8 thick stands 10 before their back edges."""


def space(
    low: float = 18.0,
    high: float = SIDE - 18.0,
    *,
    depth: float = 562.0,
    thickness: float = 18.0,
    both_faces: bool = False,
) -> PinSpace:
    return PinSpace(
        low=mm(low),
        high=mm(high),
        depth=mm(depth),
        thickness=mm(thickness),
        both_faces=both_faces,
    )


def rows_in(own: PinSpace, taken: tuple[Bite, ...] = (), middle: Figure | None = None) -> PinRows:
    found = pin_rows(boring(), own, name="cabinet outer 1", taken=taken, middle=middle)
    assert isinstance(found, PinRows), found
    return found


def test_the_wardrobe_side() -> None:
    """From 18 + 64 = 82 to 2255 - 64 = 2191 are 2109: 65 steps of 32 are 2080, 66 heights.

    29 are over; half of it below: 82 + 14.5 = 96.5, and the last 96.5 + 65 x 32 = 2176.5.
    Back: (562 - 37 - 37) / 32 = 15.25, so 15 steps: 37 + 480 = 517.
    """
    rows = rows_in(space())
    assert (rows.first, rows.last, rows.count) == (96.5, 2176.5, 66)
    assert (rows.front, rows.back) == (37, 517)
    assert (rows.across, rows.deep) == (5, 13)
    assert rows.runs == ((96.5, 66),)
    assert rows.left_out == ()


def test_a_space_that_is_whole_steps_has_a_pin_at_both_ends() -> None:
    """From 100 to 100 + 64 + 10 x 32 + 64 = 548: the first at 164, the last at 484."""
    rows = rows_in(space(100.0, 548.0))
    assert (rows.first, rows.last, rows.count) == (164, 484, 11)


def test_the_sum_is_told() -> None:
    rows = rows_in(space())
    assert arithmetic(rows.back) == "37 + 15 * 32"
    assert rows.first.name == "cabinet outer 1 / pin holes / first"


def test_rows_alike_about_the_middle_of_a_board() -> None:
    """About 1136.5: 1054.5 each way hold 32 steps (1024) with a pin on the middle, 65 heights, or
    33 half steps on, (33 - 0.5) x 32 = 1040, 66 heights without one: 1136.5 - 1040 = 96.5.
    """
    rows = rows_in(space(), middle=mm(SIDE / 2))
    assert (rows.first, rows.count) == (96.5, 66)
    assert float(rows.first + rows.last) == SIDE


def test_a_middle_that_is_not_that_of_the_space() -> None:
    """About 1000 in 82 to 2191: 918 each way. On it 2 x 28 + 1 = 57; beside it 2 x 29 = 58:
    918 / 32 + 0.5 = 29.19. The first at 1000 - 28.5 x 32 = 88.
    """
    rows = rows_in(space(), middle=mm(1000.0))
    assert (rows.first, rows.last, rows.count) == (88, 1912, 58)


def test_a_height_beside_a_dado_is_left_out() -> None:
    """A dado from 590 to 608 in the space from 100 to 868: 21 heights, 164 to 804.

    No middle may lie between 590 - 7.5 and 608 + 7.5: 33, longer than a step of 32, so that one
    height is lost wherever they stand. They stay: 164 + 13 x 32 = 580 is clear, 612 is not.
    """
    dado = Bite(name="dado for fixed shelf 1", low=590.0, high=608.0, near=0.0, far=562.0)
    rows = rows_in(space(100.0, 868.0), (dado,))
    assert (rows.first, rows.count) == (164, 21)
    assert rows.left_out == (LeftOut(height=612.0, beside="dado for fixed shelf 1"),)
    assert rows.runs == ((164.0, 14), (644.0, 6))


def test_a_narrow_bite_is_stepped_over() -> None:
    """A hole of 5 at 196, on a height: 10 on each side are wanted from middle to middle.

    From 164 (100 + 64, nothing over) the row moves up: 1 to 9 leave less than 10. Ten up, the
    last height goes past 868 - 64 = 804, for nothing is over; a height is lost either way. Left
    out where it stands, 20 of 21 are kept; moved by 10, 20 too. The nearest such place is none.
    """
    hole = Bite(name="a cable", low=193.5, high=198.5, near=30.0, far=44.0)
    still = rows_in(space(100.0, 868.0), (hole,))
    assert (still.first, len(still.heights)) == (164, 20)
    # with 20 over, all 21 go in 10 further up
    moved = rows_in(space(100.0, 888.0), (hole,))
    assert float(moved.first) == 174
    assert [at for at in moved.heights if abs(at - 196) < 10] == []
    assert len(moved.heights) == 21


def test_what_is_between_the_lines_is_not_in_the_way() -> None:
    hole = Bite(name="a cable", low=190.0, high=205.0, near=60.0, far=490.0)
    assert rows_in(space(100.0, 868.0), (hole,)).left_out == ()


def test_pins_back_to_back_leave_wood_between_them() -> None:
    """(18 - 2) / 2 = 8, where 13 are asked for and 7 are the least."""
    rows = rows_in(space(both_faces=True))
    assert rows.deep == 8
    (fault,) = pin_faults(rows, boring(), plain, case="cabinet outer 1")
    assert (fault.code, fault.level) == ("pins_shallow", "note")
    assert "8 deep, not 13" in fault.message


@pytest.mark.parametrize(
    ("own", "why", "has", "needs"),
    [
        (space(100.0, 227.0), "low", 127, 128),
        # 37 + 32 + 37
        (space(depth=105.0), "shallow", 105, 106),
        # 2 x 7 + 2
        (space(thickness=15.5, both_faces=True), "thin", 15.5, 16),
        (space(thickness=8.5), "thin", 8.5, 9),
    ],
)
def test_a_space_without_room_says_what_it_lacks(
    own: PinSpace, why: str, has: float, needs: float
) -> None:
    found = pin_rows(boring(), own, name="cabinet outer 1")
    assert isinstance(found, NoPins)
    assert (found.why, found.has, found.needs) == (why, has, needs)
    (fault,) = pin_faults(found, boring(), plain, case="cabinet outer 1")
    assert (fault.code, fault.level) == ("no_pins", "stop")
    assert fault.where is not None
    assert (fault.where.file, fault.where.line) == ("design.yaml", 3)


@pytest.mark.parametrize(
    "own",
    [
        space(100.0, 228.0),
        space(depth=106.0),
        space(thickness=16.0, both_faces=True),
        space(thickness=9.0),
    ],
)
def test_a_space_with_just_enough_has_pins(own: PinSpace) -> None:
    rows_in(own)


def test_a_space_full_of_something_else_has_none() -> None:
    wall = Bite(name="a cleat", low=0.0, high=SIDE, near=30.0, far=44.0)
    found = pin_rows(boring(), space(), name="cabinet outer 1", taken=(wall,))
    assert isinstance(found, NoPins)
    (fault,) = pin_faults(found, boring(), plain, case="cabinet outer 1")
    assert "clear of a cleat" in fault.message


def test_heights_left_out_are_told() -> None:
    dado = Bite(name="dado for fixed shelf 1", low=590.0, high=608.0, near=0.0, far=562.0)
    rows = rows_in(space(100.0, 868.0), (dado,))
    (fault,) = pin_faults(rows, boring(), plain, case="cabinet outer 1")
    assert fault.level == "note"
    assert fault.message == (
        "cabinet outer 1: no pins at 612 from the foot of the case: less than 5 of wood would be "
        "left beside dado for fixed shelf 1."
    )


def test_a_shelf_lies_on_its_pins() -> None:
    """Heights 164, 196, 228, ..: a shelf wanted at 210 lies 2.5 over the pin's middle at 196
    or 228, and 198.5 is nearer: 11.5 against 20.5.
    """
    rows = rows_in(space(100.0, 548.0))
    assert lying_on(rows.heights, rows.across, 210.0) == 196
    assert lying_on(rows.heights, rows.across, 0.0) == 164


def test_both_sides_of_a_bay_are_bored_alike() -> None:
    """The pins of a side and of a partition that stands on the bottom face one another."""
    dado = Bite(name="dado for fixed shelf 1", low=590.0, high=608.0, near=0.0, far=562.0)
    rows = rows_in(space(18.0, 868.0), (dado,))
    left = board(
        "left side",
        "upright",
        (886.0, 580.0, 18.0),
        (0.0, 0.0, 0.0),
        *pin_cuts(rows, face="low face", foot=0.0),
    )
    right = board(
        "partition 1",
        "upright",
        (850.0, 562.0, 18.0),
        (400.0, 0.0, 18.0),
        *pin_cuts(rows, face="high face", foot=18.0),
    )
    mouths = [
        sorted(
            (mouth[1:], mouth[0])
            for cut in part.cuts
            for mouth, _ in ends_of(part, cut)  # type: ignore[arg-type]
        )
        for part in (left, right)
    ]
    assert [place for place, _ in mouths[0]] == [place for place, _ in mouths[1]]
    assert {x for _, x in mouths[0]} == {18.0}
    assert {x for _, x in mouths[1]} == {400.0}
    assert len(mouths[0]) == 2 * len(rows.heights)


BITES = st.lists(
    st.builds(
        lambda low, long, near, deep: Bite(
            name="something", low=low, high=low + long, near=near, far=near + deep
        ),
        st.floats(0, 1000),
        st.floats(1, 90),
        st.floats(0, 560),
        st.floats(1, 560),
    ),
    max_size=6,
)


@given(
    low=st.floats(0, 400),
    high=st.floats(20, 900),
    depth=st.floats(106, 700),
    taken=BITES,
    middle=st.none() | st.floats(-100, 900),
)
def test_rows_keep_clear_of_all_that_is_cut(
    low: float, high: float, depth: float, taken: list[Bite], middle: float | None
) -> None:
    spec = boring()
    own = space(low, low + high, depth=depth)
    about = None if middle is None else mm(low + middle)
    rows = pin_rows(spec, own, name="bay", taken=taken, middle=about)
    if isinstance(rows, NoPins):
        return
    assert rows.heights
    # within the space, on the pitch, and the lines whole pitches apart
    for hole in rows.bites:
        assert hole.low + 2.5 >= low + 64 - 1e-6
        assert hole.high - 2.5 <= low + high - 64 + 1e-6
        for other in taken:
            aside = max(other.low - hole.high, hole.low - other.high)
            across = max(other.near - hole.far, hole.near - other.far)
            assert max(aside, across) >= 5 - 1e-5
    for a, b in itertools.pairwise(rows.heights):
        steps = (b - a) / 32
        assert steps == pytest.approx(round(steps), abs=1e-6)
    lines = float(rows.back - rows.front) / 32
    assert lines == pytest.approx(round(lines))
    assert rows.back <= depth - 37 + 1e-6
    if about is not None and low + 64 <= about <= low + high - 64:
        assert float(rows.first + rows.last) / 2 == pytest.approx(float(about), abs=1e-6)
    elif about is not None:
        steps = float(rows.first - about) / 32
        assert steps == pytest.approx(round(steps), abs=1e-6)
    # what is cut says what is told
    holes = sorted(at for first, many in rows.runs for at in (first + 32 * n for n in range(many)))
    assert holes == pytest.approx(list(rows.heights))


@given(low=st.floats(0, 400), high=st.floats(128, 2400))
def test_a_free_space_holds_as_many_as_go_in(low: float, high: float) -> None:
    """One more would stand past either end; and what is over is shared."""
    rows = rows_in(space(low, low + high))
    below, above = float(rows.first) - low - 64, low + high - 64 - float(rows.last)
    assert below == pytest.approx(above, abs=1e-6)
    assert below + above < 32
