"""Lengths: read exactly, printed to a step, and read back as they were printed.

Source of the conversions: the international yard and pound agreement of 1959 (1 yard is
0.9144 m, so an inch is 25.4 mm). Forms of writing and rounding: common practice, no source.
"""

from __future__ import annotations

import doctest
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from parametric import units
from parametric.units import (
    NotALength,
    TooLong,
    Unit,
    feet_inch_text,
    inch_text,
    length_text,
    mm_text,
    no_job_is_longer,
    read_length,
)

YARD = Fraction(9144, 10)


def test_the_doctests() -> None:
    assert doctest.testmod(units).failed == 0


@pytest.mark.parametrize(
    ("text", "unit", "mm"),
    [
        ("784.5", "mm", Fraction(1569, 2)),
        ("19 mm", "inch", Fraction(19)),
        ("19mm", "inch", Fraction(19)),
        ("60 cm", "inch", Fraction(600)),
        ("2 m", "mm", Fraction(2000)),
        ("36 in", "mm", YARD),
        ("36", "inch", YARD),
        ('36"', "mm", YARD),
        ("3'", "mm", YARD),
        # 23 5/16 = 373/16 in; 373/16 * 25.4 = 592.1375
        ("23 5/16", "inch", Fraction(5921375, 10000)),
        ('23-5/16"', "mm", Fraction(5921375, 10000)),
        ("23.3125 in", "mm", Fraction(5921375, 10000)),
        ('3/4"', "mm", Fraction(1905, 100)),
        # 1' 6-1/2" = 18.5 in; 18.5 * 25.4 = 469.9
        ("1' 6-1/2\"", "mm", Fraction(4699, 10)),
        ("1'-6 1/2\"", "inch", Fraction(4699, 10)),
        ("1'6-1/2\"", "mm", Fraction(4699, 10)),
        ("-3", "mm", Fraction(-3)),
        ("+2.5", "mm", Fraction(5, 2)),
        ("-1/8", "inch", Fraction(-3175, 1000)),
        ("1.50", "mm", Fraction(3, 2)),
        ("0", "mm", Fraction(0)),
    ],
)
def test_reads(text: str, unit: Unit, mm: Fraction) -> None:
    assert read_length(text, unit) == mm


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("784,5", "Write 784.5 with a point."),
        ("1,829", "Write 1829 without the comma, or 1.829 with a point."),
        (".5", "Write 0.5 with a nought before the point."),
        ("3/4”", 'Write 3/4" with plain signs from the keyboard.'),
        ("1½", "Write 1 1/2 with plain signs from the keyboard."),
        ("592.1 inches", "Write 592.1 in."),
        ("6 ft", "Write 6'."),
        ("23 21/16", '"23 21/16" is not a length: 21/16 beside a whole number is one or more.'),
        ("3/0", '"3/0" is not a length: nothing can be divided by 0.'),
        ("1' 6 mm", '"1\' 6 mm" mixes feet with mm; after feet come inches.'),
        ("wide", '"wide" is not a length.'),
        ("1e3", '"1e3" is not a length.'),
        ("0x10", '"0x10" is not a length.'),
        ("nan", '"nan" is not a length.'),
        ("12 13", '"12 13" is not a length.'),
        ("١٢", '"١٢" is not a length.'),
        ("", '"" is not a length.'),
        ("-", '"-" is not a length.'),
        ("9" * 5000, '"' + "9" * 40 + '..." is not a length.'),
    ],
)
def test_answers(text: str, says: str) -> None:
    with pytest.raises(NotALength) as raised:
        read_length(text, "mm")
    assert str(raised.value) == says


@given(st.text(max_size=60))
def test_any_text_is_a_length_or_an_answer(text: str) -> None:
    answer = "."
    try:
        read_length(text, "inch")
    except NotALength as error:
        answer = str(error)
    assert answer.endswith(".")


@pytest.mark.parametrize(
    ("text", "unit", "says"),
    [
        # 592.1 * 25.4 / 304.8 = 49.3 feet
        ("592.1", "inch", "592.1 inches is 49 feet. Did you mean 592.1 mm?"),
        ("592.1 in", "mm", "592.1 inches is 49 feet. Did you mean 592.1 mm?"),
        ("18290", "mm", "18290 mm is 18.3 metres. Did you mean 1829?"),
        ("1829 cm", "mm", "1829 cm is 18.3 metres. Did you mean 1829 mm?"),
        ("1829 m", "mm", "1829 m is 1829 metres. Did you mean 1829 mm?"),
        ("99999999", "mm", "99999999 mm is 100000 metres."),
    ],
)
def test_no_job_holds_it(text: str, unit: Unit, says: str) -> None:
    with pytest.raises(TooLong) as raised:
        no_job_is_longer(text, unit, read_length(text, unit))
    assert str(raised.value) == says


def test_the_longest_that_a_job_holds() -> None:
    no_job_is_longer("12000", "mm", Fraction(12000))
    with pytest.raises(TooLong):
        no_job_is_longer("12000.1", "mm", Fraction("12000.1"))


@pytest.mark.parametrize(
    ("value", "step", "down", "text"),
    [
        (803.5329, 0.5, False, "803.5"),
        (803.75, 0.5, False, "804"),
        (803.7499, 0.5, False, "803.5"),
        (803.99, 0.5, True, "803.5"),
        # 0.1 + 0.2 is 0.30000000000000004 and 2.9 / 0.1 is 28.999999999999996
        (0.1 + 0.2, 0.1, True, "0.3"),
        (2.9, 0.1, True, "2.9"),
        (778.5, 0.1, True, "778.5"),
        (2102.0, 0.5, False, "2102"),
        (-0.1, 0.5, False, "0"),
        (-2.25, 0.5, False, "-2.5"),
        (7.1875, 0.01, False, "7.19"),
    ],
)
def test_prints_mm(value: float, step: float, down: bool, text: str) -> None:
    assert mm_text(value, step, down=down) == text


@pytest.mark.parametrize(
    ("inches", "step", "down", "text"),
    [
        (23.3125, Fraction(1, 32), False, "23-5/16"),
        (0.75, Fraction(1, 32), False, "3/4"),
        (72.0, Fraction(1, 32), False, "72"),
        # 29.83 in 32nds is 954.56
        (29.83, Fraction(1, 32), False, "29-27/32"),
        (29.83, Fraction(1, 32), True, "29-13/16"),
        (29.83, Fraction(1, 16), False, "29-13/16"),
        (-0.125, Fraction(1, 32), False, "-1/8"),
        (0.01, Fraction(1, 32), False, "0"),
    ],
)
def test_prints_inches(inches: float, step: Fraction, down: bool, text: str) -> None:
    assert inch_text(inches * 25.4, step, down=down) == text


def test_prints_feet_and_inches() -> None:
    assert feet_inch_text(18.5 * 25.4) == "1' 6-1/2\""
    # 11.99 inches is 384 of 32 to the nearest: a whole foot, not 12 inches
    assert feet_inch_text(11.99 * 25.4) == "1' 0\""
    assert feet_inch_text(-30 * 25.4) == "-2' 6\""


def test_prints_in_the_unit_of_the_paper() -> None:
    assert length_text(784.5, "mm") == "784.5"
    # 784.5 / 25.4 = 30.886 = 30 and 28.35/32
    assert length_text(784.5, "inch") == "30-7/8"
    assert length_text(784.5, "inch", Fraction(1, 16), down=True) == "30-7/8"


lengths = st.floats(-3000, 12000, allow_nan=False)


@given(lengths, st.sampled_from([0.05, 0.1, 0.5, 1.0]), st.booleans())
def test_mm_read_back_to_the_step(value: float, step: float, down: bool) -> None:
    read = read_length(mm_text(value, step, down=down), "mm")
    assert abs(float(read) - value) <= (step if down else step / 2) + 1e-6
    assert (read / Fraction(str(step))).denominator == 1
    assert not down or float(read) <= value + 1e-6


@given(lengths, st.sampled_from([8, 16, 32, 64]), st.booleans())
def test_inches_read_back_to_the_step(value: float, parts: int, down: bool) -> None:
    step = Fraction(1, parts)
    text = inch_text(value, step, down=down)
    read = read_length(text, "inch")
    assert abs(float(read) - value) <= float(step) * 25.4 * (1 if down else 0.5) + 1e-4
    assert read_length(feet_inch_text(value, step, down=down), "mm") == read


@given(st.fractions(0, 400, max_denominator=64))
def test_any_fraction_of_the_rule_is_exact(inches: Fraction) -> None:
    """A length that lies on the step is printed and read without any loss."""
    step = Fraction(1, inches.denominator)
    assert read_length(inch_text(float(inches * Fraction(254, 10)), step), "inch") == inches * (
        Fraction(254, 10)
    )
