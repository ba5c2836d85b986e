"""What the tape said, and what it did not: the survey of one opening."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Annotated, Any, Literal

from pydantic import Field, PlainValidator, TypeAdapter, ValidationError, WithJsonSchema

from parametric.figures import Figure, Where
from parametric.names import nearest
from parametric.units import NotALength, read_length
from parametric.written import (
    Angle,
    Block,
    Branch,
    Date,
    Group,
    LengthPair,
    LengthTriple,
    Name,
    NotMeasured,
    Offset,
    Reading,
    Text,
    Words,
    refuse,
)


@dataclass(frozen=True, slots=True, kw_only=True)
class Taken:
    """One reading and the place it was taken at.

    `at` is the height above the floor, or the distance from the left, where the surveyor
    gave a number for a place, mm; None at a named place.
    """

    place: str
    at: Figure | None
    reading: Figure | NotMeasured
    where: Where | None


_UP: tuple[str, ...] = ("bottom", "middle", "top")
_ACROSS: tuple[str, ...] = ("left", "middle", "right")
_READING: TypeAdapter[Figure | NotMeasured] = TypeAdapter(Reading)
_OFFSET: TypeAdapter[Figure | NotMeasured] = TypeAdapter(Offset)


def _place(key: str, value: Text, places: tuple[str, ...]) -> Figure | None:
    """None for a named place, a Figure for one given by its distance."""
    if key in places:
        return None
    try:
        at = read_length(key, value.unit)
    except NotALength:
        close = nearest(key, places, 0.4)
        raise refuse(
            "unknown_place",
            f'No such place as "{key}" in {{key}}.'
            + (f' Did you mean "{close}"?' if close else ""),
            found=key,
            allowed=", ".join(places) + ", or a distance",
            where=value.where,
        ) from None
    return Figure(float(at), origin=value.origin, where=value.where, source=value.source)


def _taken(
    tree: object, places: tuple[str, ...], adapter: TypeAdapter[Figure | NotMeasured]
) -> tuple[Taken, ...]:
    if not isinstance(tree, Mapping):
        written = str(tree)
        example = re.sub(r"^(plumb|level)$", "0", written)
        raise refuse(
            "no_place",
            f"Give at least one place: `{{key}}: {{{places[1]}: {example}}}`; three are better, "
            "and the tool never takes a mean.",
            found=written,
            allowed=", ".join(places) + ", or a distance",
        )
    if not tree:
        raise refuse("no_place", "There is no reading in {key}.", allowed=", ".join(places))
    found: list[Taken] = []
    for key, value in tree.items():
        text = value if isinstance(value, Text) else Text(str(value))
        at = _place(key, text, places)
        try:
            reading = adapter.validate_python(value)
        except ValidationError as error:
            context = error.errors()[0].get("ctx", {})
            message = str(context.get("message", "")).replace("{key}", key)
            raise refuse(
                str(context.get("code", "wrong_value")),
                message,
                found=str(value),
                allowed=str(context.get("allowed", "")),
                fix=str(context.get("fix", "")),
                where=text.where,
            ) from None
        where = tree.lines.get(key) if isinstance(tree, Branch) else None
        found.append(Taken(place=key, at=at, reading=reading, where=where))
    return tuple(found)


def _places(places: tuple[str, ...], value: str) -> dict[str, Any]:
    named = {place: {"type": ["string", "number"], "description": value} for place in places}
    return {
        "type": "object",
        "properties": named,
        "patternProperties": {"^[0-9]": {"type": ["string", "number"]}},
        "additionalProperties": False,
        "minProperties": 1,
        "description": f"{value} at {', '.join(places)}, or at a distance",
    }


UpDown = Annotated[
    tuple[Taken, ...],
    PlainValidator(lambda tree: _taken(tree, _UP, _READING)),
    WithJsonSchema(_places(_UP, "a reading")),
]
"""Sizes read at bottom, middle and top, or at heights above the floor."""
Across = Annotated[
    tuple[Taken, ...],
    PlainValidator(lambda tree: _taken(tree, _ACROSS, _READING)),
    WithJsonSchema(_places(_ACROSS, "a reading")),
]
"""Sizes read at left, middle and right, or at distances from the left."""
UpDownOff = Annotated[
    tuple[Taken, ...],
    PlainValidator(lambda tree: _taken(tree, _UP, _OFFSET)),
    WithJsonSchema(_places(_UP, "off the plumb line")),
]
"""Distances off a plumb line at bottom, middle and top; + leans into the opening."""
AcrossOff = Annotated[
    tuple[Taken, ...],
    PlainValidator(lambda tree: _taken(tree, _ACROSS, _OFFSET)),
    WithJsonSchema(_places(_ACROSS, "off the level line")),
]
"""Distances off a level line at left, middle and right; + stands above it."""

Side = Literal["plumb", "not measured"] | UpDownOff
Line = Literal["level", "not measured"] | AcrossOff


class Diagonals(Group):
    """Corner to corner: rising right is from the left foot to the right of the head."""

    rising_right: Reading = Field(default_factory=NotMeasured)
    rising_left: Reading = Field(default_factory=NotMeasured)


class Rake(Group):
    """A ceiling that slopes: from the floor up to it at the left and the right end."""

    left: Reading
    right: Reading


class InTheWay(Group):
    """A thing on the wall that a leaf or a track must clear; from the left edge of the opening."""

    what: Words
    from_left: Offset
    height: Reading
    stands_out: Reading


Lines = Annotated[
    dict[Name, Reading],
    Field(
        description="heights in the room that a rail may be held at, above the highest floor "
        "under the door: {hall door lock rail: 905}"
    ),
]


class SurveySpec(Block):
    """One opening as measured. What is left out counts as not measured."""

    widths: UpDown
    heights: Across | None = Field(default=None, description="head to floor")
    rake: Rake | None = Field(
        default=None, description="where the ceiling slopes, as under a stair: floor to soffit"
    )
    left_side: Side | None = Field(
        default=None, description="plumb, or off a plumb line at its foot"
    )
    right_side: Side | None = Field(
        default=None, description="plumb, or off a plumb line at its foot"
    )
    head: Line | None = None
    floor: Line | None = None
    ceiling: Line | None = None
    diagonals: Diagonals | None = None
    floor_in_travel: Offset | None = Field(
        default=None,
        description="the highest floor in the leaf's way, above that under the shut door",
    )
    foot_above_floor: Reading | None = Field(
        default=None,
        description="how high the opening begins, of a case or a niche; `floor` is then its foot",
    )
    left_of: Name | None = Field(
        default=None, description="the survey whose left end this wall comes to"
    )
    right_of: Name | None = Field(
        default=None, description="the survey from whose right end this wall goes on"
    )
    turns: Angle | None = Field(
        default=None, description="between this wall and that one, seen from above; 90 deg unsaid"
    )
    depth: Reading | None = None
    wall: Reading | None = Field(default=None, description="thickness of the wall")
    fixing: Literal["solid timber", "studs", "masonry", "board only", "not known"]
    board_over_fixing: Reading | None = None
    studs: list[Reading] | None = Field(
        default=None, description="middles of the studs from the left"
    )
    skirting: LengthPair | None = Field(default=None, description="high x thick")
    casing: LengthPair | None = Field(default=None, description="wide x thick")
    in_the_way: list[InTheWay] | None = None
    lines: Lines | None = None
    route: LengthTriple | None = Field(default=None, description="wide x high x long")
    date: Date | None = None
    by: Words | None = None
