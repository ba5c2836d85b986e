"""The order of work on site for cabinets, and its sheet read back from the PDF."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.drawing.audit import audit
from parametric.drawing.drawings import draw_delivery
from parametric.drawing.on_site.cabinets import draw_cabinets
from parametric.trade.case_fitting import CaseFitting
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed
from parametric.trade.site_tables import delivery_table
from tests.cases.test_case_delivery import ALCOVE, BOOKCASE, WARDROBE, papers
from tests.cases.test_case_sheets import BLOCK, job_of
from tests.drawing.pages import read, rows_missing

KITCHEN = Path(__file__).parents[2] / "templates/kitchen run.yaml"
LARCH_HILL = Path(__file__).parents[2] / "examples/larch-hill-reading-room/design.yaml"


def fitting(paper: Paperwork) -> CaseFitting:
    assert paper.fitting is not None
    return paper.fitting


def first(paper: Paperwork, words: str) -> int:
    """The number of the first step that says so."""
    return next(step.number for step in fitting(paper).steps if words in step.do)


def test_the_wardrobe_is_levelled_stood_up_fixed_and_only_then_opened() -> None:
    _, paper = papers(WARDROBE)
    steps = fitting(paper).steps
    assert [step.number for step in steps] == list(range(1, len(steps) + 1))
    # Brief G3: plinth legs under left, middle, right 82 + 3, 82 - 0, 82 - 2.
    plinth = steps[first(paper, "the plinth to it") - 1].do
    assert "85 at the left, 82 at the middle and 80 at the right" in plinth
    stood = steps[first(paper, "without fronts") - 1]
    assert "tip each up on the floor, then lift it 80" in stood.do
    carried = next(load for load in paper.cases if load.standing.name == "cabinet outer 1").carried
    assert stood.check.startswith(f"3 people; {float(carried):.1f} kg.")
    order = ["the plinth", "without fronts", "Clamp neighbours", "to the wall", "Hang leaves"]
    numbers = [first(paper, words) for words in order]
    assert numbers == sorted(numbers)
    assert any("no drawer is drawn out" in caution for caution in fitting(paper).cautions)


def test_the_upper_case_comes_when_the_counter_lies() -> None:
    _, paper = papers(ALCOVE)
    order = [
        "Cabinet base, without fronts",
        "Fix cabinet base to the wall",
        "face frame level before cabinet base",
        "Counter on cabinet base",
        "Cabinet upper, without fronts",
        "Fix cabinet upper to the wall",
        "Scribe and fit the top filler",
        "Hang leaves A and B",
        "Shelves in.",
    ]
    numbers = [first(paper, words) for words in order]
    assert numbers == sorted(numbers)
    assert "cabinet upper 20 lb/ft" in fitting(paper).steps[-1].do


def test_cases_whose_fronts_go_on_alike_are_told_together() -> None:
    """The two outer ones hang the same pairs: leaves A and B, and H and J as they."""
    steps = [step.do for step in fitting(papers(WARDROBE)[1]).steps]
    hung = [do for do in steps if "Hang leaves" in do]
    assert [do.split(":")[0] for do in hung] == [
        "Cabinet outer 1 and cabinet outer 2, by the letters of the first",
        "Cabinet middle",
    ]
    assert "Hang leaves A and B" in hung[0]


def test_one_that_hangs_is_lifted_to_its_height() -> None:
    _, paper = papers(BOOKCASE)
    assert "its foot 31-1/4 over the highest floor" in fitting(paper).steps[1].do


def test_a_fixed_front_is_no_drawer(tmp_path: Path) -> None:
    """The sham front over a bowl is screwed on from within, and nobody is told to draw it out."""
    text = KITCHEN.read_text(encoding="utf-8")
    sham = text.replace(
        "    - door pair: rest\n", "    - fixed front: 140\n    - door pair: rest\n"
    )
    design = tmp_path / "design.yaml"
    design.write_text(sham, encoding="utf-8")
    job, paper = papers(design)
    assert job.resolved is not None
    letter = next(leaf.letter for leaf in job.resolved.leaves if not leaf.hung.motion)
    (told,) = [step.do for step in fitting(paper).steps if f"leaf {letter} " in step.do]
    assert "Fixed fronts" in told
    assert "screwed from within the case" in told


def test_doors_alone_have_none() -> None:
    assert papers(LARCH_HILL)[1].fitting is None


@pytest.mark.parametrize("design", [WARDROBE, ALCOVE, BOOKCASE], ids=lambda path: path.stem)
def test_the_sheets_are_clean_and_whole(design: Path) -> None:
    """Cabinets and delivery: no finding of the audit, every row in the PDF."""
    _, paper = papers(design)
    drawn = job_of(design)
    said = printed(drawn.resolved)
    for sheets in (draw_cabinets(drawn, paper, BLOCK), draw_delivery(drawn, paper, BLOCK)):
        assert sheets
        assert [str(finding) for sheet in sheets for finding in audit(sheet)] == []
    pages = read(draw_cabinets(drawn, paper, BLOCK))
    rows = [(str(step.number), step.do, step.check) for step in fitting(paper).steps]
    assert rows_missing(pages, rows) == []
    sent = [row[:3] for row in delivery_table(paper.delivery, said).rows]
    assert rows_missing(read(draw_delivery(drawn, paper, BLOCK)), sent) == []
