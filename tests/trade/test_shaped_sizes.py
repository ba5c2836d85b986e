"""What shaped cuts are measured by, and which pieces mirror one another; sums by hand, mm."""

from __future__ import annotations

import dataclasses
import math

import pytest

from parametric.model import (
    Assembly,
    Blank,
    Cut,
    Groove,
    Group,
    Making,
    Material,
    Mitre,
    Part,
    Placement,
    Pocket,
    Shaped,
    Slot,
    Trim,
)
from parametric.outlines import Outline, Vertex, rectangle
from parametric.trade.part_cuts import CutRow, Said, Size, part_cuts
from parametric.trade.shaped_sizes import bevel_of, curve_of, is_rectangle
from parametric.trade.twins import alike_both_sides, mirrored, mirrors

BLANK = Blank(length=500.0, width=120.0, thickness=40.0)
OAK = Material(name="oak", look="timber", density=720)
BY = Making(by="router")

# A circle of r 725 about 200; -650: 75 high over 200, and by Pythagoras
# sqrt(725^2 - 200^2) - 650 = 46.868 over 0, sqrt(725^2 - 300^2) - 650 = 10.019 over 500.
AT, RADIUS = 200.0, 725.0


def height(x: float, out: float = 0.0) -> float:
    return math.sqrt((RADIUS + out) ** 2 - (x - AT) ** 2) - 650


def bow(x0: float, x1: float, out: float = 0.0) -> float:
    far = RADIUS + out
    return math.tan((math.asin((x0 - AT) / far) - math.asin((x1 - AT) / far)) / 4)


UNDER: Outline = (
    Vertex(0, 0),
    Vertex(500, 0),
    Vertex(500, height(500), bow(500, 0)),
    Vertex(0, height(0)),
)
REBATE: Outline = (
    Vertex(0, height(0), bow(0, 500)),
    Vertex(500, height(500)),
    Vertex(500, height(500, 10), bow(500, 0, 10)),
    Vertex(0, height(0, 10)),
)
BEVEL: Outline = (
    Vertex(120 - 40 * math.tan(math.radians(3)), 0),
    Vertex(120, 0),
    Vertex(120, 40),
)


def shaped(face: str, outline: Outline, depth: float, surface: float = 0.0) -> Shaped:
    return Shaped(name="shape", face=face, outline=outline, depth=depth, surface=surface, making=BY)  # type: ignore[arg-type]


def piece(*cuts: Cut, name: str = "leaf A / rail", mark: str = "R1") -> Part:
    return Part(
        name=name,
        noun="rail",
        mark=mark,
        material=OAK,
        blank=BLANK,
        placement=Placement(),
        cuts=cuts,
    )


def row(cut: Cut, *more: Cut) -> CutRow:
    group = Group(name="leaf A", placement=Placement(), parts=(piece(cut, *more),))
    (own,) = part_cuts(Assembly(name="one", groups=(group,), states=()))
    return next(r for r in own.rows if r.cut == cut)


def sizes(found: CutRow) -> dict[str, float | str]:
    return {
        d.quantity: round(float(d.figure), 3) if isinstance(d, Size) else d.words
        for d in found.degrees
    }


def test_an_arch_by_its_radius_and_heights() -> None:
    assert height(0) == pytest.approx(46.868, abs=1e-3)
    assert height(500) == pytest.approx(10.019, abs=1e-3)
    curve = curve_of(shaped("high face", UNDER, 40), BLANK)
    assert curve is not None
    assert (curve.low, curve.high) == (0, 500)
    assert (curve.left, curve.right) == (height(0), height(500))
    assert (curve.crown, curve.crown_at) == pytest.approx((75, 200))
    assert curve.radii == (pytest.approx(725),)
    assert curve.crowned
    assert curve.wide is None
    assert sizes(row(shaped("high face", UNDER, 40))) == {
        "from": 0,
        "to": 500,
        "left height": 46.868,
        "right height": 10.019,
        "crown": 75,
        "deep": "through",
        "round": 725,
    }


def test_a_rebate_that_follows_it_by_its_outer_arc() -> None:
    """sqrt(735^2 - 200^2) - 650 = 57.266 and sqrt(735^2 - 300^2) - 650 = 20.988; 10 wide all along."""
    cut = shaped("low face", REBATE, 22)
    assert sizes(row(cut)) == {
        "from": 0,
        "to": 500,
        "width": 10,
        "left height": 57.266,
        "right height": 20.988,
        "crown": 85,
        "deep": 22,
        "round": 735,
    }


def test_an_arch_of_three_centres() -> None:
    """Two of r 60 and one of r 300 between them: the smallest and the largest are said."""
    side, top = math.tan(math.radians(60) / 4), math.tan(math.radians(60) / 4)
    # from the foot at 400;0: 60 degrees of r 60, then 60 degrees of r 300, then 60 of r 60
    x1, y1 = 400 - 60 * (1 - math.cos(math.radians(60))), 60 * math.sin(math.radians(60))
    x2 = x1 - 300.0
    outline = (
        Vertex(x2 - 30, 0),
        Vertex(400, 0, side),
        Vertex(x1, y1, top),
        Vertex(x2, y1, side),
    )
    curve = curve_of(shaped("high face", outline, 40), BLANK)
    assert curve is not None
    assert curve.radii == pytest.approx((60, 60, 300))
    # the crown: 51.962 and what 60 degrees of r 300 rise, 300 (1 - cos 30) = 40.192
    assert curve.crown == pytest.approx(51.962 + 40.192, abs=1e-3)
    found = sizes(row(shaped("high face", outline, 40)))
    assert (found["round"], found["outside"]) == (60, 300)


def test_a_pointed_rebate_runs_beside_its_arch() -> None:
    """Arcs of r 260 and 270 about two centres on the low edge: 10 apart all along.

    The outer ones meet over the middle, 250 from either end, sqrt(270^2 - 10^2) high.
    """
    turn = math.acos(10 / 260), math.acos(10 / 270)

    def chain(far: float, angle: float) -> tuple[Vertex, ...]:
        bulge = math.tan(angle / 4)
        top = math.sqrt(far**2 - 10**2)
        return (Vertex(240 + far, 0, bulge), Vertex(250, top, bulge), Vertex(260 - far, 0))

    wide = Blank(length=500.0, width=400.0, thickness=40.0)
    outer, inner = chain(270, turn[1]), chain(260, turn[0])
    back = tuple(Vertex(500 - v.x, v.y, -v.bulge) for v in inner)
    # the outer arcs are cut off at the ends of the rail, 0 and 500, by moving in to the inner's
    outline = (*outer, *back)
    curve = curve_of(shaped("high face", outline, 22), wide)
    assert curve is not None
    assert curve.wide == pytest.approx(10)
    assert curve.radii == pytest.approx((270, 270))
    assert (curve.crown, curve.crown_at) == pytest.approx((math.sqrt(270**2 - 100), 250))


def test_a_rake_by_its_heights_and_its_angle() -> None:
    """60 at the left, 20 at the right over 500: atan(40 / 500) = 4.574 degrees."""
    rake = (Vertex(0, 0), Vertex(500, 0), Vertex(500, 20), Vertex(0, 60))
    assert sizes(row(shaped("high face", rake, 40))) == {
        "from": 0,
        "to": 500,
        "left height": 60,
        "right height": 20,
        "deep": "through",
        "angle": 4.574,
    }
    # a rebate beside it, 9 wide square to it: 9 / cos 4.574 = 9.0288 higher
    up = 9 / math.cos(math.atan(40 / 500))
    beside = (Vertex(0, 60), Vertex(500, 20), Vertex(500, 20 + up), Vertex(0, 60 + up))
    found = sizes(row(shaped("low face", beside, 22)))
    assert (found["width"], found["left height"], found["right height"]) == (9, 69.029, 29.029)


def test_an_edge_by_its_angle() -> None:
    cut = shaped("low end", BEVEL, 480, surface=12)
    bevel = bevel_of(cut, BLANK)
    assert bevel is not None
    assert bevel.edge == "high edge"
    found = row(cut)
    assert found.into == "upper edge"
    # 40 tan 3 degrees = 2.0963
    assert sizes(found) == {"width": 2.096, "angle": 3.0, "long": 468}


def test_other_shapes_by_their_box() -> None:
    cheek = shaped("low face", rectangle(0, 0, 25, 120), 12)
    assert is_rectangle(cheek.outline)
    assert sizes(row(cheek)) == {
        "from": 0,
        "to": 25,
        "across": 60,
        "width": 120,
        "deep": 12,
        "ends": "square",
    }
    slant = shaped("high face", (Vertex(30, 0), Vertex(60, 0), Vertex(90, 120), Vertex(60, 120)), 7)
    assert sizes(row(slant))["ends"] == "aslant"
    # a curve that runs across the piece, as at the end of a bar, has no heights to be measured
    across = shaped(
        "low face", (Vertex(470, 120, -0.1), Vertex(460, 0), Vertex(500, 0), Vertex(500, 120)), 40
    )
    assert curve_of(across, BLANK) is None
    assert "left height" not in sizes(row(across))


def test_every_size_has_its_own_name() -> None:
    group = Group(
        name="leaf A",
        placement=Placement(),
        parts=(piece(shaped("high face", UNDER, 40), shaped("low face", REBATE, 22)),),
    )
    (own,) = part_cuts(Assembly(name="one", groups=(group,), states=()))
    names = [d.figure.name for r in own.rows for d in r.degrees if not isinstance(d, Said)]
    assert len(set(names)) == len(names)


# --- mirrors --------------------------------------------------------------------------------

ODD: tuple[Cut, ...] = (
    shaped("high face", UNDER, 40),
    shaped("low face", REBATE, 22),
    shaped("low end", BEVEL, 500),
    shaped("high edge", (Vertex(50, 3), Vertex(90, 3), Vertex(70, 21, 0.3)), 6),
    Slot(name="slot", face="low end", u0=80.0, u1=110.0, v=14.0, width=8.0, depth=30.0, making=BY),
    Groove(
        name="groove", face="high edge", u0=150.0, u1=400.0, v=11.0, width=7.0, depth=9.0, making=BY
    ),
    Pocket(
        name="pocket",
        face="low face",
        u=300.0,
        v=100.0,
        length=30.0,
        width=10.0,
        corner=3.0,
        depth=5.0,
        making=BY,
    ),
    Mitre(name="mitre", end="high end", keeps="low edge", making=BY),
    Trim(name="trim", end="low end", length=4.0, making=BY),
)


@pytest.mark.parametrize("way", ["length", "width", "thickness"])
def test_a_piece_and_its_image(way: str) -> None:
    """Mirrored twice it is itself; the image is known whichever way the mirror was held."""
    part = piece(*ODD)
    image = piece(*(mirrored(cut, BLANK, way) for cut in ODD))  # type: ignore[arg-type]
    assert image.volume == pytest.approx(part.volume, rel=1e-12)
    assert mirrors(part, image)
    assert mirrors(image, part)
    assert not mirrors(part, part)
    assert not alike_both_sides(part)
    again = piece(*(mirrored(cut, BLANK, way) for cut in image.cuts))  # type: ignore[arg-type]
    assert mirrors(again, image)


def test_an_image_by_hand() -> None:
    """End for end, the arch is 10.019 high at the left and its crown is over 500 - 200."""
    image = mirrored(shaped("high face", UNDER, 40), BLANK, "length")
    assert isinstance(image, Shaped)
    curve = curve_of(image, BLANK)
    assert curve is not None
    assert (curve.left, curve.right) == pytest.approx((height(500), height(0)))
    assert (curve.crown, curve.crown_at) == pytest.approx((75, 300))
    # a cut in an edge, face for back: 3 from the low face becomes 40 - 3
    turned = mirrored(ODD[3], BLANK)
    assert isinstance(turned, Shaped)
    assert {(v.x, v.y) for v in turned.outline} == {(50, 37), (90, 37), (70, 19)}


def test_a_rail_under_one_half_of_an_arch_mirrors_the_other() -> None:
    left = piece(*ODD[:2])
    right = piece(*(mirrored(cut, BLANK, "length") for cut in ODD[:2]))  # type: ignore[arg-type]
    assert mirrors(left, right)
    rebate = right.cuts[1]
    assert isinstance(rebate, Shaped)
    assert not mirrors(left, piece(right.cuts[0], dataclasses.replace(rebate, depth=23)))


def test_an_outline_begun_elsewhere_is_the_same_cut() -> None:
    begun = shaped("high face", (*UNDER[2:], *UNDER[:2]), 40)
    # cut right through it is alike on both sides, and may be cut from either
    assert alike_both_sides(piece(ODD[0]))
    assert mirrors(piece(ODD[0]), piece(begun))
    assert mirrors(piece(ODD[0]), piece(shaped("low face", UNDER, 40)))
    assert not mirrors(piece(ODD[0]), piece(shaped("low face", UNDER, 39)))
