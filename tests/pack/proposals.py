"""Proposals as the pack makes them, and their pages as pdfplumber reads them: it drew nothing."""

from __future__ import annotations

import io
import math
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import pdfplumber

from parametric.drawing.subject import subject
from parametric.job import Job, check
from parametric.pack.preview import preview_page
from parametric.pack.proposal import Proposal, proposal
from parametric.trade.fingerprint import fingerprint
from parametric.trade.paperwork import paperwork

POINT = 72 / 25.4
"""Points in a millimetre: a point is 1/72 in."""
MARGIN = 18.0
TEXT_GAP = 1.6
"""How far apart, in sizes of type, letters of one line are at most."""


@dataclass(frozen=True)
class Line:
    """A line of text as it was lettered: fractions as they are said, the colour as levels 0 to 1."""

    text: str
    x: float
    top: float
    size: float
    colour: tuple[float, ...]


@dataclass(frozen=True)
class Page:
    """One page: its size and what is on it, mm."""

    width: float
    height: float
    lines: tuple[Line, ...]
    raw: Any

    @property
    def words(self) -> str:
        """All lines in the order they were lettered."""
        return " ".join(line.text for line in self.lines)


def proposed(path: Path, picture: bytes | None = None) -> Proposal:
    """The proposal of a design, without the models that a whole pack takes."""
    return proposal_of(check(path, user_house=False), picture)


def proposal_of(job: Job, picture: bytes | None = None) -> Proposal:
    """The same for a job that was checked."""
    assert job.resolved is not None, job.problems
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    page = preview_page(
        job.resolved,
        job.loads,
        fingerprint=fingerprint(job.resolved, job.assembly),
        elevations=("",),
        assembly=job.assembly,
        problems=job.problems,
        paper=paper,
    )
    drawn = subject(job.resolved, job.assembly, job.loads, job.problems, job.moved)
    return proposal(drawn, page, paper, picture=picture)


def read(data: bytes) -> list[Page]:
    """Every page."""
    with pdfplumber.open(io.BytesIO(data)) as file:
        return [
            Page(
                width=float(page.width) / POINT,
                height=float(page.height) / POINT,
                lines=tuple(_lines(page)),
                raw=page,
            )
            for page in file.pages
        ]


def _lines(page: Any) -> Iterator[Line]:
    """Letters in the order they were drawn, parted where one stands far from the last."""
    own: list[Any] = []
    for char in page.chars:
        if own and _far(own[-1], char):
            yield _line(own)
            own = []
        own.append(char)
    if own:
        yield _line(own)


def _far(last: Any, char: Any) -> bool:
    middle = [((c["x0"] + c["x1"]) / 2, (c["top"] + c["bottom"]) / 2) for c in (last, char)]
    size = max(c[side] for c in (last, char) for side in ("size", "width", "height"))
    if last["fontname"] != char["fontname"]:
        return True
    return math.dist(*middle) > TEXT_GAP * size


def _line(chars: list[Any]) -> Line:
    colour = chars[0]["non_stroking_color"]
    return Line(
        text="".join(c["text"] for c in chars),
        x=min(c["x0"] for c in chars) / POINT,
        top=min(c["top"] for c in chars) / POINT,
        size=max(c["size"] for c in chars),
        colour=tuple(float(level) for level in colour),
    )
