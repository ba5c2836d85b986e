"""Two cabinets, or a cabinet and another run's filler, stand in the same place.

Why: one of them cannot be put there. Example: `from left` of two cabinets on one wall; a run round
a corner that does not begin beyond the depth of the other.
Source: arithmetic.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.figures import Where, exceeds
from parametric.model import Placement
from parametric.problems import Problem
from parametric.resolve.casework import StandingCase, StandingRun
from parametric.resolve.footprint import Point, overlap
from parametric.rules.checked_cases import CheckedCases
from parametric.trade.case_names import begun


@dataclass(frozen=True, slots=True, kw_only=True)
class _Thing:
    """What stands somewhere: seen from above in parts without inside corners, and how high, mm."""

    name: str
    run: str
    shapes: tuple[tuple[Point, ...], ...]
    low: float
    high: float
    where: Where
    filler: bool


def cabinets_overlap(cases: CheckedCases) -> Iterator[Problem]:
    """A stop for each two of them."""
    things = [_case(case) for case in cases.casework.cases]
    things += [filler for run in cases.casework.runs for filler in _fillers(run)]
    for one, other in itertools.combinations(things, 2):
        if (one.filler or other.filler) and one.run == other.run:
            continue
        deep = max(overlap(a, b) for a in one.shapes for b in other.shapes)
        level = exceeds(min(one.high, other.high), max(one.low, other.low))
        if not level or not exceeds(deep, 0.0):
            continue
        size = cases.said.fine(deep)
        yield Problem(
            code="cabinets_overlap",
            level="stop",
            message=f"{begun(one.name)} and {other.name} stand in the same place: they are {size} "
            "into one another.",
            where=other.where,
            about=other.name,
            found=size,
            allowed="one beside the other",
            fix="Move one of them: its `from left`, or a `space` in its run.",
        )


def _case(case: StandingCase) -> _Thing:
    box = case.case.box
    return _Thing(
        name=case.name,
        run=case.run,
        shapes=tuple(_placed(case.stands, points) for points in case.case.footprint),
        low=float(box.foot),
        high=float(box.foot + box.highest),
        where=case.case.spec.here,
        filler=False,
    )


def _fillers(run: StandingRun) -> Iterator[_Thing]:
    """The fillers at its walls, as wide as they are seen at the tightest."""
    left, right, front = float(run.left), float(run.right), run.front
    for word, filler in (("left", run.edges.left), ("right", run.edges.right)):
        if filler is None:
            continue
        wide = float(filler.least)
        x0, x1 = (left - wide, left) if word == "left" else (right, right + wide)
        yield _Thing(
            name=filler.name,
            run=run.name,
            shapes=(_placed(run.stands, _rectangle(x0, x1, front, front + float(run.thickness))),),
            low=float(run.foot),
            high=float(run.head),
            where=run.spec.line("left to right"),
            filler=True,
        )


def _rectangle(x0: float, x1: float, y0: float, y1: float) -> tuple[Point, ...]:
    return ((x0, y0), (x1, y0), (x1, y1), (x0, y1))


def _placed(stands: Placement, points: tuple[Point, ...]) -> tuple[Point, ...]:
    found = (stands.point((x, y, 0.0)) for x, y in points)
    return tuple((x, y) for x, y, _ in found)
