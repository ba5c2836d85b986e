"""One drawing read back: its dimensions, what is drawn, and which view each window shows.

Source: the published DXF reference. DIMENSION: 70 kind in its lowest three bits (0 level
or turned, 1 aligned), 13/23 and 14/24 the two points measured, 50 the angle measured
along, 42 the measurement, 1 a text in its place, 2 the block that is its picture;
VIEWPORT: 10/20 and 40, 41 its middle and size on paper, 12/22 and 45 the middle and the
height of what it shows; 67 is 1 on paper.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.pack.verifying.dxf_tags import DxfFile, Record, read_dxf
from parametric.pack.verifying.outlines import Bounds, Point

OWNER = "STILEWRIGHT"
_WORDS = ("dims", "dim_ticks", "text", "hatch")
"""Layers that carry no edge of anything."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Dimension:
    """One dimension: the name of its number, the points it measures, its way, what it shows.

    `shown` are the texts of its picture, `written` a text in place of the measurement,
    `stated` the measurement that the file says it has. A program that letters it again
    multiplies by `factor` and rounds to `step`, 0 for no rounding.
    """

    figure: str
    a: Point
    b: Point
    way: Point
    shown: tuple[str, ...]
    written: str
    stated: float
    factor: float = 1.0
    step: float = 0.0

    @property
    def measured(self) -> float:
        """How far apart the two points are along its way, mm."""
        return abs(self.along(self.b) - self.along(self.a))

    def along(self, point: Point) -> float:
        """Where a point lies along its way, mm."""
        return point[0] * self.way[0] + point[1] * self.way[1]


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A straight line in model space."""

    layer: str
    a: Point
    b: Point


@dataclass(frozen=True, slots=True, kw_only=True)
class Round:
    """A circle, or the one an arc lies on, with the arc's ends."""

    layer: str
    centre: Point
    radius: float
    ends: tuple[Point, ...] = ()


@dataclass(frozen=True, slots=True, kw_only=True)
class Window:
    """A view: its name, where its zero lies along x in model space, and what it shows of it."""

    view: str
    zero: float
    box: Bounds

    def holds(self, point: Point) -> bool:
        """Whether a point of model space belongs to the view; views stand well apart along x."""
        return self.box[0] <= point[0] <= self.box[2]


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawingFile:
    """One drawing, its model space in millimetres of the thing.

    `middles` are those of closed outlines, which a dimension to a centre ends on.
    """

    millimetres: bool
    dimensions: tuple[Dimension, ...]
    lines: tuple[Line, ...]
    rounds: tuple[Round, ...]
    middles: tuple[Point, ...]
    windows: tuple[Window, ...]


def read_drawing(data: bytes) -> DrawingFile:
    """Read a drawing.

    Raises:
        UnreadableError: it cannot be taken apart.
    """
    file = read_dxf(data)
    model = [record for record in file.entities if not record.whole(67)]
    paper = [record for record in file.entities if record.whole(67)]
    edges = [record for record in model if record.text(8) not in _WORDS]
    return DrawingFile(
        millimetres=file.variable("$INSUNITS") == "4",
        dimensions=tuple(_dimension(r, file) for r in model if r.kind == "DIMENSION"),
        lines=tuple(line for record in edges for line in _lines(record)),
        rounds=tuple(r for record in edges for r in _rounds(record)),
        middles=tuple(middle for record in edges for middle in _middles(record)),
        windows=tuple(_windows(paper)),
    )


def _dimension(record: Record, file: DxfFile) -> Dimension:
    a, b = record.point(13), record.point(14)
    if record.whole(70) & 7 == 1:
        far = math.dist(a, b) or 1.0
        way = ((b[0] - a[0]) / far, (b[1] - a[1]) / far)
    else:
        angle = math.radians(record.number(50))
        way = (math.cos(angle), math.sin(angle))
    picture = file.blocks.get(record.text(2), ())
    own = [value for code, value in record.extended(OWNER) if code == 1000]
    return Dimension(
        figure=own[0] if own else "",
        a=a,
        b=b,
        way=way,
        shown=tuple(r.text(1) for r in picture if r.kind in ("TEXT", "MTEXT")),
        written=record.text(1),
        stated=record.number(42),
        factor=_override(record, _FACTOR, 1.0),
        step=_override(record, _ROUNDING, 0.0),
    )


_FACTOR, _ROUNDING = 144, 45
"""DIMLFAC and DIMRND, as a dimension's own settings number them."""


def _override(record: Record, setting: int, otherwise: float) -> float:
    """One of a dimension's own settings, which stand in pairs: its number, then its value."""
    tags = record.extended("ACAD")
    for (code, number), (_, value) in itertools.pairwise(tags):
        if code == 1070 and int(number) == setting:
            return float(value)
    return otherwise


def _lines(record: Record) -> Iterator[Line]:
    layer = record.text(8)
    if record.kind == "LINE":
        yield Line(layer=layer, a=record.point(10), b=record.point(11))
    elif record.kind == "LWPOLYLINE":
        xs, ys = record.all(10), record.all(20)
        points = [(float(x), float(y)) for x, y in zip(xs, ys, strict=True)]
        following = points[1:] + (points[:1] if record.whole(70) & 1 else [])
        for a, b in zip(points, following, strict=False):
            yield Line(layer=layer, a=a, b=b)


def _middles(record: Record) -> Iterator[Point]:
    if record.kind == "LWPOLYLINE" and record.whole(70) & 1:
        xs, ys = ([float(value) for value in record.all(code)] for code in (10, 20))
        yield ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2)


def _rounds(record: Record) -> Iterator[Round]:
    if record.kind not in ("CIRCLE", "ARC"):
        return
    centre, radius = record.point(10), record.number(40)
    ends: tuple[Point, ...] = ()
    if record.kind == "ARC":
        turns = [math.radians(record.number(code)) for code in (50, 51)]
        ends = tuple(
            (centre[0] + radius * math.cos(t), centre[1] + radius * math.sin(t)) for t in turns
        )
    yield Round(layer=record.text(8), centre=centre, radius=radius, ends=ends)


def _windows(paper: list[Record]) -> Iterator[Window]:
    for record in paper:
        own = record.extended(OWNER)
        if record.kind != "VIEWPORT" or not own:
            continue
        (x, y), tall = record.point(12), record.number(45)
        wide = tall * record.number(40) / record.number(41)
        yield Window(
            view=next(value for code, value in own if code == 1000),
            zero=next(float(value) for code, value in own if code == 1040),
            box=(x - wide / 2, y - tall / 2, x + wide / 2, y + tall / 2),
        )
