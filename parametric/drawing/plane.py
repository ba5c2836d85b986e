"""Plane geometry of a sheet: boxes, polygons, and lines cut where they enter or leave them.

Everything is exact: a line is cut at its true crossings, never by stepping along it.
A region is one or more polygons, inside where the even-odd rule says so.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

Point = tuple[float, float]
Polygon = tuple[Point, ...]
Region = tuple[Polygon, ...]

_SAME = 1e-9


class Box(NamedTuple):
    """An upright rectangle from its low corner to its high one."""

    x0: float
    y0: float
    x1: float
    y1: float

    @property
    def width(self) -> float:
        """Across."""
        return self.x1 - self.x0

    @property
    def height(self) -> float:
        """Up."""
        return self.y1 - self.y0

    @property
    def centre(self) -> Point:
        """The middle."""
        return ((self.x0 + self.x1) / 2, (self.y0 + self.y1) / 2)

    @property
    def polygon(self) -> Polygon:
        """Its four corners, anticlockwise from the low one."""
        return ((self.x0, self.y0), (self.x1, self.y0), (self.x1, self.y1), (self.x0, self.y1))

    def grown(self, by: float) -> Box:
        """The box with a margin on all sides."""
        return Box(self.x0 - by, self.y0 - by, self.x1 + by, self.y1 + by)

    def meets(self, other: Box) -> bool:
        """True when the two share more than an edge."""
        return (
            self.x0 < other.x1 - _SAME
            and other.x0 < self.x1 - _SAME
            and self.y0 < other.y1 - _SAME
            and other.y0 < self.y1 - _SAME
        )

    def holds(self, other: Box) -> bool:
        """True when the other lies inside."""
        return (
            self.x0 <= other.x0 + _SAME
            and other.x1 <= self.x1 + _SAME
            and self.y0 <= other.y0 + _SAME
            and other.y1 <= self.y1 + _SAME
        )

    def crossed(self, a: Point, b: Point) -> bool:
        """True when the line from a to b passes through the inside.

        Clipped side by side after Liang and Barsky.
        """
        low, high = 0.0, 1.0
        dx, dy = b[0] - a[0], b[1] - a[1]
        for step, room in (
            (-dx, a[0] - self.x0),
            (dx, self.x1 - a[0]),
            (-dy, a[1] - self.y0),
            (dy, self.y1 - a[1]),
        ):
            if abs(step) < _SAME:
                if room <= _SAME:
                    return False
                continue
            at = room / step
            if step < 0:
                low = max(low, at)
            else:
                high = min(high, at)
            if low > high - 1e-12:
                return False
        return True


def around(points: Iterable[Point]) -> Box:
    """The box round some points."""
    xs, ys = zip(*points, strict=True)
    return Box(min(xs), min(ys), max(xs), max(ys))


def hull(points: Iterable[Point]) -> Polygon:
    """The least shape without inside corners round points, anticlockwise.

    Source: the monotone chain of A. M. Andrew (1979), from memory.
    """
    found = sorted({(round(x, 9), round(y, 9)) for x, y in points})

    def half(some: Sequence[Point]) -> list[Point]:
        chain: list[Point] = []
        for x, y in some:
            while len(chain) > 1:
                (ax, ay), (bx, by) = chain[-2:]
                if (bx - ax) * (y - ay) - (by - ay) * (x - ax) > 1e-9:
                    break
                chain.pop()
            chain.append((x, y))
        return chain[:-1]

    return (*half(found), *half(found[::-1]))


def around_boxes(boxes: Iterable[Box]) -> Box:
    """The box round some boxes."""
    x0, y0, x1, y1 = zip(*boxes, strict=True)
    return Box(min(x0), min(y0), max(x1), max(y1))


def rectangle(x0: float, y0: float, x1: float, y1: float) -> Polygon:
    """Four corners."""
    return Box(x0, y0, x1, y1).polygon


def along(a: Point, b: Point, t: float) -> Point:
    """The point a part t of the way from a to b."""
    return (a[0] + (b[0] - a[0]) * t, a[1] + (b[1] - a[1]) * t)


def inside(point: Point, region: Region) -> bool:
    """True when the point lies in the region by the even-odd rule."""
    x, y = point
    odd = False
    for polygon in region:
        for (x1, y1), (x2, y2) in edges(polygon):
            if (y1 > y) != (y2 > y) and x < (x2 - x1) * (y - y1) / (y2 - y1) + x1:
                odd = not odd
    return odd


def edges(polygon: Sequence[Point]) -> Iterator[tuple[Point, Point]]:
    """The sides of a closed polygon."""
    return zip(polygon, (*polygon[1:], *polygon[:1]), strict=True)


def _crossings(a: Point, b: Point, region: Region) -> list[float]:
    """Where along a-b it crosses sides of the region, as parts of the way, in order."""
    found = []
    dx, dy = b[0] - a[0], b[1] - a[1]
    for polygon in region:
        for p, q in edges(polygon):
            ex, ey = q[0] - p[0], q[1] - p[1]
            cross = dx * ey - dy * ex
            if abs(cross) < 1e-14:
                continue
            wx, wy = p[0] - a[0], p[1] - a[1]
            t = (wx * ey - wy * ex) / cross
            u = (wx * dy - wy * dx) / cross
            if 0 < t < 1 and -1e-12 <= u <= 1 + 1e-12:
                found.append(t)
    return sorted(found)


def cut_line(
    a: Point, b: Point, region: Region, *, keep_inside: bool
) -> Iterator[tuple[Point, Point]]:
    """The pieces of a line that lie inside (or outside) a region.

    Args:
        a: one end.
        b: the other end.
        region: polygons, even-odd.
        keep_inside: which pieces are wanted.
    """
    stops = [0.0, *_crossings(a, b, region), 1.0]
    start: float | None = None
    for low, high in itertools.pairwise(stops):
        if high - low < _SAME:
            continue
        wanted = inside(along(a, b, (low + high) / 2), region) == keep_inside
        if wanted and start is None:
            start = low
        if not wanted and start is not None:
            yield along(a, b, start), along(a, b, low)
            start = None
    if start is not None:
        yield along(a, b, start), b


def outside_all(a: Point, b: Point, polygons: Iterable[Polygon]) -> list[tuple[Point, Point]]:
    """The pieces of a line that no polygon covers: what is seen of an edge behind other things."""
    pieces = [(a, b)]
    for polygon in polygons:
        pieces = [part for p, q in pieces for part in cut_line(p, q, (polygon,), keep_inside=False)]
    return pieces


def cut_path(points: Sequence[Point], region: Region) -> Iterator[tuple[Point, ...]]:
    """The runs of an open path that lie inside a region."""
    run: list[Point] = []
    for a, b in itertools.pairwise(points):
        for p, q in cut_line(a, b, region, keep_inside=True):
            if run and math.dist(run[-1], p) > 1e-6:
                yield tuple(run)
                run = []
            if not run:
                run = [p]
            run.append(q)
    if run:
        yield tuple(run)


def left_of(polygon: Polygon, x: float) -> Polygon:
    """What of a polygon lies left of an upright line; after Sutherland and Hodgman."""
    kept: list[Point] = []
    for a, b in edges(polygon):
        if a[0] <= x:
            kept.append(a)
        if (a[0] < x) != (b[0] < x) and a[0] != x and b[0] != x:
            kept.append(along(a, b, (x - a[0]) / (b[0] - a[0])))
    return tuple(kept)


def grown(outline: Polygon) -> Polygon:
    """A rectangle a hair larger, so that a line on its edge counts as behind it."""
    return around(outline).grown(1e-4).polygon if is_box(outline) else outline


def is_box(outline: Polygon) -> bool:
    """Whether an outline is an upright rectangle."""
    box = around(outline)
    return len(outline) == 4 and all(
        min(abs(x - box.x0), abs(x - box.x1)) + min(abs(y - box.y0), abs(y - box.y1)) <= 1e-6
        for x, y in outline
    )


def swollen(polygon: Polygon, by: float = 1e-3) -> Polygon:
    """A polygon a hair larger all round, so that a line along its edge counts as within it."""
    cx, cy = around(polygon).centre
    far = [math.hypot(x - cx, y - cy) or 1.0 for x, y in polygon]
    return tuple(
        (x + (x - cx) / d * by, y + (y - cy) / d * by)
        for (x, y), d in zip(polygon, far, strict=True)
    )


def without_spikes(ring: Polygon) -> Polygon:
    """A ring without corners from which it runs straight back on itself.

    Example:
        >>> without_spikes(((0.0, 0.0), (4.0, 0.0), (4.0, 3.0), (4.0, 2.0), (0.0, 2.0)))
        ((0.0, 0.0), (4.0, 0.0), (4.0, 2.0), (0.0, 2.0))
    """
    kept = list(ring)
    index = 0
    while len(kept) > 3 and index < len(kept):
        (ax, ay), (bx, by), (cx, cy) = kept[index - 2], kept[index - 1], kept[index]
        across = (bx - ax) * (cy - by) - (by - ay) * (cx - bx)
        back = (bx - ax) * (cx - bx) + (by - ay) * (cy - by)
        if abs(across) < _SAME and back < 0:
            kept.pop(index - 1)
            index = 0
        else:
            index += 1
    return tuple(kept)


def arc_points(centre: Point, radius: float, start: float, end: float, step: float) -> Polygon:
    """Points on an arc, anticlockwise in degrees, no further apart than a step."""
    sweep = end - start
    count = max(2, math.ceil(abs(math.radians(sweep)) * radius / step))
    return tuple(
        (
            centre[0] + radius * math.cos(math.radians(start + sweep * i / count)),
            centre[1] + radius * math.sin(math.radians(start + sweep * i / count)),
        )
        for i in range(count + 1)
    )


def cut_circle(centre: Point, radius: float, region: Region) -> Iterator[tuple[float, float]]:
    """The arcs of a circle that lie inside a region, as start and end in degrees."""
    angles: list[float] = []
    for polygon in region:
        for p, q in edges(polygon):
            angles += _circle_meets(centre, radius, p, q)
    angles = sorted(angles)
    if not angles:
        if inside((centre[0] + radius, centre[1]), region):
            yield 0.0, 360.0
        return
    for low, high in zip(angles, [*angles[1:], angles[0] + 360.0], strict=True):
        if high - low < 1e-9:
            continue
        middle = math.radians((low + high) / 2)
        point = (centre[0] + radius * math.cos(middle), centre[1] + radius * math.sin(middle))
        if inside(point, region):
            yield low, high


def _circle_meets(centre: Point, radius: float, p: Point, q: Point) -> list[float]:
    """The angles, 0 to 360, at which a circle crosses a line from p to q."""
    dx, dy = q[0] - p[0], q[1] - p[1]
    fx, fy = p[0] - centre[0], p[1] - centre[1]
    a = dx * dx + dy * dy
    b = 2 * (fx * dx + fy * dy)
    c = fx * fx + fy * fy - radius * radius
    under = b * b - 4 * a * c
    if a < 1e-18 or under <= 0:
        return []
    root = math.sqrt(under)
    found = []
    for t in ((-b - root) / (2 * a), (-b + root) / (2 * a)):
        if 0 <= t <= 1:
            angle = math.degrees(math.atan2(fy + dy * t, fx + dx * t))
            found.append(angle % 360.0)
    return found


def spread(wanted: Sequence[float], pitch: float) -> list[float]:
    """Places as near as can be to those wanted, in the same order, no closer than a pitch.

    Least squares: runs that collide are pooled about the mean of what they wanted,
    which is the exact answer and always the same one.

    Args:
        wanted: ascending.
        pitch: the least distance between neighbours.

    Example:
        >>> spread([0.0, 1.0, 10.0], 4.0)
        [-1.5, 2.5, 10.0]
    """
    pools: list[tuple[float, int]] = []
    for i, place in enumerate(wanted):
        total, count = place - i * pitch, 1
        while pools and pools[-1][0] / pools[-1][1] > total / count:
            earlier, size = pools.pop()
            total, count = total + earlier, count + size
        pools.append((total, count))
    places: list[float] = []
    for total, count in pools:
        places += [total / count + (len(places) + k) * pitch for k in range(count)]
    return places
