"""A cutting plan that does not saw the parts, and one that does."""

from __future__ import annotations

import functools
import re
from fractions import Fraction
from pathlib import Path

import pytest

from parametric.figures import named
from parametric.job import check
from parametric.pack.verifying.cutting_plan import PLAN, check_cutting_plan
from parametric.pack.verifying.known import Known
from parametric.trade.cutting_tables import cutting_table
from parametric.trade.printed import printed
from parametric.trade.sheet_order import board_order
from parametric.writers.csv import write_csv

ROOT = Path(__file__).parents[2]


@functools.cache
def plan_of(design: str) -> tuple[bytes, Known]:
    job = check(ROOT / design, house=ROOT / "examples/house.yaml", user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    table = cutting_table(board_order(job.resolved, job.assembly), printed(job.resolved))
    known = Known(
        assembly=job.assembly,
        figures={"saw kerf": named("saw kerf", job.resolved.shop.saw.kerf)},
        opening=(),
        fingerprint="",
        unit=job.resolved.design.unit,
        wood_step=Fraction(1, 2),
        fine_step=Fraction(1, 10),
    )
    return write_csv(table.header, table.rows), known


WARDROBE = "examples/fen-road-wardrobe/design.yaml"
ALCOVE = "examples/quarry-street-alcove/design.yaml"


@pytest.mark.parametrize("design", [WARDROBE, ALCOVE, "templates/cabinet.yaml"])
def test_a_sound_plan_passes(design: str) -> None:
    data, known = plan_of(design)
    verdict = check_cutting_plan({PLAN: data}, known)
    assert verdict.faults == ()
    made = [part for part in known.assembly.parts if not part.supplied]
    assert verdict.looked_at["pieces"] == sum(part.material.look == "board" for part in made)


@pytest.mark.parametrize(
    ("old", "new", "says"),
    [
        (",2273,", ",2373,", "is 2373.00 x 580.00"),
        (",rip,580,", ",rip,581,", "is 2273.00 x 581.00"),
        (",rip,580,", ",crosscut,580,", "what becomes C"),
        ("sheet 2440 x 1220", "sheet 2240 x 1220", "finds too little"),
        ("sheet 2440 x 1220", "sheet 1220", "is no sheet"),
        (",2 C1", ",C1", r"C1: \d+ are sawn, there are \d+"),
        (",2 C1", ",2 C9", "there is no such piece as C9"),
        (",part 1,", ",part 7,", "finds too little in part 7"),
    ],
)
def test_a_wrong_plan(old: str, new: str, says: str) -> None:
    data, known = plan_of(WARDROBE)
    text = data.decode()
    assert old in text, text[:900]
    spoiled = text.replace(old, new, 1).encode()
    faults = "\n".join(check_cutting_plan({PLAN: spoiled}, known).faults)
    assert re.search(says, faults), faults


def test_a_piece_across_its_grain_is_found() -> None:
    data, known = plan_of(WARDROBE)
    header, first, *rest = data.decode().splitlines()
    assert ",along," in first
    turned = "\n".join((header, *(line for line in (first, *rest) if "P3" not in line))) + "\n"
    assert "P3: 0 are sawn, there are 3" in "\n".join(
        check_cutting_plan({PLAN: turned.encode()}, known).faults
    )


def test_a_plan_too_few() -> None:
    _, known = plan_of(WARDROBE)
    assert check_cutting_plan({}, known).faults == (f"{PLAN} is missing",)
