"""A design with options: each a whole design with its own numbers, mark and problems."""

from __future__ import annotations

import json
from pathlib import Path

import jsonschema
import pytest
from ruamel.yaml import YAML

from parametric.commands import compare, explain, lists
from parametric.design.schema import schema
from parametric.figures import collect
from parametric.job import Job, check
from parametric.trade.fingerprint import fingerprint
from tests.options.larch_hill_two_ways import A_THIRD, EXAMPLE, HOUSE, TWO_WAYS, checked, written


@pytest.fixture
def job(tmp_path) -> Job:
    return checked(written(tmp_path))


def whole(job: Job) -> str:
    assert job.resolved
    assert job.assembly
    return fingerprint(job.resolved, job.assembly)


def values(job: Job) -> dict[str, float]:
    assert job.resolved
    return {name: float(figure) for name, figure in collect((job.resolved, job.loads)).items()}


def test_each_option_has_a_mark_of_its_own_and_the_first_keeps_the_designs(job) -> None:
    bare = checked(EXAMPLE)
    assert bare.others == ()
    assert [one.letter for one in job.options] == ["A", "B"]
    assert whole(job) == whole(bare)
    (other,) = job.others
    assert whole(other) != whole(job)
    assert job.resolved.job == "Larch Hill reading room, option A"
    assert other.design.whole_title == "Larch Hill reading room, option B: one tall lite"
    assert bare.resolved.job == "Larch Hill reading room"


def test_numbers_differ_where_the_option_differs_and_nowhere_else(job) -> None:
    """By hand: 2102 - 120 - 150 - 460 - 240 = 1132 of daylight in place of 2 x 521 and a rail of 90.

    The pane is 3 less each way: 1126. Door, opening, laps and panel are those of option A.
    """
    a, b = values(job), values(job.others[0])
    assert a["leaf A / lite 1 / height"] == 521
    assert b["leaf A / lite / height"] == 1132
    assert b["leaf A / lite / glass / height"] == 1126
    gone = {name.split(" / ")[1] for name in a if name not in b}
    assert gone == {"dividing rail", "lite 1", "lite 2"}
    other = [name for name in a if name in b and a[name] != b[name]]
    weighed = ("weight", "mass", "volume", "load", "heaviest")
    assert other
    assert [name for name in other if not any(word in name for word in weighed)] == []


def test_a_problem_names_its_option_and_the_line_it_stands_on(tmp_path) -> None:
    bad = TWO_WAYS.replace("lite: rest", "lite: 900")
    path = written(tmp_path, bad)
    job = checked(path)
    stops = [p for p in job.problems if p.level == "stop"]
    line = 1 + path.read_text().splitlines().index(
        next(row for row in path.read_text().splitlines() if "lite: 900" in row)
    )
    assert len(stops) == 1
    assert stops[0].message.startswith("Option B: ")
    assert stops[0].where.line == line
    assert job.exit_status == 1
    # the sheets of option A are not told of it
    assert not [p for p in job.own if p.level == "stop"]


def test_what_is_said_of_all_options_is_said_once(job) -> None:
    said = [p.message for p in job.problems]
    assert len(said) == len(set(said))
    assert sum("fingers can be caught" in words for words in said) == 1
    (tall,) = (words for words in said if "1126" in words)
    assert tall.startswith("Option B: ")
    assert "category II." in tall
    assert not any(words.startswith("Option") for words in (p.message for p in job.own))


def test_an_unknown_key_in_an_option_is_answered_on_its_own_line(tmp_path) -> None:
    job = checked(written(tmp_path, "option B: {called: broad, leaf: {stlies: 130}}\n"))
    (stop,) = (p for p in job.problems if p.level == "stop")
    assert stop.message.startswith('Option B: No such thing as "stlies" in leaf (line ')
    assert str(stop.where.line) in stop.message
    assert job.exit_status == 2


def test_an_option_that_comes_to_the_same_doors_is_a_stop(tmp_path) -> None:
    more = "option B: {called: noted, leaf: {note: as A but for these words}}\n"
    (stop,) = (p for p in checked(written(tmp_path, more)).problems if p.level == "stop")
    assert stop.code == "option_same_doors"
    assert stop.message.startswith("Option B comes to the same doors as option A, mark ")


def test_an_option_may_be_like_another_and_call_blocks_of_its_own(tmp_path) -> None:
    """C takes B's leaf, laps 80 for 50 and no pulls: (1829 + 160 + 120) / 2 = 1054.5 wide."""
    job = checked(written(tmp_path, TWO_WAYS + A_THIRD))
    c = job.options[2]
    assert values(c)["leaf A / width"] == 1054.5
    assert values(c)["leaf A / lite / height"] == 1132
    assert c.resolved.door.leaves[0].pulls == ()
    assert len({whole(one) for one in job.options}) == 3


def test_a_block_that_only_one_option_uses_is_not_called_unused(tmp_path) -> None:
    thin = "panel thin: {kind: raised, thickness: 26, tongue: 8 x 15, edge thickness: 13, bevel run: 60}\n"
    called = thin + "option B: {called: a thinner panel, leaf: {panel: thin}}\n"
    job = checked(written(tmp_path, called))
    assert not {"never_called", "missing_key"} & {p.code for p in job.problems}
    job = checked(written(tmp_path, thin + TWO_WAYS))
    (note,) = (p for p in job.problems if p.code == "never_called")
    assert not note.message.startswith("Option")


def test_measured_hardware_of_an_option_counts_as_measured(tmp_path) -> None:
    more = (
        "option B: {called: other track, track: {measured: with callipers, spacing: 56, hangers: 2, "
        "brackets every: 400, off wall: 86, bearing: 60}}\n"
    )
    job = checked(written(tmp_path, more))
    assert [p for p in job.problems if p.level == "stop"] == []
    track = job.others[0].design.block("track")
    assert track.spacing.origin == "measured"
    assert float(track.spacing) == 56


@pytest.mark.parametrize("letter", ["D", "b", ""])
def test_a_letter_that_is_not_there_is_answered(tmp_path, letter) -> None:
    path = written(tmp_path)
    (stop,) = (p for p in checked(path, letter).problems if p.level == "stop")
    assert (stop.code, stop.unreadable) == ("unknown_option", True)
    assert "A: two lites, B: one tall lite" in stop.message
    got = explain(path, "clear way", house=HOUSE, user_house=False, option=letter)
    assert [p.code for p in got.problems if p.level == "stop"] == ["unknown_option"]
    assert (
        compare(path, path, house=HOUSE, user_house=False, options=(None, letter)).changes is None
    )


def test_a_design_without_options_is_option_a_and_no_other() -> None:
    assert checked(EXAMPLE, "A").exit_status == 0
    (stop,) = (p for p in checked(EXAMPLE, "B").problems if p.level == "stop")
    assert "no options" in stop.message


def test_lists_and_explain_and_compare_are_of_the_option_that_is_asked_for(tmp_path) -> None:
    path = written(tmp_path)
    panes = {
        letter: [row[:4] for row in lists(checked(path, letter))["Glass"].rows] for letter in "AB"
    }
    assert panes["A"][0][1:] == ("4", "toughened", "778.5")
    assert panes["B"][0][1:] == ("2", "toughened", "778.5")
    name = "leaf A / lite / height"
    got = explain(path, name, house=HOUSE, user_house=False, option="B")
    assert [float(figure) for figure in got.figures] == [1132]
    moved = compare(path, path, house=HOUSE, user_house=False, options=("A", "B")).changes
    assert any("dividing rail is gone" in cause for cause in moved.causes)
    assert not compare(path, path, house=HOUSE, user_house=False, options=("B", "B")).changes.causes


def test_accepting_a_caution_of_one_option_is_enough(tmp_path) -> None:
    """Ordinary glass is a caution of option B alone; a name that no option has is a stop."""
    more = TWO_WAYS + "accepted: {NAME: 'JM 2026-11-20, client told'}\n"
    more = more.replace("  leaf:", "  glass: {kind: ordinary}\n  leaf:")
    cautions = {
        p.about for p in checked(written(tmp_path, more.split("accepted")[0])).others[0].own
    }
    name = next(about for about in cautions if "safety" in about)
    job = checked(written(tmp_path, more.replace("NAME", name)))
    assert "nothing_to_accept" not in {p.code for p in job.problems}
    (answered,) = (p for p in job.problems if p.about == name and p.level == "caution")
    assert answered.message.startswith("Option B: ")
    assert "Accepted by JM" in answered.message
    job = checked(written(tmp_path, more.replace("NAME", "nothing at all")))
    assert [p.code for p in job.problems if p.level == "stop"] == ["nothing_to_accept"]


def test_a_record_of_a_part_that_one_option_has_is_of_use(tmp_path) -> None:
    more = TWO_WAYS + "cut: [A dividing rail, A stiles]\n"
    assert checked(written(tmp_path, more)).exit_status == 0
    more = TWO_WAYS + "cut: [A dividing rial]\n"
    (stop,) = (p for p in checked(written(tmp_path, more)).problems if p.level == "stop")
    assert stop.code == "unknown_name"


def test_an_editor_is_told_of_options(tmp_path) -> None:
    """The schema takes what check takes, and refuses what it refuses; read by jsonschema."""
    validator = jsonschema.Draft202012Validator(schema())
    content = YAML(typ="safe", pure=True).load(written(tmp_path, TWO_WAYS + A_THIRD).read_text())
    plain = json.loads(json.dumps(content, default=str))
    assert list(validator.iter_errors(plain)) == []
    for change in (
        {"survey": {"widths": {"top": 1}}},
        {"door": {"in": "hall"}},
        {"called": "x" * 41},
    ):
        wrong = {**plain, "option B": {**plain["option B"], **change}}
        assert list(validator.iter_errors(wrong)), change


def test_no_house_file_holds_an_option(tmp_path: Path) -> None:
    house = tmp_path / "house.yaml"
    house.write_text(HOUSE.read_text() + "option B: {called: taller, leaf: {stiles: 90}}\n")
    job = check(EXAMPLE, house=house, user_house=False)
    (stop,) = (p for p in job.problems if p.level == "stop")
    assert stop.where.file == "house.yaml"
    assert '"option B"' in stop.message


def test_the_option_that_the_starter_shows_can_be_made(project, tmp_path) -> None:
    text = (project / "templates/bypass.yaml").read_text()
    before, _, shown = text.rpartition("# option B:\n")
    path = tmp_path / "design.yaml"
    path.write_text(f"{before}option B:\n{shown.replace('#   ', '  ')}")
    job = check(path, user_house=False)
    assert [one.letter for one in job.options] == ["A", "B"]
    assert [p.message for p in job.problems if p.level == "stop"] == []
    assert values(job.options[1])["leaf A / left stile / width"] == 95
