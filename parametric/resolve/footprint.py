"""Where a leaf stands on the floor, seen from above, anywhere on its way."""

from __future__ import annotations

import math
from collections.abc import Sequence

from parametric.model import Placement, along
from parametric.resolve.leaf import Leaf

Point = tuple[float, float]


def footprint(leaf: Leaf, part: float) -> tuple[Point, ...]:
    """A leaf's four corners, its front two first, when it has gone a part, 0 to 1, of its way.

    A flap covers a rectangle, whose front two are the foremost.
    """
    hung = leaf.hung
    half = float(leaf.thickness) / 2
    left, y = float(hung.left), -float(hung.plane)
    if hung.flap is not None:
        right = left + float(leaf.width)
        foot, top = float(hung.foot), float(hung.foot + leaf.height)
        deep = [
            along(Placement(origin=(left, y + off, z)), hung.motion, part).origin[1]
            for off in (-half, half)
            for z in (foot, top)
        ]
        near, far = min(deep), max(deep)
        return ((left, near), (right, near), (right, far), (left, far))
    return _gone(leaf, (left, left + float(leaf.width)), (y - half, y + half), part)


def handle_footprint(leaf: Leaf, part: float) -> tuple[Point, ...]:
    """The same of its handle, which stands out before its face; nothing where it has none."""
    handle = leaf.handle
    if handle is None:
        return ()
    long = float(handle.across + (handle.apart if handle.level else 0.0))
    middle = float(leaf.hung.left + handle.x)
    face = -float(leaf.hung.plane) - float(leaf.thickness) / 2
    across = (middle - long / 2, middle + long / 2)
    return _gone(leaf, across, (face - float(handle.stands_out), face), part)


def _gone(
    leaf: Leaf, across: tuple[float, float], out: tuple[float, float], part: float
) -> tuple[Point, ...]:
    """A rectangle of a leaf, shut, carried along the leaf's way."""
    (x0, x1), (y0, y1) = across, out
    shut = ((x0, y0), (x1, y0), (x1, y1), (x0, y1))
    found = (along(Placement(origin=(x, y, 0.0)), leaf.hung.motion, part).origin for x, y in shut)
    return tuple((x, y) for x, y, _ in found)


def overlap(one: Sequence[Point], other: Sequence[Point]) -> float:
    """How deep two convex shapes lie in one another, mm; less than 0 is how far apart they are at least.

    Source: the separating axis theorem: two convex shapes are apart exactly where a line along a
    side of one of them parts them.
    """
    least = math.inf
    for shape in (one, other):
        for (ax, ay), (bx, by) in zip(shape, (*shape[1:], shape[0]), strict=True):
            long = math.hypot(bx - ax, by - ay)
            nx, ny = (by - ay) / long, (ax - bx) / long
            a = [x * nx + y * ny for x, y in one]
            b = [x * nx + y * ny for x, y in other]
            least = min(least, max(a) - min(b), max(b) - min(a))
    return least
