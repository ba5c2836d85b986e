"""A signed design, a change after the signature, and what is then said of it."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest

from parametric.commands import approve, changes_lines, check, compare

ROOT = Path(__file__).parents[2]
HOUSE = ROOT / "examples/house.yaml"


@pytest.fixture
def design(tmp_path: Path) -> Path:
    path = tmp_path / "design.yaml"
    shutil.copy(ROOT / "examples/larch-hill-reading-room/design.yaml", path)
    return path


def change(design: Path, old: str, new: str) -> None:
    text = design.read_text(encoding="utf-8")
    assert old in text
    design.write_text(text.replace(old, new, 1), encoding="utf-8")


def sign(design: Path) -> str:
    signed = approve(design, revision="B", by="client on the sheet", date="2026-11-20", house=HOUSE)
    assert signed.problems == ()
    return signed.fingerprint


def codes(design: Path) -> dict[str, str]:
    return {p.code: p.message for p in check(design, house=HOUSE, user_house=False).problems}


def test_a_signed_design_is_approved_until_a_signed_number_moves(design: Path) -> None:
    fingerprint = sign(design)
    assert "not_approved" not in codes(design)
    change(design, "- lock rail: 150", "- lock rail: 160")
    said = codes(design)["not_approved"]
    assert f"Revision B was approved as {fingerprint[:8]}" in said
    assert "It is not approved: the lock rail changed from 150 to 160." in said
    assert check(design, house=HOUSE, user_house=False).exit_status == 0


def test_what_is_not_made_or_seen_does_not_undo_an_approval(design: Path) -> None:
    """A revision, a note or a record is no change of a door."""
    sign(design)
    change(design, "revisions:", "client: {name: A. Reader}\nrevisions:")
    assert "not_approved" not in codes(design)


def test_the_record_stands_beside_and_the_design_is_left_as_it_was(design: Path) -> None:
    before = design.read_bytes()
    fingerprint = sign(design)
    assert design.read_bytes() == before
    record = design.with_name("design.records.yaml").read_text(encoding="utf-8")
    assert fingerprint[:8] in record
    kept = json.loads(design.with_name("design.approved.json").read_text(encoding="utf-8"))
    assert kept["fingerprint"] == fingerprint


def test_a_design_with_stops_cannot_be_signed(design: Path) -> None:
    change(design, "slot: 12 x 62 x 46", "slot: 12 x 62 x 126")
    signed = approve(design, revision="B", by="client", date="2026-11-20", house=HOUSE)
    assert signed.files == ()
    assert [p.code for p in signed.problems] == ["slot_comes_through"]
    assert not design.with_name("design.records.yaml").exists()


def test_compare_names_the_cause_and_what_follows(design: Path, tmp_path: Path) -> None:
    """10 more for the lock rail is 5 less for each of two equal lites: 521 to 516."""
    old = tmp_path / "old.yaml"
    shutil.copy(design, old)
    nothing = compare(old, design, house=HOUSE).changes
    assert nothing is not None
    assert not any("changed from" in line for line in changes_lines(nothing))
    change(design, "- lock rail: 150", "- lock rail: 160")
    moved = compare(old, design, house=HOUSE).changes
    assert moved is not None
    lines = changes_lines(moved)
    assert any("lock rail changed from 150 to 160" in line for line in lines)
    assert any("height of lite 1 changed from 521 to 516" in line for line in lines)
    assert not any("leaf width" in line for line in lines)
