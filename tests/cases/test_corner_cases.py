"""Cases in corners and angled ends: numbers by hand, what is answered, solids, sheets, counters."""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.cases.plan_boards import longest_span
from parametric.job import Job, check
from parametric.model import Shaped
from parametric.outlines import area_of
from parametric.problems import stops
from parametric.resolve.casework import StandingCase
from parametric.solids.clash import clashes
from parametric.solids.solid_set import build_solids
from parametric.trade.case_shelves import case_shelves
from parametric.trade.edge_band import edge_bands
from parametric.trade.hardware_for_cases import hardware_for_cases
from parametric.trade.printed import printed
from parametric.trade.setting_out import setting_outs

HEAD = """
stilewright: 1
job: A corner
units: mm
survey left:
  widths: {bottom: 1806}
  left side: plumb
  heights: {left: 2400, right: 2400}
survey right:
  right of: left
  turns: 90 deg
  widths: {bottom: 1700}
  left side: plumb
  heights: {left: 2400, right: 2400}
"""
REST = """
leaf:
  timber: tulipwood
  thickness: 20
  stiles: 60
  trim: 0
  site trim: 0
  top to bottom: [top rail: 60, panel: rest, bottom rail: 60]
joint: {kind: stub tenon, length: 10}
panel: {kind: board, thickness: 9, groove: 9 x 10, clearance: 1}
board: {thickness: 18, measured: 18}
hinge:
  {kind: cup, cup: 35, cup from edge: 5, depth: 12, from ends: 100, least gap: 1, carries: 4.5 kg}
finish: {kind: none}
"""
DIAGONAL = """
cabinet:
  in: left
  plan: diagonal corner
  width: 700
  height: 1800
  depth: 350
  fronts: inset
  front gap: 3
  top to bottom: [{door: rest, hinge side: left}]
  shelves: 3
"""
INSIDE = """
cabinet:
  in: left
  plan: inside corner
  width: 900
  right width: 950
  height: 720
  depth: 560
  right depth: 500
  front gap: 3
  edge reveal: 1.5
  top to bottom: [door: rest]
  shelves: 2
"""
END = """
cabinet:
  in: left
  plan: angled end
  width: 400
  height: 720
  depth: 560
  right depth: 300
  fronts: inset
  front gap: 3
  top to bottom: [{door: rest, hinge side: left}]
  shelves: 2
"""
RUNS = """
run left:
  in: left
  plinth: 100
  counter: 30
  left to right: [filler: at least 20, cabinet a: rest, cabinet c: 900]
run right:
  in: right
  plinth: 100
  counter: 30
  left to right: [cabinet c: 850, cabinet a: rest, filler: at least 20]
cabinet a:
  height: 720
  depth: 560
  top to bottom: [{open: rest, shelves: 1}]
cabinet c:
  plan: PLAN
  height: 720
  depth: 560
  fronts: inset
  top to bottom: [DOOR]
"""
DOORS = {"diagonal corner": "{door: rest, hinge side: left}", "inside corner": "door: rest"}


def runs(plan: str) -> str:
    return RUNS.replace("PLAN", plan).replace("DOOR", DOORS[plan])


def job(tmp_path: Path, own: str, head: str = HEAD) -> Job:
    path = tmp_path / "design.yaml"
    path.write_text(head + own + REST, encoding="utf-8")
    return check(path, user_house=False)


def case(made: Job) -> StandingCase:
    assert made.resolved is not None, [p.message for p in made.problems]
    assert made.resolved.casework is not None
    return next(c for c in made.resolved.casework.cases if c.case.plan is not None)


def sizes(made: Job) -> dict[str, tuple[float, ...]]:
    return {
        board.name.rsplit(" / ", 1)[-1]: tuple(
            round(float(size), 3) for size in (board.length, board.width, board.thickness)
        )
        for board in case(made).case.boards
    }


def test_a_diagonal_in_a_square_corner(tmp_path: Path) -> None:
    """700 both ways and 350 deep: the front runs over 350 and back 350.

    Front 350 sqrt 2 = 494.975, both its corners 180 - 45 = 135 deg. Sides: 350 outside, 18 longer
    inside where the front goes on at 45 deg. Left back 700 - 18 = 682; the right one stands
    between that and the right side, 700 - 2 x 18 = 664. Bottom 664 square, its corner cut off
    over 664 - (350 - 18) - 18 = 314 both ways: front edge 314 sqrt 2 = 444.063. The door stands
    in that, 3 free at each edge: 438.063.
    """
    made = job(tmp_path, DIAGONAL)
    own = case(made)
    assert own.case.plan is not None
    front, right, *_ = own.case.plan.sides
    assert float(front.length) == pytest.approx(350 * math.sqrt(2))
    assert [float(side.angle) for side in own.case.plan.sides] == pytest.approx(
        [135, 135, 90, 90, 90]
    )
    assert float(right.length) == 350
    found = sizes(made)
    assert found["left side"] == found["right side"] == (1800, 368, 18)
    assert found["left back"] == (1800, 682, 18)
    assert found["right back"] == (1800, 664, 18)
    assert found["bottom"] == found["top"] == (664, 664, 18)
    assert made.resolved is not None
    (leaf,) = made.resolved.leaves
    assert float(leaf.width) == pytest.approx(314 * math.sqrt(2) - 6)
    bottom = next(b for b in own.case.boards if b.role == "bottom")
    assert float(bottom.sides[0].length) == pytest.approx(314 * math.sqrt(2))
    assert made.assembly is not None
    side = next(p for p in made.assembly.parts if p.name == "cabinet / left side")
    (bevel,) = [cut for cut in side.cuts if isinstance(cut, Shaped)]
    assert abs(area_of(bevel.outline)) == pytest.approx(18 * 18 / 2)
    assert float(bevel.depth) == 1800


def test_a_shelf_s_longest_clear_span_is_along_its_front(tmp_path: Path) -> None:
    """Between the front ends of both sides' inner faces: 314 sqrt 2 = 444.063, not 664."""
    made = job(tmp_path, DIAGONAL)
    own = case(made)
    assert own.case.plan is not None
    span = longest_span(own.case.plan, own.case.box)
    assert float(span) == pytest.approx(314 * math.sqrt(2))
    assert made.resolved is not None
    (shelf,) = case_shelves(made.resolved)
    assert float(shelf.sag.span) == pytest.approx(float(span))


def test_a_corner_that_is_not_square_makes_backs_that_fit(tmp_path: Path) -> None:
    """91.2 deg between the walls is 91.2 deg between the backs, and at one corner of every board."""
    made = job(tmp_path, DIAGONAL, HEAD.replace("90 deg", "91.2 deg"))
    own = case(made)
    shapes = setting_outs(made.resolved.casework if made.resolved else None)
    assert len(shapes) == 1 + 2 + 3  # the case, bottom and top, three shelves
    for shape in shapes:
        angles = {corner.side: float(corner.angle) for corner in shape.corners}
        assert angles["left back"] == 91.2
        assert sum(angles.values()) == pytest.approx(540)
    right = next(b for b in own.case.boards if b.name.endswith("right back"))
    assert right.turn == pytest.approx(91.2 - 180)


def test_an_inside_corner_s_two_doors(tmp_path: Path) -> None:
    """Each arm's front is its wall less the other arm's depth: 900 - 500, 950 - 560.

    Overlay fronts 20 thick stand 3 apart at the corner where their faces are nearest: each ends
    20 + 3 / sqrt 2 = 22.121 before it, and leaves 1.5 of its side's edge to be seen:
    400 - 22.121 - 1.5 = 376.379, 390 - 23.621 = 366.379.
    """
    made = job(tmp_path, INSIDE)
    own = case(made)
    assert own.case.plan is not None
    assert [float(side.length) for side in own.case.plan.sides[:2]] == pytest.approx([400, 390])
    assert [float(side.angle) for side in own.case.plan.sides] == pytest.approx(
        [90, 270, 90, 90, 90, 90]
    )
    assert made.resolved is not None
    left, right = made.resolved.leaves
    assert float(left.width) == pytest.approx(400 - 20 - 3 / math.sqrt(2) - 1.5)
    assert float(right.width) == pytest.approx(390 - 20 - 3 / math.sqrt(2) - 1.5)
    assert [leaf.hinges[0].side for leaf in (left, right)] == ["left", "right"]
    plates = [plate for bored in made.resolved.casework.bored for plate in bored.plates]
    assert [plate.board.name for plate in plates] == ["cabinet / left side", "cabinet / right side"]


def test_an_angled_end(tmp_path: Path) -> None:
    """400 wide from 560 to 300 deep: turned back atan(260 / 400) = 33.024 deg, 477.074 long."""
    made = job(tmp_path, END)
    own = case(made)
    assert own.case.plan is not None
    front = own.case.plan.sides[0]
    assert float(front.length) == pytest.approx(math.hypot(400, 260))
    turn = math.degrees(math.atan2(260, 400))
    assert [float(side.angle) for side in own.case.plan.sides] == pytest.approx(
        [90 - turn, 90 + turn, 90, 90]
    )
    assert sizes(made)["back"] == (720, 400 - 36, 18)


def test_what_holds_it(tmp_path: Path) -> None:
    """Seven pins a shelf: two in each side, one in each back of 664 (two ends, no more than 600
    apart), and one more where a back is longer: here 664 / 600 -> 1. So 3 x 6 = 18.
    """
    made = job(tmp_path, DIAGONAL)
    assert made.resolved is not None
    items = list(hardware_for_cases(made.resolved.casework, printed(made.resolved)))
    pins = next(item for item in items if item.what == "shelf pin")
    assert int(pins.number) == 3 * (2 + 2 + 1 + 1)
    assert any(item.what == "one-piece carcass screw" for item in items)


def test_the_slant_is_banded(tmp_path: Path) -> None:
    """Bottom and top 444.063 each, three shelves, two sides: what is sawn along the front."""
    made = job(tmp_path, DIAGONAL)
    assert made.resolved is not None
    assert made.assembly is not None
    (band,) = edge_bands(made.resolved.shop, made.assembly)
    slants = [edge for edge in band.edges if edge.edge == "front edge" and float(edge.length) < 500]
    lengths = sorted((round(float(edge.length), 3), edge.number) for edge in slants)
    assert (round(314 * math.sqrt(2), 3), 2) in lengths
    assert len(lengths) == 2


@pytest.mark.parametrize(("angle", "screwed"), [(90, True), (91.2, True), (130, False)])
def test_backs_are_screwed_where_a_screw_reaches_them(
    tmp_path: Path, angle: float, screwed: bool
) -> None:
    """At 90 deg the right back's middle is 9 from the end of the left one's face: 5 of head and 4.
    At 130 deg that face ends before it: 18 tan 40 = 15.1 shorter than the inner one.
    """
    made = job(tmp_path, DIAGONAL, HEAD.replace("90 deg", f"{angle} deg"))
    assert made.resolved is not None
    assert made.resolved.casework is not None
    (bored,) = made.resolved.casework.bored
    both = {"cabinet / left back", "cabinet / right back"}
    found = [joint for joint in bored.joints if {joint.board, joint.into} == both]
    assert bool(found) is screwed


@pytest.mark.parametrize("own", [DIAGONAL, INSIDE, END], ids=["diagonal", "inside", "end"])
@pytest.mark.parametrize("angle", [90, 88.8, 93, 130])
def test_nothing_stands_in_anything_shut_or_open(tmp_path: Path, own: str, angle: float) -> None:
    made = job(tmp_path, own, HEAD.replace("90 deg", f"{angle} deg"))
    assert not stops(made.problems)
    assert made.assembly is not None
    solids = build_solids(made.assembly.parts, None)
    one = [state for state in made.assembly.states if state.name != "open"]
    for state in one:
        assert clashes(made.assembly, state, solids) == ()


@pytest.mark.parametrize("plan", sorted(DOORS))
@pytest.mark.parametrize("angle", [90, 91.2, 128])
def test_runs_round_a_corner(tmp_path: Path, plan: str, angle: float) -> None:
    """Their cases, plinths and counters fill the corner and stand in nothing; the counters' mitre
    has the two as long as one another.
    """
    made = job(tmp_path, runs(plan), HEAD.replace("90 deg", f"{angle} deg"))
    assert not stops(made.problems), [p.message for p in stops(made.problems)]
    assert made.assembly is not None
    solids = build_solids(made.assembly.parts, None)
    shut = next(state for state in made.assembly.states if state.name == "shut")
    assert clashes(made.assembly, shut, solids) == ()
    counters = [part for part in made.assembly.parts if part.noun == "counter"]
    assert len(counters) == 2
    names = {part.name for part in made.assembly.parts}
    fronts = ["front"] if plan == "diagonal corner" else ["left front", "right front"]
    assert {f"cabinet c / plinth {word}" for word in fronts} <= names


@pytest.mark.parametrize(
    ("own", "was", "then", "code"),
    [
        (DIAGONAL, "  depth: 350", "  depth: 350\n  kick: 80 x 50", "not_built_yet"),
        (DIAGONAL, "  depth: 350", "  depth: 350\n  dado: 6", "not_built_yet"),
        (DIAGONAL, "  depth: 350", "  depth: 350\n  corners: dowel", "not_built_yet"),
        (DIAGONAL, "  depth: 350", "  depth: 350\n  left depth: 300", "contradicts"),
        (DIAGONAL, "{door: rest, hinge side: left}", "drawer: rest", "not_built_yet"),
        (DIAGONAL, "  in: left", "  in: right", "corner_not_measured"),
        (DIAGONAL, "  plan: diagonal corner", "  right width: 700", "contradicts"),
        (END, "  right depth: 300", "  right depth: 560", "contradicts"),
        (END, "  right depth: 300\n", "", "contradicts"),
        (runs("inside corner"), ", cabinet c: 900]", "]", "corner_in_one_run"),
        (
            runs("inside corner"),
            "[cabinet c: 850, cabinet a: rest,",
            "[cabinet a: rest, cabinet c: 850,",
            "corner_out_of_place",
        ),
        (
            runs("inside corner"),
            "[cabinet c: 850, cabinet a: rest, filler: at least 20]",
            "[cabinet c: 850, space: rest]",
            "corner_alone_in_its_run",
        ),
        (
            runs("inside corner"),
            "  counter: 30\n  left to right: [cabinet c",
            "  left to right: [cabinet c",
            "runs_unlike_at_corner",
        ),
    ],
)
def test_what_cannot_be_is_answered(
    tmp_path: Path, own: str, was: str, then: str, code: str
) -> None:
    assert was in own
    made = job(tmp_path, own.replace(was, then))
    found = stops(made.problems)
    assert code in {problem.code for problem in found}, [p.message for p in found]
    assert all(problem.where and problem.fix for problem in found)
