"""What happened to a design after it was drawn: approved, accepted, built, cut, revised.

Records never change a designed number. They stand in the design file or beside it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

from pydantic import TypeAdapter, ValidationError
from pydantic_core import PydanticCustomError

from parametric.figures import Figure, Where
from parametric.written import Branch, Date, Group, Name, Text, Words, refuse, sizes_of

_DATE: TypeAdapter[Text] = TypeAdapter(Date)


class ApprovedSpec(Group):
    """The client's signature: which revision, and the fingerprint of what was signed."""

    revision: Name
    fingerprint: Name
    by: Words
    date: Date


@dataclass(frozen=True, slots=True, kw_only=True)
class Revision:
    """A letter, when, and why; the last is current."""

    letter: str
    date: str
    reason: str
    where: Where | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Accepted:
    """A caution, by the words it prints under, that somebody has answered for."""

    caution: str
    initials: str
    date: str
    reason: str
    where: Where | None


@dataclass(frozen=True, slots=True, kw_only=True)
class Records:
    """Everything that was recorded. As-built sizes are one, two or three figures in mm."""

    approved: ApprovedSpec | None = None
    accepted: tuple[Accepted, ...] = ()
    as_built: Mapping[str, tuple[Figure, ...]] = field(default_factory=lambda: MappingProxyType({}))
    cut: tuple[Text, ...] = ()


def _a_date(text: str) -> bool:
    try:
        _DATE.validate_python(text)
    except ValidationError:
        return False
    return True


def read_revision(letter: str, written: Text) -> Revision:
    """`B: 2026-11-19 lock rail raised`."""
    date, _, reason = written.partition(" ")
    if not re.fullmatch(r"[A-Z]{1,2}", letter) or not _a_date(date) or not reason.strip():
        raise refuse(
            "wrong_revision",
            "A revision is a letter, a date and a reason: `B: 2026-11-19 lock rail raised`.",
            found=f"{letter}: {written}",
            where=written.where,
        )
    return Revision(letter=letter, date=date, reason=reason.strip(), where=written.where)


def read_accepted(caution: str, written: Text) -> Accepted:
    """`floor gap uneven: JM 2026-11-20, client told and content`."""
    found = re.fullmatch(r"(\S{1,8}) (\S+), +(\S.*)", written)
    if found is None or not _a_date(found[2]):
        raise refuse(
            "wrong_accepted",
            "An accepted caution needs initials, a date and a reason: "
            "`JM 2026-11-20, client told`.",
            found=str(written),
            where=written.where,
        )
    return Accepted(
        caution=caution,
        initials=found[1],
        date=found[2],
        reason=found[3].strip(),
        where=written.where,
    )


def read_as_built(name: str, written: Text) -> tuple[Figure, ...]:
    """`A lite 1 daylight: 784 x 520`."""
    return sizes_of(written, most=3, key=name)


def read_cut(mark: Any) -> Text:
    """One part that is already sawn, by its label."""
    if not isinstance(mark, Text) or not mark.strip():
        raise refuse("wrong_value", "Each line of {key} is the name of one part, as on its label.")
    return mark


def each(
    tree: object, read: Any, problems: list[tuple[Where | None, PydanticCustomError]]
) -> list[Any]:
    """Read every entry of a record, and keep the refusals with their lines."""
    made: list[Any] = []
    entries: list[tuple[Where | None, tuple[Any, ...]]]
    if isinstance(tree, Branch):
        entries = [(tree.lines.get(key), (key, value)) for key, value in tree.items()]
    elif isinstance(tree, list):
        entries = [(getattr(value, "where", None), (value,)) for value in tree]
    else:
        return made
    for where, arguments in entries:
        try:
            if len(arguments) == 2 and not isinstance(arguments[1], Text):
                raise refuse("wrong_value", f'"{arguments[0]}" takes one line of text.')
            made.append(read(*arguments))
        except PydanticCustomError as error:
            problems.append((where, error))
    return made
