"""The model as binary glTF 2.0: named parts under leaves that move, twins sharing one mesh.

Metres, Y up (see `scene_frame`). A part's mesh keeps the part's own frame, x along the
grain, so that a viewer can lay grain on it. One primitive per mesh, materials by name.
The same parts give the same bytes.
"""

from __future__ import annotations

import itertools
import json
import math
import struct
from dataclasses import dataclass, field
from typing import Any

import numpy as np
from numpy.typing import NDArray

from parametric.model import Assembly, Group, Material, Part, Placement, Slide, along
from parametric.solids.looks import look_of
from parametric.solids.mesh import Mesh, mesh_of
from parametric.solids.solid_set import Solids
from parametric.writers.scene_frame import (
    group_turn,
    linear,
    mesh_corners,
    mesh_normals,
    metres,
    part_turn,
    scene_motion,
    scene_point,
)

KEY_EVERY = 1.0
"""One key of an animated turn to so many degrees: a leaf 1200 wide is then off by 0.05 mm at most."""
SLIDE_SECONDS = 1.5
"""How long an animated leaf takes from shut to open."""

_FLOAT, _SHORT, _INT = 5126, 5123, 5125
_ATTRIBUTES, _INDICES = 34962, 34963

Item = dict[str, Any]


def write_glb(assembly: Assembly, solids: Solids) -> bytes:
    """The whole assembly, shut, with an animation for each group that moves.

    Group nodes carry `role` in their extras; one that slides `axis` and `travel` (metres from
    shut, along that axis of the scene), one that moves otherwise its `motion` (see
    `scene_motion`); part nodes `mark` and `noun`; materials `look`.
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
            children.append(file.add("nodes", _part_node(part, meshes[drawn])))
        groups.append(file.add("nodes", _group_node(group, children)))
        if group.slide is not None:
            file.add("animations", _sliding(file, group, group.slide, groups[-1]))
        elif group.motion:
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


def _part_node(part: Part, mesh: int) -> Item:
    """A part hangs in its group's frame turned Y up; its mesh is in its own frame as it is."""
    return {
        "name": part.name,
        **_stance(part.placement, part_turn(part.placement)),
        "mesh": mesh,
        "extras": {"mark": part.mark, "noun": part.noun},
    }


def _group_node(group: Group, children: list[int]) -> Item:
    extras: Item = {"role": "fixed"}
    if group.slide is not None:
        axis, travel = _along(group.slide)
        extras = {"role": "leaf", "axis": axis, "travel": [0.0, travel]}
    elif group.motion:
        extras = {"role": "leaf", "motion": scene_motion(group.motion)}
    return {
        "name": group.name,
        **_stance(group.placement, group_turn(group.placement)),
        "children": children,
        "extras": extras,
    }


def _along(slide: Slide) -> tuple[str, float]:
    """The axis of the scene a slide runs along, and how far, metres and signed."""
    across, away, up = slide.direction
    for axis, part in (("x", across), ("y", up), ("z", -away)):
        if abs(abs(part) - 1) < 1e-9:
            return axis, metres(part * slide.travel)
    raise ValueError(f"a slide runs along one axis of the world, not {slide.direction}")


def _sliding(file: _File, group: Group, slide: Slide, node: int) -> Item:
    shut = np.array(scene_point(group.placement.origin))
    d = slide.direction
    travel = float(slide.travel)
    opened = shut + np.array(scene_point((d[0] * travel, d[1] * travel, d[2] * travel)))
    times = np.array([0.0, SLIDE_SECONDS], dtype="<f4")
    return {
        "name": f"{group.name} slides",
        "samplers": [
            {
                "input": file.add_numbers(times, "SCALAR", bounds=True),
                "output": file.add_numbers(np.array([shut, opened], dtype="<f4"), "VEC3"),
                "interpolation": "LINEAR",
            }
        ],
        "channels": [{"sampler": 0, "target": {"node": node, "path": "translation"}}],
    }


def _opening(file: _File, group: Group, node: int) -> Item:
    """Places and turns from shut to open, a key for every degree that any step turns through."""
    turns = [abs(float(step.angle)) for step in group.motion if not isinstance(step, Slide)]
    keys = max(2, math.ceil(sum(turns) / KEY_EVERY) + 1)
    stands = [along(group.placement, group.motion, i / (keys - 1)) for i in range(keys)]
    places = np.array([scene_point(stand.origin) for stand in stands], dtype="<f4")
    quaternions = [np.array(_quaternion(group_turn(stand))) for stand in stands]
    for before, after in itertools.pairwise(quaternions):
        if before @ after < 0:
            after *= -1.0  # the same turn, said so that a viewer goes the short way
    times = (np.linspace(0.0, SLIDE_SECONDS, keys)).astype("<f4")
    clock = file.add_numbers(times, "SCALAR", bounds=True)
    samplers = [
        {"input": clock, "output": file.add_numbers(values, kind), "interpolation": "LINEAR"}
        for values, kind in ((places, "VEC3"), (np.array(quaternions, dtype="<f4"), "VEC4"))
    ]
    return {
        "name": f"{group.name} opens",
        "samplers": samplers,
        "channels": [
            {"sampler": i, "target": {"node": node, "path": path}}
            for i, path in enumerate(("translation", "rotation"))
        ],
    }


def _stance(placement: Placement, turn: NDArray[np.float64]) -> Item:
    """Translation and rotation of a node; left out where there is none."""
    stance: Item = {}
    translation = scene_point(placement.origin)
    if any(translation):
        stance["translation"] = list(translation)
    rotation = _quaternion(turn)
    if rotation != [0.0, 0.0, 0.0, 1.0]:
        stance["rotation"] = rotation
    return stance


def _quaternion(m: NDArray[np.float64]) -> list[float]:
    """A turn as x, y, z, w, with the first of w, x, y, z that is not nought positive.

    The largest of the four is taken from the diagonal, the rest from it, so that
    nothing is divided by a small number.
    """
    squares = [
        1 + m[0, 0] + m[1, 1] + m[2, 2],
        1 + m[0, 0] - m[1, 1] - m[2, 2],
        1 - m[0, 0] + m[1, 1] - m[2, 2],
        1 - m[0, 0] - m[1, 1] + m[2, 2],
    ]
    rows = {
        0: (squares[0], m[2, 1] - m[1, 2], m[0, 2] - m[2, 0], m[1, 0] - m[0, 1]),
        1: (m[2, 1] - m[1, 2], squares[1], m[0, 1] + m[1, 0], m[0, 2] + m[2, 0]),
        2: (m[0, 2] - m[2, 0], m[0, 1] + m[1, 0], squares[2], m[1, 2] + m[2, 1]),
        3: (m[1, 0] - m[0, 1], m[0, 2] + m[2, 0], m[1, 2] + m[2, 1], squares[3]),
    }
    wxyz = np.array(rows[int(np.argmax(squares))])
    wxyz = np.round(wxyz / np.linalg.norm(wxyz), 9) + 0.0
    if wxyz[np.flatnonzero(wxyz)[0]] < 0:
        wxyz = 0.0 - wxyz
    w, x, y, z = wxyz.tolist()
    return [x, y, z, w]
