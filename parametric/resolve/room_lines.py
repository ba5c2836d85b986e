"""The lines of a room as it was measured: walls that lean, a floor that falls, a ceiling that dips.

Between two readings a wall is taken as straight, and beyond the last one as plumb.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence

from parametric.resolve.opening import PLACES_ACROSS, Opening

Point = tuple[float, float]


def wall_line(opening: Opening, side: str) -> tuple[Point, ...]:
    """(height, x) up the left or the right wall, from the highest floor, mm."""
    high = float(opening.head)
    at = {"bottom": 0.0, "middle": high / 2, "top": high}
    found = []
    for place in ("bottom", "middle", "top"):
        if place in opening.widths and place in opening.lean:
            x = float(opening.lean[place])
            if side == "right":
                x += float(opening.widths[place])
            found.append((at[place], x))
    return tuple(found)


def level_line(opening: Opening, of: str) -> tuple[Point, ...]:
    """(x, height) across the floor or the ceiling, mm."""
    readings = opening.floor if of == "floor" else opening.ceiling
    width = float(opening.widest)
    at = {"left": 0.0, "middle": width / 2, "right": width}
    return tuple(
        (at[place], float(readings[place])) for place in PLACES_ACROSS if place in readings
    )


def between(line: Sequence[Point], low: float, high: float) -> tuple[Point, ...]:
    """The stretch of a line from one place along it to another, ends and corners."""
    inner = [point for point in line if low < point[0] < high]
    return ((low, along(line, low)), *inner, (high, along(line, high)))


def along(line: Sequence[Point], at: float) -> float:
    """Where a line stands at a place along it; beyond its ends it goes on as at the end."""
    if at <= line[0][0]:
        return line[0][1]
    for (a, x), (b, y) in itertools.pairwise(line):
        if at <= b:
            return x + (y - x) * (at - a) / (b - a)
    return line[-1][1]
