"""A loose tenon where its slot comes nearest to a groove, cut along the middle of the leaf."""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.joint_places import Joint, tightest_joint
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, reference
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.pieces import leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.joints.loose_tenon import LooseTenon
from parametric.names import short
from parametric.resolve.leaf import Leaf
from parametric.trade.paperwork import Paperwork

_SIDE = 15.0
"""How much wood is shown past the ends of the slots, mm."""
_PAST = 17.0
"""How much is shown past the rail's edge, mm."""
_SLOT = 28.0
"""How much of the slot is shown, mm."""


def loose_tenon_joint(job: Subject, paper: Paperwork) -> Detail | None:
    """The tightest joint of the first leaf, at its right stile; None where rails have no slots."""
    leaf, group = leaf_groups(job)[0]
    sizes = leaf.joint
    if not isinstance(sizes, LooseTenon):
        return None
    joint = tightest_joint(leaf)
    line = float(leaf.width - leaf.right_stile)
    deep = float(sizes.slot_depth)
    right = line + min(deep + _SIDE, float(leaf.right_stile) - 3.0)
    if joint.edge == "high":
        low, high = float(joint.slot.high) - _SLOT, float(joint.rail.top) + _PAST
    else:
        low, high = float(joint.rail.foot) - _PAST, float(joint.slot.low) + _SLOT
    window = Box(line - deep - _SIDE, low, right, high)
    draft = board()
    view = draft.view("loose tenon", detail_scale(window.width, window.height), ORIGIN)
    pieces = leaf_pieces(group.parts, group.name)
    cuts = cut_in_window(pieces, "flat", float(leaf.thickness) / 2, window)
    draw_cut(draft, view, cuts, window, Looks(), outline="cut")
    _behind_panel(draft, view, joint, line, window)
    _chains(draft, view, job, paper, leaf, sizes, joint, line, window)
    _words(draft, view, job, leaf, sizes, joint, line)
    noun = short(joint.rail.name)
    return finished(
        draft,
        "loose tenon",
        f"Loose tenon, {noun}",
        f"{at_scale(job, view.scale)}, cut along the middle of the "
        "thickness, seen from the face. All joints alike.",
        Call(on="leaf", by="ring", box=window),
    )


def _behind_panel(draft: Draft, view: View, joint: Joint, line: float, window: Box) -> None:
    """The edges of rail and stile, which the panel hides."""
    high = joint.edge == "high"
    if (joint.rail.high_groove if high else joint.rail.low_groove) is None:
        return
    edge = float(joint.rail.top if high else joint.rail.foot)
    far = window.y1 if high else window.y0
    for a, b in (((window.x0, edge), (line, edge)), ((line, edge), (line, far))):
        draft.line("hidden", view.at(a), view.at(b), view.name)


def _chains(
    draft: Draft,
    view: View,
    job: Subject,
    paper: Paperwork,
    leaf: Leaf,
    sizes: LooseTenon,
    joint: Joint,
    line: float,
    window: Box,
) -> None:
    fine = job.rules.fine
    deep, long = float(sizes.slot_depth), float(sizes.tenon_length)
    high = joint.edge == "high"
    end = float(joint.slot.high if high else joint.slot.low)
    base = view.y(window.y0) - 1.4 if high else view.y(window.y1) + 1.4
    away = -1.0 if high else 1.0
    room = next(s.room for s in paper.loose_tenons if leaf.name in s.leaves)
    gap = Link(figure=room, rule=fine) if float(room) > 0 else None
    place_chains(
        draft,
        [
            chain(
                view,
                "across",
                base + away * FIRST,
                (
                    (line - deep, base),
                    (line - long / 2, base),
                    (line + long / 2, base),
                    (line + deep, base),
                ),
                (gap, reference(sizes.tenon_length, fine), gap),
            ),
            chain(
                view,
                "across",
                base + away * (FIRST + fine.next_chain),
                (
                    (line - deep, base + away * FIRST),
                    (line, base),
                    (line + deep, base + away * FIRST),
                ),
                (
                    reference(sizes.slot_depth, fine),
                    reference(sizes.slot_depth, fine),
                ),
            ),
        ],
    )
    groove = joint.rail.high_groove if high else joint.rail.low_groove
    if groove is None:
        return
    rail_edge = float(joint.rail.top if high else joint.rail.foot)
    bottom = rail_edge - float(groove) if high else rail_edge + float(groove)
    # On the stile's side: its groove may run on past the rail's, and the slot keeps off that.
    right = view.x(window.x1) + 1.4
    depth = float(leaf.panels[0].panel.groove_depth)
    kept = abs(bottom - end)
    off = (
        Link(figure=sizes.off_groove, rule=fine)
        if abs(kept - float(sizes.off_groove)) < 1e-6
        else None
    )
    deep_link = reference(groove, fine)
    feet = [view.x(line + deep), view.x(line + depth), view.x(line)]
    stops = list(zip((end, bottom, rail_edge), feet, strict=True))
    stops = stops if high else stops[::-1]
    links = (off, deep_link) if high else (deep_link, off)
    place_chains(draft, [chain(view, "up", right + FIRST, stops, links)])


def _words(
    draft: Draft,
    view: View,
    job: Subject,
    leaf: Leaf,
    sizes: LooseTenon,
    joint: Joint,
    line: float,
) -> None:
    high = joint.edge == "high"
    end = float(joint.slot.high if high else joint.slot.low)
    inwards = -1.0 if high else 1.0
    ways = fan((-1.0, 0.3 * -inwards), (-1.0, 0.3 * inwards))
    say(
        draft,
        view.at((line - float(sizes.tenon_length) * 0.35, end + inwards * 14.0)),
        "dot",
        (
            f"tenon {job.wood(sizes.tenon_thickness)} × {job.wood(sizes.tenon_width)},",
            f"in a slot {job.wood(sizes.slot_width)} × {job.wood(sizes.slot_length)}",
        ),
        ways,
        view.name,
    )
    groove = joint.rail.high_groove if high else joint.rail.low_groove
    if groove is not None:
        rail_edge = float(joint.rail.top if high else joint.rail.foot)
        bottom = rail_edge + inwards * float(leaf.panels[0].panel.groove_depth)
        say(
            draft,
            view.at((line - float(sizes.slot_depth) * 0.6, bottom - inwards * 0.7)),
            "arrow",
            ("panel in its groove",),
            fan((-0.3, -inwards), (0.3, -inwards), (-1.0, 0.9 * -inwards)),
            view.name,
        )
