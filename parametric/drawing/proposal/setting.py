"""Setting a proposal: its paper, its grid of six columns, its sizes of type, text down a column."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.drawing.draft import Draft
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import (
    LEFT_OUT,
    Weight,
    printable,
    type_size,
    width,
    wrap,
)
from parametric.drawing.papers import bench_paper
from parametric.drawing.plane import Box, Polygon
from parametric.drawing.primitives import Anchor, Label, Stroke
from parametric.drawing.sheet import Paper, Sheet
from parametric.drawing.subject import Subject

MARGIN = 18.0
"""What stays white at every edge, mm, but for what is pictured on the first page."""
GRID = 6
"""Columns, and what is between them, mm."""
GUTTER = 5.0
FOOT = 9.0
"""What the foot of every page takes above the margin, mm."""
_POINT = 25.4 / 72.0
_LEADING = 1.32
"""From line to line, in ems."""
_ASCENT = 1.12
"""Letters like t and l stand above capitals, in heights of capitals."""


def points(size: float) -> float:
    """The height of capitals, mm, of a size of type in points."""
    return size * _POINT / type_size(1.0)


NOTE, TEXT, HEAD, TITLE = (points(size) for size in (9.0, 11.0, 14.0, 22.0))
"""9 for notes, 11 for what is read, 14 for what is headed, 22 for the job's name."""
TITLES = (TITLE, points(18.0), HEAD, TEXT)
"""What a long name is tried in."""


def pitch(height: float) -> float:
    """From line to line, mm."""
    return type_size(height) * _LEADING


@dataclass(frozen=True, slots=True, kw_only=True)
class Tint:
    """An area in one colour, or shading into another; with a `width`, a line of it, mm.

    `toward` is where a second colour is reached, from where: two points, and the colour.
    """

    points: Polygon
    colour: str
    alpha: float = 1.0
    width: float = 0.0
    toward: tuple[tuple[float, float], tuple[float, float], str] | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class ProposalPage:
    """One page: what is printed in colour first, then a picture's place, then lines and letters."""

    sheet: Sheet
    tints: tuple[Tint, ...] = ()
    picture: Box | None = None


def proposal_paper(job: Subject) -> Paper:
    """The house's paper for what is read in the hand, upright, the same margin all round."""
    paper = bench_paper(job)
    return Paper(
        name=paper.name, width=paper.width, height=paper.height, filing=MARGIN, edge=MARGIN
    )


def columns(box: Box, first: int, count: int) -> Box:
    """Some of the six columns of a box, counted from 0."""
    step = (box.width + GUTTER) / GRID
    x0 = box.x0 + first * step
    return Box(x0, box.y0, x0 + count * step - GUTTER, box.y1)


def says_anything(text: str) -> bool:
    """Whether a letter or a numeral of it can be printed."""
    return any(letter.isalnum() for letter in printable(text))


def lines_of(
    text: str, room: float, height: float, weight: Weight = "regular", most: int = 0
) -> list[str]:
    """Lines that all fit, a word longer than one broken; past `most` the rest is left out."""
    words = " ".join(
        piece for word in printable(text).split() for piece in _broken(word, room, height, weight)
    )
    lines = wrap(words, room, height, weight)
    if most and len(lines) > most:
        last = lines[most - 1]
        while last and width(f"{last}{LEFT_OUT}", height, weight) > room:
            last = last[:-1]
        lines = [*lines[: most - 1], f"{last.rstrip()}{LEFT_OUT}"]
    return lines


def _broken(word: str, room: float, height: float, weight: Weight) -> Iterator[str]:
    while word and width(word, height, weight) > room:
        fits = next(
            (n for n in range(len(word), 1, -1) if width(word[:n], height, weight) <= room), 1
        )
        yield word[:fits]
        word = word[fits:]
    if word:
        yield word


def title_lines(text: str, room: float, most: int = 3) -> tuple[float, list[str]]:
    """A name in the largest size that sets it in a few lines."""
    for height in TITLES:
        lines = lines_of(text, room, height, "bold")
        if len(lines) <= most:
            return height, lines
    return TITLES[-1], lines_of(text, room, TITLES[-1], "bold", most)


def set_lines(
    draft: Draft,
    lines: Sequence[str],
    at: tuple[float, float],
    height: float,
    *,
    weight: Weight = "regular",
    layer: Layer = "text",
    stacked: bool = False,
    anchor: Anchor = "left",
) -> float:
    """Letter lines down from a place, which is the top of the first; the top of what follows."""
    x, y = at
    step = pitch(height)
    for line in lines:
        base = y - (step - height * _ASCENT) / 2 - height * _ASCENT + 0.1 * height
        draft.add(
            Label(
                text=line,
                at=(x, base),
                height=height,
                weight=weight,
                layer=layer,
                anchor=anchor,
                stacked=stacked and "/" in line,
            )
        )
        y -= step
    return y


def set_text(
    draft: Draft,
    text: str,
    box: Box,
    y: float,
    height: float = TEXT,
    *,
    weight: Weight = "regular",
    layer: Layer = "text",
    stacked: bool = False,
    most: int = 0,
) -> float:
    """A paragraph across a box, from a height down; the height that it ends at."""
    lines = lines_of(text, box.width, height, weight, most)
    return set_lines(draft, lines, (box.x0, y), height, weight=weight, layer=layer, stacked=stacked)


def rule(draft: Draft, box: Box, y: float, layer: Layer = "edge") -> None:
    """A level line across a box."""
    draft.add(Stroke(layer=layer, points=((box.x0, y), (box.x1, y))))
