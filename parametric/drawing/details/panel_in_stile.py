"""A panel in the groove of a stile, cut level: what engages, and what stays empty."""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import beyond, chain
from parametric.drawing.details.words import at_scale, degrees, percent, reference, size
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.pieces import leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.infill.panel_kinds import AnyPanel, in_groove, panel_noun
from parametric.infill.raised_panel import RaisedPanel
from parametric.resolve.leaf import Leaf
from parametric.trade.paperwork import Paperwork

_STILE = 44.0
"""How much of a stile is shown, mm."""
_FIELD = 16.0
"""How much of the field is shown past the fillet, mm."""
_PLAIN = 24.0
"""How much of a panel without a bevel is shown, mm."""


def panel_in_stile(job: Subject, paper: Paperwork) -> Detail | None:
    """The edge of the first leaf's lowest panel; None where the leaf has none."""
    leaf, group = leaf_groups(job)[0]
    if not leaf.panels:
        return None
    field = leaf.panels[-1]
    panel = field.panel
    height = clear_of_pulls(leaf, float(field.foot), float(field.top))
    edge, thick = float(leaf.width - leaf.right_stile), float(leaf.thickness)
    engaged = _engaged(panel)
    edging = _edging(panel)
    window = Box(
        edge + float(engaged) - edging - _FIELD,
        -50.0,
        edge + min(_STILE, float(leaf.right_stile) - 4.0),
        thick + 50.0,
    )
    draft = board()
    view = draft.view("panel in the stile", detail_scale(window.width, thick), ORIGIN)
    beyond(draft, view, *(((window.x0, y), (edge, y)) for y in (0.0, thick)))
    cuts = cut_in_window(leaf_pieces(group.parts, group.name), "level", height, window)
    draw_cut(draft, view, cuts, window, Looks(glue_ups={g.mark: g for g in paper.panel_glue_ups}))
    _chains(draft, view, job, leaf, panel, edge, window)
    _words(draft, view, job, leaf, panel, edge)
    return finished(
        draft,
        "panel in the stile",
        "Panel in the stile",
        f"{at_scale(job, view.scale)}, plan section, face below. {_season(job, panel)}",
        Call(on="leaf", by="section", box=Box(window.x0, height, window.x1, height)),
    )


def clear_of_pulls(leaf: Leaf, low: float, high: float) -> float:
    """A height between two at which no pull is cut, mm from the foot."""
    heights = [low + share * (high - low) for share in (0.3, 0.5, 0.7, 0.15, 0.85)]
    return next(
        (
            height
            for height in heights
            if all(
                abs(height - float(h.pull.up)) > float(h.pull.flange_length) / 2 + 10.0
                for h in leaf.pulls
            )
        ),
        heights[0],
    )


def _edging(panel: AnyPanel) -> float:
    """How far in from its edge the panel is shaped, or as much as is shown of a plain one, mm."""
    if isinstance(panel, RaisedPanel):
        return float(panel.bevel_run)
    return _PLAIN if panel.tongue is None else float(panel.tongue.length) + _PLAIN / 2


def _engaged(panel: AnyPanel) -> Figure:
    """How far the edge that stands in a stile engages, as made."""
    return panel.engagement_made if panel.grain == "upright" else panel.end_engagement


def _season(job: Subject, panel: AnyPanel) -> str:
    """The condition it is drawn in, and how far it moves from it."""
    moist = job.resolved.shop.moisture
    if not panel.moves:
        return f"The panel does not move: it engages {job.fine(_engaged(panel))} all year."
    dry = f"{job.fine(panel.engagement_dry)} at {percent(moist.driest)}"
    damp = f"{job.fine(panel.engagement_damp)} at {percent(moist.dampest)}"
    made = f"Drawn as made at {percent(moist.made)}"
    if panel.grain == "upright":
        return f"{made}; engages {dry}, {damp}."
    return f"{made}; here the ends of the grain, which do not move."


def _chains(
    draft: Draft,
    view: View,
    job: Subject,
    leaf: Leaf,
    panel: AnyPanel,
    edge: float,
    window: Box,
) -> None:
    """Engagement and groove over the stile, tongue and bevel under it, the field beside it."""
    fine = job.rules.fine
    step = fine.next_chain
    thick = float(leaf.thickness)
    half, thin = float(panel.groove_width) / 2, float(in_groove(panel)) / 2
    tip = edge + float(_engaged(panel))
    over, under = view.y(thick), view.y(0.0)
    field = float(panel.field_below_face)
    chains = [
        chain(
            view,
            "across",
            over + FIRST,
            ((edge, over), (tip, view.y(thick / 2 + thin))),
            (Link(figure=_engaged(panel), rule=fine),),
        ),
        chain(
            view,
            "across",
            over + FIRST + step,
            (
                (edge, over + FIRST),
                (edge + float(panel.groove_depth), view.y(thick / 2 + half)),
            ),
            (reference(panel.groove_depth, fine),),
        ),
    ]
    if panel.tongue is not None:
        fillet = float(panel.fillet) if isinstance(panel, RaisedPanel) else 0.0
        chains.append(
            chain(
                view,
                "across",
                under - FIRST,
                (
                    (tip - float(panel.tongue.length), view.y(field + fillet)),
                    (tip, view.y(thick / 2 - thin)),
                ),
                (reference(panel.tongue.length, fine),),
            )
        )
    if isinstance(panel, RaisedPanel):
        chains.append(
            chain(
                view,
                "across",
                under - FIRST - step,
                (
                    (tip - float(panel.bevel_run), view.y(field)),
                    (tip, under - FIRST),
                ),
                (reference(panel.bevel_run, fine),),
            )
        )
    place_chains(draft, chains)
    left = view.x(window.x0) - 1.0
    if field > 0.0:
        place_chains(
            draft,
            [
                chain(
                    view,
                    "up",
                    left - FIRST + 1.0,
                    ((0.0, left), (field, left), (field + float(panel.thickness), left)),
                    (
                        Link(figure=panel.field_below_face, rule=fine),
                        reference(panel.thickness, fine),
                    ),
                )
            ],
        )


def _words(
    draft: Draft,
    view: View,
    job: Subject,
    leaf: Leaf,
    panel: AnyPanel,
    edge: float,
) -> None:
    thick = float(leaf.thickness)
    tip = edge + float(_engaged(panel))
    deep = float(panel.groove_depth)
    loose = "no glue" if panel.moves else "dry"
    say(
        draft,
        view.at(
            (
                tip - (_PLAIN if panel.tongue is None else float(panel.tongue.length)) * 0.7,
                thick / 2,
            )
        ),
        "dot",
        (
            f"{panel_noun(panel) if panel.tongue is None else 'tongue'} "
            f"{size(job, in_groove(panel))} thick",
            f"in a groove of {size(job, panel.groove_width)}, {loose}",
        ),
        fan((-1.0, 1.0), (-0.4, 1.0)),
        view.name,
    )
    if deep - float(_engaged(panel)) > 0.5:
        say(
            draft,
            view.at((tip + (deep - float(_engaged(panel))) / 2, thick / 2)),
            "dot",
            ("left empty", "to move in") if panel.moves else ("left empty",),
            fan((1.0, 0.9), (1.0, -0.9)),
            view.name,
        )
    if isinstance(panel, RaisedPanel):
        _bevel_words(draft, view, job, panel, tip)


def _bevel_words(draft: Draft, view: View, job: Subject, panel: RaisedPanel, tip: float) -> None:
    """The bevel's angle and its fillet."""
    run, share = float(panel.bevel_run), 0.55
    level = float(panel.edge_thickness) + share * (
        float(panel.foot_thickness) - float(panel.edge_thickness)
    )
    back = float(panel.field_below_face) + float(panel.thickness)
    say(
        draft,
        view.at((tip - share * run, back - level)),
        "arrow",
        (f"bevel {degrees(panel.tilt)}, fillet {job.fine(panel.fillet)}",),
        fan((-0.6, -1.0), (-1.0, -1.0)),
        view.name,
    )
