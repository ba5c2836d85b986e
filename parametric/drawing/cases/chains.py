"""Chains of an arrangement of cabinets: widths that add up to the wall, heights that add up to
the ceiling, depths.
"""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.cases.cut_views import upright_of
from parametric.drawing.cases.layout import PLAN_FIRST, STUB, Placing
from parametric.drawing.cases.room import Room
from parametric.drawing.chains import FIRST, Chain, Link, Stop
from parametric.drawing.printing import Rule
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.hangings.hanging import Side
from parametric.resolve.casework import StandingCase
from parametric.trade.along_wall import along_wall, clear_width, frame_openings, tiers
from parametric.trade.drawn_sizes import front_gap
from parametric.trade.up_the_wall import Height, floor_to_ceiling, up_the_front, up_the_wall

_SAME = 1e-6
_OFF_MIDDLE = 5.0
"""How far from the middle of the room a chain of its middle stands, clear of fronts that meet there."""


_UNDER_FRAME = 4.0
"""More from a face frame's chain to the next: its short links carry their values under it."""


def widths_under(room: Room, step: float) -> float:
    """What the chains under the plan take past the first: face frames, cabinets, the whole."""
    frames = sum(case.case.frame is not None for case in tiers(room.cases)[0])
    return step + frames * (step + _UNDER_FRAME)


def widths_over(room: Room) -> int:
    """How many stand over the elevation: one for each tier over the first."""
    return len(tiers(room.cases)) - 1


def width_chains(room: Room, view: View, line: float, step: float, rule: Rule) -> list[Chain]:
    """Under the plan: the face frame as it is made, the cabinets, the plumb clear width.

    Args:
        room: the room.
        view: the plan.
        line: where the first chain stands, mm on paper.
        step: from one to the next, downwards.
        rule: how lengths are printed.
    """
    tier = tiers(room.cases)[0]
    chains = []
    foot = view.y(room.front)
    for case in tier:
        if case.case.frame is not None:
            chains.append(_frame_chain(case, view, line, foot, rule))
            foot, line = line, line - step - _UNDER_FRAME
    inner = bool(chains)
    across = _across(room, tier, view, line, foot, rule, inner=inner)
    low = float(room.opening.clear_left)
    high = low + float(room.opening.clear)
    whole = Chain(
        view=view,
        axis="across",
        line=line - step,
        stops=(Stop(at=low, foot=line, inner=True), Stop(at=high, foot=line, inner=True)),
        links=(
            Link(figure=clear_width(room.opening, room.place), after="clear, plumb", rule=rule),
        ),
    )
    return [*chains, across, whole]


def over_chains(room: Room, view: View, line: float, step: float, rule: Rule) -> list[Chain]:
    """Over the elevation: what stands over the first tier, stretch by stretch of the wall."""
    found = []
    for index, tier in enumerate(tiers(room.cases)[1:]):
        foot = view.y(float(max(case.top for case in tier)))
        found.append(_across(room, tier, view, line + index * step, foot, rule, inner=False))
    return found


def _across(
    room: Room,
    tier: Sequence[StandingCase],
    view: View,
    line: float,
    foot: float,
    rule: Rule,
    *,
    inner: bool,
) -> Chain:
    stretches = along_wall(room.opening, tier)
    stops = [Stop(at=one.begins, foot=foot, inner=inner) for one in stretches]
    end = stretches[-1].begins + float(stretches[-1].size)
    return Chain(
        view=view,
        axis="across",
        line=line,
        stops=(*stops, Stop(at=end, foot=foot, inner=inner)),
        links=tuple(Link(figure=one.size, rule=rule) for one in stretches),
    )


def _frame_chain(case: StandingCase, view: View, line: float, foot: float, rule: Rule) -> Chain:
    """A face frame as it is made, before anything is scribed off: stile, opening, stile."""
    frame = case.case.frame
    assert frame is not None
    openings = frame_openings(case)
    sizes: list[Figure] = [frame.left.blank]
    for opening in openings[:-1]:
        sizes += [opening, frame.centre_stile]
    sizes += [openings[-1], frame.right.blank]
    at = float(frame.left.edge)
    stops = [Stop(at=at, foot=foot)]
    for size in sizes:
        at += float(size)
        stops.append(Stop(at=at, foot=foot))
    return Chain(
        view=view,
        axis="across",
        line=line,
        stops=tuple(stops),
        links=tuple(Link(figure=size, rule=rule) for size in sizes),
    )


def height_chains(job: Subject, room: Room, view: View, place: Placing) -> list[Chain]:
    """At the left and at the right: what stands over one another, then floor to ceiling."""
    rule, step = job.rules.arrangement, job.rules.arrangement.next_chain
    found = []
    sides: tuple[tuple[Side, float], ...] = (("left", -1.0), ("right", 1.0))
    for (side, way), wall, line in zip(sides, place.ends, place.chains, strict=True):
        heights = up_the_wall(room.opening, room.cases, room.edges, side)
        found.append(_column(heights, view, line, wall, rule))
        found.append(_whole(room, side, heights, view, line, way * step, rule))
    return found


def _column(heights: Sequence[Height], view: View, line: float, wall: float, rule: Rule) -> Chain:
    end = heights[-1].begins + float(heights[-1].size)
    return Chain(
        view=view,
        axis="up",
        line=line,
        stops=(*(Stop(at=one.begins, foot=wall) for one in heights), Stop(at=end, foot=wall)),
        links=tuple(Link(figure=one.size, rule=rule) for one in heights),
    )


def _whole(
    room: Room,
    side: Side,
    heights: Sequence[Height],
    view: View,
    line: float,
    step: float,
    rule: Rule,
) -> Chain:
    """Floor to ceiling at one side, as it was measured there."""
    high = floor_to_ceiling(room.opening, room.place, side)
    low = heights[0].begins
    return Chain(
        view=view,
        axis="up",
        line=line + step,
        stops=(
            Stop(at=low, foot=line, inner=True),
            Stop(at=low + float(high), foot=line, inner=True),
        ),
        links=(Link(figure=high, rule=rule),),
    )


def middle_chains(room: Room, view: View, rule: Rule) -> list[Chain]:
    """Plinths and top fillers where they are read at the middle of the room."""
    found = []
    across = float(room.opening.widest) / 2
    line = view.x(across) + _OFF_MIDDLE
    for edges in room.edges:
        for closing, true in ((edges.plinth, -1.0), (edges.top, 1.0)):
            size = None if closing is None else closing.seen.get("middle")
            if size is None:
                continue
            at = room.floor(across) if true < 0 else room.ceiling(across) - float(size)
            found.append(
                Chain(
                    view=view,
                    axis="up",
                    line=line,
                    stops=(Stop(at=at, foot=None), Stop(at=at + float(size), foot=None)),
                    links=(Link(figure=size, rule=rule),),
                )
            )
    return found


def front_chain(job: Subject, room: Room, view: View, *, third_angle: bool) -> Chain | None:
    """Before the section: the face frame of the cabinet that is cut, or its fronts and their gaps."""
    case, at = upright_of(room)
    fronts = [f for f in room.fronts if f.door.case == case.name and f.box.x0 < at < f.box.x1]
    gap = front_gap(job.resolved, case)
    stack = up_the_front(case, [front.leaf for front in fronts], gap)
    if len(stack) < 2:
        return None
    way = 1.0 if third_angle else -1.0
    foot = view.x(way * room.front)
    end = stack[-1].begins + float(stack[-1].size)
    return Chain(
        view=view,
        axis="up",
        line=view.x(way * room.out) - way * FIRST,
        stops=(*(Stop(at=one.begins, foot=foot) for one in stack), Stop(at=end, foot=foot)),
        links=tuple(Link(figure=one.size, rule=job.rules.arrangement) for one in stack),
    )


def depth_chain(job: Subject, room: Room, view: View, *, third_angle: bool) -> Chain:
    """Under the section: what stands before the front edges, and the depth of the deepest cabinet."""
    way = 1.0 if third_angle else -1.0
    rule = job.rules.arrangement
    foot = view.y(room.box.y0) - STUB
    case, _ = upright_of(room)
    begins = case.stands.origin[1]
    places = [(begins, None), (begins + float(case.case.box.depth), case.case.box.depth)]
    before = _before(room, case)
    if before is not None:
        places = [(begins - float(before), None), (begins, before), places[-1]]
    if not third_angle:
        places = [
            (at, size)
            for (at, _), (_, size) in zip(
                reversed(places), [(0.0, None), *reversed(places[1:])], strict=True
            )
        ]
    return Chain(
        view=view,
        axis="across",
        line=foot - PLAN_FIRST,
        stops=tuple(Stop(at=way * at, foot=foot) for at, _ in places),
        links=tuple(Link(figure=size, rule=rule) for _, size in places[1:] if size is not None),
    )


def _before(room: Room, case: StandingCase) -> Figure | None:
    """What the front edges of a cabinet wear: its face frame, or fronts that lie over them."""
    if case.case.frame is not None:
        return case.case.frame.thickness
    own = [front.leaf for front in room.fronts if front.door.case == case.name]
    if not own or float(case.case.front_back) > _SAME:
        return None
    return own[0].thickness
