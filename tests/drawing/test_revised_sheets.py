"""Revisions on every sheet; and what a sheet says of a design that was changed once signed."""

from __future__ import annotations

import dataclasses
import re
import shutil
import subprocess
from functools import cache
from pathlib import Path

import pytest

from parametric.commands import approve, check
from parametric.drawing import Drawings, draw
from parametric.drawing.audit import audit
from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.draft import Draft
from parametric.drawing.frame import draw_frame, title_block_box
from parametric.drawing.papers import A3
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.revised import moved_words
from parametric.drawing.sheet import Revision, Sheet, primitives
from parametric.job import Job
from parametric.trade.comparing import Changes, Moved
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.paperwork import paperwork
from parametric.writers.pdf import write_pdf
from tests.drawing.sheets import LARCH_HILL, larch_hill
from tests.drawing.test_chains import TITLE


def texts(sheet: Sheet) -> list[str]:
    return [p.text for e in sheet.elements for p in primitives(e) if isinstance(p, Label)]


# The table of revisions -----------------------------------------------------------------------


def block(count: int, **more: object) -> tuple[Sheet, float]:
    """A sheet with nothing on it but its title block, and how high that is."""
    revisions = tuple(
        Revision(letter=letter, change=f"change {letter}", date="2026-11-20", by="N. Pell")
        for letter in "ABCDEF"[:count]
    )
    title = dataclasses.replace(TITLE, revision="F", revisions=revisions, **more)  # type: ignore[arg-type]
    draft = Draft(A3)
    draw_frame(draft, title)
    return draft.sheet(title), title_block_box(A3, title).height


def test_the_table_stands_on_the_block_newest_next_to_it() -> None:
    """Rows of 5: heading and two revisions take 15 over the 42 of the block."""
    bare, low = block(0)
    sheet, high = block(2)
    assert high - low == 15.0
    assert audit(sheet) == ()
    at = {p.text: p.at[1] for e in sheet.elements for p in primitives(e) if isinstance(p, Label)}
    assert at["Change"] > at["change A"] > at["change B"] > A3.frame.y0 + low
    assert "Change" in texts(sheet)
    assert "Change" not in texts(bare)


def test_the_last_four_stand_there_and_the_heading_says_so() -> None:
    sheet, _ = block(6)
    words = texts(sheet)
    assert [w for w in words if w.startswith("change ")] == [f"change {c}" for c in "CDEF"]
    assert "Change; the last 4" in words
    assert audit(sheet) == ()


def test_a_long_reason_runs_on_in_its_row() -> None:
    reason = (
        "the lock rail is higher, since the client found the pull of the sample too low to reach"
    )
    long = Revision(letter="A", change=reason, date="2026-11-20", by="N. Pell")
    title = dataclasses.replace(TITLE, revision="A", revisions=(long,))
    draft = Draft(A3)
    draw_frame(draft, title)
    sheet = draft.sheet(title)
    assert audit(sheet) == ()
    assert reason in " ".join(texts(sheet))


def test_every_drawing_has_the_newest_and_the_first_has_them_all() -> None:
    """Larch Hill: A first issue; B site trim 15 after the second visit."""
    doors = larch_hill().sets[0].sheets
    for sheet in doors:
        assert "site trim 15 after the second visit" in texts(sheet), sheet.name
        if not any(w == "first issue" for w in texts(sheet)):
            assert any(w.startswith("Change; earlier ones") for w in texts(sheet)), sheet.name
    first = " ".join(texts(doors[0]))
    assert "A, 2026-11-04, first issue" in first or "first issue" in texts(doors[0])


# Changed since it was signed ------------------------------------------------------------------


@pytest.fixture(scope="module")
def changed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Larch Hill signed as revision B, its lock rail then made 160."""
    path = tmp_path_factory.mktemp("signed") / "design.yaml"
    shutil.copy(LARCH_HILL, path)
    signed = approve(path, revision="B", by="R. Quern", date="2026-11-20", user_house=False)
    assert signed.problems == ()
    text = path.read_text(encoding="utf-8")
    assert "- lock rail: 150" in text
    path.write_text(text.replace("- lock rail: 150", "- lock rail: 160"), encoding="utf-8")
    return path


@cache
def job_of(path: Path) -> Job:
    return check(path, user_house=False)


@cache
def drawings_of(path: Path) -> Drawings:
    job = job_of(path)
    assert job.resolved is not None
    assert job.assembly is not None
    return draw(
        job.resolved,
        job.assembly,
        job.loads,
        job.problems,
        mark=mark(fingerprint(job.resolved, job.assembly)),
        paper=paperwork(job.resolved, job.assembly, job.loads),
        moved=job.moved,
        revised=job.revised,
    )


def pages(sheets: tuple[Sheet, ...], folder: Path) -> list[str]:
    path = folder / "sheets.pdf"
    path.write_bytes(write_pdf(sheets))
    text = subprocess.run(
        ["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True, check=True
    ).stdout
    return text.split("\f")[: len(sheets)]


def test_every_page_says_not_approved_and_names_what_moved(changed: Path, tmp_path: Path) -> None:
    """Read off the PDF of every set: from 150 to 160."""
    for own in drawings_of(changed).sets:
        if all(sheet.paper.name in ("story stick", "template") for sheet in own.sheets):
            continue
        for sheet, page in zip(own.sheets, pages(own.sheets, tmp_path), strict=True):
            words = " ".join(page.split())
            assert "NOT APPROVED" in words, sheet.name
            assert "lock rail" in words, sheet.name
            assert re.search(r"from 150 to\s+160|changed from 150 to 160", words), sheet.name


def test_what_is_signed_says_nothing_of_it(changed: Path, tmp_path: Path) -> None:
    path = tmp_path / "design.yaml"
    shutil.copytree(changed.parent, tmp_path, dirs_exist_ok=True)
    shutil.copy(LARCH_HILL, path)
    drawings = drawings_of(path)
    assert not any("NOT APPROVED" in texts(sheet) for sheet in drawings.sheets)
    assert "R. Quern" in texts(drawings.sheets[0])


def test_the_audit_stays_clean_and_the_scale_as_it_was(changed: Path) -> None:
    """The stamp stands in the block: no drawing gives way to it."""
    drawings = drawings_of(changed)
    assert [str(f) for f in drawings.findings] == []
    assert [s.title.scale for s in drawings.sets[0].sheets[:2]] == ["1:10", "1:10"]


def triangles(sheet: Sheet) -> list[tuple[float, float]]:
    """The middles of the triangles that are not beside a line of a list."""
    return [
        (sum(x for x, _ in e.points) / 3, sum(y for _, y in e.points) / 3)
        for e in sheet.elements
        if isinstance(e, Stroke) and e.layer == "warning" and e.view
    ]


def test_every_value_that_moved_wears_a_triangle_and_no_other(changed: Path) -> None:
    """150 to 160 takes 10 off the two lites, 521 to 516, and shifts 850, 1371, 1461 up and down.

    700 + 160 = 860; 860 + 516 = 1376; 1376 + 90 = 1466. The 1982 and the 2102 stay.
    """
    moved = job_of(changed).moved
    assert moved is not None
    names = {name for move in moved.numbers for name in move.names}
    leaves = drawings_of(changed).sets[0].sheets[1]
    sized = [e for e in leaves.elements if isinstance(e, (Dimension, Ordinate))]
    wanted = [e for e in sized if e.figure in names]
    assert {e.text for e in wanted} == {"160", "516", "860", "1376", "1466"}
    marks = triangles(leaves)
    assert len(marks) == len(wanted) == 6
    for e in sized:
        x, y = e.label.box.centre
        near = min(abs(x - mx) + abs(y - my) for mx, my in marks)
        if e.figure in names:
            assert near < 9.0, e.text


def test_a_letter_of_its_own_stands_in_the_triangle(changed: Path, tmp_path: Path) -> None:
    """A new revision C wears its letter; without one the mark is "!", for B is what was signed."""
    shutil.copytree(changed.parent, tmp_path, dirs_exist_ok=True)
    path = tmp_path / "design.yaml"
    text = path.read_text(encoding="utf-8")
    line = "  B: 2026-11-19 site trim 15 after the second visit\n"
    assert line in text
    path.write_text(text.replace(line, f"{line}  C: 2026-11-25 lock rail 160\n"), encoding="utf-8")
    for design, letter in ((path, "C"), (changed, "!")):
        leaves = drawings_of(design).sets[0].sheets[1]
        inside = [
            p.text
            for e in leaves.elements
            for p in primitives(e)
            if isinstance(p, Label) and p.layer == "warning" and p.view
        ]
        assert set(inside) == {letter}


def test_a_revision_that_is_signed_keeps_its_letters(changed: Path, tmp_path: Path) -> None:
    """B signed, the rail made 160, C written and signed: C stands at what it moved, nothing else."""
    shutil.copytree(changed.parent, tmp_path, dirs_exist_ok=True)
    path = tmp_path / "design.yaml"
    text = path.read_text(encoding="utf-8")
    line = "  B: 2026-11-19 site trim 15 after the second visit\n"
    path.write_text(text.replace(line, f"{line}  C: 2026-11-25 lock rail 160\n"), encoding="utf-8")
    assert not approve(
        path, revision="C", by="R. Quern", date="2026-11-26", user_house=False
    ).problems
    leaves = drawings_of(path).sets[0].sheets[1]
    assert "NOT APPROVED" not in texts(leaves)
    assert len(triangles(leaves)) == 6
    again = approve(path, revision="C", by="R. Quern", date="2026-11-27", user_house=False)
    assert not again.problems
    assert check(path, user_house=False).revised == job_of(path).revised != frozenset()


def test_figures_that_were_not_kept(changed: Path, tmp_path: Path) -> None:
    shutil.copytree(changed.parent, tmp_path, dirs_exist_ok=True)
    (tmp_path / "design.approved.json").unlink()
    drawings = drawings_of(tmp_path / "design.yaml")
    for sheet in drawings.sets[0].sheets:
        assert "NOT APPROVED" in texts(sheet)
        assert "its figures were not kept" in " ".join(texts(sheet))


def several(count: int) -> Changes:
    numbers = tuple(
        Moved(names=(f"n{i}",), spoken=f"the size {i}", old="1", new="2", unit="mm", written=True)
        for i in range(count)
    )
    return Changes(old="a", new="b", words=(), numbers=numbers, parts=())


def test_many_are_counted_and_the_first_sheet_says_which() -> None:
    assert (
        moved_words("B", several(1), "sheet 1")
        == "since revision B: the size 0 changed from 1 to 2"
    )
    assert moved_words("B", several(3), "sheet 1") == "3 values moved since revision B: see sheet 1"


def test_the_first_sheet_says_which_of_many(tmp_path: Path) -> None:
    """Two lines of the design changed: each value from what to what, on the arrangement."""
    path = tmp_path / "design.yaml"
    shutil.copy(LARCH_HILL, path)
    approve(path, revision="B", by="R. Quern", date="2026-11-20", user_house=False)
    text = path.read_text(encoding="utf-8")
    for old, new in (("- lock rail: 150", "- lock rail: 160"), ("stiles: 120", "stiles: 125")):
        assert old in text
        text = text.replace(old, new, 1)
    path.write_text(text, encoding="utf-8")
    first, second = drawings_of(path).sets[0].sheets[:2]
    words = " ".join(texts(first))
    assert "Changed since revision B was approved" in words
    assert "The lock rail changed from 150 to 160." in words
    assert "from 120 to 125" in words
    assert "values moved since revision B: see sheet LH-07-D 1" in " ".join(texts(second))
    assert [str(f) for f in drawings_of(path).findings] == []
