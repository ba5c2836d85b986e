"""Holes for hinge plates in a case's sides: at the cups' height, behind a front that is inset.

Two 32 apart, 37 from the front edge: common practice, no source.
"""

from __future__ import annotations

import pytest

from parametric.cases.boring import Bite
from parametric.cases.boring_faults import plate_faults
from parametric.cases.pin_rows import PinRows, PinSpace, pin_rows
from parametric.cases.plate_holes import PlateHoles, plate_cuts, plate_holes
from parametric.figures import Figure, plain
from parametric.hangings.front_places import FrontsLie
from tests.cases.boards import board, boring, ends_of, mm

TALL = (101.5, 619.0, 1136.5, 1654.0, 2171.5)
"""The wardrobe's tall doors, 2270 high, 1.5 above the case's foot: hinges 100 from their ends, 517.5
apart: 1.5 + 100 = 101.5 and so on."""


def plates(
    lie: FrontsLie = "overlay",
    hinges: tuple[float, ...] = TALL,
    front: float = 22.0,
    set_back: float = 0.0,
) -> PlateHoles:
    return plate_holes(
        boring(),
        name="leaf A / hinge plates",
        hinges=[mm(at) for at in hinges],
        lie=lie,
        front=mm(front),
        set_back=set_back,
    )


@pytest.mark.parametrize(
    ("lie", "set_back", "line"),
    [
        ("overlay", 0.0, 37),
        ("half overlay", 0.0, 37),
        # 37 + 22, and 1.5 more where the front stands back
        ("inset", 0.0, 59),
        ("inset", 1.5, 60.5),
    ],
)
def test_the_line_of_the_plates(lie: FrontsLie, set_back: float, line: float) -> None:
    assert plates(lie, set_back=set_back).line == line


def test_plates_stand_at_the_height_of_the_cups() -> None:
    """16 below and above each, in the side's inner face, whichever side it is."""
    found = plates()
    for face, x in (("low face", 0.0), ("high face", 771.0)):
        side = board(
            "side",
            "upright",
            (2273.0, 580.0, 18.0),
            (x, 0.0, 0.0),
            *plate_cuts(found, face=face, foot=0.0),  # type: ignore[arg-type]
        )
        mouths = [mouth for cut in side.cuts for mouth, _ in ends_of(side, cut)]  # type: ignore[arg-type]
        assert [z for _, _, z in mouths] == [at + way * 16 for at in TALL for way in (-1, 1)]
        assert {y for _, y, _ in mouths} == {37.0}
        assert {px for px, _, _ in mouths} == {18.0 if x == 0 else 771.0}


def test_a_partition_is_bored_from_its_own_foot() -> None:
    cuts = plate_cuts(plates(hinges=(118.0,)), face="low face", foot=18.0)
    assert cuts[0].u == 118 - 16 - 18


def codes(
    found: PlateHoles, *taken: Bite, thickness: float = 18.0, depth: float = 562.0
) -> list[str]:
    faults = plate_faults(
        found,
        boring(),
        plain,
        taken=taken,
        thickness=mm(thickness),
        depth=mm(depth),
        case="cabinet outer 1",
    )
    return [fault.code for fault in faults]


def test_a_plate_on_a_fixed_shelf_is_a_stop() -> None:
    """A hole of 5 at 635 ends at 637.5: a dado from 642.5 leaves 5, one from 642.4 less."""
    dado = {"name": "dado for fixed shelf 1", "high": 660.5, "near": 0.0, "far": 562.0}
    assert codes(plates(), Bite(low=642.5, **dado)) == []  # type: ignore[arg-type]
    assert codes(plates(), Bite(low=642.4, **dado)) == ["plate_meets"]  # type: ignore[arg-type]


def test_a_plate_through_a_thin_side_is_a_stop() -> None:
    """12 deep, and 2 behind."""
    assert codes(plates(), thickness=14.0) == []
    assert codes(plates(), thickness=13.9) == ["plate_through"]


def test_a_plate_past_the_back_is_a_stop() -> None:
    """59 + 2.5 + 5 = 66.5 of an inset front's side."""
    assert codes(plates("inset"), depth=66.5) == []
    assert codes(plates("inset"), depth=66.4) == ["plate_past_back"]


def test_plates_of_two_leaves_that_meet_are_a_stop() -> None:
    """10 from middle to middle leave 5; the lower leaf's upper screw is at 700 + 16."""
    lower = plates(hinges=(700.0,))
    for upper, found in ((742.0, []), (741.9, ["plate_meets"])):
        above = plates(hinges=(upper,))
        assert codes(lower, *above.bites) == found


def test_pins_stand_clear_of_the_plates() -> None:
    """Five hinges want 20 of every 32 kept off their own two heights each: they lie at five places
    of the step, so heights are lost, the fewest that can be, and nothing is nearer than 5.
    """
    found = plates()
    space = PinSpace(low=mm(18.0), high=mm(2255.0), depth=mm(562.0), thickness=mm(18.0))
    rows = pin_rows(boring(), space, name="cabinet outer 1", taken=found.bites)
    assert isinstance(rows, PinRows)
    for height in rows.heights:
        for at in TALL:
            for screw in (at - 16, at + 16):
                assert abs(height - screw) >= 10 - 1e-6
    lost = len(rows.left_out)
    # any other place loses as many or more
    for far in range(-16, 17):
        first = 96.5 + far
        inside = [first + 32 * n for n in range(-1, 68) if 82 <= first + 32 * n <= 2191]
        kept = [
            at
            for at in inside
            if all(abs(at - screw) >= 10 for hinge in TALL for screw in (hinge - 16, hinge + 16))
        ]
        assert len(kept) <= len(rows.heights)
    assert all("plate's screw" in one.beside for one in rows.left_out)
    assert lost + len(rows.heights) == rows.count


def test_a_figure_says_where_it_is_from() -> None:
    line = plates("inset").line
    assert isinstance(line, Figure)
    assert line.name == "leaf A / hinge plates / line"
