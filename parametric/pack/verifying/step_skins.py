"""A curved face's share of a body's volume, from its loops alone: cylinders, cones and tori.

Each is drawn by an angle u about its axis and a way v along or round it. The integral over the
face of anything that depends on u and v is, by Green's theorem, the one along its loops of that
thing summed up in v, times how far the loop turns; upper and lower edges, and the loops of a
hollow face, come with the signs they need.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from parametric.pack.verifying.dxf_tags import UnreadableError
from parametric.pack.verifying.step_file import StepFile, Typed, axes

Floats = NDArray[np.float64]

_NODES, _WEIGHTS = np.polynomial.legendre.leggauss(8)
_OFF = 1e-3
"""How far an edge may lie off its own face, mm."""


@dataclass(frozen=True, slots=True)
class _Skin:
    """A surface about an axis: how far out and how far up it is at v, and how these grow."""

    kind: str
    origin: Floats
    x: Floats
    y: Floats
    z: Floats
    radius: float
    other: float
    """The slope of a cone, the radius of a torus' own round."""

    def out(self, v: Floats) -> Floats:
        if self.kind == "TOROIDAL_SURFACE":
            return np.asarray(self.radius + self.other * np.cos(v))
        return np.asarray(self.radius + self.other * v)

    def up(self, v: Floats) -> Floats:
        return np.asarray(self.other * np.sin(v)) if self.kind == "TOROIDAL_SURFACE" else v

    def grows(self, v: Floats) -> tuple[Floats, Floats]:
        """How much farther out and up it is, a step on in v."""
        if self.kind == "TOROIDAL_SURFACE":
            return np.asarray(-self.other * np.sin(v)), np.asarray(self.other * np.cos(v))
        return np.full_like(v, self.other), np.ones_like(v)


def curved_share(file: StepFile, surface: Typed, loops: Sequence[Floats]) -> Floats:
    """A face's share of the volume and of its moments in x, y and z.

    Args:
        file: the file.
        surface: the face's.
        loops: the points of each loop in the order they are walked, the wood on the left.

    Raises:
        UnreadableError: a surface of another kind, or an edge that is not on it.
    """
    skin = _skin(file, surface)
    share = np.zeros(4)
    for points in loops:
        u, v = _placed(skin, np.vstack([points, points[:1]]))
        summed = _summed(skin, u, v)
        share -= ((summed[1:] + summed[:-1]) / 2 * np.diff(u)[:, None]).sum(axis=0)
    return share


def _skin(file: StepFile, surface: Typed) -> _Skin:
    match surface.kind:
        case "CYLINDRICAL_SURFACE":
            other = 0.0
        case "CONICAL_SURFACE":
            other = math.tan(float(str(surface.values[3])))
        case "TOROIDAL_SURFACE":
            other = float(str(surface.values[3]))
        case _:
            raise UnreadableError(f"a face of kind {surface.kind}, which cannot be measured")
    place = axes(file, surface.values[1])
    origin, z, x = (np.array(v, dtype=float) for v in (place.origin, place.z, place.x))
    return _Skin(
        kind=surface.kind,
        origin=origin,
        x=x,
        y=np.cross(z, x),
        z=z,
        radius=float(str(surface.values[2])),
        other=other,
    )


def _placed(skin: _Skin, points: Floats) -> tuple[Floats, Floats]:
    """Where points lie on a surface, without a jump from one to the next."""
    out = points - skin.origin
    height, across, along = out @ skin.z, out @ skin.x, out @ skin.y
    u = np.unwrap(np.arctan2(along, across))
    far = np.hypot(across, along)
    v = height
    if skin.kind == "TOROIDAL_SURFACE":
        v = np.unwrap(np.arctan2(height, far - skin.radius))
    off = np.hypot(far - skin.out(v), height - skin.up(v)).max()
    if off > _OFF:
        raise UnreadableError(f"an edge lies {off:.4f} off its own face")
    return u, v


def _summed(skin: _Skin, u: Floats, v: Floats) -> Floats:
    """What is summed up from v = 0: position . normal / 3, and each x squared . normal / 2."""
    radial = np.outer(np.cos(u), skin.x) + np.outer(np.sin(u), skin.y)
    total = np.zeros((len(u), 4))
    for node, weight in zip(_NODES, _WEIGHTS, strict=True):
        at = v * (1 + node) / 2
        out, (more_out, more_up) = skin.out(at), skin.grows(at)
        position = skin.origin + out[:, None] * radial + np.outer(skin.up(at), skin.z)
        normal = out[:, None] * (more_up[:, None] * radial - np.outer(more_out, skin.z))
        part = (weight * v / 2)[:, None]
        total[:, :1] += part * (position * normal).sum(axis=1, keepdims=True) / 3
        total[:, 1:] += part * position**2 * normal / 2
    return total
