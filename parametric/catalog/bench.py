"""Facts of bench and site that no house file holds: each with its source.

What has no source beyond the trade's own habit says so.
"""

from __future__ import annotations

from parametric.figures import Figure

PRACTICE = "common practice, no source"


def _fact(name: str, value: float, unit: str = "mm", source: str = PRACTICE) -> Figure:
    return Figure(value, name, origin="catalogue", unit=unit, source=source)


GRAVITY = _fact(
    "gravity",
    9.81,
    "m/s2",
    "standard gravity 9.80665 m/s2, 3rd CGPM 1901, rounded as handbooks do",
)

SPARES = _fact("spares a setting", 1, "")
"""One piece more than the job needs goes through every setting, first."""
TEST_PIECE = _fact("least length of a test piece", 300)
"""Long enough to be held clear of the cutter, and to rest on both halves of a fence."""

STRIP = _fact("longest strip for loose tenons", 1200)
"""Easily handled at the bench, long enough for planer and saw: single tenons are not."""

BEVEL_TRIAL_RUNS = _fact("width of a bevel's test piece over the bevel's run", 3, "")
"""Twice as much field as bevel, so that face down it does not tip into the cut."""

FILM = _fact("dry film of one thin coat", 0.04)
"""Brushed or rolled; the tin's data sheet knows better."""

MITRES_IN_A_FRAME = _fact("pieces of a closed frame", 4, "", "a frame has four sides")
"""A mitre is tried by closing a frame: one joint hides half the error."""

CUT_A_PASS = _fact("depth of one pass over the cutter's diameter", 0.5, "")

TALL_FENCE_SHARE = _fact("tall fence over the panel's height on edge", 1 / 3, "")
TALL_FENCE_RUNS = _fact("tall fence over the bevel's run", 2, "")

DIAGONALS = _fact(
    "most the diagonals of a leaf may differ",
    25.4 / 8,
    source="1/8 in: WDMA I.S. 1A, squareness T-3, from memory",
)

BOX_DIAGONALS = _fact("most the diagonals of a drawer's box may differ", 1)
BOX_CLAMPS = _fact("clamps across a drawer's box", 4, "")
"""Two over cauls at the front, two at the back."""
GAP_SEEN = _fact("least gap between a cabinet and a wall that is closed", 10)
STANDS_FREE = _fact("least room beside a cabinet that stands free", 60)
CASE_DIAGONALS = _fact("most the diagonals of a case may differ", 1.5)

PIN_PITCH = _fact("most between the pins of a glass stop", 150)
PIN_FROM_MITRE = _fact("pin from the point of a mitre", 50)
PIN_LENGTH = _fact("pin's length over what it is driven through", 2.5, "")

BLOCKS_A_PANE = _fact(
    "setting blocks a pane",
    2,
    "",
    "at the quarter points of the lower edge: GANA Glazing Manual, from memory",
)
BLOCK_LENGTH = _fact(
    "least length of a setting block", 101.6, source="4 in: GANA Glazing Manual, from memory"
)

GLASS_TOLERANCE = _fact(
    "tolerance on a pane's size",
    25.4 / 16,
    source="plus or minus 1/16 in on cut sizes: ASTM C1036, from memory",
)
CLEARANCE_KEPT = _fact("edge clearance that must be left", 0.5, "")
"""Of the clearance drawn: what an opening that came out small may use up is the other half."""

ONE_PERSON_SPAN = _fact("largest piece that one person steers", 1.5, "m2")
"""A leaf larger than this is a two-handed piece at any weight: it catches the door frames."""
