"""Which way a part lies in its leaf, where a rail's blank does, and what faces are called."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.model import Blank, Face
from parametric.resolve.leaf import Leaf
from parametric.resolve.rail import Rail

RIGHT, LEFT = (1.0, 0.0, 0.0), (-1.0, 0.0, 0.0)
UP, DOWN = (0.0, 0.0, 1.0), (0.0, 0.0, -1.0)

LEVEL: Mapping[Face, str] = {
    "low end": "left end",
    "high end": "right end",
    "low edge": "lower edge",
    "high edge": "upper edge",
    "low face": "back",
    "high face": "face",
}
"""Rails and level bars, lengthways to the right."""

UPRIGHT: Mapping[Face, str] = {
    "low end": "foot",
    "high end": "top",
    "low edge": "left edge",
    "high edge": "right edge",
    "low face": "face",
    "high face": "back",
}
"""Upright bars, lengthways up."""


def rail_blank(leaf: Leaf, rail: Rail) -> Blank:
    """A rail's blank, as long as it is with what goes past its shoulders."""
    return Blank(length=rail.blank, width=rail.height, thickness=leaf.thickness)


def rail_left(leaf: Leaf, rail: Rail) -> float:
    """Where a rail's blank begins in its leaf, from the left, mm."""
    return float(leaf.left_stile) - float(rail.reach)
