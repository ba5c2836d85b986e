"""The bookcase in the far room, box by box: for the page and for pictures the same books."""

from __future__ import annotations

from collections.abc import Iterator

from parametric.catalog.room import ROOM

Box = tuple[float, float, float, float, float, float]
"""Its middle (x from the middle of the doors, y from the floor, z) and its size, m."""


def boards() -> tuple[Box, ...]:
    """Shelves, then uprights."""
    case = ROOM.bookcase
    z = _middle()
    high = case.shelves * case.pitch
    bay = case.wide / case.bays
    shelves = [
        (0.0, case.foot + i * case.pitch, z, case.wide, case.board, case.deep)
        for i in range(case.shelves + 1)
    ]
    uprights = [
        (i * bay - case.wide / 2, high / 2 + 0.04, z, case.upright, high + 0.1, case.deep)
        for i in range(case.bays + 1)
    ]
    return (*shelves, *uprights)


def books() -> tuple[tuple[Box, ...], ...]:
    """The books of each colour of spine."""
    case = ROOM.bookcase
    random = dice(case.seed)
    bay = case.wide / case.bays
    found: list[list[Box]] = [[] for _ in ROOM.spines]
    for shelf in range(case.shelves):
        foot = case.foot + case.board / 2 + shelf * case.pitch
        for n in range(case.bays):
            x = n * bay - case.wide / 2 + 0.03
            end = x + bay - 0.07 - next(random) * 0.3
            while x < end:
                wide, high = 0.02 + next(random) * 0.034, 0.18 + next(random) * 0.12
                spine = int(next(random) * len(ROOM.spines))
                z = _middle() - 0.02 + next(random) * 0.02
                found[spine].append((x + wide / 2, foot + high / 2, z, wide * 0.95, high, 0.2))
                x += wide
    return tuple(tuple(own) for own in found)


def dice(seed: int) -> Iterator[float]:
    """Numbers from 0 to 1 that are the same every time: Park and Miller's, 1988, with 48271."""
    state = seed
    while True:
        state = state * 48271 % 2147483647
        yield state / 2147483647


def _middle() -> float:
    return -ROOM.back + ROOM.bookcase.deep / 2 + 0.01
