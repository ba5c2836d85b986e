"""What is wrong with a text that no YAML reader takes, line by line and in shop words."""

from __future__ import annotations

import re
from collections.abc import Iterator

from ruamel.yaml.error import MarkedYAMLError

from parametric.design.lines import Source, depth_after, unreadable
from parametric.problems import Problem


def _bare(line: str) -> str:
    """A line without its comment."""
    return re.sub(r"(?:^|\s)#.*$", "", line).strip()


def missing_colon(source: Source, number: int, *, sure: bool = False) -> Problem | None:
    """The problem of a line that should be `key: value` and lacks its colon or its space.

    `sure` asks for lines that are plainly a key and its value, not words that run on.
    """
    bare = _bare(source.lines[number - 1])
    dash = "- " if bare.startswith("- ") else ""
    words = bare.removeprefix("- ").strip()
    if not words or words[0] in "{[\"'" or re.search(r":(?:\s|$)", words):
        return None
    tight = re.fullmatch(r"([a-zA-Z][a-zA-Z ]*?):(\S.*)", words)
    loose = re.fullmatch(r"([a-zA-Z][a-zA-Z ]*?) ?[=]? ?([-+]?[0-9].*|\{.*|\[.*)", words)
    if tight:
        meant = f"{dash}{tight[1]}: {tight[2]}"
        message = f"A space is missing after the colon: write `{meant}`."
    elif loose:
        meant = f"{dash}{loose[1]}: {loose[2]}"
        message = f"A colon is missing: write `{meant}`."
    elif sure:
        return None
    else:
        meant = f"{dash}key: value"
        message = f"A colon is missing; each line is `{meant}`."
    return unreadable(
        source.file,
        number,
        "no_colon",
        message,
        found=bare,
        allowed=f"{dash}key: value",
        fix=f"Write `{meant}`.",
    )


def lines_without_colon(source: Source) -> Iterator[Problem]:
    """Every line at the margin or under a heading that lacks its colon."""
    depth = 0
    for number, line in enumerate(source.lines, 1):
        if depth == 0 and (problem := missing_colon(source, number)):
            yield problem
        depth = depth_after(line.strip(), depth)


def _never_closed(source: Source) -> Problem | None:
    depth, opened = 0, 0
    for number, line in enumerate(source.lines, 1):
        before, depth = depth, depth_after(line.strip(), depth)
        if before == 0 and depth > 0:
            opened = number
        elif depth > 0 and re.match(r"[a-z][a-z ]*:(?: |$)", line):
            break
    if depth == 0:
        return None
    sign = "[" if "[" in source.lines[opened - 1] and "{" not in source.lines[opened - 1] else "{"
    close = "]" if sign == "[" else "}"
    return unreadable(
        source.file,
        opened,
        "never_closed",
        f"The {sign} on this line is never closed; write {close} where it ends.",
        found=sign,
        allowed=f"{sign} ... {close}",
        fix=f"Write {close} at the end of the line, or where the last value stands.",
    )


_BRACES = (
    "Inside { } write `key: value, key: value`, and inside [ ] values with commas between; "
    "this line does not read that way."
)
_STEPS = (
    "This line does not stand under the one above: "
    "start the lines of one block at the same place, two spaces in."
)
_OTHER = "This line cannot be read; each line is `key: value`, and a list's begin with a dash."


def syntax(source: Source, error: MarkedYAMLError) -> list[Problem]:
    """Every line at fault that can be told, else the one where the reader gave up."""
    if unclosed := _never_closed(source):
        return [unclosed]
    if lacking := list(lines_without_colon(source)):
        return lacking
    mark = error.problem_mark or error.context_mark
    line = min(mark.line + 1, len(source.lines)) if mark else 1
    said, during = error.problem or "", error.context or ""
    bare = _bare(source.lines[line - 1])
    if "alias" in said or bare.startswith(("&", "*")):
        return [anchor(source.file, line, "& and * are")]
    if "expected ',' or" in said or "flow" in during:
        message, allowed = _BRACES, "{key: value, key: value}"
    elif "quoted scalar" in during:
        message, allowed = "The quotation mark on this line is never closed.", "both or none"
    elif "block" in said or "mapping values" in said or "block" in during:
        message, allowed = _STEPS, "two spaces for each step in"
    else:
        message, allowed = _OTHER, "key: value"
    return [
        unreadable(
            source.file,
            line,
            "not_yaml",
            message,
            found=bare or "nothing",
            allowed=allowed,
            fix="Write the line again as the sentence above says.",
        )
    ]


def anchor(file: str, line: int, signs: str) -> Problem:
    """The answer to marks that let one line stand for another."""
    return unreadable(
        file,
        line,
        "anchor",
        f"{signs} not used here; say `like: NAME`.",
        found=signs.split()[0],
        allowed="like: NAME",
        fix="Give the other block a name, and write `like: ` and that name.",
    )
