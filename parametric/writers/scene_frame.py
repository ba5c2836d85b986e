"""The frame of models for pictures: metres, Y up, Z towards the viewer, colours linear.

The world's (x right, y away, z up) in mm becomes (x, z, -y) in metres. A mesh keeps its
part's own frame, x along the grain, in metres.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np
from numpy.typing import NDArray

from parametric.model import Placement, Vector

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


def scene_direction(direction: Vector) -> Vector:
    """A direction of the world in the scene."""
    across, away, up = (round(float(v), 12) + 0.0 for v in direction)
    return (across, up, 0.0 - away)


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


def quaternion(m: Floats) -> list[float]:
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


def linear(srgb: float) -> float:
    """IEC 61966-2-1, the sRGB transfer function undone."""
    return srgb / 12.92 if srgb <= 0.04045 else ((srgb + 0.055) / 1.055) ** 2.4


def _turn(placement: Placement) -> Floats:
    return np.array([placement.x, placement.y, placement.z], dtype=float).T
