"""Comma-separated tables against RFC 4180, section 2."""

from __future__ import annotations

import csv
import io
import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric.figures import Figure
from parametric.writers.csv import write_csv


def test_lines_end_in_cr_lf_and_only_what_must_is_quoted() -> None:
    # RFC 4180 section 2, rules 1, 3, 6 and 7: CRLF, a header line, quotes round commas,
    # quotes and line breaks, a quote doubled
    table = write_csv(("part", "mm"), [("stile, with pull", 2126.0), ('2" rail', 784.5)])
    assert table == b'part,mm\r\n"stile, with pull",2126\r\n"2"" rail",784.5\r\n'


def test_numbers_are_plain() -> None:
    table = write_csv(("a", "b", "c", "d"), [(1024.5, 3, None, Figure(0.1 + 0.2))])
    assert table == b"a,b,c,d\r\n1024.5,3,,0.3\r\n"


def test_utf_8_without_a_mark() -> None:
    assert write_csv(("Ø",), [("é",)]) == "Ø\r\né\r\n".encode()


def test_a_short_row_is_refused() -> None:
    with pytest.raises(ValueError, match="1 cells under 2 headings"):
        write_csv(("a", "b"), [("x",)])


@pytest.mark.parametrize("number", [math.nan, math.inf])
def test_what_is_no_number_is_refused(number: float) -> None:
    with pytest.raises(ValueError, match="not a number to print"):
        write_csv(("a",), [(number,)])


@given(
    st.lists(
        st.tuples(st.text(st.characters(codec="utf-8")), st.text(st.characters(codec="utf-8")))
    )
)
def test_any_words_come_back(rows: list[tuple[str, str]]) -> None:
    table = write_csv(("a", "b"), rows).decode()
    back = list(csv.reader(io.StringIO(table, newline=""), strict=True))
    assert [tuple(r) for r in back] == [("a", "b"), *rows]
