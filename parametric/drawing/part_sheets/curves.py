"""Dimensions of a curved edge: its radius, its heights at both ends and at its crown.

They stand in what is cut away, or in plain wood under a curve that leaves it.
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Mapping

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.dimensions import Leader
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.part_sheets.cross_sections import drawn_rule
from parametric.drawing.part_sheets.cut_shapes import own_side
from parametric.drawing.part_sheets.strips import Strip
from parametric.drawing.part_sheets.unfolded import Side, Unfolded
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Label
from parametric.drawing.printing import Rules
from parametric.model import Shaped
from parametric.outlines import arc_of
from parametric.trade.cut_quantities import Quantity
from parametric.trade.part_cuts import CutRow, PartCuts, Size
from parametric.trade.shaped_sizes import Curve, curve_of

_IN = 5.0
"""From the end of a curve to the dimension of its height there, mm on paper."""
_LEAST = 2.0
"""A height that is drawn shorter than this has no room for its strokes, mm on paper."""
_SHORT = 25.0
"""A curve that is drawn shorter than this is measured in the list alone, mm on paper."""
_SHARES = (0.35, 0.65, 0.25, 0.75, 0.45, 0.55, 0.15, 0.85)
"""Where along a curve the arrow of its radius is tried, in turn."""
_LEADERS = ((9.0, 14.0, 6.0, 20.0), (27.0, 34.0, 42.0))
"""How long its leader is, mm on paper: a long one only where no short one finds room."""
_LOW, _LOW_IN = 8.0, 12.0
"""A height drawn lower than this has its value past its strokes, where the places along the piece
are written: it stands this far in, mm on paper."""


def dimension_curves(
    draft: Draft, own: PartCuts, part: Unfolded, strips: Mapping[Side, Strip], rules: Rules
) -> None:
    """Every curve in a broad side: heights as dimensions from the low edge, the radius led to it."""
    for row in own.rows:
        cut = row.cut
        if not isinstance(cut, Shaped) or "face" not in cut.face:
            continue
        curve, strip = curve_of(cut, own.part.blank), strips.get(own_side(cut, part))
        if curve is None or strip is None:
            continue
        if (curve.high - curve.low) / strip.lie.scale < _SHORT:
            continue
        sizes = {s.quantity: s for s in row.degrees if isinstance(s, Size)}
        chains = list(_heights(row, curve, sizes, part, strip, rules))
        place_chains(draft, chains)
        if curve.radii:
            _radius(draft, sizes["round"], curve, cut, part, strip, rules)


def _heights(
    row: CutRow,
    curve: Curve,
    sizes: Mapping[Quantity, Size],
    part: Unfolded,
    strip: Strip,
    rules: Rules,
) -> Iterator[Chain]:
    cut = row.cut
    assert isinstance(cut, Shaped)
    scale = strip.lie.scale

    def inwards(height: float) -> float:
        return scale * (_IN if height / scale >= _LOW else _LOW_IN)

    places: tuple[tuple[Quantity, float, float, float], ...] = (
        ("left height", curve.low, curve.left, inwards(curve.left)),
        ("right height", curve.high, curve.right, -inwards(curve.right)),
        ("crown", curve.crown_at, curve.crown, 0.0),
    )
    for quantity, at, height, off in places:
        size = sizes.get(quantity)
        if size is None or height / strip.lie.scale < _LEAST:
            continue
        along, top = part.on_face(cut.face, at, height, 0.0, strip.side)
        _, foot = part.on_face(cut.face, at, 0.0, 0.0, strip.side)
        view = strip.view(along)
        line = view.x(along + off)
        yield Chain(
            view=view,
            axis="up",
            line=line,
            stops=tuple(
                Stop(at=y, foot=view.x(along) if off else None) for y in sorted((foot, top))
            ),
            links=(Link(figure=size.figure, rule=drawn_rule(size, rules)),),
        )


def _radius(
    draft: Draft,
    size: Size,
    curve: Curve,
    cut: Shaped,
    part: Unfolded,
    strip: Strip,
    rules: Rules,
) -> None:
    """The radius on a leader whose arrow stands square on the curve, from its hollow side."""
    rule = drawn_rule(size, rules)
    text = f"r {rule.dimension(size.figure)}"
    options = []
    tried = itertools.product(_LEADERS, _places(curve, cut, part, strip))
    for long, (target, way) in tried:
        view = strip.view(target[0])
        tip = strip.at(target)
        for far, run in itertools.product(long, (1.0, -1.0)):
            knee = (tip[0] + way[0] * far, tip[1] + way[1] * far)
            landing = (knee[0] + run * 2.0, knee[1])
            label = Label(
                text=text,
                at=(landing[0] + run * 0.8, landing[1] - TEXT / 2),
                anchor="left" if run > 0 else "right",
                layer="dims",
                view=view.name,
                stacked=rule.stacked,
            )
            options.append((tip, knee, landing, label, view.name))
    free = next(
        (
            o
            for o in options
            if draft.free(box := o[3].box.grown(0.4)) and not box.crossed(o[0], o[1])
        ),
        None,
    )
    if free is None:
        draft.unplaced.append(text)
        return
    tip, knee, landing, label, view_name = free
    draft.add(Leader(points=(tip, knee, landing), end="arrow", labels=(label,), view=view_name))


def _places(
    curve: Curve, cut: Shaped, part: Unfolded, strip: Strip
) -> Iterator[tuple[Point, Point]]:
    """Places on the smallest of its arcs, and the way from there to the hollow side, on the side."""
    arcs = [arc for a, b in curve.run if (arc := arc_of(a, b)) is not None]
    least = min(arc.radius for arc in arcs)
    smallest = [arc for arc in arcs if arc.radius < least + 1e-6]
    for arc, share in itertools.product(smallest, _SHARES):
        turn = arc.start + arc.sweep * share
        out = (math.cos(turn), math.sin(turn))
        target = part.on_face(
            cut.face, arc.x + arc.radius * out[0], arc.y + arc.radius * out[1], 0.0, strip.side
        )
        inner = part.on_face(
            cut.face,
            arc.x + (arc.radius - 1) * out[0],
            arc.y + (arc.radius - 1) * out[1],
            0.0,
            strip.side,
        )
        yield target, (inner[0] - target[0], inner[1] - target[1])
