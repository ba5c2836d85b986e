"""Shaped cuts: outlines of lines and true arcs, on every face, open and closed.

The blank is 300 x 120 x 40, no two sides alike. What a cut takes is worked out by hand from
triangles, circular segments (r2 (t - sin t) / 2) and the circle's own integral, never by the
outlines' own sums. Sizes in mm.
"""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest

from parametric.model import FACES, Cut, Face, Groove, Making, Shaped, Trim
from parametric.outlines import Outline, Vertex, rectangle
from tests.solids.test_cuts import BLANK, BY, Case, hold

pytestmark = pytest.mark.kernel

LONG, WIDE, THICK = BLANK
Point = tuple[float, float, float]

INTO: dict[Face, Callable[[float, float, float], Point]] = {
    "low end": lambda u, v, d: (d, u, v),
    "high end": lambda u, v, d: (LONG - d, u, v),
    "low edge": lambda u, v, d: (u, d, v),
    "high edge": lambda u, v, d: (u, WIDE - d, v),
    "low face": lambda u, v, d: (u, v, d),
    "high face": lambda u, v, d: (u, v, THICK - d),
}
"""Where (u, v) on a face, d into the wood, lies in the blank; by hand from the table of frames."""


def shaped(face: Face, outline: Outline, depth: float, surface: float = 0.0) -> Shaped:
    return Shaped(name="shape", face=face, outline=outline, depth=depth, making=BY, surface=surface)


def segment(chord: float, rise: float) -> float:
    """A circular segment by its chord and its rise, mm2."""
    radius = (chord**2 / 4 + rise**2) / (2 * rise)
    turn = 2 * math.asin(chord / 2 / radius)
    return radius**2 * (turn - math.sin(turn)) / 2


FLAG: Outline = (
    Vertex(10, 6),
    Vertex(40, 6),
    Vertex(40, 20, -0.3),  # the slanting top is hollowed: 0.3 of half its chord of 30.594
    Vertex(10, 14, 0.5),  # the left side bulges: 0.5 of half of 8, so 2 to the left
)
FLAG_AREA = (
    30 * (8 + 14) / 2 - segment(math.hypot(30, 6), 0.3 * math.hypot(30, 6) / 2) + segment(8, 2)
)
IN_FLAG = ((8.2, 10), (39, 7), (39.5, 18), (11, 13), (25.5, 11.5))
OFF_FLAG = ((7.8, 10), (41, 10), (25.5, 13.5), (20, 5), (9, 13.5), (35, 19.5))


@pytest.mark.parametrize("face", FACES)
@pytest.mark.parametrize("surface", [0.0, 4.0])
def test_on_every_face(face: Face, surface: float) -> None:
    """One rounded, slanted and hollowed shape, 9 deep; begun 4 down, it lies in a wider cut."""
    into = INTO[face]
    above: tuple[Cut, ...] = ()
    if surface:
        above = (shaped(face, rectangle(5, 3, 45, 24), surface),)
    hold(
        Case(
            label=f"flag in the {face}",
            cuts=(*above, shaped(face, FLAG, 9, surface)),
            removed=FLAG_AREA * (9 - surface) + 40 * 21 * surface,
            faces=6 + 5 + 5 * len(above),
            gone=tuple(into(u, v, d) for u, v in IN_FLAG for d in (surface + 0.1, 8.9)),
            left=(
                *(into(u, v, d) for u, v in OFF_FLAG for d in (surface + 0.1, 8.9)),
                *(into(u, v, 9.1) for u, v in IN_FLAG),
            ),
        )
    )


# --- the arched underside of a rail --------------------------------------------------------

CENTRE, RADIUS = (100.0, -500.0), 540.0
"""The arc stands 40 high at x = 100, 30.66 at the left end, 1.596 at the right."""


def height(x: float, radius: float = RADIUS) -> float:
    return math.sqrt(radius**2 - (x - CENTRE[0]) ** 2) + CENTRE[1]


def under(x0: float, x1: float, radius: float = RADIUS) -> float:
    """The circle's own integral between two places: the area from y = 0 to the arc."""

    def part(x: float) -> float:
        t = x - CENTRE[0]
        return (t * math.sqrt(radius**2 - t**2) + radius**2 * math.asin(t / radius)) / 2

    return part(x1) - part(x0) + CENTRE[1] * (x1 - x0)


def bow(x0: float, x1: float, radius: float = RADIUS) -> float:
    """The bulge of the arc from x0 to x1: its angle by two arcsines, positive anticlockwise."""
    turn = math.asin((x0 - CENTRE[0]) / radius) - math.asin((x1 - CENTRE[0]) / radius)
    return math.tan(turn / 4)


UNDER_ARCH: Outline = (
    Vertex(0, 0),
    Vertex(LONG, 0),
    Vertex(LONG, height(LONG), bow(LONG, 0)),
    Vertex(0, height(0)),
)
OUTER = RADIUS + 9.5
ROUND_THE_ARCH: Outline = (
    Vertex(0, height(0), bow(0, LONG)),
    Vertex(LONG, height(LONG)),
    Vertex(LONG, height(LONG, OUTER), bow(LONG, 0, OUTER)),
    Vertex(0, height(0, OUTER)),
)


@pytest.mark.parametrize("face", ["low face", "high face"])
def test_an_arched_underside(face: Face) -> None:
    """Right through, from end to end: the low edge is then one cylinder, no sliver is left."""
    hold(
        Case(
            label="arched underside",
            cuts=(shaped(face, UNDER_ARCH, THICK),),
            removed=under(0, LONG) * THICK,
            faces=6,
            gone=((100, 39.9, 1), (100, 39.9, 39), (1, 30.5, 20), (299, 1.5, 20), (250, 10, 20)),
            left=((100, 40.1, 1), (1, 31, 39), (299, 2, 1), (299, 119, 39), (30, 36.2, 20)),
        )
    )


def test_an_arch_that_springs_from_the_corner_of_the_blank() -> None:
    """At x = 100 + sqrt(540^2 - 500^2) = 303.96 the arc meets y = 0: a blank that ends there."""
    spring = CENTRE[0] + math.sqrt(RADIUS**2 - CENTRE[1] ** 2)
    outline = (
        Vertex(0, 0),
        Vertex(spring, 0, bow(spring, 0)),
        Vertex(0, height(0)),
    )
    hold(
        Case(
            label="springing from the corner",
            size=(spring, WIDE, THICK),
            cuts=(shaped("high face", outline, THICK),),
            removed=under(0, spring) * THICK,
            faces=6,
            gone=((100, 39.9, 1), (spring - 20, 4, 20), (1, 30.5, 39)),
            left=((spring - 0.5, 1, 20), (100, 40.1, 39), (spring - 20, 9, 1)),
        )
    )


def test_a_glass_rebate_that_follows_the_arch() -> None:
    """Between the arch and the arc 9.5 outside it, 22 deep from the low face, ends open."""
    hold(
        Case(
            label="rebate round the arch",
            cuts=(
                shaped("high face", UNDER_ARCH, THICK),
                shaped("low face", ROUND_THE_ARCH, 22.0),
            ),
            removed=under(0, LONG) * THICK + (under(0, LONG, OUTER) - under(0, LONG)) * 22,
            faces=6 + 2,
            gone=((100, 41, 1), (100, 49.4, 21.9), (1, 40, 1), (299, 11, 21)),
            left=((100, 41, 22.1), (100, 49.6, 1), (1, 31, 23), (299, 13, 1), (100, 41, 39)),
        )
    )


def test_an_arch_between_two_feet() -> None:
    """From 60 to 240 along the low edge, straight up to the arc: the feet keep their length."""
    outline = (
        Vertex(60, 0),
        Vertex(240, 0),
        Vertex(240, height(240), bow(240, 60)),
        Vertex(60, height(60)),
    )
    hold(
        Case(
            label="arch between feet",
            cuts=(shaped("low face", outline, THICK),),
            removed=under(60, 240) * THICK,
            faces=6 + 4,  # the low edge is two feet, and the cut has three sides
            gone=((61, 1, 1), (239, 1, 39), (100, 39.9, 20)),
            left=((59, 1, 1), (241, 1, 39), (100, 40.1, 20), (270, 1, 20)),
        )
    )


# --- cheeks, bevels, panes, bar ends -------------------------------------------------------


def test_the_cheeks_of_a_tenon() -> None:
    """Both faces cut back over 25 at the low end, 12 and 10: the tenon is 18, off the middle."""
    hold(
        Case(
            label="tenon",
            cuts=(
                shaped("low face", rectangle(0, 0, 25, WIDE), 12),
                shaped("high face", rectangle(0, 0, 25, WIDE), 10),
            ),
            removed=25 * WIDE * 22,
            faces=6 + 4,
            gone=((1, 1, 1), (24, 119, 11.9), (1, 60, 30.1), (24, 1, 39)),
            left=((1, 1, 12.1), (24, 119, 29.9), (26, 60, 1), (26, 60, 39), (299, 60, 1)),
        )
    )


def test_a_haunched_tenon_at_the_far_end() -> None:
    """Cheeks of 10 on both faces over the last 30, and the tenon narrowed by 35 at its high edge."""
    cheeks = rectangle(LONG - 30, 0, LONG, WIDE)
    hold(
        Case(
            label="haunched tenon",
            cuts=(
                shaped("low face", cheeks, 10),
                shaped("high face", cheeks, 10),
                shaped("low face", rectangle(LONG - 20, WIDE - 35, LONG, WIDE), 30, surface=10),
            ),
            removed=30 * WIDE * 20 + 20 * 35 * 20,
            faces=6 + 4 + 2,
            gone=((271, 60, 9), (299, 86, 20), (281, 119, 20)),
            left=((279, 119, 20), (299, 84, 20), (271, 60, 11), (269, 119, 1)),
        )
    )


LEAN = THICK * math.tan(math.radians(3))
"""An edge 40 thick planed to 3 degrees is 2.0963 back at one face."""


def test_an_edge_planed_to_three_degrees() -> None:
    triangle = (Vertex(0, 0), Vertex(LEAN, 0), Vertex(0, THICK))
    hold(
        Case(
            label="edge bevel",
            cuts=(shaped("low end", triangle, LONG),),
            removed=LEAN * THICK / 2 * LONG,
            faces=6,
            gone=((1, 2, 1), (299, 2, 1), (150, 1, 20), (150, 0.05, 38)),
            left=((1, 2.2, 1), (150, 1.1, 20), (150, 0.06, 39.5), (150, 119.9, 1)),
        )
    )


def test_an_edge_planed_after_trimming() -> None:
    """The high edge, leaning the other way, on a piece trimmed by 12 and 7: 281 of it is planed."""
    triangle = (Vertex(WIDE, 0), Vertex(WIDE, THICK), Vertex(WIDE - LEAN, THICK))
    hold(
        Case(
            label="bevel between trims",
            cuts=(
                Trim(name="foot", end="low end", length=12, making=BY),
                Trim(name="top", end="high end", length=7, making=BY),
                shaped("high end", triangle, LONG - 12, surface=7),
            ),
            removed=19 * WIDE * THICK + LEAN * THICK / 2 * 281,
            faces=6,
            gone=((13, 118.5, 39), (292, 118.5, 39), (11, 60, 20), (294, 60, 20)),
            left=((13, 117.5, 39), (292, 119.9, 0.5), (150, 1, 39)),
        )
    )


def test_a_pane_under_an_arch() -> None:
    """Glass 5.74 thick: all above an arc from 90 at the left to 118 at the right is cut away."""
    top = (
        Vertex(0, 90, -0.1),  # the pane bulges, so the waste is hollowed by 0.1 of half the chord
        Vertex(200, 118),
        Vertex(200, 120),
        Vertex(0, 120),
    )
    chord = math.hypot(200, 28)
    hold(
        Case(
            label="pane",
            size=(200.0, 120.0, 5.74),
            cuts=(shaped("high face", top, 5.74),),
            removed=(200 * (30 + 2) / 2 - segment(chord, 0.05 * chord)) * 5.74,
            faces=6,
            gone=((1, 91, 1), (100, 119.9, 5), (199, 119, 3)),
            left=((1, 89, 1), (100, 113, 3), (199, 117, 5)),
        )
    )


def test_a_bar_with_its_rebates_shoulders_and_tongue() -> None:
    """22 x 40, rebated 8 wide and 25 deep from the back; at the low end a tongue 6 x (25 + 7.5).

    The shoulders reach 9 in, from the front as deep as the rebates leave wood, and the tongue is
    cut back by 7.5: no wood is taken twice, and no skin is left between cut and cut.
    """
    wide = 22.0
    saw = Making(by="saw")
    rebates = tuple(
        Groove(
            name="glass rebate", face="high face", u0=0, u1=LONG, v=v, width=8, depth=25, making=saw
        )
        for v in (4.0, wide - 4.0)
    )
    hold(
        Case(
            label="bar",
            size=(LONG, wide, THICK),
            cuts=(
                *rebates,
                shaped("low face", rectangle(0, 0, 9, 8), 15),
                shaped("low face", rectangle(0, wide - 8, 9, wide), 15),
                shaped("low face", rectangle(0, 8, 9, wide - 8), 7.5),
            ),
            removed=2 * LONG * 8 * 25 + 2 * 9 * 8 * 15 + 9 * 6 * 7.5,
            # a T as long as the bar has 8 sides and 2 ends; the end adds 2 shoulders, the
            # tongue's 2 cheeks run on from the web's, its front and the shoulder before it
            faces=8 + 2 + 2,
            gone=((1, 1, 1), (8, 21, 14), (8, 11, 7), (150, 7, 39), (150, 15, 16)),
            left=((1, 11, 8), (1, 8.1, 39), (10, 1, 1), (10, 11, 1), (150, 9, 39)),
        )
    )
