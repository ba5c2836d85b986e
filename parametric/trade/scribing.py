r"""What is scribed to a crooked room: how much is seen, and how much comes off, along each piece.

seen from the front, at the left wall
     \  |####|        # comes off: from the made edge to the wall
      \ |##  |   |    a filler is told by what is seen of it: from the wall to its cabinet
       \|#   |   |    a wall stile by what comes off; both are given at the readings of the
        \    |   |    wall, and at the piece's own foot, middle and top

A top filler is scribed to the ceiling and a plinth to the floor, where they were read.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Literal

from parametric.cases.run_edges import Filler
from parametric.cases.slope import Slope
from parametric.figures import Figure, named
from parametric.names import join
from parametric.resolve.casework import Casework, Edges, StandingCase, StandingRun
from parametric.resolve.opening import Opening
from parametric.resolve.room_lines import along, wall_line

Meets = Literal["left wall", "right wall", "ceiling", "floor"]


@dataclass(frozen=True, slots=True, kw_only=True)
class ScribedAt:
    """One place along a piece, mm: what is seen there, what comes off.

    `along` is how high above the highest floor it is, or how far from the left; `room` where the
    wall stands there from the plumb line at the left foot, or ceiling and floor above the
    highest floor.
    """

    where: str
    along: float
    room: Figure
    seen: Figure
    off: Figure
    behind: Figure | None = None
    """How far a wall stands back of the plumb line; None where it stands at it or before it."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Scribed:
    """A piece scribed to the room, mm.

    `readings` say what is seen of a filler, or what comes off a wall stile, where the wall was
    measured; `made` is where its made edge stands and `true` its other, as `ScribedAt.room` counts.
    """

    name: str
    noun: str
    meets: Meets
    readings: Mapping[str, Figure]
    blank: Figure
    made: float
    true: float
    at: tuple[ScribedAt, ...]
    slope: Figure | None = None
    """Of what lies along a slope, off the level, deg: all is then told square to it."""

    @property
    def filler(self) -> bool:
        """Whether it is told by what is seen of it."""
        return self.noun != "wall stile"

    @property
    def upright(self) -> bool:
        """Whether it stands up a wall."""
        return self.meets in ("left wall", "right wall")


def scribed(casework: Casework | None) -> tuple[Scribed, ...]:
    """Everything in a job that is scribed to a room."""
    if casework is None:
        return ()
    return (
        *scribed_to_walls(casework.runs, casework.cases),
        *scribed_to_levels(casework.runs, casework.cases, casework.edges),
    )


def scribed_to_walls(
    runs: Iterable[StandingRun], cases: Iterable[StandingCase]
) -> tuple[Scribed, ...]:
    """Every filler and wall stile that meets a wall, runs first, the left one first."""
    found: list[Scribed] = []
    for run in runs:
        ends = float(run.foot), float(run.head)
        for side, filler, true in (
            ("left", run.edges.left, run.left),
            ("right", run.edges.right, run.right),
        ):
            if filler is None:
                continue
            made = true - filler.blank if side == "left" else true + filler.blank
            found.append(
                Scribed(
                    name=filler.name,
                    noun="filler",
                    meets="left wall" if side == "left" else "right wall",
                    readings=filler.seen,
                    blank=filler.blank,
                    made=float(made),
                    true=float(true),
                    at=_along(filler.name, run.opening, side, ends, made, true),
                )
            )
    for case in cases:
        found += _stiles(case)
    return tuple(found)


def scribed_to_levels(
    runs: Iterable[StandingRun], cases: Iterable[StandingCase], own: Iterable[tuple[str, Edges]]
) -> tuple[Scribed, ...]:
    """Top fillers, scribed to the ceiling, and plinths, to the floor."""
    found: list[Scribed] = []
    for run in runs:
        found += _level(run.edges.top, "top filler", "ceiling", run.opening, run.head)
        found += _level(run.edges.plinth, "plinth", "floor", run.opening, run.foot)
    edges = dict(own)
    for case in cases:
        if case.name in edges:
            top, slope = edges[case.name].top, case.case.box.slope
            if top is not None and slope is not None:
                found.append(_on_a_slope(top, slope))
            else:
                found += _level(top, "top filler", "ceiling", case.opening, case.top)
    return tuple(found)


def _on_a_slope(closing: Filler, slope: Slope) -> Scribed:
    """A filler on a top that slopes: everything from the top's outer face, square to it."""
    return Scribed(
        name=closing.name,
        noun="top filler",
        meets="ceiling",
        readings=closing.seen,
        blank=closing.blank,
        made=float(closing.blank),
        true=0.0,
        at=tuple(
            ScribedAt(
                where=where,
                along=0.0 if where == "left" else float(slope.width),
                room=seen,
                seen=seen,
                off=named(join(closing.name, f"scribed off {where}"), closing.blank - seen),
            )
            for where, seen in closing.seen.items()
        ),
        slope=slope.angle,
    )


def _level(
    closing: Filler | None, noun: str, meets: Meets, opening: Opening, true: Figure
) -> Iterable[Scribed]:
    if closing is None:
        return
    way = 1.0 if meets == "ceiling" else -1.0
    width = float(opening.widest)
    across = {"left": 0.0, "middle": width / 2, "right": width}
    yield Scribed(
        name=closing.name,
        noun=noun,
        meets=meets,
        readings=closing.seen,
        blank=closing.blank,
        made=float(true) + way * float(closing.blank),
        true=float(true),
        at=tuple(
            ScribedAt(
                where=where,
                along=across[where],
                room=named(f"{meets} {where}", true + way * seen),
                seen=seen,
                off=named(join(closing.name, f"scribed off {where}"), closing.blank - seen),
            )
            for where, seen in closing.seen.items()
        ),
    )


def _stiles(case: StandingCase) -> Iterable[Scribed]:
    frame, box = case.case.frame, case.case.box
    if frame is None:
        return
    kick = 0.0 if box.kick_high is None else float(box.kick_high)
    ends = float(box.foot) + kick, float(box.foot + box.height)
    for scribe in (frame.left, frame.right):
        name = join(case.name, "face frame", f"{scribe.side} wall stile")
        left = scribe.side == "left"
        true = scribe.edge + scribe.blank if left else scribe.edge - scribe.blank
        yield Scribed(
            name=name,
            noun="wall stile",
            meets="left wall" if left else "right wall",
            readings=dict(scribe.away),
            blank=scribe.blank,
            made=float(scribe.edge),
            true=float(true),
            at=_along(name, case.opening, scribe.side, ends, scribe.edge, true),
        )


def _along(
    name: str,
    opening: Opening,
    side: str,
    ends: tuple[float, float],
    made: Figure,
    true: Figure,
) -> tuple[ScribedAt, ...]:
    """A piece at its own foot, middle and top; between two readings a wall is straight."""
    low, high = ends
    found = []
    for where, up in (("foot", low), ("middle", (low + high) / 2), ("top", high)):
        x = named(join(name, f"wall at its {where}"), along(wall_line(opening, side), up))
        way = 1.0 if side == "left" else -1.0
        seen, off = (true - x, x - made) if way > 0 else (x - true, made - x)
        found.append(
            ScribedAt(
                where=where,
                along=up,
                room=x,
                seen=named(join(name, f"seen at its {where}"), seen),
                off=named(join(name, f"scribed off at its {where}"), off),
                behind=named(join(name, f"wall behind plumb at its {where}"), -x)
                if float(x) < 0
                else None,
            )
        )
    return tuple(found)
