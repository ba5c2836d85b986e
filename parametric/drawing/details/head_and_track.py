"""The head over the leaves, cut upright: wall, what is behind it, tracks, hangers, a leaf's top."""

from __future__ import annotations

import dataclasses

from parametric.drawing.chains import FIRST, Link, place_chains
from parametric.drawing.details.board import ORIGIN, Call, Detail, board, detail_scale, finished
from parametric.drawing.details.callouts import fan, say
from parametric.drawing.details.cutting import Looks, cut_in_window, draw_cut, keep_off
from parametric.drawing.details.lines import chain
from parametric.drawing.details.words import at_scale
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board as plasterboard
from parametric.drawing.hatching import carcassing, wall
from parametric.drawing.marks import wave
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.plane import Box, around, rectangle
from parametric.drawing.sheet import View
from parametric.drawing.site import upright_cut
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.trade.paperwork import Paperwork

_BEHIND = 46.0
"""How much is shown behind the wall's face, mm."""
_ASIDE = 16.0
"""How much is shown past the outermost leaf, mm."""
_LEAF = 42.0
"""How much of a leaf is shown under its top, mm."""
_BRACKET = 7.0
"""How thick the supplied bracket is drawn, mm: a box, no more."""


@dataclasses.dataclass(frozen=True, slots=True, kw_only=True)
class _Head:
    """Where things stand in the section, mm: off the wall by `side`, and up."""

    side: float
    head: float
    top: float
    track_foot: float
    track_top: float
    far: float
    behind: float
    skin: float
    window: Box


def head_and_track(job: Subject, paper: Paperwork) -> Detail | None:
    """The head of the opening with the leaf that the arrangement's section cuts; None without a
    track.
    """
    door = job.resolved.door
    hanging = door.hanging
    if not hanging.tracks:
        return None
    index = -1 if job.third_angle else 0
    h = _head(job)
    draft = board()
    scale = detail_scale(h.window.width, h.window.height)
    view = draft.view("head and track", scale, (ORIGIN[0], ORIGIN[1] - h.head / scale))
    at = upright_cut(door, third_angle=job.third_angle)
    _wall(draft, view, job, h)
    pieces = [p for p in job.shut if p.group in (door.leaves[index].name, "tracks")]
    anywhere = Box(-9e3, h.window.y0, 9e3, h.window.y1)
    cuts = [
        dataclasses.replace(c, outline=tuple((h.side * off, z) for off, z in c.outline))
        for c in cut_in_window(pieces, "upright", at, anywhere)
    ]
    for number, leaf in enumerate(door.leaves):
        middle, half = h.side * float(leaf.hung.plane), float(leaf.thickness) / 2
        if number != index % len(door.leaves):
            _leaf_beyond(draft, view, h, middle, half)
        _hanger(draft, view, h, middle)
    draw_cut(draft, view, cuts, h.window, Looks())
    _bracket(draft, view, job, h)
    _chains(draft, view, job, h)
    _words(draft, view, job, paper, h)
    return finished(
        draft,
        "head and track",
        "Head and tracks",
        f"{at_scale(job, scale)}, cut upright. Brackets, tracks and hangers by the "
        "supplier, drawn as boxes; heights by the data sheet. Planes from the wall face.",
        Call(
            on="section",
            by="ring",
            box=around(
                (
                    (0.0, min(h.head, h.top - 10.0)),
                    (h.side * max(float(p) for p in hanging.planes), h.track_top),
                    (h.side * min(float(p) for p in hanging.planes), h.track_top),
                )
            ),
        ),
    )


def _head(job: Subject) -> _Head:
    door = job.resolved.door
    hanging, opening = door.hanging, door.opening
    side = -1.0 if job.third_angle else 1.0
    half = float(door.leaves[0].thickness) / 2
    track = next(p.part.blank for p in job.shut if p.group == "tracks")
    foot = min(p.stands.origin[2] for p in job.shut if p.group == "tracks")
    planes = [float(p) for p in hanging.planes]
    far = max(0.0, max(planes) + half) + _ASIDE
    behind = max(_BEHIND, -(min(planes) - half) + _ASIDE)
    top = float(hanging.floor_gap) + float(hanging.leaf_height)
    head = float(opening.head)
    track_top = foot + float(track.thickness)
    low = min(top - _LEAF, head - 22.0)
    high = max(track_top + 22.0, head + 40.0)
    x0, x1 = sorted((-side * behind, side * far))
    return _Head(
        side=side,
        head=head,
        top=top,
        track_foot=foot,
        track_top=track_top,
        far=far,
        behind=behind,
        skin=0.0 if opening.board is None else float(opening.board),
        window=Box(x0, low, x1, high),
    )


def _wall(draft: Draft, view: View, job: Subject, h: _Head) -> None:
    """Face and soffit true; board, and what is behind it; the far sides broken off."""
    opening = job.resolved.door.opening
    back, face = -h.side * h.behind, 0.0
    high = h.window.y1
    draft.path("cut_heavy", view.path(((back, h.head), (face, h.head), (face, high))), view.name)
    under = -h.side * h.skin
    body = around((view.at((back, h.head)), view.at((under, high))))
    if h.skin:
        draft.line("edge", view.at((under, h.head)), view.at((under, high)), view.name)
        x0, x1 = sorted((under, face))
        skin = view.path(rectangle(x0, h.head, x1, high))
        draft.add(plasterboard((skin,), view.name, 1.4))
        keep_off(draft, skin)
    if opening.fixing == "solid timber":
        draft.add(carcassing(body, view.name))
    else:
        draft.add(wall((body.polygon,), view.name, 2.2))
    far = view.x(back)
    wave(draft, (far, body.y0), (far, body.y1), view.name, 0.9)
    wave(draft, (far, body.y1), (view.x(face), body.y1), view.name, 0.9)
    keep_off(draft, body.polygon)


def _leaf_beyond(draft: Draft, view: View, h: _Head, middle: float, half: float) -> None:
    """The other leaf, past the cut: its top and both faces."""
    low = h.window.y0
    points = (
        (middle - half, low),
        (middle - half, h.top),
        (middle + half, h.top),
        (middle + half, low),
    )
    draft.path("edge_fine", view.path(points), view.name)
    ends = (view.at((middle - half, low)), view.at((middle + half, low)))
    wave(draft, *ends, view.name, 0.7)
    keep_off(draft, view.path(points))


def _hanger(draft: Draft, view: View, h: _Head, middle: float) -> None:
    """The hanger as a box between a leaf's top and its track, and the plane it hangs in."""
    hang = rectangle(middle - 8.0, h.top, middle + 8.0, h.track_foot)
    draft.path("adjacent", view.path(hang), view.name, closed=True)
    draft.line(
        "centre",
        (view.x(middle), view.y(h.top) - 8.0),
        (view.x(middle), view.y(h.window.y1) + 2.0),
        view.name,
    )


def _bracket(draft: Draft, view: View, job: Subject, h: _Head) -> None:
    """The brackets as one box from what they are fixed to over the tracks."""
    hanging = job.resolved.door.hanging
    outer = max(float(p) for p in hanging.planes) if hanging.on_wall else 0.0
    if not hanging.on_wall:
        return
    track = next(p.part.blank for p in job.shut if p.group == "tracks")
    x0, x1 = sorted((0.0, h.side * (outer + float(track.width) / 2)))
    box = rectangle(x0, h.track_top, x1, h.track_top + _BRACKET)
    draft.path("adjacent", view.path(box), view.name, closed=True)


def _chains(draft: Draft, view: View, job: Subject, h: _Head) -> None:
    """How far the leaf laps over the head or stays under it; the board; planes off the wall."""
    door = job.resolved.door
    hanging, wood = door.hanging, job.rules.wood
    far = view.x(h.side * h.far)
    outward = h.side
    chains = []
    name = "head lap" if hanging.on_wall else "track allowance"
    lap = job.figures.get(name)
    index = -1 if job.third_angle else 0
    half = float(door.leaves[0].thickness) / 2
    leaf_face = view.x(h.side * (float(hanging.planes[index]) + half))
    if lap is not None and float(lap) > 0 and abs(abs(h.top - h.head) - float(lap)) < 1e-6:
        head_foot = view.x(0.0)
        places = sorted(((h.head, head_foot), (h.top, leaf_face)))
        chains.append(
            chain(
                view,
                "up",
                far + outward * (FIRST - 4.0),
                places,
                (Link(figure=lap, rule=wood, reference=hanging.on_wall),),
            )
        )
    skin = job.figures.get("board over fixing")
    if skin is not None and h.skin > 0:
        foot = view.y(h.head)
        places = sorted(((0.0, foot), (-h.side * h.skin, foot)))
        chains.append(chain(view, "across", foot - FIRST, places, (Link(figure=skin, rule=wood),)))
    place_chains(draft, chains)
    start = view.y(h.window.y1) + 1.0
    places_across = [
        Place(at=0.0, figure=Figure(0.0, "wall face"), start=start, rule=wood),
        *(
            Place(
                at=h.side * float(plane),
                figure=plane,
                start=start,
                rule=wood,
                down=(h.side * float(plane) < 0) != (float(plane) < 0),
                reference=True,
            )
            for plane in hanging.planes
        ),
    ]
    place_ordinates(draft, view, "across", places_across, start + 6.0)


def _words(draft: Draft, view: View, job: Subject, paper: Paperwork, h: _Head) -> None:
    door = job.resolved.door
    hanging, opening = door.hanging, door.opening
    out = h.side
    behind = {
        "solid timber": ("solid timber, all along",),
        "studs": ("studs: find every one",),
        "masonry": ("masonry",),
        "board only": ("board only:", "holds no track"),
    }.get(opening.fixing, ("not known what is behind:", "open up before fixing"))
    say(
        draft,
        view.at((-h.side * (h.skin + h.behind) / 2, h.head + 14.0)),
        "dot",
        behind,
        fan((-out, -0.7), (-out, 0.2), (-out, 0.9)),
        view.name,
    )
    index = 0 if hanging.on_wall else -1
    outer = h.side * float(hanging.planes[index])
    track = next(p.part.blank for p in job.shut if p.group == "tracks")
    say(
        draft,
        view.at(
            (
                outer + out * float(track.width) / 2 * (1 if hanging.on_wall else -1),
                (h.track_foot + h.track_top) / 2,
            )
        ),
        "arrow",
        ("track",),
        fan((out, 0.2), (out, 0.8), (-out, 0.8)),
        view.name,
    )
    say(
        draft,
        view.at((outer + out * 8.0, (h.top + h.track_foot) / 2)),
        "arrow",
        ("hanger",),
        fan((out, -0.5), (out, -0.1), (-out, -0.5)),
        view.name,
    )
    screw = paper.install.screw
    if screw is not None and hanging.on_wall:
        say(
            draft,
            view.at((0.0, h.track_top + _BRACKET / 2)),
            "arrow",
            ("screws at least", f"{job.wood(screw)} and the", "bracket's own thickness"),
            fan((-out, 1.0), (-out, 0.5), (out, 1.0)),
            view.name,
        )
