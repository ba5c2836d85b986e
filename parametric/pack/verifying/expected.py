"""What the parts ask of their files: each hollow of each face, boxes, volumes and middles.

From blank, cuts and placement alone, by sums of its own: a file shares only the part with it.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from typing import assert_never

from parametric.model import (
    Cut,
    Drilled,
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
    ScrewPocket,
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
from parametric.pack.verifying.hollows import (
    Flat,
    Hollow,
    hollow,
    hollows,
    on_face,
    whole,
    wood,
)
from parametric.pack.verifying.shoulders import between_shoulders
from parametric.runs import run_middle

_SAME = 1e-6
_ROUND = 16  # ways in which a margin is looked at


def by_router(cut: Cut) -> Flat | None:
    """The cut, when a router makes it from a flat outline and a depth."""
    match cut:
        case Slot() | Pocket() | Drilled() | Shaped():
            flat: Flat | None = cut
        case Groove():
            flat = cut if cut.ramp == 0 else None
        case (
            ScrewPocket()
            | Trim()
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
    low, high = whole(part, routed)
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
            made = hollows(part, routed, at_machine=True)
            found.setdefault(routed.face, []).extend(made)
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
                made = hollows(part, routed, at_machine=True)
                found.setdefault(side, []).extend((one, part) for one in made)
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
        case Drilled():
            own = list(hollows(part, cut, at_machine=False))
            ends = [_centre_of_hollow(part, one, 0.0) for one in (own[0], own[-1])]
            x, y, z = ((a + b) / 2 for a, b in zip(*ends, strict=True))
            return (x, y, z)
        case Groove():
            return _centre_of_hollow(
                part, hollow(part, cut, at_machine=False), float(cut.ramp) if cut.ramp else 0.0
            )
        case ScrewPocket():
            return _centre_of_pockets(part, cut)
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


def _centre_of_pockets(part: Part, cut: ScrewPocket) -> Vector:
    """The middle of what a row of screw pockets takes.

    Each is two cylinders cut off aslant. Of one of radius r from a slope of k per mm off its axis
    at one end, L long along the axis: the middle is off the axis towards its longer side by
    k r2 / 4L, and along it off the middle of the axis by k2 r2 / 8L, away from the short side.
    Source: integrals over the disc, whose second moment is r2 / 4 of its area.
    """
    turn = math.radians(float(cut.angle))
    sin, cos, tan = math.sin(turn), math.cos(turn), math.tan(turn)
    whole, deep = float(cut.mouth) / cos, float(cut.deep)
    pieces = []
    for wide, begins, ends, slope, at_start in (
        (float(cut.wide), 0.0, deep, 1 / tan, True),
        (float(cut.pilot), deep, whole, tan, False),
    ):
        radius, long = wide / 2, ends - begins
        off = slope * radius**2 / (4 * long)
        back = slope**2 * radius**2 / (8 * long)
        along = (begins + ends) / 2 + (-back if at_start else back)
        pieces.append((math.pi * radius**2 * long, along, off))
    volume = sum(piece[0] for piece in pieces)
    along = sum(piece[0] * piece[1] for piece in pieces) / volume
    off = sum(piece[0] * piece[2] for piece in pieces) / volume
    # off the axis towards deeper wood is away from the end too
    from_end = float(cut.mouth) - along * cos + off * sin
    down = along * sin + off * cos
    length, thick = float(part.blank.length), float(part.blank.thickness)
    across = float(cut.v) + float(cut.pitch) * (cut.count - 1) / 2
    return (
        from_end if cut.end == "low end" else length - from_end,
        across,
        down if cut.face == "low face" else thick - down,
    )


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
