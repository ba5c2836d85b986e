"""One thing the owner of the design must know, as data."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from parametric.figures import Where

Level = Literal["stop", "caution", "note"]
_ORDER: dict[Level, int] = {"stop": 0, "caution": 1, "note": 2}


@dataclass(frozen=True, slots=True, kw_only=True)
class Problem:
    """A stop, a caution or a note.

    `code` is stable and outlives the wording; `about` is the name of the thing
    (see names.py), "" for the file as a whole. `unreadable` marks what must be mended
    before the design can be understood at all (exit 2 instead of 1). `no_size`
    marks a zero or negative size: nothing is written then, even when asked for.
    """

    code: str
    level: Level
    message: str
    where: Where | None = None
    about: str = ""
    found: str = ""
    allowed: str = ""
    fix: str = ""
    unreadable: bool = False
    no_size: bool = False


def in_order(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Stops first, then cautions, then notes; within a level by file and line."""
    return tuple(
        sorted(
            dict.fromkeys(problems),
            key=lambda p: (_ORDER[p.level], p.where or Where("", 0), p.code, p.message),
        )
    )


def stops(problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """Only the stops."""
    return tuple(p for p in problems if p.level == "stop")


def exit_status(problems: Iterable[Problem]) -> int:
    """2 when the design cannot be read, 1 when it cannot be made, else 0."""
    found = stops(problems)
    if any(p.unreadable for p in found):
        return 2
    return 1 if found else 0
