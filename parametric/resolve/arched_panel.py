"""A panel whose top follows the arch over it, standing in a groove round the curve.

|         _.-----._           the bottom of the rail's groove
|      .-'  _____  '-.        the panel's own edge
|    .'  .-'     '-.  '.      the rail's underside
|   |  .'           '.  |
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.infill.panel_kinds import AnyPanel
from parametric.names import join
from parametric.outlines import Outline, Vertex, area_of, backwards
from parametric.resolve.head import LeafHead


@dataclass(frozen=True, slots=True, kw_only=True)
class ArchOver:
    """The arch over a panel, mm.

    The panel's edge lies `out` outside the curve, as far as at its sides: where the curve is
    steep it moves as they do. It stands from `left` in the leaf, its foot `foot` above that of
    the leaf, whose groove it enters by `at_foot`.
    """

    head: LeafHead
    out: Figure
    at_foot: Figure
    left: Figure
    foot: Figure


def under_the_arch(
    panel: AnyPanel, head: LeafHead, *, left: Figure, width: Figure, foot: Figure
) -> tuple[AnyPanel, ArchOver]:
    """A panel made for a straight opening up to the springing, with its top to the curve.

    Args:
        panel: its sizes, `height` to the springing.
        head: the curve.
        left: the opening's left edge in the leaf, mm.
        width: of the opening, mm.
        foot: of the opening, above that of the leaf, mm.

    Source: geometry; common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(panel.name, quantity), value, unit)

    upright = panel.grain == "upright"
    sides, at_foot = panel.engagement_made, panel.end_engagement
    if not upright:
        sides, at_foot = at_foot, sides
    out = at("outside the arch", sides)
    low = at("left edge", left + (width - panel.width) / 2)
    floor = at("foot", foot - at_foot)
    high = low + panel.width
    tall = at(
        "height under the arch", head.most(low, high, join(panel.name, "highest"), out=out) - floor
    )
    area = Figure(
        area_of(_outline(head, out, low, high, floor)), op="area of the outline", unit="mm2"
    )
    volume = at("volume under the arch", at("area", area, "mm2") * panel.thickness, "mm3")
    weight = at("weight under the arch", volume * panel.material.density / 1e9, "kg")
    return (
        dataclasses.replace(
            panel,
            along=tall if upright else panel.along,
            across=panel.across if upright else tall,
            volume=volume,
            weight=weight,
        ),
        ArchOver(head=head, out=out, at_foot=at_foot, left=low, foot=floor),
    )


def _outline(head: LeafHead, out: Figure, low: Figure, high: Figure, floor: Figure) -> Outline:
    chain = head.edge(float(low), float(high), out=float(out))
    return (
        Vertex(float(low), float(floor)),
        Vertex(float(high), float(floor)),
        *backwards(chain),
    )


def groove_top(head: LeafHead, depth: Figure, *, left: Figure, width: Figure, name: str) -> Figure:
    """How far up the stiles the groove round an arch runs: to its highest beside either, mm.

    One stop serves both stiles; where the other one's would be lower, the rail's end hides it.
    """
    right = left + width
    sides = (
        head.most(left - depth, left, join(name, "groove in the left stile to"), out=depth),
        head.most(right, right + depth, join(name, "groove in the right stile to"), out=depth),
    )
    return max(sides, key=float)
