"""Cabinets of a run under a stair: fronts under an open top, fillers along the slope and at the walls.

The room of the starter: 2310 wide, 2010 high at the left and 700 at the right: the ceiling falls
1310 in 2310, a = 29.56 deg. Three cabinets share 2310 - 2 x 20: 756.67 each, on a plinth of 60,
20 under the ceiling, of boards of 18.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.design.starters import templates
from parametric.figures import Figure
from parametric.job import Job, check
from parametric.model import Part
from parametric.pack.numbers import figures
from parametric.problems import stops

STARTER = templates() / "under stair.yaml"
FALL = 1310 / 2310
ANGLE = math.atan(FALL)
WIDE = (2310 - 40) / 3


def ceiling(x: float) -> float:
    return 2010 - x * FALL


@pytest.fixture(scope="module")
def job() -> Job:
    return check(STARTER, user_house=False)


@pytest.fixture(scope="module")
def numbers(job: Job) -> dict[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


def part(job: Job, name: str) -> Part:
    assert job.assembly is not None
    return next(one for one in job.assembly.parts if one.name == name)


def changed(tmp_path: Path, *lines: tuple[str, str]) -> Job:
    text = STARTER.read_text(encoding="utf-8")
    for old, new in lines:
        assert old in text, old
        text = text.replace(old, new, 1)
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return check(path, user_house=False)


def test_fronts_stand_under_the_lowest_of_their_own_cabinet(job: Job) -> None:
    assert job.resolved is not None
    heights = [float(leaf.height) for leaf in job.resolved.leaves]
    assert heights == [900, 600, 300]
    # each begins 1.5 over the foot of its cabinet, for it lies over the bottom's edge but for that
    assert [float(leaf.hung.foot) for leaf in job.resolved.leaves] == [61.5, 61.5, 61.5]


def test_a_fixed_shelf_parts_the_open_space_from_the_door(job: Job) -> None:
    """The door laps 16.5 of its 18: it lies from 1.5 + 900 - 16.5 = 885 to 903 over the foot."""
    shelf = part(job, "cabinet tall / fixed shelf 1")
    assert shelf.placement.origin[2] == pytest.approx(885)
    assert job.resolved is not None
    assert job.resolved.casework is not None
    tall = job.resolved.casework.case("cabinet tall")
    open_space = tall.case.bays[0].spaces[-1]
    assert float(open_space.foot) == pytest.approx(903)
    # up to the under face where the right side stands, 18 in from x = 20 + 756.67
    head = ceiling(20 + WIDE - 18) - 20 - 60 - 18 / math.cos(ANGLE)
    assert float(open_space.head) == pytest.approx(head)


def test_a_front_higher_than_its_bay_leaves_is_told(tmp_path: Path) -> None:
    job = changed(tmp_path, ("    - door: 900", "    - door: 1600"))
    (found,) = stops(job.problems)
    assert found.code == "fronts_do_not_add_up"


def test_the_filler_lies_along_the_slope(job: Job, numbers: dict[str, Figure]) -> None:
    """20 plumb is 20 cos a = 17.40 square to the slope; 6 is spare, to be scribed off."""
    seen = 20 * math.cos(ANGLE)
    assert seen == pytest.approx(17.40, abs=0.005)
    assert numbers["cabinet tall / top filler / seen left"] == pytest.approx(seen)
    assert numbers["cabinet tall / top filler / width of its blank"] == pytest.approx(seen + 6)
    # its ends are plumb: 756.67 / cos a along, and seen x tan a on to the longer side's end
    long = WIDE / math.cos(ANGLE) + seen * math.tan(ANGLE)
    filler = part(job, "cabinet tall / top filler")
    assert float(filler.blank.length) == pytest.approx(long)


def test_fillers_at_the_walls_end_in_the_ceiling(job: Job) -> None:
    """Each as long as the ceiling is high over it; what is over the ceiling comes off aslant."""
    left, right = part(job, "run / left filler"), part(job, "run / right filler")
    assert float(left.blank.length) == pytest.approx(ceiling(0) - 60)
    assert float(right.blank.length) == pytest.approx(ceiling(2290) - 60)
    for one, low, high in ((left, ceiling(20), ceiling(0)), (right, ceiling(2310), ceiling(2290))):
        (top,) = (cut for cut in one.cuts if cut.name == "scribed to the ceiling")
        ups = sorted({round(x, 6) for x, _, _ in getattr(top, "outline", ())})
        assert ups == pytest.approx([low - 60, high - 60])


@pytest.mark.kernel
def test_nothing_clashes_shut_or_open(job: Job) -> None:
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    assert job.assembly is not None
    solids = build_solids(job.assembly.parts, None)
    assert clashes_in_all_states(job.assembly, solids) == ()


def test_a_filler_between_cabinets_ends_in_the_line_of_their_tops(tmp_path: Path) -> None:
    job = changed(
        tmp_path,
        (
            "    - cabinet tall: equal\n",
            "    - cabinet tall: equal\n    - filler: 40\n",
        ),
    )
    assert not stops(job.problems)
    filler = part(job, "run / filler 1")
    wide = (2310 - 40 - 40) / 3
    line = [ceiling(x) - 20 - 60 for x in (20 + wide + 40, 20 + wide)]
    (end,) = filler.cuts
    assert float(filler.blank.length) == pytest.approx(line[1])
    ups = sorted({round(x, 6) for x, _, _ in getattr(end, "outline", ())})
    assert ups == pytest.approx(line)


@pytest.mark.parametrize(
    ("lines", "said"),
    [
        (
            [("    - open: rest\n      shelves: 1\n    - door: 900", "    - door: rest")],
            "a front that reaches up to a slope cannot be built by this version yet",
        ),
        (
            [("  held: planted ", "  held: groove  ")],
            "its back is let into a groove that the slope would cut open",
        ),
        (
            [("  depth: 500\n", "  depth: 500\n  height: 900\n  stretchers: 80\n")],
            "has a top that slopes, and `height` and `stretchers` with it: that goes with a level "
            "top",
        ),
        (
            [("  plinth: 60\n", "  plinth: 60\n  counter: 30\n")],
            "has a top that slopes, and `counter` with it: that goes with a level top",
        ),
        (
            [("  top filler: at least 20 ", "  cornice: 40             ")],
            "has a top that slopes, and its run a cornice, which is level",
        ),
        (
            [("  kind: frameless\n", "  kind: face frame\n")],
            "a face frame under a slope cannot be built by this version yet",
        ),
    ],
)
def test_what_cannot_be_under_a_slope_is_told(
    tmp_path: Path, lines: list[tuple[str, str]], said: str
) -> None:
    job = changed(tmp_path, *lines)
    found = stops(job.problems)
    assert found
    assert said in found[0].message
    assert found[0].where is not None
    assert found[0].fix
