"""A solid as triangles: flat faces crisp, round faces smooth.

Every curved face of a part is a cylinder or, along a curved moulding, a cone or a torus, so
normals are exact, not averaged. A chord leaves its arc by at most `CHORD` mm and turns at most `TURN` rad. A whole round of such
chords has sin(TURN) / TURN of the circle's area; no mesh is further from its solid's
volume than that, and a flat-sided part with small rounds far nearer.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from OCP.BRep import BRep_Tool
from OCP.BRepAdaptor import BRepAdaptor_Surface
from OCP.BRepBuilderAPI import BRepBuilderAPI_Copy
from OCP.BRepMesh import BRepMesh_IncrementalMesh
from OCP.GeomAbs import GeomAbs_Cone, GeomAbs_Cylinder, GeomAbs_Plane, GeomAbs_Torus
from OCP.gp import gp_Ax1
from OCP.TopAbs import TopAbs_FACE, TopAbs_REVERSED
from OCP.TopExp import TopExp_Explorer
from OCP.TopLoc import TopLoc_Location
from OCP.TopoDS import TopoDS, TopoDS_Face, TopoDS_Shape

CHORD = 0.05
"""mm"""
TURN = 0.2
"""rad"""
VOLUME_LOSS = 1 - math.sin(TURN) / TURN
"""The most a mesh's volume may be off, relative: 0.0067."""

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Mesh:
    """Corners (mm), their unit normals, and triangles turning left as seen from outside."""

    corners: Floats
    normals: Floats
    triangles: Whole


def mesh_of(solid: TopoDS_Shape) -> Mesh:
    """The triangles of a solid, in the solid's own frame.

    Faces come in the order of where they lie, so that the same solid gives the same
    mesh however it was made or kept.
    """
    body = BRepBuilderAPI_Copy(solid, True, False).Shape()
    BRepMesh_IncrementalMesh(body, CHORD, False, 2 * TURN, False)  # the kernel halves the angle
    faces = []
    explorer = TopExp_Explorer(body, TopAbs_FACE)
    while explorer.More():
        faces.append(_face_mesh(TopoDS.Face_s(explorer.Current())))
        explorer.Next()
    faces.sort(key=lambda face: np.round(face[0], 6).tobytes())
    offsets = np.cumsum([0] + [len(corners) for corners, _, _ in faces])
    return Mesh(
        corners=np.vstack([corners for corners, _, _ in faces]),
        normals=np.vstack([normals for _, normals, _ in faces]),
        triangles=np.vstack(
            [triangles + offset for (_, _, triangles), offset in zip(faces, offsets, strict=False)]
        ),
    )


def _face_mesh(face: TopoDS_Face) -> tuple[Floats, Floats, Whole]:
    where = TopLoc_Location()
    found = BRep_Tool.Triangulation_s(face, where)
    nodes = [found.Node(i) for i in range(1, found.NbNodes() + 1)]
    if not where.IsIdentity():
        nodes = [node.Transformed(where.Transformation()) for node in nodes]
    corners = np.array([node.Coord() for node in nodes])
    triangles = np.array([found.Triangle(i).Get() for i in range(1, found.NbTriangles() + 1)]) - 1
    if face.Orientation() == TopAbs_REVERSED:
        triangles = triangles[:, ::-1]
    surface = BRepAdaptor_Surface(face)
    match surface.GetType():
        case t if t == GeomAbs_Plane:
            a, b, c = (corners[triangles[:, k]] for k in range(3))
            facing = np.cross(b - a, c - a).sum(axis=0)
            normals = np.broadcast_to(facing / np.linalg.norm(facing), corners.shape)
        case t if t == GeomAbs_Cylinder:
            out, _ = _from_axis(corners, surface.Cylinder().Axis())
            normals = _outwards(out, corners, triangles)
        case t if t == GeomAbs_Cone:
            cone = surface.Cone()
            out, along = _from_axis(corners, cone.Axis())
            lean = cone.SemiAngle()
            normals = _outwards(out * math.cos(lean) - along * math.sin(lean), corners, triangles)
        case t if t == GeomAbs_Torus:
            torus = surface.Torus()
            out, _ = _from_axis(corners, torus.Axis())
            ring = np.array(torus.Axis().Location().Coord()) + torus.MajorRadius() * out
            normals = _outwards((corners - ring) / torus.MinorRadius(), corners, triangles)
        case other:
            raise TypeError(f"no part has a face of kind {other}")
    return corners, np.array(normals), triangles


def _from_axis(corners: Floats, axis: gp_Ax1) -> tuple[Floats, Floats]:
    """The way from an axis out to each corner, and along it; unit vectors."""
    along = np.array(axis.Direction().Coord())
    out = corners - np.array(axis.Location().Coord())
    out -= np.outer(out @ along, along)
    return out / np.linalg.norm(out, axis=1)[:, None], along


def _outwards(normals: Floats, corners: Floats, triangles: Whole) -> Floats:
    """Normals turned to the side that the triangles are seen from."""
    a, b, c = (corners[triangles[:, k]] for k in range(3))
    seen = np.cross(b - a, c - a)
    return np.asarray(normals * np.sign(np.sum(seen * normals[triangles[:, 0]])))
