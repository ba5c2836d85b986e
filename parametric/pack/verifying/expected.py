"""What the parts ask of their files: each hollow of each face, boxes, volumes and middles.

From blank, cuts and placement alone, by sums of its own: a file shares only the part with it.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from typing import assert_never

from parametric.model import (
    Cut,
    Face,
    Groove,
    Group,
    Island,
    Mitre,
    Moulded,
    Part,
    Pocket,
    RaisedBevel,
    RoundArrises,
    RoundCorners,
    Shaped,
    Slot,
    Tongue,
    Trim,
    Vector,
    face_point,
    face_size,
    ramp_area,
    ramp_length,
    removed_volume,
)
from parametric.pack.verifying.outlines import Outline, closed_outline, relieved_rectangle
from parametric.pack.verifying.shoulders import between_shoulders
from parametric.runs import run_middle

_SAME = 1e-6
_ROUND = 16  # ways in which a margin is looked at


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


Flat = Slot | Pocket | Groove | Shaped
"""Cuts with a flat bottom and upright sides."""


def hollow(part: Part, cut: Flat, *, at_machine: bool) -> Hollow:
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
            low, high = wood(part) if cut.face not in ("low end", "high end") else _whole(part, cut)
            corner = float(cut.corner) if at_machine or not cut.squared else 0.0
            radii = (
                0.0 if bounds[0] <= low + _SAME else corner,
                0.0 if bounds[2] >= high - _SAME else corner,
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


def _relief(cut: Flat) -> float:
    if isinstance(cut, Pocket) and cut.relief > cut.corner + _SAME:
        return float(cut.relief)
    return 0.0


def _whole(part: Part, cut: Groove | Shaped) -> tuple[float, float]:
    return (0.0, float(face_size(cut.face, part.blank)[0]))


def wood(part: Part) -> tuple[float, float]:
    """Where a part begins and ends along its length once its ends are trimmed, mm."""
    low = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "low end")
    high = sum(float(c.length) for c in part.cuts if isinstance(c, Trim) and c.end == "high end")
    return (low, float(part.blank.length) - high)


def by_router(cut: Cut) -> Flat | None:
    """The cut, when a router makes it from a flat outline and a depth."""
    match cut:
        case Slot() | Pocket() | Shaped():
            flat: Flat | None = cut
        case Groove():
            flat = cut if cut.ramp == 0 else None
        case (
            Trim()
            | Mitre()
            | RaisedBevel()
            | Tongue()
            | RoundArrises()
            | RoundCorners()
            | Island()
            | Moulded()
        ):
            flat = None
        case _:
            assert_never(cut)
    return flat if cut.making.by == "router" else None


def _in_a_file(part: Part, cut: Cut) -> Flat | None:
    """The cut, when the router makes all of it: no shape with a corner that a cutter leaves round."""
    routed = by_router(cut)
    if not isinstance(routed, Shaped):
        return routed
    shape = hollow(part, routed, at_machine=True).shape
    low, high = _whole(part, routed)
    if "end" not in routed.face:
        low, high = between_shoulders(part, wood(part))
    across = float(face_size(routed.face, part.blank)[1])
    square = shape is not None and shape.has_square_corner((low, 0.0, high, across))
    return None if square else routed


def outwards(face: Face) -> Vector:
    """The direction out of a part's face."""
    way = -1.0 if face.startswith("low") else 1.0
    kind = face.split()[1]
    return (
        way if kind == "end" else 0.0,
        way if kind == "edge" else 0.0,
        way if kind == "face" else 0.0,
    )


def side_of_leaf(part: Part, face: Face) -> str:
    """`front` or `back` for a face that lies in the leaf's front or back, else ""."""
    x, y, z = part.placement.direction(outwards(face))
    if max(abs(x), abs(z)) > _SAME:
        return ""
    return "front" if y < 0 else "back"


def in_part_files(part: Part) -> dict[Face, list[Hollow]]:
    """What is routed in the loose part, by face."""
    found: dict[Face, list[Hollow]] = {}
    if part.supplied:
        return found
    for cut in part.cuts:
        routed = _in_a_file(part, cut)
        if routed is not None and cut.making.when == "before glue-up":
            made = hollow(part, routed, at_machine=True)
            found.setdefault(routed.face, []).append(made)
    return found


def in_leaf_files(group: Group) -> dict[str, list[tuple[Hollow, Part]]]:
    """What is routed in the glued leaf, by its side."""
    found: dict[str, list[tuple[Hollow, Part]]] = {}
    for part in group.parts:
        for cut in () if part.supplied else part.cuts:
            routed = _in_a_file(part, cut)
            if routed is None or cut.making.when != "after glue-up":
                continue
            side = side_of_leaf(part, routed.face)
            if side:
                made = hollow(part, routed, at_machine=True)
                found.setdefault(side, []).append((made, part))
    return found


def in_some_file(part: Part, cut: Cut) -> bool:
    """Whether a machine file makes a cut; whatever none makes is saw or bench work."""
    routed = _in_a_file(part, cut)
    if routed is None or part.supplied or cut.making.when == "on site":
        return False
    return cut.making.when == "before glue-up" or bool(side_of_leaf(part, routed.face))


def centre_of_volume(part: Part) -> Vector:
    """The middle of a finished part's wood, in the part's frame, mm."""
    blank = part.blank
    middle = (float(blank.length) / 2, float(blank.width) / 2, float(blank.thickness) / 2)
    whole = blank.volume
    moments = [whole * at for at in middle]
    for cut in part.cuts:
        volume = float(removed_volume(cut, blank))
        at = _centre_of_cut(part, cut)
        moments = [moment - volume * a for moment, a in zip(moments, at, strict=True)]
    left = float(part.volume)
    return (moments[0] / left, moments[1] / left, moments[2] / left)


def _centre_of_cut(part: Part, cut: Cut) -> Vector:
    """The middle of what a cut takes, in the part's frame, mm."""
    length, wide = float(part.blank.length), float(part.blank.width)
    thick = float(part.blank.thickness)
    match cut:
        case Slot() | Pocket() | Shaped():
            return _centre_of_hollow(part, hollow(part, cut, at_machine=False), 0.0)
        case Groove():
            return _centre_of_hollow(
                part, hollow(part, cut, at_machine=False), float(cut.ramp) if cut.ramp else 0.0
            )
        case Moulded():
            x, y, down = run_middle(cut.section, cut.path, cut.start, cut.end)
            return (x, y, down if cut.face == "low face" else thick - down)
        case Trim():
            half = float(cut.length) / 2
            return (half if cut.end == "low end" else length - half, wide / 2, thick / 2)
        case Mitre():
            # a right-angled triangle of the width: its middle is a third from the square corner
            third = wide / 3
            away = wide - third if cut.keeps == "low edge" else third
            return (third if cut.end == "low end" else length - third, away, thick / 2)
        case RaisedBevel():
            return (length / 2, wide / 2, _height_of_bevel(part, cut))
        case Tongue():
            return (length / 2, wide / 2, _height_of_tongue(part, cut))
        case RoundArrises() | RoundCorners():
            return (length / 2, wide / 2, thick / 2)
        case Island():
            half = float(cut.depth) / 2
            return (length / 2, wide / 2, half if cut.face == "low face" else thick - half)
        case _:
            assert_never(cut)


def in_hollow(part: Part, made: Hollow, point: Vector, margin: float = 0.0) -> bool:
    """Whether a point of a part lies in a hollow (of one with round corners, in its box).

    Within a margin of the box counts too; of a shaped hollow, of its corners and all round.
    """
    if made.shape is not None:
        u, v, depth = on_face(part, made.face, point)
        # what stands before a cut in an edge is gone, level or planed to a bevel
        begins = -math.inf if "edge" in made.face else made.begins
        if not begins - margin < depth < made.floor + margin:
            return False
        if any(math.dist(edge.a, (u, v)) < margin for edge in made.shape.edges):
            return True
        turns = [math.tau * (i + 0.5) / _ROUND for i in range(_ROUND if margin else 0)]
        around = [(margin * math.cos(t), margin * math.sin(t)) for t in turns]
        return any(made.shape.contains((u + a, v + b)) for a, b in [(0.0, 0.0), *around])
    u0, v0, u1, v1 = made.reach
    a = face_point(made.face, part.blank, u0, v0, made.begins)
    b = face_point(made.face, part.blank, u1, v1, made.floor)
    return all(
        min(low, high) - margin < at < max(low, high) + margin
        for low, high, at in zip(a, b, point, strict=True)
    )


def on_face(part: Part, face: Face, point: Vector) -> tuple[float, float, float]:
    """A point of a part as (u, v) on one of its faces and how deep behind it, mm."""
    x, y, z = (float(at) for at in point)
    sizes = (float(part.blank.length), float(part.blank.width), float(part.blank.thickness))
    axis = ("end", "edge", "face").index(face.split()[1])
    deep = sizes[axis] - (x, y, z)[axis] if face.startswith("high") else (x, y, z)[axis]
    u, v = (at for i, at in enumerate((x, y, z)) if i != axis)
    return (u, v, deep)


def _centre_of_hollow(part: Part, made: Hollow, ramp: float) -> Vector:
    """Of a flat-bottomed hollow, with a blade's ramp of radius `ramp` past both its ends."""
    u, v = made.middle
    depth = (made.begins + made.floor) / 2
    if ramp:
        # half a segment of the blade's circle: its moment about the surface, mm3
        far, area = ramp_length(ramp, made.floor), ramp_area(ramp, made.floor)
        off = ramp - made.floor
        moment = (ramp**2 * far - far**3 / 3 + off**2 * far - 2 * off * (area + off * far)) / 2
        across = made.bounds[3] - made.bounds[1]
        ramps = 2 * area * across
        depth = (depth * made.volume + 2 * moment * across) / (made.volume + ramps)
    return face_point(made.face, part.blank, u, v, depth)


def _height_of_bevel(part: Part, cut: RaisedBevel) -> float:
    """How high the middle of what a bevel takes lies, mm."""
    thick, run, edge = float(part.blank.thickness), float(cut.run), float(cut.edge)
    slope = (float(cut.foot) - edge) / run

    def left(inset: float) -> float:
        return edge + slope * inset

    volume = _round_the_edge(part, run, lambda s: thick - left(s))
    return _round_the_edge(part, run, lambda s: (thick**2 - left(s) ** 2) / 2) / volume


def _height_of_tongue(part: Part, cut: Tongue) -> float:
    """How high the middle of what a tongue's two cuts take lies, mm."""
    low, high = float(cut.back), float(cut.back + cut.thickness)

    def before(inset: float) -> float:
        return float(cut.edge) + float(cut.slope) * inset

    reach = float(cut.length)
    volume = _round_the_edge(part, reach, lambda s: low + before(s) - high)
    moment = _round_the_edge(part, reach, lambda s: (low**2 + before(s) ** 2 - high**2) / 2)
    return moment / volume


def _round_the_edge(part: Part, reach: float, height: Callable[[float], float]) -> float:
    """A height taken all round a panel, summed from its edge to `reach` inside it.

    Simpson's rule, exact here: the way round falls evenly, a height at most as a square.
    """

    def strip(inset: float) -> float:
        length, wide = float(part.blank.length), float(part.blank.width)
        return 2 * (length - 2 * inset + wide - 2 * inset) * height(inset)

    return reach / 6 * (strip(0.0) + 4 * strip(reach / 2) + strip(reach))
