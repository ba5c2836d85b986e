"""The frame of models for pictures: metres, Y up, Z towards the viewer, colours linear.

The world's (x right, y away, z up) in mm becomes (x, z, -y) in metres. A mesh keeps its
part's own frame, x along the grain, in metres.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, assert_never

import numpy as np
from numpy.typing import NDArray

from parametric.model import Placement, Slide, Step, Turn, Vector

if TYPE_CHECKING:
    from parametric.solids.mesh import Mesh

Floats = NDArray[np.float64]
Singles = NDArray[np.float32]

_ZUP_TO_YUP = np.array([[1.0, 0.0, 0.0], [0.0, 0.0, 1.0], [0.0, -1.0, 0.0]])


def metres(length: float) -> float:
    """A length, mm, in metres, to a millionth of a mm."""
    return round(float(length) / 1000, 9) + 0.0


def scene_point(point: Vector) -> Vector:
    """A point of the world in the scene, metres."""
    return (metres(point[0]), metres(point[2]), metres(-point[1]))


def scene_motion(motion: tuple[Step, ...]) -> list[dict[str, Any]]:
    """How a group moves, step by step, the innermost first, in the scene.

    A slide by `slide` (metres from shut); a turn by `turn` (degrees from shut, right-handed)
    about the line through `point` along `axis`, where that line stands when all is shut.
    """
    said: list[dict[str, Any]] = []
    for step in motion:
        match step:
            case Slide():
                far = float(step.travel)
                x, y, z = (d * far for d in step.direction)
                said.append({"slide": list(scene_point((x, y, z)))})
            case Turn():
                x, y, z = step.axis
                said.append(
                    {
                        "turn": round(float(step.angle), 6),
                        "point": list(scene_point(step.point)),
                        "axis": [x + 0.0, z + 0.0, 0.0 - y],
                    }
                )
            case _:
                assert_never(step)
    return said


def part_turn(placement: Placement) -> Floats:
    """How a part is turned in its group, turned Y up: its mesh is in its own frame as it is."""
    turned: Floats = _ZUP_TO_YUP @ _turn(placement)
    return turned


def group_turn(placement: Placement) -> Floats:
    """How a group is turned in the scene."""
    turned: Floats = part_turn(placement) @ _ZUP_TO_YUP.T
    return turned


def mesh_corners(mesh: Mesh) -> Singles:
    """The corners of a mesh, metres, as the file holds them."""
    return (np.round(mesh.corners, 6) / 1000 + 0.0).astype("<f4")


def mesh_normals(mesh: Mesh) -> Singles:
    """The normals of a mesh as the file holds them."""
    return (np.round(mesh.normals, 9) + 0.0).astype("<f4")


def linear(srgb: float) -> float:
    """IEC 61966-2-1, the sRGB transfer function undone."""
    return srgb / 12.92 if srgb <= 0.04045 else ((srgb + 0.055) / 1.055) ** 2.4


def _turn(placement: Placement) -> Floats:
    return np.array([placement.x, placement.y, placement.z], dtype=float).T
