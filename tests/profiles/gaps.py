"""How close two members' meeting faces lie, measured on their solids with the kernel."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass

from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepBuilderAPI import BRepBuilderAPI_MakeVertex
from OCP.BRepClass import BRepClass_FaceExplorer, BRepClass_FClassifier
from OCP.BRepExtrema import BRepExtrema_DistShapeShape
from OCP.BRepTools import BRepTools
from OCP.gp import gp_Pnt, gp_Pnt2d
from OCP.TopAbs import TopAbs_FACE, TopAbs_IN
from OCP.TopExp import TopExp_Explorer
from OCP.TopoDS import TopoDS, TopoDS_Face, TopoDS_Shape

from parametric.outlines import Outline, arc_of
from parametric.paths import off
from parametric.profiles.sticking import Sticking
from tests.profiles.corners import LONG, RAIL, STILE, THICK, Corner

STEPS = 6
ON = 1e-5


@dataclass(frozen=True)
class Measured:
    """The widest gap found, mm, and over how many points of how many faces."""

    widest: float
    points: int
    faces: int


@dataclass(frozen=True, kw_only=True)
class Joint:
    """Where a rail meets the stile to its left, in the leaf: X to the right, Z up, Y from the face.

    `stile` is the stile's width, `low` and `top` the rail's lower and upper edge, `path` its
    lower sight edge; behind the moulding nothing is let into the stile above `plain`.
    """

    sticking: Sticking
    path: Outline
    stile: float
    thick: float
    low: float
    top: float
    plain: float = 0.0


def widest_gap(corner: Corner, of: TopoDS_Shape, to: TopoDS_Shape) -> Measured:
    """The same at the corner that all of these are tried on."""
    joint = Joint(
        sticking=corner.sticking,
        path=corner.path,
        stile=STILE,
        thick=THICK,
        low=LONG - RAIL,
        top=LONG,
    )
    return gap_at(joint, of, to)


def gap_at(corner: Joint, of: TopoDS_Shape, to: TopoDS_Shape) -> Measured:
    """From the faces of one member that lie in the joint to the other member, both in the leaf.

    A face lies in the joint when its points do, and are neither seen on the leaf's outside
    nor on either moulding inside the opening.
    """
    widest, points, faces = 0.0, 0, 0
    for face in _faces(of):
        found = [p for p in _points(face) if _meets(corner, p)]
        faces += bool(found)
        for point in found:
            vertex = BRepBuilderAPI_MakeVertex(gp_Pnt(*point)).Vertex()
            widest = max(widest, float(BRepExtrema_DistShapeShape(vertex, to).Value()))
            points += 1
    return Measured(widest, points, faces)


def _meets(corner: Joint, point: tuple[float, float, float]) -> bool:
    """Whether a point of a member's skin lies where the other should touch it.

    In from the sight edges: x into the stile, n into the rail; y from the nearer stuck face.
    """
    across, back, up = point
    moulding = corner.sticking.moulding
    width, depth = float(moulding.width), float(moulding.depth)
    x = corner.stile - across
    n = _in_from(corner.path, (across, up))
    both = len(corner.sticking.faces) > 1
    y = min(back, corner.thick - back) if both else back
    if not (-ON < x < width + ON and n > -ON and up > corner.low - ON):
        return False
    if min(back, corner.thick - back, corner.top - up) < ON:
        return False  # the outside of the leaf
    if y > depth + ON:
        return abs(x) < ON and up > corner.plain  # the shoulder behind the moulding
    if abs(y - depth) <= ON:
        return False  # the floor of what is cut away: level with the moulding's last fillet
    own, other = (_nearest(moulding.section, y, v) for v in (n, x))
    in_rail = n > x
    if in_rail and own < ON:
        return False  # the rail's own moulding, seen
    return not (not in_rail and other < ON)  # the stile's, seen


def _in_from(path: Outline, point: tuple[float, float]) -> float:
    """How far in from a sight edge a point lies: from its nearest stretch, the first one going on."""
    found = [off(path[0], path[1], point)]
    for a, b in itertools.pairwise(path):
        arc = arc_of(a, b)
        if arc is None:
            continue
        turn = math.atan2(point[1] - arc.y, point[0] - arc.x) - arc.start
        if turn * math.copysign(1.0, arc.sweep) % math.tau <= abs(arc.sweep):
            found.append(off(a, b, point))
    return found[-1]


def _nearest(section: object, y: float, v: float) -> float:
    """How far a place is from the edge of what a moulding takes at its depth."""
    from parametric.sections import spans_at

    ends = [end for span in spans_at(section, y) for end in span if end > 0]  # type: ignore[arg-type]
    return min((abs(v - end) for end in ends), default=math.inf)


def _faces(shape: TopoDS_Shape) -> Iterator[TopoDS_Face]:
    explorer = TopExp_Explorer(shape, TopAbs_FACE)
    while explorer.More():
        yield TopoDS.Face_s(explorer.Current())
        explorer.Next()


def _points(face: TopoDS_Face) -> Iterator[tuple[float, float, float]]:
    """Points inside a face, in rows over its parameters."""
    u0, u1, v0, v1 = BRepTools.UVBounds_s(face)
    surface = BRepAdaptor_Surface(face)
    explorer = BRepClass_FaceExplorer(face)
    tolerance = BRep_Tool.Tolerance_s(face)
    for i in range(STEPS):
        for j in range(STEPS):
            u = u0 + (u1 - u0) * (i + 0.5) / STEPS
            v = v0 + (v1 - v0) * (j + 0.5) / STEPS
            inside = BRepClass_FClassifier(explorer, gp_Pnt2d(u, v), tolerance)
            if inside.State() == TopAbs_IN:
                point = surface.Value(u, v)
                yield (point.X(), point.Y(), point.Z())
