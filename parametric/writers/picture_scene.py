"""A job as it is pictured: what stands where, in what finish, in which light, seen from where.

The scene's frame is that of the model's file: metres, Y up, Z towards the viewer; x = 0 is
the left edge of the opening and z = 0 the wall's face.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.finishes import ClearTimber, Glass, Metal, Paint
from parametric.catalog.room import HourName, Triple

Flat = tuple[float, float]
Reals = NDArray[np.float64]


@dataclass(frozen=True, slots=True, kw_only=True)
class Camera:
    """An eye that looks level through a lens shifted up or down, so that uprights stay upright.

    `pivot` is the upright line (x, z) it stands round, `far` how far from it, `turn` how far
    round from straight in front (less than 0 to the left), `height` the eye's. `half` is half
    of what it takes in, as a slope; `centre` the height of the picture's middle at the pivot.
    """

    pivot: Flat
    turn: float
    far: float
    height: float
    centre: float
    half: float

    @property
    def eye(self) -> Triple:
        """Where the eye is."""
        x, z = self.pivot
        return (x + math.sin(self.turn) * self.far, self.height, z + math.cos(self.turn) * self.far)

    @property
    def target(self) -> Triple:
        """What it looks at, level."""
        return (self.pivot[0], self.height, self.pivot[1])

    @property
    def shift(self) -> float:
        """How far the lens is shifted up, as a part of half the picture's height."""
        return (self.centre - self.height) / (self.far * self.half)

    def seen(self, point: Triple, aspect: float) -> Flat:
        """Where a point is in the picture, 0 to 1 from its left and from its head."""
        x, y, z = (a - b for a, b in zip(point, self.eye, strict=True))
        ahead = -(x * math.sin(self.turn) + z * math.cos(self.turn))
        across = x * math.cos(self.turn) - z * math.sin(self.turn)
        slope = ahead * self.half
        return (0.5 + across / (2 * slope * aspect), 0.5 - (y / slope - self.shift) / 2)


@dataclass(frozen=True, slots=True, kw_only=True)
class Away:
    """How a group stands from where it is shut: turned about the scene's zero, then shifted, metres.

    `turn` is the matrix that turns a point, row by row; None where it only slid.
    """

    shift: Triple = (0.0, 0.0, 0.0)
    turn: tuple[Triple, Triple, Triple] | None = None

    def carried(self, points: Reals) -> Reals:
        """Points of the shut group where they are."""
        carried: Reals = self.faced(points) + np.array(self.shift)
        return carried

    def faced(self, directions: Reals) -> Reals:
        """Directions of the shut group as they point."""
        if self.turn is None:
            return directions
        turned: Reals = directions @ np.array(self.turn).T
        return turned


@dataclass(frozen=True, slots=True, kw_only=True)
class Shot:
    """One picture: where from, in which light, with what standing open.

    `moved` is how each group stands from where it is shut. `key` stands in for the hour's own
    key light where the light is to rake.
    """

    name: str
    caption: str
    camera: Camera
    hour: HourName
    moved: Mapping[str, Away] = field(default_factory=lambda: MappingProxyType({}))
    key: Triple | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class PictureScene:
    """All that pictures of a job need but its model. `glued` is the board's width by mark, mm.

    Each of `openings` runs from the foot of the left jamb up, over and down; `floor` from left
    to right, both (x, y) as surveyed. `brackets` are where they meet their track, `clear` the
    stretches that the skirting stays out of, one a door, `side` the doors' right edge when shut.
    `trims` are the pieces that stand round the openings, each an outline from the front, (x, y), and the z
    of its two faces. `niche` are the walls and the ceiling about cabinets, each by its corners, in the
    place of a wall with a room behind it; `face` is the z of the wall that it is in.
    """

    middle: float
    side: float
    wall: float
    openings: tuple[tuple[Flat, ...], ...]
    floor: tuple[Flat, ...]
    skirting: Flat
    clear: tuple[Flat, ...]
    brackets: tuple[Triple, ...]
    wood: Paint | ClearTimber
    glass: Glass | None
    metal: Metal | None
    glued: Mapping[str, float]
    shots: tuple[Shot, ...]
    trims: tuple[tuple[tuple[Flat, ...], float, float], ...] = ()
    niche: tuple[tuple[Triple, ...], ...] = ()
    face: float = 0.0
