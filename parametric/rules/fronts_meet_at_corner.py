"""Fronts on two walls that meet at a corner: one hits another that is shut, or both cannot be open.

Why: a handle in a door, a drawer that does not come out. Example: drawers beside an inside corner
without a filler as deep as the other wall's fronts and pulls stand out.
Source: the leaves on their way, seen from above, at 24 places each; arithmetic.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.figures import exceeds
from parametric.problems import Problem
from parametric.resolve.footprint import Point, footprint, handle_footprint, overlap
from parametric.resolve.leaf import Leaf
from parametric.resolve.one_door import Door
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun

STEPS = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class _Thing:
    """A leaf, or its handle: between which heights it is, and what it covers on its way, from above."""

    low: float
    high: float
    ways: tuple[tuple[Point, ...], ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class _Front:
    """One leaf with its wall, and all of it that something may hit."""

    leaf: Leaf
    door: Door
    wall: str
    things: tuple[_Thing, ...]


def fronts_meet_at_corner(cases: CheckedCases) -> Iterator[Problem]:
    """A stop where one hits another that is shut, a caution where two cannot both be open."""
    walls = {case.name: case.survey.heading for case in cases.casework.cases}
    # each face of a case with a plan looks a way of its own
    planned = {case.name for case in cases.casework.cases if case.case.plan is not None}
    if len(set(walls.values())) + len(planned) < 2:
        return
    fronts = [
        _Front(
            leaf=leaf,
            door=door,
            wall=door.name if door.case in planned else walls[door.case],
            things=tuple(_things(leaf, door)),
        )
        for door in cases.job.resolved.doors
        if door.case in walls
        for leaf in door.leaves
    ]
    for one, other in itertools.combinations(fronts, 2):
        if one.wall == other.wall:
            continue
        hits = next(
            (
                (mover, shut)
                for mover, shut in ((one, other), (other, one))
                if any(
                    exceeds(overlap(way, still.ways[0]), 0.0)
                    for moves, still in _level(mover, shut)
                    for way in moves.ways
                )
            ),
            None,
        )
        if hits is not None:
            mover, shut = hits
            yield _told(
                "stop",
                mover,
                f"{begun(mover.leaf.name)} hits {shut.leaf.name} round the corner, which is shut.",
            )
        elif any(
            exceeds(overlap(a, b), 0.0)
            for one_thing, other_thing in _level(one, other)
            for a, b in (
                *((way, other_thing.ways[-1]) for way in one_thing.ways),
                *((one_thing.ways[-1], way) for way in other_thing.ways),
            )
        ):
            yield _told(
                "caution",
                one,
                f"{begun(one.leaf.name)} and {other.leaf.name} meet at the corner when both are "
                "open.",
            )


def _told(level: str, front: _Front, message: str) -> Problem:
    return Problem(
        code="fronts_meet_at_corner",
        level="stop" if level == "stop" else "caution",
        message=message,
        where=front.door.written.here,
        about=front.leaf.name,
        found="one in the way of the other",
        allowed="clear of one another",
        fix="Put a filler at the corner, as wide as fronts and pulls stand out, or hang a door by "
        "its other side.",
    )


def _things(leaf: Leaf, door: Door) -> Iterator[_Thing]:
    """The leaf, and its handle where it has one."""
    steps = [step / STEPS for step in range(STEPS + 1)]
    foot = float(leaf.hung.foot)
    yield _Thing(
        low=foot,
        high=foot + float(leaf.height),
        ways=tuple(_placed(door, footprint(leaf, part)) for part in steps),
    )
    handle = leaf.handle
    if handle is not None:
        long = float(handle.across + (0.0 if handle.level else handle.apart))
        middle = foot + float(handle.up)
        yield _Thing(
            low=middle - long / 2,
            high=middle + long / 2,
            ways=tuple(_placed(door, handle_footprint(leaf, part)) for part in steps),
        )


def _placed(door: Door, points: tuple[Point, ...]) -> tuple[Point, ...]:
    return tuple(door.stands.point((x, y, 0.0))[:2] for x, y in points)


def _level(one: _Front, other: _Front) -> Iterator[tuple[_Thing, _Thing]]:
    """What of two fronts stands at some height in common."""
    for a, b in itertools.product(one.things, other.things):
        if exceeds(min(a.high, b.high), max(a.low, b.low)):
            yield a, b
