"""Blocks into Specs; everything that does not fit becomes a Problem in shop words."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from typing import Any

from pydantic import ValidationError

from parametric.design.language import (
    COUNTERPARTS,
    DOOR_KEYS,
    KINDS,
    MOVES,
    NOT_BUILT_KEYS,
    NOT_BUILT_VALUES,
    OTHER_KINDS,
    PLAIN,
    WAYS,
    keys_of,
)
from parametric.design.layer import stop
from parametric.design.leaf import Band
from parametric.figures import Where
from parametric.names import nearest
from parametric.problems import Problem
from parametric.written import Block, Branch, Group, Text

_BUILDS_LATER = "cannot be built by this version yet."


def not_built(what: str, where: Where | None, *, about: str, allowed: str = "") -> Problem:
    """The one answer to whatever is legal and not built yet: exit 1, nothing made."""
    return Problem(
        code="not_built_yet",
        level="stop",
        message=f"{what} {_BUILDS_LATER}",
        where=where,
        about=about,
        found=about,
        allowed=allowed,
        fix="Take it out, or wait for a version that builds it.",
    )


def understand(kind: str, tree: Branch, problems: list[Problem]) -> Block | None:
    """One merged block as its Spec, or None with what is wrong added to the problems."""
    spec = _spec_of(kind, tree, problems)
    found = None if spec is None else understand_group(kind, tree, spec, problems)
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
        problems.append(
            stop(
                "missing_key",
                f'{tree.heading} needs "kind".',
                tree.here,
                about=tree.heading,
                allowed=", ".join(KINDS[kind]),
                fix=f"Write `kind: {next(iter(KINDS[kind]))}` under it.",
            )
        )
        return None
    where = tree.lines.get("kind") or tree.here
    spec = KINDS[kind].get(str(written)) if isinstance(written, Text) else None
    if spec is not None:
        return spec
    if isinstance(written, Text) and str(written) in OTHER_KINDS[kind]:
        problems.append(
            not_built(
                f'{kind} of kind "{written}"',
                where,
                about=str(written),
                allowed=", ".join(KINDS[kind]),
            )
        )
        return None
    near = nearest(str(written), OTHER_KINDS[kind], 0.4)
    problems.append(
        stop(
            "unknown_word",
            f'"{written}" is not a kind of {kind}.' + (f' Did you mean "{near}"?' if near else ""),
            where,
            about=tree.heading,
            found=str(written),
            allowed=", ".join(OTHER_KINDS[kind]),
            fix=f"Write `kind: {near}`." if near else "Write one of those.",
        )
    )
    return None


class _Place:
    """Where in a block an error lies: the key it is under, its line, and what is written there."""

    def __init__(self, loc: Sequence[int | str], tree: Branch) -> None:
        self.key = ""
        self.where = tree.here
        self.path: list[int | str] = []
        self.group = tree
        node: Any = tree
        for step in loc:
            if isinstance(node, Branch) and isinstance(step, str) and step in node:
                self.group = node
                self.key = str(step)
                self.where = node.lines.get(self.key) or node.here or self.where
                node = node[step]
                self.path.append(step)
            elif isinstance(node, list) and isinstance(step, int) and step < len(node):
                node = node[step]
                self.where = (
                    getattr(node, "here", None) or getattr(node, "where", None) or self.where
                )
                self.path.append(step)
        self.written = node
        self.last = str(loc[-1]) if loc else ""


def _problems(
    error: ValidationError, kind: str, spec: type[Group], tree: Branch
) -> Iterable[Problem]:
    """One problem a place: a value that fits none of several shapes is told once."""
    best: dict[tuple[Any, ...], tuple[int, Problem]] = {}
    for detail in error.errors():
        place = _Place(detail["loc"], tree)
        rank, problem = _problem(dict(detail), place, kind, spec, tree)
        extra = place.last if detail["type"] in ("missing", "extra_forbidden") else ""
        where = (*place.path, extra)
        if where not in best or rank < best[where][0]:
            best[where] = (rank, problem)
    return [problem for _, problem in best.values()]


def _problem(
    detail: dict[str, Any], place: _Place, kind: str, spec: type[Group], tree: Branch
) -> tuple[int, Problem]:
    """A validator's error in shop words, and how well it fits when several shapes were tried."""
    match detail["type"]:
        case "refused":
            return 0, _refused(detail["ctx"], place, spec, tree)
        case "extra_forbidden":
            return 0, _unknown_key(place, kind, spec, tree)
        case "missing":
            return 0, stop(
                "missing_key",
                f'{_said(tree, place)} needs "{place.last}".',
                place.where or tree.here,
                about=tree.heading,
                allowed=place.last,
                fix=f"Write `{place.last}: ...` under it.",
            )
        case "literal_error":
            return 1, _unknown_word(detail["ctx"]["expected"], place, kind, tree)
        case _:
            return 2, stop(
                "wrong_value",
                f'"{place.key}" in {tree.heading} does not take what is written there.',
                place.where,
                about=tree.heading,
                found=str(place.written)[:60],
                fix="See `stilewright schema`, or a starter made with `stilewright new`.",
            )


def _said(tree: Branch, place: _Place) -> str:
    return f"The {place.key} of {tree.heading}" if place.key else tree.heading


def _refused(ctx: dict[str, Any], place: _Place, spec: type[Group], tree: Branch) -> Problem:
    """A refusal of one of our own validators; its message has holes for key, heading and order."""
    described = next(
        (f.description for f in spec.model_fields.values() if f.alias == place.key), None
    )
    order = f", {described}" if described and " x " in described else ""
    message = str(ctx["message"])
    for hole, text in (("key", place.key), ("heading", tree.heading), ("order", order)):
        message = message.replace("{" + hole + "}", text)
    problem = stop(
        str(ctx["code"]),
        message,
        ctx.get("where") or place.where,
        about=tree.heading,
        found=str(ctx["found"]),
        allowed=str(ctx["allowed"]),
        fix=str(ctx["fix"]),
    )
    return not_built_like(problem) if problem.code == "not_built_yet" else problem


def not_built_like(problem: Problem) -> Problem:
    """The same problem as one that a later version will not have: exit 1."""
    return Problem(
        code=problem.code,
        level="stop",
        message=problem.message,
        where=problem.where,
        about=problem.about,
        found=problem.found,
        allowed=problem.allowed,
        fix=problem.fix or "Take it out, or wait for a version that builds it.",
    )


def _unknown_key(place: _Place, kind: str, spec: type[Group], tree: Branch) -> Problem:
    """A key that is not there: misspelt, of another kind, or not built yet."""
    key, where = place.last, place.where
    in_line = any(isinstance(step, int) for step in place.path)
    known = keys_of(Band) if in_line and kind == "leaf" else keys_of(spec)
    if not in_line and key in NOT_BUILT_KEYS.get(kind, ()):
        return not_built(f'"{key}" in {tree.heading}', where, about=key)
    plain = re.sub(r"[_\s]+", " ", key).strip().lower()
    if plain != key and plain in known:
        return stop(
            "unknown_key",
            f'No such thing as "{key}" in {tree.heading}: write "{plain}", lower case, with a '
            "space.",
            where,
            about=tree.heading,
            found=key,
            allowed=", ".join(known),
            fix=f"Write `{plain}: ...`.",
        )
    if kind == "door" and (others := [k for k, keys in DOOR_KEYS.items() if key in keys]):
        return _of_other_doors(key, where, others, tree, known)
    near = nearest(key, known)
    return stop(
        "unknown_key",
        f'No such thing as "{key}" in {tree.heading}.'
        + (f' Did you mean "{near}"?' if near else ""),
        where,
        about=tree.heading,
        found=key,
        allowed=", ".join(known),
        fix=f"Write `{near}: ...`." if near else "Take the line out.",
    )


def _of_other_doors(
    key: str, where: Where | None, others: list[str], tree: Branch, known: tuple[str, ...]
) -> Problem:
    """A key that doors of another kind have."""
    own = str(tree.get("kind"))
    ways = {MOVES[k] for k in others}
    theirs = f"doors that {next(iter(ways))}" if len(ways) == 1 else f"{' and '.join(others)} doors"
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
        fix=f"Write `{near}: ...`." if near else "Take the line out.",
    )


def _unknown_word(expected: str, place: _Place, kind: str, tree: Branch) -> Problem:
    """A word that is none of a key's words."""
    words = re.findall(r"'((?:[^'\\]|\\.)*)'", expected)
    written = str(place.written)
    if written in NOT_BUILT_VALUES.get((kind, place.key), ()):
        return not_built(
            f'"{place.key}: {written}" in {tree.heading}',
            place.where,
            about=written,
            allowed=", ".join(words),
        )
    what = f"a kind of {kind}" if place.key == "kind" else WAYS.get(place.key, f'a "{place.key}"')
    near = nearest(written, words, 0.3)
    return stop(
        "unknown_word",
        f'"{written}" is not {what}.' + (f' Did you mean "{near}"?' if near else ""),
        place.where,
        about=tree.heading,
        found=written,
        allowed=", ".join(words),
        fix=f"Write `{place.key}: {near or words[0]}`.",
    )
