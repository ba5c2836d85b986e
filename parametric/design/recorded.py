"""Where records stand: in the design file, or in NAME.records.yaml beside it; never in both."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import Any

from pydantic_core import PydanticCustomError

from parametric.design.answers import stop
from parametric.design.language import BESIDE, RECORD_SPECS, full_heading
from parametric.design.layer import Layer, read_file
from parametric.design.records import (
    ApprovedSpec,
    Records,
    Revision,
    read_accepted,
    read_as_built,
    read_cut,
    read_revision,
)
from parametric.design.understanding import understand_group
from parametric.figures import Where
from parametric.problems import Problem
from parametric.written import Branch, Text, refuse

_LISTS = ("cut",)
"""Records that are lists; the others hold a line for each name."""


def read_revisions(design: Layer, problems: list[Problem]) -> tuple[Revision, ...]:
    """The revisions in the order of the file; the last is current."""
    key = ("revisions", "")
    where = design.lines.get(key, design.first)
    return tuple(_each(design.blocks.get(key), "revisions", read_revision, where, problems))


def read_records(path: Path, design: Layer, problems: list[Problem]) -> Records:
    """What happened since it was drawn.

    Args:
        path: the design file; records may stand beside it.
        design: that file as a layer.
        problems: what is wrong is added here.
    """
    trees = {kind: design.blocks[kind, ""] for kind in BESIDE if (kind, "") in design.blocks}
    lines = {kind: design.lines[kind, ""] for kind in trees}
    beside_path = path.with_name(f"{path.stem}.records.yaml")
    beside = read_file(beside_path, "chosen", problems) if beside_path.is_file() else None
    for (kind, name), tree in ({} if beside is None else beside.blocks).items():
        assert beside is not None
        where = beside.lines[kind, name]
        if kind not in BESIDE:
            problems.append(
                stop(
                    "not_a_record",
                    f'"{full_heading(kind, name)}" does not belong in a file of records.',
                    where,
                    about=kind,
                    found=kind,
                    allowed=", ".join(BESIDE),
                    fix=f"Write it in {path.name}.",
                )
            )
        elif kind in trees:
            problems.append(
                stop(
                    "record_twice",
                    f'"{kind}" stands both in {path.name} and in {beside_path.name}; keep one.',
                    where,
                    about=kind,
                    found="two",
                    allowed="one",
                    fix="Take one of them out.",
                )
            )
        else:
            trees[kind], lines[kind] = tree, where

    def each(kind: str, read: Callable[..., Any]) -> list[Any]:
        return _each(trees.get(kind), kind, read, lines.get(kind, design.first), problems)

    return Records(
        approved=_approved(trees.get("approved"), lines.get("approved", design.first), problems),
        accepted=tuple(each("accepted", read_accepted)),
        as_built=dict(each("as built", lambda name, text: (name, read_as_built(name, text)))),
        cut=tuple(each("cut", read_cut)),
    )


def _approved(tree: object, heading: Where, problems: list[Problem]) -> ApprovedSpec | None:
    if tree is None:
        return None
    if not isinstance(tree, Branch):
        problems.append(_wrong_shape("approved", tree, heading))
        return None
    found = understand_group("approved", tree, RECORD_SPECS["approved"], problems)
    return found if isinstance(found, ApprovedSpec) else None


def _wrong_shape(heading: str, tree: object, where: Where) -> Problem:
    wanted = "a list of names" if heading in _LISTS else "one line for each, in braces or under it"
    return stop(
        "wrong_value",
        f'"{heading}" takes {wanted}.',
        where,
        about=heading,
        found=str(tree)[:60] if isinstance(tree, Text) else "something else",
        allowed=wanted,
        fix=f"Write {wanted}.",
    )


def _each(
    tree: object,
    heading: str,
    read: Callable[..., Any],
    here: Where,
    problems: list[Problem],
) -> list[Any]:
    """Every entry of a record that can be read; the others become problems."""
    if tree is None:
        return []
    entries: list[tuple[Where | None, tuple[Any, ...]]]
    if isinstance(tree, Branch) and heading not in _LISTS:
        entries = [(tree.lines.get(key), (key, value)) for key, value in tree.items()]
    elif isinstance(tree, list) and heading in _LISTS:
        entries = [(getattr(value, "where", None), (value,)) for value in tree]
    else:
        problems.append(_wrong_shape(heading, tree, here))
        return []
    made: list[Any] = []
    for where, written in entries:
        try:
            if not isinstance(written[-1], Text):
                raise refuse("wrong_value", f"Each entry of {heading} is one line of text.")
            made.append(read(*written))
        except PydanticCustomError as error:
            problems.append(_refused(error, heading, where or here))
    return made


def _refused(error: PydanticCustomError, heading: str, where: Where) -> Problem:
    ctx = error.context or {}
    return stop(
        str(ctx["code"]),
        str(ctx["message"]).replace("{key}", heading).replace("{heading}", heading),
        ctx.get("where") or where,
        about=heading,
        found=str(ctx["found"]) or heading,
        allowed=str(ctx["allowed"]) or "one line of text",
        fix=str(ctx["fix"]) or "Write it as the sentence above says.",
    )
