r"""Whether points lie inside a closed skin of triangles.

\     \
   ____\_____\____     a slanting line through a point, upwards: how often it leaves the skin,
|     \     \   |    less how often it enters it, is 1 from inside and 0 from outside
|      o     \  |
|_____________\_|    where the line all but meets an edge, or the point lies on the skin, the
o     whole angle under which the point sees it decides instead
"""

from __future__ import annotations

import math
from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

_SLANT = (0.3137, 0.1723)
"""How far the line goes across for each mm up: along no face and no edge of a board."""
_DOUBT = 1e-3
"""mm: nearer than this to an edge or to the skin, the line does not decide."""
_AT_ONCE = 4_000_000
"""Pairs of a point and a triangle looked at in one go: so much memory is used at the most."""
_ANGLES_AT_ONCE = 200_000


def inside(points: Floats, triangles: Floats) -> Sequence[bool]:
    """Whether each point lies inside.

    Args:
        points: one in a row, mm.
        triangles: the skin's, each with three corners, right way out.
    """
    found = np.zeros(len(points), dtype=bool)
    doubted = np.zeros(len(points), dtype=bool)
    flat, lean = _leaned(triangles), _leaned(points)
    low, high = flat.min(axis=1) - _DOUBT, flat.max(axis=1) + _DOUBT
    some = max(1, _AT_ONCE // len(triangles))
    for first in range(0, len(points), some):
        here = lean[first : first + some]
        over = (low[None, :, 0] <= here[:, None, 0]) & (here[:, None, 0] <= high[None, :, 0])
        over &= (low[None, :, 1] <= here[:, None, 1]) & (here[:, None, 1] <= high[None, :, 1])
        which, met = np.nonzero(over)
        turns, doubtful = _crossed(here[which], points[first + which, 2], flat[met], triangles[met])
        leaves = np.bincount(which, weights=turns, minlength=len(here))
        found[first : first + some] = leaves > 0.5
        doubted[first + which[doubtful]] = True
    unsure = np.flatnonzero(doubted)
    some = max(1, _ANGLES_AT_ONCE // len(triangles))
    for start in range(0, len(unsure), some):
        own = unsure[start : start + some]
        found[own] = _seen_all_round(points[own], triangles)
    return [bool(own) for own in found]


def _leaned(points: Floats) -> Floats:
    """Where the slanting lines through points stand: on the floor, x and y."""
    leaned: Floats = points[..., :2] - points[..., 2:] * np.array(_SLANT)
    return leaned


def _crossed(
    at: Floats, heights: Floats, flat: Floats, triangles: Floats
) -> tuple[Floats, NDArray[np.bool_]]:
    """Of pairs of a point and a triangle: 1 where its line leaves there, -1 where it enters, 0
    where it misses or passes below; and where that cannot be told.
    """
    edges = np.roll(flat, -1, axis=1) - flat
    to = at[:, None, :] - flat
    past = edges[..., 0] * to[..., 1] - edges[..., 1] * to[..., 0]
    area = past.sum(axis=1)
    way = np.where(area < 0, -1.0, 1.0)
    long = np.maximum(np.hypot(edges[..., 0], edges[..., 1]), 1e-12)
    within = (past / long).min(axis=1, where=way[:, None] > 0, initial=np.inf)
    within = np.minimum(within, (-past / long).min(axis=1, where=way[:, None] < 0, initial=np.inf))
    # the share of a corner is the triangle that the point makes with the edge across from it
    across = np.roll(past, -1, axis=1)
    safe = np.where(np.abs(area) > 1e-12, area, 1.0)
    up = (across * triangles[..., 2]).sum(axis=1) / safe - heights
    near = np.abs(within) <= _DOUBT
    doubtful = near | ((within > _DOUBT) & (np.abs(up) <= _DOUBT))
    return np.where((within > _DOUBT) & (up > 0), way, 0.0), doubtful


def _seen_all_round(points: Floats, triangles: Floats) -> NDArray[np.bool_]:
    """By the whole angle under which each point sees the skin.

    Source: van Oosterom and Strackee, The solid angle of a plane triangle, IEEE
    Transactions on Biomedical Engineering 30 (1983), from memory.
    """
    seen = triangles[None, :, :, :] - points[:, None, None, :]
    a, b, c = (seen[:, :, i] for i in range(3))
    la, lb, lc = (np.linalg.norm(v, axis=2) for v in (a, b, c))
    top = np.einsum("ijk,ijk->ij", a, np.cross(b, c))
    bottom = (
        la * lb * lc
        + np.einsum("ijk,ijk->ij", a, b) * lc
        + np.einsum("ijk,ijk->ij", b, c) * la
        + np.einsum("ijk,ijk->ij", c, a) * lb
    )
    angle = 2 * np.arctan2(top, bottom).sum(axis=1)
    return np.asarray(angle > 2 * math.pi)
