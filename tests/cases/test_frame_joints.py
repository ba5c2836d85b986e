"""Joints of face frames: places and depths by hand, each hole of an end on its own in an edge.

Where fixings stand, and how deep they go, is common practice, no source.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from parametric.cases.butt_joints import Dowels
from parametric.cases.case_tenons import Tenons
from parametric.cases.face_frame import FaceFrame, FrameJoint, Scribe
from parametric.cases.fixings import TooShort
from parametric.cases.frame_joints import FrameJoints, size_frame_joints
from parametric.cases.pocket_screws import PocketScrews
from parametric.job import Job, check
from parametric.model import Drilled, Part, ScrewPocket, Slot, Vector, face_point
from parametric.pack.verifying.expected import outwards
from parametric.trade.hardware_list import hardware_list
from tests.cases.boards import boring, mm

DESIGN = """
stilewright: 1
job: a dresser
units: mm
survey:
  widths: {bottom: 1200, middle: 1204, top: 1210}
  left side: {bottom: 0, middle: 2, top: 5}
  heights: {middle: 2400}
cabinet:
  kind: face frame
  width: 1160
  height: 900
  depth: 400
  kick: 90 x 60
  board: fibreboard
  left to right: [bay: equal, bay: equal, bay: equal]
face frame: {timber: tulipwood, thickness: 20, wall stiles: 45, centre stiles: 40, rails: 40,
             scribe: 3, joined by: HOW}
"""
WAYS: tuple[FrameJoint, ...] = ("dowel", "pocket screw", "loose tenon")


def frame(rail: float = 40.0, centre: float = 40.0) -> FaceFrame:
    def scribe(side: str) -> Scribe:
        return Scribe(side=side, edge=mm(0.0), away=(), blank=mm(50.0), shows=mm(45.0))  # type: ignore[arg-type]

    return FaceFrame(
        thickness=mm(20.0),
        left=scribe("left"),
        right=scribe("right"),
        width=mm(1200.0),
        opening_left=mm(50.0),
        opening=mm(1100.0),
        between=mm(1200.0),
        centre_stile=mm(centre),
        rail=mm(rail),
    )


def joints(how: FrameJoint, rail: float = 40.0, **keys: object) -> FrameJoints:
    return size_frame_joints(boring(**keys), frame(rail), how, name="cabinet", centre_stiles=2)


def test_two_dowels_a_quarter_in() -> None:
    """40 / 4 = 10 and 30; of 30 long and 2 for glue 16 in either member, its middle at 10."""
    held = joints("dowel").wall
    assert isinstance(held, Dowels)
    assert held.places.places == (10, 30)
    assert (held.in_face, held.in_end, held.middle) == (16, 16, 10)


def test_a_broad_rail_is_held_as_boards_are() -> None:
    """80: two in its middle, 32 apart: 24 and 56."""
    held = joints("dowel", rail=80.0).wall
    assert isinstance(held, Dowels)
    assert held.places.places == (24, 56)


def test_pockets_and_their_screws() -> None:
    """10 / sin 15 - 18.727 = 19.910 to go through, 32 - 19.910 = 12.090 is 0.607 of that: 32 long,
    12.090 cos 15 = 11.678 deep.
    """
    held = joints("pocket screw").wall
    assert isinstance(held, PocketScrews)
    assert held.places.places == (10, 30)
    assert held.long == 32
    assert held.into == pytest.approx(11.678, abs=1e-3)


def test_a_tenon_as_wide_as_a_rail_lets_it_be() -> None:
    """40 - 2 x 6 - 2 = 26, its slot 28, with 6 of wood at either end; 16 in either member."""
    held = joints("loose tenon").wall
    assert isinstance(held, Tenons)
    assert (held.wide, held.slot_long, held.places.places) == (26, 28, (20,))
    assert (held.in_face, held.in_end) == (16, 16)


@pytest.mark.parametrize(
    ("how", "rail", "enough"),
    [
        # 4 x (4 + 2)
        ("dowel", 23.9, 24.0),
        # 4 x (4.75 + 2)
        ("pocket screw", 26.9, 27.0),
        # 4 x 6 + 2
        ("loose tenon", 25.9, 26.0),
    ],
)
def test_a_rail_too_narrow_is_told(how: FrameJoint, rail: float, enough: float) -> None:
    narrow = joints(how, rail=rail).wall
    assert isinstance(narrow, TooShort)
    assert narrow.needs == pytest.approx(enough)
    assert not isinstance(joints(how, rail=enough).wall, TooShort)


@cache
def job_of(how: FrameJoint, folder: Path) -> Job:
    path = folder / f"{how}.yaml"
    path.write_text(DESIGN.replace("HOW", how), encoding="utf-8")
    job = check(path, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    assert [p.message for p in job.problems if p.level == "stop"] == []
    return job


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("frames")


@pytest.fixture(params=WAYS)
def how(request: pytest.FixtureRequest) -> FrameJoint:
    found: FrameJoint = request.param
    return found


def members(job: Job) -> tuple[Part, ...]:
    assert job.assembly is not None
    nouns = ("wall stile", "centre stile", "frame rail")
    return tuple(part for part in job.assembly.parts if part.noun in nouns)


def mouths(part: Part) -> Iterator[tuple[Vector, Vector, tuple[float, ...]]]:
    """The middle of each mouth, which way out that is, and the sizes there: across and deep."""
    for cut in part.cuts:
        spots: list[tuple[float, float]] = []
        sizes: tuple[float, ...] = ()
        if isinstance(cut, Drilled):
            spots, sizes = list(cut.places), (float(cut.diameter), float(cut.depth))
        elif isinstance(cut, Slot):
            spots = [((cut.u0 + cut.u1) / 2, cut.v)]
            sizes = (float(cut.width), float(cut.u1 - cut.u0), float(cut.depth))
        for u, v in spots:
            assert isinstance(cut, (Drilled, Slot))
            at = part.placement.point(face_point(cut.face, part.blank, u, v, 0.0))
            yield at, part.placement.direction(outwards(cut.face)), sizes


@pytest.mark.parametrize("how", ["dowel", "loose tenon"])
def test_each_of_an_end_meets_its_own_of_an_edge(how: FrameJoint, folder: Path) -> None:
    """4 joints of rails and 4 of centre stiles: mouth on mouth, ways out opposed, as wide, 32 deep."""
    found = [(part, *mouth) for part in members(job_of(how, folder)) for mouth in mouths(part)]
    assert len(found) == 2 * 8 * (2 if how == "dowel" else 1)
    for part, at, out, sizes in found:
        mates = [
            (other, its)
            for other, there, way, its in found
            if other is not part
            and math.dist(there, at) < 1e-4
            and sum(a * b for a, b in zip(way, out, strict=True)) < -0.999
        ]
        assert len(mates) == 1, part.name
        assert mates[0][1][:-1] == pytest.approx(sizes[:-1])
        assert mates[0][1][-1] + sizes[-1] == pytest.approx(32)


def test_pockets_open_behind(folder: Path) -> None:
    """In the face of a member that looks away from the room; two at each end of rails and centre stiles."""
    own = members(job_of("pocket screw", folder))
    pockets = [(p, c) for p in own for c in p.cuts if isinstance(c, ScrewPocket)]
    assert len(pockets) == 8
    for part, cut in pockets:
        assert part.placement.direction(outwards(cut.face))[1] > 0.999
        assert cut.places == (10, 30)


def test_what_is_bought_is_counted(how: FrameJoint, folder: Path) -> None:
    """Two rails at both ends, two centre stiles at both ends: 8 joints, two fixings or one tenon."""
    job = job_of(how, folder)
    assert job.resolved is not None
    found = {item.what: item for item in hardware_list(job.resolved, job.loads)}
    # the case itself is dowelled: its own are of the same size
    assert job.resolved.casework is not None
    (bored,) = job.resolved.casework.bored
    of_case = sum(int(j.held.places.count) for j in bored.joints if isinstance(j.held, Dowels))
    if how == "dowel":
        assert found["case dowel"].number == of_case + 16
    elif how == "pocket screw":
        assert (found["pocket screw"].number, found["pocket screw"].size) == (16, "4 × 32")
    else:
        assert (found["loose tenon"].number, found["loose tenon"].size) == (8, "6 × 26 × 30")


@pytest.mark.kernel
def test_no_member_stands_in_another(how: FrameJoint, folder: Path) -> None:
    """Solids as their cuts leave them, and no wood in wood."""
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    job = job_of(how, folder)
    assert job.assembly is not None
    solids = build_solids(job.assembly.parts)
    assert list(clashes_in_all_states(job.assembly, solids)) == []
