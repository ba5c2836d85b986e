"""Models as programs of other people read them, brought into one frame for the tests.

Every reader gives the box of each named piece and answers whether a point lies in its
wood, in mm, x to the right as the room sees it, y away from the room, z up. Each says here
how its format stands to that frame, and none knows of the writers:

GLB   trimesh. Metres, Y up, +Z into the room (the glTF 2.0 specification: Y up, metres).
STEP  gmsh, another build of the kernel, in a process of its own. Millimetres, Z up, -Y
      into the room.
USDZ  OpenUSD. metersPerUnit and upAxis are read from the stage; +Z into the room.
"""

from __future__ import annotations

import io
import json
import subprocess
import sys
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import Any, Protocol

import numpy as np
import trimesh
from numpy.typing import NDArray

Floats = NDArray[np.float64]
Point = tuple[float, float, float]


class Read(Protocol):
    """A model that was read."""

    @property
    def boxes(self) -> dict[str, Floats]:
        """The low and the high corner of every piece, mm, by its name."""

    def inside(self, piece: str, points: Iterable[Point]) -> list[bool]:
        """Whether each point lies in the wood of a piece."""


def box_of(read: Read, begins: str = "") -> Floats:
    """The box of all pieces whose name begins so."""
    boxes = [box for name, box in read.boxes.items() if name.startswith(begins)]
    return np.array([np.min([b[0] for b in boxes], axis=0), np.max([b[1] for b in boxes], axis=0)])


@dataclass(frozen=True, kw_only=True)
class Skins:
    """Pieces as closed skins where they stand."""

    skins: dict[str, Any]

    @cached_property
    def boxes(self) -> dict[str, Floats]:
        return {name: np.asarray(skin.bounds) for name, skin in self.skins.items()}

    def inside(self, piece: str, points: Iterable[Point]) -> list[bool]:
        """By what a cube of 0.2 about the point has in common with the piece."""
        found = []
        for point in points:
            cube = trimesh.creation.box(
                (0.2,) * 3, trimesh.transformations.translation_matrix(point)
            )
            shared = trimesh.boolean.intersection([self.skins[piece], cube], engine="manifold")
            part = 0.0 if shared.is_empty else shared.volume / cube.volume
            assert part < 1e-3 or part > 1 - 1e-3, (piece, point, part)
            found.append(bool(part > 0.5))
        return found


def glb_read(data: bytes) -> Skins:
    """The GLB by trimesh."""
    scene = trimesh.load(io.BytesIO(data), file_type="glb")
    skins = {}
    for name in scene.graph.nodes_geometry:
        place, geometry = scene.graph.get(name)
        mesh = scene.geometry[geometry].copy()
        mesh.apply_transform(place)
        skins[name] = _into_the_frame(mesh)
    return Skins(skins=skins)


def usdz_read(path: Path) -> Skins:
    """The USDZ by OpenUSD; names are what the stage displays."""
    from pxr import Usd, UsdGeom

    stage = Usd.Stage.Open(str(path))
    assert UsdGeom.GetStageUpAxis(stage) == UsdGeom.Tokens.y
    metres = UsdGeom.GetStageMetersPerUnit(stage)
    places = UsdGeom.XformCache()
    skins = {}
    for prim in stage.Traverse(Usd.TraverseInstanceProxies()):
        if not prim.IsA(UsdGeom.Mesh):
            continue
        mesh = UsdGeom.Mesh(prim)
        order = np.array(mesh.GetFaceVertexIndicesAttr().Get()).reshape(-1, 3)
        skin = trimesh.Trimesh(np.array(mesh.GetPointsAttr().Get(), float), order, process=False)
        # USD has points in rows before the matrix
        skin.apply_transform(np.array(places.GetLocalToWorldTransform(prim)).T)
        skin.apply_scale(metres)
        skins[prim.GetParent().GetDisplayName()] = _into_the_frame(skin)
    return Skins(skins=skins)


def _into_the_frame(mesh: Any) -> Any:
    mesh.merge_vertices(merge_norm=True, merge_tex=True)
    assert mesh.is_watertight
    assert mesh.is_winding_consistent
    x, y, z = mesh.vertices.T * 1000
    mesh.vertices = np.array([x, -z, y]).T
    return mesh


@dataclass(frozen=True, kw_only=True)
class Step:
    """The STEP file by gmsh."""

    path: Path

    @cached_property
    def boxes(self) -> dict[str, Floats]:
        return {name: np.array(box) for name, box in self._asked({}).items()}

    def inside(self, piece: str, points: Iterable[Point]) -> list[bool]:
        return [bool(found) for found in self._asked({piece: list(points)})[piece]]

    def boxes_in(self, unit: str) -> dict[str, Floats]:
        """The boxes in another unit that the reader is asked for, such as `M`."""
        return {name: np.array(box) for name, box in self._asked({}, unit).items()}

    def _asked(self, points: dict[str, list[Point]], unit: str = "MM") -> dict[str, Any]:
        ran = subprocess.run(
            [sys.executable, "-c", _ASK, str(self.path), unit, json.dumps(points)],
            check=True,
            capture_output=True,
            text=True,
        )
        return dict(json.loads(ran.stdout))


_ASK = """\
import gmsh, json, sys
path, unit, points = sys.argv[1], sys.argv[2], json.loads(sys.argv[3])
gmsh.initialize()
gmsh.option.setNumber('General.Terminal', 0)
gmsh.option.setString('Geometry.OCCTargetUnit', unit)
gmsh.model.occ.importShapes(path)
gmsh.model.occ.synchronize()
found = {}
for _, tag in gmsh.model.getEntities(3):
    # job, leaf, leaf, piece, product; a piece's own name has ' / ' in it
    name = gmsh.model.getEntityName(3, tag).replace(' / ', '\\0').split('/')[-2].replace('\\0', ' / ')
    if not points:
        box = gmsh.model.occ.getBoundingBox(3, tag)
        found[name] = [box[:3], box[3:]]
    elif name in points:
        found[name] = [gmsh.model.isInside(3, tag, at) for at in points[name]]
print(json.dumps(found))
"""
