"""Where leaves stand when they are open, and what of the floor they sweep over, seen from above.

All of it follows from how each leaf moves: nothing here asks how a door is hung.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import NamedTuple

from parametric.model import State, Turn
from parametric.resolve.door import Door
from parametric.resolve.footprint import Point, footprint
from parametric.resolve.leaf import Leaf

Stretch = tuple[float, float]
"""From left to right, mm from the left edge of the opening."""

_STEPS = 90
"""Places at which a leaf is looked at on its way, a degree apart in a right angle."""
_ALIKE = 0.01
"""Ways to stand that leave the same width within this are one as good as the other, mm."""


class Swept(NamedTuple):
    """What a leaf sweeps over, mm: left, right, and from the nearest to the farthest off the
    viewer; the wall's face is 0, the viewer's side negative.
    """

    left: float
    right: float
    near: float
    far: float


def width_taken(leaf: Leaf, part: float) -> Stretch:
    """How far a leaf reaches across the opening."""
    across = [x for x, _ in footprint(leaf, part)]
    return min(across), max(across)


def cover_stretch(door: Door) -> Stretch:
    """What the shut leaves cover or fill."""
    hanging = door.hanging
    first = hanging.across[0] if hanging.across else None
    gap = float(first.size) if first is not None and first.what == "gap" else 0.0
    left = min(float(left) for left in hanging.lefts) - gap
    return left, left + float(hanging.cover)


def way(door: Door) -> Stretch:
    """The way through: plumb and clear; in the middle of what leaves before the wall cover."""
    if not door.hanging.on_wall:
        left = float(door.opening.clear_left)
        return left, left + float(door.opening.clear)
    left, _ = cover_stretch(door)
    narrow = float(door.opening.narrowest)
    left += (float(door.hanging.cover) - narrow) / 2
    return left, left + narrow


def clear_stretch(door: Door, opened: Mapping[str, float]) -> Stretch:
    """The widest stretch of the way that no leaf covers, each as far open as is said by name."""
    start, end = way(door)
    covers = sorted(width_taken(leaf, opened.get(leaf.name, 0.0)) for leaf in door.leaves)
    best, edge = (start, start), start
    for left, right in (*covers, (end, end)):
        if min(left, end) - edge > best[1] - best[0]:
            best = (edge, min(left, end))
        edge = max(edge, right)
    return best


def widest_open(door: Door) -> State:
    """The state that leaves most of the way clear; of several as good, the farthest left."""

    def rank(state: State) -> tuple[float, float]:
        left, right = clear_stretch(door, state.open)
        return (-round((right - left) / _ALIKE), left)

    return min(door.hanging.states, key=rank)


def swept(leaf: Leaf) -> Swept:
    """All that a leaf passes over from shut to open."""
    points = [p for n in range(_STEPS + 1) for p in footprint(leaf, n / _STEPS)]
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return Swept(min(xs), max(xs), min(ys), max(ys))


def comes_towards(leaf: Leaf) -> bool:
    """Whether a leaf that turns comes towards whoever stands before it."""
    shut = sum(y for _, y in footprint(leaf, 0.0))
    return sum(y for _, y in footprint(leaf, _STARTED)) < shut


_STARTED = 0.05
"""Of its way: a leaf that folds comes out at once, and may stand back in its plane when open."""


def outer_corner(leaf: Leaf, part: float) -> Point:
    """The corner that has gone farthest: of a leaf that turns, its free edge."""
    shut, gone = footprint(leaf, 0.0), footprint(leaf, part)
    return max(zip(shut, gone, strict=True), key=lambda pair: math.dist(*pair))[1]


def way_of_edge(leaf: Leaf) -> tuple[Point, ...]:
    """The way that the corner which goes farthest goes from shut to open."""
    shut, opened = footprint(leaf, 0.0), footprint(leaf, 1.0)
    index = max(range(4), key=lambda n: math.dist(shut[n], opened[n]))
    return tuple(footprint(leaf, n / _STEPS)[index] for n in range(_STEPS + 1))


def first_to_open(door: Door) -> Leaf | None:
    """The leaf that opens before one that it meets; None where neither waits for the other."""
    hanging = door.hanging
    if hanging.meeting_gap is None or len(door.leaves) < 2:
        return None
    for state in hanging.states:
        opened = [leaf for leaf in door.leaves if state.open.get(leaf.name, 0.0) == 1.0]
        if len(opened) == 1 and any(isinstance(s, Turn) for s in opened[0].hung.motion):
            return opened[0]
    return None
