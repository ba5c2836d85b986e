"""Panes that differ by a hair, ordered as one size: what is offered, and what is so when accepted.

Mill Lane has rebates of 3/8 in the frame and 5/16 in the bars, and a clearance of 1/16. The panes
of its lowest row stand in both, those of two rows over it in bars alone: 1/16 lower.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.infill.glass import Pane
from parametric.job import Job
from parametric.resolve.one_size import near_equal
from parametric.trade.glass import glass_order
from parametric.trade.glazing import glazing_order
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

INCH = 25.4
IN_STOPS = "thickness: 6.4, held by: stops, stop: 12 x 14.5, tape: 1.5, clearance: 3"


def panes(job: Job) -> dict[str, Pane]:
    assert job.resolved is not None
    return {
        pane.name: pane
        for leaf in job.resolved.door.leaves
        for lite in leaf.lites
        for pane in lite.panes
    }


def of_two_heights(folder: Path, upper: str, glass: str) -> Path:
    """The pair with two lites, the upper of a given height, that share 1738 - 90 with a rail."""
    path = pair(folder, glass)
    one = "    - {lite: rest, wide: 2, high: 3}\n"
    text = path.read_text(encoding="utf-8")
    assert one in text
    two = f"    - lite: {upper}\n    - dividing rail: 90\n    - lite: rest\n"
    path.write_text(text.replace(one, two), encoding="utf-8")
    return path


def test_what_is_offered_names_panes_sizes_and_the_one_size(tmp_path: Path) -> None:
    """The row's daylight is 374.231 high: 374.231 + 9.525 + 7.9375 - 3.175 = 388.518 at the foot
    and 374.231 + 2 x 7.9375 - 3.175 = 386.931 over it. At the foot 1.588 is lost, half an edge.
    """
    job = checked(arched(tmp_path, ""))
    assert job.resolved is not None
    (lot,) = near_equal(job.resolved.door.leaves)
    assert len(lot.panes) == 12
    assert float(lot.height) == pytest.approx(386.931, abs=1e-3)
    assert float(lot.apart) == pytest.approx(INCH / 16)
    assert float(lot.clearance) == pytest.approx(INCH * (1 / 16 + 1 / 32))
    # the foot's bite is 5/16 - 1/16 at its bar; less 1/32
    assert float(lot.bite) == pytest.approx(INCH * (5 / 16 - 1 / 16 - 1 / 32))
    (said,) = [p for p in job.problems if p.code == "near_equal_panes"]
    assert said.level == "note"
    assert "12 panes of 2 sizes (4 of 10-17/32 × 15-9/32, 8 of 10-17/32 × 15-7/32)" in said.message
    assert "`ordered: one size`" in said.fix


def test_accepted_every_pane_is_of_that_size_and_says_what_it_has(tmp_path: Path) -> None:
    job = checked(arched(tmp_path, "  ordered: one size\n"))
    assert "near_equal_panes" not in {p.code for p in job.problems}
    found = panes(job)
    low = found["leaf A / lite / row 4 / pane 1"]
    middle = found["leaf A / lite / row 3 / pane 1"]
    assert float(low.height) == float(middle.height) == pytest.approx(386.931, abs=1e-3)
    assert [float(c) / INCH for c in low.clearances] == pytest.approx([1 / 16, 3 / 32])
    assert [float(c) / INCH for c in middle.clearances] == pytest.approx([1 / 16, 1 / 16])
    assert [float(b) / INCH for b in low.bites] == pytest.approx([1 / 4, 7 / 32])
    # it stands in the middle of its opening: 9-1/2 less the rebate of 3/8 and 3/32 free
    assert float(low.foot) / INCH == pytest.approx(9.5 - 3 / 8 + 3 / 32)
    assert job.resolved is not None
    assert job.assembly is not None
    rows = glass_order(job.resolved, job.assembly)
    assert [row.number for row in rows if row.template is None] == [12]
    openings = glazing_order(job.resolved, job.assembly).openings
    heights = {o.pane: float(o.height) for o in openings}
    # the opening is what it was: 388.518 + 2 x 1/16
    assert heights["leaf A / lite / row 4 / pane 1"] == pytest.approx(388.518 + INCH / 8, abs=1e-3)
    glass = parts(job)["leaf A / lite / row 4 / pane 1"]
    assert glass.mark == parts(job)["leaf B / lite / row 2 / pane 2"].mark


def test_between_stops_the_leaf_weighs_what_its_panes_do(tmp_path: Path) -> None:
    """Lites of 823 and 1648 - 823 = 825: panes 817 and 819 high, in one size 817.

    586 x 817 x 6.4 x 2.5 / 1e6 = 7.660 kg twice: 15.320. The lower has 4 free, and 8 covered.
    """
    path = of_two_heights(tmp_path, "823", f"{IN_STOPS}, ordered: one size")
    job = checked(path)
    leaf = first_leaf(job)
    assert [float(lite.pane.height) for lite in leaf.lites] == [817, 817]
    assert float(leaf.weights.glass) == pytest.approx(15.320, abs=5e-4)
    lower = leaf.lites[1].pane
    assert [float(c) for c in lower.clearances] == [3, 4]
    assert [float(b) for b in lower.bites] == [9, 8]


def test_too_far_apart_is_not_offered(tmp_path: Path) -> None:
    """822 and 826 are 4 apart; 3 is what is taken for near, until the glass says 4."""
    job = checked(of_two_heights(tmp_path, "822", IN_STOPS))
    assert "near_equal_panes" not in {p.code for p in job.problems}
    job = checked(of_two_heights(tmp_path, "822", f"{IN_STOPS}, one size within: 4"))
    assert "near_equal_panes" in {p.code for p in job.problems}


def test_where_too_little_would_be_covered_nothing_changes(tmp_path: Path) -> None:
    """Stops of 7 cover 4; in one size the larger pane would be covered by 4 - 1 = 3."""
    glass = IN_STOPS.replace("12 x 14.5", "7 x 14.5")
    job = checked(of_two_heights(tmp_path, "823", f"{glass}, ordered: one size"))
    assert [float(lite.pane.height) for lite in first_leaf(job).lites] == [817, 819]
    (said,) = [p for p in job.problems if p.code == "near_equal_panes"]
    assert "only 3 of some would be covered: they stay as they are" in said.message


def test_units_with_spacer_bars_keep_their_own_sizes(tmp_path: Path) -> None:
    """Their grid is measured from the edge of the glass."""
    glass = "unit: 4 x 12 x 4, held by: stops, stop: 12 x 10, tape: 0, bars: spaced"
    path = of_two_heights(tmp_path, "823", f"{glass}, ordered: one size")
    text = path.read_text(encoding="utf-8").replace("lite: rest", "{lite: rest, high: 2}")
    path.write_text(text.replace("lite: 823", "{lite: 823, high: 2}"), encoding="utf-8")
    job = checked(path)
    assert first_lite(job).pane.grid is not None
    assert [float(lite.pane.height) for lite in first_leaf(job).lites] == [817, 819]


@pytest.mark.kernel
def test_the_pack_of_one_size_is_as_designed(tmp_path: Path) -> None:
    path = arched(tmp_path, "  ordered: one size\n")
    assert clashes(checked(path)) == []
    assert whole_pack(path, tmp_path / "pack")["sheets"]["findings"] == []
