"""What the room shows in every direction, as one image round about: what glass and metal mirror."""

from __future__ import annotations

import math

import numpy as np

from parametric.catalog.room import MIRRORED, PATTERN, HourName
from parametric.writers.developed import Light

_ROUND = (512, 256)


def room_seen(hour: HourName) -> Light:
    """What the room shows in every direction, as an image round about: the page's mirrored room."""
    m = MIRRORED
    n = int(hour == "evening")
    wide, high = _ROUND
    round_, down = np.meshgrid(
        (np.arange(wide) + 0.5) / wide * 2 * math.pi, (np.arange(high) + 0.5) / high * math.pi
    )
    # the image begins and ends at the doors' own wall; its middle is behind whoever looks
    d = np.stack(
        [np.sin(round_) * np.sin(down), np.cos(down), -np.cos(round_) * np.sin(down)], axis=-1
    )
    eye = np.array([0.0, PATTERN.middle, 0.3])
    low, top = np.array(m.low), np.array(m.high)
    with np.errstate(divide="ignore"):
        far = np.maximum((low - eye) / d, (top - eye) / d)
    hit = eye + d * np.min(far, axis=-1, keepdims=True)
    x, y, z = (hit[..., i] for i in range(3))
    near = 0.02
    light = np.empty((high, wide, 3), np.float32)
    light[:] = m.walls[n]
    light[y > top[1] - near] = m.ceiling[n]
    light[y < low[1] + near] = m.floor[n]
    (a, b), (c, e) = m.left_windows
    upright = (y > m.left_sill_head[0]) & (y < m.left_sill_head[1])
    light[(x < low[0] + near) & upright & (((z > a) & (z < b)) | ((z > c) & (z < e)))] = m.left_sky[
        n
    ]
    a, b = m.behind_windows
    upright = (y > m.behind_sill_head[0]) & (y < m.behind_sill_head[1])
    light[(z > top[2] - near) & upright & (np.abs(x) > a) & (np.abs(x) < b)] = m.behind_sky[n]
    return light
