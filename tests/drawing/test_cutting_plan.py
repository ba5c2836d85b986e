"""The pages of the cutting plan: clean under the audit, and everything of the plan on them."""

from __future__ import annotations

import functools
from pathlib import Path
from typing import NamedTuple

import pytest

from parametric.drawing.audit import audit
from parametric.drawing.drawings import SheetSet, draw
from parametric.drawing.primitives import Circle, Label
from parametric.drawing.sheet import primitives
from parametric.job import check
from parametric.trade.cutting_tables import given, offcut_lines, proof_words
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.printed import Printed, printed
from tests.drawing.pages import read

ROOT = Path(__file__).parents[2]
FULL = """
offcuts: {plywood: [460 x 9 x 800, 90 x 9 x 900]}
timber: {lengths: [2400, 3000]}
board: {sheet: 1525 x 1525}
blanks: {sheet trim: 12, keep offcut: 80 x 300}
"""


class Planned(NamedTuple):
    own: SheetSet
    paper: Paperwork
    said: Printed


@functools.cache
def planned(folder: Path, units: str) -> Planned:
    """The cupboard of the starter with stock, trim and lengths; `inch` has its paper in inches."""
    text = (ROOT / "templates/cabinet.yaml").read_text(encoding="utf-8") + FULL
    if units == "inch":
        # the same sizes, each with its unit, in a job that is drawn in inches
        house = folder / "house.yaml"
        house.write_text(f"stilewright: 1\nunits: mm\n{FULL}", encoding="utf-8")
        design = ROOT / "examples/quarry-street-alcove/design.yaml"
        text = design.read_text(encoding="utf-8")
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    house_file = ROOT / "examples/house.yaml" if units == "inch" else None
    job = check(path, house=house_file, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    drawings = draw(
        job.resolved, job.assembly, job.loads, job.problems, mark="ABCD-EFGH", paper=paper
    )
    own = next(one for one in drawings.sets if one.file == "shop/cutting-plan")
    return Planned(own, paper, printed(job.resolved))


@pytest.fixture(scope="module", params=["mm", "inch"])
def plan(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Planned:
    return planned(tmp_path_factory.mktemp(request.param), request.param)


def test_its_pages_come_out_of_the_audit_clean(plan: Planned) -> None:
    assert [str(finding) for sheet in plan.own.sheets for finding in audit(sheet)] == []


def test_every_layout_has_its_page_with_its_cuts_and_pieces(plan: Planned) -> None:
    layouts = [(lot, sheet) for lot in plan.paper.boards for sheet in lot.plan.sheets]
    pages = [sheet for sheet in plan.own.sheets if sheet.views]
    assert len(pages) == len(layouts) >= 2
    for page, (lot, sheet) in zip(pages, layouts, strict=True):
        parts = [part for element in page.elements for part in primitives(element)]
        rings = [part for part in parts if isinstance(part, Circle)]
        texts = [part.text for part in parts if isinstance(part, Label)]
        assert len(rings) == len(sheet.cuts)
        for cut in sheet.cuts:
            assert str(cut.number) in texts
        for sawn in sheet.pieces:
            assert any(text.split()[0] == sawn.piece.mark for text in texts if text)
        assert given(lot, sheet).split(", ")[0] in " ".join(texts)


def test_cuts_and_pieces_are_drawn_to_scale(plan: Planned) -> None:
    layouts = [sheet for lot in plan.paper.boards for sheet in lot.plan.sheets]
    pages = [sheet for sheet in plan.own.sheets if sheet.views]
    for page, sheet in zip(pages, layouts, strict=True):
        (view,) = page.views
        lines = [
            (round(view.back(p)[0], 3), round(view.back(p)[1], 3))
            for element in page.elements
            for part in primitives(element)
            if getattr(part, "layer", "") == "cut" and getattr(part, "view", "") == view.name
            for p in getattr(part, "points", ())
        ]
        stock = sheet.stock
        corners = [
            (0.0, 0.0),
            (round(stock.length, 3), 0.0),
            (round(stock.length, 3), round(stock.width, 3)),
            (0.0, round(stock.width, 3)),
        ]
        assert lines == corners


def test_the_first_page_says_what_is_bought_why_and_what_is_left(plan: Planned) -> None:
    text = " ".join(page.text for page in read(plan.own.sheets))
    flat = " ".join(text.split())
    for lot in plan.paper.boards:
        words = proof_words(lot).split()
        assert " ".join(words[:3]) in flat
    for line in offcut_lines(plan.paper.boards, plan.paper.bars, plan.said):
        assert line.partition(",")[0].split(": ")[0] in flat
    assert "A full sheet is two people's work" in flat
    assert "Local codes" in flat
