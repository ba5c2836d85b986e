"""The wood left in one board between what is cut into it from different faces.

    end of a partition, cut through          on its face
      ________________________
     |   plate  |_|  <- left ->               what is bored from the other face is not seen from
    ============= dowel                       this one: only the board knows how near it comes
     |________________________

A round hole is taken as round about its own middle; whatever else is cut, as the box about it.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.model import (
    Drilled,
    Face,
    Groove,
    Part,
    Pocket,
    ScrewPocket,
    Shaped,
    Slot,
    Vector,
    face_depth,
    face_point,
)

_SAME = 1e-6
"""mm."""
_AXES = (0, 1, 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """What one hole or one recess takes of its board, in the board's frame, mm.

    `through` says that it comes out at the other side; `axis` is the one that it goes in along.
    `bored` of a hole, a slot or a pocket: something goes into it, and it must hold.
    """

    name: str
    face: Face
    low: Vector
    high: Vector
    axis: int
    round: bool
    bored: bool
    through: bool

    @property
    def middle(self) -> Vector:
        """Of the box about it."""
        x, y, z = ((a + b) / 2 for a, b in zip(self.low, self.high, strict=True))
        return (x, y, z)

    @property
    def radius(self) -> float:
        """Of a round hole."""
        aside = (self.axis + 1) % 3
        return (self.high[aside] - self.low[aside]) / 2


@dataclass(frozen=True, slots=True, kw_only=True)
class TooNear:
    """Two cuts of one board with less wood between them than is wanted: `left`, mm, none if they meet."""

    one: Taken
    other: Taken
    left: float


def taken(part: Part) -> Iterator[Taken]:
    """Every hole by itself, and every groove, slot and square recess."""
    for cut in part.cuts:
        match cut:
            case Drilled():
                half = float(cut.diameter) / 2
                for u, v in cut.places:
                    yield _taken(part, cut, (u - half, v - half), (u + half, v + half))
            case Groove() | Slot():
                half = float(cut.width) / 2
                low, high = (float(cut.u0), cut.v - half), (float(cut.u1), cut.v + half)
                yield _taken(part, cut, low, high)
            case Pocket():
                along, across = float(cut.length) / 2, float(cut.width) / 2
                low, high = (cut.u - along, cut.v - across), (cut.u + along, cut.v + across)
                yield _taken(part, cut, low, high)
            case ScrewPocket():
                for v in cut.places:
                    yield from _of_pocket(part, cut, v)
            case Shaped() if _is_square(cut):
                us, vs = [v.x for v in cut.outline], [v.y for v in cut.outline]
                yield _taken(part, cut, (min(us), min(vs)), (max(us), max(vs)))
            case _:
                pass


def _of_pocket(part: Part, cut: ScrewPocket, v: float) -> Iterator[Taken]:
    """A screw's pocket and its pilot: the box about each, along the board."""
    turn = math.radians(float(cut.angle))
    sin, cos = math.sin(turn), math.cos(turn)
    half, pin, mouth = float(cut.wide) / 2, float(cut.pilot) / 2, float(cut.mouth)
    floor = (mouth - float(cut.deep) * cos, float(cut.deep) * sin)
    length = float(part.blank.length)
    for across, from_end, depth in (
        (half, (floor[0] - half * sin, cut.reach), (0.0, floor[1] + half * cos)),
        (pin, (0.0, floor[0] + pin * sin), (floor[1] - pin * cos, mouth * sin / cos + pin * cos)),
    ):
        along = [at if cut.end == "low end" else length - at for at in from_end]
        points = [
            face_point(cut.face, part.blank, u, v + way * across, down)
            for u, way, down in zip(along, (-1.0, 1.0), depth, strict=True)
        ]
        lows, highs = (
            tuple(pick(axis) for axis in zip(*points, strict=True)) for pick in (min, max)
        )
        yield Taken(
            name=cut.name,
            face=cut.face,
            low=(lows[0], lows[1], lows[2]),
            high=(highs[0], highs[1], highs[2]),
            axis=0,
            round=False,
            bored=True,
            through=False,
        )


def _is_square(cut: Shaped) -> bool:
    """Whether its outline is a rectangle along the board."""
    us, vs = [v.x for v in cut.outline], [v.y for v in cut.outline]
    return len(cut.outline) == 4 and all(
        v.bulge == 0 and v.x in (min(us), max(us)) and v.y in (min(vs), max(vs))
        for v in cut.outline
    )


def _taken(
    part: Part,
    cut: Drilled | Groove | Slot | Pocket | Shaped,
    low: tuple[float, float],
    high: tuple[float, float],
) -> Taken:
    points = [
        face_point(cut.face, part.blank, float(u), float(v), float(depth))
        for (u, v), depth in ((low, cut.surface), (high, cut.depth))
    ]
    lows, highs = (tuple(pick(axis) for axis in zip(*points, strict=True)) for pick in (min, max))
    return Taken(
        name=cut.name,
        face=cut.face,
        low=(lows[0], lows[1], lows[2]),
        high=(highs[0], highs[1], highs[2]),
        axis=_axis(cut.face),
        round=isinstance(cut, Drilled),
        bored=isinstance(cut, Drilled | Slot | Pocket),
        through=face_depth(cut.face, part.blank) - cut.depth < _SAME,
    )


def _axis(face: Face) -> int:
    match face:
        case "low end" | "high end":
            return 0
        case "low edge" | "high edge":
            return 1
        case "low face" | "high face":
            return 2


def too_near(part: Part, least: float) -> Iterator[TooNear]:
    """Pairs from different faces with less wood than `least`, mm, between them, one of them bored.

    A hole that comes out in the floor of something larger is a step of it, and no fault.
    """
    found = sorted(taken(part), key=lambda own: own.low[0])
    if not any(own.bored for own in found):
        return
    for index, one in enumerate(found):
        for other in found[index + 1 :]:
            if other.low[0] - one.high[0] >= least:
                break
            if one.face == other.face or not (one.bored or other.bored):
                continue
            if _comes_out_in(one, other) or _comes_out_in(other, one):
                continue
            left = wood_between(one, other)
            if left < float(least) - _SAME:
                yield TooNear(one=one, other=other, left=max(left, 0.0))


def _comes_out_in(hole: Taken, other: Taken) -> bool:
    return (
        hole.round
        and hole.through
        and all(
            other.low[i] - _SAME <= hole.low[i] and hole.high[i] <= other.high[i] + _SAME
            for i in _AXES
            if i != hole.axis
        )
    )


def wood_between(one: Taken, other: Taken) -> float:
    """Mm between two of them, less than nothing where they meet; never more than there is."""
    if one.round and other.round and one.axis == other.axis:
        aside = [axis for axis in _AXES if axis != one.axis]
        middles = math.dist([one.middle[i] for i in aside], [other.middle[i] for i in aside])
        return max(_apart(one, other, one.axis), middles - one.radius - other.radius)
    return max(
        *(_apart(one, other, axis) for axis in _AXES),
        _beside(one, other) if one.round else -math.inf,
        _beside(other, one) if other.round else -math.inf,
    )


def _beside(hole: Taken, other: Taken) -> float:
    """From the round of a hole to the box about another, across the hole."""
    middle = hole.middle
    outside = [
        max(other.low[i] - middle[i], middle[i] - other.high[i], 0.0)
        for i in _AXES
        if i != hole.axis
    ]
    return math.hypot(*outside) - hole.radius


def _apart(one: Taken, other: Taken, axis: int) -> float:
    return max(other.low[axis] - one.high[axis], one.low[axis] - other.high[axis])
