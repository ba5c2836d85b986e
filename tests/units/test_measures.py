"""Quantities that carry their unit; it is never guessed.

Conversion factors against NIST SP 811 (2008), appendix B.8, from memory: pound per cubic
foot 1.601846 E+01 kg/m3; pound 4.535924 E-01 kg; US gallon 3.785412 E-03 m3; square foot
9.290304 E-02 m2.
"""

from __future__ import annotations

import pytest

from parametric.units import COVERAGE, DENSITY, MASS, MOVEMENT, PERCENT, Measure, NotAMeasure


@pytest.mark.parametrize(
    ("measure", "text", "value"),
    [
        (DENSITY, "480 kg/m3", 480.0),
        (DENSITY, "1 lb/ft3", 16.01846),
        (MASS, "1 lb", 0.4535924),
        (MASS, "25 kg", 25.0),
        (COVERAGE, "11 m2 per litre", 11.0),
        # 400 * 0.09290304 / 3.785412 = 9.8169
        (COVERAGE, "400 ft2 per gallon", 400 * 0.09290304 / 3.785412),
        (PERCENT, "8 %", 8.0),
        (PERCENT, "8%", 8.0),
        (MOVEMENT, "0.289 % per %", 0.289),
    ],
)
def test_reads(measure: Measure, text: str, value: float) -> None:
    assert float(measure.read(text)) == pytest.approx(value, rel=5e-7)


@pytest.mark.parametrize(
    ("measure", "text", "code", "says"),
    [
        (DENSITY, "480", "no_unit", "A density needs its unit: 480 kg/m3 or 30 lb/ft3."),
        (DENSITY, "480 kg", "no_unit", "A density needs its unit: 480 kg/m3 or 30 lb/ft3."),
        (PERCENT, "8", "no_unit", "A percentage needs its unit: 8 %."),
        (PERCENT, "8,5 %", "wrong_value", "Write 8.5 with a point."),
        (MASS, "heavy", "wrong_value", '"heavy" is not a weight: write 25 kg or 55 lb.'),
        (MASS, "-3 kg", "wrong_value", '"-3 kg" is not a weight: write 25 kg or 55 lb.'),
    ],
)
def test_answers(measure: Measure, text: str, code: str, says: str) -> None:
    with pytest.raises(NotAMeasure) as raised:
        measure.read(text)
    assert (raised.value.code, str(raised.value)) == (code, says)
