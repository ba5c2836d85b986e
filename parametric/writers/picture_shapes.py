"""Everything that stands in a picture as shapes with a surface each, however they are drawn."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.room import ROOM, Surface
from parametric.writers.grain import Numbers, linear
from parametric.writers.picture_model import Piece, Points, read_pieces
from parametric.writers.picture_room import Floor, Thing, floor, lamp_shade, lamp_stand, things
from parametric.writers.picture_scene import Away, PictureScene, Shot
from parametric.writers.wood_skin import Skin, skins


@dataclass(frozen=True, slots=True, kw_only=True)
class Shape:
    """A mesh in the scene and its surface; one without normals has flat faces.

    `colour` is linear, one for all of it or a picture with its rows from the foot up, laid
    by `at`; `rough` likewise. `repeats` lays the picture again and again. `glow` is a picture of
    light of its own, laid by `at`.
    """

    corners: Points
    triangles: NDArray[np.int64]
    normals: Points | None = None
    at: Points | None = None
    colour: Numbers
    rough: float | Numbers
    metal: float = 0.0
    glass: bool = False
    repeats: bool = False
    glow: Numbers | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class Staged:
    """What all pictures of a job share: the model read, its wood worked out, the room built."""

    scene: PictureScene
    pieces: tuple[Piece, ...]
    wood: tuple[Skin, ...]
    floor: Floor
    things: tuple[Thing, ...]

    def shapes(self, shot: Shot) -> Iterator[Shape]:
        """Everything as it stands in one picture, always in the same order."""
        for thing in self.things:
            yield plain(thing)
        yield Shape(
            corners=self.floor.corners,
            triangles=self.floor.triangles,
            at=self.floor.at,
            colour=self.floor.colour,
            rough=self.floor.rough,
            repeats=True,
        )
        for skin in self.wood:
            yield Shape(
                corners=_away(shot, skin.group).carried(skin.corners),
                triangles=skin.triangles,
                normals=_away(shot, skin.group).faced(skin.normals),
                at=skin.at,
                colour=skin.colour,
                rough=self.scene.wood.rough if skin.rough is None else skin.rough,
            )
        if shot.hour == "evening":
            yield plain(lamp_stand(self.scene))
            shade, at, glow = lamp_shade(self.scene)
            yield replace(plain(shade), at=at, glow=glow)
        for piece in self.pieces:
            if piece.look not in ("timber", "board"):
                yield self._other(piece, _away(shot, piece.group))

    def _other(self, piece: Piece, away: Away) -> Shape:
        shut = piece.placed(piece.corners)
        triangles = piece.triangles
        if piece.look == "glass":
            # one face of a pane, the one towards the room, or it would mirror twice
            a, b, c = (shut[triangles[:, k]] for k in range(3))
            flat = np.cross(b - a, c - a)
            triangles = triangles[flat[:, 2] > 0.7 * np.linalg.norm(flat, axis=1)]
        surface = self._surface(piece.look)
        return Shape(
            corners=away.carried(shut),
            triangles=triangles,
            normals=away.faced(piece.normals @ piece.turn.T),
            colour=np.array(linear(surface.colour), np.float32),
            rough=surface.rough,
            metal=surface.metal,
            glass=piece.look == "glass",
        )

    def _surface(self, look: str) -> Surface:
        glass, metal = self.scene.glass, self.scene.metal
        if look == "glass" and glass is not None:
            return Surface(colour=glass.colour, rough=0.05)
        if look == "pull" and metal is not None:
            return Surface(colour=metal.colour, rough=metal.rough, metal=metal.metal)
        return ROOM.tape if look == "tape" else ROOM.track


def staged(scene: PictureScene, glb: bytes, *, fine: float = 1.0) -> Staged:
    """Read the model, grow its wood and build the room; `fine` times finer than usual."""
    pieces = read_pieces(glb)
    return Staged(
        scene=scene,
        pieces=pieces,
        wood=skins(pieces, scene.wood, scene.glued, turning=_turning(scene), fine=fine),
        floor=floor(scene),
        things=things(scene, pieces),
    )


def _turning(scene: PictureScene) -> frozenset[str]:
    """The groups that show their backs and edges in some picture."""
    return frozenset(
        group for shot in scene.shots for group, away in shot.moved.items() if away.turn is not None
    )


def plain(thing: Thing) -> Shape:
    """A thing of the room as a shape."""
    return Shape(
        corners=thing.corners,
        triangles=thing.triangles,
        colour=np.array(linear(thing.surface.colour), np.float32),
        rough=thing.surface.rough,
        metal=thing.surface.metal,
    )


def _away(shot: Shot, group: str) -> Away:
    return shot.moved.get(group, Away())
