"""Edges of parts as the front shows them: x across, z up, in the frame of a leaf or of the job."""

from __future__ import annotations

import dataclasses
import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.model import (
    Assembly,
    Face,
    Group,
    Mitre,
    Moulded,
    Part,
    Placement,
    RaisedBevel,
    Shaped,
)
from parametric.pack.verifying.hollows import Hollow, hollow, wood
from parametric.pack.verifying.known import DrawnRoom
from parametric.pack.verifying.outlines import Outline, Point, closed_outline
from parametric.runs import run_figures

Side = tuple[Point, Point]
_SAME = 1e-6
_BESIDE = 1e-3
"""How far beside a line one looks for what lies there, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """The straight edges of one part seen from the front; `nearest` is the Y of its foremost face.

    `deeper` are the edges of what is set back from that face, laps and tongues: seen where
    nothing stands before them.
    """

    part: Part
    nearest: float
    sides: tuple[Side, ...]
    deeper: tuple[Side, ...] = ()


def leaf_fronts(group: Group) -> tuple[Front, ...]:
    """The parts of one leaf in the leaf's frame."""
    return tuple(_front(part, None) for part in group.parts)


def job_fronts(assembly: Assembly) -> tuple[Front, ...]:
    """All parts of a job, shut, in the world."""
    return tuple(_front(part, group.placement) for group in assembly.groups for part in group.parts)


def room_fronts(assembly: Assembly, room: DrawnRoom) -> tuple[Front, ...]:
    """The parts that stand in one room, shut, from the left foot of its opening."""
    found = []
    for group in assembly.groups:
        if group.name in room.groups:
            here = group.placement.seen_from(room.stands)
            for part in group.parts:
                front = _front(part, here)
                # a board seen on its edge shows its whole outline, what is let into it or not
                whole = () if _bevels(part) else _box(part, here)
                found.append(dataclasses.replace(front, deeper=(*front.deeper, *whole)))
    return tuple(found)


def _box(part: Part, group: Placement) -> Iterator[Side]:
    """The outline of a blank from the front, trimmed or not."""
    low, high = wood(part)
    corners = [
        group.point(part.placement.point((x, y, z)))
        for x in (low, high)
        for y in (0.0, float(part.blank.width))
        for z in (0.0, float(part.blank.thickness))
    ]
    xs, zs = [x for x, _, _ in corners], [z for _, _, z in corners]
    x0, x1, z0, z1 = min(xs), max(xs), min(zs), max(zs)
    ring = ((x0, z0), (x1, z0), (x1, z1), (x0, z1), (x0, z0))
    yield from itertools.pairwise(ring)


def foremost(fronts: Sequence[Front]) -> list[Front]:
    """The made parts that nothing stands before: those whose face is as near as any."""
    made = [front for front in fronts if not front.part.supplied]
    nearest = min(front.nearest for front in made)
    return [front for front in made if front.nearest <= nearest + _SAME]


def _front(part: Part, group: Placement | None) -> Front:
    def seen(x: float, y: float, z: float) -> tuple[float, float, float]:
        point = part.placement.point((x, y, z))
        return point if group is None else group.point(point)

    wide, thick = float(part.blank.width), float(part.blank.thickness)
    low, high = wood(part)
    nearest = min(seen(x, y, z)[1] for x in (low, high) for y in (0.0, wide) for z in (0.0, thick))
    sides: list[Side] = []
    bevels = _bevels(part)
    if bevels and abs(seen(0.0, wide, 0.0)[1] - seen(0.0, 0.0, 0.0)[1]) > wide / 2:
        for (ax, az), (bx, bz) in _left_in_plane((low, high, thick), bevels):
            (px, _, pz), (qx, _, qz) = seen(ax, 0.0, az), seen(bx, 0.0, bz)
            sides.append(((px, pz), (qx, qz)))
        return Front(part=part, nearest=nearest, sides=tuple(_with_length(sides)))
    near_z = thick if seen(0.0, 0.0, thick)[1] < seen(0.0, 0.0, 0.0)[1] else 0.0
    near_face: Face = "low face" if near_z == 0.0 else "high face"
    cut = [made.shape for made in _shapes(part, near_face) if made.shape is not None]
    moulded = [*_runs_at_the_face(part, near_face)]
    cut += moulded
    aslant = _SAME < abs(seen(1.0, 0.0, 0.0)[1] - seen(0.0, 0.0, 0.0)[1]) < 1 - _SAME or (
        _SAME < abs(seen(0.0, 1.0, 0.0)[1] - seen(0.0, 0.0, 0.0)[1]) < 1 - _SAME
    )
    # of what stands aslant the far face is seen past one edge of the near one alone
    faces = [(z, side) for z in ((near_z,) if aslant else (0.0, thick)) for side in _on_face(part)]
    if cut:
        faces = [(near_z, side) for side in _left_in_front(part, cut)]
    for z, (a, b) in faces:
        (ax, _, az), (bx, _, bz) = seen(*a, z), seen(*b, z)
        sides.append(((ax, az), (bx, bz)))
    for x in (low, high):
        for y in (0.0, wide):
            (ax, _, az), (bx, _, bz) = seen(x, y, 0.0), seen(x, y, thick)
            sides.append(((ax, az), (bx, bz)))
    deeper: list[Side] = []
    if moulded:
        # the wood beside a moulding lies deeper, and where a rail goes over it is not seen
        for a, b in _left_in_front(part, [one for one in cut if one not in moulded]):
            (ax, _, az), (bx, _, bz) = seen(*a, near_z), seen(*b, near_z)
            deeper.append(((ax, az), (bx, bz)))
    steps = (made.shape for made in _shapes(part, near_face) if made.floor < thick - _SAME)
    for edge in (edge for shape in steps if shape for edge in shape.edges if not edge.bulge):
        (ax, _, az), (bx, _, bz) = seen(*edge.a, near_z), seen(*edge.b, near_z)
        deeper.append(((ax, az), (bx, bz)))
    return Front(
        part=part,
        nearest=nearest,
        sides=tuple(_with_length(sides)),
        deeper=tuple(_with_length(deeper)),
    )


def _shapes(part: Part, face: Face) -> list[Hollow]:
    """What shaped cuts take off a face itself, however deep they go, and right through to it."""
    thick = float(part.blank.thickness)
    return [
        made
        for cut in part.cuts
        if isinstance(cut, Shaped) and float(cut.surface) == 0
        if cut.face == face or ("face" in cut.face and float(cut.depth) >= thick - _SAME)
        if (made := hollow(part, cut, at_machine=False)).shape is not None
    ]


def _bevels(part: Part) -> list[Outline]:
    """What is sawn off ends through the whole width, in the plane of the edges."""
    wide = float(part.blank.width)
    return [
        made.shape
        for cut in part.cuts
        if isinstance(cut, Shaped) and "edge" in cut.face and float(cut.depth) >= wide - _SAME
        if (made := hollow(part, cut, at_machine=False)).shape is not None
    ]


def _runs_at_the_face(part: Part, face: Face) -> Iterator[Outline]:
    """What mouldings take off a face, in its own plane."""
    for cut in part.cuts:
        if isinstance(cut, Moulded) and cut.face == face:
            for figure in run_figures(cut.section, cut.path, cut.start, cut.end, 0.0):
                yield closed_outline([(float(x), float(y), bulge) for x, y, bulge in figure])


def _left_in_front(part: Part, cut: Sequence[Outline]) -> Iterator[Side]:
    """The straight sides of what is left of a face in its own plane."""
    yield from _left_in_plane((*wood(part), float(part.blank.width)), cut)


def _left_in_plane(size: tuple[float, float, float], cut: Sequence[Outline]) -> Iterator[Side]:
    """The straight sides of what cuts leave of a rectangle: from where to where along, how wide.

    A side of the wood or of a cut bounds it where there is wood on one side of it only.
    """
    low, high, wide = size
    outer = [(low, 0.0), (high, 0.0), (high, wide), (low, wide)]
    sides: list[Side] = list(zip(outer, [*outer[1:], outer[0]], strict=True))
    sides += [(edge.a, edge.b) for shape in cut for edge in shape.edges if edge.bulge == 0]
    corners = [*outer, *(edge.a for shape in cut for edge in shape.edges)]

    def left(x: float, y: float) -> bool:
        in_wood = low < x < high and 0.0 < y < wide
        return in_wood and not any(shape.contains((x, y)) for shape in cut)

    for a, b in sides:
        far = math.dist(a, b)
        ux, uy = (b[0] - a[0]) / far, (b[1] - a[1]) / far
        stops = {0.0, far}
        for x, y in corners:
            along, beside = (x - a[0]) * ux + (y - a[1]) * uy, (x - a[0]) * uy - (y - a[1]) * ux
            if abs(beside) < _BESIDE and 0.0 < along < far:
                stops.add(along)
        for start, end in itertools.pairwise(sorted(stops)):
            x, y = (a[i] + (ux, uy)[i] * (start + end) / 2 for i in (0, 1))
            off = (-uy * _BESIDE, ux * _BESIDE)
            if end - start > _BESIDE and left(x + off[0], y + off[1]) != left(
                x - off[0], y - off[1]
            ):
                yield (
                    (a[0] + ux * start, a[1] + uy * start),
                    (a[0] + ux * end, a[1] + uy * end),
                )


def _with_length(sides: list[Side]) -> Iterator[Side]:
    for a, b in sides:
        if abs(a[0] - b[0]) + abs(a[1] - b[1]) > _SAME:
            yield a, b


def _on_face(part: Part) -> Iterator[Side]:
    """The lines of a part's face in its own x and y: outline, and the field of a raised panel."""
    low, high = wood(part)
    wide = float(part.blank.width)
    corners = [[low, 0.0], [high, 0.0], [high, wide], [low, wide]]
    for cut in part.cuts:
        if isinstance(cut, Mitre):
            at_low, keeps_low = cut.end == "low end", cut.keeps == "low edge"
            index = {(True, True): 3, (True, False): 0, (False, True): 2, (False, False): 1}[
                at_low, keeps_low
            ]
            corners[index][0] += wide if at_low else -wide
    outline = [(x, y) for x, y in corners]
    yield from zip(outline, [*outline[1:], outline[0]], strict=True)
    for cut in part.cuts:
        if isinstance(cut, RaisedBevel):
            run = float(cut.run)
            field = [
                (low + run, run),
                (high - run, run),
                (high - run, wide - run),
                (low + run, wide - run),
            ]
            yield from zip(field, [*field[1:], field[0]], strict=True)
            yield from zip(outline, field, strict=True)
