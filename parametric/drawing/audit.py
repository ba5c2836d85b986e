"""The audit of a finished sheet: what a reviewer would circle in red.

It reads the sheet and nothing else, so it does not trust the placing it checks. It finds
what the eye forgives, and misses what reads wrongly: look at the sheet as well.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.draft import Squares, segments
from parametric.drawing.layers import PENS
from parametric.drawing.lettering import letters_missing, width
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Label, reach
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import Sheet, View, primitives

Fault = Literal[
    "texts overlap",
    "text crossed by a line",
    "outside the frame",
    "cell too wide",
    "letter missing",
    "no room",
    "drawn length is not the value",
    "printed value is not the value",
]

_TOUCH = 0.05
_TRUE = 1e-6
_PAPER_LAYERS = ("sheet_frame", "sheet_thin")


@dataclass(frozen=True, slots=True, kw_only=True)
class Finding:
    """One fault, the text or thing it is about, and where on paper."""

    fault: Fault
    what: str
    at: Point = (0.0, 0.0)
    sheet: str = ""

    def __str__(self) -> str:
        """As a person reads it."""
        return f"{self.sheet}: {self.fault}: {self.what}, at {self.at[0]:.0f} {self.at[1]:.0f}"


def audit(sheet: Sheet) -> tuple[Finding, ...]:
    """Everything wrong with a sheet that a program can see; empty when it is clean."""
    found = (
        *_overlaps(sheet),
        *_crossed(sheet),
        *_outside(sheet),
        *_cells(sheet),
        *_letters(sheet),
        *(Finding(fault="no room", what=text) for text in sheet.unplaced),
        *_sizes(sheet),
    )
    return tuple(dataclasses.replace(finding, sheet=sheet.name) for finding in found)


def _labels(sheet: Sheet) -> list[Label]:
    return [
        part
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
    ]


def _overlaps(sheet: Sheet) -> Iterator[Finding]:
    labels = [(label, label.box.grown(-_TOUCH)) for label in _labels(sheet)]
    for index, (label, box) in enumerate(labels):
        for other, other_box in labels[index + 1 :]:
            if box.meets(other_box):
                yield Finding(
                    fault="texts overlap", what=f"{label.text} | {other.text}", at=label.at
                )


def _crossed(sheet: Sheet) -> Iterator[Finding]:
    lines = Squares()
    for element in sheet.elements:
        for part in primitives(element):
            if not isinstance(part, Label) and not PENS[part.layer].crosses_text:
                for a, b in segments(part):
                    lines.add_line(a, b)
    for label in _labels(sheet):
        if not label.mask and lines.meets_line(label.box.grown(-2 * _TOUCH)):
            yield Finding(fault="text crossed by a line", what=label.text, at=label.at)


def _outside(sheet: Sheet) -> Iterator[Finding]:
    paper = Box(0.0, 0.0, sheet.paper.width, sheet.paper.height)
    for element in sheet.elements:
        for part in primitives(element):
            room = paper if part.layer in _PAPER_LAYERS else sheet.paper.frame
            if not room.holds(reach(part)):
                what = part.text if isinstance(part, Label) else f"a line on {part.layer}"
                yield Finding(fault="outside the frame", what=what, at=reach(part).centre)


def _cells(sheet: Sheet) -> Iterator[Finding]:
    for cell in sheet.cells:
        if width(cell.text, cell.height, cell.weight) > cell.room + _TRUE:
            yield Finding(fault="cell too wide", what=cell.text)


def _letters(sheet: Sheet) -> Iterator[Finding]:
    for label in _labels(sheet):
        missing = letters_missing(label.text, label.weight)
        if missing:
            yield Finding(fault="letter missing", what=f"{missing} in {label.text}", at=label.at)


def _sizes(sheet: Sheet) -> Iterator[Finding]:
    views = {view.name: view for view in sheet.views}
    for element in sheet.elements:
        if isinstance(element, Dimension):
            yield from _dimension(element, views[element.view])
        elif isinstance(element, Ordinate):
            yield from _ordinate(element, views[element.view])


def _dimension(dimension: Dimension, view: View) -> Iterator[Finding]:
    d, which = dimension, 0 if dimension.axis == "across" else 1
    measured = abs(d.p2[which] - d.p1[which])
    drawn = abs(d.b[which] - d.a[which]) * view.scale
    value = d.value - d.left_out
    if abs(measured - value) > _TRUE or abs(drawn - value) > _TRUE:
        yield Finding(fault="drawn length is not the value", what=f"{d.figure}: {d.text}", at=d.a)
    yield from _printed(d.figure, d.value, d.rule, d.text, d.label)


def _ordinate(ordinate: Ordinate, view: View) -> Iterator[Finding]:
    o, which = ordinate, 0 if ordinate.axis == "across" else 1
    run = abs(o.point[which] - o.zero[which])
    on_paper = (view.at(o.point)[which], o.lines[0][0][which])
    if abs(run - abs(o.value)) > _TRUE or abs(on_paper[0] - on_paper[1]) > _TRUE:
        yield Finding(
            fault="drawn length is not the value", what=f"{o.figure}: {o.text}", at=o.label.at
        )
    yield from _printed(o.figure, o.value, o.rule, o.text, o.label)


def _printed(figure: str, value: float, rule: Rule, text: str, label: Label) -> Iterator[Finding]:
    """The value stands in the text as words of its own, and the text is what is lettered."""
    printed = rule.dimension(value)
    stands = any(f" {word} " in f" {text} " for word in (printed, f"({printed})"))
    if not stands or label.text != text:
        yield Finding(fault="printed value is not the value", what=f"{figure}: {text}", at=label.at)
