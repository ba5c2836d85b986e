"""`at least 30`: a size that takes what is left over, as long as it is no less than this."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Annotated

from pydantic import PlainValidator, TypeAdapter, WithJsonSchema

from parametric.figures import Figure, Where
from parametric.written import Length, Text

_LENGTH: TypeAdapter[Figure] = TypeAdapter(Length)
_WORDS = "at least "


@dataclass(frozen=True, slots=True)
class AtLeast:
    """A size that grows into what is left, mm."""

    least: Figure
    where: Where | None = None


def _read(value: object) -> Figure | AtLeast:
    if not isinstance(value, Text) or not value.startswith(_WORDS):
        return _LENGTH.validate_python(value)
    rest = Text(
        value.removeprefix(_WORDS),
        where=value.where,
        origin=value.origin,
        unit=value.unit,
        source=value.source,
    )
    return AtLeast(_LENGTH.validate_python(rest), value.where)


Filling = Annotated[
    Figure | AtLeast,
    PlainValidator(_read),
    WithJsonSchema(
        {"type": ["string", "number"], "description": "a length, or: at least 30"},
    ),
]
"""What closes the gap between a case and a wall or a ceiling that is not true."""


def least_of(filling: Figure | AtLeast) -> Figure:
    """The size itself, or the least it may be."""
    return filling.least if isinstance(filling, AtLeast) else filling
