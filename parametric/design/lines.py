"""The maker's lines, made safe for a YAML reader: every line stays a line, and every value its own text."""

from __future__ import annotations

import re
from dataclasses import dataclass

from ruamel.yaml.error import StreamMark

from parametric.figures import Where
from parametric.problems import Problem

MOST_BYTES = 200_000
"""A design file is a page or two; anything larger is some other file."""

_QUOTED = re.compile(r"""("(?:[^"\\]|\\.)*"|'(?:[^']|'')*')(?: +#.*)?\s*""")
_NOT_TEXT = re.compile(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff]")


class UnreadableError(Exception):
    """What stops the reading of a file: it carries the problems to be told."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__()
        self.problems = problems


def unreadable(
    file: str, line: int, code: str, message: str, *, found: str, allowed: str, fix: str
) -> Problem:
    """A stop that is about the text itself, before any of it is understood."""
    return Problem(
        code=code,
        level="stop",
        message=message,
        where=Where(file, line),
        found=found,
        allowed=allowed,
        fix=fix,
        unreadable=True,
    )


def decode(content: bytes | str, file: str) -> str:
    """The file's text, with one kind of line end."""
    if len(content) > MOST_BYTES:
        raise UnreadableError(
            unreadable(
                file,
                1,
                "not_text",
                "This file is too large to be a design file.",
                found=f"{len(content)} bytes",
                allowed=f"up to {MOST_BYTES}",
                fix="Look at the name: is it another file?",
            )
        )
    if isinstance(content, bytes):
        try:
            content = str(content, "utf-8")
        except UnicodeDecodeError as error:
            line = bytes(error.object[: error.start]).count(b"\n") + 1
            raise UnreadableError(
                unreadable(
                    file,
                    line,
                    "not_text",
                    "This is not plain text; save the file as UTF-8 text.",
                    found=f"a byte {error.object[error.start]:02x} that is no letter",
                    allowed="UTF-8 text",
                    fix="In the editor choose plain text, UTF-8, when saving.",
                )
            ) from None
    return content.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")


@dataclass(slots=True)
class _Line:
    """How one line was changed for the reader: tabs widened, a text value put in quotes."""

    start: int
    original_start: int
    tabs: int = 0
    text_value: tuple[int, int, int] | None = None
    """Where the quotes begin, and where the value begins and ends in the file."""


class Source:
    """The text for the YAML reader, the same lines as the file's, and the way back."""

    def __init__(self, text: str, file: str) -> None:
        self.file = file
        self.original = text
        self.lines = text.split("\n")
        self.changed: list[_Line] = []
        safe: list[str] = []
        mixed: list[Problem] = []
        depth = start = original_start = 0
        for number, line in enumerate(self.lines, 1):
            if odd := _NOT_TEXT.search(line):
                raise UnreadableError(
                    unreadable(
                        file,
                        number,
                        "not_text",
                        f"There is a sign here that is not text (U+{ord(odd[0]):04X}); "
                        "save the file as plain text.",
                        found=f"U+{ord(odd[0]):04X}",
                        allowed="letters, figures and signs",
                        fix="Take the sign out, or write the line again.",
                    )
                )
            change = _Line(start, original_start)
            lead = re.match(r"[ \t]*", line)[0]  # type: ignore[index] # always matches
            if "\t" in lead and " " in lead and line.strip():
                mixed.append(
                    unreadable(
                        file,
                        number,
                        "tabs_and_spaces",
                        "Use two spaces for each step in; this line mixes tabs and spaces.",
                        found="tabs and spaces",
                        allowed="spaces, or tabs alone",
                        fix="Take the tabs out and put two spaces for each.",
                    )
                )
            change.tabs = lead.count("\t")
            rest = line[len(lead) :].replace("\t", " ")
            if depth == 0:
                rest = self._text_in_quotes(lead, rest, change)
            depth = depth_after(rest, depth)
            safe_line = lead.replace("\t", "  ") + rest
            safe.append(safe_line)
            self.changed.append(change)
            start += len(safe_line) + 1
            original_start += len(line) + 1
        if mixed:
            raise UnreadableError(*mixed)
        self.safe = "\n".join(safe)

    def _text_in_quotes(self, lead: str, rest: str, change: _Line) -> str:
        """Text runs to the end of its line, colons and quotes and all."""
        found = re.fullmatch(
            r"(?P<key>(?:- +)?[^\s:#{}\[\]\"'&*!|>%@`-][^:#{}\[\]]*: +)(?P<value>\S.*?)"
            r"(?P<tail>(?: +#.*)?\s*)",
            rest,
        )
        if found is None:
            return rest
        value = found["value"]
        if _QUOTED.fullmatch(rest[len(found["key"]) :]):
            return rest
        opens_quotes = value[0] in "\"'"
        starts_oddly = value[0] in ",]}@`%" or re.match(r"[-?] ", value)
        holds_colon = value[0] not in "{[\"'&*!|>#" and re.search(r":(?: |$)", value)
        if not (opens_quotes or starts_oddly or holds_colon):
            return rest
        at = len(lead) + len(found["key"])
        begins = change.original_start + at
        change.text_value = (
            change.start + at + change.tabs,
            begins,
            begins + len(value),
        )
        doubled = value.replace("'", "''")
        return f"{found['key']}'{doubled}'{found['tail']}"

    def span(self, start: StreamMark, end: StreamMark) -> tuple[int, int]:
        """Where a value's characters stand in the file itself."""
        change = self.changed[start.line]
        if change.text_value is not None and start.index == change.text_value[0]:
            return change.text_value[1:]
        last = self.changed[end.line]
        return (
            start.index - change.start - change.tabs + change.original_start,
            end.index - last.start - last.tabs + last.original_start,
        )


def depth_after(line: str, depth: int) -> int:
    """How many braces and brackets are open after a line."""
    at_start, index = True, 0
    if depth == 0:
        opening = re.match(r"(?:- +){0,12}(?:[^#{}\[\]\"']*?: +)?(?=[{\[])", line)
        if opening is None:
            return 0
        index = opening.end()
    while index < len(line):
        sign = line[index]
        if sign == "#" and (index == 0 or line[index - 1] == " "):
            break
        if at_start and sign in "\"'":
            close = line.find(sign, index + 1)
            index = len(line) if close < 0 else close
        elif sign in "{[":
            depth += 1
        elif sign in "}]":
            depth = max(0, depth - 1)
        if sign != " ":
            at_start = sign in "{[,:"
        index += 1
    return depth
