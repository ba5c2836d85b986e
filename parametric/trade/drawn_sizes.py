"""Every size that the sheets of cabinets print and that no case has of its own: `explain` knows it."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from parametric.figures import Figure, named
from parametric.hangings.hanging import Side
from parametric.names import join
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.door import Resolved
from parametric.resolve.leaf import Leaf
from parametric.resolve.opening import Opening
from parametric.trade.along_wall import Stretch, along_wall, clear_width, frame_openings, tiers
from parametric.trade.case_kinds import Level, behind_the_back, levels
from parametric.trade.drawer_places import DrawerPlace, drawer_places
from parametric.trade.up_the_wall import Height, floor_to_ceiling, up_the_front, up_the_wall

_SIDES: tuple[Side, ...] = ("left", "right")


@dataclass(frozen=True, slots=True, kw_only=True)
class DrawnSizes:
    """Sizes along the walls, up them, up the faces of cases, inside cases, and of drawers in them, mm."""

    along: tuple[Stretch, ...]
    up: tuple[Height, ...]
    rooms: tuple[Figure, ...]
    """The plumb clear width and the heights of each of several rooms, and what its client is told."""
    faces: tuple[Height, ...]
    openings: tuple[Figure, ...]
    levels: tuple[Level, ...]
    behind: tuple[Figure, ...]
    drawers: tuple[DrawerPlace, ...]


def drawn_sizes(resolved: Resolved) -> DrawnSizes | None:
    """All of a job; None in one without cabinets."""
    casework = resolved.casework
    if casework is None:
        return None
    rooms = _rooms(casework)
    edges = (*(run.edges for run in casework.runs), *(own for _, own in casework.edges))
    return DrawnSizes(
        along=tuple(
            stretch
            for cases in rooms
            for tier in tiers(cases)
            for stretch in along_wall(cases[0].opening, tier)
        ),
        up=tuple(
            height
            for cases in rooms
            for side in _SIDES
            for height in up_the_wall(cases[0].opening, cases, edges, side)
        ),
        rooms=tuple(
            size
            for cases in rooms
            for place in (room_place(casework, cases[0]),)
            for size in (
                clear_width(cases[0].opening, place),
                *(floor_to_ceiling(cases[0].opening, place, side) for side in _SIDES),
                *(in_room(size, place) for size in _told(cases[0].opening) if place),
            )
        ),
        faces=tuple(
            height
            for case in casework.cases
            for column in _columns(resolved, case)
            for height in up_the_front(case, column, front_gap(resolved, case))
        ),
        openings=tuple(size for case in casework.cases for size in frame_openings(case)),
        levels=tuple(level for case in casework.cases for level in levels(case)),
        behind=tuple(
            size for case in casework.cases if (size := behind_the_back(case)) is not None
        ),
        drawers=drawer_places(resolved),
    )


def room_place(casework: Casework, case: StandingCase) -> str:
    """What the numbers of a case's room begin with: its survey, where there are several."""
    headings = {one.survey.heading for one in casework.cases}
    return case.survey.heading if len(headings) > 1 else ""


def in_room(size: Figure, place: str) -> Figure:
    """A size of a room under the name that tells it from the others; `place` is "" of a job's only one."""
    return named(join(place, size.name or ""), size) if place else size


def _told(opening: Opening) -> tuple[Figure, ...]:
    """What a client is told of a room: how tight it is, how its wall leans and its floor rises."""
    return (opening.narrowest, opening.high, opening.floor_fall, *opening.lean.values())


def front_gap(resolved: Resolved, case: StandingCase) -> Figure:
    """What is left between two fronts of a case, mm."""
    hung = next((door.hanging.case for door in resolved.doors if door.case == case.name), None)
    return case.case.spec.front_gap if hung is None else hung.gap


def _rooms(casework: Casework) -> list[tuple[StandingCase, ...]]:
    """The cabinets of each surveyed opening."""
    rooms: dict[str, list[StandingCase]] = {}
    for case in casework.cases:
        rooms.setdefault(case.survey.heading, []).append(case)
    return [tuple(cases) for cases in rooms.values()]


def _columns(resolved: Resolved, case: StandingCase) -> Iterator[list[Leaf]]:
    """Fronts of a case that stand over one another, once for each left edge that one has."""
    leaves = [leaf for door in resolved.doors if door.case == case.name for leaf in door.leaves]
    for at in dict.fromkeys(float(leaf.hung.left) + float(leaf.width) / 3 for leaf in leaves):
        yield [
            leaf
            for leaf in leaves
            if float(leaf.hung.left) < at < float(leaf.hung.left + leaf.width)
        ]
