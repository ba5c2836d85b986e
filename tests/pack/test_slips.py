"""A client's slip read back: what it says is held against the design and its own words."""

from __future__ import annotations

import json
import shutil

import pytest

from parametric.commands import check, receive
from parametric.pack.slips import Slip, read_slip, slip_words
from parametric.trade.fingerprint import fingerprint, mark
from parametric.writers.page_words import ONE_SLIP_WORDS


@pytest.fixture
def design(reading_room, tmp_path):
    copied = tmp_path / "job.yaml"
    shutil.copy(reading_room, copied)
    return copied


@pytest.fixture
def record(design):
    job = check(design, user_house=False)
    whole = fingerprint(job.resolved, job.assembly)
    return {
        "stilewright slip": 1,
        "job": "Larch Hill reading room",
        "revision": "B",
        "revision date": "2026-11-19",
        "fingerprint": whole,
        "mark": mark(whole),
        "finish": {"wood": "Lichen paint", "glass": "Clear glass"},
        "as quoted": True,
        "ticks": ["I have seen the gap.", "I will choose from a sample."],
        "name": 'Ada "Fen" O\'Neill <ada> مريم 🚪',
        "date": "2026-11-25",
        "page": "0123456789ab",
    }


def slip_file(tmp_path, record, *, words=None, line=None):
    path = tmp_path / "from the client.txt"
    above = slip_words(Slip.model_validate(record)) if words is None else words
    path.write_text(f"{above}\n\n{json.dumps(record) if line is None else line}\n", "utf-8")
    return path


def test_a_slip_of_one_door_says_this_door(record, tmp_path):
    said = slip_words(Slip.model_validate(record), ONE_SLIP_WORDS)
    assert said.startswith("I say yes to this door: please make it.")
    assert "these doors" not in said
    read, problems = read_slip(slip_file(tmp_path, record, words=said))
    assert read is not None
    assert not problems
    other = said.replace("this door", "that door")
    read, problems = read_slip(slip_file(tmp_path, record, words=other))
    assert read is None
    assert [problem.code for problem in problems] == ["slip_words_changed"]


def test_a_slip_for_the_design_as_it_is_approves_it(design, record, tmp_path):
    slip = slip_file(tmp_path, record)
    got = receive(slip, design, user_house=False)
    assert got.approved
    assert got.name == record["name"]
    filed = tmp_path / f"job.slip-B-{record['mark']}.txt"
    assert got.files[0] == filed
    assert filed.read_bytes() == slip.read_bytes()
    book = (tmp_path / "job.records.yaml").read_text()
    assert record["fingerprint"][:8] in book
    assert "by slip" in book
    # the approval holds until a signed number moves
    codes = {p.code for p in check(design, user_house=False).problems}
    assert not {"not_approved", "approved_other"} & codes
    text = design.read_text()
    assert "- lock rail: 150" in text
    design.write_text(text.replace("- lock rail: 150", "- lock rail: 160"))
    after = [p for p in check(design, user_house=False).problems if p.about == "approved"]
    assert any("not approved" in p.message for p in after)
    assert not receive(slip, design, user_house=False).files


def test_the_same_slip_twice_is_no_matter_and_another_is_not_filed_over_it(
    design, record, tmp_path
):
    receive(slip_file(tmp_path, record), design, user_house=False)
    assert receive(slip_file(tmp_path, record), design, user_house=False).approved
    record["name"] = "Somebody else"
    got = receive(slip_file(tmp_path, record), design, user_house=False)
    assert [p.code for p in got.problems] == ["slip_there_already"]
    assert not got.files


def test_a_choice_that_was_not_quoted_is_filed_but_approves_nothing(design, record, tmp_path):
    record["as quoted"] = False
    got = receive(slip_file(tmp_path, record), design, user_house=False)
    assert [p.code for p in got.problems] == ["slip_not_as_quoted"]
    assert len(got.files) == 1
    assert not got.approved
    assert not (tmp_path / "job.records.yaml").exists()


@pytest.mark.parametrize(
    ("change", "code"),
    [
        ({"fingerprint": "0" * 64, "mark": "0000-0000"}, "slip_for_another"),
        ({"mark": "0000-0000"}, "slip_for_another"),
        ({"revision": "A"}, "not_current"),
    ],
)
def test_a_slip_for_something_else_is_refused(design, record, tmp_path, change, code):
    got = receive(slip_file(tmp_path, record | change), design, user_house=False)
    assert [p.code for p in got.problems] == [code]
    assert not got.files
    assert sorted(p.name for p in tmp_path.iterdir()) == ["from the client.txt", "job.yaml"]


def test_words_that_say_another_thing_than_the_line_are_found(record, tmp_path):
    words = slip_words(Slip.model_validate(record)).replace("Lichen", "Damson")
    read, problems = read_slip(slip_file(tmp_path, record, words=words))
    assert read is None
    assert problems[0].code == "slip_words_changed"


def test_a_message_that_folded_and_quoted_the_slip_is_still_read(record, tmp_path):
    """A mail program quotes with `> ` and folds lines near 76 signs (RFC 3676, from memory)."""
    words = "\r\n".join(f"> {line}" for line in slip_words(Slip.model_validate(record)).split("\n"))
    line = json.dumps(record)
    folded = "\r\n".join(line[i : i + 76] for i in range(0, len(line), 76))
    read, problems = read_slip(slip_file(tmp_path, record, words=f"Hello,\r\n{words}", line=folded))
    assert problems == ()
    assert read is not None
    assert read.slip.name == record["name"]


@pytest.mark.parametrize(
    "line",
    ["", "no slip at all", None, '{"stilewright slip":1', '{"stilewright slip": 1, "job": 3}'],
)
def test_what_is_no_slip_is_said_in_one_message(record, tmp_path, line):
    if line is None:  # a day that no calendar has
        line = json.dumps(record | {"date": "2026-02-31"})
    read, problems = read_slip(slip_file(tmp_path, record, line=line))
    assert read is None
    assert [p.code for p in problems] == ["slip_unreadable"]
    assert problems[0].unreadable


def test_a_slip_of_another_format_or_size_or_place_is_refused(record, tmp_path):
    path = slip_file(tmp_path, record | {"stilewright slip": 2}, words="")
    assert "format 2" in read_slip(path)[1][0].message
    path.write_bytes(b"x" * 100_001)
    assert "100001 bytes" in read_slip(path)[1][0].message
    assert read_slip(tmp_path / "nowhere.txt")[1][0].code == "slip_unreadable"
