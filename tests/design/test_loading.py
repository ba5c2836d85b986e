"""A design file as it is given: found or not, its house found or not."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

from parametric.design import load
from parametric.design.house import find_house
from parametric.problems import exit_status
from tests.design.written_files import HOUSE, PLAIN, changed, loaded


def test_larch_hill(reading_room: Path, project: Path) -> None:
    found = load(reading_room, user_house=False)
    assert found.problems == ()
    assert found.house_file == str(project / "examples" / "house.yaml")
    assert found.design is not None
    assert (found.design.job, found.design.unit) == ("Larch Hill reading room", "mm")
    assert [name for name, _ in found.design.doors] == [""]
    assert sorted(kind for kind, name in found.design.blocks if name) == ["hinge", "timber"]


@pytest.mark.parametrize("name", ["no-such-file.yaml", "."])
def test_a_file_that_is_not_there(tmp_path: Path, name: str) -> None:
    found = load(tmp_path / name, user_house=False)
    assert [p.code for p in found.problems] == ["file_unreadable"]
    assert exit_status(found.problems) == 2
    assert found.design is None


def test_a_house_that_is_not_there(tmp_path: Path) -> None:
    (tmp_path / "design.yaml").write_text(PLAIN, encoding="utf-8")
    found = load(tmp_path / "design.yaml", house=tmp_path / "gone.yaml")
    assert [p.code for p in found.problems] == ["file_unreadable"]


def test_the_house_given_is_the_only_one(tmp_path: Path) -> None:
    other = tmp_path / "other.yaml"
    other.write_text(HOUSE, encoding="utf-8")
    (tmp_path / "house.yaml").write_text(HOUSE, encoding="utf-8")
    assert find_house(tmp_path / "design.yaml", given=other, user_house=True) == other


def test_the_nearest_house_up_to_the_root_of_the_repository(tmp_path: Path) -> None:
    job = tmp_path / "shop" / "jobs" / "job"
    job.mkdir(parents=True)
    (tmp_path / "house.yaml").write_text(HOUSE, encoding="utf-8")
    (tmp_path / "shop" / ".git").mkdir()

    def found() -> Path | None:
        return find_house(job / "design.yaml", given=None, user_house=False)

    assert found() is None  # the one above the repository is not the shop's
    (tmp_path / "shop" / "house.yaml").write_text(HOUSE, encoding="utf-8")
    assert found() == tmp_path / "shop" / "house.yaml"
    (job / "house.yaml").write_text(HOUSE, encoding="utf-8")
    assert found() == job / "house.yaml"


def test_the_users_own_house_comes_last(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("XDG_CONFIG_HOME", str(tmp_path / "settings"))
    own = tmp_path / "settings" / "stilewright" / "house.yaml"
    own.parent.mkdir(parents=True)
    own.write_text(HOUSE, encoding="utf-8")
    job = tmp_path / "job"
    (job / ".git").mkdir(parents=True)
    if sys.platform == "linux":
        assert find_house(job / "design.yaml", given=None, user_house=True) == own
    assert find_house(job / "design.yaml", given=None, user_house=False) is None


def test_all_that_is_wrong_is_told_in_one_run(tmp_path: Path) -> None:
    design = changed(
        PLAIN,
        ("units: mm", "units: cm"),
        ("  stiles: 100", "  stiles: 100,5\n  stiles: 100"),
        ("{kind: bypass}", "{kind: bypass, floor_gap: 3, hung: inside}"),
        ("slot: 12 x 52 x 42", "slot: 12 x 52"),
        ("timber: ash", "timber: asche"),
    )
    found = loaded(tmp_path, design, HOUSE + "limit: {passing: 6}\n")
    assert [(p.code, p.where.file, p.where.line) for p in found.problems if p.where] == [
        ("wrong_units", "design.yaml", 2),
        ("unknown_key", "design.yaml", 4),
        ("unknown_word", "design.yaml", 4),
        ("not_a_length", "design.yaml", 8),
        ("doubled_key", "design.yaml", 9),
        ("wrong_sizes", "design.yaml", 11),
        ("unknown_block", "house.yaml", 3),
    ]


def test_a_block_nobody_uses_is_noted(tmp_path: Path) -> None:
    design = PLAIN + "track spare: {spacing: 60, off wall: 95, bearing: 70}\n"
    found = loaded(tmp_path, design)
    assert found.design is not None
    assert [(p.level, p.code, p.about) for p in found.problems] == [
        ("note", "never_called", "track spare")
    ]


def test_a_fact_kept_for_later_is_noted(tmp_path: Path) -> None:
    design = changed(PLAIN, ("heights:", "depth: 700, heights:"))
    found = loaded(tmp_path, design)
    assert found.design is not None
    assert [(p.level, p.code, p.about) for p in found.problems] == [
        ("note", "not_used_yet", "depth")
    ]


def test_one_survey_serves_whatever_it_is_called(tmp_path: Path) -> None:
    found = loaded(tmp_path, changed(PLAIN, ("survey:", "survey hall:")))
    assert found.problems == ()
    assert found.design is not None
    assert found.design.block("survey") is found.design.block("survey", "hall")


def test_a_named_pull_is_not_on_a_door_that_does_not_call_it(tmp_path: Path) -> None:
    pull = (
        "pull brass: {kind: recessed, body: 150 x 32 x 14, body corner: 3, "
        "flange: 160 x 42 x 1.5, flange corner: 6}\n"
    )
    found = loaded(tmp_path, PLAIN + pull)
    assert found.design is not None
    assert found.design.block("pull") is None
    assert found.design.block("pull", "brass") is not None


def test_a_timber_of_the_makers_own(tmp_path: Path) -> None:
    own = "timber plum: {density: 700 kg/m3, movement: 0.3 % per %}\n"
    design = changed(PLAIN, ("timber: ash", "timber: plum"))
    assert [p.code for p in loaded(tmp_path, design).problems] == ["unknown_name"]
    assert loaded(tmp_path, design + own).problems == ()
    half = own.replace(", movement: 0.3 % per %", "")
    assert [p.code for p in loaded(tmp_path, design + half).problems] == ["unknown_name"]


def test_text_runs_to_the_end_of_its_line(tmp_path: Path) -> None:
    design = changed(
        PLAIN,
        ("  stiles: 100", '  note: as the sample: "mid", 3/4" thick, 50 % # ours\n  stiles: 100'),
    )
    found = loaded(tmp_path, design)
    assert found.design is not None, found.problems
    leaf = found.design.block("leaf")
    assert leaf is not None
    assert leaf.note == 'as the sample: "mid", 3/4" thick, 50 %'


def test_the_kernel_is_never_met(reading_room: Path) -> None:
    script = (
        "import sys; from pathlib import Path; from parametric.design import load\n"
        f"assert load(Path({str(reading_room)!r}), user_house=False).design is not None\n"
        "print(sorted(m for m in ('cadquery', 'OCP', 'ezdxf', 'reportlab', 'numpy') "
        "if m in sys.modules))"
    )
    run = subprocess.run(
        [sys.executable, "-c", script],
        capture_output=True,
        text=True,
        check=False,
        cwd=Path(__file__).parents[2],
    )
    assert (run.stdout.strip(), run.stderr) == ("[]", "")
