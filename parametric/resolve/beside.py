"""Doors of several openings in one room: side by side, as nobody measured how they stand.

opening of the first |<- room that its leaves take ->|<- 600 ->|<- room of the next ->|
"""

from __future__ import annotations

import dataclasses

from parametric.model import Placement
from parametric.resolve.footprint import footprint
from parametric.resolve.one_door import Door

APART = 600.0
"""Wall between what two doors beside one another take when they open, mm. By eye, no source."""
_STEPS = 24
"""Places at which a leaf is looked at on its way."""


def stood_side_by_side(doors: tuple[Door, ...]) -> tuple[Door, ...]:
    """Doors in walls from left to right, in their order; the first is where its survey has it."""
    stood: list[Door] = []
    taken = 0.0
    for door in doors:
        left, right = _room_of(door)
        if not stood:
            taken = right
            stood.append(door)
            continue
        origin = taken + APART - left
        stood.append(dataclasses.replace(door, stands=Placement(origin=(origin, 0.0, 0.0))))
        taken = origin + right
    return tuple(stood)


def right_of(doors: tuple[Door, ...]) -> float:
    """Where what stands to the right of them all may begin, mm; 0 where there are none."""
    if not doors:
        return 0.0
    return max(door.stands.origin[0] + _room_of(door)[1] for door in doors) + APART


def _room_of(door: Door) -> tuple[float, float]:
    """How far a door comes to the left and right: opening, tracks, and leaves on all their way."""
    places = [x for x, _ in door.opening.outline()]
    for track in door.hanging.tracks:
        places += [float(track.left), float(track.left + track.length)]
    for leaf in door.leaves:
        places += [x for n in range(_STEPS + 1) for x, _ in footprint(leaf, n / _STEPS)]
    return min(places), max(places)
