"""Which option was signed: recorded, known again, and what a later build takes."""

from __future__ import annotations

import json

import pytest

from parametric.commands import approve, receive
from parametric.design.edits import add_value
from parametric.job import Job
from parametric.pack.slips import Slip, slip_words
from parametric.trade.fingerprint import fingerprint, mark
from tests.options.larch_hill_two_ways import HOUSE, TWO_WAYS, checked, written


def signed(path, letter=None):
    return approve(
        path,
        revision="B",
        by="Ada Fenn",
        date="2026-11-20",
        house=HOUSE,
        user_house=False,
        option=letter,
    )


def whole(job: Job, letter: str) -> str:
    one = next(one for one in job.options if one.letter == letter)
    assert one.resolved
    assert one.assembly
    return fingerprint(one.resolved, one.assembly)


def slip_for(folder, job: Job, letter: str, **changes):
    digest = whole(job, letter)
    record = {
        "stilewright slip": 1,
        "job": "Larch Hill reading room",
        "revision": "B",
        "revision date": "2026-11-19",
        "option": letter,
        "called": {"A": "two lites", "B": "one tall lite"}[letter],
        "fingerprint": digest,
        "mark": mark(digest),
        "finish": {"wood": "Lichen paint"},
        "as quoted": True,
        "ticks": [],
        "name": "Ada Fenn",
        "date": "2026-11-25",
        "page": "0123456789ab",
    } | changes
    path = folder / "slip.txt"
    words = slip_words(Slip.model_validate(record))
    path.write_text(f"{words}\n\n{json.dumps(record)}\n", "utf-8")
    return path, words


def test_a_design_with_options_is_not_signed_without_saying_which(tmp_path) -> None:
    got = signed(written(tmp_path))
    assert [p.code for p in got.problems] == ["which_option"]
    assert sorted(p.name for p in tmp_path.iterdir()) == ["design.yaml"]


def test_what_was_signed_is_what_is_meant_from_then_on(tmp_path) -> None:
    path = written(tmp_path)
    assert checked(path).letter == "A"
    got = signed(path, "B")
    assert (got.option, got.problems) == ("B", ())
    assert "revision: B, option: B, fingerprint:" in (tmp_path / "design.records.yaml").read_text()
    assert json.loads((tmp_path / "design.approved.json").read_text())["option"] == "B"
    job = checked(path)
    assert job.letter == "B"
    assert "not_approved" not in {p.code for p in job.problems}
    # asked for by its letter, the other one is not what was signed, and says so
    (caution,) = (p for p in checked(path, "A").problems if p.code == "not_approved")
    assert caution.message.startswith(
        f"Option A: Revision B, option B, was approved as {whole(job, 'B')[:8]}; option A is "
    )
    # a later change is still one of option B
    path.write_text(path.read_text().replace("stiles: 120", "stiles: 121"))
    job = checked(path)
    assert job.letter == "B"
    (caution,) = (p for p in job.problems if p.code == "not_approved")
    assert "the stiles width changed from 120 to 121" in caution.message or "121" in caution.message


def test_a_record_without_a_letter_is_known_by_its_fingerprint(tmp_path) -> None:
    path = written(tmp_path)
    digits = whole(checked(path), "B")[:8]
    (tmp_path / "design.records.yaml").write_text(
        "stilewright: 1\nunits: mm\n"
        f"approved: {{revision: B, fingerprint: {digits}, by: x, date: 2026-11-20}}\n"
    )
    assert checked(path).letter == "B"


def test_the_other_option_signed_later_takes_its_place_and_says_so(tmp_path) -> None:
    path = written(tmp_path)
    signed(path, "B")
    got = signed(path, "A")
    assert [p.code for p in got.problems] == ["other_option_signed"]
    assert got.files
    assert "option: A," in (tmp_path / "design.records.yaml").read_text()
    assert checked(path).letter == "A"


def test_a_design_made_of_the_option_that_was_signed_stays_approved(tmp_path) -> None:
    """The maker writes option B into the design itself and takes the options out."""
    path = written(tmp_path)
    signed(path, "B")
    text = path.read_text().removesuffix(TWO_WAYS)
    two = "    - lite: equal\n    - dividing rail: 90\n    - lite: equal\n"
    assert two in text
    path.write_text(text.replace(two, "    - lite: equal\n"))
    job = checked(path)
    assert job.others == ()
    assert "not_approved" not in {p.code for p in job.problems}


@pytest.mark.parametrize("letter", ["A", "B"])
def test_a_slip_says_yes_to_the_option_whose_mark_it_holds(tmp_path, letter) -> None:
    path = written(tmp_path)
    slip, words = slip_for(tmp_path, checked(path), letter)
    assert f"Option: {letter}, " in words
    got = receive(slip, path, house=HOUSE, user_house=False)
    assert [p.message for p in got.problems] == []
    assert (got.approved, got.option) == (True, letter)
    assert checked(path).letter == letter


def test_a_slip_whose_letter_is_not_that_of_its_mark_is_refused(tmp_path) -> None:
    path = written(tmp_path)
    job = checked(path)
    slip, _ = slip_for(tmp_path, job, "B", option="A")
    got = receive(slip, path, house=HOUSE, user_house=False)
    assert [p.code for p in got.problems] == ["slip_for_another"]
    assert "now that of option B of this design" in got.problems[0].message
    old = "0" * 64
    slip, _ = slip_for(tmp_path, job, "B", fingerprint=old, mark=mark(old))
    (stop,) = receive(slip, path, house=HOUSE, user_house=False).problems
    assert "yes to option B 0000-0000" in stop.message
    assert f"option B of this design is {mark(whole(job, 'B'))}" in stop.message


@pytest.mark.parametrize(
    ("before", "after"),
    [
        ("approved: {revision: A, by: x}\n", "approved: {revision: A, option: B, by: x}\n"),
        ("approved: {by: x, revision: A}", "approved: {by: x, revision: A, option: B}"),
        (
            "approved:\n  revision: A   # signed\n  by: x\n",
            "approved:\n  revision: A   # signed\n  option: B\n  by: x\n",
        ),
        ("approved:\r\n  revision: A\r\n", "approved:\r\n  revision: A\r\n  option: B\r\n"),
        ("approved:\n  by: x\n  revision: A", "approved:\n  by: x\n  revision: A\n  option: B\n"),
        (
            "\ufeffapproved: {revision: 'A',\n  by: x}\n",
            "\ufeffapproved: {revision: 'A', option: B,\n  by: x}\n",
        ),
    ],
)
def test_a_key_is_added_and_every_other_sign_stays(before: str, after: str) -> None:
    assert add_value(before, ("approved", "revision"), "option", "B") == after
