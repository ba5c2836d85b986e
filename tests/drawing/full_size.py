"""Full-size sheets of a design, and what a PDF reader of another maker sees on a page, in mm."""

from __future__ import annotations

import dataclasses
import io
from collections.abc import Sequence
from pathlib import Path
from typing import NamedTuple

import pdfplumber

from parametric.drawing.drawings import draw
from parametric.drawing.sheet import Sheet, TitleBlock
from parametric.drawing.subject import Subject, subject
from parametric.figures import Figure
from parametric.job import check
from parametric.outlines import Outline, Vertex, backwards, moved
from parametric.shapes.segmental import segmental
from parametric.trade.paperwork import Paperwork, paperwork
from parametric.writers.pdf import write_pdf


def arched(width: float, spring: float, rise: float) -> Outline:
    """A light with a segmental head, its low left corner at zero."""
    head = segmental(Figure(width), Figure(rise), "arch").edge
    return (Vertex(0.0, 0.0), Vertex(width, 0.0), *backwards(moved(head, 0.0, spring)))


POINTS = 72 / 25.4
"""Points in a mm. Source: ISO 32000-1, 8.3.2.3: a unit is 1/72 inch; the inch is 25.4 mm."""


class Line(NamedTuple):
    """A straight line on a page, mm from its low left corner; the low or left end first."""

    x0: float
    y0: float
    x1: float
    y1: float
    width: float

    @property
    def level(self) -> bool:
        return abs(self.y1 - self.y0) < 1e-3

    @property
    def upright(self) -> bool:
        return abs(self.x1 - self.x0) < 1e-3

    @property
    def length(self) -> float:
        return ((self.x1 - self.x0) ** 2 + (self.y1 - self.y0) ** 2) ** 0.5


class Word(NamedTuple):
    """A word on a page and the middle of it, mm."""

    text: str
    x: float
    y: float


class Page(NamedTuple):
    """One page as it is read back."""

    width: float
    height: float
    lines: tuple[Line, ...]
    words: tuple[Word, ...]


def pages(sheets: Sequence[Sheet], *, words: bool = False) -> list[Page]:
    """Write some sheets and read them back with pdfplumber, words only where they are asked for."""
    found = []
    with pdfplumber.open(io.BytesIO(write_pdf(sheets))) as pdf:
        for page in pdf.pages:
            height = float(page.height)
            lines = []
            for line in page.lines:
                (ax, ay), (bx, by) = sorted((float(x), height - float(y)) for x, y in line["pts"])
                if abs(ax - bx) < 1e-3 and ay > by:
                    ay, by = by, ay
                size = (v / POINTS for v in (ax, ay, bx, by, float(line["linewidth"])))
                lines.append(Line(*size))
            said = [
                Word(
                    word["text"],
                    (word["x0"] + word["x1"]) / 2 / POINTS,
                    (height - (word["top"] + word["bottom"]) / 2) / POINTS,
                )
                for word in (page.extract_words() if words else ())
            ]
            found.append(
                Page(float(page.width) / POINTS, height / POINTS, tuple(lines), tuple(said))
            )
    return found


def made(path: Path) -> tuple[Subject, Paperwork, TitleBlock]:
    """A design on its way to paper, and the title that all of its sheets share."""
    job = check(path, user_house=False)
    assert job.resolved is not None, job.problems
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    arguments = (job.resolved, job.assembly, job.loads, job.problems)
    # the title is that of all sheets, so only the first few are drawn for it
    title = draw(*arguments, mark="0123-4567").sheets[0].title
    plain = dataclasses.replace(title, number="LH-07-F", document="", second_line="", revisions=())
    return subject(*arguments), paper, plain
