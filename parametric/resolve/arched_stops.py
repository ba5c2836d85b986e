r"""A pane between stops under a curve.

.-------.        the stop under the curve is sawn to it from a board, as wide as the
.-' .-----. `-.     others; it ends level where the inner edges meet, and the upright
|___/       \___|    stops run up square under it
|   |       |   |
|   |_______|   |    their lower ends are mitred with the stop at the foot
|__/_________\__|
"""

from __future__ import annotations

from parametric.catalog.glass_facts import MASS
from parametric.figures import Figure, named, smallest
from parametric.infill.glass import (
    ArchedStop,
    GlassSpec,
    Pane,
    bites,
    glass_in_it,
    nominal_thickness,
    stops_round,
    true_thickness,
    unit_sizes,
)
from parametric.names import join
from parametric.outlines import Outline, Vertex, area_of, backwards, moved
from parametric.resolve.bar_places import Span
from parametric.resolve.head import LeafHead
from parametric.shapes.curve import length_along


def arched_pane_in_stops(
    glass: GlassSpec, name: str, span: Span, head: LeafHead, frame: Figure
) -> Pane:
    """The opening under the curve less the clearance all round, square to every edge.

    Args:
        glass: as written.
        name: the pane's.
        span: the opening.
        head: the curve over it.
        frame: thickness of the frame, mm.

    Source: common practice, no source.
    """

    def at(quantity: str, value: float, unit: str = "mm") -> Figure:
        return named(join(name, quantity), value, unit)

    clear = at("clearance", glass.clearance)
    thick = at("thickness", true_thickness(glass))
    solid = glass_in_it(glass)
    stop = glass.stop[0]
    low, floor = span.left + clear, span.foot + clear
    width = at("width", span.width - 2 * clear)
    right = low + width
    outline = _under(head, (low, right), floor, -clear)
    area = Figure(area_of(outline), op="area of the outline", unit="mm2")
    sight = (span.left + stop, span.left + span.width - stop)
    top = head.most(*sight, join(name, "daylight to"), out=-stop)
    opening = head.most(span.left, span.left + span.width, join(name, "opening to"))
    return Pane(
        name=name,
        written=glass,
        kind=glass.kind,
        width=width,
        height=at("height", head.most(low, right, join(name, "highest"), out=-clear) - floor),
        nominal=at("nominal thickness", nominal_thickness(glass)),
        thickness=thick,
        clearance=clear,
        clearances=(clear, clear),
        bites=bites(name, stop - clear, stop - clear),
        tape=at("tape thickness", glass.tape),
        left=low,
        foot=floor,
        daylight=(span.width - 2 * stop, at("daylight height", top - span.foot - stop)),
        opening=(span.width, at("opening height", opening - span.foot)),
        weight=at("weight", area * (thick if solid is None else solid) * MASS / 1e6, "kg"),
        stops=stops_round(
            glass,
            name,
            (span.left, span.foot),
            (span.width, span.height),
            frame,
            _stop(glass, name, span, head, (low, floor)),
        ),
        outline=outline,
        unit=unit_sizes(glass, name),
        edges=(
            at("left edge height", head.height(low, join(name, "left edge"), out=-clear) - floor),
            at(
                "right edge height",
                head.height(right, join(name, "right edge"), out=-clear) - floor,
            ),
        ),
    )


def _under(head: LeafHead, reach: tuple[float, float], floor: float, out: float) -> Outline:
    """What lies under a curve beside the head's, from its own low left corner."""
    low, right = (float(x) for x in reach)
    return moved(
        (
            Vertex(low, float(floor)),
            Vertex(right, float(floor)),
            *backwards(head.edge(low, right, out=out)),
        ),
        -low,
        -float(floor),
    )


def _stop(
    glass: GlassSpec, name: str, span: Span, head: LeafHead, corner: tuple[float, float]
) -> ArchedStop:
    """The stop under the curve, and how far the upright ones run up to it."""

    def at(quantity: str, value: float) -> Figure:
        return named(join(name, quantity), value)

    stop = glass.stop[0]
    left, right = span.left, span.left + span.width
    inner = (left + stop, right - stop)
    ends = tuple(
        head.height(x, join(name, f"{side} stop to"), out=-stop)
        for side, x in zip(("left", "right"), inner, strict=True)
    )
    foot = at("arched stop from", smallest(*ends))
    crown = head.most(left, right, join(name, "arched stop to"))
    dx, dy = -float(left), -float(foot)
    edge = moved(head.edge(float(inner[0]), float(inner[1]), out=-stop), dx, dy)
    level = tuple(float(end) + dy for end in ends)
    return ArchedStop(
        length=at("arched stop length", span.width),
        height=at("arched stop board", crown - foot),
        foot=foot,
        left_up=at("left stop length", ends[0] - span.foot),
        right_up=at("right stop length", ends[1] - span.foot),
        along=at(
            "arched stop along its edge",
            length_along(head.curve, left - head.left, right - head.left),
        ),
        outer=moved(head.edge(float(left), float(right)), dx, dy),
        inner=(Vertex(0.0, level[0]), *edge, Vertex(float(span.width), level[1])),
        sight=moved(
            _under(head, inner, span.foot + stop, -stop),
            float(inner[0] - corner[0]),
            float(span.foot + stop - corner[1]),
        ),
    )
