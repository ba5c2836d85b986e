"""Loads, stiffness and sag as written.

Conversion factors against NIST SP 811 (2008), appendix B.8, from memory: pound-force per square
inch 6.894757 E+03 Pa; pound per foot 1.488164 E+00 kg/m; pound per square foot 4.882428 E+00 kg/m2.
"""

from __future__ import annotations

from typing import Any

import pytest
from pydantic import TypeAdapter, ValidationError

from parametric.loaded import Load, Sag, Stiffness, is_over
from parametric.written import Text

LOAD: TypeAdapter[Any] = TypeAdapter(Load)
SAG: TypeAdapter[Any] = TypeAdapter(Sag)
STIFF: TypeAdapter[Any] = TypeAdapter(Stiffness)


@pytest.mark.parametrize(
    ("kind", "text", "value", "unit"),
    [
        (STIFF, "1 psi", 6.894757e-3, "N/mm2"),
        (STIFF, "1200000 psi", 1.2e6 * 6.894757e-3, "N/mm2"),
        (STIFF, "8300 N/mm2", 8300.0, "N/mm2"),
        (LOAD, "30 kg/m", 30.0, "kg/m"),
        (LOAD, "20 lb/ft", 20 * 1.488164, "kg/m"),
        (LOAD, "15 lb/ft2", 15 * 4.882428, "kg/m2"),
        (LOAD, "75 kg/m2", 75.0, "kg/m2"),
        # a thirty-second is 25.4/32 = 0.79375 mm, a foot 0.3048 m
        (SAG, "1/32 in per foot", 0.79375 / 0.3048, "mm/m"),
        (SAG, "2 mm per metre", 2.0, "mm/m"),
        (SAG, "2 per metre", 2.0, "mm/m"),
    ],
)
def test_reads(kind: TypeAdapter[Any], text: str, value: float, unit: str) -> None:
    figure = kind.validate_python(Text(text))
    assert float(figure) == pytest.approx(value, rel=5e-7)
    assert figure.unit == unit


def test_a_bare_sag_is_in_the_unit_of_the_file() -> None:
    inch = SAG.validate_python(Text("1/32 per foot", unit="inch"))
    assert inch == pytest.approx(0.79375 / 0.3048)


def test_a_load_says_whether_it_lies_along_or_over() -> None:
    assert is_over(LOAD.validate_python("40 lb/ft2"))
    assert not is_over(LOAD.validate_python("40 lb/ft"))


@pytest.mark.parametrize(
    ("kind", "text", "code", "says"),
    [
        (LOAD, "20", "no_unit", "A load needs its unit"),
        (LOAD, "20 lb", "no_unit", "A load needs its unit"),
        (LOAD, "0 kg/m", "wrong_value", "A load of 0 means nothing"),
        (STIFF, "1200000", "no_unit", "A stiffness needs its unit: 8300 N/mm2 or 1200000 psi."),
        (SAG, "1/32 in", "no_unit", "A sag needs what it is over: 1/32 in per foot"),
        (SAG, "1/32 in per ft", "wrong_value", "Write 1/32 in per foot."),
        (SAG, "2 mm per yard", "wrong_value", "A sag is per foot or per metre"),
        (SAG, "a bit per foot", "not_a_length", '"a bit" is not a length.'),
        (SAG, "0 mm per metre", "wrong_value", "A sag of 0 mm means nothing"),
    ],
)
def test_answers(kind: TypeAdapter[Any], text: str, code: str, says: str) -> None:
    with pytest.raises(ValidationError) as raised:
        kind.validate_python(Text(text))
    context = raised.value.errors()[0]["ctx"]
    assert context["code"] == code
    assert says in context["message"]
