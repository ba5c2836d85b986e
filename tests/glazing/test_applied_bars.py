"""Bars planted on both faces of one pane: places, laps, ends, bed, weight; as solids and as a pack.

In a lite of 592 x 1738 between stops of 12 the sight edges are 568 x 1714 apart. Bars of 22
leave (568 - 22) / 2 = 273 across and (1714 - 2 x 22) / 3 = 556.667 up.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.model import Shaped
from parametric.outlines import bounds_of
from parametric.resolve.bar_places import PlantedBar
from tests.glazing.lites import (
    arched,
    checked,
    clashes,
    first_leaf,
    first_lite,
    pair,
    parts,
    whole_pack,
)

GLASS = (
    "thickness: 6.4, held by: stops, stop: 12 x 14.5, tape: 1.5, bars: applied, muntin: 22, "
    "bar thickness: 10 x 9, bar tape: 1"
)
IN_REBATE = "  bars: applied\n  bar thickness: 5/16 x 1/4\n  bar tape: 1/32\n"


def test_one_pane_and_its_bars_stand_where_the_sums_say(tmp_path: Path) -> None:
    lite = first_lite(checked(pair(tmp_path, GLASS)))
    (pane,) = lite.panes
    assert (pane.width, pane.height) == (592 - 2 * 3, 1738 - 2 * 3)
    assert lite.cell is not None
    assert [float(size) for size in lite.cell] == pytest.approx([273, 556.6667], abs=1e-4)
    assert [bar.upright for bar in lite.bars] == [True, False, False]
    upright, high, low = lite.bars
    # stile 100 and stop 12, then a column; rail 200 and stop 12, then rows
    assert float(upright.low) == 100 + 12 + 273
    assert float(low.low) == pytest.approx(200 + 12 + 556.6667, abs=1e-4)
    assert float(high.low) == pytest.approx(200 + 12 + 2 * 556.6667 + 22, abs=1e-4)


def test_the_bars_lie_on_the_glass_and_inside_the_frame(tmp_path: Path) -> None:
    """(40 - 6.4) / 2 = 16.8 to the glass; less tape 1 is the bed at 15.8, less a bar of 10 is 5.8.

    Behind: 16.8 + 6.4 + 1 = 24.2, and 40 - 24.2 - 9 = 6.8.
    """
    job = checked(pair(tmp_path, GLASS))
    section = first_lite(job).section
    assert isinstance(section, PlantedBar)
    assert float(section.front_bed) == pytest.approx(15.8)
    assert float(section.below_face) == pytest.approx(5.8)
    assert float(section.back_bed) == pytest.approx(24.2)
    assert float(section.below_back) == pytest.approx(6.8)
    found = parts(job)
    front = found["leaf A / lite / upright bar 1 / front bar"].placement
    back = found["leaf A / lite / upright bar 1 / back bar"].placement
    # an upright bar's low face is its outer one
    assert front.origin[1] == pytest.approx(5.8)
    assert back.origin[1] == pytest.approx(40 - 6.8)


def test_crossings_are_half_lapped(tmp_path: Path) -> None:
    """Front bars of 10 lap by 5, back bars of 9 by 4.5; the level bar keeps the outside."""
    found = parts(checked(pair(tmp_path, GLASS)))
    for side, depth in (("front", 5.0), ("back", 4.5)):
        upright = found[f"leaf A / lite / upright bar 1 / {side} bar"]
        level = found[f"leaf A / lite / level bar 1 / {side} bar"]
        assert (upright.blank.length, upright.blank.width) == (1714, 22)
        assert (level.blank.length, level.blank.width) == (568, 22)
        cuts = [cut for cut in upright.cuts if isinstance(cut, Shaped)]
        assert [bounds_of(cut.outline)[::2] for cut in cuts] == [
            pytest.approx((556.6667, 578.6667), abs=1e-4),
            pytest.approx((1135.3333, 1157.3333), abs=1e-4),
        ]
        (lap,) = level.cuts
        assert isinstance(lap, Shaped)
        assert bounds_of(lap.outline) == pytest.approx((273, 0, 295, 22))
        assert {float(cut.depth) for cut in (*cuts, lap)} == {depth}
        assert level.faces["low face"] == "bed"
        assert upright.faces["low face"] == "face"


def test_butted_level_bars_are_in_pieces(tmp_path: Path) -> None:
    found = parts(checked(pair(tmp_path, f"{GLASS}, bar crossings: butted")))
    pieces = [
        part for name, part in found.items() if "leaf A / lite / level bar 2 / front p" in name
    ]
    assert [part.blank.length for part in pieces] == [273, 273]
    assert not any(part.cuts for part in pieces)
    assert found["leaf A / lite / upright bar 1 / front bar"].blank.length == 1714


def test_what_the_bars_weigh_and_the_glass_does_not_lose(tmp_path: Path) -> None:
    """Bars seen: 2 x 22 x (568 - 22) + 22 x 1714 = 24 024 + 37 708 = 61 732 mm2, 10 + 9 thick.

    Frame: 2 x 100 x 2038 x 40 + (100 + 200) x 592 x 40 = 16 304 000 + 7 104 000 mm3; with bars
    of 61 732 x 19 = 1 172 908 in all 24 580 908. Glass: 586 x 1732 x 6.4 x 2.5 / 1e6 = 16.239 kg.
    """
    leaf = first_leaf(checked(pair(tmp_path, GLASS)))
    assert float(leaf.lites[0].bar_area or 0) == pytest.approx(61_732)
    assert float(leaf.weights.frame_volume) == pytest.approx(24_580_908)
    assert float(leaf.weights.glass) == pytest.approx(16.239, abs=5e-4)


def test_in_a_rebate_under_an_arch_uprights_end_on_the_curve(tmp_path: Path) -> None:
    """Mill Lane: the arch of 50-3/4 x 6 has a radius of (25.375**2 + 6**2) / 12 = 56.658.

    The bar's right edge is (20.8125 + 7/8) / 2 = 10.844 right of the springing, 14.531 from the
    middle: sqrt(56.658**2 - 14.531**2) - 50.658 = 4.105 over it. At the meeting stile, 4.5625 from
    the middle, the arch is 5.816 high, so the springing stands 81.375 - 4.5 - 5.816 = 71.059 up,
    61.559 over the bottom rail of 9-1/2: 65.664 in all. Level bars are 20-13/16, the shoulder.
    """
    job = checked(arched(tmp_path, IN_REBATE))
    (pane,) = first_lite(job).panes
    assert pane.outline is not None
    found = parts(job)
    for side in ("front", "back"):
        upright = found[f"leaf A / lite / upright bar 1 / {side} bar"]
        assert float(upright.blank.length) / 25.4 == pytest.approx(65.664, abs=1e-3)
        assert upright.cuts[-1].name == "end to the arch"
        level = found[f"leaf A / lite / level bar 1 / {side} bar"]
        assert float(level.blank.length) / 25.4 == pytest.approx(20.8125, abs=1e-3)
    # 1-3/4 less the rebate of 16 mm, and the house's tape of 1.5 under the glass: its face; before
    # that the tape of the bar and the bar
    section = first_lite(job).section
    assert isinstance(section, PlantedBar)
    assert float(section.below_face) == pytest.approx(44.45 - 16 + 1.5 - 25.4 * (1 / 32 + 5 / 16))


def test_bar_tape_is_ordered_by_the_run(tmp_path: Path) -> None:
    """A leaf: 2 x (1714 + 2 x (568 - 22)) = 5612 mm; two leaves 11.224 m."""
    from parametric.trade.paperwork import paperwork

    job = checked(pair(tmp_path, GLASS))
    assert job.resolved is not None
    assert job.assembly is not None
    rows = paperwork(job.resolved, job.assembly, job.loads).hardware
    (tape,) = [row for row in rows if row.what == "bar tape"]
    assert float(tape.number) == pytest.approx(11.224)


@pytest.mark.kernel
@pytest.mark.parametrize("crossings", ["half lapped", "butted"])
def test_nothing_overlaps(tmp_path: Path, crossings: str) -> None:
    assert clashes(checked(pair(tmp_path, f"{GLASS}, bar crossings: {crossings}"))) == []


@pytest.mark.kernel
def test_nothing_overlaps_under_an_arch(tmp_path: Path) -> None:
    assert clashes(checked(arched(tmp_path, IN_REBATE))) == []


@pytest.mark.kernel
def test_the_pack_is_as_designed_and_its_sheets_are_clean(tmp_path: Path) -> None:
    said = whole_pack(pair(tmp_path, GLASS), tmp_path / "pack")
    assert said["sheets"]["findings"] == []
