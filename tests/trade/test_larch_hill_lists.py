"""The loads, glue-up, accuracy, paint and timber of Larch Hill, with the brief's arithmetic."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import pytest

from parametric.figures import Figure
from parametric.job import check
from parametric.pack.numbers import figures
from parametric.trade.paperwork import paperwork

DESIGN = Path(__file__).parents[2] / "examples/larch-hill-reading-room/design.yaml"


@cache
def numbers() -> dict[str, Figure]:
    job = check(DESIGN, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    return figures(job.resolved, job.loads, paper)


@pytest.mark.parametrize(
    ("name", "by_hand", "half_a_digit"),
    [
        # Boards of 140 stock, panel and 6 trim: ceil(809.53 / 140) = 6 boards of 134.9.
        ("glue-up P1 / boards", math.ceil((803.53 + 6) / 140), 0),
        ("glue-up P1 / board width", (803.53 + 6) / 6, 0.05),
        # Pressure fans at 45 degrees: spacing twice the outer board; ceil(510 / 269.8) + 1 = 3.
        ("glue-up P1 / clamp spacing", 2 * 134.9, 0.05),
        ("glue-up P1 / clamps", math.ceil((485 + 25) / 269.8) + 1, 0),
        # Marking 0.3, slot 0.2, clamp slip 0.3 on each leaf, hanger setting 0.5.
        ("rail alignment / worst", 2 * (0.3 + 0.2 + 0.3) + 0.5, 1e-9),
        ("rail alignment / likely", math.sqrt(2 * (0.3**2 + 0.2**2 + 0.3**2) + 0.5**2), 1e-9),
        ("rail alignment / marked together", math.sqrt(2 * (0.2**2 + 0.3**2) + 0.5**2), 1e-9),
        # Both leaves, both faces less glass, and outer edges, m2; litres at 11 and 12 m2, 15 % over.
        (
            "finished area",
            2 * (2 * (1024.5 * 2102 - 2 * 784.5 * 521) + 2 * (1024.5 + 2102) * 40) / 10**6,
            1e-9,
        ),
        ("finish / primer litres", 1.22, 0.005),
        ("finish / top coat litres", 1.12, 0.005),
        # 17.6 kg at 86 off the wall over 60 of bearing: 17.6 * 9.81 / 1000 * 86 / 60.
        ("outer track / pull at a bracket", 17.6 * 9.81 / 1000 * 86 / 60, 0.0005),
        # One blank a part: length + 25, width + 6.
        ("timber order / S1 stile with pull / rough length", 2126 + 25, 1e-9),
        ("timber order / S1 stile with pull / rough width", 120 + 6, 1e-9),
    ],
)
def test_as_worked_by_hand(name: str, by_hand: float, half_a_digit: float) -> None:
    assert float(numbers()[name]) == pytest.approx(by_hand, abs=half_a_digit)
