"""A whole frame: two stiles, and three straight rails, moulded round both openings, mm."""

from __future__ import annotations

import itertools

from parametric.figures import Figure
from parametric.model import Blank, Part, Placement
from parametric.outlines import Outline, Vertex
from parametric.profiles.meeting import laid
from parametric.profiles.moulding import Meets
from parametric.profiles.on_rails import rail_cuts
from parametric.profiles.on_stiles import Opening, stile_cuts
from parametric.profiles.sticking import Sticking
from tests.profiles.corners import MOULDINGS, OAK

WIDE, HIGH, THICK, STILE = 500.0, 900.0, 44.0, 95.0
RAILS = ((0.0, 140.0), (400.0, 480.0), (800.0, 900.0))
"""Each rail's foot and top, from the bottom."""
OPENING = WIDE - 2 * STILE
HEIGHTS = (400.0 - 140.0, 800.0 - 480.0)


def frame(name: str, meets: Meets, *, both: bool = False) -> tuple[Part, ...]:
    """Stiles left and right, then rails from the bottom."""
    moulding = MOULDINGS[name]

    def on(front: str) -> Sticking:
        back = "high face" if front == "low face" else "low face"
        faces = (front, back) if both else (front,)
        return Sticking(moulding=moulding, faces=faces, meets=meets)  # type: ignore[arg-type]

    def sight(height: float, *, above: bool) -> Outline:
        """A rail's edge in the leaf: its lower one to the right, its upper one to the left."""
        ends = (Vertex(STILE, height), Vertex(WIDE - STILE, height))
        return ends if not above else ends[::-1]

    parts: list[Part] = []
    blank = Blank(length=Figure(HIGH), width=Figure(STILE), thickness=Figure(THICK))
    for side in ("left", "right"):
        left = side == "left"
        origin, y = ((0.0, 0.0), (1.0, 0.0)) if left else ((WIDE, 0.0), (-1.0, 0.0))
        openings = [
            Opening(
                low=laid(sight(low, above=True), origin, (0.0, 1.0), y),
                high=laid(sight(high, above=False), origin, (0.0, 1.0), y),
            )
            for (_, low), (high, _) in itertools.pairwise(RAILS)
        ]
        parts.append(
            Part(
                name=f"{side} stile",
                noun="stile",
                mark="S",
                material=OAK,
                blank=blank,
                placement=Placement(
                    origin=(origin[0], 0.0 if left else THICK, 0.0),
                    x=(0.0, 0.0, 1.0),
                    y=(y[0], 0.0, 0.0),
                ),
                cuts=stile_cuts(
                    on("low face" if left else "high face"),
                    blank,
                    edge="high edge",
                    wood=(0.0, HIGH),
                    openings=openings,
                ),
            )
        )
    reach = float(moulding.width)
    for number, (foot, top) in enumerate(RAILS):
        blank = Blank(
            length=Figure(OPENING + 2 * reach), width=Figure(top - foot), thickness=Figure(THICK)
        )
        origin = (STILE - reach, foot)
        low = None if number == 0 else laid(sight(foot, above=False), origin, (1, 0), (0, 1))
        high = None if number == 2 else laid(sight(top, above=True), origin, (1, 0), (0, 1))
        parts.append(
            Part(
                name=f"rail {number}",
                noun="rail",
                mark="R",
                material=OAK,
                blank=blank,
                placement=Placement(
                    origin=(origin[0], THICK, foot), x=(1.0, 0.0, 0.0), y=(0.0, 0.0, 1.0)
                ),
                cuts=rail_cuts(on("high face"), blank, low=low, high=high),
            )
        )
    return tuple(parts)
