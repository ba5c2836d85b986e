"""What a flap passes on its way, seen from the left, and what of the room it meets there.

    ceiling                     everything is in the frame of the wall that the cabinets stand
___________________             on: x along it, y from the front edges backwards, z from the
 open  (o)====                  highest floor
          |  | shut
"""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.cases.case import Case
from parametric.hardware.gas_strut import GasStruts
from parametric.hardware.stay import turned_by
from parametric.hardware.stay_kinds import Stays
from parametric.model import Assembly, Group, Part, Placement, along
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.footprint import overlap
from parametric.resolve.leaf import Leaf
from parametric.resolve.leaf_stays import StaySide
from parametric.resolve.one_door import Door
from parametric.resolve.room_lines import between, level_line

STEPS = 30
"""Places at which a flap is looked at on its way."""
TOUCH = 0.5
"""Less deep in one another than this is a touch, mm: three degrees of its way lie between two looks."""
HALF_A_STAY = 5.0
"""Half of how thick a stay is, mm. Common practice, no source."""
_FAR = 10_000.0
_HANDLES = ("bar handle", "knob")

Box = tuple[tuple[float, float], tuple[float, float], tuple[float, float]]
"""From and to, along the wall, backwards and up, mm."""
Section = tuple[tuple[float, float], ...]
"""A convex outline, backwards and up, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FlapMeets:
    """A flap meets a thing when it has gone `part` of its way, 0 to 1; `open` says that the thing
    is a front that stands open itself.
    """

    leaf: Leaf
    door: Door
    what: str
    part: float
    open: bool


def flap_meets(
    casework: Casework, doors: Sequence[Door], assembly: Assembly
) -> Iterator[FlapMeets]:
    """The first thing that each flap meets shut or still, and each front it meets that is open.

    Args:
        casework: the cabinets.
        doors: of the job.
        assembly: all parts of it.
    """
    for door in doors:
        if not any(leaf.hung.flap for leaf in door.leaves):
            continue
        here = casework.case(door.case)
        still, opened = _round(casework, doors, assembly, here)
        for leaf in door.leaves:
            if leaf.hung.flap is None:
                continue
            ways = _ways(leaf, door, here, assembly)
            own = (leaf.name, _handle_of(leaf.name))
            met = _first(ways, [one for one in still if one[0] not in own])
            if met is not None:
                yield FlapMeets(leaf=leaf, door=door, what=met[0], part=met[1], open=False)
            for name, box in opened:
                if name == leaf.name:
                    continue
                both = _first(ways, [(name, box)])
                if both is not None:
                    yield FlapMeets(leaf=leaf, door=door, what=both[0], part=both[1], open=True)


_Things = list[tuple[str, Box]]
_Way = tuple[tuple[float, float], list[Section]]
"""From left to right, and the outline at each place of the way."""


def _round(
    casework: Casework, doors: Sequence[Door], assembly: Assembly, here: StandingCase
) -> tuple[_Things, _Things]:
    """What stands still on the wall of a case, by name, and its fronts where they stand open."""
    wall = here.survey.heading
    names = {case.name for case in casework.cases if case.survey.heading == wall}
    runs = {run.name for run in casework.runs if names & set(run.cases)}
    own = [door for door in doors if door.case in names]
    leaves = {leaf.name for door in own for leaf in door.leaves}
    still, opened = [*_room(here)], []
    for door in own:
        stands = door.stands.seen_from(here.room)
        for leaf in door.leaves:
            still.append((leaf.name, _leaf_box(leaf, stands, 0.0)))
            if leaf.hung.motion:
                opened.append((leaf.name, _leaf_box(leaf, stands, 1.0)))
    for group in assembly.groups:
        of_a_case = group.name in names or group.name in runs
        closes = any(group.name.startswith(f"{name} / ") for name in (*names, *runs))
        for part in group.parts:
            handle = group.name in leaves and part.noun in _HANDLES
            if handle or ((of_a_case or closes) and not part.supplied) or part.noun == "counter":
                what = group.name if handle else part.name
                box = _part_box(group, part, here.room)
                still.append((_handle_of(what) if handle else what, box))
    return still, opened


def _handle_of(leaf: str) -> str:
    return f"the handle of {leaf}"


def _room(here: StandingCase) -> Iterator[tuple[str, Box]]:
    """Ceiling and floor over and under a case, as far as they were measured."""
    left, right = float(here.left), float(here.left + here.case.box.width)
    for of, way in (("ceiling", 1.0), ("floor", -1.0)):
        line = level_line(here.opening, of)
        if not line:
            continue
        heights = [z for _, z in between(line, left, right)]
        near = min(heights) if of == "ceiling" else max(heights)
        low, high = sorted((near, near + way * _FAR))
        yield f"the {of}", ((left, right), (-_FAR, _FAR), (low, high))


def _leaf_box(leaf: Leaf, stands: Placement, part: float) -> Box:
    hung = leaf.hung
    y = -float(hung.plane) - float(leaf.thickness) / 2
    corners = itertools.product(
        (float(hung.left), float(hung.left + leaf.width)),
        (y, y + float(leaf.thickness)),
        (float(hung.foot), float(hung.foot + leaf.height)),
    )
    return _round_of(
        stands.point(along(Placement(origin=corner), hung.motion, part).origin)
        for corner in corners
    )


def _part_box(group: Group, part: Part, room: Placement) -> Box:
    stands, blank = group.placement.seen_from(room), part.blank
    corners = itertools.product(
        (0.0, float(blank.length)), (0.0, float(blank.width)), (0.0, float(blank.thickness))
    )
    return _round_of(stands.point(part.placement.point(corner)) for corner in corners)


def _round_of(points: Iterator[tuple[float, float, float]]) -> Box:
    xs, ys, zs = zip(*points, strict=True)
    return (min(xs), max(xs)), (min(ys), max(ys)), (min(zs), max(zs))


def stay_ways(case: Case, leaf: Leaf, sized: Stays, one: StaySide) -> Iterator[Section]:
    """A stay from shut to open, seen from the left: back from the case's front edges, up from its
    foot. An arm that folds is looked at shut and open alone.

    Args:
        case: the case.
        leaf: the flap.
        sized: its stays.
        one: the one of them.
    """
    flap = leaf.hung.flap
    assert flap is not None, "only a flap has stays"
    line, up = float(flap.line - case.box.foot), -1.0 if flap.side == "top" else 1.0
    out = leaf.hung.plane + leaf.thickness / 2
    deep = leaf.thickness + sized.place.off
    steps = STEPS if isinstance(sized, GasStruts) else 1
    for step in range(steps + 1):
        down, into = turned_by(sized.place.along, deep, float(flap.angle) * step / steps)
        y0, z0 = float(into - out), line + up * float(down)
        y1, z1 = float(one.behind), float(one.case_up)
        long = math.hypot(y1 - y0, z1 - z0)
        a, b = -(z1 - z0) / long * HALF_A_STAY, (y1 - y0) / long * HALF_A_STAY
        yield ((y0 - a, z0 - b), (y1 - a, z1 - b), (y1 + a, z1 + b), (y0 + a, z0 + b))


def _ways(leaf: Leaf, door: Door, here: StandingCase, assembly: Assembly) -> list[_Way]:
    """From left to right, and its outline on its way: of the flap, and of the handle on it."""
    stands = door.stands.seen_from(here.room)
    hung, half = leaf.hung, float(leaf.thickness) / 2
    y, foot = -float(hung.plane), float(hung.foot)
    left = float(hung.left)
    boxes: list[Box] = [
        (
            (left, left + float(leaf.width)),
            (y - half, y + half),
            (foot, foot + float(leaf.height)),
        )
    ]
    shut = Placement(origin=(left, y - half, foot))
    for group in assembly.groups:
        for part in group.parts if group.name == leaf.name else ():
            if part.noun in _HANDLES:
                held = Group(name="", placement=shut, parts=())
                boxes.append(_part_box(held, part, Placement()))
    found = []
    for (x0, x1), (y0, y1), (z0, z1) in boxes:
        corners = ((y0, z0), (y1, z0), (y1, z1), (y0, z1))
        sections = []
        for step in range(STEPS + 1):
            points = (
                along(Placement(origin=(x0, a, b)), hung.motion, step / STEPS).origin
                for a, b in corners
            )
            sections.append(tuple(stands.point(point)[1:] for point in points))
        wide = (stands.point((x0, 0.0, 0.0))[0], stands.point((x1, 0.0, 0.0))[0])
        found.append((wide, sections))
    return found


def _first(ways: list[_Way], things: _Things) -> tuple[str, float] | None:
    """What is met first, and when; what stands in it already when it is shut is not met."""
    apart = [
        (wide, sections, name, stands)
        for wide, sections in ways
        for name, (across, deep, up) in things
        if min(wide[1], across[1]) - max(wide[0], across[0]) > TOUCH
        and overlap(sections[0], stands := _rectangle(deep, up)) <= TOUCH
    ]
    for step in range(1, STEPS + 1):
        for _, sections, name, stands in apart:
            if overlap(sections[step], stands) > TOUCH:
                return name, step / STEPS
    return None


def _rectangle(deep: tuple[float, float], up: tuple[float, float]) -> Section:
    return ((deep[0], up[0]), (deep[1], up[0]), (deep[1], up[1]), (deep[0], up[1]))
