"""What happened to a design: in its own file, or beside it, never in both."""

from __future__ import annotations

from pathlib import Path

from parametric.design.records import Records
from parametric.figures import Where
from tests.design.written_files import PLAIN, loaded

RECORDS = """\
approved: {revision: B, fingerprint: 7C1F-04AB, by: client on the sign-off sheet, date: 2026-11-20}
accepted:
  floor gap uneven: JM 2026-11-20, client told, and content
as built:
  A lite 1 daylight: 784 x 520
  A panel groove: 8.5 x 14
  B lock rail: 149.5
cut: [A stiles, B stiles, A lock rail]
"""


def records_of(folder: Path, design: str) -> Records:
    found = loaded(folder, design)
    assert found.design is not None, [p.message for p in found.problems]
    return found.design.records


def check(records: Records, file: str, first: int) -> None:
    assert records.approved is not None
    assert (records.approved.revision, records.approved.date) == ("B", "2026-11-20")
    (accepted,) = records.accepted
    assert (accepted.caution, accepted.initials, accepted.date) == (
        "floor gap uneven",
        "JM",
        "2026-11-20",
    )
    assert accepted.reason == "client told, and content"
    assert accepted.where == Where(file, first + 2)
    assert records.as_built["A lite 1 daylight"] == (784, 520)
    assert records.as_built["B lock rail"][0].origin == "measured"
    assert records.cut == ("A stiles", "B stiles", "A lock rail")


def test_in_the_design(tmp_path: Path) -> None:
    check(records_of(tmp_path, PLAIN + RECORDS), "design.yaml", PLAIN.count("\n") + 1)


def test_beside_it(tmp_path: Path) -> None:
    (tmp_path / "design.records.yaml").write_text("stilewright: 1\nunits: mm\n" + RECORDS)
    check(records_of(tmp_path, PLAIN), "design.records.yaml", 3)


def test_in_both(tmp_path: Path) -> None:
    (tmp_path / "design.records.yaml").write_text("stilewright: 1\nunits: mm\ncut: [A stiles]\n")
    found = loaded(tmp_path, PLAIN + "cut: [B stiles]\n")
    assert [(p.code, p.where) for p in found.problems] == [
        ("record_twice", Where("design.records.yaml", 3))
    ]
    assert found.design is None


def test_no_choice_stands_among_records(tmp_path: Path) -> None:
    (tmp_path / "design.records.yaml").write_text("stilewright: 1\nunits: mm\nleaf: {stiles: 90}\n")
    found = loaded(tmp_path, PLAIN)
    assert [(p.code, p.where) for p in found.problems] == [
        ("not_a_record", Where("design.records.yaml", 3))
    ]


def test_revisions_in_order(tmp_path: Path) -> None:
    text = "revisions: {A: 2026-11-04 first issue, B: 2026-11-19 lock rail raised}\n"
    found = loaded(tmp_path, PLAIN + text)
    assert found.design is not None
    assert [(r.letter, r.date, r.reason) for r in found.design.revisions] == [
        ("A", "2026-11-04", "first issue"),
        ("B", "2026-11-19", "lock rail raised"),
    ]


def test_a_record_of_another_shape(tmp_path: Path) -> None:
    text = "cut: A stiles\naccepted: all of them\nas built: [784]\nrevisions: B\napproved: yes\n"
    found = loaded(tmp_path, PLAIN + text)
    first = PLAIN.count("\n") + 1
    assert [(p.code, p.where.line) for p in found.problems if p.where] == [
        ("wrong_value", first + at) for at in (0, 1, 2, 3, 4)
    ]
