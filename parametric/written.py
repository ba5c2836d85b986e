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

from parametric.figures import Figure, Origin, Where, plain
from parametric.units import FOOT, INCH, NotALength, Unit, read_length

NOWHERE = Where("", 0)
LONGEST = 12_000
"""No length in a job of doors or casework is longer, mm. Common practice, no source."""


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

    def __reduce__(self) -> tuple[Any, ...]:
        return (str, (str(self),))


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


def _text(value: object, wanted: str) -> Text:
    """Whatever came in, as text; plain Python values (in tests) count as chosen, in mm."""
    if isinstance(value, Text):
        return value
    if isinstance(value, (str, int, float)) and not isinstance(value, bool):
        return Text(str(value))
    raise refuse("wrong_value", f'"{{key}}" takes {wanted}, on one line.', allowed=wanted)


def _figure(text: Text, value: Fraction, unit: str, *, about: bool = False) -> Figure:
    return Figure(
        float(value),
        origin=text.origin,
        unit=unit,
        where=text.where,
        source=text.source,
        about=about,
    )


# Lengths ------------------------------------------------------------------------------------


def _too_long(text: Text, value: Fraction) -> PydanticCustomError:
    """The answer to a length no job can hold: nearly always the wrong unit, or a digit too many."""
    written = re.sub(r" ?(mm|cm|m|in|\")$", "", text)
    suffix = text[len(written) :].strip() or text.unit
    size = abs(value)
    if suffix in ("in", '"', "inch"):
        said = f"{written} inches is {plain(float(size / FOOT // 1))} feet."
        meant = read_length(f"{written} mm", "mm"), f"{written} mm"
    else:
        said = f"{written} {suffix} is {plain(round(float(size / 1000), 1))} metres."
        meant = (
            (size / 10, plain(float(size / 10)))
            if suffix == "mm"
            else (size / 1000, f"{written} mm")
        )
    close = f" Did you mean {meant[1]}?" if abs(meant[0]) <= LONGEST else ""
    return refuse(
        "absurd_length",
        said + close,
        found=str(text),
        allowed=f"up to {LONGEST} mm",
        fix=f"Write {meant[1]}." if close else "Measure again.",
    )


def _mm(value: str, near: Text) -> Fraction:
    """Exact mm of one length within a value; negative and absurd ones are told apart later."""
    try:
        length = read_length(value, near.unit)
    except NotALength as error:
        raise refuse(
            "not_a_length",
            str(error),
            found=str(near),
            allowed='a length: 784.5, 19 mm, 23-5/16"',
        ) from None
    if abs(length) > LONGEST:
        part = Text(value.strip(), where=near.where, unit=near.unit)
        raise _too_long(part, length)
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
    text = _text(value, "one length")
    return _figure(text, _size(text, text), "mm")


@dataclass(frozen=True, slots=True)
class NotMeasured:
    """A reading the surveyor says was not taken."""

    where: Where | None = None


def _read(value: object, size: Callable[[str, Text], Fraction]) -> Figure | NotMeasured:
    text = _text(value, "one reading, or: not measured")
    if text == "not measured":
        return NotMeasured(text.where)
    if text.startswith("about "):
        return _figure(text, size(text.removeprefix("about "), text), "mm", about=True)
    return _figure(text, size(text, text), "mm")


def _reading(value: object) -> Figure | NotMeasured:
    return _read(value, _size)


def _offset(value: object) -> Figure | NotMeasured:
    return _read(value, _mm)


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
    text = _text(value, "a length, equal, rest, or 2 parts")
    if text == "equal":
        return Equal(text.where)
    if text == "rest":
        return Rest(text.where)
    if parts := re.fullmatch(r"([0-9]{1,3}) parts?", text):
        if int(parts[1]) == 0:
            raise refuse("wrong_value", "A share has at least 1 part.", found=str(text))
        return Parts(_figure(text, Fraction(parts[1]), ""), text.where)
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
    text = _text(value, wanted)
    written = [part.strip() for part in re.split(r"\s+x\s+", text)]
    if len(written) == 1 and re.search(r"[0-9\"] ?[xX×*] ?[0-9]", text):
        spaced = re.sub(r" ?[xX×*] ?", " x ", text)
        raise refuse("wrong_sizes", f"Write {spaced}, with a space each side of the x.")
    if len(written) != count:
        gave = {1: "one", 2: "two", 3: "three"}.get(len(written), str(len(written)))
        raise refuse(
            "wrong_sizes",
            f"{{key}} takes {_NUMBER_WORDS[count]}{{order}}; you gave {gave}.",
            found=str(text),
            allowed=wanted,
        )
    return tuple(_figure(text, _size(part, text), "mm") for part in written)


def _pair(value: object) -> tuple[Figure, Figure]:
    first, second = _sizes(value, 2)
    return first, second


def _triple(value: object) -> tuple[Figure, Figure, Figure]:
    first, second, third = _sizes(value, 3)
    return first, second, third


def sizes_of(text: Text, *, most: int, key: str) -> tuple[Figure, ...]:
    """One to `most` sizes with x between them: what was measured of a finished thing."""
    written = [part.strip() for part in re.split(r"\s+x\s+", text)]
    if len(written) > most:
        raise refuse("wrong_sizes", f"{key} takes up to {_NUMBER_WORDS[most]} with x between them.")
    return tuple(_figure(text, _size(part, text), "mm") for part in written)


# Numbers that are not lengths ---------------------------------------------------------------


def _count(value: object) -> Figure:
    text = _text(value, "a whole number")
    if not re.fullmatch(r"[0-9]{1,4}", text):
        raise refuse(
            "not_a_count",
            f'"{{key}}" takes a whole number, not "{text}".',
            found=str(text),
            allowed="a whole number",
        )
    return _figure(text, Fraction(text), "")


_POUND = Fraction(45_359_237, 100_000_000)
_GRAVITY = Fraction(980_665, 100_000)
_FOOT_M = FOOT / 1000
_GALLON_L = Fraction(3_785_411_784, 10**9)
_NUMBER = re.compile(r"(?P<number>[0-9]{1,9}(?:\.[0-9]{1,9})?) ?(?P<unit>\S.*)?")


@dataclass(frozen=True, slots=True)
class _Measure:
    """A quantity that carries its unit: its name, its units' sizes, and how to write it."""

    what: str
    unit: str
    sizes: Mapping[str, Fraction]
    example: str

    def read(self, value: object) -> Figure:
        """The figure behind a number with its unit; a unit is never guessed."""
        text = _text(value, f"{self.what} with its unit: {self.example}")
        found = _NUMBER.fullmatch(text)
        article = "An" if self.what[0] in "aeiou" else "A"
        if found is None:
            comma = re.match(r"[0-9]+,[0-9]+", text)
            raise refuse(
                "wrong_value",
                f"Write {comma[0].replace(',', '.')} with a point."
                if comma
                else f'"{text}" is not {article.lower()} {self.what}: write {self.example}.',
                found=str(text),
                allowed=self.example,
            )
        size = self.sizes.get(found["unit"] or "")
        if size is None:
            raise refuse(
                "no_unit",
                f"{article} {self.what} needs its unit: {self.example}.",
                found=str(text),
                allowed=" or ".join(self.sizes),
                fix=f"Write it with its unit: {self.example}.",
            )
        return _figure(text, Fraction(found["number"]) * size, self.unit)

    @property
    def schema(self) -> WithJsonSchema:
        """How an editor is told of it."""
        units = "|".join(re.escape(unit) for unit in self.sizes)
        return WithJsonSchema(
            {
                "type": "string",
                "pattern": rf"^[0-9]+(\.[0-9]+)? ?({units})$",
                "description": f"{self.what} with its unit: {self.example}",
            }
        )


_PERCENT = _Measure("percentage", "%", {"%": Fraction(1)}, "8 %")
_ANGLE = _Measure("angle", "deg", {"deg": Fraction(1)}, "3 deg")
_MASS = _Measure("weight", "kg", {"kg": Fraction(1), "lb": _POUND}, "25 kg or 55 lb")
_DENSITY = _Measure(
    "density",
    "kg/m3",
    {"kg/m3": Fraction(1), "lb/ft3": _POUND / _FOOT_M**3},
    "480 kg/m3 or 30 lb/ft3",
)
_AREAL = _Measure(
    "weight of glass",
    "kg/m2",
    {"kg/m2": Fraction(1), "lb/ft2": _POUND / _FOOT_M**2},
    "15 kg/m2 or 3.1 lb/ft2",
)
_LOAD = _Measure(
    "load",
    "kg/m",
    {"kg/m": Fraction(1), "lb/ft": _POUND / _FOOT_M},
    "30 kg/m or 20 lb/ft",
)
_STIFFNESS = _Measure(
    "stiffness",
    "N/mm2",
    {"N/mm2": Fraction(1), "psi": _POUND * _GRAVITY / INCH**2},
    "11000 N/mm2 or 1600000 psi",
)
_COVERAGE = _Measure(
    "coverage",
    "m2/litre",
    {"m2 per litre": Fraction(1), "ft2 per gallon": _FOOT_M**2 / _GALLON_L},
    "11 m2 per litre or 450 ft2 per gallon",
)
_MOVEMENT = _Measure("movement", "% per %", {"% per %": Fraction(1)}, "0.289 % per %")


# Words --------------------------------------------------------------------------------------


def _name(value: object) -> Text:
    text = _text(value, "a name")
    if "," in text or " / " in text or not text.strip():
        raise refuse("wrong_name", f'"{text}" is not a name: no comma and no " / " in one.')
    return text


def _words(value: object) -> Text:
    return _text(value, "words")


def _date(value: object) -> Text:
    text = _text(value, "a date")
    if not re.fullmatch(r"[0-9]{4}-(0[1-9]|1[0-2])-(0[1-9]|[12][0-9]|3[01])", text):
        raise refuse(
            "not_a_date", f'"{text}" is not a date: write it as 2026-11-20.', found=str(text)
        )
    return text


def _scalar(description: str) -> WithJsonSchema:
    return WithJsonSchema({"type": ["string", "number"], "description": description})


def _string(description: str, **more: str) -> WithJsonSchema:
    return WithJsonSchema({"type": "string", "description": description, **more})


Length = Annotated[Figure, PlainValidator(_length), _scalar('a length: 784.5, 19 mm, 23-5/16"')]
"""A size, 0 or more: a Figure in mm."""

Reading = Annotated[
    Figure | NotMeasured,
    PlainValidator(_reading),
    _scalar("a reading: 1826, about 1826, or: not measured"),
]
"""A measured size, 0 or more: a Figure in mm, doubted or not, or a gap that is owned up to."""

Offset = Annotated[
    Figure | NotMeasured,
    PlainValidator(_offset),
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
    tuple[Figure, Figure], PlainValidator(_pair), _string("two sizes with x between them: 9 x 18")
]
"""Two sizes of one thing, in the order of its block. Say the order in the field's description."""

LengthTriple = Annotated[
    tuple[Figure, Figure, Figure],
    PlainValidator(_triple),
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

Percent = Annotated[Figure, PlainValidator(_PERCENT.read), _PERCENT.schema]
"""`8 %`: the Figure is 8.0, in %."""
Angle = Annotated[Figure, PlainValidator(_ANGLE.read), _ANGLE.schema]
"""deg"""
Mass = Annotated[Figure, PlainValidator(_MASS.read), _MASS.schema]
"""kg"""
Density = Annotated[Figure, PlainValidator(_DENSITY.read), _DENSITY.schema]
"""kg/m3"""
ArealWeight = Annotated[Figure, PlainValidator(_AREAL.read), _AREAL.schema]
"""kg/m2"""
Load = Annotated[Figure, PlainValidator(_LOAD.read), _LOAD.schema]
"""kg/m"""
Stiffness = Annotated[Figure, PlainValidator(_STIFFNESS.read), _STIFFNESS.schema]
"""N/mm2"""
Coverage = Annotated[Figure, PlainValidator(_COVERAGE.read), _COVERAGE.schema]
"""m2 per litre (the gallon is the US one)"""
Movement = Annotated[Figure, PlainValidator(_MOVEMENT.read), _MOVEMENT.schema]
"""per cent of size per per cent of moisture: 0.289 for a coefficient of 0.00289"""

Name = Annotated[Text, PlainValidator(_name), _string("a name")]
"""A block's name or a catalogue entry."""
Words = Annotated[Text, PlainValidator(_words), _scalar("words")]
"""Anything written for people."""
Date = Annotated[Text, PlainValidator(_date), _string("a date: 2026-11-20")]
"""Year, month, day."""
Pins = dict[str, Length]
"""Numbers held to what is written, by the name that `explain` prints."""


# Blocks -------------------------------------------------------------------------------------


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
