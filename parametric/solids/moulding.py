"""The body that a run of moulding takes away: its section drawn along its path, and round its arcs."""

from __future__ import annotations

import itertools
import math

from OCP.BRepAlgoAPI import BRepAlgoAPI_Cut, BRepAlgoAPI_Fuse
from OCP.BRepPrimAPI import BRepPrimAPI_MakeRevol
from OCP.gp import gp_Ax1, gp_Dir, gp_Pnt
from OCP.TopoDS import TopoDS_Shape

from parametric.model import Moulded, Placement, Vector
from parametric.outlines import Outline, Vertex, arc_of
from parametric.paths import heading, short_turn
from parametric.runs import RunEnd
from parametric.sections import reach_of
from parametric.solids.outline import flat, lines_and_arcs, prism

Point = tuple[float, float]
_CLEAR = 1.0


def swept(cut: Moulded, face: Placement, section: Outline, over: float) -> TopoDS_Shape:
    """A run's body, on beyond its ends where nothing stands that it must spare.

    Args:
        cut: the run.
        face: the face it is on; its x and y are the path's, its z points out of or into the wood.
        section: the cut's, run out past the face and past the edge that it goes along.
        over: how far a tool stands proud, mm.
    """
    inwards = _inwards(cut, face)
    pieces = list(itertools.pairwise(cut.path))
    body: TopoDS_Shape | None = None
    for index, (a, b) in enumerate(pieces):
        before = _past(cut, cut.start, (a, b), -1.0, over) if index == 0 else 0.0
        after = _past(cut, cut.end, (a, b), 1.0, over) if index == len(pieces) - 1 else 0.0
        piece = _piece(face, inwards, section, a, b, before, after)
        body = piece if body is None else BRepAlgoAPI_Fuse(body, piece).Shape()
    assert body is not None
    for end, piece_ends, onwards in (
        (cut.start, pieces[0], -1.0),
        (cut.end, pieces[-1], 1.0),
    ):
        if not end.open:
            here = piece_ends[0] if onwards < 0 else piece_ends[1]
            x, y = heading(*piece_ends, (here.x, here.y))
            first = end.line[0]
            long = max(math.hypot(v.x - first.x, v.y - first.y) for v in end.line)
            far = max(long, _past(cut, end, piece_ends, onwards, over)) + over
            waste = _beyond(end.line, (x * onwards, y * onwards), far)
            body = BRepAlgoAPI_Cut(body, _upright(face, inwards, waste, section)).Shape()
    return body


def _inwards(cut: Moulded, face: Placement) -> Vector:
    """Into the wood: against the thickness from the high face, along it from the low one."""
    x, y, z = face.z
    return (x, y, z) if cut.face == "low face" else (-x, -y, -z)


def _past(
    cut: Moulded, end: RunEnd, piece: tuple[Vertex, Vertex], way: float, over: float
) -> float:
    """How far along its path a tool goes on past an end, mm: clear of all that stands there.

    And no farther: round a small arc it would come back into the wood.

    Args:
        cut: the run.
        end: its end.
        piece: the piece of the path that ends there.
        way: 1 at the piece's end, -1 at its beginning.
        over: how far a tool stands proud, mm.
    """
    first = end.line[0]
    if end.over:
        far = max(math.hypot(v.x - first.x, v.y - first.y) for v in (*end.line, *end.floor))
        return far + reach_of(cut.section) + reach_of(end.over) + over
    a, b = piece
    last = b if way > 0 else a
    arc = arc_of(a, b)
    hx, hy = heading(a, b, (last.x, last.y))

    def along(v: Vertex) -> float:
        if arc is None:
            return way * (hx * (v.x - last.x) + hy * (v.y - last.y))
        turn = short_turn(arc, (last.x, last.y), (v.x, v.y))
        return way * math.copysign(turn, turn * arc.sweep) * arc.radius

    return max(0.0, *(along(v) for v in end.line)) + over


def _piece(
    face: Placement,
    inwards: Vector,
    section: Outline,
    a: Vertex,
    b: Vertex,
    before: float,
    after: float,
) -> TopoDS_Shape:
    """The section drawn along one line or round one arc, and on at either end."""
    arc = arc_of(a, b)
    hx, hy = heading(a, b, (a.x, a.y))
    if arc is None:
        long = math.hypot(b.x - a.x, b.y - a.y)
        plane = _across(face, inwards, (a.x - hx * before, a.y - hy * before), (hx, hy))
        far = long + before + after
        ahead = face.direction((hx * far, hy * far, 0.0))
        return prism(flat(plane, lines_and_arcs(plane, section)), ahead)
    turn = math.copysign(1.0, arc.sweep)
    start = arc.start - turn * before / arc.radius
    x, y = math.cos(start), math.sin(start)
    at = (arc.x + arc.radius * x, arc.y + arc.radius * y)
    plane = _across(face, inwards, at, (-y * turn, x * turn))
    centre = face.point((arc.x, arc.y, 0.0))
    up = face.direction((0.0, 0.0, turn))
    axis = gp_Ax1(gp_Pnt(*centre), gp_Dir(*up))
    angle = abs(arc.sweep) + (before + after) / arc.radius
    profile = flat(plane, lines_and_arcs(plane, section))
    return BRepPrimAPI_MakeRevol(profile, axis, angle).Shape()


def _across(face: Placement, inwards: Vector, at: Point, way: Point) -> Placement:
    """The plane of a section at a place: u to the left of the path, v into the wood."""
    return Placement(
        origin=face.point((at[0], at[1], 0.0)),
        x=face.direction((-way[1], way[0], 0.0)),
        y=inwards,
    )


def _beyond(line: Outline, onwards: Point, far: float) -> Outline:
    """What lies past an end line, and past both of its own ends."""
    first, last = line[0], line[-1]
    a = heading(line[0], line[1], (first.x, first.y))
    b = heading(line[-2], line[-1], (last.x, last.y))
    begins = Vertex(first.x - a[0] * far, first.y - a[1] * far)
    ends = Vertex(last.x + b[0] * far, last.y + b[1] * far)
    dx, dy = onwards[0] * 2 * far, onwards[1] * 2 * far
    return (
        begins,
        *line[:-1],
        Vertex(last.x, last.y),
        ends,
        Vertex(ends.x + dx, ends.y + dy),
        Vertex(begins.x + dx, begins.y + dy),
    )


def _upright(face: Placement, inwards: Vector, ring: Outline, section: Outline) -> TopoDS_Shape:
    """A ring on the face drawn out through the whole of a section."""
    low, high = min(v.y for v in section) - _CLEAR, max(v.y for v in section) + _CLEAR
    x, y, z = face.origin
    dx, dy, dz = inwards
    plane = Placement(origin=(x + dx * low, y + dy * low, z + dz * low), x=face.x, y=face.y)
    deep = high - low
    return prism(flat(plane, lines_and_arcs(plane, ring)), (dx * deep, dy * deep, dz * deep))
