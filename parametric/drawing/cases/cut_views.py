"""Cabinets cut level and cut upright, between the walls that they stand against.

plan, from above                       upright, first angle: seen from the left
 ////////back wall///////              ///ceiling///
 |#|   |##|   |##|   |#|               //| ===== |
 |#|===|##|===|##|===|#|               //| |   | ||   fronts before the boards
   ---front---front---                 ///floor/////
"""

from __future__ import annotations

from dataclasses import replace

from parametric.drawing.cases.layout import STUB
from parametric.drawing.cases.room import Front, Room, open_flap
from parametric.drawing.cases.under_slope import beyond
from parametric.drawing.draft import Draft
from parametric.drawing.hatching import wall
from parametric.drawing.lettering import TEXT
from parametric.drawing.marks import wave
from parametric.drawing.plane import rectangle
from parametric.drawing.primitives import Label
from parametric.drawing.seen_and_cut import cuts_through, draw_cuts
from parametric.drawing.sheet import View
from parametric.resolve.casework import StandingCase
from parametric.trade.along_wall import tiers

_BEFORE = 3.0
"""How much of a wall is shown before the foremost front, mm on paper."""
_STEPS = 45
"""Places at which a flap is looked at on its way."""
_ASIDE = 0.37
"""Where in a bay the upright section is cut, as a part of its width."""


def level_of(room: Room) -> float:
    """The height of the plan: through the lowest cabinets, clear of level boards, most fronts cut."""
    spaces = [
        (float(case.case.box.foot + space.foot), float(case.case.box.foot + space.head))
        for case in tiers(room.cases)[0]
        for bay in case.case.bays
        for space in bay.spaces
    ]
    levels = [low + part * (high - low) for low, high in spaces for part in (0.5, 0.42, 0.3, 0.2)]

    def best(level: float) -> tuple[int, int, float]:
        cut = cuts_through(room.fixed, "level", level)
        lying = sum(abs(one.piece.stands.z[2]) > 0.5 for one in cut)
        fronts = sum(front.box.y0 < level < front.box.y1 for front in room.fronts)
        return -lying, fronts, -level

    return max(levels, key=best)


def upright_of(room: Room) -> tuple[StandingCase, float]:
    """The cabinet that the upright section is cut through, and where: through a flap, else in one
    with drawers.
    """
    tier = tiers(room.cases)[0]
    for case in tier:
        for bay in case.case.bays:
            at = float(case.left + bay.left) + _ASIDE * float(bay.width)
            if _flaps_at(room, at):
                return case, at
    drawn = [front for front in room.fronts if not front.leaf.hinges]
    case = next((one for one in tier if any(f.door.case == one.name for f in drawn)), tier[0])
    bay = case.case.bays[0]
    return case, float(case.left + bay.left) + _ASIDE * float(bay.width)


def _flaps_at(room: Room, across: float) -> list[Front]:
    """The flaps that stand at a place across."""
    return [flap for flap in room.flaps if flap.box.x0 < across < flap.box.x1]


def draw_plan(draft: Draft, view: View, room: Room, stub: float, *, named: bool = True) -> None:
    """Everything cut level, seen from above, between three walls; `named`, each by its name."""
    level = level_of(room)
    left, right, back = room.wall("left", level), room.wall("right", level), float(room.depth)
    deep, out = stub * view.scale, room.out - _BEFORE * view.scale
    inner = ((left, out), (left, back), (right, back), (right, out))
    draft.path("cut", view.path(inner), view.name)
    outer = ((right + deep, out), (right + deep, back + deep), (left - deep, back + deep))
    draft.add(wall((view.path((*inner, *outer, (left - deep, out))),), view.name))
    for a, b in ((left - deep, left), (right, right + deep)):
        wave(draft, view.at((a, out)), view.at((b, out)), view.name)
    draw_cuts(draft, view, cuts_through(room.pieces, "level", level))
    for flap in room.flaps:
        ys = [y for y, _ in open_flap(flap)]
        lying = rectangle(flap.box.x0, min(ys), flap.box.x1, max(ys))
        draft.path("hidden", view.path(lying), view.name, closed=True)
    # where the room is narrowest, plumb: what the widths are shared out from
    low = float(room.opening.clear_left)
    for clear in (low, low + float(room.opening.clear)):
        draft.line("adjacent", view.at((clear, out)), view.at((clear, back)), view.name)
    for case in tiers(room.cases)[0]:
        _made_edges(draft, view, case)
        _not_cut(draft, view, case, level)
        if named:
            draft.add_first(name_places(view, case))


def _not_cut(draft: Draft, view: View, case: StandingCase, level: float) -> None:
    """What lies level in a case of another plan, and one that is all under the cut or over it."""
    box, (x, y) = case.case.box, (float(case.left), case.front)
    over = level < float(box.foot)
    if case.case.plan is not None:
        corners = case.case.plan.outline
    elif over or level > float(box.foot + box.height):
        wide, deep = float(box.width), float(box.depth)
        corners = ((0.0, 0.0), (wide, 0.0), (wide, deep), (0.0, deep))
    else:
        return
    outline = tuple((x + a, y + b) for a, b in corners)
    draft.path("hidden" if over else "edge_fine", view.path(outline), view.name, closed=True)


def _made_edges(draft: Draft, view: View, case: StandingCase) -> None:
    """Where a face frame ends as it is made, before it is scribed to the walls."""
    frame = case.case.frame
    if frame is None:
        return
    back = case.stands.origin[1]
    front = back - float(frame.thickness)
    for edge in (frame.left.edge, frame.right.edge):
        x = float(edge)
        draft.line("adjacent", view.at((x, front)), view.at((x, back)), view.name)


def name_places(view: View, case: StandingCase) -> list[Label]:
    """What a cabinet is called, wherever in it that may stand: clear of its partitions too."""
    middle = float(case.left) + float(case.case.box.width) / 2
    words = case.name.removeprefix("cabinet ")
    deep = case.stands.origin[1] + float(case.case.box.depth) / 2
    bays = [float(bay.left) + float(bay.width) / 2 for bay in case.case.bays]
    return [
        Label(text=words, at=(view.x(middle) + aside, view.y(deep) + up), anchor="centre")
        for up in (-TEXT / 2, 2.0, -6.0, 5.0)
        for aside in (0.0, -8.0, 8.0, -14.0, 14.0)
    ] + [
        Label(text=words, at=(view.x(float(case.left) + x), view.y(deep) + up), anchor="centre")
        for up in (-TEXT / 2, 2.0, -6.0, 5.0)
        for x in bays
    ]


def draw_upright(draft: Draft, view: View, room: Room, *, third_angle: bool) -> None:
    """Cabinets cut upright before the back wall, the sides beyond in thin line."""
    _, at = upright_of(room)
    floor, ceiling = room.floor(at), room.ceiling(at)
    way = 1.0 if third_angle else -1.0
    deep = STUB * view.scale
    back, out = float(room.depth), room.out - _BEFORE * view.scale

    def point(y: float, z: float) -> tuple[float, float]:
        return view.at((way * y, z))

    inner = (point(out, floor), point(back, floor), point(back, ceiling), point(out, ceiling))
    outer = (
        point(out, ceiling + deep),
        point(back + deep, ceiling + deep),
        point(back + deep, floor - deep),
        point(out, floor - deep),
    )
    draft.path("cut", inner, view.name)
    draft.add(wall(((*inner, *outer),), view.name))
    for low, high in ((floor - deep, floor), (ceiling, ceiling + deep)):
        wave(draft, point(out, low), point(out, high), view.name)
    for case in room.cases:
        if float(case.left) < at < float(case.left + case.case.box.width):
            _side_beyond(draft, view, case, at, third_angle=third_angle)
    draw_cuts(
        draft,
        view,
        [
            replace(cut, outline=tuple((-way * off, z) for off, z in cut.outline))
            for cut in cuts_through(room.pieces, "upright", at)
        ],
    )
    for flap in _flaps_at(room, at):
        _flap_open(draft, view, flap, way)


def _flap_open(draft: Draft, view: View, flap: Front, way: float) -> None:
    """A flap open in thin line, and the way that its free edge goes there."""
    opened = tuple((way * y, z) for y, z in open_flap(flap))
    draft.path("edge_fine", view.path(opened), view.name, closed=True)
    edge = (open_flap(flap, step / _STEPS)[1] for step in range(_STEPS + 1))
    draft.path("hidden", view.path(tuple((way * y, z) for y, z in edge)), view.name)


def _side_beyond(
    draft: Draft, view: View, case: StandingCase, at: float, *, third_angle: bool
) -> None:
    """The case's side past the cut: its edges from foot to top."""
    _, front, foot = case.stands.origin
    way = 1.0 if third_angle else -1.0
    for seen in beyond(case.case.box, at - float(case.left), "left" if third_angle else "right"):
        points = view.path(tuple((way * (front + y), foot + z) for y, z in seen))
        draft.path("edge_fine", points, view.name, closed=len(points) > 2)
