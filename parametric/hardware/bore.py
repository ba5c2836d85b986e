"""A round bore as an outline on its face."""

from __future__ import annotations

from parametric.outlines import Outline, rounded_rectangle


def circle(u: float, v: float, width: float) -> Outline:
    """A bore of this width about (u, v): two half circles."""
    x, y, half = float(u), float(v), float(width) / 2
    return rounded_rectangle((x - half, y - half, x + half, y + half), (half, half, half, half))
