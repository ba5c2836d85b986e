"""The model as binary glTF 2.0: named parts under leaves that move, twins sharing one mesh.

Metres, Y up (see `scene_frame`). A part's mesh keeps the part's own frame, x along the
grain, so that a viewer can lay grain on it. One primitive per mesh, materials by name.
The same parts give the same bytes.
"""

from __future__ import annotations

import json
import struct
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from parametric.model import Assembly, Group, Material, Part, Placement, Turn
from parametric.solids.looks import look_of
from parametric.solids.mesh import Mesh, mesh_of
from parametric.solids.solid_set import Solids
from parametric.writers.scene_frame import (
    group_turn,
    linear,
    mesh_corners,
    mesh_normals,
    part_turn,
    quaternion,
    scene_point,
)
from parametric.writers.scene_motion import line_slide, opening_keys, scene_steps
from parametric.writers.see_through import hides

OPENING_SECONDS = 1.5
"""How long an animated leaf takes from shut to open."""

_FLOAT, _SHORT, _INT = 5126, 5123, 5125
_ATTRIBUTES, _INDICES = 34962, 34963

Item = dict[str, Any]


def write_glb(assembly: Assembly, solids: Solids) -> bytes:
    """The whole assembly, shut, with an animation for each group that moves.

    The extras of a group's node say its `role` and how it moves: one slide along an axis
    of the scene as `axis` and `travel` (metres from shut), anything else as the steps of a
    `motion` (see `scene_motion`). Part nodes carry `mark` and `noun`; materials `look`. A group
    that hides something carries `seeThrough`, and so do those of its parts that do.
    """
    file = _File()
    shapes: dict[str, Mesh] = {}
    meshes: dict[tuple[str, str], int] = {}
    materials: dict[str, int] = {}
    groups = []
    for group in assembly.groups:
        children = []
        for part in filter(solids.shows, group.parts):
            key = solids.key(part)
            if part.material.name not in materials:
                materials[part.material.name] = file.add("materials", _material(part.material))
            drawn = (key, part.material.name)
            if drawn not in meshes:
                if key not in shapes:
                    shapes[key] = mesh_of(solids.of(part))
                meshes[drawn] = file.add(
                    "meshes", _mesh(file, shapes[key], part, materials[part.material.name])
                )
            children.append(file.add("nodes", _part_node(part, meshes[drawn], hides(group, part))))
        groups.append(file.add("nodes", _group_node(group, children)))
        if group.motion:
            file.add("animations", _opening(file, group, groups[-1]))
    root = file.add("nodes", {"name": assembly.name, "children": groups})
    file.add("scenes", {"name": assembly.name, "nodes": [root]})
    return file.packed()


@dataclass(frozen=True, slots=True, kw_only=True)
class _File:
    """A glTF file being filled: its lists of things and its binary buffer."""

    lists: dict[str, list[Item]] = field(default_factory=dict)
    binary: bytearray = field(default_factory=bytearray)

    def add(self, name: str, item: Item) -> int:
        """Put a thing at the end of its list; its number there."""
        listed = self.lists.setdefault(name, [])
        listed.append(item)
        return len(listed) - 1

    def add_numbers(
        self, numbers: NDArray[Any], kind: str, target: int | None = None, *, bounds: bool = False
    ) -> int:
        """Put numbers in the buffer; the number of their accessor."""
        component = {"<f4": _FLOAT, "<u2": _SHORT, "<u4": _INT}[numbers.dtype.str]
        view: Item = {
            "buffer": 0,
            "byteOffset": len(self.binary),
            "byteLength": numbers.nbytes,
        }
        if target is not None:
            view["target"] = target
        self.binary.extend(numbers.tobytes())
        self.binary.extend(b"\0" * (-len(self.binary) % 4))
        accessor: Item = {
            "bufferView": self.add("bufferViews", view),
            "componentType": component,
            "count": len(numbers),
            "type": kind,
        }
        if bounds:
            accessor["min"] = np.atleast_1d(numbers.min(axis=0)).tolist()
            accessor["max"] = np.atleast_1d(numbers.max(axis=0)).tolist()
        return self.add("accessors", accessor)

    def packed(self) -> bytes:
        """The finished file."""
        head: Item = {"asset": {"version": "2.0", "generator": "stilewright"}, "scene": 0}
        if self.binary:
            self.lists["buffers"] = [{"byteLength": len(self.binary)}]
        text = json.dumps(head | self.lists, ensure_ascii=False, separators=(",", ":"))
        written = text.encode()
        written += b" " * (-len(written) % 4)
        chunks = [(b"JSON", written)]
        if self.binary:
            chunks.append((b"BIN\0", bytes(self.binary)))
        body = b"".join(struct.pack("<I", len(data)) + kind + data for kind, data in chunks)
        return b"glTF" + struct.pack("<II", 2, 12 + len(body)) + body


def _material(material: Material) -> Item:
    look = look_of(material)
    colour = [round(linear(c), 6) for c in look.colour]
    item: Item = {
        "name": material.name,
        "pbrMetallicRoughness": {
            "baseColorFactor": [*colour, look.opacity],
            "metallicFactor": look.metallic,
            "roughnessFactor": look.roughness,
        },
        "extras": {"look": material.look},
    }
    if look.opacity < 1:
        item["alphaMode"] = "BLEND"
    return item


def _mesh(file: _File, mesh: Mesh, part: Part, material: int) -> Item:
    corners = mesh_corners(mesh)
    index_type = "<u2" if len(corners) < 0xFFFF else "<u4"
    return {
        "name": f"{part.mark} {part.noun}",
        "primitives": [
            {
                "attributes": {
                    "POSITION": file.add_numbers(corners, "VEC3", _ATTRIBUTES, bounds=True),
                    "NORMAL": file.add_numbers(mesh_normals(mesh), "VEC3", _ATTRIBUTES),
                },
                "indices": file.add_numbers(
                    mesh.triangles.astype(index_type).ravel(), "SCALAR", _INDICES
                ),
                "material": material,
            }
        ],
    }


def _part_node(part: Part, mesh: int, hiding: bool) -> Item:
    """A part hangs in its group's frame turned Y up; its mesh is in its own frame as it is."""
    return {
        "name": part.name,
        **_stance(part.placement, part_turn(part.placement)),
        "mesh": mesh,
        "extras": {"mark": part.mark, "noun": part.noun} | ({"seeThrough": True} if hiding else {}),
    }


def _group_node(group: Group, children: list[int]) -> Item:
    return {
        "name": group.name,
        **_stance(group.placement, group_turn(group.placement)),
        "children": children,
        "extras": _says(group) | ({"seeThrough": True} if group.see_through else {}),
    }


def _says(group: Group) -> Item:
    """What a group is, and how it moves."""
    if not group.motion:
        return {"role": "fixed"}
    slides = line_slide(group.motion)
    if slides is None:
        return {"role": "leaf", "motion": scene_steps(group.motion)}
    axis, travel = slides
    return {"role": "leaf", "axis": axis, "travel": [0.0, travel]}


def _opening(file: _File, group: Group, node: int) -> Item:
    """A group from shut to open."""
    keys = opening_keys(group)
    times = np.array([OPENING_SECONDS * part for part in keys.parts], dtype="<f4")
    at = file.add_numbers(times, "SCALAR", bounds=True)
    moved = {"translation": file.add_numbers(np.array(keys.places, dtype="<f4"), "VEC3")}
    if keys.turns is not None:
        moved["rotation"] = file.add_numbers(np.array(keys.turns, dtype="<f4"), "VEC4")
    return {
        "name": f"{group.name} {_does(group)}",
        "samplers": [
            {"input": at, "output": output, "interpolation": "LINEAR"} for output in moved.values()
        ],
        "channels": [
            {"sampler": number, "target": {"node": node, "path": path}}
            for number, path in enumerate(moved)
        ],
    }


def _does(group: Group) -> str:
    """What a leaf does, as the name of its animation has it."""
    turns = sum(isinstance(step, Turn) for step in group.motion)
    return ("slides", "swings")[turns] if turns < 2 else "folds"


def _stance(placement: Placement, turn: NDArray[np.float64]) -> Item:
    """Translation and rotation of a node; left out where there is none."""
    stance: Item = {}
    translation = scene_point(placement.origin)
    if any(translation):
        stance["translation"] = list(translation)
    rotation = quaternion(turn)
    if rotation != [0.0, 0.0, 0.0, 1.0]:
        stance["rotation"] = rotation
    return stance
