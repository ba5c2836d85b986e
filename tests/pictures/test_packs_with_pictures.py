"""Pictures in a job pack: asked for, told of, read back with the rest, never of what cannot be made."""

from __future__ import annotations

import functools
import sys
from pathlib import Path

import pytest
from typer.testing import CliRunner

from parametric import commands
from parametric.cli import app
from parametric.pack import contents, pictures
from tests.pictures.larch_hill import DESIGN

pytestmark = pytest.mark.kernel


@pytest.fixture
def tiny(monkeypatch):
    """Pictures of 80 by 60: the pack is the same but for their size."""
    monkeypatch.setattr(contents, "pictures", functools.partial(pictures.pictures, size=(80, 60)))


@pytest.mark.usefixtures("tiny")
def test_a_pack_has_them_when_they_are_asked_for_and_is_verified_as_before(tmp_path):
    pack = tmp_path / "pack"
    run = CliRunner().invoke(app, ["build", str(DESIGN), "--pictures", "--out", str(pack)])
    assert run.exit_code == 0, run.output
    there = sorted(path.name for path in (pack / "client/pictures").iterdir())
    assert there == [
        "1-facing-shut-day.png",
        "2-half-open-day.png",
        "3-at-the-pull-day.png",
        "4-evening.png",
        "captions.txt",
    ]
    verified = commands.verify(pack, DESIGN, user_house=False)
    assert verified.verdicts
    assert not verified.problems


@pytest.mark.usefixtures("tiny")
def test_without_the_extra_the_command_says_that_they_are_quick(tmp_path, monkeypatch):
    monkeypatch.setitem(sys.modules, "pyoidn", None)
    pack = tmp_path / "pack"
    run = CliRunner().invoke(app, ["build", str(DESIGN), "--pictures", "--out", str(pack)])
    assert run.exit_code == 0, run.output
    assert "The client's pictures are quick ones" in run.output
    assert "stilewright[render]" in run.output


def test_nothing_for_the_client_of_a_design_that_cannot_be_made(tmp_path):
    written = DESIGN.read_text()
    assert "panel: 460" in written
    design = tmp_path / "design.yaml"
    # leaves groove walls too thin to hold: a stop, but every size is there
    design.write_text(written.replace("groove: 8.2 x 14 ", "groove: 39 x 14 "))
    pack = tmp_path / "pack"
    built = commands.build(
        design, out=pack, user_house=False, with_stops=True, pictures=True, fine=True
    )
    assert built.exit_status == 1
    assert built.folder is not None
    assert not (Path(pack) / "client").exists()
    assert not any(problem.code == "pictures_drawn_quickly" for problem in built.problems)
