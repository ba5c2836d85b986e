"""What is said of one of several doors says which; what is said of all of them is said once.

Example: "Door hall: The gap under the leaves runs from 8 to 14."
Source: common practice, no source.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Iterable

from parametric.names import join, short
from parametric.problems import Problem
from parametric.resolve.door import Door


def told_of_doors(found: Iterable[tuple[Door, tuple[Problem, ...]]]) -> tuple[Problem, ...]:
    """The problems of all doors of a job, each with the place of the door that it is said of.

    Args:
        found: each door with its own problems.
    """
    told: dict[Problem, list[tuple[Problem, Door]]] = {}
    for door, problems in found:
        for problem in problems:
            told.setdefault(dataclasses.replace(problem, about=""), []).append((problem, door))
    return tuple(_of_all(own) for own in told.values())


def _of_all(told: list[tuple[Problem, Door]]) -> Problem:
    """What is said of several doors in the same words, once: of their leaves, if not of one."""
    (problem, door), *others = told
    if not others:
        return _of(problem, door) if door.place else problem
    if all(other.about == problem.about for other, _ in others):
        return problem
    return dataclasses.replace(problem, about=short(problem.about))


def _of(problem: Problem, door: Door) -> Problem:
    """The same, by the place of its door where neither its leaf's letter nor a name says it."""
    message, about = problem.message, problem.about
    if not _says_which(message, door):
        message = door.told(message)
    if not _says_which(about, door):
        about = join(door.place, about)
    return dataclasses.replace(problem, message=message, about=about)


def said_of(door: Door, among: Iterable[Door], problems: Iterable[Problem]) -> tuple[Problem, ...]:
    """What is said of one door, and of all of them; its own place is left out of the words.

    Args:
        door: the door.
        among: all doors of the job.
        problems: the problems of the job.
    """
    others = [one for one in among if one.place != door.place]
    return tuple(
        dataclasses.replace(problem, message=_without_place(problem.message, door))
        for problem in problems
        if _of_it(problem, door) or not any(_of_it(problem, other) for other in others)
    )


def _without_place(message: str, door: Door) -> str:
    return message.removeprefix(door.told("")) if door.place else message


def _of_it(problem: Problem, door: Door) -> bool:
    return _says_which(problem.about, door) or _says_which(problem.message, door)


def _says_which(words: str, door: Door) -> bool:
    places = [door.place, door.place[:1].upper() + door.place[1:]]
    return any(place and place in words for place in places) or any(
        re.search(rf"\b[Ll]eaf {leaf.letter}\b", words) for leaf in door.leaves
    )
