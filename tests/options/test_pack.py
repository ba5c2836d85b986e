"""The packs of a design with options, whole: what names the option, and that they are read back."""

from __future__ import annotations

import csv
import dataclasses
import io
import json
import re
import shutil
from pathlib import Path

import pdfplumber
import pytest
from typer.testing import CliRunner

from parametric.cli import app
from parametric.commands import verify
from parametric.job import build
from parametric.pack.verifying.known import known_design
from parametric.pack.verifying.page import PAGE, check_page
from parametric.trade.fingerprint import fingerprint, mark
from tests.options.larch_hill_two_ways import TWO_WAYS, written

pytestmark = pytest.mark.kernel


def words_of(path: Path) -> str:
    with pdfplumber.open(path) as paper:
        return " ".join(page.extract_text() for page in paper.pages)


@pytest.fixture(scope="module")
def option_b(larch_hill_two_ways, tmp_path_factory):
    pack = tmp_path_factory.mktemp("option-b") / "pack"
    return build(larch_hill_two_ways.job.path, out=pack, user_house=False, option="B")


def test_each_pack_names_its_option_on_sheets_machine_files_and_lists(
    larch_hill_two_ways, option_b
) -> None:
    for built, letter, called, panes in (
        (larch_hill_two_ways, "A", "two lites", "4"),
        (option_b, "B", "one tall lite", "2"),
    ):
        assert built.exit_status == 0
        folder = built.folder
        own = fingerprint(built.job.resolved, built.job.assembly)
        numbers = json.loads((folder / "numbers.json").read_text())
        assert (numbers["option"], numbers["called"]) == (letter, called)
        assert (numbers["design"], numbers["fingerprint"]) == ("Larch Hill reading room", own)
        sheets = words_of(folder / "shop/drawings.pdf")
        assert f"option {letter}: {called}" in " ".join(sheets.split())
        assert mark(own) in sheets
        signed = " ".join(words_of(folder / "client/proposal.pdf").split())
        assert f"option {letter}" in signed
        machine = next(folder.glob("cnc/*.dxf")).read_text("utf-8", "replace")
        assert f"Larch Hill reading room, option {letter}" in machine
        (glb,) = folder.glob("model/*.glb")
        assert glb.name == f"larch-hill-reading-room-option-{letter.lower()}.glb"
        (row,) = csv.DictReader(io.StringIO((folder / "order/glass.csv").read_text("utf-8-sig")))
        assert panes in row.values()
        # its own cautions are told plainly; whose they are is only a question of the whole file
        assert not [p for p in numbers["problems"] if p["message"].startswith("Option")]


def test_both_packs_carry_the_same_page_of_both_opened_at_their_own(
    larch_hill_two_ways, option_b
) -> None:
    for built, shown in ((larch_hill_two_ways, "A"), (option_b, "B")):
        page = (built.folder / PAGE).read_text()
        choices = re.findall(r'name="option" value="(\w)"( checked)?', page)
        assert choices == [(c, " checked" if c == shown else "") for c in "AB"]
        assert len(re.findall(r'id="model(?:-\w)?"', page)) == 2


def test_a_pack_says_which_option_it_is_of_when_it_is_verified(
    larch_hill_two_ways, option_b
) -> None:
    path = larch_hill_two_ways.job.path
    for built in (larch_hill_two_ways, option_b):
        found = verify(built.folder, path, user_house=False)
        assert found.problems == ()
        assert found.verdicts["page"].looked_at["options"] == 2
    (stop, *_) = verify(option_b.folder, path, user_house=False, option="A").problems
    assert stop.level == "stop"


def seeded(built, old: str, new: str):
    job = built.job
    known = dataclasses.replace(
        known_design(job.resolved, job.assembly, job.loads),
        beside=tuple(known_design(o.resolved, o.assembly, o.loads) for o in job.others),
    )
    files = {PAGE: (built.folder / PAGE).read_bytes()}
    files |= {p.name: p.read_bytes() for p in built.folder.glob("model/*.glb")}
    assert check_page(files, known).faults == ()
    text = files[PAGE].decode()
    assert text.count(old) >= 1, old
    at = text.rindex(old)
    return check_page(
        files | {PAGE: (text[:at] + new + text[at + len(old) :]).encode()}, known
    ).faults


def test_a_fault_in_the_other_option_of_the_page_is_found(larch_hill_two_ways, option_b) -> None:
    b = fingerprint(option_b.job.resolved, option_b.job.assembly)
    for old, new, words in (
        (">1126<", ">1125<", "option B: client/preview.html: leaf A / lite / glass / height"),
        (b, "0" * 64, "whole digest is not that of"),
        ('<template data-option="B">', '<template data-option="C">', "does not have: ['C']"),
        ('id="model-B">Z2xU', 'id="model-B">Z2xV', "option B: "),
    ):
        found = seeded(larch_hill_two_ways, old, new)
        assert any(words in fault for fault in found), (old, found)


def test_a_stop_in_one_option_lets_nothing_be_written(tmp_path) -> None:
    path = written(tmp_path, TWO_WAYS.replace("lite: rest", "lite: 900"))
    for letter in (None, "A", "B"):
        built = build(path, out=tmp_path / "pack", user_house=False, option=letter)
        assert (built.exit_status, built.folder) == (1, None)
    assert not (tmp_path / "pack").exists()


def test_by_hand_at_the_command_line(larch_hill_two_ways, option_b, tmp_path, monkeypatch) -> None:
    """check, cutlist, compare and approve as typed; a pack of one option is not written over another."""
    monkeypatch.chdir(tmp_path)
    shutil.copy(larch_hill_two_ways.job.path, tmp_path)
    run = CliRunner().invoke
    said = run(app, ["check", "design.yaml"])
    assert said.exit_code == 0
    assert "Option B: Safety glass, toughened, 6 thick, 778.5 × 1126" in said.output
    assert "1132" in run(app, ["cutlist", "design.yaml", "--option", "B"]).output
    said = run(app, ["compare", "design.yaml", "design.yaml", "--option", "A", "--option", "B"])
    assert "the dividing rail is gone, it was 90" in said.output
    signing = ["approve", "design.yaml", "--revision", "B", "--by", "Ada", "--date", "2026-11-20"]
    assert "say which of them was signed" in run(app, signing).output
    assert "Revision B, option B, is approved" in run(app, [*signing, "--option", "B"]).output
    said = run(app, ["cutlist", "design.yaml", "--option", "Z"])
    assert said.exit_code == 2
    assert 'no option "Z"' in said.output
    taken = build(
        larch_hill_two_ways.job.path, out=option_b.folder, user_house=False, option="A"
    ).problems
    assert [p.code for p in taken] == ["pack_of_another_design"]
