"""One label: its mark to be read from across the bench, then what it is, how large, whose.

+--------------------------------------+
| S1-1          -->              ##### |   the arrow shows where the top of the leaf is
|                                ##### |   when the label is read
| left stile, leaf A             ##### |
| on the face, arrow to the top        |
| 2126 × 120 × 40                      |
| Larch Hill reading room              |
| rev. B   7C1F-04AB                   |
+--------------------------------------+
"""

from __future__ import annotations

import dataclasses
from collections.abc import Sequence
from dataclasses import dataclass

from parametric.drawing.draft import Draft
from parametric.drawing.labels.code import QUIET, dark_boxes, modules
from parametric.drawing.lettering import BENCH, TEXT, TITLE, Weight, extent, printable, width, wrap
from parametric.drawing.plane import Box
from parametric.drawing.primitives import Fill, Stroke, arrowhead
from parametric.drawing.primitives import Label as Text
from parametric.trade.labels import Arrow, Label

MARK = 10.0
"""Height of the mark, mm."""
_MARGIN = 2.0
_LEAST_MODULE = 0.33
"""The smallest module of a code that a plain printer makes well, mm: four dots at 300 an inch.

Common practice, no source.
"""
_ARROW = 11.0
_GAP = 1.5
"""Between the lines of a label, mm, from what hangs lowest to what stands highest."""
_MOST_MORE = 1.6
"""How much further apart the lines stand on a label that has room, mm."""
_SAME = 1e-9
_STEPS: dict[Arrow, tuple[float, float]] = {
    "right": (1.0, 0.0),
    "left": (-1.0, 0.0),
    "up": (0.0, 1.0),
    "down": (0.0, -1.0),
}


@dataclass(frozen=True, slots=True, kw_only=True)
class Size:
    """A size of label, mm, and of the square its code stands in."""

    wide: float
    tall: float
    code: float


SMALL = Size(wide=70.0, tall=36.0, code=17.0)
LARGE = Size(wide=100.0, tall=50.0, code=24.0)
SIZES = (SMALL, LARGE)


@dataclass(frozen=True, slots=True, kw_only=True)
class Face:
    """What a label says, ready to be set: the trade's label and its piece's size in words."""

    label: Label
    size: str

    @property
    def what(self) -> str:
        """What the piece is and where it goes; a bundle is named by what is in it."""
        own = self.label
        if own.arrow is None:
            return own.noun
        return ", ".join(word for word in (own.place, own.leaf, own.matched) if word)

    @property
    def how(self) -> tuple[str, ...]:
        """Which side it is stuck on and what the arrow shows, in full and in short."""
        own = self.label
        if own.arrow is None:
            return (f"{own.place}: {own.leaf}",)
        return (
            f"on the {own.stuck_on}; arrow to the {own.top}",
            f"{own.stuck_on}; arrow: {own.top}",
        )

    @property
    def state(self) -> str:
        """Which state of the design it was printed from."""
        own = self.label
        revision = f"rev. {own.revision}" if own.revision else ""
        return "   ".join(word for word in (revision, own.fingerprint) if word)


@dataclass(frozen=True, slots=True, kw_only=True)
class _Row:
    """One line of a label, and how far down from its top the line stands, mm."""

    text: str
    height: float
    weight: Weight
    down: float


def fits(face: Face, size: Size) -> bool:
    """Whether a label of a size holds it, its code still large enough to be read."""
    side = size.code / (len(modules(face.label.readable)) + 2 * QUIET)
    arrow = _ARROW + 2.0 if face.label.arrow is not None else 0.0
    mark_room = size.wide - size.code - 2 * _MARGIN - arrow
    rows = _rows(face, size)
    return (
        side >= _LEAST_MODULE
        and width(face.label.code, MARK, "bold") <= mark_room
        and rows[-1].down + _MARGIN / 2 <= size.tall
        and all(width(row.text, row.height, row.weight) <= _room(size, row) for row in rows)
    )


def _room(size: Size, row: _Row) -> float:
    """How long a line may be: beside the code, or under it."""
    top = row.down - extent(row.text, row.height, row.weight).above
    beside = top < _MARGIN / 2 + size.code
    return size.wide - 2 * _MARGIN - (size.code if beside else 0.0)


def _rows(face: Face, size: Size) -> tuple[_Row, ...]:
    """The lines under the mark, spread over the room there is.

    A line that is too long beside the code stands under it, before it is broken in two.
    """
    code_low = _MARGIN / 2 + size.code
    whole = size.wide - 2 * _MARGIN
    down = _MARGIN + MARK
    found: list[_Row] = []

    def add(words: str, height: float, weight: Weight = "regular") -> None:
        nonlocal down
        while words:
            long = width(words, height, weight)
            if whole - size.code < long <= whole:
                down = max(down, code_low - _GAP)
            under = down + _GAP >= code_low - _SAME
            room = whole if under else whole - size.code
            line = wrap(words, room, height, weight)[0]
            ink = extent(line, height, weight)
            down += _GAP + ink.above
            found.append(_Row(text=line, height=height, weight=weight, down=down))
            down += ink.below
            words = words[len(line) :].lstrip()

    job, state = _tidy(printable(face.label.job)), _tidy(face.state)
    together = f"{job}, {state}"
    add(_tidy(face.what), TITLE, "bold")
    hows = [_tidy(how) for how in face.how]
    add(next((how for how in hows if width(how, TEXT) <= whole - size.code), hows[-1]), TEXT)
    add(face.size, BENCH)
    for line in (together,) if width(together, TEXT) <= whole else (job, state):
        add(line, TEXT)
    spare = (size.tall - _MARGIN - down) / len(found)
    more = max(0.0, min(spare, _MOST_MORE))
    return tuple(
        dataclasses.replace(row, down=row.down + more * count) for count, row in enumerate(found, 1)
    )


def _tidy(words: str) -> str:
    """Single spaces: a line is broken at them and at nothing else."""
    return " ".join(words.split())


def draw_face(draft: Draft, face: Face, size: Size, box: Box) -> None:
    """Draw a label in its box."""
    label = face.label
    draft.add(
        Text(
            text=label.code,
            at=(box.x0 + _MARGIN, box.y1 - _MARGIN - MARK),
            height=MARK,
            weight="bold",
        )
    )
    room = Box(
        box.x1 - _MARGIN / 2 - size.code,
        box.y1 - _MARGIN / 2 - size.code,
        box.x1 - _MARGIN / 2,
        box.y1 - _MARGIN / 2,
    )
    for dark in dark_boxes(modules(label.readable), room):
        draft.add(Fill(layer="edge", points=dark.polygon))
    for row in _rows(face, size):
        draft.add(
            Text(
                text=row.text,
                at=(box.x0 + _MARGIN, box.y1 - row.down),
                height=row.height,
                weight=row.weight,
            )
        )
    if label.arrow is not None:
        _arrow(draft, label.arrow, (room.x0 - _ARROW / 2 - 0.5, box.y1 - _MARGIN - MARK / 2))


def _arrow(draft: Draft, way: Arrow, middle: tuple[float, float]) -> None:
    """A heavy arrow about its middle, with the bar across its tail that a top has."""
    (x, y), (dx, dy) = middle, _STEPS[way]
    half = MARK / 2
    tip, tail = (x + dx * half, y + dy * half), (x - dx * half, y - dy * half)
    draft.add(
        Stroke(layer="cut_heavy", points=(tail, (tip[0] - dx * 4.0, tip[1] - dy * 4.0))),
        Fill(layer="cut_heavy", points=arrowhead(tip, tail, 5.0, 2.0)),
    )


def faces_size(faces: Sequence[Face]) -> Size | None:
    """The smallest size of label that holds every one of them; None where none does."""
    return next((size for size in SIZES if all(fits(face, size) for face in faces)), None)
