"""Spans of shelves against published tables.

Architectural Woodwork Standards, table 4.4.14.10: the longest span, to the inch, of a shelf under
40 and 50 lb/ft2 that sags no more than its span over 144. ANSI/KCMA A161.1: 15 lb/ft2, 1/16 in a
foot and 1/4 in at most.
"""

from __future__ import annotations

import pytest

from parametric.catalog.case_facts import TEST_LOAD, TEST_MOST, TEST_SAG
from parametric.figures import Figure
from parametric.trade.shelf_sag import bending_stiffness, load_along, longest_span
from parametric.units import LOAD_OVER, STIFFNESS

INCH = 25.4
OVER_144 = Figure(1000 / 144, unit="mm/m")
DEEP = Figure(300.0)
"""Any depth: load and stiffness go by it alike."""

# psi, thickness in inches, lb/ft2: inches
TABLE = [
    (950_000, 0.75, 40, 40),
    (950_000, 0.75, 50, 37),
    (950_000, 1.0, 40, 53),
    (950_000, 1.0, 50, 49),
    (1_800_000, 0.75, 40, 49),
    (1_800_000, 0.75, 50, 46),
    (1_800_000, 1.0, 40, 66),
    (1_800_000, 1.0, 50, 61),
    (1_820_000, 0.75, 40, 49),
    (1_820_000, 0.75, 50, 46),
    (1_820_000, 1.0, 40, 66),
    (1_820_000, 1.0, 50, 61),
]


@pytest.mark.parametrize(("psi", "thick", "pounds", "inches"), TABLE)
def test_longest_spans(psi: int, thick: float, pounds: int, inches: int) -> None:
    """Each of the twelve to the inch."""
    stiffness = Figure(float(STIFFNESS.read(f"{psi} psi")), unit="N/mm2")
    load = Figure(float(LOAD_OVER.read(f"{pounds} lb/ft2")), unit="kg/m2")
    span = longest_span(
        "span",
        load_along("load", load, DEEP),
        bending_stiffness("bending", stiffness, DEEP, Figure(thick * INCH)),
        OVER_144,
    )
    assert float(span) / INCH == pytest.approx(inches, abs=1.0)


def test_the_cabinet_standard() -> None:
    """A sixteenth is 1.5875 mm in 0.3048 m; a quarter is 6.35; 15 lb/ft2 is 15 * 4.882428 kg/m2."""
    assert float(TEST_SAG) == pytest.approx(1.5875 / 0.3048)
    assert float(TEST_MOST) == 6.35
    assert float(TEST_LOAD) == pytest.approx(15 * 4.882428, rel=1e-6)
