"""Flat outlines and the bodies made straight from them, without a boolean.

A plane to draw on is a `Placement`: (u, v) run along its x and y.
"""

from __future__ import annotations

import math
from collections.abc import Sequence

from OCP.BRep import BRep_Builder
from OCP.BRepBuilderAPI import (
    BRepBuilderAPI_MakeEdge,
    BRepBuilderAPI_MakeFace,
    BRepBuilderAPI_MakeVertex,
    BRepBuilderAPI_MakeWire,
)
from OCP.BRepPrimAPI import BRepPrimAPI_MakePrism
from OCP.gp import gp_Ax2, gp_Circ, gp_Dir, gp_Pln, gp_Pnt, gp_Vec
from OCP.TopoDS import (
    TopoDS,
    TopoDS_Edge,
    TopoDS_Face,
    TopoDS_Shape,
    TopoDS_Shell,
    TopoDS_Solid,
    TopoDS_Vertex,
    TopoDS_Wire,
)

from parametric.model import Placement, Vector, relief_inset, relief_turn
from parametric.outlines import Outline, arc_of, edges

SAME = 1e-9
"""Two lengths closer than this are one, mm."""

Arc = tuple[float, float, float, float]
"""Centre u, centre v, first angle and sweep in degrees, turning from u towards v."""


def rounded_rectangle(
    plane: Placement,
    low: tuple[float, float],
    high: tuple[float, float],
    corner: float,
    relief: float = 0.0,
) -> TopoDS_Wire:
    """A rectangle between two (u, v) corners with its four corners rounded to `corner`.

    A corner of half the width makes the round end of a slot, of half of both a bore. Corners
    tighter than `relief` are run into by a cutter of that radius.
    """
    (u0, v0), (u1, v1) = low, high
    relieved = relief > corner + SAME
    if corner <= SAME and not relieved:
        return polygon(plane, [(u0, v0), (u1, v0), (u1, v1), (u0, v1)])
    arcs = _corner_arcs(low, high, corner)
    if relieved:
        arcs = _relief_arcs(low, high, corner, relief)
        corner = relief
    if len(arcs) == 1:
        circle = _circle(plane, arcs[0][0], arcs[0][1], corner)
        return BRepBuilderAPI_MakeWire(BRepBuilderAPI_MakeEdge(circle).Edge()).Wire()
    ends = [(_on_arc(a, corner, 0.0), _on_arc(a, corner, a[3])) for a in arcs]
    wire = BRepBuilderAPI_MakeWire()
    corners = [(_vertex(plane, first), _vertex(plane, last)) for first, last in ends]
    for i, arc in enumerate(arcs):
        first, last = corners[i]
        circle = _circle(plane, arc[0], arc[1], corner)
        wire.Add(BRepBuilderAPI_MakeEdge(circle, first, last).Edge())
        following = (i + 1) % len(arcs)
        wire.Add(BRepBuilderAPI_MakeEdge(last, corners[following][0]).Edge())
    return wire.Wire()


def polygon(plane: Placement, points: Sequence[tuple[float, float]]) -> TopoDS_Wire:
    """A closed outline with straight sides."""
    corners = [_vertex(plane, p) for p in points]
    wire = BRepBuilderAPI_MakeWire()
    for this, following in zip(corners, corners[1:] + corners[:1], strict=True):
        wire.Add(BRepBuilderAPI_MakeEdge(this, following).Edge())
    return wire.Wire()


def lines_and_arcs(plane: Placement, outline: Outline) -> TopoDS_Wire:
    """A closed outline of straight lines and true arcs."""
    corners = [_vertex(plane, (vertex.x, vertex.y)) for vertex in outline]
    wire = BRepBuilderAPI_MakeWire()
    for index, (a, b) in enumerate(edges(outline)):
        first, last = corners[index], corners[(index + 1) % len(corners)]
        arc = arc_of(a, b)
        if arc is None:
            wire.Add(BRepBuilderAPI_MakeEdge(first, last).Edge())
            continue
        way = gp_Dir(*plane.z) if arc.sweep > 0 else gp_Dir(*plane.z).Reversed()
        axes = gp_Ax2(_point(plane, (arc.x, arc.y)), way, gp_Dir(*plane.x))
        wire.Add(BRepBuilderAPI_MakeEdge(gp_Circ(axes, arc.radius), first, last).Edge())
    return wire.Wire()


def ramped(
    plane: Placement, u0: float, u1: float, depth: float, radius: float, over: float
) -> TopoDS_Wire:
    """A saw's stopped groove from the side, u along it and v into the wood.

    Flat from u0 to u1 at `depth`, with the blade's arc rising past each end until it
    is `over` clear of the surface.
    """
    run = math.sqrt(radius**2 - (radius - depth - over) ** 2)
    low_out, low_in, high_in, high_out = (
        _vertex(plane, point)
        for point in [(u0 - run, -over), (u0, depth), (u1, depth), (u1 + run, -over)]
    )
    wire = BRepBuilderAPI_MakeWire()
    arc = _circle(plane, u0, depth - radius, radius)
    wire.Add(TopoDS.Edge_s(BRepBuilderAPI_MakeEdge(arc, low_in, low_out).Edge().Reversed()))
    wire.Add(BRepBuilderAPI_MakeEdge(low_in, high_in).Edge())
    arc = _circle(plane, u1, depth - radius, radius)
    wire.Add(TopoDS.Edge_s(BRepBuilderAPI_MakeEdge(arc, high_out, high_in).Edge().Reversed()))
    wire.Add(BRepBuilderAPI_MakeEdge(high_out, low_out).Edge())
    return wire.Wire()


def flat(plane: Placement, outer: TopoDS_Wire, hole: TopoDS_Wire | None = None) -> TopoDS_Face:
    """The flat inside an outline, less the hole in it."""
    face = BRepBuilderAPI_MakeFace(gp_Pln(_point(plane, (0, 0)), gp_Dir(*plane.z)), outer, True)
    if hole is not None:
        face.Add(TopoDS.Wire_s(hole.Reversed()))
    return face.Face()


def prism(face: TopoDS_Face, along: Vector) -> TopoDS_Shape:
    """A flat drawn out along a vector."""
    return BRepPrimAPI_MakePrism(face, gp_Vec(*along)).Shape()


def flat_faced(points: Sequence[Vector], faces: Sequence[Sequence[Sequence[int]]]) -> TopoDS_Solid:
    """A body with flat faces, each given as loops of point numbers.

    The first loop of a face is its outline, turning left as seen from outside; the others
    are the holes in it, turning right. Every edge lies in two faces, once in each sense.
    """
    builder = BRep_Builder()
    vertices = [BRepBuilderAPI_MakeVertex(gp_Pnt(*p)).Vertex() for p in points]
    edges: dict[tuple[int, int], TopoDS_Edge] = {}

    def edge(a: int, b: int) -> TopoDS_Edge:
        if (b, a) in edges:
            return TopoDS.Edge_s(edges[b, a].Reversed())
        return edges.setdefault((a, b), BRepBuilderAPI_MakeEdge(vertices[a], vertices[b]).Edge())

    def wire(loop: Sequence[int]) -> TopoDS_Wire:
        made = BRepBuilderAPI_MakeWire()
        for a, b in zip(loop, [*loop[1:], loop[0]], strict=True):
            made.Add(edge(a, b))
        return made.Wire()

    shell = TopoDS_Shell()
    builder.MakeShell(shell)
    for outline, *holes in faces:
        normal = _normal([points[i] for i in outline])
        face = BRepBuilderAPI_MakeFace(
            gp_Pln(gp_Pnt(*points[outline[0]]), gp_Dir(*normal)), wire(outline), True
        )
        for hole in holes:
            face.Add(wire(hole))
        builder.Add(shell, face.Face())
    shell.Closed(True)
    solid = TopoDS_Solid()
    builder.MakeSolid(solid)
    builder.Add(solid, shell)
    return solid


def _normal(loop: Sequence[Vector]) -> Vector:
    """Twice the area vector of a flat loop: it points to where the loop turns left."""
    x = y = z = 0.0
    for a, b in zip(loop, [*loop[1:], loop[0]], strict=True):
        x += (a[1] - b[1]) * (a[2] + b[2])
        y += (a[2] - b[2]) * (a[0] + b[0])
        z += (a[0] - b[0]) * (a[1] + b[1])
    return (x, y, z)


def _corner_arcs(low: tuple[float, float], high: tuple[float, float], corner: float) -> list[Arc]:
    """The round corners of a rectangle in turning order; corners that share a centre are one arc."""
    (u0, v0), (u1, v1) = low, high
    quarters: list[Arc] = [
        (u1 - corner, v0 + corner, -90.0, 90.0),
        (u1 - corner, v1 - corner, 0.0, 90.0),
        (u0 + corner, v1 - corner, 90.0, 90.0),
        (u0 + corner, v0 + corner, 180.0, 90.0),
    ]
    arcs: list[Arc] = []
    for quarter in quarters:
        if arcs and _same_centre(arcs[-1], quarter):
            u, v, start, sweep = arcs[-1]
            arcs[-1] = (u, v, start, sweep + 90.0)
        else:
            arcs.append(quarter)
    if len(arcs) > 1 and _same_centre(arcs[-1], arcs[0]):
        u, v, start, sweep = arcs.pop()
        arcs[0] = (u, v, start, sweep + arcs[0][3])
    return arcs


def _relief_arcs(
    low: tuple[float, float], high: tuple[float, float], corner: float, relief: float
) -> list[Arc]:
    """The arcs of a cutter run into each corner, in turning order."""
    inset, turn = relief_inset(corner, relief), math.degrees(relief_turn(corner, relief))
    return [
        (u, v, start - (turn - 90.0) / 2, turn) for u, v, start, _ in _corner_arcs(low, high, inset)
    ]


def _same_centre(a: Arc, b: Arc) -> bool:
    return abs(a[0] - b[0]) <= SAME and abs(a[1] - b[1]) <= SAME


def _on_arc(arc: Arc, radius: float, turned: float) -> tuple[float, float]:
    angle = math.radians(arc[2] + turned)
    return (arc[0] + radius * math.cos(angle), arc[1] + radius * math.sin(angle))


def _circle(plane: Placement, u: float, v: float, radius: float) -> gp_Circ:
    return gp_Circ(gp_Ax2(_point(plane, (u, v)), gp_Dir(*plane.z), gp_Dir(*plane.x)), radius)


def _point(plane: Placement, uv: tuple[float, float]) -> gp_Pnt:
    return gp_Pnt(*plane.point((uv[0], uv[1], 0.0)))


def _vertex(plane: Placement, uv: tuple[float, float]) -> TopoDS_Vertex:
    return BRepBuilderAPI_MakeVertex(_point(plane, uv)).Vertex()
