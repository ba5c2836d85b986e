"""What the sheets of a job show, and that the audit of them can fail."""

from __future__ import annotations

import dataclasses
import tempfile
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from parametric.drawing.audit import audit
from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.draft import Draft
from parametric.drawing.papers import A3
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Sheet, View, primitives
from parametric.job import check
from parametric.pack.numbers import figures
from parametric.problems import stops
from parametric.trade.paperwork import paperwork
from tests.drawing.sheets import LARCH_HILL, drawn, larch_hill, sheet_of
from tests.invariants.designs import bypass_designs, in_inches

ZEROS = {"wall face", "datum", "opening's left edge"}


def brief_sheets() -> tuple[Sheet, Sheet, Sheet]:
    """The sheets on which the brief's own numbers stand."""
    arrangement, leaves, lists = (
        sheet_of(larch_hill(), kind) for kind in ("Arrangement", "Leaves", "Cut list by section")
    )
    return arrangement, leaves, lists


def dimensions(sheet: Sheet) -> list[Dimension]:
    return [e for e in sheet.elements if isinstance(e, Dimension)]


def texts(sheet: Sheet) -> list[str]:
    return [
        part.text
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
    ]


def test_the_set_of_sheets_and_their_scales() -> None:
    arrangement, leaves, lists = brief_sheets()
    assert (arrangement.paper.name, arrangement.title.scale) == ("A3", "1:10")
    assert (leaves.paper.name, leaves.title.scale) == ("A3", "1:10")
    assert lists.paper.name == "A4"
    assert larch_hill().findings == ()


def test_drawing_must_show() -> None:
    """Every number that the brief asks for, each as a dimension or running size, by its name.

    Overall 1024.5 x 2102; rail edges 0/240/700/850/1371/1461/1982/2102; shoulder 784.5; pull
    60 and 988; overlap 120; cover 1929; floor gaps 12 and 21; trim 12 + 12.
    """
    arrangement, leaves, _ = brief_sheets()
    here = {(d.figure, d.text) for d in dimensions(arrangement)}
    assert {t for _, t in here} >= {"2102", "21", "12", "1929 cover", "120", "904.5"}
    leaf = {(d.axis, d.text) for d in dimensions(leaves)}
    assert leaf >= {
        ("across", "1024.5"),
        ("up", "2102"),
        ("across", "784.5"),
        ("across", "120"),
        ("across", "60"),
        ("up", "988 pull"),
        ("up", "12"),
        ("up", "2126 blank"),
    }
    assert [d.text for d in dimensions(leaves) if d.axis == "up"].count("12") == 2
    bands = [d.text for d in dimensions(leaves) if d.figure.endswith("/ height")][:7]
    assert bands == ["240", "460", "150", "521", "90", "521", "120"]
    stick = [e.text for e in leaves.elements if isinstance(e, Ordinate) and e.axis == "up"] + texts(
        leaves
    )
    for height in ("0  datum", "240", "700", "850", "1371", "1461", "1982", "2102"):
        assert height in stick
    assert "852" in [d.text for d in dimensions(arrangement)]


def test_every_dimension_prints_a_number_of_the_job() -> None:
    """By name: the value is the figure's own, to the last bit. Only the zeros have no sum behind."""
    job = check(LARCH_HILL, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    known = figures(job.resolved, job.loads, paper)
    sized = [
        e
        for sheet in larch_hill().sheets
        for e in sheet.elements
        if isinstance(e, (Dimension, Ordinate)) and e.figure not in ZEROS
    ]
    assert len(sized) >= 40
    for e in sized:
        assert e.figure in known, e
        assert abs(float(known[e.figure])) == abs(e.value), e.figure


def test_drawn_length_times_scale_is_the_printed_value() -> None:
    count = 0
    for sheet in larch_hill().sheets:
        for d in dimensions(sheet):
            which = 0 if d.axis == "across" else 1
            drawn_mm = abs(d.b[which] - d.a[which]) * sheet.view(d.view).scale
            assert drawn_mm + d.left_out == pytest.approx(d.value, abs=1e-6)
            words = d.text.replace("(", "").replace(")", "").split()
            number = words[0] if words[0][0].isdigit() else words[-1]
            assert float(number) == pytest.approx(d.value, abs=0.25 + 1e-9)
            count += 1
    assert count >= 30


def test_cautions_of_the_brief_stand_on_the_sheets_and_nothing_is_called_a_stop() -> None:
    arrangement, leaves, lists = (" ".join(texts(s)) for s in brief_sheets())
    assert "runs 21, 17, 12" in arrangement
    assert "fingers can be" in arrangement
    assert "leaves 7" in leaves
    assert "174.6" in leaves
    glass = " ".join(texts(sheet_of(larch_hill(), "Glass order")))
    assert "category I" in glass
    assert "NOT FOR MAKING" not in arrangement + leaves + lists + glass


# The audit must be able to fail: one fault of each kind, put into a clean sheet ---------------


def spoilt(sheet: Sheet, **changes: object) -> set[str]:
    return {f.fault for f in audit(dataclasses.replace(sheet, **changes))}  # type: ignore[arg-type]


def test_a_clean_sheet_has_no_findings() -> None:
    assert audit(larch_hill().sheets[1]) == ()


def test_a_text_over_another_is_found() -> None:
    sheet = larch_hill().sheets[1]
    label = next(e for e in sheet.elements if isinstance(e, Label))
    again = dataclasses.replace(label, at=(label.at[0] + 0.5, label.at[1]))
    assert "texts overlap" in spoilt(sheet, elements=(*sheet.elements, again))


def test_a_line_through_a_text_is_found() -> None:
    sheet = larch_hill().sheets[1]
    label = next(d.label for d in dimensions(sheet))
    box = label.box
    middle = (box.y0 + box.y1) / 2
    line = Stroke(layer="edge", points=((box.x0 - 2, middle), (box.x1 + 2, middle)))
    assert "text crossed by a line" in spoilt(sheet, elements=(*sheet.elements, line))


def test_a_text_outside_the_frame_is_found() -> None:
    sheet = larch_hill().sheets[1]
    label = next(e for e in sheet.elements if isinstance(e, Label) and e.layer == "text")
    lost = dataclasses.replace(label, at=(sheet.paper.width - 5.0, 100.0), text="lost")
    assert "outside the frame" in spoilt(sheet, elements=(*sheet.elements, lost))


def test_a_length_drawn_a_millimetre_long_is_found() -> None:
    sheet = larch_hill().sheets[1]
    one = dimensions(sheet)[0]
    which = 0 if one.axis == "across" else 1
    view: View = sheet.view(one.view)
    longer = list(one.b)
    longer[which] += 1.0 / view.scale
    wrong = dataclasses.replace(one, b=(longer[0], longer[1]))
    elements = tuple(wrong if e is one else e for e in sheet.elements)
    assert "drawn length is not the value" in spoilt(sheet, elements=elements)


def test_a_value_printed_wrong_is_found() -> None:
    sheet = larch_hill().sheets[1]
    one = next(d for d in dimensions(sheet) if d.text == "784.5")
    wrong = dataclasses.replace(one, text="785", label=dataclasses.replace(one.label, text="785"))
    elements = tuple(wrong if e is one else e for e in sheet.elements)
    assert "printed value is not the value" in spoilt(sheet, elements=elements)


def test_a_cell_too_narrow_is_found() -> None:
    sheet = larch_hill().sheets[1]
    cell = next(c for c in sheet.cells if c.text == "1024.5" or len(c.text) > 5)
    narrow = dataclasses.replace(cell, room=2.0)
    assert spoilt(sheet, cells=(*sheet.cells, narrow)) == {"cell too wide"}


def test_a_letter_the_font_lacks_is_found() -> None:
    sheet = larch_hill().sheets[1]
    label = Label(text="☃", at=(200.0, 30.0))
    assert "letter missing" in spoilt(sheet, elements=(*sheet.elements, label))


def test_what_found_no_room_is_found() -> None:
    assert spoilt(larch_hill().sheets[1], unplaced=("988 pull",)) == {"no room"}


def test_a_line_beyond_the_frame_is_found() -> None:
    sheet = larch_hill().sheets[1]
    line = Stroke(layer="edge", points=((30.0, 30.0), (30.0, 2.0)))
    assert "outside the frame" in spoilt(sheet, elements=(*sheet.elements, line))


# A design with stops --------------------------------------------------------------------------


def test_a_design_with_stops_says_so_on_every_sheet(tmp_path: Path) -> None:
    """A groove of 14 x 34 in a 40 frame leaves no wall: drawn when asked for, and marked."""
    text = LARCH_HILL.read_text(encoding="utf-8")
    assert "groove: 8.2 x 14" in text
    path = tmp_path / "design.yaml"
    path.write_text(text.replace("groove: 8.2 x 14", "groove: 34 x 14"), encoding="utf-8")
    drawings = drawn(path)
    assert all("NOT FOR MAKING" in texts(sheet) for sheet in drawings.sheets)
    assert "This cannot be made as it stands" in texts(drawings.sheets[0])
    assert [str(f) for f in drawings.findings] == []


def test_a_line_that_leads_to_a_mark_goes_round_a_text() -> None:
    draft = Draft(A3)
    draft.add(Label(text="6", at=(100.0, 100.0)))
    assert not draft.off_texts(((95.0, 101.0), (110.0, 101.0)))
    assert not draft.off_texts(((95.0, 95.0), (98.0, 98.0), (103.0, 104.0)))
    assert draft.off_texts(((95.0, 106.0), (110.0, 106.0)))


@settings(max_examples=8, suppress_health_check=[HealthCheck.too_slow])
@given(bypass_designs())
def test_random_jobs_are_drawn_without_a_finding(text: str) -> None:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(text, encoding="utf-8")
        job = check(path, user_house=False)
        if job.resolved is None or stops(job.problems):
            return
        assert [str(f) for f in drawn(path).findings] == []


@settings(max_examples=6, suppress_health_check=[HealthCheck.too_slow])
@given(bypass_designs())
def test_random_jobs_in_inches_are_drawn_without_a_finding(text: str) -> None:
    """Every size to the nearest 1/32: the drawings of the doors, on paper cut in inches."""
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(in_inches(text), encoding="utf-8")
        job = check(path, user_house=False)
        if job.resolved is None or stops(job.problems):
            return
        doors = drawn(path).sets[0].sheets
        assert {sheet.paper.name for sheet in doors} <= {"tabloid", "C"}
        assert [str(f) for sheet in doors for f in audit(sheet)] == []
