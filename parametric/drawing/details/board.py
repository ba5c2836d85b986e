"""A detail on a board of its own: drawn and measured before it has a number and a place.

    +-----------+
    |  drawing  |      (n)  Title
    +-----------+           scale, condition

Once its sheet is packed it is carried to where it stands; nothing is drawn twice.
"""

from __future__ import annotations

import dataclasses
from dataclasses import dataclass
from typing import Literal, assert_never

from parametric.drawing.dimensions import Dimension, Leader, Ordinate
from parametric.drawing.draft import Draft
from parametric.drawing.plane import Box, Point, Polygon, around_boxes
from parametric.drawing.primitives import Arc, Circle, Fill, Label, Stroke, reach
from parametric.drawing.sheet import Element, Hatch, Paper, View, primitives
from parametric.drawing.tables import Table

Kind = Literal[
    "panel in the stile",
    "stub tenon",
    "moulded corner",
    "glass in its stops",
    "loose tenon",
    "stopped groove",
    "pull pockets",
    "floor guide",
    "head and track",
    "passing leaves",
    "meeting stiles",
    "hinge jamb",
    "case edge",
    "head gap",
    "foot gap",
    "glass in its rebate",
    "glazing bar",
    "arch",
]
Where = Literal["leaf", "plan", "section"]

ORIGIN = (15_000.0, 15_000.0)
"""Where a detail's first view has its zero while it is drawn, mm."""
_BOARD = Paper(name="board", width=45_000.0, height=45_000.0)
_WIDE, _TALL = 130.0, 92.0
"""The most that is drawn at full size, mm."""


@dataclass(frozen=True, slots=True, kw_only=True)
class Call:
    """How a detail is called: on which view, by a ring or by a short section line, round what.

    `box` is in that view's own model coordinates; a section line runs along its middle.
    """

    on: Where
    by: Literal["ring", "section"]
    box: Box


@dataclass(frozen=True, slots=True, kw_only=True)
class Detail:
    """One detail, drawn: what it is, what stands under its name, where it is called from."""

    kind: Kind
    title: str
    second: str
    call: Call
    scales: tuple[float, ...]
    views: tuple[View, ...]
    elements: tuple[Element, ...]
    unplaced: tuple[str, ...]

    @property
    def box(self) -> Box:
        """What it takes up where it stands, mm on paper."""
        return around_boxes(reach(part) for e in self.elements for part in primitives(e))


def board() -> Draft:
    """An empty board, larger than any detail."""
    return Draft(_BOARD)


def detail_scale(wide: float, tall: float) -> float:
    """Full size, or half of it for what is too large; a longer thing is broken, mm."""
    return next((s for s in (1.0, 2.0, 5.0) if wide <= _WIDE * s and tall <= _TALL * s), 10.0)


def finished(draft: Draft, kind: Kind, title: str, second: str, call: Call) -> Detail:
    """Take a detail off its board."""
    return Detail(
        kind=kind,
        title=title,
        second=second,
        call=call,
        scales=tuple(dict.fromkeys(view.scale for view in draft.views)),
        views=tuple(draft.views),
        elements=tuple(draft.elements),
        unplaced=tuple(draft.unplaced),
    )


def carried(detail: Detail, by: Point) -> Detail:
    """A detail moved on paper."""
    return dataclasses.replace(
        detail,
        views=tuple(dataclasses.replace(v, origin=_moved(v.origin, by)) for v in detail.views),
        elements=tuple(_carry(element, by) for element in detail.elements),
    )


def _moved(point: Point, by: Point) -> Point:
    return (point[0] + by[0], point[1] + by[1])


def _all(points: Polygon, by: Point) -> Polygon:
    return tuple(_moved(p, by) for p in points)


def _carry(element: Element, by: Point) -> Element:
    match element:
        case Stroke() | Fill():
            return dataclasses.replace(element, points=_all(element.points, by))
        case Circle() | Arc():
            return dataclasses.replace(element, centre=_moved(element.centre, by))
        case Label() | Table():
            return dataclasses.replace(element, at=_moved(element.at, by))
        case Hatch():
            return dataclasses.replace(
                element,
                strokes=tuple(_all(stroke, by) for stroke in element.strokes),
                arcs=tuple((_moved(c, by), r, start, end) for c, r, start, end in element.arcs),
                dots=_all(element.dots, by),
            )
        case Dimension():
            return dataclasses.replace(
                element,
                a=_moved(element.a, by),
                b=_moved(element.b, by),
                feet=tuple(None if f is None else _moved(f, by) for f in element.feet),  # type: ignore[arg-type]
                label=dataclasses.replace(element.label, at=_moved(element.label.at, by)),
                tail=_all(element.tail, by),
            )
        case Ordinate():
            return dataclasses.replace(
                element,
                lines=tuple(_all(line, by) for line in element.lines),
                label=dataclasses.replace(element.label, at=_moved(element.label.at, by)),
                ring=None if element.ring is None else _moved(element.ring, by),
            )
        case Leader():
            return dataclasses.replace(
                element,
                points=_all(element.points, by),
                labels=tuple(
                    dataclasses.replace(label, at=_moved(label.at, by)) for label in element.labels
                ),
            )
        case _:
            assert_never(element)
