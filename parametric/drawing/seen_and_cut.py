"""Leaves as a view shows them: to the front, and where a section cuts them."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Sequence

from parametric.drawing.draft import Draft
from parametric.drawing.hatching import (
    Bow,
    Run,
    end_grain,
    glass_cut,
    glass_seen,
    long_grain,
)
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import TEXT
from parametric.drawing.linework import Linework, seen
from parametric.drawing.pieces import (
    CutPiece,
    Piece,
    Plane,
    covers,
    cut_through,
    front,
    nearer,
    silhouette,
)
from parametric.drawing.plane import Polygon, around, outside_all
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Hatch, View
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite
from parametric.resolve.panel_field import PanelField

_THIN = 1.7
"""A cut piece thinner than this on paper, mm, is drawn in fine line without hatching."""


def openings(leaf: Leaf) -> tuple[PanelField | Lite, ...]:
    """What fills a leaf between its rails, panels before lites, each from the foot up."""
    return (*leaf.panels[::-1], *leaf.lites[::-1])


def draw_linework(draft: Draft, view: View, work: Linework) -> None:
    """Put collected lines on paper."""
    for shown in work.strokes():
        draft.add(
            Stroke(
                layer=shown.layer,
                points=view.path(shown.points),
                closed=shown.closed,
                view=view.name,
            )
        )


def front_linework(all_pieces: Sequence[Piece], wanted: Iterable[Piece]) -> Linework:
    """What is seen of some pieces from the front: no tenons, no tape, no backs."""
    return seen([p for p in all_pieces if _seen(p)], [p for p in wanted if _seen(p)])


def _seen(piece: Piece) -> bool:
    return piece.part.noun != "loose tenon" and piece.part.material.look != "tape"


def draw_glass_strokes(
    draft: Draft, view: View, all_pieces: Sequence[Piece], wanted: Iterable[Piece]
) -> None:
    """The three strokes that say glass, where the pane is seen."""
    found = covers([p for p in all_pieces if _seen(p)])
    for piece in wanted:
        if piece.part.material.look != "glass":
            continue
        pane = silhouette(piece)
        hatch = glass_seen(around(view.path(pane)), view.name)
        before = [view.path(outline) for outline in nearer(found, front(piece), pane)]
        strokes = [part for a, b in hatch.strokes for part in outside_all(a, b, before)]
        draft.add(dataclasses.replace(hatch, strokes=tuple(strokes)))


def cuts_through(pieces: Iterable[Piece], plane: Plane, at: float) -> tuple[CutPiece, ...]:
    """Every piece that a section passes through."""
    found = (cut_through(piece, plane, at) for piece in pieces)
    return tuple(cut for cut in found if cut is not None and cut.piece.part.noun != "loose tenon")


def draw_cuts(draft: Draft, view: View, cuts: Iterable[CutPiece], *, marks: bool = False) -> None:
    """Cut pieces with their hatching; neighbours bow opposite ways.

    Args:
        draft: the sheet.
        view: the section.
        cuts: the cut pieces.
        marks: letter each piece that has room, its hatching left out under the mark.
    """
    bows: dict[str, int] = {}
    for cut in cuts:
        look = cut.piece.part.material.look
        if look == "tape" and view.scale > 2:
            continue
        outline = view.path(cut.outline)
        box = around(outline)
        thin = min(box.width, box.height) < _THIN
        draft.add(
            Stroke(
                layer=_outline_layer(cut, view, thin=thin),
                points=outline,
                closed=True,
                view=view.name,
            )
        )
        region: tuple[Polygon, ...] = (outline,)
        label = Label(
            text=cut.piece.part.mark,
            at=(box.centre[0], box.centre[1] - TEXT / 2),
            anchor="centre",
            weight="bold",
            view=view.name,
        )
        if marks and not cut.piece.part.supplied and box.holds(label.box.grown(0.8)):
            region = (outline, label.box.grown(0.6).polygon)
            draft.add(label)
        if look == "glass" and view.scale <= 2:
            draft.add(glass_cut(region, view.name))
        if look != "timber" or thin:
            continue
        index = bows[cut.piece.group] = bows.get(cut.piece.group, 0) + 1
        draft.add(_wood(cut, view, region, index))


def _wood(cut: CutPiece, view: View, region: tuple[Polygon, ...], index: int) -> Hatch:
    box = around(region[0])
    if cut.run == "end":
        ways: tuple[Bow, Bow] = ("below", "above") if box.width > box.height else ("left", "right")
        small = max(box.width, box.height) < 12
        gap = (1.9 if small else 2.4) if view.scale <= 2 else 1.05
        far = max(0.75 * max(box.width, box.height), 25.0 if view.scale <= 2 else 0.0)
        return end_grain(region, view.name, ways[index % 2], gap, far)
    run: Run = "across" if cut.run == "long across" else "up"
    return long_grain(region, view.name, run, 1.7 if view.scale <= 2 else 0.95)


def _outline_layer(cut: CutPiece, view: View, *, thin: bool) -> Layer:
    if cut.piece.part.material.look == "tape":
        return "edge_fine"
    if cut.piece.part.supplied:
        return "adjacent"
    if thin:
        return "edge_fine"
    if view.scale <= 2:
        return "cut_heavy"
    return "cut" if view.scale <= 5 else "edge"
