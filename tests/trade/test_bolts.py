"""Bolts stand on the order of every door whose leaves hold one another, and of no other."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.design.starters import kinds, templates
from parametric.job import check
from parametric.trade.hardware_item import HardwareItem
from parametric.trade.hardware_list import hardware_list

MILL_LANE = Path(__file__).parents[2] / "examples/mill-lane-study/design.yaml"


def bolts(path: Path) -> list[HardwareItem]:
    job = check(path, user_house=False)
    assert job.resolved is not None
    return [item for item in hardware_list(job.resolved, job.loads) if item.what == "bolt"]


def test_a_pair_bolts_the_leaf_that_opens_second() -> None:
    """The right leaf opens first; the floor is 2 lower at one side: 10 + 2 = 12 to shoot past."""
    (item,) = bolts(templates() / "hinged pair.yaml")
    assert (float(item.number), item.unit, item.known_by) == (2, "off", "by supplier")
    assert item.number.name == "hardware / bolts"
    assert item.size == "for a leaf 44 thick"
    assert item.asked == (
        "one at the head and one at the foot of leaf A, which opens second; shoots past gaps of 3 "
        "over the leaf and 12 under it, with its plate or socket"
    )


def test_a_pair_in_inches() -> None:
    (item,) = bolts(MILL_LANE)
    assert float(item.number) == 2
    assert "1/8 over the leaf" in item.asked


def test_a_dutch_door_ties_its_leaves() -> None:
    (item,) = bolts(templates() / "dutch.yaml")
    assert float(item.number) == 1
    assert item.asked == "ties the upper leaf to the lower over a gap of 3, with its plate"


@pytest.mark.parametrize("kind", sorted(set(kinds()) - {"hinged pair", "dutch"}))
def test_no_other_door_has_any(kind: str) -> None:
    assert not bolts(templates() / f"{kind}.yaml")
