"""Published facts of cases: what shelves are tested with, and which furniture must not tip over.

What a law or a standard asks is for the place where the piece stands; local codes come first.
"""

from __future__ import annotations

from parametric.catalog.timbers import RECALLED
from parametric.figures import Figure
from parametric.units import DENSITY, FOOT, INCH, LOAD_OVER, POUND, STANDARD_GRAVITY


def _fact(name: str, value: float, unit: str, source: str) -> Figure:
    return Figure(value, name, origin="catalogue", unit=unit, source=source)


GRAVITY = _fact("standard gravity", float(STANDARD_GRAVITY), "N/kg", "3rd CGPM, 1901: 9.80665 m/s2")

_KCMA = "ANSI/KCMA A161.1: shelves at 15 lb/ft2 for 7 days sag 1/16 in a foot, 1/4 in at most"
TEST_LOAD = _fact(
    "load of the cabinet standard", 15 * float(LOAD_OVER.sizes["lb/ft2"]), "kg/m2", _KCMA
)
TEST_SAG = _fact("sag of the cabinet standard", float(INCH / 16 / (FOOT / 1000)), "mm/m", _KCMA)
TEST_MOST = _fact("most sag of the cabinet standard", float(INCH / 4), "mm", _KCMA)

BOOKS = _fact(
    "weight of books along a shelf",
    20 * float(POUND / (FOOT / 1000)),
    "kg/m",
    "about 20 lb to the running foot; common practice, no source",
)

UPRIGHT = _fact(
    "tallest piece that is carried in upright",
    1900,
    "mm",
    "under the head of a door of 6 ft 6 in, with a hand's breadth to lift; common practice, no source",
)

TIPPING_RULE = "16 CFR 1261 (ASTM F2057-23)"
"""Clothing storage furniture that stands free, in homes; what is fixed to the building is not in it."""
_SCOPE = f"{TIPPING_RULE}, scope: clothing storage units"
TIPS_FROM_HEIGHT = _fact("least height in the tip-over rule", float(27 * INCH), "mm", _SCOPE)
TIPS_FROM_WEIGHT = _fact("least weight in the tip-over rule", float(30 * POUND), "kg", _SCOPE)
TIPS_FROM_ROOM = _fact(
    "least enclosed room in the tip-over rule", 3.2 * float(FOOT**3), "mm3", _SCOPE
)
CHILD = _fact(
    "test weight of the tip-over rule",
    float(60 * POUND),
    "kg",
    f"{TIPPING_RULE}: a child of 60 lb at the front of what is open",
)
CLOTHES = _fact(
    "weight of clothes in a drawer",
    8.5 * float(DENSITY.sizes["lb/ft3"]),
    "kg/m3",
    f"{TIPPING_RULE}: drawers filled with 8.5 lb/ft3{RECALLED}",
)
