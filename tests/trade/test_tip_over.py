"""Cases that nothing holds: moments by hand, and what the published rule on tip-over speaks of."""

from __future__ import annotations

import pytest

from parametric.figures import Figure
from parametric.trade.tip_over import Opens, TipOver, clothes_in, tip_over, within_the_rule

IN, LB = 25.4, 0.45359237
FOOT = 12 * IN


def kg(value: float) -> Figure:
    return Figure(value, unit="kg")


def drawer(name: str, weight: float) -> Opens:
    """A box of 500, its middle 250 behind the front when shut and 250 before it when out."""
    return Opens(
        name=name, weight=kg(weight), shut=Figure(250.0), ahead=Figure(250.0), edge=Figure(500.0)
    )


def chest(*opens: Opens, weight: float = 60.0) -> TipOver:
    return tip_over("chest", weight=kg(weight), behind=Figure(280.0), opens=opens)


def test_three_drawers_out() -> None:
    """60 kg x 280 = 16800 holds; 3 x 14 kg x 250 = 10500 turns: 1.6."""
    found = chest(*(drawer(f"drawer {n}", 14) for n in (1, 2, 3)))
    assert float(found.holding) == 16800
    assert float(found.all_open or 0) == pytest.approx(1.6)


def test_a_child_on_one_drawer() -> None:
    """The two that are shut hold 2 x 14 x 250 = 7000 more: 23800.

    The open one turns 3500, the child 60 lb = 27.2155 kg x 500 = 13608: 17108; 1.391.
    """
    found = chest(*(drawer(f"drawer {n}", 14) for n in (1, 2, 3)))
    assert float(found.leant_on or 0) == pytest.approx(23800 / (3500 + 60 * LB * 500), rel=1e-9)
    assert not found.tips


def test_a_light_chest_goes_over() -> None:
    """30 kg: 8400 + 7000 = 15400 against 17108."""
    found = chest(*(drawer(f"drawer {n}", 14) for n in (1, 2, 3)), weight=30)
    assert found.leant_on is not None
    assert found.leant_on < 1
    assert found.tips
    # and with all three out: 8400 against 10500
    assert float(found.all_open or 0) == pytest.approx(0.8)


def test_a_shut_door_hangs_before_a_kick() -> None:
    """A foot line 60 behind the fronts: a shut door of 5 kg, 71 before it, turns too.

    One open: 40 kg x 200 = 8000 against 5 x 260 + 60 lb x 460 + 5 x 71 = 14174.
    """
    doors = tuple(
        Opens(name=n, weight=kg(5), shut=Figure(-71.0), ahead=Figure(260.0), edge=Figure(460.0))
        for n in ("left", "right")
    )
    found = tip_over("base", weight=kg(40), behind=Figure(200.0), opens=doors)
    assert float(found.leant_on or 0) == pytest.approx(
        8000 / (5 * 260 + 60 * LB * 460 + 5 * 71), rel=1e-9
    )


def test_the_worst_is_named() -> None:
    far = Opens(
        name="long one", weight=kg(14), shut=Figure(250.0), ahead=Figure(300.0), edge=Figure(600.0)
    )
    assert chest(drawer("drawer 1", 14), far).worst == "long one"


def test_a_case_in_which_nothing_opens() -> None:
    found = chest()
    assert (found.all_open, found.leant_on, found.tips) == (None, None, False)


def test_clothes() -> None:
    """8.5 lb to the cubic foot: a drawer of one holds 8.5 lb."""
    one = clothes_in("drawer", width=Figure(FOOT), height=Figure(FOOT), length=Figure(FOOT))
    assert float(one) == pytest.approx(8.5 * LB)


@pytest.mark.parametrize(
    ("height", "weight", "enclosed", "within"),
    [
        # 16 CFR 1261.1 and ASTM F2057-23, scope: 27 in, 30 lb, 3.2 ft3
        (27, 30, 3.2, True),
        (26.9, 30, 3.2, False),
        (27, 29.9, 3.2, False),
        (27, 30, 3.1, False),
        (60, 150, 20, True),
    ],
)
def test_scope(height: float, weight: float, enclosed: float, within: bool) -> None:
    assert (
        within_the_rule(
            height=Figure(height * IN),
            weight=kg(weight * LB),
            enclosed=Figure(enclosed * FOOT**3, unit="mm3"),
        )
        is within
    )
