"""The small square code of a label: the label's own words again, for a hand-held reader.

Source: ISO/IEC 18004 (QR code; four modules of quiet zone all round), from memory.
"""

from __future__ import annotations

import functools
import itertools

import segno

from parametric.drawing.plane import Box

QUIET = 4
"""Modules left white round the code."""


@functools.lru_cache(maxsize=4096)
def modules(text: str) -> tuple[tuple[bool, ...], ...]:
    """The dark and light modules of a text's code, row by row from the top, without quiet zone.

    A text of letters the reader's default lacks is kept whole as UTF-8.
    """
    made = segno.make(text, error="m", micro=False, boost_error=False)
    return tuple(tuple(module == 1 for module in row) for row in made.matrix)


def dark_boxes(rows: tuple[tuple[bool, ...], ...], room: Box) -> tuple[Box, ...]:
    """The dark modules as few boxes, the code with its quiet zone filling a square room.

    Runs that are alike in rows under one another are one box, so that no white hair shows
    between them.
    """
    side = room.width / (len(rows) + 2 * QUIET)
    open_runs: dict[tuple[int, int], int] = {}
    found: list[Box] = []

    def box(run: tuple[int, int], top: int, bottom: int) -> Box:
        return Box(
            room.x0 + (QUIET + run[0]) * side,
            room.y1 - (QUIET + bottom) * side,
            room.x0 + (QUIET + run[1]) * side,
            room.y1 - (QUIET + top) * side,
        )

    for index, row in enumerate((*rows, (False,) * len(rows))):
        runs = set(_runs(row))
        for run, top in list(open_runs.items()):
            if run not in runs:
                found.append(box(run, top, index))
                del open_runs[run]
        for run in sorted(runs):
            open_runs.setdefault(run, index)
    return tuple(found)


def _runs(row: tuple[bool, ...]) -> list[tuple[int, int]]:
    """Where dark modules follow one another: the first, and the one past the last."""
    found, at = [], 0
    for dark, group in itertools.groupby(row):
        count = len(list(group))
        if dark:
            found.append((at, at + count))
        at += count
    return found
