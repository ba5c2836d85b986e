"""The arrangement's plan: leaves cut level between the ends of the walls, chains of widths."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.arrangement_layout import (
    PLAN_FIRST,
    STUB,
    Extent,
    Placing,
)
from parametric.drawing.case import case_from_above
from parametric.drawing.chains import Chain, Link, Stop
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board, wall
from parametric.drawing.marks import wave
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.plane import Box, rectangle
from parametric.drawing.printing import Rule
from parametric.drawing.seen_and_cut import (
    cuts_through,
    draw_cuts,
)
from parametric.drawing.sheet import View
from parametric.drawing.site import jambs_at, leaf_boxes, level_cut, wall_depth
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.resolve.door import Door

_WORD = {1: "as measured", 2: "larger of two", 3: "largest of three"}


def draw_plan(
    draft: Draft, job: Subject, place: Placing, extent: Extent, *, name: str = "plan A-A"
) -> View:
    """The leaves cut level and seen from above, between the ends of the walls."""
    view = draft.view(name, place.scale, place.plan)
    door = job.resolved.door
    deep = wall_depth(extent, view.scale) * view.scale
    left, right = _jambs(door)
    if door.hanging.case is not None:
        case_from_above(draft, view, door, (left, right), deep)
    else:
        for inner, outer in (
            (left, extent.x0 - STUB * view.scale),
            (right, extent.x1 + STUB * view.scale),
        ):
            wall_end(draft, view, job, inner, outer, deep)
    if not door.hanging.on_wall:
        _plumb_lines(draft, view, door, (left, right), deep)
    draw_cuts(draft, view, cuts_through(job.shut, "level", level_cut(door)))
    for track in door.hanging.tracks:
        y = -float(track.plane)
        reach_out = STUB * view.scale
        draft.line(
            "centre",
            view.at((extent.x0 - reach_out, y)),
            view.at((extent.x1 + reach_out, y)),
            view.name,
        )
    return view


def _plumb_lines(
    draft: Draft, view: View, door: Door, jambs: tuple[float, float], deep: float
) -> None:
    """Where the opening is narrowest, plumb: what leaves are sized from, when a jamb leans from it."""
    low = float(door.opening.clear_left)
    for jamb, clear in zip(jambs, (low, low + float(door.opening.clear)), strict=True):
        if abs(jamb - clear) > 1e-6:
            ends = (view.at((clear, 0.0)), view.at((clear, deep)))
            draft.line("adjacent", *ends, view.name)


def _jambs(door: Door) -> tuple[float, float]:
    """Where the wall ends each side: over the wall its widest, in the opening as measured there."""
    if door.hanging.on_wall:
        return 0.0, float(door.opening.widest)
    return jambs_at(door, level_cut(door))


def wall_end(
    draft: Draft, view: View, job: Subject, inner: float, outer: float, deep: float
) -> None:
    """One end of the wall in plan: face and reveal true, the far sides broken off."""
    layer = job.resolved.door.opening.board
    x0, x1 = sorted((inner, outer))
    face = (view.at((outer, 0.0)), view.at((inner, 0.0)), view.at((inner, deep)))
    draft.path("cut", face, view.name)
    skin = 0.0 if layer is None else float(layer)
    body = view.path(rectangle(x0, skin, x1, deep))
    draft.add(wall((body,), view.name))
    if skin:
        draft.line("edge_fine", view.at((x0, skin)), view.at((x1, skin)), view.name)
        draft.add(board((view.path(rectangle(x0, 0.0, x1, skin)),), view.name, 1.1))
    wave(draft, view.at((x0, deep)), view.at((x1, deep)), view.name)
    wave(draft, view.at((outer, 0.0)), view.at((outer, deep)), view.name)


def plan_chains(job: Subject, view: View, extent: Extent) -> list[Chain]:
    """All widths: how the leaves share it innermost, then the opening with its laps, the whole."""
    door = job.resolved.door
    hanging, opening, wood = door.hanging, door.opening, job.rules.arrangement
    lines = [
        view.y(-extent.off_most) - PLAN_FIRST - extent.plan_next * i
        for i in range(extent.plan_chains)
    ]
    across = _shared(job, view, lines[0])
    boxes = (
        Box(across.stops[0].at, 0.0, across.stops[1].at, 0.0),
        Box(across.stops[-2].at, 0.0, across.stops[-1].at, 0.0),
    )
    chains = [across]
    if hanging.on_wall:
        lap = Link(figure=job.figures["side lap"], rule=wood)
        words = f"opening, {_WORD[len(opening.widths)]}"
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
                    Stop(at=boxes[1].x1, foot=lines[0], inner=True),
                ),
                links=(lap, Link(figure=opening.widest, after=words, rule=wood), lap),
            )
        )
    cover = Link(
        figure=hanging.cover, after="cover" if hanging.on_wall else "clear, plumb", rule=wood
    )
    chains.append(
        Chain(
            view=view,
            axis="across",
            line=lines[-1],
            stops=(
                Stop(at=boxes[0].x0, foot=lines[-2], inner=True),
                Stop(at=boxes[1].x1, foot=lines[-2], inner=True),
            ),
            links=(cover,),
        )
    )
    return chains


def _shared(job: Subject, view: View, line: float) -> Chain:
    """How the leaves share the width: their overlap between their travels, or gap by gap."""
    door = job.resolved.door
    hanging, wood = door.hanging, job.rules.arrangement
    boxes = leaf_boxes(door)
    fronts = [view.y(-float(leaf.hung.plane) - float(leaf.thickness) / 2) for leaf in door.leaves]
    travel = door.leaves[0].hung.travel
    if hanging.overlap is not None and travel is not None and len(boxes) == 2:
        go = Link(figure=travel, rule=wood)
        return Chain(
            view=view,
            axis="across",
            line=line,
            stops=(
                Stop(at=boxes[0].x0, foot=fronts[0]),
                Stop(at=boxes[1].x0, foot=fronts[0]),
                Stop(at=boxes[0].x1, foot=fronts[0]),
                Stop(at=boxes[1].x1, foot=fronts[1]),
            ),
            links=(go, Link(figure=hanging.overlap, rule=wood), go),
        )
    if hanging.overlap is not None:
        alone = [span.past for span in hanging.across]
        return _lapped(view, line, boxes, fronts, hanging.overlap, alone, wood)
    face = view.y(0.0)
    lead = 0.0
    for span in hanging.across:
        if span.what == "leaf":
            break
        lead += float(span.size)
    at = boxes[0].x0 - lead
    stops = [Stop(at=at, foot=face if lead else fronts[0])]
    links: list[Link] = []
    hidden: Figure | None = None
    for index, span in enumerate(hanging.across):
        at += float(span.size)
        if float(span.size) < 0:
            # Two leaves lie over one another there: the next is read from where the first ends.
            at -= float(span.size)
            hidden = span.size
            continue
        size = span.size
        if hidden is not None:
            at += float(hidden)
            assert span.past is not None
            size, hidden = span.past, None
        last = index == len(hanging.across) - 1
        foot = face if last and span.what != "leaf" else fronts[0]
        stops.append(Stop(at=at, foot=foot))
        links.append(Link(figure=size, rule=wood))
    return Chain(view=view, axis="across", line=line, stops=tuple(stops), links=tuple(links))


def _lapped(
    view: View,
    line: float,
    boxes: Sequence[Box],
    fronts: Sequence[float],
    overlap: Figure,
    alone: Sequence[Figure | None],
    rule: Rule,
) -> Chain:
    """More than two leaves that lie over one another: overlap by overlap, and what is between."""
    edges = sorted(
        (x, front) for box, front in zip(boxes, fronts, strict=True) for x in (box.x0, box.x1)
    )
    stops = tuple(Stop(at=x, foot=front) for x, front in edges)
    between = [figure for own in alone if own is not None for figure in (own, overlap)][:-1]
    links = tuple(Link(figure=figure, rule=rule) for figure in between)
    return Chain(view=view, axis="across", line=line, stops=stops, links=links)


def plan_ordinates(draft: Draft, job: Subject, view: View, extent: Extent) -> None:
    """How far each track's middle stands off the wall face."""
    hanging = job.resolved.door.hanging
    if not hanging.tracks:
        return
    start = view.x(extent.x1) + STUB
    rule = job.rules.arrangement
    face = Place(at=0.0, figure=Figure(0.0, "wall face"), start=start, words="wall face", rule=rule)
    tracks = [
        Place(
            at=-float(track.plane),
            figure=track.plane,
            start=start,
            words=f"{track.word} track",
            rule=job.rules.arrangement,
            down=True,
        )
        for track in hanging.tracks
    ]
    place_ordinates(draft, view, "up", [face, *tracks], start + 7.0)
