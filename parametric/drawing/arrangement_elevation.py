"""The arrangement's elevation: leaves shut, opening as measured, how they open, chains of heights.

 _______________
|   . '|' .     |   A leaf that turns wears two thin lines from the corners of its free edge to
| '    |    '   |   the middle of the edge it is hung by: chain lines where it comes towards the
|. ' . |. ' .   |   viewer, dashed where it goes away. One that slides wears an arrow.
"""

from __future__ import annotations

import itertools
from typing import Literal

from parametric.drawing.arrangement_layout import (
    GROUND,
    STUB,
    Extent,
    Placing,
)
from parametric.drawing.case import case_from_front
from parametric.drawing.chains import FIRST, Chain, Link, Stop
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import wall
from parametric.drawing.layers import Layer
from parametric.drawing.lettering import TEXT
from parametric.drawing.linework import hide_behind
from parametric.drawing.marks import LEADER_PITCH, Way, leaf_letter_mark, section_end, travel
from parametric.drawing.plane import Box, Point, Polygon, outside_all
from parametric.drawing.seen_and_cut import (
    draw_glass_strokes,
    draw_linework,
    front_linework,
    openings,
)
from parametric.drawing.sheet import Element, View
from parametric.drawing.site import (
    floor_at,
    hung_by,
    hung_words,
    leaf_boxes,
    level_cut,
    slides,
    upright_cut,
)
from parametric.drawing.subject import Subject
from parametric.figures import Figure, named
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.trade.standing import comes_towards


def draw_elevation(draft: Draft, job: Subject, place: Placing, extent: Extent) -> View:
    """The leaves from the front, the floor as measured, the opening dashed behind them."""
    view = draft.view("front elevation", place.scale, place.elevation)
    door = job.resolved.door
    boxes = leaf_boxes(door)
    work = front_linework(job.shut, job.shut)
    covers = [box.polygon for box in boxes]
    hide_behind(work, door.opening.outline(), covers, closed=False)
    for behind, front in zip(boxes[1:], boxes, strict=False):
        if behind.meets(front):
            hide_behind(work, behind.polygon, [front.polygon], closed=True)
    _opening_in_sight(draft, view, door, covers)
    case_from_front(draft, view, door, covers)
    draw_linework(draft, view, work)
    draw_glass_strokes(draft, view, job.shut, job.shut)
    _floor(draft, view, job, extent)
    _swings(draft, view, door)
    return view


def _swings(draft: Draft, view: View, door: Door) -> None:
    """Two lines on every leaf that turns, meeting at the edge it is hung by.

    Source: convention of building drawings, apex at the hinges; which line stands for which
    side differs from country to country, so the sheet's notes say it (common practice, no
    source).
    """
    for leaf, box in zip(door.leaves, leaf_boxes(door), strict=True):
        draw_swing(draft, view, leaf, box)


def draw_swing(draft: Draft, view: View, leaf: Leaf, box: Box) -> None:
    """The two lines of one leaf; none where it does not turn."""
    flap = leaf.hung.flap
    if flap is not None:
        hinge, free = (box.y1, box.y0) if flap.side == "top" else (box.y0, box.y1)
        apex = ((box.x0 + box.x1) / 2, hinge)
        for corner in ((box.x0, free), (box.x1, free)):
            draft.line("centre", view.at(corner), view.at(apex), view.name)
        return
    side = hung_by(leaf.hung)
    if leaf.hung.swing is None or side is None:
        return
    hinge, free = (box.x0, box.x1) if side == "left" else (box.x1, box.x0)
    apex = (hinge, (box.y0 + box.y1) / 2)
    layer: Layer = "centre" if comes_towards(leaf) else "hidden"
    for corner in ((free, box.y0), (free, box.y1)):
        draft.line(layer, view.at(corner), view.at(apex), view.name)


def _opening_in_sight(draft: Draft, view: View, door: Door, covers: list[Polygon]) -> None:
    """Jambs and head where no leaf covers them."""
    outline = door.opening.outline()
    for a, b in itertools.pairwise(outline):
        for p, q in outside_all(a, b, covers):
            draft.line("edge_fine", view.at(p), view.at(q), view.name)


def _floor(draft: Draft, view: View, job: Subject, extent: Extent) -> None:
    """The floor's slope as it was measured, true to scale."""
    door = job.resolved.door
    left, right = extent.x0 - STUB * view.scale, extent.x1 + STUB * view.scale
    inner = [x for x, _ in door.opening.floor_line() if left < x < right]
    line = [view.at((x, floor_at(door, x))) for x in (left, *inner, right)]
    draft.path("cut", tuple(line), view.name)
    deep = [(x, y - GROUND) for x, y in reversed(line)]
    draft.add(wall(((*line, *deep),), view.name))


def elevation_chains(job: Subject, view: View, extent: Extent) -> list[Chain]:
    """Left: floor gap and leaf. Right: floor gap and lap, then head to floor.

    Leaves that stand within the opening have the gap over them at the left too, so that the
    chain closes from floor to head; on the right the foot to the head closes it.
    """
    door = job.resolved.door
    hanging, opening = door.hanging, door.opening
    if hanging.head_gap is not None:
        return _within_chains(job, view, extent, hanging.head_gap)
    wood = job.rules.arrangement
    foot, top = extent.foot, extent.foot + float(hanging.leaf_height)
    left, right = view.x(extent.x0), view.x(extent.x1)
    (first_at, first_gap), (last_at, last_gap) = door.gaps[0], door.gaps[-1]
    floors = {place: float(z) for place, z in opening.floor.items()}
    leaf_left = view.x(leaf_boxes(door)[0].x0)
    leaf_right = view.x(leaf_boxes(door)[-1].x1)
    column: list[Stop] = [
        Stop(at=floors[first_at], foot=left - STUB),
        Stop(at=foot, foot=leaf_left),
        Stop(at=top, foot=leaf_left),
    ]
    heights: list[Link | None] = [
        Link(figure=first_gap, rule=wood),
        Link(figure=hanging.leaf_height, rule=wood),
    ]
    if any(leaf.hung.stacked for leaf in door.leaves):
        column, heights = _column(job, view, extent)
    chains = [
        Chain(
            view=view,
            axis="up",
            line=left - STUB - FIRST + 1.0,
            stops=tuple(column),
            links=tuple(heights),
        )
    ]
    names = ("head lap",) if hanging.on_wall else ("track allowance", "above the head")
    lap = next(job.figures[name] for name in names if name in job.figures)
    line = right + STUB + FIRST - 1.0
    low, high = sorted((extent.head, top))
    stops = [Stop(at=low, foot=leaf_right), Stop(at=high, foot=leaf_right)]
    links: list[Link | None] = [Link(figure=lap, rule=wood)]
    if len(door.gaps) > 1:
        stops = [
            Stop(at=floors[last_at], foot=right + STUB),
            Stop(at=foot, foot=leaf_right),
            *stops,
        ]
        between = Link(figure=hanging.head_above_foot, rule=wood) if hanging.on_wall else None
        links = [Link(figure=last_gap, rule=wood), between, *links]
    chains.append(Chain(view=view, axis="up", line=line, stops=tuple(stops), links=tuple(links)))
    return [*chains, *_reading_chain(job, view, extent, line)]


def _within_chains(job: Subject, view: View, extent: Extent, head_gap: Figure) -> list[Chain]:
    """Left: floor, the leaves one over another, head. Right: floor, finished foot, head."""
    door, wood = job.resolved.door, job.rules.arrangement
    hanging, opening = door.hanging, door.opening
    left, right = view.x(extent.x0), view.x(extent.x1)
    last_at, last_gap = door.gaps[-1]
    floors = {place: float(z) for place, z in opening.floor.items()}
    boxes = leaf_boxes(door)
    stops, links = _column(job, view, extent)
    stops.append(Stop(at=extent.head, foot=left))
    links.append(Link(figure=head_gap, rule=wood))
    line = right + STUB + FIRST - 1.0
    chains = [
        Chain(
            view=view,
            axis="up",
            line=left - STUB - FIRST + 1.0,
            stops=tuple(stops),
            links=tuple(links),
        )
    ]
    if len(door.gaps) > 1:
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=line,
                stops=(
                    Stop(at=floors[last_at], foot=right + STUB),
                    Stop(at=extent.foot, foot=view.x(max(box.x1 for box in boxes))),
                    Stop(at=extent.head, foot=right),
                ),
                links=(
                    Link(figure=last_gap, rule=wood),
                    Link(figure=hanging.head_above_foot, rule=wood),
                ),
            )
        )
    return [*chains, *_reading_chain(job, view, extent, line)]


def _column(job: Subject, view: View, extent: Extent) -> tuple[list[Stop], list[Link | None]]:
    """From the floor up through the leaves that stand over one another at the left."""
    door, wood = job.resolved.door, job.rules.arrangement
    first_at, first_gap = door.gaps[0]
    boxes = leaf_boxes(door)
    edge = min(box.x0 for box in boxes)
    column = sorted(
        (
            (box, leaf)
            for box, leaf in zip(boxes, door.leaves, strict=True)
            if box.x0 < edge + _ONE_COLUMN
        ),
        key=lambda pair: pair[0].y0,
    )
    floor = float(door.opening.floor[first_at])
    stops = [Stop(at=floor, foot=view.x(extent.x0) - STUB)]
    links: list[Link | None] = [Link(figure=first_gap, rule=wood)]
    below: Leaf | None = None
    for box, leaf in column:
        edge_at = view.x(box.x0)
        top = Stop(at=box.y1, foot=edge_at)
        height = Link(figure=leaf.height, rule=wood)
        between = None if below is None else leaf.hung.foot - (below.hung.foot + below.height)
        if between is not None and float(between) < 0:
            # One lies over the other there: what stands above it is read.
            assert leaf.hung.seen_height is not None, "what laps another says what is seen of it"
            height = Link(figure=leaf.hung.seen_height, rule=wood)
        else:
            if between is not None:
                case, meeting = door.hanging.case, door.hanging.meeting_gap
                known = _known(meeting if case is None else case.gap, between)
                links.append(Link(figure=known, rule=wood))
            stops.append(Stop(at=box.y0, foot=edge_at))
        stops.append(top)
        links.append(height)
        below = leaf
    return stops, links


_ONE_COLUMN = 5.0
"""Leaves whose left edges stand no farther apart stand over one another, mm."""


def _known(figure: Figure | None, value: Figure) -> Figure:
    """The figure that is the hanging's own, where it says the same."""
    same = figure is not None and abs(float(figure) - float(value)) < 1e-6
    return figure if figure is not None and same else named("gap between the leaves", value)


def _reading_chain(job: Subject, view: View, extent: Extent, line: float) -> list[Chain]:
    """A reading of head to floor that the level head bears out, outside what is at `line`."""
    door = job.resolved.door
    reading = _height_read(door)
    if reading is None:
        return []
    at, figure = reading
    floor = float(door.opening.floor[at])
    beyond = view.x(extent.x1) + STUB
    return [
        Chain(
            view=view,
            axis="up",
            line=line + extent.next_chain,
            stops=(
                Stop(at=floor, foot=line, inner=True)
                if at == door.gaps[-1][0]
                else Stop(at=floor, foot=beyond),
                Stop(at=extent.head, foot=line, inner=True),
            ),
            links=(Link(figure=figure, rule=job.rules.arrangement),),
        )
    ]


def _height_read(door: Door) -> tuple[str, Figure] | None:
    """A reading of head to floor that the level head bears out, from the right."""
    for at, floor in reversed(tuple(door.opening.floor.items())):
        reading = door.opening.heights.get(at)
        if reading is not None and abs(float(door.opening.head - floor - reading)) < 1e-6:
            return at, reading
    return None


def name_leaves(draft: Draft, job: Subject, view: View) -> None:
    """Each leaf's letter, how it hangs, and the way it goes."""
    door = job.resolved.door
    for index, (leaf, box) in enumerate(zip(door.leaves, leaf_boxes(door), strict=True)):
        first, second = hung_words(door, index)
        way = slides(leaf.hung)
        before = leaf_boxes(door)[index - 1]
        laps = index > 0 and before.meets(box) and before.x1 < box.x1 - _ONE_COLUMN
        hidden = before.x1 - box.x0 if laps else 0.0
        middle = view.x(
            (box.x0 + max(hidden, float(leaf.left_stile)) + box.x1 - float(leaf.right_stile)) / 2
        )
        options = []
        for up in _middles(leaf):
            centre = view.y(float(leaf.hung.foot) + up)
            for words in ((f"{first}, {second}",), (first, second)):
                for aside in (0.0, -0.16, 0.16):
                    x = middle + aside * (box.x1 - box.x0) / view.scale
                    options.append(_name(leaf.letter, words, way, (x, centre), view))
        # A leaf too narrow for words has its letter alone: the table of leaves says the rest.
        options += [
            _name(leaf.letter, (), way, (x, view.y(float(leaf.hung.foot) + up)), view)
            for aside in (0.0, -0.2, 0.2)
            for x in [middle + aside * (box.x1 - box.x0) / view.scale]
            for up in _middles(leaf)
        ]
        # One that is low as well has it small, in a rail if need be.
        options += [
            leaf_letter_mark(
                leaf.letter, (), (middle, view.y(float(leaf.hung.foot) + up)), view.name, small=True
            )
            for up in (*_middles(leaf), *(rail.foot + rail.height / 2 for rail in leaf.rails))
        ]
        draft.add_first_clear(options, f"leaf {leaf.letter}")


def _middles(leaf: Leaf) -> list[float]:
    """Where a leaf's name may stand, up from its foot: in an opening, a row of panes, a rail."""
    rows = [
        float(row + lite.cell[1] / 2)
        for lite in leaf.lites
        if lite.cell is not None
        for row in reversed(lite.rows)
    ]
    return [
        *(float(field.foot + field.height / 2) for field in openings(leaf)),
        *(rail.foot + rail.height / 2 for rail in reversed(leaf.rails) if rail.head is None),
        *dict.fromkeys(rows),
    ]


def _name(
    letter: str,
    words: tuple[str, ...],
    way: Literal["left", "right"] | None,
    centre: Point,
    view: View,
) -> list[Element]:
    """A leaf's letter, its words and its arrow where it slides, about one middle."""
    x, y = centre
    if way is None:
        lines = TEXT * (1.0 + LEADER_PITCH * (len(words) - 1)) if words else 0.0
        under = 4.0 + 1.2 + lines
        return [*leaf_letter_mark(letter, words, (x, y + (under - 4.0) / 2), view.name)]
    lines = TEXT * (1.0 + LEADER_PITCH * (len(words) - 1)) if words else 0.0
    under = 4.0 + 1.2 + lines + 3.4
    ring = (x, y + (under - 4.0) / 2)
    return [
        *leaf_letter_mark(letter, words, ring, view.name),
        *travel((x, ring[1] - under), way, view.name, 22.0 if words else 9.0),
    ]


def mark_sections(
    draft: Draft, job: Subject, elevation: View, extent: Extent, chains: list[Chain]
) -> None:
    """Ends of both section lines, outside the chains."""
    door = job.resolved.door
    y = elevation.y(level_cut(door))
    lines = [chain.line for chain in chains]
    section_end(draft, (min(lines) - 4.8 - 5.0, y), outwards="left", looks="down", letter="A")
    section_end(draft, (max(lines) + 1.6 + 5.0, y), outwards="right", looks="down", letter="A")
    at = upright_cut(door, third_angle=extent.third_angle)
    x, looks = elevation.x(at), _looks(extent)
    section_end(draft, (x, elevation.y(extent.high) + 6.2), outwards="up", looks=looks, letter="B")
    floor = elevation.y(floor_at(door, at)) - GROUND
    section_end(draft, (x, floor - 6.2), outwards="down", looks=looks, letter="B")


def _looks(extent: Extent) -> Way:
    """The way the upright section is seen, which stands to the right of the elevation."""
    return "left" if extent.third_angle else "right"
