"""The room about casework as the survey has it: walls that lean, floor and ceiling at their levels.

Nothing is squared up and nothing exaggerated. Beyond the readings the floor goes on at the slope
it ends with and a ceiling goes on level.

seen from above:  ._______________.  back
                  |     cases     |
         _________|...............|_________  face
                        y = 0
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from typing import Literal, Protocol

from parametric.catalog.room import ROOM
from parametric.writers.client_page import Niche, Surface

Flat = tuple[float, float]
Kind = Literal["wall", "floor", "ceiling"]

_HIGH_ENOUGH = 2100.0
"""A head no lower than this, mm, that is nearly level, is the room's ceiling; what is lower or
slopes more is a soffit with wall over it. By eye, no source."""
_NEARLY_LEVEL = 100.0
"""How far a ceiling may rise across an opening, mm."""


class Surveyed(Protocol):
    """What lies between walls, as it was read: points (x, z), mm."""

    def outline(self) -> tuple[Flat, ...]:
        """From the left foot up, across the head and down."""
        ...

    def floor_line(self) -> tuple[Flat, ...]:
        """The floor from left to right; nothing where it was not read."""
        ...


def niche(*openings: Surveyed, back: float, face: float = 0.0) -> Niche:
    """The surfaces of the room about one or several openings that casework stands in.

    Args:
        openings: the survey of each, where it is in the room, from left to right.
        back: the y of the wall behind, mm: how deep they are from the cases' front edges.
        face: the y of the face of the wall they are in, mm; less than 0 where the wall stands
            before the cases' front edges.
    """
    bays = [_Bay(opening.outline()) for opening in openings]
    far_left, far_right = bays[0].left[0][0], bays[-1].right[-1][0]
    wide = far_right - far_left
    reach = max(ROOM.side * 1000, wide / 2 + ROOM.side * 500)
    middle = far_left + wide / 2
    near, ends = -(ROOM.front * 2000 + wide), (middle - reach, middle + reach)
    feet = [x for bay in bays for x in (bay.left[0][0], bay.right[-1][0])]
    readings = [point for opening in openings for point in opening.floor_line()]
    floor = _line(readings, (ends[0], *feet, ends[1]))
    over = [point for bay in bays for point in bay.over]
    levels = [z for _, z in over]
    open_above = min(levels) >= _HIGH_ENOUGH and max(levels) - min(levels) <= _NEARLY_LEVEL
    tops = (levels[0], levels[-1]) if open_above else (ROOM.high * 1000,) * 2
    low, high = (
        [(ends[0], floor[0][1]), (ends[1], floor[-1][1])],
        list(zip(ends, tops, strict=True)),
    )
    found = [surface for bay in bays for surface in bay.surfaces(floor, face, back)]
    found += [
        _upright((low[0], *bays[0].left, high[0]), face),
        *(_upright((*a.right, *b.left), face) for a, b in itertools.pairwise(bays)),
        _upright((*bays[-1].right, low[1], high[1]), face),
        *_swept("wall", (low[0], high[0]), near, face),
        *_swept("wall", (high[1], low[1]), near, face),
        *_swept("floor", floor[::-1], near, face),
        *_swept("ceiling", (high[0], *(over if open_above else ()), high[1]), near, face),
    ]
    if not open_above:
        found.append(_upright((high[0], *over, high[1]), face))
    head = (high[0], *over, high[1]) if open_above else ()
    return Niche(surfaces=tuple(found), face=face, back=back, head=head)


class _Bay:
    """One opening: its left wall from the foot up, what is over it, its right wall down."""

    def __init__(self, outline: tuple[Flat, ...]) -> None:
        head = _head(outline)
        self.outline = outline
        self.left, self.over, self.right = (
            outline[: head.start + 1],
            outline[head],
            outline[head.stop - 1 :],
        )

    def surfaces(self, floor: Sequence[Flat], face: float, back: float) -> list[Surface]:
        """What encloses it but at its face."""
        within = [p for p in floor if self.left[0][0] <= p[0] <= self.right[-1][0]]
        return [
            *_swept("wall", self.left, face, back),
            *_swept("ceiling", self.over, face, back),
            *_swept("wall", self.right, face, back),
            *_swept("floor", within[::-1], face, back),
            _upright((*within, *self.outline[::-1]), back),
        ]


def _head(outline: Sequence[Flat]) -> slice:
    """Which points of an outline are its head: those between its two walls.

    A wall is what goes on from a foot and is steeper than it is level.
    """
    first, last = 0, len(outline) - 1
    while first < last and _steep(outline[first], outline[first + 1]):
        first += 1
    while last > first and _steep(outline[last - 1], outline[last]):
        last -= 1
    return slice(first, last + 1)


def _steep(a: Flat, b: Flat) -> bool:
    return abs(b[1] - a[1]) > abs(b[0] - a[0])


def _line(readings: Sequence[Flat], at: Sequence[float]) -> list[Flat]:
    """A line through readings, with points at given places too, gone on beyond at its last slope."""
    level = readings[0][1] if readings else 0.0
    points = readings if len(readings) > 1 else ((0.0, level), (1.0, level))
    return sorted({x: (x, _height(points, x)) for x in (*(p[0] for p in points), *at)}.values())


def _height(points: Sequence[Flat], x: float) -> float:
    (x0, z0), (x1, z1) = next(
        (pair for pair in itertools.pairwise(points) if x <= pair[1][0]), (points[-2], points[-1])
    )
    return z0 + (z1 - z0) * (x - x0) / (x1 - x0)


def _swept(kind: Kind, line: Sequence[Flat], near: float, far: float) -> list[Surface]:
    """What a line seen from the front is from one y to another: the room is on its right hand."""
    return [
        Surface(
            kind=kind,
            corners=((a[0], near, a[1]), (a[0], far, a[1]), (b[0], far, b[1]), (b[0], near, b[1])),
        )
        for a, b in itertools.pairwise(line)
    ]


def _upright(line: Sequence[Flat], y: float) -> Surface:
    """A wall that faces the viewer, by its outline."""
    return Surface(kind="wall", corners=tuple((x, y, z) for x, z in line))
