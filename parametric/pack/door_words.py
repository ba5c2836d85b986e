"""What a client calls the doors of a job, from how many there are, where they stand, how they move."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Literal

from parametric.model import Slide, Turn
from parametric.resolve.door import Door
from parametric.resolve.leaf import Leaf
from parametric.trade.standing import comes_towards, first_to_open
from parametric.writers.client_page import Amount, Saying, said
from parametric.writers.page_words import DOOR_WORDS

Moves = Literal["slide", "swing", "fold", "draw"]
_COUNTED = (
    *("No", "One", "Two", "Three", "Four", "Five", "Six", "Seven", "Eight", "Nine", "Ten"),
    *("Eleven", "Twelve", "Thirteen", "Fourteen", "Fifteen", "Sixteen", "Seventeen"),
    *("Eighteen", "Nineteen"),
)
_TENS = ("Twenty", "Thirty", "Forty", "Fifty", "Sixty", "Seventy", "Eighty", "Ninety")
_MANY = "Many"
_NTH = ("First", "Second", "Third", "Fourth", "Fifth", "Sixth", "Seventh", "Eighth", "Ninth")
_SAME = 1e-6
"""Sizes no farther apart than this are one size, mm."""
_SLOT = re.compile(r"\{(\d)\}")


def filled(words: str, *pieces: str | Amount) -> Saying:
    """Words with the job's numbers in their places: `{0} wide, {1} high`."""
    found: list[str | Amount] = []
    for index, text in enumerate(_SLOT.split(words)):
        found.append(pieces[int(text)] if index % 2 else text)
    return said(*found)


def counted(number: int) -> str:
    """`Two`; a hundred or more are many, for a client's page has no number that is no size.

    Example:
        >>> counted(16), counted(42)
        ('Sixteen', 'Forty-two')
    """
    if number < len(_COUNTED):
        return _COUNTED[number]
    tens, ones = divmod(number, 10)
    if tens > 9:
        return _MANY
    return _TENS[tens - 2] + (f"-{_COUNTED[ones].lower()}" if ones else "")


def in_words(which: str) -> str:
    """A door's name within a sentence: `left door`."""
    return which[:1].lower() + which[1:]


@dataclass(frozen=True, slots=True, kw_only=True)
class DoorNames:
    """How the doors of one job are spoken of.

    `moves` is how they open; `many` is 1, 2 or n, as the tables of words have it; `halves`
    that two stand one over the other; `fronts` that they are those of a case; `which` names
    each leaf, in their order.
    """

    moves: Moves
    count: int
    halves: bool
    fronts: bool
    which: tuple[str, ...]

    @property
    def many(self) -> str:
        """The key of a sentence about one, two or more of them, or the two halves of one."""
        if self.halves:
            return "halves"
        return str(self.count) if self.count < 3 else "n"

    @property
    def one(self) -> str:
        """The key of a sentence that knows only one and several; two halves are one door."""
        return "1" if self.count == 1 or self.halves else "n"

    @property
    def subtitle(self) -> str:
        """`Sliding pair`."""
        if self.halves:
            return DOOR_WORDS["halves"]
        if self.fronts:
            return DOOR_WORDS[f"fronts {self.one}"].format(counted(self.count))
        return DOOR_WORDS[f"{self.moves} {self.many}"].format(counted(self.count))


def door_names(door: Door) -> DoorNames:
    """How its doors are spoken of."""
    return DoorNames(
        moves=moves(door),
        count=len(door.leaves),
        halves=_halves(door),
        fronts=door.hanging.case is not None,
        which=_which(door),
    )


def moves(door: Door) -> Moves:
    """Slide, swing, or both at once; of drawers alone, draw out."""
    steps = [step for leaf in door.leaves for step in leaf.hung.motion]
    turns = any(isinstance(step, Turn) for step in steps)
    if door.hanging.case is not None:
        return "swing" if turns else "draw"
    slides = any(isinstance(step, Slide) for step in steps)
    several = any(
        sum(isinstance(step, Turn) for step in leaf.hung.motion) > 1 for leaf in door.leaves
    )
    if turns and (slides or several):
        return "fold"
    return "swing" if turns else "slide"


def alike(door: Door) -> bool:
    """Whether all its leaves are of one size."""
    first = door.leaves[0]
    return all(
        abs(float(leaf.width - first.width)) < _SAME
        and abs(float(leaf.height - first.height)) < _SAME
        for leaf in door.leaves
    )


def _halves(door: Door) -> bool:
    """Two leaves of one door, one over the other."""
    if len(door.leaves) != 2 or door.hanging.case is not None:
        return False
    a, b = door.leaves
    return abs(float(a.hung.left - b.hung.left)) < _SAME < abs(float(a.hung.foot - b.hung.foot))


def _which(door: Door) -> tuple[str, ...]:
    count = len(door.leaves)
    if count == 1:
        return (DOOR_WORDS["only"],)
    if door.hanging.case is not None:
        return tuple(DOOR_WORDS[_front(leaf)].format(leaf.letter) for leaf in door.leaves)
    if _halves(door):
        top = max(float(leaf.hung.foot) for leaf in door.leaves)
        return tuple(
            DOOR_WORDS["upper" if float(leaf.hung.foot) == top else "lower"] for leaf in door.leaves
        )
    order = sorted(range(count), key=lambda n: float(door.leaves[n].hung.left))
    found = [""] * count
    for rank, index in enumerate(order):
        found[index] = _place(rank, count)
    return tuple(found)


def _front(leaf: Leaf) -> str:
    """What a front of a case is."""
    if leaf.hung.flap is not None:
        return "flap"
    return "drawer" if leaf.hung.swing is None else "door"


def _place(rank: int, count: int) -> str:
    if rank == 0:
        return DOOR_WORDS["left"]
    if rank == count - 1:
        return DOOR_WORDS["right"]
    if count == 3:
        return DOOR_WORDS["middle"]
    return DOOR_WORDS["nth"].format(_NTH[rank] if rank < len(_NTH) else str(rank + 1))


def label(door: Door, leaf: Leaf) -> str:
    """`Left door, in front`; `Right door, hung on its right`."""
    names = door_names(door)
    which = names.which[door.leaves.index(leaf)]
    how = _how(door, leaf, names.moves)
    return DOOR_WORDS["which and how"].format(which, how) if how else which


def _how(door: Door, leaf: Leaf, moves: Moves) -> str:
    """By what one leaf is told from the others."""
    if moves == "fold":
        return DOOR_WORDS["folds"]
    if leaf.hung.flap is not None:
        return DOOR_WORDS["lifts up" if leaf.hung.flap.side == "top" else "drops down"]
    side = leaf.hung.side_of("hinge") or leaf.hung.side_of("pivot")
    if side is not None:
        first = first_to_open(door)
        hung = DOOR_WORDS[f"hung {side}"]
        if first is None or first.name != leaf.name:
            return hung
        return DOOR_WORDS["which and how"].format(hung, DOOR_WORDS["opens first"])
    if door.hanging.case is not None:
        return DOOR_WORDS["drawn out"]
    planes = sorted({float(plane) for plane in door.hanging.planes})
    if len(planes) < 2:
        return ""
    plane = float(leaf.hung.plane)
    if plane == planes[-1]:
        return DOOR_WORDS["in front"]
    return DOOR_WORDS["behind" if plane == planes[0] else "between"]


def towards(door: Door) -> bool | None:
    """Whether its leaves swing towards whoever stands before them; None where none swings."""
    turning = [
        leaf for leaf in door.leaves if any(isinstance(step, Turn) for step in leaf.hung.motion)
    ]
    return comes_towards(turning[0]) if turning else None


def hung_on(door: Door) -> Literal["left", "right"]:
    """The side by which a single leaf is hung."""
    hung = door.leaves[0].hung
    return hung.side_of("hinge") or hung.side_of("pivot") or "left"
