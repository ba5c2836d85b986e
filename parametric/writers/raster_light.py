"""Light for quick pictures: what stands in its way, what the room mirrors, what a window throws."""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.room import PATTERN, POOL
from parametric.writers.developed import Light
from parametric.writers.raster_faces import Real, nearest

_REACH = 3.4
"""How far from the middle of the doors a light's shadows are worked out, m."""
_DIFFUSE = 0.62
"""How much of the light round about falls on things, for a picture in which it does not bounce."""


class Shade:
    """What a light meets first, seen from the light."""

    def __init__(
        self,
        corners: NDArray[np.float64],
        towards: NDArray[np.float64],
        middle: NDArray[np.float64],
        points: int,
    ) -> None:
        across = np.cross((0.0, 1.0, 0.0), towards)
        across /= np.linalg.norm(across)
        frame = np.stack([across, np.cross(towards, across), -towards])
        frame[:2] *= points / (2 * _REACH)
        self.frame = frame.astype(np.float32)
        self.start = (frame @ -middle + np.array((points / 2, points / 2, 0))).astype(np.float32)
        self.points = points
        depth = nearest(corners @ frame.T + self.start, (points, points)).depth
        depth[:, [0, -1]] = depth[[0, -1]] = np.inf
        # one point of it covers a slope's whole step, which must not shade itself
        self.depth = depth.ravel() + np.float32(1.6 * 2 * _REACH / points)

    def reached(self, at: Real) -> Real:
        """1 where the light gets to, 0 where something is in its way, between at an edge."""
        laid = at @ self.frame.T + self.start
        corner = np.clip(np.floor(laid[:, :2] - np.float32(0.5)), 0, self.points - 2)
        s, t = np.clip(laid[:, :2] - np.float32(0.5) - corner, 0, 1).T
        i = corner.astype(np.int32) @ np.array((1, self.points), np.int32)
        z, depth = laid[:, 2], self.depth
        low = (z <= depth[i]) * (1 - s) + (z <= depth[i + 1]) * s
        top = (z <= depth[i + self.points]) * (1 - s) + (z <= depth[i + self.points + 1]) * s
        free: Real = (low * (1 - t) + top * t).astype(np.float32)
        return free

    def touches(self, at: Real) -> Real:
        """1 where the light gets to, else 0."""
        laid = at @ self.frame.T + self.start
        point = np.clip(laid[:, :2], 0, self.points - 1).astype(np.int32)
        met = self.depth[point @ np.array((1, self.points), np.int32)]
        free: Real = (laid[:, 2] <= met).astype(np.float32)
        return free


class Around:
    """The room round about, sharp and blurred, and the light that it gives to a slope."""

    def __init__(self, image: Light) -> None:
        self.levels: list[Real] = [image]
        for _ in range(5):
            image = self.levels[-1].astype(np.float32)
            for _ in range(2):
                sides = np.roll(image, 1, axis=1) + np.roll(image, -1, axis=1)
                image = ((sides + 2 * image) / 4).astype(np.float32)
                padded = np.pad(image, ((1, 1), (0, 0), (0, 0)), mode="edge")
                image = ((padded[:-2] + 2 * padded[1:-1] + padded[2:]) / 4).astype(np.float32)
            smaller = image[::2, ::2] if image.shape[0] > 16 else image
            self.levels.append(smaller.astype(np.float32))
        small = self.levels[-1]
        high, wide = small.shape[:2]
        directions, size = _directions(high, wide)
        self.six = np.array(
            [
                [
                    np.sum(
                        np.maximum(directions[..., axis] * sign, 0)[..., None]
                        * small
                        * size[..., None],
                        axis=(0, 1),
                    )
                    / math.pi
                    for sign in (1, -1)
                ]
                for axis in range(3)
            ],
            np.float32,
        )

    def diffuse(self, normal: Real) -> Real:
        """Light from everywhere that falls on a slope, before anything stands in its way."""
        square = normal * normal
        light = np.zeros_like(normal)
        for axis in range(3):
            chosen = np.where(normal[:, axis : axis + 1] > 0, self.six[axis, 0], self.six[axis, 1])
            light += square[:, axis : axis + 1] * chosen
        return light * np.float32(_DIFFUSE)

    def seen(self, towards: Real, rough: Real) -> Real:
        """What is mirrored, blurred by roughness."""
        round_ = np.arctan2(towards[:, 0], -towards[:, 2]) / (2 * math.pi) % 1.0
        down = np.arccos(np.clip(towards[:, 1], -1, 1)) / math.pi
        out = np.empty_like(towards)
        level = np.clip(np.round(rough * 7), 0, len(self.levels) - 1).astype(int)
        for n, image in enumerate(self.levels):
            here = np.flatnonzero(level == n)
            if len(here):
                out[here] = _between_texels(image, round_[here], down[here])
        return out


def _between_texels(image: Real, round_: NDArray[np.float64], down: NDArray[np.float64]) -> Real:
    """What an image round about shows at places of it, from the four texels about each."""
    high, wide = image.shape[:2]
    x, y = round_ * wide - 0.5, np.clip(down * high - 0.5, 0, high - 1)
    i, j = np.floor(x).astype(np.int32), np.floor(y).astype(np.int32)
    s, t = (x - i)[:, None], (y - j)[:, None]
    left, right, below = i % wide, (i + 1) % wide, np.minimum(j + 1, high - 1)
    top = image[j, left] * (1 - s) + image[j, right] * s
    foot = image[below, left] * (1 - s) + image[below, right] * s
    shown: Real = (top * (1 - t) + foot * t).astype(np.float32)
    return shown


def _directions(high: int, wide: int) -> tuple[NDArray[np.float64], NDArray[np.float64]]:
    round_, down = np.meshgrid(
        (np.arange(wide) + 0.5) / wide * 2 * math.pi, (np.arange(high) + 0.5) / high * math.pi
    )
    directions = np.stack(
        [np.sin(round_) * np.sin(down), np.cos(down), -np.cos(round_) * np.sin(down)], axis=-1
    )
    return directions, np.sin(down) * (2 * math.pi / wide) * (math.pi / high)


def sheen_of(rough: Real, facing: Real) -> tuple[Real, Real]:
    """Karis's fit of how much a rough surface mirrors (Physically Based Shading on Mobile, 2014)."""
    x, y, z, w = (
        rough * np.float32(a) + np.float32(b)
        for a, b in ((-1, 1), (-0.0275, 0.0425), (-0.572, 1.04), (0.022, -0.04))
    )
    e = np.minimum(x * x, np.exp2(np.float32(-9.28) * facing)) * x + y
    return np.float32(-1.04) * e + z, np.float32(1.04) * e + w


def window_pattern(at: Real, towards: NDArray[np.float64], middle: NDArray[np.float64]) -> Real:
    """The light of a window with bars, thrown along its own way."""
    p = PATTERN
    a, b = _along_light(at, towards, middle)
    w = _between(a, *p.across, p.across_soft) * _between(b, *p.up, p.up_soft)
    for v, (start, end, share) in ((a, p.upright_bar), (b, p.level_bar)):
        w *= 1 - np.float32(share) * _between(v, start, end, p.bar_soft)
    thrown: Real = np.float32(p.least) + np.float32(p.most - p.least) * w
    return thrown


def lamp_pool(at: Real, towards: NDArray[np.float64], middle: NDArray[np.float64]) -> Real:
    """The pool of light that the lamp beside the viewer throws."""
    off = np.stack(_along_light(at, towards, middle), axis=1) - np.array(POOL.middle)
    spread = np.exp(-(off * off) @ np.array(POOL.fall))
    thrown: Real = (POOL.least + POOL.most * spread).astype(np.float32)
    return thrown


def _along_light(
    at: Real, towards: NDArray[np.float64], middle: NDArray[np.float64]
) -> tuple[Real, Real]:
    """How far across and up from the middle, seen along the light's own way."""
    across = np.cross((0.0, 1.0, 0.0), towards)
    across /= np.linalg.norm(across)
    up = np.cross(towards, across)
    off = at - middle.astype(np.float32)
    return off @ across.astype(np.float32), off @ up.astype(np.float32)


def _between(v: Real, low: float, high: float, soft: float) -> Real:
    return _ramp(v, low - soft, low + soft) * (1 - _ramp(v, high - soft, high + soft))


def _ramp(v: Real, low: float, high: float) -> Real:
    t = np.clip((v - np.float32(low)) / np.float32(high - low), 0, 1)
    out: Real = t * t * (3 - 2 * t)
    return out


def evenly(i: int) -> tuple[float, float]:
    """Points that fill a square evenly (the generalised golden ratio in two dimensions)."""
    return (0.5 + i * 0.7548776662466927) % 1, (0.5 + i * 0.5698402909980532) % 1
