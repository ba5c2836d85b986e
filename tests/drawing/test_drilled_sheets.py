"""Bored boards as drawn: a row has its words, its first hole and its line, and no number a hole.

The boards of `tests.verify.bored`, drawn with the title and in the unit of a brief.
"""

from __future__ import annotations

import itertools
from functools import cache
from pathlib import Path

import pytest

from parametric.cnc.setups import set_ups
from parametric.drawing.audit import audit
from parametric.drawing.bench.bore_sheet import bore_sheet
from parametric.drawing.bench.saying import numbers, printed_on
from parametric.drawing.bench.set_up import draw_set_up
from parametric.drawing.dimensions import Dimension
from parametric.drawing.machine.pages import draw_machine_pages
from parametric.drawing.part_sheets.drilled_rows import row_words
from parametric.drawing.part_sheets.long_part import draw_long_part
from parametric.drawing.primitives import Arc, Label
from parametric.drawing.sheet import Sheet, TitleBlock, primitives
from parametric.drawing.subject import Subject, subject
from parametric.job import check
from parametric.model import Drilled
from parametric.pack.machine_pictures import machine_work
from parametric.trade.milling import milling_list
from parametric.trade.part_cuts import part_cuts
from parametric.trade.printed import printed
from tests.drawing.sheets import ROOT
from tests.verify.bored import assembly

DESIGNS = {
    "mm": ROOT / "examples/larch-hill-reading-room/design.yaml",
    "inch": ROOT / "examples/mill-lane-study/design.yaml",
}
LETTERS = tuple("ABCDEFGH")


@cache
def job(unit: str) -> Subject:
    checked = check(Path(DESIGNS[unit]), user_house=False)
    assert checked.resolved is not None
    return subject(checked.resolved, assembly(), checked.loads, checked.problems)


def title(unit: str) -> TitleBlock:
    return TitleBlock(
        owner="a workshop",
        document="",
        title="boards",
        second_line="",
        drawn="a hand",
        approved="",
        date="2026-01-01",
        scale="",
        sizes=unit,
        number="X-1",
        revision="A",
        fingerprint="0123-4567",
    )


@cache
def part_sheet(unit: str, mark: str) -> Sheet:
    every = part_cuts(assembly())
    own = next(one for one in every if one.part.mark == mark)
    return draw_long_part(job(unit), own, every, LETTERS, title(unit))[0]


def texts(sheet: Sheet) -> list[str]:
    return [p.text for e in sheet.elements for p in primitives(e) if isinstance(p, Label)]


@pytest.mark.parametrize("unit", DESIGNS)
@pytest.mark.parametrize("mark", ["C1", "C2"])
def test_the_sheets_of_bored_parts_are_clean(unit: str, mark: str) -> None:
    assert audit(part_sheet(unit, mark)) == ()


@pytest.mark.parametrize("unit", DESIGNS)
def test_the_pages_of_the_machine_are_clean(unit: str) -> None:
    own = job(unit)
    work = machine_work(assembly(), set_ups(assembly()), printed(own.resolved).fine)
    sheets = draw_machine_pages(own, work, title(unit))
    assert len(sheets) == 6  # five files and the work by hand
    assert [finding for sheet in sheets for finding in audit(sheet)] == []


@pytest.mark.parametrize("unit", DESIGNS)
def test_the_set_ups_of_the_bench_are_clean(unit: str) -> None:
    own = job(unit)
    for setting in milling_list(assembly()):
        sheet, left = draw_set_up(
            own, title(unit), setting.code, bore_sheet(own, numbers(own), setting)
        )
        assert (audit(sheet), left) == ((), ()), setting.title
        figures = {one.name for one in printed_on(sheet)}
        assert setting.depth is not None
        assert {setting.depth.name, setting.fence[0].name} <= figures


def test_a_row_is_written_once() -> None:
    found = texts(part_sheet("mm", "C1"))
    assert found.count("12 × 5 dia, 13 deep, at 32") == 1
    assert found.count("11 × 5 dia, 13 deep, at 32") == 1
    assert found.count("3 × 4.5 dia, through, at 71") == 1
    inches = texts(part_sheet("inch", "C1"))
    # 5 mm is 3/16 and 13 is 1/2, to the nearest 1/64 or so that the job prints; 32 is 1-1/4
    assert any(text.startswith("12 × ") and text.endswith("at 1-1/4") for text in inches)


def test_a_row_is_measured_by_its_first_hole_and_its_line() -> None:
    """101 under the face; 37 and 261 up from its low edge; no number for the second hole at 133."""
    sheet = part_sheet("mm", "C1")
    dims = {e.text for e in sheet.elements if isinstance(e, Dimension)}
    assert {"37", "261"} <= dims
    found = texts(sheet)
    assert "101" in found
    assert "133" not in found


def test_every_hole_is_drawn() -> None:
    """12 + 11 + 2 + 1 on the face, 3 x 2 + 1 on the back, 5 in the edge, 4 in the end."""
    sheet = part_sheet("mm", "C1")
    circles = [e for e in sheet.elements if isinstance(e, Arc) and e.end - e.start == 360]
    assert len(circles) == 12 + 11 + 2 + 1 + 3 * 2 + 1 + 5 + 4


def test_machine_pages_number_a_row_once() -> None:
    own = job("mm")
    work = machine_work(assembly(), set_ups(assembly()), printed(own.resolved).fine)
    face = next(s for s in work.set_ups if s.file == "C1-side-high-face.dxf")
    assert len(face.cuts) == 4
    rows = {len(cut.others) + 1: cut for cut in face.cuts}
    twelve = rows[12]
    assert twelve.middles is not None
    xs, ys = ([float(f) for f in places] for places in twelve.middles)
    assert xs == pytest.approx([101, 101 + 11 * 32])
    assert ys == pytest.approx([37])
    notes = {tool.layer: tool.note for tool in face.tools}
    assert notes["bore_d13"] == "cut 2: 12 × 5 dia at 32; cut 3: 11 × 5 dia at 32"


def test_words_of_a_row() -> None:
    rules = job("mm").rules
    rows = [row for own in part_cuts(assembly()) for row in own.rows]
    several = [row for row in rows if isinstance(row.cut, Drilled) and row.cut.count > 1]
    said = [row_words(row, rules) for row in several]
    assert "5 × 8 dia, 21 deep, at 96" in said
    assert len(set(itertools.chain(said))) == 8
