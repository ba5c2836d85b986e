"""A binary glTF file read back: its nodes where they stand, their triangles, how they move.

Source: the glTF 2.0 specification. Header `glTF`, version 2; a JSON chunk and a binary
chunk; component types 5126 float, 5125 and 5123 unsigned integers of 4 and 2 bytes; a
node's matrix is translation times rotation (x, y, z, w) times scale; triangles turn left
as seen from outside; metres, Y up.
"""

from __future__ import annotations

import json
import struct
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from parametric.pack.verifying.dxf_tags import UnreadableError

Floats = NDArray[np.float64]
Whole = NDArray[np.int64]

_TYPES = {5126: "<f4", 5125: "<u4", 5123: "<u2", 5121: "u1"}
_WIDE = {"SCALAR": 1, "VEC2": 2, "VEC3": 3, "VEC4": 4, "MAT4": 16}


@dataclass(frozen=True, slots=True, kw_only=True)
class Skin:
    """The triangles of a mesh in its own frame, mm, the normal at each corner, and its look."""

    corners: Floats
    triangles: Whole
    normals: Floats
    look: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class Node:
    """One node: its name, the name of the one it hangs on, its place in the scene, metres."""

    name: str
    parent: str
    matrix: Floats
    mesh: int | None
    extras: Mapping[str, Any]


@dataclass(frozen=True, slots=True, kw_only=True)
class Played:
    """What an animation does to a node: its place, metres, and turn (x, y, z, w) at each time.

    `turns` is None where it stays turned by `turn`, as it stands.
    """

    times: Floats
    places: Floats
    turns: Floats | None
    turn: Floats


@dataclass(frozen=True, slots=True, kw_only=True)
class GlbFile:
    """A scene: nodes in the order of the file, meshes, and by name how animated nodes go."""

    nodes: tuple[Node, ...]
    skins: tuple[Skin, ...]
    played: Mapping[str, Played] = field(default_factory=dict)


def read_glb(data: bytes) -> GlbFile:
    """Read a binary glTF file.

    Raises:
        UnreadableError: it is not one, or not whole.
    """
    try:
        return _read(data)
    except (KeyError, IndexError, ValueError, struct.error) as error:
        raise UnreadableError(f"{type(error).__name__} {error}") from None


def _read(data: bytes) -> GlbFile:
    kind, version, length = struct.unpack_from("<4sII", data)
    if (kind, version) != (b"glTF", 2) or length != len(data):
        raise UnreadableError("no glTF 2 header, or not of its length")
    chunks: dict[bytes, bytes] = {}
    at = 12
    while at < length:
        size, name = struct.unpack_from("<I4s", data, at)
        chunks[name] = data[at + 8 : at + 8 + size]
        at += 8 + size
    scene = json.loads(chunks[b"JSON"])
    binary = chunks.get(b"BIN\0", b"")
    raw = scene["nodes"]
    return GlbFile(
        nodes=tuple(_nodes(scene, raw)),
        skins=tuple(_skin(scene, binary, mesh) for mesh in scene.get("meshes", [])),
        played=dict(_played(scene, binary)),
    )


def _nodes(scene: Mapping[str, Any], raw: list[dict[str, Any]]) -> Iterator[Node]:
    def walk(index: int, parent: str, above: Floats) -> Iterator[Node]:
        node = raw[index]
        matrix = above @ _matrix(node)
        yield Node(
            name=node.get("name", ""),
            parent=parent,
            matrix=matrix,
            mesh=node.get("mesh"),
            extras=node.get("extras", {}),
        )
        for child in node.get("children", []):
            yield from walk(child, node.get("name", ""), matrix)

    for root in scene["scenes"][scene.get("scene", 0)]["nodes"]:
        yield from walk(root, "", np.eye(4))


def _matrix(node: Mapping[str, Any]) -> Floats:
    if "matrix" in node:
        return np.array(node["matrix"], dtype=float).reshape(4, 4).T
    return trs_matrix(
        node.get("translation", (0.0, 0.0, 0.0)),
        node.get("rotation", (0.0, 0.0, 0.0, 1.0)),
        node.get("scale", (1.0, 1.0, 1.0)),
    )


def trs_matrix(
    place: Sequence[float] | Floats,
    quaternion: Sequence[float] | Floats,
    scale: Sequence[float] = (1.0, 1.0, 1.0),
) -> Floats:
    """Place, turn (x, y, z, w) and scale as one matrix."""
    x, y, z, w = (float(q) for q in quaternion)
    turn = np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
            [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
            [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
        ]
    )
    matrix = np.eye(4)
    matrix[:3, :3] = turn * np.array(scale)
    matrix[:3, 3] = place
    return matrix


def _numbers(scene: Mapping[str, Any], binary: bytes, index: int) -> NDArray[Any]:
    accessor = scene["accessors"][index]
    view = scene["bufferViews"][accessor["bufferView"]]
    kind = np.dtype(_TYPES[accessor["componentType"]])
    wide = _WIDE[accessor["type"]]
    if view.get("byteStride", kind.itemsize * wide) != kind.itemsize * wide:
        raise UnreadableError("a buffer is woven of several things")
    start = view.get("byteOffset", 0) + accessor.get("byteOffset", 0)
    found = np.frombuffer(binary, kind, accessor["count"] * wide, start)
    return found.reshape(-1, wide) if wide > 1 else found


def _skin(scene: Mapping[str, Any], binary: bytes, mesh: Mapping[str, Any]) -> Skin:
    corners, normals, triangles, count = [], [], [], 0
    looks = set()
    for part in mesh["primitives"]:
        if part.get("mode", 4) != 4:
            raise UnreadableError("a mesh is not of triangles")
        here = _numbers(scene, binary, part["attributes"]["POSITION"]).astype(float)
        corners.append(here * 1000)
        normals.append(_numbers(scene, binary, part["attributes"]["NORMAL"]).astype(float))
        order = _numbers(scene, binary, part["indices"]).astype(np.int64)
        triangles.append(order.reshape(-1, 3) + count)
        count += len(here)
        looks.add(scene["materials"][part["material"]].get("extras", {}).get("look", ""))
    return Skin(
        corners=np.vstack(corners),
        triangles=np.vstack(triangles),
        normals=np.vstack(normals),
        look=" and ".join(sorted(looks)),
    )


def _played(scene: Mapping[str, Any], binary: bytes) -> Iterator[tuple[str, Played]]:
    """Every node that an animation moves; places and turns must share their times."""
    seen: set[str] = set()
    for animation in scene.get("animations", []):
        times: dict[str, Floats] = {}
        keys: dict[tuple[str, str], Floats] = {}
        for channel in animation["channels"]:
            sampler = animation["samplers"][channel["sampler"]]
            node = scene["nodes"][channel["target"]["node"]]
            name, path = node.get("name", ""), channel["target"]["path"]
            clock = _numbers(scene, binary, sampler["input"]).astype(float)
            values = _numbers(scene, binary, sampler["output"]).astype(float)
            if len(clock) != len(values) or sampler.get("interpolation", "LINEAR") != "LINEAR":
                raise UnreadableError(f"{name}: its keys and its times do not agree")
            if not np.array_equal(times.setdefault(name, clock), clock):
                raise UnreadableError(f"{name}: is turned and moved at different times")
            if path not in ("translation", "rotation") or (name, path) in keys or name in seen:
                raise UnreadableError(f"{name}: its {path} is animated, or that twice")
            keys[name, path] = values
        for name, clock in times.items():
            (node,) = (n for n in scene["nodes"] if n.get("name", "") == name)
            still = np.tile(node.get("translation", (0.0, 0.0, 0.0)), (len(clock), 1))
            yield (
                name,
                Played(
                    times=clock,
                    places=keys.get((name, "translation"), still),
                    turns=keys.get((name, "rotation")),
                    turn=np.array(node.get("rotation", (0.0, 0.0, 0.0, 1.0)), dtype=float),
                ),
            )
        seen |= times.keys()
