"""What must be true of every cabinet that is sound, tried on random ones."""

from __future__ import annotations

import math
import tempfile
from itertools import pairwise
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings

from parametric.job import Job, check
from parametric.model import Part
from parametric.problems import stops
from parametric.resolve.casework import Casework, StandingCase
from parametric.resolve.one_door import Door
from parametric.trade.cutlist import cut_list
from tests.invariants.boxes import Box, clashes, placed, taken, wood
from tests.invariants.casework import casework, lone_cabinets, runs

CLOSE = 1e-6
TRIES = settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])


def checked(text: str) -> Job:
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "design.yaml"
        path.write_text(text, encoding="utf-8")
        return check(path, user_house=False)


def made(job: Job) -> Casework | None:
    """The cabinets of a job that can be made."""
    if stops(job.problems) or job.resolved is None:
        return None
    assert job.resolved.casework is not None
    return job.resolved.casework


def by_name(job: Job) -> dict[str, Part]:
    assert job.assembly is not None
    return {part.name: part for part in job.assembly.parts}


@TRIES
@given(casework())
def test_every_design_is_answered(text: str) -> None:
    """Sound or not, a design ends in numbers or in a stop that says where and why."""
    job = checked(text)
    for problem in stops(job.problems):
        assert problem.message
        assert problem.fix
        assert problem.where
        assert not problem.unreadable, problem.message
    assert job.exit_status == (1 if stops(job.problems) else 0)


@TRIES
@given(runs())
def test_a_run_adds_up_to_the_wall(text: str) -> None:
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    (run,) = casework.runs
    assert sum(float(w) for w in run.across.widths) == pytest.approx(float(run.opening.clear))
    at = float(run.opening.clear_left)
    for left, width in zip(run.across.lefts, run.across.widths, strict=True):
        assert float(left) == pytest.approx(at)
        at += float(width)
    for line, width in zip(run.spec.left_to_right, run.across.widths, strict=True):
        if line.filler is not None:
            assert float(width) >= float(getattr(line.filler, "least", line.filler)) - CLOSE
    # Seen from the front no filler is wider than its blank, nor narrower than it was asked for.
    for edge in (run.edges.left, run.edges.right):
        if edge is not None:
            assert float(edge.least) > 0
            assert float(edge.blank) > float(edge.most)


@TRIES
@given(casework())
def test_bays_and_partitions_add_up_to_the_case(text: str) -> None:
    casework = made(checked(text))
    for standing in casework.cases if casework else ():
        case = standing.case
        thick = float(case.box.thickness)
        bays = [float(bay.width) for bay in case.bays]
        assert sum(bays) + (len(bays) + 1) * thick == pytest.approx(float(case.box.width))
        at = thick
        for bay in case.bays:
            assert float(bay.left) == pytest.approx(at)
            at += float(bay.width) + thick
        for bay in case.bays:
            assert float(bay.spaces[0].foot) == pytest.approx(float(case.box.bottom))
            assert float(bay.spaces[-1].head) == pytest.approx(float(case.box.top))
            for low, high in pairwise(bay.spaces):
                between = thick if high.floored else 0.0
                assert float(high.foot) == pytest.approx(float(low.head) + between)


Rectangle = tuple[float, float, float, float]


def rectangles(door: Door) -> dict[str, Rectangle]:
    """Each leaf shut: left, right, foot, head; from the left of the opening and the floor."""
    return {
        leaf.name: (
            float(leaf.hung.left),
            float(leaf.hung.left + leaf.hung.width),
            float(leaf.hung.foot),
            float(leaf.hung.foot + leaf.hung.height),
        )
        for leaf in door.leaves
    }


@TRIES
@given(casework())
def test_fronts_and_gaps_add_up(text: str) -> None:
    """Beside and over one another every two fronts are a gap apart, and round them the reveal is
    the same on every side: of an overlay what is seen of the case's edge, of an inset its gap.
    """
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    assert job.resolved is not None
    for door in job.resolved.doors:
        standing = casework.case(door.case)
        spec, opening = standing.case.spec, standing.case.opening
        gap, edge = float(spec.front_gap), float(opening.edge)
        match spec.fronts:
            case "overlay":
                over = ends = edge - float(spec.edge_reveal)
            case "half overlay":
                over, ends = edge / 2 - gap / 2, edge - float(spec.edge_reveal)
            case "inset":
                over = ends = -gap
        found = list(rectangles(door).values())
        left, right = -over, float(opening.width) + over
        foot, head = float(opening.foot) - ends, float(opening.head) + ends
        for a, b, low, high in found:
            assert a >= left - CLOSE
            assert b <= right + CLOSE
            assert low >= foot - CLOSE
            assert high <= head + CLOSE
        for i, one in enumerate(found):
            for other in found[i + 1 :]:
                across = max(one[0], other[0]) - min(one[1], other[1])
                up = max(one[2], other[2]) - min(one[3], other[3])
                assert max(across, up) >= gap - CLOSE
        if any(front.kind == "open" for bay in spec.bays for front in spec.fronts_of(bay)):
            continue
        # Without an open stretch fronts and gaps fill it, bay by bay and row by row.
        over_partition = gap if spec.fronts != "inset" else 2 * gap + float(opening.partition)
        bays = bays_of(standing, found)
        assert sum(len(bay) for bay in bays) == len(found)
        spans = [(min(a for a, *_ in bay), max(b for _, b, *_ in bay)) for bay in bays]
        assert (spans[0][0], spans[-1][1]) == pytest.approx((left, right))
        for one, two in pairwise(spans):
            assert two[0] - one[1] == pytest.approx(over_partition)
        for bay, (begins, ends) in zip(bays, spans, strict=True):
            rows = sorted({(round(low, 6), round(high, 6)) for *_, low, high in bay})
            assert (rows[0][0], rows[-1][1]) == pytest.approx((foot, head))
            for below, above in pairwise(rows):
                assert above[0] - below[1] == pytest.approx(gap, abs=CLOSE)
            for row in rows:
                leaves = [r for r in bay if round(r[2], 6) == row[0]]
                wide = sum(b - a for a, b, *_ in leaves) + gap * (len(leaves) - 1)
                assert wide == pytest.approx(ends - begins)


def bays_of(standing: StandingCase, found: list[Rectangle]) -> list[list[Rectangle]]:
    """The fronts of each bay, from the left: those whose middle is between its boards."""
    case = standing.case
    across = [(float(bay.left - case.opening.left), float(bay.width)) for bay in case.bays]
    return [
        [one for one in found if left < (one[0] + one[1]) / 2 < left + width]
        for left, width in across
    ]


@TRIES
@given(casework())
def test_every_part_has_wood_and_stands_on_the_cut_list(text: str) -> None:
    job = checked(text)
    if made(job) is None:
        return
    assert job.assembly is not None
    listed = {name: row for row in cut_list(job.assembly) for name in row.names}
    own = [part for part in job.assembly.parts if not part.supplied]
    assert len({part.name for part in job.assembly.parts}) == len(job.assembly.parts)
    assert listed.keys() == {part.name for part in own}
    for part in job.assembly.parts:
        assert part.volume > 0, part.name
    for part in own:
        row = listed[part.name]
        for got, is_so in zip(
            (row.length, row.width, row.thickness),
            (part.blank.length, part.blank.width, part.blank.thickness),
            strict=True,
        ):
            assert math.isclose(got, is_so, abs_tol=CLOSE)


def within(inner: Box, outer: Box) -> bool:
    return all(
        outer[0][i] - CLOSE <= inner[0][i] and inner[1][i] <= outer[1][i] + CLOSE for i in range(3)
    )


def case_box(standing: StandingCase) -> Box:
    """The outside of a case in the room, with a back that is planted on it."""
    box, back = standing.case.box, standing.case.back
    deep = float(box.depth)
    if back is not None and back.held == "planted":
        deep += float(back.thickness)
    x, y, z = standing.stands.origin
    return (x, y, z), (x + float(box.width), y + deep, z + float(box.height))


@TRIES
@given(casework())
def test_every_board_is_inside_its_case_and_every_shelf_in_its_space(text: str) -> None:
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    assert job.assembly is not None
    groups = {group.name: group for group in job.assembly.groups}
    for standing in casework.cases:
        group = groups[standing.name]
        outside = case_box(standing)
        for part in group.parts:
            if "face frame" not in part.name:
                assert within(placed(wood(part), part, group.placement), outside), part.name
        case = standing.case
        for bay in case.bays:
            shelves = [
                board
                for board in case.of_role("shelf")
                if float(bay.left) - CLOSE <= board.x <= float(bay.left + bay.width)
            ]
            assert len(shelves) == sum(space.shelves for space in bay.spaces)
            for board in shelves:
                assert any(
                    float(space.foot) - CLOSE <= board.z
                    and board.z + float(board.thickness) <= float(space.head) + CLOSE
                    for space in bay.spaces
                )
                assert board.x + float(board.length) <= float(bay.left + bay.width) + CLOSE


@TRIES
@given(casework())
def test_every_cut_takes_wood_that_is_there(text: str) -> None:
    job = checked(text)
    if made(job) is None:
        return
    assert job.assembly is not None
    for part in job.assembly.parts:
        blank = part.blank
        for cut in taken(part):
            whole = ((0.0, 0.0, 0.0), (blank.length, blank.width, blank.thickness))
            assert within(cut, whole), part.name


@TRIES
@given(casework())
def test_a_drawer_s_box_keeps_to_its_room(text: str) -> None:
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    for drawer in casework.drawers:
        standing = casework.case(drawer.case)
        case, box = standing.case, drawer.box
        bay = next(b for b in case.bays if float(b.left) <= drawer.x <= float(b.left + b.width))
        assert drawer.x + float(box.width) <= float(bay.left + bay.width) + CLOSE
        assert drawer.y + float(box.length) <= float(case.behind) + CLOSE
        assert any(
            float(space.foot) - CLOSE <= drawer.z
            and drawer.z + float(box.height) <= float(space.head) + CLOSE
            for space in bay.spaces
        )


@settings(TRIES, max_examples=20)
@given(lone_cabinets())
def test_nothing_stands_in_anything_shut_or_open(text: str) -> None:
    _stands_clear(text)


@settings(TRIES, max_examples=10)
@given(runs())
def test_nothing_of_a_run_stands_in_anything_shut_or_open(text: str) -> None:
    _stands_clear(text)


def _stands_clear(text: str) -> None:
    job = checked(text)
    if made(job) is None:
        return
    assert job.assembly is not None
    for state in job.assembly.states:
        square = all(part in (0.0, 1.0) for part in state.open.values())
        if square:
            assert list(clashes(job.assembly, state)) == []
