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
from parametric.resolve.footprint import Point, footprint, overlap
from parametric.resolve.leaf import Leaf
from parametric.resolve.one_door import Door
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun

STEPS = 24


@dataclass(frozen=True, slots=True, kw_only=True)
class _Front:
    """One leaf with its wall, and what it covers on its way, seen from above."""

    leaf: Leaf
    door: Door
    wall: str
    ways: tuple[tuple[Point, ...], ...]


def fronts_meet_at_corner(cases: CheckedCases) -> Iterator[Problem]:
    """A stop where one hits another that is shut, a caution where two cannot both be open."""
    walls = {case.name: case.survey.heading for case in cases.casework.cases}
    if len(set(walls.values())) < 2:
        return
    fronts = [
        _Front(leaf=leaf, door=door, wall=walls[door.case], ways=_ways(leaf, door))
        for door in cases.job.resolved.doors
        if door.case in walls
        for leaf in door.leaves
    ]
    for one, other in itertools.combinations(fronts, 2):
        if one.wall == other.wall or not _level(one.leaf, other.leaf):
            continue
        hits = next(
            (
                (mover, shut)
                for mover, shut in ((one, other), (other, one))
                if any(exceeds(overlap(way, shut.ways[0]), 0.0) for way in mover.ways)
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
            exceeds(overlap(a, b), 0.0) for a, b in itertools.product(one.ways, (other.ways[-1],))
        ) or any(exceeds(overlap(one.ways[-1], b), 0.0) for b in other.ways):
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


def _ways(leaf: Leaf, door: Door) -> tuple[tuple[Point, ...], ...]:
    found = []
    for step in range(STEPS + 1):
        corners = (door.stands.point((x, y, 0.0)) for x, y in footprint(leaf, step / STEPS))
        found.append(tuple((x, y) for x, y, _ in corners))
    return tuple(found)


def _level(one: Leaf, other: Leaf) -> bool:
    """Whether two leaves stand at some height in common."""
    low = max(float(one.hung.foot), float(other.hung.foot))
    high = min(float(leaf.hung.foot + leaf.height) for leaf in (one, other))
    return exceeds(high, low)
