"""Lengths as they are printed, read back into millimetres."""

from __future__ import annotations

import re
from fractions import Fraction

from parametric.units import INCH, Unit

_MM = re.compile(r"(?<![\d.])-?\d+(?:\.\d+)?")
_INCH = re.compile(
    r"(?<![\d./-])-?(?:(?P<feet>\d+)' ?-? ?)?"
    r"(?:(?P<whole>\d+)[- ](?P<top>\d+)/(?P<bottom>\d+)|(?P<only>\d+)/(?P<under>\d+)"
    r"|(?P<number>\d+(?:\.\d+)?|\.\d+))"
)
_STACKED = re.compile(r"\\S(\d+)[/#^](\d+);")
_JOINT = "\x1f"
_CODES = re.compile(r"\\[A-Za-z][^;\\]*;|[{}]|%%.")


def lengths_in(text: str, unit: Unit) -> list[float]:
    r"""Every length in a printed text, mm.

    Args:
        text: as it stands in a drawing or a list; codes of lettering are passed over.
        unit: what bare numbers are in.

    Example:
        >>> lengths_in("1829 opening, largest of three", "mm")
        [1829.0]
        >>> lengths_in('72-1/32', "inch"), lengths_in("3/4 edge", "inch")
        ([1829.59375], [19.05])
        >>> lengths_in(r"\A1;29{\H0.75x;\S13/16;} pull", "inch")
        [757.2375]
    """
    stacked = _STACKED.sub(lambda found: f"{_JOINT}{found[1]}/{found[2]}", text)
    bare = _CODES.sub("", stacked)
    # A fraction is joined to the whole number before it, and to nothing else.
    bare = re.sub(rf"(?<=\d){_JOINT}", "-", bare).replace(_JOINT, "")
    if unit == "mm":
        return [float(found[0]) for found in _MM.finditer(bare)]
    return [_inches(found) for found in _INCH.finditer(bare)]


def length(text: str, unit: Unit) -> float | None:
    """A cell that is one length, mm; None when it is not."""
    found = lengths_in(text, unit)
    return found[0] if len(found) == 1 else None


def _inches(found: re.Match[str]) -> float:
    feet, whole = Fraction(found["feet"] or 0), Fraction(found["whole"] or 0)
    if found["number"] is not None:
        inches = Fraction(found["number"])
    elif found["only"] is not None:
        inches = Fraction(int(found["only"]), int(found["under"]))
    else:
        inches = whole + Fraction(int(found["top"]), int(found["bottom"]))
    value = float((12 * feet + inches) * INCH)
    return -value if found[0].startswith("-") else value
