"""The grain of a piece worked out for many points at once: what the page's shader does, in numpy.

The recipe's numbers are in `catalog/grain.py`; the page's shader has them too. Everything is
in single precision, as it is there, so that both show the same board.
"""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from parametric.catalog.finishes import ClearTimber
from parametric.catalog.grain import GRAIN

Numbers = NDArray[np.float32]

_AT_ONCE = 1 << 16
"""Points worked out together: few enough that a processor keeps them at hand."""
_ONE = np.float32(1)
_SHEEN = 0.012
"""What a satin face mirrors of a room that is as bright as these pictures' is: measured on them."""


def seed_of(name: str) -> float:
    """A number from 0 to 1 that a piece's name always gives: Fowler, Noll and Vo's hash, stirred."""
    h = 2166136261
    for letter in name:
        h = ((h ^ ord(letter)) * 16777619) & 0xFFFFFFFF
    h = ((h ^ (h >> 15)) * 0x85EBCA6B) & 0xFFFFFFFF
    return float((h ^ (h >> 13)) & 0xFFFFFFFF) / 4294967296


def clear_wood(
    points: Numbers, seed: float, wood: ClearTimber, *, wide: float = 0.0, texel: float = 0.0
) -> tuple[Numbers, Numbers]:
    """Colour (linear, n x 3) and what is added to the roughness (n) at points of a piece.

    Args:
        points: where they are in the piece, mm, x along it; n x 3.
        seed: the piece's own.
        wood: the timber.
        wide: of a board, where the piece is glued up from boards; else 0.
        texel: how far apart the points are, mm: what is finer than that is not shown.
    """
    g = GRAIN
    early, late = (np.array(linear(colour), np.float32) for colour in (wood.early, wood.late))
    tone, pore, fleck = grain(
        points, seed, wide=wide, ring=wood.ring, flecked=wood.fleck, texel=texel
    )
    board = (seed * 17.31 % 1.0 - 0.5) * g.board_tone
    dark = np.clip(tone * np.float32(wood.contrast * g.tone) + np.float32(board), 0, 1)[:, None]
    colour = early + (late - early) * dark
    colour = colour * (1 - pore * np.float32(wood.pore * g.pore_dark))[:, None]
    lighter, share = g.fleck_light
    colour = colour + (early * np.float32(lighter) - colour) * (fleck * np.float32(share))[:, None]
    return colour.astype(np.float32), tone * np.float32(g.rough[0]) + pore * np.float32(g.rough[1])


def painted(points: Numbers, colour: str, *, ends: tuple[float | None, float | None]) -> Numbers:
    """A paint's colour (linear, n x 3) at points of a piece, the lines at its joints included.

    Args:
        points: as for `clear_wood`, 1 mm apart.
        colour: the paint's.
        ends: x of the ends that stand against another piece; None for an end that is free.
    """
    g = GRAIN
    depth, along, across = g.paint
    where = points * np.array([along, across, across], np.float32)
    tone = 1 + np.float32(depth) * (_clouds(where) - np.float32(0.5))
    low, high = ends
    near = np.full(len(points), 9e9, np.float32)
    if low is not None:
        near = np.minimum(near, points[:, 0] - np.float32(low))
    if high is not None:
        near = np.minimum(near, np.float32(high) - points[:, 0])
    tone = tone * (1 - np.float32(g.joint) * (1 - _step(0.0, 1.3, near)) * np.float32(0.9))
    # a declared colour has in it what a satin face mirrors of a room, which light adds again
    own = np.maximum(np.array(linear(colour), np.float32) - np.float32(_SHEEN), np.float32(0.002))
    shown: Numbers = (own * tone[:, None]).astype(np.float32)
    return shown


def linear(colour: str) -> tuple[float, float, float]:
    """A colour such as `#98a48c` as amounts of light: IEC 61966-2-1 undone."""
    levels = (int(colour[i : i + 2], 16) / 255 for i in (1, 3, 5))
    r, g, b = (v / 12.92 if v <= 0.04045 else ((v + 0.055) / 1.055) ** 2.4 for v in levels)
    return r, g, b


def grain(
    points: Numbers,
    seed: float,
    *,
    wide: float = 0.0,
    ring: float,
    flecked: float,
    texel: float = 0.0,
) -> tuple[Numbers, Numbers, Numbers]:
    """How dark (0 early wood, 1 late), pores, flecks; arguments as for `clear_wood`."""
    found = [
        _grain(points[i : i + _AT_ONCE], np.float32(seed), wide, np.float32(ring), flecked, texel)
        for i in range(0, len(points), _AT_ONCE)
    ]
    tone, pore, fleck = (np.concatenate(all_of) for all_of in zip(*found, strict=True))
    return tone, pore, fleck


def cloud(p: Numbers) -> Numbers:
    """Noise from 0 to 1 that runs smoothly between the corners of a lattice; n x 3 to n."""
    low = np.floor(p)
    f = p - low
    f = f * f * (np.float32(3) - np.float32(2) * f)
    corner = [[part[:, 0], part[:, 1], part[:, 2]] for part in (low, low + _ONE)]
    value: list[Numbers] = []
    for z in (0, 1):
        for y in (0, 1):
            a, b = (_hash(corner[x][0], corner[y][1], corner[z][2]) for x in (0, 1))
            value.append(a + (b - a) * f[:, 0])
    near = value[0] + (value[1] - value[0]) * f[:, 1]
    far = value[2] + (value[3] - value[2]) * f[:, 1]
    return near + (far - near) * f[:, 2]


def _hash(x: Numbers, y: Numbers, z: Numbers) -> Numbers:
    k, more = np.float32(0.1031), np.float32(31.32)
    x, y, z = _fract(x * k), _fract(y * k), _fract(z * k)
    dot = x * (z + more) + y * (y + more) + z * (x + more)
    return _fract((x + dot + y + dot) * (z + dot))


def _grain(
    p: Numbers, seed: np.float32, wide: float, ring: np.float32, flecked: float, texel: float
) -> tuple[Numbers, Numbers, Numbers]:
    g = GRAIN
    x, y, z = p[:, 0], p[:, 1], p[:, 2]
    seeds: Numbers = np.full(len(p), seed, np.float32)
    line: Numbers = np.zeros(len(p), np.float32)
    if wide > 0:
        width = np.float32(wide)
        board = np.floor(y / width)
        start = y - board * width
        seeds = _fract(seeds + np.float32(g.board_step) * (board + _ONE))
        turned = np.mod(board, 2) > 0.5
        px = max(texel, 0.15)
        edge = 1 - _step(0.0, px * 1.2, np.minimum(start, width - start))
        line = np.float32(g.line) * edge * np.float32(min(1.0, 0.5 / px))
        y = np.where(turned, width - start, start)
        z = np.where(turned, np.float32(g.board_turned) - z, z)
    a, b, c = (_fract(seeds * np.float32(k)) for k in (7.13, 3.71, 13.7))
    along = x + a * np.float32(g.start)
    bend = sum(
        (_noise(along * np.float32(slow), y * np.float32(across), own * 30) - np.float32(0.5))
        * np.float32(far)
        for (far, slow, across), own in zip(g.bends, (b, c), strict=True)
    )
    heart_y, heart_z = _mix(*g.heart_across, b), -_mix(*g.heart_below, c)
    away = np.hypot(
        y - heart_y + bend * np.float32(g.bent[0]), z - heart_z + bend * np.float32(g.bent[1])
    )
    away = away + along * _mix(-g.taper, g.taper, a)
    nought = np.zeros_like(away)
    noise = _noise(away * np.float32(g.ring_noise), seeds * 9, nought)
    width_of_year = ring * (np.float32(g.ring_least) + np.float32(g.ring_spread) * noise)
    year = away / width_of_year
    part = _fract(year)
    late = _step(*g.late, part) * (1 - _step(g.late_end, 1.0, part))
    late = late + (np.float32(g.late_mean) - late) * _step(
        *g.late_fades, np.float32(texel) / width_of_year
    )
    good = _noise(np.floor(year) * np.float32(1.7), seeds * 5, nought + 2)
    fine = np.full(1, texel * g.fibre[1], np.float32)
    slow, across = np.float32(g.fibre[0]), np.float32(g.fibre[1])
    fibre = _noise(along * slow, y * across, z * across)
    fibre = fibre + (np.float32(0.5) - fibre) * _step(*g.fibre_fades, fine)
    broad = _noise(along * np.float32(g.broad[0]), y * np.float32(g.broad[1]), seeds * 11)
    slow, across = np.float32(g.pore[0]), np.float32(g.pore[1])
    pore = _step(*g.pore_from, _noise(along * slow + seeds * 70, y * across, z * across))
    pore = pore * (1 - _step(*g.pore_early, part)) * (1 - _step(*g.pore_fades, fine))
    kx, ky, kz = (np.float32(k) for k in g.fleck)
    fleck = nought
    if flecked > 0:
        fleck = np.float32(flecked) * _step(
            *g.fleck_from, _noise(along * kx, y * ky + seeds * 50, z * kz)
        )
    tone = (
        late * (np.float32(g.year[0]) + np.float32(g.year[1]) * good)
        + (fibre - np.float32(0.5)) * np.float32(g.fibre_depth)
        + (broad - np.float32(0.5)) * np.float32(g.broad_depth)
        + np.float32(g.ground)
        + line
    )
    return np.clip(tone, 0, 1), pore, fleck


def _noise(x: Numbers, y: Numbers, z: Numbers) -> Numbers:
    return cloud(np.stack([x, y, z], axis=1).astype(np.float32, copy=False))


def _clouds(points: Numbers) -> Numbers:
    pieces = [cloud(points[i : i + _AT_ONCE]) for i in range(0, len(points), _AT_ONCE)]
    return np.concatenate(pieces)


def _fract(v: Numbers) -> Numbers:
    return v - np.floor(v)


def _mix(a: float, b: float, share: Numbers) -> Numbers:
    return np.float32(a) + np.float32(b - a) * share


def _step(low: float, high: float, v: Numbers) -> Numbers:
    t = np.clip((v - np.float32(low)) / np.float32(high - low), 0, 1)
    out: Numbers = t * t * (np.float32(3) - np.float32(2) * t)
    return out
