"""A stub tenon in the groove of a stile, cut level through a rail: how long, how thick, how deep."""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, reference, size
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.pieces import leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.subject import Subject
from parametric.joints.stub_tenon import StubTenon

_RAIL = 34.0
"""How much of the rail is shown past its shoulder, mm."""
_STILE = 34.0
"""How much of the stile is shown behind its groove, mm."""


def stub_tenon_joint(job: Subject) -> Detail | None:
    """The lowest rail of the first leaf at its right stile; None where its joints are others."""
    leaf, group = leaf_groups(job)[0]
    joint = leaf.joint
    if not isinstance(joint, StubTenon):
        return None
    rail = leaf.rails[-1]
    low, high = (float(at) for at in rail.between_grooves)
    height = (low + high) / 2
    line, thick = float(leaf.width - leaf.right_stile), float(leaf.thickness)
    deep, long = float(joint.groove_depth), float(joint.length)
    window = Box(
        line - _RAIL,
        -50.0,
        line + min(deep + _STILE, float(leaf.right_stile) - 4.0),
        thick + 50.0,
    )
    draft = board()
    view = draft.view("stub tenon", detail_scale(window.width, thick), ORIGIN)
    cuts = cut_in_window(leaf_pieces(group.parts, group.name), "level", height, window)
    draw_cut(draft, view, cuts, window, Looks())
    fine, over = job.rules.fine, view.y(thick)
    middle, half = thick / 2, float(joint.thickness) / 2
    left = view.x(window.x0) - 1.0
    place_chains(
        draft,
        [
            chain(
                view,
                "across",
                over + FIRST,
                ((line, over), (line + long, view.y(middle + half))),
                (Link(figure=joint.length, rule=fine),),
            ),
            chain(
                view,
                "across",
                over + FIRST + fine.next_chain,
                ((line, over + FIRST), (line + deep, view.y(middle + half))),
                (reference(joint.groove_depth, fine),),
            ),
            chain(
                view,
                "up",
                left - FIRST + 1.0,
                ((0.0, left), (middle - half, view.x(line)), (middle + half, view.x(line))),
                (Link(figure=joint.cheek, rule=fine), Link(figure=joint.thickness, rule=fine)),
            ),
        ],
    )
    say(
        draft,
        view.at((line + long * 0.6, middle)),
        "dot",
        (f"tenon {size(job, joint.thickness)} thick,", "glued on its cheeks"),
        fan((1.0, 1.0), (1.0, -1.0), (0.4, -1.0)),
        view.name,
    )
    return finished(
        draft,
        "stub tenon",
        f"Stub tenon, {rail.noun}",
        f"{at_scale(job, view.scale)}, plan section, face below. All rails alike; the groove runs "
        "the whole length of the stile.",
        Call(on="leaf", by="section", box=Box(window.x0, height, window.x1, height)),
    )
