"""A rail's end on a moulded stile, cut level beside its tenon: the moulding, and how the two meet."""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, size
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.pieces import leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.subject import Subject
from parametric.resolve.leaf import Leaf
from parametric.resolve.rail import Rail

_RAIL = 34.0
"""How much of the rail is shown past its shoulder, mm."""
_STILE = 40.0
"""How much of the stile is shown, mm."""


def moulded_corner(job: Subject) -> Detail | None:
    """The lowest rail of the first leaf at its right stile; None where its edges are square."""
    leaf, group = leaf_groups(job)[0]
    sticking = leaf.sticking
    if sticking is None:
        return None
    rail, moulding = leaf.rails[-1], sticking.moulding
    height = _beside_tenon(leaf, rail)
    line, thick = float(leaf.width - leaf.right_stile), float(leaf.thickness)
    wide, deep = float(moulding.width), float(moulding.depth)
    far = line + min(_STILE, float(leaf.right_stile) - 4.0)
    window = Box(line - _RAIL, -50.0, far, thick + 50.0)
    draft = board()
    view = draft.view("moulded corner", detail_scale(window.width, thick), ORIGIN)
    cuts = cut_in_window(leaf_pieces(group.parts, group.name), "level", height, window)
    draw_cut(draft, view, cuts, window, Looks())
    fine, under = job.rules.fine, view.y(0.0)
    right = view.x(far) + 1.0
    place_chains(
        draft,
        [
            chain(
                view,
                "across",
                under - FIRST,
                ((line, under), (line + wide, under)),
                (Link(figure=moulding.width, rule=fine),),
            ),
            chain(
                view,
                "up",
                right + FIRST - 1.0,
                ((0.0, right), (deep, view.x(line))),
                (Link(figure=moulding.depth, rule=fine),),
            ),
        ],
    )
    coped = sticking.corners == "coped"
    say(
        draft,
        view.at((line + wide / 2, deep * 0.3)),
        "dot",
        (
            f"{rail.noun}, coped over the {moulding.name}"
            if coped
            else f"{rail.noun}, behind the mitre",
            f"{size(job, sticking.reach)} past its shoulder",
        ),
        fan((-1.0, -1.0), (-0.4, -1.0), (0.4, -1.0)),
        view.name,
    )
    return finished(
        draft,
        "moulded corner",
        f"{moulding.name.capitalize()}, rails {sticking.corners}",
        f"{at_scale(job, view.scale)}, plan section beside the tenon, face below. Round every "
        "opening, on the face alone; all corners alike.",
        Call(on="leaf", by="section", box=Box(window.x0, height, window.x1, height)),
    )


def _beside_tenon(leaf: Leaf, rail: Rail) -> float:
    """A height in a rail where nothing is let into its end or into the stile there, mm."""
    low, high = float(rail.foot), float(rail.top)
    if leaf.guide is not None:
        low += float(leaf.guide.depth)
    low += max((float(s.width) for s in leaf.hung.rebates if s.edge == "foot"), default=0.0)
    high -= max(float(leaf.sticking.reach) if leaf.sticking else 0.0, _let_in(leaf, rail))
    edges = [low, *(float(at) for slot in rail.slots for at in (slot.low, slot.high)), high]
    rooms = list(zip(edges[::2], edges[1::2], strict=True))
    start, end = max(rooms, key=lambda room: room[1] - room[0])
    return (start + end) / 2


def _let_in(leaf: Leaf, rail: Rail) -> float:
    """How far into a rail's upper edge a groove or a rebate goes, mm."""
    rebates = [float(one.rebate.frame) for one in leaf.lites if one.rebate is not None]
    groove = 0.0 if rail.high_groove is None else float(rail.high_groove)
    return max(groove, *rebates, 0.0)
