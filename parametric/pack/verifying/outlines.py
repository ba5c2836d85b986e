"""Closed outlines of straight lines and arcs: area, middle, reach, corners, doubled edges.

An edge is two points and a bulge: the tangent of a quarter of the arc's angle, 0 for a
straight line, positive when the arc turns counter-clockwise (DXF reference, LWPOLYLINE).
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

Point = tuple[float, float]
Bounds = tuple[float, float, float, float]
"""x low, y low, x high, y high, mm."""

_FLAT = 24
"""Chords to an arc where an outline is only asked what lies inside it."""


@dataclass(frozen=True, slots=True)
class Edge:
    """One side of an outline."""

    a: Point
    b: Point
    bulge: float = 0.0

    @property
    def sweep(self) -> float:
        """The angle an arc turns through, rad; negative clockwise."""
        return 4 * math.atan(self.bulge)

    @property
    def radius(self) -> float:
        """mm; infinite for a straight line."""
        chord = math.dist(self.a, self.b)
        return math.inf if self.bulge == 0 else chord / 2 / abs(math.sin(self.sweep / 2))

    @property
    def centre(self) -> Point:
        """The centre of an arc."""
        (x0, y0), (x1, y1) = self.a, self.b
        off = 0.5 / math.tan(self.sweep / 2)
        return ((x0 + x1) / 2 - off * (y1 - y0), (y0 + y1) / 2 + off * (x1 - x0))

    def points(self, chords: int) -> list[Point]:
        """Points along the edge, both ends among them."""
        if self.bulge == 0:
            return [self.a, self.b]
        cx, cy = self.centre
        start = math.atan2(self.a[1] - cy, self.a[0] - cx)
        turns = [start + self.sweep * i / chords for i in range(chords + 1)]
        return [(cx + self.radius * math.cos(t), cy + self.radius * math.sin(t)) for t in turns]

    def furthest(self) -> Iterator[Point]:
        """Where an arc reaches furthest right, up, left or down between its ends."""
        if self.bulge == 0:
            return
        cx, cy = self.centre
        way = 1.0 if self.bulge > 0 else -1.0
        start = math.atan2(self.a[1] - cy, self.a[0] - cx)
        for quarter in range(4):
            angle = quarter * math.pi / 2
            if (way * (angle - start)) % math.tau <= abs(self.sweep):
                yield (cx + self.radius * math.cos(angle), cy + self.radius * math.sin(angle))


@dataclass(frozen=True, slots=True)
class Outline:
    """A closed outline."""

    edges: tuple[Edge, ...]

    @property
    def moments(self) -> tuple[float, float, float]:
        """Area (counter-clockwise positive) and its moments in x and y, mm2 and mm3.

        The polygon of the corners, and on each arc the segment of the circle that stands
        on its chord: area r2 (t - sin t) / 2, its middle 4 r sin3(t / 2) / 3 (t - sin t)
        from the centre.
        """
        area = x_moment = y_moment = 0.0
        for edge in self.edges:
            (x0, y0), (x1, y1) = edge.a, edge.b
            twice = x0 * y1 - x1 * y0
            area += twice / 2
            x_moment += twice * (x0 + x1) / 6
            y_moment += twice * (y0 + y1) / 6
            if edge.bulge:
                turn, radius = abs(edge.sweep), edge.radius
                segment = radius**2 * (turn - math.sin(turn)) / 2
                far = 4 * radius * math.sin(turn / 2) ** 3 / (3 * (turn - math.sin(turn)))
                middle = edge.points(2)[1]
                (cx, cy), sign = edge.centre, 1.0 if edge.bulge > 0 else -1.0
                area += sign * segment
                x_moment += sign * segment * (cx + (middle[0] - cx) * far / radius)
                y_moment += sign * segment * (cy + (middle[1] - cy) * far / radius)
        return area, x_moment, y_moment

    @property
    def area(self) -> float:
        """mm2, counter-clockwise positive."""
        return self.moments[0]

    @property
    def middle(self) -> Point:
        """The centre of its area."""
        area, x, y = self.moments
        return (x / area, y / area)

    @property
    def bounds(self) -> Bounds:
        """The smallest box round it."""
        points = [edge.a for edge in self.edges]
        for edge in self.edges:
            points.extend(edge.furthest())
        xs, ys = zip(*points, strict=True)
        return (min(xs), min(ys), max(xs), max(ys))

    @property
    def smallest_corner(self) -> float:
        """The smallest radius of a hollow arc, mm; 0 when every corner is square.

        An arc that turns clockwise goes round wood that stands: any cutter runs past it.
        """
        return min((edge.radius for edge in self.edges if edge.bulge > 0), default=0.0)

    @property
    def turns(self) -> list[Point]:
        """Its corners but for those in the run of one line or one circle."""
        before = [self.edges[-1], *self.edges[:-1]]
        return [b.a for a, b in zip(before, self.edges, strict=True) if not _one_run(a, b)]

    def contains(self, point: Point) -> bool:
        """Whether a point lies inside, arcs taken as they are.

        Inside the polygon of the corners; but the other way about between an arc and its chord.
        """
        odd = holds([edge.a for edge in self.edges], point)
        for edge in self.edges:
            if edge.bulge and math.dist(point, edge.centre) < edge.radius:
                side = _side(edge.a, edge.b, point)
                # an arc that turns anticlockwise bulges to the right of its chord
                odd ^= side < 0 if edge.bulge > 0 else side > 0
        return odd

    def has_square_corner(self, wood: Bounds) -> bool:
        """Whether two walls meet at an inside corner that is not round.

        What lies along the edge of the wood is no wall.
        """
        before = [self.edges[-1], *self.edges[:-1]]
        return any(
            _turn(a, b) > 1e-6
            for a, b in zip(before, self.edges, strict=True)
            if not _on_edge(a, wood) and not _on_edge(b, wood)
        )

    @property
    def marks(self) -> list[Point]:
        """Its corners, and the middle of each arc: what fixes it."""
        return [edge.a for edge in self.edges] + [
            edge.points(2)[1] for edge in self.edges if edge.bulge
        ]

    def narrowest(self, wood: Bounds, near: float) -> float:
        """How far it is from a wall straight across to the next, where that is least, mm.

        Tried at places along every wall. What lies along the edge of the wood is no wall, and
        walls that meet are not held against one another: that is their corner.

        Args:
            wood: where the wood begins and ends on the face, mm.
            near: nearer than this to its edge is on it, mm.
        """
        walls = [e for e in self.edges if not _on_edge(e, wood, near)]
        found = math.inf
        for wall in walls:
            for point, way in inwards(wall, _FLAT):
                across = (_hit(point, way, o) for o in walls if not _meets(wall, o))
                found = min(found, min(across, default=math.inf))
        return found

    def flat(self) -> list[Point]:
        """The outline as a polygon, its arcs as chords."""
        return [p for edge in self.edges for p in edge.points(_FLAT)[:-1]]


def _side(a: Point, b: Point, point: Point) -> float:
    """Twice the area of a triangle: positive where the point lies left of the way from a to b."""
    return (b[0] - a[0]) * (point[1] - a[1]) - (b[1] - a[1]) * (point[0] - a[0])


def _one_run(a: Edge, b: Edge) -> bool:
    """Whether an edge goes on in the one before it."""
    if a.bulge and b.bulge:
        alike = abs(a.radius - b.radius) < 1e-6 and a.bulge * b.bulge > 0
        return alike and math.dist(a.centre, b.centre) < 1e-6
    return a.bulge == b.bulge and abs(_side(a.a, a.b, b.b)) < 1e-6


def _on_edge(edge: Edge, wood: Bounds, near: float = 1e-6) -> bool:
    """Whether a straight edge lies along the edge of the wood, or past it in what is cut off."""
    return edge.bulge == 0 and any(
        max(edge.a[axis], edge.b[axis]) <= low + near
        or min(edge.a[axis], edge.b[axis]) >= high - near
        for axis, low, high in ((0, wood[0], wood[2]), (1, wood[1], wood[3]))
    )


def _turn(a: Edge, b: Edge) -> float:
    """The sine of the angle through which the way turns from one edge into the next, to the left."""
    (ax, ay), (bx, by) = _ways(a)[1], _ways(b)[0]
    return ax * by - ay * bx


def _ways(edge: Edge) -> tuple[Point, Point]:
    """Unit vectors along an edge where it begins and where it ends."""
    far = math.dist(edge.a, edge.b)
    x, y = (edge.b[0] - edge.a[0]) / far, (edge.b[1] - edge.a[1]) / far
    if edge.bulge == 0:
        return (x, y), (x, y)
    # the chord stands half the sweep off the tangents at its ends
    c, s = math.cos(edge.sweep / 2), math.sin(edge.sweep / 2)
    return (x * c + y * s, y * c - x * s), (x * c - y * s, y * c + x * s)


def _meets(edge: Edge, other: Edge) -> bool:
    return bool({edge.a, edge.b} & {other.a, other.b})


def inwards(edge: Edge, parts: int) -> Iterator[tuple[Point, Point]]:
    """The places between so many parts of an edge, and the way from there into the outline."""
    (x0, y0), (x1, y1) = edge.a, edge.b
    if edge.bulge == 0:
        far = math.dist(edge.a, edge.b)
        way = (-(y1 - y0) / far, (x1 - x0) / far)
        for i in range(1, parts):
            yield (x0 + (x1 - x0) * i / parts, y0 + (y1 - y0) * i / parts), way
        return
    (cx, cy), to_centre = edge.centre, 1.0 if edge.bulge > 0 else -1.0
    for x, y in edge.points(parts)[1:-1]:
        yield (x, y), (to_centre * (cx - x) / edge.radius, to_centre * (cy - y) / edge.radius)


def _hit(point: Point, way: Point, edge: Edge) -> float:
    """How far a ray from a point runs to an edge; infinite where it misses."""
    (x, y), (dx, dy) = point, way
    (x0, y0), (x1, y1) = edge.a, edge.b
    if edge.bulge == 0:
        over = dx * (y1 - y0) - dy * (x1 - x0)
        if abs(over) < 1e-12:
            return math.inf
        far = ((x0 - x) * (y1 - y0) - (y0 - y) * (x1 - x0)) / over
        share = ((x0 - x) * dy - (y0 - y) * dx) / over
        return far if far > 1e-9 and 0 <= share <= 1 else math.inf
    cx, cy = edge.centre
    along = (cx - x) * dx + (cy - y) * dy
    aside = (cx - x) ** 2 + (cy - y) ** 2 - along**2
    if aside >= edge.radius**2:
        return math.inf
    half = math.sqrt(edge.radius**2 - aside)
    start, turns = math.atan2(y0 - cy, x0 - cx), 1.0 if edge.bulge > 0 else -1.0
    for far in (along - half, along + half):
        turn = (math.atan2(y + dy * far - cy, x + dx * far - cx) - start) * turns % math.tau
        if far > 1e-9 and turn <= abs(edge.sweep):
            return far
    return math.inf


def closed_outline(corners: Sequence[tuple[float, float, float]]) -> Outline:
    """An outline from its corners (x, y, bulge of the side that leaves it)."""
    following = [*corners[1:], *corners[:1]]
    return Outline(
        tuple(
            Edge((x, y), (nx, ny), bulge)
            for (x, y, bulge), (nx, ny, _) in zip(corners, following, strict=True)
        )
    )


def relieved_rectangle(length: float, width: float, corner: float, relief: float) -> Outline:
    """A rectangle about 0;0 with corners of a radius, into each of which a larger cutter is run.

    The cutter's circle touches the corner's own from outside on the diagonal; it leaves and
    meets the walls where it crosses them. Without a relief the corners are round, or square.
    """
    x, y, radius = length / 2, width / 2, max(corner, relief)
    off = corner + (radius - corner) * math.sqrt(0.5)
    along = off + math.sqrt(max(radius**2 - off**2, 0.0))
    # seen from the circle's middle, from where it left the one wall to where it meets the other
    half = math.atan2(along - off, off) + math.pi / 4 if radius else 0.0
    bulge = math.tan(half / 2) if radius else 0.0
    found = []
    for sx, sy in ((1, -1), (1, 1), (-1, 1), (-1, -1)):
        on_level, on_upright = (sx * (x - along), sy * y), (sx * x, sy * (y - along))
        first, second = (on_level, on_upright) if sx * sy < 0 else (on_upright, on_level)
        found += [(*first, bulge), (*second, 0.0)]
    # a corner that is square, or a side that is used up, is one point and not two
    kept = [a for a, b in zip(found, [*found[1:], found[0]], strict=True) if a[:2] != b[:2]]
    return closed_outline(kept)


def holds(polygon: Sequence[Point], point: Point) -> bool:
    """Whether a point lies inside a polygon."""
    odd = False
    for (x0, y0), (x1, y1) in zip(polygon, [*polygon[1:], *polygon[:1]], strict=True):
        if (y0 > point[1]) != (y1 > point[1]):
            odd ^= point[0] < x0 + (point[1] - y0) * (x1 - x0) / (y1 - y0)
    return odd


def doubled(outlines: Sequence[Outline], near: float) -> Iterator[Point]:
    """Where two edges lie on one another, of one outline or of two."""
    edges = [edge for outline in outlines for edge in outline.edges]
    for a, b in itertools.combinations(edges, 2):
        if (a.bulge == 0) == (b.bulge == 0) and _apart(a, b) <= near and _lie_together(a, b, near):
            yield a.a


def _apart(a: Edge, b: Edge) -> float:
    """No more than how far the boxes of two edges' ends are apart."""
    gaps = []
    for axis in (0, 1):
        low = max(min(a.a[axis], a.b[axis]), min(b.a[axis], b.b[axis]))
        high = min(max(a.a[axis], a.b[axis]), max(b.a[axis], b.b[axis]))
        gaps.append(low - high)
    return max(gaps)


def _lie_together(a: Edge, b: Edge, near: float) -> bool:
    if a.bulge:
        same_ends = (
            min(
                max(math.dist(a.a, b.a), math.dist(a.b, b.b)),
                max(math.dist(a.a, b.b), math.dist(a.b, b.a)),
            )
            <= near
        )
        return same_ends and math.dist(a.points(2)[1], b.points(2)[1]) <= near
    length = math.dist(a.a, a.b)
    if length <= near:
        return False
    ux, uy = (a.b[0] - a.a[0]) / length, (a.b[1] - a.a[1]) / length

    def aside(p: Point) -> float:
        return abs((p[0] - a.a[0]) * uy - (p[1] - a.a[1]) * ux)

    def along(p: Point) -> float:
        return (p[0] - a.a[0]) * ux + (p[1] - a.a[1]) * uy

    if max(aside(b.a), aside(b.b)) > near:
        return False
    low, high = sorted((along(b.a), along(b.b)))
    return min(high, length) - max(low, 0.0) > near


def crosses(a: Sequence[Point], b: Sequence[Point]) -> bool:
    """Whether the sides of two polygons cross."""

    def side(p: Point, q: Point, r: Point) -> float:
        return (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])

    for p, q in zip(a, [*a[1:], *a[:1]], strict=True):
        for r, s in zip(b, [*b[1:], *b[:1]], strict=True):
            if side(p, q, r) * side(p, q, s) < 0 and side(r, s, p) * side(r, s, q) < 0:
                return True
    return False
