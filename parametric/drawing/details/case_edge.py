"""The edge a front is hung by, cut level with the case's side: how far it lies over it, what shows."""

from __future__ import annotations

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut, keep_off
from parametric.drawing.details.hinge_jamb import hung_leaf
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, reference
from parametric.drawing.hatching import board as dotted
from parametric.drawing.marks import wave
from parametric.drawing.plane import Box
from parametric.drawing.site import leaf_boxes
from parametric.drawing.subject import Subject

_STILE, _DEEP = 58.0, 34.0
"""How much of stile and of the case's side is shown, mm."""
_CLEAR = 5.0
"""How far past the leaf's edge the section is looked at, mm."""

_UPS = (0.5, 0.44, 0.38, 0.56, 0.62, 0.3, 0.7, 0.22, 0.78, 0.34, 0.66)
"""How far up the leaf the section is tried, as parts of its height."""


def case_edge(job: Subject) -> Detail | None:
    """The first door's hinge edge and what it hangs on; None where nothing hangs over a case."""
    door = job.resolved.door
    case, found = door.hanging.case, hung_leaf(job)
    if case is None or found is None or not door.hanging.on_wall:
        return None
    leaf, side = found
    box = leaf_boxes(door)[door.leaves.index(leaf)]
    way = 1.0 if side == "left" else -1.0
    edge = box.x0 if side == "left" else box.x1
    wide = float(door.opening.widest)
    stands = [(-float(case.edge), 0.0), (wide, wide + float(case.edge))]
    stands += [(float(at), float(at + case.partition)) for at in case.partitions]
    near, far = min(stands, key=lambda one: abs((one[0] + one[1]) / 2 - edge))
    front = -float(leaf.hung.plane) - float(leaf.thickness) / 2
    stile = float(leaf.left_stile if side == "left" else leaf.right_stile)
    shown = min(_STILE, stile - 6.0)
    # the leaf's own edge is inside the window, and is no break
    x0, x1 = sorted((edge - way * _CLEAR, edge + way * shown))
    window = Box(x0, front - 60.0, x1, 60.0)
    draft = board()
    scale = detail_scale(window.width + float(case.edge), float(leaf.thickness) + _DEEP)
    view = draft.view("case edge", scale, (ORIGIN[0] - edge / scale, ORIGIN[1]))
    cut = view.path(Box(near, 0.0, far, _DEEP).polygon)
    draft.path("cut_heavy", (cut[3], cut[0], cut[1], cut[2]), view.name)
    draft.add(dotted((cut,), view.name, 1.4))
    wave(draft, cut[3], cut[2], view.name, 0.9)
    keep_off(draft, cut)
    name = f"{leaf.name} / {side} stile"
    pieces = [p for p in job.shut if p.part.name == name]
    foot, high = float(leaf.hung.foot), float(leaf.height)
    # clear of hinges and of what else is let into the stile
    tried = [cut_in_window(pieces, "level", foot + part * high, window) for part in _UPS]
    cuts = min(tried, key=lambda found: sum(len(cut.outline) for cut in found))
    draw_cut(draft, view, cuts, window, Looks(letters={name: leaf.letter}))
    wood, off = job.rules.wood, view.y(_DEEP) + FIRST
    chains = [
        chain(
            view,
            "up",
            view.x(edge + way * shown) + way * (1.4 + FIRST),
            [(front, view.x(edge + way * shown)), (0.0, view.x(edge + way * shown))],
            [reference(leaf.thickness, wood)],
        )
    ]
    inner, outer = (far, near) if side == "left" else (near, far)
    lap = job.figures["side lap"]
    if abs(abs(inner - edge) - float(lap)) < 1e-6:
        ends = sorted((edge, inner))
        chains.append(
            chain(
                view,
                "across",
                off,
                [(ends[0], view.y(0.0)), (ends[1], view.y(0.0))],
                [Link(figure=lap, rule=wood)],
            )
        )
        reveal = job.figures.get("edge reveal")
        if reveal is not None and abs(abs(edge - outer) - float(reveal)) < 1e-6:
            ends = sorted((outer, edge))
            chains.append(
                chain(
                    view,
                    "across",
                    view.y(front) - FIRST,
                    [(ends[0], view.y(0.0)), (ends[1], view.y(front))],
                    [Link(figure=reveal, rule=wood)],
                )
            )
    place_chains(draft, chains)
    stood = "" if door.case else " The case stands already."
    return finished(
        draft,
        "case edge",
        "Hinge side and the case",
        f"{at_scale(job, scale)}, plan section, shut, face below.{stood}",
        Call(
            on="plan", by="ring", box=Box(min(near, edge) - 6.0, front, max(far, edge) + 6.0, 8.0)
        ),
    )
