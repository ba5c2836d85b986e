"""The arrangement's upright section: head, leaves and floor, and what is fixed to what."""

from __future__ import annotations

from dataclasses import replace

from parametric.drawing.arrangement_layout import (
    GROUND,
    STUB,
    Extent,
    Placing,
)
from parametric.drawing.case import case_from_the_side
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board, carcassing, wall
from parametric.drawing.marks import datum, leaders, wave
from parametric.drawing.plane import around, rectangle
from parametric.drawing.primitives import Label
from parametric.drawing.seen_and_cut import (
    cuts_through,
    draw_cuts,
)
from parametric.drawing.sheet import View
from parametric.drawing.site import floor_at, leaf_boxes, upright_cut, wall_depth
from parametric.drawing.subject import Subject
from parametric.figures import Figure


def draw_upright(draft: Draft, job: Subject, place: Placing, extent: Extent) -> View:
    """The leaves cut upright: wall over the head, the other leaf beyond, the floor."""
    view = draft.view("section B-B", place.scale, place.upright)
    door = job.resolved.door
    at = upright_cut(door, third_angle=extent.third_angle)
    floor = floor_at(door, at)
    deep = wall_depth(extent, view.scale) * view.scale
    out = extent.off_most + STUB * view.scale
    ground = tuple(view.at((extent.beside(off), floor)) for off in (-deep, out))
    draft.path("cut", ground, view.name)
    under = view.y(floor) - GROUND
    strip = (*ground, (ground[1][0], under), (ground[0][0], under))
    draft.add(wall((strip,), view.name))
    if door.hanging.case is not None:
        ends = (extent.beside(0.0), extent.beside(-deep))
        case_from_the_side(draft, view, door, ends, floor)
    else:
        _head(draft, view, job, extent, deep)
    cuts = [
        replace(cut, outline=tuple((extent.beside(off), z) for off, z in cut.outline))
        for cut in cuts_through(job.shut, "upright", at)
    ]
    cut_groups = {cut.piece.group for cut in cuts}
    for leaf, box in zip(door.leaves, leaf_boxes(door), strict=True):
        if leaf.name in cut_groups:
            continue
        back = float(leaf.hung.plane) - float(leaf.thickness) / 2
        faces = sorted(extent.beside(off) for off in (back, back + float(leaf.thickness)))
        outline = view.path(rectangle(faces[0], box.y0, faces[1], box.y1))
        draft.path("edge_fine", outline, view.name, closed=True)
    if door.hanging.case is None:
        # The jamb beyond: the wall's face carried down to the floor.
        draft.line("edge_fine", view.at((0.0, floor)), view.at((0.0, extent.head)), view.name)
    draw_cuts(draft, view, cuts)
    for track in door.hanging.tracks:
        off = extent.beside(float(track.plane))
        top = extent.foot + float(door.hanging.leaf_height)
        draft.line(
            "centre",
            (view.x(off), view.y(top) - 2.0),
            (view.x(off), view.y(extent.high) + 1.6),
            view.name,
        )
    return view


def _head(draft: Draft, view: View, job: Subject, extent: Extent, deep: float) -> None:
    """The wall over the opening, and what the track is fixed to."""
    door = job.resolved.door
    high = (view.y(extent.high) + extent.wall_over - view.origin[1]) * view.scale
    head = extent.head
    skin = 0.0 if door.opening.board is None else float(door.opening.board)
    face, back, under = (extent.beside(off) for off in (0.0, -deep, -skin))
    draft.path(
        "cut", (view.at((back, head)), view.at((face, head)), view.at((face, high))), view.name
    )
    body = around((view.at((back, head)), view.at((under, high))))
    far = view.x(back)
    if skin:
        draft.line("edge_fine", view.at((under, head)), view.at((under, high)), view.name)
        low, top = sorted((under, face))
        draft.add(board((view.path(rectangle(low, head, top, high)),), view.name, 1.1))
    if door.opening.fixing == "solid timber":
        draft.add(carcassing(body, view.name))
        draft.line("edge_fine", (far, body.y0), (far, body.y1), view.name)
    else:
        draft.add(wall((body.polygon,), view.name))
        wave(draft, (far, body.y0), (far, body.y1), view.name)
    wave(draft, (far, body.y1), (view.x(face), body.y1), view.name)


def upright_words(draft: Draft, job: Subject, view: View, extent: Extent, column: float) -> None:
    """What is bought and what it is fixed to, said beside the head, where there are tracks."""
    door = job.resolved.door
    opening, hanging = door.opening, door.hanging
    tracks = [p for p in job.shut if p.group == "tracks"]
    if not tracks or door.track is None:
        return
    nearest = max(float(plane) for plane in hanging.planes)
    blank = tracks[0].part.blank
    top = extent.foot + float(hanging.leaf_height)
    near_side = extent.beside(nearest + float(blank.width) / 2)
    track_at = view.at((near_side, extent.high - 6.0))
    if not hanging.on_wall:
        track_at = view.at((near_side, top + float(blank.thickness)))
    count = len(tracks)
    words = [
        "track and hangers by the supplier:",
        f"{count} × {job.wood(hanging.tracks[0].length)}, {float(door.track.brackets):g} brackets each",
    ]
    board_words = "" if opening.board is None else f" behind {job.wood(opening.board)} board"
    fixing = {
        "solid timber": (f"solid timber{board_words}:", "fix anywhere along the head"),
        "studs": (f"studs{board_words}:", "find and mark every one"),
        "masonry": (f"masonry{board_words}",),
        "board only": ("board only: holds no track",),
    }.get(opening.fixing, ("what lies behind is not known:", "open up before fixing"))
    body = view.at((extent.beside(-_skin(opening.board) - 12.0), extent.head + 2.0 * view.scale))
    leaders(
        draft,
        [(track_at, "arrow", words), (body, "dot", fixing)],
        column=column,
        view=view.name,
    )


def _skin(layer: Figure | None) -> float:
    return 0.0 if layer is None else float(layer)


def draw_datum(
    draft: Draft, job: Subject, elevation: View, upright: View, extent: Extent, words_at: float
) -> None:
    """One line through both views at the finished foot, and its name."""
    door = job.resolved.door
    y = elevation.y(extent.foot)
    start = elevation.x(leaf_boxes(door)[-1].x1) + 1.5
    words = "Datum 0"
    label = Label(text=words, at=(words_at, y), weight="bold")
    draft.line("datum", (start, y), (words_at + label.box.width + 4.0, y))
    datum(draft, (words_at, y), words)
    draft.reserve(around(((upright.x(0.0), y - 1.0), (words_at, y + 1.0))))
