"""Quick pictures, where light cannot be traced: each point shaded once, as the client's page does it.

The window's light with its pattern, soft shadows of it and of the sky, the room mirrored in
glass and sheen, the page's tone. Light does not bounce. It needs nothing but numpy, so there
is a picture on every machine.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.finishes import VeiledGlass
from parametric.catalog.room import (
    HOURS,
    LAMP,
    LAMP_COLOUR,
    PATTERN,
    Hour,
    HourName,
    Triple,
)
from parametric.writers.developed import Levels, Light, developed
from parametric.writers.grain import linear
from parametric.writers.picture_scene import Camera, PictureScene, Shot
from parametric.writers.picture_shapes import Shape, Staged, staged
from parametric.writers.raster_faces import Real, nearest
from parametric.writers.raster_light import (
    Around,
    Shade,
    evenly,
    lamp_pool,
    sheen_of,
    window_pattern,
)
from parametric.writers.room_seen import room_seen

_FINER = 2
"""Points across a pixel."""
_NEAR = 0.05
_KEYS, _SKIES = 6, 8
_SHADE = 900
"""Points across a picture of what stands in a light's way."""
_LIFT = 0.006
_CASTS = 0.06
"""A face smaller than this, m, throws no shadow of its own."""
_STRIP = 60
_VEIL = 0.85
_ADAPTED: dict[HourName, Triple] = {"day": (0.93, 0.98, 1.06), "evening": (1.0, 1.0, 1.0)}
"""What light is taken by so that a white card before the doors reads as it does on the page."""

_Lights = list[tuple[NDArray[np.float64], Shade]]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Faces:
    """All faces of a picture: corners and slopes (n x 3 x 3), places in pictures, whose they are."""

    corners: NDArray[np.float64]
    normals: NDArray[np.float64]
    at: NDArray[np.float64]
    shape: NDArray[np.int32]


def rastered(
    scene: PictureScene,
    glb: bytes,
    *,
    size: tuple[int, int],
    progress: Callable[[Shot], None],
) -> Iterator[tuple[Shot, Levels]]:
    """Every picture of the set in turn; arguments as for `traced`."""
    ready: Staged | None = None
    for shot in scene.shots:
        progress(shot)
        ready = ready or staged(scene, glb)
        hour = HOURS[shot.hour]
        light = _Picture(ready, shot, size).light() * np.array(_ADAPTED[shot.hour], np.float32)
        yield shot, developed(light, exposure=hour.exposure, balance=hour.balance)


class _Picture:
    """One picture being shaded."""

    def __init__(self, ready: Staged, shot: Shot, size: tuple[int, int]) -> None:
        self.shot, self.scene, self.size = shot, ready.scene, size
        self.hour: Hour = HOURS[shot.hour]
        self.evening = shot.hour == "evening"
        shapes = tuple(ready.shapes(shot))
        self.solid = tuple(shape for shape in shapes if not shape.glass)
        self.panes = tuple(shape for shape in shapes if shape.glass)
        self.faces = _faces(self.solid)
        self.around = Around(room_seen(shot.hour))
        self.middle = np.array((ready.scene.middle, PATTERN.middle, 0.0))
        self.key, self.sky = self._shades()

    def light(self) -> Light:
        """The light that reaches every pixel."""
        size = (self.size[0] * _FINER, self.size[1] * _FINER)
        height = size[1]
        lens = self.shot.camera
        seen = nearest(_projected(self.faces.corners, lens, size), size)
        panes = _faces(self.panes).corners if self.panes else np.zeros((0, 3, 3))
        glass = nearest(_projected(panes, lens, size), size)
        planes = np.append(_planes(self.faces), -1)
        rows = []
        for j in range(0, height, _STRIP * _FINER):
            part = slice(j, min(j + _STRIP * _FINER, height))
            face, depth, before = seen.face[part], seen.depth[part], glass.depth[part]
            before = np.where(before < depth, before, np.inf)
            wanted, weight = _worth_shading(planes[face], np.isinf(before))
            row, column = np.nonzero(wanted)
            at = _places(lens, depth[wanted], (row + j, column), size)
            colour = self._shaded(face[wanted], at)
            pane = np.flatnonzero(np.isfinite(before[wanted]))
            where = _places(lens, before[wanted][pane], (row[pane] + j, column[pane]), size)
            colour[pane] = self._glazed(colour[pane], where)
            pixel = (row // _FINER) * self.size[0] + column // _FINER
            count = (part.stop - part.start) // _FINER * self.size[0]
            light = [
                np.bincount(pixel, weights=colour[:, k] * weight[wanted], minlength=count)
                for k in range(3)
            ]
            rows.append(np.stack(light, axis=-1).reshape(-1, self.size[0], 3))
        return np.concatenate(rows).astype(np.float32)

    def _shaded(self, face: NDArray[np.int32], at: Real) -> Real:
        """What is seen of solid things at points of them."""
        out = np.zeros_like(at)
        hit = np.flatnonzero(face >= 0)
        if not len(hit):
            return out
        own, at = face[hit], at[hit]
        normal, place = self._laid(own, at)
        base, rough, metal = self._surfaces(self.faces.shape[own], place)
        eye = np.array(self.shot.camera.eye, np.float32)
        view = eye - at
        view /= np.linalg.norm(view, axis=1, keepdims=True)
        normal = np.where(np.sum(normal * view, axis=1, keepdims=True) < 0, -normal, normal)
        far = at[:, 2] < -self.scene.wall + 0.001
        light = self._far_light(at, normal)
        front = np.flatnonzero(~far)
        light[front] = self._near_light(at[front], normal[front])
        facing = np.clip(np.sum(normal * view, axis=1), 0.02, 1)
        f0 = 0.04 + (base - 0.04) * metal[:, None]
        a, b = sheen_of(rough, facing)
        mirrored = 2 * facing[:, None] * normal - view
        shine = self.around.seen(mirrored, rough) * (f0 * a[:, None] + b[:, None])
        shine *= np.where(far, 0.25, 0.85)[:, None]
        out[hit] = base * (1 - metal[:, None] * 0.74) * light + shine
        out[hit] += self._glow(self.faces.shape[own], place)
        return out

    def _laid(self, own: NDArray[np.int32], at: Real) -> tuple[Real, Real]:
        """Slopes and places in pictures at points of faces, from those of the faces' corners."""
        a, b, c = (self.faces.corners[own, k] for k in range(3))
        e, f, p = b - a, c - a, at - a
        ee, ef, ff = (np.sum(u * v, axis=1) for u, v in ((e, e), (e, f), (f, f)))
        pe, pf = np.sum(p * e, axis=1), np.sum(p * f, axis=1)
        whole = np.maximum(ee * ff - ef * ef, 1e-18)
        s, t = (ff * pe - ef * pf) / whole, (ee * pf - ef * pe) / whole
        share = np.stack([1 - s - t, s, t], axis=1)
        normal = np.einsum("nk,nkc->nc", share, self.faces.normals[own])
        normal /= np.maximum(np.linalg.norm(normal, axis=1, keepdims=True), 1e-9)
        place = np.einsum("nk,nkc->nc", share, self.faces.at[own])
        return normal.astype(np.float32), place.astype(np.float32)

    def _surfaces(self, shape: NDArray[np.int32], place: Real) -> tuple[Real, Real, Real]:
        base = np.empty((len(shape), 3), np.float32)
        rough, metal = np.empty(len(shape), np.float32), np.empty(len(shape), np.float32)
        for n in np.unique(shape):
            own, here = self.solid[n], np.flatnonzero(shape == n)
            metal[here] = own.metal
            base[here] = (
                own.colour if own.colour.ndim == 1 else _looked_up(own, own.colour, place[here])
            )
            rough[here] = (
                own.rough
                if isinstance(own.rough, float)
                else _looked_up(own, own.rough[..., None], place[here])[:, 0]
            )
        return base, np.clip(rough, 0.05, 1), metal

    def _glow(self, shape: NDArray[np.int32], place: Real) -> Real:
        """Light of a shape's own."""
        light = np.zeros((len(shape), 3), np.float32)
        for n, own in enumerate(self.solid):
            if own.glow is not None:
                here = np.flatnonzero(shape == n)
                light[here] = _looked_up(own, own.glow, place[here])
        return light

    def _near_light(self, at: Real, normal: Real) -> Real:
        """Light that falls on this side of the wall: window or lamp, sky, and the room about."""
        lifted = at + normal * np.float32(_LIFT)
        open_sky = np.mean([shade.touches(lifted) for _, shade in self.sky], axis=0)
        light = self.around.diffuse(normal) * (0.30 + 0.70 * open_sky)[:, None]
        colour = np.array(linear(self.hour.key_colour), np.float32)
        colour = colour * np.float32(self.hour.key_power * self._strength() / len(self.key))
        for towards, shade in self.key:
            falls = np.maximum(normal @ towards.astype(np.float32), 0)
            lit = np.flatnonzero(falls > 0)
            here = at[lit]
            thrown = (lamp_pool if self.evening else window_pattern)(here, towards, self.middle)
            light[lit] += colour * (falls[lit] * shade.reached(lifted[lit]) * thrown)[:, None]
        lit_by: Real = light
        return lit_by

    def _strength(self) -> float:
        """Light that rakes is as strong on the wall's face as light that does not."""
        key = self.hour.key
        raking = self.shot.key or key
        return (key[2] / math.hypot(*key)) / (raking[2] / math.hypot(*raking))

    def _far_light(self, at: Real, normal: Real) -> Real:
        """Light in the other room: a window out of sight to the left by day, a lamp by evening."""
        x, y, z = LAMP if self.evening else (-2.4, 1.6, -1.7)
        towards = np.array((self.scene.middle + x, y, z), np.float32) - at
        near = np.sum(towards * towards, axis=1)
        slope = np.sum(normal * towards, axis=1) / np.sqrt(near)
        if self.evening:
            falls = (0.25 + 0.75 * np.maximum(slope, 0)) / (near + 0.55)
            lit: Real = np.array(LAMP_COLOUR, np.float32) * (0.85 * falls + 0.05)[:, None]
            return lit
        falls = (0.35 + 0.65 * np.maximum(slope, 0)) * 3.0 / (near + 3.0)
        day: Real = np.array((1.0, 0.99, 0.96), np.float32) * (1.15 * falls + 0.20)[:, None]
        return day

    def _glazed(self, colour: Real, pane: Real) -> Real:
        """What a pane mirrors, laid over what is seen through it."""
        kind = self.scene.glass
        view = np.array(self.shot.camera.eye, np.float32) - pane
        view /= np.linalg.norm(view, axis=1, keepdims=True)
        facing = np.abs(view[:, 2])
        mirror = np.clip(0.08 + 0.92 * (1 - facing) ** 5, 0, 1)[:, None]
        away = view * np.array((-1, -1, 1), np.float32)
        seen = self.around.seen(away, np.full(len(pane), 0.03, np.float32))
        body, tint = 0.0, np.zeros(3, np.float32)
        if kind is not None:
            front = self.around.diffuse(np.array([[0.0, 0.0, 1.0]], np.float32))
            body, tint = kind.body, np.array(linear(kind.colour), np.float32) * front
        if isinstance(kind, VeiledGlass):
            # what is behind a veil cannot be spread here: it is hidden instead
            body = max(body, _VEIL * kind.blur)
        both: Real = (colour * (1 - body) + tint * body) * (1 - mirror) + seen * mirror
        return both

    def _shades(self) -> tuple[_Lights, _Lights]:
        """What stands in the way of the key light and of the sky, from several places of each."""
        corners = self.faces.corners
        large = np.linalg.norm(corners.max(axis=1) - corners.min(axis=1), axis=1) > _CASTS
        casts = corners[large]
        key = np.array(self.shot.key or self.hour.key)
        keys, skies = [], []
        for i in range(_KEYS):
            a, b = evenly(i)
            wide, turn = math.sqrt(a) * self.hour.disc, 2 * math.pi * b
            moved = key + wide * np.array(
                (0.8 * math.cos(turn), math.sin(turn), 0.6 * math.cos(turn))
            )
            towards = moved / np.linalg.norm(moved)
            keys.append((towards, Shade(casts, towards, self.middle, _SHADE)))
        for i in range(_SKIES):
            a, b = evenly(i)
            out, turn = math.sqrt(a), 2 * math.pi * b
            up = math.sqrt(1 - a)
            lobe = np.array(
                (
                    out * math.cos(turn),
                    0.6 * up + 0.8 * out * math.sin(turn),
                    0.8 * up - 0.6 * out * math.sin(turn),
                )
            )
            lobe[1], lobe[2] = max(lobe[1], 0.06), max(lobe[2], 0.05)
            towards = lobe / np.linalg.norm(lobe)
            skies.append((towards, Shade(casts, towards, self.middle, _SHADE // 2)))
        return keys, skies


def _faces(shapes: tuple[Shape, ...]) -> _Faces:
    corners, normals, at, own = [], [], [], []
    for n, shape in enumerate(shapes):
        index = shape.triangles
        laid = shape.corners[index]
        corners.append(laid)
        if shape.normals is None:
            flat = np.cross(laid[:, 1] - laid[:, 0], laid[:, 2] - laid[:, 0])
            flat /= np.maximum(np.linalg.norm(flat, axis=1, keepdims=True), 1e-12)
            normals.append(np.repeat(flat[:, None], 3, axis=1))
        else:
            normals.append(shape.normals[index])
        at.append(np.zeros((len(index), 3, 2)) if shape.at is None else shape.at[index])
        own.append(np.full(len(index), n, np.int32))
    return _Faces(
        corners=np.concatenate(corners),
        normals=np.concatenate(normals),
        at=np.concatenate(at),
        shape=np.concatenate(own),
    )


def _planes(faces: _Faces) -> NDArray[np.int32]:
    """A number that faces of one shape share when they face one way."""
    a, b, c = (faces.corners[:, k] for k in range(3))
    flat = np.cross(b - a, c - a)
    flat /= np.maximum(np.linalg.norm(flat, axis=1, keepdims=True), 1e-12)
    key = np.column_stack([faces.shape, np.round(flat * 50)])
    return np.unique(key, axis=0, return_inverse=True)[1].reshape(-1).astype(np.int32)


def _worth_shading(
    plane: NDArray[np.int32], bare: NDArray[np.bool_]
) -> tuple[NDArray[np.bool_], Real]:
    """Which points are shaded, and what each counts: one of a pixel that shows one plane, else all."""
    all_of = (_FINER, _FINER)
    blocks = [
        v.reshape(v.shape[0] // _FINER, _FINER, v.shape[1] // _FINER, _FINER) for v in (plane, bare)
    ]
    one = np.logical_and(*(np.all(v == v[:, :1, :, :1], axis=(1, 3)) for v in blocks))
    first = np.zeros(all_of, bool)
    first[0, 0] = True
    wanted = np.kron(one, first).astype(bool) | np.kron(~one, np.ones(all_of, bool)).astype(bool)
    weight = np.kron(np.where(one, 1.0, 1.0 / _FINER**2), np.ones(all_of)).astype(np.float32)
    return wanted, weight


def _projected(
    corners: NDArray[np.float64], lens: Camera, size: tuple[int, int]
) -> NDArray[np.float64]:
    """Columns, rows and depths; a face that comes too near the eye, or behind it, is not seen."""
    width, height = size
    x, ahead, y = _from_eye(corners, lens)
    with np.errstate(divide="ignore", invalid="ignore"):
        slope = ahead * lens.half
        column = (0.5 + x / (2 * slope * width / height)) * width
        row = (0.5 - (y / slope - lens.shift) / 2) * height
        laid = np.stack([column, row, -1 / ahead], axis=-1)
    near = (ahead < _NEAR).any(axis=1)
    laid[near] = (-1.0, -1.0, np.inf)
    return laid


def _from_eye(
    points: NDArray[np.float64], lens: Camera
) -> tuple[NDArray[np.float64], NDArray[np.float64], NDArray[np.float64]]:
    """Across, ahead and up from the eye."""
    p = points - np.array(lens.eye)
    sin, cos = math.sin(lens.turn), math.cos(lens.turn)
    return (
        p[..., 0] * cos - p[..., 2] * sin,
        -(p[..., 0] * sin + p[..., 2] * cos),
        p[..., 1],
    )


def _places(
    lens: Camera,
    depth: Real,
    points: tuple[NDArray[np.int64], NDArray[np.int64]],
    size: tuple[int, int],
) -> Real:
    """Where in the scene points of the picture lie, by their rows and columns; n x 3."""
    width, height = size
    row, column = points
    with np.errstate(divide="ignore"):
        ahead = np.where(np.isinf(depth), np.float32(1), -1 / depth).astype(np.float32)
    aspect = width / height
    across = ahead * (((column + 0.5) / width - 0.5) * (2 * lens.half * aspect)).astype(np.float32)
    up = ahead * (((0.5 - (row + 0.5) / height) * 2 + lens.shift) * lens.half).astype(np.float32)
    sin, cos = np.float32(math.sin(lens.turn)), np.float32(math.cos(lens.turn))
    eye = np.array(lens.eye, np.float32)
    return np.stack(
        [eye[0] + across * cos - ahead * sin, eye[1] + up, eye[2] - across * sin - ahead * cos],
        axis=-1,
    )


def _looked_up(shape: Shape, picture: Real, place: Real) -> Real:
    """What a picture shows at places of it, between its texels."""
    high, wide = picture.shape[:2]
    x, y = place[:, 0] * wide - np.float32(0.5), place[:, 1] * high - np.float32(0.5)
    i, j = np.floor(x).astype(int), np.floor(y).astype(int)
    s, t = (x - i)[:, None], (y - j)[:, None]
    columns, rows = (
        [(k + d) % n if shape.repeats else np.clip(k + d, 0, n - 1) for d in (0, 1)]
        for k, n in ((i, wide), (j, high))
    )
    low = picture[rows[0], columns[0]] * (1 - s) + picture[rows[0], columns[1]] * s
    top = picture[rows[1], columns[0]] * (1 - s) + picture[rows[1], columns[1]] * s
    shown: Real = (low * (1 - t) + top * t).astype(np.float32)
    return shown
