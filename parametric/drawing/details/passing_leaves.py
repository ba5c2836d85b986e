"""Where the leaves pass, cut level: how they lie over one another, and what is between them."""

from __future__ import annotations

from itertools import pairwise

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale, reference
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import Bow
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import View
from parametric.drawing.site import leaf_boxes, level_cut
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.resolve.door import Door
from parametric.trade.paperwork import Paperwork

_BOWS: tuple[Bow, Bow] = ("above", "below")
_PAST = 62.0
"""How much is shown past the overlap, mm."""


def passing_leaves(job: Subject, paper: Paperwork) -> Detail | None:
    """The stiles that lie over one another when the leaves are shut; None where none pass."""
    door = job.resolved.door
    hanging = door.hanging
    if hanging.passing_gap is None or len(door.leaves) < 2:
        return None
    shown = shown_pair(door)
    pair, boxes = door.leaves[shown], leaf_boxes(door)[shown]
    x0, x1 = boxes[1].x0, boxes[0].x1
    half = float(pair[0].thickness) / 2
    ys = [-float(plane) for plane in hanging.planes[shown]]
    window = Box(x0 - _PAST, min(*ys, 0.0) - half - 40.0, x1 + _PAST, max(*ys, 0.0) + half + 40.0)
    draft = board()
    tall = max(*ys, 0.0) - min(*ys, 0.0) + 2 * half
    scale = detail_scale(window.width, tall)
    view = draft.view("passing leaves", scale, (ORIGIN[0] - x0 / scale, ORIGIN[1]))
    at = level_cut(door)
    leaves = [leaf.name for leaf in pair]
    pieces = [p for p in job.shut if p.group in leaves]
    cuts = cut_in_window(pieces, "level", at, window)
    stiles = {
        f"{leaf.name} / {side} stile": leaf.letter for leaf in pair for side in ("left", "right")
    }
    draw_cut(
        draft,
        view,
        cuts,
        window,
        Looks(
            glue_ups={g.mark: g for g in paper.panel_glue_ups},
            letters=stiles,
            bows={
                f"{leaf.name} / {side} stile": bow
                for leaf, bow in zip(pair, _BOWS, strict=True)
                for side in ("left", "right")
            },
        ),
    )
    _lines(draft, view, job, window)
    _chains(draft, view, job, window, hanging.passing_gap)
    _words(draft, view, job, hanging.passing_gap)
    return finished(
        draft,
        "passing leaves",
        "Where the leaves pass",
        f"{at_scale(job, scale)}, plan section at the lowest opening, shut.",
        Call(on="plan", by="ring", box=Box(x0, min(ys) - half, x1, max(ys) + half)),
    )


def _at_the_wall(door: Door) -> int:
    """The track whose leaves have the gap at the wall's face: the innermost over it, else the first."""
    return len(door.hanging.tracks) - 1 if door.hanging.on_wall else 0


def shown_pair(door: Door) -> slice:
    """Two neighbours on tracks beside one another, at the wall's face if there are such."""
    tracks = [leaf.hung.track or 0 for leaf in door.leaves]
    beside = [i for i, (a, b) in enumerate(pairwise(tracks)) if abs(a - b) == 1]
    at_wall = [i for i in beside if _at_the_wall(door) in tracks[i : i + 2]]
    first = next(iter((*at_wall, *beside, 0)))
    return slice(first, first + 2)


def _lines(draft: Draft, view: View, job: Subject, window: Box) -> None:
    """The wall's face, and the planes that the leaves hang in."""
    hanging = job.resolved.door.hanging
    far = view.x(window.x0) - 4.0
    letters = [e.box.grown(1.2) for e in draft.elements if isinstance(e, Label)]
    named: list[tuple[Layer, float, str]] = [("adjacent", 0.0, "wall face")]
    named += [("centre", -float(track.plane), f"{track.word} track") for track in hanging.tracks]
    for layer, y, words in named:
        level = view.y(y)
        label = Label(text=words, at=(far - 1.4, level - TEXT / 2), anchor="right", view=view.name)
        draft.add(label)
        # A leaf's letter stands on its plane: the line stops short of it.
        right = view.x(window.x1) + 4.0
        over = [b for b in letters if b.crossed((far, level), (right, level))]
        stops = [far, *(x for box in sorted(over) for x in (box.x0, box.x1)), right]
        for a, b in zip(stops[::2], stops[1::2], strict=True):
            draft.line(layer, (a, level), (b, level), view.name)


def _chains(draft: Draft, view: View, job: Subject, window: Box, passing: Figure) -> None:
    """The overlap over the leaves; from the wall through both leaves beside them."""
    door = job.resolved.door
    hanging, wood = door.hanging, job.rules.wood
    shown = shown_pair(door)
    pair, boxes = door.leaves[shown], leaf_boxes(door)[shown]
    half = float(pair[0].thickness) / 2
    ys = [-float(plane) for plane in hanging.planes[shown]]
    top = max(view.y(max(ys) + half), view.y(0.0))
    feet = (view.y(ys[1] + half), view.y(ys[0] + half))
    chains = []
    if hanging.overlap is not None and float(hanging.overlap) > 0:
        chains.append(
            chain(
                view,
                "across",
                top + FIRST - 1.0,
                ((boxes[1].x0, feet[0]), (boxes[0].x1, feet[1])),
                (Link(figure=hanging.overlap, after="overlap", rule=wood, reference=True),),
            )
        )
    right = view.x(window.x1) + 1.4
    wall = view.x(window.x1) + 4.0
    stile = view.x(boxes[0].x1)
    thick = [reference(leaf.thickness, wood) for leaf in pair]
    gap = Link(figure=passing, rule=wood)
    links: tuple[Link | None, ...]
    behind = hanging.wall_gap if _at_the_wall(door) in (leaf.hung.track for leaf in pair) else None
    off = Link(figure=behind, rule=wood) if behind is not None and float(behind) > 0 else None
    # In the order of their planes, whichever of the two hangs farther out.
    by_plane = sorted(zip(ys, (stile, right), thick, strict=True), key=lambda one: one[0])
    faces = [(y + way * half, at) for y, at, _ in by_plane for way in (-1, 1)]
    through = (by_plane[0][2], gap, by_plane[1][2])
    if hanging.on_wall:
        places, links = (*faces, (0.0, wall)), (*through, off)
    else:
        places, links = ((0.0, wall), *faces), (off, *through)
    chains.append(chain(view, "up", right + FIRST, places, links))
    place_chains(draft, chains)


def _words(draft: Draft, view: View, job: Subject, passing: Figure) -> None:
    """Why the gap is what it is."""
    door = job.resolved.door
    hanging = door.hanging
    shown = shown_pair(door)
    boxes = leaf_boxes(door)[shown]
    ys = [-float(plane) for plane in hanging.planes[shown]]
    middle = (ys[0] + ys[1]) / 2
    room = passing - job.resolved.shop.limits.passing
    words = ["nothing may stand out", f"more than {job.wood(room, down=True)} here"]
    pulls = [hung.pull.stands_out for leaf in door.leaves for hung in leaf.pulls]
    if pulls and max(float(p) for p in pulls) <= 0:
        words.append("(the pulls are flush)")
    elif pulls:
        words.append(f"(the pulls: {job.fine(max(pulls, key=float))})")
    say(
        draft,
        view.at(((boxes[1].x0 + boxes[0].x1) / 2 + 8.0, middle)),
        "dot",
        words,
        fan((0.7, -1.0), (-0.7, -1.0), (0.0, -1.0)),
        view.name,
    )
