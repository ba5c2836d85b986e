"""The bench sheets: every number of every set-up once, legible from a metre, found by its number."""

from __future__ import annotations

import dataclasses
import math
import re
import tempfile
from collections import Counter, defaultdict
from collections.abc import Iterator
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pdfplumber
import pytest
from hypothesis import HealthCheck, given, settings

from parametric.drawing.audit import audit
from parametric.drawing.bench import draw_bench
from parametric.drawing.bench.flow import Band, Block, Column, Line, flow
from parametric.drawing.bench.machine_lists import in_ranges
from parametric.drawing.bench.saying import Print, Said, broken, printed_on, prints_of, said
from parametric.drawing.bench.set_up import MOST_KEYS
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import BENCH
from parametric.drawing.page import draw_page
from parametric.drawing.plane import Box, around
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Sheet, primitives
from parametric.drawing.subject import subject
from parametric.figures import Figure
from parametric.job import check
from parametric.problems import stops
from parametric.trade.bench_order import shop_order
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.trade.printed import several
from parametric.writers.pdf import write_pdf
from tests.drawing.sheets import LARCH_HILL, drawn, larch_hill
from tests.invariants.designs import bypass_designs
from tests.whole.test_build import INCH_TWIN

NOT_PRINTED = {
    r"milling / M\d+ loose-tenon slots / width": "as wide as its cutter, which is printed",
    r"milling / M\d+ square the ends .* / spares": "none: said in words, no test piece",
    r"milling / M\d+ bevel / depth": "the blade's height, printed from the saw set-up",
    r"milling / M\d+ tongue [^/]* / (width|depth)": "buried and blade height, from the saw set-up",
    r"milling / M\d+ edges .* / (cuts|spares)": "printed as tenons to make and the spare tenon",
    r"stop blocks / .* pull .* (low|high) end": "the ends are trimmed by then: from the foot",
    r"tenon set-up \d+ / (depth passes|slots)": "those of the slots' setting",
}
"""Figures of set-ups that no page prints, each with its reason."""

SAME = {
    "milling / M2 loose-tenon slots / width": "milling / M2 loose-tenon slots / cutter",
    "milling / M5 bevel / depth": "saw set-up P1 / blade height",
    "milling / M6 tongue face side / width": "saw set-up P1 / tongue into the fence",
    "milling / M6 tongue face side / depth": "saw set-up P1 / blade height face down",
    "milling / M7 tongue back rebate / width": "saw set-up P1 / tongue into the fence",
    "milling / M7 tongue back rebate / depth": "saw set-up P1 / blade height back down",
    "tenon set-up 1 / depth passes": "milling / M2 loose-tenon slots / depth passes",
    "tenon set-up 1 / slots": "milling / M2 loose-tenon slots / cuts",
}
"""Of those, the ones that another printed figure stands for: they must be equal."""

TWICE = {
    "saw set-up P1 / tongue into the fence": "both passes of the tongue are set to it",
    "stop blocks / S1 S2 panel groove 470 / low from low end": "in the list, and for the chisel",
    "stop blocks / S1 S2 panel groove 470 / high from low end": "in the list, and for the chisel",
}


def figures_in(tree: object) -> Iterator[Figure]:
    """Every named figure that lies in a tree itself, not behind another."""
    if isinstance(tree, Figure):
        if tree.name is not None:
            yield tree
    elif dataclasses.is_dataclass(tree) and not isinstance(tree, type):
        for field in dataclasses.fields(tree):
            yield from figures_in(getattr(tree, field.name))
    elif isinstance(tree, (tuple, list)):
        for item in tree:
            yield from figures_in(item)


def set_up_figures(paper: Paperwork) -> dict[str, Figure]:
    fields = (
        paper.milling,
        paper.stops,
        paper.lengths,
        paper.panel_saw,
        paper.loose_tenons,
        paper.grooves,
        paper.panel_glue_ups,
        paper.leaf_glue_ups,
        paper.alignment,
        paper.finish,
    )
    return {str(figure.name): figure for figure in figures_in(fields)}


def paper_of(path: Path) -> Paperwork:
    job = check(path, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    return paperwork(job.resolved, job.assembly, job.loads)


def bench_of(path: Path) -> tuple[Sheet, ...]:
    return next(own.sheets for own in drawn(path).sets if own.file == "shop/bench")


@cache
def bench() -> tuple[Sheet, ...]:
    return next(own.sheets for own in larch_hill().sets if own.file == "shop/bench")


@pytest.fixture(scope="module")
def paper() -> Paperwork:
    return paper_of(LARCH_HILL)


@pytest.fixture(scope="module")
def inch(tmp_path_factory: pytest.TempPathFactory) -> Path:
    path = tmp_path_factory.mktemp("inch") / "design.yaml"
    path.write_text(INCH_TWIN, encoding="utf-8")
    return path


@cache
def pages() -> tuple[str, ...]:
    """The text of each page as another program reads it from the PDF."""
    with pdfplumber.open(BytesIO(write_pdf(bench()))) as pdf:
        return tuple(re.sub(r"\s+", " ", page.extract_text()) for page in pdf.pages)


def page(heading: str) -> str:
    """The first page of that heading."""
    return next(
        text
        for text, sheet in zip(pages(), bench(), strict=True)
        if sheet.title.document == heading
    )


def labels(sheet: Sheet) -> list[Label]:
    return [p for e in sheet.elements for p in primitives(e) if isinstance(p, Label)]


def number_of(sheet: Sheet) -> str:
    """The set-up's number lettered 14 high at the upper left; "" on a page that is none."""
    frame = sheet.paper.frame
    return next(
        (t.text for t in labels(sheet) if t.height == 14.0 and t.at[1] > frame.y1 - 17.0), ""
    )


def body_of(sheet: Sheet) -> Box:
    draft = Draft(sheet.paper)
    return draw_page(draft, sheet.title, number=number_of(sheet))


def set_up_sheets(sheets: tuple[Sheet, ...]) -> list[Sheet]:
    """All but the lists: set-ups, glue-ups, finish, and the steps that follow them."""
    return [s for s in sheets if "list" not in s.title.document and "Order" not in s.title.document]


# Every number once ----------------------------------------------------------------------------


def reason(name: str) -> str | None:
    return next((why for rule, why in NOT_PRINTED.items() if re.fullmatch(rule, name)), None)


def test_every_number_of_the_set_ups_is_printed_once_or_left_out_for_a_reason(
    paper: Paperwork,
) -> None:
    printed = Counter(p.name for sheet in bench() for p in printed_on(sheet))
    figures = set_up_figures(paper)
    assert len(figures) > 150
    missing = [name for name in figures if not printed[name] and reason(name) is None]
    assert missing == []
    twice = {name for name in figures if printed[name] > 1}
    assert twice == set(TWICE)


def test_no_reason_is_given_for_what_is_printed_or_is_not_there(paper: Paperwork) -> None:
    printed = {p.name for sheet in bench() for p in printed_on(sheet)}
    names = set_up_figures(paper)
    for rule in NOT_PRINTED:
        left_out = [name for name in names if re.fullmatch(rule, name)]
        assert left_out, rule
        assert not printed & set(left_out), rule
    for name, other in SAME.items():
        assert float(names[name]) == pytest.approx(float(names[other]), abs=1e-9)
        assert other in printed


@pytest.mark.parametrize("unit", ["mm", "inch"])
def test_what_a_sheet_says_it_prints_is_read_from_its_page(unit: str, inch: Path) -> None:
    """Another program reads the PDF: each number stands there as a word of its own."""
    sheets = bench() if unit == "mm" else bench_of(inch)
    with pdfplumber.open(BytesIO(write_pdf(sheets))) as pdf:
        texts = [re.sub(r"\s+", " ", p.extract_text()) for p in pdf.pages]
    count = 0
    for sheet, text in zip(sheets, texts, strict=True):
        for printed in printed_on(sheet):
            word = rf"(?<![\d.]){re.escape(printed.text)}(?![\d/]|\.\d)"
            assert re.search(word, text), (printed, sheet.title.document)
            count += 1
    assert count > 150


ELSEWHERE = {
    r"saw set-up P\d+ / tall fence": "one fence for all panels set alike: the tallest",
    r"finished area": "no finish is asked for",
}


def lacking(text: str, folder: Path) -> list[str] | None:
    """What the set-ups of a design have and no page prints; None for one that cannot be made."""
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    if job.resolved is None or stops(job.problems):
        return None
    assert job.assembly is not None
    own = paperwork(job.resolved, job.assembly, job.loads)
    drawing = subject(job.resolved, job.assembly, job.loads, job.problems)
    sheets = draw_bench(drawing, own, bench()[0].title)
    printed = {p.name for sheet in sheets for p in printed_on(sheet)}
    return [
        name
        for name in set_up_figures(own)
        if name not in printed
        and reason(name) is None
        and not any(re.fullmatch(rule, name) for rule in ELSEWHERE)
    ]


@settings(max_examples=15, suppress_health_check=[HealthCheck.too_slow])
@given(bypass_designs())
def test_no_number_of_a_random_job_is_left_off_the_bench(text: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        assert not lacking(text, Path(folder))


def test_panels_of_three_sizes_at_one_setting_all_have_their_edges(tmp_path: Path) -> None:
    """A leaf of three panels: one bevel set-up, in it the edges of P1, P2 and P3."""
    text = LARCH_HILL.read_text(encoding="utf-8")
    for old, new in (
        ("- lite: equal", "- panel: 460.5"),
        ("- dividing rail: 90", "- dividing rail: 130"),
        ("- lite: equal", "- panel: equal"),
    ):
        text = text.replace(old, new, 1)
    assert lacking(text, tmp_path) == []
    sheets = bench_of(tmp_path / "design.yaml")
    bevels = [s for s in sheets if s.title.document.startswith("Saw: bevel of panels P1, P2, P3")]
    assert number_of(bevels[0]) == "M5"
    told = " ".join(t.text for s in sheets for t in labels(s))
    assert "P1: 4 edges" in told
    assert "P3: 4 edges" in told
    saws = paper_of(tmp_path / "design.yaml").panel_saw
    tallest = max(saws, key=lambda saw: float(saw.tall_fence)).tall_fence
    assert str(tallest.name) in {p.name for s in sheets for p in printed_on(s)}


def test_no_set_up_of_the_inch_twin_lacks_its_numbers(inch: Path) -> None:
    """What a person sets at a machine, whatever the unit: fence, depth, tilt, heights, blocks."""
    printed = {p.name for sheet in bench_of(inch) for p in printed_on(sheet)}
    needed = [
        name
        for name in set_up_figures(paper_of(inch))
        if re.search(r"/ (fence|cutter|tilt|blade height|fence to|right block|left block)", name)
    ]
    assert len(needed) > 12
    assert [name for name in needed if name not in printed] == []


# Numbers of the brief, read from the PDF --------------------------------------------------------


MM = 72 / 25.4


def to_set(code_or_heading: str) -> list[str]:
    """The numbers of a set-up as a person reads them: letter, number, what follows, its name.

    By the type alone: a number is 14 high, 7 what stands behind it, 5 its name; its letter is
    bold and stands before it. Each word belongs to the number whose row it stands in.
    """
    index = next(
        n
        for n, sheet in enumerate(bench())
        if code_or_heading in (number_of(sheet), sheet.title.document)
    )
    with pdfplumber.open(BytesIO(write_pdf(bench()[index : index + 1]))) as pdf:
        words = pdf.pages[0].extract_words(extra_attrs=["size", "fontname"])
    large = [w for w in words if w["size"] > 50 and w["top"] > 28 * MM]
    numbers = sorted(large, key=lambda w: (round(w["top"]), w["x0"]))
    found: list[tuple[list[str], list[str]]] = [([], []) for _ in numbers]
    smaller = [w for w in words if 20 < w["size"] < 50]
    for word in sorted(smaller, key=lambda w: (-(w["size"] // 5), round(w["top"]), w["x0"])):
        before = len(word["text"]) == 1 and "bold" in word["fontname"].lower()
        aside = [
            (abs(_middle(number) - _middle(word)), abs(number["x0"] - word["x0"]), k)
            for k, number in enumerate(numbers)
            if (0 < number["x0"] - word["x0"] < 15 * MM) == before
            and (before or word["x0"] > number["x0"])
            and abs(_middle(number) - _middle(word)) < 10 * MM
        ]
        if aside:
            near = min(row for row, _, _ in aside)
            _, k = min((far, k) for row, far, k in aside if row < near + 1 * MM)
            found[k][0 if before else 1].append(word["text"])
    return [
        " ".join([*letter, number["text"], *rest])
        for number, (letter, rest) in zip(numbers, found, strict=True)
    ]


def _middle(word: dict[str, Any]) -> float:
    return float(word["top"] + word["bottom"]) / 2


def test_brief_values_of_the_glue_up() -> None:
    """(803.53 + 6) / 6 = 134.92, never less: 135; 28 + 2 = 30 before the planer;
    2 x 134.9 = 269.8; ceil((485 + 25) / 269.8) + 1 = 3.
    """
    assert to_set("Glue-up: panel P1") == [
        "a 135 ×6 boards planed to 30, jointed to width",
        "3 clamps above and below in turn",
        "b 269.8 between clamps, at most",
        "c 809.5 wide when glued",
        "d 510 long when glued",
    ]
    assert "the panel is planed to 28" in page("Glue-up: panel P1")
    # Over each tenon: 40 + 62 / 2, 158 + 62 / 2; lock rail 754 + 31, not its middle 775.
    leaf = page("Glue-up: leaf A and leaf B")
    for words in ("bottom rail 2 at 71 and 189", "lock rail 1 at 785", "top rail 1 at 2042"):
        assert words in leaf, words


def test_brief_values_of_the_saw() -> None:
    """atan((26.5 - 15) / 75) = 8.72; the tongue: 28 - 5 - 8 = 15 high, 5 high, 15 long."""
    assert math.degrees(math.atan((26.5 - 15) / 75)) == pytest.approx(8.7175, abs=1e-3)
    assert to_set("M5") == [
        "a 8.7° blade tilt, to the left, away from the fence",
        "b 75 blade height above the table",
        "c 15 fence to blade, at the table",
        "267.9 tall fence, at least so high above the table",
    ]
    text = page("Saw: bevel of panel P1")
    # 79 cos 8.72 = 78.1, printed down; 78.1 - 75 = 3.1.
    assert "reaches 78 tilted: 3 to spare" in text
    assert "15.2 goes on, 14.8 does not" in text
    blade = "dado set upright, height above the table"
    buried = "tongue's length: fence to far side of the dado set, itself wider"
    assert to_set("M6") == [f"a 15 {blade}", f"b 15 {buried}"]
    assert to_set("M7") == [f"a 5 {blade}", f"b 15 {buried}"]
    # Bare: 8.2 - 2 x 0.04 = 8.12. 28 - 15 = 13 stand over the face side, 13 - 5 = 8 over both.
    assert "13 is left over it" in page("Saw: tongue, face side, panel P1 flat")
    assert "8.1 goes on, 7.8 does not; 8 is left" in page("Saw: back rebate, panel P1 flat")


def test_brief_values_of_slots_and_grooves() -> None:
    """Slots 12 x 62 x 46; the guide: ceil((9 - 6) / 6) + 1 = 2 passes, 9 - 6 = 3 apart."""
    assert to_set("M2") == [
        "a 12 cutter",
        "b 20 face to the cutter's middle",
        "c 46 deep, in 8 steps",
        "d 50 travel of the cutter's middle, 25 to each side",
        "e 62 slot, over all",
    ]
    assert "40 cuts" in page("Router: loose-tenon slots")
    assert to_set("M10") == [
        "a 6 cutter",
        "b 18.5 face to the cutter's middle, pass 1",
        "c 21.5 face to the cutter's middle, pass 2",
        "3 offset, by feeler; 2 passes make it 9 wide",
        "d 18 deep, in 6 steps",
    ]


def test_brief_values_of_stop_blocks() -> None:
    """Groove 226 to 714, trim 12, cutter 8: 714 + 12 - 4 = 722; 2126 - (226 + 12 + 4) = 1884."""
    left, right = (f"{side} block, from the cutter's middle" for side in ("left", "right"))
    assert to_set("M3A") == [f"a 1884 {left}", f"b 722 {right}"]
    assert to_set("M3B") == [f"a 722 {left}", f"b 1884 {right}"]
    stops = page("Stop-block list")
    for words in ("2126", "784.5", "226 – 714", "754 – 816", "40 – 102", "912.7 – 1063.3"):
        assert words in stops, words


def test_brief_values_of_the_pockets() -> None:
    """160 + 2 x 0.3, 42 + 2 x 0.3; 150 + 2 x 0.3, 32 + 2 x 0.3, 14 + 0.2; centre 60 in.

    Edges 60 -+ 42.6 / 2 and 60 -+ 32.6 / 2; corners 6 + 0.3 and 3 + 0.3.
    """
    middle = "outer edge to middle; edges at"
    assert to_set("M11")[1:] == [
        f"b 60 {middle} 38.7, 81.3",
        "c 160.6 long",
        "d 42.6 wide; corners of radius 6.3",
        "e 1.5 below the face, in 1 step",
    ]
    assert to_set("M12")[1:] == [
        f"b 60 {middle} 43.7, 76.3",
        "c 150.6 long",
        "d 32.6 wide; corners of radius 3.3",
        "e 14.2 below the face, in 5 steps",
    ]
    assert "leaf A left stile (S1), leaf B right stile (S1)" in page("Router: pull body pocket")


def test_brief_values_of_finish_and_alignment() -> None:
    assert to_set("Finish: paint, lichen") == [
        "5.84 m² both faces less the glass, and the edges",
        "1.22 L primer, 2 coats; a litre covers 11 m²",
        "1.12 L top coat, 2 coats; a litre covers 12 m²",
    ]
    assert "15 %" in page("Finish: paint, lichen")
    assert [text.split()[1] for text in to_set("Rails of the leaves in line")] == [
        "±0.71",
        "±0.83",
        "±2.10",
    ]


def test_brief_values_of_the_cut_lists() -> None:
    text = page("Cut list by section")
    assert "S1 stile with pull 2 2126 120 40" in text
    assert "P1 raised panel 2 485 803.5 28" in text
    assert "L1 stop across 16 784.5" in text
    # Rough: 2126 + 25 long, 120 + 6 wide.
    rough = next(text for text in pages() if "Rough blanks" in text)
    assert "S1 stile with pull 2 2151 126" in rough
    # A panel of 6 boards each: 12 for 2 panels, 66 + 10 blanks in all.
    more = pages()[pages().index(rough) + 1]
    assert "Total 76 blanks" in more
    # Boards 28 + 2 thick; tenons 20 x (90 + 25) = 2300 in strips under 1200: 2 of 1150.
    assert "tulipwood, planed to 30, from 6/4 sawn" in rough
    assert "boards of a panel, which is planed to 28 when glued" in rough
    assert "2 strips, 1150 long" in more
    # The stopped groove is tried on a whole stile; bevels on thrice their run; 4 mitres a frame.
    assert "1 of 40 × 120, 300 long, for M2, M10, M11, M12" in more
    assert "1 of 40 × 120, 2126 long, for M3" in more
    assert "1 of 28 × 225, 300 long, glued, for M5, M6, M7; 4 of 14.5 × 12, 300 long" in more
    assert "Total 66 pieces" in text
    door = page("Cut list by door")
    assert "S1 stile with pull 1 2126 120 40 left stile" in door
    assert "S1 stile with pull 1 2126 120 40 right stile" in door
    assert door.count("Total 33 pieces") == 2


# Read from a metre ------------------------------------------------------------------------------


@pytest.mark.parametrize("unit", ["mm", "inch"])
def test_nothing_in_the_body_of_a_set_up_is_under_five_high(unit: str, inch: Path) -> None:
    count = 0
    for sheet in set_up_sheets(bench() if unit == "mm" else bench_of(inch)):
        body = body_of(sheet)
        for label in labels(sheet):
            if body.y0 <= label.at[1] <= body.y1:
                assert label.height >= BENCH, (sheet.title.document, label.text)
                count += 1
    assert count > 300


def test_at_most_five_numbers_to_set_and_they_are_fourteen_high() -> None:
    numbered = [s for s in bench() if re.fullmatch(r"M\d+", number_of(s))]
    assert len(numbered) == 12
    for sheet in numbered:
        body = body_of(sheet)
        keys = [t for t in labels(sheet) if t.height == 14.0 and t.at[1] < body.y1]
        assert 1 <= len(keys) <= MOST_KEYS, sheet.title.document


def test_every_letter_of_the_numbers_stands_in_the_picture() -> None:
    """Once before its number and once in the picture."""
    for sheet in bench():
        lettered = Counter(t.text for t in labels(sheet) if re.fullmatch("[a-e]", t.text))
        assert 1 not in lettered.values(), sheet.title.document


@pytest.mark.parametrize("unit", ["mm", "inch"])
def test_no_page_has_a_finding(unit: str, inch: Path) -> None:
    sheets = bench() if unit == "mm" else bench_of(inch)
    assert len(sheets) > 20
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []
    assert {s.paper.name for s in sheets} == {"A4" if unit == "mm" else "letter"}


# Drawn true -------------------------------------------------------------------------------------


def set_up(code: str) -> Sheet:
    return next(s for s in bench() if number_of(s) == code)


def outlines(sheet: Sheet) -> list[tuple[tuple[float, float], ...]]:
    """Closed heavy lines of the picture, back in mm of the machine."""
    view = sheet.views[0]
    return [
        tuple(view.back(p) for p in e.points)
        for e in sheet.elements
        if isinstance(e, Stroke) and e.closed and e.layer == "cut_heavy" and e.view == view.name
    ]


def test_the_blade_leans_as_much_as_the_tilt_says() -> None:
    """Its sides by their slope; its tip 75 over the table; its foot 15 from the fence."""
    (blade,) = [o for o in outlines(set_up("M5")) if len(o) == 4]
    xs = sorted(blade, key=lambda p: p[1])
    low, high = xs[:2], xs[2:]
    near_low, near_high = max(low), max(high)
    lean = math.degrees(math.atan2(abs(near_high[0] - near_low[0]), near_high[1] - near_low[1]))
    assert lean == pytest.approx(8.7175, abs=1e-3)
    assert near_high[1] == pytest.approx(75.0, abs=1e-6)
    # The fence's face is at 0, the panel to the left of it: at the table the blade is at -15.
    at_table = near_low[0] - (0.0 - near_low[1]) * math.tan(math.radians(lean))
    assert abs(at_table) == pytest.approx(15.0, abs=1e-6)


def test_the_tongue_is_cut_as_its_passes_say() -> None:
    for code, high in (("M6", 15.0), ("M7", 5.0)):
        blade = next(o for o in outlines(set_up(code)) if len(o) == 4)
        box = around(blade)
        assert box.y1 == pytest.approx(high, abs=1e-6)
        assert -box.x0 == pytest.approx(15.0, abs=1e-6)


def test_cutters_are_drawn_as_wide_and_as_deep_as_they_are_set() -> None:
    slot = next(around(o) for o in outlines(set_up("M2")) if len(o) == 4)
    assert (slot.width, -slot.y0) == (pytest.approx(12.0), pytest.approx(46.0))
    assert (slot.x0 + slot.x1) / 2 == pytest.approx(20.0)
    guide = next(around(o) for o in outlines(set_up("M10")) if len(o) == 4)
    assert guide.width == pytest.approx(6.0)
    assert -(guide.x0 + guide.x1) / 2 == pytest.approx(18.5)
    assert -guide.y0 == pytest.approx(18.0)


# Found by its number ----------------------------------------------------------------------------


def rows_of(sheet: Sheet) -> list[list[str]]:
    """The texts of a page by their lines, from the top."""
    lines: dict[float, list[Label]] = defaultdict(list)
    for label in labels(sheet):
        lines[round(label.at[1], 2)].append(label)
    return [
        [label.text for label in sorted(own, key=lambda t: t.box.x0)]
        for _, own in sorted(lines.items(), reverse=True)
    ]


def test_marks_that_follow_each_other_are_said_as_from_and_to() -> None:
    assert in_ranges(("S1", "S2", "R1", "R2", "R3", "R4")) == "S1, S2, R1 to R4"
    assert in_ranges(("P1",)) == "P1"
    assert in_ranges(("leaf A", "leaf B")) == "leaf A, leaf B"
    assert in_ranges(("S9", "S10", "S11", "R12")) == "S9 to S11, R12"


def test_the_order_of_work_leads_to_the_sheet_of_every_set_up(paper: Paperwork) -> None:
    order = bench()[0]
    assert order.title.document == "Order of work in the shop"
    led = {
        row[2]: int(row[-1])
        for row in rows_of(order)
        if len(row) > 3 and row[2] in codes(paper) and row[-1].isdigit()
    }
    assert set(led) == codes(paper)
    for code, number in led.items():
        assert number_of(bench()[number - 1]) == code
    job = check(LARCH_HILL, user_house=False)
    assert job.assembly is not None
    steps = shop_order(paper, job.assembly)
    assert [s.code for s in steps if s.code] == [s.code for s in paper.milling]
    text = pages()[0]
    for step in steps:
        assert step.work.split(":")[0].split()[0] in text


def codes(paper: Paperwork) -> set[str]:
    return {setting.code for setting in paper.milling}


def test_the_milling_list_has_every_run_with_its_set_up_and_its_test_piece(
    paper: Paperwork,
) -> None:
    text = " ".join(
        text
        for text, sheet in zip(pages(), bench(), strict=True)
        if sheet.title.document == "Milling list"
    )
    for setting in paper.milling:
        at = text.index(f"{setting.code} {setting.title}")
        own = text[at : at + 700]
        piece = "waste strip" if setting.kind == "trim" else "test piece"
        number = int(setting.trial.number if setting.trial else setting.spares)
        words = f"{several(number, piece)} first" if number else "no test piece"
        assert words in own
        for run in setting.runs:
            assert (run.mark or run.noun) in own
            assert run.face in own


def test_set_up_numbers_are_on_the_stop_block_list() -> None:
    texts = [
        text
        for text, sheet in zip(pages(), bench(), strict=True)
        if sheet.title.document == "Stop-block list"
    ]
    assert "M2 S1, S2 slot, tenon in bottom rail" in " ".join(texts)
    assert "M3 S1, S2 panel groove" in " ".join(texts)
    assert "M12 S1 pull body" in " ".join(texts)


def test_every_caution_of_every_machine_is_on_the_page_of_cautions(paper: Paperwork) -> None:
    sheets = [s for s in bench() if s.title.document == "Cautions for the machines"]
    text = " ".join(t.text for sheet in sheets for t in labels(sheet))
    for setting in paper.milling:
        for caution in setting.cautions:
            assert caution in text
    own = {c for s in (*paper.panel_saw, *paper.loose_tenons) for c in s.cautions}
    every = " ".join(t.text for s in bench() for t in labels(s))
    for caution in own:
        assert caution in every


def test_steps_of_every_set_up_are_printed(paper: Paperwork) -> None:
    every = " ".join(t.text for s in bench() for t in labels(s))
    steps = [
        step
        for own in (
            *paper.panel_saw,
            *paper.loose_tenons,
            *paper.panel_glue_ups,
            *paper.leaf_glue_ups,
            paper.finish,
        )
        for step in own.steps
    ]
    assert len(steps) > 25
    assert [step for step in steps if step not in every] == []


# The pieces they are made of --------------------------------------------------------------------


def test_a_text_that_is_broken_still_answers_for_its_numbers() -> None:
    whole = said("{} deep, in {} steps", Said("46", (Print("depth", "46"),)), "8")
    lines = broken(whole, 12.0, BENCH)
    assert len(lines) > 1
    assert [prints_of(line) for line in lines] == [(Print("depth", "46"),)] + [()] * (
        len(lines) - 1
    )


def test_a_long_list_goes_on_with_its_heads_and_loses_no_row() -> None:
    """A hundred rows under bands: the heads stand on every page, each row has its box to tick."""
    job = check(LARCH_HILL, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    rows = tuple(
        line
        for n in range(10)
        for line in (
            Band(text=f"band {n}"),
            *(
                Line(cells=(f"row {n}-{k}", "x" * (k % 3), "long words " * (k % 4)))
                for k in range(10)
            ),
        )
    )
    block = Block(
        title="Things",
        columns=(Column(head="Name"), Column(head="X"), Column(head="Words", gives=True)),
        lines=rows,
        foot=("That is all.",),
    )
    title = dataclasses.replace(bench()[0].title, document="A long list")
    sheets = flow(subject(job.resolved, job.assembly, job.loads, job.problems), title, [block])
    assert len(sheets) >= 4
    assert [str(f) for sheet in sheets for f in audit(sheet)] == []
    texts = [[t.text for t in labels(sheet)] for sheet in sheets]
    assert all("Name" in own and "Words" in own for own in texts)
    assert [own.count("Things, continued") for own in texts] == [0] + [1] * (len(sheets) - 1)
    found = [t for own in texts for t in own if t.startswith("row ")]
    assert found == [f"row {n}-{k}" for n in range(10) for k in range(10)]
    boxes = [
        e
        for sheet in sheets
        for e in sheet.elements
        if isinstance(e, Stroke) and e.closed and around(e.points).width == pytest.approx(4.0)
    ]
    assert len(boxes) == 100
    # A band is never the last line of a page.
    for own in texts[:-1]:
        words = [t for t in own if t.startswith(("row ", "band "))]
        assert words[-1].startswith("row ")


def test_a_design_with_stops_has_its_cut_list_and_no_set_up(tmp_path: Path) -> None:
    text = LARCH_HILL.read_text(encoding="utf-8")
    path = tmp_path / "design.yaml"
    path.write_text(text.replace("groove: 8.2 x 14", "groove: 34 x 14"), encoding="utf-8")
    sheets = bench_of(path)
    assert [s.title.document for s in sheets] == ["Cut list by section", "Cut list by door"]
    assert all("NOT FOR MAKING" in [t.text for t in labels(s)] for s in sheets)
    assert not any("Rough" in t.text for s in sheets for t in labels(s))
