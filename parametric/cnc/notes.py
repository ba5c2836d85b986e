"""The words inside a machine file, and where they stand: on the wood, clear of every cut.

They lie inside the outline of the stock, so that the extents of the drawing are those of
the piece. On an end of 40 x 120 they are small: there they run on from the strip above a
cut to the strip below it, and leave to the picture of the set-up what is the same in every
file.
"""

from __future__ import annotations

import itertools
import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.cnc.operations import depth_text
from parametric.cnc.setups import SetUp
from parametric.cnc.tool_list import ToolUse, tool_uses
from parametric.outlines import Bounds, bounds_of

NARROW = 0.75
"""How wide a letter is drawn for its height: narrow letters are taller in the same room."""
_ADVANCE = NARROW
"""Widest advance of a letter over its height: in the plain stroke font a letter is square."""
_PITCH = 1.7
_TALLEST, _SHORTEST = 20.0, 2.0
_CLEAR = 2.0
"""mm between words and cuts, halved where the piece is narrow."""
_MARK = "  |"
"""Stands between facts in running text; it never begins a row."""
_TOGETHER = re.compile(r"cutter \S+ depth \S+(?: corner r \S+)?|(?:(?:r|x|revision) )*\S+")
"""A number is not parted from the word that says what it is."""
_ROWS_WORTH = 0.7
"""One fact a row is worth this much loss of height against running text."""
_LONGEST_ROW = 240
"""Letters in one text: readers of DXF cut off what is longer than 255, and say nothing.

Source: text values of up to 255 bytes, published DXF reference, from memory; GDAL does so.
"""
_READABLE = 2.5
"""Smaller than this the words go into two strips, and fewer of them, mm."""


ALWAYS = (
    "outlines are finished edges: set the cutter inside them",
    "prove the program in air, check hold-down, wear eye and ear protection",
)
IN_SHORT = ("outlines are finished edges", "hold-down, eyes, ears")


@dataclass(frozen=True, slots=True, kw_only=True)
class Stamp:
    """What ties a file to its design: the job, the fingerprint and the revision letter."""

    job: str
    fingerprint: str
    revision: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteBlock:
    """Rows of text from the top down, and where the baseline of each begins, mm."""

    height: float
    rows: tuple[str, ...]
    feet: tuple[tuple[float, float], ...]


def notes(set_up: SetUp, stamp: Stamp) -> tuple[str, ...]:
    """What the operator must know, a fact a line."""
    n = depth_text
    title = f"{set_up.mark} {set_up.noun}".strip()
    across = "length" if set_up.face not in ("low end", "high end") else "width"
    along = "width of the leaf" if set_up.face is None else across
    lines = [
        f"{title}, {set_up.face_up} face up",
        f"{set_up.count} off: {', '.join(set_up.names)}",
        "unit mm, depths from the surface of the stock",
        f"stock {n(set_up.length)} x {n(set_up.width)}, {n(set_up.thickness)} thick",
        f"datum 0;0 lower left: x along the {along} from the {set_up.x_from}, "
        f"y from the {set_up.y_from}",
        *(_use(use) for use in tool_uses(set_up)),
        *set_up.turned,
        *ALWAYS,
        f"{stamp.job}, {stamp.fingerprint}, revision {stamp.revision}",
    ]
    return tuple(" ".join(line.split()) for line in lines)


def _in_short(lines: Sequence[str]) -> tuple[str, ...]:
    """What is told of this piece alone, with the cautions in four words."""
    own = [line for line in lines if line not in ALWAYS]
    return (*own[:-1], *IN_SHORT, own[-1]) if len(own) < len(lines) else tuple(lines)


def _use(use: ToolUse) -> str:
    n = depth_text
    text = f"{use.layer}: {use.count} off, cutter {n(use.cutter)}, depth {n(use.depth)}"
    if use.corner:
        text += f", corner r {n(use.corner)}"
    return f"{text}, {use.note}" if use.note else text


def place_notes(set_up: SetUp, lines: Sequence[str], datum: float) -> NoteBlock:
    """The largest letters that go on the wood clear of the cuts.

    Args:
        set_up: the set-up.
        lines: what is to be said.
        datum: the side of the datum's own mark in the lower left corner, mm.
    """
    clear = min(_CLEAR, set_up.width / 20, set_up.length / 20)
    taken = [_grown(bounds_of(op.outline), 3 * clear, clear) for op in set_up.operations]
    taken.append((0.0, 0.0, datum + clear, datum + clear))
    inside = (clear, clear, set_up.length - clear, set_up.width - clear)
    cap = min(_TALLEST, max(_SHORTEST, max(set_up.length, set_up.width) / 100))
    # where the cuts leave no wood at all, words over a cut are better than none
    free = list(dict.fromkeys(free_rooms(inside, taken))) or [inside]
    best = _best([(room,) for room in free], lines, cap)
    if best.height >= min(_READABLE, cap):
        return best
    return _best([(room,) for room in free] + _strips(free), _in_short(lines), cap)


Strips = tuple[Bounds, ...]
"""Rooms above one another, the uppermost first."""


def _strips(free: Sequence[Bounds]) -> list[Strips]:
    """Every two rooms of which one lies above the other."""
    return [
        (above, below)
        for above, below in itertools.permutations(free, 2)
        if above[1] >= below[3] and above[0] < below[2] and below[0] < above[2]
    ]


def _best(columns: Sequence[Strips], lines: Sequence[str], cap: float) -> NoteBlock:
    """The tallest letters that any of the columns holds."""
    letters = sum(len(line) + 1 for line in lines)
    best: NoteBlock | None = None
    rooms = ((_most(column, letters, cap), column) for column in columns)
    for most, column in sorted(rooms, key=lambda pair: -pair[0]):
        if best is not None and most <= best.height:
            break
        block = _fill(column, lines, most)
        if best is None or block.height > best.height:
            best = block
    assert best is not None
    return best


def free_rooms(inside: Bounds, taken: Sequence[Bounds]) -> Iterator[Bounds]:
    """Every rectangle inside that is clear of the boxes and as wide as it can be for its height."""
    x0, y0, x1, y1 = inside
    levels = sorted({y0, y1} | {y for b in taken for y in (b[1], b[3]) if y0 < y < y1})
    for i, low in enumerate(levels):
        for high in levels[i + 1 :]:
            edge = x0
            across = sorted((b[0], b[2]) for b in taken if b[1] < high and b[3] > low)
            for left, right in [*across, (x1, x1)]:
                if left - edge > 0:
                    yield (edge, low, min(left, x1), high)
                edge = max(edge, right)


def _grown(box: Bounds, along: float, up: float) -> Bounds:
    return (box[0] - along, box[1] - up, box[2] + along, box[3] + up)


def _most(column: Strips, letters: int, cap: float) -> float:
    """No letter in these rooms can be taller, mm."""
    area = sum((room[2] - room[0]) * (room[3] - room[1]) for room in column)
    by_area = math.sqrt(area / (letters * _ADVANCE * _PITCH))
    tallest = min(room[3] - room[1] for room in column) / _PITCH
    return min(cap, tallest, 2 * by_area)


def _fill(column: Strips, lines: Sequence[str], most: float) -> NoteBlock:
    facts: list[list[str]] = [_TOGETHER.findall(line) for line in lines]
    running = [
        word + _MARK if last and fact is not facts[-1] else word
        for fact in facts
        for last, word in zip([*[False] * (len(fact) - 1), True], fact, strict=True)
    ]
    height, rows = _tallest(column, facts, most)
    run_height, run_rows = _tallest(column, [running], most)
    if height < min(run_height, max(_READABLE, _ROWS_WORTH * run_height)):
        height, rows = run_height, run_rows
    pitch = height * _PITCH
    feet: list[tuple[float, float]] = []
    for room in column:
        count = min(_rows_in(room, height), len(rows) - len(feet))
        top = room[3] - (room[3] - room[1] - count * pitch) / 2
        feet += [(room[0], top - height - index * pitch) for index in range(count)]
    return NoteBlock(height=height, rows=tuple(rows), feet=tuple(feet))


def _rows_in(room: Bounds, height: float) -> int:
    # a hair over, or a room exactly as high as its rows would lose one to rounding
    return int((room[3] - room[1]) / (height * _PITCH) + 1e-9)


def _tallest(
    column: Strips, paragraphs: Sequence[Sequence[str]], most: float
) -> tuple[float, list[str]]:
    """The tallest letters, stepping down by a fiftieth, with which the words fit the rooms."""
    tall, tried = most, [-1]
    needed = sum(len(word) for words in paragraphs for word in words)
    while True:
        letters = [
            min(_LONGEST_ROW, int((room[2] - room[0]) / (tall * _ADVANCE)))
            for room in column
            for _ in range(_rows_in(room, tall))
        ]
        # rows as before, or rows that have not even the letters, need no trial
        rows = _wrapped(paragraphs, letters) if letters != tried and sum(letters) >= needed else []
        if rows:
            return tall, rows
        tall, tried = tall * 0.98, letters


def _wrapped(paragraphs: Sequence[Sequence[str]], letters: Sequence[int]) -> list[str]:
    """The words in rows of so many letters each at most; none when they do not fit."""
    rows: list[str] = []
    for words in paragraphs:
        row = ""
        for word in words:
            longer = f"{row} {word}" if row else word
            if row and (len(rows) == len(letters) or len(longer) > letters[len(rows)]):
                rows.append(row)
                longer = word
            if len(rows) == len(letters) or len(longer) > letters[len(rows)]:
                return []
            row = longer
        rows.append(row)
    return rows
