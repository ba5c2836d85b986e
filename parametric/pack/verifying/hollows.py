"""What each flat-bottomed cut takes out of a face, as a hollow: by sums of its own."""

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
    Shaped,
    Slot,
    Trim,
    Vector,
    face_point,
    face_size,
)
from parametric.pack.verifying.outlines import Outline, closed_outline, relieved_rectangle

_SAME = 1e-6
_HAIR = 1e-3
"""mm"""


@dataclass(frozen=True, slots=True, kw_only=True)
class Hollow:
    """What a flat-bottomed cut takes out of a face: a rectangle with round corners, and its depths.

    `shape` is the outline of one that is no such rectangle; `bounds` are then its box.

    `bounds` are low u, low v, high u, high v; `at_low` and `at_high` the radius of the
    corners at either end of u; `relief` that of a larger cutter run into all of them, 0
    where none is. All mm.
    """

    part: str
    cut: str
    face: Face
    bounds: tuple[float, float, float, float]
    at_low: float
    at_high: float
    begins: float
    floor: float
    relief: float = 0.0
    shape: Outline | None = None

    @property
    def reach(self) -> tuple[float, float, float, float]:
        """Its walls, and past them as far as its corners are relieved, mm."""
        u0, v0, u1, v1 = self.bounds
        if not self.relief:
            return self.bounds
        ru0, rv0, ru1, rv1 = self._relieved.bounds
        u, v = (u0 + u1) / 2, (v0 + v1) / 2
        return (u + ru0, v + rv0, u + ru1, v + rv1)

    @property
    def _relieved(self) -> Outline:
        u0, v0, u1, v1 = self.bounds
        return relieved_rectangle(u1 - u0, v1 - v0, self.at_low, self.relief)

    @property
    def area(self) -> float:
        """mm2."""
        u0, v0, u1, v1 = self.bounds
        if self.shape is not None:
            return self.shape.area
        if self.relief:
            return self._relieved.area
        return (u1 - u0) * (v1 - v0) - sum(2 * _corner_area(r) for r in (self.at_low, self.at_high))

    @property
    def middle(self) -> tuple[float, float]:
        """The centre of its area, mm: that of the rectangle less its four corners."""
        u0, v0, u1, v1 = self.bounds
        if self.shape is not None:
            return self.shape.middle
        if self.relief:
            return ((u0 + u1) / 2, (v0 + v1) / 2)
        whole = (u1 - u0) * (v1 - v0)
        u = whole * (u0 + u1) / 2
        u -= 2 * _corner_area(self.at_low) * (u0 + _corner_middle(self.at_low))
        u -= 2 * _corner_area(self.at_high) * (u1 - _corner_middle(self.at_high))
        return (u / self.area, (v0 + v1) / 2)

    @property
    def volume(self) -> float:
        """mm3."""
        return self.area * (self.floor - self.begins)

    @property
    def corners(self) -> tuple[tuple[float, float], ...]:
        """Where its straight sides begin and end, mm; none of a round hole."""
        u0, v0, u1, v1 = self.bounds
        if self.shape is not None:
            return tuple(self.shape.turns)
        if self.relief:
            u, v = (u0 + u1) / 2, (v0 + v1) / 2
            return tuple((u + edge.a[0], v + edge.a[1]) for edge in self._relieved.edges)
        if self.radius_of_hole:
            return ()
        if u1 - u0 <= self.at_low + self.at_high + _SAME:
            return tuple((u, v) for u in (u0, u1) for v in (v0 + self.at_low, v1 - self.at_low))
        return tuple((u, v) for u in (u0 + self.at_low, u1 - self.at_high) for v in (v0, v1))

    @property
    def marks(self) -> tuple[tuple[float, float], ...]:
        """Of a shape, its corners and the middles of its arcs, mm; none of a rectangle."""
        return () if self.shape is None else tuple(self.shape.marks)

    @property
    def radius_of_hole(self) -> float:
        """mm; 0 for what is no round hole."""
        if self.shape is not None:
            return 0.0
        u0, v0, u1, v1 = self.bounds
        across = 2 * self.at_low + _SAME
        return self.at_low if u1 - u0 <= across and v1 - v0 <= across else 0.0


def _corner_area(radius: float) -> float:
    """What rounding takes off one square corner, mm2."""
    return (1 - math.pi / 4) * radius**2


def _corner_middle(radius: float) -> float:
    """How far the middle of that bit is from the corner along either side, mm.

    A square of r less a quarter disc, whose middle is 4 r / 3 pi from its centre.
    """
    if radius == 0:
        return 0.0
    quarter = math.pi * radius**2 / 4
    return (radius**3 / 2 - quarter * (radius - 4 * radius / (3 * math.pi))) / _corner_area(radius)


Single = Slot | Pocket | Groove | Shaped
"""Cuts with a flat bottom and upright sides that are one hollow each."""
Flat = Single | Drilled


def hollows(part: Part, cut: Flat, *, at_machine: bool) -> Iterator[Hollow]:
    """A cut as hollows, one for each hole of a row; the arguments are those of `hollow`."""
    if not isinstance(cut, Drilled):
        yield hollow(part, cut, at_machine=at_machine)
        return
    half, pitch = float(cut.diameter) / 2, float(cut.pitch)
    for number in range(cut.count):
        u, v = float(cut.u), float(cut.v)
        if cut.along == "u":
            u += number * pitch
        else:
            v += number * pitch
        yield Hollow(
            part=part.name,
            cut=cut.name,
            face=cut.face,
            bounds=(u - half, v - half, u + half, v + half),
            at_low=half,
            at_high=half,
            begins=float(cut.surface),
            floor=float(cut.depth),
        )


def hollow(part: Part, cut: Single, *, at_machine: bool) -> Hollow:
    """A cut as a hollow.

    Args:
        part: its part.
        cut: the cut.
        at_machine: as the cutter leaves it, before its stopped ends are chopped square.
    """
    shape = None
    match cut:
        case Shaped():
            shape = closed_outline([(float(x), float(y), bulge) for x, y, bulge in cut.outline])
            bounds, radii, begins = shape.bounds, (0.0, 0.0), float(cut.surface)
        case Slot():
            half = float(cut.width) / 2
            bounds = (float(cut.u0), float(cut.v) - half, float(cut.u1), float(cut.v) + half)
            radii, begins = (half, half), float(cut.surface)
        case Pocket():
            u, v = float(cut.u), float(cut.v)
            along, across = float(cut.length) / 2, float(cut.width) / 2
            bounds = (u - along, v - across, u + along, v + across)
            radii, begins = (float(cut.corner), float(cut.corner)), float(cut.surface)
        case Groove():
            half = float(cut.width) / 2
            bounds = (float(cut.u0), float(cut.v) - half, float(cut.u1), float(cut.v) + half)
            low, high = wood(part) if cut.face not in ("low end", "high end") else whole(part, cut)
            corner = float(cut.corner) if at_machine or not cut.squared else 0.0
            radii = (
                0.0 if bounds[0] <= low + _SAME or _gone(part, cut, bounds[0], -1) else corner,
                0.0 if bounds[2] >= high - _SAME or _gone(part, cut, bounds[2], 1) else corner,
            )
            begins = float(cut.surface)
    return Hollow(
        part=part.name,
        cut=cut.name,
        face=cut.face,
        bounds=bounds,
        at_low=radii[0],
        at_high=radii[1],
        begins=begins,
        floor=float(cut.depth),
        relief=_relief(cut),
        shape=shape,
    )


def _relief(cut: Single) -> float:
    if isinstance(cut, Pocket) and cut.relief > cut.corner + _SAME:
        return float(cut.relief)
    return 0.0


def whole(part: Part, cut: Groove | Shaped) -> tuple[float, float]:
    """Where the face of a cut begins and ends along u, mm."""
    return (0.0, float(face_size(cut.face, part.blank)[0]))


def wood(part: Part) -> tuple[float, float]:
    """Where a part begins and ends along its length once its ends are trimmed, mm."""
    low = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "low end")
    high = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "high end")
    return (low, float(part.blank.length) - high)


def _gone(part: Part, cut: Groove, u: float, way: int) -> bool:
    """Whether a rebate, a socket or the like has taken what a groove would come to past its end.

    Looked at in its middle, a hair past it.
    """
    middle = (float(cut.surface) + float(cut.depth)) / 2
    point = face_point(cut.face, part.blank, u + way * _HAIR, float(cut.v), middle)
    for other in part.cuts:
        if not isinstance(other, Shaped):
            continue
        x, y, deep = on_face(part, other.face, point)
        ring = closed_outline([(float(a), float(b), bulge) for a, b, bulge in other.outline])
        if float(other.surface) < deep < float(other.depth) and ring.contains((x, y)):
            return True
    return False


def on_face(part: Part, face: Face, point: Vector) -> tuple[float, float, float]:
    """A point of a part as (u, v) on one of its faces and how deep behind it, mm."""
    x, y, z = (float(at) for at in point)
    sizes = (float(part.blank.length), float(part.blank.width), float(part.blank.thickness))
    axis = ("end", "edge", "face").index(face.split()[1])
    deep = sizes[axis] - (x, y, z)[axis] if face.startswith("high") else (x, y, z)[axis]
    u, v = (at for i, at in enumerate((x, y, z)) if i != axis)
    return (u, v, deep)
