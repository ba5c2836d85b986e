"""A pack on disk verified by the command, and a build that refuses to place a faulty one."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

import pytest
from typer.testing import CliRunner

from parametric.cli import app
from parametric.commands import build, verify
from parametric.job import Built
from parametric.pack import contents as pack_contents
from parametric.pack.verifying.pack import FaultyPackError
from parametric.writers.dxf import write_cnc_dxf
from tests.verify.larch_hill import DESIGN, HOUSE

pytestmark = pytest.mark.kernel


@pytest.fixture(scope="module")
def built(larch_hill: Built) -> Path:
    assert larch_hill.folder is not None
    return larch_hill.folder


@pytest.fixture
def pack(built: Path, tmp_path: Path) -> Path:
    return Path(shutil.copytree(built, tmp_path / "pack"))


def codes(pack: Path, design: Path = DESIGN) -> list[str]:
    return [p.code for p in verify(pack, design, house=HOUSE, user_house=False).problems]


def test_a_pack_says_what_was_looked_at(built: Path) -> None:
    """G1: 40 slots, 4 stopped grooves and 4 through ones a pair, 8 pockets in four leaf files.

    As part types: 5 slots in each of two stiles, 1+1+1+2 at each end of the rails, a groove in
    each stile and in two rails, and 8 pockets: 10 + 10 + 4 + 8 = 32 outlines in 16 files.
    """
    numbers = json.loads((built / "numbers.json").read_text(encoding="utf-8"))
    verdicts = numbers["verification"]
    assert verdicts["cnc"]["files"] == 16
    assert verdicts["cnc"]["outlines"] == 32
    for name in ("cnc", "drawings", "glb", "step", "lists", "page"):
        assert verdicts[name]["faults"] == [], name
    assert verdicts["glb"]["parts"] == 84
    assert codes(built) == []


def test_all_comparisons_run(built: Path) -> None:
    found = verify(built, DESIGN, house=HOUSE, user_house=False)
    assert set(found.verdicts) == {"cnc", "drawings", "glb", "step", "lists", "page", "numbers"}
    assert all(verdict.looked_at for verdict in found.verdicts.values())


def test_a_changed_file(pack: Path) -> None:
    path = pack / "cnc/leaf-A-front.dxf"
    path.write_text(path.read_text().replace("pocket_d14.2", "pocket_d13.2"))
    found = verify(pack, DESIGN, house=HOUSE, user_house=False).problems
    assert "pack_changed" in {p.code for p in found}
    messages = [p.message for p in found if p.code == "file_disagrees"]
    assert any("lies 14.2 deep, and its name says 13.2" in m for m in messages)


@pytest.mark.parametrize(
    ("was", "now", "fault"),
    [
        ('data-figure="clear way">852<', 'data-figure="clear way">853<', "the page says 853"),
        ('data-figure="clear way"', 'data-figure="clear wey"', "no such number"),
        ('data-figure="clear way">852<', 'data-figure="clear way">wide<', "cannot be read"),
        ('"fingerprint":"', '"fingerprint":"0', "whole digest"),
        ("<main id", '<img src="https://example.org/x.png"><main id', "would load"),
    ],
)
def test_a_page_that_says_or_asks_something_else(
    pack: Path, was: str, now: str, fault: str
) -> None:
    page = pack / "client/preview.html"
    text = page.read_text(encoding="utf-8")
    assert was in text
    page.write_text(text.replace(was, now, 1), encoding="utf-8")
    problems = verify(pack, DESIGN, house=HOUSE, user_house=False).problems
    found = [p.message for p in problems if p.code == "file_disagrees"]
    assert any(fault in line for line in found), found


def test_a_page_of_another_model(pack: Path) -> None:
    page = pack / "client/preview.html"
    text = page.read_text(encoding="utf-8")
    page.write_text(text.replace("Z2xURg", "Z2xURh", 1), encoding="utf-8")
    found = verify(pack, DESIGN, house=HOUSE, user_house=False).problems
    assert any("does not hold the model of the pack" in p.message for p in found)
    page.unlink()
    found = verify(pack, DESIGN, house=HOUSE, user_house=False).problems
    assert any("client/preview.html is missing" in p.message for p in found)


def test_a_missing_file(pack: Path) -> None:
    (pack / "cnc/R3-lock-rail-lower-edge.dxf").unlink()
    found = verify(pack, DESIGN, house=HOUSE, user_house=False).problems
    said = " ".join(p.message for p in found)
    assert "R3-lock-rail-lower-edge.dxf is gone since the pack was built" in said
    assert "R3: no file cuts its lower edge (1 cuts)" in said


def test_a_persons_own_file_is_no_fault(pack: Path) -> None:
    (pack / "shop/note to self.txt").write_text("order more tape", encoding="utf-8")
    assert codes(pack) == []


def test_a_pack_of_another_state(pack: Path, tmp_path: Path) -> None:
    design = tmp_path / "design.yaml"
    text = DESIGN.read_text(encoding="utf-8")
    design.write_text(text.replace("- lock rail: 150", "- lock rail: 160"), encoding="utf-8")
    assert codes(pack, design) == ["pack_of_another_state"]


def test_a_design_with_stops_and_a_folder_that_is_no_pack(pack: Path, tmp_path: Path) -> None:
    design = tmp_path / "design.yaml"
    text = DESIGN.read_text(encoding="utf-8")
    design.write_text(
        text.replace("stlies", "").replace("stiles: 120", "stlies: 120"), encoding="utf-8"
    )
    assert "unknown_key" in codes(pack, design)
    assert codes(tmp_path) == ["not_a_pack"]
    assert codes(tmp_path / "nowhere") == ["not_a_pack"]


def test_the_command(pack: Path) -> None:
    runner = CliRunner()
    words = ["verify", str(pack), str(DESIGN), "--house", str(HOUSE)]
    run = runner.invoke(app, words)
    assert run.exit_code == 0, run.output
    assert "The pack agrees with the design." in run.output
    run = runner.invoke(app, [*words, "--json"])
    assert json.loads(run.output)["verification"]["cnc"]["faults"] == []
    path = pack / "order/cut-list.csv"
    path.write_text(path.read_text().replace("R3,lock rail,2", "R3,lock rail,3"))
    run = runner.invoke(app, words)
    assert run.exit_code == 1
    assert "order/cut-list.csv: R3: 3 off are listed, there are 2." in run.output
    assert "Make nothing from this pack." in run.output


def test_build_refuses_to_place_what_does_not_agree(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """A writer with a fault: every machine file says inches."""

    def faulty(*arguments: object) -> bytes:
        written: bytes = write_cnc_dxf(*arguments)  # type: ignore[arg-type]
        return written.replace(b"$INSUNITS\n 70\n4\n", b"$INSUNITS\n 70\n1\n")

    monkeypatch.setattr(pack_contents, "write_cnc_dxf", faulty)
    folder = tmp_path / "pack"
    with pytest.raises(FaultyPackError) as refused:
        build(DESIGN, out=folder, house=HOUSE, user_house=False)
    assert len(refused.value.faults) == 16
    assert "the header's unit is 1, not 4 (mm)" in str(refused.value)
    assert not folder.exists()
