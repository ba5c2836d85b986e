"""What is said of one of several doors says which; what is said of all of them is said once.

Example: "Door hall: The gap under the leaves runs from 8 to 14."
Source: common practice, no source.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterable

from parametric.names import join
from parametric.problems import Problem
from parametric.resolve.door import Door


def told_of_doors(found: Iterable[tuple[Door, tuple[Problem, ...]]]) -> tuple[Problem, ...]:
    """The problems of all doors of a job, each with the place of the door that it is said of.

    Args:
        found: each door with its own problems.
    """
    doors: dict[Problem, list[Door]] = {}
    for door, problems in found:
        for problem in problems:
            doors.setdefault(problem, []).append(door)
    return tuple(
        problem if len(own) > 1 else _of(problem, own[0]) for problem, own in doors.items()
    )


def _of(problem: Problem, door: Door) -> Problem:
    """The same, by the place of its door where neither its leaf's letter nor a name says it."""
    if not door.place or _says_which(problem.about, door):
        return problem
    message = problem.message
    if not _says_which(message, door):
        message = f"{door.place[0].upper()}{door.place[1:]}: {message}"
    return dataclasses.replace(problem, message=message, about=join(door.place, problem.about))


def _says_which(words: str, door: Door) -> bool:
    return door.place in words or any(
        re.search(rf"\b[Ll]eaf {leaf.letter}\b", words) for leaf in door.leaves
    )
