"""Cases on the van: what each weighs, how many carry it, and how it is brought to stand."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.trade.delivery_item import DeliveryItem
from parametric.trade.paperwork import Paperwork, paperwork

ROOT = Path(__file__).parents[1]
WARDROBE = ROOT.parent / "examples/fen-road-wardrobe/design.yaml"
ALCOVE = ROOT.parent / "examples/quarry-street-alcove/design.yaml"
BOOKCASE = ROOT / "rules/bookcase.yaml"
HOUSE = ROOT.parent / "examples/house.yaml"
LB = 0.45359237


def papers(path: Path) -> tuple[Job, Paperwork]:
    job = check(path, house=HOUSE, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    assert job.assembly is not None
    return job, paperwork(job.resolved, job.assembly, job.loads)


def sent(path: Path) -> dict[str, DeliveryItem]:
    return {item.what: item for item in papers(path)[1].delivery.items}


def test_a_tall_door_is_for_one_and_its_case_is_not() -> None:
    """Brief G3: 7.9 kg each; the case as cut without its shelves, by sides, top, bottom and back.

    (2*2273*580 + 2*753*580)*18 + 767*2251*8 = 76.994e6 mm3 of 750 kg/m3 is 57.7 kg, less the
    back's grooves: 2*(2273 + 753)*8*8 = 0.387e6, 0.3 kg; what is bored is less than 0.3 kg.
    """
    found = sent(WARDROBE)
    assert round(float(found["leaf A"].weight or 0), 1) == 7.9
    assert int(found["leaf A"].people) == 1
    case = found["cabinet outer 1"]
    assert [float(side) for side in case.sizes] == pytest.approx([789, 2273, 580])
    boards = (2 * 2273 * 580 + 2 * 753 * 580) * 18 + 767 * 2251 * 8
    grooves = 2 * (2273 + 753) * 8 * 8
    assert float(case.weight or 0) == pytest.approx((boards - grooves) * 750 / 1e9, abs=0.3)
    # over 50 kg, and 25 each
    assert int(case.people) == 3
    assert "tipped up on the floor, then lifted" in case.handling


def test_shelves_and_fillers_travel_loose() -> None:
    found = sent(WARDROBE)
    assert found["shelf"].number == 8
    assert {"left filler", "right filler", "top filler", "plinth front"} <= set(found)


def test_the_largest_piece_is_a_case() -> None:
    _, paper = papers(WARDROBE)
    assert paper.delivery.largest.what == "cabinet outer 1"
    assert paper.delivery.because == "There is no glass."
    assert "3 people lift it" in paper.delivery.cautions[0]
    heaviest = max(float(load.carried) for load in paper.cases)
    assert paper.delivery.cautions[0].startswith(f"{heaviest:.1f} kg")


def test_a_job_without_a_leaf_is_sent_too() -> None:
    _, paper = papers(BOOKCASE)
    case = next(item for item in paper.delivery.items if item.what == "cabinet")
    assert "lifted to its place on the wall" in case.handling
    assert paper.delivery.largest is case
    assert paper.finish.area == 0


def test_a_low_case_is_carried_in_upright() -> None:
    found = sent(ALCOVE)
    assert "carried in upright" in found["cabinet base"].handling


def test_what_closes_a_case_is_finished_with_its_doors() -> None:
    """Doors 2 x (2 x 21-1/16 x 23-5/16 + 2 x (21-1/16 + 23-5/16) x 3/4) in2; and of the frame one
    face and all edges: stiles 26-1/2 x 2-1/8 and 2-1/4, 23-1/2 x 1-1/2, two rails 44 x 1-1/2; the
    top filler 46 x 2-1/8.
    """
    job, paper = papers(ALCOVE)
    wide, high = 21.0625, 23.3125
    doors = 2 * (2 * wide * high + 2 * (wide + high) * 0.75)
    members = [(26.5, 2.125), (26.5, 2.25), (23.5, 1.5), (44, 1.5), (44, 1.5), (46, 2.125)]
    closings = sum(long * wide + 2 * (long + wide) * 0.75 for long, wide in members)
    assert float(paper.finish.area) == pytest.approx((doors + closings) * 25.4**2 / 1e6, rel=1e-6)
    assert job.exit_status == 0
