"""The room about cabinets along walls that turn a corner: each wall where it stands, as it was read.

seen from above:   wall of the first  ______________
                                                    |
                                         cabinets   |  wall of the second
"""

from __future__ import annotations

from collections.abc import Sequence

from parametric.catalog.room import ROOM
from parametric.model import Vector
from parametric.pack.case_places import CaseNiche
from parametric.writers.client_page import Niche, Surface


def corner_room(niches: Sequence[CaseNiche], back: float) -> Niche:
    """Walls, floor and ceiling; nothing stands between whoever looks and the corner.

    Args:
        niches: the openings, each in its own wall.
        back: how far behind the front edges of cabinets each wall is, mm.
    """
    walls = [
        tuple(
            one.room.point((x - one.shift, back, z))
            for x, z in (*one.floor_line(), *one.outline()[::-1])
        )
        for one in niches
    ]
    points = [point for wall in walls for point in wall]
    reach, near = ROOM.side * 1000, ROOM.front * 2000
    left, right = (pick(x for x, _, _ in points) for pick in (min, max))
    front, far = (pick(y for _, y, _ in points) for pick in (min, max))
    low, high = min(z for _, _, z in points), min(z for _, _, z in points if z > ROOM.high * 400)
    floor: tuple[Vector, ...] = (
        (left - reach, front - near, low),
        (right + reach, front - near, low),
        (right + reach, far + back, low),
        (left - reach, far + back, low),
    )
    ceiling = tuple((x, y, high) for x, y, _ in floor[::-1])
    # past the walls that were measured a plain one goes on, behind them all
    beyond = tuple((x, far + back, z) for x, _, z in (floor[0], floor[1], ceiling[2], ceiling[3]))
    return Niche(
        surfaces=(
            *(Surface(kind="wall", corners=wall) for wall in walls),
            Surface(kind="wall", corners=beyond),
            Surface(kind="floor", corners=floor),
            Surface(kind="ceiling", corners=ceiling),
        ),
        face=0.0,
        back=back,
    )
