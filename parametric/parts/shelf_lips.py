"""Lips of shelves, each under the front edge of a shelf that can be moved."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable, Iterator

from parametric.model import Blank, Group, Material, Part, Placement
from parametric.names import join
from parametric.parts.cases import WAYS
from parametric.resolve.casework import StandingCase
from parametric.resolve.door import Resolved
from parametric.resolve.shelf_lips import ShelfLip, lip_of


def with_shelf_lips(groups: Iterable[Group], resolved: Resolved) -> list[Group]:
    """The cases' groups, each with the lips of its shelves.

    Args:
        groups: a group for each case.
        resolved: whose cabinets they are.
    """
    assert resolved.casework is not None, "only cabinets have shelves"
    found = []
    for group in groups:
        standing = resolved.casework.case(group.name)
        lip = lip_of(resolved.design, standing.case.spec)
        if lip is not None:
            parts = (*group.parts, *_lips(standing, lip))
            group = dataclasses.replace(group, parts=parts)
        found.append(group)
    return found


def _lips(standing: StandingCase, lip: ShelfLip) -> Iterator[Part]:
    """Flush with its shelf in front and at both ends."""
    wood = Material(name=lip.timber.name, look="timber", density=float(lip.timber.density))
    along, across = WAYS["facing, level"]
    for shelf in standing.case.of_role("shelf"):
        yield Part(
            name=join(shelf.name, "lip"),
            noun="shelf lip",
            mark="C",
            material=wood,
            blank=Blank(length=shelf.length, width=lip.depth, thickness=lip.thickness),
            placement=Placement(
                origin=(
                    shelf.x,
                    shelf.y + float(lip.thickness),
                    shelf.z - float(lip.depth),
                ),
                x=along,
                y=across,
            ),
            cuts=(),
        )
