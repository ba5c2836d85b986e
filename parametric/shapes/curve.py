r"""The curve under an arched or raked top rail: arcs of circles and straight slopes, end to end.

       ____--------____        rise, above the middle or above the high end
   _---                ---_
  /                        \
 +--------------------------+  springing line: y = 0, x from the left springing point
 0                        span

Every arc is the upper part of its circle, so there is one height at each x. Beyond its ends a
curve goes on as the circle or slope of its last piece, where a glass edge needs it.
"""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from typing import assert_never

from parametric.figures import Figure, arc_sine, hypot, largest, named, root, square
from parametric.outlines import SAME, Outline, Vertex


@dataclass(frozen=True, slots=True, kw_only=True)
class Bow:
    """One arc of a circle; `x` is its centre's, which lies `below` the springing line, mm."""

    x: Figure
    below: Figure
    radius: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """A straight piece from (x, y): it climbs so much on a level run, less than nothing when it falls, mm."""

    x: Figure
    y: Figure
    run: Figure
    climb: Figure


Piece = Bow | Slope


@dataclass(frozen=True, slots=True, kw_only=True)
class HeadCurve:
    """A head's curve, mm.

    `span` is between the springing points; `rise` is its highest, at `crown_at`. It begins at
    `left` and ends at `right`, which for the curve itself are the springing points. Its
    pieces run from left to right and meet at `joints`: smoothly, or in one point (`pointed`)
    above the same place however far out a curve beside it lies.
    """

    span: Figure
    rise: Figure
    crown_at: Figure
    left: Figure
    right: Figure
    pieces: tuple[Piece, ...]
    joints: tuple[Figure, ...] = ()
    pointed: bool = False

    @property
    def edge(self) -> Outline:
        """The whole curve as an open chain."""
        return part_of(self, self.left, self.right)

    @property
    def tightest(self) -> Figure | None:
        """The smallest radius of its arcs: how far inwards a curve beside it may lie; None if all is straight."""
        radii = [piece.radius for piece in self.pieces if isinstance(piece, Bow)]
        return min(radii, key=float, default=None)


def height_at(curve: HeadCurve, x: float, name: str) -> Figure:
    """Above the springing line at x, less than nothing below it.

    Args:
        curve: the curve.
        x: from the left springing point, mm.
        name: the result's.

    Raises:
        ValueError: the curve does not reach so far.

    Source: geometry of the circle.
    """
    return named(name, _height(_piece_at(curve, x), x))


def highest(curve: HeadCurve, x0: float, x1: float, name: str) -> Figure:
    """The most of the curve above the springing line between two places: at either, or at the crown."""
    heights = [_height(_piece_at(curve, x), x) for x in (x0, x1)]
    if float(x0) < float(curve.crown_at) < float(x1):
        heights.append(curve.rise)
    return named(name, largest(*heights))


def beside(curve: HeadCurve, by: float) -> HeadCurve:
    """The curve all of which lies `by` farther out, or farther in where that is negative.

    Arcs keep their centres. Where two meet in a point, they go on until they meet again.

    Args:
        curve: the curve.
        by: square to the curve, mm.

    Raises:
        ValueError: no arc is left of one of its pieces.

    Source: geometry of the circle; the point common practice, no source.
    """
    tightest = curve.tightest
    if tightest is not None and float(tightest + by) <= SAME:
        raise ValueError(f"{-float(by)} mm inside an arc of {float(tightest)} there is none")
    smooth = zip(curve.joints, curve.pieces, strict=False)
    left = _beside(curve.pieces[0], curve.left, by)
    right = _beside(curve.pieces[-1], curve.right, by)
    moved = replace(
        curve,
        left=left,
        right=right,
        pieces=tuple(_piece_beside(piece, by) for piece in curve.pieces),
        joints=curve.joints if curve.pointed else tuple(_beside(p, x, by) for x, p in smooth),
    )
    if float(curve.crown_at) == float(curve.left):
        return replace(moved, crown_at=left, rise=_height(moved.pieces[0], left))
    if float(curve.crown_at) == float(curve.right):
        return replace(moved, crown_at=right, rise=_height(moved.pieces[-1], right))
    if curve.pointed:
        return replace(moved, rise=_height(moved.pieces[0], curve.crown_at))
    return replace(moved, rise=curve.rise + by)


def mirrored(curve: HeadCurve) -> HeadCurve:
    """The curve as it is seen from behind: left and right change places about the middle of its span."""
    return HeadCurve(
        span=curve.span,
        rise=curve.rise,
        crown_at=curve.span - curve.crown_at,
        left=curve.span - curve.right,
        right=curve.span - curve.left,
        pieces=tuple(_turned(piece, curve.span) for piece in reversed(curve.pieces)),
        joints=tuple(curve.span - x for x in reversed(curve.joints)),
        pointed=curve.pointed,
    )


def part_of(curve: HeadCurve, x0: float, x1: float) -> Outline:
    """The open chain between two places, from left to right: arcs stay arcs, split where they must.

    Raises:
        ValueError: the places stand in the wrong order, or the curve does not reach so far.
    """
    chain: list[Vertex] = []
    end = Vertex(0.0, 0.0)
    for piece, a, b in _stretches(curve, x0, x1):
        chain.append(Vertex(float(a), float(_height(piece, a)), _bulge(piece, a, b)))
        end = Vertex(float(b), float(_height(piece, b)))
    return (*chain, end)


def area_under(curve: HeadCurve, x0: float, x1: float) -> Figure:
    """Between the curve and the springing line from one place to another, mm2; less than nothing below it.

    Source: integral of the circle.
    """
    return _sum(_area(piece, a, b) for piece, a, b in _stretches(curve, x0, x1))


def length_along(curve: HeadCurve, x0: float, x1: float) -> Figure:
    """Along the curve from one place to another, mm: what a bent strip or stop needs."""
    return _sum(_length(piece, a, b) for piece, a, b in _stretches(curve, x0, x1))


def _sum(parts: Iterable[Figure]) -> Figure:
    first, *others = parts
    for other in others:
        first = first + other
    return first


def _piece_at(curve: HeadCurve, x: float) -> Piece:
    for joint, piece in zip(curve.joints, curve.pieces, strict=False):
        if float(x) <= float(joint):
            return piece
    return curve.pieces[-1]


def _stretches(curve: HeadCurve, x0: float, x1: float) -> Iterator[tuple[Piece, float, float]]:
    """Each piece that lies between two places, with the places where it is entered and left."""
    if float(x1) - float(x0) <= SAME:
        raise ValueError(f"from {float(x0)} to {float(x1)} is no way to the right")
    start = x0
    for joint, piece in zip((*curve.joints, x1), curve.pieces, strict=True):
        end = joint if float(joint) < float(x1) - SAME else x1
        if float(end) - float(start) > SAME:
            yield piece, start, end
            start = end


def _across(bow: Bow, x: float) -> Figure:
    """A place from the upright through an arc's centre: at the end of its circle, exactly the radius."""
    across = x - bow.x
    past = abs(float(across)) - float(bow.radius)
    if past > SAME:
        raise ValueError(f"{float(x)} lies {past} mm outside the circle of the curve")
    if past < -SAME:
        return across
    return bow.radius if float(across) > 0 else -bow.radius


def _over(bow: Bow, across: Figure) -> Figure:
    """An arc above the level of its own centre."""
    return root(square(bow.radius) - square(across))


def _height(piece: Piece, x: float) -> Figure:
    match piece:
        case Bow():
            over = _over(piece, _across(piece, x))
            return over - piece.below if float(piece.below) else over
        case Slope():
            return piece.y + (x - piece.x) * piece.climb / piece.run
        case _:
            assert_never(piece)


def _area(piece: Piece, a: float, b: float) -> Figure:
    """Sector and two triangles, down to the springing line; or a trapezium."""
    match piece:
        case Bow(radius=radius):
            low, high = _across(piece, a), _across(piece, b)
            turn = arc_sine(high / radius) - arc_sine(low / radius)
            under = (
                square(radius) * turn * math.pi / 360
                + (high * _over(piece, high) - low * _over(piece, low)) / 2
            )
            return under - piece.below * (high - low) if float(piece.below) else under
        case Slope():
            return (_height(piece, a) + _height(piece, b)) / 2 * (b - a)
        case _:
            assert_never(piece)


def _length(piece: Piece, a: float, b: float) -> Figure:
    match piece:
        case Bow(radius=radius):
            low, high = _across(piece, a), _across(piece, b)
            return radius * (arc_sine(high / radius) - arc_sine(low / radius)) * math.pi / 180
        case Slope():
            return (b - a) * hypot(piece.run, piece.climb) / piece.run
        case _:
            assert_never(piece)


def _bulge(piece: Piece, a: float, b: float) -> float:
    """Of the edge from one place of a piece to another: left to right over the top turns clockwise."""
    match piece:
        case Bow():
            low, high = _across(piece, a), _across(piece, b)
            turn = math.atan2(high, _over(piece, high)) - math.atan2(low, _over(piece, low))
            return -math.tan(turn / 4)
        case Slope():
            return 0.0
        case _:
            assert_never(piece)


def _piece_beside(piece: Piece, by: float) -> Piece:
    match piece:
        case Bow():
            return replace(piece, radius=piece.radius + by)
        case Slope():
            long = hypot(piece.run, piece.climb)
            return replace(piece, x=_beside(piece, piece.x, by), y=piece.y + by * piece.run / long)
        case _:
            assert_never(piece)


def _beside(piece: Piece, x: float, by: float) -> Figure:
    """Where a place of a piece comes to when it moves square to the curve."""
    match piece:
        case Bow():
            return piece.x + _across(piece, x) * (piece.radius + by) / piece.radius
        case Slope():
            return x - by * piece.climb / hypot(piece.run, piece.climb)
        case _:
            assert_never(piece)


def _turned(piece: Piece, span: Figure) -> Piece:
    match piece:
        case Bow():
            return replace(piece, x=span - piece.x)
        case Slope():
            return Slope(
                x=span - (piece.x + piece.run),
                y=piece.y + piece.climb,
                run=piece.run,
                climb=-piece.climb,
            )
        case _:
            assert_never(piece)
