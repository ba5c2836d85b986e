"""Where a leaf stands on the floor, seen from above, anywhere on its way."""

from __future__ import annotations

from parametric.model import Placement, along
from parametric.resolve.leaf import Leaf

Point = tuple[float, float]


def footprint(leaf: Leaf, part: float) -> tuple[Point, ...]:
    """A leaf's four corners, its front two first, when it has gone a part, 0 to 1, of its way."""
    hung = leaf.hung
    half = float(leaf.thickness) / 2
    left, width = float(hung.left), float(leaf.width)
    y = -float(hung.plane)
    shut = ((left, y - half), (left + width, y - half), (left + width, y + half), (left, y + half))
    found = (along(Placement(origin=(x, y, 0.0)), hung.motion, part).origin for x, y in shut)
    return tuple((x, y) for x, y, _ in found)
