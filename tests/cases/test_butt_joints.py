"""Dowels and screws of a case: places by hand, and each hole of the one member on its own in the other.

Where fixings stand, and how deep they go, is common practice, no source.
"""

from __future__ import annotations

import dataclasses
import math
from typing import Literal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.cases.boring import Bite
from parametric.cases.boring_faults import joint_faults
from parametric.cases.butt_joints import (
    InEnd,
    OnFace,
    bites_of,
    dowels_in_end,
    dowels_in_face,
    screws_in_end,
    screws_in_face,
    size_carcass_screws,
    size_dowels,
)
from parametric.cases.case_tenons import Tenons, size_tenons
from parametric.cases.fixings import Fixings, Joint, TooShort, fixings
from parametric.cases.pocket_screws import PocketScrews, size_pocket_screws
from parametric.figures import plain
from parametric.model import Drilled, Part, Vector
from tests.cases.boards import board, boring, ends_of, mm


def joint(
    length: float = 580.0, *, end: float = 18.0, face: float = 18.0, staggered: bool = False
) -> Joint:
    return Joint(
        name="cabinet base / bottom / left dowels",
        length=mm(length),
        end=mm(end),
        face=mm(face),
        staggered=staggered,
    )


@pytest.mark.parametrize(
    ("length", "places"),
    [
        # 580 - 2 x 50 = 480: 3 x 160 and 5 x 96 leave nothing, 128 leaves 96; both are 32 from
        # what is asked, the closer is taken
        (580.0, (50, 146, 242, 338, 434, 530)),
        # 562 - 100 = 462: 4 x 96 leaves 78, 3 x 128 leaves 78 too, 2 x 160 leaves 142: 128 as asked
        (562.0, (50, 178, 306, 434)),
        # 300 - 100 = 200: 2 x 96 leaves 8, 128 leaves 72, 160 leaves 40
        (300.0, (50, 146, 242)),
        # 170 - 100 = 70: two steps of 32 are 64, less than two thirds of 128, but all there is
        (170.0, (50, 114)),
        # 100 wide, a stretcher: less than a step between the edge distances, so about its middle
        (100.0, (34, 66)),
        # the least: 32 + 2 x 2 x 8
        (64.0, (16, 48)),
    ],
)
def test_places_along_a_joint(length: float, places: tuple[float, ...]) -> None:
    found = fixings(boring(), joint(length), mm(8.0))
    assert isinstance(found, Fixings)
    assert found.places == places


def test_a_joint_too_short_for_two_is_a_stop() -> None:
    found = fixings(boring(), joint(63.0), mm(8.0))
    assert isinstance(found, TooShort)
    assert (found.has, found.needs) == (63, 64)
    (fault,) = joint_faults(found, boring(), plain, end=mm(18.0))
    assert (fault.code, fault.level) == ("joint_short", "stop")


@pytest.mark.parametrize(("length", "places"), [(63.0, (31.5,)), (32.0, (16.0,)), (31.9, None)])
def test_an_end_that_others_hold_too_may_have_one(
    length: float, places: tuple[float, ...] | None
) -> None:
    """In its middle, 16 from either edge at the least: a partition under two stretchers."""
    own = dataclasses.replace(joint(length), shared=True)
    found = fixings(boring(), own, mm(8.0))
    assert (found.places if isinstance(found, Fixings) else None) == places


@pytest.mark.parametrize(
    ("length", "places"),
    [
        # as dowels: 480 over 3 x 160 or 5 x 96, and 96 - 32 = 64 between two slots
        (580.0, (50, 146, 242, 338, 434, 530)),
        # 164 - 100 = 64: one step of 64 leaves 32 between the slots
        (164.0, (50, 114)),
        # 163 - 100 = 63 is less than 2 steps of 32, which 32 + 5 ask for: one, in the middle
        (163.0, (81.5,)),
        (100.0, (50,)),
        # the least: 32 + 4 x 6
        (56.0, (28,)),
    ],
)
def test_tenons_along_a_joint(length: float, places: tuple[float, ...]) -> None:
    found = size_tenons(boring(), joint(length))
    assert isinstance(found, Tenons)
    assert found.places.places == places


def test_a_joint_too_short_for_a_tenon_is_a_stop() -> None:
    found = size_tenons(boring(), joint(55.0))
    assert isinstance(found, TooShort)
    (fault,) = joint_faults(found, boring(), plain, end=mm(18.0))
    assert (fault.code, fault.found, fault.allowed) == ("joint_short", "55", "at least 56")


def test_a_tenon_is_shared_between_face_and_end() -> None:
    """12 of 18 and 18 + 2 for glue; in a partition (18 - 2) / 2 = 8 from either face, 22 + 2."""
    tenons, parted = (
        size_tenons(boring(), dataclasses.replace(joint(), both_faces=both))
        for both in (False, True)
    )
    assert isinstance(tenons, Tenons)
    assert isinstance(parted, Tenons)
    assert (tenons.in_face, tenons.in_end, tenons.slot_long) == (12, 20, 32)
    assert (parted.in_face, parted.in_end) == (8, 24)


def test_fixings_move_clear_of_a_groove() -> None:
    """A stretcher 80 wide has dowels at 24 and 56; a groove from 62 leaves 62 - 60 = 2 beside the
    second: moved 3 to the front, 5 are left and 21 - 16 to spare. What takes 28 to 52 leaves no
    place: both stay, and are told. Of six along 580 with a groove from 532, the row moves 3.
    """

    def placed(length: float, low: float, high: float) -> tuple[float, ...]:
        own = dataclasses.replace(joint(length), taken=((low, high),))
        found = fixings(boring(), own, mm(8.0))
        assert isinstance(found, Fixings)
        return found.places

    assert placed(80.0, 90.0, 96.0) == (24, 56)
    assert placed(80.0, 62.0, 68.0) == (21, 53)
    assert placed(80.0, 28.0, 52.0) == (24, 56)
    assert placed(580.0, 536.0, 542.0) == (47, 143, 239, 335, 431, 527)
    # 580 with 200 to 580 taken: 50, 146 of the six are clear, and 242 is not: two are left
    assert placed(580.0, 200.0, 580.0) == (50, 146)


def test_dowels_are_shared_between_face_and_end() -> None:
    """Two thirds of 18 is 12; of 30 long 18 are left, and 2 for glue: 20 deep in the end."""
    dowels = size_dowels(boring(), joint())
    assert not isinstance(dowels, TooShort)
    assert (dowels.in_face, dowels.in_end, dowels.middle) == (12, 20, 9)
    assert dowels.in_face + dowels.in_end == dowels.long + 2


def test_a_thin_board_keeps_wood_behind_a_dowel() -> None:
    """Of 5 two thirds are 3.33, and 5 - 2 = 3."""
    dowels = size_dowels(boring(), joint(face=5.0))
    assert not isinstance(dowels, TooShort)
    assert dowels.in_face == 3


def test_stepped_screws() -> None:
    """A head of 10, 4 deep; the shank 7 wide through 18; 50 - (18 - 4) + 2 = 38 into the end."""
    screws = size_carcass_screws(boring(), joint())
    assert not isinstance(screws, TooShort)
    assert (screws.head, screws.head_deep, screws.shank, screws.through) == (10, 4, 7, 18)
    assert (screws.thread, screws.in_end) == (5, 38)
    head, shank = screws_in_face(screws, OnFace(face="high face", up=mm(9.0)))
    assert (head.depth, shank.surface, shank.depth) == (4, 4, 18)
    assert head.places == shank.places


def test_a_pocket_opens_where_its_bit_leaves_in_the_middle_of_the_end() -> None:
    """9 / tan 15 = 33.588 from the end; 4.75 / tan 15 = 17.727 along the bit until a head of 9.5 is
    sunk, and 1 more; of 33.588 / cos 15 = 34.773 along it 16.046 are left to the end, and of a screw
    of 32 15.954 go on, 15.954 cos 15 = 15.410 deep. One of 38 would go 21.206 deep, and 18 - 2 = 16.
    """
    screws = size_pocket_screws(boring(), joint())
    assert isinstance(screws, PocketScrews)
    assert screws.mouth == pytest.approx(9 / math.tan(math.radians(15)))
    found = (screws.mouth, screws.deep, screws.seat, screws.into)
    assert found == pytest.approx((33.588, 18.727, 16.046, 15.410), abs=5e-4)
    assert (screws.thick, screws.long) == (4, 32)


@pytest.mark.parametrize(
    ("end", "face", "long"),
    [
        # seats of t / 2 / sin 15 - 18.727: 10.250, 17.978, 29.568, 54.684. The shortest of 19, 25, 32, 38,
        # 51, 64 that is 1.6 times that, 16.4, 28.8, 47.3, and no more than it and (t - 2) / cos 15, 13.5,
        # 17.6, 23.8, 37.3, over it
        (15.0, 15.0, 19.0),
        (19.0, 19.0, 32.0),
        (25.0, 25.0, 51.0),
        # 87.5 is sold nowhere: the longest
        (38.0, 38.0, 64.0),
        # a thick board before a thin one, which takes 29.568 + 10.353 = 39.9; and the other way about
        (25.0, 12.0, 38.0),
        (18.0, 38.0, 32.0),
    ],
)
def test_a_screw_is_as_long_as_its_boards_let_it_be(end: float, face: float, long: float) -> None:
    screws = size_pocket_screws(boring(), joint(end=end, face=face))
    assert isinstance(screws, PocketScrews)
    assert screws.long == long
    assert screws.into <= face - 2 + 1e-6


def test_a_written_screw_is_taken_as_it_is() -> None:
    screws = size_pocket_screws(boring(pocket_screw="4.5 x 25"), joint())
    assert isinstance(screws, PocketScrews)
    assert (screws.thick, screws.long) == (4.5, 25)


# --- both members --------------------------------------------------------------------------


def members(
    held: Literal["dowels", "screws"], side: Literal["left", "right"], front: float
) -> tuple[Part, Part]:
    """An upright board 720 x 580 x 18 and a level one 564 deep, 17.6 thick, 300 up, against it."""
    deep, thick, up = 564.0, 17.6, 300.0
    own = joint(deep, end=thick)
    low, x = ("low end", 18.0) if side == "left" else ("high end", 418.0)
    inner, outer = ("low face", "high face") if side == "left" else ("high face", "low face")
    middle = mm(up + thick / 2)
    in_face: tuple[Drilled, ...]
    if held == "dowels":
        dowels = size_dowels(boring(), own)
        assert not isinstance(dowels, TooShort)
        on = OnFace(face=inner, up=middle, front=front)  # type: ignore[arg-type]
        in_face, in_end = dowels_in_face(dowels, on), dowels_in_end(dowels, InEnd(end=low))  # type: ignore[arg-type]
    else:
        screws = size_carcass_screws(boring(), own)
        assert not isinstance(screws, TooShort)
        on = OnFace(face=outer, up=middle, front=front)  # type: ignore[arg-type]
        in_face, in_end = screws_in_face(screws, on), screws_in_end(screws, InEnd(end=low))  # type: ignore[arg-type]
    left = 0.0 if side == "left" else 418.0
    upright = board("side", "upright", (720.0, 580.0, 18.0), (left, 0.0, 0.0), *in_face)
    level = board("shelf", "level", (400.0, deep, thick), (18.0, front, up), *in_end)
    assert x == (18.0 if side == "left" else 418.0)
    return upright, level


def axes(part: Part) -> list[list[tuple[Vector, Vector]]]:
    return [ends_of(part, cut) for cut in part.cuts if isinstance(cut, Drilled)]


@pytest.mark.parametrize("side", ["left", "right"])
@pytest.mark.parametrize("front", [0.0, 12.5])
def test_dowel_holes_meet_on_one_axis(side: Literal["left", "right"], front: float) -> None:
    """Mouth on mouth in the plane of the joint, the bottoms 12 and 20 away from it, 30 + 2 apart."""
    upright, level = members("dowels", side, front)
    (in_face,), (in_end,) = axes(upright), axes(level)
    assert len(in_face) == len(in_end) == 4
    away = -1.0 if side == "left" else 1.0
    plane = 18.0 if side == "left" else 418.0
    for (mouth, floor), (other, bottom) in zip(in_face, in_end, strict=True):
        assert mouth == pytest.approx(other)
        assert mouth[0] == plane
        assert floor == pytest.approx((plane + away * 12.0, mouth[1], mouth[2]))
        assert bottom == pytest.approx((plane - away * 20.0, mouth[1], mouth[2]))
    # 564 - 100 = 464: 3 x 128 leaves 80, 4 x 96 leaves 80, 2 x 160 leaves 144
    assert [round(mouth[1] - front, 6) for mouth, _ in in_face] == [50, 178, 306, 434]
    assert {round(mouth[2], 6) for mouth, _ in in_face} == {308.8}


@pytest.mark.parametrize("side", ["left", "right"])
def test_stepped_holes_run_on_one_axis(side: Literal["left", "right"]) -> None:
    """Head, shank and thread follow one another from the outside, each from the other's floor."""
    upright, level = members("screws", side, 0.0)
    heads, shanks = axes(upright)
    (threads,) = axes(level)
    outside, inside = (0.0, 18.0) if side == "left" else (436.0, 418.0)
    step = 4.0 if side == "left" else -4.0
    for (head, floor), (start, through), (mouth, _) in zip(heads, shanks, threads, strict=True):
        assert head[0] == outside
        assert floor == start
        assert start[0] == outside + step
        assert through[0] == inside
        assert through == pytest.approx(mouth)


def test_staggered_dowels_pass_those_of_the_other_side() -> None:
    """Half a step back, 16: 8 of wood stand between holes of 8 in one partition."""
    one, other = (size_dowels(boring(), joint(staggered=staggered)) for staggered in (False, True))
    assert not isinstance(one, TooShort)
    assert not isinstance(other, TooShort)
    assert [b - a for a, b in zip(one.places.places, other.places.places, strict=True)] == [16] * 6


def test_dowels_beside_a_groove_are_told() -> None:
    """A groove from 532 on is 2 past the last hole, whose middle is at 530; at 539 it leaves 5."""
    dowels = size_dowels(boring(), joint())
    assert not isinstance(dowels, TooShort)
    own = bites_of(dowels, up=mm(9.0))

    def faults(near: float) -> list[str]:
        groove = Bite(name="the groove for the back", low=0.0, high=720.0, near=near, far=560.0)
        found = joint_faults(dowels, boring(), plain, taken=(groove,), own=own, end=mm(18.0))
        return [fault.code for fault in found]

    assert faults(538.9) == ["joint_meets"]
    assert faults(539.0) == []


@pytest.mark.parametrize(("thick", "codes"), [(11.9, ["end_splits"]), (12.0, [])])
def test_an_end_keeps_wood_beside_a_dowel(thick: float, codes: list[str]) -> None:
    """(12 - 8) / 2 = 2."""
    dowels = size_dowels(boring(), joint(end=thick))
    found = joint_faults(dowels, boring(), plain, end=mm(thick))
    assert [fault.code for fault in found] == codes


@given(length=st.floats(64, 1400), asked=st.sampled_from([64, 96, 128, 160, 192]))
def test_any_joint_has_two_or_more_in_its_wood(length: float, asked: int) -> None:
    spec = boring(dowel_pitch=asked)
    found = fixings(spec, joint(length), mm(8.0))
    assert isinstance(found, Fixings)
    places = found.places
    assert len(places) >= 2
    assert places[0] >= 16 - 1e-6
    assert places[-1] <= length - 16 + 1e-6
    steps = float(found.pitch) / 32
    assert steps == pytest.approx(round(steps))
    if length >= 100 + asked * 4 / 3:
        assert asked * 2 / 3 - 1e-6 <= found.pitch <= asked * 4 / 3 + 1e-6
        assert places[-1] <= length - 50 + 1e-6
        # one more would be past it
        assert places[-1] + float(found.pitch) > length - 50 - 1e-6
