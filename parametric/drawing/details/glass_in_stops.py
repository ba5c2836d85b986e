"""A pane between its stops, cut level at a stile: what holds it, what it rests in, what stays free."""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.glazed_corner import corner_size, draw_corner
from parametric.drawing.details.lines import beyond, chain
from parametric.drawing.details.panel_in_stile import clear_of_pulls
from parametric.drawing.details.unit_panes import unit_panes
from parametric.drawing.details.words import at_scale, reference, size
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.pieces import leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.primitives import reach
from parametric.drawing.sheet import View, primitives
from parametric.drawing.subject import Subject
from parametric.infill.glass import Pane, Stops
from parametric.resolve.leaf import Leaf

_STILE = 36.0
_GLASS = 30.0
_BETWEEN = 12.0
"""How much stile, and glass past the stops, is shown; from the section to the corner, mm."""


def glass_in_stops(job: Subject) -> Detail | None:
    """The edge of the first leaf's lowest pane; None where no stops hold glass in it."""
    leaf, group = leaf_groups(job)[0]
    lite = next((lite for lite in reversed(leaf.lites) if lite.pane.stops is not None), None)
    if lite is None or lite.pane.stops is None:
        return None
    pane = max(lite.panes, key=lambda one: (-float(one.foot), float(one.left)))
    stops = pane.stops
    assert stops is not None
    stop = float(stops.width)
    height = clear_of_pulls(
        leaf, float(stops.foot) + 2 * stop, float(stops.foot + stops.up) - 2 * stop
    )
    edge, thick = float(leaf.width - leaf.right_stile), float(leaf.thickness)
    window = Box(
        edge - stop - _GLASS,
        -50.0,
        edge + min(_STILE, float(leaf.right_stile) - 4.0),
        thick + 50.0,
    )
    draft = board()
    view = draft.view("glass in its stops", detail_scale(window.width, thick), ORIGIN)
    below, deep = float(stops.below_face), float(stops.depth)
    # The rail below, and the stops that lie on it.
    levels = (0.0, below, below + deep, thick - below - deep, thick - below, thick)
    beyond(draft, view, *(((window.x0, y), (edge - stop, y)) for y in levels))
    beyond(draft, view, *(((edge - stop, y), (edge, y)) for y in (0.0, thick)))
    pieces = leaf_pieces(group.parts, group.name)
    cuts = unit_panes(cut_in_window(pieces, "level", height, window), lite, "level")
    draw_cut(draft, view, cuts, window, Looks())
    _chains(draft, view, job, (pane, stops), edge, thick, window)
    _words(draft, view, job, leaf, (pane, stops), edge)
    right = max(reach(part).x1 for e in draft.elements for part in primitives(e))
    low = view.y(thick / 2) - corner_size(stops) / view.scale / 2
    draw_corner(draft, leaf, pane, stops, pieces, (right + _BETWEEN, low), view.scale)
    return finished(
        draft,
        "glass in its stops",
        "Glass between stops",
        f"{at_scale(job, view.scale)}, plan section, face below, and a corner from the face. "
        f"Pane {job.fine(pane.width, down=True)} × {job.fine(pane.height, down=True)} in an "
        f"opening of {job.wood(stops.across)} × {job.wood(stops.up)}"
        + (" up to the springing." if stops.arch is not None else "."),
        Call(on="leaf", by="section", box=Box(window.x0, height, window.x1, height)),
    )


def _chains(
    draft: Draft,
    view: View,
    job: Subject,
    held: tuple[Pane, Stops],
    edge: float,
    thick: float,
    window: Box,
) -> None:
    """Bite and clearance over the stops, the stop's own width; through the thickness beside them."""
    fine = job.rules.fine
    pane, stops = held
    stop, clear = float(stops.width), float(pane.clearances[0])
    glass, below, deep = float(pane.thickness), float(stops.below_face), float(stops.depth)
    over = view.y(thick)
    glass_top = view.y(thick / 2 + glass / 2)
    place_chains(
        draft,
        [
            chain(
                view,
                "across",
                over + FIRST,
                ((edge - stop, over), (edge - clear, glass_top), (edge, over)),
                (Link(figure=pane.bites[0], rule=fine), Link(figure=pane.clearances[0], rule=fine)),
            ),
            chain(
                view,
                "across",
                over + FIRST + fine.next_chain,
                ((edge - stop, over + FIRST), (edge, over + FIRST)),
                (reference(stops.width, fine),),
            ),
        ],
    )
    left = view.x(window.x0) - 1.0
    places = (
        0.0,
        below,
        below + deep,
        thick / 2 - glass / 2,
        thick / 2 + glass / 2,
        thick - below - deep,
        thick - below,
        thick,
    )
    depth = reference(stops.depth, fine)
    low = Link(figure=stops.below_face, rule=fine) if below > 0 else None
    place_chains(
        draft,
        [
            chain(
                view,
                "up",
                left - FIRST,
                tuple((y, left) for y in places),
                (
                    low,
                    depth,
                    None,
                    reference(pane.thickness, fine),
                    None,
                    depth,
                    None,
                ),
            )
        ],
    )


def _words(
    draft: Draft, view: View, job: Subject, leaf: Leaf, held: tuple[Pane, Stops], edge: float
) -> None:
    pane, stops = held
    thick, stop = float(leaf.thickness), float(stops.width)
    front = float(stops.below_face) + float(stops.depth)
    say(
        draft,
        view.at((edge - stop / 2, float(stops.below_face) + float(stops.depth) / 2)),
        "dot",
        ("stops mitred at the corners,", "pinned to the frame, not to the glass"),
        fan((-0.5, -1.0), (0.5, -1.0)),
        view.name,
    )
    if float(pane.tape) > 0:
        say(
            draft,
            view.at((edge - stop + 1.0, thick - front - float(pane.tape) / 2)),
            "arrow",
            (f"tape {size(job, pane.tape)}, both faces",),
            fan((-0.9, 1.0), (-1.0, 0.4)),
            view.name,
        )
    say(
        draft,
        view.at((edge - float(pane.clearances[0]) / 2, thick / 2)),
        "arrow",
        ("edge clear all round;", "the pane rests on blocks"),
        fan((1.0, -1.0), (1.0, 1.0)),
        view.name,
    )
