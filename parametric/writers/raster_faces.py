"""Which face is seen at every point of a picture, and how far off: triangles filled in by numpy."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Real = NDArray[np.float32]
Whole = NDArray[np.int32]

_SMALL = 12
"""Faces no wider and higher than this many points are filled in all together."""
_AT_ONCE = 20000


@dataclass(frozen=True, slots=True, kw_only=True)
class Seen:
    """The nearest face at every point, -1 where there is none, and what its depth is there."""

    face: Whole
    depth: Real


def nearest(corners: NDArray[np.float64], size: tuple[int, int]) -> Seen:
    """Fill triangles in.

    Args:
        corners: n x 3 x 3: for each corner its column and row, in points, and its depth, which
            runs evenly across the picture (for an eye the inverse of the distance, less 0).
        size: width and height, points.
    """
    width, height = size
    depth = np.full(height * width, np.inf, np.float32)
    face = np.full(height * width, -1, np.int32)
    low = np.ceil(corners[:, :, :2].min(axis=1) - 0.5)
    high = np.floor(corners[:, :, :2].max(axis=1) - 0.5)
    low = np.maximum(low, 0).astype(int)
    high = np.minimum(high, (width - 1, height - 1)).astype(int)
    a, b, c = (corners[:, k] for k in range(3))
    area = (b[:, 0] - a[:, 0]) * (c[:, 1] - a[:, 1]) - (c[:, 0] - a[:, 0]) * (b[:, 1] - a[:, 1])
    there = (
        np.all(high >= low, axis=1) & (np.abs(area) > 1e-9) & np.isfinite(corners).all(axis=(1, 2))
    )
    small = there & np.all(high - low < _SMALL, axis=1)
    chosen = np.flatnonzero(small)
    for i in range(0, len(chosen), _AT_ONCE):
        _fill_small(corners, chosen[i : i + _AT_ONCE], area, low, high, (depth, face), width)
    for n in np.flatnonzero(there & ~small):
        _fill(corners[n], int(n), float(area[n]), (low[n], high[n]), (depth, face), width)
    return Seen(face=face.reshape(height, width), depth=depth.reshape(height, width))


def _fill_small(
    corners: NDArray[np.float64],
    chosen: NDArray[np.int64],
    area: NDArray[np.float64],
    low: NDArray[np.int64],
    high: NDArray[np.int64],
    into: tuple[Real, Whole],
    width: int,
) -> None:
    depth, face = into
    k = np.arange(_SMALL)
    columns = low[chosen, 0][:, None, None] + k[None, None, :]
    rows = low[chosen, 1][:, None, None] + k[None, :, None]
    within = (columns <= high[chosen, 0][:, None, None]) & (rows <= high[chosen, 1][:, None, None])
    a, b, c = (corners[chosen, i][:, None, None] for i in range(3))
    x, y = columns + 0.5 - a[..., 0], rows + 0.5 - a[..., 1]
    whole = area[chosen][:, None, None]
    s = (x * (c[..., 1] - a[..., 1]) - y * (c[..., 0] - a[..., 0])) / whole
    t = (y * (b[..., 0] - a[..., 0]) - x * (b[..., 1] - a[..., 1])) / whole
    inside = within & (s >= 0) & (t >= 0) & (s + t <= 1)
    far = (a[..., 2] + s * (b[..., 2] - a[..., 2]) + t * (c[..., 2] - a[..., 2]))[inside]
    at = np.broadcast_to(rows * width + columns, inside.shape)[inside]
    who = np.broadcast_to(chosen[:, None, None], inside.shape)[inside]
    # the farthest first, so that the nearest is written last
    order = np.lexsort((who, -far))
    at, far, who = at[order], far[order].astype(np.float32), who[order]
    nearer = far < depth[at]
    depth[at[nearer]], face[at[nearer]] = far[nearer], who[nearer]


def _fill(
    corners: NDArray[np.float64],
    n: int,
    area: float,
    box: tuple[NDArray[np.int64], NDArray[np.int64]],
    into: tuple[Real, Whole],
    width: int,
) -> None:
    depth, face = (v.reshape(-1, width) for v in into)
    (i0, j0), (i1, j1) = box
    a, b, c = corners
    x = (np.arange(i0, i1 + 1) + 0.5 - a[0])[None, :].astype(np.float32)
    y = (np.arange(j0, j1 + 1) + 0.5 - a[1])[:, None].astype(np.float32)
    s = x * np.float32((c[1] - a[1]) / area) - y * np.float32((c[0] - a[0]) / area)
    t = y * np.float32((b[0] - a[0]) / area) - x * np.float32((b[1] - a[1]) / area)
    far = np.float32(a[2]) + s * np.float32(b[2] - a[2]) + t * np.float32(c[2] - a[2])
    part = depth[j0 : j1 + 1, i0 : i1 + 1]
    wins = (s >= 0) & (t >= 0) & (s + t <= 1) & (far < part)
    part[wins] = far[wins]
    face[j0 : j1 + 1, i0 : i1 + 1][wins] = n
