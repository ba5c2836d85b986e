"""What moved since a design was signed: said on every block, and marked at every value.

A value that moved wears the letter of its revision in a small triangle. A design changed
without a letter of its own wears "!", since the letter it has is that of what was signed.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Iterator, Set

from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.draft import Draft
from parametric.drawing.frame import stamp_lines, title_block_box
from parametric.drawing.lettering import CELL_LABEL
from parametric.drawing.plane import Box, Point
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Element, Sheet
from parametric.trade.comparing import Changes

_WIDE, _TALL = 4.2, 3.7
"""The triangle, mm: round a letter of 1.8."""
_CLEAR = 0.2
_NEAR = (0.5, 1.2, 2.2)
"""How far a triangle may stand from its value and still be its own, mm."""
_FAR = (4.0, 6.5, 9.0, 12.0, 15.0)
"""How far with a thin line to it."""


def moved_words(signed: str, changes: Changes | None, sheet: str) -> str:
    """What is no longer as it was signed, in as many words as a stamp holds.

    Args:
        signed: the revision that was.
        changes: what moved; None where the figures that were signed were not kept.
        sheet: the one that says it whole.
    """
    if changes is None:
        return f"since revision {signed} was approved; its figures were not kept"
    causes = changes.causes
    if len(causes) == 1 and (named := named_on_stamp(signed, causes[0])) is not None:
        return named
    moved = "1 value" if len(causes) == 1 else f"{len(causes)} values"
    return f"{moved} moved since revision {signed}: see {sheet}"


def named_on_stamp(signed: str, cause: str) -> str | None:
    """The one value that moved, from what to what; None when a stamp cannot hold it."""
    named = f"since revision {signed}: {cause}"
    return named if len(stamp_lines(named)) <= _STAMP_LINES else None


_STAMP_LINES = 2


def moved_names(changes: Changes | None) -> frozenset[str]:
    """The numbers that are other numbers now."""
    moves = changes.numbers if changes is not None else ()
    return frozenset(name for move in moves if move.new is not None for name in move.names)


def mark_moved(sheet: Sheet, moved: Set[str], letter: str) -> Sheet:
    """The sheet with a triangle at every dimension and running size whose number moved."""
    wanted = [
        e for e in sheet.elements if isinstance(e, (Dimension, Ordinate)) and e.figure in moved
    ]
    if not wanted:
        return sheet
    draft = Draft(sheet.paper)
    draft.add(*sheet.elements)
    draft.reserve(title_block_box(sheet.paper, sheet.title))
    added: list[Element] = []
    lost: list[str] = []
    for element in wanted:
        found = next(
            (parts for box, parts in _places(element.label, letter) if draft.free(box, _CLEAR)),
            None,
        )
        if found is None:
            lost.append(f"triangle of {element.text}")
            continue
        draft.add(*found)
        added += found
    return dataclasses.replace(
        sheet, elements=(*sheet.elements, *added), unplaced=(*sheet.unplaced, *lost)
    )


def _places(value: Label, letter: str) -> Iterator[tuple[Box, tuple[Element, ...]]]:
    """Where a value's triangle may stand, the nearest first, each with all it is drawn of."""
    box = value.box
    across, up = box.centre
    for gaps, led in ((_NEAR, False), (_FAR, True)):
        for gap in gaps:
            right, left = box.x1 + gap, box.x0 - gap - _WIDE
            over, under = box.y1 + gap, box.y0 - gap - _TALL
            level = up - _TALL / 2
            for at in (
                (right, level),
                (left, level),
                (across - _WIDE / 2, over),
                (across - _WIDE / 2, under),
                (right, over),
                (left, over),
                (right, under),
                (left, under),
            ):
                parts = _triangle(at, letter, value.view)
                own = Box(at[0], at[1], at[0] + _WIDE, at[1] + _TALL)
                line = (_line(box, own, value.view),) if led else ()
                yield own, (*parts, *line)


def _triangle(at: Point, letter: str, view: str) -> tuple[Element, ...]:
    x, y = at
    corners = ((x, y), (x + _WIDE, y), (x + _WIDE / 2, y + _TALL))
    return (
        Stroke(layer="warning", points=corners, closed=True, view=view),
        Label(
            text=letter,
            at=(x + _WIDE / 2, y + 0.55),
            height=CELL_LABEL,
            anchor="centre",
            weight="bold",
            layer="warning",
            view=view,
        ),
    )


def _line(value: Box, triangle: Box, view: str) -> Stroke:
    """A thin line between the near sides of a value and of its triangle."""

    def near(own: Box, other: Box) -> Point:
        x = min(max(other.centre[0], own.x0), own.x1)
        y = min(max(other.centre[1], own.y0), own.y1)
        return (x, y)

    return Stroke(layer="dims", points=(near(value, triangle), near(triangle, value)), view=view)
