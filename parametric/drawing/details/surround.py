"""What stands round a leaf in a detail: jamb, head and floor, hatched, their far sides broken off."""

from __future__ import annotations

from parametric.drawing.details.cutting import keep_off
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board as plasterboard
from parametric.drawing.hatching import carcassing, wall
from parametric.drawing.marks import wave
from parametric.drawing.plane import Box, Point, Polygon, around, without_spikes
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject

_GROUND = 4.0
"""How deep a floor is hatched, mm on paper."""


def draw_jamb(
    draft: Draft,
    view: View,
    job: Subject,
    side: Box,
    *,
    inner: float,
    let_in: tuple[Point, Point] | None = None,
) -> None:
    """A jamb cut level: its face and reveal true, its far sides broken off.

    Args:
        draft: the board.
        view: seen from above, the room at the foot.
        job: for what the wall is made of.
        side: what is shown of it; its foot is the wall's face.
        inner: which of its sides is the reveal, X.
        let_in: a mortise in the reveal, from the corner at the wall's face to the one inside;
            None without one.
    """
    outer = side.x0 if inner == side.x1 else side.x1
    face: Polygon = ((outer, side.y0), (inner, side.y0), (inner, side.y1))
    if let_in is not None:
        (_, start), (deep_in, end) = let_in
        notch: Polygon = ((inner, start), (deep_in, start), (deep_in, end), (inner, end))
        face = without_spikes(((outer, side.y0), (inner, side.y0), *notch, (inner, side.y1)))
        draft.path("cut_heavy", view.path(face), view.name)
        region = view.path((*face, (outer, side.y1)))
        draft.add(wall((region,), view.name, 2.2))
        wave(draft, view.at((outer, side.y0)), view.at((outer, side.y1)), view.name, 0.9)
        wave(draft, view.at((side.x0, side.y1)), view.at((side.x1, side.y1)), view.name, 0.9)
        keep_off(draft, region)
        return
    draft.path("cut_heavy", view.path(face), view.name)
    skin = job.resolved.door.opening.board
    deep = side.y0 + (0.0 if skin is None else float(skin))
    body = around((view.at((side.x0, deep)), view.at((side.x1, side.y1))))
    if skin is not None:
        draft.line("edge", view.at((side.x0, deep)), view.at((side.x1, deep)), view.name)
        layer = view.path(Box(side.x0, side.y0, side.x1, deep).polygon)
        draft.add(plasterboard((layer,), view.name, 1.4))
        keep_off(draft, layer)
    _fill(draft, view, job, body)
    wave(draft, view.at((outer, side.y0)), view.at((outer, side.y1)), view.name, 0.9)
    wave(draft, view.at((side.x0, side.y1)), view.at((side.x1, side.y1)), view.name, 0.9)
    keep_off(draft, body.polygon)


def draw_head(draft: Draft, view: View, job: Subject, over: Box, *, face: float) -> None:
    """The head cut upright: its underside and the wall's face true, the far sides broken off.

    Args:
        draft: the board.
        view: an upright section.
        job: for what the wall is made of.
        over: what is shown of it; its foot is the head of the opening.
        face: which of its sides is the wall's face.
    """
    back = over.x0 if face == over.x1 else over.x1
    path = ((back, over.y0), (face, over.y0), (face, over.y1))
    draft.path("cut_heavy", view.path(path), view.name)
    body = around(view.path(over.polygon))
    _fill(draft, view, job, body)
    wave(draft, view.at((back, over.y0)), view.at((back, over.y1)), view.name, 0.9)
    wave(draft, view.at((over.x0, over.y1)), view.at((over.x1, over.y1)), view.name, 0.9)
    keep_off(draft, body.polygon)


def draw_floor(draft: Draft, view: View, ends: tuple[float, float], level: float = 0.0) -> None:
    """A floor cut upright: its surface, and a strip of it hatched."""
    a, b = view.at((ends[0], level)), view.at((ends[1], level))
    draft.line("cut_heavy", a, b, view.name)
    strip = (a, b, (b[0], b[1] - _GROUND), (a[0], a[1] - _GROUND))
    draft.add(wall((strip,), view.name, 1.8))
    draft.reserve(Box(a[0], a[1] - _GROUND, b[0], b[1]))


def _fill(draft: Draft, view: View, job: Subject, body: Box) -> None:
    if job.resolved.door.opening.fixing == "solid timber":
        draft.add(carcassing(body, view.name))
    else:
        draft.add(wall((body.polygon,), view.name, 2.2))
