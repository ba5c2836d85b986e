"""The answers to headings and lines that cannot stand where they are."""

from __future__ import annotations

import difflib
import re

from parametric.design.language import BLOCKS, FILE_KEYS, full_heading, split_heading
from parametric.figures import Where
from parametric.names import nearest
from parametric.problems import Problem


def stop(
    code: str,
    message: str,
    where: Where | None,
    *,
    about: str = "",
    found: str = "",
    allowed: str = "",
    fix: str = "",
) -> Problem:
    """A stop that must be mended before the design can be understood at all."""
    return Problem(
        code=code,
        level="stop",
        message=message,
        where=where,
        unreadable=True,
        about=about,
        found=found,
        allowed=allowed,
        fix=fix,
    )


def not_used_yet(what: str, about: str, where: Where) -> Problem:
    """The note on something legal and harmless that waits for a later version."""
    return Problem(
        code="not_used_yet",
        level="note",
        message=f"{what} is kept, but this version works nothing out from it yet.",
        where=where,
        about=about,
        found=about,
        allowed="it may stay",
    )


def doubled(key: str, heading: str, first: int, where: Where) -> Problem:
    """A key or a heading that stands twice; `first` is the line of the first."""
    place = f" in {heading}" if heading else ""
    also = "here and earlier on this line" if first == where.line else f"here and on line {first}"
    return stop(
        "doubled_key",
        f'"{key}" is written twice{place}, {also}; keep one.',
        where,
        about=heading or key,
        found=key,
        allowed="once",
        fix="Take one of them out.",
    )


def empty(key: str, where: Where) -> Problem:
    """A key with nothing after its colon."""
    return stop(
        "empty_value",
        f'Nothing is written after "{key}:" (a # starts a comment).',
        where,
        about=key,
        found="nothing",
        allowed="a value",
        fix="Write the value, or take the line out.",
    )


def no_keys(heading: str, written: str, where: Where) -> Problem:
    """A heading with a value where its keys should be."""
    loose = re.fullmatch(r"([a-z][a-z ]*?) ?([-+]?[0-9].*)", written)
    if loose:
        return stop(
            "no_colon",
            f"A colon is missing: write `{loose[1]}: {loose[2]}`.",
            where,
            found=written,
            allowed="key: value",
            fix=f"Write `{loose[1]}: {loose[2]}`.",
        )
    return stop(
        "wrong_value",
        f'"{heading}" takes keys on the lines under it, or in braces: `{heading}: {{key: value}}`.',
        where,
        about=heading,
        found=written,
        allowed="keys and values",
        fix="Write its keys on the lines under it, two spaces in.",
    )


def not_of_a_house(heading: str, where: Where) -> Problem:
    """A fact of one job in a house file."""
    return stop(
        "not_of_a_house",
        f'"{heading}" belongs to one job; a house file holds only what is the same in every job.',
        where,
        about=heading,
        found=heading,
        allowed="habits of the house",
        fix="Write it in the design file.",
    )


def unknown_heading(heading: str, where: Where) -> Problem:
    """The answer to a heading whose kind is no word of the language."""
    plain = re.sub(r"[_\s]+", " ", heading).strip().lower()
    known = (*BLOCKS, *FILE_KEYS)
    if plain != heading and (split_heading(plain) or plain in FILE_KEYS):
        return stop(
            "unknown_block",
            f'No such block as "{heading}": write "{plain}", lower case'
            + (", with a space." if " " in plain else "."),
            where,
            found=heading,
            allowed=plain,
            fix=f"Write `{plain}:`.",
        )
    words = heading.split()
    best: tuple[float, str] | None = None
    for count in range(1, len(words) + 1):
        close = nearest(" ".join(words[:count]), known, 0.65)
        if close:
            near = full_heading(close, " ".join(words[count:]))
            likeness = _likeness(heading, near)
            if best is None or likeness > best[0]:
                best = (likeness, near)
    return stop(
        "unknown_block",
        f'No such block as "{heading}".' + (f' Did you mean "{best[1]}"?' if best else ""),
        where,
        found=heading,
        allowed=", ".join(known),
        fix=f"Write `{best[1]}:`." if best else "Take it out.",
    )


def _likeness(one: str, other: str) -> float:
    return difflib.SequenceMatcher(None, one, other).ratio()
