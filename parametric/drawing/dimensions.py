"""Dimensions, running ordinates and leaders, as placed.

Source: ISO 129-1 (oblique strokes, extension lines, values above the line), from memory.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from parametric.drawing.plane import Point, Polygon, arc_points
from parametric.drawing.primitives import Circle, Fill, Label, Primitive, Stroke, arrowhead
from parametric.drawing.printing import Rule

Axis = Literal["across", "up"]

TICK = 0.9
"""Half the side of a dimension's oblique stroke, mm."""
ARROW = 2.3
"""Length of a leader's arrowhead, mm."""
DOT = 0.45
"""Radius of a leader's dot, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """One link of a chain.

    Args:
        figure: the name of the number it prints.
        value: that number, mm.
        text: as printed.
        before: words printed before the value.
        after: words printed after it.
        rule: the unit and step it is printed in.
        axis: the direction measured along.
        p1: the first model point it measures.
        p2: the second.
        a: the first end of the dimension line on paper.
        b: the second.
        feet: where its extension lines begin on paper; None where it draws none.
        ticks: whether it draws the stroke at each end.
        label: the value where it was placed.
        tail: a line that carries a value standing beside the link.
        reference: another sheet owns the number; here it stands in brackets.
        left_out: what a break leaves out between the two points, mm.
    """

    figure: str
    value: float
    text: str
    before: str
    after: str
    rule: Rule
    axis: Axis
    p1: Point
    p2: Point
    a: Point
    b: Point
    feet: tuple[Point | None, Point | None]
    ticks: tuple[bool, bool]
    label: Label
    tail: Polygon = ()
    overshoot: float = 1.6
    reference: bool = False
    left_out: float = 0.0
    view: str = ""

    def primitives(self) -> Iterator[Primitive]:
        """Extension lines, dimension line, strokes, value."""
        for foot, end in zip(self.feet, (self.a, self.b), strict=True):
            if foot is not None:
                yield self._line(foot, _beyond(foot, end, self.overshoot))
        yield self._line(self.a, self.b)
        if self.tail:
            yield Stroke(layer="dims", points=self.tail, view=self.view)
        for drawn, (x, y) in zip(self.ticks, (self.a, self.b), strict=True):
            if drawn:
                ends = ((x - TICK, y - TICK), (x + TICK, y + TICK))
                yield Stroke(layer="dim_ticks", points=ends, view=self.view)
        yield self.label

    def _line(self, a: Point, b: Point) -> Stroke:
        return Stroke(layer="dims", points=(a, b), view=self.view)


@dataclass(frozen=True, slots=True, kw_only=True)
class Ordinate:
    """One running size from a zero: a thin line from the place to its number."""

    figure: str
    value: float
    text: str
    rule: Rule
    axis: Axis
    zero: Point
    point: Point
    lines: tuple[Polygon, ...]
    label: Label
    ring: Point | None = None
    view: str = ""

    def primitives(self) -> Iterator[Primitive]:
        """Lines, the small ring at zero, the number."""
        for points in self.lines:
            yield Stroke(layer="dims", points=points, view=self.view)
        if self.ring is not None:
            yield Circle(layer="dims", centre=self.ring, radius=TICK, view=self.view)
        yield self.label


@dataclass(frozen=True, slots=True, kw_only=True)
class Leader:
    """Words and a line to what they are about: an arrow to an edge, a dot on a surface."""

    points: Polygon
    end: Literal["arrow", "dot"]
    labels: tuple[Label, ...]
    view: str = ""

    def primitives(self) -> Iterator[Primitive]:
        """The line, its end, the words."""
        yield Stroke(layer="dims", points=self.points, view=self.view)
        target, then = self.points[0], self.points[1]
        if self.end == "dot":
            yield Fill(layer="dims", points=arc_points(target, DOT, 0, 360, 0.15), view=self.view)
        else:
            yield Fill(layer="dims", points=arrowhead(target, then, ARROW), view=self.view)
        yield from self.labels


def _beyond(foot: Point, end: Point, by: float) -> Point:
    """A point past the end of a line."""
    far = math.dist(foot, end)
    if far < 1e-9:
        return end
    return (end[0] + (end[0] - foot[0]) / far * by, end[1] + (end[1] - foot[1]) / far * by)
