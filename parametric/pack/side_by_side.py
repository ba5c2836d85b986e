"""Several doors of one job on the client's page: each where it stands, what is said of each under its name."""

from __future__ import annotations

import dataclasses
import xml.etree.ElementTree as ElementTree
from collections.abc import Sequence

from parametric.model import Group, Vector
from parametric.pack.shown import Flat, Shown
from parametric.parts.room import stood
from parametric.resolve.door import Door
from parametric.writers.client_page import Chalk, Fact, PageLeaf, Saying, Scenery, said

_GAP = 0.04
"""Between drawings side by side, as a part of the highest."""
_SVG = "http://www.w3.org/2000/svg"


def side_by_side(doors: Sequence[tuple[Door, Shown]]) -> Shown:
    """All doors of a job as one page is told them; one alone as it is.

    Args:
        doors: each with what is shown of it by itself, in its own frame.
    """
    if len(doors) == 1:
        return doors[0][1]
    moved = [_moved(door, shown) for door, shown in doors]
    first, *others = moved
    across = [x for shown in moved for x in shown.way]
    clear = [x for shown in moved for x in shown.scenery.skirting_clear]
    things: list[Saying] = [
        (f"{_name(door)}: ", *shown.thing) for (door, _), shown in zip(doors, moved, strict=True)
    ]
    ticks = [
        (f"{_name(door)}: ", *tick)
        for (door, _), shown in zip(doors, moved, strict=True)
        for tick in shown.ticks
    ]
    same = [tick for tick in first.ticks if all(tick in shown.ticks for shown in others)]
    return dataclasses.replace(
        first,
        subtitle=", ".join(dict.fromkeys(shown.subtitle for shown in moved)),
        leaves=tuple(leaf for shown in moved for leaf in shown.leaves),
        floor=tuple(sorted(point for shown in moved for point in shown.floor)),
        wall=max(shown.wall for shown in moved),
        way=(min(across), max(across)),
        clear_way=None,
        top=max(shown.top for shown in moved),
        facts=tuple(
            dataclasses.replace(fact, label=f"{_name(door)}: {fact.label}")
            for (door, _), shown in zip(doors, moved, strict=True)
            for fact in shown.facts
        ),
        thing=said(*(piece for thing in things for piece in (*thing, "; ")))[:-1],
        ticks=(*(tick for tick in ticks if tick[1:] not in same), *same),
        scenery=Scenery(
            skirting=first.scenery.skirting,
            skirting_clear=(min(clear), max(clear)),
            brackets=tuple(at for shown in moved for at in shown.scenery.brackets),
            trims=tuple(trim for shown in moved for trim in shown.scenery.trims),
        ),
        drawing=_beside([shown.drawing for shown in moved]),
        all_open=False,
        openings_beside=tuple(shown.opening for shown in others),
    )


def _name(door: Door) -> str:
    """`Door study`."""
    return door.place[:1].upper() + door.place[1:]


def _moved(door: Door, shown: Shown) -> Shown:
    """What is shown of a door, carried to where it stands in the wall."""
    x = door.stands.origin[0]

    def across(line: Sequence[Flat]) -> tuple[Flat, ...]:
        return tuple((at + x, z) for at, z in line)

    scenery = shown.scenery
    left, right = scenery.skirting_clear
    return dataclasses.replace(
        shown,
        leaves=tuple(_leaf(door, leaf) for leaf in shown.leaves),
        opening=across(shown.opening),
        floor=across(shown.floor),
        way=(shown.way[0] + x, shown.way[1] + x),
        facts=tuple(_fact(fact, x) for fact in shown.facts),
        scenery=Scenery(
            skirting=scenery.skirting,
            skirting_clear=(left + x, right + x),
            brackets=tuple((at + x, y, z) for at, y, z in scenery.brackets),
            trims=tuple((across(line), near, far) for line, near, far in scenery.trims),
        ),
    )


def _leaf(door: Door, leaf: PageLeaf) -> PageLeaf:
    group = Group(name=leaf.name, placement=door.stands, parts=(), motion=leaf.motion)
    motion = stood(group, door.stands).motion
    return dataclasses.replace(leaf, x=leaf.x + door.stands.origin[0], motion=motion)


def _fact(fact: Fact, x: float) -> Fact:
    def at(point: Vector) -> Vector:
        return (point[0] + x, point[1], point[2])

    lines = tuple(
        Chalk(
            start=at(line.start),
            end=at(line.end),
            text=line.text,
            leaf=line.leaf,
            aside=line.aside,
        )
        for line in fact.chalk
    )
    return dataclasses.replace(fact, chalk=lines)


def _beside(drawings: Sequence[str]) -> str:
    """Drawings in one, from left to right, at one scale with their feet on one line."""
    sizes = []
    for drawing in drawings:
        box = ElementTree.fromstring(drawing).get("viewBox", "0 0 1 1").split()
        sizes.append((float(box[2]), float(box[3])))
    high = max(h for _, h in sizes)
    x, found = 0.0, []
    for drawing, (wide, own) in zip(drawings, sizes, strict=True):
        inner = drawing[drawing.index("<svg") + 4 :]
        found.append(
            f'<svg x="{x:.2f}" y="{high - own:.2f}" width="{wide:.2f}" height="{own:.2f}"{inner}'
        )
        x += wide + high * _GAP
    return (
        f'<svg xmlns="{_SVG}" viewBox="0 0 {x - high * _GAP:.2f} {high:.2f}">{"".join(found)}</svg>'
    )
