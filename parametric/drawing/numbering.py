"""Sheets of a group counted: each is lettered "n / total" once the group is whole."""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence

from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet


def numbered(sheets: Sequence[Sheet]) -> tuple[Sheet, ...]:
    """The sheets of one group in order, each saying which of how many it is."""
    return tuple(_numbered(sheet, n, len(sheets)) for n, sheet in enumerate(sheets, 1))


def _numbered(sheet: Sheet, number: int, total: int) -> Sheet:
    title = dataclasses.replace(sheet.title, sheet=number, sheets=total)
    if sheet.number_at is None:
        return dataclasses.replace(sheet, title=title)
    at, height = sheet.number_at
    count = Label(text=f"{number} / {total}", at=at, height=height, weight="bold")
    return dataclasses.replace(
        sheet, title=title, elements=(*sheet.elements, count), number_at=None
    )
