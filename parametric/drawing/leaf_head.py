"""The curve under a leaf's arched rails: its springing, how high it stands at each stile, its radius.

|  top rail       |
|         ___---  | <- least height
|    _--          | <- rise at this stile
|_-_ _ _ _ _ _ _ _|    springing
"""

from __future__ import annotations

from parametric.drawing.chains import Chain, Link, Stop, place_chains
from parametric.drawing.details.callouts import fan, say, say_of_one
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import around_boxes
from parametric.drawing.primitives import Label, reach
from parametric.drawing.sheet import Hatch, View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.resolve.head import LeafHead
from parametric.resolve.leaf import Leaf
from parametric.resolve.rail import Rail
from parametric.shapes.curve import Bow

_IN = 4.5
"""From a stile to the chain of the curve's height beside it, mm on paper."""
_ROOM_FOR = 2
"""Radii that stand over one curve; an ellipse has more, and its template a table of them."""
_OTHER_SHARES = (0.5, 0.7, 0.2, 0.85)
"""Where along a curve its words may point besides, where the first place has no room."""
_LEAST = 0.05
"""A curve that stands no higher over the springing at a stile springs there, mm."""


def arched_rails(leaf: Leaf) -> tuple[tuple[Rail, LeafHead], ...]:
    """The rails with a curved underside, each with its curve, from the top; all have one curve."""
    return tuple((rail, rail.head) for rail in leaf.rails if rail.head is not None)


def arched_rail(leaf: Leaf) -> tuple[Rail, LeafHead] | None:
    """The highest of them; None where every rail is straight."""
    return next(iter(arched_rails(leaf)), None)


def radii(head: LeafHead) -> tuple[Figure, ...]:
    """The radii of a curve's arcs, each once."""
    found = {float(p.radius): p.radius for p in head.curve.pieces if isinstance(p, Bow)}
    return tuple(found.values())


def draw_arch(draft: Draft, job: Subject, leaf: Leaf, view: View, *, sizes: bool) -> None:
    """The springing lines; with `sizes` their names, the curve's height at either stile, its radius.

    A twin of the other hand has the lines alone: its sizes stand on the first leaf.
    """
    left = float(leaf.left_stile)
    right = float(leaf.width - leaf.right_stile)
    found = arched_rails(leaf)
    for _, head in found:
        y = view.y(float(head.springing))
        draft.line("centre", (view.x(left), y), (view.x(right), y), view.name)
    if not sizes:
        return
    for number, (rail, head) in enumerate(found):
        _heights(draft, job, leaf, rail, head, view)
        if number == 0:
            _radius(draft, job, leaf, head, view)
        _springing(draft, leaf, head, view)


def _heights(
    draft: Draft, job: Subject, leaf: Leaf, rail: Rail, head: LeafHead, view: View
) -> None:
    """How high the curve stands at either stile, and what is left of the rail over it."""
    left = float(leaf.left_stile)
    right = float(leaf.width - leaf.right_stile)
    wood = job.rules.wood
    for side, x, height in (("left", left, head.at_left), ("right", right, head.at_right)):
        if float(height) <= _LEAST:
            continue
        way = 1.0 if side == "left" else -1.0
        over = rail.left_end if side == "left" else rail.right_end
        assert over is not None
        chain = Chain(
            view=view,
            axis="up",
            line=view.x(x) + way * _IN,
            stops=(
                Stop(at=float(head.springing), foot=None),
                Stop(at=float(head.springing + height), foot=view.x(x)),
                Stop(at=float(rail.top), foot=view.x(x)),
            ),
            links=(Link(figure=height, rule=wood), Link(figure=over, rule=wood)),
        )
        place_chains(draft, [chain])


def _radius(draft: Draft, job: Subject, leaf: Leaf, head: LeafHead, view: View) -> None:
    """Every radius with a line to the curve, from the rail over it; of more than two, where they are."""
    left = float(leaf.left_stile)
    right = float(leaf.width - leaf.right_stile)
    lower_left = float(head.at_left) <= float(head.at_right)
    texts = [f"r {job.wood(radius)}" for radius in radii(head)]
    if len(texts) > _ROOM_FOR:
        texts = ["arcs: see the rail's template"]
    for number, text in enumerate(texts):
        shares = [0.3 + 0.35 * number, *(() if len(texts) > 1 else _OTHER_SHARES)]
        xs = [left + (s if lower_left else 1.0 - s) * (right - left) for s in shares]
        targets = [view.at((x, float(head.height(x, "curve")))) for x in xs]
        first, colon, rest = text.partition(": ")
        wordings = ((text,), (f"{first}:", rest)) if colon else ((text,),)
        ways = fan((-0.3, 1.0), (0.3, 1.0), (-0.8, 1.0), (0.8, 1.0), (0.3, -1.0), (-0.3, -1.0))
        say_of_one(draft, targets, "arrow", wordings, ways, view.name)


def _springing(draft: Draft, leaf: Leaf, head: LeafHead, view: View) -> None:
    """The name of the line the curve springs from, off the strokes that say glass."""
    left = float(leaf.left_stile)
    right = float(leaf.width - leaf.right_stile)
    y = view.y(float(head.springing))
    hatched = [
        around_boxes([reach(part) for part in e.primitives()])
        for e in draft.elements
        if isinstance(e, Hatch) and e.strokes
    ]
    places = [
        Label(text="springing", at=(view.x(left + share * (right - left)), y + off), view=view.name)
        for off in (-1.2 - TEXT, 1.2, -2.4 - TEXT)
        for share in (0.02, 0.1, 0.2, 0.3, 0.4, 0.52, 0.6)
    ]
    clear = [p for p in places if not any(p.box.meets(box) for box in hatched)]
    found = draft.first_free(clear)
    if found is not None:
        draft.add(found)
        return
    target = (view.x(left + 0.12 * (right - left)), y)
    ways = fan((0.5, -1.0), (0.8, -1.0), (-0.3, -1.0), (1.0, -0.4))
    say(draft, target, "dot", ("springing",), ways, view.name)
