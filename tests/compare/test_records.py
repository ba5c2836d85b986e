"""The record of a signature: one of them, every other character as it was, or nothing at all."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from parametric.commands import check
from tests.compare.designs import HOUSE, changed, copied, problem, signed

RECORDS = """\
# what the phone wrote
stilewright: 1
units: mm

accepted:
  fingers between leaves: JM 2026-11-20, told   # on site
cut: [A lock rail]   # both stiles
"""


def record_of(design: Path) -> tuple[str, str, str, str]:
    job = check(design, house=HOUSE, user_house=False)
    assert job.design is not None, job.problems
    approved = job.design.records.approved
    assert approved is not None
    return (approved.revision, approved.fingerprint, approved.by, approved.date)


def test_a_record_where_there_is_none(tmp_path: Path) -> None:
    design = copied(tmp_path)
    made = signed(design)
    assert [path.name for path in made.files] == ["design.records.yaml", "design.approved.json"]
    assert record_of(design) == ("B", made.fingerprint[:8], "client, on the sheet", "2026-11-20")
    assert sorted(path.name for path in tmp_path.iterdir()) == [
        "design.approved.json",
        "design.records.yaml",
        "design.yaml",
    ]


def test_signed_again_there_is_still_one_record(tmp_path: Path) -> None:
    design = copied(tmp_path)
    first = signed(design)
    changed(design, ("- lock rail: 150", "- lock rail: 160"))
    second = signed(design, by="client: by letter # 2", date="2026-12-01")
    assert first.fingerprint != second.fingerprint
    assert problem(design, "not_approved") is None
    assert record_of(design) == ("B", second.fingerprint[:8], "client: by letter # 2", "2026-12-01")
    text = (tmp_path / "design.records.yaml").read_text(encoding="utf-8")
    assert text.count("approved:") == 1
    again = signed(design, by="client: by letter # 2", date="2026-12-01")
    assert again.fingerprint == second.fingerprint
    assert (tmp_path / "design.records.yaml").read_text(encoding="utf-8") == text


@pytest.mark.parametrize("ends", ["\n", "\r\n"])
def test_records_that_are_there_stay(tmp_path: Path, ends: str) -> None:
    """Comments, order and line ends; and a last line without an end is ended first."""
    design = copied(tmp_path)
    records = tmp_path / "design.records.yaml"
    about = next(
        p.about
        for p in check(design, house=HOUSE, user_house=False).problems
        if p.level == "caution"
    )
    before = RECORDS.replace("fingers between leaves", about).rstrip().replace("\n", ends)
    records.write_bytes(before.encode())
    assert check(design, house=HOUSE, user_house=False).exit_status == 0
    assert signed(design).files
    after = records.read_bytes().decode()
    assert after.startswith(before + ends + "approved: {revision: B,")
    assert after.count(ends) == after.count("\n")
    job = check(design, house=HOUSE, user_house=False)
    assert job.design is not None
    assert job.design.records.cut == ("A lock rail",)


def test_a_record_in_the_design_itself_is_written_over(tmp_path: Path) -> None:
    """One in both would be a stop, so the one that is there is the one that is kept."""
    design = copied(tmp_path)
    with design.open("a", encoding="utf-8") as file:
        file.write(
            "approved:          # by hand\n"
            "  revision: A      # the first\n"
            "  fingerprint: 00000000\n"
            "  by: nobody\n"
            "  date: 2026-01-01\n"
        )
    before = design.read_text(encoding="utf-8")
    assert problem(design, "not_approved") is not None
    made = signed(design, by="client")
    assert [path.name for path in made.files] == ["design.yaml", "design.approved.json"]
    assert not (tmp_path / "design.records.yaml").exists()
    after = design.read_text(encoding="utf-8")
    wanted = before
    for old, new in (
        ("revision: A ", "revision: B "),
        ("00000000", made.fingerprint[:8]),
        ("by: nobody", "by: client"),
        ("2026-01-01", "2026-11-20"),
    ):
        wanted = wanted.replace(old, new)
    assert after == wanted
    assert problem(design, "not_approved") is None


@pytest.mark.parametrize(
    ("revision", "by", "date", "code"),
    [
        ("A", "client", "2026-11-20", "not_current"),
        ("C", "client", "2026-11-20", "not_current"),
        ("b", "client", "2026-11-20", "wrong_revision"),
        ("B", "client", "20.11.2026", "not_a_date"),
        ("B", "client", "2026-13-20", "not_a_date"),
        ("B", "  ", "2026-11-20", "nobody"),
        ("B", "client\nand wife", "2026-11-20", "nobody"),
    ],
)
def test_what_is_not_recorded(tmp_path: Path, revision: str, by: str, date: str, code: str) -> None:
    design = copied(tmp_path)
    made = signed(design, revision, by, date)
    assert [p.code for p in made.problems] == [code]
    assert made.files == ()
    assert [path.name for path in tmp_path.iterdir()] == ["design.yaml"]


def test_a_design_without_revisions_may_be_signed_and_is_told(tmp_path: Path) -> None:
    design = copied(tmp_path)
    text = design.read_text(encoding="utf-8")
    design.write_text(text[: text.index("revisions:")], encoding="utf-8")
    made = signed(design)
    assert [p.code for p in made.problems] == ["no_revisions"]
    assert len(made.files) == 2
    assert problem(design, "not_approved") is None


def test_a_folder_that_cannot_be_written(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refuse(*_: object, **__: object) -> None:
        raise PermissionError(13, "Permission denied", str(tmp_path))

    monkeypatch.setattr("parametric.pack.approving.tempfile.mkstemp", refuse)
    made = signed(copied(tmp_path))
    assert [p.code for p in made.problems] == ["not_recorded"]
    assert made.files == ()


def test_figures_that_are_gone_or_of_another_signature(tmp_path: Path) -> None:
    """It is not approved all the same, and the tool says that it cannot tell what moved."""
    design = copied(tmp_path)
    signed(design)
    changed(design, ("- lock rail: 150", "- lock rail: 160"))
    kept = tmp_path / "design.approved.json"
    whole = kept.read_text(encoding="utf-8")
    other = json.loads(whole)
    other["fingerprint"] = "f" * 64
    for content in (None, "", "[]", '{"format": 9}', json.dumps(other)):
        kept.unlink(missing_ok=True)
        if content is not None:
            kept.write_text(content, encoding="utf-8")
        caution = problem(design, "not_approved")
        assert caution is not None
        assert caution.message.endswith("It is not approved.")
        assert "cannot be told" in caution.fix
    kept.write_text(whole, encoding="utf-8")
    caution = problem(design, "not_approved")
    assert caution is not None
    assert caution.message.endswith("the lock rail changed from 150 to 160.")


@pytest.mark.parametrize("written", ["{}", "{}-upper", "{}-dashed", "{}-whole"])
def test_a_fingerprint_is_read_as_sheets_print_it(tmp_path: Path, written: str) -> None:
    design = copied(tmp_path)
    full = signed(design).fingerprint
    eight = full[:8]
    form = {
        "{}": eight,
        "{}-upper": eight.upper(),
        "{}-dashed": f"{eight[:4]}-{eight[4:]}".upper(),
        "{}-whole": full,
    }[written]
    changed(tmp_path / "design.records.yaml", (f"fingerprint: {eight}", f"fingerprint: {form}"))
    assert problem(design, "not_approved") is None


def test_a_fingerprint_of_less_than_eight_digits_signs_nothing(tmp_path: Path) -> None:
    design = copied(tmp_path)
    eight = signed(design).fingerprint[:8]
    changed(tmp_path / "design.records.yaml", (eight, eight[:6]))
    assert problem(design, "not_approved") is not None


def test_the_caution_stands_on_the_line_of_the_record(tmp_path: Path) -> None:
    design = copied(tmp_path)
    signed(design)
    changed(design, ("- lock rail: 150", "- lock rail: 160"))
    caution = problem(design, "not_approved")
    assert caution is not None
    assert caution.level == "caution"
    assert caution.where is not None
    assert (caution.where.file, caution.where.line) == ("design.records.yaml", 4)
