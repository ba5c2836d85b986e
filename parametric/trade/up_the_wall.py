"""Cabinets over one another, from the floor to the ceiling, as a chain of heights that adds up.

ceiling  ________
 top filler      |   closes to the ceiling
 cabinet upper   |
 counter         |
 cabinet base    |
 plinth          |   levelled to the floor
floor  __________|
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from parametric.cases.face_frame import FaceFrame
from parametric.figures import Figure, named
from parametric.hangings.hanging import Side
from parametric.names import join
from parametric.resolve.casework import Edges, StandingCase
from parametric.resolve.leaf import Leaf
from parametric.resolve.opening import Opening
from parametric.trade.along_wall import tiers

_SAME = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Height:
    """One height of a column, mm: what it is, where it begins above the highest floor.

    `what` is `plinth`, `counter`, `top filler`, `free` or a cabinet's name.
    """

    what: str
    begins: float
    size: Figure


def up_the_wall(
    opening: Opening, cases: Sequence[StandingCase], edges: Sequence[Edges], side: Side
) -> tuple[Height, ...]:
    """What stands over one another at the left or the right of a room, from floor to ceiling.

    Args:
        opening: the room as measured.
        cases: every cabinet in it.
        edges: what closes them to floor and ceiling.
        side: which of the outermost cabinets.
    """
    found: list[Height] = []
    at = reading(opening.floor, side, Figure(0.0))
    column = _column(cases, side)
    for case in column:
        own = _edges_of(edges, case)
        foot, box = case.case.box.foot, case.case.box
        plinth = None if own is None or own.plinth is None or found else own.plinth.seen
        under = join(case.name, f"room under it at the {side}")
        found += _between("plinth", plinth, side, under, at, foot)
        found.append(Height(what=case.name, begins=float(foot), size=box.high_at(side)))
        at = foot + box.high_at(side)
        if case.counter is not None:
            counter = named(join(case.name, "counter"), case.counter)
            found.append(Height(what="counter", begins=float(at), size=counter))
            at = case.top
    last = column[-1]
    own = _edges_of(edges, last)
    # what closes a top that slopes is told square to it, and not plumb
    level = last.case.box.slope is None
    top = own.top.seen if level and own is not None and own.top is not None else None
    ceiling = reading(opening.ceiling, side, opening.head)
    over = join(last.name, f"room over it at the {side}")
    found += _between("top filler", top, side, over, at, ceiling)
    return tuple(found)


def floor_to_ceiling(opening: Opening, place: str, side: Side) -> Figure:
    """The height of a room at one side as it was measured, mm; `place` tells one of several rooms."""
    high = reading(opening.heights, side, opening.head)
    return named(join(place, f"height {side}"), high) if place else high


def reading(readings: Mapping[str, Figure], side: Side, none: Figure) -> Figure:
    """A reading at one side, else the one nearest to it, else what holds where there is none."""
    order = ("left", "middle", "right") if side == "left" else ("right", "middle", "left")
    return next((readings[place] for place in order if place in readings), none)


def _between(
    what: str,
    seen: Mapping[str, Figure] | None,
    side: Side,
    name: str,
    low: Figure,
    high: Figure,
) -> tuple[Height, ...]:
    """What closes two heights, as it is seen at that side, or the room left; none where they touch."""
    if float(high - low) <= _SAME:
        return ()
    if seen is None:
        return (Height(what="free", begins=float(low), size=named(name, high - low)),)
    return (Height(what=what, begins=float(low), size=reading(seen, side, high - low)),)


def _column(cases: Sequence[StandingCase], side: Side) -> list[StandingCase]:
    """The outermost cabinet of each tier at a side, that stand over one another, from the floor."""
    ends = [tier[0 if side == "left" else -1] for tier in tiers(cases)]
    column = ends[:1]
    for case in ends[1:]:
        left, right = float(case.left), float(case.left + case.case.box.width)
        below = column[-1]
        over = left < float(below.left + below.case.box.width) and right > float(below.left)
        if over and float(case.case.box.foot) >= float(below.top) - _SAME:
            column.append(case)
    return column


def _edges_of(edges: Sequence[Edges], case: StandingCase) -> Edges | None:
    """What closes a cabinet, or the run that it is part of."""
    return next((own for own in edges if own.name in (case.name, case.run)), None)


def up_the_front(case: StandingCase, fronts: Sequence[Leaf], gap: Figure) -> tuple[Height, ...]:
    """One column of a cabinet's face from its foot to its top: face frame and openings, or fronts.

    Under a slope it ends at the head of the fronts.

    Args:
        case: the cabinet.
        fronts: those that stand over one another in that column, any order.
        gap: between fronts.
    """
    box, frame = case.case.box, case.case.frame
    if frame is not None:
        return _frame_up(case, frame)
    found: list[Height] = []
    at, top = box.foot, box.foot + box.height
    for number, leaf in enumerate(sorted(fronts, key=lambda one: float(one.hung.foot))):
        free = leaf.hung.foot - at
        word = "edge under its fronts" if number == 0 else f"room under {leaf.name}"
        found += _gap(join(case.name, word), at, free, gap)
        found.append(Height(what=leaf.name, begins=float(leaf.hung.foot), size=leaf.height))
        at = leaf.hung.foot + leaf.height
    if box.slope is None:
        found += _gap(join(case.name, "edge over its fronts"), at, top - at, gap)
    return tuple(found)


def _gap(name: str, at: Figure, free: Figure, gap: Figure) -> tuple[Height, ...]:
    if float(free) <= _SAME:
        return ()
    same = abs(float(free - gap)) <= _SAME
    size = gap if same else named(name, free)
    return (Height(what="gap", begins=float(at), size=size),)


def _frame_up(case: StandingCase, frame: FaceFrame) -> tuple[Height, ...]:
    """Kick, bottom rail, opening, top rail."""
    box, opening = case.case.box, case.case.opening
    high = named(join(case.name, "face frame", "opening", "height"), opening.head - opening.foot)
    sizes = [("rail", frame.rail), ("opening", high), ("rail", frame.rail)]
    if box.kick_high is not None:
        sizes.insert(0, ("kick", box.kick_high))
    found, at = [], float(box.foot)
    for what, size in sizes:
        found.append(Height(what=what, begins=at, size=size))
        at += float(size)
    return tuple(found)
