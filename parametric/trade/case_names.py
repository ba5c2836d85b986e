"""How several cases are named in a sentence."""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence


def listed(names: Iterable[str]) -> str:
    """`cabinet outer 1, cabinet outer 2 and cabinet middle`."""
    *most, last = names
    return f"{', '.join(most)} and {last}" if most else last


def together(names: Sequence[str]) -> str:
    """The names of cases, those that are numbered on as one: `cabinet b 1 to 20`."""
    stems: dict[str, list[str]] = {}
    for name in names:
        numbered = re.fullmatch(r"(.+) ([0-9]+)", name)
        stems.setdefault(numbered[1] if numbered else name, []).append(name)
    return listed(part for stem, own in stems.items() for part in _numbered_on(stem, own))


def _numbered_on(stem: str, names: list[str]) -> Iterator[str]:
    """`cabinet b 1 to 3`, `cabinet b 7`."""
    if names == [stem]:
        yield stem
        return
    numbers = sorted(int(name.removeprefix(stem)) for name in names)
    first = last = numbers[0]
    for number in (*numbers[1:], None):
        if number == last + 1:
            last = number
            continue
        if last - first > 1:
            yield f"{stem} {first} to {last}"
        else:
            yield from (f"{stem} {each}" for each in range(first, last + 1))
        if number is not None:
            first = last = number


def begun(sentence: str) -> str:
    """A sentence that begins with a name, with its first letter large."""
    return sentence[:1].upper() + sentence[1:]
