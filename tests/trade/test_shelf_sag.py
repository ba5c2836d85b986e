"""Shelves: how far they sag, with a lip, with a divider, and what would hold them.

The sums are those of brief and bench, in inches and pounds: E I in lb in2, loads in lb/ft. The
formula is that of a beam on two supports under an even load, any handbook's.
"""

from __future__ import annotations

import pytest

from parametric.figures import Figure, arithmetic
from parametric.trade.shelf_sag import Lip, ShelfSag, bending_stiffness, shelf_sag, ways_out
from parametric.units import INCH, LOAD_ALONG, STIFFNESS, Measure

IN = float(INCH)
PSI = float(STIFFNESS.sizes["psi"])


def inches(value: float) -> Figure:
    return Figure(value * IN)


def of(measure: Measure, text: str) -> Figure:
    return Figure(float(measure.read(text)), unit=measure.unit)


BOARD, WOOD = of(STIFFNESS, "1200000 psi"), of(STIFFNESS, "1600000 psi")
BOOKS = of(LOAD_ALONG, "20 lb/ft")
THIRTY_SECOND = Figure(IN / 32 / (0.012 * IN), unit="mm/m")
"""In a foot."""
LIP = Lip(thickness=inches(0.75), depth=inches(1.5), stiffness=WOOD)


def alcove_shelf(lip: Lip | None = None, load: Figure = BOOKS) -> ShelfSag:
    """3/4 board, 44-1/2 between the sides of a case 10 deep."""
    return shelf_sag(
        "upper / shelf",
        span=inches(44.5),
        depth=inches(10),
        thickness=inches(0.75),
        stiffness=BOARD,
        load=load,
        sag=THIRTY_SECOND,
        lip=lip,
    )


def test_the_alcove_shelf() -> None:
    plain = alcove_shelf()
    # 1200000*10*0.75**3/12 = 421875 lb in2
    assert float(plain.bending) / PSI / IN**4 == pytest.approx(421_875, rel=1e-12)
    # 5*(20/12)*44.5**4/(384*421875) = 0.202
    assert float(plain.sag) / IN == pytest.approx(
        5 * (20 / 12) * 44.5**4 / (384 * 421_875), rel=1e-12
    )
    assert round(float(plain.sag) / IN, 3) == 0.202
    # 44.5/12/32 = 0.116
    assert round(float(plain.limit) / IN, 3) == 0.116
    assert plain.left < 0
    assert plain.plain == plain.sag


def test_with_its_lip() -> None:
    lipped = alcove_shelf(LIP)
    assert lipped.lip_bending is not None
    # 1600000*0.75*1.5**3/12 = 337500
    assert float(lipped.lip_bending) / PSI / IN**4 == pytest.approx(337_500, rel=1e-12)
    # 5*(20/12)*44.5**4/(384*(421875+337500)) = 0.112
    assert round(float(lipped.sag) / IN, 3) == 0.112
    assert round(float(lipped.plain) / IN, 3) == 0.202
    # 0.1159 - 0.1121 = 0.0038
    assert round(float(lipped.left) / IN, 3) == 0.004


def test_glued_on_it_bends_as_one_piece() -> None:
    """The parallel axis theorem by its own sum: both parts about the middle they share.

    Shelf 10 x 0.75, E A 9.0e6, its middle 0.375 down; lip 0.75 x 1.5 under it, 1.8e6, 1.5 down:
    (9*0.375 + 1.8*1.5)/10.8 = 0.5625; 421875 + 337500 + 9e6*0.1875**2 + 1.8e6*0.9375**2 = 2657812.5
    """
    lipped = alcove_shelf(LIP)
    assert lipped.glued is not None
    assert float(lipped.glued) / IN == pytest.approx(
        5 * (20 / 12) * 44.5**4 / (384 * 2_657_812.5), rel=1e-9
    )
    assert lipped.glued < lipped.sag


def test_what_would_hold_it() -> None:
    plain = alcove_shelf()
    ways = ways_out(
        plain, depth=inches(10), stiffness=BOARD, strip=inches(0.75), strip_stiffness=WOOD
    )
    # 421875 * 0.20172/0.11589 = 734339; less 421875 is 312464 = 1.6e6*0.75*d**3/12: d = 1.462
    assert round(float(ways.lip) / IN, 2) == 1.46
    # half the span: a sixteenth of the sag
    assert float(ways.divided) == pytest.approx(float(plain.sag) / 16, rel=1e-12)
    # 734339*12/(1.2e6*10) = 0.73434: 0.902 thick
    assert round(float(ways.thickness) / IN, 3) == 0.902
    # each of them is just enough
    exact = alcove_shelf(Lip(thickness=inches(0.75), depth=ways.lip, stiffness=WOOD))
    assert float(exact.left) == pytest.approx(0, abs=1e-9)
    thick = bending_stiffness("E I", BOARD, inches(10), ways.thickness)
    assert float(plain.sag * plain.bending / thick) == pytest.approx(float(plain.limit), rel=1e-9)


def test_what_it_carries_and_how_far_it_may_span() -> None:
    plain = alcove_shelf()
    # 20 lb/ft * 0.11589/0.20172 = 11.49
    assert float(plain.carries) / float(LOAD_ALONG.sizes["lb/ft"]) == pytest.approx(11.49, abs=5e-3)
    assert float(alcove_shelf(load=plain.carries).left) == pytest.approx(0, abs=1e-9)
    # sag goes by the fourth power of the span, its limit by the first: 44.5 * (0.11589/0.20172)**(1/3)
    assert float(plain.longest) / IN == pytest.approx(
        44.5 * (0.115885 / 0.201718) ** (1 / 3), rel=1e-5
    )


def test_by_the_cabinet_standard() -> None:
    """15 lb/ft2 on 10 in is 12.5 lb/ft; a sixteenth a foot would be 0.232, and a quarter is more."""
    plain = alcove_shelf()
    assert float(plain.on_test) == pytest.approx(float(plain.sag) * 12.5 / 20, rel=1e-9)
    assert round(float(plain.test_limit) / IN, 3) == 0.232


def test_books_on_cherry() -> None:
    """3/4 x 11-1/4 cherry, 36 in, 20 lb/ft, 1.49 million psi: 0.0619 in."""
    shelf = shelf_sag(
        "shelf",
        span=inches(36),
        depth=inches(11.25),
        thickness=inches(0.75),
        stiffness=of(STIFFNESS, "1490000 psi"),
        load=BOOKS,
        sag=THIRTY_SECOND,
    )
    assert round(float(shelf.sag) / IN, 4) == 0.0619


def test_a_wardrobe_shelf_of_board_is_well_within() -> None:
    """560 deep, 753 clear, 18 thick, 15 lb/ft2, particleboard of 2250.

    73.236*0.56*9.80665/1000 = 0.4022 N/mm; E I = 2250*560*18**3/12 = 6.1236e8;
    5*0.4022*753**4/(384*6.1236e8) = 2.749, and 5.2083*0.753 = 3.922.
    """
    shelf = shelf_sag(
        "middle / shelf 1",
        span=Figure(753.0),
        depth=Figure(560.0),
        thickness=Figure(18.0),
        stiffness=Figure(2250.0, unit="N/mm2"),
        load=Figure(73.23642, unit="kg/m2"),
        sag=Figure(1.5875 / 0.3048, unit="mm/m"),
    )
    assert round(float(shelf.sag), 3) == 2.749
    assert round(float(shelf.limit), 3) == 3.922


def test_each_step_is_named() -> None:
    lipped = alcove_shelf(LIP)
    figures = [
        lipped.load,
        lipped.bending,
        lipped.lip_bending,
        lipped.plain,
        lipped.sag,
        lipped.glued,
        lipped.limit,
        lipped.carries,
        lipped.on_test,
    ]
    names = [figure.name for figure in figures if figure is not None]
    assert len(set(names)) == len(figures)
    assert all(name is not None and name.startswith("upper / shelf / ") for name in names)
    assert arithmetic(lipped.sag) is not None
