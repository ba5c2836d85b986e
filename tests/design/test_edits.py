"""Edits change a value's own characters and no others."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.design import edits
from parametric.design.edits import Step, set_value, value_at

TEXT = """\
# a job
stilewright: 1
units: mm      # of a bare number

leaf:
\tstiles: 100  # each
\tfillet: 1.50
\tnote: as the sample: "mid", and so on   # ours
\ttop to bottom:
\t\t- top rail: 120
\t\t- {lite: equal, of: clear}
track: {spacing: 52,   hangers: 2}   # two
"""


def test_the_doctests() -> None:
    assert doctest.testmod(edits).failed == 0


@pytest.mark.parametrize(
    ("path", "old", "new", "line"),
    [
        (("units",), "mm", "inch", "units: inch      # of a bare number"),
        (("leaf", "stiles"), "100", "4-1/2", "\tstiles: 4-1/2  # each"),
        (
            ("leaf", "note"),
            'as the sample: "mid", and so on',
            "plain",
            "\tnote: plain   # ours",
        ),
        (("leaf", "top to bottom", 0, "top rail"), "120", "90", "\t\t- top rail: 90"),
        (("leaf", "top to bottom", 1, "lite"), "equal", "rest", "\t\t- {lite: rest, of: clear}"),
        (("track", "spacing"), "52", "60 mm", "track: {spacing: 60 mm,   hangers: 2}   # two"),
        (("leaf", "stiles"), "100", "a: b", "\tstiles: a: b  # each"),
        (
            ("track", "hangers"),
            "2",
            "2, or 3",
            "track: {spacing: 52,   hangers: '2, or 3'}   # two",
        ),
    ],
)
def test_one_line_differs(path: tuple[Step, ...], old: str, new: str, line: str) -> None:
    assert value_at(TEXT, path) == old
    after = set_value(TEXT, path, new)
    assert value_at(after, path) == new
    differ = [(a, b) for a, b in zip(TEXT.split("\n"), after.split("\n"), strict=True) if a != b]
    assert [b for _, b in differ] == [line]
    assert set_value(after, path, old) == TEXT or "'" in line


def test_comments_and_figures_are_kept() -> None:
    after = set_value(TEXT, ("leaf", "stiles"), "105")
    assert "fillet: 1.50" in after
    assert after.count("#") == TEXT.count("#")


def test_line_ends_and_mark_of_the_file_are_kept() -> None:
    text = "\ufeff" + TEXT.replace("\n", "\r\n")
    after = set_value(text, ("leaf", "fillet"), "2")
    assert after == text.replace("1.50", "2")


def test_line_ends_of_several_editors_are_kept() -> None:
    text = TEXT.replace("mm      # of a bare number\n", "mm      # of a bare number\r\n")
    text = text.replace("# each\n", "# each\r").replace("# ours\n", "# ours\r\n")
    assert {"\r\n", "\r", "\n"} <= set(re.findall("\r\n|\r|\n", text))
    for path, old in ((("leaf", "fillet"), "1.50"), (("track", "spacing"), "52")):
        assert set_value(text, path, "2") == text.replace(old, "2")


@pytest.mark.parametrize(
    "path", [(), ("leaf",), ("leaf", "trim"), ("leaf", "top to bottom", 7), ("units", "mm")]
)
def test_nothing_is_written_there(path: tuple[Step, ...]) -> None:
    with pytest.raises(ValueError, match="no value is written under"):
        set_value(TEXT, path, "1")
    with pytest.raises(ValueError, match="no value is written under"):
        value_at(TEXT, path)


def test_a_file_that_cannot_be_read() -> None:
    with pytest.raises(ValueError, match="never closed"):
        set_value("leaf: {stiles: 100\n", ("leaf", "stiles"), "1")


@pytest.mark.parametrize("new", ["", "  ", "1\n2"])
def test_no_value(new: str) -> None:
    with pytest.raises(ValueError, match="one line"):
        set_value(TEXT, ("leaf", "stiles"), new)


@given(st.text(alphabet="ab1 :,#{}[]'\"-&*!x/", min_size=1, max_size=12))
def test_whatever_is_put_in_is_read_back(new: str) -> None:
    for path in (("leaf", "stiles"), ("track", "spacing")):
        try:
            after = set_value(TEXT, path, new)
        except ValueError:
            assert not new.strip()
            continue
        assert value_at(after, path) == new


def test_larch_hill_one_value(reading_room: Path) -> None:
    text = reading_room.read_text(encoding="utf-8")
    after = set_value(text, ("leaf", "top to bottom", 4, "lock rail"), "160")
    assert after == text.replace("lock rail: 150", "lock rail: 160")
