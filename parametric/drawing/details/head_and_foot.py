"""A leaf that stands within its opening, cut upright at the head and at the foot: the gaps there.

|#####| head               |      |
|#####|____                |leaf  |
   gap |   | leaf          |______|
       |   |                 gap    - - - floor where it is highest in the swing
                           =========== floor under the shut leaf
"""

from __future__ import annotations

import dataclasses

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.surround import draw_floor, draw_head
from parametric.drawing.details.words import at_scale, reference
from parametric.drawing.pieces import CutPiece
from parametric.drawing.plane import Box
from parametric.drawing.site import floor_at, leaf_boxes, upright_cut
from parametric.drawing.subject import Subject
from parametric.resolve.leaf import Leaf

_LEAF, _HEAD = 56.0, 26.0
"""How much leaf and how much head is shown, mm."""
_FOOT = 44.0
"""How much leaf is shown over its foot, mm."""
_PAST = 18.0
"""How much head and floor is shown past the leaf's faces, mm."""
_INTO = 42.0
"""How much floor is shown on the side that the leaf swings to, mm."""


def head_gap(job: Subject) -> Detail | None:
    """The highest leaf's top and the head over it; None where the leaf laps it or hangs from a track."""
    door = job.resolved.door
    gap = door.hanging.head_gap
    if gap is None or door.hanging.tracks:
        return None
    leaf = _cut_leaf(job, highest=True)
    box = leaf_boxes(door)[door.leaves.index(leaf)]
    side, near, far = _faces(job, leaf)
    head = float(door.opening.head)
    draft = board()
    x0, x1 = sorted((near, far))
    window = Box(x0 - _PAST, box.y1 - _LEAF, x1 + _PAST, head + _HEAD)
    scale = detail_scale(window.width, window.height)
    view = draft.view("head", scale, (ORIGIN[0] - near / scale, ORIGIN[1] - box.y1 / scale))
    back = far - side * _PAST
    over = Box(min(0.0, back), head, max(0.0, back), window.y1)
    draw_head(draft, view, job, over, face=0.0)
    draw_cut(draft, view, _cuts(job, leaf, window), window, Looks())
    place_chains(
        draft,
        [
            chain(
                view,
                "up",
                view.x(x1 + _PAST) + FIRST - 4.0,
                ((box.y1, view.x(x1)), (head, view.x(over.x1))),
                (Link(figure=gap, rule=job.rules.wood),),
            ),
            chain(
                view,
                "across",
                view.y(window.y0) - FIRST + 2.0,
                ((x0, view.y(window.y0) - 1.4), (x1, view.y(window.y0) - 1.4)),
                (reference(leaf.thickness, job.rules.wood),),
            ),
        ],
    )
    return finished(
        draft,
        "head gap",
        "Head",
        f"{at_scale(job, scale)}, cut upright, leaf shut; the head where it is lowest.",
        Call(on="section", by="ring", box=Box(x0, box.y1 - 14.0, x1, head + 10.0)),
    )


def foot_gap(job: Subject) -> Detail | None:
    """The lowest leaf's foot over the floor; None where it runs on a guide, which has its own."""
    door = job.resolved.door
    leaf = _cut_leaf(job, highest=False)
    if leaf.guide is not None or leaf.hung.swing is None or door.hanging.case is not None:
        return None
    box = leaf_boxes(door)[door.leaves.index(leaf)]
    _, near, far = _faces(job, leaf)
    draft = board()
    x0, x1 = sorted((near, far))
    # The room is on the side of the knuckles: there the floor may rise under the open leaf.
    into = near if leaf.hung.knuckles != "back" else far
    way = 1.0 if into == x1 else -1.0
    window = Box(x0 - _INTO, -20.0, x1 + _INTO, box.y0 + _FOOT)
    scale = detail_scale(window.width, window.height)
    view = draft.view("foot", scale, (ORIGIN[0] - near / scale, ORIGIN[1]))
    draw_cut(draft, view, _cuts(job, leaf, window), window, Looks())
    ends = (x0 - (_INTO if way < 0 else _PAST), x1 + (_INTO if way > 0 else _PAST))
    draw_floor(draft, view, ends)
    wood, hanging = job.rules.wood, door.hanging
    away = view.x(x0 if way > 0 else x1)
    outer = view.x(ends[0] if way > 0 else ends[1])
    chains = [
        chain(
            view,
            "up",
            outer - way * (FIRST - 4.0),
            ((0.0, outer), (box.y0, away)),
            (reference(hanging.floor_gap, wood),),
        )
    ]
    gap = hanging.travel_gap
    rise = float(hanging.floor_gap - gap) if gap is not None else 0.0
    if gap is not None and rise > 0:
        edge = view.x(x1 if way > 0 else x0)
        end = view.x(ends[1] if way > 0 else ends[0])
        y = view.y(rise)
        draft.line("hidden", (edge - way * 3.0, y), (end, y), view.name)
        chains.append(
            chain(
                view,
                "up",
                end + way * (FIRST - 4.0),
                ((rise, end), (box.y0, edge)),
                (Link(figure=gap, rule=wood),),
            )
        )
    place_chains(draft, chains)
    if gap is not None and rise > 0:
        edge = view.x(x1 if way > 0 else x0)
        say(
            draft,
            (edge + way * 16.0, view.y(rise)),
            "arrow",
            ("dashed: the floor where it", "stands highest in the swing"),
            fan((way * 0.6, 1.0), (way, 1.0)),
            view.name,
        )
    at = upright_cut(door, third_angle=job.third_angle)
    gaps = [job.wood(value) for _, value in door.gaps]
    runs = f" Under the shut leaves the gap runs {', '.join(gaps)}." if len(set(gaps)) > 1 else ""
    return finished(
        draft,
        "foot gap",
        "Foot and floor",
        f"{at_scale(job, scale)}, cut upright, leaf shut, floor where it is highest there.{runs}",
        Call(on="section", by="ring", box=Box(x0, floor_at(door, at), x1, box.y0 + 14.0)),
    )


def _cut_leaf(job: Subject, *, highest: bool) -> Leaf:
    """The leaf that the arrangement's upright section runs through, of several one over another."""
    door = job.resolved.door
    at = upright_cut(door, third_angle=job.third_angle)
    met = [
        leaf
        for leaf, box in zip(door.leaves, leaf_boxes(door), strict=True)
        if box.x0 < at < box.x1
    ]
    return (max if highest else min)(met, key=lambda leaf: float(leaf.hung.foot))


def _faces(job: Subject, leaf: Leaf) -> tuple[float, float, float]:
    """Which way the room lies in an upright section, and where the leaf's face and back are there."""
    side = -1.0 if job.third_angle else 1.0
    half = float(leaf.thickness) / 2
    return side, side * (float(leaf.hung.plane) + half), side * (float(leaf.hung.plane) - half)


def _cuts(job: Subject, leaf: Leaf, window: Box) -> list[CutPiece]:
    side = -1.0 if job.third_angle else 1.0
    at = upright_cut(job.resolved.door, third_angle=job.third_angle)
    pieces = [p for p in job.shut if p.group == leaf.name]
    anywhere = Box(-9e3, window.y0, 9e3, window.y1)
    return [
        dataclasses.replace(c, outline=tuple((side * off, z) for off, z in c.outline))
        for c in cut_in_window(pieces, "upright", at, anywhere)
    ]
