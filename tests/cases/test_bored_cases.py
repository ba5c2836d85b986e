"""Whole cases bored: each hole of an end on its own in a face, shelves on their pins, rows level.

Every kind of joint and every way for fronts to lie, in cases of one bay and of three.
"""

from __future__ import annotations

import dataclasses
import math
from collections import Counter
from collections.abc import Iterator
from functools import cache
from pathlib import Path

import pytest

from parametric.cases.pin_rows import PinRows
from parametric.cases.pocket_screws import PocketScrews
from parametric.job import Job, check
from parametric.model import Assembly, Drilled, Part, Pocket, ScrewPocket, Slot, Vector, face_point
from parametric.pack.verifying.expected import outwards
from parametric.resolve.bored_case import BoredCase
from parametric.resolve.casework import Casework, StandingCase

HEAD = """
stilewright: 1
job: a wall of cabinets
units: mm
survey:
  widths: {middle: 2000}
  heights: {middle: 2500}
"""
LEAF = """
leaf:
  timber: tulipwood
  thickness: 22
  stiles: 70
  trim: 0
  site trim: 0
  top to bottom: [top rail: 70, panel: rest, bottom rail: 70]
joint: {kind: stub tenon, length: 10}
panel: {kind: board, thickness: 9, groove: 9 x 10, clearance: 1}
hinge: {kind: cup, cup: 35, cup from edge: 5, from ends: 100, depth: 12.5, pilot: 2.5 x 8}
board fibreboard: {sheet: 2800 x 2070}
"""
OPEN = """
cabinet:
  kind: frameless
  from left: 100
  width: 1000
  height: 1900
  depth: 350
  shelves: 4
  top to bottom: [open: rest]
  board: fibreboard
"""
THREE = """
cabinet:
  kind: frameless
  from left: 50
  width: 1800
  height: 2100
  depth: 420
  board: fibreboard
  left to right:
    - bay: equal
      inside: [shelf space: 700, shelf space: rest]
      shelves: 3
      top to bottom: [door pair: rest]
    - bay: equal
      inside: [shelf space: 700, shelf space: rest]
      shelves: 3
      top to bottom: [{door: rest, hinge side: left}]
    - bay: equal
      shelves: 2
"""
# Of screwed shelves on both sides of a partition one stands lower, or neither could be driven.
STEPPED = THREE.replace("space: 700, shelf space: rest", "space: 800, shelf space: rest", 1)
CASES = {
    "open": HEAD + OPEN,
    "screwed": HEAD + OPEN + "  corners: screw\n",
    "tenons": HEAD + OPEN + "  corners: loose tenon\n",
    "pockets": HEAD + OPEN + "  corners: pocket screw\n",
    "let in": HEAD + OPEN + "  dado: 6\n",
    "about the middle": HEAD + OPEN + "boring: {rows: about the middle}\n",
    "stretchers": HEAD + OPEN + "  stretchers: 100\n",
    "three bays": HEAD + LEAF + THREE + "  fronts: overlay\n",
    "three, inset": HEAD + LEAF + THREE + "  fronts: inset\n",
    "three, half overlay": HEAD + LEAF + THREE + "  fronts: half overlay\n",
    "three, screwed": HEAD + LEAF + STEPPED + "  fronts: overlay\n  corners: screw\n",
    "three, pockets": HEAD + LEAF + THREE + "  fronts: overlay\n  corners: pocket screw\n",
    "three, pockets, stretchers": HEAD
    + LEAF
    + THREE
    + "  fronts: overlay\n  corners: pocket screw\n  stretchers: 90\n",
    "three, tenons": HEAD + LEAF + THREE + "  fronts: overlay\n  corners: loose tenon\n",
    "three, tenons, stretchers": HEAD
    + LEAF
    + THREE
    + "  fronts: overlay\n  corners: loose tenon\n  stretchers: 90\n",
    "three, let in": HEAD + LEAF + THREE + "  fronts: overlay\n  dado: 6\n",
    "three, stretchers": HEAD + LEAF + THREE + "  fronts: overlay\n  stretchers: 90\n",
}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    return tmp_path_factory.mktemp("cases")


@cache
def _checked(path: Path) -> Job:
    return check(path, user_house=False)


@pytest.fixture(params=CASES)
def job(request: pytest.FixtureRequest, folder: Path) -> Job:
    path = folder / f"{request.param}.yaml"
    if not path.exists():
        path.write_text(CASES[request.param], encoding="utf-8")
    found = _checked(path)
    assert found.resolved is not None, [p.message for p in found.problems]
    assert found.assembly is not None
    return found


def parts_of(job: Job) -> Assembly:
    assert job.assembly is not None
    return job.assembly


def casework(job: Job) -> Casework:
    assert job.resolved is not None
    assert job.resolved.casework is not None
    return job.resolved.casework


@dataclasses.dataclass(frozen=True)
class Hole:
    """A hole where it stands in its case: its mouth, which way out that is, its floor."""

    part: str
    name: str
    mouth: Vector
    out: Vector
    floor: Vector
    across: float


def holes(assembly: Assembly) -> Iterator[Hole]:
    for part in assembly.parts:
        for cut in part.cuts:
            if isinstance(cut, Drilled) and part.mark.startswith("C"):
                yield from _holes(part, cut)


def _holes(part: Part, cut: Drilled) -> Iterator[Hole]:
    for u, v in cut.places:
        ends = [
            part.placement.point(face_point(cut.face, part.blank, u, v, float(depth)))
            for depth in (cut.surface, cut.depth)
        ]
        mouth, floor = ((round(x, 6), round(y, 6), round(z, 6)) for x, y, z in ends)
        yield Hole(
            part=part.name,
            name=cut.name,
            mouth=mouth,
            out=part.placement.direction(outwards(cut.face)),
            floor=floor,
            across=float(cut.diameter),
        )


def apart(a: Vector, b: Vector) -> float:
    return math.dist(a, b)


def test_nothing_stops_a_case_that_is_bored(job: Job) -> None:
    assert [p.message for p in job.problems if p.level == "stop"] == []


def test_each_dowel_hole_has_its_other_half(job: Job) -> None:
    """Mouth on mouth, opposite ways out, 32 deep together: 30 of dowel and 2 for glue."""
    own = [hole for hole in holes(parts_of(job)) if hole.name == "dowel holes"]
    for hole in own:
        mates = [
            other
            for other in own
            if other.part != hole.part
            and apart(other.mouth, hole.mouth) < 1e-4
            and sum(a * b for a, b in zip(other.out, hole.out, strict=True)) < -0.999
        ]
        assert len(mates) == 1, hole
        deep = apart(hole.mouth, hole.floor) + apart(mates[0].mouth, mates[0].floor)
        assert deep == pytest.approx(32)
        assert mates[0].across == hole.across == 8


def test_each_screw_goes_through_into_its_thread(job: Job) -> None:
    """The shank's hole comes out where the thread's begins, and the head's floor begins the shank."""
    own = list(holes(parts_of(job)))
    threads = [hole for hole in own if hole.name == "screw threads"]
    shanks = [hole for hole in own if hole.name == "screw shanks"]
    heads = [hole for hole in own if hole.name == "screw heads"]
    assert len(threads) == len(shanks) == len(heads)
    for thread in threads:
        (shank,) = (hole for hole in shanks if apart(hole.floor, thread.mouth) < 1e-4)
        (head,) = (hole for hole in heads if apart(hole.floor, shank.mouth) < 1e-4)
        assert head.part == shank.part != thread.part


def test_each_pocket_leads_into_another_board(job: Job) -> None:
    """Its axis leaves the middle of the end, where that stands on a face, 15 degrees off square; from
    there a screw of 32 goes 15.41 deep, and no groove, dado or hole of that board is within 5 of it.
    """
    assembly = parts_of(job)
    turn = math.radians(15)
    pocketed = [(p, c) for p in assembly.parts for c in p.cuts if isinstance(c, ScrewPocket)]
    pockets = sum(cut.count for _, cut in pocketed)
    screws = [
        int(joint.held.places.count)
        for bored in casework(job).bored
        for joint in bored.joints
        if isinstance(joint.held, PocketScrews)
    ]
    assert pockets == sum(screws)
    for part, cut in pocketed:
        low = cut.end == "low end"
        down = 1.0 if cut.face == "low face" else -1.0
        ahead = -1.0 if low else 1.0
        for v in cut.places:
            out = face_point(cut.end, part.blank, v, float(part.blank.thickness) / 2, 0.0)
            on = face_point(
                cut.face,
                part.blank,
                float(cut.mouth) if low else float(part.blank.length - cut.mouth),
                v,
                0.0,
            )
            along = [b - a for a, b in zip(on, out, strict=True)]
            axis = (ahead * math.cos(turn), 0.0, down * math.sin(turn))
            assert along == pytest.approx([a * cut.along for a in axis])
            leaves = part.placement.point(out)
            way = part.placement.direction(axis)
            tip = tuple(a + b * 15.954 for a, b in zip(leaves, way, strict=True))
            (into,) = (
                other
                for other in assembly.parts
                if other is not part and other.mark.startswith("C") and _within(other, tip)  # type: ignore[arg-type]
            )
            face, depth = _face_and_depth(into, leaves, tip)  # type: ignore[arg-type]
            assert depth == pytest.approx(15.410, abs=5e-4)
            for hole in holes(assembly):
                if hole.part == into.name and hole.out == face:
                    assert apart(hole.mouth, leaves) >= 2 + hole.across / 2 + 5 - 1e-4


def _within(part: Part, point: Vector) -> bool:
    """Whether a point lies in a part's blank."""
    off = [a - b for a, b in zip(point, part.placement.origin, strict=True)]
    stands = part.placement
    local = [
        sum(a * b for a, b in zip(off, way, strict=True)) for way in (stands.x, stands.y, stands.z)
    ]
    sizes = (part.blank.length, part.blank.width, part.blank.thickness)
    return all(-1e-6 <= at <= float(size) + 1e-6 for at, size in zip(local, sizes, strict=True))


def _face_and_depth(part: Part, leaves: Vector, tip: Vector) -> tuple[Vector, float]:
    """Which way out of a board's faces a screw came in by, and how deep it goes from there."""
    z = part.placement.z
    deep = sum((b - a) * w for a, b, w in zip(leaves, tip, z, strict=True))
    out = part.placement.direction((0.0, 0.0, -1.0 if deep > 0 else 1.0))
    return out, abs(deep)


def test_each_tenon_fills_its_two_slots(job: Job) -> None:
    """A tenon stands in the middle of a slot in a face and of one in an end, as thick as both are
    wide and 2 shorter than they are long; from the one floor to the other its length and 2 for glue.
    """
    assembly = parts_of(job)
    tenons = [part for part in assembly.parts if part.noun == "loose tenon"]
    slots = list(_slots(assembly))
    assert len(slots) == 2 * len(tenons)
    for tenon in tenons:
        middle = tenon.placement.point((15.0, 15.0, 3.0))
        along = tenon.placement.x
        own = [slot for slot in slots if _on_axis(slot.middle, middle, along) < 16.0]
        assert len({slot.part for slot in own}) == len(own) == 2
        for slot in own:
            across = [b - a for a, b in zip(middle, slot.middle, strict=True)]
            assert math.hypot(*(c for c, a in zip(across, along, strict=True) if not a)) < 1e-4
            assert (slot.wide, slot.long) == pytest.approx((6.0, 32.0))
        assert sum(slot.deep for slot in own) == pytest.approx(32.0)


@dataclasses.dataclass(frozen=True)
class SlotIn:
    """A slot where it stands in its case: the middle of its mouth, and its sizes."""

    part: str
    middle: Vector
    wide: float
    long: float
    deep: float


def _slots(assembly: Assembly) -> Iterator[SlotIn]:
    for part in assembly.parts:
        for cut in part.cuts:
            if cut.name != "tenon slot":
                continue
            assert isinstance(cut, (Slot, Pocket))
            u = (cut.u0 + cut.u1) / 2 if isinstance(cut, Slot) else cut.u
            sizes = (
                (cut.width, cut.u1 - cut.u0) if isinstance(cut, Slot) else (cut.length, cut.width)
            )
            yield SlotIn(
                part=part.name,
                middle=part.placement.point(face_point(cut.face, part.blank, u, cut.v, 0.0)),
                wide=float(sizes[0]),
                long=float(sizes[1]),
                deep=float(cut.depth),
            )


def _on_axis(a: Vector, b: Vector, along: Vector) -> float:
    """How far two places are apart along a way; far, where they are not on one line that way."""
    off = [q - p for p, q in zip(a, b, strict=True)]
    ahead = sum(o * d for o, d in zip(off, along, strict=True))
    beside = math.sqrt(max(0.0, sum(o * o for o in off) - ahead**2))
    return abs(ahead) if beside < 1e-4 else math.inf


@pytest.mark.kernel
def test_tenons_stand_in_wood_of_neither_board(job: Job) -> None:
    """No board and no tenon shares wood with another."""
    from parametric.solids.clash import clashes_in_all_states
    from parametric.solids.solid_set import build_solids

    assembly = parts_of(job)
    if not any(part.noun == "loose tenon" for part in assembly.parts):
        pytest.skip("held otherwise")
    solids = build_solids(assembly.parts)
    assert list(clashes_in_all_states(assembly, solids)) == []


def test_holes_of_one_board_keep_their_web(job: Job) -> None:
    """From one face 5 of wood between any two holes; a screw's head and shank share their middle."""
    by_face: dict[tuple[str, Vector], list[Hole]] = {}
    for hole in holes(parts_of(job)):
        if hole.name != "screw shanks":
            by_face.setdefault((hole.part, tuple(round(x) for x in hole.out)), []).append(hole)  # type: ignore[arg-type]
    for own in by_face.values():
        for i, hole in enumerate(own):
            for other in own[i + 1 :]:
                web = apart(hole.mouth, other.mouth) - (hole.across + other.across) / 2
                assert web >= 5 - 1e-4, (hole, other)


def test_rows_are_level_on_both_sides_of_each_bay(job: Job) -> None:
    """Four pins at every height: two in the left board, two in the right, facing one another."""
    for standing, bored in zip(casework(job).cases, casework(job).bored, strict=True):
        for pins in bored.pins:
            rows = pins.rows
            assert isinstance(rows, PinRows)
            own = [
                hole
                for hole in holes(parts_of(job))
                if hole.name == "pin holes" and _looks_into(hole, standing, bored, pins.left.x)
            ]
            heights = Counter(round(hole.mouth[2], 4) for hole in own)
            inside = {
                height: count for height, count in heights.items() if pins.low < height < pins.high
            }
            assert inside == {round(height, 4): 4 for height in rows.heights}


def _looks_into(hole: Hole, standing: StandingCase, bored: BoredCase, left: float) -> bool:
    """Whether a pin hole opens into the bay that begins at a board's left face."""
    (pins, *_) = (own for own in bored.pins if own.left.x == left)
    low, high = pins.left.x + float(pins.left.thickness), pins.right.x
    x = hole.mouth[0] + hole.out[0]
    return hole.part.startswith(standing.name) and low < x < high


def test_every_shelf_lies_on_its_pins(job: Job) -> None:
    """Its underside is 2.5 over the middle of four holes that its ends stand before."""
    assembly = parts_of(job)
    pins = [hole for hole in holes(assembly) if hole.name == "pin holes"]
    shelves = [part for part in assembly.parts if part.noun == "shelf"]
    assert shelves
    for shelf in shelves:
        low = shelf.placement.point((0.0, 0.0, 0.0))
        high = shelf.placement.point((shelf.blank.length, shelf.blank.width, 0.0))
        under = [
            hole
            for hole in pins
            if abs(hole.mouth[2] + 2.5 - low[2]) < 1e-4
            and low[0] - 3 < hole.mouth[0] + hole.out[0] < high[0] + 3
            and low[1] < hole.mouth[1] < high[1]
        ]
        assert len(under) == 4, shelf.name


def test_plates_stand_beside_their_cups(job: Job) -> None:
    """Two screws at 16 below and above the middle of each cup, and as many as there are cups."""
    assembly = parts_of(job)
    cups: list[float] = []
    for group in assembly.groups:
        for part in group.parts:
            for cut in part.cuts:
                if cut.name == "hinge cup":
                    ups = [v.x for v in cut.outline]  # type: ignore[union-attr]
                    middle = (min(ups) + max(ups)) / 2
                    at = part.placement.point((middle, 0.0, 0.0))
                    cups.append(round(group.placement.point(at)[2], 4))
    foot = float(casework(job).cases[0].case.box.foot)
    screws = sorted(
        round(hole.mouth[2] + foot, 4) for hole in holes(assembly) if hole.name == "plate holes"
    )
    assert screws == sorted(round(cup + way, 4) for cup in cups for way in (-16, 16))


def test_rows_about_the_middle_are_the_same_on_either_end(folder: Path) -> None:
    """950 is the middle of a side of 1900: heights h and 1900 - h.

    950 - 18 - 64 = 868 each way: 27 steps from a height on the middle make 55 of them, 27 and a
    half beside it 56, the first 27.5 x 32 = 880 below: too far. So 55, from 950 - 864 = 86.
    """
    path = folder / "turned.yaml"
    path.write_text(CASES["about the middle"], encoding="utf-8")
    (bored,) = casework(_checked(path)).bored
    (pins,) = bored.pins
    assert isinstance(pins.rows, PinRows)
    heights = [round(height, 6) for height in pins.rows.heights]
    assert heights == [round(1900 - height, 6) for height in reversed(heights)]
    assert (heights[0], len(heights)) == (86, 55)


@pytest.mark.kernel
def test_boards_are_what_is_left_of_them(job: Job) -> None:
    """No two cuts take the same wood: each solid has the volume of its blank less its cuts."""
    from parametric.solids.solid_set import build_solids

    build_solids(part for part in parts_of(job).parts if part.mark.startswith("C"))
