"""True bars as thick as the frame, with a pane in stops in every opening between them.

In a lite of 592 x 1738 bars of 30 leave (592 - 30) / 2 = 281 across and (1738 - 2 x 30) / 3 =
559.333 up; a pane clears its opening by 3 all round.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.catalog.glass_facts import EXEMPT_BALL
from parametric.model import Shaped, removed_volume
from parametric.outlines import bounds_of
from parametric.trade.glazing import glazing_order
from tests.glazing.lites import checked, clashes, first_leaf, first_lite, pair, parts, whole_pack

GLASS = "thickness: 6.4, held by: stops, stop: 12 x 14.5, tape: 1.5, muntin: 30, bar tenon: 12"


def test_six_panes_each_in_stops_of_its_own(tmp_path: Path) -> None:
    job = checked(pair(tmp_path, GLASS))
    lite, found = first_lite(job), parts(job)
    assert len(lite.panes) == 6
    for pane in lite.panes:
        assert float(pane.width) == pytest.approx(275)
        assert float(pane.height) == pytest.approx(553.3333, abs=1e-4)
        stops = [part for name, part in found.items() if name.startswith(f"{pane.name} / ")]
        lengths = sorted(part.blank.length for part in stops if part.mark.startswith("L"))
        assert lengths == pytest.approx([281] * 4 + [559.3333] * 4, abs=1e-4)
    # row 2, pane 2: 100 + 281 + 30 across, 200 + 559.333 + 30 up, and 3 of clearance
    middle = lite.panes[3]
    assert middle.name.endswith("row 2 / pane 2")
    assert (float(middle.left), float(middle.foot)) == pytest.approx((414, 792.3333), abs=1e-4)


def test_bars_are_tenoned_into_the_frame_and_lapped(tmp_path: Path) -> None:
    """Upright: 1738 + 2 x 12 = 1762 long, level: 592 + 24 = 616; tenons 40 / 3 = 13.333 thick.

    Laps are 20 deep, the level bar's from its back, the upright's from its face; mortises 12 deep.
    """
    found = parts(checked(pair(tmp_path, GLASS)))
    upright, level = found["leaf A / lite / upright bar 1"], found["leaf A / lite / level bar 1"]
    assert (upright.blank.length, level.blank.length) == (1762, 616)
    assert upright.blank.thickness == level.blank.thickness == 40
    for bar, laps in ((upright, 2), (level, 1)):
        cheeks = [cut for cut in bar.cuts if cut.name == "cheek"]
        assert [float(cut.depth) for cut in cheeks if isinstance(cut, Shaped)] == pytest.approx(
            [13.3333] * 4, abs=1e-4
        )
        lapped = [cut for cut in bar.cuts if isinstance(cut, Shaped) and cut.name == "lap"]
        assert [float(cut.depth) for cut in lapped] == [20.0] * laps
    assert (upright.faces["low face"], level.faces["low face"]) == ("face", "back")
    stile = found["leaf A / left stile"]
    mortises = [cut for cut in stile.cuts if isinstance(cut, Shaped)]
    assert [cut.face for cut in mortises] == ["high edge"] * 2
    # the lowest level bar: 200 + 559.333 up, and the trim of 12 before the leaf is trimmed
    (low,) = [cut for cut in mortises if bounds_of(cut.outline)[0] < 1000]
    assert bounds_of(low.outline) == pytest.approx((771.3333, 13.3333, 801.3333, 26.6667), abs=1e-4)
    # a mortise takes what its tenon fills
    assert removed_volume(low, stile.blank) == pytest.approx(30 * 40 / 3 * 12)
    for rail in ("top rail", "bottom rail"):
        cuts = [cut for cut in found[f"leaf A / {rail}"].cuts if isinstance(cut, Shaped)]
        assert [bounds_of(cut.outline)[::2] for cut in cuts] == [pytest.approx((281, 311))]


def test_every_opening_is_measured_before_its_pane_is_ordered(tmp_path: Path) -> None:
    """281 x 559.333 each, and at least 275 + 1.5875 + 2 x 3 / 2 = 279.5875 wide."""
    job = checked(pair(tmp_path, GLASS))
    assert job.resolved is not None
    assert job.assembly is not None
    openings = glazing_order(job.resolved, job.assembly).openings
    assert len(openings) == len({opening.lite for opening in openings}) == 12
    for opening in openings:
        assert float(opening.width) == pytest.approx(281)
        assert float(opening.height) == pytest.approx(559.3333, abs=1e-4)
        assert float(opening.least_width) == pytest.approx(279.5875)


def test_what_the_glass_weighs(tmp_path: Path) -> None:
    """6 x 275 x 553.333 x 6.4 x 2.5 / 1e6 = 14.608 kg."""
    assert float(first_leaf(checked(pair(tmp_path, GLASS))).weights.glass) == pytest.approx(
        14.608, abs=5e-4
    )


def test_each_opening_is_asked_for_its_own_class(tmp_path: Path) -> None:
    """Eight panes wide the openings are (592 - 7 x 30) / 8 = 47.75: no ball of 76.2 passes."""
    job = checked(pair(tmp_path, GLASS, wide=8, high=1))
    pane = first_lite(job).pane
    assert float(pane.opening[0]) == pytest.approx(47.75)
    assert float(pane.opening[0]) < float(EXEMPT_BALL)
    assert "glass_not_safety" not in {problem.code for problem in job.problems}


@pytest.mark.kernel
@pytest.mark.parametrize(("wide", "high"), [(2, 3), (1, 2), (2, 1)])
def test_nothing_overlaps(tmp_path: Path, wide: int, high: int) -> None:
    assert clashes(checked(pair(tmp_path, GLASS, wide=wide, high=high))) == []


@pytest.mark.kernel
def test_the_pack_is_as_designed_and_its_sheets_are_clean(tmp_path: Path) -> None:
    said = whole_pack(pair(tmp_path, GLASS), tmp_path / "pack")
    assert said["sheets"]["findings"] == []
