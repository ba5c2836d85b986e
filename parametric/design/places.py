"""Where the client stands in their own house to look at the doors: `the stairs: standing, 3200, left`."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated, Literal, get_args

from pydantic import PlainValidator, WithJsonSchema

from parametric.figures import Figure, plain
from parametric.written import Text, refuse, sizes_of

Posture = Literal["standing", "seated"]
Side = Literal["left", "middle", "right"]

NEAREST, FARTHEST = 600.0, 6000.0
"""mm from the doors: nearer one sees no doors, farther the pictured room has its end."""
_WANTED = "standing or seated, how far from the doors, and left, middle or right"
_EXAMPLE = "standing, 3200, left"


@dataclass(frozen=True, slots=True, kw_only=True)
class EyePoint:
    """A place to stand or sit: how far from the doors, mm, and to which side of them."""

    posture: Posture
    distance: Figure
    side: Side


def _eye_point(value: object) -> EyePoint:
    text = _one_line(value)
    parts = [part.strip() for part in text.split(",")]
    if len(parts) != 3:
        raise _no_place(text, f'A place to stand is written "{_EXAMPLE}", not "{text}".')
    first, far, last = parts
    for posture in get_args(Posture):
        for side in get_args(Side):
            if (first, last) == (posture, side):
                return EyePoint(posture=posture, distance=_distance(far, text), side=side)
    wrong = first if first not in get_args(Posture) else last
    raise _no_place(text, f'"{wrong}" does not fit here: write {_WANTED}.')


def _one_line(value: object) -> Text:
    if isinstance(value, list) and all(isinstance(part, str) for part in value) and value:
        first = value[0]
        near = first if isinstance(first, Text) else Text(first)
        return _beside(near, ", ".join(value))
    if isinstance(value, Text):
        return value
    if isinstance(value, str):
        return Text(value)
    raise refuse("wrong_value", f"A place to stand takes {_WANTED}.", allowed=_EXAMPLE)


def _beside(near: Text, words: str) -> Text:
    return Text(words, where=near.where, origin=near.origin, unit=near.unit, source=near.source)


def _distance(written: str, text: Text) -> Figure:
    (far,) = sizes_of(_beside(text, written), most=1, key="How far from the doors")
    if not NEAREST <= far <= FARTHEST:
        raise refuse(
            "wrong_value",
            f"{written} from the doors is not where one can stand in the picture.",
            found=plain(far),
            allowed=f"{NEAREST:g} to {FARTHEST:g} mm",
            fix=f"Write a distance from {NEAREST:g} to {FARTHEST:g} mm.",
            where=text.where,
        )
    return far


def _no_place(text: Text, message: str) -> Exception:
    return refuse(
        "wrong_value",
        message,
        found=str(text),
        allowed=_WANTED,
        fix=f"Write it like this: {_EXAMPLE}.",
        where=text.where,
    )


Place = Annotated[
    EyePoint,
    PlainValidator(_eye_point),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "string"},
                {"type": "array", "items": {"type": ["string", "number"]}},
            ],
            "description": f"{_WANTED}: {_EXAMPLE}",
        }
    ),
]
"""One place to stand."""
