"""Doors of every kind that are over-full, under-full, at odds with themselves or impossible.

Each is the kind's starter with a few lines changed. Of each: what `check` says on the terminal,
on which line of the file, at which level, and the exit status. Sums stand beside the row, mm.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import NamedTuple

import pytest
from typer.testing import CliRunner

from parametric.cli import app
from parametric.design.starters import templates
from parametric.hangings import DOOR_KINDS
from parametric.job import check
from parametric.problems import Level, exit_status

Lines = tuple[tuple[str, str], ...]


class Bad(NamedTuple):
    """A starter, what is changed in it, and the one thing that must be said.

    `at` begins the line to point at, as it is written; `also` are the codes of further stops
    that truly follow besides.
    """

    kind: str
    lines: Lines
    at: str
    code: str
    says: str
    exit_status: int = 1
    level: Level = "stop"
    also: tuple[str, ...] = ()


FULL: tuple[Bad, ...] = (
    # head 2052 + lap 40 - gap 10 = 2082; 110 + 1000 + 150 + 640 + 210 = 2110
    Bad(
        "sliding",
        (("- lite: rest", "- lite: 1000"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2110; the door is 2082. That is 28 too much: make one line "
        '"rest", or take 28 off the panel, or off the bottom rail.',
    ),
    # 110 + 900 + 150 + 640 + 210 = 2010
    Bad(
        "sliding",
        (("- lite: rest", "- lite: 900"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2010; the door is 2082. 72 is unallocated: make one line "
        '"rest", or add 72 to the panel, or to the bottom rail.',
    ),
    # 110 + 150 + 640 + 1900 = 2800, and 2082 - 2800 = -718
    Bad(
        "sliding",
        (("- bottom rail: 210", "- bottom rail: 1900"),),
        "- bottom rail: 1900",
        "no_size_left",
        "The leaf A / lite would be -718 high: the given lines already add to 2800 of the door's "
        "2082. The largest of them is the bottom rail.",
    ),
    # 2068 + 40 - 10 = 2098; 100 + 600 + 90 + 600 + 140 + 460 + 200 = 2190
    Bad(
        "biparting",
        (("- lite: equal", "- lite: 600"), ("- lite: equal", "- lite: 600")),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2190; the door is 2098. That is 92 too much: make one line "
        '"rest", or take 92 off the panel, or off the bottom rail.',
    ),
    # 990 + 2*300 = 1590
    Bad(
        "biparting",
        (("- lite: equal", "- lite: 300"), ("- lite: equal", "- lite: 300")),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 1590; the door is 2098. 508 is unallocated: make one line "
        '"rest", or add 508 to the panel, or to the bottom rail.',
    ),
    # 100 + 90 + 140 + 460 + 1900 = 2690; (2098 - 2690)/2 = -296
    Bad(
        "biparting",
        (("- bottom rail: 200", "- bottom rail: 1900"),),
        "- bottom rail: 1900",
        "no_size_left",
        "The leaf A / lite 1 would be -296 high: the given lines already add to 2690 of the door's "
        "2098. The largest of them is the bottom rail.",
    ),
    # 2038 + 40 - 10 = 2068; 105 + 1200 + 145 + 520 + 210 = 2180
    Bad(
        "bypass",
        (("- lite: rest", "- lite: 1200"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2180; the door is 2068. That is 112 too much: make one "
        'line "rest", or take 112 off the panel, or off the bottom rail.',
    ),
    Bad(
        "bypass",
        (("- lite: rest", "- lite: 300"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 1280; the door is 2068. 788 is unallocated: make one line "
        '"rest", or add 788 to the panel, or to the bottom rail.',
    ),
    # 2042 + 25 - 10 = 2057; 110 + 900 + 140 + 900 + 200 = 2250
    Bad(
        "pocket",
        (("- panel: equal", "- panel: 900"), ("- panel: equal", "- panel: 900")),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2250; the door is 2057. That is 193 too much: make one "
        'line "rest", or take 193 off the panel, or off the bottom rail.',
    ),
    Bad(
        "pocket",
        (("- panel: equal", "- panel: 300"), ("- panel: equal", "- panel: 300")),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 1050; the door is 2057. 1007 is unallocated: make one line "
        '"rest", or add 1007 to the panel, or to the bottom rail.',
    ),
    # 2081 - 45 - 10 = 2026; 95 + 1800 + 220 = 2115
    Bad(
        "bifold",
        (("- lite: rest", "- lite: 1800"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2115; the door is 2026. That is 89 too much: make one line "
        '"rest", or take 89 off the lite, or off the bottom rail.',
    ),
    Bad(
        "bifold",
        (("- lite: rest", "- lite: 300"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 615; the door is 2026. 1411 is unallocated: make one line "
        '"rest", or add 1411 to the lite, or to the bottom rail.',
    ),
    # 2026 - 95 - 1900 = 31 of light, three bars of 22 in it: (31 - 66)/4 = -8.75, once for all four
    Bad(
        "bifold",
        (("- bottom rail: 220", "- bottom rail: 1900"),),
        "muntin: 22",
        "bars_leave_no_daylight",
        "Bars 22 wide leave -8.8 of height between them in leaf A / lite.",
    ),
    # 2039 - 3 - 10 = 2026; 115 + 1000 + 190 + 560 + 220 = 2085
    Bad(
        "hinged",
        (("- lite: rest", "- lite: 1000"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2085; the door is 2026. That is 59 too much: make one line "
        '"rest", or take 59 off the panel, or off the bottom rail.',
    ),
    Bad(
        "hinged",
        (("- lite: rest", "- lite: 300"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 1385; the door is 2026. 641 is unallocated: make one line "
        '"rest", or add 641 to the panel, or to the bottom rail.',
    ),
    # One arc over 1334 that rises 120 is of radius (667^2 + 120^2)/240 = 1913.70; over the meeting
    # stiles' inner edges, 111.5 from its middle, it stands root(1913.70^2 - 111.5^2) - 1793.70 =
    # 116.75 up. 110 + 1300 + 150 + 480 + 210 = 2250, and 116.75; the door is 2138 - 3 - 10 = 2125.
    # Sizes are told to half a millimetre.
    Bad(
        "hinged pair",
        (("- lite: rest", "- lite: 1300"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2366.5 (the arched rail is 116.5 higher at the stiles); the "
        'door is 2125. That is 241.5 too much: make one line "rest".',
    ),
    Bad(
        "hinged pair",
        (("- lite: rest", "- lite: 300"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 1366.5 (the arched rail is 116.5 higher at the stiles); the "
        'door is 2125. 758.5 is unallocated: make one line "rest".',
    ),
    # Upper leaf 2045 - 3 - (1050 + 1.5) = 990.5; 110 + 800 + 120 = 1030
    Bad(
        "dutch",
        (("- lite: rest", "- lite: 800"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 1030; leaf A is 990.5. That is 39.5 too much: make one line "
        '"rest", or take 39.5 off the lite, or off the bottom rail.',
    ),
    # Lower leaf 1050 - 1.5 + 12 - 10 = 1050.5; 130 + 600 + 200 = 930
    Bad(
        "dutch",
        (("- panel: rest", "- panel: 600"),),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 930; leaf B is 1050.5. 120.5 is unallocated: make one line "
        '"rest", or add 120.5 to the panel, or to the bottom rail.',
    ),
    # 110 + 1900 = 2010, and 990.5 - 110 - 1900 = -1019.5
    Bad(
        "dutch",
        (("- bottom rail: 120", "- bottom rail: 1900"),),
        "- bottom rail: 1900",
        "no_size_left",
        "The leaf A / lite would be -1019.5 high: the given lines already add to 2010 of leaf A's "
        "990.5. The largest of them is the bottom rail.",
    ),
)

AT_ODDS: tuple[Bad, ...] = (
    Bad(
        "sliding",
        (("  head lap: 40", "  hinge gap: 3"),),
        "hinge gap: 3",
        "unknown_key",
        '"hinge gap" belongs to doors that swing; this door is sliding. Did you mean "side lap"?',
        exit_status=2,
    ),
    Bad(
        "sliding",
        (("  opens to: left", "  opens to: both"),),
        "opens to: both",
        "unknown_word",
        '"both" is not a word for "opens to".',
        exit_status=2,
    ),
    Bad(
        "sliding",
        (("  head lap: 40", "  track: none"),),
        "track: none",
        "missing_block",
        "door cannot do without a track, and `track: none` says that there is none.",
        exit_status=2,
    ),
    Bad(
        "biparting",
        (("  head lap: 40", "  overlap: 40"),),
        "overlap: 40",
        "unknown_key",
        '"overlap" belongs to bypass doors; this door is biparting. Did you mean "meeting gap"?',
        exit_status=2,
    ),
    Bad(
        "biparting",
        (("  head lap: 40", "  leaves: 3"),),
        "leaves: 3",
        "unknown_key",
        '"leaves" belongs to bypass and bifold doors; this door is biparting.',
        exit_status=2,
    ),
    Bad(
        "bypass",
        (("  leaves: 2", "  leaves: 2\n  tracks: [front, front]"),),
        "tracks: [front, front]",
        "neighbours_on_one_track",
        "Two leaves beside one another run on one track: they cannot pass.",
        exit_status=2,
    ),
    Bad(
        "bypass",
        (("  leaves: 2", "  leaves: 1"),),
        "leaves: 1",
        "too_few_leaves",
        'One leaf has none to pass. Did you mean "kind: sliding"?',
        exit_status=2,
    ),
    # Only `head lap` is taken out: the line that is left says how leaves over the wall lap it.
    Bad(
        "bypass",
        (("hung: on the wall", "hung: in the opening"), ("  head lap: 40", "  beside leaves: 12")),
        "side lap: 45",
        "word_says_nothing",
        '"side lap" says nothing here, for the door has `hung: in the opening`: nothing is made by '
        "that line.",
        exit_status=0,
        level="caution",
    ),
    Bad(
        "pocket",
        (("  buffer: 20", "  side lap: 30"),),
        "side lap: 30",
        "unknown_key",
        '"side lap" belongs to sliding, biparting and bypass doors; this door is pocket.',
        exit_status=2,
    ),
    Bad(
        "pocket",
        (("  pocket: right", "  pocket: both"),),
        "pocket: both",
        "unknown_word",
        '"both" is not a word for "pocket".',
        exit_status=2,
    ),
    Bad(
        "bifold",
        (("  leaves: 4", "  leaves: 3"), ("folds to: both", "folds to: left")),
        "leaves: 3",
        "leaves_do_not_fold",
        "Leaves fold in twos; you wrote 3.",
        exit_status=2,
    ),
    Bad(
        "bifold",
        (("  leaves: 4", "  leaves: 6"),),
        "leaves: 6",
        "leaves_do_not_fold",
        "Each side folds in twos; you wrote 6.",
        exit_status=2,
    ),
    Bad(
        "bifold",
        (("folds to: both", "folds to: left"), ("jamb gap: 6", "jamb gap: 30")),
        "meeting gap: 8",
        "word_says_nothing",
        '"meeting gap" says nothing here, for the door has `folds to: left`: nothing is made by '
        "that line.",
        exit_status=0,
        level="caution",
    ),
    Bad(
        "hinged",
        (("  head gap: 3", "  side lap: 40"),),
        "side lap: 40",
        "unknown_key",
        '"side lap" belongs to doors that slide; this door is hinged. Did you mean "hinge gap"?',
        exit_status=2,
    ),
    Bad(
        "hinged",
        (("  head gap: 3", "  hinge: none"),),
        "hinge: none",
        "missing_block",
        "door cannot do without a hinge, and `hinge: none` says that there is none.",
        exit_status=2,
    ),
    Bad(
        "hinged pair",
        (("  head gap: 3", "  left leaf: 2 parts\n  right leaf: 700"),),
        "left leaf: 2 parts",
        "shares_do_not_match",
        "The left leaf takes parts and the right leaf does not: parts of what?",
        exit_status=2,
    ),
    # The right leaf is left out, and so is `equal`: half of what?
    Bad(
        "hinged pair",
        (("  head gap: 3", "  left leaf: 2 parts"),),
        "left leaf: 2 parts",
        "shares_do_not_match",
        "The left leaf takes parts and the right leaf does not: parts of what?",
        exit_status=2,
    ),
    Bad(
        "hinged pair",
        (("meeting stiles: butt", "meeting stiles: butt\n  meeting rebate: 12"),),
        "meeting rebate: 12",
        "word_says_nothing",
        '"meeting rebate" says nothing here, for the door has `meeting stiles: butt`: nothing is '
        "made by that line.",
        exit_status=0,
        level="caution",
    ),
    Bad(
        "hinged pair",
        (("meeting stiles: butt", "meeting stiles: rebated\n  meeting rebate: 12"),),
        "edge bevel: 3 deg",
        "word_says_nothing",
        '"edge bevel" says nothing here, for the door has `meeting stiles: rebated`: nothing is '
        "made by that line.",
        exit_status=0,
        level="caution",
    ),
    Bad(
        "dutch",
        (("  head gap: 3", "  leaf: glazed"),),
        "leaf: glazed",
        "word_says_nothing",
        '"leaf" says nothing here, for the door has `upper leaf` and `lower leaf`: nothing is made '
        "by that line.",
        exit_status=0,
        level="caution",
    ),
    Bad(
        "dutch",
        (("  head gap: 3", "  first to open: left"),),
        "first to open: left",
        "unknown_key",
        '"first to open" belongs to hinged pair doors; this door is dutch.',
        exit_status=2,
    ),
    # One leaf 40 thick, the other 44: half of each is not half of the other.
    Bad(
        "dutch",
        (("thickness: 44", "thickness: 40"),),
        "thickness: 44",
        "laps_of_unlike_leaves",
        "Leaf A is 40 thick and leaf B 44: leaves that lap one another are of one thickness.",
    ),
)

IMPOSSIBLE: tuple[Bad, ...] = (
    # 2052 + 40 - 2300 = -208
    Bad(
        "sliding",
        (("floor gap: 10", "floor gap: 2300"),),
        "floor gap: 2300",
        "no_size",
        "The leaf height comes to -208. It follows from: head height at the highest floor 2052, "
        "head lap 40, floor gap 2300.",
    ),
    # 907 + 2*45 = 997; 997 - 2*500 = -3
    Bad(
        "sliding",
        (("stiles: 110", "stiles: 500"),),
        "stiles: 500",
        "no_size_left",
        "The stiles of leaf A, 500 and 500, leave -3 of its width of 997 for the rails between them.",
    ),
    # the middle 15 off the wall, half of the leaf 21: 6 of it in the wall
    Bad(
        "sliding",
        (("off wall: 72", "off wall: 15"),),
        "off wall: 15",
        "leaf_in_the_wall",
        "The leaf nearest the wall would stand 6 in it.",
    ),
    # (1606 + 90 - 1700)/2 = -2
    Bad(
        "biparting",
        (("meeting gap: 3", "meeting gap: 1700"),),
        "meeting gap: 1700",
        "no_size",
        "The leaf width comes to -2. It follows from: largest width 1606, side lap 45, meeting gap "
        "1700.",
    ),
    # (1696 - 3)/2 = 846.5; 846.5 - 860 = -13.5
    Bad(
        "biparting",
        (("stiles: 100", "stiles: 430"),),
        "stiles: 430",
        "no_size_left",
        "The stiles of leaf A, 430 and 430, leave -13.5 of its width of 846.5 for the rails between "
        "them.",
    ),
    # cover 1696; a leaf (1696 + 1650)/2 = 1673, a lap (1696 - 1602)/2 = 47: 1602 - (1673 - 47) = -24
    Bad(
        "bypass",
        (("overlap: stile", "overlap: 1650"),),
        "overlap: 1650",
        "no_way_through",
        "Open as far as it goes, the door leaves -24, less than nothing, to walk through. The "
        "largest choice behind that: overlap 1650.",
        also=("panel_leaves_groove",),
    ),
    # a leaf (1696 + 1700)/2 = 1698 that has to move inside of 1696
    Bad(
        "bypass",
        (("overlap: stile", "overlap: 1700"),),
        "overlap: 1700",
        "no_way_through",
        "Open as far as it goes, the door leaves -49, less than nothing, to walk through. The "
        "largest choice behind that: overlap 1700.",
        also=("panel_leaves_groove",),
    ),
    # 40 - 42 = -2
    Bad(
        "bypass",
        (("spacing: 56", "spacing: 40"),),
        "spacing: 40",
        "leaves_touch",
        "The leaves cannot pass: -2 between them.",
    ),
    # in the opening it is the design that keeps them apart, not the track
    Bad(
        "bypass",
        (
            ("hung: on the wall", "hung: in the opening"),
            ("  side lap: 45", "  between leaves: 0"),
            ("  head lap: 40", "  beside leaves: 12"),
        ),
        "between leaves: 0",
        "leaves_touch",
        "The leaves cannot pass: 0 between them.",
    ),
    Bad(
        "bypass",
        (("  leaves: 2", "  leaves: 7"),),
        "leaves: 7",
        "too_many_leaves",
        "7 leaves that pass one another are more than anybody hangs.",
        exit_status=2,
    ),
    # 824 - 900 = -76
    Bad(
        "pocket",
        (("left out: 50", "left out: 900"),),
        "left out: 900",
        "no_way_through",
        "Open as far as it goes, the door leaves -76, less than nothing, to walk through. The "
        "largest choice behind that: left out when open 900.",
    ),
    # (30 - 40)/2 = -5
    Bad(
        "pocket",
        (("wall: 150", "wall: 30"),),
        "wall: 30",
        "wall_too_thin",
        "The wall is 30 thick and the leaf 40: it leaves -5 on either side, and no leaf slides into "
        "that.",
    ),
    # 2042 + 25 - 2100 = -33
    Bad(
        "pocket",
        (("floor gap: 10", "floor gap: 2100"),),
        "floor gap: 2100",
        "no_size",
        "The leaf height comes to -33. It follows from: head height at the highest floor 2042, "
        "above the head 25, floor gap 2100.",
    ),
    # (2402 - 2*1300 - 2*3 - 8)/4 = -53
    Bad(
        "bifold",
        (("jamb gap: 6", "jamb gap: 1300"),),
        "jamb gap: 1300",
        "no_size",
        "The leaf width comes to -53. It follows from: plumb clear width 2402, jamb gap 1300, fold "
        "gap 3, meeting gap 8.",
    ),
    # A pivot 40 in, half the leaf 20: hypot(40, 20) - 40 = 4.72
    Bad(
        "bifold",
        (("jamb gap: 6", "jamb gap: 1"),),
        "jamb gap: 1",
        "leaf_binds",
        "The jamb gap at the pivot is 1, and the edge needs 4.7 as the leaf turns: it binds.",
    ),
    # A leaf (2402 - 12 - 6 - 1)/4 = 595.75; the last edge of a chain of two stands 2*595.75 + 3 - 40 =
    # 1154.5 along and 2*(20 + 6) + 20 = 72 off: hypot - 1154.5 = 2.24, and two of them 4.49.
    Bad(
        "bifold",
        (("meeting gap: 8", "meeting gap: 1"),),
        "meeting gap: 1",
        "leaf_binds",
        "The meeting gap is 1, and the edge needs 4.5 as the leaf turns: it binds.",
    ),
    # 864 - 900 - 3 = -39
    Bad(
        "hinged",
        (("hinge gap: 2.5", "hinge gap: 900"),),
        "hinge gap: 900",
        "no_size",
        "The leaf width comes to -39. It follows from: plumb clear width 864, hinge gap 900, lock "
        "gap 3.",
    ),
    Bad(
        "hinged",
        (("edge bevel: 3 deg", "edge bevel: 90 deg"),),
        "edge bevel: 90 deg",
        "bevel_too_steep",
        "An edge bevel of 90 degrees is more than anybody planes.",
        exit_status=2,
    ),
    # the plate reaches 2200 - 1060 = 1140 higher than the starter's, which ends 1145.3 up
    Bad(
        "hinged",
        (("height: 1060", "height: 2200"),),
        "height: 2200",
        "lock_off_the_leaf",
        "The lock, 2064.7 to 2285.3 up, does not lie on a leaf 2026 high.",
    ),
    # 1559 - 5 - 3 = 1551; 1551 - 1700 = -149
    Bad(
        "hinged pair",
        (("  head gap: 3", "  left leaf: 1700"),),
        "left leaf: 1700",
        "no_size",
        "The right leaf width comes to -149. It follows from: plumb clear width 1559, hinge gap "
        "2.5, meeting gap 3, left leaf 1700.",
    ),
    # 2.5 + 900 + 3 + 900 + 2.5 = 1808; 1808 - 1559 = 249
    Bad(
        "hinged pair",
        (("  head gap: 3", "  left leaf: 900\n  right leaf: 900"),),
        "left leaf: 900",
        "leaves_do_not_fill",
        "Your leaves and their gaps add to 1808, and the opening is 1559: that is 249 too much. Make "
        'one leaf "rest", or take 249 off one of them.',
    ),
    Bad(
        "hinged pair",
        (("meeting stiles: butt", "meeting stiles: rebated\n  meeting rebate: 120"),),
        "meeting rebate: 120",
        "lap_takes_the_wood",
        "The meeting rebate of 120 takes all of leaf A's right stile, 110 wide.",
        also=("lap_takes_the_wood",),
    ),
    Bad(
        "hinged pair",
        (
            ("meeting stiles: butt", "meeting stiles: rebated\n  meeting rebate: 12"),
            ("meeting gap: 3", "meeting gap: 20"),
        ),
        "meeting rebate: 12",
        "edges_do_not_lap",
        "The meeting rebate is 12 wide and the meeting gap 20: one leaf would not lap the other.",
    ),
    # (400 - 3)/2 = 198.5
    Bad(
        "hinged pair",
        (("meeting stiles: butt", "meeting stiles: astragal\n  astragal: 400 x 10"),),
        "astragal: 400 x 10",
        "astragal_too_wide",
        "The astragal of 400 lies 198.5 on either leaf, and the meeting stile is 110 wide: it would "
        "stand over what is beside it.",
    ),
    # over 1334, half of it
    Bad(
        "hinged pair",
        (("rise: 120", "rise: 2200"),),
        "rise: 2200",
        "no_such_arch",
        "A segmental arch over 1334 rises 667 at most, when it is half a circle, and 2200 is "
        "written.",
    ),
    # 2045 - 3 - (2100 + 1.5) = -59.5
    Bad(
        "dutch",
        (("split: 1050", "split: 2100"),),
        "split: 2100",
        "no_size",
        "The upper leaf height comes to -59.5. It follows from: head height at the highest floor "
        "2045, head gap 3, split 2100, split gap 3.",
    ),
    # 300 - 1.5 + 12 - 10 = 300.5, and 130 + 200 = 330
    Bad(
        "dutch",
        (("split: 1050", "split: 300"),),
        "- bottom rail: 200",
        "no_size_left",
        "The leaf B / panel would be -29.5 high: the given lines already add to 330 of leaf B's "
        "300.5. The largest of them is the bottom rail.",
    ),
    Bad(
        "dutch",
        (("split gap: 3", "split gap: 20"),),
        "split rebate: 12",
        "edges_do_not_lap",
        "The split rebate is 12 wide and the split gap 20: one leaf would not lap the other.",
    ),
    Bad(
        "dutch",
        (("split rebate: 12", "split rebate: 130"),),
        "split rebate: 130",
        "lap_takes_the_wood",
        "The split rebate of 130 takes all of leaf A's bottom rail, 120 wide.",
        also=("lap_takes_the_wood",),
    ),
)
ALL = (*FULL, *AT_ODDS, *IMPOSSIBLE)


def names() -> Iterator[str]:
    """`sliding: floor gap: 2300`."""
    for one in ALL:
        yield f"{one.kind}: {one.lines[-1][1].splitlines()[-1].strip()}"


def written(folder: Path, one: Bad) -> Path:
    """The starter with its lines changed, each where it first stands."""
    text = (templates() / f"{one.kind}.yaml").read_text(encoding="utf-8")
    for old, new in one.lines:
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    return path


@pytest.mark.parametrize("one", ALL, ids=list(names()))
def test_the_right_sentence_line_level_and_exit(tmp_path: Path, one: Bad) -> None:
    path = written(tmp_path, one)
    job = check(path, user_house=False)
    found = [p for p in job.problems if p.message == one.says]
    assert [(p.code, p.level) for p in found] == [(one.code, one.level)], [
        (p.code, p.message) for p in job.problems if p.level != "note"
    ]
    where = found[0].where
    assert where is not None
    line = path.read_text(encoding="utf-8").splitlines()[where.line - 1]
    assert line.strip().startswith(one.at), line
    assert found[0].found
    assert found[0].allowed
    assert found[0].fix
    others = [p.code for p in job.problems if p.level == "stop" and p not in found]
    assert tuple(others) == one.also
    assert job.exit_status == exit_status(job.problems) == one.exit_status


@pytest.mark.parametrize("one", ALL, ids=list(names()))
def test_said_on_the_terminal(tmp_path: Path, one: Bad, monkeypatch: pytest.MonkeyPatch) -> None:
    """The command prints the sentence whole, with its line, and exits as it should."""
    path = written(tmp_path, one)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("HOME", str(tmp_path))
    ran = CliRunner().invoke(app, ["check", path.name])
    assert ran.exit_code == one.exit_status, ran.output
    assert f"{one.level:<8}{one.says}" in ran.output
    assert "Traceback" not in ran.output


def test_each_kind_is_tried_in_each_way() -> None:
    """Over-full and under-full, at odds with itself, impossible: every kind that hangs alone."""
    kinds = set(DOOR_KINDS) - {"cabinet"}
    for rows in (AT_ODDS, IMPOSSIBLE):
        assert {one.kind for one in rows} == kinds
    for word in ("too much", "unallocated"):
        assert {one.kind for one in FULL if word in one.says} == kinds
