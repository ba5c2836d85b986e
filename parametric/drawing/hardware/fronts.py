"""A leaf from the front, small, with a numbered ring to each thing that is fixed to it."""

from __future__ import annotations

from collections.abc import Mapping

from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import draw_leaf
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import caption
from parametric.drawing.papers import scale_words
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Circle, Label, Stroke
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.model import Group
from parametric.resolve.leaf import Leaf

_CAPTION = 10.4
_RING = 2.9
_BESIDE = 13.0
"""What the rings take beside a leaf, mm."""


def front_width(leaf: Leaf, scale: float) -> float:
    """Across, mm."""
    return float(leaf.width) / scale + _BESIDE


def front_height(leaf: Leaf, scale: float) -> float:
    """Up, mm."""
    return (float(leaf.height) + 2 * float(leaf.trim)) / scale + _CAPTION


def draw_front(
    draft: Draft,
    job: Subject,
    leaf: Leaf,
    group: Group,
    numbers: Mapping[str, int],
    at: Point,
    scale: float,
) -> None:
    """One leaf; `at` is the low left corner of what it takes."""
    foot = at[1] + _CAPTION + float(leaf.trim) / scale
    view = draft.view(f"hardware on {leaf.name}", scale, (at[0] + _BESIDE, foot))
    draw_leaf(draft, leaf, group, view)
    side = view.x(0.0) - _BESIDE + _RING + 1.0
    if "groove" in numbers and leaf.guide is not None:
        target = view.at((float(leaf.left_stile) * 0.4, float(leaf.guide.depth)))
        _ring(draft, view, numbers["groove"], (side, target[1] + 4.0), target)
    if "pull" in numbers and leaf.pulls:
        hung = leaf.pulls[0]
        target = view.at((float(hung.across), float(hung.pull.up)))
        right = view.x(float(leaf.width)) + _BESIDE - _RING - 1.0
        from_ = side if hung.side == "left" else right
        _ring(draft, view, numbers["pull"], (from_, target[1]), target)
    if "hangers" in numbers:
        target = view.at((float(leaf.left_stile) * 1.8, float(leaf.height)))
        _ring(draft, view, numbers["hangers"], (side, target[1] - 4.0), target)
    words = scale_words(scale, job.rules.unit)
    caption(draft, (view.x(0.0), at[1] + 4.4), f"Leaf {leaf.letter}", f"{words}, front")


def _ring(draft: Draft, view: View, number: int, centre: Point, target: Point) -> None:
    """A number in a ring and the line from it to its place."""
    way = 1.0 if target[0] > centre[0] else -1.0
    start = (centre[0] + way * _RING, centre[1])
    knee = (start[0] + way * 2.4, centre[1])
    draft.add(
        Circle(layer="edge_fine", centre=centre, radius=_RING, view=view.name),
        Label(
            text=str(number),
            at=(centre[0], centre[1] - TEXT / 2),
            anchor="centre",
            weight="bold",
            view=view.name,
        ),
        Stroke(layer="dims", points=(start, knee, target), view=view.name),
    )
