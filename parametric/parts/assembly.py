"""The whole job as parts that stand where they belong, marked by type."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from parametric.hardware.track import TRACK_ABOVE_LEAF, TRACK_WIDE, track_blank
from parametric.model import (
    Assembly,
    Group,
    Material,
    Part,
    Placement,
)
from parametric.names import join
from parametric.parts.bars import bar_parts
from parametric.parts.case_drawers import inner_drawers, with_all_that_opens, with_drawer_boxes
from parametric.parts.cases import case_groups
from parametric.parts.closings import closing_groups
from parametric.parts.counters import lid_groups
from parametric.parts.frame import frame_parts, tenon_parts
from parametric.parts.glazing import glazing_parts
from parametric.parts.handles import handle_parts
from parametric.parts.hardware import pull_parts
from parametric.parts.known_shapes import KnownShapes
from parametric.parts.leaf_edges import strip_parts
from parametric.parts.panels import panel_parts
from parametric.parts.room import states_of_job, stood
from parametric.parts.shelf_lips import with_shelf_lips
from parametric.resolve.door import Door, Resolved
from parametric.resolve.leaf import Leaf
from parametric.resolve.matched_fronts import with_matches

STEEL = Material(name="track", look="metal", density=0.0)


def make_parts(resolved: Resolved) -> Assembly:
    """Every part of the job, in its group, with its mark.

    Twins share a mark: two parts have the same one exactly when they are of one material, one
    solid serves for both, and they are banded alike; what has its place in a matched set has none.
    """
    groups = [
        dataclasses.replace(stood(group, door.stands), see_through=bool(door.case))
        for door in resolved.doors
        for group in _groups(door)
    ]
    groups = with_matches(groups, resolved.doors)
    if resolved.casework is not None:
        groups = with_drawer_boxes(groups, resolved)
        groups += inner_drawers(resolved)
        groups += with_shelf_lips(case_groups(resolved.casework), resolved)
        groups += [*closing_groups(resolved.casework), *lid_groups(resolved.casework)]
    return Assembly(
        name=resolved.design.job,
        groups=tuple(marked(groups)),
        states=with_all_that_opens(states_of_job(resolved.doors), resolved),
    )


def parts_of(door: Door, assembly: Assembly) -> Assembly:
    """One door's share of a job's parts, marked as in the job, in the door's own frame.

    Its groups are called as those of a door alone: parts keep the names they have in the job.

    Args:
        door: one of the job's doors.
        assembly: all parts of the job.
    """
    made = {group.name: group.parts for group in assembly.groups}
    own = [_leaf_group(leaf, made[leaf.name]) for leaf in door.leaves]
    if door.hanging.tracks:
        own.append(_tracks("tracks", made[_tracks_name(door)]))
    return Assembly(name=assembly.name, groups=tuple(own), states=door.hanging.states)


def _groups(door: Door) -> list[Group]:
    """A door's leaves, and its tracks where it has some, in its own frame."""
    groups = [_leaf_group(leaf, leaf_parts(leaf)) for leaf in door.leaves]
    if door.hanging.tracks:
        groups.append(_tracks(_tracks_name(door), _track_bars(door)))
    return groups


def _leaf_group(leaf: Leaf, parts: tuple[Part, ...]) -> Group:
    origin = (
        float(leaf.hung.left),
        -float(leaf.hung.plane) - float(leaf.thickness) / 2,
        float(leaf.hung.foot),
    )
    return Group(
        name=leaf.name,
        placement=Placement(origin=origin),
        parts=parts,
        motion=leaf.hung.motion,
    )


def leaf_parts(leaf: Leaf) -> tuple[Part, ...]:
    """The pieces of one leaf, in the order they are listed: frame, panels, glass, tenons, hardware."""
    return (
        *frame_parts(leaf),
        *bar_parts(leaf),
        *panel_parts(leaf),
        *glazing_parts(leaf),
        *tenon_parts(leaf),
        *pull_parts(leaf),
        *handle_parts(leaf),
        *strip_parts(leaf),
    )


def _tracks(name: str, bars: tuple[Part, ...]) -> Group:
    return Group(name=name, placement=Placement(), parts=bars)


def _tracks_name(door: Door) -> str:
    return join(door.place, "tracks")


def _track_bars(door: Door) -> tuple[Part, ...]:
    """The tracks as plain bars over their planes: bought, shown so that the leaves hang on something."""
    hanging = door.hanging
    bottom = float(hanging.floor_gap) + float(hanging.leaf_height) + TRACK_ABOVE_LEAF
    return tuple(
        Part(
            name=join(_tracks_name(door), f"{track.word} track"),
            noun="track",
            mark="K",
            material=STEEL,
            blank=track_blank(track.length),
            placement=Placement(
                origin=(float(track.left), -float(track.plane) - TRACK_WIDE / 2, bottom)
            ),
            supplied=True,
        )
        for track in hanging.tracks
    )


def marked(groups: Iterable[Group]) -> list[Group]:
    """Number the types of each letter in the order they come; a part arrives with its letter."""
    counted: dict[str, int] = {}
    known: dict[tuple[object, ...], KnownShapes] = {}
    marked = []
    for group in groups:
        parts = []
        for part in group.parts:
            alike = (part.mark, part.material.name, part.banded, part.banded_edges, part.matched)
            types = known.setdefault(alike, KnownShapes())
            mark = types.find(part)
            if mark is None:
                counted[part.mark] = counted.get(part.mark, 0) + 1
                mark = f"{part.mark}{counted[part.mark]}"
                types.keep(part, mark)
            parts.append(dataclasses.replace(part, mark=mark))
        marked.append(dataclasses.replace(group, parts=tuple(parts)))
    return marked
