"""The site as measured and the leaves in it: what every view of an arrangement shares."""

from __future__ import annotations

import itertools

from parametric.drawing.arrangement_layout import WALL, Extent
from parametric.drawing.leafviews import openings
from parametric.drawing.plane import Box
from parametric.resolve.door import Door


def level_cut(door: Door) -> float:
    """The height of the plan's cut: through the lowest opening of the leaves, in the world."""
    leaf = door.leaves[0]
    up = min((float(f.foot + f.height / 2) for f in openings(leaf)), default=float(leaf.height) / 2)
    return float(door.hanging.floor_gap) + up


def upright_cut(door: Door, *, third_angle: bool = False) -> float:
    """The X of the upright cut, off the middle of a leaf's openings: through the leaf that the
    other stands beyond. Seen from the left that is the front leaf, from the right the last.
    """
    hanging, index = door.hanging, -1 if third_angle else 0
    leaf, share = door.leaves[index], 0.38 if third_angle else 0.62
    return float(hanging.lefts[index] + leaf.left_stile) + share * float(leaf.shoulder)


def leaf_boxes(door: Door) -> list[Box]:
    """Each leaf's outline when shut, in the world's X and Z."""
    foot = float(door.hanging.floor_gap)
    return [
        Box(float(left), foot, float(left + leaf.width), foot + float(leaf.height))
        for left, leaf in zip(door.hanging.lefts, door.leaves, strict=True)
    ]


def floor_at(door: Door, x: float) -> float:
    """The floor at a place across, level beyond the readings."""
    line = door.opening.floor_line()
    if x <= line[0][0]:
        return line[0][1]
    for (x0, z0), (x1, z1) in itertools.pairwise(line):
        if x <= x1:
            return z0 + (z1 - z0) * (x - x0) / (x1 - x0)
    return line[-1][1]


def wall_depth(extent: Extent, scale: float) -> float:
    """How much wall is drawn behind its face, mm on paper: past leaves that hang inside it."""
    return max(WALL, -extent.off_least / scale + 3.0)
