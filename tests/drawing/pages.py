"""Pages read back from their PDF: words between the rules of their tables, lines, letters.

The reader is pdfplumber, which knows nothing of what drew the page.
"""

from __future__ import annotations

import io
import itertools
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass

import pdfplumber

from parametric.drawing.drawings import Drawings
from parametric.drawing.sheet import Sheet
from parametric.trade.tables import Table
from parametric.writers.pdf import write_pdf

MM = 72 / 25.4
"""Points in a millimetre: a point is 1/72 in."""


@dataclass(frozen=True)
class Page:
    """One page: its words band by band, its upright lines, the boxes of its outlines, mm."""

    bands: tuple[Counter[str], ...]
    text: str
    upright: tuple[tuple[float, float, float], ...]
    boxes: tuple[tuple[float, float], ...]


def sheets_of(drawings: Drawings, file: str) -> tuple[Sheet, ...]:
    return next(own.sheets for own in drawings.sets if own.file == file)


def read(sheets: tuple[Sheet, ...]) -> list[Page]:
    """Every page of a set, written and read again."""
    with pdfplumber.open(io.BytesIO(write_pdf(sheets))) as pdf:
        return [_page(page) for page in pdf.pages]


def _page(page: pdfplumber.page.Page) -> Page:
    words = page.extract_words(keep_blank_chars=False, use_text_flow=False)
    rules = sorted(
        {
            round(line["top"], 1)
            for line in page.lines
            if abs(line["top"] - line["bottom"]) < 0.1 and line["x1"] - line["x0"] > 100 * MM
        }
    )
    bands = [
        Counter(
            _plain(word["text"])
            for word in words
            if low < (word["top"] + word["bottom"]) / 2 < high
        )
        for low, high in itertools.pairwise(rules)
    ]
    height = float(page.height)
    return Page(
        bands=tuple(bands),
        text=" ".join(word["text"] for word in words),
        upright=tuple(
            (line["x0"] / MM, (height - line["bottom"]) / MM, (height - line["top"]) / MM)
            for line in page.lines
            if abs(line["x0"] - line["x1"]) < 0.01
        ),
        boxes=tuple(
            ((shape["x1"] - shape["x0"]) / MM, (shape["bottom"] - shape["top"]) / MM)
            for shape in (*page.rects, *page.curves)
        ),
    )


def _plain(word: str) -> str:
    """A word without the full stop, the capital and the brackets of a sentence."""
    return word.strip(".,;:()").lower()


def words_in(cells: Iterable[str]) -> Counter[str]:
    """The words of a row of a list, with the true times sign that pages print."""
    text = " ".join(cells).replace(" x ", " × ")
    return Counter(plain for word in text.split() if (plain := _plain(word)))


def rows_missing(
    pages: list[Page], rows: Iterable[tuple[str, ...]], said_once: Counter[str] | None = None
) -> list[tuple[str, ...]]:
    """Rows of a list that stand in no band of their own; each band serves one row.

    Args:
        pages: what was read.
        rows: cells as the list has them.
        said_once: words that the page says for all rows together.
    """
    left = [band for page in pages for band in page.bands]
    missing = []
    for row in rows:
        wanted = words_in(row) - (said_once or Counter())
        found = next((band for band in left if not wanted - band), None)
        if found is None:
            missing.append(row)
        else:
            left.remove(found)
    return missing


def lettered_small(sheets: Iterable[Sheet], least: float) -> list[str]:
    """Texts under a height, but for the names of cells in the foot and a warning's sign."""
    from parametric.drawing.lettering import CELL_LABEL
    from parametric.drawing.primitives import Label
    from parametric.drawing.sheet import primitives

    return [
        part.text
        for sheet in sheets
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
        and part.height < least
        and not (part.height == CELL_LABEL and part.text in FOOT_NAMES)
    ]


FOOT_NAMES = {"Job", "Made by", "Number", "Rev.", "Sheet", "Fingerprint", "!"}


def without(table: Table, *columns: str) -> list[tuple[str, ...]]:
    """The rows of a list, some columns left out."""
    keep = [i for i, head in enumerate(table.header) if head not in columns]
    return [tuple(row[i] for i in keep) for row in table.rows]
