"""Where two leaves meet edge to edge, cut level: the gap between them, and how they are bevelled."""

from __future__ import annotations

import math
from collections.abc import Mapping
from typing import Literal

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
from parametric.hangings.hanging import EdgeRebate, Side
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf

_BOWS: tuple[Bow, Bow] = ("left", "right")
Face = Literal["front", "back"]
_SAME = 1e-6
_SHOWN = 52.0
"""How much of either stile is shown, mm."""


def meeting_pair(door: Door) -> tuple[Leaf, Leaf] | None:
    """The first two neighbours that meet edge to edge; None where no leaves do."""
    for left, right in zip(door.leaves, door.leaves[1:], strict=False):
        one_plane = abs(float(left.hung.plane - right.hung.plane)) < float(left.thickness) / 2
        if one_plane and left.hung.right_edge == "meeting" and right.hung.left_edge == "meeting":
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
    window = Box(min(x0, x1) - shown, y0 - 40.0, max(x0, x1) + shown, y1 + 40.0)
    draft = board()
    scale = detail_scale(window.width, thick)
    view = draft.view("meeting stiles", scale, (ORIGIN[0] - x0 / scale, ORIGIN[1]))
    names = {f"{left.name} / right stile": 0, f"{right.name} / left stile": 1}
    planted = {f"{leaf.name} / astragal" for leaf in pair}
    pieces = [p for p in job.shut if p.part.name in names or p.part.name in planted]
    cuts = cut_in_window(pieces, "level", level_cut(door), window)
    letters = {name: pair[i].letter for name, i in names.items()}
    bows = {name: _BOWS[i] for name, i in names.items()}
    draw_cut(draft, view, cuts, window, Looks(letters=letters, bows=bows))
    edges = {
        "front": face_edges(pair, "front", (x0, x1)),
        "back": face_edges(pair, "back", (x0, x1)),
    }
    _chains(draft, view, job, pair, gap, edges, (x1, y0, y1))
    _words(draft, view, pair, (x0, x1, y0, y1))
    planed = left.hung.right_bevel or right.hung.left_bevel
    lapped = rebates_of(left, "right") or rebates_of(right, "left")
    return finished(
        draft,
        "meeting stiles",
        "Where the leaves meet",
        f"{at_scale(job, scale)}, plan section, shut, face below."
        + (" The gap is least on the hinges' face." if planed else "")
        + (" The leaf whose front stands over the other opens first." if lapped else ""),
        Call(on="plan", by="ring", box=Box(min(x0, x1) - 10.0, y0, max(x0, x1) + 10.0, y1)),
    )


def _full_face(leaf: Leaf) -> Face:
    """The face on which a bevelled edge keeps its full width."""
    return leaf.hung.knuckles or "front"


def wider_by(leaf: Leaf, bevel: Figure | None) -> float:
    """What a bevel takes off an edge on the face that it is planed to, mm."""
    return 0.0 if bevel is None else float(leaf.thickness) * math.tan(math.radians(float(bevel)))


def rebates_of(leaf: Leaf, side: Side) -> tuple[EdgeRebate, ...]:
    """The steps along one upright edge of a leaf."""
    return tuple(one for one in leaf.hung.rebates if one.edge == side)


def face_edges(
    pair: tuple[Leaf, Leaf], face: Face, edges: tuple[float, float]
) -> tuple[float, float]:
    """Where the two leaves end on one face, X: less their rebates there and what a bevel takes."""
    sides: tuple[Side, Side] = ("right", "left")
    found = []
    for leaf, side, x, way in zip(pair, sides, edges, (-1.0, 1.0), strict=True):
        off = sum(float(one.width) for one in rebates_of(leaf, side) if one.face == face)
        if face != _full_face(leaf):
            off += wider_by(leaf, leaf.hung.bevel(side))
        found.append(x + way * off)
    return found[0], found[1]


def _chains(
    draft: Draft,
    view: View,
    job: Subject,
    pair: tuple[Leaf, Leaf],
    gap: Figure,
    edges: Mapping[str, tuple[float, float]],
    at: tuple[float, float, float],
) -> None:
    """The gap on either face; through the thickness, with the step of a rebate."""
    x1, y0, y1 = at
    left, right = pair
    wood = job.rules.wood
    chains = []
    for face, y, way in (("front", y0, -1.0), ("back", y1, 1.0)):
        a, b = edges[face]
        own = b - a
        same = abs(own - float(gap)) < _SAME
        planed = job.resolved.door.hanging.planed_gap
        figure = gap if same or planed is None else planed
        told = same and face != "front" and abs(edges["front"][1] - edges["front"][0] - own) < _SAME
        link = reference(figure, wood) if told else Link(figure=figure, rule=wood)
        foot = view.y(y)
        chains.append(
            chain(view, "across", foot + way * (FIRST - 2.0), ((a, foot), (b, foot)), (link,))
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
    lap = job.resolved.door.hanging.meeting_rebate
    step = next(iter(rebates_of(left, "right")), None)
    if lap is not None and step is not None:
        # How far one leaf reaches over the other, and how deep its step is.
        y = y1 if step.face == "back" else y0
        way = 1.0 if step.face == "back" else -1.0
        full = edges["front" if step.face == "back" else "back"][0]
        foot = view.y(y)
        chains.append(
            chain(
                view,
                "across",
                foot + way * (FIRST - 2.0 + wood.next_chain),
                ((edges[step.face][0], foot + way * (FIRST - 2.0)), (full, foot)),
                (reference(step.width, wood),),
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
