"""What moved, in names and in the unit of the design; nothing when nothing moved."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from typer.testing import CliRunner

from parametric.cli import app
from parametric.commands import check, compare
from parametric.trade.comparing import Changes, Moved
from parametric.trade.inventory import Inventory, inventory, kept, read_kept
from tests.compare.designs import HOUSE, changed, copied, signed


def inventory_of(path: Path) -> Inventory:
    job = check(path, house=HOUSE, user_house=False)
    assert job.resolved is not None, job.problems
    assert job.assembly is not None
    return inventory(job.resolved, job.assembly, job.loads)


def moved(tmp_path: Path, *changes: tuple[str, str]) -> Changes:
    old, new = copied(tmp_path, name="old.yaml"), copied(tmp_path, *changes, name="new.yaml")
    found = compare(old, new, house=HOUSE, user_house=False).changes
    assert found is not None
    return found


def by_name(changes: Changes) -> dict[str, Moved]:
    return {name: one for one in changes.numbers for name in one.names}


def test_what_is_kept_reads_back_the_same(tmp_path: Path) -> None:
    whole = inventory_of(copied(tmp_path))
    assert read_kept(json.loads(json.dumps(kept(whole)))) == whole


@pytest.mark.parametrize("content", [None, [], {}, {"format": 2}, {"format": 1, "fingerprint": 1}])
def test_what_is_no_inventory(content: Any) -> None:
    with pytest.raises(ValueError, match=r"inventory|format"):
        read_kept(content)


def test_nothing_moves_by_notes_records_rates_and_order(tmp_path: Path) -> None:
    found = moved(
        tmp_path,
        ("  stiles: 120\n", ""),
        ("  thickness: 40\n", "  thickness: 40.0   # said otherwise\n  stiles: 120\n"),
        ("second visit", "third visit"),
    )
    assert found.nothing
    assert found.old == found.new


def test_a_rail_of_10_more(tmp_path: Path) -> None:
    """2102 - 120 - 90 - 160 - 240 - 460 = 1032, of which each of two lites gets 516: 5 less.

    The pane is 516 - 2*3 = 510; the dividing rail's foot is 240 + 460 + 160 + 516 = 1376.
    """
    found = moved(tmp_path, ("- lock rail: 150", "- lock rail: 160"))
    assert found.causes == ("the lock rail changed from 150 to 160",)
    names = by_name(found)
    written = [one for one in found.numbers if one.written]
    assert [one.names for one in written] == [
        ("leaf A / lock rail / height", "leaf B / lock rail / height")
    ]
    for name, old, new in (
        ("leaf A / lite 1 / height", "521", "516"),
        ("leaf A / lite 1 / glass / height", "515", "510"),
        ("leaf B / dividing rail / foot", "1371", "1376"),
        ("leaf A / lock rail / slot / centre", "785", "790"),
    ):
        assert (names[name].old, names[name].new, names[name].unit) == (old, new, "mm"), name
        assert not names[name].written
    assert "leaf A / bottom rail / top" not in names
    sizes = {(p.mark, p.old, p.new) for p in found.parts if p.what == "size"}
    assert ("R3", "784.5 x 150 x 40", "784.5 x 160 x 40") in sizes
    assert ("G1", "778.5 x 515 x 6", "778.5 x 510 x 6") in sizes
    assert {p.mark for p in found.parts if p.what == "cuts"} >= {"S1", "S2", "R3"}
    assert "R4" not in {p.mark for p in found.parts}


def test_the_timber(tmp_path: Path) -> None:
    """No size of the frame follows from it, but every piece is of other wood."""
    found = moved(
        tmp_path, ("timber: tulipwood", "timber: ash"), ("timber tulipwood:", "timber ash:")
    )
    materials = [part for part in found.parts if part.what == "material"]
    assert {(part.old, part.new) for part in materials} == {("tulipwood", "ash")}
    assert any("the material of S1 stile" in cause for cause in found.causes)


def test_words_without_a_number(tmp_path: Path) -> None:
    found = moved(tmp_path, ("colour: lichen", "colour: white"))
    assert [(w.spoken, w.old, w.new) for w in found.words] == [
        ("the finish", "paint lichen", "paint white")
    ]
    assert found.numbers == found.parts == ()
    assert found.causes == ("the finish changed from paint lichen to paint white",)


def test_a_part_too_many_and_marks_that_move(tmp_path: Path) -> None:
    """A third rail between: the marks below it are counted on by one; a leaf has a lite more."""
    lines = "    - dividing rail: 90\n    - lite: equal\n"
    found = moved(tmp_path, (lines, f"{lines}    - rail: 80\n    - lite: equal\n"))
    marks = {(p.old, p.new) for p in found.parts if p.what == "mark"}
    assert ("R3 lock rail", "R4 lock rail") in marks
    assert ("R4 bottom rail", "R5 bottom rail") in marks
    new = {name for p in found.parts if p.what == "new" for name in p.names}
    assert {"leaf A / rail", "leaf B / rail"} <= new
    back = compare(tmp_path / "new.yaml", tmp_path / "old.yaml", house=HOUSE, user_house=False)
    assert back.changes is not None
    gone = {name for p in back.changes.parts if p.what == "gone" for name in p.names}
    assert gone == new
    told = {part.sentence for part in found.parts}
    assert "G1 toughened glass was 4 off and is 6" in told
    assert "R3 rail is new, 2 off" in told
    assert "R3 rail is gone, it was 2 off" in {part.sentence for part in back.changes.parts}


def test_a_hand_that_changes_only_how_a_cut_is_made(tmp_path: Path) -> None:
    found = moved(tmp_path, ("faces: both, cutter: 6", "faces: both, cutter: 5"))
    assert "the cutter of the pull changed from 6 to 5" in found.causes
    assert {p.mark for p in found.parts if p.what == "cuts"} == {"S1"}


def test_a_measured_width(tmp_path: Path) -> None:
    """1829 + 2*50 = 1929 of cover becomes 1933, and a leaf (1933 + 120)/2 = 1026.5."""
    found = moved(tmp_path, ("bottom: 1829", "bottom: 1833"))
    assert found.causes == ("the width bottom changed from 1829 to 1833",)
    assert by_name(found)["leaf A / width"].new == "1026.5"


def test_the_unit_is_that_of_the_second_design(tmp_path: Path) -> None:
    """160 mm is 6.2992 inches, which is no thirty-second; 152.4 mm is 6 exactly."""
    inch = ("units: mm ", "units: inch ")
    text = copied(tmp_path).read_text(encoding="utf-8")
    assert inch[0] in text
    whole = inventory_of(tmp_path / "design.yaml")
    from dataclasses import replace

    from parametric.trade.comparing import compare as side_by_side

    number = whole.numbers["leaf A / lock rail / height"]
    for value, said in ((152.4, "6"), (160.0, "6.2992"), (150.8125, "5-15/16")):
        other = replace(
            whole,
            unit="inch",
            fingerprint="x",
            numbers={**whole.numbers, "leaf A / lock rail / height": replace(number, value=value)},
        )
        one = side_by_side(whole, other).numbers[0]
        assert (one.old, one.new, one.unit) == ("5.9055", said, "inch")
        assert one.sentence == f"the lock rail of leaf A changed from 5.9055 to {said}"


def test_against_the_figures_that_were_signed(tmp_path: Path) -> None:
    design = copied(tmp_path)
    signed(design)
    approved = tmp_path / "design.approved.json"
    found = compare(approved, design, house=HOUSE, user_house=False).changes
    assert found is not None
    assert found.nothing
    changed(design, ("- lock rail: 150", "- lock rail: 160"))
    found = compare(approved, design, house=HOUSE, user_house=False).changes
    assert found is not None
    assert found.causes == ("the lock rail changed from 150 to 160",)


def test_the_command(tmp_path: Path) -> None:
    old, new = copied(tmp_path, name="old.yaml"), copied(tmp_path, name="new.yaml")
    runner = CliRunner()
    words = ["compare", str(old), str(new), "--house", str(HOUSE)]
    run = runner.invoke(app, words)
    assert (run.exit_code, run.output) == (0, "Nothing moved.\n")
    run = runner.invoke(app, [*words, "--json"])
    content = json.loads(run.output)
    assert content["words"] == content["figures"] == content["parts"] == []
    changed(new, ("- lock rail: 150", "- lock rail: 160"))
    run = runner.invoke(app, words)
    assert run.output.startswith(
        "Changed\n  the lock rail changed from 150 to 160\nFollows from it\n"
    )
    content = json.loads(runner.invoke(app, [*words, "--json"]).output)
    first = content["figures"][0]
    assert first["names"] == ["leaf A / lock rail / height", "leaf B / lock rail / height"]
    assert (first["old"], first["new"], first["unit"], first["written"]) == (
        "150",
        "160",
        "mm",
        True,
    )


@pytest.mark.parametrize("name", ["nowhere.yaml", "nowhere.json", "list.json", "words.yaml"])
def test_what_cannot_be_compared(tmp_path: Path, name: str) -> None:
    (tmp_path / "list.json").write_text("[]", encoding="utf-8")
    (tmp_path / "words.yaml").write_text("leaf\n", encoding="utf-8")
    design = copied(tmp_path)
    run = CliRunner().invoke(
        app, ["compare", str(tmp_path / name), str(design), "--house", str(HOUSE)]
    )
    assert run.exit_code == 2, run.output
    assert "stop" in run.output
    assert run.exception is None or isinstance(run.exception, SystemExit)


def test_the_approve_command(tmp_path: Path) -> None:
    design = copied(tmp_path)
    runner = CliRunner()
    words = ["approve", str(design), "--house", str(HOUSE), "--revision", "B", "--by", "client"]
    run = runner.invoke(app, [*words, "--date", "2026-11-20"])
    assert run.exit_code == 0, run.output
    assert "Revision B is approved as" in run.output
    run = runner.invoke(app, [*words, "--date", "2026-11-20", "--json"])
    content = json.loads(run.output)
    assert len(content["fingerprint"]) == 64
    assert [Path(file).name for file in content["files"]] == [
        "design.records.yaml",
        "design.approved.json",
    ]
    run = runner.invoke(app, [*words, "--date", "yesterday"])
    assert run.exit_code == 2
    assert "Nothing was recorded." in run.output
    assert runner.invoke(app, words).exit_code == 2  # no clock: the date must be said
