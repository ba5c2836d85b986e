"""The words inside a machine file, and where they stand: on the wood, clear of every cut.

They lie inside the outline of the stock, so that the extents of the drawing are those of
the piece; on an end of 40 x 120 they are small, and grow with the room there is.
"""

from __future__ import annotations

import math
import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from parametric.cnc.operations import depth_text
from parametric.cnc.outlines import Bounds, bounds_of
from parametric.cnc.setups import SetUp
from parametric.cnc.tool_list import ToolUse, tool_uses

_ADVANCE = 1.0
"""Widest advance of a letter over its height in the plain stroke font."""
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


@dataclass(frozen=True, slots=True, kw_only=True)
class Stamp:
    """What ties a file to its design: the job, the fingerprint and the revision letter."""

    job: str
    fingerprint: str
    revision: str


@dataclass(frozen=True, slots=True, kw_only=True)
class NoteBlock:
    """Rows of text from the top down; (x, y) is the left end of the first row's baseline, mm."""

    x: float
    y: float
    height: float
    pitch: float
    rows: tuple[str, ...]


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
        "outlines are finished edges: set the cutter inside them",
        "prove the program in air, check hold-down, wear eye and ear protection",
        f"{stamp.job}, {stamp.fingerprint}, revision {stamp.revision}",
    ]
    return tuple(" ".join(line.split()) for line in lines)


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
    letters = sum(len(line) + 1 for line in lines)
    best: NoteBlock | None = None
    # where the cuts leave no wood at all, words over a cut are better than none
    free = list(free_rooms(inside, taken)) or [inside]
    rooms = ((_most(room, letters, cap), room) for room in free)
    for most, room in sorted(rooms, key=lambda pair: -pair[0]):
        if best is not None and most <= best.height:
            break
        block = _fill(room, lines, most)
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


def _most(room: Bounds, letters: int, cap: float) -> float:
    """No letter in this room can be taller, mm."""
    width, height = room[2] - room[0], room[3] - room[1]
    by_area = math.sqrt(width * height / (letters * _ADVANCE * _PITCH))
    return min(cap, height / _PITCH, 2 * by_area)


def _fill(room: Bounds, lines: Sequence[str], most: float) -> NoteBlock:
    facts: list[list[str]] = [_TOGETHER.findall(line) for line in lines]
    running = [
        word + _MARK if last and fact is not facts[-1] else word
        for fact in facts
        for last, word in zip([*[False] * (len(fact) - 1), True], fact, strict=True)
    ]
    height, rows = _tallest(room, facts, most)
    run_height, run_rows = _tallest(room, [running], most)
    if height < _ROWS_WORTH * run_height:
        height, rows = run_height, run_rows
    pitch = height * _PITCH
    spare = room[3] - room[1] - len(rows) * pitch
    return NoteBlock(
        x=room[0], y=room[3] - spare / 2 - height, height=height, pitch=pitch, rows=tuple(rows)
    )


def _tallest(
    room: Bounds, paragraphs: Sequence[Sequence[str]], most: float
) -> tuple[float, list[str]]:
    """The tallest letters, stepping down by a twentieth, with which the words fit the room."""
    width, height = room[2] - room[0], room[3] - room[1]
    tall = most
    while True:
        rows = _wrapped(paragraphs, int(width / (tall * _ADVANCE)))
        if rows and len(rows) * tall * _PITCH <= height:
            return tall, rows
        tall *= 0.95


def _wrapped(paragraphs: Sequence[Sequence[str]], letters: int) -> list[str]:
    """The words in rows of so many letters at most; none when a word is longer."""
    rows: list[str] = []
    for words in paragraphs:
        if max(map(len, words)) > letters:
            return []
        row = ""
        for word in words:
            longer = f"{row} {word}" if row else word
            if len(longer) > letters:
                rows.append(row)
                row = word
            else:
                row = longer
        rows.append(row)
    return rows
