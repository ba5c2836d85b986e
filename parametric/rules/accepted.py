"""Cautions that somebody has answered for: they stay printed, with initials, date and reason."""

from __future__ import annotations

import dataclasses
from collections.abc import Iterable

from parametric.design.records import Accepted
from parametric.names import nearest
from parametric.problems import Problem


def accept(problems: Iterable[Problem], records: tuple[Accepted, ...]) -> tuple[Problem, ...]:
    """Print each acceptance with its caution; a stop cannot be accepted, nor what is not there."""
    problems = tuple(problems)
    return answered(problems, records) + nothing_to_accept(problems, records)


def cautions_of(problems: Iterable[Problem]) -> set[str]:
    """The names of the cautions, by which each is accepted."""
    return {p.about for p in problems if p.level == "caution"}


def answered(problems: tuple[Problem, ...], records: tuple[Accepted, ...]) -> tuple[Problem, ...]:
    """The problems, each caution that is accepted with its acceptance."""
    by_name = {record.caution: record for record in records}
    return tuple(
        dataclasses.replace(
            p,
            message=f"{p.message} Accepted by {record.initials} {record.date}: {record.reason}.",
        )
        if p.level == "caution" and (record := by_name.get(p.about)) is not None
        else p
        for p in problems
    )


def nothing_to_accept(
    problems: tuple[Problem, ...], records: tuple[Accepted, ...]
) -> tuple[Problem, ...]:
    """A stop for each acceptance of what is no caution."""
    cautions = cautions_of(problems)
    return tuple(
        _nothing_to_accept(record, cautions, problems)
        for record in records
        if record.caution not in cautions
    )


def _nothing_to_accept(
    record: Accepted, cautions: set[str], problems: tuple[Problem, ...]
) -> Problem:
    stopped = any(p.about == record.caution and p.level == "stop" for p in problems)
    near = nearest(record.caution, cautions)
    message = (
        f'"{record.caution}" is a stop, and a stop cannot be accepted.'
        if stopped
        else f'No caution is called "{record.caution}".'
        + (f' Did you mean "{near}"?' if near else "")
    )
    return Problem(
        code="nothing_to_accept",
        level="stop",
        message=message,
        where=record.where,
        about="accepted",
        found=record.caution,
        allowed=", ".join(sorted(cautions)) or "nothing: there are no cautions",
        fix="Take the line out, or use the caution's own words.",
        unreadable=not stopped,
    )
