"""Pairs for rules of boring and boards: a linen press of 26 board whose doors hang on its partition."""

from __future__ import annotations

from pathlib import Path

from parametric.problems import Level
from tests.rules.test_every_rule import Lines

BORED = Path(__file__).with_name("bored.yaml")
HABITS = "boring: {pitch: 32}"
BOARD = "board: {thickness: 26}"
DEPTH = "  depth: 350\n"
FIRST = "hinge side: right}], shelves: 3}"
ONE: Lines = {FIRST: "hinge side: right}], shelves: 1}"}
LEFT: Lines = {"hinge side: right": "hinge side: left"}
"""Its left door hung on the left side, so that no board has plates on both of its faces."""


def boring(**keys: str) -> Lines:
    written = ", ".join(f"{key.replace('_', ' ')}: {value}" for key, value in keys.items())
    return {HABITS: f"boring: {{{written}}}"}


def fixed_shelf(high: str) -> Lines:
    """Hinges 200 from the ends, and a fixed shelf let in so far below the top."""
    inside = f"hinge side: right}}], inside: [shelf space: {high}, shelf space: rest], shelves: 3}}"
    return {FIRST: inside, "from ends: 100": "from ends: 200", DEPTH: f"{DEPTH}  dado: 6\n"}


PAIRS: tuple[tuple[str, Level, Path, Lines, Lines, str], ...] = (
    # between 26 and 1874 are 1848: twice 924
    (
        "no_pins",
        "stop",
        BORED,
        {**ONE, **boring(from_ends="925")},
        {**ONE, **boring(from_ends="924")},
        "cabinet / bay 1 is 1848 high and the first and the last pin want 1850",
    ),
    # one height, and three shelves for it
    (
        "no_pins",
        "stop",
        BORED,
        boring(from_ends="924"),
        {**ONE, **boring(from_ends="924")},
        "cabinet / bay 1 has fewer heights for pins, 1, than shelves, 3",
    ),
    # 13 and 2 behind
    (
        "pins_shallow",
        "note",
        BORED,
        {BOARD: "board: {thickness: 14.9}"},
        {BOARD: "board: {thickness: 15}"},
        "cabinet: pins are bored 12.9 deep, not 13",
    ),
    # a third hinge, in the middle at 950, has its screws at 934 and 966, where pins would be
    (
        "pins_left_out",
        "note",
        BORED,
        {"count: 2": "count: 3"},
        {},
        "cabinet / bay 1: no pins at 934, 966 from the foot of the case",
    ),
    # the upper plate's middle at 1898.5 - 200 = 1698.5, its screw's hole up to 1717; the shelf of
    # 26 lies from 1874 - 126 - 26 = 1722 on
    (
        "plate_meets",
        "stop",
        BORED,
        fixed_shelf("126.1"),
        fixed_shelf("126"),
        "at 1714.5 from the foot of the case leaves less than 5 of wood beside the dado for the "
        "fixed shelf 1",
    ),
    # (25.6 - 2) / 2 = 11.8, (26 - 2) / 2 = 12
    (
        "plates_shallow",
        "caution",
        BORED,
        {BOARD: "board: {thickness: 25.6}"},
        {},
        "their screws go 11.8 deep, not 12",
    ),
    # 26 - 2
    (
        "plate_through",
        "stop",
        BORED,
        {**LEFT, **boring(plate_holes="5 x 24.1")},
        {**LEFT, **boring(plate_holes="5 x 24")},
        "holes 24.1 deep leave less than 2 in a side of 26",
    ),
    # the back's face at 350 - 10 - 6 = 334, less 5 and half of 5
    (
        "plate_past_back",
        "stop",
        BORED,
        boring(from_front="326.6"),
        boring(from_front="326.5"),
        "their screws stand 326.6 from the front edge, and the side is 334 deep",
    ),
    # 32 + 4 x 8 = 64, of stretchers that end before the groove
    (
        "joint_short",
        "stop",
        BORED,
        {DEPTH: f"{DEPTH}  stretchers: 63\n", "from back: 10": "from back: 0"},
        {DEPTH: f"{DEPTH}  stretchers: 64\n", "from back: 10": "from back: 0"},
        "63 of joint is too short for two",
    ),
    # 350 - 20 = 330 are 10 steps: 5 x 64, wider ones leave more; the last at 10 + 320 = 330, in the
    # web of the groove at 334. From 20 on: 310, 3 x 96, the last at 308
    (
        "joint_meets",
        "stop",
        BORED,
        boring(dowel_from_edge="10"),
        boring(dowel_from_edge="20"),
        "a dowel 330 from the front leaves less than 5 of wood beside the groove for the back",
    ),
    # (26 - 22.4) / 2 = 1.8, (26 - 22) / 2 = 2
    (
        "end_splits",
        "stop",
        BORED,
        boring(dowel="22.4 x 40"),
        boring(dowel="22 x 40"),
        "22.4 holes leave 1.8 on either side in the end of a board of 26",
    ),
    (
        "board_not_measured",
        "caution",
        BORED,
        {DEPTH: f"{DEPTH}  dado: 6\n"},
        {DEPTH: f"{DEPTH}  dado: 6\n", BOARD: "board: {thickness: 26, measured: 25.8}"},
        "Cabinet: dadoes are cut 26 wide, as the board is sold",
    ),
    # bays of (900 - 3 x 26) / 2 = 411, less twice 205.5
    (
        "part_has_no_size",
        "stop",
        BORED,
        {BOARD: f"{BOARD}\nshelf: {{clearance: 205.5}}"},
        {BOARD: f"{BOARD}\nshelf: {{clearance: 205.4}}"},
        "shelf 1 would be 0 in length",
    ),
    # a tenth of 26 is 2.6
    (
        "board_measured_wrong",
        "caution",
        BORED,
        {BOARD: "board: {thickness: 26, measured: 28.7}"},
        {BOARD: "board: {thickness: 26, measured: 28.6}"},
        "plywood sold as 26 was measured as 28.7",
    ),
)
