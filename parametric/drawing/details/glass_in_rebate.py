"""Glass in its rebate, cut level: at a stile, and at an upright bar where there is one."""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import beyond, chain
from parametric.drawing.details.unit_panes import unit_panes
from parametric.drawing.details.words import at_scale, reference, size
from parametric.drawing.draft import Draft
from parametric.drawing.leaf_views import leaf_groups
from parametric.drawing.pieces import Piece, leaf_pieces
from parametric.drawing.plane import Box
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import exceeds
from parametric.infill.glass import Pane
from parametric.resolve.bar_places import Bar, PlantedBar, RebatedBar
from parametric.resolve.leaf import Leaf
from parametric.resolve.lite import Lite, Rebate

_STILE, _GLASS, _BETWEEN = 36.0, 34.0, 34.0
"""How much stile, and glass past a rebate, is shown; between the two sections, mm on paper."""


def glass_in_rebate(job: Subject) -> Detail | None:
    """The right edge of the first leaf's lowest pane, and a bar; None where no glass lies in a rebate."""
    leaf, group = leaf_groups(job)[0]
    lite = next((one for one in reversed(leaf.lites) if one.rebate is not None), None)
    if lite is None or lite.rebate is None:
        return None
    rebate = lite.rebate
    pane = max(lite.panes, key=lambda one: (-float(one.foot), float(one.left)))
    at = float(pane.foot) + float(pane.height) / 2
    if isinstance(lite.section, PlantedBar) and lite.cell is not None:
        at = float(lite.rows[0] + lite.cell[1] / 2)
    thick = float(leaf.thickness)
    edge = float(leaf.width - leaf.right_stile)
    pieces = leaf_pieces(group.parts, group.name)
    draft = board()
    view = draft.view("glass in its rebate", detail_scale(110.0, thick), ORIGIN)
    right = edge + min(_STILE, float(leaf.right_stile) - 4.0)
    window = Box(edge - _GLASS, -50.0, right, thick + 50.0)
    _cut(draft, view, pieces, at, window, lite)
    lip = thick - float(rebate.depth)
    beyond(draft, view, *(((window.x0, y), (edge, y)) for y in (0.0, lip)))
    _at_stile(draft, view, job, (leaf, rebate, pane), edge, window)
    bar = next((one for one in lite.framed_bars if one.upright), None)
    if bar is not None and isinstance(lite.section, RebatedBar):
        _at_bar(draft, job, leaf, (lite, lite.section, rebate, bar), pieces, at, view)
    wide, high = _panes(lite)
    many = f" {wide} × {high} panes" if len(lite.panes) > 1 else " Pane"
    return finished(
        draft,
        "glass in its rebate",
        "Glass in a rebate" + (", and a bar" if bar is not None else ""),
        f"{at_scale(job, view.scale)}, plan section at the lowest row, face below.{many} in an "
        f"opening of {job.wood(lite.width)} × {job.wood(lite.height)}"
        + (" up to the springing." if lite.head is not None else "."),
        Call(on="leaf", by="section", box=Box(window.x0, at, window.x1, at)),
    )


def _panes(lite: Lite) -> tuple[int, int]:
    """How many panes wide and high."""
    upright = sum(1 for bar in lite.bars if bar.upright)
    return upright + 1, len(lite.bars) - upright + 1


def _cut(
    draft: Draft, view: View, pieces: tuple[Piece, ...], at: float, window: Box, lite: Lite
) -> None:
    cuts = unit_panes(cut_in_window(pieces, "level", at, window), lite, "level")
    draw_cut(draft, view, cuts, window, Looks())


def _at_stile(
    draft: Draft,
    view: View,
    job: Subject,
    held: tuple[Leaf, Rebate, Pane],
    edge: float,
    window: Box,
) -> None:
    """Bite and clearance over the stile; through the thickness beside it."""
    leaf, rebate, pane = held
    fine, thick = job.rules.fine, float(leaf.thickness)
    reach, lip = float(rebate.frame), thick - float(rebate.depth)
    glass = (lip + float(pane.tape), lip + float(pane.tape + pane.thickness))
    over = view.y(thick)
    clear = float(pane.clearances[0])
    # the bite as written, unless the pane was cut smaller than its opening asks
    shared = exceeds(pane.clearances[0], pane.clearance)
    bite = rebate.frame - pane.clearances[0] if shared else rebate.bite
    left = view.x(window.x0) - 1.0
    place_chains(
        draft,
        [
            chain(
                view,
                "across",
                over + FIRST,
                (
                    (edge, over),
                    (edge + reach - clear, view.y(glass[1])),
                    (edge + reach, over),
                ),
                (Link(figure=bite, rule=fine), Link(figure=pane.clearances[0], rule=fine)),
            ),
            chain(
                view,
                "across",
                over + FIRST + fine.next_chain,
                ((edge, over + FIRST), (edge + reach, over + FIRST)),
                (reference(rebate.frame, fine),),
            ),
            chain(
                view,
                "up",
                left - FIRST,
                tuple((y, left) for y in dict.fromkeys((0.0, lip, *glass, thick))),
                (
                    Link(figure=rebate.lip, rule=fine),
                    *((Link(figure=pane.tape, rule=fine),) if float(pane.tape) > 0 else ()),
                    reference(pane.thickness, fine),
                    None,
                ),
            ),
        ],
    )
    say(
        draft,
        view.at((edge + reach - clear / 2, (glass[0] + glass[1]) / 2)),
        "arrow",
        ("edge clear all round;", "the pane rests on blocks"),
        fan((1.0, 1.0), (1.0, -1.0)),
        view.name,
    )
    say(
        draft,
        view.at((edge + reach / 2, (glass[1] + thick) / 2)),
        "dot",
        (f"rebate {size(job, rebate.depth)} deep from the back:", "what holds the glass goes here"),
        fan((1.0, 1.0), (0.6, 1.0)),
        view.name,
    )


def _at_bar(
    draft: Draft,
    job: Subject,
    leaf: Leaf,
    of: tuple[Lite, RebatedBar, Rebate, Bar],
    pieces: tuple[Piece, ...],
    at: float,
    beside: View,
) -> None:
    """An upright bar with the glass of both its panes, left of the stile's section."""
    lite, section, rebate, bar = of
    fine, thick = job.rules.fine, float(leaf.thickness)
    low, high = float(bar.low), float(bar.high)
    window = Box(low - _GLASS * 0.6, -50.0, high + _GLASS * 0.6, thick + 50.0)
    wide = window.width / beside.scale
    edge = float(leaf.width - leaf.right_stile) - _GLASS
    left = beside.x(edge) - _BETWEEN - wide
    view = draft.view(
        "glazing bar", beside.scale, (left - window.x0 / beside.scale, beside.origin[1])
    )
    _cut(draft, view, pieces, at, window, lite)
    lip = thick - float(rebate.depth)
    for x0, x1 in ((window.x0, low), (high, window.x1)):
        beyond(draft, view, *(((x0, y), (x1, y)) for y in (0.0, lip)))
    over, under = view.y(thick), view.y(0.0)
    inner = (low + float(section.rebate), high - float(section.rebate))
    place_chains(
        draft,
        [
            chain(
                view,
                "across",
                over + FIRST,
                ((low, view.y(lip)), (inner[0], over), (inner[1], over), (high, view.y(lip))),
                (
                    Link(figure=section.rebate, rule=fine),
                    Link(figure=section.web, rule=fine),
                    Link(figure=section.rebate, rule=fine),
                ),
            ),
            chain(
                view,
                "across",
                under - FIRST + 2.0,
                ((low, under), (high, under)),
                (reference(section.face, fine),),
            ),
        ],
    )
