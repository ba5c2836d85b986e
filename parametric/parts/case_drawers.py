"""Drawer boxes: in the groups of their fronts, so that they draw out together, or on their own."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from parametric.model import Group, Part, Placement, Slide, State, Vector
from parametric.names import join
from parametric.parts.drawer import drawer_parts
from parametric.parts.drawer_runners import runner_parts
from parametric.resolve.casework import Casework
from parametric.resolve.door import Resolved


def with_drawer_boxes(groups: Iterable[Group], resolved: Resolved) -> list[Group]:
    """The leaves' groups, each front of a drawer with its box.

    Args:
        groups: every leaf where it stands in the room.
        resolved: whose cabinets have the drawers.
    """
    casework = resolved.casework
    assert casework is not None, "only cabinets have drawers"
    boxes = {drawer.leaf: drawer for drawer in casework.drawers}
    cutters = resolved.shop.router.cutters
    found = []
    for group in groups:
        drawer = boxes.get(group.name)
        if drawer is not None:
            room = casework.case(drawer.case).stands.point((drawer.x, drawer.y, drawer.z))
            at = Placement(origin=_seen_from(group.placement, room))
            parts = drawer_parts(drawer.box, at=at, cutters=cutters)
            group = dataclasses.replace(group, parts=(*group.parts, *parts))
        found.append(group)
    return found


def inner_drawers(resolved: Resolved) -> list[Group]:
    """A group for each drawer behind a door, which draws out by itself."""
    casework = resolved.casework
    assert casework is not None, "only cabinets have drawers"
    found = []
    for drawer in casework.drawers:
        if drawer.leaf:
            continue
        stands = casework.case(drawer.case).stands
        found.append(
            Group(
                name=drawer.name,
                placement=Placement(
                    origin=stands.point((drawer.x, drawer.y, drawer.z)), x=stands.x, y=stands.y
                ),
                parts=drawer_parts(drawer.box, cutters=resolved.shop.router.cutters),
                motion=(
                    Slide(
                        direction=stands.direction((0.0, -1.0, 0.0)),
                        travel=float(drawer.box.draws_out),
                    ),
                ),
            )
        )
    return found


def with_all_that_opens(states: Iterable[State], resolved: Resolved) -> tuple[State, ...]:
    """The states of a job with its inner drawers and lids.

    A drawer is out where all the doors and flaps before it are open, a lid is up where everything is open.
    """
    casework = resolved.casework
    if casework is None:
        return tuple(states)
    inner = [drawer for drawer in casework.drawers if not drawer.leaf]
    lids = [join(case.name, "lid") for case in casework.cases if case.case.spec.lid is not None]
    before = {
        door.case: [leaf.name for leaf in door.leaves if leaf.hung.turns] for door in resolved.doors
    }
    return tuple(
        State(
            name=state.name,
            open={
                **state.open,
                **{drawer.name: _out(state, before.get(drawer.case, [])) for drawer in inner},
                **dict.fromkeys(lids, 1.0 if state.name == "open" else 0.0),
            },
        )
        for state in states
    )


def _out(state: State, doors: list[str]) -> float:
    if not doors:
        return 1.0 if state.name == "open" else 0.0
    return 1.0 if all(state.open.get(door) == 1.0 for door in doors) else 0.0


def case_runners(casework: Casework, name: str) -> tuple[Part, ...]:
    """The strips of wood that the drawers of one case run on, in the case's frame."""
    return tuple(
        part
        for drawer in casework.drawers
        if drawer.case == name and drawer.runners is not None
        for part in runner_parts(
            drawer.runners,
            at=Placement(
                origin=(
                    drawer.x - float(drawer.box.room_beside),
                    drawer.y,
                    drawer.z - float(drawer.box.foot),
                )
            ),
        )
    )


def _seen_from(frame: Placement, point: Vector) -> Vector:
    """A point of the room in a frame that stands square in it."""
    less = tuple(p - o for p, o in zip(point, frame.origin, strict=True))
    x, y, z = (
        sum(a * b for a, b in zip(less, axis, strict=True)) for axis in (frame.x, frame.y, frame.z)
    )
    return (x, y, z)
