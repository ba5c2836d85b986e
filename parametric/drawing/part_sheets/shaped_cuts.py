"""What a shaped cut draws: its outline with true arcs, and where it comes out of the other sides.

Straight edges are lines, curved ones bows; both are clipped where a long part is broken out.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from parametric.drawing.finished_outline import (
    bevels,
    edge_outline,
    finished_outlines,
    inside_point,
    not_left,
    opens,
)
from parametric.drawing.layers import Layer
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.plane import Point, Polygon, arc_points, rectangle
from parametric.model import Face, Shaped, face_size
from parametric.outlines import Outline, Vertex, arc_of, bounds_of, edges, moved

_SAME = 1e-6
_OFF = 0.62
"""How far along an edge a balloon's leader ends: clear of a crown and of its dimension."""
_STOPS = 12.0
"""A part is not broken out where a shape goes on changing: stops no further apart, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Line:
    """A line that a cut draws on one side."""

    side: Side
    layer: Layer
    points: Polygon
    closed: bool = True


@dataclass(frozen=True, slots=True, kw_only=True)
class Bow:
    """A part of a circle that a cut draws on one side, anticlockwise in degrees."""

    side: Side
    layer: Layer
    centre: Point
    radius: float
    start: float
    end: float

    @property
    def points(self) -> Polygon:
        """Points along it."""
        far = max(self.radius * math.radians(self.end - self.start) / 24, 1e-3)
        return arc_points(self.centre, self.radius, self.start, self.end, far)

    def between(self, low: float, high: float) -> Iterator[tuple[float, float]]:
        """What of it lies between two places along, as start and end in degrees."""
        stops = {self.start, self.end}
        for x in (low, high):
            share = (x - self.centre[0]) / self.radius
            if abs(share) < 1:
                half = math.degrees(math.acos(share))
                turns = range(math.floor(self.start / 360.0) - 1, math.ceil(self.end / 360.0) + 2)
                crossed = {sign * half + 360.0 * turn for sign in (-1, 1) for turn in turns}
                stops |= {at for at in crossed if self.start < at < self.end}
        for start, end in itertools.pairwise(sorted(stops)):
            middle = math.radians((start + end) / 2)
            if low <= self.centre[0] + self.radius * math.cos(middle) <= high:
                yield start, end


def on_side(outline: Outline, face: Face, part: Unfolded, side: Side) -> Outline:
    """An outline of a broad face as one of its two broad sides shows it, counter-clockwise again."""

    def at(vertex: Vertex) -> Point:
        return part.on_face(face, vertex.x, vertex.y, 0.0, side)

    zero, along, up = (at(Vertex(*way)) for way in ((0.0, 0.0), (1.0, 0.0), (0.0, 1.0)))
    turn = (along[0] - zero[0]) * (up[1] - zero[1]) - (along[1] - zero[1]) * (up[0] - zero[0])
    if turn > 0:
        return tuple(Vertex(*at(vertex), vertex.bulge) for vertex in outline)
    over = [Vertex(*at(b), a.bulge) for a, b in edges(outline)]
    return tuple(reversed(over))


def outline_lines(outline: Outline, side: Side, layer: Layer) -> Iterator[Line | Bow]:
    """The edges of an outline that is given as a side shows it."""
    if not any(vertex.bulge for vertex in outline):
        yield Line(side=side, layer=layer, points=tuple((v.x, v.y) for v in outline))
        return
    for a, b in edges(outline):
        yield from edge_line(a, b, side, layer)


def edge_line(a: Vertex, b: Vertex, side: Side, layer: Layer) -> Iterator[Line | Bow]:
    """One edge of an outline."""
    arc = arc_of(a, b)
    if arc is None:
        yield Line(side=side, layer=layer, points=((a.x, a.y), (b.x, b.y)), closed=False)
        return
    start, end = sorted((arc.start, arc.start + arc.sweep))
    yield Bow(
        side=side,
        layer=layer,
        centre=(arc.x, arc.y),
        radius=arc.radius,
        start=math.degrees(start),
        end=math.degrees(end),
    )


def bevelled_lines(part: Unfolded, side: Side) -> Iterator[Line | Bow]:
    """The outline of the finished part on an edge whose ends are bevelled, and what is sawn off."""
    face, blank = part.of(side), part.part.blank
    own = edge_outline(part.part)
    yield from outline_lines(on_side(own, face, part, side), side, "edge")
    whole = tuple(Vertex(*at) for at in rectangle(0.0, 0.0, blank.length, blank.thickness))
    for stretch in not_left(whole, (own,)):
        yield Line(side=side, layer="adjacent", points=part.path(face, stretch, side), closed=False)


def finished_lines(part: Unfolded, side: Side) -> Iterator[Line | Bow]:
    """The outline of the finished part on its face or its back, with what is cut through it."""
    for loop in finished_outlines(part.part):
        yield from outline_lines(on_side(loop, "high face", part, side), side, "edge")


def shaped_lines(cut: Shaped, part: Unfolded) -> Iterator[Line | Bow]:
    """Everything that a shaped cut draws, but for what `finished_lines` draws of it."""
    side = part.side(cut.face)
    if cut.face in ("low face", "high face"):
        if opens(cut, part.part):
            yield from _across_edges(cut, part)
            return
        yield from outline_lines(on_side(cut.outline, cut.face, part, side), side, "edge")
        yield from _out_of_edges(cut, part)
        return
    if not bevels(cut, part.part):
        yield from _edge_outline(cut, part, side)
    yield from _through_face(cut, part)


def _edge_outline(cut: Shaped, part: Unfolded, side: Side) -> Iterator[Line | Bow]:
    """The outline of a cut in an edge or an end, on its own side."""
    yield from outline_lines(on_side(cut.outline, cut.face, part, side), side, "edge")


def _across_edges(cut: Shaped, part: Unfolded) -> Iterator[Line]:
    """Where a cut right through begins along an edge: a line across it."""
    for a, b in edges(cut.outline):
        for edge in _edges_along(a, b, part):
            side = part.side(edge)
            for vertex in (a, b):
                ends = tuple(
                    part.on_face(edge, vertex.x, v, 0.0, side)
                    for v in (0.0, float(part.part.blank.thickness))
                )
                if _SAME < ends[0][0] < part.length - _SAME:
                    yield Line(side=side, layer="edge", points=ends, closed=False)


def _out_of_edges(cut: Shaped, part: Unfolded) -> Iterator[Line]:
    """Where a cut in a broad face runs out of an edge: its section there."""
    thick = float(part.part.blank.thickness)
    for a, b in edges(cut.outline):
        for edge in _edges_along(a, b, part):
            side = part.side(edge)
            depths = (float(cut.surface), float(cut.depth))
            if cut.face == "high face":
                depths = (thick - depths[0], thick - depths[1])
            corners = ((a.x, depths[0]), (b.x, depths[0]), (b.x, depths[1]), (a.x, depths[1]))
            yield Line(side=side, layer="edge", points=part.path(edge, corners, side))


def _edges_along(
    a: Vertex, b: Vertex, part: Unfolded
) -> Iterator[Literal["low edge", "high edge"]]:
    """The long edge of the blank that a straight edge of an outline on a broad face lies along."""
    wide = float(part.part.blank.width)
    if a.bulge or abs(a.x - b.x) <= _SAME:
        return
    if max(abs(a.y), abs(b.y)) <= _SAME:
        yield "low edge"
    if max(abs(a.y - wide), abs(b.y - wide)) <= _SAME:
        yield "high edge"


def _through_face(cut: Shaped, part: Unfolded) -> Iterator[Line]:
    """A cut in an edge or an end as the face shows it: its corners as lines into the wood.

    A corner on the face's own surface is seen, any other is dashed.
    """
    thick = float(part.part.blank.thickness)
    surface = 0.0 if part.turned else thick
    x0, _, x1, _ = bounds_of(cut.outline)
    start, deep = float(cut.surface), float(cut.depth)
    corners: dict[float, bool] = {}
    for vertex in cut.outline:
        seen = abs(vertex.y - surface) <= _SAME
        corners[round(vertex.x, 6)] = corners.get(round(vertex.x, 6), False) or seen
    for u, seen in sorted(corners.items()):
        ends = tuple(part.on_face(cut.face, u, surface, depth, "face") for depth in (start, deep))
        if _on_border(ends, part):
            continue
        yield Line(side="face", layer="edge" if seen else "hidden", points=ends, closed=False)
    floor = tuple(part.on_face(cut.face, u, surface, deep, "face") for u in (x0, x1))
    if not _on_border(floor, part):
        yield Line(side="face", layer="hidden", points=floor, closed=False)


def _on_border(ends: Polygon, part: Unfolded) -> bool:
    """Whether a line lies on the outline of the blank."""
    low, high = -part.foot, part.length + part.head
    return any(
        all(abs(point[axis] - at) <= _SAME for point in ends)
        for axis, at in ((0, low), (0, high), (1, 0.0), (1, part.width))
    )


def shaped_target(cut: Shaped, part: Unfolded) -> Point:
    """Where the leader of its balloon ends, on its own side: on the edge of what is cut through."""
    u, v = inside_point(cut.outline)
    if ("face" in cut.face and opens(cut, part.part)) or bevels(cut, part.part):
        u, v = _on_wall(cut, part)
    return part.on_face(cut.face, u, v, 0.0, part.side(cut.face))


def _on_wall(cut: Shaped, part: Unfolded) -> Point:
    """Off the middle of the longest edge that does not lie along the piece's own."""
    long, wide = face_size(cut.face, part.part.blank)
    rims = ((0, 0.0), (0, float(long)), (1, 0.0), (1, float(wide)))
    own = [
        (a, b)
        for a, b in edges(cut.outline)
        if a.bulge or not any(abs(a[i] - at) + abs(b[i] - at) <= _SAME for i, at in rims)
    ]
    a, b = max(own or edges(cut.outline), key=lambda e: math.dist(e[0][:2], e[1][:2]))
    arc = arc_of(a, b)
    if arc is None:
        return (a.x + (b.x - a.x) * _OFF, a.y + (b.y - a.y) * _OFF)
    turn = arc.start + arc.sweep * _OFF
    return (arc.x + arc.radius * math.cos(turn), arc.y + arc.radius * math.sin(turn))


def span_of(cut: Shaped, part: Unfolded) -> tuple[float, float]:
    """From where to where it goes along the part; of a cut in an end, how far in."""
    if cut.face == "low end":
        return (0.0, float(cut.depth) - part.foot)
    if cut.face == "high end":
        return (part.length + part.head - float(cut.depth), part.length)
    x0, _, x1, _ = bounds_of(moved(cut.outline, -part.foot, 0.0))
    return (x0, x1)


def changing_stops(part: Unfolded) -> Iterator[float]:
    """Places along the part between which nothing is broken out: where curves or slants run."""
    for cut in part.part.cuts:
        if not isinstance(cut, Shaped) or cut.face in ("low end", "high end"):
            continue
        for a, b in edges(cut.outline):
            if not a.bulge and (abs(a.x - b.x) <= _SAME or abs(a.y - b.y) <= _SAME):
                continue
            x0, x1 = sorted((a.x, b.x))
            count = max(1, math.ceil((x1 - x0) / _STOPS))
            yield from (x0 + (x1 - x0) * i / count - part.foot for i in range(count + 1))
