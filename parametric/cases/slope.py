r"""A top that follows a sloping ceiling: the angles are the ceiling's own, and every end is sawn to it.

seen from the front, rising to the left
 |\_____
 | \    \____          top: over the sides, its ends plumb
 |  |\__     \____
 |  |   \___      \    under face: what sides, partitions and shelves stop at
 |__|_______\______\
"""

from __future__ import annotations

import math
from dataclasses import dataclass

from parametric.figures import Figure, cosine, named, smallest, tilt
from parametric.names import join

BLADE_TILTS = 45.0
"""How far the blade of a saw tilts, deg. Common practice, no source."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Under:
    """Where a top that slopes ends at its left and its right, from the case's foot, and what is
    left over it to the ceiling, plumb, mm.
    """

    left: Figure
    right: Figure
    gap: Figure


@dataclass(frozen=True, slots=True, kw_only=True)
class Slope:
    """The outer face of a sloping top, mm from the case's foot, at its left and its right.

    `angle` is off the level, deg, more than 0 where it rises to the right; `down` is from its
    outer to its under face, `gap` from the ceiling to its outer face, both plumb.
    """

    left: Figure
    right: Figure
    width: Figure
    angle: Figure
    down: Figure
    gap: Figure

    def outer(self, x: float) -> Figure:
        """The outer face over a place from the case's left, mm."""
        return self.left + (self.right - self.left) * x / self.width

    def under(self, x: float) -> Figure:
        """The under face over a place from the case's left, mm."""
        return self.outer(x) - self.down

    def lowest(self, left: float, right: float) -> Figure:
        """The under face where it is lowest over a stretch, mm."""
        return smallest(self.under(left), self.under(right))

    def length(self, across: Figure) -> Figure:
        """Of a board that lies along it, its ends plumb, mm.

        Along the slope, and on to the end of the longer of two sides that are `across` apart.
        """
        turn = math.sin(math.radians(abs(float(self.angle))))
        return (self.width + across * turn) / cosine(self.angle)

    @property
    def open(self) -> Figure:
        """What is left over it to the ceiling, square to it, mm."""
        return self.gap * cosine(self.angle)


def size_slope(*, name: str, under: Under, width: Figure, thickness: Figure) -> Slope:
    """The slope of a case's top.

    Args:
        name: of the case.
        under: where it ends.
        width: of the case, mm.
        thickness: of the top, mm.
    """
    angle = named(join(name, "slope of its top"), tilt(under.right - under.left, width), "deg")
    return Slope(
        left=named(join(name, "height at the left"), under.left),
        right=named(join(name, "height at the right"), under.right),
        width=width,
        angle=angle,
        down=named(join(name, "top, plumb"), thickness / cosine(angle)),
        gap=named(join(name, "under the ceiling"), under.gap),
    )
