"""Slides, their screws and what brings a case's sides out behind a face frame, by hand.

Where slides are screwed, and what their blocks and packing are like, is common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from parametric.cases.boring import Bite
from parametric.cases.boring_faults import slide_faults
from parametric.cases.drawer import DrawerBox
from parametric.cases.pin_rows import PinRows
from parametric.cases.slide_screws import SlideScrews, in_two, size_slide_screws
from parametric.figures import plain
from parametric.job import Job, check
from parametric.model import Drilled, Part, Vector, face_point
from parametric.resolve.casework import Casework
from tests.cases.boards import boring, mm

REST = """
stilewright: 1
job: drawers
units: mm
survey:
  widths: {middle: 1204}
  heights: {middle: 2400}
leaf: &leaf
  timber: tulipwood
  thickness: 20
  stiles: 60
  trim: 0
  site trim: 0
  top to bottom: [top rail: 40, panel: rest, bottom rail: 40]
joint: {kind: stub tenon, length: 10}
panel: {kind: board, thickness: 6, groove: 6 x 10, clearance: 1}
hinge: {kind: cup, cup: 35, cup from edge: 5, from ends: 100, depth: 12.5, pilot: 2.5 x 8}
drawer: {sides: 15}
board fibreboard: {sheet: 2800 x 2070}
"""
BAYS = """
  width: 1160
  height: 900
  depth: 400
  board: fibreboard
  left to right:
    - {bay: equal, top to bottom: [{door: rest, hinge side: left}], shelves: 1}
    - {bay: equal, top to bottom: [drawer: equal, drawer: equal, drawer: equal]}
    - {bay: equal, top to bottom: [{door: rest, hinge side: left}], shelves: 1}
"""
FRAMED = f"""{REST}
cabinet:
  kind: face frame{BAYS}
face frame: {{timber: tulipwood, thickness: 20, wall stiles: 45, centre stiles: 40, rails: 40,
              scribe: 3}}
"""
FRAMELESS = f"{REST}\ncabinet:\n  kind: frameless\n  fronts: inset{BAYS}"
TWO_STACKS = FRAMELESS.replace(
    "top to bottom: [{door: rest, hinge side: left}], shelves: 1",
    "top to bottom: [drawer: equal, drawer: equal, drawer: equal]",
)
OVER = FRAMED.replace("kind: face frame", "kind: face frame\n  fronts: overlay", 1)
CASES = {"framed": FRAMED, "over a frame": OVER, "frameless": FRAMELESS, "stacks": TWO_STACKS}


@cache
def job_of(name: str, folder: Path) -> Job:
    path = folder / f"{name}.yaml"
    path.write_text(CASES[name].replace(" &leaf", ""), encoding="utf-8")
    job = check(path, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    assert [p.message for p in job.problems if p.level == "stop"] == []
    return job


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("slides")


def casework(job: Job) -> Casework:
    assert job.resolved is not None
    assert job.resolved.casework is not None
    return job.resolved.casework


def parts_of(job: Job, *nouns: str) -> tuple[Part, ...]:
    assert job.assembly is not None
    return tuple(part for part in job.assembly.parts if part.noun in nouns)


def bored(part: Part, name: str) -> Iterator[tuple[Vector, Vector, float]]:
    """The mouth of each hole of a name where it stands in the case, its floor, and how wide it is."""
    for cut in part.cuts:
        if isinstance(cut, Drilled) and cut.name == name:
            for u, v in cut.places:
                ends = [
                    part.placement.point(face_point(cut.face, part.blank, u, v, float(depth)))
                    for depth in (0.0, cut.depth)
                ]
                yield ends[0], ends[1], float(cut.diameter)


def box_of(job: Job, number: int = 0) -> DrawerBox:
    return casework(job).drawers[number].box


def test_three_screws_on_the_pitch(folder: Path) -> None:
    """A box 350 long has two, 37 and (350 - 20 - 37) / 32 = 9 steps on; of one longer the middle too."""
    box = box_of(job_of("frameless", folder))
    assert box.length == 350
    screws = size_slide_screws(boring(), box, front=mm(20.0), low=mm(300.0), taken=())
    assert screws.places == (57, 57 + 9 * 32)
    assert screws.up == 300 + box.height / 2


def test_screws_go_up_or_down_to_be_clear(folder: Path) -> None:
    """A hole of 8 on the front screw's line 6 over it: 2.5 + 4 + 5 = 11.5 are wanted, 6 down is 12."""
    box = box_of(job_of("frameless", folder))
    free = size_slide_screws(boring(), box, front=mm(0.0), low=mm(300.0), taken=())
    up = float(free.up)
    hole = Bite(name="a dowel", low=up + 2, high=up + 10, near=33.0, far=41.0)
    moved = size_slide_screws(boring(), box, front=mm(0.0), low=mm(300.0), taken=(hole,))
    # up + 2 - 2.5 - 5 = up - 5.5, in whole millimetres 6
    assert moved.up == pytest.approx(up - 6)
    # what stands across everywhere is told
    wall = Bite(name="a groove", low=0.0, high=900.0, near=30.0, far=36.0)
    stuck = size_slide_screws(boring(), box, front=mm(0.0), low=mm(300.0), taken=(wall,))
    assert stuck.up == free.up
    (fault,) = slide_faults(stuck, boring(), plain, (wall,), case="cabinet")
    assert fault.code == "slide_meets"


@pytest.mark.parametrize(
    ("pack", "depths"),
    [
        (15.0, (12.0, None)),
        (14.0, (12.0, None)),
        (12.5, (12.5, None)),
        (11.5, (11.5, None)),
        (11.0, (11.0, None)),
        (8.0, (8.0, 4.0)),
    ],
)
def test_screws_go_on_through_thin_packing(pack: float, depths: tuple[float, float | None]) -> None:
    """12 deep: all of it in 15, and in 14 with 2 left; of 12.5 half a millimetre would be left, so it
    is bored through; half a millimetre or one more is not worth a hole; of 8, 4 go on.
    """
    screws = SlideScrews(
        name="slides",
        up=mm(100.0),
        first=mm(37.0),
        count=mm(2.0),
        pitch=mm(128.0),
        across=mm(5.0),
        deep=mm(12.0),
    )
    assert in_two(screws, mm(pack), mm(16.0), mm(2.0)) == depths


@pytest.mark.parametrize("name", ["frameless", "stacks"])
def test_each_slide_is_screwed_level_to_both_sides(name: str, folder: Path) -> None:
    """Inset fronts of 20: 37 behind their backs and 9 steps on, in whatever stands on either side; as
    deep as (18 - 2) / 2 = 8 in partitions, so that slides of two bays may stand back to back.
    """
    job = job_of(name, folder)
    for drawer in casework(job).drawers:
        left, right = (
            drawer.x - float(drawer.box.room_beside),
            drawer.x + float(drawer.box.width + drawer.box.room_beside),
        )
        middle = drawer.z + float(drawer.box.height) / 2
        for x in (left, right):
            own = [
                (mouth, floor)
                for part in parts_of(job, "left side", "right side", "partition")
                for mouth, floor, _ in bored(part, "slide holes")
                if abs(mouth[0] - x) < 1e-4 and abs(mouth[2] - middle) < 17
            ]
            assert sorted(round(mouth[1], 4) for mouth, _ in own) == [57, 57 + 288]
            assert len({round(mouth[2], 4) for mouth, _ in own}) == 1
            deep = 12.0 if x < 19 or x > 1141 else 8.0
            assert {round(math.dist(a, b), 4) for a, b in own} == {deep}


def test_packing_brings_slides_out_to_the_frame(folder: Path) -> None:
    """Strips from the partitions to the frame's edge, 350 long, 50 wide, holes in their middle; what
    the slide is screwed to is the edge of the opening, at either side.
    """
    job = job_of("framed", folder)
    (standing,) = casework(job).cases
    assert job.assembly is not None
    stiles = parts_of(job, "centre stile")
    edges = sorted(
        x - float(standing.left)
        for part in stiles
        for x in (part.placement.origin[0], part.placement.origin[0] + float(part.blank.width))
    )
    strips = parts_of(job, "slide packing")
    assert len(strips) == 6
    for strip in strips:
        low = strip.placement.origin[0]
        inner = low + float(strip.blank.thickness) if low < 580 else low
        assert min(abs(inner - edge) for edge in edges) < 1e-6
        assert (strip.blank.length, strip.blank.width) == (350, 50)
        holes = list(bored(strip, "slide holes"))
        assert [round(mouth[1], 4) for mouth, _, _ in holes] == [37, 37 + 288]
        for mouth, floor, _ in holes:
            assert mouth[0] == pytest.approx(inner)
            assert mouth[2] == pytest.approx(strip.placement.origin[2] + 25)
            # 20 of stile before 18 of partition: (40 - 18) / 2 = 11 of packing, no deeper
            assert math.dist(mouth, floor) == pytest.approx(11)


def test_hinges_hold_in_blocks_behind_the_frame(folder: Path) -> None:
    """A block at each cup, from the side to the stile's edge, its two screws 16 below and above the
    cup's middle and 37 behind the leaf's back, in the middle of 100 x 74; a screw of 12 goes on into
    the side by what the block leaves of it.
    """
    job = job_of("framed", folder)
    blocks = parts_of(job, "hinge block")
    (case,) = casework(job).bored
    heights = sorted(float(up) for own in case.plates for up in own.plates.heights)
    assert len(blocks) == len(heights) == 4
    assert sorted(block.placement.origin[2] + 50 for block in blocks) == pytest.approx(heights)
    boards = parts_of(job, "left side", "right side", "partition")
    for block in blocks:
        thick = float(block.blank.thickness)
        assert (block.blank.length, block.blank.width) == (100, 74)
        for mouth, floor, wide in bored(block, "plate holes"):
            assert mouth[1] == pytest.approx(37)
            assert abs(mouth[2] - block.placement.origin[2] - 50) == pytest.approx(16)
            assert math.dist(mouth, floor) == pytest.approx(min(12.0, thick))
            on = [
                (start, end, across)
                for board in boards
                for start, end, across in bored(board, "plate holes")
                if math.dist(start, floor) < 1e-4
            ]
            if 12 - thick > 1:
                ((start, end, across),) = on
                assert across == wide
                assert math.dist(start, end) == pytest.approx(12 - thick)
            else:
                assert on == []


def test_plates_stand_as_far_behind_a_front_over_the_frame(folder: Path) -> None:
    """37 behind the front's back, which is the frame's face: 37 - 20 behind the edges of the case."""
    job = job_of("over a frame", folder)
    (case,) = casework(job).bored
    assert {float(own.plates.line) for own in case.plates} == {17.0}
    assert {(b.blank.length, b.blank.width) for b in parts_of(job, "hinge block")} == {(100, 54)}


def test_a_box_goes_out_through_the_frame(folder: Path) -> None:
    """Fronts over the frame: the opening is as wide as the slides stand apart, and the uppermost box
    ends under the rail, whose lower edge is 900 - 40 up.
    """
    job = job_of("over a frame", folder)
    strips = parts_of(job, "slide packing")
    assert len(strips) == 6
    for drawer in casework(job).drawers:
        top = drawer.z + float(drawer.box.height)
        assert top <= 860 - float(drawer.box.least_above) + 1e-6
        assert drawer.box.clear_width == pytest.approx(float(_between_stiles(job)))


def _between_stiles(job: Job) -> float:
    """The middle opening of the frame."""
    left, right = sorted(parts_of(job, "centre stile"), key=lambda part: part.placement.origin[0])
    return right.placement.origin[0] - left.placement.origin[0] - float(left.blank.width)


def test_shelves_clear_the_blocks(folder: Path) -> None:
    """No shelf lies where a block is, wherever its pins let it lie."""
    job = job_of("framed", folder)
    (case,) = casework(job).bored
    spans = [(float(up) - 50, float(up) + 50) for own in case.plates for up in own.plates.heights]
    assert case.pins
    for pins in case.pins:
        assert isinstance(pins.rows, PinRows)
        for height in pins.rows.heights:
            low, high = height + 2.5, height + 2.5 + 18
            assert all(high <= a + 1e-6 or low >= b - 1e-6 for a, b in spans)


@pytest.mark.kernel
@pytest.mark.parametrize("name", CASES)
def test_nothing_stands_in_anything(name: str, folder: Path) -> None:
    """Solids as their cuts leave them, and no wood in wood, shut and drawn out."""
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    job = job_of(name, folder)
    assert job.assembly is not None
    solids = build_solids(job.assembly.parts)
    assert list(clashes_in_all_states(job.assembly, solids)) == []
