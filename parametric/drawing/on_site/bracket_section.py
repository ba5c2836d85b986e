"""Cut through the head at one bracket: what the screw passes, what it holds in, what hangs on it."""

from __future__ import annotations

from typing import Literal

from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board, carcassing, long_grain, wall
from parametric.drawing.lettering import wrap
from parametric.drawing.marks import leaders, wave
from parametric.drawing.on_site.wall import line_height
from parametric.drawing.papers import scale_words
from parametric.drawing.pieces import cut_through
from parametric.drawing.plane import Box, Point, around, rectangle
from parametric.drawing.primitives import Stroke
from parametric.drawing.running import Picture
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.trade.installing import InstallSheet
from parametric.trade.site_words import over_the_head

_SCALE = 2.0
_LEAF = 42.0
"""How much of a leaf is shown under its top, mm."""
_OVER = 14.0
"""Wall past the highest thing and past the screw's end, mm."""
_DEEP = 40.0
"""Wall behind its face where the screw's length is not known, mm."""
_HEAD = 5.0
_WORDS = 64.0
_DOWN = 6.0
"""Words stand a little higher than what they point at."""

_Target = tuple[Point, Literal["arrow", "dot"], list[str]]


def bracket_picture(job: Subject, install: InstallSheet) -> Picture:
    """The section, as a picture of the fixings' page."""
    box = _extent(job, install)

    def draw(draft: Draft, room: Box) -> None:
        origin = (room.x0 + 1.0 - box.x0 / _SCALE, room.y1 - _DOWN - box.y1 / _SCALE)
        view = draft.view("at a bracket", _SCALE, origin)
        _draw(draft, view, job, install, box)
        targets = _targets(view, job, install, box)
        column = view.x(box.x1) + _HEAD
        wide = room.x1 - column - 1.0
        leaders(
            draft,
            [(at, end, wrap(" ".join(words), wide)) for at, end, words in targets],
            column=column,
            view=view.name,
        )

    words = scale_words(_SCALE, job.rules.unit)
    height = max(box.height / _SCALE + _DOWN + 2.0, _WORDS)
    return Picture(title=f"At a bracket, from the left end  {words}", height=height, draw=draw)


def _extent(job: Subject, install: InstallSheet) -> Box:
    """What is shown, mm: off the wall face across, from the datum up."""
    door = job.resolved.door
    half = float(door.leaves[0].thickness) / 2
    planes = [float(plane) for plane in door.hanging.planes]
    screw = _DEEP if install.screw is None else float(install.screw)
    tracks = _tracks(job)
    top = float(door.hanging.floor_gap + door.hanging.leaf_height)
    if door.hanging.on_wall:
        high = max([top, *(outline.y1 for outline in tracks)]) + _OVER
        return Box(
            -screw - _OVER, min(float(door.opening.head), top) - _LEAF, max(planes) + half, high
        )
    high = _under(job) + screw + _OVER
    return Box(min(planes) - half - _OVER, top - _LEAF, max(0.0, max(planes) + half), high)


def _under(job: Subject) -> float:
    """The underside of what the track is screwed up into: the head, or a pocket's header over it."""
    door = job.resolved.door
    if not over_the_head(door):
        return float(door.opening.head)
    return max(track.y1 for track in _tracks(job))


def _tracks(job: Subject) -> list[Box]:
    """The bars that stand for the tracks, cut in their middle."""
    line = job.resolved.door.hanging.tracks[0]
    at = float(line.left + line.length / 2)
    cuts = (cut_through(p, "upright", at) for p in job.shut if p.group == "tracks")
    return [around(cut.outline) for cut in cuts if cut is not None]


def _draw(draft: Draft, view: View, job: Subject, install: InstallSheet, box: Box) -> None:
    door = job.resolved.door
    head = float(door.opening.head)
    low = head if door.hanging.on_wall else _under(job)
    _wall(draft, view, job, Box(box.x0, low, 0.0, box.y1))
    top = float(door.hanging.floor_gap + door.hanging.leaf_height)
    half = float(door.leaves[0].thickness) / 2
    for plane in door.hanging.planes:
        x0, x1 = float(plane) - half, float(plane) + half
        outline = view.path(rectangle(x0, box.y0, x1, top))
        low_left, low_right, high_right, high_left = outline
        draft.path("cut", (low_left, high_left, high_right, low_right), view.name)
        draft.add(long_grain((outline,), view.name, "up", 1.3))
        wave(draft, low_left, low_right, view.name)
        draft.line(
            "centre",
            view.at((float(plane), top - 12.0)),
            (view.x(float(plane)), view.y(top) + 19.0),
            view.name,
        )
    for track in _tracks(job):
        draft.path("adjacent", view.path(track.polygon), view.name, closed=True)
    if install.screw is not None:
        _screw(draft, view, job, float(install.screw))


def _wall(draft: Draft, view: View, job: Subject, body: Box) -> None:
    """Face and reveal true, the board on the side that is screwed through, the rest broken off."""
    door = job.resolved.door
    skin = 0.0 if door.opening.board is None else float(door.opening.board)
    x0, y0, _, y1 = body
    draft.path("cut", view.path(((x0, y0), (0.0, y0), (0.0, y1))), view.name)
    if door.hanging.on_wall:
        layer, solid = Box(-skin, y0, 0.0, y1), Box(x0, y0, -skin, y1)
    else:
        layer, solid = Box(x0, y0, 0.0, y0 + skin), Box(x0, y0 + skin, 0.0, y1)
    if skin:
        draft.path("edge_fine", view.path(layer.polygon), view.name, closed=True)
        draft.add(board((view.path(layer.polygon),), view.name, 1.4))
    if door.opening.fixing in ("solid timber", "studs"):
        draft.add(carcassing(around(view.path(solid.polygon)), view.name))
    elif door.opening.fixing == "masonry":
        draft.add(wall((view.path(solid.polygon),), view.name))
    wave(draft, view.at((x0, y0)), view.at((x0, y1)), view.name)
    wave(draft, view.at((x0, y1)), view.at((0.0, y1)), view.name)


def _screw_at(job: Subject) -> Point:
    """Where the screw is drawn to enter: its height is the data sheet's to say."""
    door = job.resolved.door
    if door.hanging.on_wall:
        high = max((track.centre[1] for track in _tracks(job)), default=line_height(job) + 20.0)
        return (0.0, high)
    return (float(door.hanging.planes[0]), _under(job))


def _screw(draft: Draft, view: View, job: Subject, depth: float) -> None:
    x, z = _screw_at(job)
    tip = (x - depth, z) if job.resolved.door.hanging.on_wall else (x, z + depth)
    draft.add(Stroke(layer="cut_heavy", points=view.path(((x, z), tip)), view=view.name))


def _targets(view: View, job: Subject, install: InstallSheet, box: Box) -> list[_Target]:
    """What stands beside the section."""
    door = job.resolved.door
    found: list[_Target] = []
    tracks = _tracks(job)
    if tracks:
        track = max(tracks, key=lambda outline: outline.x1)
        found.append(
            (
                view.at((track.x1, track.centre[1])),
                "arrow",
                ["track and bracket by supplier; the bar only shows their place"],
            )
        )
    body = (box.x0 / 2, box.y1 - 6.0)
    found.append((view.at(body), "dot", [f"{install.behind}"]))
    if install.screw is not None:
        x, z = _screw_at(job)
        at = (x - 6.0, z) if door.hanging.on_wall else (x, z + 6.0)
        height = "; height off the data sheet" if door.hanging.on_wall else ""
        found.append((view.at(at), "arrow", [f"screw {install.screw_words}{height}"]))
    top = float(door.hanging.floor_gap + door.hanging.leaf_height)
    outer = max(float(plane) for plane in door.hanging.planes)
    half = float(door.leaves[0].thickness) / 2
    found.append((view.at((outer + half, top)), "arrow", ["top of the leaves"]))
    return found
