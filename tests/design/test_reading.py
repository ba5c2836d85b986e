"""Text into keys and values: every value the maker's own, every ambiguity refused, nothing thrown."""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from parametric.design import load
from parametric.design.reading import Keys, Node, Scalar, read
from parametric.problems import exit_status


def plain(node: Node | None) -> Any:
    if isinstance(node, Scalar):
        return node.text
    if isinstance(node, Keys):
        return {key.text: plain(value) for key, value in node.entries}
    return [plain(item) for item in node.items] if node else None


def test_values_stay_as_they_were_written() -> None:
    text = 'a: 1.50\nb: 007\nc: on\nd: 1e3\ne: ~\nf: 2026-11-20\ng: {h: 3/4", i: 1\' 6-1/2"}\n'
    assert plain(read(text, "f").keys) == {
        "a": "1.50",
        "b": "007",
        "c": "on",
        "d": "1e3",
        "e": "~",
        "f": "2026-11-20",
        "g": {"h": '3/4"', "i": "1' 6-1/2\""},
    }


def test_tabs_alone_are_two_spaces() -> None:
    assert plain(read("a:\n\tb: 1\n\tc:\t2\n", "f").keys) == {"a": {"b": "1", "c": "2"}}


def test_line_ends_and_byte_order_marks_of_any_editor() -> None:
    assert plain(read(b"\xef\xbb\xbfa: 1\r\nb: 2\r\n", "f").keys) == {"a": "1", "b": "2"}


@pytest.mark.parametrize(
    ("text", "code", "line"),
    [
        ("a: 1\nb: \x00\n", "not_text", 2),
        (b"a: 1\nb: \xff\n", "not_text", 2),
        ("a" * 1_000_001, "not_text", 1),
        ("a: {b: {c: {d: {e: {f: {g: {h: {i: {j: {k: {l: {m: 1}}}}}}}}}}}}\n", "too_deep", 1),
        ("[" * 5000, "too_deep", 1),
        ("- a\n", "no_colon", 1),
        ("? [a]\n: b\n", "not_yaml", 1),
        ("%YAML 1.1\n---\na: 1\n", "not_yaml", 2),
        ("a: *b\n", "anchor", 1),
        ("a: |\n  text\n", "several_lines", 1),
    ],
)
def test_refused(text: str | bytes, code: str, line: int) -> None:
    found = read(text, "f.yaml").problems
    assert [(p.code, p.where.line) for p in found if p.where] == [(code, line)]


# Signs that mean something to a YAML reader, and some that mean nothing to anybody.
soup = st.text(alphabet="ab: -\n\t {}[]\"'&*!|>%@`#,?1/=~\u2028\x85\ufeff\\0<xé", max_size=60)


@given(soup)
def test_any_text_is_read_or_answered(text: str) -> None:
    contents = read(text, "f")
    assert contents.keys is not None or contents.problems
    assert all(p.unreadable and p.where and p.where.line >= 1 for p in contents.problems)


@given(st.binary(max_size=120))
def test_any_bytes_are_read_or_answered(content: bytes) -> None:
    contents = read(content, "f")
    assert contents.keys is not None or contents.problems


@given(soup)
def test_every_value_lies_where_it_says(text: str) -> None:
    """The characters at a value's marks are the value; edits put others in their place."""
    text = text.lstrip("\ufeff").replace("\r", "")

    def walk(node: Node) -> None:
        if isinstance(node, Scalar):
            between = text[node.start : node.end]
            if not node.quoted and "\n" not in between:
                assert between.replace("\t", " ") == node.text
        elif isinstance(node, Keys):
            for key, value in node.entries:
                walk(key)
                walk(value)
        else:
            for item in node.items:
                walk(item)

    keys = read(text, "f").keys
    if keys is not None:
        walk(keys)


@settings(max_examples=60)
@given(data=st.data())
def test_larch_hill_with_signs_struck_over(
    reading_room: Path, tmp_path_factory: pytest.TempPathFactory, data: st.DataObject
) -> None:
    """A slip of the finger anywhere in a whole design: loaded, or stopped in words."""
    letters = list(reading_room.read_text(encoding="utf-8"))
    for _ in range(data.draw(st.integers(1, 4))):
        at = data.draw(st.integers(0, len(letters) - 1))
        letters[at] = data.draw(st.sampled_from(list("ab: -\n\t{}[]\"'&*!|>#,1/x")))
    folder = tmp_path_factory.mktemp("slip")
    (folder / ".git").mkdir()
    path = folder / "design.yaml"
    path.write_text("".join(letters), encoding="utf-8")
    found = load(path, user_house=False)
    assert (found.design is None) == (exit_status(found.problems) != 0)
    assert all(p.message and p.where and p.where.file == "design.yaml" for p in found.problems)
