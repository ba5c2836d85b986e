"""The one list of names: a place and a quantity, from the outside in, joined by ` / `.

`leaf A / lock rail / length`. explain, pins, as-built records, numbers.json, STEP and
GLB nodes, labels and sheets all use these. No name holds a comma.
"""

from __future__ import annotations

import difflib
from collections.abc import Iterable

SEPARATOR = " / "


def join(*places: str) -> str:
    """Join the places of a name from the outside in; empty places fall away."""
    return SEPARATOR.join(p for p in places if p)


def short(name: str) -> str:
    """The last place of a name: what the thing is called on its own."""
    return name.rsplit(SEPARATOR, 1)[-1]


LEAVES = "ABCDEFGHJKLMNPQRSTUVWXYZ"
"""Leaves by letter; an I and an O read as a 1 and a 0."""


def leaf_letter(index: int) -> str:
    """Leaves are lettered from the left, through the whole job: 0 is A, and after Z comes AA."""
    before, last = divmod(index, len(LEAVES))
    return (leaf_letter(before - 1) if before else "") + LEAVES[last]


def _words(name: str) -> list[str]:
    return name.replace(SEPARATOR, " ").split()


def match(written: str, known: Iterable[str]) -> tuple[str, ...]:
    """The names that a short form may mean: the exact one, else all whose words it holds in order.

    `A lock rail` finds `leaf A / lock rail`; one hit is an answer, several are ambiguous,
    none is unknown.
    """
    known = tuple(known)
    if written in known:
        return (written,)
    want = _words(written)

    def fits(name: str) -> bool:
        words = iter(_words(name))
        return all(word in words for word in want)

    hits = tuple(name for name in known if fits(name))
    ends = tuple(name for name in hits if _words(name)[-1] == want[-1]) if want else ()
    fewest = min((len(_words(n)) for n in ends), default=0)
    shortest = tuple(n for n in ends if len(_words(n)) == fewest)
    return shortest or hits


def nearest(written: str, known: Iterable[str], cutoff: float = 0.6) -> str | None:
    """The known word most like the one written, or None when none is like it."""
    close = difflib.get_close_matches(written, list(known), 1, cutoff)
    return close[0] if close else None


def nearest_name(written: str, known: Iterable[str]) -> str | None:
    """The full name whose end, or any run of whose places, is most like what was written."""
    forms: dict[str, str] = {}
    for name in known:
        places = name.split(SEPARATOR)
        for start in range(len(places)):
            for end in range(len(places), start, -1):
                forms.setdefault(" ".join(places[start:end]), name)
    close = nearest(" ".join(_words(written)), forms, 0.75)
    return None if close is None else forms[close]
