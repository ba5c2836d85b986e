"""Changes to a file that leave every other character as the maker wrote it."""

from __future__ import annotations

import re
from collections.abc import Sequence

from parametric.design.reading import Items, Keys, Node, Scalar, read

Step = str | int


def set_value(text: str, path: Sequence[Step], new: str) -> str:
    r"""Put a value in the place of another; comments, order and blank lines stay.

    Args:
        text: the file.
        path: heading, key, and further keys or positions in a list:
            `("leaf", "top to bottom", 4, "lock rail")`.
        new: the value as a maker writes it.

    Returns:
        The file with that value's own characters changed and no others.

    Raises:
        ValueError: nothing is written under that path, the file cannot be read, or the
            value cannot stand on one line.

    Example:
        >>> set_value("leaf:\n  stiles: 1.50   # of each\n", ("leaf", "stiles"), "120")
        'leaf:\n  stiles: 120   # of each\n'
    """
    if "\n" in new or "\r" in new or not new.strip():
        raise ValueError("a value stands on one line")
    old = _scalar(text, path)
    start, end = _in_file(text, old.start), _in_file(text, old.end)
    doubled = new.replace("'", "''")
    for written in (new, f"'{doubled}'"):
        changed = text[:start] + written + text[end:]
        if _reads_the_same_but_for(text, changed, path, new):
            return changed
    raise ValueError(f"{new!r} cannot be written as a value")


def add_value(text: str, after: Sequence[Step], key: str, new: str) -> str:
    r"""Put a key and its value behind another of the same block, in braces or on a line below.

    Args:
        text: the file.
        after: heading and keys of a value that is there.
        key: the key to add; it must not be there yet.
        new: its value, one word.

    Returns:
        The file with that key more and every other character as it was.

    Raises:
        ValueError: nothing is written under that path, or the key cannot be written there.

    Example:
        >>> add_value("approved: {revision: A, by: x}\n", ("approved", "revision"), "option", "B")
        'approved: {revision: A, option: B, by: x}\n'
    """
    old = _scalar(text, after)
    start, end = _in_file(text, old.start), _in_file(text, old.end)
    own_line = re.match(r"\ufeff?([ \t]*)[a-z][a-z ]*:[ \t]*$", _line_up_to(text, start))
    if own_line is None:
        changed = f"{text[:end]}, {key}: {new}{text[end:]}"
    else:
        ends = "\r\n" if "\r\n" in text else "\n"
        stop = text.find("\n", end)
        before = text if stop < 0 else text[: stop + 1]
        after_it = "" if stop < 0 else text[stop + 1 :]
        gap = ends if stop < 0 else ""
        changed = f"{before}{gap}{own_line[1]}{key}: {new}{ends}{after_it}"
    path = (*after[:-1], key)
    said = _flat(_root(changed), ())
    if (path, new) not in said or [e for e in said if e[0] != path] != _flat(_root(text), ()):
        raise ValueError(f"{key!r} cannot be written there")
    return changed


def _line_up_to(text: str, at: int) -> str:
    return text[text.rfind("\n", 0, at) + 1 : at]


def _in_file(text: str, at: int) -> int:
    """Where a sign stands in the file, which may begin with a mark and end its lines in two signs.

    The reader counts from after the mark, and every line end as one.
    """
    at += text.startswith("\ufeff")
    for end in re.finditer("\r\n", text):
        if end.start() >= at:
            break
        at += 1
    return at


def value_at(text: str, path: Sequence[Step]) -> str:
    """The value under a path, as it is written.

    Raises:
        ValueError: nothing is written under that path, or the file cannot be read.
    """
    return _scalar(text, path).text


def _root(text: str) -> Keys:
    sheet = read(text, "")
    if sheet.keys is None:
        raise ValueError(sheet.problems[0].message)
    return sheet.keys


def _scalar(text: str, path: Sequence[Step]) -> Scalar:
    node: Node = _root(text)
    for step in path:
        if isinstance(node, Keys) and isinstance(step, str):
            found = next((value for key, value in node.entries if key.text == step), None)
            if found is None:
                raise _nothing_there(path)
            node = found
        elif isinstance(node, Items) and isinstance(step, int) and 0 <= step < len(node.items):
            node = node.items[step]
        else:
            raise _nothing_there(path)
    if not isinstance(node, Scalar):
        raise _nothing_there(path)
    return node


def _nothing_there(path: Sequence[Step]) -> ValueError:
    return ValueError(f"no value is written under {' / '.join(str(step) for step in path)!r}")


def _flat(node: Node, path: tuple[Step, ...]) -> list[tuple[tuple[Step, ...], str]]:
    if isinstance(node, Scalar):
        return [(path, node.text)]
    if isinstance(node, Keys):
        return [entry for key, value in node.entries for entry in _flat(value, (*path, key.text))]
    return [entry for i, item in enumerate(node.items) for entry in _flat(item, (*path, i))]


def _reads_the_same_but_for(before: str, after: str, path: Sequence[Step], new: str) -> bool:
    """True when the changed file says what the old one said, but for the one value."""
    try:
        now = _flat(_root(after), ())
    except ValueError:
        return False
    want = tuple(path)
    return now == [(p, new if p == want else v) for p, v in _flat(_root(before), ())]
