"""How damp wood gets in a room, and how far it moves for it.

A board left in still air settles at one moisture content, and every per cent it then
gains or loses moves it across the grain by its coefficient. Moisture is per cent of the
ovendry weight, humidity per cent, temperature deg C, lengths mm.
"""

from __future__ import annotations

import math

from parametric.figures import Figure

DRIEST = Figure(
    6.0,
    "driest moisture for movement",
    origin="catalogue",
    unit="%",
    source="Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-2",
)
DAMPEST = Figure(
    14.0,
    "dampest moisture for movement",
    origin="catalogue",
    unit="%",
    source="Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-2",
)
SATURATION = Figure(
    30.0,
    "fibre saturation",
    origin="catalogue",
    unit="%",
    source="Wood Handbook, FPL-GTR-190 (2010), chapter 4: taken as 30 % for most species",
)
COLDEST, HOTTEST = -1.0, 55.0
"""deg C. Where the equation was compared with table 4-2: 30 to 130 degrees F, rounded outwards."""


def in_range(moisture: float) -> bool:
    """True from 6 to 14 %, where the movement coefficients hold."""
    return DRIEST <= moisture <= DAMPEST


def movement(size: float, coefficient: float, change: float) -> Figure:
    """How far a board moves across the grain, mm; negative shrinks.

    Args:
        size: width at the moisture it starts from, mm.
        coefficient: C per 1 % of moisture content, from `Timber.across`.
        change: moisture at the end less moisture at the start, %.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 13, equation 13-2; holds from 6 to
    14 %, which a rule checks, not this sum.
    """
    across = size if isinstance(size, Figure) else Figure(size)
    return across * coefficient * change


def coefficient_from_shrinkage(shrinkage: float, start: float = SATURATION) -> float:
    """The movement coefficient of a timber whose shrinkage alone is published, per %.

    Args:
        shrinkage: green to ovendry, % of the green size.
        start: the moisture at which shrinking starts, % (22 for a few softwoods).

    The green size shrinks evenly by S from `start` to nought; the coefficient is that
    shrinkage per 1 %, referred to the size at 10 %. Derived; it gives the domestic rows
    of Wood Handbook table 13-5 from tables 4-3 and 4-4.
    """
    per_point = shrinkage / start
    return per_point / (100 - (start - 10) * per_point)


def equilibrium_moisture(celsius: float, relative_humidity: float) -> float:
    """The moisture content wood settles at in this air, %.

    Args:
        celsius: temperature, deg C.
        relative_humidity: %, from 0 to below 100.

    Raises:
        ValueError: the humidity is not a humidity.

    Source: Wood Handbook, FPL-GTR-190 (2010), chapter 4, the sorption equation with its
    constants for deg C. It stays within 0.061 of table 4-2 from 5 to 85 % and 30 to 130 deg F.
    """
    if not 0 <= relative_humidity < 100:
        raise ValueError(f"relative humidity is 0 to 100 %, not {relative_humidity}")
    t, h = float(celsius), float(relative_humidity) / 100
    w = 349 + 1.29 * t + 0.0135 * t**2
    k = 0.805 + 0.000736 * t - 0.00000273 * t**2
    k1 = 6.27 - 0.00938 * t - 0.000303 * t**2
    k2 = 1.91 + 0.0407 * t - 0.000293 * t**2
    kh = k * h
    hydrates = k1 * kh + 2 * k1 * k2 * kh**2
    return 1800 / w * (kh / (1 - kh) + hydrates / (1 + k1 * kh + k1 * k2 * kh**2))


def humidity_for(moisture: float, celsius: float) -> float:
    """The relative humidity at which wood settles at this moisture content, %.

    Raises:
        ValueError: no air gives that moisture.
    """
    low, high = 0.0, math.nextafter(100.0, 0.0)
    if not 0 <= moisture <= equilibrium_moisture(celsius, high):
        raise ValueError(f"no air at {celsius} deg C holds wood at {moisture} %")
    # Moisture rises steadily with humidity, so halving always closes on the one answer.
    for _ in range(60):
        middle = (low + high) / 2
        if equilibrium_moisture(celsius, middle) < moisture:
            low = middle
        else:
            high = middle
    return (low + high) / 2
