"""What would make a number come out as it is pinned: the sums behind it, run backwards."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from parametric.figures import Figure, Where, leaves

SAME = 1e-6
"""Two lengths no farther apart than this are one, mm."""
LEAST_SHARE = 0.4
"""A length is not offered at less than this share of what it is: it would be another thing.
Common practice, no source."""
NOT_WRITTEN = frozenset({"height", "width", "size"})
"""Last words of a figure's name that a maker does not write."""

Key = tuple[Where, float]
"""A written number: its line, and its value, by which two on one line are told apart."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """One written length that could be another, and what it would have to be, mm."""

    name: str
    where: Where
    now: float
    then: float


def ways_to(figure: Figure, wanted: float) -> tuple[Way, ...]:
    """Every chosen length that alone would make a number come out so, the least change first.

    Args:
        figure: the number as it works out.
        wanted: what it is pinned at, mm.
    """
    chosen: dict[Key, Figure] = {}
    for one in leaves(figure):
        if one.where is not None and one.name and one.origin == "chosen" and one.unit == "mm":
            chosen.setdefault((one.where, float(one)), one)
    found = [_way(figure, wanted, key, one) for key, one in chosen.items()]
    return tuple(
        sorted(
            (way for way in found if way is not None),
            key=lambda way: (abs(way.then - way.now), way.where, way.name),
        )
    )


def _way(figure: Figure, wanted: float, key: Key, one: Figure) -> Way | None:
    """The value of one length by the slope of the sum; None where the sum is not straight in it."""
    now = float(one)
    slope = _again(figure, {key: now + 1.0}) - float(figure)
    if math.isnan(slope) or abs(slope) < SAME:
        return None
    then = now + (wanted - float(figure)) / slope
    if then < now * LEAST_SHARE or not abs(_again(figure, {key: then}) - wanted) < SAME:
        return None
    assert one.name is not None
    assert one.where is not None
    return Way(name=_said(one.name), where=one.where, now=now, then=then)


def _said(name: str) -> str:
    """`lock rail` for `leaf A / lock rail / height`: as the line of the file calls it."""
    places = name.split(" / ")
    return places[-2] if len(places) > 2 and places[-1] in NOT_WRITTEN else places[-1]


def _again(value: float, changed: Mapping[Key, float]) -> float:
    """A sum worked out again with one written number changed; not a number where it cannot be."""
    if not isinstance(value, Figure):
        return float(value)
    if value.op is None:
        if value.where is None:
            return float(value)
        return changed.get((value.where, float(value)), float(value))
    args = [_again(arg, changed) for arg in value.args]
    match value.op, args:
        case "+", [a, b]:
            return a + b
        case "-", [a, b]:
            return a - b
        case "*", [a, b]:
            return a * b
        case "/", [a, b]:
            return a / b if b else math.nan
        case "neg", [a]:
            return -a
        case "same", [a]:
            return a
        case "largest", _:
            return max(args)
        case "smallest", _:
            return min(args)
        case _:
            # another curve than a straight line: no one length is offered for it
            return math.nan if args != [float(arg) for arg in value.args] else float(value)
