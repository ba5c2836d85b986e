"""Stacked fractions: what is one, how large it is set, and that every reader reads it as said.

Sizes as the drawing standard of this workshop has them: numerals 0.75 of the capitals, the
whole stack 1.65, 0.3 after the whole number. Common practice, no source.
"""

from __future__ import annotations

import io
import subprocess
from fractions import Fraction
from pathlib import Path

import pdfplumber
import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.drawing.draft import Draft
from parametric.drawing.fractions import Run, Stack, set_stacked
from parametric.drawing.papers import A4
from parametric.drawing.primitives import Label
from parametric.drawing.printing import Rule
from parametric.units import decimal_inch_text, long_inch_text
from parametric.writers.pdf import write_pdf
from parametric.writers.svg import write_svg
from tests.drawing.test_chains import TITLE

INCH = 25.4


def stacks(text: str) -> list[tuple[str, str]]:
    parts = set_stacked(text, 2.5).parts
    return [(p.top.text, p.bottom.text) for p in parts if isinstance(p, Stack)]


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("29-13/16", [("13", "16")]),
        ("3/4 pull", [("3", "4")]),
        ("6' 10-1/2\" cover", [("1", "2")]),
        ("10-17/32 (10.534)", [("17", "32")]),
        ("-1/8", [("1", "8")]),
        ("72 opening, largest of three", []),
        ("2026-11-19", []),
        ("1/3", []),
        ("17/16", []),
        ("1/2/3", []),
        ("0.5/16", []),
    ],
)
def test_only_halvings_of_an_inch_are_stacked(text: str, wanted: list[tuple[str, str]]) -> None:
    assert stacks(text) == wanted


def test_a_text_that_is_no_length_is_never_stacked() -> None:
    """Only the code that prints a length asks for it: a scale of 1 1/2" = 1'-0" stays a line."""
    assert Label(text='1 1/2" = 1\'-0"', at=(0, 0)).ink.below < 1.0
    assert Label(text="sheet 1/2", at=(0, 0)).ink == Label(text="sheet 1/2", at=(9, 9)).ink


def test_the_stack_by_hand() -> None:
    """At 2.5: numerals 1.875 high, 4.125 in all about the middle, 1.25; 0.75 off the 29."""
    whole, stack = set_stacked("29-13/16", 2.5).parts
    assert isinstance(whole, Run)
    assert isinstance(stack, Stack)
    assert whole.text == "29"
    assert stack.up == pytest.approx(1.25)
    assert (stack.top.height, stack.bottom.height) == (1.875, 1.875)
    assert stack.top.up + stack.top.height - stack.bottom.up == pytest.approx(4.125)
    after = Label(text="29", at=(0, 0)).ink.width
    assert stack.start - after == pytest.approx(0.75)
    ink = set_stacked("29-13/16", 2.5).ink
    assert ink.below == pytest.approx(2.0625 - 1.25)
    assert ink.above == pytest.approx(2.0625 + 1.25)
    # The numerals keep off the bar between them.
    assert stack.bottom.up + stack.bottom.height < stack.up - 0.09
    assert stack.top.up > stack.up + 0.09


@given(st.integers(1, 150 * 64))
def test_a_stacked_text_holds_what_was_said_in_order(sixty_fourths: int) -> None:
    """Whole number, numerator, bar, denominator: put together again they are the text."""
    inches = Fraction(sixty_fourths, 64)
    whole, rest = divmod(inches, 1)
    text = f"{whole}-{rest}" if whole and rest else str(inches)
    said = "".join(
        p.text if isinstance(p, Run) else f"{p.joint}{p.top.text}/{p.bottom.text}"
        for p in set_stacked(text, 2.5).parts
    )
    assert said == text


def test_two_readers_read_it_as_it_is_said(tmp_path: Path) -> None:
    """Poppler by the replacement text, pdfminer by the letters themselves."""
    said = ["29-13/16", "3/4 pull", "6' 10-1/2\" cover", "10-17/32 (10.534)", "72"]
    draft = Draft(A4)
    for row, text in enumerate(said):
        draft.add(Label(text=text, at=(60, 250 - 12 * row), stacked=True, layer="dims"))
    draft.add(Label(text="5-3/8 blank", at=(40, 60), turned=90, stacked=True, layer="dims"))
    pdf = write_pdf([draft.sheet(TITLE)])
    path = tmp_path / "fractions.pdf"
    path.write_bytes(pdf)
    read = subprocess.run(
        ["pdftotext", "-layout", str(path), "-"], capture_output=True, text=True, check=True
    ).stdout
    lines = {" ".join(line.split()) for line in read.splitlines()}
    assert {*said, "5-3/8 blank"} <= lines
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        letters = "".join(c["text"] for c in document.pages[0].chars)
    assert letters == "".join((*said, "5-3/8 blank"))


def test_the_picture_says_it_too() -> None:
    draft = Draft(A4)
    draft.add(Label(text='29-13/16" "', at=(60, 250), stacked=True, layer="dims"))
    svg = write_svg(draft.sheet(TITLE))
    assert 'aria-label="29-13/16&quot; &quot;"' in svg
    assert all(f">{numeral}<" in svg for numeral in ("29", "13", "16"))


# How a value is said --------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("inches", "said"),
    [
        # 72 in is six feet, no more: 6 ft is said from the first step over it.
        (Fraction(72), "72"),
        (72 + Fraction(1, 32), "6' 1/32\""),
        (82 + Fraction(1, 2), "6' 10-1/2\""),
        (Fraction(84), "7' 0\""),
        (29 + Fraction(13, 16), "29-13/16"),
        # 72 1/128 is nearest 72, and so still six feet.
        (72 + Fraction(1, 128), "72"),
    ],
)
def test_feet_only_over_six(inches: Fraction, said: str) -> None:
    assert long_inch_text(float(inches) * INCH) == said


@pytest.mark.parametrize(
    ("mm", "said"),
    [
        # 267.4874 / 25.4 = 10.53100: 10 17/32 is 10.53125, which is 10.531 to the thousandth too.
        (267.4874, "10-17/32"),
        # 267.6 / 25.4 = 10.5354 -> 10.535; nearest 1/32 is 10 17/32.
        (267.6, "10-17/32 (10.535)"),
        # 8.2 / 25.4 = 0.32283; nearest 10/32 = 5/16. No nought before the point: ASME Y14.5,
        # decimal inch dimensioning, from memory.
        (8.2, "5/16 (.323)"),
        (25.4, "1"),
        (19.05, "3/4"),
    ],
)
def test_what_falls_on_no_step_is_followed_by_its_decimal(mm: float, said: str) -> None:
    machined = Rule(unit="inch", step=Fraction(1, 32), decimals=True)
    assert machined.dimension(mm) == said
    assert Rule(unit="inch", step=Fraction(1, 32)).dimension(mm) == said.split()[0]


def test_decimals_by_hand() -> None:
    assert decimal_inch_text(0.0) == ".000"
    assert decimal_inch_text(-8.2) == "-.323"


def test_a_site_sheet_marks_every_value() -> None:
    """To the sixteenth: 19.05 is 3/4, 20 / 25.4 = 0.787 is nearest 13/16."""
    site = Rule(unit="inch", step=Fraction(1, 16), marked=True)
    assert (site.text(19.05), site.text(20.0), site.text(609.6)) == ('3/4"', '13/16"', '24"')
    assert Rule(unit="mm", step=Fraction(1, 2), marked=True).text(19.05) == "19"
