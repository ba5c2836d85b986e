"""Hatching: one quiet texture per material, cut exactly at the outline of the piece.

A texture hangs on its own piece, not on the sheet: it is worked out about the piece's
low corner and then carried there, so a view that moves keeps its picture, and pieces of
one shape are worked out once.
"""

from __future__ import annotations

import functools
import math
from typing import Literal

from parametric.drawing.plane import (
    Box,
    Point,
    Polygon,
    Region,
    around,
    cut_circle,
    cut_line,
    cut_path,
    inside,
)
from parametric.drawing.sheet import Hatch

Run = Literal["across", "up"]
Bow = Literal["left", "right", "below", "above"]
_DIGITS = 6
_LEAST = 0.15
"""A stroke shorter than this is a blot on paper, mm."""


def wall(region: Region, view: str, gap: float = 1.6) -> Hatch:
    """Masonry, plaster or ground: 45 degree lines."""
    return _carry(region, view, "wall", _slanted(_home(region), 45.0, gap))


def metal(region: Region, view: str, gap: float = 1.2) -> Hatch:
    """Metal: close 45 degree lines leaning the other way."""
    return _carry(region, view, "metal", _slanted(_home(region), 135.0, gap))


def end_grain(region: Region, view: str, bow: Bow, gap: float, far: float) -> Hatch:
    """Growth rings of a piece seen on its end.

    Args:
        region: the cut outline on paper, mm.
        view: the view it belongs to.
        bow: on which side of the piece the pith lies.
        gap: ring to ring, mm.
        far: how far outside the piece the pith lies, mm.
    """
    return _carry(region, view, "end grain", _rings(_home(region), bow, gap, far))


def long_grain(region: Region, view: str, run: Run, gap: float) -> Hatch:
    """Slightly wandering lines along the grain."""
    return _carry(region, view, "long grain", _wandering(_home(region), run, gap))


def board(region: Region, view: str, gap: float = 1.6) -> Hatch:
    """Board and plasterboard: fine dots in staggered rows."""
    return _carry(region, view, "board", _dots(_home(region), gap))


def tape(region: Region, view: str) -> Hatch:
    """Tape and seals: dots so close that they read as grey, and survive a copier as dots."""
    return _carry(region, view, "tape", _dots(_home(region), 0.42))


def carcassing(box: Box, view: str) -> Hatch:
    """Rough timber behind the work: one cross from corner to corner."""
    x0, y0, x1, y1 = box
    strokes = (((x0, y0), (x1, y1)), ((x0, y1), (x1, y0)))
    return Hatch(material="carcassing timber", strokes=strokes, view=view)


def glass_cut(region: Region, view: str, apart: float = 7.0) -> Hatch:
    """Glass where it is cut: pairs of 45 degree strokes."""
    home = _home(region)
    pairs = [_slanted(home, 45.0, apart)[0], _slanted(home, 45.0, apart, 1.1)[0]]
    strokes = tuple(stroke for pair in pairs for stroke in pair)
    return _carry(region, view, "glass", (strokes, (), ()))


def glass_seen(box: Box, view: str) -> Hatch:
    """Glass in elevation: three unequal 60 degree strokes in the upper right."""
    cx, cy = box.x0 + box.width * 0.66, box.y0 + box.height * 0.66
    size = min(1.0, box.width / 40.0, box.height / 40.0)
    ux, uy = math.cos(math.radians(60)), math.sin(math.radians(60))
    strokes = []
    for aside, half in ((-3.0, 3.5), (0.0, 5.5), (3.0, 3.5)):
        mx, my = cx + aside * size, cy - aside * size
        dx, dy = ux * half * size, uy * half * size
        strokes.append(((mx - dx, my - dy), (mx + dx, my + dy)))
    return Hatch(material="glass", strokes=tuple(strokes), view=view)


_Texture = tuple[tuple[Polygon, ...], tuple[tuple[Point, float, float, float], ...], Polygon]


def _home(region: Region) -> Region:
    """The region carried to its own low corner."""
    box = around(p for polygon in region for p in polygon)
    return tuple(
        tuple((round(x - box.x0, _DIGITS), round(y - box.y0, _DIGITS)) for x, y in polygon)
        for polygon in region
    )


def _carry(region: Region, view: str, material: str, texture: _Texture) -> Hatch:
    """The texture back to where the piece lies."""
    box = around(p for polygon in region for p in polygon)
    strokes, arcs, spots = texture

    def moved(point: Point) -> Point:
        return (point[0] + box.x0, point[1] + box.y0)

    return Hatch(
        material=material,
        strokes=tuple(tuple(moved(p) for p in stroke) for stroke in strokes),
        arcs=tuple((moved(c), r, start, end) for c, r, start, end in arcs),
        dots=tuple(moved(p) for p in spots),
        view=view,
    )


def _extent(region: Region) -> Box:
    return around(p for polygon in region for p in polygon)


@functools.lru_cache(maxsize=512)
def _slanted(region: Region, angle: float, gap: float, shift: float = 0.0) -> _Texture:
    box = _extent(region)
    ux, uy = math.cos(math.radians(angle)), math.sin(math.radians(angle))
    corners = [-uy * x + ux * y for x, y in box.polygon]
    reach = math.hypot(box.width, box.height) + 1.0
    strokes = []
    index = math.ceil(min(corners) / gap)
    while index * gap < max(corners):
        off = index * gap + gap * 0.37 + shift
        middle = (box.width / 2, box.height / 2)
        # The foot of the perpendicular from the middle of the piece to this hatch line.
        away = off - (-uy * middle[0] + ux * middle[1])
        cx, cy = middle[0] - uy * away, middle[1] + ux * away
        a, b = (cx - ux * reach, cy - uy * reach), (cx + ux * reach, cy + uy * reach)
        strokes += [
            piece
            for piece in cut_line(a, b, region, keep_inside=True)
            if math.dist(*piece) > _LEAST
        ]
        index += 1
    return tuple(strokes), (), ()


@functools.lru_cache(maxsize=512)
def _rings(region: Region, bow: Bow, gap: float, far: float) -> _Texture:
    box = _extent(region)
    across, up = box.width, box.height
    # Off the middle, so that a ring never runs along an edge.
    pith = {
        "left": (-far, up * 0.43),
        "right": (across + far, up * 0.57),
        "below": (across * 0.43, -far),
        "above": (across * 0.57, up + far),
    }[bow]
    outermost = max(math.dist(pith, corner) for corner in box.polygon)
    arcs = []
    radius = far + gap * 0.5
    while radius < outermost:
        arcs += [
            (pith, radius, start, end)
            for start, end in cut_circle(pith, radius, region)
            if math.radians(end - start) * radius > _LEAST
        ]
        radius += gap
    return (), tuple(arcs), ()


@functools.lru_cache(maxsize=512)
def _wandering(region: Region, run: Run, gap: float) -> _Texture:
    box = _extent(region)
    length, depth = (box.width, box.height) if run == "across" else (box.height, box.width)
    strokes: list[Polygon] = []
    count = max(8, math.ceil(length / 2))
    level, index = gap * 0.55, 0
    while level < depth - 0.2:
        points = []
        for i in range(count + 1):
            t = length * i / count
            sway = 0.16 * math.sin(t / 7 + index * 1.9) + 0.1 * math.sin(t / 2.9 + index)
            points.append((t, level + sway) if run == "across" else (level + sway, t))
        strokes += [
            path for path in cut_path(points, region) if math.dist(path[0], path[-1]) > _LEAST
        ]
        level += gap * (0.75, 1.15, 0.95, 1.25)[index % 4]
        index += 1
    return tuple(strokes), (), ()


@functools.lru_cache(maxsize=512)
def _dots(region: Region, gap: float) -> _Texture:
    box = _extent(region)
    spots = []
    row, up = 0, gap * 0.4
    while up < box.height:
        across = gap * (0.9 if row % 2 else 0.4)
        while across < box.width:
            if inside((across, up), region):
                spots.append((across, up))
            across += gap
        up += gap * 0.75
        row += 1
    return (), (), tuple(spots)
