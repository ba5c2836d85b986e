"""What is cut for one hinge, full size: a flap's mortise on the edge, or a cup in the back.

| 35 |                  the mortise lies on the hinge edge, the knuckles' face at the foot;
~  ___  ~                 the cup lies on the back, the hinge edge at the foot
| (   ) |  22.5
|_______|__
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from typing import assert_never

from parametric.drawing.chains import FIRST, Chain, Link, Stop, place_chains
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import caption, wave
from parametric.drawing.papers import scale_words
from parametric.drawing.plane import Point, around
from parametric.drawing.primitives import Circle, Label
from parametric.drawing.shaped import flattened
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.hardware.butt_hinge import ButtHinges
from parametric.hardware.cup_hinge import CupHinges
from parametric.hardware.pivot import Pivots
from parametric.model import Shaped
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_hardware import HungHinges

_MORTISE = 62.0
"""What a mortise takes up, mm on paper."""
_CAPTION, _OVER = 16.0, 17.0
"""What stands under a cup, and its chains over it, mm on paper."""
_BESIDE = 26.0
"""How much wood is shown past what is cut, mm."""
_BEHIND_CUP = 9.0
"""How much of the back is shown past a cup and its screws, mm."""


def hinge_cuts(job: Subject, leaf: Leaf, hung: HungHinges) -> list[Shaped]:
    """The shaped cuts that hinges make in the stile they hang."""
    group = next(g for g in job.assembly.groups if g.name == leaf.name)
    part = next(p for p in group.parts if p.name == f"{leaf.name} / {hung.side} stile")
    return [cut for cut in part.cuts if isinstance(cut, Shaped) and cut.name.startswith("hinge")]


def one_hinge_height(hung: HungHinges) -> float:
    """What the picture of one takes up, mm on paper; 0 where nothing is drawn of it."""
    match hung.hinges:
        case ButtHinges():
            return _MORTISE
        case CupHinges() as hinges:
            return _CAPTION + _shown_behind(hinges) + _OVER
        case Pivots():
            return 0.0
        case _:
            assert_never(hung.hinges)


def draw_one_hinge(draft: Draft, job: Subject, leaf: Leaf, hung: HungHinges, at: Point) -> None:
    """What is cut for one hinge, its lower left corner at `at`."""
    match hung.hinges:
        case ButtHinges() as hinges:
            _draw_mortise(draft, job, leaf, hung, hinges, at)
        case CupHinges() as hinges:
            _draw_cup(draft, job, leaf, hung, hinges, at)
        case Pivots():
            pass
        case _:
            assert_never(hung.hinges)


# --- a mortise -----------------------------------------------------------------------------


def _draw_mortise(
    draft: Draft,
    job: Subject,
    leaf: Leaf,
    hung: HungHinges,
    hinges: ButtHinges,
    at: Point,
) -> None:
    """One mortise on the edge, full size: its length, its width, the wood behind it."""
    cut = hinge_cuts(job, leaf, hung)[0]
    shape = around(flattened(cut.outline))
    wide = float(leaf.thickness)
    scale = 1.0 if shape.width + 2 * _BESIDE <= 200.0 else 2.0
    origin = (at[0] + 16.0 + _BESIDE / scale, at[1] + 16.0)
    view = draft.view("hinge mortise", scale, origin)
    u0 = shape.x0
    low, high = -_BESIDE, shape.width + _BESIDE
    # The face that the knuckles stand on lies at the foot.
    turned = shape.y0 > 1e-6
    ring = [(u - u0, wide - v if turned else v) for u, v in flattened(cut.outline)]
    for y in (0.0, wide):
        draft.line("edge", view.at((low, y)), view.at((high, y)), view.name)
    for x in (low, high):
        wave(draft, view.at((x, 0.0)), view.at((x, wide)), view.name, 0.9)
    draft.path("cut", view.path(tuple(ring)), view.name, closed=True)
    draft.reserve(around(view.path(tuple(ring))))
    _mortise_chains(draft, job, view, hinges, wide)
    words = Label(
        text=f"{'face' if hung.face == 'front' else 'back'}, with the knuckle",
        at=(view.x(high) + 3.0, view.y(0.0) - TEXT / 2),
        view=view.name,
    )
    draft.add_first([words])
    beside = "jamb" if leaf.hung.edge(hung.side) == "hinge" else "next leaf"
    caption(
        draft,
        (view.x(low), at[1] + 5.4),
        "Mortise for one flap",
        f"{scale_words(scale, job.rules.unit)}, on the hinge edge; the {beside}'s is alike",
    )


def _mortise_chains(
    draft: Draft, job: Subject, view: View, hinges: ButtHinges, thick: float
) -> None:
    fine, mortise = job.rules.fine, hinges.mortise
    top = view.y(thick)
    length, wide = float(mortise.length), float(mortise.width)
    left = view.x(-_BESIDE) - 1.4
    place_chains(
        draft,
        [
            Chain(
                view=view,
                axis="across",
                line=top + FIRST - 3.0,
                stops=(Stop(at=0.0, foot=view.y(wide)), Stop(at=length, foot=view.y(wide))),
                links=(Link(figure=mortise.length, rule=fine),),
            ),
            Chain(
                view=view,
                axis="up",
                line=left - FIRST + 3.0,
                stops=(
                    Stop(at=0.0, foot=left),
                    Stop(at=wide, foot=view.x(0.0)),
                    Stop(at=thick, foot=left),
                ),
                links=(
                    Link(figure=mortise.width, rule=fine),
                    Link(figure=mortise.behind, rule=fine),
                ),
            ),
        ],
    )


# --- a cup ---------------------------------------------------------------------------------


def _shown_behind(hinges: CupHinges) -> float:
    """How far from the edge the back is shown, mm."""
    far = float(hinges.boring + hinges.cup / 2)
    if hinges.pilots is not None:
        far = max(far, float(hinges.boring + hinges.pilots.behind + hinges.pilots.width / 2))
    return far + _BEHIND_CUP


def _draw_cup(
    draft: Draft,
    job: Subject,
    leaf: Leaf,
    hung: HungHinges,
    hinges: CupHinges,
    at: Point,
) -> None:
    """One cup in the back and its screws, full size: how wide, how far from the edge."""
    middle = float(hinges.places[-1].centre + leaf.trim)
    reach = float(hinges.cup) / 2 + _BESIDE
    high = _shown_behind(hinges)
    view = draft.view("hinge cup", 1.0, (at[0] + 16.0 + reach, at[1] + _CAPTION))
    draft.line("edge", view.at((-reach, 0.0)), view.at((reach, 0.0)), view.name)
    corners = [(-reach, 0.0), (-reach, high), (reach, high), (reach, 0.0)]
    for a, b in itertools.pairwise(corners):
        wave(draft, view.at(a), view.at(b), view.name, 0.9)
    for cut in hinge_cuts(job, leaf, hung):
        ring = tuple((u - middle, v) for u, v in flattened(cut.outline))
        if abs(around(ring).centre[0]) >= reach:
            continue
        if cut.name == "hinge cup":
            centre = view.at((0.0, float(hinges.boring)))
            radius = float(hinges.cup) / 2 / view.scale
            draft.add(Circle(layer="cut", centre=centre, radius=radius, view=view.name))
        else:
            draft.path("cut", view.path(ring), view.name, closed=True)
    place_chains(draft, list(_cup_chains(job, view, hinges, reach, high)))
    words = Label(
        text="hinge edge", at=(view.x(reach) + 3.0, view.y(0.0) - TEXT / 2), view=view.name
    )
    draft.add_first([words])
    caption(
        draft,
        (view.x(-reach), at[1] + 5.4),
        "Cup of one hinge",
        f"{scale_words(1.0, job.rules.unit)}, in the back; {job.fine(hinges.depth)} deep",
    )


def _cup_chains(
    job: Subject, view: View, hinges: CupHinges, reach: float, high: float
) -> Iterator[Chain]:
    """From the hinge edge to the cup's middle and on to its screws; across the cup, and them."""
    fine, half = job.rules.fine, float(hinges.cup) / 2
    boring, left, top = float(hinges.boring), view.x(-reach) - 1.4, view.y(high)
    up = [Stop(at=0.0, foot=left), Stop(at=boring, foot=view.x(-half))]
    links = [Link(figure=hinges.boring, rule=fine)]
    line = top + FIRST - 5.0
    if hinges.pilots is not None:
        apart, behind = float(hinges.pilots.apart) / 2, hinges.pilots.behind
        up.append(Stop(at=boring + float(behind), foot=view.x(-apart)))
        links.append(Link(figure=behind, rule=fine))
        row = view.y(boring + float(behind))
        yield Chain(
            view=view,
            axis="across",
            line=line + fine.next_chain,
            stops=(Stop(at=-apart, foot=row), Stop(at=apart, foot=row)),
            links=(Link(figure=hinges.pilots.apart, rule=fine),),
        )
    yield Chain(view=view, axis="up", line=left - FIRST + 3.0, stops=tuple(up), links=tuple(links))
    middle = view.y(boring)
    yield Chain(
        view=view,
        axis="across",
        line=line,
        stops=(Stop(at=-half, foot=middle), Stop(at=half, foot=middle)),
        links=(Link(figure=hinges.cup, before="Ø", rule=fine),),
    )
