"""One surveyed opening with the cabinets that stand in it, as every view of them shares it.

Everything is in the opening's own frame: x from its left foot, y from the front edges of the
deepest cabinet backwards, z from the highest floor.
"""

from __future__ import annotations

import dataclasses
import itertools
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.pieces import Piece
from parametric.drawing.plane import Box, Point, Polygon
from parametric.drawing.subject import Subject
from parametric.figures import Figure
from parametric.model import Placement
from parametric.model import along as along_way
from parametric.names import join
from parametric.resolve.casework import Edges, StandingCase, StandingRun
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.resolve.opening import Opening
from parametric.resolve.room_lines import along, between, level_line, wall_line
from parametric.trade.case_kinds import IN_A_DRAWER
from parametric.trade.drawn_sizes import room_place


@dataclass(frozen=True, slots=True, kw_only=True)
class Front:
    """A front where it stands: its leaf, and its outline from the front."""

    leaf: Leaf
    door: Door
    box: Box
    off: float
    """Where the frame of its door stands behind the front edges of the deepest cabinet, mm."""

    @property
    def is_seen(self) -> bool:
        """Whether enough of it is seen from here: of what stands aslant, a part of its width."""
        return self.box.width >= _SEEN * float(self.leaf.width)


_SEEN = 0.3


@dataclass(frozen=True, slots=True, kw_only=True)
class Room:
    """An opening and all that stands in it.

    `place` is what its numbers begin with, "" where there is one room. `own_edges` close cabinets that stand in no run, by their names; `fixed` are the pieces that stay when the fronts are off: boards, frames, fillers, drawer
    boxes; `depth` is where the back wall stands, mm. `beyond` are the fronts of a case in the corner
    that returns along this wall and belongs to the other.
    """

    name: str
    place: str
    opening: Opening
    cases: tuple[StandingCase, ...]
    runs: tuple[StandingRun, ...]
    own_edges: tuple[tuple[str, Edges], ...]
    fronts: tuple[Front, ...]
    pieces: tuple[Piece, ...]
    fixed: tuple[Piece, ...]
    depth: Figure
    beyond: tuple[Front, ...] = ()

    @property
    def edges(self) -> tuple[Edges, ...]:
        """What closes everything in it to the room, runs first."""
        return (*(run.edges for run in self.runs), *(edges for _, edges in self.own_edges))

    def wall(self, side: str, up: float) -> float:
        """Where the left or the right wall stands at a height."""
        return along(wall_line(self.opening, side), up)

    def floor(self, across: float) -> float:
        """The floor at a place across."""
        return along(level_line(self.opening, "floor"), across)

    def ceiling(self, across: float) -> float:
        """The ceiling at a place across."""
        line = level_line(self.opening, "ceiling")
        return along(line, across) if line else float(self.opening.head)

    @property
    def left_wall(self) -> Polygon:
        """The left wall from the floor up, as surveyed: straight between its readings."""
        return self._upright("left", 0.0)

    @property
    def right_wall(self) -> Polygon:
        """The right wall from the floor up."""
        return self._upright("right", float(self.opening.widest))

    def _upright(self, side: str, across: float) -> Polygon:
        ends = self.floor(across), self.ceiling(across)
        return tuple((x, z) for z, x in between(wall_line(self.opening, side), *ends))

    @property
    def floor_line(self) -> Polygon:
        """The floor from wall to wall."""
        ends = self.left_wall[0][0], self.right_wall[0][0]
        return between(level_line(self.opening, "floor"), *ends)

    @property
    def ceiling_line(self) -> Polygon:
        """The ceiling from wall to wall."""
        left, right = self.left_wall[-1], self.right_wall[-1]
        line = level_line(self.opening, "ceiling")
        return between(line, left[0], right[0]) if line else (left, right)

    @property
    def box(self) -> Box:
        """All that the elevation shows, wall to wall and floor to ceiling."""
        points: list[Point] = [
            *self.left_wall,
            *self.right_wall,
            *self.floor_line,
            *self.ceiling_line,
        ]
        xs, zs = [x for x, _ in points], [z for _, z in points]
        return Box(min(xs), min(zs), max(xs), max(zs))

    @property
    def too_large(self) -> str:
        """What is said when no paper takes it."""
        return f"a room {self.box.x1 - self.box.x0:.0f} wide is past the largest sheet"

    @property
    def front(self) -> float:
        """How far forward anything stands: the least y."""
        return min(
            piece.stands.point((x, y, z))[1] for piece in self.pieces for x, y, z in _corners(piece)
        )

    @property
    def flaps(self) -> tuple[Front, ...]:
        """Those of its fronts that are flaps."""
        return tuple(front for front in self.fronts if front.leaf.hung.flap is not None)

    @property
    def out(self) -> float:
        """How far forward anything stands, its flaps open: the least y."""
        return min([self.front, *(y for flap in self.flaps for y, _ in open_flap(flap))])


def open_flap(front: Front, part: float = 1.0) -> Polygon:
    """The outline of a flap that has gone a part, 0 to 1, of its way: (y, z), its face first.

    The corners go round from the hinge edge of its face to the free edge, and back along its back.
    """
    leaf, flap = front.leaf, front.leaf.hung.flap
    assert flap is not None, "only flaps are asked for"
    half, plane = float(leaf.thickness) / 2, float(leaf.hung.plane)
    low, high = front.box.y0, front.box.y1
    hinge, free = (high, low) if flap.side == "top" else (low, high)
    shut = (
        (-plane - half, hinge),
        (-plane - half, free),
        (-plane + half, free),
        (-plane + half, hinge),
    )
    found = (
        along_way(Placement(origin=(0.0, y, z)), leaf.hung.motion, part).origin for y, z in shut
    )
    return tuple((y + front.off, z) for _, y, z in found)


def _corners(piece: Piece) -> itertools.product[tuple[float, float, float]]:
    blank = piece.part.blank
    return itertools.product(
        (0.0, float(blank.length)), (0.0, float(blank.width)), (0.0, float(blank.thickness))
    )


def rooms(job: Subject) -> tuple[Room, ...]:
    """Every surveyed opening that holds cabinets, in the order they were stood; none without any."""
    casework = job.resolved.casework
    if casework is None:
        return ()
    headings = dict.fromkeys(case.survey.heading for case in casework.cases)
    return tuple(_room(job, heading) for heading in headings)


def _room(job: Subject, heading: str) -> Room:
    casework = job.resolved.casework
    assert casework is not None, "a room is asked for its cabinets"
    standing = [case for case in casework.cases if case.survey.heading == heading]
    about = standing[0].room
    cases = tuple(dataclasses.replace(case, room=Placement()) for case in standing)
    names = {case.name for case in cases}
    runs = tuple(run for run in casework.runs if names & set(run.cases))
    doors = [door for door in job.resolved.doors if door.case in names]
    returning = {
        case.name for case in casework.cases if case.returns_in in {run.name for run in runs}
    }
    others = [door for door in job.resolved.doors if door.case in returning]
    leaves = {leaf.name for door in (*doors, *others) for leaf in door.leaves}
    groups = {
        *names,
        *returning,
        *(run.name for run in runs),
        *(join(name, "closings") for name in (*names, *returning)),
        *leaves,
    }
    pieces = tuple(
        dataclasses.replace(p, stands=p.stands.seen_from(about))
        for p in job.shut
        if p.group in groups and p.part.noun != "dowel"
    )
    return Room(
        name=heading,
        place=room_place(casework, standing[0]),
        opening=cases[0].opening,
        cases=cases,
        runs=runs,
        own_edges=tuple((name, edges) for name, edges in casework.edges if name in names),
        fronts=_fronts(doors, about),
        beyond=_fronts(others, about),
        pieces=pieces,
        fixed=tuple(p for p in pieces if p.group not in leaves or of_a_drawer(p)),
        depth=casework.depth,
    )


def _fronts(doors: Sequence[Door], about: Placement) -> tuple[Front, ...]:
    return tuple(
        Front(
            leaf=leaf,
            door=door,
            box=_outline(door.stands.seen_from(about), leaf),
            off=door.stands.seen_from(about).origin[1],
        )
        for door in doors
        for leaf in door.leaves
    )


def of_a_drawer(piece: Piece) -> bool:
    """Whether a piece of a front's group belongs to the box behind it."""
    return IN_A_DRAWER in piece.part.name


def _outline(stands: Placement, leaf: Leaf) -> Box:
    foot, along = float(leaf.hung.foot), stands.x[0]
    ends = (float(leaf.hung.left), float(leaf.hung.left) + float(leaf.width))
    left, right = sorted(stands.origin[0] + along * end for end in ends)
    return Box(left, foot, right, foot + float(leaf.height))
