"""Panels under an arch: the edge that follows the curve, the groove round it, and what stays straight."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.model import Groove, Shaped
from parametric.outlines import area_of
from tests.design.written_files import changed
from tests.glazing.lites import clashes, first_leaf, whole_pack

DESIGN = """\
stilewright: 1
job: Ropewalk pantry
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
    - panel: equal
    - {lock rail: 140, underside: arch}
    - panel: equal
    - bottom rail: 220
joint: {kind: loose tenon, slot: 12 x 62 x 46, tenon: 12 x 60 x 90}
arch: {shape: segmental, across: leaf, rise: 90}
panel: {kind: board, board: plywood, thickness: 9, grain: upright, groove: 9 x 14, clearance: 1.5}
hinge: {kind: butt, count: 3, length: 100, from top: 150, from bottom: 225}
"""
BOARD = (
    "{kind: board, board: plywood, thickness: 9, grain: upright, groove: 9 x 14, clearance: 1.5}"
)
FLAT = (
    "{kind: flat, thickness: 9, grain: upright, sawn: flat, groove: 9 x 14, clearance: 1, "
    "end clearance: 1.5, stock: 140}"
)
# the arch spans 900 - 2 x 110 = 680 and rises 90; each opening is 698.5 to its springing
RADIUS = (680**2 + 4 * 90**2) / (8 * 90)


def over(out: float, from_middle: float) -> float:
    """The curve that lies so far outside the arch, above the springing line."""
    return float(((RADIUS + out) ** 2 - from_middle**2) ** 0.5 - (RADIUS - 90))


def written(folder: Path, *pairs: tuple[str, str]) -> Path:
    path = folder / "design.yaml"
    path.write_text(changed(DESIGN, *pairs), encoding="utf-8")
    return path


def checked(folder: Path, *pairs: tuple[str, str]) -> Job:
    return check(written(folder, *pairs), user_house=False)


def test_a_board_follows_the_curve(tmp_path: Path) -> None:
    leaf = first_leaf(checked(tmp_path))
    field = leaf.panels[-1]
    assert field.arch is not None
    # 1.5 left in a groove of 14, all round: 12.5 outside the curve
    assert float(field.arch.out) == float(field.arch.at_foot) == 12.5
    assert float(field.panel.width) == 680 + 2 * 12.5
    # from 12.5 under the opening to 12.5 over the crown
    assert float(field.panel.height) == pytest.approx(12.5 + 698.5 + 90 + 12.5, abs=1e-9)
    # the groove in the stiles is 14 outside the curve, highest where the stile ends
    assert float(field.groove_high) == pytest.approx(220 + 698.5 + over(14, 340), abs=1e-9)
    # its area: below the springing a rectangle, above it the segment of the larger circle
    half = 352.5
    big = RADIUS + 12.5
    segment = big**2 * math.asin(half / big) + half * (big**2 - half**2) ** 0.5
    area = 705 * (12.5 + 698.5) + segment - 705 * (RADIUS - 90)
    assert float(field.panel.volume) == pytest.approx(area * 9, rel=1e-12)


def test_solid_timber_lies_as_far_outside_the_arch_as_at_its_sides(tmp_path: Path) -> None:
    """At 8 % in a room of 6 to 11 %, flat-sawn ash: C = 0.00274 a per cent.

    (680 + 2 x 14 - 2 x 1) / (1 + 0.00274 x 3) = 700.244: in each groove 10.122 as made.
    """
    field = first_leaf(checked(tmp_path, (BOARD, FLAT))).panels[-1]
    across = 706 / (1 + 0.00274 * 3)
    assert float(field.panel.width) == pytest.approx(across, abs=1e-9)
    assert field.arch is not None
    assert float(field.arch.out) == pytest.approx((across - 680) / 2, abs=1e-9)
    # its ends have 1.5 in a groove of 14
    assert float(field.panel.height) == pytest.approx(
        12.5 + 698.5 + 90 + (across - 680) / 2, abs=1e-9
    )


@pytest.mark.parametrize(("ends", "said"), [("1.5", False), ("2", True)])
def test_ends_that_are_to_have_more_than_the_sides(tmp_path: Path, ends: str, said: bool) -> None:
    """Sides of a board with 1.5 in 14 go 12.5 in; so does its edge under the arch."""
    board = BOARD.replace("clearance: 1.5", f"clearance: 1.5, end clearance: {ends}")
    codes = [p.code for p in checked(tmp_path, (BOARD, board)).problems if p.level == "stop"]
    assert codes == (["panel_closes_under_arch"] if said else [])


@pytest.mark.parametrize(
    ("panel", "what"),
    [
        (
            "{kind: raised, thickness: 28, tongue: 8 x 15, back rebate: 5, edge thickness: 15, "
            "bevel run: 60}",
            "a raised panel",
        ),
        (FLAT.replace("thickness: 9", "thickness: 18, tongue: 9 x 15"), "a panel with a tongue"),
        (
            FLAT.replace("upright", "level"),
            "a panel of solid timber whose grain is level",
        ),
    ],
)
def test_what_stays_straight(tmp_path: Path, panel: str, what: str) -> None:
    job = checked(tmp_path, (BOARD, panel))
    said = [p.message for p in job.problems if p.level == "stop"]
    assert said[0] == f"An arch over {what} cannot be built by this version yet."


def test_stub_tenons_stay_straight(tmp_path: Path) -> None:
    loose = "{kind: loose tenon, slot: 12 x 62 x 46, tenon: 12 x 60 x 90}"
    job = checked(tmp_path, (loose, "{kind: stub tenon, length: 10}"))
    said = [p.message for p in job.problems if p.code == "not_built_yet"]
    assert said == [
        f"A stub tenon on an arched {rail} cannot be built by this version yet."
        for rail in ("top rail", "lock rail")
    ]


def test_the_groove_goes_round_the_curve(tmp_path: Path) -> None:
    job = checked(tmp_path)
    assert job.assembly is not None
    lock = next(part for part in job.assembly.parts if part.name == "leaf A / lock rail")
    round_it, underside = (
        next(c for c in lock.cuts if isinstance(c, Shaped) and c.name == name)
        for name in ("panel groove", "arched underside")
    )
    # 9 wide in the middle of 44
    assert (float(round_it.surface), float(round_it.depth)) == (17.5, 26.5)
    assert area_of(round_it.outline) > 0
    # its upper edge has the straight groove of the panel above
    assert [c.face for c in lock.cuts if isinstance(c, Groove)] == ["high edge"]
    assert float(underside.depth) == 44


@pytest.mark.kernel
@pytest.mark.parametrize(
    ("panel", "arch"),
    [
        (BOARD, "{shape: segmental, across: leaf, rise: 90}"),
        (FLAT, "{shape: half round, across: leaf}"),
        (FLAT, "{shape: pointed, across: leaf, rise: 400}"),
    ],
)
def test_solids_and_files(tmp_path: Path, panel: str, arch: str) -> None:
    pairs = [(BOARD, panel), ("{shape: segmental, across: leaf, rise: 90}", arch)]
    if "segmental" not in arch:
        # one high arch, the lock rail straight
        pairs.append(("{lock rail: 140, underside: arch}", "lock rail: 140"))
    path = written(tmp_path, *pairs)
    job = check(path, user_house=False)
    assert [p.message for p in job.problems if p.level == "stop"] == []
    assert clashes(job) == []
    checks = whole_pack(path, tmp_path / "pack")
    assert checks["sheets"]["findings"] == []
