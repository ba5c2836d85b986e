"""A pane between stops under a curve: its outline, the stop that is sawn to the curve, and the rest.

Over 592 an arc that rises 120 has a radius of (296**2 + 120**2) / 240 = 425.067; its centre lies
305.067 under the springing line, which is 1618 over the bottom rail.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.job import check
from parametric.model import Mitre
from parametric.outlines import arc_of
from parametric.trade.glass import glass_order
from parametric.trade.paperwork import paperwork
from tests.glazing.lites import checked, clashes, first_lite, pair, parts, whole_pack

GLASS = "thickness: 6.4, held by: stops, stop: 12 x 14.5, tape: 1.5, clearance: 3"
BARS = f"{GLASS}, bars: applied, muntin: 22, bar thickness: 10 x 10, bar tape: 1"
SHAPES = {
    "segmental": "rise: 120",
    "half round": "",
    "pointed": "rise: 420",
    "elliptical": "rise: 120",
    "raked": "rise: 80, rises to: right",
}


def under_an_arch(
    folder: Path, shape: str, glass: str = GLASS, *, wide: int = 1, high: int = 1
) -> Path:
    """The pair with its top rail arched."""
    path = pair(folder, glass, wide=wide, high=high)
    text = path.read_text(encoding="utf-8")
    arch = ", ".join(words for words in (f"shape: {shape}", SHAPES[shape]) if words)
    text = text.replace("- top rail: 100", "- {top rail: 100, underside: arch}")
    path.write_text(text.replace("\ntrack:", f"\narch: {{{arch}}}\ntrack:"), encoding="utf-8")
    return path


def test_the_pane_follows_the_arch_inside_its_clearance(tmp_path: Path) -> None:
    """586 wide, 1738 - 6 = 1732 high; about the same centre, of radius 425.067 - 3 = 422.067.

    Under that arc, between 293 either side: 422.067**2 * asin(293 / 422.067) + 293 *
    sqrt(422.067**2 - 293**2) - 305.067 * 586 = 46 932 mm2; with 586 x 1615 under the springing
    993 322 mm2, x 6.4 x 2.5 / 1e6 = 15.893 kg.
    """
    job = checked(under_an_arch(tmp_path, "segmental"))
    pane = first_lite(job).pane
    assert (float(pane.width), float(pane.height)) == pytest.approx((586, 1732))
    assert pane.outline is not None
    (arc,) = [
        arc
        for a, b in zip(pane.outline, (*pane.outline[1:], pane.outline[0]), strict=True)
        if (arc := arc_of(a, b)) is not None
    ]
    assert arc.radius == pytest.approx(422.0667, abs=1e-3)
    assert float(pane.weight) == pytest.approx(15.893, abs=5e-4)
    assert job.resolved is not None
    assert job.assembly is not None
    (row,) = glass_order(job.resolved, job.assembly)
    assert row.template is not None


def test_the_stop_is_sawn_to_the_arch_and_ends_level_on_the_others(tmp_path: Path) -> None:
    """Its inner edge, of radius 413.067, is 12 in from the stile at sqrt(413.067**2 - 284**2) -
    305.067 = -5.120: there the uprights end, 1618 - 5.120 = 1612.880 long, and the board is
    120 + 5.120 = 125.120 wide. One end of an upright is mitred, both of the stop at the foot.
    """
    found = parts(checked(under_an_arch(tmp_path, "segmental")))
    for face in ("front", "back"):
        left, right, top, bottom = (
            found[f"leaf A / lite / {face} {word} stop"]
            for word in ("left", "right", "top", "bottom")
        )
        assert left.mark == right.mark
        assert float(left.blank.length) == pytest.approx(1612.880, abs=1e-3)
        assert sum(isinstance(cut, Mitre) for cut in left.cuts) == 1
        assert sum(isinstance(cut, Mitre) for cut in bottom.cuts) == 2
        assert (float(top.blank.length), float(top.blank.width)) == pytest.approx(
            (592, 125.120), abs=1e-3
        )
        outer, inner = _over_the_springing(425.0667, 296), _over_the_springing(413.0667, 284)
        # under the level ends, 12 wide each, nothing is left: they lie 5.120 below the springing
        assert top.volume == pytest.approx((outer - inner + 2 * 12 * 5.1199) * 14.5, rel=1e-5)


def _over_the_springing(radius: float, half: float) -> float:
    """Under an arc about the point 305.067 below the springing line, mm2."""
    sector = radius**2 * math.asin(half / radius) + half * math.sqrt(radius**2 - half**2)
    return sector - 305.0667 * 2 * half


def test_pins_are_counted_along_the_arch(tmp_path: Path) -> None:
    """Along it 2 x 425.067 x asin(296 / 425.067) = 654.9: (654.9 - 100) / 150 goes 4 times, 5 pins.

    Foot: (592 - 100) / 150, 5 pins; uprights (1612.88 - 100) / 150, 12 each. 34 on a face, two
    faces, two leaves.
    """
    job = checked(under_an_arch(tmp_path, "segmental"))
    assert job.resolved is not None
    assert job.assembly is not None
    rows = paperwork(job.resolved, job.assembly, job.loads).hardware
    (pins,) = [row for row in rows if row.what == "glass stop pin"]
    assert float(pins.number) == 34 * 2 * 2


def test_planted_bars_end_on_the_arched_stop(tmp_path: Path) -> None:
    """The upright of 22 stands 11 either side of the middle: its outer corner is at
    sqrt(413.067**2 - 11**2) - 305.067 = 107.853, its middle at 108; from 12 over the rail the
    longest is the crown's, 1618 - 12 + 108 = 1714.
    """
    found = parts(checked(under_an_arch(tmp_path, "segmental", BARS, wide=2, high=3)))
    bar = found["leaf A / lite / upright bar 1 / front bar"]
    assert float(bar.blank.length) == pytest.approx(1714)
    assert bar.cuts[-1].name == "end to the arch"
    level = found["leaf A / lite / level bar 1 / front bar"]
    assert float(level.blank.length) == 568


def test_a_half_round_is_warned_of_and_a_flat_arc_is_not(tmp_path: Path) -> None:
    """At its springing a half round is upright, 90 degrees; the arc of 120 is at 44.1."""
    for shape, warned in (("half round", True), ("segmental", False)):
        job = check(under_an_arch(tmp_path, shape), user_house=False)
        codes = {problem.code for problem in job.problems}
        assert ("short_grain_in_stop" in codes) == warned


def test_true_bars_between_stops_under_an_arch_are_answered(tmp_path: Path) -> None:
    job = check(under_an_arch(tmp_path, "segmental", GLASS, wide=2, high=3), user_house=False)
    assert [p.message for p in job.problems if p.level == "stop"] == [
        "An arch over true bars between stops cannot be built by this version yet."
    ]


@pytest.mark.kernel
@pytest.mark.parametrize("shape", SHAPES)
def test_nothing_overlaps(tmp_path: Path, shape: str) -> None:
    assert clashes(checked(under_an_arch(tmp_path, shape))) == []


@pytest.mark.kernel
@pytest.mark.parametrize("shape", SHAPES)
def test_nothing_overlaps_with_bars(tmp_path: Path, shape: str) -> None:
    assert clashes(checked(under_an_arch(tmp_path, shape, BARS, wide=2, high=3))) == []


@pytest.mark.kernel
def test_the_pack_is_as_designed_and_its_sheets_are_clean(tmp_path: Path) -> None:
    path = under_an_arch(tmp_path, "segmental", BARS, wide=2, high=3)
    assert whole_pack(path, tmp_path / "pack")["sheets"]["findings"] == []


@pytest.mark.kernel
def test_a_shaped_unit_with_spacer_bars_is_ordered_by_outline_and_grid(tmp_path: Path) -> None:
    """Its template, its outline file and its grid agree, or the pack would not be built."""
    unit = BARS.replace("thickness: 6.4", "unit: 4 x 6 x 4").replace("applied", "spaced")
    unit = unit.replace("stop: 12 x 14.5", "stop: 12 x 11")
    path = under_an_arch(tmp_path, "segmental", unit, wide=2, high=3)
    said = whole_pack(path, tmp_path / "pack")
    assert said["sheets"]["findings"] == []
    outline = (tmp_path / "pack" / "order" / "glass-G1.dxf").read_text(encoding="utf-8")
    assert "laminated unit 4 / 6 / 4, spacer bars 1 upright and 2 level 14 thick" in outline
    panes = (tmp_path / "pack" / "site" / "panes.csv").read_text(encoding="utf-8")
    assert "order/glass-G1.dxf" in panes
