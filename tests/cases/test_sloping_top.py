"""A top that follows the ceiling: its angle, the lengths under it, and that all of it fits.

The room: 2310 wide, 1985 high at the left and 640 at the right, so that the ceiling falls
1345 in 2310: tan a = 1345 / 2310, a = 30.21 deg.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.figures import Figure
from parametric.job import Job, check
from parametric.model import Drilled, Part, removed_volume
from parametric.pack.numbers import figures

DESIGN = Path(__file__).parents[1] / "designs/old/version-1-rake.yaml"
FALL = 1345 / 2310
ANGLE = math.atan(FALL)


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


@pytest.fixture(scope="module")
def numbers(job: Job) -> dict[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


def test_the_angle_is_the_ceilings_own(numbers: dict[str, Figure]) -> None:
    assert numbers["cabinet low / slope of its top"] == pytest.approx(-math.degrees(ANGLE))
    assert numbers["cabinet low / slope of its top"] == pytest.approx(-30.21, abs=0.005)


def test_the_top_is_as_long_as_its_slope_and_its_plumb_ends(numbers: dict[str, Figure]) -> None:
    # 1100 / cos a = 1272.87 along the slope, and 18 tan a = 10.48 on to the longer face's end
    expected = 1100 / math.cos(ANGLE) + 18 * math.tan(ANGLE)
    assert numbers["cabinet low / top / length"] == pytest.approx(expected)
    assert expected == pytest.approx(1283.36, abs=0.005)


def test_the_sides_stop_under_the_top(numbers: dict[str, Figure]) -> None:
    # at the left the ceiling over x = 20 is 1985 - 20 FALL; less the gap 10, the plinth 50 and the
    # top's 18 / cos a plumb; the outer face is the longer one, for it falls to the right
    left = 1985 - 20 * FALL - 10 - 50 - 18 / math.cos(ANGLE)
    assert numbers["cabinet low / left side / length"] == pytest.approx(left)
    # the right side's longer face is its inner one, 18 in from x = 1120
    right = 1985 - (1120 - 18) * FALL - 10 - 50 - 18 / math.cos(ANGLE)
    assert numbers["cabinet low / right side / length"] == pytest.approx(right)


def test_shelves_are_shared_out_under_the_lower_end_of_their_bay(job: Job) -> None:
    assert job.assembly is not None
    shelves = [p for p in job.assembly.parts if p.name.startswith("cabinet low / bay 2 / shelf")]
    # bay 2 ends 18 before x = 1120; its bottom's upper face is at 18
    head = 1985 - (1120 - 18) * FALL - 10 - 50 - 18 / math.cos(ANGLE)
    apart = (head - 18 - 2 * 18) / 3
    # pins from 64 over the bottom to 64 under the top, every 32, what is over shared; a shelf lies
    # 2.5 over the middle of the pins nearest to its place
    room = head - 18 - 2 * 64
    first = 18 + 64 + (room % 32) / 2
    wanted = (18 + apart, 18 + 2 * apart + 18)
    lying = [first + 32 * round((up - 2.5 - first) / 32) + 2.5 for up in wanted]
    heights = sorted(part.placement.origin[2] for part in shelves)
    assert heights == pytest.approx(lying)


def _part(job: Job, name: str) -> Part:
    assert job.assembly is not None
    return next(part for part in job.assembly.parts if part.name == name)


def test_the_ends_are_bevelled_to_the_slope(job: Job) -> None:
    side = _part(job, "cabinet low / left side")
    (bevel,) = [cut for cut in side.cuts if cut.name == "end to the slope"]
    bored = sum(removed_volume(cut, side.blank) for cut in side.cuts if isinstance(cut, Drilled))
    # a wedge 18 thick and 18 tan a long, right through the depth of 300
    assert side.blank.volume - side.volume - bored == pytest.approx(
        18 * 18 * FALL / 2 * 300
        + sum(18 * 300 * 6 for cut in side.cuts if cut.name.startswith("dado") and cut is not bevel)
    )


def test_it_is_made_and_nothing_clashes(job: Job) -> None:
    from parametric.solids.clash import clashes_in_all_states, touching
    from parametric.solids.solid_set import build_solids

    assert job.assembly is not None
    # each valid, closed, and of the volume that its cuts leave, or this raises
    solids = build_solids(job.assembly.parts, None)
    assert clashes_in_all_states(job.assembly, solids) == ()
    shut = job.assembly.states[0]
    touched = touching(job.assembly, shut, solids, "cabinet low / top")
    for name in ("left side", "right side", "partition 1", "back"):
        assert f"cabinet low / {name}" in touched


def test_a_slope_is_no_fall_of_the_floor(tmp_path: Path) -> None:
    text = DESIGN.read_text(encoding="utf-8").replace("  floor: level\n", "")
    design = tmp_path / "design.yaml"
    design.write_text(text, encoding="utf-8")
    resolved = check(design, user_house=False).resolved
    assert resolved is not None
    assert resolved.casework is not None
    opening = resolved.casework.cases[0].opening
    assert {float(low) for low in opening.floor.values()} == {0.0}
    assert {place: float(up) for place, up in opening.ceiling.items()} == {
        "left": 1985,
        "right": 640,
    }
