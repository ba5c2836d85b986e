"""The unlike shapes of a job, where a part finds its twin without being held against each of them.

Sizes within `SAME_SIZE` of one another are one size, so no digest says which parts are twins.
Instead all sizes of a part are added up, each with a weight of its own: twins' sums are as
good as the same, and only parts with such sums are compared size by size. The time taken
grows with the parts, not with the square of their kinds.
"""

from __future__ import annotations

import dataclasses
import math
from collections.abc import Iterator, Mapping
from typing import Any

from parametric.model import SAME_SIZE, Part, same_shape

_GOLDEN = (math.sqrt(5) - 1) / 2
_CELL = 0.01
"""Sums that fall in one stretch of this length, mm, are compared; the stretch is many times
longer than twins' sums can lie apart."""
_OFF = _CELL / math.e
"""Where stretches begin: at no round number, or twins would fall on either side of a border."""

_Cell = tuple[str, tuple[str, ...], int]


class KnownShapes:
    """Parts of unlike shapes, each with a label."""

    def __init__(self) -> None:
        self._cells: dict[_Cell, list[tuple[int, Part, str]]] = {}
        self._count = 0

    def find(self, part: Part) -> str | None:
        """The label of the first part kept that one piece would serve for too; None where none would."""
        same = [
            (order, label)
            for cell in _cells(part)
            for order, kept, label in self._cells.get(cell, ())
            if same_shape(kept, part)
        ]
        return min(same, key=lambda one: one[0])[1] if same else None

    def keep(self, part: Part, label: str) -> None:
        """Keep a part for its twins to find."""
        cell, *_ = _cells(part)
        self._cells.setdefault(cell, []).append((self._count, part, label))
        self._count += 1


def _cells(part: Part) -> list[_Cell]:
    """Where a twin of this part may be kept: its own place first."""
    total, count = 0.0, 0
    for count, size in enumerate(_sizes((part.blank, part.cuts)), 1):
        total += size * (1 + count * _GOLDEN % 1)
    apart = 2 * SAME_SIZE * count
    own, low, high = (
        math.floor((place - _OFF) / _CELL) for place in (total, total - apart, total + apart)
    )
    kinds = tuple(type(cut).__name__ for cut in part.cuts)
    numbers = dict.fromkeys((own, *range(low, high + 1)))
    return [(part.material.look, kinds, number) for number in numbers]


def _sizes(value: Any) -> Iterator[float]:
    """Every number of a thing of the model, in order."""
    if isinstance(value, (int, float)) and not isinstance(value, bool):
        yield float(value)
    elif dataclasses.is_dataclass(value):
        for field in dataclasses.fields(value):
            yield from _sizes(getattr(value, field.name))
    elif isinstance(value, Mapping):
        for key in sorted(value):
            yield from _sizes(value[key])
    elif isinstance(value, (tuple, list)):
        for one in value:
            yield from _sizes(one)
