"""The faces of a piece as one picture of wood or paint, worked out from where each point lies in it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.finishes import ClearTimber, Paint
from parametric.writers.grain import Numbers, clear_wood, painted, seed_of
from parametric.writers.picture_model import Piece, Points

_TOUCHING = 0.5
"""How far beyond an end a piece that it meets is looked for, mm."""
_UNSEEN = 5.0
"""How much coarser what faces away from the viewer is."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Skin:
    """A piece ready to be pictured: a mesh in the scene, its group shut, and its pictures.

    `at` is where each corner lies in the pictures, 0 to 1 from their left and foot; `colour`
    is linear, rows from the foot up; `rough` is None where it is the same all over.
    """

    name: str
    group: str
    corners: Points
    normals: Points
    triangles: NDArray[np.int64]
    at: Points
    colour: Numbers
    rough: Numbers | None


@dataclass(frozen=True, slots=True, kw_only=True)
class _Side:
    """One of a piece's six sides: the axis it faces, which way, and the triangles on it."""

    axis: int
    sign: int
    triangles: NDArray[np.int64]


def skins(
    pieces: tuple[Piece, ...],
    wood: Paint | ClearTimber,
    glued: Mapping[str, float],
    *,
    turning: frozenset[str] = frozenset(),
    fine: float = 1.0,
) -> tuple[Skin, ...]:
    """The skins of all pieces of timber.

    Args:
        pieces: all pieces of the model.
        wood: what is on them.
        glued: widths of boards by mark, mm, for what is glued up.
        turning: groups of which every side is seen.
        fine: how many times finer than usual.
    """
    timber = [piece for piece in pieces if piece.look in ("timber", "board")]
    return tuple(
        _skin(
            piece,
            wood,
            glued.get(piece.mark, 0.0),
            _joints(piece, timber),
            fine,
            all_round=piece.group in turning,
        )
        for piece in timber
    )


def _joints(piece: Piece, timber: list[Piece]) -> tuple[float | None, float | None]:
    """X of the ends that stand against another piece of the same leaf, mm in the piece's frame."""
    low, high = piece.corners.min(axis=0) * 1000, piece.corners.max(axis=0) * 1000
    met: list[float | None] = []
    for x, beyond in ((low[0], -_TOUCHING), (high[0], _TOUCHING)):
        own = np.array([x + beyond, (low[1] + high[1]) / 2, (low[2] + high[2]) / 2]) / 1000
        at = piece.placed(own[None])[0]
        hits = False
        for other in timber:
            if other is piece or other.group != piece.group:
                continue
            box = other.placed(other.corners)
            hits = hits or bool(np.all(at >= box.min(axis=0)) and np.all(at <= box.max(axis=0)))
        met.append(float(x - low[0]) if hits else None)
    return met[0], met[1]


def _skin(
    piece: Piece,
    wood: Paint | ClearTimber,
    wide: float,
    ends: tuple[float | None, float | None],
    fine: float,
    *,
    all_round: bool,
) -> Skin:
    own = piece.corners * 1000
    # wood runs on through the piece, so it is counted from its own low end
    own[:, 0] -= own[:, 0].min()
    # grain changes slowly along a piece and fast across it; paint hardly at all, but for joints
    along, across = (2.0, 0.5) if isinstance(wood, ClearTimber) else (1.0, 4.0)
    charts: list[tuple[_Side, Numbers, NDArray[np.float64], tuple[float, float]]] = []
    for side in _sides(own, piece.triangles):
        seen = all_round or piece.turn[2, side.axis] * side.sign > -0.5
        coarse = (1.0 if seen else _UNSEEN) / fine
        steps = (along if side.axis != 0 else across) * coarse, across * coarse
        points, origin = _chart(own, side, steps)
        charts.append((side, points, origin, steps))
    width = max(points.shape[1] for _, points, _, _ in charts)
    height = sum(points.shape[0] for _, points, _, _ in charts)
    colour = np.zeros((height, width, 3), np.float32)
    rough = np.zeros((height, width), np.float32) if isinstance(wood, ClearTimber) else None
    corners, normals, at = [], [], []
    row = 0
    seed = seed_of(piece.name)
    for side, points, origin, (du, dv) in charts:
        rows, columns = points.shape[:2]
        flat = points.reshape(-1, 3)
        if isinstance(wood, ClearTimber):
            shade, sheen = clear_wood(flat, seed, wood, wide=wide, texel=dv)
            assert rough is not None
            rough[row : row + rows, :columns] = wood.rough + sheen.reshape(rows, columns)
        else:
            shade = painted(flat, wood.colour, ends=ends)
        colour[row : row + rows, :columns] = shade.reshape(rows, columns, 3)
        index = side.triangles.ravel()
        u, v = (i for i in range(3) if i != side.axis)
        corners.append(piece.corners[index])
        normals.append(piece.normals[index])
        at.append(
            np.stack(
                [
                    ((own[index, u] - origin[0]) / du + 0.5) / width,
                    ((own[index, v] - origin[1]) / dv + 0.5 + row) / height,
                ],
                axis=1,
            )
        )
        row += rows
    count = sum(len(c) for c in corners)
    return Skin(
        name=piece.name,
        group=piece.group,
        corners=piece.placed(np.concatenate(corners)),
        normals=np.concatenate(normals) @ piece.turn.T,
        triangles=np.arange(count).reshape(-1, 3),
        at=np.concatenate(at),
        colour=colour,
        rough=rough,
    )


def _sides(own: Points, triangles: NDArray[np.int64]) -> list[_Side]:
    a, b, c = (own[triangles[:, k]] for k in range(3))
    facing = np.cross(b - a, c - a)
    axes = np.argmax(np.abs(facing), axis=1)
    signs = np.sign(np.take_along_axis(facing, axes[:, None], axis=1)[:, 0])
    found = []
    for axis in (2, 1, 0):
        for sign in (1, -1):
            chosen = triangles[(axes == axis) & (signs == sign)]
            if len(chosen):
                found.append(_Side(axis=axis, sign=sign, triangles=chosen))
    return found


def _chart(
    own: Points, side: _Side, steps: tuple[float, float]
) -> tuple[Numbers, NDArray[np.float64]]:
    """Points of the piece under every texel of a side, a texel to spare all round, and the first."""
    u, v = (i for i in range(3) if i != side.axis)
    box = own[side.triangles.ravel()]
    low, high = box.min(axis=0), box.max(axis=0)
    columns = int(np.ceil((high[u] - low[u]) / steps[0])) + 3
    rows = int(np.ceil((high[v] - low[v]) / steps[1])) + 3
    origin = np.array([low[u] - steps[0], low[v] - steps[1]])
    us = origin[0] + np.arange(columns) * steps[0]
    vs = origin[1] + np.arange(rows) * steps[1]
    deep = np.full((rows, columns), -np.inf)
    for triangle in side.triangles:
        _sink(deep, own[triangle], side, (u, v), (us, vs))
    outermost = max(low[side.axis] * side.sign, high[side.axis] * side.sign)
    deep[np.isinf(deep)] = outermost
    points = np.empty((rows, columns, 3), np.float32)
    points[:, :, u], points[:, :, v] = us[None, :], vs[:, None]
    points[:, :, side.axis] = deep * side.sign
    return points, origin


def _sink(
    deep: Points, corners: Points, side: _Side, axes: tuple[int, int], texels: tuple[Points, Points]
) -> None:
    """Let the texels under a triangle know how far out it lies, where none lies farther out."""
    (u, v), (us, vs) = axes, texels
    a, b, c = corners
    i0, i1 = np.searchsorted(us, [corners[:, u].min(), corners[:, u].max()])
    j0, j1 = np.searchsorted(vs, [corners[:, v].min(), corners[:, v].max()])
    i0, j0 = max(int(i0) - 1, 0), max(int(j0) - 1, 0)
    i1, j1 = min(int(i1) + 1, len(us)), min(int(j1) + 1, len(vs))
    area = (b[u] - a[u]) * (c[v] - a[v]) - (c[u] - a[u]) * (b[v] - a[v])
    if abs(area) < 1e-9 or i1 <= i0 or j1 <= j0:
        return
    x, y = us[None, i0:i1] - a[u], vs[j0:j1, None] - a[v]
    s = (x * (c[v] - a[v]) - y * (c[u] - a[u])) / area
    t = (y * (b[u] - a[u]) - x * (b[v] - a[v])) / area
    inside = (s >= -0.02) & (t >= -0.02) & (s + t <= 1.02)
    d = a[side.axis] + s * (b[side.axis] - a[side.axis]) + t * (c[side.axis] - a[side.axis])
    part = deep[j0:j1, i0:i1]
    np.maximum(part, np.where(inside, d * side.sign, -np.inf), out=part)
