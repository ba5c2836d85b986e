"""Check bars: lines of a known length, both ways, that tell whether a page was printed true.

|------------------------ 100 ------------------------|   must measure 100; if not, do not use

A printer may stretch one way and not the other, so every page carries them both ways.

Source: common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Label, Stroke
from parametric.units import INCH, Unit

Way = Literal["across", "up"]

END = 1.5
"""Half the length of a bar's end strokes, mm."""
ROW = 7.0
"""From one bar to the next, mm, with what is lettered over it."""
_OFF = 1.1
"""From a bar to its words, mm."""
NO_FITTING = "Print at actual size, no fitting to the page."


@dataclass(frozen=True, slots=True, kw_only=True)
class Bar:
    """One bar: its length, mm, and that length as it is read off a rule."""

    length: float
    words: str

    @property
    def order(self) -> str:
        """What it asks of whoever prints the page."""
        return f"must measure {self.words}; if not, do not use"


MM_BAR = Bar(length=100.0, words="100 mm")
INCH_BAR = Bar(length=4 * float(INCH), words="4 in")
LONG_MM_BAR = Bar(length=500.0, words="500 mm")
LONG_INCH_BAR = Bar(length=20 * float(INCH), words="20 in")


def short_bars(unit: Unit) -> tuple[Bar, Bar]:
    """Both short bars, the one in the unit of the design first."""
    return (INCH_BAR, MM_BAR) if unit == "inch" else (MM_BAR, INCH_BAR)


def bars_for(unit: Unit, room: float) -> tuple[Bar, ...]:
    """Both short bars, and the long one in the unit of the design where the room, mm, holds it."""
    long = LONG_INCH_BAR if unit == "inch" else LONG_MM_BAR
    return (*short_bars(unit), *((long,) if long.length + 2 * END <= room else ()))


def rows_deep(count: int) -> float:
    """How much room some bars one beside the other take up, mm."""
    return END + ROW * (count - 1) + _OFF + TEXT * 1.35


def draw_bars(draft: Draft, bars: Sequence[Bar], at: Point, way: Way) -> None:
    """Bars one beside the other; `at` is the low left end of the room they take up.

    Those that lie across are stacked upwards, the last one lowest; those that stand up are
    set to the right, each with its words on its left, read from the right.
    """
    for index, bar in enumerate(reversed(bars) if way == "across" else bars):
        off = END + ROW * index
        if way == "across":
            x, y = at[0], at[1] + off
            ends: tuple[Point, Point] = ((x, y), (x + bar.length, y))
            strokes = [((px, y - END), (px, y + END)) for px, _ in ends]
            label = Label(text=bar.order, at=(x + 2.0, y + _OFF))
        else:
            x, y = at[0] + TEXT * 1.35 + _OFF + ROW * index, at[1]
            ends = ((x, y), (x, y + bar.length))
            strokes = [((x - END, py), (x + END, py)) for _, py in ends]
            label = Label(text=bar.order, at=(x - _OFF, y + 2.0), turned=90)
        draft.add(
            Stroke(layer="edge", points=ends),
            *(Stroke(layer="edge", points=stroke) for stroke in strokes),
            label,
        )
