"""What is wrong among the options of one design, and whose problem is whose.

Each option is checked as a whole design. What is said of all of them is said once; what is
said of some begins with their letters.

Example: "Option B: The gap under the doors is uneven."
Source: common practice, no source.
"""

from __future__ import annotations

import dataclasses
from collections.abc import Mapping, Sequence

from parametric.design import Option
from parametric.problems import Problem
from parametric.trade.fingerprint import mark

_OF_A_BLOCK = "never_called"


def told_together(by_letter: Mapping[str, tuple[Problem, ...]]) -> tuple[Problem, ...]:
    """The problems of all options, each once, with the letters of those it is said of.

    A block that one option has no use for serves another: it is told when none uses it.
    """
    letters: dict[Problem, list[str]] = {}
    for letter, problems in by_letter.items():
        for problem in dict.fromkeys(problems):
            letters.setdefault(problem, []).append(letter)
    return tuple(
        problem if len(found) == len(by_letter) else _of(problem, found)
        for problem, found in letters.items()
        if problem.code != _OF_A_BLOCK or len(found) == len(by_letter)
    )


def _of(problem: Problem, letters: Sequence[str]) -> Problem:
    whose = "Option" if len(letters) == 1 else "Options"
    said = " and ".join(letters) if len(letters) < 3 else ", ".join(letters)
    return dataclasses.replace(problem, message=f"{whose} {said}: {problem.message}")


def same_doors(fingerprints: Mapping[Option, str]) -> tuple[Problem, ...]:
    """A stop for each option that comes to the very doors of one before it.

    Args:
        fingerprints: the whole digest of each, in the order of their letters.
    """
    first: dict[str, Option] = {}
    found = []
    for option, whole in fingerprints.items():
        earlier = first.setdefault(whole, option)
        if earlier is not option:
            found.append(
                Problem(
                    code="option_same_doors",
                    level="stop",
                    message=f"Option {option.letter} comes to the same doors as option "
                    f"{earlier.letter}, mark {mark(whole)}: what differs in it is not used.",
                    where=option.where,
                    about=f"option {option.letter}",
                    found=mark(whole),
                    allowed="a mark of its own",
                    fix="Change what the doors are made from, or take the option out.",
                )
            )
    return tuple(found)


def no_such_option(letter: str, known: Sequence[str], options: Sequence[Option]) -> Problem:
    """The answer to a letter that is asked for and not there."""
    there = ", ".join(option.said for option in options) if options else "no options"
    return Problem(
        code="unknown_option",
        level="stop",
        message=f'There is no option "{letter}" in this design: it has {there}.',
        about="option",
        found=letter or "nothing",
        allowed=", ".join(known),
        fix="Say one of these letters, or leave the option out.",
        unreadable=True,
    )
