"""The moulding round a leaf's openings, on its stiles and its rails.

A step that is taken from the face at the leaf's foot or top is deeper than the moulding: a
stile's run ends at it, and a rail has its shoulder there without anything that goes past it.
"""

from __future__ import annotations

import itertools

from parametric.hangings.hanging import Side
from parametric.model import Blank, Cut
from parametric.parts.lying import rail_blank, rail_left
from parametric.profiles.meeting import laid
from parametric.profiles.on_rails import rail_cuts
from parametric.profiles.on_stiles import Opening, stile_cuts
from parametric.profiles.sticking import Broad
from parametric.resolve.leaf import Leaf
from parametric.resolve.rail import Rail
from parametric.resolve.sticking import sight_above, sight_below


def stile_sticking(leaf: Leaf, side: Side, front: Broad) -> tuple[Cut, ...]:
    """Along a stile's inner edge; `front` is the broad face that looks to the front."""
    if leaf.sticking is None:
        return ()
    left, right = _sides(leaf)
    trim, wide = float(leaf.trim), float(leaf.width)
    origin, across = ((0.0, -trim), 1.0) if side == "left" else ((wide, -trim), -1.0)
    frame = (origin, (0.0, 1.0), (across, 0.0))
    foot, top = _steps(leaf)
    return stile_cuts(
        leaf.sticking.on(front),
        Blank(
            length=leaf.stile_blank,
            width=leaf.left_stile if side == "left" else leaf.right_stile,
            thickness=leaf.thickness,
        ),
        edge="high edge",
        wood=(trim + foot, trim + float(leaf.height) - top),
        openings=tuple(
            Opening(
                low=laid(sight_above(below, left, right), *frame),
                high=laid(sight_below(above, left, right), *frame),
            )
            for below, above in itertools.pairwise(reversed(leaf.rails))
        ),
    )


def rail_sticking(leaf: Leaf, rail: Rail) -> tuple[Cut, ...]:
    """A rail's ends, and the mouldings along its edges."""
    if leaf.sticking is None:
        return ()
    left, right = _sides(leaf)
    frame = ((rail_left(leaf, rail), float(rail.foot)), (1.0, 0.0), (0.0, 1.0))
    lowest, highest = rail is leaf.rails[-1], rail is leaf.rails[0]
    foot, top = _steps(leaf)
    return rail_cuts(
        leaf.sticking.on("high face"),
        rail_blank(leaf, rail),
        low=None if lowest else laid(sight_below(rail, left, right), *frame),
        high=None if highest else laid(sight_above(rail, left, right), *frame),
        steps=(foot if lowest else 0.0, top if highest else 0.0),
    )


def _sides(leaf: Leaf) -> tuple[float, float]:
    """The sight edges of the two stiles, from the leaf's left edge, mm."""
    return float(leaf.left_stile), float(leaf.width - leaf.right_stile)


def _steps(leaf: Leaf) -> tuple[float, float]:
    """How far the face is stepped back at the leaf's foot and top, mm."""
    foot, top = (
        sum(float(s.width) for s in leaf.hung.rebates if s.face == "front" and s.edge == edge)
        for edge in ("foot", "top")
    )
    return foot, top
