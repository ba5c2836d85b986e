"""Changes to a file that leave every other character as the maker wrote it."""

from __future__ import annotations

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
        KeyError: nothing is written under that path, or the file cannot be read.
        ValueError: the value cannot stand on one line.

    Example:
        >>> set_value("leaf:\n  stiles: 1.50   # of each\n", ("leaf", "stiles"), "120")
        'leaf:\n  stiles: 120   # of each\n'
    """
    if "\n" in new or "\r" in new or not new.strip():
        raise ValueError("a value stands on one line")
    mark = "\ufeff" if text.startswith("\ufeff") else ""
    lines_end = "\r\n" if "\r\n" in text else "\n"
    plain = text.removeprefix(mark).replace("\r\n", "\n")
    old = _scalar(plain, path)
    doubled = new.replace("'", "''")
    for written in (new, f"'{doubled}'"):
        changed = plain[: old.start] + written + plain[old.end :]
        if _reads_the_same_but_for(plain, changed, path, new):
            return mark + changed.replace("\n", lines_end)
    raise ValueError(f"{new!r} cannot be written as a value")


def value_at(text: str, path: Sequence[Step]) -> str:
    """The value under a path, as it is written."""
    return _scalar(text, path).text


def _root(text: str) -> Keys:
    sheet = read(text, "")
    if sheet.keys is None:
        raise KeyError(sheet.problems[0].message)
    return sheet.keys


def _scalar(text: str, path: Sequence[Step]) -> Scalar:
    node: Node = _root(text)
    for step in path:
        if isinstance(node, Keys) and isinstance(step, str):
            found = next((value for key, value in node.entries if key.text == step), None)
            if found is None:
                raise KeyError(step)
            node = found
        elif isinstance(node, Items) and isinstance(step, int) and 0 <= step < len(node.items):
            node = node.items[step]
        else:
            raise KeyError(step)
    if not isinstance(node, Scalar):
        raise KeyError(path[-1] if path else "")
    return node


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
    except KeyError:
        return False
    want = tuple(path)
    return now == [(p, new if p == want else v) for p, v in _flat(_root(before), ())]
