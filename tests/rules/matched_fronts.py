"""Pairs for fronts that are matched: the press of `chest.yaml`, a pair of doors over three drawers."""

from __future__ import annotations

from pathlib import Path

from parametric.problems import Level

Lines = dict[str, str]
CHEST = Path(__file__).with_name("chest.yaml")
DEPTH = "  depth: 580\n"
PANEL = "panel: {kind: board, thickness: 9,"
UP: Lines = {DEPTH: f"{DEPTH}  fronts matched: up\n"}
ACROSS: Lines = {
    DEPTH: f"{DEPTH}  fronts matched: across\n",
    PANEL: "panel: {kind: board, grain: level, thickness: 9,",
    "board: {": "board: {sheet: 3050 x 1525, ",
}
"""The doors' panels are 1459 high, and lie across their grain over the width of a sheet."""
FRONTS = "[door pair: rest, drawer: 220, drawer: 220, drawer: 220]"
PAIRS_OF_DOORS = "[door pair: rest, door pair: 600]"


def veneered(sheet: str) -> Lines:
    """Panels of a board of its own, which comes in sheets so large."""
    return {
        **UP,
        PANEL: f"board fibreboard: {{grain: along, sheet: {sheet}}}\n"
        "panel: {kind: board, board: fibreboard, thickness: 9,",
    }


PAIRS: tuple[tuple[str, Level, Path, Lines, Lines, str], ...] = (
    # Fronts stand over 2273 - 3 = 2270: 2270 - 3 x 220 - 3 x 3 = 1601 are left for the doors. A
    # panel stands 10 - 1 in its groove at each end: 1601 - 160 + 18 = 1459, 220 - 120 + 18 = 118.
    # 1459 + 3 x 118 and three saw cuts of 4 are 1825.
    (
        "match_breaks_off",
        "caution",
        CHEST,
        veneered("1824.5 x 1220"),
        veneered("1825 x 1220"),
        "The grain of its fronts does not run on over leaf C / panel: they do not come out of one sheet "
        "1824.5 x 1220.",
    ),
    # From the outer edge of one panel of a pair to that of the other: 789 - 3 - 2 x (80 - 9) = 644.
    (
        "match_breaks_off",
        "caution",
        CHEST,
        {**veneered("2440 x 643.5"), FRONTS: PAIRS_OF_DOORS},
        {**veneered("2440 x 644"), FRONTS: PAIRS_OF_DOORS},
        "over leaf C / panel: they do not come out of one sheet 2440 x 643.5",
    ),
    (
        "fronts_cannot_be_matched",
        "stop",
        CHEST,
        {**UP, PANEL: "panel: {kind: board, board: fibreboard, thickness: 9,"},
        veneered("2440 x 1220"),
        "The fibreboard of leaf A / panel has no grain that could run on.",
    ),
    (
        "fronts_cannot_be_matched",
        "stop",
        CHEST,
        {**ACROSS, PANEL: PANEL},
        ACROSS,
        "The grain of leaf A / panel is upright: it does not run on across.",
    ),
    (
        "fronts_cannot_be_matched",
        "stop",
        CHEST,
        {**UP, PANEL: "panel: {kind: flat, thickness: 9,"},
        UP,
        "Leaf A / panel is glued up from boards of tulipwood, not sawn from a sheet.",
    ),
    (
        "matched_of_two_boards",
        "stop",
        CHEST,
        {
            **UP,
            PANEL: f"panel thick: {{kind: board, thickness: 12, groove: 12 x 10, clearance: 1}}\n{PANEL}",
            "leaf low:\n": "leaf low:\n  panel: thick\n",
        },
        UP,
        "these panels are of plywood 9 thick and plywood 12 thick",
    ),
    # A pair of doors stands in one row; three drawers, one over the other, in none.
    (
        "nothing_to_match",
        "caution",
        CHEST,
        {
            **ACROSS,
            "[door pair: rest, drawer: 220, drawer: 220": "[open: rest, drawer: 220, drawer: 220",
        },
        ACROSS,
        '"fronts matched: across" says nothing here: no two panels stand in line.',
    ),
)
