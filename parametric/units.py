"""Lengths and other quantities as a maker writes and prints them.

Everything inside the tool is millimetres at full precision; a length is an exact fraction
only while it is read or printed. Rounding is a rule of printing and of nothing else.
"""

from __future__ import annotations

import math
import re
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

Unit = Literal["mm", "inch"]

INCH = Fraction(254, 10)
"""Millimetres in an inch, exactly. Source: the international yard and pound agreement of 1959."""
FOOT = 12 * INCH

LONGEST = 12_000
"""No length in a job of doors or casework is longer, mm. Common practice, no source."""

MM_STEP = 0.5
INCH_STEP = Fraction(1, 32)
"""What lengths are printed to unless the house file says otherwise. Common practice, no source."""

_SUFFIXES: dict[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": INCH,
    '"': INCH,
}
_WHOLE = r"[0-9]+"
_DECIMAL = rf"{_WHOLE}(?:\.[0-9]+)?"
_FRACTION = rf"(?:(?P<whole>{_WHOLE})[ -])?(?P<top>{_WHOLE})/(?P<bottom>{_WHOLE})"
_LENGTH = re.compile(
    rf"(?P<sign>[-+]?) ?"
    rf"(?:(?P<feet>{_WHOLE})'(?P<joint> ?-? ?))?"
    rf"(?P<number>{_FRACTION}|(?P<decimal>{_DECIMAL}))?"
    rf" ?(?P<suffix>mm|cm|m|in|\")?"
)
_LONGEST = 40
_TYPOGRAPHIC = {
    "’": "'",
    "′": "'",
    "‘": "'",
    "”": '"',
    "″": '"',
    "“": '"',
    "−": "-",
    "–": "-",
    "½": " 1/2",
    "¼": " 1/4",
    "¾": " 3/4",
    "⅛": " 1/8",
    "⅜": " 3/8",
    "⅝": " 5/8",
    "⅞": " 7/8",
}
_OTHER_WORDS = {
    "inch": "in",
    "inches": "in",
    "ins": "in",
    "''": '"',
    "ft": "'",
    "feet": "'",
    "foot": "'",
    "millimetres": "mm",
    "millimeters": "mm",
    "centimetres": "cm",
    "centimeters": "cm",
    "metres": "m",
    "meters": "m",
    "MM": "mm",
    "CM": "cm",
    "M": "m",
    "IN": "in",
}


class NotALength(ValueError):  # noqa: N818 - it names what was written, not a fault of ours
    """What was written cannot be read as a length; the message says so in shop words."""

    code = "not_a_length"
    allowed = 'a length: 784.5, 19 mm, 23-5/16"'
    fix = 'Write it as 784.5, 19 mm or 23-5/16".'


class TooLong(NotALength):
    """A length, but longer than anything a maker of doors and casework makes."""

    code = "absurd_length"
    allowed = f"up to {LONGEST} mm"
    fix = "Write its unit, or measure again."


def read_length(text: str, unit: Unit) -> Fraction:
    """Read a length as written: `784.5`, `19 mm`, `23-5/16"`, `1' 6-1/2"`, `-3`.

    Args:
        text: what the maker wrote.
        unit: the unit of a bare number.

    Returns:
        Millimetres, exactly.

    Raises:
        NotALength: with a sentence that says what to write instead.

    Example:
        >>> read_length("60 cm", "inch")
        Fraction(600, 1)
        >>> float(read_length('23-5/16"', "mm"))
        592.1375
    """
    written = text.strip()
    found = _LENGTH.fullmatch(written) if len(written) <= _LONGEST else None
    if found is None or (found["number"] is None and found["feet"] is None):
        raise NotALength(_instead(written))
    if found["feet"] is not None:
        value = _after_feet(written, found)
    else:
        scale = _SUFFIXES[found["suffix"]] if found["suffix"] else _bare(unit)
        value = _number(written, found) * scale
    return -value if found["sign"] == "-" else value


def _bare(unit: Unit) -> Fraction:
    return INCH if unit == "inch" else Fraction(1)


def _number(written: str, found: re.Match[str]) -> Fraction:
    if found["number"] is None:
        return Fraction(0)
    if found["decimal"] is not None:
        return Fraction(found["decimal"])
    top, bottom = int(found["top"]), int(found["bottom"])
    if bottom == 0:
        raise NotALength(f'"{written}" is not a length: nothing can be divided by 0.')
    if found["whole"] is None:
        return Fraction(top, bottom)
    if top >= bottom:
        raise NotALength(
            f'"{written}" is not a length: {top}/{bottom} beside a whole number is one or more.'
        )
    return int(found["whole"]) + Fraction(top, bottom)


def _after_feet(written: str, found: re.Match[str]) -> Fraction:
    feet = int(found["feet"]) * FOOT
    if found["number"] is None:
        if found["suffix"] or found["joint"].strip():
            raise NotALength(f'"{written}" is not a length: write 6\' or 6\' 2-1/2".')
        return feet
    if found["suffix"] not in (None, "in", '"'):
        raise NotALength(f'"{written}" mixes feet with {found["suffix"]}; after feet come inches.')
    return feet + _number(written, found) * INCH


def _instead(written: str) -> str:
    """What to answer to something that is no length."""
    if len(written) > _LONGEST:
        return f'"{written[:_LONGEST]}..." is not a length.'
    plain = "".join(_TYPOGRAPHIC.get(sign, sign) for sign in written).strip()
    if plain != written and _LENGTH.fullmatch(plain):
        return f"Write {plain} with plain signs from the keyboard."
    if thousands := re.fullmatch(r"([-+]?[0-9]{1,3}),([0-9]{3})( ?[a-z\"']+)?", written):
        joined, suffix = thousands[1] + thousands[2], thousands[3] or ""
        point = f"{thousands[1]}.{thousands[2]}{suffix}"
        return f"Write {joined}{suffix} without the comma, or {point} with a point."
    if re.fullmatch(r"[-+]?[0-9]+,[0-9]+( ?(mm|cm|m|in|\"))?", written):
        return f"Write {written.replace(',', '.')} with a point."
    if re.fullmatch(r"[-+]?\.[0-9]+( ?(mm|cm|m|in|\"))?", written):
        return f"Write {written.replace('.', '0.', 1)} with a nought before the point."
    number = re.fullmatch(rf"(?P<number>[-+]?(?:{_WHOLE}[ -])?[0-9./]+) ?(?P<word>\S+)", written)
    if number and number["word"] in _OTHER_WORDS:
        mark = _OTHER_WORDS[number["word"]]
        space = "" if mark in ("'", '"') else " "
        return f"Write {number['number']}{space}{mark}."
    return f'"{written}" is not a length.'


def no_job_is_longer(text: str, unit: Unit, length: Fraction) -> None:
    """Refuse a length that is nearly always the wrong unit, or a digit too many.

    Raises:
        TooLong: it says how long that would be, and what was probably meant.
    """
    if abs(length) <= LONGEST:
        return
    written = re.sub(r" ?(mm|cm|m|in|\")$", "", text.strip())
    suffix = text.strip()[len(written) :].strip() or unit
    metres = f"{float(length / 1000):.1f}".removesuffix(".0")
    if suffix == "mm":
        meant, mm = f"{float(length / 10):g}", length / 10
    else:
        meant, mm = f"{written} mm", _number_in(written)
    said = (
        f"{written} inches is {int(abs(length) // FOOT)} feet."
        if suffix in ("in", '"', "inch")
        else f"{written} {suffix} is {metres} metres."
    )
    raise TooLong(said + (f" Did you mean {meant}?" if abs(mm) <= LONGEST else ""))


def _number_in(written: str) -> Fraction:
    try:
        return read_length(written, "mm")
    except NotALength:
        return 2 * Fraction(LONGEST)


def _steps(value: Fraction, step: Fraction, down: bool) -> int:
    """How many steps long a value is; the last bits of a float never tip it over an edge."""
    count = float(value / step)
    if down:
        return math.floor(count + 1e-6)
    whole = math.floor(abs(count) + 0.5 + 1e-9)
    return -whole if count < 0 else whole


def _step(step: float | Fraction) -> Fraction:
    return step if isinstance(step, Fraction) else Fraction(float(step)).limit_denominator(10_000)


def mm_text(value: float, step: float | Fraction = MM_STEP, *, down: bool = False) -> str:
    """A length in mm for paper: to the nearest step, halves up, no trailing nought.

    Args:
        value: mm.
        step: what is printed to, mm.
        down: to the next step below instead, as panels and glass are.

    Example:
        >>> mm_text(803.5329), mm_text(778.5), mm_text(1829.0), mm_text(803.99, down=True)
        ('803.5', '778.5', '1829', '803.5')
    """
    every = _step(step)
    rounded = _steps(Fraction(float(value)), every, down) * every
    text = f"{float(rounded):.4f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def inch_text(value: float, step: float | Fraction = INCH_STEP, *, down: bool = False) -> str:
    """A length in inches for paper, as the rule reads: whole, and a fraction in lowest terms.

    Args:
        value: mm.
        step: what is printed to, inches.
        down: to the next step below instead, as panels and glass are.

    Example:
        >>> inch_text(592.1375), inch_text(19.05), inch_text(-3.175), inch_text(1828.8)
        ('23-5/16', '3/4', '-1/8', '72')
    """
    every = _step(step)
    rounded = _steps(Fraction(float(value)) / INCH, every, down) * every
    sign = "-" if rounded < 0 else ""
    return sign + _whole_and_fraction(abs(rounded))


def _whole_and_fraction(inches: Fraction) -> str:
    whole, rest = divmod(inches, 1)
    if rest == 0:
        return str(whole)
    fraction = f"{rest.numerator}/{rest.denominator}"
    return f"{whole}-{fraction}" if whole else fraction


def feet_inch_text(value: float, step: float | Fraction = INCH_STEP, *, down: bool = False) -> str:
    r"""A length in feet and inches with their marks.

    Args:
        value: mm.
        step: what is printed to, inches.
        down: to the next step below instead.

    Example:
        >>> feet_inch_text(469.9), feet_inch_text(609.6), feet_inch_text(50.8)
        ('1\' 6-1/2"', '2\' 0"', '2"')
    """
    every = _step(step)
    rounded = _steps(Fraction(float(value)) / INCH, every, down) * every
    feet, inches = divmod(abs(rounded), 12)
    sign = "-" if rounded < 0 else ""
    marked = f'{_whole_and_fraction(inches)}"'
    return f"{sign}{feet}' {marked}" if feet else sign + marked


def long_inch_text(value: float, step: float | Fraction = INCH_STEP) -> str:
    r"""A length for an arrangement: inches up to six feet, feet and inches over them.

    Args:
        value: mm.
        step: what is printed to, inches.

    Example:
        >>> long_inch_text(1828.8), long_inch_text(2095.5), long_inch_text(757.2375)
        ('72', '6\' 10-1/2"', '29-13/16')
    """
    whole = inch_text(value, step)
    if abs(_steps(Fraction(float(value)) / INCH, _step(step), False) * _step(step)) <= _SIX_FEET:
        return whole
    return feet_inch_text(value, step)


_SIX_FEET = 72
"""Inches: no tape is read in inches alone much farther. Common practice, no source."""


def decimal_inch_text(value: float) -> str:
    """A length in inches to the thousandth, no nought before the point.

    Source: ASME Y14.5, decimal inch dimensioning, from memory.

    Example:
        >>> decimal_inch_text(267.4874), decimal_inch_text(8.2), decimal_inch_text(25.4)
        ('10.531', '.323', '1.000')
    """
    thousandths = _steps(Fraction(float(value)) / INCH, Fraction(1, 1000), False)
    sign = "-" if thousandths < 0 else ""
    whole, rest = divmod(abs(thousandths), 1000)
    return f"{sign}{whole or ''}.{rest:03d}"


def length_text(
    value: float, unit: Unit, step: float | Fraction | None = None, *, down: bool = False
) -> str:
    """A length in the unit of the paper; `step` is in that unit.

    Example:
        >>> length_text(784.5, "mm"), length_text(784.5, "inch")
        ('784.5', '30-7/8')
    """
    if unit == "mm":
        return mm_text(value, MM_STEP if step is None else step, down=down)
    return inch_text(value, INCH_STEP if step is None else step, down=down)


# What is not a length ----------------------------------------------------------------------

POUND = Fraction(45_359_237, 100_000_000)
"""kg. Source: the international yard and pound agreement of 1959."""
_FOOT_M = FOOT / 1000
_GALLON_L = Fraction(231) * INCH**3 / 1_000_000
"""Litres in the US gallon of 231 cubic inches. Source: NIST Handbook 44, appendix C."""
_NUMBER = re.compile(r"(?P<number>[0-9]{1,9}(?:\.[0-9]{1,9})?) ?(?P<unit>\S.*)?")


class NotAMeasure(ValueError):  # noqa: N818 - it names what was written, not a fault of ours
    """What was written is no number with its unit; `code` says which is lacking."""

    def __init__(self, code: str, message: str) -> None:
        super().__init__(message)
        self.code = code


@dataclass(frozen=True, slots=True)
class Measure:
    """A quantity that carries its unit: what it is, its unit inside, and those it is written in."""

    what: str
    unit: str
    sizes: Mapping[str, Fraction]
    example: str
    may_be_nothing: bool = False

    def read(self, text: str) -> Fraction:
        """The number in the unit used inside; a unit is never guessed.

        Raises:
            NotAMeasure: with a sentence that says what to write instead.

        Example:
            >>> float(DENSITY.read("480 kg/m3")), round(float(DENSITY.read("30 lb/ft3")), 2)
            (480.0, 480.55)
        """
        if comma := re.match(r"[0-9]+,[0-9]+", text):
            raise NotAMeasure("wrong_value", f"Write {comma[0].replace(',', '.')} with a point.")
        found = _NUMBER.fullmatch(text)
        if found is None:
            raise NotAMeasure(
                "wrong_value",
                f'"{text}" is not a {self.what}: write {self.example}.',
            )
        size = self.sizes.get(found["unit"] or "")
        if size is None:
            raise NotAMeasure("no_unit", f"A {self.what} needs its unit: {self.example}.")
        value = Fraction(found["number"]) * size
        if value == 0 and not self.may_be_nothing:
            raise NotAMeasure("wrong_value", f"A {self.what} of 0 means nothing: {self.example}.")
        return value


PERCENT = Measure("percentage", "%", {"%": Fraction(1)}, "8 %", may_be_nothing=True)
ANGLE = Measure("angle", "deg", {"deg": Fraction(1)}, "3 deg", may_be_nothing=True)
MASS = Measure("weight", "kg", {"kg": Fraction(1), "lb": POUND}, "25 kg or 55 lb")
DENSITY = Measure(
    "density",
    "kg/m3",
    {"kg/m3": Fraction(1), "lb/ft3": POUND / _FOOT_M**3},
    "480 kg/m3 or 30 lb/ft3",
)
COVERAGE = Measure(
    "coverage",
    "m2/litre",
    {"m2 per litre": Fraction(1), "ft2 per gallon": _FOOT_M**2 / _GALLON_L},
    "11 m2 per litre or 450 ft2 per gallon",
)
MOVEMENT = Measure(
    "movement", "% per %", {"% per %": Fraction(1)}, "0.289 % per %", may_be_nothing=True
)
STANDARD_GRAVITY = Fraction(980_665, 100_000)
"""N, the weight of 1 kg: standard gravity. Source: 3rd CGPM, 1901."""
FORCE = Measure(
    "force", "N", {"N": Fraction(1), "lbf": POUND * STANDARD_GRAVITY}, "120 N or 27 lbf"
)
STIFFNESS = Measure(
    "stiffness",
    "N/mm2",
    {"N/mm2": Fraction(1), "psi": POUND * STANDARD_GRAVITY / INCH**2},
    "8300 N/mm2 or 1200000 psi",
)
LOAD_ALONG = Measure(
    "load",
    "kg/m",
    {"kg/m": Fraction(1), "lb/ft": POUND / _FOOT_M},
    "30 kg/m or 20 lb/ft",
)
LOAD_OVER = Measure(
    "load",
    "kg/m2",
    {"kg/m2": Fraction(1), "lb/ft2": POUND / _FOOT_M**2},
    "75 kg/m2 or 15 lb/ft2",
)
