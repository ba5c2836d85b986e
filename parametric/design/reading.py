"""A file's text into keys, values and lists, each with its place; whatever is ambiguous is refused.

YAML reads `1.50` as 1.5, `on` as yes, and lets one line stand for another. Here every value
stays the maker's own text, and every mark that could mean two things gets an answer instead.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from dataclasses import dataclass, field

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, StreamMark, YAMLError
from ruamel.yaml.events import (
    AliasEvent,
    DocumentStartEvent,
    Event,
    MappingEndEvent,
    MappingStartEvent,
    ScalarEvent,
    SequenceEndEvent,
    SequenceStartEvent,
)

from parametric.figures import Where
from parametric.problems import Problem

MOST_BYTES = 1_000_000
"""A design file is a page or two; anything larger is some other file."""
_DEEPEST = 12


@dataclass(slots=True)
class Scalar:
    """A value or a key: its text, its line, and where its characters stand in the file."""

    text: str
    line: int
    start: int
    end: int
    quoted: bool


@dataclass(slots=True)
class Keys:
    """Keys and values, under a heading or inside braces."""

    line: int
    entries: list[tuple[Scalar, Node]] = field(default_factory=list)


@dataclass(slots=True)
class Items:
    """A list, with dashes or in brackets."""

    line: int
    items: list[Node] = field(default_factory=list)


Node = Scalar | Keys | Items


@dataclass(frozen=True, slots=True, kw_only=True)
class Sheet:
    """One file as read: its keys, or what stands in the way of reading it."""

    keys: Keys | None
    problems: tuple[Problem, ...]


class _Unreadable(Exception):  # noqa: N818 - carries problems, never leaves this module
    """What stops the reading of a file."""

    def __init__(self, *problems: Problem) -> None:
        super().__init__()
        self.problems = problems


def _stop(file: str, line: int, code: str, message: str, **more: str) -> Problem:
    return Problem(
        code=code,
        level="stop",
        message=message,
        where=Where(file, line),
        unreadable=True,
        **more,  # type: ignore[arg-type] # found, allowed and fix are text
    )


def read(content: bytes | str, file: str) -> Sheet:
    """Read a file's content.

    Args:
        content: the file's bytes, or its text.
        file: its name as the user gave it, for the problems.

    Returns:
        The keys at the margin with everything under them, or None with the reasons.
    """
    try:
        text = _decode(content, file)
        source = _Source(text, file)
        keys, problems = _build(source)
    except _Unreadable as unreadable:
        return Sheet(keys=None, problems=unreadable.problems)
    return Sheet(keys=keys, problems=tuple(problems))


def _decode(content: bytes | str, file: str) -> str:
    if len(content) > MOST_BYTES:
        raise _Unreadable(_stop(file, 1, "not_text", "This file is too large to be a design file."))
    if isinstance(content, str):
        text = content
    else:
        try:
            text = content.decode("utf-8")
        except UnicodeDecodeError as error:
            line = content[: error.start].count(b"\n") + 1
            raise _Unreadable(
                _stop(
                    file,
                    line,
                    "not_text",
                    "This is not plain text; save the file as UTF-8 text.",
                )
            ) from None
    return text.removeprefix("\ufeff").replace("\r\n", "\n").replace("\r", "\n")


# The maker's lines, made safe for a YAML reader --------------------------------------------


@dataclass(slots=True)
class _Line:
    """How one line was changed for the reader: tabs widened, a text value put in quotes."""

    start: int
    original_start: int
    tabs: int = 0
    text_value: tuple[int, int, int] | None = None
    """Where the quotes begin, and where the value begins and ends in the file."""


class _Source:
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
            if odd := re.search(r"[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\u2028\u2029\ufeff]", line):
                raise _Unreadable(
                    _stop(
                        file,
                        number,
                        "not_text",
                        f"There is a sign here that is not text (U+{ord(odd[0]):04X}); "
                        "save the file as plain text.",
                    )
                )
            change = _Line(start, original_start)
            lead = re.match(r"[ \t]*", line)[0]  # type: ignore[index] # always matches
            if "\t" in lead and " " in lead and line.strip():
                mixed.append(
                    _stop(
                        file,
                        number,
                        "tabs_and_spaces",
                        "Use two spaces for each step in; this line mixes tabs and spaces.",
                    )
                )
            change.tabs = lead.count("\t")
            rest = line[len(lead) :].replace("\t", " ")
            if depth == 0:
                rest = self._text_in_quotes(lead, rest, change)
            depth = _depth_after(rest, depth)
            safe_line = lead.replace("\t", "  ") + rest
            safe.append(safe_line)
            self.changed.append(change)
            start += len(safe_line) + 1
            original_start += len(line) + 1
        if mixed:
            raise _Unreadable(*mixed)
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
        whole_quoted = re.fullmatch(r'"(?:[^"\\]|\\.)*"|\'(?:[^\']|\'\')*\'', value)
        opens_quotes = value[0] in "\"'" and not whole_quoted
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


def _depth_after(line: str, depth: int) -> int:
    """How many braces and brackets are open after a line."""
    at_start, index = True, 0
    if depth == 0:
        opening = re.match(r"(?:- +)*(?:[^#{}\[\]\"']*?: +)?(?=[{\[])", line)
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


# Events into keys and values ---------------------------------------------------------------


def _build(source: _Source) -> tuple[Keys, list[Problem]]:
    """Put the reader's events together; problems that do not hide others are collected."""
    problems: list[Problem] = []
    top: list[Node] = []
    open_nodes: list[Keys | Items] = []
    waiting: list[Scalar | None] = []
    try:
        for event in _events(source):
            if isinstance(event, (MappingEndEvent, SequenceEndEvent)):
                open_nodes.pop()
                waiting.pop()
                continue
            if isinstance(event, DocumentStartEvent):
                _only_one_document(source, event, top)
                continue
            node = _node(source, event, problems)
            if node is None:
                continue
            if not open_nodes:
                top.append(node)
            elif isinstance(parent := open_nodes[-1], Items):
                parent.items.append(node)
            elif (key := waiting[-1]) is None:
                waiting[-1] = _key(source, node)
            else:
                parent.entries.append((key, node))
                waiting[-1] = None
            if isinstance(node, (Keys, Items)):
                open_nodes.append(node)
                waiting.append(None)
                if len(open_nodes) > _DEEPEST:
                    raise _Unreadable(
                        _stop(
                            source.file,
                            node.line,
                            "too_deep",
                            "Braces within braces within braces: two levels and a list are enough.",
                        )
                    )
    except MarkedYAMLError as error:
        raise _Unreadable(*_syntax(source, error)) from None
    except (YAMLError, RecursionError, ValueError):
        raise _Unreadable(
            _stop(source.file, 1, "not_yaml", "This file cannot be read as a design file.")
        ) from None
    if not top:
        return Keys(1), problems
    if not isinstance(top[0], Keys):
        if diagnosed := list(_lines_without_colon(source)):
            raise _Unreadable(*diagnosed)
        raise _Unreadable(
            _stop(
                source.file,
                top[0].line,
                "not_yaml",
                "A design file is headings at the margin with `key: value` lines under them.",
            )
        )
    return top[0], problems


def _events(source: _Source) -> Iterator[Event]:
    reader = YAML(typ="safe", pure=True)
    yield from reader.parse(source.safe)


def _only_one_document(source: _Source, event: DocumentStartEvent, top: list[Node]) -> None:
    line = event.start_mark.line + 1
    if top:
        raise _Unreadable(
            _stop(
                source.file,
                line,
                "several_documents",
                "A line of three dashes starts a second file in here; one file holds one job.",
            )
        )
    if event.version is not None or event.tags:
        raise _Unreadable(
            _stop(
                source.file,
                line,
                "not_yaml",
                "Lines that begin with % are not used here; take them out.",
            )
        )


def _node(source: _Source, event: Event, problems: list[Problem]) -> Node | None:
    if not isinstance(event, (ScalarEvent, MappingStartEvent, SequenceStartEvent, AliasEvent)):
        return None
    line = event.start_mark.line + 1
    if isinstance(event, AliasEvent) or event.anchor is not None:
        raise _Unreadable(
            _stop(
                source.file,
                line,
                "anchor",
                "& and * are not used here; say `like: NAME`.",
                fix="Give the other block a name, and write `like: ` and that name.",
            )
        )
    if event.tag is not None:
        raise _Unreadable(
            _stop(
                source.file,
                line,
                "tag",
                "A word that begins with ! is not used here; take it out, or put the text in quotes.",
            )
        )
    if isinstance(event, MappingStartEvent):
        return Keys(line)
    if isinstance(event, SequenceStartEvent):
        return Items(line)
    if event.style in ("|", ">"):
        problems.append(
            _stop(
                source.file,
                line,
                "several_lines",
                "Text stands on one line here; write it after the colon.",
            )
        )
    elif event.end_mark.line != event.start_mark.line and event.value:
        problems.extend(_carried_over(source, event))
    start, end = source.span(event.start_mark, event.end_mark)
    return Scalar(event.value, line, start, end, event.style is not None)


def _carried_over(source: _Source, event: ScalarEvent) -> Iterator[Problem]:
    """A value that goes on over its line end: nearly always a colon forgotten below it."""
    found = False
    for number in range(event.start_mark.line + 2, event.end_mark.line + 2):
        if number > len(source.lines):
            break
        if problem := _colon(source, number, sure=True):
            found = True
            yield problem
    if not found:
        yield _stop(
            source.file,
            event.start_mark.line + 2,
            "several_lines",
            "This line goes on from the one above; a value stands on one line, "
            "and each line is `key: value`.",
        )


def _key(source: _Source, node: Node) -> Scalar:
    if not isinstance(node, Scalar):
        raise _Unreadable(
            _stop(
                source.file,
                node.line,
                "not_yaml",
                "A key is words, and this one is a list or a pair of braces.",
            )
        )
    if node.text == "<<":
        raise _Unreadable(
            _stop(source.file, node.line, "anchor", "<< is not used here; say `like: NAME`.")
        )
    if not node.text.strip():
        raise _Unreadable(
            _stop(source.file, node.line, "not_yaml", "There is no key before this colon.")
        )
    return node


# The reader's complaints in shop words -----------------------------------------------------


def _bare(line: str) -> str:
    """A line without its comment."""
    return re.sub(r"(?:^|\s)#.*$", "", line).strip()


def _colon(source: _Source, number: int, *, sure: bool = False) -> Problem | None:
    """The problem of a line that should be `key: value` and lacks its colon or its space.

    `sure` asks for lines that are plainly a key and its value, not words that run on.
    """
    bare = _bare(source.lines[number - 1])
    dash = "- " if bare.startswith("- ") else ""
    words = bare.removeprefix("- ").strip()
    if not words or words[0] in "{[\"'" or re.search(r":(?:\s|$)", words):
        return None
    if tight := re.fullmatch(r"([a-zA-Z][a-zA-Z ]*?):(\S.*)", words):
        return _stop(
            source.file,
            number,
            "no_colon",
            f"A space is missing after the colon: write `{dash}{tight[1]}: {tight[2]}`.",
            found=bare,
        )
    loose = re.fullmatch(r"([a-zA-Z][a-zA-Z ]*?) ?[=]? ?([-+]?[0-9].*|\{.*|\[.*)", words)
    if loose is None and sure:
        return None
    message = (
        f"A colon is missing: write `{dash}{loose[1]}: {loose[2]}`."
        if loose
        else f"A colon is missing; each line is `{dash}key: value`."
    )
    return _stop(source.file, number, "no_colon", message, found=bare)


def _lines_without_colon(source: _Source) -> Iterator[Problem]:
    depth = 0
    for number, line in enumerate(source.lines, 1):
        if depth == 0 and (problem := _colon(source, number)):
            yield problem
        depth = _depth_after(line.strip(), depth)


def _never_closed(source: _Source) -> Problem | None:
    depth, opened = 0, 0
    for number, line in enumerate(source.lines, 1):
        before, depth = depth, _depth_after(line.strip(), depth)
        if before == 0 and depth > 0:
            opened = number
        elif depth > 0 and re.match(r"[a-z][a-z ]*:(?: |$)", line):
            break
    if depth == 0:
        return None
    sign = "[" if "[" in source.lines[opened - 1] and "{" not in source.lines[opened - 1] else "{"
    close = "]" if sign == "[" else "}"
    return _stop(
        source.file,
        opened,
        "never_closed",
        f"The {sign} on this line is never closed; write {close} where it ends.",
    )


def _syntax(source: _Source, error: MarkedYAMLError) -> list[Problem]:
    """Every line at fault that can be told, else the one where the reader gave up."""
    if unclosed := _never_closed(source):
        return [unclosed]
    if lacking := list(_lines_without_colon(source)):
        return lacking
    mark = error.problem_mark or error.context_mark
    line = min(mark.line + 1, len(source.lines)) if mark else 1
    said = error.problem or ""
    bare = _bare(source.lines[line - 1])
    if "alias" in said or bare.startswith(("&", "*")):
        return [_stop(source.file, line, "anchor", "& and * are not used here; say `like: NAME`.")]
    if "expected ',' or" in said or "flow" in (error.context or ""):
        message = (
            "Inside { } write `key: value, key: value`, and inside [ ] values with commas between; "
            "this line does not read that way."
        )
    elif "quoted scalar" in (error.context or ""):
        message = "The quotation mark on this line is never closed."
    elif "block" in said or "mapping values" in said or "block" in (error.context or ""):
        message = (
            "This line does not stand under the one above: "
            "start the lines of one block at the same place, two spaces in."
        )
    else:
        message = (
            "This line cannot be read; each line is `key: value`, and a list's begin with a dash."
        )
    return [_stop(source.file, line, "not_yaml", message, found=bare)]
