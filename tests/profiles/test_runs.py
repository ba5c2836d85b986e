"""How much wood runs take, in closed forms worked by hand; and the mitre of a curved run."""

from __future__ import annotations

import math
from typing import cast

import pytest

from parametric.model import Moulded, removed_volume
from parametric.outlines import Outline, Vertex, area_of
from parametric.paths import off
from parametric.profiles.meeting import mitre_line, smooth_runs
from parametric.profiles.moulding import Meets
from parametric.profiles.on_rails import negative
from parametric.runs import RunEnd, run_middle, run_volume
from tests.profiles.corners import (
    LONG,
    MOULDINGS,
    RAIL,
    SHOULDERS,
    THICK,
    WAYS,
    Head,
    corner,
    ovolo,
)
from tests.profiles.whole_frame import HEIGHTS, HIGH, OPENING, STILE, WIDE, frame

PI = math.pi
QUARTER_HOLLOW = (Vertex(0.0, 0.0), Vertex(8.0, 0.0, math.tan(PI / 8)), Vertex(0.0, 8.0))
"""A cove: a quarter of a circle of radius 8, whose middle is 8 * 4 / 3 pi = 3.3953 in."""
STRAIGHT = (Vertex(0.0, 0.0), Vertex(100.0, 0.0))


def end(*points: tuple[float, float], over: Outline = (), floor: Outline = ()) -> RunEnd:
    return RunEnd(line=tuple(Vertex(*p) for p in points), over=over, floor=floor)


SQUARE = (end((0, 0), (0, 8)), end((100, 0), (100, 8)))


def test_a_square_run_is_section_times_length() -> None:
    assert run_volume(QUARTER_HOLLOW, STRAIGHT, *SQUARE) == pytest.approx(16 * PI * 100, rel=1e-12)


def test_a_mitre_adds_the_first_moment() -> None:
    # at x in, the run is x longer: the area's moment, 16 pi * 32 / 3 pi = 512 / 3
    mitred = end((100, 0), (108, 8))
    assert run_volume(QUARTER_HOLLOW, STRAIGHT, SQUARE[0], mitred) == pytest.approx(
        1600 * PI + 512 / 3, rel=1e-12
    )


def test_a_coped_end_adds_the_square_of_the_section() -> None:
    # at depth y both are cut sqrt(64 - y^2): the integral of 64 - y^2 to 8 is 512 - 512 / 3
    over = end((100, 0), (100, 1), over=QUARTER_HOLLOW, floor=(Vertex(100, 0), Vertex(108, 0)))
    assert run_volume(QUARTER_HOLLOW, STRAIGHT, SQUARE[0], over) == pytest.approx(
        1600 * PI + 1024 / 3, rel=1e-12
    )


@pytest.mark.parametrize("bulge", [1.0, -1.0])
def test_a_curved_run_is_section_times_the_way_of_its_middle(bulge: float) -> None:
    # Pappus: round an arc of 300 through 1 rad; the wood is inside it, or outside it
    radius, middle = 300.0, 32 / (3 * PI)
    turn = 1.0 if bulge > 0 else -1.0
    at = [(radius * math.cos(a), radius * math.sin(a)) for a in (0.0, turn)]
    inwards = -0.1 if bulge > 0 else 0.1
    ends = [end((x, y), (x * (1 + inwards), y * (1 + inwards))) for x, y in at]
    path = (Vertex(*at[0], math.tan(turn / 4)), Vertex(*at[1]))
    expected = 16 * PI * (radius - middle if bulge > 0 else radius + middle)
    assert run_volume(QUARTER_HOLLOW, path, *ends) == pytest.approx(expected, rel=1e-12)


def test_the_middle_of_a_curved_run() -> None:
    # a ring sector's middle along its own axis: the integral of r^2 m(r) dr * 2 sin(1/2) / volume,
    # where m(r) = sqrt(64 - (r - 300)^2): 300^2 A + 600 A x + I, I = pi 8^4 / 16
    half = 0.5
    at = [(300 * math.sin(a), 300 * math.cos(a)) for a in (-half, half)]
    ends = [end((x, y), (x * 1.1, y * 1.1)) for x, y in at]
    path = (Vertex(*at[0], -math.tan(half / 2)), Vertex(*at[1]))
    area, middle = 16 * PI, 32 / (3 * PI)
    moment = (300**2 * area + 600 * area * middle + PI * 8**4 / 16) * 2 * math.sin(half)
    volume = area * (300 + middle)
    x, y, z = run_middle(QUARTER_HOLLOW, path, *ends)
    assert (x, y) == (pytest.approx(0.0, abs=1e-9), pytest.approx(moment / volume, rel=1e-12))
    # down from the face: the half of what is taken at each place, x^2 / 2 over the path; here
    # the integral of y (r + x/2)... is worked by the same rule with x and y changed over
    steps = 200000
    sums = [0.0, 0.0]
    for i in range(steps):
        deep = 8 * (i + 0.5) / steps
        far = math.sqrt(64 - deep**2)
        sums[0] += 300 * far + far**2 / 2
        sums[1] += deep * (300 * far + far**2 / 2)
    assert z == pytest.approx(sums[1] / sums[0], rel=1e-6)


def test_a_straight_mitre_is_half_of_its_corner() -> None:
    line = mitre_line((Vertex(0, 0), Vertex(100, 0)), (Vertex(100, 0), Vertex(100, -50)), 10.0)
    assert [v.bulge for v in line] == [0, 0]
    assert [v[:2] for v in line] == [(100, 0), (pytest.approx(110), pytest.approx(10))]


def test_the_mitre_of_an_arch_is_a_parabola() -> None:
    # as far from a line as from a circle about (-a, -b) through the corner: at x in,
    # z = -b + sqrt(b^2 + 2 (R - a) x); at the corner its slope is (R - a) / b = 0.5, not 45 deg
    radius, a = 300.0, 180.0
    b = math.sqrt(radius**2 - a**2)  # 240
    # seen with the stile's wood to the left, x to the left: mirror the circle's centre
    start = math.atan2(b, -a)
    sweep = 0.4
    ends = [
        (a + radius * math.cos(start + t), -b + radius * math.sin(start + t)) for t in (0.0, -sweep)
    ]
    arch = (Vertex(*ends[0], -math.tan(sweep / 4)), Vertex(*ends[1]))
    stile = (Vertex(0.0, -100.0), Vertex(0.0, 0.0))
    assert ends[0] == (pytest.approx(0.0, abs=1e-12), pytest.approx(0.0, abs=1e-12))
    line = mitre_line(stile, arch, 20.0)
    for vertex in line:
        by = -vertex.x
        z = -b + math.sqrt(b**2 + 2 * (radius - a) * by)
        assert vertex.y == pytest.approx(z, abs=1e-9)
    far = line[-1]
    # at 20 in: sqrt(240^2 + 2 * 120 * 20) - 240 = sqrt(62400) - 240 = 9.7999; at 45 deg it were 20
    assert (far.x, far.y) == (pytest.approx(-20.0), pytest.approx(9.79992, abs=1e-5))


@pytest.mark.parametrize("head", ["springs here", "rises into it", "half round"])
@pytest.mark.parametrize("name", MOULDINGS)
def test_everywhere_on_a_mitre_both_runs_are_equally_far(name: str, head: Head) -> None:
    made = corner(name, "mitred", head)
    run = next(c for c in made.rail.cuts if isinstance(c, Moulded))
    stile = (Vertex(run.path[0].x, -1.0), Vertex(run.path[0].x, 0.0))
    points = 0
    for figure in zip(run.start.line, run.start.line[1:], strict=False):
        for part in range(21):
            point = along(*figure, part / 20)
            difference = off(run.path[0], run.path[1], point) - off(*stile, point)
            assert abs(difference) < 1e-5
            points += 1
    assert points >= 21


def along(a: Vertex, b: Vertex, part: float) -> tuple[float, float]:
    """A point of an edge, by the circle through its ends and the top of its bow."""
    x, y = a.x + (b.x - a.x) * part, a.y + (b.y - a.y) * part
    if not a.bulge:
        return (x, y)
    chord = math.hypot(b.x - a.x, b.y - a.y)
    high = a.bulge * chord / 2
    radius = (chord**2 / 4 + high**2) / (2 * high)
    t = (part - 0.5) * chord
    rise = math.copysign(math.sqrt(radius**2 - t**2), radius) - (radius - high)
    return (x + (b.y - a.y) / chord * rise, y - (b.x - a.x) / chord * rise)


@pytest.mark.parametrize("both", [False, True])
@pytest.mark.parametrize(("name", "meets"), WAYS)
def test_a_frame_is_its_slab_less_the_openings_and_what_the_mouldings_take(
    name: str, meets: Meets, both: bool
) -> None:
    # round an opening W x H a place x in from the edge goes 2 (W + H) + 8 x: so the moulding
    # takes area * (2 (W + H)) + 8 * (moment of the area). No wood missing, none twice.
    moulding = MOULDINGS[name]
    steps, deep = 4000, float(moulding.depth)
    moment = (
        sum(
            (high**2 - low**2) / 2
            for i in range(steps)
            for low, high in moulding.spans_at(deep * (i + 0.5) / steps)
        )
        * deep
        / steps
    )
    taken = sum(moulding.area * 2 * (OPENING + high) + 8 * moment for high in HEIGHTS)
    slab = (WIDE * HIGH - OPENING * sum(HEIGHTS)) * THICK - taken * (2 if both else 1)
    total = sum(part.volume for part in frame(name, meets, both=both))
    assert total == pytest.approx(slab, abs=0.05 * (2 if both else 1))  # the moment's own error


def test_a_rail_coped_over_an_ovolo_by_hand() -> None:
    # 12 x 12 with fillets of 2 on a rail 180 wide under no arch, one coped end.
    # cope: behind 12 deep all 12 of the end, 32 * 12 * 180; in front what the stile has left,
    # 144 - 65.4602 = 78.5398 of section, over 180 less nothing
    made = corner("ovolo", "coped", "straight")
    cope, run = (cast(Moulded, c) for c in made.rail.cuts)
    left = PI * 25
    assert removed_volume(cope, made.rail.blank) == pytest.approx(
        (32 * 12 + left) * RAIL, rel=1e-12
    )
    # run: 400 of section, and over the cope the integral of p^2: 2 of it 12 wide, then
    # the quarter's (12 - sqrt(100 - t^2))^2 for t from -10 to 0: 1440 - 24 * 25 pi + 1000 - 1000/3
    squares = 2 * 144 + 1440 - 600 * PI + 1000 - 1000 / 3
    assert removed_volume(run, made.rail.blank) == pytest.approx(
        (144 - left) * SHOULDERS + squares, rel=1e-12
    )
    assert removed_volume(cast(Moulded, made.stile.cuts[0]), made.stile.blank) == pytest.approx(
        (144 - left) * LONG, rel=1e-12
    )


def test_the_negative_and_the_section_fill_the_end() -> None:
    for moulding in MOULDINGS.values():
        if moulding.copes:
            for both in (False, True):
                cut = negative(moulding, THICK, both=both)
                whole = float(moulding.width) * THICK
                left = moulding.area * (2 if both else 1)
                assert area_of(cut) == pytest.approx(whole - left, rel=1e-12)


def test_a_bead_is_not_coped() -> None:
    with pytest.raises(ValueError, match="a bead is mitred"):
        corner("bead", "coped", "straight")


def test_openings_too_near_for_their_mitres_are_refused() -> None:
    from parametric.figures import Figure
    from parametric.model import Blank
    from parametric.profiles.on_stiles import Opening, stile_cuts
    from parametric.profiles.sticking import Sticking

    def level(x: float) -> Outline:
        return (Vertex(x, STILE), Vertex(x, STILE + 100))

    blank = Blank(length=Figure(HIGH), width=Figure(STILE), thickness=Figure(THICK))
    sticking = Sticking(moulding=ovolo(), faces=("low face",), meets="mitred")

    def cuts(bar: float) -> int:
        openings = [
            Opening(low=level(100)[::1], high=level(300)[::-1]),
            Opening(low=level(300 + bar), high=level(600)[::-1]),
        ]
        return len(stile_cuts(sticking, blank, edge="high edge", wood=(0, HIGH), openings=openings))

    # a bar of twice the moulding's width ends in a point between them; narrower it would cross
    assert cuts(24.0) == 5
    with pytest.raises(ValueError, match="their mitres cross"):
        cuts(23.9)


def test_a_path_with_a_point_is_two_runs() -> None:
    pointed = (Vertex(0, 0, -0.2), Vertex(100, 150, -0.2), Vertex(200, 0))
    assert [len(run) for run in smooth_runs(pointed)] == [2, 2]
    # the two halves of one arc are one run
    half = math.tan(PI / 8)
    assert [
        len(run) for run in smooth_runs((Vertex(0, 0, -half), Vertex(9, 9, -half), Vertex(18, 0)))
    ] == [3]
