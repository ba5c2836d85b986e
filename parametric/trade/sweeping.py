"""What stands on the wall round an opening, and whether a leaf meets it on its way.

seen from above
      |casing|                      the leaf is a rectangle that slides or turns; what stands
======+      +---opening---         on the wall is a rectangle too, out from its face
      |##|---------> leaf
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from dataclasses import dataclass

from parametric.figures import Figure, Where, named
from parametric.model import Placement, along
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf

Points = tuple[tuple[float, float], ...]

_FAR = 10_000.0
"""How far a skirting is taken to run, mm."""
_STEP = 2.0
"""No corner of a leaf moves farther than this between two looks, mm."""
_TOUCH = 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Standing:
    """One thing on the wall, mm in the world: across from the opening's left edge, up from the
    highest floor, `out` from the wall's face.
    """

    what: str
    left: float
    right: float
    low: float
    high: float
    out: Figure
    where: Where | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Met:
    """A leaf meets a thing when it has gone `part` of its motion, 0 when it is shut."""

    leaf: Leaf
    thing: Standing
    part: float


def standing(door: Door) -> tuple[Standing, ...]:
    """Casing, skirting and single things, as far as they were measured."""
    return (*_casing(door), *_skirting(door), *_things(door))


def _edges(door: Door) -> tuple[float, float]:
    """The opening's outermost edges."""
    outline = door.opening.outline()
    return min(x for x, _ in outline), max(x for x, _ in outline)


def _casing(door: Door) -> Iterator[Standing]:
    casing = door.survey.casing
    if casing is None:
        return
    wide, head = float(casing[0]), float(door.opening.head)
    left, right = _edges(door)
    for x0, x1, low, high in (
        (left - wide, left, 0.0, head + wide),
        (right, right + wide, 0.0, head + wide),
        (left, right, head, head + wide),
    ):
        yield Standing(
            what="casing",
            left=x0,
            right=x1,
            low=low,
            high=high,
            out=named("casing stands out", casing[1]),
            where=door.survey.line("casing"),
        )


def _skirting(door: Door) -> Iterator[Standing]:
    skirting, casing = door.survey.skirting, door.survey.casing
    if skirting is None:
        return
    beside = 0.0 if casing is None else float(casing[0])
    left, right = _edges(door)
    for x0, x1 in ((left - _FAR, left - beside), (right + beside, right + _FAR)):
        yield Standing(
            what="skirting",
            left=x0,
            right=x1,
            low=-_FAR,
            high=float(skirting[0]),
            out=named("skirting stands out", skirting[1]),
            where=door.survey.line("skirting"),
        )


def _things(door: Door) -> Iterator[Standing]:
    for thing in door.survey.in_the_way or ():
        place, height, out = thing.from_left, thing.height, thing.stands_out
        if not (isinstance(place, Figure) and isinstance(height, Figure)):
            continue
        if not isinstance(out, Figure):
            continue
        yield Standing(
            what=str(thing.what),
            left=float(place),
            right=float(place),
            low=float(height),
            high=float(height),
            out=named(f"{thing.what} stands out", out),
            where=door.survey.line("in the way"),
        )


def meetings(door: Door) -> tuple[Met, ...]:
    """Every leaf with every thing that it meets on its way from shut to open, the first place."""
    found = []
    things = standing(door)
    for leaf in door.leaves if things else ():
        foot, top = float(leaf.hung.foot), float(leaf.hung.foot + leaf.height)
        level = [thing for thing in things if thing.low < top and thing.high > foot]
        if not level or not leaf.hung.motion:
            continue
        met: dict[int, Met] = {}
        for part in _looks(leaf):
            stands = plan_of(leaf, part)
            for index, thing in enumerate(level):
                if index not in met and _overlap(stands, _rectangle(thing)):
                    met[index] = Met(leaf=leaf, thing=thing, part=part)
        found += list(met.values())
    return tuple(found)


def plan_of(leaf: Leaf, part: float) -> Points:
    """A leaf from above when it has gone a part of its motion, in the world's X and Y."""
    half = float(leaf.thickness) / 2
    shut = Placement(origin=(float(leaf.hung.left), -float(leaf.hung.plane) - half, 0.0))
    stands = along(shut, leaf.hung.motion, part)
    wide, thick = float(leaf.width), float(leaf.thickness)
    return tuple(
        stands.point((x, y, 0.0))[:2]
        for x, y in ((0.0, 0.0), (wide, 0.0), (wide, thick), (0.0, thick))
    )


def _looks(leaf: Leaf) -> Iterator[float]:
    """From shut to open in steps so small that no corner jumps over a thing."""
    ends = [plan_of(leaf, part / 8) for part in range(9)]
    path = max(
        sum(math.dist(ends[i][corner], ends[i + 1][corner]) for i in range(8))
        for corner in range(4)
    )
    # Chords are a little shorter than the arcs they stand for.
    count = max(1, math.ceil(1.02 * path / _STEP))
    return (step / count for step in range(count + 1))


def _rectangle(thing: Standing) -> Points:
    out = float(thing.out)
    return (
        (thing.left, -out),
        (thing.right, -out),
        (thing.right, 0.0),
        (thing.left, 0.0),
    )


def _overlap(a: Points, b: Points) -> bool:
    """Whether two rectangles share more than a touch: no line between them parts them.

    Source: separating axis theorem for convex shapes.
    """
    axes = ((1.0, 0.0), (0.0, 1.0), *_normals(a))
    for x, y in axes:
        low_a, high_a = _shadow(a, x, y)
        low_b, high_b = _shadow(b, x, y)
        if high_a - low_b <= _TOUCH or high_b - low_a <= _TOUCH:
            return False
    return True


def _normals(points: Points) -> tuple[tuple[float, float], ...]:
    found = []
    for (x0, y0), (x1, y1) in itertools.pairwise(points):
        length = math.hypot(x1 - x0, y1 - y0)
        found.append(((x1 - x0) / length, (y1 - y0) / length))
    return tuple(found)


def _shadow(points: Points, x: float, y: float) -> tuple[float, float]:
    along_it = [px * x + py * y for px, py in points]
    return min(along_it), max(along_it)
