"""Bar handles and knobs: where they stand on doors and drawers, and that their holes meet."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.figures import Figure
from parametric.job import Job, check
from parametric.model import Drilled, Part, face_point
from parametric.pack.numbers import figures

DESIGN = """stilewright: 1
job: Weir Cottage cupboards
units: mm
survey:
  widths: {bottom: 1500}
  left side: plumb
  heights: {left: 2400, right: 2400}
run:
  plinth: 100
  left to right: [filler: at least 20, cabinet base: 600, cabinet drawers: 600, filler: at least 20]
cabinet base: {height: 720, depth: 560, top to bottom: [door pair: rest]}
cabinet drawers:
  height: 720
  depth: 560
  drawer leaf: front
  top to bottom: [drawer: 130, drawer: rest]
cabinet wall: {above floor: 1450, height: 700, width: 600, depth: 320, top to bottom: [door pair: rest]}
leaf:
  timber: tulipwood
  thickness: 22
  stiles: 70
  trim: 10
  site trim: 0
  top to bottom: [top rail: 70, panel: rest, bottom rail: 70]
leaf front:
  timber: tulipwood
  thickness: 22
  stiles: 70
  trim: 0
  site trim: 0
  top to bottom: [top rail: 20, panel: rest, bottom rail: 20]
joint: {kind: stub tenon, length: 10}
panel: {kind: board, thickness: 9, groove: 9 x 10, clearance: 1}
hinge: {kind: cup, carries: 6 kg}
drawer: {sides: 12}
pull: {kind: bar, holes: 128, from edge: 35, from end: 60, reach: 1050}
"""


def job_of(tmp_path: Path, text: str = DESIGN) -> Job:
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return check(path, user_house=False)


@pytest.fixture(scope="module")
def job(tmp_path_factory: pytest.TempPathFactory) -> Job:
    made = job_of(tmp_path_factory.mktemp("handles"))
    assert made.assembly is not None, [p.message for p in made.problems]
    return made


@pytest.fixture(scope="module")
def numbers(job: Job) -> dict[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


def test_a_base_cupboards_is_near_its_top(numbers: dict[str, Figure]) -> None:
    # 720 less two reveals of 1.5 is 717 high; 60 from its top to the first hole, and half of 128
    assert numbers["leaf A / handle / middle above the foot"] == pytest.approx(717 - 60 - 64)


def test_a_wall_cupboards_is_near_its_foot(numbers: dict[str, Figure]) -> None:
    assert numbers["leaf E / handle / middle above the foot"] == pytest.approx(60 + 64)


def test_a_drawers_is_in_the_middle_of_its_front(numbers: dict[str, Figure]) -> None:
    # 600 less two reveals of 1.5
    assert numbers["leaf D / handle / middle from the left edge"] == pytest.approx(597 / 2)
    # 717 less 130 and a gap of 3
    assert numbers["leaf D / handle / middle above the foot"] == pytest.approx((717 - 133) / 2)


def _drilled(job: Job, leaf: str) -> list[tuple[Part, Drilled]]:
    assert job.assembly is not None
    (group,) = [g for g in job.assembly.groups if g.name == leaf]
    return [
        (part, cut)
        for part in group.parts
        for cut in part.cuts
        if isinstance(cut, Drilled) and cut.name == "handle"
    ]


@pytest.mark.parametrize("leaf", ["leaf A", "leaf B", "leaf D", "leaf E", "leaf F"])
def test_the_holes_are_where_the_handle_is(job: Job, leaf: str) -> None:
    assert job.resolved is not None
    (own,) = [one for one in job.resolved.leaves if one.name == leaf]
    assert own.handle is not None
    ((part, cut),) = _drilled(job, leaf)
    # through one piece, right through it, where the handle's own holes are
    places = sorted(
        (round(x, 6), round(z, 6))
        for x, _, z in (
            part.placement.point(face_point(cut.face, part.blank, u, v, 0.0)) for u, v in cut.places
        )
    )
    assert places == sorted((round(float(x), 6), round(float(up), 6)) for x, up in own.handle.holes)
    assert float(cut.depth) == pytest.approx(float(part.blank.thickness))


def test_left_and_right_of_a_pair_open_in_the_middle(job: Job) -> None:
    assert job.resolved is not None
    left, right = (leaf.handle for leaf in job.resolved.leaves[:2])
    assert left is not None
    assert right is not None
    assert (left.side, right.side) == ("right", "left")


def test_a_low_drawer_takes_it_in_the_panel(job: Job) -> None:
    # 130 high with rails of 20: its panel is 90 high in the middle
    ((part, _),) = _drilled(job, "leaf C")
    assert part.name == "leaf C / panel"


def test_holes_that_find_no_wood_are_a_stop(tmp_path: Path) -> None:
    found = job_of(tmp_path, DESIGN.replace("from edge: 35", "from edge: 58")).problems
    told = [p for p in found if p.code == "handle_does_not_fit"]
    # 70 of stile less a groove of 10 and 58: 2 left, and 7.5 are asked for
    assert told[0].level == "stop"
    assert "needs 7.5 between it and the inner edge" in told[0].message
    assert "there is 2." in told[0].message


def test_a_knob_has_one_hole(tmp_path: Path) -> None:
    job = job_of(tmp_path, DESIGN.replace("{kind: bar, holes: 128,", "{kind: knob,"))
    assert {cut.count for _, cut in _drilled(job, "leaf A")} == {1}
    assert not [p for p in job.problems if p.level == "stop"]


def test_they_are_ordered(job: Job) -> None:
    from parametric.trade.hardware_list import hardware_list

    assert job.resolved is not None
    found = [one for one in hardware_list(job.resolved, job.loads) if one.what == "bar handle"]
    assert [(int(one.number), one.size) for one in found] == [
        (6, "holes 128 apart, 12 across, stands out 30")
    ]
