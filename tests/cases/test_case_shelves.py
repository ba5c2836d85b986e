"""The shelves of an alcove as `explain` tells them: every number of brief G2, and the sums behind."""

from __future__ import annotations

import pytest

from parametric.figures import Figure
from parametric.pack.numbers import figures
from parametric.trade.case_shelves import case_shelves
from parametric.trade.explain import explain
from parametric.units import INCH, STIFFNESS
from tests.cases.test_case_delivery import ALCOVE, papers

IN = float(INCH)
LB_IN2 = float(STIFFNESS.sizes["psi"]) * IN**4
PLACE = "cabinet upper / shelf 1"


@pytest.fixture(scope="module")
def numbers() -> dict[str, Figure]:
    job, _ = papers(ALCOVE)
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


WORKED = {
    # 1200000*10*0.75**3/12 and 1600000*0.75*1.5**3/12, lb in2
    "bending stiffness": (421_875, LB_IN2),
    "bending stiffness of the lip": (337_500, LB_IN2),
    "bending stiffness with the lip": (421_875 + 337_500, LB_IN2),
    "sag without a lip": (5 * (20 / 12) * 44.5**4 / (384 * 421_875), IN),
    "sag": (5 * (20 / 12) * 44.5**4 / (384 * (421_875 + 337_500)), IN),
    "sag limit": (44.5 / 12 / 32, IN),
}


@pytest.mark.parametrize("quantity", WORKED)
def test_figure_equals_the_brief(numbers: dict[str, Figure], quantity: str) -> None:
    worked, unit = WORKED[quantity]
    assert float(numbers[f"{PLACE} / {quantity}"]) / unit == pytest.approx(worked, rel=1e-9)


def test_as_the_brief_prints_them(numbers: dict[str, Figure]) -> None:
    """0.202 without, 0.112 with, 0.116 allowed."""
    said = [
        round(float(numbers[f"{PLACE} / {quantity}"]) / IN, 3)
        for quantity in ("sag without a lip", "sag", "sag limit")
    ]
    assert said == [0.202, 0.112, 0.116]


def test_explain_goes_down_to_what_was_written(numbers: dict[str, Figure]) -> None:
    lines = "\n".join(explain(numbers[f"{PLACE} / sag"], "inch"))
    assert "= 5 * [cabinet upper / shelf 1 / load along it]" in lines
    assert "design.yaml:" in lines
    assert "standard gravity" in lines


def test_shelves_that_are_alike_are_told_once() -> None:
    """Three over the counter, one in each of two equal bays under it."""
    job, _ = papers(ALCOVE)
    assert job.resolved is not None
    found = [shelf.sag.place for shelf in case_shelves(job.resolved)]
    assert found == ["cabinet base / bay 1 / shelf 1", PLACE]


def test_in_the_cupboard_they_are_far_from_their_limit(numbers: dict[str, Figure]) -> None:
    """21-7/8 clear, 15 lb/ft2, 1/16 a foot: nobody is told of it."""
    place = "cabinet base / bay 1 / shelf 1"
    assert numbers[f"{place} / sag"] < 0.15 * numbers[f"{place} / sag limit"]
    job, _ = papers(ALCOVE)
    told = [p for p in job.problems if "shel" in p.code]
    assert [(p.code, p.level) for p in told] == [("shelf_sags_nearly", "caution")]
