"""Every fault of a drawer's box: one box at the limit, which has none, and one just past it."""

from __future__ import annotations

from collections.abc import Mapping

import pytest

from parametric.cases.drawer_faults import drawer_faults
from parametric.cases.drawer_written import DRAWER_KINDS
from parametric.catalog.shop import Limits
from parametric.figures import Figure
from parametric.problems import Problem
from parametric.units import length_text
from tests.cases.drawers import JOINTS, WHERE, box_of

LIMITS = Limits(
    **{name: Figure(5.0) for name in Limits.__dataclass_fields__}  # type: ignore[arg-type]
)


def faults(**keys: object) -> tuple[Problem, ...]:
    return tuple(drawer_faults(box_of(**keys), LIMITS, lambda size: length_text(size, "mm")))  # type: ignore[arg-type]


THROUGH, BLIND = {"joint": "through dovetail"}, {"joint": "half-blind dovetail"}
UNDER, RUNNERS = {"kind": "under slides"}, {"kind": "wooden runners"}
PAIRS: list[tuple[str, str, Mapping[str, object], Mapping[str, object]]] = [
    # 196 - 12 = 184 high; 6 of it free
    ("drawer_does_not_fit", "stop", {"height": 178}, {"height": 184.5}),
    ("drawer_has_little_room", "caution", {"height": 178}, {"height": 178.5}),
    ("drawer_has_little_room", "caution", {"height": 178}, {"height": 184}),
    # 562 deep; 3 of it free
    ("drawer_does_not_fit", "stop", {"length": 559}, {"length": 562.5}),
    ("drawer_has_little_room", "caution", {"length": 559}, {"length": 560}),
    # 753 - 20 + 2*15 = 763
    ("drawer_does_not_fit", "stop", {**UNDER, "inside less": 30}, {**UNDER, "inside less": 29}),
    # a groove of 15 in 15; one of 10 leaves 5
    ("drawer_groove_comes_through", "stop", {"bottom groove": 10}, {"bottom groove": 15}),
    ("drawer_groove_leaves_little", "caution", {"bottom groove": 10}, {"bottom groove": 10.5}),
    # 160 - 9 = 151
    (
        "drawer_groove_comes_through",
        "stop",
        {"bottom up": 140, "fixings in": 1},
        {"bottom up": 151.5},
    ),
    ("drawer_groove_leaves_little", "caution", {"bottom up": 5}, {"bottom up": 4.5}),
    # 7 - 2 = 5; 7 - 7 = 0
    ("drawer_bottom_barely_held", "caution", {"bottom clearance": 2}, {"bottom clearance": 2.5}),
    ("drawer_bottom_falls_out", "stop", {"bottom clearance": 2}, {"bottom clearance": 7}),
    # the bottom is 533 the short way: 533/84 = 6.35
    ("drawer_bottom_thin", "caution", {"bottom": 6.4}, {"bottom": 6.3}),
    # 16 tails stand 10 apart, and a pin is 13.75 wide
    (
        "drawer_tails_have_no_wood",
        "stop",
        {**THROUGH, "tails": 5},
        {**THROUGH, "tails": 16},
    ),
    ("drawer_tails_have_no_wood", "stop", {**BLIND, "lap": 8}, {**BLIND, "lap": 15}),
    # 15 - 8 = 7, as deep as the groove
    ("drawer_tails_short", "stop", {**BLIND, "lap": 8}, {**BLIND, "lap": 8.5}),
    # 5 tails: the first from 6.875 to 25.125, less 9: 16.125
    (
        "drawer_groove_not_in_a_tail",
        "stop",
        {**THROUGH, "tails": 5, "bottom up": 16},
        {**THROUGH, "tails": 5, "bottom up": 16.2},
    ),
    # 12 to 42 up lies in no finger of about 10
    (
        "drawer_groove_in_two_fingers",
        "stop",
        {"joint": "box", "bottom": 9},
        {"joint": "box", "bottom": 30},
    ),
    ("drawer_rebate_comes_through", "stop", {"joint": "rebate"}, {"joint": "rebate", "rebate": 15}),
    (
        "drawer_rebate_shallow",
        "stop",
        {"joint": "rebate", "rebate": 7},
        {"joint": "rebate", "rebate": 6.5},
    ),
    # 12 + 9 + 2*16 + 2*8 = 69
    ("drawer_fixings_find_no_wood", "stop", {"height": 69}, {"height": 68.5}),
    (
        "drawer_fixings_find_no_wood",
        "stop",
        {"joint": "screw", "screw": "4 x 16"},
        {"joint": "screw", "screw": "4 x 15"},
    ),
    ("drawer_fixings_find_no_wood", "stop", {"dowel": "8 x 11"}, {"dowel": "8 x 10"}),
    # two thirds of 15
    (
        "drawer_fixings_split_the_end",
        "caution",
        {"dowel": "10 x 30"},
        {"dowel": "10.5 x 30"},
    ),
    ("drawer_sides_too_thick", "stop", {**UNDER, "sides": 16}, {**UNDER, "sides": 16.5}),
    (
        "drawer_notch_too_big",
        "stop",
        {**UNDER, "back notch": "35 x 13"},
        {**UNDER, "back notch": "35 x 13.5"},
    ),
    # half of 711
    (
        "drawer_notch_too_big",
        "stop",
        {**UNDER, "back notch": "355 x 13"},
        {**UNDER, "back notch": "356 x 13"},
    ),
    (
        "drawer_notch_frees_a_pin",
        "stop",
        {**UNDER, **BLIND},
        {**UNDER, **BLIND, "back joint": "through dovetail"},
    ),
    ("runner_finds_no_room", "stop", {**RUNNERS}, {**RUNNERS, "below": 19.5}),
    (
        "runner_too_narrow",
        "caution",
        {**RUNNERS, "runner": "16 x 20"},
        {**RUNNERS, "runner": "15.5 x 20"},
    ),
    # 196 - 20 - 160 = 16 above it, 2 of them the gap
    (
        "runner_finds_no_room",
        "stop",
        {**RUNNERS, "kicker": "30 x 14"},
        {**RUNNERS, "kicker": "30 x 14.5"},
    ),
]


@pytest.mark.parametrize(("code", "level", "fair", "past"), PAIRS)
def test_at_the_limit_and_past_it(
    code: str, level: str, fair: Mapping[str, object], past: Mapping[str, object]
) -> None:
    assert code not in {problem.code for problem in faults(**fair)}
    found = [problem for problem in faults(**past) if problem.code == code]
    assert [problem.level for problem in found] == [level]
    (problem,) = found
    assert problem.message.endswith(".")
    assert problem.fix
    assert problem.allowed


def test_the_wardrobes_drawer_has_none() -> None:
    assert faults() == ()


@pytest.mark.parametrize("unit", ["mm", "inch"])
@pytest.mark.parametrize("joint", JOINTS)
@pytest.mark.parametrize("kind", DRAWER_KINDS)
def test_the_tools_own_habits_have_none(kind: str, joint: str, unit: str) -> None:
    assert faults(kind=kind, joint=joint, unit=unit) == ()


def test_it_points_at_the_line_that_says_so() -> None:
    (problem,) = faults(height=190)
    assert problem.where == WHERE
    assert problem.message == (
        "The leaf E / drawer is 190 high, 12 up, and its opening has 196: 6 too much."
    )
    assert problem.allowed == "178 or less"
    (deep,) = faults(joint="rebate", rebate=6)
    assert deep.where == WHERE
    assert deep.message.startswith("At the corners the rebate is 6 deep")


def test_corners_that_differ_are_told_apart() -> None:
    found = faults(joint="half-blind dovetail", tails=16)
    assert [p.message.split(" 16")[0] for p in found] == [
        "At the front corners",
        "At the back corners",
    ]
    assert all(p.no_size for p in found)
