"""A file's text into keys, values and lists, each with its place; whatever is ambiguous is refused.

YAML reads `1.50` as 1.5, `on` as yes, and lets one line stand for another. Here every value
stays the maker's own text, and every mark that could mean two things gets an answer instead.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from ruamel.yaml import YAML
from ruamel.yaml.error import MarkedYAMLError, YAMLError
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

from parametric.design.complaints import anchor, lines_without_colon, missing_colon, syntax
from parametric.design.lines import Source, UnreadableError, decode, unreadable
from parametric.problems import Problem

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
class Contents:
    """One file as read: its keys, or what stands in the way of reading it."""

    keys: Keys | None
    problems: tuple[Problem, ...]


def read(content: bytes | str, file: str) -> Contents:
    """Read a file's content.

    Args:
        content: the file's bytes, or its text.
        file: its name as the user gave it, for the problems.

    Returns:
        The keys at the margin with everything under them, or None with the reasons.
    """
    try:
        keys, problems = _build(Source(decode(content, file), file))
    except UnreadableError as error:
        return Contents(keys=None, problems=error.problems)
    return Contents(keys=keys, problems=tuple(problems))


def _build(source: Source) -> tuple[Keys, list[Problem]]:
    """The file's keys; problems that do not hide others are collected."""
    problems: list[Problem] = []
    try:
        top = _assembled(source, problems)
    except MarkedYAMLError as error:
        raise UnreadableError(*syntax(source, error)) from None
    except (YAMLError, RecursionError, ValueError):
        raise UnreadableError(
            _not_yaml(source, 1, "This cannot be read as a design file.")
        ) from None
    if not top:
        return Keys(1), problems
    if isinstance(top[0], Keys):
        return top[0], problems
    diagnosed = list(lines_without_colon(source))
    message = "A design file is headings at the margin with `key: value` lines under them."
    raise UnreadableError(*(diagnosed or [_not_yaml(source, top[0].line, message)]))


def _assembled(source: Source, problems: list[Problem]) -> list[Node]:
    """Put the reader's events together."""
    top: list[Node] = []
    open_nodes: list[Keys | Items] = []
    waiting: list[Scalar | None] = []
    for event in YAML(typ="safe", pure=True).parse(source.safe):
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
                raise UnreadableError(
                    unreadable(
                        source.file,
                        node.line,
                        "too_deep",
                        "Braces within braces within braces: two levels and a list are enough.",
                        found=f"{len(open_nodes)} levels",
                        allowed="two levels and a list",
                        fix="Write each thing under its own heading.",
                    )
                )
    return top


def _not_yaml(source: Source, line: int, message: str) -> Problem:
    found = source.lines[min(line, len(source.lines)) - 1].strip()[:60]
    return unreadable(
        source.file,
        line,
        "not_yaml",
        message,
        found=found or "nothing",
        allowed="key: value",
        fix="`stilewright new FILE` makes a starter to compare with.",
    )


def _only_one_document(source: Source, event: DocumentStartEvent, top: list[Node]) -> None:
    line = event.start_mark.line + 1
    if top:
        raise UnreadableError(
            unreadable(
                source.file,
                line,
                "several_documents",
                "A line of three dashes starts a second file in here; one file holds one job.",
                found="---",
                allowed="one job a file",
                fix="Take the line out, or write what follows in a file of its own.",
            )
        )
    if event.version is not None or event.tags:
        raise UnreadableError(
            _not_yaml(source, line, "Lines that begin with % are not used here; take them out.")
        )


def _node(source: Source, event: Event, problems: list[Problem]) -> Node | None:
    if not isinstance(event, (ScalarEvent, MappingStartEvent, SequenceStartEvent, AliasEvent)):
        return None
    line = event.start_mark.line + 1
    if isinstance(event, AliasEvent) or event.anchor is not None:
        raise UnreadableError(anchor(source.file, line, "& and * are"))
    if event.tag is not None:
        raise UnreadableError(
            unreadable(
                source.file,
                line,
                "tag",
                "A word that begins with ! is not used here; take it out, or put the text in quotes.",
                found=str(event.tag)[:60],
                allowed="plain words",
                fix="Take it out.",
            )
        )
    if isinstance(event, MappingStartEvent):
        return Keys(line)
    if isinstance(event, SequenceStartEvent):
        return Items(line)
    if any("\ud800" <= letter <= "\udfff" for letter in event.value):
        raise UnreadableError(
            _not_yaml(
                source,
                line,
                "Half a letter is written here, as some programs write a sign beyond \\uffff; "
                "write the sign itself, or \\U and its eight digits.",
            )
        )
    if event.style in ("|", ">"):
        message = "Text stands on one line here; write it after the colon."
        problems.append(_several_lines(source, line, message))
    elif event.end_mark.line != event.start_mark.line and event.value:
        problems.extend(_carried_over(source, event))
        start, end = source.span(event.start_mark, event.end_mark)
        first = source.original[start:end].split("\n", 1)[0].rstrip()
        return Scalar(first, line, start, start + len(first), event.style is not None)
    start, end = source.span(event.start_mark, event.end_mark)
    return Scalar(event.value, line, start, end, event.style is not None)


def _several_lines(source: Source, line: int, message: str) -> Problem:
    return unreadable(
        source.file,
        line,
        "several_lines",
        message,
        found="more lines than one",
        allowed="one line",
        fix="Write it on one line.",
    )


def _carried_over(source: Source, event: ScalarEvent) -> Iterator[Problem]:
    """A value that goes on over its line end: nearly always a colon forgotten below it."""
    last = min(event.end_mark.line + 1, len(source.lines))
    lacking = [
        problem
        for number in range(event.start_mark.line + 2, last + 1)
        if (problem := missing_colon(source, number, sure=True))
    ]
    yield from lacking
    if not lacking:
        message = (
            "This line goes on from the one above; a value stands on one line, "
            "and each line is `key: value`."
        )
        yield _several_lines(source, min(event.start_mark.line + 2, len(source.lines)), message)


def _key(source: Source, node: Node) -> Scalar:
    if not isinstance(node, Scalar):
        message = "A key is words, and this one is a list or a pair of braces."
        raise UnreadableError(_not_yaml(source, node.line, message))
    if node.text == "<<":
        raise UnreadableError(anchor(source.file, node.line, "<< is"))
    if not node.text.strip():
        raise UnreadableError(_not_yaml(source, node.line, "There is no key before this colon."))
    return node
