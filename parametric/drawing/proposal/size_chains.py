"""The sizes on a proposal's drawing: what a client can measure, and what they asked for.

Which there are follows from what the doors have: laps or gaps, tracks or floor they sweep over.
"""

from __future__ import annotations

import dataclasses

from parametric.drawing.arrangement_layout import STUB, Extent
from parametric.drawing.chains import FIRST, SIDES, Chain, Link, Stop
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, width
from parametric.drawing.proposal.content import ProposalContent
from parametric.drawing.sheet import View
from parametric.drawing.site import leaf_boxes
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.names import join
from parametric.resolve.door import Door
from parametric.trade.standing import (
    clear_stretch,
    comes_towards,
    cover_stretch,
    way_of_edge,
    widest_open,
    width_taken,
)

_IN_OPENING = 1.6
"""How far behind the wall's face the clear way is said within the opening, mm on paper."""
_SAME = 1e-6
"""Sizes no farther apart than this are one size, mm."""


def draw_ways(draft: Draft, job: Subject, view: View) -> None:
    """The way of each leaf's free edge as it swings, and where it stands shut."""
    for leaf in job.resolved.door.leaves:
        if leaf.hung.swing is None:
            continue
        draft.path("edge_fine", view.path(way_of_edge(leaf)), view.name)


def reach(job: Subject, view: View, extent: Extent) -> list[Chain]:
    """How far they come into the room."""
    door = job.resolved.door
    reach, leaf = door.hanging.reach, door.leaves[-1]
    if reach is None:
        return []
    into = comes_towards(leaf)
    half = float(leaf.thickness) / 2
    face = -float(leaf.hung.plane) + (-half if into else half)
    end = face - float(reach) if into else face + float(reach)
    edge = view.x(width_taken(leaf, 1.0)[1])
    low, high = sorted(((face, view.x(extent.x1) + STUB), (end, edge)))
    return [
        Chain(
            view=view,
            axis="up",
            line=view.x(extent.x1) + STUB + FIRST - 3.0,
            stops=(Stop(at=low[0], foot=low[1]), Stop(at=high[0], foot=high[1])),
            links=(Link(figure=reach, rule=job.rules.wood),),
        )
    ]


def elevation_chains(job: Subject, view: View, extent: Extent) -> list[Chain]:
    """Left: gap and leaf. Right: gap and lap; the pull; the opening's height."""
    door, wood = job.resolved.door, job.rules.wood
    hanging, opening = door.hanging, door.opening
    left, right = view.x(extent.x0) - STUB, view.x(extent.x1) + STUB
    boxes = leaf_boxes(door)
    top = max(box.y1 for box in boxes)
    leaf_right = view.x(boxes[-1].x1)
    last_at, last_gap = door.gaps[-1]
    floors = {place: float(z) for place, z in opening.floor.items()}
    chains = [_column(job, view, left)]
    line = right + FIRST - 1.0
    over = _over_leaves(job)
    low, high = sorted((extent.head, top))
    stops = [Stop(at=low, foot=leaf_right)]
    links: list[Link | None] = []
    if over is not None:
        stops.append(Stop(at=high, foot=leaf_right))
        links.append(Link(figure=over, rule=wood))
    if len(door.gaps) > 1:
        floor = Stop(at=floors[last_at], foot=right)
        stops = [floor, Stop(at=extent.foot, foot=leaf_right), *stops]
        links = [Link(figure=last_gap, rule=wood), None, *links]
    if links:
        chains.append(
            Chain(view=view, axis="up", line=line, stops=tuple(stops), links=tuple(links))
        )
    last = door.leaves[-1]
    if last.pulls:
        up = job.figures[join(last.name, "pull", "height above the floor")]
        line += job.rules.wood.next_chain
        at = view.x(float(hanging.lefts[-1]) + float(last.pulls[0].across))
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=line,
                stops=(Stop(at=0.0, foot=right), Stop(at=float(up), foot=at + 1.2)),
                links=(Link(figure=up, rule=wood),),
            )
        )
    chains.append(
        Chain(
            view=view,
            axis="up",
            line=line + job.rules.wood.next_chain,
            stops=(Stop(at=0.0, foot=right), Stop(at=extent.head, foot=leaf_right)),
            links=(Link(figure=opening.head, rule=wood),),
        )
    )
    return chains


def _over_leaves(job: Subject) -> Figure | None:
    """What lies between the head of the leaves and that of the opening; None where nothing is
    to be seen of it.
    """
    hanging = job.resolved.door.hanging
    if hanging.head_gap is not None:
        return hanging.head_gap
    return job.figures.get("head lap" if hanging.on_wall else "track allowance")


def _column(job: Subject, view: View, left: float) -> Chain:
    """The gap under the leaf at the left and its height; the leaf over it, where one stands there."""
    door, wood = job.resolved.door, job.rules.wood
    first_at, first_gap = door.gaps[0]
    boxes = leaf_boxes(door)
    edge = min(box.x0 for box in boxes)
    own = [n for n, box in enumerate(boxes) if abs(box.x0 - edge) < _SAME]
    stops = [Stop(at=float(door.opening.floor[first_at]), foot=left)]
    links: list[Link | None] = [Link(figure=first_gap, rule=wood)]
    for n in sorted(own, key=lambda n: boxes[n].y0):
        if len(links) > 1:
            links.append(None)
        foot = view.x(boxes[n].x0)
        stops += [Stop(at=boxes[n].y0, foot=foot), Stop(at=boxes[n].y1, foot=foot)]
        links.append(Link(figure=door.leaves[n].height, rule=wood))
    return Chain(
        view=view,
        axis="up",
        line=left - FIRST + 1.0,
        stops=tuple(stops),
        links=tuple(links),
    )


def plan_chains(job: Subject, view: View, extent: Extent, said: ProposalContent) -> list[Chain]:
    """A door; the opening and what the doors lap it by; all of them."""
    door, wood = job.resolved.door, job.rules.wood
    hanging, opening = door.hanging, door.opening
    boxes = leaf_boxes(door)
    front = view.y(-extent.off_most)
    lines = [front - FIRST - job.rules.wood.next_chain * n for n in range(extent.plan_chains)]
    chains = [
        Chain(
            view=view,
            axis="across",
            line=lines[0],
            stops=(Stop(at=boxes[n].x0, foot=front), Stop(at=boxes[n].x1, foot=front)),
            links=(Link(figure=door.leaves[n].width, rule=wood),),
        )
        for n in _told_apart(door)
    ]
    lapped = job.figures.get("side lap") if hanging.on_wall else None
    if lapped is not None:
        lap = Link(figure=lapped, rule=wood)
        face = view.y(0.0)
        chains.append(
            Chain(
                view=view,
                axis="across",
                line=lines[1],
                stops=(
                    Stop(at=boxes[0].x0, foot=lines[0], inner=True),
                    Stop(at=0.0, foot=face),
                    Stop(at=float(opening.widest), foot=face),
                    Stop(at=boxes[-1].x1, foot=front),
                ),
                links=(lap, _said(job, view, opening.widest, said.opening), lap),
            )
        )
    gapped = bool(hanging.across) and hanging.across[0].what == "gap"
    ends = cover_stretch(door) if gapped else (boxes[0].x0, boxes[-1].x1)
    feet = (lines[-2], lines[-2] if hanging.on_wall else front)
    if gapped:
        feet = (view.y(0.0), view.y(0.0))
    chains.append(
        Chain(
            view=view,
            axis="across",
            line=lines[-1],
            stops=tuple(
                Stop(at=at, foot=foot, inner=not gapped)
                for at, foot in zip(ends, feet, strict=True)
            ),
            links=(_said(job, view, hanging.cover, said.plumb if gapped else said.over_all),),
        )
    )
    return chains


def _said(job: Subject, view: View, figure: Figure, words: str) -> Link:
    """A size with its words, as far as there is room for them."""
    link = Link(figure=figure, after=words, rule=job.rules.wood)
    room = float(figure) / view.scale - 2 * SIDES
    return link if width(link.text, TEXT) <= room else dataclasses.replace(link, after="")


def _told_apart(door: Door) -> tuple[int, ...]:
    """The leaves whose widths are said: the first, or every one where they differ."""
    first = door.leaves[0]
    if all(abs(float(leaf.width - first.width)) < _SAME for leaf in door.leaves):
        return (0,)
    return tuple(range(len(door.leaves)))


def clear_way(job: Subject, view: View, extent: Extent) -> list[Chain]:
    """Between the doors, or from the jamb where the opening is narrowest to the edge of them.

    Doors that swing towards the viewer leave the opening itself free to say it in.
    """
    door = job.resolved.door
    clear = door.hanging.clear_way
    if clear is None:
        return []
    left, _ = clear_stretch(door, widest_open(job.resolved.door).open)
    right = left + float(clear)
    front = view.y(-extent.off_most)
    line, feet = front - FIRST + 3.0, (view.y(0.0), front)
    if any(leaf.hung.swing is not None and comes_towards(leaf) for leaf in door.leaves):
        face = view.y(0.0)
        line, feet = face + _IN_OPENING, (face, face)
    return [
        Chain(
            view=view,
            axis="across",
            line=line,
            stops=(Stop(at=left, foot=feet[0]), Stop(at=right, foot=feet[1])),
            links=(Link(figure=clear, rule=job.rules.wood),),
        )
    ]
