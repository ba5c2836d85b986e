"""What closes cabinets to a crooked wall, told beside it at the foot, middle and top of the piece.

| 36 seen -->|~|
|            |~|      of a filler, what is seen of it once it is scribed;
| 3/16 off ->|/|      of a face frame's stile, what is scribed off it
"""

from __future__ import annotations

from parametric.drawing.cases.layout import Placing
from parametric.drawing.cases.room import Room
from parametric.drawing.dimensions import Leader
from parametric.drawing.draft import Draft
from parametric.drawing.lettering import TEXT
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import View
from parametric.drawing.subject import Subject
from parametric.hangings.hanging import Side
from parametric.trade.scribing import Scribed, ScribedAt, scribed_to_walls

_INSET = 4.0
"""From the ends of the piece, mm on paper."""
_TRIES = (0.0, 2.0, -2.0, 4.0, -4.0, 6.0, -6.0, 8.0, -8.0, 11.0, -11.0, 14.0, -14.0)
"""How far the words may stand from their place, mm on paper; the nearest first."""


def scribed_in(room: Room) -> tuple[Scribed, ...]:
    """Everything in a room that is scribed to a wall."""
    return scribed_to_walls(room.runs, room.cases)


def words(job: Subject, room: Room, side: Side) -> list[str]:
    """What is said at one wall."""
    return [
        _text(job, one, at)
        for one in scribed_in(room)
        if one.meets == f"{side} wall"
        for at in one.at
    ]


def _text(job: Subject, one: Scribed, at: ScribedAt) -> str:
    size, word = (at.seen, "seen") if one.filler else (at.off, "off")
    return f"{job.rules.arrangement.text(size)} {word}"


def draw_words(draft: Draft, job: Subject, room: Room, view: View, place: Placing) -> None:
    """Each number beside the wall, a line from it to what it is about."""
    for one in scribed_in(room):
        low, high = view.y(one.at[0].along) + _INSET, view.y(one.at[-1].along) - _INSET
        for part, at in zip((0.0, 0.5, 1.0), one.at, strict=True):
            y = low + part * (high - low)
            across = view.x((float(at.room) + one.true) / 2)
            _word(draft, _text(job, one, at), (across, y), one, view, place, job)


def _word(
    draft: Draft,
    text: str,
    target: tuple[float, float],
    one: Scribed,
    view: View,
    place: Placing,
    job: Subject,
) -> None:
    left = one.meets == "left wall"
    way = -1.0 if left else 1.0
    knee = (place.ends[0] if left else place.ends[1]) + way * 2.0
    labels = [
        Label(
            text=text,
            at=(knee + way * 3.0, target[1] + lift - TEXT / 2),
            anchor="right" if left else "left",
            view=view.name,
            stacked=job.rules.arrangement.stacked,
        )
        for lift in _TRIES
    ]
    label = draft.first_free(labels)
    if label is None:
        draft.unplaced.append(text)
        label = labels[0]
    y = label.at[1] + TEXT / 2
    points = (target, (knee, y), (knee + way * 2.2, y))
    draft.add(Leader(points=points, end="dot", labels=(label,), view=view.name))
