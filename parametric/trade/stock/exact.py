"""Sizes as whole millionths of a millimetre, so that what fits exactly fits.

A sixty-fourth of an inch is 396 875 of them. A kerf is added to every piece and once to what
it is sawn from; after that pieces lie edge to edge and no sum needs to think of the saw:

    |  piece  |k|  piece  |k|        2 pieces + 2 kerfs
    |       sheet         |k|        sheet + 1 kerf
"""

from __future__ import annotations

import math

PER_MM = 1_000_000
_LAST_BIT = 0.25


def piece_size(mm: float) -> int:
    """A piece's size, rounded down by less than a millionth of a millimetre."""
    return math.floor(float(mm) * PER_MM + _LAST_BIT)


def stock_size(mm: float) -> int:
    """The size of what is sawn, rounded up by less than a millionth of a millimetre.

    Example:
        >>> 3 * piece_size(2440 / 3) <= stock_size(2440.0)
        True
        >>> 64 * piece_size(25.4 / 64) == stock_size(25.4)
        True
    """
    return math.ceil(float(mm) * PER_MM - _LAST_BIT)


def in_mm(size: int) -> float:
    """Back in mm."""
    return size / PER_MM
