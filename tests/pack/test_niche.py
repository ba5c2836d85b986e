"""The room about casework: every surface where the survey has it, and the whole of it closed.

Fen Road's niche: widths 2440 / 2431 / 2436 at foot, middle and head, its left wall 0 / 3 / 5 off
plumb, floor -3 / 0 / 2 and ceiling 2388 / 2385 / 2390 from one line.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
import pytest

from parametric.catalog.room import ROOM
from parametric.pack.preview_niche import niche
from parametric.writers.client_page import Niche, Surface

Flat = tuple[float, float]


@dataclass(frozen=True)
class Read:
    """What was read, point by point."""

    over: tuple[Flat, ...]
    under: tuple[Flat, ...]

    def outline(self) -> tuple[Flat, ...]:
        return self.over

    def floor_line(self) -> tuple[Flat, ...]:
        return self.under


# The datum is the highest floor, 2 above the laser line: all heights less 2.
FEN_ROAD = Read(
    over=(
        *((0.0, -5.0), (3.0, 1191.0), (5.0, 2386.0), (1220.5, 2383.0)),
        *((2441.0, 2388.0), (2434.0, 1194.0), (2440.0, 0.0)),
    ),
    under=((0.0, -5.0), (1220.0, -2.0), (2440.0, 0.0)),
)
UNDER_STAIRS = Read(
    over=((0.0, 0.0), (0.0, 1985.0), (2310.0, 640.0), (2310.0, 0.0)),
    under=((0.0, 0.0), (2310.0, 0.0)),
)


def vector(surface: Surface) -> np.ndarray:
    """Its area times the way it faces (half the sum of the cross products of its corners)."""
    points = np.array(surface.corners)
    return np.cross(points, np.roll(points, -1, axis=0)).sum(axis=0) / 2


def area(line: tuple[Flat, ...]) -> float:
    """Of a polygon, by its corners."""
    return abs(
        sum(a[0] * b[1] - b[0] * a[1] for a, b in zip(line, (*line[1:], line[0]), strict=True)) / 2
    )


def test_walls_floor_and_ceiling_stand_as_they_were_read() -> None:
    found = niche(FEN_ROAD, back=600.0, face=-20.0).surfaces
    within = [s for s in found if {y for _, y, _ in s.corners} == {-20.0, 600.0}]
    seen = [(s.kind, s.corners[0][::2], s.corners[-1][::2]) for s in within]
    over = list(pairwise(FEN_ROAD.over))
    kinds = ["wall", "wall", "ceiling", "ceiling", "wall", "wall"]
    assert seen[:6] == [(kind, *ends) for kind, ends in zip(kinds, over, strict=True)]
    under = FEN_ROAD.under[::-1]
    assert seen[6:] == [("floor", a, b) for a, b in pairwise(under)]
    # the left wall leans in by 5 over 2391: its surface faces right and a little down
    leaning = sum(vector(s) for s in within[:2])
    assert leaning[0] > 0
    assert leaning[2] / leaning[0] == pytest.approx(-5 / 2391)


def test_the_floor_goes_on_at_its_slope_and_the_ceiling_level() -> None:
    """Left of 0 the floor falls by 3 in 1220; the ceiling stays at 2386."""
    found = niche(FEN_ROAD, back=600.0).surfaces
    left = 1220.0 - ROOM.side * 1000
    corners = {c for s in found if s.kind == "floor" for c in s.corners}
    (at,) = {z for x, _, z in corners if x == left}
    assert at == pytest.approx(-5.0 + left * 3 / 1220)
    ceiling = {z for s in found if s.kind == "ceiling" for x, _, z in s.corners if x <= 5.0}
    assert ceiling == {2386.0}


@pytest.mark.parametrize("read", [FEN_ROAD, UNDER_STAIRS], ids=["to the ceiling", "under stairs"])
@pytest.mark.parametrize("face", [-20.0, 0.0, 35.0])
def test_nothing_is_open_but_behind_the_viewer(read: Read, face: float) -> None:
    """With a plane set up behind the viewer the surfaces close, and what they hold is two prisms.

    The niche: the area within its outline by its depth. The room: from floor to ceiling between
    its ends. (Volume by the divergence theorem: a third of each plane's corner times its vector.)
    """
    made = niche(read, back=600.0, face=face)
    behind = _behind(made)
    every = (*made.surfaces, behind)
    assert np.allclose(sum(vector(s) for s in every), 0.0, atol=1e-3)
    held = -sum(np.array(s.corners[0]) @ vector(s) for s in every) / 3
    near = behind.corners[0][1]
    before = area(tuple((x, z) for x, _, z in behind.corners))
    foot = read.over + tuple(p for p in read.under[-2:0:-1])
    assert held == pytest.approx(area(foot) * (600.0 - face) + before * (face - near), rel=1e-9)
    for surface in made.surfaces:
        facing = vector(surface) / np.linalg.norm(vector(surface))
        flat = [np.array(c) @ facing for c in surface.corners]
        assert max(flat) - min(flat) < 1e-6, surface


def _behind(made: Niche) -> Surface:
    """The plane behind the viewer, facing away from them: round the ends of what runs to it."""
    near = min(y for s in made.surfaces for _, y, _ in s.corners)
    ends = [
        (tuple(a[::2]), tuple(b[::2]))
        for s in made.surfaces
        for a, b in zip(s.corners, (*s.corners[1:], s.corners[0]), strict=True)
        if a[1] == b[1] == near
    ]
    # the surfaces' own edges there run one way round; the plane's run the other
    onward = {b: a for a, b in ends}
    start = min(onward)
    line = [start]
    while onward[line[-1]] != start:
        line.append(onward[line[-1]])
    assert len(line) == len(ends)
    return Surface(kind="wall", corners=tuple((x, near, z) for x, z in line))


def test_a_soffit_has_wall_over_it() -> None:
    """Under stairs the head slopes by 1345 over 2310, 30 deg: it is no ceiling of the room."""
    found = niche(UNDER_STAIRS, back=600.0)
    over = [s for s in found.surfaces if {y for _, y, _ in s.corners} == {0.0}]
    top = max(z for s in over for _, _, z in s.corners)
    assert top == ROOM.high * 1000
    (soffit,) = (s for s in found.surfaces if s.kind == "ceiling" and s.corners[0][1] == 0.0)
    facing = vector(soffit)
    assert math.degrees(math.atan2(-facing[0], -facing[2])) == pytest.approx(
        math.degrees(math.atan2(1345, 2310))
    )
