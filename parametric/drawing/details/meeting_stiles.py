"""Where two leaves meet edge to edge, cut level: the gap between them, and how they are bevelled."""

from __future__ import annotations

import math

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, degrees, reference
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import Bow
from parametric.drawing.plane import Box
from parametric.drawing.sheet import View
from parametric.drawing.site import leaf_boxes, level_cut
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf

_BOWS: tuple[Bow, Bow] = ("left", "right")
_SHOWN = 52.0
"""How much of either stile is shown, mm."""


def meeting_pair(door: Door) -> tuple[Leaf, Leaf] | None:
    """The first two neighbours that meet edge to edge; None where no leaves do."""
    for left, right in zip(door.leaves, door.leaves[1:], strict=False):
        beside = float(left.hung.left + left.width) < float(right.hung.left) + 1e-6
        if beside and left.hung.right_edge == "meeting" and right.hung.left_edge == "meeting":
            return left, right
    return None


def meeting_stiles(job: Subject) -> Detail | None:
    """The meeting edges shut; None where the leaves lap or there is one."""
    door = job.resolved.door
    gap, pair = door.hanging.meeting_gap, meeting_pair(door)
    if gap is None or pair is None:
        return None
    left, right = pair
    box = {leaf.name: b for leaf, b in zip(door.leaves, leaf_boxes(door), strict=True)}
    x0, x1 = box[left.name].x1, box[right.name].x0
    fronts = [-float(leaf.hung.plane) - float(leaf.thickness) / 2 for leaf in pair]
    thick = max(float(leaf.thickness) for leaf in pair)
    y0, y1 = min(fronts), max(fronts) + thick
    shown = min(_SHOWN, float(left.right_stile) - 6.0, float(right.left_stile) - 6.0)
    window = Box(x0 - shown, y0 - 40.0, x1 + shown, y1 + 40.0)
    draft = board()
    scale = detail_scale(window.width, thick)
    view = draft.view("meeting stiles", scale, (ORIGIN[0] - x0 / scale, ORIGIN[1]))
    names = {f"{left.name} / right stile": 0, f"{right.name} / left stile": 1}
    pieces = [p for p in job.shut if p.part.name in names]
    cuts = cut_in_window(pieces, "level", level_cut(door), window)
    letters = {name: pair[i].letter for name, i in names.items()}
    bows = {name: _BOWS[i] for name, i in names.items()}
    draw_cut(draft, view, cuts, window, Looks(letters=letters, bows=bows))
    _chains(draft, view, job, pair, gap, (x0, x1, y0, y1))
    _words(draft, view, pair, (x0, x1, y0, y1))
    planed = any(leaf.hung.left_bevel or leaf.hung.right_bevel for leaf in pair)
    return finished(
        draft,
        "meeting stiles",
        "Where the leaves meet",
        f"{at_scale(job, scale)}, plan section, shut, face below."
        + (" The gap is least on the hinges' face." if planed else ""),
        Call(on="plan", by="ring", box=Box(x0 - 10.0, y0, x1 + 10.0, y1)),
    )


def _full_face(leaf: Leaf) -> str:
    """The face on which a bevelled edge keeps its full width."""
    return leaf.hung.knuckles or "front"


def wider_by(leaf: Leaf, bevel: Figure | None) -> float:
    """What a bevel takes off an edge on the face that it is planed to, mm."""
    return 0.0 if bevel is None else float(leaf.thickness) * math.tan(math.radians(float(bevel)))


def _chains(
    draft: Draft,
    view: View,
    job: Subject,
    pair: tuple[Leaf, Leaf],
    gap: Figure,
    at: tuple[float, float, float, float],
) -> None:
    """The gap on the face where it is least; what it comes to on the other; the thickness."""
    x0, x1, y0, y1 = at
    left, right = pair
    wood = job.rules.wood
    off = (wider_by(left, left.hung.right_bevel), wider_by(right, right.hung.left_bevel))
    near_low = _full_face(left) == "front"
    near, far = (view.y(y0), view.y(y1)) if near_low else (view.y(y1), view.y(y0))
    way = -1.0 if near_low else 1.0
    chains = [
        chain(
            view,
            "across",
            near + way * (FIRST - 2.0),
            ((x0, near), (x1, near)),
            (Link(figure=gap, rule=wood),),
        )
    ]
    wide = job.resolved.door.hanging.planed_gap
    if wide is not None:
        chains.append(
            chain(
                view,
                "across",
                far - way * (FIRST - 2.0),
                ((x0 - off[0], far), (x1 + off[1], far)),
                (Link(figure=wide, rule=wood),),
            )
        )
    shown = min(_SHOWN, float(left.right_stile) - 6.0, float(right.left_stile) - 6.0)
    edge = view.x(x1 + shown) + 1.4
    chains.append(
        chain(
            view,
            "up",
            edge + FIRST,
            ((y0, edge), (y1, edge)),
            (reference(right.thickness, wood),),
        )
    )
    place_chains(draft, chains)


def _words(
    draft: Draft, view: View, pair: tuple[Leaf, Leaf], at: tuple[float, float, float, float]
) -> None:
    """The bevel of either edge."""
    x0, x1, y0, y1 = at
    told = (
        (pair[0], pair[0].hung.right_bevel, x0, -1.0),
        (pair[1], pair[1].hung.left_bevel, x1, 1.0),
    )
    for leaf, bevel, x, way in told:
        if bevel is None:
            continue
        front = _full_face(leaf) == "front"
        share = 0.7 if front else 0.3
        off = wider_by(leaf, bevel) * 0.7
        target = view.at((x + way * off, y0 + share * (y1 - y0)))
        up = 1.0 if front else -1.0
        say(
            draft,
            target,
            "arrow",
            (f"{degrees(bevel)} off square",),
            fan((way * 0.9, up), (way, up * 0.5), (-way * 0.5, up)),
            view.name,
        )
