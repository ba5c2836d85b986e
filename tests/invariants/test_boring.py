"""What must be true of every hole of a cabinet that can be made, tried on random ones."""

from __future__ import annotations

from collections import Counter, defaultdict
from collections.abc import Iterator
from itertools import pairwise

import pytest
from hypothesis import HealthCheck, given, settings

from parametric.cases.boring import BoringSpec
from parametric.hardware.cup_hinge import CupHinges
from parametric.job import Job
from parametric.model import Group, Shaped
from parametric.resolve.casework import Casework, StandingCase
from tests.invariants.boxes import Box, around, placed, wood
from tests.invariants.casework import bored_cabinets, runs
from tests.invariants.holes import (
    Hole,
    begins_in,
    beside_box,
    faces_one_another,
    holes,
    left_at_the_edges,
    left_behind,
    one_middle,
    others_cut,
    slot_box,
    wood_between,
)
from tests.invariants.test_casework import checked, made

CLOSE = 1e-4
TRIES = settings(max_examples=25, suppress_health_check=[HealthCheck.too_slow])
GLUE = 2.0
"""Free beyond a dowel, for glue; common practice, no source."""


def bored(text: str) -> tuple[Job, Casework, list[Hole]] | None:
    """A cabinet that can be made, and every hole in it."""
    job = checked(text)
    casework = made(job)
    if casework is None:
        return None
    assert job.assembly is not None
    return job, casework, holes(job.assembly)


def spec_of(casework: Casework) -> BoringSpec:
    return casework.bored[0].spec


def by_mouth(found: list[Hole]) -> dict[tuple[float, ...], list[Hole]]:
    """Holes by where they open in the room, to the tenth of a micrometre."""
    places: dict[tuple[float, ...], list[Hole]] = defaultdict(list)
    for hole in found:
        places[tuple(round(x, 4) + 0.0 for x in hole.opens)].append(hole)
    return places


@TRIES
@given(bored_cabinets())
def test_every_dowel_hole_has_its_other_half(text: str) -> None:
    """Mouth on mouth, opposite ways in, one width; a dowel's length deep and room for glue."""
    found = bored(text)
    if found is None:
        return
    _, casework, every = found
    dowelled = [hole for hole in every if hole.cut.name == "dowel holes"]
    places = by_mouth(dowelled)
    for hole in dowelled:
        here = places[tuple(round(x, 4) + 0.0 for x in hole.opens)]
        mates = [other for other in here if faces_one_another(hole, other)]
        assert len(mates) == 1, hole.says
        (mate,) = mates
        assert mate.across == pytest.approx(hole.across), hole.says
        if hole.group.startswith("cabinet") and "drawer" not in hole.part.name:
            thick, long = map(float, spec_of(casework).dowel)
            assert hole.across == pytest.approx(thick)
            assert hole.deep + mate.deep == pytest.approx(long + GLUE)


@TRIES
@given(bored_cabinets())
def test_every_screw_goes_through_into_its_thread(text: str) -> None:
    """Head, shank and thread on one line, each narrower than the last, as deep as the screw is long."""
    found = bored(text)
    if found is None:
        return
    _, casework, every = found
    spec = spec_of(casework)
    threads, shanks, heads = (
        [hole for hole in every if hole.cut.name == f"screw {word}"]
        for word in ("threads", "shanks", "heads")
    )
    assert len(threads) == len(shanks) == len(heads)
    long = float(spec.screw[1])
    for thread in threads:
        (shank,) = (hole for hole in shanks if apart(hole.ends, thread.opens) < CLOSE)
        (head,) = (hole for hole in heads if apart(hole.ends, shank.opens) < CLOSE)
        assert head.part is shank.part
        assert shank.part is not thread.part
        assert head.across > shank.across > thread.across
        assert parallel(head, shank)
        assert parallel(shank, thread)
        assert shank.deep + thread.deep == pytest.approx(long + GLUE)
    # A head is driven from outside: nothing stands before it.
    assert casework is not None
    for head in heads:
        assert not list(standing_before(head, every))


def apart(a: tuple[float, ...], b: tuple[float, ...]) -> float:
    return sum((x - y) ** 2 for x, y in zip(a, b, strict=True)) ** 0.5


def parallel(one: Hole, other: Hole) -> bool:
    ways = [[(b - a) / h.deep for a, b in zip(h.opens, h.ends, strict=True)] for h in (one, other)]
    return sum(a * b for a, b in zip(*ways, strict=True)) > 1 - 1e-9


def standing_before(head: Hole, every: list[Hole]) -> Iterator[Hole]:
    """Holes of other boards that open on the same face of the same board, over this one's mouth."""
    outward = [a - b for a, b in zip(head.opens, head.ends, strict=True)]
    axis = max(range(3), key=lambda i: abs(outward[i]))
    for other in every:
        if other.part is head.part or other.group != head.group:
            continue
        same_plane = abs(other.opens[axis] - head.opens[axis]) < CLOSE
        facing = (other.ends[axis] - other.opens[axis]) * outward[axis] > 0
        if same_plane and facing and apart(other.opens, head.opens) < head.across / 2:
            yield other


@TRIES
@given(bored_cabinets())
def test_no_two_holes_meet_and_none_breaks_out(text: str) -> None:
    """The web that the workshop asks for between holes of one face; behind a hole, at the edges of
    its board and to what is cut from another face, what it asks for behind one.
    """
    found = bored(text)
    if found is None:
        return
    _, casework, every = found
    spec = spec_of(casework)
    web, behind = float(spec.web) - CLOSE, float(spec.behind) - CLOSE
    by_part: dict[int, list[Hole]] = defaultdict(list)
    for hole in every:
        by_part[id(hole.part)].append(hole)
    seen: set[str] = set()
    for own in by_part.values():
        if own[0].part.mark in seen:
            continue
        seen.add(own[0].part.mark)
        own.sort(key=lambda hole: hole.box[0][0])
        cuts = list(others_cut(own[0].part))
        for index, hole in enumerate(own):
            assert hole.through or left_behind(hole) >= behind, hole.says
            assert left_at_the_edges(hole) >= behind, hole.says
            for cut, box in cuts:
                if begins_in(hole, cut, box) or comes_out_in(hole, box):
                    continue
                least = web if getattr(cut, "face", None) == hole.cut.face else behind
                assert beside_box(hole, box) >= least, f"{hole.says} and {cut.name}"
            for other in own[index + 1 :]:
                if other.box[0][0] - hole.box[1][0] > web:
                    break
                if one_middle(hole, other):
                    continue
                least = web if other.cut.face == hole.cut.face else behind
                assert wood_between(hole, other) >= least, f"{hole.says} and {other.says}"


def comes_out_in(hole: Hole, box: Box) -> bool:
    """Whether a hole that goes through comes out in a recess that is wider than it."""
    return hole.through and all(
        box[0][i] - CLOSE <= hole.box[0][i] and hole.box[1][i] <= box[1][i] + CLOSE
        for i in range(3)
        if i != hole.axis
    )


@TRIES
@given(bored_cabinets())
def test_every_shelf_lies_on_its_pins(text: str) -> None:
    """On top of four pins, two beyond each of its ends, level with one another."""
    found = bored(text)
    if found is None:
        return
    job, casework, every = found
    assert job.assembly is not None
    pins = [hole for hole in every if hole.cut.name == "pin holes"]
    across = float(spec_of(casework).pins[0])
    for standing in casework.cases:
        group = next(g for g in job.assembly.groups if g.name == standing.name)
        for shelf in (part for part in group.parts if part.noun == "shelf"):
            low, high = placed(wood(shelf), shelf, group.placement)
            under = [
                hole
                for hole in pins
                if hole.group == group.name
                and abs(hole.opens[2] + across / 2 - low[2]) < CLOSE
                and low[1] < hole.opens[1] < high[1]
                and (low[0] - 5 < hole.opens[0] < low[0] or high[0] < hole.opens[0] < high[0] + 5)
            ]
            assert len(under) == 4, shelf.name
            left = [hole for hole in under if hole.opens[0] < low[0]]
            right = [hole for hole in under if hole.opens[0] > high[0]]
            assert sorted(hole.opens[1] for hole in left) == pytest.approx(
                sorted(hole.opens[1] for hole in right)
            )


@TRIES
@given(bored_cabinets())
def test_every_cup_has_its_plate(text: str) -> None:
    """Two screws half a step over and under the middle of each cup, in the board that it hangs on."""
    found = bored(text)
    if found is None:
        return
    job, casework, every = found
    assert job.assembly is not None
    assert job.resolved is not None
    plates = [hole for hole in every if hole.cut.name == "plate holes"]
    half = float(spec_of(casework).plate_pitch) / 2
    wanted: Counter[float] = Counter()
    for group in job.assembly.groups:
        for part in group.parts:
            for cut in part.cuts:
                if isinstance(cut, Shaped) and cut.name == "hinge cup":
                    ups = [v.x for v in cut.outline]
                    middle = part.placement.point(((min(ups) + max(ups)) / 2, 0.0, 0.0))
                    up = group.placement.point(middle)[2]
                    wanted.update(round(up + way * half, 3) for way in (-1, 1))
    if all(standing.case.frame is None for standing in casework.cases):
        assert Counter(round(hole.opens[2], 3) for hole in plates) == wanted
    for door in job.resolved.doors:
        standing = casework.case(door.case)
        for leaf in door.leaves:
            for own in leaf.hinges:
                if isinstance(own.hinges, CupHinges) and standing.case.frame is None:
                    x = hung_on(standing, float(leaf.hung.left + leaf.hung.width / 2), own.side)
                    here = [h for h in plates if abs(h.opens[0] - x) < CLOSE]
                    assert len(here) >= 2 * len(own.hinges.places), leaf.name


def hung_on(standing: StandingCase, middle: float, side: str) -> float:
    """The face of the board, in the room, that a leaf's hinges are screwed to."""
    case = standing.case
    opening = float(case.opening.left)
    bay = next(
        bay
        for bay in case.bays
        if float(bay.left) <= opening + middle <= float(bay.left + bay.width)
    )
    face = bay.left if side == "left" else bay.left + bay.width
    return standing.stands.origin[0] + float(face)


@TRIES
@given(bored_cabinets())
def test_every_tenon_s_slot_has_its_other_half(text: str) -> None:
    """As wide and as long in the face as in the end; a tenon's length deep, and room for glue."""
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    assert job.assembly is not None
    long = float(spec_of(casework).loose_tenon[2])
    for group in job.assembly.groups:
        slots = [
            placed(box, part, group.placement)
            for part in group.parts
            for cut in part.cuts
            if cut.name == "tenon slot" and (box := slot_box(cut, part))
        ]
        for slot in slots:
            mates = [other for other in slots if other is not slot and one_slot(slot, other, long)]
            assert len(mates) == 1, slot


def one_slot(one: Box, other: Box, long: float) -> bool:
    """Whether two slots are one: alike across, mouth on mouth, together a tenon's length deep."""
    alike = [i for i in range(3) if all(abs(one[e][i] - other[e][i]) < CLOSE for e in (0, 1))]
    if len(alike) != 2:
        return False
    (axis,) = (i for i in range(3) if i not in alike)
    mouths = min(abs(one[1][axis] - other[0][axis]), abs(other[1][axis] - one[0][axis]))
    deep = one[1][axis] - one[0][axis] + other[1][axis] - other[0][axis]
    return mouths < CLOSE and abs(deep - long - GLUE) < CLOSE


@settings(TRIES, max_examples=15)
@given(runs())
def test_reveals_are_equal_across_neighbouring_cabinets(text: str) -> None:
    """Where two cabinets stand side by side their fronts leave the reveals of both between them, all
    the way up, as the parts of the fronts themselves stand.
    """
    job = checked(text)
    casework = made(job)
    if casework is None:
        return
    assert job.assembly is not None
    assert job.resolved is not None
    groups = {group.name: group for group in job.assembly.groups}
    fronts = {
        door.case: [front_box(groups[leaf.name]) for leaf in door.leaves]
        for door in job.resolved.doors
    }
    for run in casework.runs:
        for left, right in pairwise(run.cases):
            one, two = casework.case(left), casework.case(right)
            edge = two.stands.origin[0]
            touches = edge - one.stands.origin[0] - float(one.case.box.width) < CLOSE
            if not touches or {c.case.spec.fronts for c in (one, two)} != {"overlay"}:
                continue
            ends = [edge - high[0] for _, high in fronts.get(left, [])]
            begins = [low[0] - edge for low, _ in fronts.get(right, [])]
            for standing, bay, free in ((one, -1, ends), (two, 0, begins)):
                spec = standing.case.spec
                reveal = float(spec.edge_reveal)
                assert all(gap >= reveal - CLOSE for gap in free)
                if any(front.kind != "open" for front in spec.fronts_of(spec.bays[bay])):
                    assert min(free) == pytest.approx(reveal)


def front_box(group: Group) -> Box:
    """The outside of a front, shut, without the drawer behind it."""
    boxes = [
        placed(wood(part), part, group.placement)
        for part in group.parts
        if not part.supplied and "drawer" not in part.name
    ]
    return around([corner for box in boxes for corner in box])
