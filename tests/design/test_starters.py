"""Starters: complete, in trade words, one key a line, and never written over anything."""

from __future__ import annotations

import errno
import os
import re
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from parametric.cli import app
from parametric.design import load, starters
from parametric.design.starters import kinds, new_design, new_house, said_twice, templates
from parametric.hangings import DOOR_KINDS
from parametric.job import check
from parametric.problems import exit_status

CABINETS = (
    *("alcove pair", "base cupboard", "bookcase", "bureau", "corner cupboard", "desk"),
    *("kitchen run", "media unit", "pantry tower", "under stair", "vanity", "wall cupboard"),
    *("wardrobe", "window seat"),
)


def test_what_has_one() -> None:
    assert kinds() == tuple(sorted((*DOOR_KINDS, *CABINETS)))


def test_the_help_lists_them(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "400")
    said = " ".join(CliRunner().invoke(app, ["new", "--help"]).output.split())
    assert ", ".join(kinds()) in said


@pytest.mark.parametrize("kind", CABINETS)
def test_a_cabinet_can_be_made_as_it_stands(tmp_path: Path, kind: str) -> None:
    (tmp_path / ".git").mkdir()
    path = tmp_path / "mine.yaml"
    assert new_design(kind, path) == ()
    job = check(path, user_house=False)
    assert [p.message for p in job.problems if p.level == "stop"] == []
    assert job.resolved is not None
    assert job.resolved.casework is not None
    assert job.assembly is not None
    assert {group.name for group in job.assembly.groups} >= {
        case.name for case in job.resolved.casework.cases
    }


def test_every_cabinet_is_of_an_invented_job_of_its_own() -> None:
    jobs = [
        re.search(
            r"^job: (.*?)\s*#",
            (templates() / f"{kind}.yaml").read_text(encoding="utf-8"),
            re.MULTILINE,
        )
        for kind in CABINETS
    ]
    names = [job.group(1) for job in jobs if job]
    assert len(set(names)) == len(CABINETS)


@pytest.mark.parametrize("kind", sorted(DOOR_KINDS))
def test_a_new_design_loads_as_it_stands(tmp_path: Path, kind: str) -> None:
    (tmp_path / ".git").mkdir()
    path = tmp_path / "mine.yaml"
    assert new_design(kind, path) == ()
    found = load(path, user_house=False)
    assert found.problems == ()
    assert found.design is not None
    assert found.design.doors[0][1].kind == kind


def test_a_new_house_says_what_the_tool_would(tmp_path: Path) -> None:
    """Copied and left as it is, a house file moves only the tape under the glass."""
    (tmp_path / ".git").mkdir()
    path = tmp_path / "design.yaml"
    assert new_design("bypass", path) == ()
    without = load(path, user_house=False).shop
    assert new_house(tmp_path / "house.yaml") == ()
    found = load(path, user_house=False)
    assert found.problems == ()
    assert found.shop == without
    assert found.shop is not None
    assert found.shop.limits.engagement.origin == "house"


def test_twelve_questions() -> None:
    text = (templates() / "house.yaml").read_text(encoding="utf-8")
    assert re.findall(r"^# (\d+)\. .*\?", text, re.MULTILINE) == [str(n) for n in range(1, 13)]


@pytest.mark.parametrize("path", sorted(templates().glob("*.yaml")), ids=lambda p: p.name)
def test_one_key_a_line(path: Path) -> None:
    for line in path.read_text(encoding="utf-8").splitlines():
        bare = line.split("#")[0]
        assert "{" not in bare, line
        assert len(line) <= 100, line


def test_the_numbers_are_its_own(reading_room: Path) -> None:
    """A maker who copies it copies no sizes of a real job by mistake."""
    keys = r"^\s*(?:- )?(?P<key>[a-z ]+): (?P<value>[0-9x. ]+?)\s*(?:#.*)?$"
    starter = (templates() / "bypass.yaml").read_text(encoding="utf-8")
    own = dict(re.findall(keys, starter, re.MULTILINE))
    theirs = dict(re.findall(keys, reading_room.read_text(encoding="utf-8"), re.MULTILINE))
    for key in ("top", "stiles", "slot", "tenon", "groove", "tongue", "bevel run", "lock rail"):
        assert own.get(key) != theirs.get(key) or key not in own


def test_never_over_a_file(tmp_path: Path) -> None:
    path = tmp_path / "mine.yaml"
    path.write_text("a day's work", encoding="utf-8")
    for problems in (new_design("bypass", path), new_house(path)):
        assert [(p.code, p.level) for p in problems] == [("file_exists", "stop")]
    assert path.read_text(encoding="utf-8") == "a day's work"


def test_never_over_a_link_that_leads_nowhere(tmp_path: Path) -> None:
    path = tmp_path / "mine.yaml"
    path.symlink_to(tmp_path / "gone.yaml")
    assert [p.code for p in new_design("bypass", path)] == ["file_exists"]
    assert path.is_symlink()
    assert not (tmp_path / "gone.yaml").exists()


def test_nothing_lies_about_afterwards(tmp_path: Path) -> None:
    path = tmp_path / "mine.yaml"
    assert new_design("bypass", path) == ()
    assert path.read_bytes() == (templates() / "bypass.yaml").read_bytes()
    assert new_design("bypass", path) != ()
    assert list(tmp_path.iterdir()) == [path]


def test_whole_or_not_at_all(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A disk that fills up half way leaves no half of a starter under the name asked for."""

    def full(_: int) -> None:
        raise OSError(errno.ENOSPC, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    problems = new_design("bypass", tmp_path / "mine.yaml")
    assert [(p.code, p.found) for p in problems] == [
        ("file_not_written", "No space left on device")
    ]
    assert list(tmp_path.iterdir()) == []


@pytest.mark.parametrize("taken_meanwhile", [False, True])
def test_on_a_disk_without_second_names(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, taken_meanwhile: bool
) -> None:
    path = tmp_path / "mine.yaml"

    def refused(_self: Path, _other: Path) -> None:
        if taken_meanwhile:
            path.write_text("a day's work", encoding="utf-8")
        raise OSError(errno.EPERM, "Operation not permitted")

    monkeypatch.setattr(Path, "hardlink_to", refused)
    problems = new_design("bypass", path)
    assert [p.code for p in problems] == (["file_exists"] if taken_meanwhile else [])
    assert list(tmp_path.iterdir()) == [path]
    assert (path.read_text(encoding="utf-8") == "a day's work") == taken_meanwhile


def test_a_folder_that_is_not_there(tmp_path: Path) -> None:
    problems = new_design("bypass", tmp_path / "gone" / "mine.yaml")
    assert [p.code for p in problems] == ["file_not_written"]


@pytest.mark.parametrize(
    ("kind", "code", "exit_code"),
    [("staircase", "unknown_word", 2), ("by-pass", "unknown_word", 2)],
)
def test_a_kind_without_one(tmp_path: Path, kind: str, code: str, exit_code: int) -> None:
    problems = new_design(kind, tmp_path / "mine.yaml")
    assert [p.code for p in problems] == [code]
    assert exit_status(problems) == exit_code
    assert not (tmp_path / "mine.yaml").exists()


@pytest.mark.parametrize(
    ("words", "alone", "code"),
    [
        (["hinged"], False, "no_file_said"),
        (["hinged", "pair"], False, "no_file_said"),
        (["bypass", "mine.yaml"], True, "too_many_words"),
        (["hinged", "pair", "mine.yaml"], False, None),
        (["mine.yaml"], True, None),
    ],
)
def test_a_kind_and_a_file(words: list[str], alone: bool, code: str | None) -> None:
    fault = said_twice(words, alone=alone)
    assert (fault.code if fault else None) == code


def test_found_inside_an_installed_package(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, project: Path
) -> None:
    """A wheel carries them at parametric/templates."""
    package = tmp_path / "site" / "parametric"
    (package / "design").mkdir(parents=True)
    shutil.copytree(templates(), package / "templates")
    monkeypatch.setattr(starters, "__file__", str(package / "design" / "starters.py"))
    assert starters.templates() == package / "templates"
    pyproject = (project / "pyproject.toml").read_text(encoding="utf-8")
    assert '"templates" = "parametric/templates"' in pyproject
