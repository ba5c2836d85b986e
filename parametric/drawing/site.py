"""The site as measured and the leaves in it: what every view of an arrangement shares."""

from __future__ import annotations

import itertools

from parametric.drawing.arrangement_layout import WALL, Extent
from parametric.drawing.plane import Box, Polygon
from parametric.drawing.seen_and_cut import openings
from parametric.hangings.hanging import HungLeaf, Side
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite
from parametric.resolve.panel_field import PanelField
from parametric.trade.standing import comes_towards


def level_cut(door: Door) -> float:
    """The height of the plan's cut: through the lowest opening of the leaves, in the world."""
    if door.hanging.case is not None:
        return _through_most(door)
    leaf = min(door.leaves, key=lambda one: float(one.hung.foot))
    up = min((opening_middle(field) for field in openings(leaf)), default=float(leaf.height) / 2)
    return float(leaf.hung.foot) + up


def _through_most(door: Door) -> float:
    """The lowest height at which most fronts of a case are cut, most of them through an opening."""
    levels = [
        float(leaf.hung.foot) + opening_middle(field)
        for leaf in door.leaves
        for field in openings(leaf)
    ]
    middles = [float(leaf.hung.foot + leaf.height / 2) for leaf in door.leaves]

    def cut(level: float) -> tuple[int, int, float]:
        through = [
            leaf
            for leaf in door.leaves
            if float(leaf.hung.foot) < level < float(leaf.hung.foot + leaf.height)
        ]
        open_there = sum(
            float(field.foot) < level - float(leaf.hung.foot) < float(field.foot + field.height)
            for leaf in through
            for field in openings(leaf)
        )
        return len(through), open_there, -level

    return max(levels or middles, key=cut)


def opening_middle(field: PanelField | Lite) -> float:
    """How far up an opening is cut level: its middle, or its lowest row's where bars part it."""
    if isinstance(field, Lite) and field.cell is not None:
        return float(field.rows[0] + field.cell[1] / 2)
    return float(field.foot + field.height / 2)


def upright_cut(door: Door, *, third_angle: bool = False) -> float:
    """The X of the upright cut, off the middle of a leaf's openings: through the leaf that the
    other stands beyond. Seen from the left that is the front leaf, from the right the last.
    """
    leaf, share = door.leaves[-1 if third_angle else 0], 0.38 if third_angle else 0.62
    return float(leaf.hung.left) + clear_of_bars(leaf, share)


def clear_of_bars(leaf: Leaf, share: float) -> float:
    """A place across a leaf, a share of its shoulder from the left stile; where an upright bar
    stands there, the middle of the pane beside it. From the leaf's left edge, mm.
    """
    across = float(leaf.left_stile) + share * float(leaf.shoulder)
    for bar in (bar for lite in leaf.lites for bar in lite.bars if bar.upright):
        face = float(bar.high - bar.low)
        if float(bar.low) - face < across < float(bar.high) + face:
            return float(bar.high) + 2 * face
    return across


def leaf_boxes(door: Door) -> list[Box]:
    """Each leaf's outline when shut, in the world's X and Z."""
    return [
        Box(
            float(leaf.hung.left),
            float(leaf.hung.foot),
            float(leaf.hung.left + leaf.width),
            float(leaf.hung.foot) + float(leaf.height),
        )
        for leaf in door.leaves
    ]


def jambs_at(door: Door, height: float) -> tuple[float, float]:
    """The sides of the opening at a height, as measured: X of the left and of the right one."""
    up = door.opening.outline()
    half = len(up) // 2
    return _crossed(up[:half], height), _crossed(tuple(reversed(up[half:])), height)


def _crossed(side: Polygon, height: float) -> float:
    """Where a side measured from its foot up stands at a height; plumb past its ends."""
    if height <= side[0][1]:
        return side[0][0]
    for (x0, z0), (x1, z1) in itertools.pairwise(side):
        if height <= z1:
            return x0 + (x1 - x0) * (height - z0) / (z1 - z0)
    return side[-1][0]


def hung_by(hung: HungLeaf) -> Side | None:
    """The edge that a turning leaf is hung by: its hinges, its pivot, or the leaf before it."""
    by_fold = hung.side_of("fold") if hung.side_of("hinge") is None else None
    return hung.side_of("hinge") or hung.side_of("pivot") or by_fold


def slides(hung: HungLeaf) -> Side | None:
    """The way a leaf slides as it opens; None where it does not."""
    if hung.travel is None or float(hung.travel) == 0:
        return None
    return "right" if float(hung.travel) > 0 else "left"


def hung_words(door: Door, index: int) -> tuple[str, str]:
    """How a leaf hangs, in two halves: which leaf and which track, or its hinges and the way it
    opens.
    """
    leaf = door.leaves[index]
    hung = leaf.hung
    if hung.flap is not None:
        turns = "lifts up" if hung.flap.side == "top" else "drops down"
        return f"hinged at the {hung.flap.side}", turns
    if hung.swing is not None:
        side = hung_by(hung)
        word = {"hinge": "hinged", "pivot": "pivots", "fold": "folds"}
        turns = "turns" if side is None else f"{word.get(hung.edge(side), 'turns')} {side}"
        return turns, "opens to you" if comes_towards(leaf) else "opens away"
    if door.hanging.case is not None:
        return ("drawer", "draws out") if hung.motion else ("fixed front", "does not open")
    track = "" if hung.track is None else f"{door.hanging.tracks[hung.track].word} track"
    if track and door.hanging.passing_gap is not None:
        off = float(hung.plane)
        behind = sum(float(plane) > off + 1e-6 for plane in set(door.hanging.planes))
        before = sum(float(plane) < off - 1e-6 for plane in set(door.hanging.planes))
        place = "front" if not behind else "middle" if before else "rear"
        return f"{place} leaf", track
    way = slides(hung)
    return "stands still" if way is None else f"slides {way}", track or f"leaf {leaf.letter}"


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
