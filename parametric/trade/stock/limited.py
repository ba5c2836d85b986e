"""The most that can be sawn from one sheet with no more pieces of a kind than there are.

What is best without that limit is worth at least as much: a mark is set there, or where it
matters, and every mix of pieces that can still reach it is followed; a part that cannot bring
its share of the mark is left.
"""

from __future__ import annotations

from dataclasses import dataclass

from parametric.trade.stock.guillotine import Best
from parametric.trade.stock.spots import Spot, Way, cut

Mix = tuple[int, ...]
"""How many pieces of each kind."""
MOST_MIXES = 60_000
"""So many mixes of pieces are kept, and then a search for the best of them is given up."""


@dataclass(frozen=True, slots=True)
class _Join:
    """How a mix comes about: two parts, each with its own mix and its mark."""

    way: Way
    at: int
    first: tuple[Mix, int]
    second: tuple[Mix, int]


class TooManyMixesError(Exception):
    """A search that would take too long."""


class Limited:
    """Mixes of pieces that a sheet can be cut into, by the mark they reach."""

    def __init__(self, best: Best) -> None:
        self._best, self._grid = best, best.grid
        self._known: dict[tuple[int, int, int], dict[Mix, _Join | None]] = {}
        self._kept = 0

    def most(self, long: int, wide: int) -> int:
        """What a sheet is worth at most.

        Raises:
            TooManyMixesError: more mixes than there is time for.
        """
        mark = self._best.of(long, wide)
        while mark > 0:
            if reached := self._mixes(long, wide, mark):
                return max(map(self._worth, reached))
            self._known.clear()
            mark -= 1
        return 0

    def cut_up(self, spot: Spot, mark: int) -> bool:
        """Cut a sheet so that it is worth a mark; False when nothing is.

        Raises:
            TooManyMixesError: more mixes than there is time for.
        """
        reached = self._mixes(spot.long, spot.wide, mark)
        if reached:
            self._follow(spot, max(reached, key=self._worth), mark)
        return bool(reached)

    def _follow(self, spot: Spot, mix: Mix, mark: int) -> None:
        join = self._mixes(spot.long, spot.wide, mark)[mix]
        if join is not None:
            parts = cut(spot, join.way, join.at)
            for part, (own, share) in zip(parts, (join.first, join.second), strict=True):
                if part is not None:
                    self._follow(part, own, share)
        elif any(mix):
            kind = next(number for number, count in enumerate(mix) if count)
            fits = (lie for lie in self._grid.kinds[kind].lies() if _holds(spot, lie))
            a, b, turned = next(fits)
            first, _ = cut(spot, "rip", b)
            piece, _ = cut(first, "crosscut", a)
            piece.kind, piece.turned = kind, turned

    def _worth(self, mix: Mix) -> int:
        return sum(n * v for n, v in zip(mix, self._best.values, strict=True))

    def _mixes(self, long: int, wide: int, mark: int) -> dict[Mix, _Join | None]:
        """Every mix of pieces of a rectangle that is worth the mark, and how it comes about."""
        i, j = self._best.at(long, wide)
        long, wide, mark = self._grid.xs[i], self._grid.ys[j], max(0, mark)
        key = (long, wide, mark)
        if key in self._known:
            return self._known[key]
        none = (0,) * len(self._grid.kinds)
        found: dict[Mix, _Join | None] = {none: None} if mark == 0 else {}
        for number, kind in enumerate(self._grid.kinds):
            if kind.count and kind.fits(long, wide) and self._best.values[number] >= mark:
                found[*none[:number], 1, *none[number + 1 :]] = None
        for y in self._grid.ys[1:]:
            if 2 * y <= wide:
                self._join("rip", y, (long, y), (long, wide - y), mark, found)
        for x in self._grid.xs[1:]:
            if 2 * x <= long:
                self._join("crosscut", x, (x, wide), (long - x, wide), mark, found)
        self._known[key] = found
        return found

    def _join(
        self,
        way: Way,
        at: int,
        one: tuple[int, int],
        other: tuple[int, int],
        mark: int,
        found: dict[Mix, _Join | None],
    ) -> None:
        a, b = self._best.of(*one), self._best.of(*other)
        if a + b < mark:
            return
        firsts = self._mixes(*one, mark - b)
        seconds = self._mixes(*other, mark - a) if firsts else {}
        for first in firsts:
            for second in seconds:
                mix = tuple(m + n for m, n in zip(first, second, strict=True))
                if mix not in found and self._worth(mix) >= mark and self._is_there(mix):
                    found[mix] = _Join(way, at, (first, mark - b), (second, mark - a))
                    self._kept += 1
                    if self._kept > MOST_MIXES:
                        raise TooManyMixesError

    def _is_there(self, mix: Mix) -> bool:
        return all(n <= kind.count for n, kind in zip(mix, self._grid.kinds, strict=True))


def _holds(spot: Spot, lie: tuple[int, int, bool]) -> bool:
    return lie[0] <= spot.long and lie[1] <= spot.wide
