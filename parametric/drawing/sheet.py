"""A sheet as data: lines, hatches, texts and dimensions on named layers.

Positions are mm on paper from the sheet's low left corner. What belongs to a view says
so by the view's name, and the view maps the model's millimetres to paper and back, so a
writer may put either on file. A dimension keeps the two model points it measures, the
value and the name of the figure it prints.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.drawing.dimensions import Dimension, Leader, Ordinate
from parametric.drawing.plane import Box, Point, Polygon
from parametric.drawing.primitives import Arc, Circle, Fill, Label, Primitive, Stroke
from parametric.drawing.tables import Cell, Table


@dataclass(frozen=True, slots=True, kw_only=True)
class View:
    """A view on a sheet: the scale it is drawn at and where the model's zero lies on paper.

    `scale` is model mm to one mm of paper: 10 for 1:10.
    """

    name: str
    scale: float
    origin: Point

    def x(self, across: float) -> float:
        """Model to paper, across."""
        return self.origin[0] + float(across) / self.scale

    def y(self, up: float) -> float:
        """Model to paper, up."""
        return self.origin[1] + float(up) / self.scale

    def at(self, point: Point) -> Point:
        """A model point on paper."""
        return (self.x(point[0]), self.y(point[1]))

    def path(self, points: Polygon) -> Polygon:
        """Model points on paper."""
        return tuple(self.at(p) for p in points)

    def back(self, point: Point) -> Point:
        """The model point under a point on paper."""
        return (
            (point[0] - self.origin[0]) * self.scale,
            (point[1] - self.origin[1]) * self.scale,
        )


@dataclass(frozen=True, slots=True, kw_only=True)
class Hatch:
    """The texture of one cut piece, already clipped to its outline: strokes, arcs and dots."""

    material: str
    strokes: tuple[Polygon, ...] = ()
    arcs: tuple[tuple[Point, float, float, float], ...] = ()
    dots: tuple[Point, ...] = ()
    view: str = ""

    def primitives(self) -> Iterator[Primitive]:
        """Strokes, arcs (centre, radius, start, end) and dots on the hatch layer."""
        for points in self.strokes:
            yield Stroke(layer="hatch", points=points, view=self.view)
        for centre, radius, start, end in self.arcs:
            yield Arc(
                layer="hatch", centre=centre, radius=radius, start=start, end=end, view=self.view
            )
        for x, y in self.dots:
            dash = ((x - 0.06, y), (x + 0.06, y))
            yield Stroke(layer="hatch", points=dash, view=self.view)


Composite = Hatch | Dimension | Ordinate | Leader | Table
Element = Primitive | Composite


def primitives(element: Element) -> Iterator[Primitive]:
    """An element down to strokes, circles, arcs, fills and labels."""
    match element:
        case Stroke() | Circle() | Arc() | Fill() | Label():
            yield element
        case Hatch() | Dimension() | Ordinate() | Leader() | Table():
            yield from element.primitives()
        case _:
            assert_never(element)


@dataclass(frozen=True, slots=True, kw_only=True)
class Paper:
    """A sheet size, mm, with its filing edge at the left."""

    name: str
    width: float
    height: float
    filing: float = 20.0
    edge: float = 10.0
    columns: int = 8
    rows: int = 6

    @property
    def frame(self) -> Box:
        """The frame line."""
        return Box(self.filing, self.edge, self.width - self.edge, self.height - self.edge)


Projection = Literal["first", "third"]
"""Which angle of projection the views of a sheet keep to."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """One row of the revision table."""

    letter: str
    change: str
    date: str
    by: str


@dataclass(frozen=True, slots=True, kw_only=True)
class TitleBlock:
    """What the title block says; an empty field prints "not yet".

    `moved` says under NOT APPROVED what is no longer as it was signed. Of the `revisions`,
    `earlier` is how many the block leaves to another place, `earlier_at` where they stand.

    Source: ISO 7200 (mandatory fields), from memory.
    """

    owner: str
    document: str
    title: str
    second_line: str
    drawn: str
    approved: str
    date: str
    scale: str
    sizes: str
    number: str
    revision: str
    fingerprint: str
    sheet: int = 1
    sheets: int = 1
    not_for_making: bool = False
    not_approved: bool = False
    moved: str = ""
    projection: Projection = "first"
    revisions: tuple[Revision, ...] = ()
    earlier: int = 0
    earlier_at: str = "on sheet 1"


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One drawing sheet, ready for any writer.

    `unplaced` are texts that found no room, `cells` the widths that texts must keep,
    `number_at` where "n / total" will stand, and how high, once its group is counted.
    """

    title: TitleBlock
    paper: Paper
    views: tuple[View, ...]
    elements: tuple[Element, ...]
    cells: tuple[Cell, ...] = ()
    unplaced: tuple[str, ...] = ()
    number_at: tuple[Point, float] | None = None

    @property
    def name(self) -> str:
        """What it is called in an outline or a layout tab."""
        words = (self.title.number, str(self.title.sheet), self.title.document)
        return " ".join(word for word in words if word)

    def view(self, name: str) -> View:
        """A view by its name."""
        return next(v for v in self.views if v.name == name)
