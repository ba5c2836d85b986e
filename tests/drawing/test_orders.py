"""The orders as they are posted: every row of every list, the gate, the panes, long lists."""

from __future__ import annotations

import dataclasses
from collections import Counter
from collections.abc import Callable
from pathlib import Path

import pytest

from parametric.drawing.audit import audit
from parametric.drawing.drawings import Drawings
from parametric.drawing.papers import A4
from parametric.drawing.ruled import Heading, Row, Ruled
from parametric.drawing.running import Field, Fields, Framed, Picture, Points, run_on
from parametric.job import check
from parametric.trade.order_tables import (
    finish_table,
    glass_gate_table,
    glazing_table,
    hardware_table,
    timber_table,
    timber_totals,
)
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.printed import Printed, printed
from tests.drawing.pages import (
    lettered_small,
    read,
    rows_missing,
    sheets_of,
    without,
    words_in,
)
from tests.drawing.sheets import LARCH_HILL, drawn, larch_hill
from tests.whole.test_build import INCH_TWIN

ORDERS = ("order/glass", "order/timber", "order/hardware")


def paper_of(path: Path) -> tuple[Paperwork, Printed]:
    job = check(path, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    return paperwork(job.resolved, job.assembly, job.loads), printed(job.resolved)


@pytest.fixture(scope="module")
def inch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("inch") / "design.yaml"
    path.write_text(INCH_TWIN, encoding="utf-8")
    return path


@pytest.fixture(scope="module", params=["mm", "inch"])
def case(request: pytest.FixtureRequest, inch: Path) -> tuple[Drawings, Paperwork, Printed]:
    """Larch Hill, and its twin in inches."""
    path = LARCH_HILL if request.param == "mm" else inch
    return (larch_hill() if request.param == "mm" else drawn(path), *paper_of(path))


Case = tuple[Drawings, Paperwork, Printed]


def test_every_pane_and_every_opening_of_the_lists_is_on_the_glass_order(case: Case) -> None:
    drawings, paper, said = case
    pages = read(sheets_of(drawings, "order/glass"))
    assert rows_missing(pages, glazing_table(paper.glazing, said).rows) == []
    assert rows_missing(pages, glass_gate_table(paper.glazing, said).rows) == []


def test_every_blank_and_every_total_is_on_the_timber_order(case: Case) -> None:
    drawings, paper, said = case
    pages = read(sheets_of(drawings, "order/timber"))
    blanks = timber_table(paper.timber, said)
    assert rows_missing(pages, without(blanks, "timber", "planed to", "sawn")) == []
    totals = timber_totals(paper.timber, said)
    assert rows_missing(pages, without(totals, "waste in it %", "moisture %")) == []
    text = " ".join(page.text for page in pages)
    assert "Waste of 25 %" in text
    assert "Moisture 8 %" in text
    for lot in paper.timber.lots:
        kind = lot.sawn_class or "laminate"
        assert f"{lot.timber.capitalize()} {kind}, planed to {said.wood(lot.thickness)}" in text


def test_every_item_and_every_coat_is_on_the_hardware_order(case: Case) -> None:
    drawings, paper, said = case
    pages = read(sheets_of(drawings, "order/hardware"))
    items = without(hardware_table(paper.hardware, said), "counted in", "length", "known by")
    assert rows_missing(pages, items) == []
    coats = without(finish_table(paper.finish), "spare in it %")
    assert rows_missing(pages, coats) == []
    asked = [(own.of, own.what, own.needed) for own in paper.data_sheets]
    assert rows_missing(pages, asked) == []


def test_a_row_that_is_not_there_is_missed() -> None:
    """The test of rows can fail: a pane 1 mm wider is on no page."""
    pages = read(sheets_of(larch_hill(), "order/glass"))
    paper, said = paper_of(LARCH_HILL)
    row = glazing_table(paper.glazing, said).rows[0]
    assert rows_missing(pages, [("779.5" if cell == "778.5" else cell for cell in row)]) != []  # type: ignore[list-item]


def test_the_brief_stands_on_the_orders() -> None:
    """Pane 778.5 × 515 × 6 at 6.01 kg, category I; screw 12.5 + 38; litres 1.22 and 1.12."""
    text = {file: " ".join(p.text for p in read(sheets_of(larch_hill(), file))) for file in ORDERS}
    for words in ("778.5 515 6 6.01 category I", "Quern Lane Joinery", "784.5 × 521"):
        assert words in text["order/glass"]
    for words in ("2151 126", "0.1462 0.1898 80.9", "809.5 246"):
        assert words in text["order/timber"]
    for words in ("at least 50.5", "17.9 kg or more", "not written", "1.22", "1.12", "35.8 2 17.9"):
        assert words in text["order/hardware"]


def test_capacity_stands_against_mass_where_it_is_known(inch: Path) -> None:
    """60 lb a hanger is 27.2 kg; the leaf, 45.4 kg, puts 22.7 on each: 100 lb, 50 lb."""
    text = " ".join(p.text for p in read(sheets_of(drawn(inch), "order/hardware")))
    assert "100 (45.4) 2 50 (22.7) 60 (27.2)" in text


def test_the_gate_stands_before_the_order_with_a_box_a_line() -> None:
    (page,) = read(sheets_of(larch_hill(), "order/glass"))
    gate, order = page.text.index("Measure first"), page.text.index("Please supply")
    assert gate < page.text.index("leaf A / lite 1") < order
    assert page.text.index("signed") < order
    ticks = [box for box in page.boxes if box == pytest.approx((3.4, 3.4), abs=0.01)]
    assert len(ticks) == 4


def test_panes_are_drawn_to_scale() -> None:
    """778.5 × 515 at 1:20 is 38.925 × 25.75 on paper."""
    (page,) = read(sheets_of(larch_hill(), "order/glass"))
    assert "Seen from the front 1:20" in page.text
    assert any(box == pytest.approx((38.925, 25.75), abs=0.01) for box in page.boxes)


def test_a_job_without_glass_orders_none(tmp_path: Path, changed: Callable[..., Path]) -> None:
    path = changed(
        tmp_path,
        ("    - lite: equal\n    - dividing rail: 90\n    - lite: equal\n", "    - panel: equal\n"),
        ("glass: {kind: toughened, thickness: 6, held by: stops, clearance: 3}\n", ""),
    )
    files = {own.file for own in drawn(path).sets}
    assert "order/glass" not in files
    assert {"order/timber", "order/hardware", "site/install"} <= files


def test_glass_that_is_not_safety_glass_is_warned_of(
    tmp_path: Path, changed: Callable[..., Path]
) -> None:
    path = changed(tmp_path, ("kind: toughened", "kind: ordinary"))
    pages = read(sheets_of(drawn(path), "order/glass"))
    text = " ".join(page.text for page in pages)
    assert "Not safety glass" in text
    assert "safety glass unless" in text
    assert "Mark in the low left corner" not in text


@pytest.fixture
def changed() -> Callable[..., Path]:
    def change(folder: Path, *changes: tuple[str, str]) -> Path:
        text = LARCH_HILL.read_text(encoding="utf-8")
        for old, new in changes:
            assert old in text, old
            text = text.replace(old, new, 1)
        path = folder / "design.yaml"
        path.write_text(text, encoding="utf-8")
        return path

    return change


def test_orders_are_clean_and_large_enough_to_read(case: Case) -> None:
    drawings, _, _ = case
    for file in ORDERS:
        sheets = sheets_of(drawings, file)
        assert [str(f) for sheet in sheets for f in audit(sheet)] == []
        assert lettered_small(sheets, 2.5) == []
        assert {s.paper.name for s in sheets} <= {"A4", "letter"}


# Pages that run on ----------------------------------------------------------------------------


def long_table(count: int) -> Ruled:
    return Ruled(
        title="A long list",
        columns=(Heading(text="mark"), Heading(text="what", grows=True)),
        rows=tuple(Row(cells=(f"M{n}", f"row number {n}"), under=("said",)) for n in range(count)),
        ticks=("",),
        foot=("the end",),
    )


def test_a_long_table_goes_on_with_its_head_and_loses_no_row() -> None:
    title = larch_hill().sheets[0].title
    sheets = run_on(A4, title, [long_table(70)])
    pages = read(sheets)
    assert len(pages) > 2
    assert all(Counter(page.text.split())["what"] == 1 for page in pages)
    assert [page.text.count("the end") for page in pages] == [0] * (len(pages) - 1) + [1]
    assert rows_missing(pages, [row.cells for row in long_table(70).rows]) == []
    bands = sum(1 for page in pages for band in page.bands if band["number"])
    assert bands == 70
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []


def test_a_frame_goes_on_in_a_frame() -> None:
    title = larch_hill().sheets[0].title
    block = Framed(
        title="First of all",
        parts=(long_table(40), Fields(rows=((Field(name="Signed"),),))),
    )
    pages = read(run_on(A4, title, [block]))
    assert len(pages) >= 2
    assert all("First of all" in page.text for page in pages)
    assert "Signed" in pages[-1].text


def test_what_fits_no_page_is_said_by_the_audit() -> None:
    title = larch_hill().sheets[0].title
    picture = Picture(title="Too tall", height=400.0, draw=lambda _draft, _box: None)
    (sheet,) = run_on(A4, title, [picture])
    assert {f.fault for f in audit(sheet)} >= {"no room"}


def test_a_column_never_breaks_a_size_that_must_stay_whole() -> None:
    sizes = Row(cells=("a rather long name for one piece of the job", "40-3/8 × 82-3/4 × 1-9/16"))
    table = Ruled(
        title="",
        columns=(Heading(text="what"), Heading(text="size", anchor="right", whole=True)),
        rows=(sizes,),
    )
    title = larch_hill().sheets[0].title
    narrow = dataclasses.replace(A4, width=130.0)
    (page,) = read(run_on(narrow, title, [table]))
    assert "40-3/8 × 82-3/4 × 1-9/16" in page.text


def test_sentences_part_between_and_keep_their_numbers() -> None:
    title = larch_hill().sheets[0].title
    texts = tuple(f"Sentence {n} of many." for n in range(1, 61))
    pages = read(run_on(A4, title, [Points(title="Say", mark="number", texts=texts)]))
    assert len(pages) == 2
    text = " ".join(page.text for page in pages)
    assert all(f"{n} Sentence {n} of many." in text for n in range(1, 61))
    assert "Say, continued" in pages[1].text


def test_words_are_counted_as_the_page_prints_them() -> None:
    assert words_in(("12 x 14.5", "Leaf A.")) == Counter(["12", "×", "14.5", "leaf", "a"])
