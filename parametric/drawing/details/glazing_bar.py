"""A bar cut across: planted on both faces of a pane, or as thick as the frame with stops beside it.

A rebated bar is shown beside its pane's edge, in the detail of glass in a rebate.
"""

from __future__ import annotations

import itertools

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import beyond, chain
from parametric.drawing.details.unit_panes import unit_panes
from parametric.drawing.details.words import at_scale, reference, size
from parametric.drawing.dimensions import Axis
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.pieces import Plane, leaf_pieces
from parametric.drawing.plane import Box, Point
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.resolve.bar_places import Bar, FullBar, PlantedBar
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite

_GLASS = 30.0
"""How much glass is shown on either side, mm."""


def glazing_bar(job: Subject) -> Detail | None:
    """The first upright bar of the first leaf's lowest lite, or its lowest level one; None without."""
    leaf, group = leaf_groups(job)[0]
    lite = next(
        (one for one in reversed(leaf.lites) if isinstance(one.section, PlantedBar | FullBar)),
        None,
    )
    if lite is None or lite.cell is None:
        return None
    uprights = [bar for bar in lite.bars if bar.upright]
    bar = uprights[0] if uprights else min(lite.bars, key=lambda one: float(one.low))
    across, up = (float(size) for size in lite.cell)
    low = min(float(pane.foot) for pane in lite.panes)
    sight = low if lite.pane.stops is None else low + float(lite.pane.bites[1])
    at = sight + up / 2 if uprights else float(bar.start) + across / 2
    if isinstance(lite.section, FullBar) and not uprights:
        at = float(lite.pane.left) + float(lite.pane.width) / 2
    plane: Plane = "level" if uprights else "upright"
    window, view, draft = _cut(leaf, bar, plane)
    pieces = leaf_pieces(group.parts, group.name)
    cuts = unit_panes(cut_in_window(pieces, plane, at, window), lite, plane)
    draw_cut(draft, view, cuts, window, Looks())
    _draw_sizes(draft, view, job, leaf, lite, bar)
    ring = Box(
        *(
            (window.x0, at, window.x1, at)
            if uprights
            else (at - 30.0, float(bar.low) - 10.0, at + 30.0, float(bar.high) + 10.0)
        )
    )
    return finished(
        draft,
        "glazing bar",
        "Bar between stops" if isinstance(lite.section, FullBar) else "Bars planted on the glass",
        f"{at_scale(job, view.scale)}, {'plan section, face below' if uprights else 'upright section, face to the left'}. "
        + _made(job, lite),
        Call(on="leaf", by="section" if uprights else "ring", box=ring),
    )


def _cut(leaf: Leaf, bar: Bar, plane: Plane) -> tuple[Box, View, Draft]:
    """What is shown round a bar, its view and its board."""
    thick = float(leaf.thickness)
    low, high = float(bar.low) - _GLASS, float(bar.high) + _GLASS
    draft = board()
    view = draft.view("glazing bar", detail_scale(high - low, thick), ORIGIN)
    if plane == "level":
        return Box(low, -50.0, high, thick + 50.0), view, draft
    return Box(-50.0, low, thick + 50.0, high), view, draft


def _made(job: Subject, lite: Lite) -> str:
    """How the bars are joined, in a caption."""
    section = lite.section
    if isinstance(section, FullBar):
        return (
            f"Tenon {job.fine(section.tenon_thickness)} × {job.wood(section.face)}, "
            f"{job.fine(section.tenon_length)} into the frame; crossings half-lapped."
        )
    assert isinstance(section, PlantedBar)
    crossing = (
        "Crossings half-lapped, level bars outside"
        if section.half_lapped
        else "Uprights run through, level pieces butt against them"
    )
    grid = lite.pane.grid
    under = (
        ""
        if grid is None
        else f" In the unit, the glazier's bar under each: {job.fine(grid.most, down=True)} wide at most."
    )
    return f"{crossing}.{under}"


def _draw_sizes(draft: Draft, view: View, job: Subject, leaf: Leaf, lite: Lite, bar: Bar) -> None:
    """The bar's face along the pane; through the leaf what stands where."""
    fine, section, upright = job.rules.fine, lite.section, bar.upright
    assert section is not None
    thick, low, high = float(leaf.thickness), float(bar.low), float(bar.high)
    pane = lite.pane

    def point(along: float, deep: float) -> Point:
        return (along, deep) if upright else (deep, along)

    def paper(along: float, deep: float) -> Point:
        return view.at(point(along, deep))

    near, far = low - _GLASS, high + _GLASS
    if isinstance(section, PlantedBar):
        beds = (float(section.front_bed), float(section.back_bed))
        faces = (beds[0] - float(section.front), beds[1] + float(section.back))
        places = sorted({0.0, faces[0], beds[0], beds[1], faces[1], thick})
        links = {
            (0.0, faces[0]): Link(figure=section.below_face, rule=fine),
            (faces[0], beds[0]): Link(figure=section.front, rule=fine),
            (beds[1], faces[1]): Link(figure=section.back, rule=fine),
            (faces[1], thick): Link(figure=section.below_back, rule=fine),
        }
        for level in (0.0, thick):
            beyond(draft, view, (point(near, level), point(far, level)))
    else:
        places, links = [0.0, thick], {(0.0, thick): reference(leaf.thickness, fine)}
    across: Axis = "across" if upright else "up"
    through: Axis = "up" if upright else "across"
    side = paper(low, thick)
    start = paper(near, 0.0)
    line = (side[1] + FIRST) if upright else paper(low, 0.0)[0] - FIRST - 2.0
    rim = side[1] if upright else paper(low, 0.0)[0]
    place_chains(
        draft,
        [
            chain(
                view,
                across,
                line,
                ((low, rim), (high, rim)),
                (Link(figure=section.face, rule=fine),),
            ),
            chain(
                view,
                through,
                (start[0] - 1.0 - FIRST) if upright else paper(far, 0.0)[1] + 1.0 + FIRST,
                tuple(
                    (at, start[0] - 1.0 if upright else paper(far, 0.0)[1] + 1.0) for at in places
                ),
                tuple(links.get(pair) for pair in itertools.pairwise(places)),
            ),
        ],
    )
    if isinstance(section, PlantedBar):
        middle = (low + high) / 2
        bedded = (
            f"tape {size(job, section.tape)}, both faces"
            if float(section.tape) > 0
            else "bonded to the glass, both faces"
        )
        say(
            draft,
            paper(middle + (high - low) / 3, float(section.back_bed - section.tape / 2)),
            "arrow",
            (bedded,),
            fan((1.0, 1.0), (1.0, -1.0)),
            view.name,
        )
    else:
        held = pane.stops
        assert held is not None
        say(
            draft,
            paper(high + float(held.width) / 2, float(held.below_face + held.depth / 2)),
            "dot",
            ("every pane in stops of its own",),
            fan((1.0, -1.0), (0.5, -1.0)),
            view.name,
        )
