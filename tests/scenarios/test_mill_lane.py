"""Mill Lane study: every number a maker works out by hand, in inches, with the arithmetic.

The sums are those of the brief; where it goes on from a number rounded to four places, the
sum here is written out in full, and the brief's rounded answer stands beside it as a check of
the sum itself.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from pathlib import Path

import pytest

from parametric.figures import Figure
from parametric.job import Job, check
from parametric.pack.numbers import figures

DESIGN = Path(__file__).parents[2] / "examples/mill-lane-study/design.yaml"
INCH = 25.4
POUND = 0.45359237


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


@pytest.fixture(scope="module")
def numbers(job: Job) -> Mapping[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


CLEAR = 59.9375
"""59-15/16, the least width between plumb jambs."""
LEAF = (CLEAR - 2 * 3 / 32 - 1 / 8) / 2
HEIGHT = 82 - 1 / 8 - 1 / 2
OPENING = LEAF - 2 * 4.5
CHORD = 2 * LEAF + 1 / 8 - 2 * 4.5
RADIUS = (CHORD**2 + 4 * 6**2) / (8 * 6)
MEETING = 1 / 16 + 4.5
"""Inner edge of the meeting stile from the middle of the pair."""


def arc(x: float, radius: float = RADIUS) -> float:
    """Above the springing line, x from the middle of the pair, on a circle about its centre."""
    return math.sqrt(radius**2 - x**2) - (RADIUS - 6)


TOP_RAIL = 4.5 + arc(MEETING)
SPRINGING = HEIGHT - TOP_RAIL
WIDE = (OPENING - 0.875) / 2
HIGH = (SPRINGING - 9.5 - 3 * 0.875) / 4
BAR_OUT = CHORD / 2 - WIDE
BAR_IN = BAR_OUT - 0.875
GLASS_RADIUS = RADIUS + 0.375 - 0.0625

INCHES = {
    "leaf width": (LEAF, 29.8125),
    "leaf height": (HEIGHT, 81.375),
    "leaf A / shoulder": (OPENING, 20.8125),
    "arch / span": (CHORD, 50.75),
    "arch / radius": (RADIUS, 56.6576),
    "leaf A / arch height at the right stile": (arc(MEETING), 5.816),
    "leaf B / arch height at the left stile": (arc(MEETING), 5.816),
    "leaf A / arch height at the left stile": (0.0, 0.0),
    "leaf A / top rail / height": (TOP_RAIL, 10.316),
    "leaf A / top rail / least height": (4.5, 4.5),
    "leaf A / lite / top": (SPRINGING, 71.059),
    "leaf A / lite / daylight width": (WIDE, 9.9688),
    "leaf A / lite / daylight height": (HIGH, 14.7335),
    "leaf A / lite / upright bar 1 / arch at its left edge": (arc(BAR_OUT), 3.8652),
    "leaf A / lite / upright bar 1 / arch at its right edge": (arc(BAR_IN), 4.1049),
    # Row 1 from the top: daylight heights, the hinge light and the middle light.
    "leaf A / lite / row 1 / pane 1 / daylight at the left edge": (HIGH, 14.7335),
    "leaf A / lite / row 1 / pane 1 / daylight at the right edge": (HIGH + arc(BAR_OUT), 18.5987),
    "leaf A / lite / row 1 / pane 2 / daylight at the left edge": (HIGH + arc(BAR_IN), 18.8384),
    "leaf A / lite / row 1 / pane 2 / daylight at the right edge": (
        HIGH + arc(MEETING),
        20.5495,
    ),
    # Glass: daylight and rebates, less a clearance each edge.
    **{
        f"leaf {leaf} / lite / row {row} / pane {pane} / width": (
            WIDE + 0.375 + 0.3125 - 2 * 0.0625,
            10.5313,
        )
        for leaf in "AB"
        for row in (1, 2, 3, 4)
        for pane in (1, 2)
    },
    "leaf A / lite / row 4 / pane 1 / height": (HIGH + 0.375 + 0.3125 - 2 * 0.0625, 15.296),
    "leaf A / lite / row 3 / pane 2 / height": (HIGH + 2 * 0.3125 - 2 * 0.0625, 15.2335),
    "leaf A / lite / row 2 / pane 1 / height": (HIGH + 2 * 0.3125 - 2 * 0.0625, 15.2335),
    # The shaped panes; their foot stands 1/4 below the daylight.
    "leaf A / lite / row 1 / pane 1 / left edge height": (
        HIGH + 0.25 + arc(CHORD / 2 + 0.375 - 0.0625, GLASS_RADIUS),
        15.1761,
    ),
    "leaf A / lite / row 1 / pane 1 / right edge height": (
        HIGH + 0.25 + arc(BAR_OUT - 0.3125 + 0.0625, GLASS_RADIUS),
        19.2429,
    ),
    "leaf A / lite / row 1 / pane 2 / left edge height": (
        HIGH + 0.25 + arc(BAR_IN + 0.3125 - 0.0625, GLASS_RADIUS),
        19.3451,
    ),
    "leaf A / lite / row 1 / pane 2 / right edge height": (
        HIGH + 0.25 + arc(MEETING - 0.375 + 0.0625, GLASS_RADIUS),
        21.1373,
    ),
    # The other leaf is its mirror image.
    "leaf B / lite / row 1 / pane 2 / right edge height": (
        HIGH + 0.25 + arc(CHORD / 2 + 0.375 - 0.0625, GLASS_RADIUS),
        15.1761,
    ),
    "leaf B / lite / row 1 / pane 1 / left edge height": (
        HIGH + 0.25 + arc(MEETING - 0.375 + 0.0625, GLASS_RADIUS),
        21.1373,
    ),
    "floor gap left": (0.5 + 82.125 - 82, 0.625),
    "floor gap right": (0.5, 0.5),
    "floor gap in the travel": (0.5 - 0.1875, 0.3125),
}


@pytest.mark.parametrize("name", INCHES)
def test_lengths(name: str, numbers: Mapping[str, Figure]) -> None:
    worked, printed = INCHES[name]
    assert worked == pytest.approx(printed, abs=0.00015), "the sum is not the brief's"
    assert float(numbers[name]) / INCH == pytest.approx(worked, abs=1e-9)


def test_the_area_under_one_leaf_s_arc(numbers: Mapping[str, Figure]) -> None:
    """The circle's own integral from hinge edge to meeting edge: 75.531 sq in."""

    def part(x: float) -> float:
        return (
            RADIUS**2 / 2 * (math.asin(x / RADIUS) + x / RADIUS * math.sqrt(1 - (x / RADIUS) ** 2))
        )

    area = part(CHORD / 2) - part(MEETING) - (RADIUS - 6) * (CHORD / 2 - MEETING)
    assert area == pytest.approx(75.531, abs=0.001)
    for leaf in "AB":
        found = float(numbers[f"leaf {leaf} / area under the arch"]) / INCH**2
        assert found == pytest.approx(area, abs=1e-6)


def test_weights(numbers: Mapping[str, Figure]) -> None:
    """Wood by face area, bars of full thickness; glass by daylight: 56.1 + 25.4 = 81.5 lb."""
    whole = OPENING * (SPRINGING - 9.5) + 75.531
    frame = LEAF * HEIGHT - whole
    bars = 0.875 * (SPRINGING - 9.5 + (arc(BAR_OUT) + arc(BAR_IN)) / 2) + 3 * 0.875 * (
        OPENING - 0.875
    )
    assert whole == pytest.approx(1356.7, abs=0.05)
    assert frame == pytest.approx(1069.3, abs=0.05)
    assert bars == pytest.approx(109.7, abs=0.05)
    wood = (frame + bars) * 1.75 / 1728 * 47
    glass = (whole - bars) * 0.226 * 0.0903
    assert (wood, glass) == (pytest.approx(56.1, abs=0.05), pytest.approx(25.4, abs=0.06))
    found = {
        word: float(numbers[f"leaf A / {word}"]) / POUND
        for word in ("frame weight", "glass weight", "weight estimate")
    }
    assert found["frame weight"] == pytest.approx(wood, abs=0.01)
    # 2.5 kg/m2 per mm is 0.09032 lb/in3, which the brief rounds to 0.0903.
    assert found["glass weight"] == pytest.approx(glass, rel=5e-4)
    assert found["weight estimate"] == pytest.approx(81.5, abs=0.1)


def test_sixteen_panes_of_four_sizes(job: Job) -> None:
    """Three rows are two sizes of rectangle; each shaped pane serves both leaves, turned about."""
    assert job.assembly is not None
    panes: dict[str, list[str]] = {}
    for part in job.assembly.parts:
        if part.material.look == "glass":
            panes.setdefault(part.mark, []).append(part.name)
    counts = sorted(len(names) for names in panes.values())
    assert counts == [2, 2, 4, 8]
    assert sum(counts) == 16
