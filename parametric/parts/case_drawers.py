"""Drawer boxes in the groups of their fronts, so that they draw out together."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from parametric.model import Group, Placement, Vector
from parametric.parts.drawer import drawer_parts
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


def _seen_from(frame: Placement, point: Vector) -> Vector:
    """A point of the room in a frame that stands square in it."""
    less = tuple(p - o for p, o in zip(point, frame.origin, strict=True))
    x, y, z = (
        sum(a * b for a, b in zip(less, axis, strict=True)) for axis in (frame.x, frame.y, frame.z)
    )
    return (x, y, z)
