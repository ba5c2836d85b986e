"""What must be true of every case that is no rectangle from above, tried on random ones."""

from __future__ import annotations

import itertools
import math

import pytest
from hypothesis import HealthCheck, given, settings

from parametric.cases.case import Case, CaseBoard
from parametric.cases.plan_shape import FRONTS, PlanSide
from parametric.model import Drilled, removed_volume
from parametric.trade.cutlist import cut_list
from parametric.trade.setting_out import setting_out
from tests.invariants.corners import alone, area, convex, round_a_corner, seen, shared
from tests.invariants.test_casework import by_name, checked, made

CLOSE = 1e-6
TRIES = settings(max_examples=20, suppress_health_check=[HealthCheck.too_slow])


def walk(sides: tuple[PlanSide, ...]) -> tuple[float, float]:
    """Where one stands who goes along each side as long as it says and turns as it says."""
    x = y = way = 0.0
    for at, side in enumerate(sides):
        x += float(side.length) * math.cos(way)
        y += float(side.length) * math.sin(way)
        way += math.pi - math.radians(float(sides[(at + 1) % len(sides)].angle))
    return x, y


@TRIES
@given(alone())
def test_every_shape_closes_and_its_angles_add_up(text: str) -> None:
    """(n - 2) x 180 deg; by its own lengths and angles each case and each board comes round."""
    casework = made(checked(text))
    for standing in casework.cases if casework else ():
        case = standing.case
        assert case.plan is not None
        shapes = [case.plan.sides, *(board.sides for board in case.boards if board.sides)]
        assert len(shapes) >= 3
        for sides in shapes:
            total = sum(float(side.angle) for side in sides)
            assert total == pytest.approx((len(sides) - 2) * 180.0)
            assert math.hypot(*walk(sides)) == pytest.approx(0.0, abs=CLOSE)
            shape = setting_out("one", sides)
            assert len(shape.diagonals) == len(sides) * (len(sides) - 3) // 2


def _on_a_line(board: CaseBoard, a: tuple[float, float], b: tuple[float, float]) -> bool:
    """Whether a stretch lies along one of a board's own sides, from above."""
    points = seen(board)
    for (px, py), (qx, qy) in zip(points, (*points[1:], points[0]), strict=True):
        long = math.hypot(qx - px, qy - py)
        if all(
            abs((qx - px) * (y - py) - (qy - py) * (x - px)) / long < 1e-6
            and -CLOSE <= ((qx - px) * (x - px) + (qy - py) * (y - py)) / long <= long + CLOSE
            for x, y in (a, b)
        ):
            return True
    return False


@TRIES
@given(alone())
def test_boards_touch_and_stand_in_nothing(text: str) -> None:
    """Bottom and top lie against every side and back; from above no two boards share anything."""
    casework = made(checked(text))
    for standing in casework.cases if casework else ():
        case = standing.case
        assert case.plan is not None
        _closed_in(case)
        for one, other in itertools.combinations(case.boards, 2):
            high = min(_top(one), _top(other)) - max(one.z, other.z)
            if high > CLOSE:
                for a, b in itertools.product(convex(seen(one)), convex(seen(other))):
                    assert shared(a, b) < 1e-4, (one.name, other.name)


def _top(board: CaseBoard) -> float:
    return board.z + float(board.thickness if board.lies == "level" else board.length)


def _closed_in(case: Case) -> None:
    """Each edge of the bottom but the fronts is against a board, each wall's line along a back."""
    assert case.plan is not None
    bottom = case.of_role("bottom")[0]
    upright = [*case.of_role("side"), *case.of_role("back")]
    inside = seen(bottom)
    for at, side in enumerate(case.plan.sides):
        ends = inside[at], inside[(at + 1) % len(inside)]
        if side.word in FRONTS:
            continue
        assert any(_on_a_line(board, *ends) for board in upright), side.word
    outline = case.plan.outline
    covered = sum(area(part) for board in (bottom, *upright) for part in convex(seen(board)))
    # sides, backs and bottom fill the plan to the last corner
    assert covered == pytest.approx(area(outline), abs=1e-3)


@TRIES
@given(alone())
def test_boards_are_what_is_left_of_their_blanks(text: str) -> None:
    """Volume by the cuts is the shape's area by its height, less the holes; the list has the blank."""
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    assert job.assembly is not None
    parts = by_name(job)
    listed = {name: row for row in cut_list(job.assembly) for name in row.names}
    for standing in casework.cases:
        for board in standing.case.boards:
            part, row = parts[board.name], listed[board.name]
            high = board.thickness if board.lies == "level" else board.length
            holes = sum(
                removed_volume(cut, part.blank) for cut in part.cuts if isinstance(cut, Drilled)
            )
            assert part.volume + holes == pytest.approx(area(seen(board)) * float(high))
            size = (float(row.length), float(row.width), float(row.thickness))
            assert size == (part.blank.length, part.blank.width, part.blank.thickness)
            banded = [float(edge.length) for edge in part.banded_edges]
            assert banded == [float(side.length) for side in board.sides if side.banded]


@TRIES
@given(alone())
def test_a_shelf_is_free_all_round_and_on_pins_on_every_side(text: str) -> None:
    casework = made(checked(text))
    if casework is None:
        return
    for standing, bored in zip(casework.cases, casework.bored, strict=True):
        case = standing.case
        assert case.plan is not None
        walls = [side for side in case.plan.sides if side.word not in FRONTS]
        for shelf in case.of_role("shelf"):
            corners = seen(shelf)
            thick = float(case.box.thickness)
            for side in walls:
                (x, y), (dx, dy) = case.plan.line(side.word, thick)
                free = min((cy - y) * dx - (cx - x) * dy for cx, cy in corners)
                assert free == pytest.approx(1.0)  # the clearance that every job has
        for pins in bored.pins:
            assert {own.board.name.rsplit(" / ", 1)[-1] for own in pins.boards} == {
                side.word for side in walls
            }


@settings(TRIES, max_examples=15)
@given(round_a_corner())
def test_runs_add_up_to_both_walls_and_meet_at_the_corner(text: str) -> None:
    """Both runs fill their walls; the case's sides are against the neighbours' outer faces."""
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    corner = next(case for case in casework.cases if case.case.plan is not None)
    for run in casework.runs:
        late = float(run.across.lefts[0] - run.opening.clear_left)
        assert 0.0 <= late < 1.0  # an acute corner of walls that lean
        assert late + sum(map(float, run.across.widths)) == pytest.approx(float(run.opening.clear))
    assert corner.case.plan is not None
    for case in casework.cases:
        if case is corner:
            continue
        word = "left side" if case.survey is corner.survey else "right side"
        at = float(case.case.box.width) if word == "left side" else 0.0
        (x, y), (dx, dy) = corner.case.plan.line("left side" if word == "left side" else word)
        for deep in (0.0, float(case.case.box.depth)):
            px, py, _ = case.stands.point((at, deep, 0.0))
            wx, wy, _ = corner.stands.point((x, y, 0.0))
            ux, uy, _ = corner.stands.direction((dx, dy, 0.0))
            assert abs((px - wx) * uy - (py - wy) * ux) < 1e-6
        back, (bx, by) = corner.case.plan.line("left back" if word == "left side" else "right back")
        px, py, _ = case.stands.point((at, float(case.case.box.depth), 0.0))
        wx, wy, _ = corner.stands.point((*back, 0.0))
        ux, uy, _ = corner.stands.direction((bx, by, 0.0))
        # one line behind both
        assert abs((px - wx) * uy - (py - wy) * ux) < 1e-6
