"""The most that can be sawn from one sheet, by every way of cutting it right across.

A cut may as well stand where pieces end that lie against one another: only such lengths and
widths are looked at. What is best from every smaller rectangle is worked out first, then
every first cut of the larger is tried.

Source: Gilmore and Gomory, The theory and computation of knapsack functions, Operations
Research 14 (1966) 1045-1074; places where pieces end after Herz, IBM Journal of Research and
Development 16 (1972) 462-469 (both from memory).
"""

from __future__ import annotations

import bisect
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

from parametric.trade.stock.laying import Kind
from parametric.trade.stock.spots import Spot, cut

if TYPE_CHECKING:
    import numpy as np
    from numpy.typing import NDArray


def places(
    counts: Mapping[int, int], room: int, mixed: int | None = None, most: int = 100_000
) -> list[int] | None:
    """Every length that pieces laid end to end can come to, and the room; None beyond `most`.

    `mixed`: of so many different sizes and no more; None is all there are.
    """
    found: dict[int, int] = {0: 0}
    for size, count in sorted(counts.items(), reverse=True):
        fresh: dict[int, int] = {}
        for end, sizes in found.items():
            if mixed is None or sizes < mixed:
                for at in range(end + size, min(room, end + count * size) + 1, size):
                    fresh[at] = min(sizes + 1, fresh.get(at, sizes + 1))
        for at, sizes in fresh.items():
            found[at] = min(sizes, found.get(at, sizes))
        if len(found) > most:
            return None
    return sorted({*found, room})


@dataclass(frozen=True, slots=True, kw_only=True)
class Grid:
    """Lengths and widths that are looked at; `every_cut` when no other could be better."""

    kinds: tuple[Kind, ...]
    xs: tuple[int, ...]
    ys: tuple[int, ...]
    every_cut: bool

    @property
    def work(self) -> int:
        """How many cuts of how many rectangles."""
        return len(self.xs) * len(self.ys) * (len(self.xs) + len(self.ys)) // 2


def grid(kinds: Sequence[Kind], long: int, wide: int, most_work: int) -> Grid | None:
    """For rectangles up to a size: as many places of cuts as there is time to try.

    None where even one size after another makes too many.
    """
    along, across = Counter[int](), Counter[int]()
    for kind in kinds:
        for a, b, _ in kind.lies():
            along[a] += kind.count
            across[b] += kind.count
    for mixed in (None, 3, 2, 1):
        xs = places(along, long, mixed, most_work // 100)
        ys = places(across, wide, mixed, most_work // 100)
        if xs and ys:
            made = Grid(kinds=tuple(kinds), xs=tuple(xs), ys=tuple(ys), every_cut=mixed is None)
            if made.work <= most_work:
                return made
    return None


class Best:
    """What the best cutting of every rectangle of a grid is worth, as often as one likes."""

    def __init__(self, made: Grid, values: Sequence[int]) -> None:
        import numpy as np

        self.grid, self.values = made, tuple(values)
        xs, ys = np.array(made.xs, dtype=np.int64), np.array(made.ys, dtype=np.int64)
        worth = np.zeros((len(xs), len(ys)), dtype=np.int64)
        for kind, value in zip(made.kinds, values, strict=True):
            for a, b, _ in kind.lies():
                i, j = int(np.searchsorted(xs, a)), int(np.searchsorted(ys, b))
                worth[i:, j:] = np.maximum(worth[i:, j:], value)
        halves = [_halves(ys, j) for j in range(len(ys))]
        for i in range(len(xs)):
            low, rest = _halves(xs, i)
            if len(low):
                worth[i] = np.maximum(worth[i], (worth[low] + worth[rest]).max(axis=0))
            row = worth[i]
            for j, (lower, upper) in enumerate(halves):
                if len(lower):
                    row[j] = max(row[j], (row[lower] + row[upper]).max())
                if j:
                    row[j] = max(row[j], row[j - 1])
            if i:
                worth[i] = np.maximum(worth[i], worth[i - 1])
        self.worth: NDArray[np.int64] = worth

    def of(self, long: int, wide: int) -> int:
        """What a rectangle is worth."""
        i, j = self.at(long, wide)
        return int(self.worth[i, j])

    def at(self, long: int, wide: int) -> tuple[int, int]:
        """The largest of the grid that a rectangle holds."""
        return (
            bisect.bisect_right(self.grid.xs, long) - 1,
            bisect.bisect_right(self.grid.ys, wide) - 1,
        )

    def cut_up(self, spot: Spot) -> Spot:
        """Cut a rectangle so that it is worth that, or more: a rip where rip and crosscut serve
        alike. One that lies between the places of the grid may hold more than the next below it.
        """
        worth = self.of(spot.long, spot.wide)
        if not worth:
            return spot
        for number, (kind, value) in enumerate(zip(self.grid.kinds, self.values, strict=True)):
            for a, b, turned in kind.lies():
                if value >= worth and a <= spot.long and b <= spot.wide:
                    own, _ = cut(spot, "rip", b)
                    own, _ = cut(own, "crosscut", a)
                    own.kind, own.turned = number, turned
                    return spot
        for y in self.grid.ys:
            if 0 < y < spot.wide:
                rest = self.of(spot.long, spot.wide - y)
                if self.of(spot.long, y) + rest >= worth:
                    return self._both(spot, *cut(spot, "rip", y))
        for x in self.grid.xs:
            if 0 < x < spot.long:
                rest = self.of(spot.long - x, spot.wide)
                if self.of(x, spot.wide) + rest >= worth:
                    return self._both(spot, *cut(spot, "crosscut", x))
        raise AssertionError("the best cutting of a rectangle is none of its cuttings")

    def _both(self, spot: Spot, first: Spot, second: Spot | None) -> Spot:
        self.cut_up(first)
        if second is not None:
            self.cut_up(second)
        return spot


def _halves(ends: NDArray[np.int64], at: int) -> tuple[NDArray[np.int64], NDArray[np.int64]]:
    """Where a length may be cut, up to its middle, and what the other part serves as."""
    import numpy as np

    last = int(np.searchsorted(ends, ends[at] // 2, side="right"))
    low = np.arange(1, last, dtype=np.int64)
    rest = np.searchsorted(ends, ends[at] - ends[low], side="right") - 1
    return low, rest.astype(np.int64)
