"""How a shape with straight sides is set out: each corner by two sizes, each side, angle and diagonal.

 D ______ C
  |      |      A 0, 350   135 deg   to B 495
  |      |      ...
A '.     |      diagonals A-C, A-D, B-D ... check it
    '.___|
        B
"""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.cases.plan_shape import PlanSide
from parametric.figures import Figure, hypot, named
from parametric.names import LEAVES, join
from parametric.resolve.casework import Casework


@dataclass(frozen=True, slots=True, kw_only=True)
class SetOutCorner:
    """A corner: from the left end and from the low edge of what it is cut from, mm.

    `side` begins there and goes on to the next corner, `long` mm; `angle` is inside, deg.
    """

    letter: str
    along: Figure
    across: Figure
    angle: Figure
    side: str
    long: Figure

    @property
    def point(self) -> tuple[float, float]:
        """Where it is."""
        return float(self.along), float(self.across)


@dataclass(frozen=True, slots=True, kw_only=True)
class SettingOut:
    """A shape: of a board, or of a case from above; diagonals by the letters of their ends, mm."""

    name: str
    corners: tuple[SetOutCorner, ...]
    diagonals: tuple[tuple[str, Figure], ...]


def setting_out(name: str, sides: Sequence[PlanSide]) -> SettingOut:
    """A shape by its sides.

    Args:
        name: of the board or the case.
        sides: round to the left; their corners count from the lowest and the leftmost.
    """
    left = min(side.begins[0] for side in sides)
    low = min(side.begins[1] for side in sides)
    corners = []
    for letter, side in zip(LEAVES, sides, strict=False):
        x, y = side.begins[0] - left, side.begins[1] - low
        corners.append(
            SetOutCorner(
                letter=letter,
                along=named(join(name, f"corner {letter}", "along"), Figure(x)),
                across=named(join(name, f"corner {letter}", "across"), Figure(y)),
                angle=side.angle,
                side=side.word,
                long=side.length,
            )
        )
    return SettingOut(name=name, corners=tuple(corners), diagonals=tuple(_diagonals(name, corners)))


def _diagonals(name: str, corners: Sequence[SetOutCorner]) -> Iterator[tuple[str, Figure]]:
    count = len(corners)
    for (i, a), (k, b) in itertools.combinations(enumerate(corners), 2):
        if k - i in (1, count - 1):
            continue
        long = hypot(b.along - a.along, b.across - a.across)
        ends = f"{a.letter}–{b.letter}"
        yield ends, named(join(name, f"diagonal {a.letter} to {b.letter}"), long)


def setting_outs(casework: Casework | None) -> tuple[SettingOut, ...]:
    """Every case with a plan from above, outside, and each of its boards that is cut to a shape."""
    found = []
    for standing in casework.cases if casework else ():
        case = standing.case
        if case.plan is None:
            continue
        found.append(setting_out(case.name, case.plan.sides))
        found += [setting_out(board.name, board.sides) for board in case.boards if board.sides]
    return tuple(found)
