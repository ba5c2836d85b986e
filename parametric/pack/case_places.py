"""Where casework stands in the room, and what its fronts are called."""

from __future__ import annotations

import itertools
import re

from parametric.model import Group, Placement
from parametric.resolve.casework import Casework
from parametric.resolve.leaf import Leaf
from parametric.resolve.opening import Opening
from parametric.trade.drawn_sizes import room_place
from parametric.writers.case_words import CABINET_WORDS as SAID

Corner = tuple[float, float, float]
HERE = Placement()


class CaseNiche:
    """An opening that casework stands in, in its own wall, whose frame is `room`.

    `place` is what its numbers begin with, "" where there is one.
    """

    def __init__(self, room: Placement, opening: Opening, place: str) -> None:
        self.room, self.opening, self.place = room, opening, place
        self.begins = room.origin[0]

    @property
    def turned(self) -> bool:
        """Whether its wall runs another way than the first."""
        return self.room.x != HERE.x

    def outline(self) -> tuple[tuple[float, float], ...]:
        """From the left foot up, across the head where the ceiling was read, and down."""
        outline = self.opening.outline()
        half = len(outline) // 2
        (left, low), (right, high) = outline[half - 1], outline[half]
        ceiling = {place: float(z) for place, z in self.opening.ceiling.items()}
        head = [(left, ceiling.get("left", low)), (right, ceiling.get("right", high))]
        if "middle" in ceiling and not self.opening.slopes:
            head.insert(1, ((left + right) / 2, ceiling["middle"]))
        points = (*outline[: half - 1], *head, *outline[half + 1 :])
        return tuple((x + self.shift, z) for x, z in points)

    def floor_line(self) -> tuple[tuple[float, float], ...]:
        """The floor from left to right."""
        return tuple((x + self.shift, z) for x, z in self.opening.floor_line())

    @property
    def middle(self) -> float:
        """How far right its middle is in the room, mm."""
        return self.room.point((float(self.opening.widest) / 2, 0.0, 0.0))[0]

    @property
    def shift(self) -> float:
        """How far right its zero stands; along another wall all is told in that wall's frame."""
        return 0.0 if self.turned else self.begins


def niches_of(casework: Casework) -> tuple[CaseNiche, ...]:
    """Every opening that cabinets stand in, by its middle from left to right."""
    found: dict[tuple[float, ...], CaseNiche] = {}
    for case in casework.cases:
        key = tuple(round(v, 3) for v in (*case.room.origin, *case.room.x))
        found.setdefault(key, CaseNiche(case.room, case.opening, room_place(casework, case)))
    return tuple(sorted(found.values(), key=lambda one: one.middle))


def box_round(group: Group) -> tuple[Corner, Corner]:
    """The upright box round a group, shut, in the room."""
    return _box(group, group.placement)


def own_box(group: Group) -> tuple[Corner, Corner]:
    """The box round a group in its own frame."""
    return _box(group, HERE)


def _box(group: Group, frame: Placement) -> tuple[Corner, Corner]:
    corners = [
        frame.point(part.placement.point(local))
        for part in group.parts
        for local in itertools.product(
            (0.0, float(part.blank.length)),
            (0.0, float(part.blank.width)),
            (0.0, float(part.blank.thickness)),
        )
    ]
    low, high = ([pick(c[i] for c in corners) for i in range(3)] for pick in (min, max))
    return (low[0], low[1], low[2]), (high[0], high[1], high[2])


def plainly(name: str, *, number: bool = True) -> str:
    """`cabinet outer 1` as a heading: `Cabinet outer`, with its number where it is one of several."""
    word = name if number else re.sub(r" \d+$", "", name)
    return word[:1].upper() + word[1:]


def front_name(leaf: Leaf) -> str:
    """`Door A`, `Flap B`, `Drawer E`."""
    return SAID[front_kind(leaf)].format(leaf.letter)


def front_kind(leaf: Leaf) -> str:
    """What a front is: a door, a flap, a drawer's, or one that is fixed."""
    if leaf.hung.flap is not None:
        return "flap"
    if leaf.hung.swing is not None:
        return "door"
    return "drawer" if leaf.hung.motion else "front"
