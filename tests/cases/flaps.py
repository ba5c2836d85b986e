"""Where a flap's fixings are in the room, shut and open, for tests of flaps."""

from __future__ import annotations

import math
from collections.abc import Iterator
from typing import NamedTuple

from parametric.hardware.stay import NoPlace
from parametric.job import Job
from parametric.model import Drilled, Part, Placement, Shaped, Vector, displaced, face_point
from parametric.resolve.leaf import Leaf


class Ends(NamedTuple):
    """Both fixings of one stay in the room: on the case, and on the flap, off its back."""

    leaf: Leaf
    side: str
    on_case: Vector
    on_flap: Vector


def bored(stands: Placement, part: Part, cut: Drilled) -> Vector:
    """The middle of one hole on the face it is bored in, in the room."""
    point = face_point(cut.face, part.blank, float(cut.u), float(cut.v), 0.0)
    return stands.point(part.placement.point(point))


def stays_in(job: Job, state: str) -> Iterator[Ends]:
    """Every stay of a job in one of its states."""
    assert job.assembly is not None
    assert job.resolved is not None
    now = next(one for one in job.assembly.states if one.name == state)
    holes = {
        (group.name, part.name): [
            bored(displaced(group, now), part, cut)
            for cut in part.cuts
            if isinstance(cut, Drilled) and cut.name == "stay fixing"
        ]
        for group in job.assembly.groups
        for part in group.parts
    }
    for door in job.resolved.doors:
        for leaf in door.leaves:
            if leaf.stays is None or isinstance(leaf.stays.sized, NoPlace):
                continue
            group = next(g for g in job.assembly.groups if g.name == leaf.name)
            # away from the back, the way that the leaf's thickness runs
            out = displaced(group, now).direction((0.0, 1.0, 0.0))
            off = float(leaf.stays.sized.place.off)
            for one in leaf.stays.sides:
                (back,) = holes[leaf.name, f"{leaf.name} / {one.side} stile"]
                on_flap = tuple(a + off * b for a, b in zip(back, out, strict=True))
                of_case = [p for (g, _), found in holes.items() if g == door.case for p in found]
                on_case = min(
                    of_case,
                    key=lambda p: (
                        abs(p[0] - back[0]) + abs(p[2] - _up(job, door.case, float(one.case_up)))
                    ),
                )
                yield Ends(leaf, one.side, on_case, (on_flap[0], on_flap[1], on_flap[2]))


def _up(job: Job, case: str, up: float) -> float:
    assert job.resolved is not None
    assert job.resolved.casework is not None
    return float(job.resolved.casework.case(case).case.box.foot) + up


def apart(ends: Ends) -> float:
    """How long a stay is, seen from the side."""
    return math.hypot(ends.on_case[1] - ends.on_flap[1], ends.on_case[2] - ends.on_flap[2])


def cups(job: Job, leaf: str) -> list[float]:
    """The middles of a flap's cups across the room, mm."""
    assert job.assembly is not None
    group = next(g for g in job.assembly.groups if g.name == leaf)
    found = []
    for part in group.parts:
        for cut in part.cuts:
            if isinstance(cut, Shaped) and cut.name == "hinge cup":
                us = [float(v.x) for v in cut.outline]
                vs = [float(v.y) for v in cut.outline]
                middle = face_point(
                    cut.face, part.blank, (min(us) + max(us)) / 2, (min(vs) + max(vs)) / 2, 0.0
                )
                found.append(group.placement.point(part.placement.point(middle))[0])
    return sorted(found)


def plates(job: Job, case: str, board: str) -> list[tuple[float, float, str]]:
    """The middles of the hinge plates in one board: across the room, up, and the face."""
    assert job.assembly is not None
    group = next(g for g in job.assembly.groups if g.name == case)
    part = next(p for p in group.parts if p.name == f"{case} / {board}")
    found = []
    for cut in part.cuts:
        if isinstance(cut, Drilled) and cut.name == "plate holes":
            middle = float(cut.u) + float(cut.pitch) / 2
            point = face_point(cut.face, part.blank, middle, float(cut.v), 0.0)
            x, _, z = group.placement.point(part.placement.point(point))
            found.append((x, z, part.faces.get(cut.face, "")))
    return sorted(found)
