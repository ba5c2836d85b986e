"""One size for every board: cut list, cutting plan as it is printed, sheets, labels, edge band, solids.

The plan is read from its PDF by pdfium, which knows nothing of what drew it.
"""

from __future__ import annotations

import re
from collections import Counter
from functools import cache
from pathlib import Path

import pypdfium2
import pytest
from cadquery import Shape

from parametric.drawing import Drawings, draw
from parametric.job import Job, check
from parametric.model import Mitre, Part, Trim
from parametric.solids.solid_set import build_solids
from parametric.trade.cutlist import CutRow, cut_list, of_sheets
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.stock.blanks import SheetPiece, in_order
from parametric.trade.stock.sheet_plan import SheetStock
from parametric.trade.tables import cut_table
from parametric.writers.pdf import write_pdf
from tests.stock.replay import faults_of_sheets

ROOT = Path(__file__).parents[2]
HOUSE = ROOT / "examples/house.yaml"
DESIGNS = (
    "examples/fen-road-wardrobe/design.yaml",
    "examples/quarry-street-alcove/design.yaml",
    "templates/vanity.yaml",
    "templates/base cupboard.yaml",
    "templates/media unit.yaml",
)
_SIZE = r"[\d][\d./-]*"


@cache
def job_of(design: str) -> tuple[Job, Paperwork, Drawings]:
    path = ROOT / design
    job = check(path, house=HOUSE if design.startswith("examples") else None, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    drawn = draw(job.resolved, job.assembly, job.loads, job.problems, mark="0000-0000", paper=paper)
    return job, paper, drawn


def pages(drawn: Drawings, file: str) -> list[str]:
    """What stands on every page of a set, as a reader of PDF finds it."""
    sheets = next(own.sheets for own in drawn.sets if own.file == file)
    pdf = pypdfium2.PdfDocument(write_pdf(sheets))
    return [" ".join(page.get_textpage().get_text_range().split()) for page in pdf]


def listed(job: Job) -> dict[str, tuple[str, str, str]]:
    """Every board of the cut list as that is printed: length, width, thickness."""
    assert job.resolved is not None
    assert job.assembly is not None
    rows = of_sheets(cut_list(job.assembly))
    table = cut_table(rows, job.resolved.design.unit, job.resolved.shop)
    return {row[0]: (row[3], row[4], row[5]) for row in table.rows}


def rows_of(job: Job) -> dict[str, CutRow]:
    assert job.assembly is not None
    return {row.mark: row for row in of_sheets(cut_list(job.assembly))}


@pytest.mark.parametrize("design", DESIGNS)
def test_the_plan_prints_the_sizes_and_numbers_of_the_cut_list(design: str) -> None:
    job, _, drawn = job_of(design)
    rows, sizes = rows_of(job), listed(job)
    made: Counter[str] = Counter()
    seen: set[str] = set()
    for text in pages(drawn, "shop/cutting-plan"):
        alike = int(found[1]) if (found := re.search(r"(\d+) cut alike", text)) else 1
        told = re.search(r"Gives (.*?)\.(?: |$)", text)
        for count, mark in re.findall(r"(\d+) ([A-Z]\d+) ", f"{told[1]} " if told else ""):
            made[mark] += int(count) * alike
        for mark, long, wide in re.findall(rf"\b([A-Z]\d+) ({_SIZE}) × ({_SIZE})", text):
            assert (long, wide) == sizes[mark][:2], (mark, long, wide, sizes[mark])
            seen.add(mark)
    assert made == {mark: row.number for mark, row in rows.items()}
    # what is too small for its size to stand in it has it in the list of cuts
    assert len(seen) > len(rows) / 2


@pytest.mark.parametrize("design", DESIGNS)
def test_the_saw_s_own_sizes_are_those_of_the_solids(design: str) -> None:
    job, paper, _ = job_of(design)
    assert job.resolved is not None
    for lot in paper.boards:
        matched = [one for blank in lot.matched for one in in_order(blank.piece.rows)]
        known = {one.mark for one in matched}
        pieces = [
            SheetPiece(mark=r.mark, length=float(r.length), width=float(r.width), count=r.number)
            for r in lot.pieces
            if r.mark not in known
        ]
        off = float(lot.trim)
        sheet = SheetStock(length=float(lot.sheet_length), width=float(lot.sheet_width), trim=off)
        # offcuts are none here; every piece comes out as large as its row, its trim and kerf taken
        turned = [
            SheetPiece(mark=p.mark, length=p.length, width=p.width, count=p.count, turns=True)
            for p in (*pieces, *matched)
        ]
        assert faults_of_sheets(lot.plan, turned, sheet, (), float(lot.kerf)) == []


@pytest.mark.parametrize("design", DESIGNS)
def test_sheets_and_labels_say_the_sizes_of_the_cut_list(design: str) -> None:
    job, _, drawn = job_of(design)
    sizes = listed(job)
    drawings, labels = pages(drawn, "shop/drawings"), pages(drawn, "shop/labels")
    found: set[str] = set()
    for text in drawings:
        parts = re.findall(r"Parts? ((?:[A-Z]\d+(?:, )?)+)", text)
        blanks = re.findall(rf"Blank ({_SIZE}) × ({_SIZE}) × ({_SIZE}),", text)
        for mark in (m for own in parts[:1] for m in own.split(", ") if m in sizes):
            assert sizes[mark] in blanks, (mark, sizes[mark], blanks)
            found.add(mark)
        # lists of plain boards and of leaves; of a case's boards
        for between in (" ", " × "):
            size = between.join([f"({_SIZE})"] * 3)
            for mark, *own in re.findall(rf"\b([CXWYP]\d+) [a-z][a-z ,]*? \d+ {size}(?= )", text):
                if mark in sizes:
                    assert tuple(own) == sizes[mark], (mark, own, sizes[mark])
                    found.add(mark)
    assert found == set(sizes), set(sizes) - found
    text = " ".join(labels)
    for mark, size in sizes.items():
        assert f"{mark}-1" in text
        assert " × ".join(size) in text, (mark, size)


@pytest.mark.parametrize("design", DESIGNS)
def test_edge_band_runs_as_long_as_the_edges_that_are_sawn(design: str) -> None:
    job, paper, _ = job_of(design)
    assert job.assembly is not None
    rows = rows_of(job)
    banded = [part for part in job.assembly.parts if part.banded and not part.supplied]
    assert banded
    wanted = sum(
        float(part.blank.length if face.endswith("edge") else part.blank.width)
        for part in banded
        for face in part.banded
    )
    assert sum(float(one.net) for one in paper.edge_bands) == pytest.approx(wanted / 1000)
    for band in paper.edge_bands:
        for edge in band.edges:
            row = rows[edge.mark]
            assert float(edge.length) in (pytest.approx(row.length), pytest.approx(row.width))
            assert edge.number == row.number
            # nothing is taken off for it or added: a board is sawn to the size it is listed at
            assert float(row.thickness) == pytest.approx(float(band.thickness))


@pytest.mark.parametrize("design", DESIGNS[:2])
def test_the_solids_are_as_large_as_what_is_sawn(design: str) -> None:
    job, _, _ = job_of(design)
    assert job.assembly is not None
    rows = rows_of(job)
    boards = [part for part in job.assembly.parts if part.mark in rows]
    solids = build_solids(tuple(boards), None)
    looked = 0
    for part in boards:
        if _comes_smaller(part):
            continue
        box = Shape.cast(solids.of(part)).BoundingBox(1e-7)
        row = rows[part.mark]
        assert sorted((box.xlen, box.ylen, box.zlen)) == pytest.approx(
            sorted((float(row.length), float(row.width), float(row.thickness))), abs=1e-4
        ), part.name
        looked += 1
    assert looked > len(boards) * 0.7


def _comes_smaller(part: Part) -> bool:
    """What is trimmed, mitred or scribed in its turn is sawn larger than it ends."""
    return any(isinstance(cut, (Trim, Mitre)) or cut.making.when == "on site" for cut in part.cuts)
