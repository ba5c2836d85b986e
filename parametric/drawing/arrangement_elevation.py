"""The arrangement's elevation: leaves shut, opening dashed, floor as measured, chains of heights."""

from __future__ import annotations

import itertools
from typing import Literal

from parametric.drawing.arrangement_layout import (
    GROUND,
    STUB,
    Extent,
    Placing,
)
from parametric.drawing.chains import FIRST, Chain, Link, Stop
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import wall
from parametric.drawing.leafviews import (
    draw_glass_strokes,
    draw_linework,
    front_linework,
    openings,
)
from parametric.drawing.lettering import TEXT
from parametric.drawing.linework import hide_behind
from parametric.drawing.marks import LEADER_PITCH, Way, leaf_letter_mark, section_end, travel
from parametric.drawing.plane import Point, Polygon, outside_all
from parametric.drawing.sheet import Element, View
from parametric.drawing.site import floor_at, leaf_boxes, level_cut, upright_cut
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.resolve.door import Door


def draw_elevation(draft: Draft, job: Subject, place: Placing, extent: Extent) -> View:
    """The leaves from the front, the floor as measured, the opening dashed behind them."""
    view = draft.view("front elevation", place.scale, place.elevation)
    door = job.resolved.door
    boxes = leaf_boxes(door)
    work = front_linework(job.shut, job.shut)
    covers = [box.polygon for box in boxes]
    hide_behind(work, door.opening.outline(), covers, closed=False)
    for behind, front in zip(boxes[1:], boxes, strict=False):
        hide_behind(work, behind.polygon, [front.polygon], closed=True)
    _opening_in_sight(draft, view, door, covers)
    draw_linework(draft, view, work)
    draw_glass_strokes(draft, view, job.shut, job.shut)
    _floor(draft, view, job, extent)
    return view


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
    """Left: floor gap and leaf. Right: floor gap and lap, then head to floor."""
    door = job.resolved.door
    hanging, opening = door.hanging, door.opening
    wood = job.rules.arrangement
    foot, top = extent.foot, extent.foot + float(hanging.leaf_height)
    left, right = view.x(extent.x0), view.x(extent.x1)
    (first_at, first_gap), (last_at, last_gap) = door.gaps[0], door.gaps[-1]
    floors = {place: float(z) for place, z in opening.floor.items()}
    leaf_left = view.x(leaf_boxes(door)[0].x0)
    leaf_right = view.x(leaf_boxes(door)[-1].x1)
    chains = [
        Chain(
            view=view,
            axis="up",
            line=left - STUB - FIRST + 1.0,
            stops=(
                Stop(at=floors[first_at], foot=left - STUB),
                Stop(at=foot, foot=leaf_left),
                Stop(at=top, foot=leaf_left),
            ),
            links=(
                Link(figure=first_gap, rule=wood),
                Link(figure=hanging.leaf_height, rule=wood),
            ),
        )
    ]
    lap_name = "head lap" if hanging.on_wall else "track allowance"
    lap = job.figures[lap_name]
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
    reading = _height_read(door)
    if reading is not None:
        at, figure = reading
        chains.append(
            Chain(
                view=view,
                axis="up",
                line=line + extent.next_chain,
                stops=(
                    Stop(at=floors[at], foot=line, inner=True)
                    if at == last_at
                    else Stop(at=floors[at], foot=right + STUB),
                    Stop(at=extent.head, foot=line, inner=True),
                ),
                links=(Link(figure=figure, rule=wood),),
            )
        )
    return chains


def _height_read(door: Door) -> tuple[str, Figure] | None:
    """A reading of head to floor that the level head bears out, from the right."""
    for at, floor in reversed(tuple(door.opening.floor.items())):
        reading = door.opening.heights.get(at)
        if reading is not None and abs(float(door.opening.head - floor - reading)) < 1e-6:
            return at, reading
    return None


def name_leaves(draft: Draft, job: Subject, view: View) -> None:
    """Each leaf's letter, where it hangs, and the way it goes."""
    door = job.resolved.door
    places = ("front", "rear")
    for index, (leaf, box) in enumerate(zip(door.leaves, leaf_boxes(door), strict=True)):
        leaf_words, track = f"{places[min(index, 1)]} leaf", f"{door.hanging.tracks[index]} track"
        way: Literal["left", "right"] = (
            "right" if float(door.hanging.travels[index]) > 0 else "left"
        )
        fields = openings(leaf)
        hidden = max(0.0, leaf_boxes(door)[index - 1].x1 - box.x0) if index else 0.0
        middle = view.x(
            (box.x0 + max(hidden, float(leaf.left_stile)) + box.x1 - float(leaf.right_stile)) / 2
        )
        options = []
        for field in fields:
            centre = view.y(float(door.hanging.floor_gap) + float(field.foot + field.height / 2))
            for words in ((f"{leaf_words}, {track}",), (leaf_words, track)):
                for aside in (0.0, -0.16, 0.16):
                    x = middle + aside * (box.x1 - box.x0) / view.scale
                    options.append(_name(leaf.letter, words, way, (x, centre), view))
        draft.add_first_clear(options, f"leaf {leaf.letter}")


def _name(
    letter: str,
    words: tuple[str, ...],
    way: Literal["left", "right"],
    centre: Point,
    view: View,
) -> list[Element]:
    """A leaf's letter, its words and its arrow, about one middle."""
    x, y = centre
    under = 4.0 + 1.2 + TEXT * (1.0 + LEADER_PITCH * (len(words) - 1)) + 3.4
    ring = (x, y + (under - 4.0) / 2)
    return [
        *leaf_letter_mark(letter, words, ring, view.name),
        *travel((x, ring[1] - under), way, view.name, 22.0),
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
