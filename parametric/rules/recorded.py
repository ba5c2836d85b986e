"""Records of a design that speak of things it does not have.

Why: a record that names nothing records nothing.
Example: `as built: {A lock rial: 784}`.
Source: the names of the design itself.
"""

from __future__ import annotations

from collections.abc import Iterable

from parametric.design.records import Records
from parametric.figures import Figure, Where, origin_line
from parametric.names import match, nearest_name
from parametric.problems import Problem


def records_of_nothing(
    records: Records, parts: Iterable[str], figures: Iterable[str], where: Where
) -> tuple[Problem, ...]:
    """As-built sizes and cut marks must name a part or a number; `cut` may name all of a kind."""
    parts, figures = tuple(parts), tuple(figures)
    known = (*parts, *figures)
    problems = []
    for written, sizes in records.as_built.items():
        if not match(written, known):
            problems.append(_unknown(written, known, _line(sizes) or where, "as built"))
    for written in records.cut:
        name = str(written)
        if not match(name, parts) and not match(name.removesuffix("s"), parts):
            problems.append(_unknown(name, parts, written.where or where, "cut"))
    return tuple(problems)


def _line(sizes: tuple[Figure, ...]) -> Where | None:
    return origin_line(sizes[0]) if sizes else None


def _unknown(written: str, known: Iterable[str], where: Where, about: str) -> Problem:
    near = nearest_name(written, known)
    return Problem(
        code="unknown_name",
        level="stop",
        message=f'No part or number is called "{written}".'
        + (f' Did you mean "{near}"?' if near else ""),
        where=where,
        about=about,
        found=written,
        allowed="a name that `stilewright explain` or the cut list prints",
        fix=f"Write {near}." if near else "Take the line out.",
        unreadable=True,
    )
