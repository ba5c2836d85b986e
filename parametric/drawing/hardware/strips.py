"""The top of a leaf from above and its foot from below, each a strip with what is fixed there.

Both have the leaf's left edge at the left; the face lies below in the one, above in the other.
"""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Chain, Link, Stop, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import caption
from parametric.drawing.plane import Point, rectangle
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.joints.loose_tenon import LooseTenon
from parametric.resolve.leaf import Leaf
from parametric.trade.leaf_hardware import LeafHardware

LEFT = 13.0
"""What a strip takes left of the leaf, mm."""
_UNDER = 5.6
_CAPTION = 10.4


def top_height(job: Subject, leaf: Leaf, scale: float) -> float:
    """What the strip of a top takes, mm."""
    return float(leaf.thickness) / scale + FIRST + job.rules.wood.next_chain + _CAPTION + 3.0


def foot_height(leaf: Leaf, scale: float) -> float:
    """What the strip of a foot takes, mm."""
    return float(leaf.thickness) / scale + 4.0 + _CAPTION + 3.0


def draw_top(
    draft: Draft, job: Subject, leaf: Leaf, own: LeafHardware, at: Point, scale: float, words: str
) -> None:
    """A leaf's top edge; `at` is the low left corner of its strip."""
    view = draft.view(f"{leaf.name}, top", scale, (at[0] + LEFT, at[1] + _CAPTION))
    wide, thick = float(leaf.width), float(leaf.thickness)
    _edge(draft, view, leaf, upside_down=False)
    half, middle = float(leaf.joint.mortise_width) / 2, thick / 2
    deep = float(leaf.joint.mortise_depth)
    # A loose tenon has a slot in the rail too, a stub tenon is the rail's own.
    inside = deep if isinstance(leaf.joint, LooseTenon) else 0.0
    for low, high in (
        (float(leaf.left_stile) - deep, float(leaf.left_stile) + inside),
        (wide - float(leaf.right_stile) - inside, wide - float(leaf.right_stile) + deep),
    ):
        slot = rectangle(low, middle - half, high, middle + half)
        draft.path("hidden", view.path(slot), view.name, closed=True)
    _middle(draft, view, leaf, middle)
    over = view.y(thick)
    wood = job.rules.wood
    first, last = float(own.first), float(own.last)
    chains = [_from_face(view, job, own, 1.0)]
    if float(own.room) > 0:
        chains.append(
            Chain(
                view=view,
                axis="across",
                line=over + FIRST - 2.0,
                stops=(
                    Stop(at=0.0, foot=over),
                    Stop(at=first, foot=over),
                    Stop(at=last, foot=over),
                    Stop(at=wide, foot=over),
                ),
                links=(
                    Link(figure=own.first, rule=wood),
                    Link(figure=own.room, after="for the hangers", rule=wood),
                    Link(figure=own.kept_right, rule=wood),
                ),
            )
        )
    place_chains(draft, chains)
    _name(draft, view, f"Leaf {leaf.letter}, top, from above", words, at)


def draw_foot(
    draft: Draft, job: Subject, leaf: Leaf, own: LeafHardware, at: Point, scale: float, words: str
) -> None:
    """A leaf's foot; `at` is the low left corner of its strip."""
    thick = float(leaf.thickness)
    view = draft.view(f"{leaf.name}, foot", scale, (at[0] + LEFT, at[1] + _CAPTION + thick / scale))
    _edge(draft, view, leaf, upside_down=True)
    guide = leaf.guide
    middle = -thick / 2
    if guide is not None:
        half = float(guide.width) / 2
        for y in (middle - half, middle + half):
            ends = (view.at((0.0, y)), view.at((float(leaf.width), y)))
            draft.line("edge", *ends, view.name)
    _middle(draft, view, leaf, middle)
    place_chains(draft, [_from_face(view, job, own, -1.0)])
    _name(draft, view, f"Leaf {leaf.letter}, foot, from below", words, at)


def _edge(draft: Draft, view: View, leaf: Leaf, *, upside_down: bool) -> None:
    """The outline, and where rail and stiles meet."""
    way = -1.0 if upside_down else 1.0
    wide, deep = float(leaf.width), way * float(leaf.thickness)
    low, high = sorted((0.0, deep))
    outline = view.path(rectangle(0.0, low, wide, high))
    draft.path("edge", outline, view.name, closed=True)
    for x in (float(leaf.left_stile), wide - float(leaf.right_stile)):
        draft.line("edge_fine", view.at((x, low)), view.at((x, high)), view.name)


def _middle(draft: Draft, view: View, leaf: Leaf, middle: float) -> None:
    ends = ((view.x(0.0) - 4.0, view.y(middle)), (view.x(float(leaf.width)) + 4.0, view.y(middle)))
    draft.line("centre", *ends, view.name)
    face = Label(
        text="face",
        at=(view.x(float(leaf.width)) + 6.0, view.y(0.0) - TEXT / 2),
        view=view.name,
    )
    draft.add(face)


def _from_face(view: View, job: Subject, own: LeafHardware, way: float) -> Chain:
    """From the face to the middle line, left of the leaf."""
    left = view.x(0.0)
    places = sorted((0.0, way * float(own.middle)))
    return Chain(
        view=view,
        axis="up",
        line=left - 7.0,
        stops=tuple(Stop(at=y, foot=left - (0.0 if y == 0.0 else 4.0)) for y in places),
        links=(Link(figure=own.middle, rule=job.rules.wood),),
    )


def _name(draft: Draft, view: View, title: str, words: str, at: Point) -> None:
    caption(draft, (view.x(0.0), at[1] + _UNDER - 1.6), title, words)
