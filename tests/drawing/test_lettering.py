"""What letters measure, against the font file itself and against the printed page."""

from __future__ import annotations

import pytest
from reportlab.pdfbase import pdfmetrics
from reportlab.pdfbase.ttfonts import TTFont

from parametric.drawing.column import Sentences, item_height, place_items
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import extent, font_file, letters_missing, type_size, width, wrap
from parametric.drawing.papers import A3
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label


@pytest.mark.parametrize("weight", ["regular", "bold"])
def test_widths_are_those_the_pdf_is_set_with(weight: str) -> None:
    """Reportlab reads the font on its own; a width off by a hair would misplace every value."""
    pdfmetrics.registerFont(TTFont(f"again-{weight}", str(font_file(weight))))  # type: ignore[arg-type]
    for text in ("1024.5", "1829 opening, largest of three", "Ø 9 × 18", "glyph"):
        size = type_size(2.5, weight)  # type: ignore[arg-type]
        assert width(text, 2.5, weight) == pytest.approx(  # type: ignore[arg-type]
            pdfmetrics.stringWidth(text, f"again-{weight}", size), rel=1e-3
        )


def test_capitals_are_as_high_as_they_say() -> None:
    """H of a 3.5 mm lettering stands 3.5 high and hangs nowhere."""
    ink = extent("H", 3.5)
    assert ink.above == pytest.approx(3.5, abs=0.02)
    assert ink.below == pytest.approx(0.0, abs=0.02)


def test_figures_are_of_one_width() -> None:
    assert len({round(width(d), 6) for d in "0123456789"}) == 1


def test_a_letter_that_cannot_be_printed_is_named() -> None:
    assert letters_missing("abc ☃ 1829") == "☃"
    assert letters_missing("Ł × – ° Ø ½") == ""


def test_lines_are_broken_between_words() -> None:
    lines = wrap("all heights are read from the finished foot of both leaves", 30.0)
    assert " ".join(lines) == "all heights are read from the finished foot of both leaves"
    assert all(width(line) <= 30.0 for line in lines)


def test_a_list_too_long_for_its_column_goes_on_in_the_next() -> None:
    notes = Sentences(title="Notes", kind="numbered", texts=tuple(f"note {n}" for n in range(1, 9)))
    room = item_height(notes) * 0.6
    boxes = [Box(100, 100, 184, 100 + room), Box(200, 100, 284, 100 + room)]
    draft = Draft(A3)
    assert place_items(draft, [notes], boxes) == ()
    labels = [e for e in draft.elements if isinstance(e, Label)]
    numbers = [e.text for e in labels if e.text.isdigit()]
    assert numbers == [str(n) for n in range(1, 9)]
    assert [e.text for e in labels if e.text.startswith("Notes")] == ["Notes", "Notes, continued"]
    assert all(b.holds(e.box) for e in labels for b in boxes if b.x0 <= e.at[0] <= b.x1)


def test_what_finds_no_room_is_given_back() -> None:
    notes = Sentences(title="Notes", kind="numbered", texts=("one", "two"))
    left = place_items(Draft(A3), [notes], [Box(100, 100, 184, 104)])
    assert left == (notes,)
