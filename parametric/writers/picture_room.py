"""The room that doors are pictured in, as plain shapes: nothing squared up, nothing that is sold."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.room import (
    GRAIN_OF_FLOOR,
    LAMP,
    LAMP_COLOUR,
    LAMP_HIGH,
    LAMP_SHADE,
    ROOM,
    Surface,
    Triple,
)
from parametric.writers.bookcase import Box, boards, books, dice
from parametric.writers.grain import Numbers, clear_wood
from parametric.writers.outline_triangles import triangles_of, twice_area
from parametric.writers.picture_model import Piece, Points
from parametric.writers.picture_scene import Flat, PictureScene

_BOX = np.array(
    [[0, 1, 3, 2], [4, 6, 7, 5], [0, 4, 5, 1], [2, 3, 7, 6], [0, 2, 6, 4], [1, 5, 7, 3]]
)
_QUAD = ((0, 1, 2), (0, 2, 3))
_PLANKS = 12
_RUN = 3600.0
"""Length of floor in the picture of it, mm."""
_STEPS = (3.0, 1.0)
_STRETCH = 0.5
"""Floor is laid in stretches, m, so that none reaches from behind the eye to before it."""
BESIDE_NICHE = 3.0
"""How much farther a room with cabinets goes on at either side, m: seen aslant it must not end."""
_DARK = 0.30
"""How dark the joints of a floor are: by eye, no source."""
_LINEN = 0.75
"""How much of the lamp's light its shade shows."""
_HOLDS = 0.034, 0.052, 0.006
"""Width, height and thickness of a track's bracket, m."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Thing:
    """A shape of flat faces, all of one surface."""

    corners: Points
    triangles: NDArray[np.int64]
    surface: Surface


@dataclass(frozen=True, slots=True, kw_only=True)
class Floor:
    """The floor at its own slope, with a picture of its boards that is laid again and again."""

    corners: Points
    triangles: NDArray[np.int64]
    at: Points
    colour: Numbers
    rough: Numbers


def things(scene: PictureScene, pieces: tuple[Piece, ...]) -> tuple[Thing, ...]:
    """Walls, skirting, bookcase, what stands round the opening and what holds the tracks; about
    cabinets the niche that they stand in.
    """
    if scene.niche:
        walls = (_flat(corners) for corners in scene.niche)
        return (*walls, *_skirtings(scene, floor_line(scene), _ends(scene)))
    room, middle = ROOM, scene.middle
    line = floor_line(scene)
    left, right = _ends(scene)
    back, top = -room.back, room.high
    far_top = top - room.far_lower
    low, behind = -2 * room.buried, -scene.wall
    far_left, far_right = middle - room.far_side, middle + room.far_side
    found = [
        _wall(scene),
        _sheet(
            [
                (far_left, far_top, back),
                (far_right, far_top, back),
                (far_right, far_top, behind),
                (far_left, far_top, behind),
            ],
            room.pale,
        ),
        *(
            _sheet(corners, room.far)
            for corners in (
                [
                    (far_left, low, back),
                    (far_right, low, back),
                    (far_right, top, back),
                    (far_left, top, back),
                ],
                [
                    (far_left, low, behind),
                    (far_left, low, back),
                    (far_left, top, back),
                    (far_left, top, behind),
                ],
                [
                    (far_right, low, back),
                    (far_right, low, behind),
                    (far_right, top, behind),
                    (far_right, top, back),
                ],
            )
        ),
        *_bookcase(middle, height_on(line, middle)),
        *_skirtings(scene, line, (left, right)),
        *(_trim(*trim) for trim in scene.trims),
    ]
    if held := _brackets(scene, pieces):
        found.append(held)
    return tuple(thing for thing in found if thing is not None)


def floor_line(scene: PictureScene) -> tuple[Flat, ...]:
    """The floor's line, carried on beyond the readings at the slope it ends with."""
    points = scene.floor if len(scene.floor) > 1 else ((0.0, 0.0), (1.0, 0.0))
    ends = []
    for (x0, y0), (x1, y1), x in (
        (points[0], points[1], _ends(scene)[0]),
        (points[-1], points[-2], _ends(scene)[1]),
    ):
        ends.append((x, y0 + (y1 - y0) / (x1 - x0) * (x - x0)))
    return (ends[0], *points, ends[1])


def height_on(line: tuple[Flat, ...], x: float) -> float:
    """The floor's height at a place across."""
    return float(np.interp(x, [p[0] for p in line], [p[1] for p in line]))


def floor(scene: PictureScene) -> Floor:
    """The floor of both rooms, its boards running to the wall."""
    line = floor_line(scene)
    if scene.niche:
        # before a low cabinet the eye is near: no stretch reaches from behind it to before it
        across = np.arange(line[0][0], line[-1][0], _STRETCH)
        places = sorted({*(float(x) for x in across), *(x for x, _ in line)})
        line = tuple((x, height_on(line, x)) for x in places)
    rows = np.arange(ROOM.front, -ROOM.back - 2 * _STRETCH, -_STRETCH)
    corners = np.array([(x, y, z) for x, y in line for z in rows], float)
    n = len(rows)
    triangles = []
    for i in range(len(line) - 1):
        for a in range(i * n, i * n + n - 1):
            triangles += [(a, a + n, a + 1), (a + 1, a + n, a + n + 1)]
    colour, rough = _boards()
    at = np.stack([corners[:, 0] / (ROOM.board * _PLANKS), -corners[:, 2] * 1000 / _RUN], axis=1)
    return Floor(corners=corners, triangles=np.array(triangles), at=at, colour=colour, rough=rough)


def _boards() -> tuple[Numbers, Numbers]:
    """Boards side by side, each with one butt joint: colour and roughness, rows along the boards."""
    wide = round(ROOM.board * 1000 / _STEPS[1])
    long = round(_RUN / _STEPS[0])
    colour = np.zeros((long, wide * _PLANKS, 3), np.float32)
    rough = np.zeros((long, wide * _PLANKS), np.float32)
    across = (np.arange(wide, dtype=np.float32) + 0.5) * _STEPS[1]
    along = (np.arange(long, dtype=np.float32) + 0.5) * _STEPS[0]
    edge = np.minimum(across, wide * _STEPS[1] - across)
    for n, random in zip(range(_PLANKS), dice(11), strict=False):
        butt = random * _RUN
        x, y = np.meshgrid(np.mod(along - butt, _RUN), across, indexing="ij")
        points = np.stack([x, y, np.full_like(x, 20.0)], axis=-1).astype(np.float32).reshape(-1, 3)
        seed = (random * 7.31 + n * 0.618) % 1.0
        shade, sheen = clear_wood(points, seed, GRAIN_OF_FLOOR, texel=_STEPS[1])
        end = np.minimum(x, _RUN - x)
        joint = (edge[None, :] < 1.0) | (end < 3.0)
        dark = np.where(joint, _DARK, 1.0)[..., None]
        colour[:, n * wide : (n + 1) * wide] = shade.reshape(long, wide, 3) * dark
        rough[:, n * wide : (n + 1) * wide] = GRAIN_OF_FLOOR.rough + sheen.reshape(long, wide)
    return colour, rough


def lamp_stand(scene: PictureScene) -> Thing:
    """What the far room's lamp stands on."""
    x, up, z = lamp_at(scene)
    foot = height_on(floor_line(scene), x)
    iron = Surface(colour=ROOM.track.colour, rough=0.5, metal=0.25)
    return _joined([_round((x, foot, z), 0.012, up - foot), _round((x, foot, z), 0.15, 0.02)], iron)


def lamp_shade(scene: PictureScene) -> tuple[Thing, Points, Numbers]:
    """Its shade of linen, where its corners lie in a picture of its glow, and that picture.

    It glows most where the bulb is behind it.
    """
    x, y, z = lamp_at(scene)
    n = 32
    corners, at = [], []
    for up, radius in ((0.0, LAMP_SHADE[1]), (1.0, LAMP_SHADE[0])):
        for k in range(n + 1):
            turn = 2 * math.pi * k / n
            across, along = radius * math.sin(turn), radius * math.cos(turn)
            corners.append((x + across, y + (up - 0.5) * LAMP_HIGH, z + along))
            at.append((k / n, up))
    triangles = []
    for k in range(n):
        triangles += [(k, k + 1, n + k + 2), (k, n + k + 2, n + k + 1)]
    shade = Thing(
        corners=np.array(corners),
        triangles=np.array(triangles),
        surface=Surface(colour="#f2e6cf", rough=0.9),
    )
    rows = (np.arange(16) + 0.5) / 16
    bright = 0.45 + 0.55 * np.exp(-(((rows - 0.4) / 0.35) ** 2))
    glow = bright[:, None, None] * np.array(LAMP_COLOUR) * _LINEN
    return shade, np.array(at), glow.repeat(4, axis=1).astype(np.float32)


def lamp_at(scene: PictureScene) -> Triple:
    """The middle of its shade."""
    return (scene.middle + LAMP[0], LAMP[1], LAMP[2])


def _ends(scene: PictureScene) -> Flat:
    """The room's two side walls: several doors beside one another need a broader one."""
    far = max(abs(x - scene.middle) for opening in scene.openings for x, _ in opening)
    side = max(ROOM.side, far + ROOM.side / 2) + (BESIDE_NICHE if scene.niche else 0.0)
    return scene.middle - side, scene.middle + side


def _wall(scene: PictureScene) -> Thing:
    """The wall with the surveyed openings cut through it; its feet run on below the floor."""
    ends = _ends(scene)
    between = ((a[-1][0] + b[0][0]) / 2 for a, b in pairwise(scene.openings))
    bounds = pairwise((ends[0], *between, ends[1]))
    corners: list[Triple] = []
    triangles: list[tuple[int, int, int]] = []
    for opening, (left, right) in zip(scene.openings, bounds, strict=True):
        for points in _wall_about(opening, scene.wall, left, right):
            start = len(corners)
            corners.extend(points)
            triangles.extend([(start, start + 1, start + 2), (start, start + 2, start + 3)])
    return Thing(
        corners=np.array(corners, float), triangles=np.array(triangles), surface=ROOM.plaster
    )


def _wall_about(
    opening: tuple[Flat, ...], thick: float, left: float, right: float
) -> Iterator[tuple[Triple, Triple, Triple, Triple]]:
    """One opening's stretch of the wall in pieces of four corners: both faces and the reveals."""
    foot, high = -2 * ROOM.buried, ROOM.high
    first, last = opening[0], opening[-1]
    hole = [(first[0], foot), *opening, (last[0], foot)]
    peak = max(range(len(hole)), key=lambda i: (hole[i][1], -i))
    for z in (0.0, -thick):
        for i, ((x0, y0), (x1, y1)) in enumerate(pairwise(hole)):
            if y0 != y1 and abs(y1 - y0) > abs(x1 - x0):
                side = left if i < peak else right
                yield ((side, y0, z), (x0, y0, z), (x1, y1, z), (side, y1, z))
            else:
                yield ((x0, y0, z), (x1, y1, z), (x1, high, z), (x0, high, z))
        for side, (x, y) in (
            (left, hole[peak]),
            (right, max(hole[peak + 1 :], key=lambda p: p[1])),
        ):
            yield ((side, y, z), (x, y, z), (x, high, z), (side, high, z))
    for (x0, y0), (x1, y1) in pairwise(hole):
        yield ((x0, y0, 0.0), (x1, y1, 0.0), (x1, y1, -thick), (x0, y0, -thick))


def _sheet(corners: list[Triple], surface: Surface = ROOM.plaster) -> Thing:
    return Thing(
        corners=np.array(corners, float),
        triangles=np.array(_QUAD[: len(corners) - 2]),
        surface=surface,
    )


def _flat(corners: tuple[Triple, ...]) -> Thing:
    """A plane piece of wall or ceiling; one of many corners stands upright and faces the viewer."""
    if len(corners) <= 4:
        return _sheet(list(corners))
    outline = tuple((x, y) for x, y, _ in corners)
    turned = (
        sum(twice_area(outline[i - 1], outline[i], (0.0, 0.0)) for i in range(len(outline))) < 0
    )
    ordered = corners[::-1] if turned else corners
    return Thing(
        corners=np.array(ordered, float),
        triangles=np.array(triangles_of(outline[::-1] if turned else outline)),
        surface=ROOM.plaster,
    )


def _bookcase(middle: float, foot: float) -> list[Thing]:
    def stood(boxes: tuple[Box, ...]) -> list[Points]:
        return [_box((middle + x, foot + y, z), (w, h, d)) for x, y, z, w, h, d in boxes]

    spines = (Surface(colour=colour, rough=ROOM.spine_rough) for colour in ROOM.spines)
    made = [_boxes(stood(boards()), ROOM.shelf)]
    made += [_boxes(stood(own), spine) for own, spine in zip(books(), spines, strict=True) if own]
    return made


def _skirtings(scene: PictureScene, line: tuple[Flat, ...], ends: Flat) -> Iterator[Thing]:
    high, thick = scene.skirting
    arris = 0.004
    clear = (at for a, b in scene.clear for at in (a - 0.006, b + 0.006))
    stops = (ends[0], *clear, ends[1])
    for a, b in zip(stops[::2], stops[1::2], strict=True):
        if a >= b:
            # walls that turn leave no stretch of this one
            continue
        section = [
            (-0.01, 0.0),
            (-0.01, thick),
            (high - arris, thick),
            (high, thick - arris),
            (high, 0.0),
        ]
        corners = [(x, height_on(line, x) + y, scene.face + z) for x in (a, b) for y, z in section]
        n = len(section)
        triangles = []
        for i in range(n):
            j = (i + 1) % n
            triangles += [(i, j, n + j), (i, n + j, n + i)]
        for k in range(1, n - 1):
            triangles += [(0, k + 1, k), (n, n + k, n + k + 1)]
        yield Thing(
            corners=np.array(corners, float), triangles=np.array(triangles), surface=ROOM.trim
        )


def _trim(outline: tuple[Flat, ...], near: float, far: float) -> Thing:
    """A piece of lining or casing: its outline, seen from the front, from one face to the other."""
    n = len(outline)
    if sum(twice_area(outline[i - 1], outline[i], (0.0, 0.0)) for i in range(n)) < 0:
        outline = outline[::-1]
    faces = triangles_of(outline)
    triangles = [*faces, *((n + a, n + c, n + b) for a, b, c in faces)]
    for i in range(n):
        j = (i + 1) % n
        triangles += [(j, i, n + i), (j, n + i, n + j)]
    return Thing(
        corners=np.array([(x, y, z) for z in (near, far) for x, y in outline], float),
        triangles=np.array(triangles),
        surface=ROOM.trim,
    )


def _brackets(scene: PictureScene, pieces: tuple[Piece, ...]) -> Thing | None:
    """From the wall to each track, where the lists say that they stand."""
    bars = [piece.placed(piece.corners) for piece in pieces if piece.look == "metal"]
    wide, high, thick = _HOLDS
    boxes = []
    for x, away, _ in scene.brackets:
        over = [bar for bar in bars if bar[:, 2].min() <= away <= bar[:, 2].max()]
        if not over:
            continue
        top = max(bar[:, 1].max() for bar in over)
        deep = away + 0.012
        boxes += [
            _box((x, top + thick / 2, deep / 2), (wide, thick, deep)),
            _box((x, top + high / 2, thick / 2), (wide, high, thick)),
        ]
    return _boxes(boxes, ROOM.track) if boxes else None


def _box(middle: Triple, size: Triple) -> Points:
    half = np.array(size) / 2
    signs = np.array([[a, b, c] for a in (-1, 1) for b in (-1, 1) for c in (-1, 1)])
    return np.array(middle) + signs * half


def _boxes(boxes: list[Points], surface: Surface) -> Thing:
    faces = [
        (8 * n + np.array([(q[0], q[1], q[2]), (q[0], q[2], q[3])])).tolist()
        for n in range(len(boxes))
        for q in _BOX
    ]
    return Thing(
        corners=np.concatenate(boxes),
        triangles=np.array(faces).reshape(-1, 3),
        surface=surface,
    )


def _round(foot: Triple, radius: float, high: float) -> tuple[Points, NDArray[np.int64]]:
    """An upright cylinder of flat faces."""
    n = 24
    x, y, z = foot
    ring = [
        (math.cos(2 * math.pi * k / n) * radius, math.sin(2 * math.pi * k / n) * radius)
        for k in range(n)
    ]
    corners = [(x + a, y, z + b) for a, b in ring] + [(x + a, y + high, z + b) for a, b in ring]
    triangles = []
    for k in range(n):
        j = (k + 1) % n
        triangles += [(k, n + k, j), (j, n + k, n + j)]
        if 0 < k < n - 1:
            triangles += [(n, n + k + 1, n + k), (0, k, k + 1)]
    return np.array(corners), np.array(triangles)


def _joined(shapes: list[tuple[Points, NDArray[np.int64]]], surface: Surface) -> Thing:
    corners, triangles, start = [], [], 0
    for points, faces in shapes:
        corners.append(points)
        triangles.append(faces + start)
        start += len(points)
    return Thing(
        corners=np.concatenate(corners), triangles=np.concatenate(triangles), surface=surface
    )
