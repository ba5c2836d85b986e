"""One file as a layer: its blocks by kind and name, every value with its place and origin."""

from __future__ import annotations

import re
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from parametric.design.answers import (
    doubled,
    empty,
    no_keys,
    not_of_a_house,
    not_used_yet,
    stop,
    unknown_heading,
)
from parametric.design.language import (
    BLANK_ALLOWED,
    BLOCKS,
    FILE_KEYS,
    HARDWARE,
    HOUSE_NEVER,
    NEWEST,
    NOT_BUILT_BLOCKS,
    NOT_BUILT_KEYS,
    ONCE,
    RECORDS,
    full_heading,
    split_heading,
)
from parametric.design.reading import Items, Keys, Node, Scalar, read
from parametric.design.versions import up_to_date
from parametric.figures import Origin, Where
from parametric.problems import Problem
from parametric.units import Unit
from parametric.written import Branch, Text


@dataclass(frozen=True, slots=True, kw_only=True)
class Layer:
    """What one file says, block by block; `blocks` is empty where it cannot be read.

    `lines` are those of the headings.
    """

    file: str
    unit: Unit
    first: Where
    job: Text | None
    blocks: Mapping[tuple[str, str], Any]
    lines: Mapping[tuple[str, str], Where]
    problems: tuple[Problem, ...]
    readable: bool = True

    def names(self, kind: str) -> tuple[str, ...]:
        """The names under which a kind stands in this file, in order; "" without one."""
        return tuple(name for found, name in self.blocks if found == kind)


def read_file(path: Path, origin: Origin, problems: list[Problem]) -> Layer | None:
    """One file as a layer; None when it cannot be read at all."""
    try:
        if path.is_dir():
            raise IsADirectoryError(21, "it is a folder")
        content = path.read_bytes()
    except (OSError, ValueError) as error:
        reason = (error.strerror if isinstance(error, OSError) else None) or str(error)
        problems.append(
            stop(
                "file_unreadable",
                f"{path} cannot be read: {reason[:1].lower()}{reason[1:]}.",
                Where(path.name, 1),
                found=reason,
                allowed="a design file",
                fix="Look at the name and the folder; `stilewright new FILE` makes a starter.",
            )
        )
        return None
    layer = read_layer(content, path.name, origin)
    problems += layer.problems
    return layer if layer.readable else None


def read_layer(content: bytes | str, file: str, origin: Origin) -> Layer:
    """Read one file into its blocks.

    Args:
        content: the file's bytes, or its text.
        file: its name as the user gave it.
        origin: `chosen` for a design, `house` for a house file.
    """
    sheet = read(content, file)
    if sheet.keys is None:
        return _nothing(file, sheet.problems)
    newer, version_problems = _version(sheet.keys, file)
    if newer:
        return _nothing(file, version_problems)
    reader = _Reader(file, origin, _unit_of(sheet.keys))
    reader.problems.extend((*sheet.problems, *version_problems))
    return reader.layer(sheet.keys)


def _nothing(file: str, problems: tuple[Problem, ...]) -> Layer:
    return Layer(
        file=file,
        unit="mm",
        first=Where(file, 1),
        job=None,
        blocks={},
        lines={},
        problems=problems,
        readable=False,
    )


def _top(keys: Keys, key: str) -> tuple[Scalar, Node] | None:
    return next((entry for entry in keys.entries if entry[0].text == key), None)


def _version(keys: Keys, file: str) -> tuple[bool, tuple[Problem, ...]]:
    """Whether the file is newer than this tool, and what is wrong with its first line."""
    found = _top(keys, "stilewright")
    if found is None:
        return False, (
            stop(
                "no_version",
                f"Somewhere at the margin write `stilewright: {NEWEST}`, so that this file still "
                "opens in ten years.",
                Where(file, 1),
                found="nothing",
                allowed=f"stilewright: {NEWEST}",
                fix=f"Make the first line `stilewright: {NEWEST}`.",
            ),
        )
    node = found[1]
    where = Where(file, found[0].line)
    written = node.text if isinstance(node, Scalar) else ""
    if not re.fullmatch(r"[0-9]{1,6}", written) or int(written) == 0:
        return False, (
            stop(
                "wrong_version",
                f'"stilewright:" takes the version of the language, a whole number: {NEWEST}.',
                where,
                found=written,
                allowed=f"1 to {NEWEST}",
                fix=f"Write `stilewright: {NEWEST}`.",
            ),
        )
    if int(written) > NEWEST:
        return True, (
            stop(
                "newer_version",
                f"This file is written in version {written} of the language; this tool reads up "
                f"to {NEWEST}.",
                where,
                found=written,
                allowed=f"up to {NEWEST}",
                fix="Install a newer stilewright; nothing in the file needs changing.",
            ),
        )
    if int(written) < NEWEST:
        keys.entries = up_to_date(keys, int(written)).entries
    return False, ()


def _unit_of(keys: Keys) -> Unit:
    found = _top(keys, "units")
    inch = found is not None and isinstance(found[1], Scalar) and found[1].text == "inch"
    return "inch" if inch else "mm"


def _block_of_option(heading: str, words: str) -> str | None:
    """The kind of block that a key of an option stands for; None for any other key."""
    found = split_heading(words) if heading == "option" or heading.startswith("option ") else None
    return None if found is None else found[0]


class _Reader:
    """Turns the keys of one file into its blocks, collecting problems."""

    def __init__(self, file: str, origin: Origin, unit: Unit) -> None:
        self.file = file
        self.origin = origin
        self.unit = unit
        self.problems: list[Problem] = []
        self.job: Text | None = None
        self.blocks: dict[tuple[str, str], Any] = {}
        self.lines: dict[tuple[str, str], Where] = {}

    def layer(self, keys: Keys) -> Layer:
        """All of the file."""
        self._units(keys)
        seen: dict[str, int] = {}
        for key, node in keys.entries:
            where = Where(self.file, key.line)
            if (first := seen.setdefault(key.text, key.line)) != key.line:
                self.problems.append(doubled(key.text, "", first, where))
            elif key.text in FILE_KEYS:
                self._file_key(key, node)
            else:
                self._block(key, node, where)
        version = _top(keys, "stilewright")
        return Layer(
            file=self.file,
            unit=self.unit,
            first=Where(self.file, version[0].line if version else 1),
            job=self.job,
            blocks=self.blocks,
            lines=self.lines,
            problems=tuple(self.problems),
        )

    def _units(self, keys: Keys) -> None:
        found = _top(keys, "units")
        if found is None:
            self.problems.append(
                stop(
                    "no_units",
                    "At the margin write `units: mm` or `units: inch`, so that a bare number "
                    "means something.",
                    Where(self.file, 1),
                    found="nothing",
                    allowed="mm or inch",
                    fix="Write `units: mm`.",
                )
            )
            return
        key, node = found
        written = node.text if isinstance(node, Scalar) else "a list"
        if written in ("mm", "inch") or (isinstance(node, Scalar) and not written):
            return
        also = (
            f"; a single value may still be written 60 {written}"
            if written in ("cm", "m", "in")
            else ""
        )
        self.problems.append(
            stop(
                "wrong_units",
                f'Units are mm or inch, not "{written}"{also}.',
                Where(self.file, key.line),
                found=written,
                allowed="mm or inch",
                fix="Write `units: mm` or `units: inch`.",
            )
        )

    def _file_key(self, key: Scalar, node: Node) -> None:
        where = Where(self.file, key.line)
        if not isinstance(node, Scalar):
            self.problems.append(
                stop(
                    "wrong_value",
                    f'"{key.text}" takes one line of text.',
                    where,
                    found="keys or a list",
                    allowed="one line of text",
                    fix=f"Write `{key.text}: ` and the text after it.",
                )
            )
        elif not node.text and not node.quoted:
            self.problems.append(empty(key.text, where))
        elif key.text == "job" and self.origin == "house":
            self.problems.append(not_of_a_house("job", where))
        elif key.text == "job":
            self.job = Text(node.text, where=where, origin=self.origin, unit=self.unit)

    def _block(self, key: Scalar, node: Node, where: Where) -> None:
        heading = " ".join(key.text.split())
        found = split_heading(heading)
        if found is None:
            self.problems.append(unknown_heading(key.text, where))
            return
        kind, name = found
        if self.origin == "house" and not self._of_a_house(kind, name, where):
            return
        if name and kind in ONCE:
            self.problems.append(
                stop(
                    "name_not_taken",
                    f'"{kind}" stands once in a file and takes no name.',
                    where,
                    found=heading,
                    allowed=kind,
                    fix=f"Write `{kind}:`.",
                )
            )
            return
        if name in BLOCKS or "," in name or " / " in name or name == "none":
            self.problems.append(
                stop(
                    "wrong_name",
                    f'"{name}" cannot be the name of a {kind}: '
                    + (
                        "it is a word of the language."
                        if name in BLOCKS or name == "none"
                        else 'a name holds no comma and no " / ".'
                    ),
                    where,
                    found=heading,
                    allowed="another name",
                    fix="Call it something else.",
                )
            )
            return
        if isinstance(node, Scalar) and not node.text and not node.quoted:
            self.problems.append(empty(heading, where))
            return
        if isinstance(node, Scalar) and kind not in RECORDS:
            self.problems.append(no_keys(heading, node.text, where))
            return
        if (kind, name) in self.blocks:
            self.problems.append(doubled(heading, "", self.lines[kind, name].line, where))
            return
        tree = self._tree(node, heading, where, self._origin(kind, node))
        if self.origin == "house":
            tree = self._without_later_keys(kind, tree)
        self.blocks[kind, name] = tree
        self.lines[kind, name] = where

    def _of_a_house(self, kind: str, name: str, where: Where) -> bool:
        """A house file holds habits; a job's own facts, and what cannot build yet, are told."""
        heading = full_heading(kind, name)
        if kind in HOUSE_NEVER or (kind == "door" and name):
            self.problems.append(not_of_a_house(heading, where))
            return False
        if kind in NOT_BUILT_BLOCKS:
            self.problems.append(not_used_yet(f'"{heading}"', heading, where))
            return False
        return True

    def _without_later_keys(self, kind: str, tree: Any) -> Any:
        """A house's block without the keys that only a later version uses."""
        for key in NOT_BUILT_KEYS.get(kind, ()) if isinstance(tree, Branch) else ():
            if key in tree:
                del tree[key]
                where = tree.lines.get(key) or Where(self.file, 1)
                self.problems.append(not_used_yet(f'"{key}" in {tree.heading}', key, where))
        return tree

    def _origin(self, kind: str, node: Node) -> Origin:
        """Surveys and as-built sizes are measured, and so is hardware that says it was."""
        if self.origin != "chosen":
            return self.origin
        measured = kind in ("survey", "as built") or (
            kind in HARDWARE and isinstance(node, Keys) and _top(node, "measured") is not None
        )
        return "measured" if measured else "chosen"

    def _tree(self, node: Node, heading: str, where: Where, origin: Origin) -> Any:
        """A node as Text, Branch or list; empty values and doubled keys are answered here."""
        if isinstance(node, Scalar):
            return Text(node.text, where=Where(self.file, node.line), origin=origin, unit=self.unit)
        if isinstance(node, Items):
            return [
                self._tree(item, heading, Where(self.file, item.line), origin)
                for item in node.items
                if not self._blank_item(item)
            ]
        branch = Branch(heading, where)
        for key, value in node.entries:
            here = Where(self.file, key.line)
            words = " ".join(key.text.split())
            if words in branch:
                earlier = branch.lines[words]
                self.problems.append(doubled(words, heading, earlier.line if earlier else 0, here))
                continue
            if isinstance(value, Scalar) and not value.text and not value.quoted:
                if not self._comma_for_point(branch, words, here) and heading not in BLANK_ALLOWED:
                    self.problems.append(empty(words, here))
                continue
            block = _block_of_option(heading, words)
            own = origin if block is None else self._origin(block, value)
            branch[words] = self._tree(value, heading if block is None else words, here, own)
            branch.lines[words] = here
            branch.origins[words] = own
        return branch

    def _comma_for_point(self, branch: Branch, words: str, here: Where) -> bool:
        """In braces a comma ends a value, so `11,5 %` comes apart; it is put together again."""
        last = next(reversed(branch), None)
        before = branch[last] if last is not None else None
        if not (
            isinstance(before, Text)
            and re.fullmatch(r"[-+]?[0-9]+", before)
            and re.fullmatch(r"[0-9]+( ?\S.*)?", words)
            and branch.lines[last or ""] == here
        ):
            return False
        meant = f"{before}.{words}"
        self.problems.append(
            stop(
                "decimal_comma",
                f"Write {meant} with a point.",
                here,
                about=branch.heading,
                found=f"{before},{words}",
                allowed=meant,
                fix=f"Write `{last}: {meant}`.",
            )
        )
        branch[last or ""] = Text(meant, where=here, origin=before.origin, unit=before.unit)
        return True

    def _blank_item(self, item: Node) -> bool:
        blank = isinstance(item, Scalar) and not item.text and not item.quoted
        if blank:
            self.problems.append(
                stop(
                    "empty_value",
                    "Nothing is written after this dash or comma (a # starts a comment).",
                    Where(self.file, item.line),
                    found="nothing",
                    allowed="a value",
                    fix="Write the value, or take the dash or comma out.",
                )
            )
        return blank
