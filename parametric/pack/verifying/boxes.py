"""The boxes of finished leaves and parts, and where there is still wood beside a place.

A shape that goes right through leaves less than the wood's own box.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence

from parametric.model import Face, Group, Part, Shaped, Vector
from parametric.pack.verifying.hollows import Hollow, hollow, wood
from parametric.pack.verifying.outlines import Bounds, Outline, Point, inwards

_SAME = 1e-6
_BESIDE = 1e-3
_ROUND = 64
"""How far away and in how many directions one looks for wood beside a place, mm."""
_PLACES = 9
"""Parts of a wall, between which one looks for wood beside it."""

Box = tuple[Vector, Vector]


def leaf_box(group: Group) -> Box:
    """The finished leaf's box in its own frame: its made wooden parts, ends trimmed, mm."""
    corners = [
        corner
        for part in group.parts
        if not part.supplied and part.material.look in ("timber", "board")
        for corner in _corners(part)
    ]
    return _around(corners)


def _corners(part: Part) -> Iterator[Vector]:
    low, high = wood(part)
    for x in (low, high):
        for y in (0.0, float(part.blank.width)):
            for z in (0.0, float(part.blank.thickness)):
                yield part.placement.point((x, y, z))


def placed_box(group: Group, part: Part) -> Box:
    """A box round the finished part where it stands, shut, in the world, mm: round its own, turned."""
    xs, ys, zs = zip(*finished_box(part), strict=True)
    corners = itertools.product(xs, ys, zs)
    return _around([group.placement.point(part.placement.point(corner)) for corner in corners])


def finished_box(part: Part) -> Box:
    """The box of what is left of a part in its own frame: less than its wood where shapes go through."""
    low, high = (list(corner) for corner in _wood_box(part))
    through: dict[Face, list[Outline]] = {}
    for cut in part.cuts:
        if isinstance(cut, Shaped):
            made = hollow(part, cut, at_machine=False)
            if made.shape is not None and _goes_through(part, made):
                through.setdefault(cut.face, []).append(made.shape)
    for face, shapes in through.items():
        limits = _wood_of_face(part, face)
        left = [*_left_of_rim(limits, shapes), *_left_by_walls(limits, shapes)]
        for which, way in enumerate(_ways(face)):
            low[way] = max(low[way], min(at[which] for at in left))
            high[way] = min(high[way], max(at[which] for at in left))
    return ((low[0], low[1], low[2]), (high[0], high[1], high[2]))


def _left_of_rim(limits: Bounds, shapes: Sequence[Outline]) -> Iterator[Point]:
    """The ends of what is left of a face's own edges."""
    u0, v0, u1, v1 = limits
    for axis, at, low, high in ((0, u0, v0, v1), (0, u1, v0, v1), (1, v0, u0, u1), (1, v1, u0, u1)):
        taken = sorted(
            (min(edge.a[1 - axis], edge.b[1 - axis]), max(edge.a[1 - axis], edge.b[1 - axis]))
            for shape in shapes
            for edge in shape.edges
            if not edge.bulge and max(abs(edge.a[axis] - at), abs(edge.b[axis] - at)) <= _SAME
        )
        start = low
        for begins, ends in [*taken, (high, high)]:
            if begins - start > _SAME:
                yield from ((at, p) if axis == 0 else (p, at) for p in (start, begins))
            start = max(start, ends)


def _left_by_walls(limits: Bounds, shapes: Sequence[Outline]) -> Iterator[Point]:
    """How far the walls of shapes reach that have wood on their other side."""
    u0, v0, u1, v1 = limits
    for shape in shapes:
        for edge in shape.edges:
            for (u, v), way in inwards(edge, _PLACES):
                at = (u - way[0] * _BESIDE, v - way[1] * _BESIDE)
                in_wood = u0 < at[0] < u1 and v0 < at[1] < v1
                if in_wood and not any(other.contains(at) for other in shapes):
                    yield from (edge.a, edge.b, *edge.furthest())
                    break


def stands(part: Part, made: Hollow, corner: tuple[float, float]) -> bool:
    """Whether there is wood beside a corner of a shape's floor: below it, or past its walls."""
    limits = _wood_of_face(part, made.face)
    if not limits[0] - _SAME <= corner[0] <= limits[2] + _SAME:
        return False
    _, behind = _wood_behind(part, made.face)
    if made.floor < behind - _SAME:
        return True
    return made.shape is not None and _wood_beside(corner, limits, (made.shape,))


def _wood_box(part: Part) -> Box:
    low, high = wood(part)
    return ((low, 0.0, 0.0), (high, float(part.blank.width), float(part.blank.thickness)))


def _ways(face: Face) -> tuple[int, int]:
    """Which of the part's x, y and z run along u and v of a face."""
    axis = ("end", "edge", "face").index(face.split()[1])
    first, second = (way for way in range(3) if way != axis)
    return first, second


def _wood_of_face(part: Part, face: Face) -> tuple[float, float, float, float]:
    """Low u, low v, high u, high v of a face once the ends are trimmed, mm."""
    low, high = _wood_box(part)
    u, v = _ways(face)
    return (low[u], low[v], high[u], high[v])


def _goes_through(part: Part, made: Hollow) -> bool:
    """Whether a hollow leaves nothing in front of it and nothing behind it."""
    before, behind = _wood_behind(part, made.face)
    return made.begins <= before + _SAME and made.floor >= behind - _SAME


def _wood_behind(part: Part, face: Face) -> tuple[float, float]:
    """How deep behind a face of the blank its wood begins and ends, mm."""
    low, high = _wood_box(part)
    axis = ("end", "edge", "face").index(face.split()[1])
    far = float((part.blank.length, part.blank.width, part.blank.thickness)[axis])
    if face.startswith("high"):
        return (far - high[axis], far - low[axis])
    return (low[axis], high[axis])


def _wood_beside(
    place: tuple[float, float],
    limits: tuple[float, float, float, float],
    shapes: Sequence[Outline],
) -> bool:
    """Whether something is left of a face beside a place. Looked for a thousandth away, all round."""
    u0, v0, u1, v1 = limits
    for turn in range(_ROUND):
        angle = math.tau * (turn + 0.5) / _ROUND
        at = (place[0] + _BESIDE * math.cos(angle), place[1] + _BESIDE * math.sin(angle))
        if u0 < at[0] < u1 and v0 < at[1] < v1 and not any(s.contains(at) for s in shapes):
            return True
    return False


def _around(points: list[Vector]) -> Box:
    low = tuple(min(p[i] for p in points) for i in range(3))
    high = tuple(max(p[i] for p in points) for i in range(3))
    return ((low[0], low[1], low[2]), (high[0], high[1], high[2]))
