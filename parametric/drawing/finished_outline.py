"""The outline of a finished face: the blank's, less whatever is cut right through it, in true arcs.

An arched rail is bounded by its arch and not by its blank. What is taken away lies within the
face and may lie along its edges; edges that both have are gone, the others bound what is left.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence
from typing import NamedTuple

from parametric.drawing.moulded_fronts import coped_corners
from parametric.drawing.plane import Point
from parametric.drawing.shaped import flattened
from parametric.model import Blank, Cut, Edge, Face, Groove, Mitre, Part, RoundCorners, Shaped, Trim
from parametric.outlines import (
    SAME,
    Bounds,
    Outline,
    Vertex,
    arc_of,
    area_of,
    bounds_of,
    edges,
    rectangle,
    rounded_rectangle,
)

_NEAR = 1e-5
"""mm: edges this near to one another lie on one line."""
_OTHER_FACE: dict[Face, Face] = {"low face": "high face", "high face": "low face"}


class _Edge(NamedTuple):
    a: Vertex
    b: Vertex


def through_cuts(part: Part) -> tuple[Shaped, ...]:
    """The shaped cuts that open the face right through, alone or with what meets them from behind."""
    return tuple(
        cut
        for cut in part.cuts
        if isinstance(cut, Shaped) and cut.face in _OTHER_FACE and opens(cut, part)
    )


def opens(cut: Shaped, part: Part) -> bool:
    """Whether nothing is left behind a shaped cut in a broad face."""
    if float(cut.surface) > SAME:
        return False
    left = float(part.blank.thickness) - float(cut.depth)
    if left <= SAME:
        return True
    return any(
        _holds(box, bounds_of(cut.outline)) and deep >= left - SAME
        for box, deep in _from_behind(cut, part.cuts)
    )


def _from_behind(cut: Shaped, cuts: Iterable[Cut]) -> Iterator[tuple[Bounds, float]]:
    """What is cut square into the opposite face: its box, and how deep it goes, mm."""
    other = _OTHER_FACE.get(cut.face)
    for one in cuts:
        if isinstance(one, Groove) and one.face == other and not float(one.ramp):
            middle, half = float(one.v), float(one.width) / 2
            box = (float(one.u0), middle - half, float(one.u1), middle + half)
            yield box, float(one.depth)
        elif isinstance(one, Shaped) and one.face == other:
            box = bounds_of(one.outline)
            if abs(area_of(one.outline) - (box[2] - box[0]) * (box[3] - box[1])) < SAME:
                yield box, float(one.depth)


def _holds(outer: Bounds, inner: Bounds) -> bool:
    return (
        outer[0] <= inner[0] + SAME
        and outer[1] <= inner[1] + SAME
        and outer[2] >= inner[2] - SAME
        and outer[3] >= inner[3] - SAME
    )


def opened_edges(part: Part) -> set[Edge]:
    """The long edges of the blank that are cut away, in part or from end to end."""
    wide = float(part.blank.width)
    found: set[Edge] = set()
    for cut in through_cuts(part):
        for a, b in edges(cut.outline):
            if a.bulge == 0 and abs(a.x - b.x) > _NEAR:
                if max(abs(a.y), abs(b.y)) < _NEAR:
                    found.add("low edge")
                if max(abs(a.y - wide), abs(b.y - wide)) < _NEAR:
                    found.add("high edge")
    return found


def cut_off(part: Part) -> tuple[tuple[Point, Point], ...]:
    """The stretches of the blank's own outline, in its x and y, that are not left on the piece."""
    whole = rectangle(0.0, 0.0, float(part.blank.length), float(part.blank.width))
    return not_left(whole, finished_outlines(part))


def not_left(whole: Outline, left: Sequence[Outline]) -> tuple[tuple[Point, Point], ...]:
    """The stretches of a straight outline along which nothing that is left of it runs."""
    kept = [_Edge(a, b) for loop in left for a, b in edges(loop)]
    return tuple(
        ((piece.a.x, piece.a.y), (piece.b.x, piece.b.y))
        for a, b in edges(whole)
        for piece in _not_shared(_Edge(a, b), kept)
    )


def finished_outlines(part: Part) -> tuple[Outline, ...]:
    """The outline of a finished part in its own x and y, and the holes through it (clockwise).

    One outline runs counter-clockwise about what is left; a piece that its cuts part has several.
    """
    loops: list[Outline] = [_sawn(part.blank, part.cuts)]
    for cut in through_cuts(part):
        loops = _less(loops, tuple(Vertex(float(v.x), float(v.y), v.bulge) for v in cut.outline))
    for corner in coped_corners(part):
        loops = _less(loops, corner)
    return tuple(loops)


def edge_outline(part: Part) -> Outline:
    """The outline of a finished part seen on its edge, in its own x and z: ends bevelled as sawn."""
    low, high, _, thick = _sawn_size(part.blank, part.cuts)
    loops: list[Outline] = [rectangle(low, 0.0, high, thick)]
    for cut in part.cuts:
        if isinstance(cut, Shaped) and bevels(cut, part):
            loops = _less(
                loops, tuple(Vertex(float(v.x), float(v.y), v.bulge) for v in cut.outline)
            )
    return max(loops, key=area_of)


def bevels(cut: Shaped, part: Part) -> bool:
    """Whether a shaped cut in an edge goes right through the width, as the bevel of an end does."""
    through = float(cut.depth) >= float(part.blank.width) - SAME and float(cut.surface) <= SAME
    return "edge" in cut.face and through


def finished_outline(part: Part) -> Outline:
    """The outer one of them, the largest where there are several."""
    return max(finished_outlines(part), key=area_of)


def _sawn(blank: Blank, cuts: Sequence[Cut]) -> Outline:
    """The face trimmed, mitred or with its corners rounded."""
    low, high, wide, _ = _sawn_size(blank, cuts)
    corners = list(rectangle(low, 0.0, high, wide))
    for cut in cuts:
        if isinstance(cut, RoundCorners):
            return rounded_rectangle((low, 0.0, high, wide), (float(cut.radius),) * 4)
        if isinstance(cut, Mitre):
            at_low, keeps_low = cut.end == "low end", cut.keeps == "low edge"
            index = (3 if keeps_low else 0) if at_low else (2 if keeps_low else 1)
            short = corners[index]
            corners[index] = short._replace(x=short.x + wide if at_low else short.x - wide)
    return tuple(corners)


def _sawn_size(blank: Blank, cuts: Sequence[Cut]) -> tuple[float, float, float, float]:
    """Where a piece begins and ends once it is trimmed, its width and its thickness, mm."""
    low = sum(float(c.length) for c in cuts if isinstance(c, Trim) and c.end == "low end")
    off = sum(float(c.length) for c in cuts if isinstance(c, Trim) and c.end == "high end")
    return low, float(blank.length) - off, float(blank.width), float(blank.thickness)


def inside_point(outline: Outline) -> Point:
    """A point well inside an outline: midway along it, in the middle of the widest place there."""
    ring = flattened(outline)
    x0, _, x1, _ = bounds_of(outline)
    best = (0.0, ring[0])
    for share in (0.5, 0.45, 0.55, 0.3, 0.7):
        x = x0 + (x1 - x0) * share
        ups = sorted(
            p[1] + (q[1] - p[1]) * (x - p[0]) / (q[0] - p[0])
            for p, q in zip(ring, (*ring[1:], ring[0]), strict=True)
            if (p[0] > x) != (q[0] > x)
        )
        for low, high in zip(ups[::2], ups[1::2], strict=True):
            if high - low > best[0] + _NEAR:
                best = (high - low, (x, (low + high) / 2))
        if best[0] > 0:
            break
    return best[1]


# --- an outline less another ---------------------------------------------------------------


def _less(loops: Sequence[Outline], taken: Outline) -> list[Outline]:
    """What is left of some loops when an outline that lies within them is taken away."""
    own = [_Edge(a, b) for loop in loops for a, b in edges(loop)]
    cut = [_Edge(a, b) for a, b in edges(taken)]
    left = [piece for edge in own for piece in _not_shared(edge, cut)]
    left += [_reversed(piece) for edge in cut for piece in _not_shared(edge, own)]
    return list(_chained(left))


def _reversed(edge: _Edge) -> _Edge:
    return _Edge(Vertex(edge.b.x, edge.b.y, -edge.a.bulge), Vertex(edge.a.x, edge.a.y))


def _not_shared(edge: _Edge, others: Sequence[_Edge]) -> Iterator[_Edge]:
    """The pieces of an edge that none of the others lies on, running the same way."""
    spans = sorted(span for other in others if (span := _shared(edge, other)) is not None)
    start = 0.0
    for low, high in [*spans, (1.0, 1.0)]:
        if low > start and _far(edge, start, low) > _NEAR:
            yield _piece(edge, start, low)
        start = max(start, high)


def _shared(edge: _Edge, other: _Edge) -> tuple[float, float] | None:
    """Between which parts of the way along an edge another lies on it."""
    mine, theirs = arc_of(*edge), arc_of(*other)
    if (mine is None) != (theirs is None):
        return None
    if mine is None or theirs is None:
        dx, dy = edge.b.x - edge.a.x, edge.b.y - edge.a.y
        long = math.hypot(dx, dy)
        ends = [
            (
                (v.x - edge.a.x) * dx + (v.y - edge.a.y) * dy,
                (v.x - edge.a.x) * dy - (v.y - edge.a.y) * dx,
            )
            for v in other
        ]
        if max(abs(aside) for _, aside in ends) > _NEAR * long:
            return None
        low, high = (along / long**2 for along, _ in ends)
    else:
        apart = math.hypot(mine.x - theirs.x, mine.y - theirs.y)
        if apart + abs(mine.radius - theirs.radius) > _NEAR or mine.sweep * theirs.sweep < 0:
            return None
        way = math.copysign(1.0, mine.sweep)
        # From half a turn before the middle of the edge, so that no place on it wraps.
        low = ((theirs.start - mine.start) * way + math.pi) % math.tau - math.pi
        low /= abs(mine.sweep)
        high = low + abs(theirs.sweep) / abs(mine.sweep)
    low, high = max(low, 0.0), min(high, 1.0)
    return (low, high) if high > low and _far(edge, low, high) > _NEAR else None


def _far(edge: _Edge, low: float, high: float) -> float:
    """How far it is along an edge between two parts of the way, mm."""
    arc = arc_of(*edge)
    if arc is not None:
        return arc.radius * abs(arc.sweep) * (high - low)
    return math.hypot(edge.b.x - edge.a.x, edge.b.y - edge.a.y) * (high - low)


def _piece(edge: _Edge, low: float, high: float) -> _Edge:
    arc = arc_of(*edge)

    def at(part: float) -> Point:
        if part <= 0.0 or part >= 1.0:
            end = edge.a if part <= 0.0 else edge.b
            return (end.x, end.y)
        if arc is None:
            return (
                edge.a.x + (edge.b.x - edge.a.x) * part,
                edge.a.y + (edge.b.y - edge.a.y) * part,
            )
        turn = arc.start + arc.sweep * part
        return (arc.x + arc.radius * math.cos(turn), arc.y + arc.radius * math.sin(turn))

    bulge = 0.0 if arc is None else math.tan(arc.sweep * (high - low) / 4)
    return _Edge(Vertex(*at(low), bulge), Vertex(*at(high)))


def _chained(pieces: Sequence[_Edge]) -> Iterator[Outline]:
    """Edges end to end, as closed loops."""
    waiting = list(pieces)
    while waiting:
        chain = [waiting.pop(0)]
        while math.dist(chain[-1].b[:2], chain[0].a[:2]) > _NEAR:
            end = chain[-1].b
            near = min(waiting, key=lambda edge: math.dist(edge.a[:2], end[:2]), default=None)
            if near is None or math.dist(near.a[:2], end[:2]) > _NEAR:
                raise ValueError("a cut does not lie within the face that it is made in")
            waiting.remove(near)
            chain.append(near)
        yield tuple(edge.a for edge in chain)
