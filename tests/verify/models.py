"""The lopsided leaf as GLB, STEP and USDZ, and mirrors to hold it in."""

from __future__ import annotations

import functools
from typing import TYPE_CHECKING, Any

import numpy as np

from tests.verify.lopsided import assembly

if TYPE_CHECKING:
    from parametric.solids.solid_set import Solids


@functools.cache
def solids() -> Solids:
    from parametric.solids.solid_set import build_solids

    return build_solids(assembly().parts)


@functools.cache
def glb() -> bytes:
    from parametric.writers.glb import write_glb

    return write_glb(assembly(), solids())


@functools.cache
def step() -> bytes:
    from parametric.writers.step import write_step

    return write_step(assembly(), solids())


@functools.cache
def usdz() -> bytes:
    from parametric.writers.client_page import Palette
    from parametric.writers.usdz import write_usdz

    return write_usdz(assembly(), solids(), Palette())


def mirror_scene(scene: dict[str, Any], _binary: bytearray) -> None:
    """One scale of -1 at the root."""
    root = scene["scenes"][0]["nodes"][0]
    scene["nodes"][root]["scale"] = [-1.0, 1.0, 1.0]


def mirror_everything(scene: dict[str, Any], binary: bytearray) -> None:
    """The scene seen in a mirror across: a right-handed scene again, of mirrored parts.

    With M the mirror in x, a node's turn T becomes M T M, and a mesh point p becomes M p.
    """
    for node in scene["nodes"]:
        if "translation" in node:
            node["translation"][0] *= -1
        if "rotation" in node:
            x, y, z, w = node["rotation"]
            node["rotation"] = [x, -y, -z, w]
    _mirror_meshes(scene, binary, axis=0, middles=False)


def mirror_thickness(scene: dict[str, Any], binary: bytearray) -> None:
    """Every mesh turned into its mirror image through the middle of its thickness."""
    _mirror_meshes(scene, binary, axis=2, middles=True)


def _mirror_meshes(scene: dict[str, Any], binary: bytearray, *, axis: int, middles: bool) -> None:
    for mesh in scene["meshes"]:
        for part in mesh["primitives"]:
            for name in ("POSITION", "NORMAL"):
                index = part["attributes"][name]
                values = _array(scene, binary, index)
                middle = values[:, axis].min() + values[:, axis].max() if name == "POSITION" else 0
                values[:, axis] = (middle if middles else 0) - values[:, axis]
            order = _array(scene, binary, part["indices"]).reshape(-1, 3)
            order[:] = order[:, ::-1].copy()


def _array(scene: dict[str, Any], binary: bytearray, index: int) -> Any:
    """The numbers of an accessor, to be written into."""
    accessor = scene["accessors"][index]
    view = scene["bufferViews"][accessor["bufferView"]]
    kind = {5126: np.float32, 5125: np.uint32, 5123: np.uint16}[accessor["componentType"]]
    wide = {"SCALAR": 1, "VEC3": 3}[accessor["type"]]
    found = np.frombuffer(
        memoryview(binary), dtype=kind, count=accessor["count"] * wide, offset=view["byteOffset"]
    )
    return found.reshape(-1, wide) if wide > 1 else found
