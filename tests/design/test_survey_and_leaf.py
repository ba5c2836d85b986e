"""The two blocks that are read place by place and line by line."""

from __future__ import annotations

from pathlib import Path

from parametric.design import load
from parametric.design.leaf import LeafSpec
from parametric.design.survey import SurveySpec
from parametric.figures import Figure, Where
from parametric.written import Equal, NotMeasured, Parts, Rest
from tests.design.written_files import PLAIN, changed, loaded


def survey_of(folder: Path, keys: str) -> SurveySpec:
    found = loaded(folder, changed(PLAIN, ("heights: {middle: 2010}", keys)))
    assert found.design is not None, [p.message for p in found.problems]
    survey = found.design.block("survey")
    assert isinstance(survey, SurveySpec)
    return survey


def test_places_by_name_and_by_distance(tmp_path: Path) -> None:
    survey = survey_of(tmp_path, "heights: {left: 2010, 700: 2008, 4' 2\": about 2006}")
    assert survey.heights is not None
    assert [(t.place, t.at, t.reading) for t in survey.heights] == [
        ("left", None, 2010),
        ("700", 700, 2008),
        ("4' 2\"", 1270, 2006),
    ]


def test_off_a_line_either_way(tmp_path: Path) -> None:
    survey = survey_of(
        tmp_path,
        "left side: {bottom: 0, top: +3}, right side: plumb, floor: {left: -3, right: not measured}",
    )
    assert isinstance(survey.left_side, tuple)
    assert [t.reading for t in survey.left_side] == [0, 3]
    assert survey.right_side == "plumb"
    assert isinstance(survey.floor, tuple)
    assert survey.floor[0].reading == -3
    assert survey.floor[1].reading == NotMeasured(Where("design.yaml", 3))


def test_what_is_left_out_was_not_measured(tmp_path: Path) -> None:
    survey = survey_of(tmp_path, "diagonals: {rising right: 2203}")
    assert survey.heights is None
    assert survey.left_side is None
    assert survey.diagonals is not None
    assert survey.diagonals.rising_right == 2203
    assert isinstance(survey.diagonals.rising_left, NotMeasured)
    assert (survey.fixing, survey.origin("fixing")) == ("not known", "assumed")


def test_things_in_the_way(tmp_path: Path) -> None:
    survey = survey_of(
        tmp_path, "in the way: [{what: switch, from left: -180, height: 1150, stands out: 11}]"
    )
    assert survey.in_the_way is not None
    (switch,) = survey.in_the_way
    assert (switch.what, switch.from_left, switch.height, switch.stands_out) == (
        "switch",
        -180,
        1150,
        11,
    )
    assert isinstance(switch.height, Figure)
    assert switch.height.origin == "measured"


def test_the_list_of_larch_hill(reading_room: Path) -> None:
    design = load(reading_room, user_house=False).design
    assert design is not None
    leaf = design.block("leaf")
    assert isinstance(leaf, LeafSpec)
    assert [band.kind for band in leaf.top_to_bottom] == [
        "top rail",
        "lite",
        "dividing rail",
        "lite",
        "lock rail",
        "panel",
        "bottom rail",
    ]
    assert [band.size for band in leaf.top_to_bottom if isinstance(band.size, Figure)] == [
        120,
        90,
        150,
        460,
        240,
    ]
    assert isinstance(leaf.top_to_bottom[1].size, Equal)
    assert [(b.tenons, b.tenons.origin) for b in leaf.rails if b.tenons is not None] == [
        (1, "assumed"),
        (1, "assumed"),
        (1, "assumed"),
        (2, "chosen"),
    ]
    lines = reading_room.read_text(encoding="utf-8").splitlines()
    for band in leaf.top_to_bottom:
        assert f"- {band.kind}: " in lines[band.line(band.kind).line - 1]


def test_shares(tmp_path: Path) -> None:
    design = changed(
        PLAIN,
        (
            "[top rail: 100, panel: rest,",
            "[top rail: 100, panel: 2 parts, rail: 90, panel: 1 part,",
        ),
    )
    found = loaded(tmp_path, design)
    assert found.design is not None, found.problems
    leaf = found.design.block("leaf")
    assert isinstance(leaf, LeafSpec)
    shares = [band.size for band in leaf.top_to_bottom if isinstance(band.size, Parts)]
    assert [share.count for share in shares] == [2, 1]
    plain = loaded(tmp_path, PLAIN).design
    assert plain is not None
    leaf = plain.block("leaf")
    assert isinstance(leaf, LeafSpec)
    assert isinstance(leaf.top_to_bottom[1].size, Rest)
