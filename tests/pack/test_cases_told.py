"""The client's page of cabinets: every front that moves, the niche as it was read, sizes by their names.

Fen Road: three cabinets of 789 in a niche 2440 / 2431 / 2436 wide, four doors of 391.5 x 2270, two
of 391.5 x 1601 and three drawers of 786 x 220 (its brief's own numbers, worked in tests/scenarios).
"""

from __future__ import annotations

import math
import xml.etree.ElementTree as ElementTree
from functools import cache
from pathlib import Path

import pytest

from parametric.figures import collect
from parametric.job import Job, check
from parametric.model import Placement, Vector
from parametric.pack.numbers import figures
from parametric.pack.preview import preview_page
from parametric.trade.drawn_sizes import drawn_sizes
from parametric.writers.client_page import PreviewPage, plain
from parametric.writers.page_markup import numbers_in

PROJECT = Path(__file__).resolve().parents[2]
FEN_ROAD = "examples/fen-road-wardrobe/design.yaml"
CORNER = "tests/designs/old/version-1-corner.yaml"
ALL = (
    CORNER,
    *(FEN_ROAD, "examples/quarry-street-alcove/design.yaml"),
    *(
        f"templates/{name}.yaml"
        for name in ("alcove pair", "bookcase", "pantry tower", "under stair", "window seat")
    ),
)


@cache
def job_of(design: str) -> Job:
    return check(PROJECT / design, house=PROJECT / "examples/house.yaml", user_house=False)


@cache
def page_of(design: str) -> PreviewPage:
    job = job_of(design)
    assert job.resolved is not None, job.problems
    return preview_page(
        job.resolved,
        job.loads,
        fingerprint="0" * 64,
        elevations=(),
        assembly=job.assembly,
        problems=job.own,
    )


@pytest.mark.parametrize("design", ALL)
def test_whatever_moves_in_the_model_moves_on_the_page(design: str) -> None:
    """Every group with a way of its own, where it stands and by that way; and no other."""
    assembly = job_of(design).assembly
    assert assembly is not None
    page = page_of(design)
    moving = {group.name: group for group in assembly.groups if group.motion}
    assert [leaf.name for leaf in page.leaves] == list(moving)
    fronts = {leaf.name: leaf for leaf in job_of(design).resolved.leaves}  # type: ignore[union-attr]
    for leaf in page.leaves:
        group = moving[leaf.name]
        assert leaf.motion == group.motion
        assert leaf.along == group.placement.x[:2]
        if leaf.name in fronts:
            assert (leaf.x, leaf.front, leaf.foot) == group.placement.origin
            assert (leaf.width, leaf.height) == (
                fronts[leaf.name].width,
                fronts[leaf.name].height,
            )
            continue
        # an inner drawer or a lid is taken hold of by the box round it
        corners = [
            group.placement.point(part.placement.point((x, y, z)))
            for part in group.parts
            for x in (0.0, float(part.blank.length))
            for y in (0.0, float(part.blank.width))
            for z in (0.0, float(part.blank.thickness))
        ]
        low = tuple(min(c[i] for c in corners) for i in range(3))
        high = tuple(max(c[i] for c in corners) for i in range(3))
        assert (leaf.x, leaf.front, leaf.foot) == low
        assert (leaf.width, leaf.thickness, leaf.height) == pytest.approx(
            [b - a for a, b in zip(low, high, strict=True)]
        )


@pytest.mark.parametrize("design", ALL)
def test_every_number_is_one_of_the_job(design: str) -> None:
    job, page = job_of(design), page_of(design)
    assert job.resolved is not None
    known = figures(job.resolved, job.loads) | collect(drawn_sizes(job.resolved))
    numbers = numbers_in(page)
    assert len(numbers) >= 4
    assert [number.figure for number in numbers if number.figure not in known] == []


@pytest.mark.parametrize("design", [design for design in ALL if design != CORNER])
def test_nothing_stands_in_a_wall(design: str) -> None:
    """Fronts shut, boards, plinth and fillers are before the wall behind and between the walls.

    Fillers and counters are made with spare that is scribed off on site, so that what is pictured
    may reach into the wall by that: 30 at the most.
    """
    assembly, page = job_of(design).assembly, page_of(design)
    assert assembly is not None
    assert page.niche is not None
    assert page.niche.face <= 0 < page.niche.back
    left = min(x for x, _ in page.opening) - 30
    right = max(x for x, _ in page.opening) + 30
    for group in assembly.groups:
        for part in group.parts:
            for local in ((0.0, 0.0, 0.0), (*map(float, part.finished[:2]), part.finished[2])):
                x, y, _ = group.placement.point(part.placement.point(local))
                assert left <= x <= right, part.name
                assert y < page.niche.back, part.name


def test_the_niche_is_as_it_was_read() -> None:
    """Ceiling 2388 / 2385 / 2390 and floor -3 / 0 / 2 from the line, 2 under the highest floor."""
    page = page_of(FEN_ROAD)
    ceiling = [(x, z) for x, z in page.opening if z > 2300]
    assert [z for _, z in ceiling] == pytest.approx([2386, 2383, 2388])
    assert [x for x, _ in ceiling][::2] == pytest.approx([5, 2441])
    assert [z for _, z in page.floor] == pytest.approx([-5, -2, 0])
    assert page.opening[1] == pytest.approx((3, (2386 - 5) / 2 + 2.5), abs=6)


def test_walls_that_turn_stand_each_in_its_own_frame() -> None:
    """Weir Cottage: a wall of 2400, one of 1900 square to it on its right, one of 1400 at 135 deg.

    Every corner of a wall lies in the plane that is the depth of the cabinets behind their front
    edges, 560 and the 1 that it is pictured behind them; its width is what was read.
    """
    job, page = job_of(CORNER), page_of(CORNER)
    assert job.resolved is not None
    assert job.resolved.casework is not None
    assert page.niche is not None
    rooms = {case.room for case in job.resolved.casework.cases}
    assert sorted(round(room.x[1], 6) for room in rooms) == pytest.approx(
        [-1.0, 0.0, math.sqrt(0.5)]
    )
    walls = [s for s in page.niche.surfaces if s.kind == "wall"]
    for room in rooms:
        own = []
        for wall in walls:
            local = [_in_frame(room, corner) for corner in wall.corners]
            if all(y == pytest.approx(561, abs=1e-6) for _, y, _ in local):
                own.append(max(x for x, _, _ in local) - min(x for x, _, _ in local))
        assert len(own) == 1
        assert own[0] == pytest.approx({0.0: 2400, -1.0: 1900}.get(round(room.x[1], 6), 1400))


def _in_frame(room: Placement, point: Vector) -> Vector:
    """A point of the room in a wall's frame."""
    off = [a - b for a, b in zip(point, room.origin, strict=True)]
    return (
        sum(a * b for a, b in zip(off, room.x, strict=True)),
        sum(a * b for a, b in zip(off, room.y, strict=True)),
        off[2],
    )


def test_sizes_are_told_once_for_all_that_have_them() -> None:
    facts = {fact.label: plain(fact.value) for fact in page_of(FEN_ROAD).facts}
    assert facts["Each cabinet"] == "789 wide, 2273 high"
    assert facts["Doors A, B, H and J"] == "391.5 wide, 2270 high"
    assert facts["Doors C and D"] == "391.5 wide, 1601 high"
    assert facts["Drawers E, F and G"] == "786 wide, 220 high"
    assert facts["Your left wall"] == "leans in by 5"
    assert facts["Your floor"] == "rises 5"
    assert plain(page_of(FEN_ROAD).thing) == "Three fitted cabinets, six doors, three drawers"


def test_what_comes_out_behind_doors_waits_for_them() -> None:
    page = page_of("templates/pantry tower.yaml")
    doors = tuple(leaf.name for leaf in page.leaves if leaf.label.startswith("Door"))
    inner = [leaf for leaf in page.leaves if leaf.name not in doors]
    assert len(doors) == 2
    assert inner
    assert {leaf.behind for leaf in inner} == {doors}
    assert {leaf.behind for leaf in page.leaves if leaf.name in doors} == {()}


def test_cabinets_in_two_alcoves_stand_each_in_its_own() -> None:
    page = page_of("templates/alcove pair.yaml")
    labels = [fact.label for fact in page.facts if fact.key == "opening"]
    assert labels == ["Between your walls, on the left", "Between your walls, on the right"]
    assert page.niche is not None
    face = page.niche.face
    upright = [s for s in page.niche.surfaces if {y for _, y, _ in s.corners} == {face}]
    assert len(upright) == 3  # left of them, between them, right of them


@pytest.mark.parametrize("design", ALL)
def test_the_drawing_shows_every_front_and_board(design: str) -> None:
    """A path for each piece but drawers' boxes, in the job's own mm."""
    assembly, page = job_of(design).assembly, page_of(design)
    assert assembly is not None
    svg = ElementTree.fromstring(page.elevation_svg)
    assert svg.get("data-mm") == "1"
    paths = [path.get("d", "") for path in svg.iter() if path.tag.endswith("path")]
    closed = [path for path in paths if path.endswith("Z")]
    boxes = sum(
        part.name.startswith(f"{group.name} / drawer")
        for group in assembly.groups
        for part in group.parts
    )
    assert len(closed) == len(assembly.parts) - boxes
