"""Movement across the grain against the Wood Handbook.

Wood Handbook: Wood as an Engineering Material, US Forest Products Laboratory, General
Technical Report FPL-GTR-190, 2010. Rows marked "memory" were recalled, not read in it.
"""

from __future__ import annotations

import pytest

from parametric.catalog.moisture import coefficient_from_shrinkage, in_range, movement
from parametric.catalog.timbers import RECALLED, TIMBERS

INCH = 25.4

# Table 13-5, dimensional change coefficients: radial, tangential, per 1 % moisture content.
TABLE_13_5 = {
    "red alder": (0.00151, 0.00256),
    "ash": (0.00169, 0.00274),
    "aspen": (0.00119, 0.00234),
    "basswood": (0.00230, 0.00330),
    "beech": (0.00190, 0.00431),
    "birch": (0.00256, 0.00338),
    "butternut": (0.00116, 0.00223),
    "cherry": (0.00126, 0.00248),
    "pecan": (0.00169, 0.00315),
    "hard maple": (0.00165, 0.00353),
    "soft maple": (0.00137, 0.00289),
    "red oak": (0.00158, 0.00369),
    "white oak": (0.00180, 0.00365),
    "sweetgum": (0.00183, 0.00365),
    "sycamore": (0.00172, 0.00296),
    "black walnut": (0.00190, 0.00274),
}
TABLE_13_5_FROM_MEMORY = {
    "tulipwood": (0.00158, 0.00289),
    "hickory": (0.00259, 0.00411),  # tangential read, radial from memory
    "douglas fir": (0.00165, 0.00267),  # tangential read, radial from memory
    "western red cedar": (0.00111, 0.00234),
    "redwood": (0.00120, 0.00205),
    "eastern white pine": (0.00071, 0.00212),
    "ponderosa pine": (0.00133, 0.00216),
    "sugar pine": (0.00099, 0.00194),
    "white fir": (0.00112, 0.00245),
    "sitka spruce": (0.00148, 0.00263),
    "mahogany": (0.00172, 0.00238),
    "african mahogany": (0.00141, 0.00201),
    "teak": (0.00101, 0.00186),  # tangential read, radial from memory
}

# Tables 4-3 and 4-4, shrinkage green to ovendry: radial, tangential, %; and the moisture
# at which shrinking starts. Left out, because table 13-5 gives a trade group or another
# stand of the timber there: red and white oak (commercial), true hickory, and the
# imported woods.
SHRINKAGE = {
    "red alder": (4.4, 7.3, 30),
    "ash": (4.9, 7.8, 30),
    "aspen": (3.5, 6.7, 30),
    "basswood": (6.6, 9.3, 30),
    "beech": (5.5, 11.9, 30),
    "birch": (7.3, 9.5, 30),
    "butternut": (3.4, 6.4, 30),
    "cherry": (3.7, 7.1, 30),
    "pecan": (4.9, 8.9, 30),
    "hard maple": (4.8, 9.9, 30),
    "soft maple": (4.0, 8.2, 30),  # memory
    "sweetgum": (5.3, 10.2, 30),
    "sycamore": (5.0, 8.4, 30),
    "black walnut": (5.5, 7.8, 30),
    "tulipwood": (4.6, 8.2, 30),
    "douglas fir": (4.8, 7.6, 30),
    "western red cedar": (2.4, 5.0, 22),
    "redwood": (2.6, 4.4, 22),  # memory
    "eastern white pine": (2.1, 6.1, 30),  # memory
    "ponderosa pine": (3.9, 6.2, 30),  # memory
    "sugar pine": (2.9, 5.6, 30),  # memory
    "white fir": (3.3, 7.0, 30),
    "sitka spruce": (4.3, 7.5, 30),  # memory
}


def test_every_timber_is_in_the_table() -> None:
    assert set(TIMBERS) == set(TABLE_13_5) | set(TABLE_13_5_FROM_MEMORY)


@pytest.mark.parametrize("name", sorted(TIMBERS))
def test_coefficients(name: str) -> None:
    timber = TIMBERS[name]
    radial, tangential = (TABLE_13_5 | TABLE_13_5_FROM_MEMORY)[name]
    assert (timber.radial, timber.tangential) == (radial, tangential)
    assert timber.across("quarter") == radial
    assert timber.across("flat") == tangential


@pytest.mark.parametrize("name", sorted(TIMBERS))
def test_every_number_says_where_it_comes_from_and_what_is_from_memory(name: str) -> None:
    timber = TIMBERS[name]
    for figure in (timber.radial, timber.tangential):
        assert figure.origin == "catalogue"
        assert figure.unit == "per %"
        assert (figure.source or "").startswith("Wood Handbook, FPL-GTR-190 (2010), table 13-5")
    recalled = RECALLED in (timber.radial.source or "") + (timber.tangential.source or "")
    assert recalled == (name in TABLE_13_5_FROM_MEMORY)


@pytest.mark.parametrize("name", sorted(SHRINKAGE))
def test_the_table_follows_from_shrinkage_to_the_fifth_decimal(name: str) -> None:
    """C = (S/30) / (100 - 20 S/30), or (S/22) / (100 - 12 S/22); one unit of the last decimal."""
    radial, tangential, start = SHRINKAGE[name]
    timber = TIMBERS[name]
    assert coefficient_from_shrinkage(radial, start) == pytest.approx(timber.radial, abs=1e-5)
    assert coefficient_from_shrinkage(tangential, start) == pytest.approx(
        timber.tangential, abs=1e-5
    )


def test_the_identity_by_hand() -> None:
    """Tulipwood, tangential: (8.2/30) / (100 - 20*8.2/30) = 0.27333 / 94.5333 = 0.00289140."""
    assert coefficient_from_shrinkage(8.2) == pytest.approx(0.0028914, abs=5e-8)


def test_equation_13_2_white_fir() -> None:
    """The handbook's example, from memory: flat-grained white fir 232 mm wide, 8 to 11 %.

    232 * 0.00245 * 3 = 1.705 mm, to 233.7 mm; 9.15 in: 0.067 in, to 9.217 in.
    """
    fir = TIMBERS["white fir"].across("flat")
    assert movement(232, fir, 11 - 8) == pytest.approx(1.705, abs=0.0005)
    assert 232 + movement(232, fir, 3) == pytest.approx(233.7, abs=0.05)
    assert movement(9.15 * INCH, fir, 3) / INCH == pytest.approx(0.067, abs=0.0005)


def test_equation_13_2_agrees_with_13_1_within_its_range() -> None:
    """Eq. 13-1, from memory: D (MF - MI) / (3000/S - 30 + MI); for the same board 1.712 mm.

    The two are the same line seen from different starting points, so they part by less
    than 1 % of the movement from 6 to 14 %.
    """
    fir = TIMBERS["white fir"].across("flat")
    assert round(232 * 3 / (3000 / 7.0 - 30 + 8), 3) == 1.712
    for start in range(6, 14):
        for end in range(6, 15):
            long_form = 232 * (end - start) / (3000 / 7.0 - 30 + start)
            assert movement(232, fir, end - start) == pytest.approx(long_form, rel=0.01)


def test_equation_13_2_red_alder() -> None:
    """A published worked example (publication not recorded), coefficient in four decimals.

    8 in * 0.0026 * 6 = 0.1248 in.
    """
    assert movement(8, 0.0026, 6) == pytest.approx(0.1248, abs=1e-12)
    assert round(TIMBERS["red alder"].across("flat"), 4) == 0.0026


def test_equation_13_2_white_oak() -> None:
    """A published worked example (publication not recorded): 5 in, 6 to 9 %: 0.055 in.

    5 * 0.00365 * 3 = 0.05475.
    """
    oak = TIMBERS["white oak"].across("flat")
    assert movement(5 * INCH, oak, 9 - 6) / INCH == pytest.approx(0.055, abs=0.0005)


def test_drying_shrinks() -> None:
    oak = TIMBERS["white oak"].across("flat")
    assert movement(200, oak, 6 - 9) == -movement(200, oak, 9 - 6)


@pytest.mark.parametrize(
    ("moisture", "holds"), [(5.9, False), (6, True), (8, True), (14, True), (14.1, False)]
)
def test_the_range_of_the_coefficients(moisture: float, holds: bool) -> None:
    """Equation 13-2 holds from 6 to 14 %."""
    assert in_range(moisture) is holds


@pytest.mark.parametrize("name", ["ponderosa pine", "redwood"])
def test_density_from_specific_gravity(name: str) -> None:
    """Chapter 4: 1000 G (1 + M/100). G 0.40 at 12 %: 448 kg/m3, 27.97 lb/ft3."""
    density = TIMBERS[name].density
    assert density == pytest.approx(448.0, abs=1e-9)
    assert density * 0.3048**3 / 0.45359237 == pytest.approx(27.97, abs=0.005)


def test_density_from_green_volume() -> None:
    """Chapter 4, from memory: G12 = G / (1 - 0.265 a G), a = 18/30; teak 0.55 green.

    0.55 / (1 - 0.265*0.6*0.55) = 0.60270; 1000 * 0.60270 * 1.12 = 675.03 kg/m3.
    """
    assert TIMBERS["teak"].density == pytest.approx(675.03, abs=0.01)


def test_density_keeps_its_arithmetic() -> None:
    density = TIMBERS["tulipwood"].density
    assert density.name == "tulipwood / density"
    assert density.unit == "kg/m3"
    # Table 5-3b, from memory: 0.42. 1000 * 0.42 * 1.12 = 470.4.
    assert density == pytest.approx(470.4, abs=1e-9)
