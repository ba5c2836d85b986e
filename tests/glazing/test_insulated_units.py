"""Insulated units: what they weigh, how they stand, and the bars between their panes.

In a lite of 592 x 1738 a unit is 586 x 1732; its bars are planted between sight edges that are
568 x 1714 apart, 12 inside the opening and 9 inside the glass.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import check
from parametric.resolve.bar_places import PlantedBar
from parametric.trade.glass import glass_order
from parametric.trade.glazing import grid_words
from parametric.trade.printed import printed
from tests.glazing.lites import checked, clashes, first_lite, pair, parts, whole_pack

GLASS = (
    "unit: 4 x 12 x 4, held by: stops, stop: 12 x 14.5, tape: 1.5, bars: spaced, muntin: 22, "
    "bar thickness: 10 x 10, bar tape: 1"
)


def test_a_unit_weighs_by_its_panes_and_stands_by_all_of_it(tmp_path: Path) -> None:
    """4 + 12 + 4 = 20 thick; 586 x 1732 x (4 + 4) x 2.5 / 1e6 = 20.299 kg.

    In a leaf of 54: (54 - 20) / 2 = 17 to the glass, tape 1.5 and a stop of 14.5: 1 below the face.
    """
    job = checked(pair(tmp_path, GLASS, thick=54))
    (pane,) = first_lite(job).panes
    assert float(pane.thickness) == 20
    assert float(pane.weight) == pytest.approx(20.299, abs=5e-4)
    assert pane.stops is not None
    assert float(pane.stops.below_face) == pytest.approx(1.0)
    glass = parts(job)["leaf A / lite / glass"]
    assert glass.mass == pytest.approx(20.299, abs=5e-4)
    section = first_lite(job).section
    assert isinstance(section, PlantedBar)
    # 17 - 1 - 10 in front and 54 - 17 - 20 - 1 - 10 behind
    assert (float(section.below_face), float(section.below_back)) == pytest.approx((6, 6))


def test_a_unit_in_a_rebate(tmp_path: Path) -> None:
    """Daylight 592 x 1738 of two panes of 4: 592 x 1738 x 8 x 2.5 / 1e6 = 20.578 kg are carried.

    The pane itself, 10 - 3 into the frame all round, is 606 x 1752: 21.234 kg.
    """
    glass = "unit: 4 x 6 x 4, held by: rebate, rebate depth: 24, tape: 1, bars: spaced, muntin: 20"
    job = checked(pair(tmp_path, glass, thick=54))
    lite = first_lite(job)
    assert float(lite.weight) == pytest.approx(20.578, abs=5e-4)
    assert float(lite.pane.weight) == pytest.approx(21.234, abs=5e-4)
    assert lite.pane.grid is not None
    # (592 - 20) / 2 + 10 across the daylight, and the 7 by which the glass reaches past it
    assert [float(at) for at in lite.pane.grid.uprights] == [286 + 10 + 7]


def test_spacer_bars_stand_under_the_middle_of_the_planted_ones(tmp_path: Path) -> None:
    """Across: 9 + 273 + 11 = 293, half of 586. Up: 9 + 556.667 + 11 = 576.667, and one more row
    and bar, 578.667, over it: 1155.333. At most 22 - 2 x 2 = 18 wide.
    """
    job = checked(pair(tmp_path, GLASS, thick=54))
    grid = first_lite(job).pane.grid
    assert grid is not None
    assert [float(at) for at in grid.uprights] == pytest.approx([293])
    assert [float(at) for at in grid.levels] == pytest.approx([576.6667, 1155.3333], abs=1e-4)
    assert float(grid.most) == 18
    assert job.resolved is not None
    assert job.assembly is not None
    (row,) = glass_order(job.resolved, job.assembly)
    assert row.called == "laminated unit"
    assert grid_words(row, printed(job.resolved)) == (
        "upright at 293 from the left edge; level at 576.7, 1155.3 from the lower edge, to their "
        "middles, seen from the front; 18 wide at most"
    )


def test_units_of_one_size_and_another_grid_have_marks_of_their_own(tmp_path: Path) -> None:
    """Two lites of one size in a leaf, one divided 2 x 3 and one 2 x 2: the glazier makes two."""
    path = pair(tmp_path, GLASS, thick=54)
    one = "    - {lite: rest, wide: 2, high: 3}\n"
    text = path.read_text(encoding="utf-8")
    assert one in text
    two = one.replace("rest", "equal") + "    - dividing rail: 90\n"
    two += one.replace("rest", "equal").replace("high: 3", "high: 2")
    path.write_text(text.replace(one, two), encoding="utf-8")
    job = checked(path)
    assert job.resolved is not None
    assert job.assembly is not None
    rows = glass_order(job.resolved, job.assembly)
    assert [(row.number, row.width, row.height) for row in rows] == [(2, 586, 818)] * 2
    assert [len(row.grid.levels) for row in rows if row.grid is not None] == [2, 1]


def test_spacer_bars_in_one_pane_are_answered(tmp_path: Path) -> None:
    job = check(pair(tmp_path, "thickness: 6, held by: stops, bars: spaced"), user_house=False)
    assert [p.code for p in job.problems if p.level == "stop"] == ["spacer_bars_need_unit"]


@pytest.mark.kernel
def test_the_pack_is_as_designed_and_its_sheets_are_clean(tmp_path: Path) -> None:
    path = pair(tmp_path, GLASS, thick=54)
    assert clashes(checked(path)) == []
    assert whole_pack(path, tmp_path / "pack")["sheets"]["findings"] == []
