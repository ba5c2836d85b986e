"""What is ordered for drawers: slides in pairs, dowels and screws, what a pair carries."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.cases.drawer import DrawerBox
from parametric.figures import Figure
from parametric.job import check
from parametric.trade.hardware_for_slides import OnSlides, hardware_for_slides
from parametric.trade.printed import Printed, printed
from tests.cases.drawers import box_of

ROOT = Path(__file__).parents[2]
WEIGHS = Figure(8.1)
"""A box of 6.1 kg and a front of 2."""


def said() -> Printed:
    resolved = check(
        ROOT / "examples/larch-hill-reading-room/design.yaml", user_house=False
    ).resolved
    assert resolved is not None
    return printed(resolved)


def on(*boxes: DrawerBox) -> list[OnSlides]:
    return [OnSlides(box=box, moved=WEIGHS) for box in boxes]


def test_three_drawers_of_a_wardrobe() -> None:
    """Three pairs; a box and its front of 8.1 kg, and 0.6976 * 0.52 m2 at 73.236 kg/m2: 26.567.

    Source of the load: ANSI/KCMA A161.1, drawers 15 lb/ft2; 15 * 0.45359237 / 0.09290304 = 73.236.
    Dowels: 4 a corner, 4 corners, 3 boxes: 48.
    """
    slides, dowels = hardware_for_slides(on(box_of(), box_of(), box_of()), said())
    assert (slides.what, float(slides.number), slides.unit) == ("drawer slide", 3.0, "pair")
    assert slides.size == "550 long, at the sides, 12.7 each, draws out 550"
    assert slides.length == 550
    assert slides.asked.startswith("rated 34.7 kg a pair or more")
    assert (dowels.what, float(dowels.number), dowels.size) == ("dowel", 48.0, "8 × 30")


def test_slides_of_two_lengths_are_two_lines() -> None:
    found = [
        item
        for item in hardware_for_slides(on(box_of(), box_of(length=500), box_of()), said())
        if item.what == "drawer slide"
    ]
    assert [(float(item.number), float(item.length or 0)) for item in found] == [(2, 550), (1, 500)]


def test_wooden_runners_are_made_not_bought() -> None:
    found = list(hardware_for_slides(on(box_of(kind="wooden runners", joint="screw")), said()))
    assert [item.what for item in found] == ["drawer screw"]
    # 37 to 144 in gaps of 40 at most: 4 to a corner, 4 corners
    assert float(found[0].number) == 16


def test_slides_that_say_what_they_carry() -> None:
    slides = on(box_of(carries="40 kg", maker_mark="full extension"))
    item, _ = hardware_for_slides(slides, said())
    assert item.size.endswith("draws out 550, full extension")
    assert item.asked.startswith("rated 40 kg a pair as written, and carries 34.7 kg")


@pytest.mark.parametrize("load", ["20 kg/m", "28.67 kg/m2"])
def test_a_load_along_and_a_load_over(load: str) -> None:
    """20 kg/m over 0.6976 m is 13.952; 13.952 / 0.6976 / 0.52 = 38.46 kg/m2."""
    expected = {"20 kg/m": 13.952, "28.67 kg/m2": 28.67 * 0.6976 * 0.52}[load]
    assert float(box_of(load=load).contents) == pytest.approx(expected)
