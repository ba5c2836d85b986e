r"""Stacked fractions: how a length in inches is lettered beside a dimension line.

A text stays as it is said, "29-13/16 pull"; only a label that is `stacked` sets its
fractions one numeral over the other, the bar at the middle of the whole number:

        13
    29 ----  pull
        16

Source: sizes from common practice of US shop drawings, no source; the level bar from
ASME Y14.2 (lettering), from memory.
"""

from __future__ import annotations

import functools
import re
from dataclasses import dataclass

from parametric.drawing.lettering import Extent, Weight, extent, width

NUMERAL = 0.75
"""Height of a stacked numeral, in heights of capitals."""
TALL = 1.65
"""Height of the whole stack, likewise."""
GAP = 0.3
"""From the whole number to its fraction, likewise."""
BAR = 0.18
"""Thickness of the bar, mm."""
_OVERHANG = 0.12
"""How far the bar passes the wider numeral, in heights of capitals."""
_FRACTION = re.compile(
    r"(?:(?<=\d)(?P<joint>-)|(?<![\d/.]))(?P<top>\d{1,2})/(?P<bottom>\d{1,2})(?![\d/.])"
)
_HALVINGS = frozenset({2, 4, 8, 16, 32, 64})
"""What a rule's inch is divided in; nothing else is taken for a fraction of one."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Run:
    """Letters in a row: where they begin along the base line and over it, and how high."""

    text: str
    along: float
    up: float
    height: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Stack:
    """One fraction: two numerals and the level bar between them; `joint` stood before it."""

    joint: str
    top: Run
    bottom: Run
    start: float
    end: float
    up: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Set:
    """A text as set: its parts in the order they are read, and the ink of the whole."""

    parts: tuple[Run | Stack, ...]
    ink: Extent


@functools.lru_cache(maxsize=4096)
def set_stacked(text: str, height: float, weight: Weight = "regular") -> Set:
    """Set a line of text with its fractions stacked.

    Args:
        text: as it is said, "29-13/16".
        height: of capitals, mm.
        weight: regular or bold.
    """
    parts: list[Run | Stack] = []
    along, at = 0.0, 0
    below = above = 0.0

    def run(words: str) -> None:
        nonlocal along, below, above
        if words:
            ink = extent(words, height, weight)
            parts.append(Run(text=words, along=along, up=0.0, height=height))
            along += ink.width
            below, above = max(below, ink.below), max(above, ink.above)

    for found in _FRACTION.finditer(text):
        if int(found["bottom"]) not in _HALVINGS or int(found["top"]) >= int(found["bottom"]):
            continue
        run(text[at : found.start()])
        before = text[: found.start()]
        close = bool(found["joint"]) or (before != "" and not before.endswith((" ", "(")))
        stack, end = _stack(found, along + (GAP * height if close else 0.0), height, weight)
        parts.append(stack)
        along, at = end, found.end()
        reach = TALL / 2 * height
        below, above = max(below, reach - height / 2), max(above, reach + height / 2)
    run(text[at:])
    return Set(parts=tuple(parts), ink=Extent(width=along, below=below, above=above))


def _stack(
    found: re.Match[str], start: float, height: float, weight: Weight
) -> tuple[Stack, float]:
    """One fraction from a place on; where it ends."""
    small = NUMERAL * height
    widths = [width(found[name], small, weight) for name in ("top", "bottom")]
    end = start + max(widths) + 2 * _OVERHANG * height
    middle, bar = (start + end) / 2, height / 2
    reach = TALL / 2 * height
    top, bottom = (
        Run(text=found[name], along=middle - wide / 2, up=up, height=small)
        for name, wide, up in zip(
            ("top", "bottom"), widths, (bar + reach - small, bar - reach), strict=True
        )
    )
    joint = found["joint"] or ""
    return Stack(joint=joint, top=top, bottom=bottom, start=start, end=end, up=bar), end
