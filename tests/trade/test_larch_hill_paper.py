"""Larch Hill reading room: what its lists and set-ups come to, worked out by hand.

The brief's own sum stands beside each number. Where it goes on from a rounded figure, the
tool must agree to the last digit that the brief prints.
"""

from __future__ import annotations

import dataclasses
import math

import pytest

from parametric.figures import Figure, arithmetic, formula
from parametric.job import Job
from parametric.trade.paperwork import Paperwork

PANEL = (784.5 + 2 * 14 - 2 * 1) / (1 + 0.00289 * (11 - 8))
BOARD = (PANEL + 6) / 6
AREA = 2 * (2 * (1024.5 * 2102 - 2 * 784.5 * 521) + 2 * (1024.5 + 2102) * 40) / 10**6

EXACT = {
    # Rails of two leaves in one line: 0.3 marking, 0.2 slot, 0.3 clamps, 0.5 hanging.
    "rail alignment / worst": 2 * (0.3 + 0.2 + 0.3) + 0.5,
    "rail alignment / likely": math.sqrt(2 * (0.3**2 + 0.2**2 + 0.3**2) + 0.5**2),
    "rail alignment / marked together": math.sqrt(2 * (0.2**2 + 0.3**2) + 0.5**2),
    "rail alignment / expected": math.sqrt(2 * (0.2**2 + 0.3**2) + 0.5**2),
    # The panel from boards of 140 stock, 6 over for trimming; clamps fan out at 45 degrees.
    "glue-up P1 / width before trim": PANEL + 6,
    "glue-up P1 / boards": math.ceil((803.53 + 6) / 140),
    "glue-up P1 / board width": BOARD,
    "glue-up P1 / clamp spacing": 2 * BOARD,
    "glue-up P1 / length before trim": 485 + 25,
    "glue-up P1 / clamps": math.ceil((485 + 25) / 269.8) + 1,
    # Paint on both leaves, both faces less glass, and the outer edges.
    "finished area": AREA,
    "finish / primer litres": AREA * 2 / 11 * 1.15,
    "finish / top coat litres": AREA * 2 / 12 * 1.15,
    # The saw for the raised panel: blade height 75, fence to blade 15, 79 upright reaches 78.1.
    "saw set-up P1 / tilt": math.degrees(math.atan((26.5 - 15) / 75)),
    "saw set-up P1 / blade height": 75,
    "saw set-up P1 / fence to blade": 15,
    "saw set-up P1 / reach to spare": 79 * math.cos(math.atan((26.5 - 15) / 75)) - 75,
    # Face down, the tongue's upper side lies 28 - 5 - 8 off the table; back down, its rebate 5.
    "saw set-up P1 / blade height face down": 28 - 5 - 8,
    "saw set-up P1 / blade height back down": 5,
    "saw set-up P1 / tongue into the fence": 15,
    # 15 at the edge as the machine holds it, 0.2 either way; tongue 8 in a groove of 8.2.
    "saw set-up P1 / edge gauge go": 15 + 0.2,
    "saw set-up P1 / edge gauge no go": 15 - 0.2,
    # The groove less a coat of 0.04 on either side of the tongue.
    "saw set-up P1 / tongue gauge go": 8.2 - 2 * 0.04,
    "saw set-up P1 / tongue gauge no go": 8 - (8.2 - 8),
    # A third of the panel as it stands highest, 803.5, is more than twice the run, 150.
    "saw set-up P1 / tall fence": PANEL / 3,
    "saw set-up P1 / height on end grain": 485,
    "saw set-up P1 / height on long grain": PANEL,
    # Loose tenons: 20 slots a leaf, both leaves 40; half as many tenons.
    "tenon set-up 1 / slots": 2 * 2 * 2 * (1 + 1 + 1 + 2),
    "tenon set-up 1 / tenons": 2 * 2 * (1 + 1 + 1 + 2),
    "tenon set-up 1 / face to the cutter's middle": 40 / 2,
    "tenon set-up 1 / travel": 62 - 12,
    "tenon set-up 1 / play along the slot": 62 - 60,
    "tenon set-up 1 / room behind the tenon": 46 - 90 / 2,
    "tenon set-up 1 / depth passes": math.ceil(46 / 6),
    # Floor guide groove 9 wide with a 6 cutter: ceil((9 - 6)/6) + 1 passes, shifted 9 - 6.
    "milling / M10 floor guide groove / passes": math.ceil((9 - 6) / 6) + 1,
    "milling / M10 floor guide groove / shift a pass": 9 - 6,
    "milling / M10 floor guide groove / fence pass 1": 20 - 3 / 2,
    "milling / M10 floor guide groove / fence pass 2": 20 + 3 / 2,
    "milling / M10 floor guide groove / depth": 18,
    # Panel groove 8.2 wide with an 8 cutter.
    "milling / M3 panel groove / passes": math.ceil((8.2 - 8) / 8) + 1,
    "milling / M3 panel groove / shift a pass": 8.2 - 8,
    # Brackets at most 400 apart over 1929, one at each end, from 50 left of the opening.
    "bracket pitch": 1929 / 5,
    "bracket 1 / from the opening's left edge": -50,
    "bracket 2 / from the opening's left edge": -50 + 1929 / 5,
    "bracket 6 / from the opening's left edge": 1829 + 50,
    "hardware / brackets": 2 * (math.ceil(1929 / 400) + 1),
    "hardware / hangers": 2 * 2,
    "hardware / pulls": 2 * 2,
    # Tape all round four panes on both faces, in metres.
    "hardware / glazing tape": 4 * 2 * 2 * (778.5 + 515) / 1000,
    # Pins: ceil((784.5 - 100)/150) + 1 = 6 and ceil((521 - 100)/150) + 1 = 4 in a stop.
    "hardware / glass stop pins": 4 * 2 * (2 * 6 + 2 * 4),
    "hardware / pin length": 2.5 * 12,
    # Site: leaf tops 12 + 2102 over the high point; the guides in the middle of the overlap.
    "top of the leaves above the floor": 12 + 2069 + 45 - 12,
    "pulls above the floor": 1000,
    "floor guides / from the opening's left edge": -50 + 1929 - 1024.5 + 120 / 2,
    "hanger adjustment each way": 1.5 + 0.5,
    # Of the 15 site trim 12 leave the 10 of wood that the house keeps: 40 - 18 - 10.
    "site trim allowed": 40 - 18 - 10,
    # The leaf's diagonal before its 2126 are trimmed, over 1024.5.
    "leaf A / glue-up / diagonal before trim": math.hypot(1024.5, 2126),
    "leaf A / glue-up / clamps": 1 + 1 + 1 + 2,
    "leaf A / glue-up / slots to glue": 2 * 2 * (1 + 1 + 1 + 2),
    # Two people: 35.8 kg over 25, and 2.15 m2 are more than one person steers.
    "leaf A / people": 2,
    "leaf A / people when glazed": 2,
    "delivery / G1 / people": 1,
}

PRINTED = {
    # (as the brief prints it, half its last digit)
    "rail alignment / worst": (2.1, 0.05),
    "rail alignment / likely": (0.83, 0.005),
    "rail alignment / marked together": (0.71, 0.005),
    "glue-up P1 / boards": (6, 0),
    "glue-up P1 / board width": (134.9, 0.05),
    "glue-up P1 / clamp spacing": (269.8, 0.05),
    "glue-up P1 / clamps": (3, 0),
    "finished area": (5.84, 0.005),
    "finish / primer litres": (1.22, 0.005),
    "finish / top coat litres": (1.12, 0.005),
    "saw set-up P1 / tilt": (8.72, 0.005),
    "saw set-up P1 / blade reach when tilted": (78.1, 0.05),
    # The brief takes 3.1 from 78.1 - 75, itself rounded.
    "saw set-up P1 / reach to spare": (3.1, 0.05),
    # 17.6*9.81/1000*86/60 = 0.247: the brief goes on from 17.6, the load is 17.61.
    "outer track / pull at a bracket": (17.6 * 9.81 / 1000 * 86 / 60, 0.05 * 9.81 / 1000 * 86 / 60),
}


@pytest.mark.parametrize("name", EXACT)
def test_figure_equals_the_sum(numbers: dict[str, Figure], name: str) -> None:
    assert float(numbers[name]) == pytest.approx(EXACT[name], rel=1e-12, abs=1e-9)


@pytest.mark.parametrize("name", PRINTED)
def test_figure_prints_as_the_brief(numbers: dict[str, Figure], name: str) -> None:
    expected, half_a_digit = PRINTED[name]
    assert abs(float(numbers[name]) - expected) <= half_a_digit + 1e-12


def test_pull_at_a_bracket_of_the_brief_is_the_sum_of_its_own_rounded_load() -> None:
    """17.6 kg, 86 off the wall, 60 of bearing: 0.247 kN."""
    assert round(17.6 * 9.81 / 1000 * 86 / 60, 3) == 0.247


def test_pull_at_a_bracket_is_load_times_arm_over_bearing(
    numbers: dict[str, Figure], paper: Paperwork
) -> None:
    """By the estimate and by the larger weight; the inner track hangs 86 - 52 off the wall."""
    estimate, larger = (
        float(numbers["load per hanger"]),
        float(numbers["leaf A / governing load per hanger"]),
    )
    assert larger > estimate
    outer, inner = paper.install.pulls
    for pull, arm in ((outer, 86), (inner, 86 - 52)):
        assert pull.pull == pytest.approx(estimate * 9.81 / 1000 * arm / 60)
        assert pull.governing == pytest.approx(larger * 9.81 / 1000 * arm / 60)


def test_explain_shows_the_sum_that_ran(numbers: dict[str, Figure]) -> None:
    spacing = numbers["glue-up P1 / clamp spacing"]
    assert formula(spacing) == "2 * ([glue-up P1 / board width] + clamp caul)"
    primer = numbers["finish / primer litres"]
    assert formula(primer) == (
        "finished area * [finish / primer coats] / [finish / primer covers] "
        "* (1 + finish spare / 100)"
    )
    assert arithmetic(numbers["rail alignment / worst"]) == "2 * (0.3 + 0.2 + 0.3) + 0.5"


def test_weight_without_glass_is_the_larger_of_two(
    numbers: dict[str, Figure], paper: Paperwork
) -> None:
    """The brief's 18.72 + 4.48 = 23.2 by gross volumes; stops and tenons make it more as cut."""
    leaf = paper.delivery.items[0]
    assert float(numbers["leaf A / weight without glass"]) == pytest.approx(23.2, abs=0.05)
    assert leaf.weight == numbers["leaf A / mass without glass"]
    assert leaf.weight is not None
    # Glass as cut and by the estimate is the same: what is left differs by the same.
    assert leaf.glazed is not None
    assert leaf.glazed - leaf.weight == pytest.approx(2 * 778.5 * 515 * 6 * 2.5 / 1e6)
    assert paper.delivery.glazed_on_site


def test_no_name_stands_for_two_numbers(job: Job, paper: Paperwork) -> None:
    """`explain` answers with one number: whatever has the name has the value and the unit."""
    seen: dict[str, tuple[float, str]] = {}
    done: set[int] = set()

    def look(value: object) -> None:
        if id(value) in done:
            return
        done.add(id(value))
        if isinstance(value, Figure):
            if value.name is not None:
                known = seen.setdefault(value.name, (float(value), value.unit))
                assert known[0] == pytest.approx(float(value)), value.name
                assert known[1] == value.unit, value.name
            for arg in value.args:
                look(arg)
        elif dataclasses.is_dataclass(value) and not isinstance(value, type):
            for field in dataclasses.fields(value):
                look(getattr(value, field.name))
        elif isinstance(value, tuple):
            for item in value:
                look(item)

    assert job.resolved is not None
    look((job.resolved.door, job.loads, paper))
    assert len(seen) > 600
    assert not any("," in name for name in seen)
