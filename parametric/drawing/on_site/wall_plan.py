"""The floor under the doors from above: where each track's middle stands, where the guides go."""

from __future__ import annotations

import dataclasses
import math

from parametric.drawing.case import case_from_above
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import board, wall
from parametric.drawing.marks import wave
from parametric.drawing.on_site.wall import STUB, TO_NUMBERS, Span, site_rule
from parametric.drawing.ordinates import Place, place_ordinates
from parametric.drawing.plane import Point, rectangle
from parametric.drawing.primitives import Circle
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.resolve.footprint import footprint
from parametric.resolve.leaf import Leaf
from parametric.trade.installing import InstallSheet

WALL = 5.5
"""How much wall is drawn behind its face, mm on paper."""
GUIDE = 1.1
_LOOKS = 24
"""Places on its way that a turning leaf is looked at."""


def plan_depth(job: Subject, scale: float) -> tuple[float, float]:
    """What the plan takes behind the wall's face and before it, mm on paper."""
    leaves = job.resolved.door.leaves
    backs = [float(leaf.thickness / 2 - leaf.hung.plane) for leaf in leaves]
    fronts = [float(leaf.hung.plane + leaf.thickness / 2) for leaf in leaves]
    for leaf in leaves:
        backs += [y for _, y in way_of(leaf)]
        fronts += [-y for _, y in way_of(leaf)]
    behind = max(WALL, max(backs) / scale + 3.0)
    before = max(0.0, *fronts) / scale + 2.0
    return behind, before


def guide_places(job: Subject, install: InstallSheet, start: float) -> list[Place]:
    """The opening's edge, and how far from it the guides stand."""
    rule = site_rule(job)
    places = {
        float(guide.from_opening): Place(
            at=float(guide.from_opening),
            figure=guide.from_opening,
            start=start,
            rule=rule,
        )
        for guide in install.guides
    }
    edge = Place(
        at=0.0, figure=Figure(0.0, "opening's left edge"), start=start, words="edge", rule=rule
    )
    return [edge, *places.values()] if places else []


def track_places(job: Subject, install: InstallSheet, start: float) -> list[Place]:
    """Each track's middle from the wall's face."""
    rule = site_rule(job)
    face = Place(at=0.0, figure=Figure(0.0, "wall face"), start=start, words="wall face", rule=rule)
    single = len(install.tracks) == 1
    flush = [off for _, off in install.stop_lines if abs(float(off)) < 1e-9]
    if flush:
        face = dataclasses.replace(face, words="wall face, leaves flush")
    return [
        face,
        *(
            Place(
                at=-float(track.off_wall),
                figure=track.off_wall,
                start=start,
                words=f"track, {track.leaf}" if single else f"{track.track} track, {track.leaf}",
                rule=rule,
                down=True,
            )
            for track in install.tracks
        ),
        *(
            Place(at=-float(off), figure=off, start=start, words=words, rule=rule, down=True)
            for words, off in install.stop_lines
            if abs(float(off)) >= 1e-9
        ),
    ]


def draw_wall_plan(
    draft: Draft, view: View, job: Subject, install: InstallSheet, span: Span
) -> None:
    """Wall ends, leaves that turn, tracks' middles with their brackets, guides, all places."""
    door = job.resolved.door
    behind, before = plan_depth(job, view.scale)
    reach = STUB * view.scale
    wide = float(door.opening.widest)
    case_from_above(draft, view, door, (0.0, wide), behind * view.scale)
    ends = ((0.0, span.x0 - reach), (wide, span.x1 + reach))
    for inner, outer in () if install.on_a_case else ends:
        _wall_end(draft, view, job, inner, outer, behind * view.scale)
    for leaf in door.leaves:
        _turning(draft, view, leaf)
    for track in install.tracks:
        y = view.y(-float(track.off_wall))
        left, right = float(track.left_end), float(track.left_end + track.length)
        draft.line("edge_fine", (view.x(left), y), (view.x(right), y), view.name)
        for bracket in install.brackets:
            x = view.x(float(bracket.from_opening))
            draft.line("edge", (x, y - 0.8), (x, y + 0.8), view.name)
    for guide in install.guides:
        at = view.at((float(guide.from_opening), -float(guide.off_wall)))
        draft.add(Circle(layer="edge", centre=at, radius=GUIDE, view=view.name))
    low = view.y(0.0) - before
    guides = guide_places(job, install, low)
    if guides:
        place_ordinates(draft, view, "across", guides, low - TO_NUMBERS)
    side = view.x(span.x1) + STUB
    place_ordinates(draft, view, "up", track_places(job, install, side), side + TO_NUMBERS)


def way_of(leaf: Leaf) -> tuple[Point, ...]:
    """Where a leaf that turns has its corners on its way, in the world's X and Y."""
    if leaf.hung.swing is None:
        return ()
    return tuple(point for part in range(_LOOKS + 1) for point in footprint(leaf, part / _LOOKS))


def _turning(draft: Draft, view: View, leaf: Leaf) -> None:
    """A leaf that turns, shut and open, and the way of its far corner between the two."""
    if leaf.hung.swing is None:
        return
    for part in (0.0, 1.0):
        draft.path("adjacent", view.path(footprint(leaf, part)), view.name, closed=True)
    looks = [footprint(leaf, part / _LOOKS) for part in range(_LOOKS + 1)]
    far = max(range(4), key=lambda corner: math.dist(looks[0][corner], looks[-1][corner]))
    draft.path("edge_fine", view.path(tuple(look[far] for look in looks)), view.name)


def _wall_end(
    draft: Draft, view: View, job: Subject, inner: float, outer: float, deep: float
) -> None:
    """One end of the wall: face and reveal true, the far sides broken off.

    Where leaves come out behind it, it ends at its own thickness.
    """
    door = job.resolved.door
    layer, thick = door.opening.board, door.survey.wall
    whole = isinstance(thick, Figure) and float(thick) < deep
    if isinstance(thick, Figure) and whole:
        deep = float(thick)
    x0, x1 = sorted((inner, outer))
    face = (view.at((outer, 0.0)), view.at((inner, 0.0)), view.at((inner, deep)))
    draft.path("cut", face, view.name)
    skin = 0.0 if layer is None else float(layer)
    draft.add(wall((view.path(rectangle(x0, skin, x1, deep)),), view.name))
    if skin / view.scale > 0.5:
        draft.line("edge_fine", view.at((x0, skin)), view.at((x1, skin)), view.name)
        draft.add(board((view.path(rectangle(x0, 0.0, x1, skin)),), view.name, 1.1))
    if whole:
        draft.line("cut", view.at((x0, deep)), view.at((x1, deep)), view.name)
    else:
        wave(draft, view.at((x0, deep)), view.at((x1, deep)), view.name)
    wave(draft, view.at((outer, 0.0)), view.at((outer, deep)), view.name)
