"""A leaf with an arch under its top rail and another under its lock rail: one curve, twice."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.rules.stile_wood import rebates_of
from parametric.shapes.curve import Bow
from tests.glazing.lites import clashes, first_leaf, whole_pack

DESIGN = """\
stilewright: 1
job: Ropewalk stair
units: mm
survey:
  widths: {top: 906, middle: 905, bottom: 906}
  heights: {left: 2060, right: 2058}
  left side: plumb
  right side: plumb
  head: level
  fixing: solid timber
  wall: 120
door: {kind: hinged, opens: towards you, hinge side: left, hinge gap: 2.5, lock gap: 2.5, head gap: 3, floor gap: 8, edge bevel: 2 deg}
leaf:
  timber: ash
  thickness: 44
  stiles: 110
  top to bottom:
    - {top rail: 110, underside: arch}
    - lite: equal
    - {lock rail: 140, underside: arch}
    - {lite: equal, wide: 2, high: 2}
    - bottom rail: 220
joint: {kind: loose tenon, slot: 12 x 62 x 46, tenon: 12 x 60 x 90}
arch: {shape: segmental, across: leaf, rise: 90}
glass: {kind: toughened, thickness: 4, held by: rebate, frame rebate: 10, muntin: 22, muntin rebate: 8, clearance: 2}
hinge: {kind: butt, count: 3, length: 100, from top: 150, from bottom: 225}
"""
# leaf 905 - 2.5 - 2.5 = 900 wide, 2058 - 3 - 8 = 2047 high; 900 - 2 x 110 = 680 between the stiles
RADIUS = (680**2 + 4 * 90**2) / (8 * 90)


@pytest.fixture
def job(tmp_path: Path) -> Job:
    return check(written(tmp_path), user_house=False)


def written(folder: Path) -> Path:
    path = folder / "design.yaml"
    path.write_text(DESIGN, encoding="utf-8")
    return path


def test_the_rise_is_in_both_rails(job: Job) -> None:
    """Where it springs a rail is as much higher as the curve rises: 110 + 90, 140 + 90."""
    leaf = first_leaf(job)
    top, lock, _ = leaf.rails
    assert (float(top.height), float(lock.height)) == (200, 230)
    # 2047 - 200 - 230 - 220 = 1397, halved
    upper, lower = leaf.lites
    assert float(upper.height) == float(lower.height) == 698.5
    for rail, springing in ((lock, 220 + 698.5), (top, 220 + 698.5 + 230 + 698.5)):
        assert rail.head is not None
        assert float(rail.head.springing) == springing
        (bow,) = rail.head.curve.pieces
        assert isinstance(bow, Bow)
        assert float(bow.radius) == pytest.approx(RADIUS, abs=1e-9)
        # slots stand where the rail is whole, over the crown, 6 off it and off what is let in
        assert all(float(slot.low) > springing + 90 for slot in rail.slots)


def test_each_pane_follows_its_own_arch(job: Job) -> None:
    upper, lower = first_leaf(job).lites
    # 680 + 2 x 10 - 2 x 2 = 696 wide; glass stands 10 - 2 = 8 outside the curve
    assert float(upper.pane.width) == 696
    # from 8 under the foot of the lite to 8 over the crown: 698.5 + 90 + 2 x 8
    assert float(upper.pane.height) == pytest.approx(698.5 + 90 + 16)
    left, right, *_ = lower.panes
    # a column is (680 - 22) / 2 = 329; + 10 - 2 at the stile, + 8 - 2 at the bar = 343
    assert float(left.width) == float(right.width) == 343
    # 8 outside the curve at its highest: 340 - (329 + 6) = 5 from the middle
    over = ((RADIUS + 8) ** 2 - 5**2) ** 0.5 - (RADIUS - 90)
    row = (698.5 - 22) / 2
    assert float(left.height) == pytest.approx(row + 6 + over, abs=1e-6)


def test_the_stiles_know_how_high_each_rebate_goes(job: Job) -> None:
    upper, lower = rebates_of(first_leaf(job), "left")
    assert float(lower.high) == pytest.approx(220 + 698.5 + 90 + 10)
    assert float(upper.high) == pytest.approx(1148.5 + 698.5 + 90 + 10)


@pytest.mark.kernel
def test_solids_and_files(job: Job, tmp_path: Path) -> None:
    assert [p.message for p in job.problems if p.level == "stop"] == []
    assert clashes(job) == []
    checks = whole_pack(written(tmp_path), tmp_path / "pack")
    assert checks["sheets"]["findings"] == []
