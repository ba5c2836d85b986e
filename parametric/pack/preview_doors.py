"""The doors of a job as the page has them in one room: each with its leaves, where it stands."""

from __future__ import annotations

import dataclasses

from parametric.model import Placement
from parametric.pack.door_words import in_words, label
from parametric.parts.room import carried_step
from parametric.resolve.door import Door, Resolved
from parametric.resolve.one_door import AS_MEASURED
from parametric.trade.standing import first_to_open, way
from parametric.trade.surround import Surround
from parametric.writers.client_page import Chalk, Doorway, Fact, PageLeaf, go_together
from parametric.writers.page_words import DOOR_WORDS

Outline = tuple[tuple[float, float], ...]


def called(door: Door) -> str:
    """What a client calls one of several doors: `Study`; nothing where there is only one."""
    name = (door.name or door.case) if door.place else ""
    return name[:1].upper() + name[1:]


def of_door(door: Door, words: str) -> str:
    """Words about one of several doors, with its name before them: `Study: each door`."""
    name = called(door)
    return DOOR_WORDS["of one"].format(name, in_words(words)) if name else words


def page_leaves(resolved: Resolved) -> tuple[PageLeaf, ...]:
    """The leaves of every door where they stand in the room."""
    return tuple(leaf for door in resolved.doors for leaf in _leaves(door))


def _leaves(door: Door) -> tuple[PageLeaf, ...]:
    hanging = door.hanging
    together = go_together({one.name: one.hung.motion for one in door.leaves}, hanging.states)
    found = []
    for leaf in door.leaves:
        pull = leaf.pulls[0] if leaf.pulls else None
        front = -float(leaf.hung.plane) - float(leaf.thickness) / 2
        x, y, z = door.stands.point((float(leaf.hung.left), front, float(leaf.hung.foot)))
        up = None if pull is None else float(pull.pull.up + leaf.hung.foot)
        found.append(
            PageLeaf(
                name=leaf.name,
                label=of_door(door, label(door, leaf)),
                width=float(leaf.width),
                height=float(leaf.height),
                x=x,
                foot=z,
                front=y,
                thickness=float(leaf.thickness),
                motion=tuple(carried_step(step, door.stands) for step in leaf.hung.motion),
                goes_with=together[leaf.name],
                after=_after(door, leaf.name),
                pull=None if pull is None else float(pull.across),
                pull_up=None if up is None else door.stands.point((0.0, 0.0, up))[2],
            )
        )
    return tuple(found)


def _after(door: Door, name: str) -> str:
    """The leaf that shuts over this one, so that it opens first and shuts last; none where they butt."""
    first = first_to_open(door)
    laps = door.hanging.meeting in ("rebated", "astragal")
    return first.name if first is not None and laps and first.name != name else ""


def doorway(door: Door, clear: tuple[float, float], elevation: str) -> Doorway:
    """One door in its wall, where it stands in the room.

    Args:
        door: the door.
        clear: the stretch of its wall that skirting stays out of, in its own frame.
        elevation: its front elevation as SVG.
    """
    hanging = door.hanging
    return Doorway(
        called=called(door),
        at=door.stands.origin[0],
        leaves=tuple(leaf.name for leaf in door.leaves),
        opening=on_wall(door.opening.outline(), door.stands),
        floor=on_wall(door.opening.floor_line(), door.stands),
        way=_across(way(door), door.stands),
        clear_way=None if hanging.clear_way is None else float(hanging.clear_way),
        skirting_clear=_across(clear, door.stands),
        elevation_svg=elevation,
    )


def trims_of(door: Door, about: Surround | None) -> tuple[tuple[Outline, float, float], ...]:
    """What stands round one opening: each piece's outline and the y of its two faces."""
    pieces = () if about is None else about.pieces
    return tuple((on_wall(piece.outline, door.stands), piece.near, piece.far) for piece in pieces)


def on_wall(outline: Outline, stands: Placement) -> Outline:
    """Points of a door's wall, across and up, in the room."""
    if stands == AS_MEASURED:
        return outline
    placed = (stands.point((x, 0.0, z)) for x, z in outline)
    return tuple((x, z) for x, _, z in placed)


def _across(stretch: tuple[float, float], stands: Placement) -> tuple[float, float]:
    (left, _), (right, _) = on_wall(((stretch[0], 0.0), (stretch[1], 0.0)), stands)
    return left, right


def in_the_room(fact: Fact, door: Door) -> Fact:
    """A size of one door with its lines where the door stands, told as that door's."""
    if not door.place:
        return fact
    return dataclasses.replace(
        fact,
        label=of_door(door, fact.label),
        chalk=tuple(_carried(line, door.stands) for line in fact.chalk),
    )


def _carried(line: Chalk, stands: Placement) -> Chalk:
    return dataclasses.replace(line, start=stands.point(line.start), end=stands.point(line.end))
