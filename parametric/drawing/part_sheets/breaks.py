"""Long parts drawn short: plain runs are broken out, longest first, until the part fits.

What is left stays at true scale, so a broken part is a row of stretches, each a view of its
own. First the runs without any cut give way; then those where a cut goes on unchanged.
"""

from __future__ import annotations

import itertools
from collections.abc import Sequence
from dataclasses import dataclass

PLAIN = 8.0
"""Plain wood that stays on either side of a cut, mm on paper."""
GAP = 4.0
"""Between the two ends of a break, mm on paper."""
_LEAST = 6.0
"""A break that saves less is not worth its two waves, mm on paper."""
_DIGITS = 6


@dataclass(frozen=True, slots=True, kw_only=True)
class Stretch:
    """A run that is drawn whole, mm along the part, and where along = 0 would lie on paper."""

    low: float
    high: float
    zero: float

    def holds(self, along: float) -> bool:
        """Whether a place along the part is drawn here."""
        return self.low - 1e-6 <= along <= self.high + 1e-6


@dataclass(frozen=True, slots=True, kw_only=True)
class Lie:
    """How a part lies along the sheet: its stretches from left to right, and the scale."""

    scale: float
    stretches: tuple[Stretch, ...]

    def index(self, along: float) -> int:
        """Which stretch a place is drawn in; the nearest where a break has swallowed it."""
        for i, stretch in enumerate(self.stretches):
            if stretch.holds(along):
                return i
        off = [min(abs(along - s.low), abs(along - s.high)) for s in self.stretches]
        return off.index(min(off))

    def x(self, along: float) -> float:
        """A place along the part, on paper."""
        stretch = self.stretches[self.index(along)]
        return stretch.zero + min(max(along, stretch.low), stretch.high) / self.scale

    @property
    def left(self) -> float:
        """Where it begins on paper."""
        first = self.stretches[0]
        return first.zero + first.low / self.scale

    @property
    def right(self) -> float:
        """Where it ends on paper."""
        last = self.stretches[-1]
        return last.zero + last.high / self.scale

    @property
    def breaks(self) -> int:
        """How many times it is broken."""
        return len(self.stretches) - 1


def lie_along(
    ends: tuple[float, float],
    stops: Sequence[float],
    cut: Sequence[tuple[float, float]],
    *,
    scale: float,
    left: float,
    room: float,
) -> Lie | None:
    """Lay a part along the sheet, broken where it must be; None when it is still too long.

    Args:
        ends: where it begins and ends, mm along.
        stops: every place along it where something begins or ends.
        cut: the runs that a cut goes along.
        scale: mm of the part to one of paper.
        left: where it begins on paper, mm.
        room: what there is for it on paper, mm.
    """
    places = sorted({round(s, _DIGITS) for s in (*ends, *stops) if ends[0] <= s <= ends[1]})
    # A break must leave its plain wood and swallow enough to be worth its waves.
    runs = [
        (low, high)
        for low, high in itertools.pairwise(places)
        if (high - low) / scale - 2 * PLAIN - GAP > _LEAST
    ]

    def plain(run: tuple[float, float]) -> bool:
        middle = (run[0] + run[1]) / 2
        return not any(low < middle < high for low, high in cut)

    runs.sort(key=lambda run: (not plain(run), run[0] - run[1], run[0]))
    need = (ends[1] - ends[0]) / scale
    broken: list[tuple[float, float]] = []
    for low, high in runs:
        if need <= room:
            break
        gone = min((high - low) / scale - 2 * PLAIN - GAP, max(need - room, _LEAST))
        # What is left of the run stands evenly on both sides of the break.
        keep = ((high - low) - (gone + GAP) * scale) / 2
        broken.append((low + keep, high - keep))
        need -= gone
    if need > room + 1e-9:
        return None
    return Lie(scale=scale, stretches=tuple(_stretches(ends, sorted(broken), scale, left)))


def _stretches(
    ends: tuple[float, float], broken: Sequence[tuple[float, float]], scale: float, left: float
) -> list[Stretch]:
    found = []
    at, low = left, ends[0]
    for gone_from, gone_to in (*broken, (ends[1], ends[1])):
        found.append(Stretch(low=low, high=gone_from, zero=at - low / scale))
        at += (gone_from - low) / scale + GAP
        low = gone_to
    return found


def kept(
    points: Sequence[tuple[float, float]], closed: bool, low: float, high: float
) -> list[tuple[tuple[tuple[float, float], ...], bool]]:
    """What of an outline lies between two places along: whole, or as open paths."""
    if all(low - 1e-9 <= x <= high + 1e-9 for x, _ in points):
        return [(tuple(points), closed)]
    ring = list(points) + (list(points[:1]) if closed else [])
    paths: list[list[tuple[float, float]]] = []
    for a, b in itertools.pairwise(ring):
        piece = _clipped(a, b, low, high)
        if piece is None:
            continue
        if paths and paths[-1][-1] == piece[0]:
            paths[-1].append(piece[1])
        else:
            paths.append(list(piece))
    if closed and len(paths) > 1 and paths[-1][-1] == paths[0][0]:
        paths[0] = paths.pop() + paths[0][1:]
    return [(tuple(path), False) for path in paths]


def _clipped(
    a: tuple[float, float], b: tuple[float, float], low: float, high: float
) -> tuple[tuple[float, float], tuple[float, float]] | None:
    (ax, ay), (bx, by) = a, b
    if max(ax, bx) < low or min(ax, bx) > high:
        return None

    def at(x: float) -> tuple[float, float]:
        return (x, ay + (by - ay) * (x - ax) / (bx - ax))

    start, end = a, b
    if ax < low:
        start = at(low)
    elif ax > high:
        start = at(high)
    if bx < low:
        end = at(low)
    elif bx > high:
        end = at(high)
    return None if start == end else (start, end)
