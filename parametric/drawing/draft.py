"""The drawing board: a sheet being drawn, and what later texts must keep clear of.

Every text and every line that may not run through a text is kept in an index of 5 mm
squares, so that a place can be tried before it is taken.
"""

from __future__ import annotations

import itertools
import math
from collections import defaultdict
from collections.abc import Iterable, Iterator, Sequence

from parametric.drawing.layers import PENS, Layer
from parametric.drawing.plane import Box, Point, Polygon, arc_points, edges
from parametric.drawing.primitives import Arc, Circle, Fill, Label, Primitive, Stroke, reach
from parametric.drawing.sheet import Element, Paper, Sheet, TitleBlock, View, primitives
from parametric.drawing.tables import Cell, Table

Segment = tuple[Point, Point]
_SQUARE = 5.0
CLEAR = 0.35
"""What a text keeps clear of other texts and of lines, mm."""


def segments(primitive: Primitive) -> Iterator[Segment]:
    """The lines of a primitive; round ones as short chords."""
    match primitive:
        case Stroke() if primitive.closed:
            yield from edges(primitive.points)
        case Stroke():
            yield from zip(primitive.points, primitive.points[1:], strict=False)
        case Fill():
            yield from edges(primitive.points)
        case Circle():
            yield from edges(arc_points(primitive.centre, primitive.radius, 0, 360, 0.5)[:-1])
        case Arc():
            a = primitive
            points = arc_points(a.centre, a.radius, a.start, a.end, 0.5)
            yield from itertools.pairwise(points)
        case Label():
            return


class Squares:
    """Boxes and lines filed by the 5 mm squares they touch."""

    def __init__(self) -> None:
        self._boxes: defaultdict[tuple[int, int], list[Box]] = defaultdict(list)
        self._lines: defaultdict[tuple[int, int], list[Segment]] = defaultdict(list)

    def add_box(self, box: Box) -> None:
        """File a box."""
        for square in _under(box):
            self._boxes[square].append(box)

    def add_line(self, a: Point, b: Point) -> None:
        """File a line in the squares it runs through."""
        (x, y), across, up = a, b[0] - a[0], b[1] - a[1]
        pieces = max(1, math.ceil(math.dist(a, b) / _SQUARE))
        i, j = math.floor(x / _SQUARE), math.floor(y / _SQUARE)
        touched: dict[tuple[int, int], None] = {(i, j): None}
        # this runs for every line of every sheet, so the squares between are not asked of a box
        for t in range(1, pieces + 1):
            was_i, was_j = i, j
            i = math.floor((x + across * t / pieces) / _SQUARE)
            j = math.floor((y + up * t / pieces) / _SQUARE)
            if i == was_i or j == was_j:
                touched[i, j] = None
            else:
                touched[i, was_j] = touched[was_i, j] = touched[i, j] = None
        for square in touched:
            self._lines[square].append((a, b))

    def meets_box(self, box: Box) -> bool:
        """True when a filed box lies in the way."""
        return any(box.meets(other) for square in _under(box) for other in self._boxes[square])

    def meets_line(self, box: Box) -> bool:
        """True when a filed line runs through."""
        return any(box.crossed(*line) for square in _under(box) for line in self._lines[square])

    def crosses_box(self, a: Point, b: Point) -> bool:
        """True when a line runs through a filed box."""
        reach = Box(min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1]))
        return any(other.crossed(a, b) for square in _under(reach) for other in self._boxes[square])


def _under(box: Box) -> Iterator[tuple[int, int]]:
    for i in range(math.floor(box.x0 / _SQUARE), math.floor(box.x1 / _SQUARE) + 1):
        for j in range(math.floor(box.y0 / _SQUARE), math.floor(box.y1 / _SQUARE) + 1):
            yield i, j


class Draft:
    """A sheet on the board."""

    def __init__(self, paper: Paper) -> None:
        self.paper = paper
        self.views: list[View] = []
        self.elements: list[Element] = []
        self.cells: list[Cell] = []
        self.unplaced: list[str] = []
        self.number_at: tuple[Point, float] | None = None
        self._squares = Squares()

    def view(self, name: str, scale: float, origin: Point) -> View:
        """Open a view on the sheet."""
        view = View(name=name, scale=scale, origin=origin)
        self.views.append(view)
        return view

    def add(self, *elements: Element) -> None:
        """Draw, and keep later texts off what is drawn."""
        for element in elements:
            self.elements.append(element)
            if isinstance(element, Table):
                self.cells += [cell for cell, _ in element.cells()]
                self.reserve(element.box)
            for primitive in primitives(element):
                self._file(primitive)

    def _file(self, primitive: Primitive) -> None:
        if isinstance(primitive, Label):
            self._squares.add_box(primitive.box)
        elif not PENS[primitive.layer].crosses_text:
            for a, b in segments(primitive):
                self._squares.add_line(a, b)

    def reserve(self, box: Box) -> None:
        """Keep texts out of a box."""
        self._squares.add_box(box)

    def hold(self, lines: Iterable[Segment]) -> None:
        """Keep texts off lines that will be drawn later."""
        for a, b in lines:
            self._squares.add_line(a, b)

    def free(self, box: Box, clear: float = CLEAR, *, apart: float = 0.0) -> bool:
        """True when a text may stand in a box: on the sheet, off lines, at least `apart` from texts."""
        grown = box.grown(clear)
        return (
            self.paper.frame.holds(grown)
            and not self._squares.meets_box(box.grown(max(clear, apart)))
            and not self._squares.meets_line(grown)
        )

    def off_other_texts(self, box: Box) -> bool:
        """True when a box holds no text, though lines may run through it."""
        return self.paper.frame.holds(box) and not self._squares.meets_box(box)

    def off_texts(self, points: Sequence[Point]) -> bool:
        """True when a polyline runs through no text."""
        return not any(self._squares.crosses_box(a, b) for a, b in itertools.pairwise(points))

    def first_free(self, labels: Sequence[Label], clear: float = CLEAR) -> Label | None:
        """The first of several places for a text that is free."""
        return next((label for label in labels if self.free(label.box, clear)), None)

    def add_first(self, labels: Sequence[Label]) -> Label:
        """Letter a text in the first place that is free; where none is, in the first, and say so."""
        found = self.first_free(labels)
        if found is None:
            self.unplaced.append(labels[0].text)
        self.add(found or labels[0])
        return found or labels[0]

    def add_first_clear(self, options: Sequence[Sequence[Element]], what: str) -> None:
        """Draw the first of several groups whose every part stands clear."""
        for group in options:
            if all(
                self.free(reach(part))
                for part in group
                if isinstance(part, (Label, Stroke, Circle))
            ):
                self.add(*group)
                return
        self.unplaced.append(what)

    def line(self, layer: Layer, a: Point, b: Point, view: str = "") -> None:
        """A straight line."""
        self.add(Stroke(layer=layer, points=(a, b), view=view))

    def path(self, layer: Layer, points: Polygon, view: str = "", *, closed: bool = False) -> None:
        """A polyline."""
        self.add(Stroke(layer=layer, points=points, view=view, closed=closed))

    def sheet(self, title: TitleBlock) -> Sheet:
        """Take the finished sheet off the board."""
        return Sheet(
            title=title,
            paper=self.paper,
            views=tuple(self.views),
            elements=tuple(self.elements),
            cells=tuple(self.cells),
            unplaced=tuple(self.unplaced),
            number_at=self.number_at,
        )
