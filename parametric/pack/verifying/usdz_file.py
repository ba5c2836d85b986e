"""A USDZ file read back: a plain archive, its layer of text, and the scene that the layer holds.

Source: the USDZ file format specification and the USD text grammar (openusd.org, from
memory). An archive without compression, encryption or late sizes; the default layer
first; the data of each file at a multiple of 64 bytes. In the layer a matrix takes a point
as a row before it, `references` bring in the children of another prim, and what stands
under a `class` is not drawn where it stands.
"""

from __future__ import annotations

import struct
import zlib
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

import numpy as np

from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.glb_file import Floats, GlbFile, Node, Skin
from parametric.pack.verifying.usd_text import Path, Prim, read_layer

_ALIGNED = 64
_LAYERS = (".usda", ".usdc", ".usd")
_TURNED = {"Y": np.eye(3), "Z": np.array([[1.0, 0, 0], [0, 0, 1.0], [0, -1.0, 0]])}
"""From a layer's own up to Y up."""


@dataclass(frozen=True, slots=True, kw_only=True)
class UsdzFile:
    """The scene as a GLB's would be, metres, Y up, and the opacity of what each piece wears."""

    scene: GlbFile
    opacities: Mapping[str, float]


def read_usdz(data: bytes) -> UsdzFile:
    """Read a USDZ file.

    Raises:
        UnreadableError: it is not one, not whole, or holds what is not drawn as it stands.
    """
    try:
        files = list(unpacked(data))
        if not files or not files[0][0].endswith(_LAYERS):
            raise UnreadableError("its first file is no layer")
        if not files[0][0].endswith(".usda"):
            raise UnreadableError("its layer is not of text")
        return _scene(read_layer(files[0][1].decode()))
    except (KeyError, IndexError, ValueError, TypeError, struct.error) as error:
        raise UnreadableError(f"{type(error).__name__} {error}") from None


def unpacked(data: bytes) -> Iterator[tuple[str, bytes]]:
    """The files of an archive, in the order of their bytes, each held to the specification.

    Raises:
        UnreadableError: it is no archive that a reader may map into memory as it stands.
    """
    end = len(data) - 22
    if end < 0 or data[end : end + 4] != b"PK\5\6":
        raise UnreadableError("no archive, or something behind its end")
    disk, first_disk, here, count, size, start, words = struct.unpack_from("<4H2IH", data, end + 4)
    if (disk, first_disk, words) != (0, 0, 0) or here != count or start + size != end:
        raise UnreadableError("its directory is not whole")
    entry, expected = start, 0
    for _ in range(count):
        if data[entry : entry + 4] != b"PK\1\2":
            raise UnreadableError("its directory is not whole")
        head = struct.unpack_from("<6H3I5H2I", data, entry + 4)
        flags, method, (crc, packed, full) = head[2], head[3], head[6:9]
        named, extra, said, local = head[9], head[10], head[11], head[15]
        name = data[entry + 46 : entry + 46 + named]
        entry += 46 + named + extra + said
        if local != expected or data[local : local + 4] != b"PK\3\4":
            raise UnreadableError("its files do not lie one behind the other")
        there = struct.unpack_from("<5H3I2H", data, local + 4)
        if (flags, method) != (0, 0) or there[1:3] != (0, 0) or packed != full:
            raise UnreadableError("it is packed or encrypted")
        begins = local + 30 + there[8] + there[9]
        held = data[begins : begins + full]
        if there[5:8] != (crc, packed, full) or data[local + 30 : local + 30 + there[8]] != name:
            raise UnreadableError("a file and the directory do not agree")
        if len(held) != full or zlib.crc32(held) != crc:
            raise UnreadableError("a file is not whole")
        if begins % _ALIGNED:
            raise UnreadableError(f"a file begins at {begins}, not at a multiple of {_ALIGNED}")
        expected = begins + full
        yield name.decode("ascii"), held
    if expected != start:
        raise UnreadableError("something lies between its files and its directory")


def _scene(layer: Prim) -> UsdzFile:
    root = layer.children[layer.said["defaultPrim"]]
    prims = dict(_walked(layer, ""))
    before = np.eye(4)
    before[:3, :3] = _TURNED[layer.said["upAxis"]] * float(layer.said["metersPerUnit"])
    nodes: list[Node] = []
    skins: list[Skin] = []
    meshes: dict[str, int] = {}
    opacities: dict[str, float] = {}

    def walk(prim: Prim, parent: str, above: Floats) -> None:
        name = prim.said.get("displayName", prim.name)
        if (prim.kind, prim.type) != ("def", "Xform"):
            raise UnreadableError(f"{name}: a {prim.type} stands in the scene")
        matrix = above @ _matrix(prim)
        target = prim.said.get("references")
        if target is not None:
            mesh = meshes.get(target)
            if mesh is None:
                mesh = meshes[target] = len(skins)
                skins.append(_only_mesh(prims[target]))
            wears = prims[prim.held["material:binding"]]
            opacities[name] = _opacity(wears, prims)
        nodes.append(
            Node(
                name=name,
                parent=parent,
                matrix=matrix,
                mesh=None if target is None else meshes[target],
                extras=_extras(prim.said.get("customData", {})),
            )
        )
        for child in prim.children.values():
            if child.type != "Scope":
                walk(child, name, matrix)
            elif child.kind == "def" and {c.type for c in child.children.values()} - {"Material"}:
                raise UnreadableError(f"{child.name}: holds more than finishes")

    walk(root, "", before)
    return UsdzFile(
        scene=GlbFile(nodes=tuple(nodes), skins=tuple(skins)),
        opacities=opacities,
    )


def _walked(prim: Prim, path: str) -> Iterator[tuple[str, Prim]]:
    for child in prim.children.values():
        here = f"{path}/{child.name}"
        yield Path(here), child
        yield from _walked(child, here)


def _matrix(prim: Prim) -> Floats:
    order = prim.held.get("xformOpOrder", [])
    if order not in ([], ["xformOp:transform"]):
        raise UnreadableError(f"{prim.name}: stands by {', '.join(order)}")
    if not order:
        return np.eye(4)
    return np.array(prim.held["xformOp:transform"], dtype=float).reshape(4, 4).T


def _extras(said: Mapping[str, Any]) -> dict[str, Any]:
    """As a GLB says it: a travel from shut."""
    extras = dict(said)
    if "travel" in extras:
        extras["travel"] = [0.0, extras["travel"]]
    return extras


def _only_mesh(shape: Prim) -> Skin:
    """The one mesh of a shape, mm, which nothing moves, smooths or leaves without its extent."""
    (mesh,) = shape.children.values()
    if (shape.type, mesh.type) != ("Xform", "Mesh") or {"xformOpOrder"} & (
        shape.held.keys() | mesh.held.keys()
    ):
        raise UnreadableError(f"{shape.name}: is no mesh, or one that is moved")
    held = mesh.held
    corners, normals = (
        np.asarray(held[k], np.float32).astype(float).reshape(-1, 3) for k in ("points", "normals")
    )
    if held.get("subdivisionScheme") != "none" or held.get("orientation", "") == "leftHanded":
        raise UnreadableError(f"{shape.name}: is smoothed or turned inside out")
    if held.get("normals interpolation") != "vertex" or normals.shape != corners.shape:
        raise UnreadableError(f"{shape.name}: has not a normal at every corner")
    if not (np.asarray(held["faceVertexCounts"]) == 3).all():
        raise UnreadableError(f"{shape.name}: is not of triangles")
    triangles = np.asarray(held["faceVertexIndices"], np.int64).reshape(-1, 3)
    if len(triangles) != len(held["faceVertexCounts"]):
        raise UnreadableError(f"{shape.name}: its triangles are not counted right")
    extent = np.asarray(held["extent"], np.float32).reshape(2, 3)
    if np.abs(extent - [corners.min(axis=0), corners.max(axis=0)]).max() > 0:
        raise UnreadableError(f"{shape.name}: its extent is not that of its corners")
    return Skin(corners=corners * 1000, triangles=triangles, normals=normals)


def _opacity(material: Prim, prims: Mapping[str, Prim]) -> float:
    """How much a finish covers; it must be the standard preview material."""
    path, _, output = material.held["outputs:surface.connect"].rpartition(".")
    shader = prims[path]
    if output != "outputs:surface" or shader.held.get("info:id") != "UsdPreviewSurface":
        raise UnreadableError(f"{material.name}: is no preview material")
    return float(shader.held["inputs:opacity"])
