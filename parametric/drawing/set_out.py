"""A shape set out on a sheet: letters at its corners, and the table that places them."""

from __future__ import annotations

from collections.abc import Sequence

from parametric.drawing.column import TableItem
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.plane import Point
from parametric.drawing.primitives import Label
from parametric.drawing.subject import Subject
from parametric.drawing.tables import Column, fitted
from parametric.trade.setting_out import SettingOut, setting_outs
from parametric.units import mm_text

_OFF = 3.4
"""From a corner to the middle of its letter, mm on paper."""


def letter_corners(
    draft: Draft, shape: SettingOut, places: Sequence[Point], view: str, *, inwards: bool
) -> None:
    """A letter beside each corner, towards the middle of the shape or away from it.

    Args:
        draft: the sheet.
        shape: what is lettered.
        places: of its corners on paper.
        view: that they are of.
        inwards: whether the letters stand inside.
    """
    count = len(places)
    for at, (corner, (x, y)) in enumerate(zip(shape.corners, places, strict=True)):
        dx, dy = _towards(places[at - 1], (x, y), places[(at + 1) % count])
        way = 1.0 if inwards else -1.0
        draft.add_first(
            [
                Label(
                    text=corner.letter,
                    at=(x + way * dx * off, y + way * dy * off - TEXT / 2),
                    anchor="centre",
                    weight="bold",
                    view=view,
                )
                for off in (_OFF, _OFF + 1.5, _OFF + 3.0, _OFF + 5.0, _OFF + 8.0)
            ]
        )


def _towards(before: Point, at: Point, after: Point) -> Point:
    """The way that halves a corner, into the shape; its points go round to the left."""
    (ax, ay), (bx, by) = _unit(before, at), _unit(after, at)
    x, y = ax + bx, ay + by
    turn = (at[0] - before[0]) * (after[1] - at[1]) - (at[1] - before[1]) * (after[0] - at[0])
    long = (x * x + y * y) ** 0.5 or 1.0
    way = 1.0 if turn > 0 else -1.0
    return way * x / long, way * y / long


def _unit(to: Point, at: Point) -> Point:
    x, y = to[0] - at[0], to[1] - at[1]
    long = (x * x + y * y) ** 0.5
    return x / long, y / long


def set_out_table(
    job: Subject, shape: SettingOut, title: str, *, low: str, most: float = 0.0
) -> TableItem:
    """Every corner: its two sizes, its angle, the side that goes on from it.

    Args:
        job: the job.
        shape: what is set out.
        title: over the table.
        low: what its sizes across are from.
        most: how wide it may grow where it does not hold what stands in it, mm.
    """
    letters = [corner.letter for corner in shape.corners]
    rows = tuple(
        (
            corner.letter,
            job.wood(corner.along),
            job.wood(corner.across),
            f"{mm_text(float(corner.angle), 0.1)}°",
            f"{corner.letter}–{letters[(at + 1) % len(letters)]}  {corner.side}",
            job.wood(corner.long),
        )
        for at, corner in enumerate(shape.corners)
    )
    columns = (
        Column(head="", width=4.0),
        Column(head="left", width=14.0, anchor="right"),
        Column(head=low, width=14.0, anchor="right"),
        Column(head="angle", width=12.0, anchor="right"),
        Column(head="Side", width=25.0),
        Column(head="long", width=14.0, anchor="right"),
    )
    return TableItem(title=title, columns=fitted(columns, rows, most=most), rows=rows)


def diagonals_said(job: Subject, shape: SettingOut) -> str:
    """Its diagonals in one sentence."""
    said = ", ".join(f"{ends} {job.wood(long)}" for ends, long in shape.diagonals)
    return f"Diagonals, to check it by: {said}."


def setting_out_of(job: Subject, names: Sequence[str]) -> SettingOut | None:
    """The shape that a part is cut to, by any of its names; None of a rectangle."""
    shapes = setting_outs(job.resolved.casework)
    return next((one for one in shapes if one.name in names), None)
