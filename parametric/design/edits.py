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
