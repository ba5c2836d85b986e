"""What stands in a design file: the values a maker writes, and the blocks that hold them.

Every number comes through here from the maker's own text, so `1.50` and `3-1/2` are read
as a maker reads them, and every figure knows its file, its line and whether it was
measured, chosen, a habit of the house or left to the tool.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Annotated, Any, ClassVar, Self

from pydantic import (
    BaseModel,
    ConfigDict,
    ModelWrapValidatorHandler,
    PlainValidator,
    PrivateAttr,
    WithJsonSchema,
    model_validator,
)
from pydantic_core import PydanticCustomError

from parametric.figures import Figure, Origin, Where
from parametric.units import (
    ANGLE,
    COVERAGE,
    DENSITY,
    FORCE,
    MASS,
    MOVEMENT,
    PERCENT,
    Measure,
    NotALength,
    NotAMeasure,
    Unit,
    no_job_is_longer,
    read_length,
)

NOWHERE = Where("", 0)


class Text(str):
    """A value as the maker wrote it, with its place, its origin and its file's unit."""

    __slots__ = ("origin", "source", "unit", "where")

    where: Where | None
    origin: Origin
    unit: Unit
    source: str | None

    def __new__(
        cls,
        value: str,
        *,
        where: Where | None = None,
        origin: Origin = "chosen",
        unit: Unit = "mm",
        source: str | None = None,
    ) -> Text:
        """Plain text becomes a written value; without a place it is one of the tool's own."""
        self = str.__new__(cls, value)
        self.where = where
        self.origin = origin
        self.unit = unit
        self.source = source
        return self


class Branch(dict[str, Any]):
    """The keys under one heading, or inside one pair of braces, before they are understood.

    `lines` and `origins` say for every key where it stands and which layer it came from.
    """

    def __init__(self, heading: str, here: Where | None) -> None:
        super().__init__()
        self.heading = heading
        self.here = here
        self.lines: dict[str, Where | None] = {}
        self.origins: dict[str, Origin] = {}


def refuse(
    code: str,
    message: str,
    *,
    found: str = "",
    allowed: str = "",
    fix: str = "",
    where: Where | None = None,
) -> PydanticCustomError:
    """The answer to a value that cannot be: raise it from a validator.

    `{key}` in the message stands for the key the value was written under, and `{heading}`
    for the block; `where` is the line at fault when it is another than that key's.
    """
    answer = {"code": code, "message": message, "found": found, "allowed": allowed, "fix": fix}
    return PydanticCustomError("refused", "{message}", {**answer, "where": where})


def text_of(value: object, wanted: str) -> Text:
    """Whatever came in, as text; plain Python values (in tests) count as chosen, in mm."""
    if isinstance(value, Text):
        return value
    if isinstance(value, (str, int, float)) and not isinstance(value, bool):
        return Text(str(value))
    raise refuse("wrong_value", f'"{{key}}" takes {wanted}, on one line.', allowed=wanted)


def figure_of(text: Text, value: Fraction, unit: str, *, about: bool = False) -> Figure:
    """A number that knows where it was written, and by whom."""
    return Figure(
        float(value),
        origin=text.origin,
        unit=unit,
        where=text.where,
        source=text.source,
        about=about,
    )


def _mm(value: str, near: Text) -> Fraction:
    """Exact mm of one length within a value, plus or minus."""
    try:
        length = read_length(value, near.unit)
        no_job_is_longer(value, near.unit, length)
    except NotALength as error:
        raise refuse(
            error.code, str(error), found=str(near), allowed=error.allowed, fix=error.fix
        ) from None
    return length


def _size(value: str, near: Text) -> Fraction:
    length = _mm(value, near)
    if length < 0:
        raise refuse(
            "negative_length",
            f'"{{key}}" cannot be less than nothing, and {value.strip()} is.',
            found=str(near),
            allowed="0 or more",
        )
    return length


def _length(value: object) -> Figure:
    text = text_of(value, "one length")
    return figure_of(text, _size(text, text), "mm")


@dataclass(frozen=True, slots=True)
class NotMeasured:
    """A reading the surveyor says was not taken."""

    where: Where | None = None


def _read(value: object, size: Callable[[str, Text], Fraction]) -> Figure | NotMeasured:
    text = text_of(value, "one reading, or: not measured")
    if text == "not measured":
        return NotMeasured(text.where)
    about = text.startswith("about ")
    return figure_of(text, size(text.removeprefix("about "), text), "mm", about=about)


@dataclass(frozen=True, slots=True)
class Equal:
    """A share that is as large as all the other equal ones of its list."""

    where: Where | None = None


@dataclass(frozen=True, slots=True)
class Rest:
    """A share that takes what is left over; one only in a list."""

    where: Where | None = None


@dataclass(frozen=True, slots=True)
class Parts:
    """A share in proportion: two parts beside one part."""

    count: Figure
    where: Where | None = None


def _share(value: object) -> Figure | Equal | Rest | Parts:
    text = text_of(value, "a length, equal, rest, or 2 parts")
    if text == "equal":
        return Equal(text.where)
    if text == "rest":
        return Rest(text.where)
    if parts := re.fullmatch(r"([0-9]{1,3}) parts?", text):
        if int(parts[1]) == 0:
            raise refuse(
                "wrong_value", "A share has at least 1 part.", found=str(text), allowed="1 part"
            )
        return Parts(figure_of(text, Fraction(parts[1]), ""), text.where)
    if re.fullmatch(r"[a-z ]+", text):
        raise refuse(
            "wrong_value",
            f'"{text}" is no size for {{key}}: write a length, equal, or rest.',
            found=str(text),
            allowed="a length, equal, rest, or 2 parts",
        )
    return _length(text)


_NUMBER_WORDS = {1: "one size", 2: "two sizes", 3: "three sizes"}


def _sizes(value: object, count: int) -> tuple[Figure, ...]:
    wanted = f"{_NUMBER_WORDS[count]} with x between them"
    text = text_of(value, wanted)
    written = _apart(text)
    if len(written) != count:
        gave = {1: "one", 2: "two", 3: "three"}.get(len(written), str(len(written)))
        raise refuse(
            "wrong_sizes",
            f"{{key}} takes {_NUMBER_WORDS[count]}{{order}}; you gave {gave}.",
            found=str(text),
            allowed=wanted,
        )
    return tuple(figure_of(text, _size(part, text), "mm") for part in written)


def _apart(text: Text) -> list[str]:
    """The sizes between the x's of a value."""
    written = [part.strip() for part in re.split(r"\s+x\s+", text)]
    if len(written) == 1 and re.search(r"[0-9\"] ?[xX×*] ?[0-9]", text):
        spaced = re.sub(r" ?[xX×*] ?", " x ", text)
        message = f"Write {spaced}, with a space each side of the x."
        raise refuse("wrong_sizes", message, found=str(text), allowed=spaced)
    return written


def sizes_of(text: Text, *, most: int, key: str) -> tuple[Figure, ...]:
    """One to `most` sizes with x between them: what was measured of a finished thing."""
    if len(written := _apart(text)) > most:
        wanted = f"up to {_NUMBER_WORDS[most]} with x between them"
        raise refuse("wrong_sizes", f"{key} takes {wanted}.", found=str(text), allowed=wanted)
    return tuple(figure_of(text, _size(part, text), "mm") for part in written)


def _count(value: object) -> Figure:
    text = text_of(value, "a whole number")
    if not re.fullmatch(r"[0-9]{1,4}", text):
        raise refuse(
            "not_a_count",
            f'"{{key}}" takes a whole number, not "{text}".',
            found=str(text),
            allowed="a whole number",
        )
    return figure_of(text, Fraction(text), "")


def measured(value: object, measure: Measure) -> Figure:
    """A number with its unit, in the unit used inside; a refusal says what to write instead."""
    text = text_of(value, f"{measure.what} with its unit: {measure.example}")
    try:
        return figure_of(text, measure.read(text), measure.unit)
    except NotAMeasure as error:
        raise refuse(
            error.code,
            str(error),
            found=str(text),
            allowed=" or ".join(measure.sizes),
            fix=f"Write it with its unit: {measure.example}.",
        ) from None


def with_unit(measure: Measure) -> tuple[PlainValidator, WithJsonSchema]:
    """How a value of this measure is read, and how an editor is told of it."""
    units = "|".join(re.escape(unit) for unit in measure.sizes)
    return (
        PlainValidator(lambda value: measured(value, measure)),
        _string(
            f"{measure.what} with its unit: {measure.example}",
            pattern=rf"^[0-9]+(\.[0-9]+)? ?({units})$",
        ),
    )


def _name(value: object) -> Text:
    text = text_of(value, "a name")
    if "," in text or " / " in text or not text.strip():
        raise refuse(
            "wrong_name",
            f'"{text}" is not a name: no comma and no " / " in one.',
            found=str(text),
            allowed="a name",
        )
    return text


def _date(value: object) -> Text:
    text = text_of(value, "a date")
    if not re.fullmatch(r"[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])", text):
        message = f'"{text}" is not a date: write it as 2026-11-20.'
        raise refuse("not_a_date", message, found=str(text), allowed="year-month-day")
    return text


def _scalar(description: str) -> WithJsonSchema:
    return WithJsonSchema({"type": ["string", "number"], "description": description})


def _string(description: str, **more: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "description": description, **more})


Length = Annotated[Figure, PlainValidator(_length), _scalar('a length: 784.5, 19 mm, 23-5/16"')]
"""A size, 0 or more: a Figure in mm."""

Reading = Annotated[
    Figure | NotMeasured,
    PlainValidator(lambda value: _read(value, _size)),
    _scalar("a reading: 1826, about 1826, or: not measured"),
]
"""A measured size, 0 or more: a Figure in mm, doubted or not, or a gap that is owned up to."""

Offset = Annotated[
    Figure | NotMeasured,
    PlainValidator(lambda value: _read(value, _mm)),
    _scalar("a reading off a line, with its sign: 3, -2, about 3, or: not measured"),
]
"""A measured distance off a plumb or level line, + or -."""

Share = Annotated[
    Figure | Equal | Rest | Parts,
    PlainValidator(_share),
    _scalar("a length, equal, rest, or 2 parts"),
]
"""The size of one thing in a list that must add up."""

LengthPair = Annotated[
    tuple[Figure, Figure],
    PlainValidator(lambda value: _sizes(value, 2)),
    _string("two sizes with x between them: 9 x 18"),
]
"""Two sizes of one thing, in the order of its block. Say the order in the field's description."""

LengthTriple = Annotated[
    tuple[Figure, Figure, Figure],
    PlainValidator(lambda value: _sizes(value, 3)),
    _string("three sizes with x between them: 150 x 32 x 14"),
]
"""Three sizes of one thing, in the order of its block. Say the order in the field's description."""

Count = Annotated[
    Figure,
    PlainValidator(_count),
    WithJsonSchema(
        {"type": ["integer", "string"], "pattern": "^[0-9]+$", "description": "a whole number"}
    ),
]
"""A whole number; the Figure has no unit."""

Angle = Annotated[Figure, *with_unit(ANGLE)]
"""`3 deg`: the Figure is 3.0, in deg."""
Percent = Annotated[Figure, *with_unit(PERCENT)]
"""`8 %`: the Figure is 8.0, in %."""
Mass = Annotated[Figure, *with_unit(MASS)]
Force = Annotated[Figure, *with_unit(FORCE)]
Density = Annotated[Figure, *with_unit(DENSITY)]
Coverage = Annotated[Figure, *with_unit(COVERAGE)]
"""m2 per litre (the gallon is the US one)"""
Movement = Annotated[Figure, *with_unit(MOVEMENT)]
"""per cent of size per per cent of moisture: 0.289 for a coefficient of 0.00289"""

Name = Annotated[Text, PlainValidator(_name), _string("a name")]
"""A block's name or a catalogue entry."""
Words = Annotated[Text, PlainValidator(lambda value: text_of(value, "words")), _scalar("words")]
Date = Annotated[Text, PlainValidator(_date), _string("a date: 2026-11-20")]
"""Year, month, day."""
Pins = dict[str, Length]
"""Numbers held to what is written, by the name that `explain` prints."""


def spoken(field: str) -> str:
    """A field's key as it is written: words with spaces (`in_` is `in`)."""
    return field.rstrip("_").replace("_", " ")


class Group(BaseModel):
    """Keys that belong together: a block, one line of a list, or one pair of braces."""

    model_config: ClassVar[ConfigDict] = ConfigDict(
        frozen=True,
        extra="forbid",
        alias_generator=spoken,
        arbitrary_types_allowed=True,
    )

    _heading: str = PrivateAttr(default="")
    _here: Where = PrivateAttr(default=NOWHERE)
    _lines: Mapping[str, Where | None] = PrivateAttr(default_factory=dict)
    _origins: Mapping[str, Origin] = PrivateAttr(default_factory=dict)

    @model_validator(mode="wrap")
    @classmethod
    def _keep_place(cls, data: Any, handler: ModelWrapValidatorHandler[Self]) -> Self:
        made = handler(data)
        if isinstance(data, Branch):
            made._heading = data.heading
            made._here = data.here or NOWHERE
            made._lines = data.lines
            made._origins = data.origins
        return made

    def stands_for(self, other: Group) -> None:
        """Take the place of a block in the file: what is made of it answers at its lines."""
        for kept in ("_heading", "_here", "_lines", "_origins"):
            setattr(self, kept, getattr(other, kept))

    @property
    def heading(self) -> str:
        """The heading as written: `leaf glazed`."""
        return self._heading

    @property
    def here(self) -> Where:
        """The line of the heading, or of the list's line."""
        return self._here

    def line(self, key: str) -> Where:
        """The line of a key as written (`floor gap`); the heading's when the key is not written."""
        return self._lines.get(key) or self._here

    def origin(self, key: str) -> Origin:
        """Which layer a key came from; `assumed` when nobody wrote it."""
        return self._origins.get(key, "assumed")


class Block(Group):
    """One thing under a heading at the margin."""

    like: Name | None = None
    note: Words | None = None
