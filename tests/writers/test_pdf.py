"""The drawings as PDF, read back by another reader: true scale, true text, fonts inside."""

from __future__ import annotations

import io
import shutil
import subprocess
from pathlib import Path

import pdfplumber
import pytest

from parametric.writers.pdf import write_pdf
from tests.drawing.sheets import larch_hill

MM = 72 / 25.4
"""Points in a millimetre: 72 to the inch of 25.4. A bar of 100 mm is 283.46 pt."""


@pytest.fixture(scope="module")
def pdf() -> bytes:
    return write_pdf(larch_hill().sheets)


def test_pages_are_the_papers(pdf: bytes) -> None:
    """ISO 216: A3 420 x 297, A4 210 x 297 or lying; each page as large as its sheet."""
    iso = {"A3": (420, 297), "A4": (210, 297)}
    sheets = larch_hill().sheets
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        sizes = [(float(p.width) / MM, float(p.height) / MM) for p in document.pages]
    assert len(sizes) == len(sheets)
    assert [sheet.paper.name for sheet in sheets[:2]] == ["A3", "A3"]
    for sheet, size in zip(sheets, sizes, strict=True):
        assert size == pytest.approx((sheet.paper.width, sheet.paper.height), abs=0.01)
        if sheet.paper.name in iso:
            assert sorted(size) == pytest.approx(sorted(iso[sheet.paper.name]), abs=0.01)


def test_a_leaf_stands_on_paper_at_a_tenth(pdf: bytes) -> None:
    """1024.5 x 2102 at 1:10 is 102.45 x 210.20 mm on paper, twice on the sheet of leaves."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        page = document.pages[1]
        found = [
            (float(shape["x1"] - shape["x0"]) / MM, float(shape["bottom"] - shape["top"]) / MM)
            for shape in (*page.rects, *page.curves, *page.lines)
        ]
    whole = [s for s in found if s == pytest.approx((102.45, 210.20), abs=0.005)]
    sides = [s for s in found if s[1] == pytest.approx(210.20, abs=0.005)]
    assert len(whole) == 2 or len(sides) >= 4


def test_a_hundred_millimetres_measure_a_hundred(pdf: bytes) -> None:
    """The frame of an A3 sheet is 390 x 277 (ISO 5457): 1105.51 x 785.20 pt."""
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        page = document.pages[0]
        found = [
            (float(s["x1"] - s["x0"]), float(s["bottom"] - s["top"]))
            for s in (*page.rects, *page.curves)
        ]
    assert any(s == pytest.approx((390 * MM, 277 * MM), abs=0.02) for s in found)
    assert pytest.approx(283.46, abs=0.005) == 100 * MM


def test_numbers_are_text(pdf: bytes) -> None:
    with pdfplumber.open(io.BytesIO(pdf)) as document:
        words = [{w["text"] for w in page.extract_words()} for page in document.pages]
        turned = ["".join(c["text"] for c in page.chars) for page in document.pages]
    assert {"1929", "1829", "120", "904.5", "852"} <= words[0]
    assert {"1024.5", "784.5", "1371", "1461", "1982", "850", "700", "240"} <= words[1]
    for upright in ("2102", "2126", "988", "521", "460"):
        assert upright in turned[1] or upright[::-1] in turned[1]


def test_fonts_are_embedded_and_ours(pdf: bytes, tmp_path: Path) -> None:
    if shutil.which("pdffonts") is None:
        pytest.skip("poppler-utils is not installed")
    (tmp_path / "drawings.pdf").write_bytes(pdf)
    listed = subprocess.run(
        ["pdffonts", str(tmp_path / "drawings.pdf")], capture_output=True, text=True, check=True
    ).stdout.splitlines()[2:]
    assert listed
    for line in listed:
        assert "Stilewright-" in line, line
        assert line.split()[-5] == "yes", line


def test_the_file_is_sound(pdf: bytes, tmp_path: Path) -> None:
    if shutil.which("qpdf") is None:
        pytest.skip("qpdf is not installed")
    (tmp_path / "drawings.pdf").write_bytes(pdf)
    run = subprocess.run(
        ["qpdf", "--check", str(tmp_path / "drawings.pdf")],
        capture_output=True,
        text=True,
        check=False,
    )
    assert run.returncode == 0, run.stdout + run.stderr


def test_two_writings_are_the_same_bytes(pdf: bytes) -> None:
    assert write_pdf(larch_hill().sheets) == pdf
