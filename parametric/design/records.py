"""What happened to a design after it was drawn: approved, accepted, built, cut, revised.

Records never change a designed number. They stand in the design file or beside it.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from pydantic import TypeAdapter, ValidationError

from parametric.figures import Figure, Where
from parametric.written import Date, Group, Name, Text, Words, refuse, sizes_of

_DATE: TypeAdapter[Text] = TypeAdapter(Date)


class ApprovedSpec(Group):
    """The client's signature: which revision, and the fingerprint of what was signed.

    `option` is the letter of the option that was signed, of a design that has some.
    """

    revision: Name
    option: Name | None = None
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
            allowed="a letter, a date and a reason",
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
            allowed="initials, a date and a reason",
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


def read_cut(mark: Text) -> Text:
    """One part that is already sawn, by its label."""
    return mark
