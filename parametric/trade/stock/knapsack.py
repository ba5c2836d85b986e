"""What is best sawn from one length: an exact search over whole sizes and whole values."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

MOST_STEPS = 20_000
"""After so many steps the search gives what it has, and what no search could beat."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Filling:
    """How many of each size, what they are worth, and what nothing can be worth more than."""

    counts: tuple[int, ...]
    value: int
    at_most: int


def best_filling(
    sizes: Sequence[int], values: Sequence[int], most: Sequence[int], room: int
) -> Filling:
    """The most valuable pieces that lie in a room one after another.

    Depth first, the most value for its size first; a branch is left when even the room cut
    up at the best rate left could not beat what is found.

    Args:
        sizes: of each kind of piece, 1 or more.
        values: of each kind; kinds worth nothing are left out.
        most: how many of each there are.
        room: what they lie in.

    Source: branch and bound for the bounded knapsack, with Dantzig's bound; Martello and
    Toth, Knapsack Problems, 1990, ch. 3 (from memory).
    """
    kinds = sorted(
        (i for i in range(len(sizes)) if values[i] > 0 and most[i] > 0 and sizes[i] <= room),
        key=lambda i: (-values[i] / sizes[i], -sizes[i], i),
    )
    size = [sizes[i] for i in kinds]
    value = [values[i] for i in kinds]
    limit = [most[i] for i in kinds]
    smallest = [0] * (len(kinds) + 1)
    for at in range(len(kinds) - 1, -1, -1):
        smallest[at] = min(size[at], smallest[at + 1] or size[at])
    best, best_counts = 0, [0] * len(kinds)
    counts = [0] * len(kinds)
    at, left, worth, steps = 0, room, 0, 0
    at_most = _could_be(size, value, limit, 0, room)
    while True:
        # fill on from here
        while at < len(kinds) and left >= smallest[at]:
            steps += 1
            if worth + _could_be(size, value, limit, at, left) <= best:
                break
            counts[at] = min(limit[at], left // size[at])
            left -= counts[at] * size[at]
            worth += counts[at] * value[at]
            at += 1
        if worth > best:
            best, best_counts = worth, counts[:]
        if steps > MOST_STEPS:
            break
        # take one piece back
        at -= 1
        while at >= 0 and counts[at] == 0:
            at -= 1
        if at < 0:
            at_most = best
            break
        counts[at] -= 1
        left += size[at]
        worth -= value[at]
        at += 1
        for later in range(at, len(kinds)):
            counts[later] = 0
    found = [0] * len(sizes)
    for i, count in zip(kinds, best_counts, strict=True):
        found[i] = count
    return Filling(counts=tuple(found), value=best, at_most=max(best, at_most))


def _could_be(size: list[int], value: list[int], limit: list[int], at: int, left: int) -> int:
    """What a room is worth at most, were the last piece cut up; rounded up."""
    worth = 0
    for i in range(at, len(size)):
        whole = limit[i] * size[i]
        if whole >= left:
            return worth - (-left * value[i] // size[i])
        left -= whole
        worth += limit[i] * value[i]
    return worth
