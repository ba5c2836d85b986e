"""The model's file read for pictures: every piece with its mesh, its own frame and its look."""

from __future__ import annotations

import json
import re
import struct
from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

Points = NDArray[np.float64]

_KINDS = {5126: "<f4", 5123: "<u2", 5125: "<u4"}
_WIDE = {"SCALAR": 1, "VEC3": 3}


@dataclass(frozen=True, slots=True, kw_only=True)
class Piece:
    """One piece: corners and normals in its own frame, metres, x along the grain.

    `turn` and `stand` take its own frame to where it is with its group shut. `look` is the
    model's, with the pulls told from other metal.
    """

    name: str
    mark: str
    group: str
    look: str
    corners: Points
    normals: Points
    triangles: NDArray[np.int64]
    turn: Points
    stand: Points

    def placed(self, points: Points) -> Points:
        """Points of its own frame in the scene, its group shut."""
        return points @ self.turn.T + self.stand


def read_pieces(glb: bytes) -> tuple[Piece, ...]:
    """Every piece of the model, in the order of the file."""
    length = struct.unpack_from("<I", glb, 12)[0]
    head: dict[str, Any] = json.loads(glb[20 : 20 + length])
    binary = glb[28 + length :]
    pieces: list[Piece] = []

    def numbers(index: int) -> NDArray[Any]:
        accessor = head["accessors"][index]
        view = head["bufferViews"][accessor["bufferView"]]
        wide = _WIDE[accessor["type"]]
        found = np.frombuffer(
            binary,
            _KINDS[accessor["componentType"]],
            accessor["count"] * wide,
            view.get("byteOffset", 0) + accessor.get("byteOffset", 0),
        )
        return found.reshape(-1, wide) if wide > 1 else found

    def walk(index: int, turn: Points, stand: Points, line: tuple[str, ...]) -> None:
        node = head["nodes"][index]
        stand = turn @ np.array(node.get("translation", (0, 0, 0)), float) + stand
        turn = turn @ _turned(node.get("rotation", (0, 0, 0, 1)))
        line = (*line, node["name"])
        if "mesh" in node:
            mesh = head["meshes"][node["mesh"]]
            (drawn,) = mesh["primitives"]
            look = head["materials"][drawn["material"]]["extras"]["look"]
            pull = look == "metal" and re.search(r"\bpull\b", f"{node['name']} {mesh['name']}")
            pieces.append(
                Piece(
                    name=node["name"],
                    mark=node.get("extras", {}).get("mark", ""),
                    group=line[1],
                    look="pull" if pull else look,
                    corners=numbers(drawn["attributes"]["POSITION"]).astype(float),
                    normals=numbers(drawn["attributes"]["NORMAL"]).astype(float),
                    triangles=numbers(drawn["indices"]).reshape(-1, 3).astype(np.int64),
                    turn=turn,
                    stand=stand,
                )
            )
        for child in node.get("children", ()):
            walk(child, turn, stand, line)

    for root in head["scenes"][0]["nodes"]:
        walk(root, np.eye(3), np.zeros(3), ())
    return tuple(pieces)


def _turned(quaternion: tuple[float, ...]) -> Points:
    x, y, z, w = quaternion
    return np.array(
        [
            [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
            [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
            [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
        ]
    )
