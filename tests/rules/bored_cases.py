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


def shelf_behind(high: str) -> Lines:
    """A fixed shelf on dowels so far below the top, and plates on the other face of its partition."""
    inside = f"hinge side: left}}], inside: [shelf space: {high}, shelf space: rest], shelves: 3}}"
    return {FIRST: inside, "from ends: 100": "from ends: 200", **boring(from_front="45")}


def screwed(high: str) -> Lines:
    """A fixed shelf 900 below the top of the left bay, and so far below it in the right one."""
    return {
        FIRST: "hinge side: right}], inside: [shelf space: 900, shelf space: rest]}",
        "hinge side: left}]}": f"hinge side: left}}], inside: [shelf space: {high}, "
        "shelf space: rest]}",
        DEPTH: f"{DEPTH}  corners: screw\n",
    }


DEEP = {"plate_holes": "5 x 13"}
"""Plates' screws to the middle of a board of 26."""

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
    # the screw's middle at 1698.5 + 16 = 1714.5; a dowel of 8 from behind goes 17.3 of 26 deep, and
    # wants 4 + 5 + 2.5 = 11.5 between the two: the shelf's middle is at 1874 - 135 - 13 = 1726
    (
        "plate_meets",
        "stop",
        BORED,
        shelf_behind("135.1"),
        shelf_behind("135"),
        "leaves less than 5 of wood beside cabinet / bay 1 / fixed shelf 1 / right end, a dowel",
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
    # a stretcher of 74 lies from 276 on: dowels at 21 and 53 moved to 16 and 48, their wood's end at
    # 276 + 52 = 328, 6 before the groove at 334. Of 73 they would be at 20.5 and 52.5, and at 16.5
    # and 48.5 the second ends at 277 + 52.5 = 329.5
    (
        "joint_meets",
        "stop",
        BORED,
        {DEPTH: f"{DEPTH}  stretchers: 73\n"},
        {DEPTH: f"{DEPTH}  stretchers: 74\n"},
        "a dowel 329.5 from the front leaves less than 5 of wood beside the groove for the back",
    ),
    # the narrowest of the house's cutters is 6
    (
        "case_cutter_too_big",
        "stop",
        BORED,
        {DEPTH: f"{DEPTH}  corners: loose tenon\n", **boring(loose_tenon="5.9 x 30 x 30")},
        {DEPTH: f"{DEPTH}  corners: loose tenon\n", **boring(loose_tenon="6 x 30 x 30")},
        "The slot for the loose tenons of cabinet is 5.9 wide and your smallest cutter is 6",
    ),
    # a screw's head of 10 in the middle of a shelf's end, 18 of shelf over it: the other 13 + 5 lower
    (
        "screws_covered",
        "stop",
        BORED,
        screwed("917.9"),
        screwed("918"),
        "its screws go in where the end of bay 2 / fixed shelf 1 stands on the other side",
    ),
    # cups 52.5 from the ends of a door that stands 1.5 short of the case: 54 - 26 - 16 = 12 from the
    # partition's end, where dowels of 8 go 30 - 17.33 + 2 = 14.67 in. Side by side the screw of 5
    # leaves 37 - 2.5 - 28.6 - 4 = 1.9 beside the first dowel
    (
        "bores_meet",
        "stop",
        BORED,
        {**LEFT, "from ends: 100": "from ends: 52.5", **boring(dowel_from_edge="28.6", **DEEP)},
        {**LEFT, "from ends: 100": "from ends: 52.5", **boring(dowel_from_edge="28.5", **DEEP)},
        "Cabinet / partition 1: its dowel holes in the foot leave 1.9 of wood before its plate "
        "holes in the right face",
    ),
    # t / 2 / sin 15 - 18.727: of 13.8 26.660 - 18.727 = 7.933, of 13.9 8.126; twice 4 are wanted
    (
        "pocket_thin",
        "stop",
        BORED,
        {DEPTH: f"{DEPTH}  corners: pocket screw\n", BOARD: "board: {thickness: 13.8}"},
        {DEPTH: f"{DEPTH}  corners: pocket screw\n", BOARD: "board: {thickness: 13.9}"},
        "along a screw in a board of 13.8: its head pulls through",
    ),
    # of 26 13 / sin 15 - 18.727 = 31.501; (56.4 - 31.501) cos 15 = 24.051, (56.3 - 31.501) cos 15 = 23.954
    (
        "pocket_screw_long",
        "stop",
        BORED,
        {DEPTH: f"{DEPTH}  corners: pocket screw\n", **boring(pocket_screw="4 x 56.4")},
        {DEPTH: f"{DEPTH}  corners: pocket screw\n", **boring(pocket_screw="4 x 56.3")},
        "into a board of 26, and leave less than 2 behind",
    ),
    # (39.7 - 31.501) cos 15 = 7.920, (39.8 - 31.501) cos 15 = 8.016
    (
        "pocket_screw_short",
        "stop",
        BORED,
        {DEPTH: f"{DEPTH}  corners: pocket screw\n", **boring(pocket_screw="4 x 39.7")},
        {DEPTH: f"{DEPTH}  corners: pocket screw\n", **boring(pocket_screw="4 x 39.8")},
        "screws 39.7 long go only 7.9 into the other board",
    ),
    # (26 - 22.4) / 2 = 1.8, (26 - 22) / 2 = 2
    (
        "end_splits",
        "stop",
        BORED,
        boring(dowel="22.4 x 40"),
        boring(dowel="22 x 40"),
        "what is 22.4 wide leaves 1.8 on either side in the end of a board of 26",
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
