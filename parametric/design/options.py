"""Options of one design: the blocks that differ, each read as a whole design of its own.

The design as it stands is option A. An option's keys replace the design's own, key by key and
a list whole, just as a block's own keys replace those of the block it is `like`.
"""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping
from dataclasses import dataclass

from parametric.design.answers import stop
from parametric.design.language import (
    NOT_BUILT_BLOCKS,
    OPTION_TAKES,
    full_heading,
    split_heading,
)
from parametric.design.layer import Layer
from parametric.design.understanding import not_built
from parametric.figures import Where
from parametric.names import nearest
from parametric.problems import Problem
from parametric.written import Branch, Text

AS_DRAWN = "A"
"""The letter of the design as it stands."""
_NAMED_NOTHING = "as first drawn"
LONGEST = 40
"""Letters that a tab of the client's page and a title block still hold."""
_OWN_KEYS = ("called", "like", "note")


@dataclass(frozen=True, slots=True, kw_only=True)
class Option:
    """One of several ways to make a job: its letter, what it is called, where it is written."""

    letter: str
    called: str
    where: Where

    @property
    def said(self) -> str:
        """As people read it: `B: one tall lite`."""
        return f"{self.letter}: {self.called}"


@dataclass(frozen=True, slots=True, kw_only=True)
class Way:
    """An option and the file as it reads with that option's keys in place.

    `option` is None for a design that has none.
    """

    option: Option | None
    layer: Layer


def ways(design: Layer, problems: list[Problem]) -> tuple[Way, ...]:
    """The ways to make a job, the design as it stands first.

    Args:
        design: the design file.
        problems: what is wrong with its options is added here; such an option is left out.
    """
    written = {name: tree for (kind, name), tree in design.blocks.items() if kind == "option"}
    bare = _without_options(design)
    if not written:
        return (Way(option=None, layer=bare),)
    found: dict[str, Way] = {}
    sound = {
        letter: tree
        for letter, tree in written.items()
        if _sound(letter, tree, design.lines["option", letter], written, problems)
    }
    named = sound.pop(AS_DRAWN, None)
    found[AS_DRAWN] = Way(
        option=Option(
            letter=AS_DRAWN,
            called=_NAMED_NOTHING if named is None else str(named["called"]),
            where=design.lines.get(("option", AS_DRAWN), design.first),
        ),
        layer=bare,
    )
    for letter in sorted(sound):
        layer = _laid(letter, sound, bare, problems)
        if layer is None:
            continue
        where = design.lines["option", letter]
        if _says_the_same(layer, bare):
            problems.append(_changes_nothing(letter, where))
            continue
        called = str(sound[letter]["called"])
        found[letter] = Way(option=Option(letter=letter, called=called, where=where), layer=layer)
    problems += _called_alike(tuple(found.values()))
    return tuple(found.values())


def _without_options(design: Layer) -> Layer:
    return dataclasses.replace(
        design,
        blocks={key: tree for key, tree in design.blocks.items() if key[0] != "option"},
        lines={key: where for key, where in design.lines.items() if key[0] != "option"},
    )


def _laid(
    letter: str, options: Mapping[str, Branch], bare: Layer, problems: list[Problem]
) -> Layer | None:
    """The file with an option's keys in place, after those of any option it is like."""
    steps: list[str] = []
    at = letter
    while at != AS_DRAWN:
        if at in steps or at not in options:
            problems.append(_no_such_like(steps[-1] if steps else letter, at, steps, options))
            return None
        steps.append(at)
        at = str(options[at].get("like", AS_DRAWN))
    layer = bare
    for step in reversed(steps):
        layer = _with(layer, options[step])
    return layer


def _with(layer: Layer, option: Branch) -> Layer:
    blocks, lines = dict(layer.blocks), dict(layer.lines)
    for words, own in option.items():
        if words in _OWN_KEYS:
            continue
        key = split_heading(words)
        assert key is not None
        assert isinstance(own, Branch)
        below = blocks.get(key)
        made = Branch(full_heading(*key), own.here)
        for tree in (below, own):
            if isinstance(tree, Branch):
                made.update(tree)
                made.lines |= tree.lines
                made.origins |= tree.origins
        if isinstance(below, Branch):
            made.here = below.here
        blocks[key] = made
        if key not in lines:
            lines[key] = own.here or layer.first
    return dataclasses.replace(layer, blocks=blocks, lines=lines)


def _says_the_same(one: Layer, other: Layer) -> bool:
    """Whether two readings of a file hold the same words, wherever they stand."""
    return dict(one.blocks) == dict(other.blocks)


# --- what is wrong with an option ----------------------------------------------------------


def _sound(
    letter: str,
    tree: object,
    where: Where,
    written: Mapping[str, object],
    problems: list[Problem],
) -> bool:
    """Whether an option can be laid over the design; what keeps it from that is added."""
    found = list(_wrong_heading(letter, tree, where, written))
    if not found and isinstance(tree, Branch):
        found = _wrong_keys(letter, tree, where)
    problems += found
    return not found and isinstance(tree, Branch)


def _wrong_heading(
    letter: str, tree: object, where: Where, written: Mapping[str, object]
) -> tuple[Problem, ...]:
    if not re.fullmatch("[A-Z]", letter):
        free = next((c for c in "BCDEFGHIJKLMNOPQRSTUVWXYZ" if c not in written), "B")
        return (
            stop(
                "wrong_option",
                f"An option is named by one capital letter: `option {free}`, and what people call "
                "it is written after `called`.",
                where,
                about="option",
                found=full_heading("option", letter),
                allowed="option B to option Z",
                fix=f"Write `option {free}:`.",
            ),
        )
    if not isinstance(tree, Branch):
        return (
            stop(
                "wrong_value",
                f'"option {letter}" takes keys on the lines under it, not a list.',
                where,
                about=f"option {letter}",
                found="a list",
                allowed="called, and the blocks that differ",
                fix="Write `called: ...` and the blocks that differ, without dashes.",
            ),
        )
    return ()


def _wrong_keys(letter: str, tree: Branch, where: Where) -> list[Problem]:
    problems: list[Problem] = []
    blocks = [words for words in tree if words not in _OWN_KEYS]
    if "called" not in tree:
        problems.append(
            stop(
                "missing_key",
                f'option {letter} lacks "called": what the client will know it by.',
                where,
                about=f"option {letter}",
                found="nothing",
                allowed="called: a few words",
                fix="Write `called: ` and a few words, such as `called: one tall lite`.",
            )
        )
    problems += [_wrong_words(tree, key) for key in _OWN_KEYS if _is_wrong(tree, key)]
    if letter == AS_DRAWN:
        extra = [*blocks, *(key for key in ("like",) if key in tree)]
        return problems + [
            stop(
                "wrong_option",
                f"Option A is the design as it stands, so nothing differs in it: `option A` takes "
                f'no "{words}".',
                tree.lines.get(words) or where,
                about="option A",
                found=words,
                allowed="called",
                fix="Write it in the design itself, or under another letter.",
            )
            for words in extra
        ]
    if not blocks and "like" not in tree and "called" in tree:
        problems.append(_changes_nothing(letter, where))
    return problems + [p for words in blocks if (p := _wrong_block(letter, tree, words))]


def _is_wrong(tree: Branch, key: str) -> bool:
    value = tree.get(key)
    if value is None:
        return False
    return not isinstance(value, Text) or (key == "called" and len(value) > LONGEST)


def _wrong_words(tree: Branch, key: str) -> Problem:
    value = tree[key]
    long = isinstance(value, Text)
    return stop(
        "wrong_value",
        f'"{key}" is longer than a tab can hold: {len(value)} letters, {LONGEST} at most.'
        if long
        else f'"{key}" takes words on one line.',
        tree.lines.get(key),
        about=tree.heading,
        found=str(value)[:60] if long else "keys or a list",
        allowed=f"up to {LONGEST} letters",
        fix="Say it in fewer words." if long else f"Write `{key}: ` and a few words.",
    )


def _wrong_block(letter: str, tree: Branch, words: str) -> Problem | None:
    where = tree.lines.get(words) or tree.here
    key = split_heading(words)
    takes = ", ".join(OPTION_TAKES)
    if words in ("job", "units", "stilewright") or (
        key is not None and key[0] not in (*OPTION_TAKES, *NOT_BUILT_BLOCKS)
    ):
        return _same_for_all(letter, words, where)
    if key is None:
        near = nearest(words, (*OPTION_TAKES, *_OWN_KEYS), 0.6)
        return stop(
            "unknown_block",
            f'No such block as "{words}" in option {letter}.'
            + (f' Did you mean "{near}"?' if near else ""),
            where,
            about=tree.heading,
            found=words,
            allowed=f"called, note, like, or a block: {takes}",
            fix=f"Write `{near}:`." if near else "Take it out.",
        )
    if key[0] in NOT_BUILT_BLOCKS:
        return not_built(f'"{words}"', where, about=words)
    own = tree[words]
    if not isinstance(own, Branch):
        return stop(
            "wrong_value",
            f'"{words}" in option {letter} takes the keys that differ, in braces: '
            f"`{words}: {{key: value}}`.",
            where,
            about=words,
            found=str(own)[:60] if isinstance(own, Text) else "a list",
            allowed="keys and values",
            fix="Write the keys that differ, in braces.",
        )
    if key[0] == "door" and "in" in own:
        return _same_for_all(letter, "in", own.lines.get("in"))
    return None


def _same_for_all(letter: str, what: str, where: Where | None) -> Problem:
    return stop(
        "not_of_an_option",
        f"An option is another pair of doors for the same job and opening: option {letter} "
        f'cannot change "{what}".',
        where,
        about=f"option {letter}",
        found=what,
        allowed=", ".join(OPTION_TAKES),
        fix="Take it out of the option, or make a design file of its own.",
    )


def _changes_nothing(letter: str, where: Where) -> Problem:
    return stop(
        "option_changes_nothing",
        f"Option {letter} says nothing that differs from the design.",
        where,
        about=f"option {letter}",
        found="nothing that differs",
        allowed=f"called, and what differs in: {', '.join(OPTION_TAKES)}",
        fix="Write the blocks and keys that differ, or take the option out.",
    )


def _no_such_like(
    letter: str, other: str, seen: list[str], options: Mapping[str, Branch]
) -> Problem:
    known = ", ".join(sorted(options.keys() - {letter})) or "no like"
    return stop(
        "like_unknown",
        f"Option {letter} ends up being like itself."
        if other in seen
        else f'Option {letter} is like "{other}", but there is no option {other} that can be read.',
        options[letter].lines.get("like"),
        about=f"option {letter}",
        found=other,
        allowed=known,
        fix="Take one `like` away."
        if other in seen
        else "Write the letter of another option, or take `like` away.",
    )


def _called_alike(found: tuple[Way, ...]) -> list[Problem]:
    first: dict[str, Option] = {}
    problems = []
    for way in found:
        option = way.option
        assert option is not None
        earlier = first.setdefault(option.called.casefold(), option)
        if earlier is not option:
            problems.append(
                stop(
                    "options_called_alike",
                    f"Options {earlier.letter} and {option.letter} are both called "
                    f'"{option.called}"; a client could not tell them apart.',
                    option.where,
                    about=f"option {option.letter}",
                    found=option.called,
                    allowed="words of its own",
                    fix="Call one of them something else.",
                )
            )
    return problems
