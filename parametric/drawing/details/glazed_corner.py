"""The corner of a glazed opening from the face: stops mitred, the pane's edge hidden behind them."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.layers import Layer
from parametric.drawing.marks import wave
from parametric.drawing.pieces import Piece, silhouette
from parametric.drawing.plane import Box, Point, Polygon, around, cut_path
from parametric.drawing.seen_and_cut import front_linework
from parametric.drawing.sheet import View
from parametric.infill.glass import Pane, Stops
from parametric.resolve.leaf import Leaf

_PAST = 14.0
"""How much of rail and stile is shown, mm."""
_SIGHT = 20.0
"""How much of the stops is shown past their mitre, mm."""


def corner_size(stops: Stops) -> float:
    """The side of what is shown, mm."""
    return _PAST + float(stops.width) + _SIGHT


def draw_corner(
    draft: Draft,
    leaf: Leaf,
    pane: Pane,
    stops: Stops,
    pieces: Sequence[Piece],
    at: Point,
    scale: float,
) -> View:
    """The lower right corner of an opening.

    Args:
        draft: the board.
        leaf: the leaf.
        pane: the pane in it.
        stops: what holds it.
        pieces: the leaf's parts in its own frame.
        at: the low left corner of the picture, mm on paper.
        scale: model mm to one mm of paper.
    """
    edge, foot = float(leaf.width - leaf.right_stile), float(stops.foot)
    stop = float(stops.width)
    window = Box(edge - stop - _SIGHT, foot - _PAST, edge + _PAST, foot + stop + _SIGHT)
    view = draft.view(
        "glass in its stops, from the face",
        scale,
        (at[0] - window.x0 / scale, at[1] - window.y0 / scale),
    )
    paper = around((view.at((window.x0, window.y0)), view.at((window.x1, window.y1))))
    for shown in front_linework(pieces, pieces).strokes():
        path = view.path(shown.points)
        _clipped(draft, view, shown.layer, (*path, path[0]) if shown.closed else path, paper)
    for piece in pieces:
        if piece.part.name == pane.name:
            glass = view.path(silhouette(piece))
            _clipped(draft, view, "hidden", (*glass, glass[0]), paper)
    sight = view.at((edge - stop, foot + stop))
    for a, b in (
        ((paper.x0, paper.y0), (paper.x0, sight[1])),
        ((paper.x0, paper.y0), (paper.x1, paper.y0)),
        ((paper.x1, paper.y0), (paper.x1, paper.y1)),
        ((sight[0], paper.y1), (paper.x1, paper.y1)),
    ):
        wave(draft, a, b, view.name, 0.7)
    draft.reserve(paper)
    return view


def _clipped(draft: Draft, view: View, layer: Layer, path: Polygon, paper: Box) -> None:
    """What of a line lies in the picture."""
    for part in cut_path(path, (paper.grown(-1e-4).polygon,)):
        draft.path(layer, part, view.name)
