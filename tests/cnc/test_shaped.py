"""Shaped cuts in machine files, read back by ezdxf: the same area, true arcs, the right way over."""

from __future__ import annotations

import io
import math
from collections.abc import Callable

import ezdxf
import pytest
from ezdxf.entities import LWPolyline

from parametric.cnc.bench_work import bench_work
from parametric.cnc.cutter_fits import fits, walls
from parametric.cnc.notes import Stamp
from parametric.cnc.setups import SetUp, set_ups
from parametric.model import FACES, Face, Making, Shaped, Trim, Vector
from parametric.outlines import Outline, Vertex, area_of, rectangle, rounded_rectangle
from parametric.writers.dxf import write_cnc_dxf
from tests.cnc.pieces import GLUED, ODD, ROUTER, SAW, SIX, odd_block
from tests.readers.cnc_dxf import read

STAMP = Stamp(job="a job", fingerprint="0123-4567", revision="A")
LONG, WIDE, THICK = 300.0, 90.0, 50.0

EIGHTH, QUARTER = math.tan(math.pi / 16), math.tan(math.pi / 8)
"""Bulges of an eighth and a quarter of a turn."""
RUN, RISE = 8 * math.sin(math.pi / 4), 8 * (1 - math.cos(math.pi / 4))
"""What an eighth of a turn of r 8 goes along and up."""
ACROSS = 2 * 10 * math.sin(math.pi / 4)
"""The chord of a quarter turn of r 10."""
FAR = 10 + 2 * RUN + ACROSS

WAVE: Outline = (
    # a knoll of wood, r 10 between two hollows of r 8
    Vertex(10, 6, EIGHTH),
    Vertex(10 + RUN, 6 + RISE, -QUARTER),
    Vertex(10 + RUN + ACROSS, 6 + RISE, EIGHTH),
    # two corners of r 8
    Vertex(FAR, 6, QUARTER),
    Vertex(FAR + 8, 14),
    Vertex(FAR + 8, 24, QUARTER),
    Vertex(FAR, 32, 0.2),  # bulging upwards by 0.2 of half its chord
    Vertex(10, 32, 1.0),  # half a turn of r 13, out to x = -3
)
WAVE_AT = 8.0
"""Everything 8 further along u, so that the half turn is 5 clear of the edge."""
WAVE_MOVED = tuple(v._replace(x=v.x + WAVE_AT) for v in WAVE)


def shaped(face: Face, outline: Outline, depth: float = 7.0, making: Making = SIX) -> Shaped:
    return Shaped(name="shape", face=face, outline=outline, depth=depth, making=making)


def only(found: tuple[SetUp, ...]) -> SetUp:
    (one,) = found
    return one


def drawn(set_up: SetUp, layer: str) -> LWPolyline:
    """The one outline of a layer of the file, as ezdxf has it."""
    document = ezdxf.read(io.StringIO(write_cnc_dxf(set_up, STAMP).decode()))
    (found,) = document.modelspace().query(f'LWPOLYLINE[layer=="{layer}"]')
    assert isinstance(found, LWPolyline)
    return found


def swept(outline: LWPolyline) -> float:
    """Its area by Green's theorem, edge by edge: half the integral of x dy - y dx."""
    points = [(x, y, bulge) for x, y, bulge in outline.get_points("xyb")]
    total = 0.0
    for (x0, y0, bulge), (x1, y1, _) in zip(points, [*points[1:], points[0]], strict=True):
        if bulge == 0:
            total += x0 * y1 - x1 * y0
            continue
        centre, start, end, radius = ezdxf.math.bulge_to_arc((x0, y0), (x1, y1), bulge)
        turn = (end - start) % math.tau * math.copysign(1, bulge)
        total += radius**2 * turn + centre.x * (y1 - y0) - centre.y * (x1 - x0)
    return total / 2


# --- each face, and the leaf from both sides ------------------------------------------------

FROM_FILE: dict[Face, Callable[[float, float], tuple[float, float]]] = {
    # what a cutter above the face sees, by hand from the table of views, as (u, v) of the face
    "high face": lambda x, y: (x, y),
    "low face": lambda x, y: (x, WIDE - y),
    "low edge": lambda x, y: (x, y),
    "high edge": lambda x, y: (x, THICK - y),
    "high end": lambda x, y: (x, y),
    "low end": lambda x, y: (x, THICK - y),
}
MARKS = {
    # corners, and of each arc its point furthest out, worked by hand
    *((v.x + WAVE_AT, v.y) for v in WAVE),
    (10 + 8 * math.sin(math.pi / 8) + WAVE_AT, 14 - 8 * math.cos(math.pi / 8)),
    (10 + RUN + ACROSS / 2 + WAVE_AT, 6 + RISE + 10 * (1 - math.cos(math.pi / 4))),
    (FAR - 8 * math.sin(math.pi / 8) + WAVE_AT, 14 - 8 * math.cos(math.pi / 8)),
    (FAR + 8 * math.sin(math.pi / 4) + WAVE_AT, 14 - 8 * math.cos(math.pi / 4)),
    (FAR + 8 * math.sin(math.pi / 4) + WAVE_AT, 24 + 8 * math.cos(math.pi / 4)),
    ((10 + FAR) / 2 + WAVE_AT, 32 + 0.2 * (FAR - 10) / 2),
    (-3 + WAVE_AT, 19.0),
}


def marks(outline: LWPolyline) -> set[tuple[float, float]]:
    """Its corners and the middles of its arcs, by the bulge itself: half the chord times it."""
    found = set()
    points = list(outline.get_points("xyb"))
    for (x0, y0, bulge), (x1, y1, _) in zip(points, [*points[1:], points[0]], strict=True):
        found.add((x0, y0))
        if bulge:
            found.add(
                ((x0 + x1) / 2 + bulge * (y1 - y0) / 2, (y0 + y1) / 2 - bulge * (x1 - x0) / 2)
            )
    return found


def same(a: set[tuple[float, float]], b: set[tuple[float, float]]) -> bool:
    return all(
        any(math.dist(p, q) < 2e-6 for q in other) for one, other in ((a, b), (b, a)) for p in one
    )


@pytest.mark.parametrize("face", FACES)
def test_the_outline_on_each_face_lies_as_the_cutter_sees_it(face: Face) -> None:
    set_up = only(set_ups(odd_block((shaped(face, WAVE_MOVED),))))
    outline = drawn(set_up, "pocket_d7")
    assert outline.closed
    assert outline.dxf.elevation == -7.0
    assert swept(outline) == pytest.approx(area_of(WAVE_MOVED), rel=1e-6)
    assert swept(outline) > 0, "it runs clockwise"
    back = {FROM_FILE[face](x, y) for x, y in marks(outline)}
    assert same(back, MARKS)
    # r 8 corners, sides 26 apart: a cutter of 6 goes round, and the smallest corner is 8
    (operation,) = set_up.operations
    assert operation.corner == pytest.approx(8.0)
    assert not operation.note
    (removal,) = read(write_cnc_dxf(set_up, STAMP)).removals
    assert removal.volume == pytest.approx(7 * area_of(WAVE_MOVED), rel=1e-6)


UP, RIGHT = (0.0, 0.0, 1.0), (1.0, 0.0, 0.0)
LEFT = (-1.0, 0.0, 0.0)


@pytest.mark.parametrize(
    ("face", "origin", "x", "y", "side", "into_file"),
    [
        # a left stile, low face to the front: u runs up, v to the right
        ("low face", (0, 0, 0), UP, RIGHT, "front", lambda u, v: (v, u)),
        # its high face is the leaf's back, seen turned over: v from the right edge of 90
        ("high face", (0, 0, 0), UP, RIGHT, "back", lambda u, v: (WIDE - v, u)),
        # a rail, high face to the front: as it lies; its low face turned over end for end
        ("high face", (0, 50, 0), RIGHT, UP, "front", lambda u, v: (u, v)),
        ("low face", (0, 50, 0), RIGHT, UP, "back", lambda u, v: (LONG - u, v)),
        # a right stile, turned about its length
        ("low face", (90, 50, 0), UP, LEFT, "back", lambda u, v: (v, u)),
    ],
)
def test_a_glued_leaf_from_the_front_and_from_the_back(
    face: Face,
    origin: Vector,
    x: Vector,
    y: Vector,
    side: str,
    into_file: Callable[[float, float], tuple[float, float]],
) -> None:
    cut = shaped(face, WAVE_MOVED, making=GLUED)
    set_up = only(set_ups(odd_block((cut,), origin=origin, x=x, y=y)))
    assert set_up.face_up == side
    outline = drawn(set_up, "pocket_d7")
    assert same(marks(outline), {into_file(u, v) for u, v in MARKS})
    assert swept(outline) == pytest.approx(area_of(WAVE_MOVED), rel=1e-6)


# --- an arched rail -------------------------------------------------------------------------

CENTRE, RADIUS = (100.0, -500.0), 540.0


def height(x: float, radius: float = RADIUS) -> float:
    return math.sqrt(radius**2 - (x - CENTRE[0]) ** 2) + CENTRE[1]


def bow(x0: float, x1: float, radius: float = RADIUS) -> float:
    turn = math.asin((x0 - CENTRE[0]) / radius) - math.asin((x1 - CENTRE[0]) / radius)
    return math.tan(turn / 4)


UNDER: Outline = (
    Vertex(0, 0),
    Vertex(LONG, 0),
    Vertex(LONG, height(LONG), bow(LONG, 0)),
    Vertex(0, height(0)),
)
OUTER = RADIUS + 9.5
REBATE: Outline = (
    Vertex(0, height(0), bow(0, LONG)),
    Vertex(LONG, height(LONG)),
    Vertex(LONG, height(LONG, OUTER), bow(LONG, 0, OUTER)),
    Vertex(0, height(0, OUTER)),
)


def test_an_arched_underside_and_the_rebate_behind_it() -> None:
    cuts = (
        shaped("high face", UNDER, THICK, ROUTER),
        shaped("low face", REBATE, 22.0, ROUTER),
    )
    found = {one.face: one for one in set_ups(odd_block(cuts), cutters=(6.0, 9.0, 12.0))}
    arch, rebate = found["high face"], found["low face"]
    for set_up, layer, outline in ((arch, "cut_through", UNDER), (rebate, "pocket_d22", REBATE)):
        line = drawn(set_up, layer)
        assert swept(line) == pytest.approx(area_of(outline), rel=1e-6)
        read(write_cnc_dxf(set_up, STAMP))
    # every arc of the file is on the circle: r 540 about 100; -500, turned over on the back
    for set_up, layer in ((arch, "cut_through"), (rebate, "pocket_d22")):
        points = list(drawn(set_up, layer).get_points("xyb"))
        arcs = [
            ezdxf.math.bulge_to_arc(a[:2], b[:2], a[2])
            for a, b in zip(points, [*points[1:], points[0]], strict=True)
            if a[2]
        ]
        wanted = {RADIUS} if layer == "cut_through" else {RADIUS, OUTER}
        assert {round(radius, 3) for *_, radius in arcs} == wanted
        middle = -500 if layer == "cut_through" else WIDE + 500
        for centre, *_ in arcs:
            assert (centre.x, centre.y) == pytest.approx((100, middle), abs=1e-3)
    # the arch is open below, so the largest cutter goes; between the arcs are 9.5, open at the ends
    assert arch.operations[0].cutter == 12.0
    assert rebate.operations[0].cutter == 9.0
    assert rebate.operations[0].corner == pytest.approx(OUTER)
    assert all("run the cutter past" in one.operations[0].note for one in (arch, rebate))


# --- cutters --------------------------------------------------------------------------------

WOOD = (0.0, 0.0, LONG, WIDE)


@pytest.mark.parametrize(
    ("outline", "largest"),
    [
        (rounded_rectangle((10, 10, 50, 30), (4.0,) * 4), 8.0),  # its corners
        (rounded_rectangle((10, 10, 50, 30), (10.0,) * 4), 20.0),  # its width
        (UNDER, 2 * RADIUS),  # open below: only its own radius
        (REBATE, 9.5),  # between two arcs about one centre
        # a waist of 22 between two corners of wood, open at both ends
        (
            (
                Vertex(0, 0),
                Vertex(150, 18),
                Vertex(300, 0),
                Vertex(300, 60),
                Vertex(150, 40),
                Vertex(0, 60),
            ),
            22.0,
        ),
        # a corner of wood at 30;20 opposite a straight side at y = 50, open at both ends
        (
            (Vertex(0, 0), Vertex(30, 20), Vertex(300, 20), Vertex(300, 50), Vertex(0, 50)),
            30.0,
        ),
    ],
)
def test_the_largest_cutter_that_leaves_the_outline_as_drawn(
    outline: Outline, largest: float
) -> None:
    inside = walls(outline, WOOD)
    assert fits(largest - 1e-3, inside)
    assert not fits(largest + 1e-3, inside)


def test_square_inside_corners_are_bench_work_but_not_where_it_is_open() -> None:
    """No router cuts them: such a shape is in no file, and on the list as the router's by hand."""
    closed = shaped("high face", rectangle(20, 20, 60, 50))
    # open to one edge, two corners stay square; a pointed head comes to a corner between two arcs
    half = shaped("high face", rectangle(20, 0, 60, 50))
    pointed = shaped("high face", (Vertex(40, 0), Vertex(140, 0, 0.2), Vertex(90, 70, 0.2)))
    for cut in (closed, half, pointed):
        assert set_ups(odd_block((cut,))) == ()
        (listed,) = bench_work(odd_block((cut,)))
        assert (listed.cut, listed.by) == ("shape", "router")
    # a cheek: open to the end and to both edges
    one = only(set_ups(odd_block((shaped("high face", rectangle(0, 0, 25, WIDE)),))))
    assert one.operations[0].kind == "pocket"
    # open to where the end is trimmed off
    trim = Trim(name="foot", end="low end", length=12, making=SAW)
    past = shaped("high face", rectangle(12, 0, 25, WIDE))
    assert only(set_ups(odd_block((trim, past)))).operations[0].cutter == 6.0


def test_a_cutter_that_does_not_go_in_is_refused() -> None:
    narrow = rounded_rectangle((20, 20, 60, 24), (2.0,) * 4)
    with pytest.raises(ValueError, match="cutter of 6 goes into"):
        set_ups(odd_block((shaped("high face", narrow),)))
    with pytest.raises(ValueError, match="no cutter of the shop"):
        set_ups(odd_block((shaped("high face", narrow, making=ROUTER),)), cutters=(6.0, 8.0))
    found = set_ups(odd_block((shaped("high face", narrow, making=ROUTER),)), cutters=(3.0, 6.0))
    assert only(found).operations[0].cutter == 3.0


def test_an_outline_past_the_wood_is_refused() -> None:
    with pytest.raises(ValueError, match="outside the low end"):
        set_ups(odd_block((shaped("low end", rectangle(0, 0, 91, 20)),)))


# --- saw and bench --------------------------------------------------------------------------


def test_shapes_by_saw_and_bench_are_listed_with_their_numbers() -> None:
    saw = Making(by="saw", tool="tenoning jig")
    lean = THICK * math.tan(math.radians(3))
    cuts = (
        shaped("low face", rectangle(0, 0, 25, WIDE), 12.0, saw),
        shaped(
            "low end", (Vertex(WIDE - lean, 0), Vertex(WIDE, 0), Vertex(WIDE, THICK)), LONG, saw
        ),
        Shaped(
            name="arch",
            face="high face",
            outline=UNDER,
            depth=THICK,
            surface=0.0,
            making=Making(by="bench", tool="spokeshave"),
        ),
    )
    assert set_ups(odd_block(cuts)) == ()
    listed = bench_work(odd_block(cuts))
    # 50 x tan 3 = 2.6204, so the corner is at 87.38; half the chord of the arch by hand:
    # sqrt(300^2 + 29.064^2) / 2 = 150.702, r (1 - cos(asin(150.702 / 540))) = 21.455
    assert [cut.what for cut in listed] == [
        "take out 0 to 25 along, 0 to 90 across, 12 deep, in the low face",
        "take out the shape 87.38; 0, 90; 0, 90; 50, 300 deep, in the low end",
        "take out the shape 0; 0, 300; 0, 300; 1.597 bulging 21.455 (r 540), 0; 30.66, "
        "50 deep, in the high face",
    ]
    assert [cut.by for cut in listed] == ["saw", "saw", "bench"]
    assert listed[0].removes == pytest.approx(25 * WIDE * 12)
    assert listed[1].removes == pytest.approx(lean * THICK / 2 * LONG)
    half = math.hypot(300, height(0) - height(300)) / 2
    assert half == pytest.approx(150.702, abs=1e-3)
    assert RADIUS * (1 - math.cos(math.asin(half / RADIUS))) == pytest.approx(21.455, abs=1e-3)
    assert height(300) == pytest.approx(1.597, abs=1e-3)


def test_the_block_of_the_tests_is_the_one_of_the_sums() -> None:
    assert (ODD.length, ODD.width, ODD.thickness) == (LONG, WIDE, THICK)
