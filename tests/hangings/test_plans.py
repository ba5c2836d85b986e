"""Every kind of door seen from above, through all of its motion: nothing meets anything.

A plan of rectangles, by sums that the package has not: leaves by their corners where
`model.along` puts them, two of them apart when some side of either parts them (the
separating axis theorem), jambs as the wall beside the plumb clear width.
"""

from __future__ import annotations

import itertools
import math

import pytest

from parametric.hangings.hanging import Hanging, HungLeaf
from parametric.model import Placement, State, Turn, Vector, along
from parametric.resolve.door import Resolved
from tests.hangings.doors import KINDS, job_of

Corner = tuple[float, float]
WALL = 150.0
STEPS = 20


@pytest.fixture(scope="module", params=list(KINDS))
def resolved(request: pytest.FixtureRequest, tmp_path_factory: pytest.TempPathFactory) -> Resolved:
    job = job_of(request.param, tmp_path_factory.mktemp("door"))
    assert job.resolved is not None, [p.message for p in job.problems if p.level == "stop"]
    return job.resolved


Solid = tuple[float, float, float, float, float, float]
"""x from, to; y from, to (0 the front); z from, to; in the leaf, mm."""


def solids_of(leaf: HungLeaf, thick: float) -> list[Solid]:
    """A leaf as boxes: one, or where its edge is stepped the whole part and the lip."""
    width, height = float(leaf.width), float(leaf.height)
    whole, lips = [0.0, width, 0.0, thick, 0.0, height], []
    for step in leaf.rebates:
        lip, wide, deep = list(whole), float(step.width), float(step.depth)
        low = step.edge in ("left", "foot")
        axis = 0 if step.edge in ("left", "right") else 4
        at = whole[axis] + wide if low else whole[axis + 1] - wide
        lip[axis + 1 if low else axis] = at
        whole[axis if low else axis + 1] = at
        lip[2 if step.face == "front" else 3] = deep if step.face == "front" else thick - deep
        lips.append(lip)
    return [(a[0], a[1], a[2], a[3], a[4], a[5]) for a in (whole, *lips)]


def placed(leaf: HungLeaf, thick: float, solid: Solid, part: float) -> list[Corner]:
    """The four corners of a box from above when its leaf has gone a part of its way."""
    shut = Placement(origin=(float(leaf.left), -float(leaf.plane) - thick / 2, float(leaf.foot)))
    stands = along(shut, leaf.motion, part)
    x0, x1, y0, y1, _, _ = solid
    corners = [stands.point((x, y, 0.0)) for x, y in ((x0, y0), (x1, y0), (x1, y1), (x0, y1))]
    return [(x, y) for x, y, _ in corners]


def plan_of(leaf: HungLeaf, thick: float, part: float) -> list[Corner]:
    """The four corners of a whole leaf from above when it has gone a part of its way."""
    return placed(leaf, thick, (0.0, float(leaf.width), 0.0, thick, 0.0, 0.0), part)


def one_height(a: HungLeaf, b: HungLeaf, one: Solid, other: Solid) -> bool:
    """Whether two boxes of two leaves are at one height anywhere."""
    low = max(float(a.foot) + one[4], float(b.foot) + other[4])
    return low < min(float(a.foot) + one[5], float(b.foot) + other[5]) - 1e-6


def apart(a: list[Corner], b: list[Corner]) -> float:
    """How far two rectangles stand apart along the side that parts them best, mm; negative: they meet."""
    best = -math.inf
    for ring in (a, b):
        for p, q in zip(ring, (*ring[1:], ring[0]), strict=True):
            nx, ny = q[1] - p[1], p[0] - q[0]
            long = math.hypot(nx, ny)
            ones = [(x * nx + y * ny) / long for x, y in a]
            others = [(x * nx + y * ny) / long for x, y in b]
            best = max(best, min(others) - max(ones), min(ones) - max(others))
    return best


def states(hanging: Hanging) -> list[State]:
    """The states, and twenty steps on the straight way from shut to each of them."""
    return [
        State(name=f"{state.name}, {i}", open={n: v * i / STEPS for n, v in state.open.items()})
        for state in hanging.states
        for i in range(STEPS + 1)
    ]


def test_no_leaf_meets_another(resolved: Resolved) -> None:
    door = resolved.door
    thick = float(door.leaves[0].thickness)
    for state in states(door.hanging):
        for a, b in itertools.combinations(door.hanging.leaves, 2):
            for one, other in itertools.product(solids_of(a, thick), solids_of(b, thick)):
                if not one_height(a, b, one, other):
                    continue
                plans = [
                    placed(leaf, thick, solid, state.open[leaf.name])
                    for leaf, solid in ((a, one), (b, other))
                ]
                # Leaves of one track stand side by side and touch; any others keep apart.
                least = -1e-6 if a.travel is not None and a.track == b.track else 0.05
                assert apart(*plans) > least, (state.name, a.name, b.name)


def test_no_leaf_enters_a_jamb(resolved: Resolved) -> None:
    """Of what stands within the wall's thickness nothing lies beyond the clear width, but in a pocket."""
    door = resolved.door
    if door.hanging.on_wall or door.hanging.pocket is not None:
        pytest.skip("it covers, or goes into the wall")
    low = float(door.opening.clear_left)
    high = low + float(door.opening.clear)
    thick = float(door.leaves[0].thickness)
    jambs = (
        [(low - 500, 0.0), (low, 0.0), (low, WALL), (low - 500, WALL)],
        [(high, 0.0), (high + 500, 0.0), (high + 500, WALL), (high, WALL)],
    )
    for state in states(door.hanging):
        for leaf in door.hanging.leaves:
            plan = plan_of(leaf, thick, state.open[leaf.name])
            for jamb in jambs:
                # What slides in an opening runs from jamb to jamb; what turns must clear both.
                least = -1e-6 if leaf.swing is None else 0.01
                assert apart(plan, jamb) > least, (state.name, leaf.name)


def test_the_clear_way_is_what_stays_free(resolved: Resolved) -> None:
    """Open, the opening less what of it any leaf stands before or in, level across the opening."""
    door = resolved.door
    thick = float(door.leaves[0].thickness)
    low = float(door.opening.clear_left)
    high = low + float(door.opening.clear)
    best = 0.0
    for state in door.hanging.states:
        taken = sorted(
            (min(x for x, _ in plan), max(x for x, _ in plan))
            for leaf in door.hanging.leaves
            if (plan := plan_of(leaf, thick, state.open[leaf.name]))
        )
        at, free = low, 0.0
        for a, b in [*taken, (high, high)]:
            free = max(free, min(a, high) - at)
            at = max(at, b)
        best = max(best, free)
    assert float(door.hanging.clear_way) == pytest.approx(best, abs=1e-6 + door_slack(door.hanging))


def door_slack(hanging: Hanging) -> float:
    """Over the face the way is promised from the narrowest reading, up to 5 less than plumb there."""
    return 5.0 if hanging.on_wall else 0.0


def test_the_chain_across_adds_up(resolved: Resolved) -> None:
    """Gaps and leaves make the cover; leaves that pass share their overlaps."""
    hanging = resolved.door.hanging
    total = sum(float(span.size) for span in hanging.across)
    shared = float(hanging.overlap or 0.0) * (len(hanging.leaves) - 1)
    assert total - shared == pytest.approx(float(hanging.cover), abs=1e-9)


def test_every_leaf_stays_on_its_track(resolved: Resolved) -> None:
    """A leaf that slides never leaves its track; every pin of a bifold stays in it."""
    hanging = resolved.door.hanging
    for leaf in hanging.leaves:
        if leaf.track is None:
            continue
        track = hanging.tracks[leaf.track]
        low, high = float(track.left), float(track.left + track.length)
        for i in range(STEPS + 1):
            if leaf.swing is None:
                left = float(leaf.left) + float(leaf.travel or 0.0) * i / STEPS
                assert low - 1e-9 <= left
                assert left + float(leaf.width) <= high + 1e-9
                continue
            for pin in pins_of(hanging, leaf):
                at = along(Placement(origin=pin), leaf.motion, i / STEPS).origin
                assert at[1] == pytest.approx(-float(track.plane), abs=1e-9)
                assert low - 1e-9 <= at[0] <= high + 1e-9


def pins_of(hanging: Hanging, leaf: HungLeaf) -> list[Vector]:
    """Where a folding leaf is held: the pivot at a jamb, and a pin in every second leaf of a chain."""
    pivot = leaf.motion[-1]
    assert isinstance(pivot, Turn)
    first = next(one for one in hanging.leaves if one.motion == (pivot,))
    left, right = float(first.left), float(first.left + first.width)
    from_left = float(pivot.point[0]) - left
    at_left = from_left < float(first.width) / 2
    inset = from_left if at_left else right - float(pivot.point[0])
    if leaf is first:
        return [pivot.point]
    if len(leaf.motion) % 2:
        return []
    far = float(leaf.left + leaf.width) - inset if at_left else float(leaf.left) + inset
    return [(far, -float(leaf.plane), 0.0)]


def test_a_gap_that_is_told_enough_is_enough_and_no_more(resolved: Resolved) -> None:
    """What the turn needs of a gap, found by going through the motion in a thousand steps."""
    hanging = resolved.door.hanging
    thick = float(resolved.door.leaves[0].thickness)
    low = float(resolved.door.opening.clear_left)
    high = low + float(resolved.door.opening.clear)
    for gap in hanging.clearances:
        if gap.key == "meeting gap":
            continue
        pushes: list[float] = []
        for leaf in hanging.leaves:
            shut = plan_of(leaf, thick, 0.0)
            for i in range(1001):
                plan = plan_of(leaf, thick, i / 1000)
                inside = [(x, y) for x, y in plan if y > -1e-9]
                if "pivot" in gap.where and "pivot" not in (leaf.left_edge, leaf.right_edge):
                    continue
                if "closing" in gap.where and "closing" not in (leaf.left_edge, leaf.right_edge):
                    continue
                at_left = leaf.side_of("pivot" if "pivot" in gap.where else "closing") == "left"
                edge = min(x for x, _ in shut) if at_left else max(x for x, _ in shut)
                pushes += [edge - x if at_left else x - edge for x, _ in inside or plan]
        assert max(pushes) == pytest.approx(float(gap.needs), abs=0.02), gap.where
        assert low < high
