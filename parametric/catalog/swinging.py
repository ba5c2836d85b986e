"""What leaves that swing must keep: each with its source, or the trade's habit."""

from __future__ import annotations

from parametric.figures import Figure

LEAST_SEASON_GAP = Figure(
    1.0,
    "least gap left in the dampest season",
    origin="catalogue",
    source="a leaf with less rubs as soon as it is painted again: common practice, no source",
)
FINGER_LOW = Figure(
    5.0,
    "gap that catches a finger, from",
    origin="catalogue",
    source="CEN/TR 13387: gaps of 5 to 12 mm are finger traps",
)
FINGER_HIGH = Figure(
    12.0,
    "gap that catches a finger, to",
    origin="catalogue",
    source="CEN/TR 13387: gaps of 5 to 12 mm are finger traps",
)
POINT_PITCH = Figure(
    150.0,
    "most between glazing points",
    origin="catalogue",
    source="common practice, no source",
)
