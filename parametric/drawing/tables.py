"""Ruled tables, and the widths their texts must keep."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.drawing.lettering import TEXT, Weight, width
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import (
    Anchor,
    Label,
    Primitive,
    Stroke,
    warning_triangle,
)
from parametric.units import Unit

_MARGIN = 1.2
"""Between a cell's text and the side of its column, mm."""
_BESIDE = (2.0, 1.6, 1.2)
"""What a column is wider than its widest text at least, mm, the first that all can have."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Column:
    """One column of a table: its heading, its width, how its cells stand."""

    head: str
    width: float
    anchor: Anchor = "left"


def fitted(
    columns: Sequence[Column],
    rows: Sequence[Sequence[str]],
    height: float = TEXT,
    *,
    most: float = 0.0,
) -> tuple[Column, ...]:
    """The same columns in the same width, each at least as wide as what stands in it.

    Fractions of an inch take more room than millimetres: what a column lacks, those that
    have more than they need give up, each in proportion; where that is not enough the table
    grows as wide as `most`. What is too much for all of them stays too wide.
    """
    more = max(0.0, most - sum(column.width for column in columns))
    texts = [
        max(width(column.head, height, "bold"), *(width(row[index], height) for row in rows))
        for index, column in enumerate(columns)
    ]
    for beside in _BESIDE:
        needs = [text + beside for text in texts]
        lack = sum(max(0.0, need - c.width) for c, need in zip(columns, needs, strict=True))
        spare = sum(max(0.0, c.width - need) for c, need in zip(columns, needs, strict=True))
        if lack == 0.0:
            return tuple(columns)
        if lack <= spare + more:
            given = min(1.0, lack / spare) if spare > 0.0 else 0.0
            return tuple(
                dataclasses.replace(c, width=max(need, c.width - given * max(0.0, c.width - need)))
                for c, need in zip(columns, needs, strict=True)
            )
    return tuple(columns)


def holds(columns: Sequence[Column], rows: Sequence[Sequence[str]], height: float = TEXT) -> bool:
    """Whether every text of some rows stands in its column."""
    return all(
        width(text, height) + _BESIDE[-1] <= column.width + 1e-6
        for row in rows
        for text, column in zip(row, columns, strict=True)
    )


def table_height(unit: Unit) -> float:
    """How high tables are lettered: fractions of an inch take the least there may be."""
    return TEXT if unit == "mm" else _LEAST


_LEAST = 2.4


@dataclass(frozen=True, slots=True, kw_only=True)
class Cell:
    """A text that must stay within a width: what the audit measures."""

    text: str
    room: float
    height: float
    weight: Weight


@dataclass(frozen=True, slots=True, kw_only=True)
class Table:
    """A ruled table without upright rules; `at` is the left end of its top rule.

    Rows named in `wrong` are bold and wear a triangle; every `band`-th rule is thicker.
    """

    at: Point
    columns: tuple[Column, ...]
    rows: tuple[tuple[str, ...], ...]
    title: str = ""
    height: float = TEXT
    pitch: float = 5.4
    margin: float = _MARGIN
    wrong: frozenset[int] = frozenset()
    band: int = 0
    ticked: bool = False
    view: str = ""

    @property
    def width(self) -> float:
        """Across, mm."""
        return sum(c.width for c in self.columns)

    @property
    def box(self) -> Box:
        """The table with its title, mm on paper."""
        x, y = self.at
        above = 1.6 + self.height if self.title else 0.0
        return Box(x, y - self.pitch * (len(self.rows) + 1), x + self.width, y + above)

    def cells(self) -> Iterator[tuple[Cell, Label]]:
        """Every cell and the text that stands in it, heading first."""
        heads = tuple(c.head for c in self.columns)
        for index, row in enumerate((heads, *self.rows)):
            left = self.at[0]
            base = self.at[1] - self.pitch * (index + 1) + (self.pitch - self.height) / 2
            bold = index == 0 or index - 1 in self.wrong
            weight: Weight = "bold" if bold else "regular"
            for column, text in zip(self.columns, row, strict=True):
                if text:
                    across = {
                        "left": left + self.margin,
                        "centre": left + column.width / 2,
                        "right": left + column.width - self.margin,
                    }[column.anchor]
                    yield (
                        Cell(
                            text=text,
                            room=column.width - self.margin,
                            height=self.height,
                            weight=weight,
                        ),
                        Label(
                            text=text,
                            at=(across, base),
                            height=self.height,
                            anchor=column.anchor,
                            weight=weight,
                            view=self.view,
                        ),
                    )
                left += column.width

    def primitives(self) -> Iterator[Primitive]:
        """Title, rules and texts."""
        x, y = self.at
        if self.title:
            yield Label(text=self.title, at=(x, y + 1.6), height=self.height, weight="bold")
        count = len(self.rows)
        for i in range(count + 2):
            down = y - self.pitch * i
            heavy = i in (0, count + 1) or (self.band > 0 and i > 1 and (i - 1) % self.band == 0)
            yield Stroke(
                layer="edge" if heavy else "table",
                points=((x, down), (x + self.width, down)),
                view=self.view,
            )
        for row in sorted(self.wrong):
            middle = y - self.pitch * (row + 1.5)
            yield from warning_triangle((x - 4.4, middle - 1.2))
        if self.ticked:
            for i in range(count):
                middle = y - self.pitch * (i + 1.5)
                box = Box(x - 4.6, middle - 1.5, x - 1.6, middle + 1.5)
                yield Stroke(layer="edge_fine", points=box.polygon, closed=True, view=self.view)
        for _, label in self.cells():
            yield label
