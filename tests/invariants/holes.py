"""Holes as round bars in the room: where each begins, which way it goes, what stands beside it.

Boards of cases lie along the room's axes, and so do their holes; what one leaves beside another, and
beside whatever else is cut, is then told axis by axis.
"""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator

from parametric.model import (
    Assembly,
    Cut,
    Drilled,
    Group,
    Part,
    Pocket,
    Slot,
    Vector,
    face_depth,
    face_point,
)
from tests.invariants.boxes import SAME, Box, around, cut_box, wood


@dataclasses.dataclass(frozen=True, kw_only=True)
class Hole:
    """A hole in its part: from its mouth to its floor along `axis` (0, 1 or 2), mm.

    `mouth` and `floor` are in the part's own frame, `opens` and `ends` the same two in the room.
    """

    part: Part
    group: str
    cut: Drilled
    mouth: Vector
    floor: Vector
    opens: Vector
    ends: Vector

    @property
    def across(self) -> float:
        return float(self.cut.diameter)

    @property
    def deep(self) -> float:
        return math.dist(self.mouth, self.floor)

    @property
    def axis(self) -> int:
        """Which axis of the part's frame it goes along."""
        return max(range(3), key=lambda i: abs(self.mouth[i] - self.floor[i]))

    @property
    def through(self) -> bool:
        """Whether it comes out at the other side."""
        return abs(float(self.cut.depth) - float(face_depth(self.cut.face, self.part.blank))) < SAME

    @property
    def box(self) -> Box:
        """The box about it, in the part's frame."""
        half = self.across / 2
        grown = [0.0 if i == self.axis else half for i in range(3)]
        return around(
            [
                tuple(p[i] + way * grown[i] for i in range(3))  # type: ignore[misc]
                for p in (self.mouth, self.floor)
                for way in (-1, 1)
            ]
        )

    @property
    def says(self) -> str:
        at = ", ".join(f"{x:g}" for x in self.mouth)
        return f"{self.cut.name} of {self.part.name} at {at} on its {self.cut.face}"


def holes_of(group: Group, part: Part) -> Iterator[Hole]:
    for cut in part.cuts:
        if not isinstance(cut, Drilled):
            continue
        for u, v in cut.places:
            mouth, floor = (
                face_point(cut.face, part.blank, u, v, float(depth))
                for depth in (cut.surface, cut.depth)
            )
            opens, ends = (
                group.placement.point(part.placement.point(point)) for point in (mouth, floor)
            )
            yield Hole(
                part=part,
                group=group.name,
                cut=cut,
                mouth=mouth,
                floor=floor,
                opens=opens,
                ends=ends,
            )


def holes(assembly: Assembly) -> list[Hole]:
    return [
        hole
        for group in assembly.groups
        for part in group.parts
        if not part.supplied
        for hole in holes_of(group, part)
    ]


def faces_one_another(one: Hole, other: Hole) -> bool:
    """Mouth on mouth in two parts, and opposite ways in."""
    if one.part is other.part or math.dist(one.opens, other.opens) > 1e-4:
        return False
    ways = [
        tuple((b - a) / h.deep for a, b in zip(h.opens, h.ends, strict=True)) for h in (one, other)
    ]
    return sum(a * b for a, b in zip(*ways, strict=True)) < -0.999999


def one_middle(one: Hole, other: Hole) -> bool:
    """Whether two holes are steps of one: on one line, from one face."""
    return one.cut.face == other.cut.face and all(
        abs(a - b) < SAME
        for i, (a, b) in enumerate(zip(one.mouth, other.mouth, strict=True))
        if i != one.axis
    )


def between(one: Box, other: Box) -> float:
    """The wood between two boxes, along the axis that leaves most; less than nothing if they meet."""
    return max(max(one[0][i] - other[1][i], other[0][i] - one[1][i]) for i in range(3))


def beside_box(hole: Hole, box: Box) -> float:
    """The wood between a hole and a box, past the hole's round side or its floor."""
    axis, middle = hole.axis, hole.mouth
    out = [max(box[0][i] - middle[i], middle[i] - box[1][i], 0.0) for i in range(3) if i != axis]
    own = hole.box
    along = max(own[0][axis] - box[1][axis], box[0][axis] - own[1][axis])
    return max(math.hypot(*out) - hole.across / 2, along)


def wood_between(one: Hole, other: Hole) -> float:
    """The wood between two holes of one part."""
    if one.axis != other.axis:
        return max(beside_box(one, other.box), beside_box(other, one.box))
    aside = [i for i in range(3) if i != one.axis]
    apart = math.dist([one.mouth[i] for i in aside], [other.mouth[i] for i in aside])
    return max(apart - (one.across + other.across) / 2, between(one.box, other.box))


def others_cut(part: Part) -> Iterator[tuple[Cut, Box]]:
    """What else is cut into a part, as boxes in its frame."""
    for cut in part.cuts:
        if box := cut_box(cut, part) or slot_box(cut, part):
            yield cut, box


def slot_box(cut: Cut, part: Part) -> Box | None:
    """What a slot takes, in an end or across a face."""
    match cut:
        case Slot():
            half = cut.width / 2
            low, high = (cut.u0, cut.v - half), (cut.u1, cut.v + half)
        case Pocket():
            along, across = cut.length / 2, cut.width / 2
            low, high = (cut.u - along, cut.v - across), (cut.u + along, cut.v + across)
        case _:
            return None
    return around(
        [
            face_point(cut.face, part.blank, float(u), float(v), float(depth))
            for (u, v), depth in ((low, cut.surface), (high, cut.depth))
        ]
    )


def begins_in(hole: Hole, cut: Cut, box: Box) -> bool:
    """Whether a hole is bored from the floor of what else is cut: through the mouth of a dado."""
    return (
        getattr(cut, "face", None) == hole.cut.face
        and abs(float(hole.cut.surface) - float(getattr(cut, "depth", -1.0))) < SAME
        and all(
            box[0][i] - SAME <= hole.mouth[i] <= box[1][i] + SAME
            for i in range(3)
            if i != hole.axis
        )
    )


def left_at_the_edges(hole: Hole) -> float:
    """The least wood beside a hole, to the edges of its board."""
    low, high = wood(hole.part)
    return min(
        min(hole.box[0][i] - low[i], high[i] - hole.box[1][i]) for i in range(3) if i != hole.axis
    )


def left_behind(hole: Hole) -> float:
    """The wood behind a hole's floor."""
    return float(face_depth(hole.cut.face, hole.part.blank)) - float(hole.cut.depth)
