r"""The line on which two runs of one moulding meet, and the ends that runs have.

Between two straight edges it is the mitre: straight, half of the corner. Where one edge is an
arc, every point of it lies as far from the arc as from the other edge, which is a curve of its
own; it is set out in arcs that leave it by less than `TRUE`.

        |  stile           path of the stile, down
        | .'  mitre
        O'_________        path of the rail, to the right: a corner of the opening
          opening
"""

from __future__ import annotations

import itertools
import math

from parametric.outlines import Outline, Vertex, arc_of, backwards
from parametric.paths import Point, beside, heading, nearest_meeting, off
from parametric.runs import RunEnd

TRUE = 1e-5
"""mm: how far the mitre of a curved run may lie off where both runs are equally far."""
_SAME = 1e-6
_MOST = 64


def mitre_line(comes: Outline, goes: Outline, width: float) -> Outline:
    """The line on which a run meets the next, from their corner into the wood.

    Args:
        comes: the path that ends at the corner.
        goes: the path that begins there; the wood is on the left of both.
        width: how far into the wood the moulding goes, mm.

    Raises:
        ValueError: the paths do not meet, or run on into one another without a corner.
    """
    one, other = comes[-2:], goes[:2]
    corner = (goes[0].x, goes[0].y)
    if math.hypot(comes[-1].x - corner[0], comes[-1].y - corner[1]) > _SAME:
        raise ValueError("the two runs do not end in one corner")
    ahead = _halfway(heading(one[0], one[1], corner), heading(other[0], other[1], corner))
    if arc_of(*one) is None and arc_of(*other) is None:
        return _chain(one, other, corner, ahead, width, 1)
    count = 1
    while count < _MOST:
        line = _chain(one, other, corner, ahead, width, count)
        if _untrue(line, one, other) <= TRUE:
            return line
        count *= 2
    raise ValueError(f"no mitre of {_MOST} arcs is true where the two runs meet")


def _halfway(comes: Point, goes: Point) -> Point:
    """How the mitre leaves the corner, so long that it is 1 farther from both edges."""
    x, y = -comes[1] - goes[1], comes[0] + goes[0]
    square = (x * x + y * y) / 2
    if square < _SAME:
        raise ValueError("the two runs turn back on one another")
    return (x / square, y / square)


def _chain(
    one: Outline, other: Outline, corner: Point, ahead: Point, width: float, count: int
) -> Outline:
    """Points as far from one path as from the other, joined by arcs through a point between each."""
    curved = arc_of(*one) is not None or arc_of(*other) is not None
    points = [corner]
    stops = 2 * count if curved else count
    for index in range(1, stops + 1):
        by = width * index / stops
        if index == 1:
            guess = (corner[0] + ahead[0] * by, corner[1] + ahead[1] * by)
        else:
            (x0, y0), (x1, y1) = points[-2:]
            guess = (2 * x1 - x0, 2 * y1 - y0)
        points.append(_meet(one, other, by, guess))
    if not curved:
        return (Vertex(*points[0]), Vertex(*points[1]))
    made = [
        Vertex(*points[i], _bulge(points[i], points[i + 1], points[i + 2]))
        for i in range(0, stops, 2)
    ]
    return (*made, Vertex(*points[-1]))


def _meet(one: Outline, other: Outline, by: float, guess: Point) -> Point:
    a, b = beside(one, by), beside(other, by)
    here = heading(a[0], a[1], guess)
    there = heading(b[0], b[1], guess)
    if abs(here[0] * there[1] - here[1] * there[0]) > 1e-3:
        return nearest_meeting(a, b, guess)
    # the two run the same way, as at the foot of a half round head: square across both
    x, y = -here[1], here[0]
    far = by - off(one[0], one[1], guess)
    return (guess[0] + x * far, guess[1] + y * far)


def _bulge(first: Point, middle: Point, last: Point) -> float:
    """The bulge of the arc through three points: the tangent of a quarter of its turn."""
    dx, dy = last[0] - first[0], last[1] - first[1]
    ex, ey = middle[0] - first[0], middle[1] - first[1]
    fx, fy = last[0] - middle[0], last[1] - middle[1]
    # the angle at the middle point is half a turn less half the arc's
    across, along = ex * fy - ey * fx, ex * fx + ey * fy
    turn = 2 * math.atan2(across, along)
    bulge = math.tan(turn / 4)
    # so flat that it is straight: it would leave its chord by less than can be told
    return 0.0 if abs(bulge) * math.hypot(dx, dy) < TRUE / 100 else bulge


def _untrue(line: Outline, one: Outline, other: Outline) -> float:
    """How much farther from one path than from the other a line is, where most."""
    worst = 0.0
    for a, b in itertools.pairwise(line):
        for part in (0.25, 0.5, 0.75):
            point = _along(a, b, part)
            worst = max(worst, abs(off(one[0], one[1], point) - off(other[0], other[1], point)))
    return worst


def _along(a: Vertex, b: Vertex, part: float) -> Point:
    arc = arc_of(a, b)
    if arc is None:
        return (a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part)
    turn = arc.start + arc.sweep * part
    return (arc.x + arc.radius * math.cos(turn), arc.y + arc.radius * math.sin(turn))


def mitred(line: Outline, *, open_past: bool = True) -> RunEnd:
    """A run's end on a mitre; `open_past` when what lies past it is cut away too."""
    return RunEnd(line=line, open=open_past)


def across(path: Outline, width: float, *, at_start: bool) -> RunEnd:
    """A run's end square to its path, past which nothing stands."""
    a, b = path[:2] if at_start else path[-2:]
    here = a if at_start else b
    x, y = heading(a, b, (here.x, here.y))
    return RunEnd(line=(Vertex(here.x, here.y), Vertex(here.x - y * width, here.y + x * width)))


def smooth_runs(path: Outline) -> tuple[Outline, ...]:
    """A path in stretches that run smoothly, broken where it turns a corner, as a pointed head does."""
    made: list[list[Vertex]] = [[path[0]]]
    for index, vertex in enumerate(path[1:-1], start=1):
        here = (vertex.x, vertex.y)
        comes, goes = heading(path[index - 1], vertex, here), heading(vertex, path[index + 1], here)
        made[-1].append(vertex)
        if abs(comes[0] * goes[1] - comes[1] * goes[0]) > _SAME:
            made.append([vertex])
    made[-1].append(path[-1])
    return tuple(tuple(chain) for chain in made)


def laid(path: Outline, origin: Point, x: Point, y: Point) -> Outline:
    """A path of the leaf as one of its members sees it, the wood still on its left.

    Args:
        path: in the leaf, seen from the front.
        origin: where the member's own corner lies in the leaf.
        x: the way of the member's x in the leaf.
        y: the way of its y. A member seen from its back turns the path round.
    """

    def on(v: Vertex) -> Point:
        dx, dy = v.x - origin[0], v.y - origin[1]
        return (dx * x[0] + dy * x[1], dx * y[0] + dy * y[1])

    if x[0] * y[1] - x[1] * y[0] > 0:
        return tuple(Vertex(*on(v), v.bulge) for v in path)
    return backwards(tuple(Vertex(*on(v), -v.bulge) for v in path))
