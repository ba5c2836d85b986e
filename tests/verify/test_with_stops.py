"""A pack of a design with stops read back: what it holds must be right, marked, and no more than that."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from parametric.commands import build, verify
from parametric.pack.verifying.known import Verified
from tests.verify.larch_hill import DESIGN, HOUSE

pytestmark = pytest.mark.kernel

# A cutter that the pull refuses leaves every solid whole; a slot 126 deep in a stile of 120 comes
# through it, and the solid is not the part.
REFUSED = ("cutter: 6}\nfinish", "cutter: 8}\nfinish")
THROUGH = ("slot: 12 x 62 x 46", "slot: 12 x 62 x 126")


def built(folder: Path, change: tuple[str, str]) -> Path:
    text = DESIGN.read_text(encoding="utf-8")
    assert change[0] in text
    (folder / "design.yaml").write_text(text.replace(*change), encoding="utf-8")
    made = build(
        folder / "design.yaml",
        out=folder / "pack",
        house=HOUSE,
        user_house=False,
        with_stops=True,
    )
    assert made.folder == folder / "pack"
    return folder


@pytest.fixture(scope="module")
def refused(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return built(tmp_path_factory.mktemp("refused"), REFUSED)


def found(folder: Path) -> Verified:
    return verify(folder / "pack", folder / "design.yaml", house=HOUSE, user_house=False)


def copied(folder: Path, to: Path) -> Path:
    shutil.copytree(folder, to / "job")
    return to / "job"


def said(verified: Verified) -> str:
    return "\n".join(p.message for p in verified.problems if p.code == "file_disagrees")


def test_what_it_holds_is_right_and_the_stop_is_said_again(refused: Path) -> None:
    verified = found(refused)
    assert set(verified.verdicts) == {"marks", "drawings", "glb", "step", "numbers"}
    assert all(v.looked_at and not v.faults for v in verified.verdicts.values())
    assert [(p.code, p.level) for p in verified.problems] == [("cutter_too_big", "stop")]


def test_a_mark_taken_off(refused: Path, tmp_path: Path) -> None:
    job = copied(refused, tmp_path)
    sheet = next((job / "pack/shop").glob("*.dxf"))
    sheet.write_text(sheet.read_text(encoding="utf-8").replace("NOT FOR MAKING", "FOR MAKING"))
    assert f"shop/{sheet.name}: does not say NOT FOR MAKING" in said(found(job))
    model = next((job / "pack/model").glob("*.step"))
    model.rename(model.with_name("larch-hill.step"))
    assert "model/larch-hill.step: its name does not say NOT-FOR-MAKING" in said(found(job))


@pytest.mark.parametrize("path", ["cnc/leaf-A-front.dxf", "order/glass.csv", "client/page.html"])
def test_a_file_to_make_from(path: str, refused: Path, tmp_path: Path) -> None:
    job = copied(refused, tmp_path)
    target = job / "pack" / path
    target.parent.mkdir(exist_ok=True)
    target.write_text("0\nEOF\n", encoding="utf-8")
    assert f"{path}: the design has stops" in said(found(job))


def test_a_line_of_a_sheet_moved(refused: Path, tmp_path: Path) -> None:
    job = copied(refused, tmp_path)
    sheet = next((job / "pack/shop").glob("*leaves.dxf"))
    text = sheet.read_text(encoding="utf-8")
    assert "\n784.5\n" in text
    sheet.write_text(text.replace("\n784.5\n", "\n785.5\n"), encoding="utf-8")
    assert "785.5" in said(found(job))


def test_a_part_whose_cuts_come_through_is_told_of_and_no_other(tmp_path: Path) -> None:
    """126 - 120 = 6 out of the far edge: the stiles' solids are not their parts, all others are."""
    verified = found(built(tmp_path, THROUGH))
    assert not verified.verdicts["marks"].faults
    assert not verified.verdicts["drawings"].faults
    cautions = [p.message for p in verified.problems if p.code == "shown_as_far_as_it_goes"]
    assert cautions
    assert all(" S1" in text or " S2" in text for text in cautions), cautions
    assert said(verified) == ""


def test_the_pack_of_a_sound_design_is_no_pack_of_one_with_stops(
    refused: Path, tmp_path: Path
) -> None:
    """The same folder against the design as it was before: another state, and nothing more is said."""
    job = copied(refused, tmp_path)
    (job / "design.yaml").write_text(DESIGN.read_text(encoding="utf-8"), encoding="utf-8")
    assert [p.code for p in found(job).problems] == ["pack_of_another_state"]
