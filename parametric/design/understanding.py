"""Blocks into Specs; everything that does not fit becomes a Problem in shop words."""

from __future__ import annotations

import dataclasses
import re
from collections.abc import Mapping, Sequence
from typing import Any

from pydantic import ValidationError

from parametric.design.answers import not_used_yet, stop
from parametric.design.language import (
    COUNTERPARTS,
    DOOR_KEYS,
    KEPT_ONLY,
    KINDS,
    MOVES,
    NESTED,
    NOT_BUILT_KEYS,
    NOT_BUILT_SHAPES,
    NOT_BUILT_VALUES,
    OTHER_KINDS,
    PLAIN,
    WAYS,
    keys_of,
)
from parametric.figures import Where
from parametric.names import nearest
from parametric.problems import Problem
from parametric.written import Block, Branch, Group, Text

_TAKE_IT_OUT = "Take it out, or wait for a version that builds it."


def not_built(
    what: str, where: Where | None, *, about: str, allowed: str = "what this version builds"
) -> Problem:
    """The one answer to whatever is legal and not built yet: exit 1, nothing made."""
    return Problem(
        code="not_built_yet",
        level="stop",
        message=f"{what} cannot be built by this version yet.",
        where=where,
        about=about,
        found=about,
        allowed=allowed,
        fix=_TAKE_IT_OUT,
    )


def understand(kind: str, tree: Branch, problems: list[Problem]) -> Block | None:
    """One merged block as its Spec, or None with what is wrong added to the problems."""
    spec = _spec_of(kind, tree, problems)
    found = None if spec is None else understand_group(kind, tree, spec, problems)
    for key in KEPT_ONLY.get(kind, ()):
        if key in tree and tree.origins.get(key) != "assumed":
            where = tree.lines.get(key) or tree.here
            assert where is not None
            problems.append(not_used_yet(f'"{key}" in {tree.heading}', key, where))
    return found if isinstance(found, Block) else None


def understand_group(
    kind: str, tree: Branch, spec: type[Group], problems: list[Problem]
) -> Group | None:
    """Keys that belong together as the Spec that is named, or None with what is wrong."""
    try:
        return spec.model_validate(tree)
    except ValidationError as error:
        problems.extend(_problems(error, kind, spec, tree))
        return None


def _spec_of(kind: str, tree: Branch, problems: list[Problem]) -> type[Block] | None:
    """A block's Spec: by its kind where it has kinds."""
    if kind in PLAIN:
        return PLAIN[kind]
    written = tree.get("kind")
    if written is None:
        problems.append(_missing("kind", tree.heading, tree.here, ", ".join(KINDS[kind])))
        return None
    where = tree.lines.get("kind") or tree.here
    word = str(written) if isinstance(written, Text) else ""
    if word in KINDS[kind]:
        return KINDS[kind][word]
    if word in OTHER_KINDS[kind]:
        problems.append(
            not_built(
                f'A {kind} of kind "{word}"', where, about=word, allowed=", ".join(KINDS[kind])
            )
        )
        if kind == "door":
            problems.extend(_keys_of_later_door(word, tree))
        return None
    near = nearest(word, OTHER_KINDS[kind], 0.4)
    problems.append(
        stop(
            "unknown_word",
            f'"{written}" is not a kind of {kind}.' + (f' Did you mean "{near}"?' if near else ""),
            where,
            about=tree.heading,
            found=str(written),
            allowed=", ".join(OTHER_KINDS[kind]),
            fix=f"Write `kind: {near}`."
            if near
            else f"Write one of: {', '.join(OTHER_KINDS[kind])}.",
        )
    )
    return None


def _keys_of_later_door(word: str, tree: Branch) -> list[Problem]:
    """What is wrong with the keys of a door that cannot be built yet, so that it is told now."""
    known = DOOR_KEYS[word]
    return [
        _unknown_key(key, tree.lines.get(key) or tree.here, "door", known, tree)
        for key in tree
        if key not in known and tree.origins.get(key) != "assumed"
    ]


class _Place:
    """Where in a block an error lies: the key it is under, its line, and what is written there."""

    def __init__(self, loc: Sequence[int | str], tree: Branch, kind: str) -> None:
        self.key = ""
        self.where = tree.here
        self.path: list[int | str] = []
        self.nested: type[Group] | None = None
        node: Any = tree
        for step in loc:
            if isinstance(node, Branch) and isinstance(step, str) and step in node:
                self.key = step
                self.where = node.lines.get(step) or node.here or self.where
                self.nested = NESTED.get((kind, step), self.nested)
                node = node[step]
                self.path.append(step)
            elif isinstance(node, list) and isinstance(step, int) and step < len(node):
                node = node[step]
                self.where = (
                    getattr(node, "here", None) or getattr(node, "where", None) or self.where
                )
                self.path.append(step)
        self.group = NESTED.get((kind, self.key))
        self.written = node
        self.last = str(loc[-1]) if loc else ""


def _problems(error: ValidationError, kind: str, spec: type[Group], tree: Branch) -> list[Problem]:
    """One problem a place: a value that fits none of several shapes is told once."""
    places: dict[tuple[Any, ...], list[tuple[dict[str, Any], _Place]]] = {}
    for detail in error.errors(include_url=False):
        place = _Place(detail["loc"], tree, kind)
        if detail["type"] == "too_short" and place.written:
            continue  # there is something in the list, and it is answered on its own
        extra = place.last if detail["type"] in ("missing", "extra_forbidden") else ""
        places.setdefault((*place.path, extra), []).append((dict(detail), place))
    found = [_problem(details, kind, spec, tree) for details in places.values()]
    return [p for p in found if not _only_misspelt(p, found)]


def _only_misspelt(problem: Problem, found: list[Problem]) -> bool:
    """A key that seems to be missing because another line misspells it."""
    return problem.code == "missing_key" and any(
        p.code == "unknown_key" and f'Did you mean "{problem.allowed}"?' in p.message for p in found
    )


def _problem(
    details: list[tuple[dict[str, Any], _Place]], kind: str, spec: type[Group], tree: Branch
) -> Problem:
    """The validators' errors about one place as one answer in shop words."""
    by_type = {detail["type"]: detail for detail, _ in details}
    place = details[0][1]
    shape = NOT_BUILT_SHAPES.get((kind, place.key))
    if shape and not isinstance(place.written, Text):
        allowed = "one" if isinstance(place.written, list) else "one size"
        return not_built(_first_upper(shape), place.where, about=place.key, allowed=allowed)
    if "extra_forbidden" in by_type:
        known = keys_of(place.nested or spec)
        return _unknown_key(place.last, place.where, kind, known, tree)
    if "missing" in by_type:
        said = f'"{place.key}" in {tree.heading}' if place.key else tree.heading
        return _missing(place.last, said, place.where or tree.here, place.last)
    words = [word for d, _ in details if d["type"] == "literal_error" for word in _choices(d)]
    if "refused" in by_type:
        refused = by_type["refused"]["ctx"]
        near = nearest(str(place.written), words, 0.6) if words else None
        if (
            words
            and isinstance(place.written, Text)
            and (near or refused["code"] == "not_a_length")
        ):
            return _neither(place, words, near, tree)
        return _refused(refused, place, spec, tree)
    if words and isinstance(place.written, Text):
        return _unknown_word(words, place, kind, tree)
    return _wrong_shape(place, by_type, tree)


def _missing(key: str, said: str, where: Where | None, allowed: str) -> Problem:
    return stop(
        "missing_key",
        f'{said} needs "{key}".',
        where,
        about=said,
        found="nothing",
        allowed=allowed,
        fix=f"Write `{key}: ` and its value under it.",
    )


def _refused(ctx: Mapping[str, Any], place: _Place, spec: type[Group], tree: Branch) -> Problem:
    """A refusal of one of our own validators; its message has holes for key, heading and order."""
    described = next(
        (f.description for f in spec.model_fields.values() if f.alias == place.key), None
    )
    order = f", {described}" if described and " x " in described else ""
    message = str(ctx["message"])
    for hole, text in (("key", place.key), ("heading", tree.heading), ("order", order)):
        message = message.replace("{" + hole + "}", text)
    allowed = str(ctx["allowed"])
    problem = stop(
        str(ctx["code"]),
        message,
        ctx.get("where") or place.where,
        about=tree.heading,
        found=str(ctx["found"]) or str(place.written)[:60] or "nothing",
        allowed=allowed,
        fix=str(ctx["fix"]) or (f"Write {allowed}." if allowed else message),
    )
    if problem.code != "not_built_yet":
        return problem
    return dataclasses.replace(problem, unreadable=False, fix=problem.fix or _TAKE_IT_OUT)


def _unknown_key(
    key: str, where: Where | None, kind: str, known: tuple[str, ...], tree: Branch
) -> Problem:
    """A key that is not there: misspelt, of another kind, or not built yet."""
    if key in NOT_BUILT_KEYS.get(kind, ()):
        return not_built(f'"{key}" in {tree.heading}', where, about=key)
    plain = re.sub(r"[_\s]+", " ", key).strip().lower()
    if plain != key and plain in known:
        return stop(
            "unknown_key",
            f'No such thing as "{key}" in {tree.heading}: write "{plain}", lower case'
            + (", with a space." if " " in plain else "."),
            where,
            about=tree.heading,
            found=key,
            allowed=", ".join(known),
            fix=f"Write `{plain}: ` and its value.",
        )
    if kind == "door" and (others := [k for k, keys in DOOR_KEYS.items() if key in keys]):
        return _of_other_doors(key, where, others, tree, known)
    near = nearest(key, known)
    line = f" (line {where.line})" if where else ""
    return stop(
        "unknown_key",
        f'No such thing as "{key}" in {tree.heading}{line}.'
        + (f' Did you mean "{near}"?' if near else ""),
        where,
        about=tree.heading,
        found=key,
        allowed=", ".join(known),
        fix=f"Write `{near}: ` and its value." if near else "Take the line out.",
    )


def _of_other_doors(
    key: str, where: Where | None, others: list[str], tree: Branch, known: tuple[str, ...]
) -> Problem:
    """A key that doors of another kind have."""
    own = str(tree.get("kind"))
    ways = tuple(dict.fromkeys(MOVES[k] for k in others))
    theirs = f"{_and(others)} doors" if MOVES[own] in ways else f"doors that {' or '.join(ways)}"
    counterpart = COUNTERPARTS.get(key)
    near = counterpart if counterpart in known else None
    return stop(
        "unknown_key",
        f'"{key}" belongs to {theirs}; this door is {own}.'
        + (f' Did you mean "{near}"?' if near else ""),
        where,
        about=tree.heading,
        found=key,
        allowed=", ".join(known),
        fix=f"Write `{near}: ` and its value." if near else "Take the line out.",
    )


def _and(words: Sequence[str]) -> str:
    return words[0] if len(words) == 1 else f"{', '.join(words[:-1])} and {words[-1]}"


def _choices(detail: Mapping[str, Any]) -> list[str]:
    return re.findall(r"'((?:[^'\\]|\\.)*)'", str(detail["ctx"]["expected"]))


def _neither(place: _Place, words: list[str], near: str | None, tree: Branch) -> Problem:
    """A value that is neither one of a key's words nor what else the key takes."""
    said = " nor ".join(f'"{word}"' for word in words)
    return stop(
        "unknown_word",
        f'"{place.written}" is neither {said} nor a length.'
        + (f' Did you mean "{near}"?' if near else ""),
        place.where,
        about=tree.heading,
        found=str(place.written),
        allowed=f"{', '.join(words)}, or a length",
        fix=f"Write `{place.key}: {near or words[0]}`, or a length.",
    )


def _unknown_word(words: list[str], place: _Place, kind: str, tree: Branch) -> Problem:
    """A word that is none of a key's words."""
    written = str(place.written)
    if written in NOT_BUILT_VALUES.get((kind, place.key), ()):
        return not_built(
            f'"{place.key}: {written}" in {tree.heading}',
            place.where,
            about=written,
            allowed=", ".join(words),
        )
    what = (
        f"a kind of {kind}"
        if place.key == "kind"
        else WAYS.get(place.key, f'a word for "{place.key}"')
    )
    near = nearest(written, words, 0.3 if len(words) <= 3 else 0.5)
    return stop(
        "unknown_word",
        f'"{written}" is not {what}.' + (f' Did you mean "{near}"?' if near else ""),
        place.where,
        about=tree.heading,
        found=written or "nothing",
        allowed=", ".join(words),
        fix=f"Write `{place.key}: {near or words[0]}`.",
    )


def _wrong_shape(place: _Place, by_type: Mapping[str, Any], tree: Branch) -> Problem:
    """Keys where a list belongs, one value where keys do, and so on."""
    key = place.key or tree.heading
    if "tuple_type" in by_type or "list_type" in by_type:
        if isinstance(place.written, Branch):
            first = next(iter(place.written), "rail")
            said = f'"{key}" is a list: begin each line under it with a dash, `- {first}: ...`.'
        else:
            said = f'"{key}" takes a list: `{key}: [{place.written}]`.'
        wanted = "a list"
    elif "too_short" in by_type:
        said, wanted = f'There is nothing in the list "{key}".', "one or more"
    elif isinstance(place.written, Text):
        group = place.group
        inside = ", ".join(f"{k}: ..." for k in keys_of(group)) if group else "key: value"
        said = f'"{key}" takes keys and values in braces: `{key}: {{{inside}}}`.'
        wanted = "keys and values"
    else:
        said, wanted = f'"{key}" takes one value, on one line.', "one value"
    return stop(
        "wrong_value",
        said,
        place.where,
        about=tree.heading,
        found=str(place.written)[:60] if isinstance(place.written, Text) else "keys or a list",
        allowed=wanted,
        fix="`stilewright new FILE` makes a starter that shows how each is written.",
    )


def _first_upper(words: str) -> str:
    return words[:1].upper() + words[1:]
