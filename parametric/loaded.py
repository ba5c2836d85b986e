"""What a shelf bears and how stiff it is, as a maker writes it: loads, stiffness, and sag."""

from __future__ import annotations

from fractions import Fraction
from typing import Annotated

from pydantic import PlainValidator, WithJsonSchema

from parametric.figures import Figure
from parametric.units import FOOT, LOAD_ALONG, LOAD_OVER, STIFFNESS, NotALength, read_length
from parametric.written import figure_of, measured, refuse, text_of, with_unit

_LOAD = "30 kg/m, 20 lb/ft, 75 kg/m2 or 15 lb/ft2"
_SAG = "1/32 in per foot or 2 mm per metre"
_RUNS = {"foot": FOOT / 1000, "metre": Fraction(1)}
"""Metres."""
_OTHER_RUNS = {"ft": "foot", "feet": "foot", "m": "metre", "meter": "metre", "metres": "metre"}


def _load(value: object) -> Figure:
    """Along a shelf where it is said by the foot or metre, over it where by the square."""
    text = text_of(value, f"a load with its unit: {_LOAD}")
    return measured(text, LOAD_OVER if text.rstrip().endswith("2") else LOAD_ALONG)


def _sag(value: object) -> Figure:
    """Millimetres to the metre of span."""
    text = text_of(value, f"a sag over a length: {_SAG}")
    rise, per, run = (part.strip() for part in text.partition(" per "))
    if not per:
        raise refuse(
            "no_unit",
            f"A sag needs what it is over: {_SAG}.",
            found=str(text),
            allowed=_SAG,
            fix=f"Write how far over which length: {_SAG}.",
        )
    if run not in _RUNS:
        meant = _OTHER_RUNS.get(run.lower())
        message = (
            f"Write {rise} per {meant}." if meant else f"A sag is per foot or per metre: {_SAG}."
        )
        raise refuse("wrong_value", message, found=str(text), allowed=_SAG)
    try:
        length = read_length(rise, text.unit)
    except NotALength as error:
        raise refuse(error.code, str(error), found=str(text), allowed=_SAG) from None
    if length <= 0:
        message = f"A sag of {rise} means nothing: {_SAG}."
        raise refuse("wrong_value", message, found=str(text), allowed=_SAG)
    return figure_of(text, length / _RUNS[run], "mm/m")


_NUMBER = r"[0-9]+(\.[0-9]+)?"
Stiffness = Annotated[Figure, *with_unit(STIFFNESS)]
"""Modulus of elasticity, N/mm2."""
Load = Annotated[
    Figure,
    PlainValidator(_load),
    WithJsonSchema(
        {
            "type": "string",
            "description": f"what stands on it: {_LOAD}",
            "pattern": rf"^{_NUMBER} ?({'|'.join([*LOAD_ALONG.sizes, *LOAD_OVER.sizes])})$",
        }
    ),
]
"""kg to the metre of a shelf's length, or kg to the square metre of it: its unit says which."""
Sag = Annotated[
    Figure,
    PlainValidator(_sag),
    WithJsonSchema(
        {
            "type": "string",
            "description": f"the most it may sag for its span: {_SAG}",
            "pattern": " per (foot|metre)$",
        }
    ),
]
"""Millimetres to the metre of span."""


def is_over(load: Figure) -> bool:
    """True for a load over an area, kg/m2; one along the length is kg/m."""
    return load.unit == LOAD_OVER.unit
