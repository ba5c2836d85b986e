"""Labels: one for every piece, and a code that another maker's reader finds to say the same.

The codes are read from the printed page, rendered by pdfium, with zxing-cpp: neither knows
how they were made.
"""

from __future__ import annotations

import dataclasses
import io
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import NamedTuple

import pdfplumber
import pypdfium2
import pytest
import zxingcpp

from parametric.drawing.audit import audit
from parametric.drawing.labels import draw_labels
from parametric.drawing.labels.code import QUIET, dark_boxes, modules
from parametric.drawing.labels.face import LARGE, SMALL
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label as Text
from parametric.drawing.sheet import Sheet
from parametric.writers.pdf import write_pdf
from tests.drawing.full_size import made
from tests.drawing.sheets import LARCH_HILL
from tests.drawing.test_full_size import inch_twin, reading_room

DPI = 300
"""What the plainest office printer does."""


class Code(NamedTuple):
    """A code found on a page: what it says, and its middle, mm from the page's top left."""

    text: str
    x: float
    y: float


def codes(data: bytes) -> list[list[Code]]:
    """Every code on every page."""
    found = []
    document = pypdfium2.PdfDocument(data)
    for page in document:
        picture = page.render(scale=DPI / 72).to_pil()
        own = []
        for code in zxingcpp.read_barcodes(picture, formats=zxingcpp.BarcodeFormat.QRCode):
            corners = (
                code.position.top_left,
                code.position.bottom_right,
            )
            x, y = (sum(getattr(c, axis) for c in corners) / 2 / DPI * 25.4 for axis in ("x", "y"))
            own.append(Code(code.text, x, y))
        found.append(own)
    document.close()
    return found


def printed(page: pdfplumber.page.Page, box: Box) -> str:
    """The words inside a box, mm from the top left of a page, line by line."""
    k = 72 / 25.4
    cut = page.crop((box.x0 * k, box.y0 * k, box.x1 * k, box.y1 * k))
    return " ".join((cut.extract_text(x_tolerance=1.5) or "").split())


def around(code: Code, size: tuple[float, float, float]) -> Box:
    """The label about its code, which stands 1 mm in from its top right corner."""
    wide, tall, side = size
    right, top = code.x + side / 2 + 1.0, code.y - side / 2 - 1.0
    return Box(right - wide, top, right, top + tall)


@pytest.mark.parametrize("job", [reading_room, inch_twin])
def test_every_made_piece_has_its_label_and_its_code_says_what_is_printed_beside_it(
    job: Callable[[], tuple[object, ...]],
) -> None:
    subject, paper, title = job()
    sheets = draw_labels(subject, paper, title)  # type: ignore[arg-type]
    data = write_pdf(sheets)
    found = codes(data)
    assert sorted(code.text for page in found for code in page) == sorted(
        label.readable
        for label in paper.labels  # type: ignore[attr-defined]
    )
    size = (70.0, 36.0, 17.0) if job is reading_room else (100.0, 50.0, 24.0)
    with pdfplumber.open(io.BytesIO(data)) as pdf:  # once: a page is slow to take apart
        for paged, page in zip(found, pdf.pages, strict=True):
            for code in paged:
                said = printed(page, around(code, size))
                for words in code.text.split("  "):
                    assert words in said, (words, said)
    made_pieces = sorted(p.name for p in subject.assembly.parts if not p.supplied)  # type: ignore[attr-defined]
    labelled = sorted(n for label in paper.labels for n in label.names)  # type: ignore[attr-defined]
    assert labelled == made_pieces


def texts(sheets: Sequence[Sheet]) -> list[Text]:
    return [e for sheet in sheets for e in sheet.elements if isinstance(e, Text)]


def test_labels_of_the_reading_room_by_hand() -> None:
    """21 labels of 70 x 36: 18 pieces with a place of their own, 3 bundles; 12 on a sheet."""
    sheets = draw_labels(*reading_room())
    assert len(sheets) == 2
    assert "21 labels, 70 × 36 mm" in sheets[0].title.second_line
    said = texts(sheets)
    marks = [t.text for t in said if t.height == 10.0]
    assert len(marks) == 21
    assert marks[:4] == ["S1-1", "S2-1", "R1-1", "R2-1"]
    assert all(t.weight == "bold" for t in said if t.height == 10.0)
    sizes = [t.text for t in said if t.height == 5.0]
    assert len(sizes) == 21
    # The blank of a stile is 2102 and 12 off each end; panel and glass print rounded down.
    assert sizes[0] == "2126 × 120 × 40"
    assert {"784.5 × 240 × 40", "485 × 803.5 × 28", "778.5 × 515 × 6"} <= set(sizes)
    words = {t.text for t in said}
    assert {"left stile, leaf A", "on the face; arrow to the top"} <= words
    assert "bundle of 20, all alike: leaf A, leaf B" in words


def test_labels_stand_edge_to_edge_and_their_words_inside() -> None:
    for job, size in ((reading_room, SMALL), (inch_twin, LARGE)):
        for sheet in draw_labels(*job()):
            frame = sheet.paper.frame
            top = max(
                y
                for e in sheet.elements
                if getattr(e, "layer", "") == "hidden"
                for _, y in e.points  # type: ignore[union-attr]
            )
            marks = [e for e in sheet.elements if isinstance(e, Text) and e.height == 10.0]
            for mark in marks:
                column = round((mark.at[0] - 2.0 - frame.x0) / size.wide, 6)
                row = round((top - mark.at[1] - 12.0) / size.tall, 6)
                assert column == int(column), mark.text
                assert row == int(row), mark.text
            assert [str(f) for f in audit(sheet)] == []


def test_a_name_in_letters_the_font_lacks_is_still_in_the_code(tmp_path: Path) -> None:
    """The code holds any letter; on paper the audit says which are missing."""
    name = "Οδός Ερμού, χώλ ☃ 玄関"
    text = LARCH_HILL.read_text(encoding="utf-8")
    path = tmp_path / "design.yaml"
    path.write_text(text.replace("Larch Hill reading room", name), encoding="utf-8")
    subject, paper, title = made(path)
    sheets = draw_labels(subject, paper, title)
    found = [code.text for page in codes(write_pdf(sheets)) for code in page]
    assert sorted(found) == sorted(label.readable for label in paper.labels)
    assert all(text.startswith(name) for text in found)
    assert {f.fault for s in sheets for f in audit(s)} <= {"letter missing"}


def test_a_label_that_holds_no_more_is_named() -> None:
    """A name of 400 letters makes a code too fine to print: said, not left out."""
    subject, paper, title = reading_room()
    long = dataclasses.replace(paper.labels[0], job="Room " * 80)
    sheets = draw_labels(subject, dataclasses.replace(paper, labels=(long,)), title)
    assert "no room" in {f.fault for sheet in sheets for f in audit(sheet)}


def test_dark_boxes_are_the_modules_and_nothing_else() -> None:
    """Laid over the modules: each dark one under one box, each light one under none.

    Source: ISO/IEC 18004: three finder patterns of 7 modules, a quiet zone of 4, from memory.
    """
    rows = modules("S1-1  leaf A")
    count = len(rows)
    assert (count - 17) % 4 == 0
    room = Box(0.0, 0.0, float(count + 2 * QUIET), float(count + 2 * QUIET))
    boxes = dark_boxes(rows, room)
    for down in range(-QUIET, count + QUIET):
        for across in range(-QUIET, count + QUIET):
            x, y = across + QUIET + 0.5, room.y1 - (down + QUIET + 0.5)
            over = sum(b.x0 < x < b.x1 and b.y0 < y < b.y1 for b in boxes)
            inside = 0 <= down < count and 0 <= across < count
            assert over == int(inside and rows[down][across])
    for down, across in ((0, 0), (0, count - 7), (count - 7, 0)):
        ring = [rows[down + i][across + j] for i in range(7) for j in range(7)]
        assert sum(ring) == 24 + 9
