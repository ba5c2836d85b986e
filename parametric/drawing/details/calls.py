"""Where details are called from: a ring round the place, or a short section line through it."""

from __future__ import annotations

import math
from collections.abc import Iterable, Iterator, Sequence

from parametric.drawing.details.board import Where
from parametric.drawing.details.sheets import Called
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT, width
from parametric.drawing.plane import Box, Point, around, around_boxes
from parametric.drawing.primitives import Circle, Fill, Label, Stroke, arrowhead, reach
from parametric.drawing.sheet import Hatch, View
from parametric.drawing.tables import Column, Table

_LEAST = 4.6
"""The smallest ring, mm."""
_ROOM = 1.2
_NUMBER = 7.4
_PLACES = (315, 45, 135, 225, 0, 180, 90, 270, 20, 340, 70, 290, 110, 250, 160, 200)


def draw_calls(draft: Draft, called: Sequence[Called], on: Where, view: View) -> None:
    """Rings and section lines of every detail that one view calls, before the sheet's texts.

    Args:
        draft: the sheet.
        called: every detail of the job.
        on: which kind of view this is.
        view: the view.
    """
    for one in _own(called, on):
        a, b = _ends(one, view)
        if one.detail.call.by == "ring":
            ring = Circle(
                layer="edge_fine", centre=_middle(a, b), radius=_radius(a, b), view=view.name
            )
            draft.add(ring)
            continue
        for x in (a[0], b[0]):
            y = a[1]
            draft.add(
                Stroke(layer="section_marks", points=((x - 1.4, y), (x + 1.4, y)), view=view.name),
                Stroke(layer="edge", points=((x, y), (x, y - 3.0)), view=view.name),
                Fill(
                    layer="dims", points=arrowhead((x, y - 4.6), (x, y), 2.4, 0.7), view=view.name
                ),
            )


def number_calls(
    draft: Draft, called: Sequence[Called], on: Where, view: View, *, sheets_said: bool
) -> tuple[Called, ...]:
    """The numbers beside the calls of one view.

    Args:
        draft: the sheet.
        called: every detail of the job.
        on: which kind of view this is.
        view: the view.
        sheets_said: the sheet of each stands beside its number where there is room; else a
            list on the sheet says it.

    Returns:
        Those whose sheet found no room.
    """
    unsaid = []
    for one in _own(called, on):
        words = f"{one.number} on sheet {one.sheet}" if sheets_said else str(one.number)
        texts = tuple(dict.fromkeys((words, str(one.number))))
        a, b = _ends(one, view)
        if one.detail.call.by == "ring":
            places = [
                label
                for text in texts
                for off in (1.0, 3.0, 5.0)
                for label in _round(text, _middle(a, b), _radius(a, b) + off, view.name)
            ]
        else:
            places = list(_beside(texts, a[0], b[0], a[1], view.name))
        # A number on hatching reads badly, and so does one that is hemmed in.
        hatched = [_hatched(e) for e in draft.elements if isinstance(e, Hatch)]
        clear = [p for p in places if not any(p.box.meets(box) for box in hatched)]
        wide = [p for p in clear if draft.free(p.box, 1.2)]
        found = draft.add_first([*wide, *clear, *places])
        if found.text != words:
            unsaid.append(one)
    return tuple(unsaid)


def _own(called: Sequence[Called], on: Where) -> list[Called]:
    return [one for one in called if one.detail.call.on == on]


def _ends(one: Called, view: View) -> tuple[Point, Point]:
    """The place on paper: its low left and its high right, however the view is turned."""
    box = one.detail.call.box
    placed = around((view.at((box.x0, box.y0)), view.at((box.x1, box.y1))))
    return (placed.x0, placed.y0), (placed.x1, placed.y1)


def _middle(a: Point, b: Point) -> Point:
    return ((a[0] + b[0]) / 2, (a[1] + b[1]) / 2)


def _radius(a: Point, b: Point) -> float:
    return max(_LEAST, max(b[0] - a[0], b[1] - a[1]) / 2 + _ROOM)


def _hatched(hatch: Hatch) -> Box:
    return around_boxes([reach(part) for part in hatch.primitives()] or [Box(0, 0, 0, 0)])


def sheets_in_words(called: Iterable[Called]) -> str:
    """Which details are on which sheet: `Details 1 to 4 are on sheet 3, 5 on sheet 4.`"""
    sheets: dict[int, list[int]] = {}
    for one in called:
        sheets.setdefault(one.sheet, []).append(one.number)
    runs = [
        f"{numbers[0]} to {numbers[-1]} on sheet {sheet}"
        if len(numbers) > 1
        else f"{numbers[0]} on sheet {sheet}"
        for sheet, numbers in sheets.items()
    ]
    many = "s" if sum(map(len, sheets.values())) > 1 else ""
    return f"Detail{many} {', '.join(runs)}." if runs else ""


def draw_index(draft: Draft, called: Sequence[Called], room: Box) -> Box | None:
    """A list of the details by number and name, two abreast, where it stands; None for no room."""
    half = (len(called) + 1) // 2
    columns: list[Column] = []
    rows: list[tuple[str, ...]] = [()] * half
    for part in (called[:half], called[half:]):
        names = [one.detail.title for one in part]
        columns += [
            Column(head="No.", width=_NUMBER, anchor="right"),
            Column(head="Detail", width=max(map(width, ("Detail", *names))) + 3.4),
        ]
        cells = [(str(one.number), one.detail.title) for one in part]
        cells += [("", "")] * (half - len(part))
        rows = [(*row, *more) for row, more in zip(rows, cells, strict=True)]
    title = sheets_in_words(called).removesuffix(".")
    at = (room.x0 + 2.0, room.y1 - 2.0 * TEXT)
    table = Table(at=at, columns=tuple(columns), rows=tuple(rows), title=title, pitch=5.2)
    wide = max(table.width, width(title, TEXT, "bold"))
    box = Box(table.box.x0, table.box.y0, table.box.x0 + wide, table.box.y1)
    if not called or not room.holds(box) or not draft.free(box, 0.5):
        return None
    draft.add(table)
    return box


def _round(text: str, centre: Point, radius: float, view: str) -> Iterator[Label]:
    """A text outside a ring, at each of the places round it."""
    wide = width(text, TEXT, "bold")
    for degrees in _PLACES:
        c, s = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))
        # The text's own box stands off the ring along this way.
        off = min(
            (wide / 2) / abs(c) if abs(c) > 1e-6 else math.inf,
            (TEXT / 2) / abs(s) if abs(s) > 1e-6 else math.inf,
        )
        far = radius + off
        at = (centre[0] + c * far, centre[1] + s * far - TEXT / 2)
        yield Label(text=text, at=at, anchor="centre", weight="bold", view=view)


def _beside(
    texts: Sequence[str], left: float, right: float, y: float, view: str
) -> Iterator[Label]:
    """A text at either end of a section line."""
    for text in texts:
        half = width(text, TEXT, "bold") / 2
        for x, up in (
            (left - 2.6 - half, y),
            (right + 2.6 + half, y),
            (left, y + 2.8),
            (right, y + 2.8),
            (left - 2.6 - half, y - 2.6),
            (right + 2.6 + half, y - 2.6),
        ):
            yield Label(text=text, at=(x, up - TEXT / 2), anchor="centre", weight="bold", view=view)
