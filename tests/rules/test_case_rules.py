"""Rules about cases: one design past each limit and one exactly at it, by lines of three designs.

`bookcase.yaml` is the upper case of an alcove, open shelves of 3/4 board 44-1/2 clear and 10 deep,
under books; `chest.yaml` a press 2273 high with drawers at its foot, on a plinth of 80 under 2385;
`alcove.yaml` a cupboard with a face frame between walls that lean, and shelves on its counter.
"""

from __future__ import annotations

import inspect
import re
import sys
from pathlib import Path
from typing import NamedTuple

import pytest

from parametric.job import Job, check
from parametric.problems import Level
from parametric.rules import CASE_RULES
from parametric.trade.case_names import together
from tests.rules.bored_cases import PAIRS
from tests.rules.flap_cases import PAIRS as FLAPS
from tests.rules.test_every_rule import HOUSE, Lines, written

BOOKCASE = Path(__file__).with_name("bookcase.yaml")
CHEST = Path(__file__).with_name("chest.yaml")
WIDE = Path(__file__).parents[1] / "cases/wide.yaml"
ALCOVE = Path(__file__).with_name("alcove.yaml")
WARDROBE = Path(__file__).parents[2] / "examples/fen-road-wardrobe/design.yaml"
CORNER = Path(__file__).parents[1] / "designs/old/version-1-corner.yaml"

LIP = "  lip: 3/4 x 1-1/2\n"
LOAD = "  load: 20 lb/ft\n  sag: 1/32 in per foot\n"
PLAIN: Lines = {LIP: ""}
UNASKED: Lines = {LIP: "", LOAD: ""}
"""The shelves without a lip, and without anybody having said what they bear."""
SHELVES = "  shelves: 3\n"
PLINTH = "  plinth: 80\n"
FRONTS = "  top to bottom: [door pair: rest, drawer: 220, drawer: 220, drawer: 220]\n"

LOW: Lines = {
    FRONTS: "  top to bottom: [open: rest, drawer: 320]\n",
    "  shelves: 2\n": "",
    "thickness: 18,": "thickness: 38,",
}
"""A heavy low case with one drawer: 713 wide, 580 deep and some 270 high behind it, over 3.2 ft3."""


def drawers(kind: str) -> Lines:
    """The alcove's left bay with three drawers in its face frame, on slides or runners."""
    return {
        "{bay: equal, top to bottom: [door: rest]}, {bay: equal, top to bottom: [door: rest]}]": (
            "{bay: equal, top to bottom: [drawer: equal, drawer: equal, drawer: equal]}, "
            "{bay: equal, top to bottom: [door: rest]}]\n  drawer leaf: low"
        ),
        "joint: {kind: stub tenon, length: 3/8}": (
            "leaf low: {timber: tulipwood, thickness: 3/4, stiles: 2, trim: 0, site trim: 0, "
            "top to bottom: [top rail: 1-1/4, panel: rest, bottom rail: 1-1/4]}\n"
            f"drawer: {{kind: {kind}, sides: 1/2, bottom: 1/4, bottom groove: 1/4}}\n"
            "joint: {kind: stub tenon, length: 3/8}"
        ),
    }


def under_slides(web: str) -> Lines:
    """The press with slides beneath its drawers and its boards let in, holes so far from what is cut."""
    return {
        "  fronts: overlay\n": "  fronts: overlay\n  dado: 6\n",
        "{sides: 15, height: 160, length: 550, slides: 12.7, bottom: 9}": (
            "{kind: under slides, sides: 15, height: 160, length: 550, bottom: 9}\n"
            f"boring: {{web: {web}}}"
        ),
    }


DRAWER: Lines = {
    "joint: {kind": "drawer: {sides: 1/2, bottom: 1/4, bottom groove: 1/4}\njoint: {kind",
}


def cup_hung(space: str, under: str = "shelf space: rest") -> Lines:
    """The alcove's left door on cup hinges, a fixed shelf so far below the top behind it."""
    return {
        "[{bay: equal, top to bottom: [door: rest]},": (
            "[{bay: equal, top to bottom: [door: rest], "
            f"inside: [shelf space: {space}, {under}]}},"
        ),
        "{kind: butt, count: 2, length: 2-1/2, from top: 2-1/2, from bottom: 2-1/2}": (
            "{kind: cup, count: 2, from ends: 4}"
        ),
    }


class Case(NamedTuple):
    code: str
    level: Level
    design: Path
    bad: Lines
    at_limit: Lines
    says: str


CASES = (
    # The sides are 2273 high, their grain upright.
    Case(
        "board_larger_than_sheet",
        "stop",
        CHEST,
        {"board: {": "board: {sheet: 2272.5 x 1220, "},
        {"board: {": "board: {sheet: 2273 x 1220, "},
        "is 2273 long and a sheet of plywood is 2272.5.",
    ),
    # The house has cutters of 6, 8 and 12.
    Case(
        "case_cutter_too_big",
        "stop",
        CHEST,
        {"board: {": "back: {held: groove, thickness: 5.9}\nboard: {"},
        {"board: {": "back: {held: groove, thickness: 6}\nboard: {"},
        "The groove for the back of cabinet press is 5.9 wide and your smallest cutter is 6.",
    ),
    # Across a sheet 2300 wide they lie; 2273 long it takes them along it.
    Case(
        "board_lies_across",
        "caution",
        CHEST,
        {"board: {": "board: {sheet: 2272.5 x 2300, "},
        {"board: {": "board: {sheet: 2273 x 2300, "},
        "2273 long and 580 wide, lies across a sheet of plywood: its grain runs over its width.",
    ),
    # The top filler is 2435.8 long in a niche 2440 wide, and 2465.8 in one 30 wider.
    Case(
        "board_in_lengths",
        "caution",
        WARDROBE,
        {"2440, middle: 2431, top: 2436": "2470, middle: 2461, top: 2466"},
        {},
        "and a sheet of plywood is 2440: it is sawn in 2 lengths of 1233 and joined.",
    ),
    # (48 - 46)/2 = 1 at either side; (1219.2 - 1199.2)/2 = 10 is what it takes to get it in.
    Case(
        "gap_beside_case",
        "note",
        BOOKCASE,
        {},
        {"width: 46": "width: 1199.2 mm"},
        "Cabinet stands 1 from the wall at its left and 1 from the wall at its right where",
    ),
    # 5*(20/12)*44.5**4/(384*421875) = 0.202 against 44.5/384 = 0.116; with a board of
    # 0.75*(0.20172/0.11589)**(1/3) = 0.9022 it is at its limit, and 29/32 is 0.906.
    Case(
        "shelf_sags",
        "stop",
        BOOKCASE,
        PLAIN,
        {**PLAIN, "  clearance: 1/16": "  clearance: 1/16\n  thickness: 29/32"},
        "A shelf of cabinet, 44-1/2 clear, would sag 0.202 under 20 lb/ft; 1/32 in per foot allows "
        "0.116.",
    ),
    # The same with a lip: (1.462 deep is the limit, by test_shelf_sag) 1-7/16 is not enough.
    Case(
        "shelf_sags",
        "stop",
        BOOKCASE,
        {"lip: 3/4 x 1-1/2": "lip: 3/4 x 1-7/16"},
        {"lip: 3/4 x 1-1/2": "lip: 3/4 x 1-15/32"},
        "would sag 0.118 with its lip (0.202 without)",
    ),
    # 15 lb/ft2 is 12.5 lb/ft; 0.20172*12.5/20 = 0.126, in board of 0.6 million psi 0.252: over a
    # sixteenth a foot, 0.232. In 0.66 million 0.229 passes.
    Case(
        "shelf_sags",
        "caution",
        BOOKCASE,
        {**UNASKED, "1200000 psi": "600000 psi"},
        {**UNASKED, "1200000 psi": "660000 psi"},
        "would sag 0.252 under 15 lb/ft2; 1/16 in per foot allows 0.232.",
    ),
    # 0.1159 less 0.1121 is 0.0038, 3.3 per cent of it; 1-17/32 leaves 0.0061: 5.2.
    Case(
        "shelf_sags_nearly",
        "caution",
        BOOKCASE,
        {},
        {"lip: 3/4 x 1-1/2": "lip: 3/4 x 1-17/32"},
        "sags 0.112 with its lip (0.202 without) under 20 lb/ft, and 0.116 is allowed: it passes by "
        "0.004 only.",
    ),
    # 0.232 allows 12.5*0.232/0.126 = 23 lb/ft in that board; in 1 million psi 19.1.
    Case(
        "shelf_not_for_books",
        "note",
        BOOKCASE,
        {**UNASKED, "1200000 psi": "1000000 psi"},
        UNASKED,
        "carries 19 lb/ft within its sag, and books are about 20 lb/ft",
    ),
    # Asked for 5 lb/ft only, and 1/8 a foot: in 0.6 million psi the standard's 12.5 sags 0.252.
    Case(
        "shelf_below_the_standard",
        "note",
        BOOKCASE,
        {
            **PLAIN,
            "load: 20 lb/ft": "load: 5 lb/ft",
            "1/32 in per foot": "1/8 in per foot",
            "1200000 psi": "600000 psi",
        },
        {
            **PLAIN,
            "load: 20 lb/ft": "load: 5 lb/ft",
            "1/32 in per foot": "1/8 in per foot",
            "1200000 psi": "660000 psi",
        },
        "sags 0.252 under the load of the cabinet standard, ANSI/KCMA A161.1, which allows 0.232.",
    ),
    # hypot(2273, 580) = 2345.8: over a plinth of 39 there is 2346, 0.2 to spare, over 36 3.2: two
    # readings of 1.5 are 3.
    Case(
        "cannot_be_stood_up",
        "caution",
        CHEST,
        {},
        {PLINTH: "  plinth: 36\n"},
        "its corner rises 2345.8, and the ceiling is 2305 over that. Over the floor there is 2385, "
        "which is enough.",
    ),
    Case(
        "cannot_be_stood_up",
        "caution",
        CHEST,
        {PLINTH: "  plinth: 39\n"},
        {PLINTH: "  plinth: 36\n"},
        "tipped up, its corner clears the ceiling by 0.2 only",
    ),
    # Under 2340 it does not go up at all, and a case of 2250 does: hypot(2250, 580) = 2323.6.
    Case(
        "cannot_be_stood_up",
        "caution",
        CHEST,
        {"middle: 2385": "middle: 2340", PLINTH: "  plinth: 60\n"},
        {"middle: 2385": "middle: 2340", PLINTH: "  plinth: 0\n", "height: 2273": "height: 2250"},
        "it cannot be stood up under this ceiling: its corner rises 2345.8, and the ceiling is 2340 "
        "over the floor.",
    ),
    # 80 and 2273 are 2353: 13 more than a ceiling of 2340, and what it is under one of 2353.
    Case(
        "cabinet_in_the_wall",
        "stop",
        CHEST,
        {"middle: 2385": "middle: 2340"},
        {"middle: 2385": "middle: 2353"},
        "Cabinet press stands 13 in the ceiling.",
    ),
    # The corner cabinet is 560 deep: 540 from the corner 20 of the next are in it, 560 none.
    Case(
        "cabinets_overlap",
        "stop",
        CORNER,
        {"space: 640": "space: 540"},
        {"space: 640": "space: 560"},
        "Cabinet corner and cabinet a 2 stand in the same place: they are 20 into one another.",
    ),
    # The corner cabinet's door, near 400 wide, sweeps as far before its wall; the next wall's first
    # door reaches into that until its cabinet begins farther from the corner than both need.
    Case(
        "fronts_meet_at_corner",
        "caution",
        CORNER,
        {},
        {"space: 640": "space: 1000"},
        "meet at the corner when both are open.",
    ),
    # Drawers at the corner come out before the shut fronts of the next wall.
    Case(
        "fronts_meet_at_corner",
        "stop",
        CORNER,
        {
            "cabinet a: equal, cabinet b: equal, cabinet corner: 1000": "cabinet a: equal, "
            "cabinet corner: 1000, cabinet b: 600"
        },
        {},
        "round the corner, which is shut.",
    ),
    # 789 x 2273 x 580 through a door 1981 high: lying, 580 across 762 and 789 high; at 570 wide none
    # of its sides goes across, and standing on end 2273 is not under 1981.
    Case(
        "case_cannot_be_brought_in",
        "caution",
        CHEST,
        {"  widths:": "  route: 570 x 1981 x 3000\n  widths:"},
        {"  widths:": "  route: 580 x 1981 x 3000\n  widths:"},
        "Cabinet press, 789 x 2273 x 580, does not go in by a way 570 wide, 1981 high and 3000 long",
    ),
    # Without drawers it is nobody's chest, and its doors alone do not tip it.
    Case(
        "may_tip_over",
        "caution",
        CHEST,
        {},
        {FRONTS: "  top to bottom: [door pair: rest]\n"},
        "Cabinet press must be fixed to the wall before anything is opened.",
    ),
    # 27 in is 685.8: its plinth of 80 and 606 are more, 605 falls short of it.
    Case(
        "may_tip_over",
        "caution",
        CHEST,
        {**LOW, "height: 2273": "height: 606"},
        {**LOW, "height: 2273": "height: 605"},
        "16 CFR 1261 (ASTM F2057-23) speaks of clothes storage that stands free",
    ),
    # 54.9 kg: three people lift 25 each; the limit is the house's.
    Case(
        "heavy_case",
        "note",
        CHEST,
        {},
        {"board: {": "limits: {one person: 55 kg}\nboard: {"},
        "kg without fronts and loose shelves: 3 people carry it. Its heaviest door or drawer is "
        "8.5 kg, for one person.",
    ),
    # Front and box 8.52 as cut; 0.6976 * 0.52 m2 at 15 lb/ft2, 73.24 kg/m2, is 26.57: 35.09.
    Case(
        "slides_overloaded",
        "caution",
        CHEST,
        {"slides: 12.7,": "slides: 12.7, carries: 35 kg,"},
        {"slides: 12.7,": "slides: 12.7, carries: 35.1 kg,"},
        "The slides of leaf C / drawer, leaf D / drawer and leaf E / drawer carry 35 kg a pair; "
        "each drawer and what lies in it are 35.1 kg.",
    ),
    # The bay is (46 - 3 * 3/4)/2 = 21-7/8 wide, the frame's opening 21-1/4: half of 5/8 each side.
    Case(
        "slides_need_packing",
        "note",
        ALCOVE,
        drawers("side slides"),
        drawers("wooden runners"),
        "The slides of leaf A / drawer, leaf B / drawer and leaf C / drawer are packed out 5/16 from "
        "the sides of cabinet base, which stand back behind its face frame: by strips",
    ),
    # The screws stand 14 + 9 = 23 over the bottom, whose dado ends there: 23 - 2.5 = 20.5.
    Case(
        "slide_meets",
        "stop",
        CHEST,
        under_slides("20.6"),
        under_slides("20.5"),
        "leaves less than 20.6 of wood beside the dado for the bottom",
    ),
    # Opening from 5 to 28-1/2, its door 3 mm within; the upper hinge 4 from its top, its block from
    # 723.9 - 3 - 101.6 - 50 = 569.3 on. The top at 742.95, the shelf's upper face 6-27/32 lower at 569.12,
    # or 6-13/16 lower at 569.91.
    Case(
        "hinge_block_meets",
        "stop",
        ALCOVE,
        cup_hung("6-13/16"),
        cup_hung("6-27/32"),
        "over the foot of the case stands where cabinet base / bay 1 / fixed shelf 1 is",
    ),
    # The drawer's packing from 127 to 742.95 - 173.83 - 19.05 = 550.07 stands beside the lower block,
    # 181.6 to 281.6; one from 550.07 - 249.24 = 300.83 on, over a shelf from 281.78 on, does not.
    Case(
        "hinge_in_packing",
        "caution",
        ALCOVE,
        {**cup_hung("6-27/32", "drawer: rest"), **DRAWER},
        {**cup_hung("6-27/32", "drawer: 9-13/16, shelf space: rest"), **DRAWER},
        "at 9-1/8 over the foot of the case the packing of drawers stands where a block would",
    ),
    # Between plumb walls both stiles lose 1/8 all the way; what leans 1/16 is within a reading.
    Case(
        "scribes_differ",
        "note",
        ALCOVE,
        {},
        {
            "{bottom: 47-3/4, middle: 47-5/8, top: 47-7/8}": "{bottom: 48, middle: 48, top: 48}",
            "{bottom: 0, middle: 1/8, top: 1/4}": "{bottom: 0, middle: 0, top: 1/16}",
            "left: 96-1/4, right: 95-7/8": "left: 95-7/8, right: 95-7/8",
        },
        "off the left stile come 1/8 at the bottom, 1/4 at the middle and 3/8 at the top; off the "
        "right stile come 1/2 at the bottom, 1/2 at the middle and 1/8 at the top.",
    ),
    # 1900 - 36 = 1864 clear, and 6 - 1 into each groove: 1874.
    Case(
        "back_in_pieces",
        "note",
        WIDE,
        {"board plywood: {": "board plywood: {grain: along, "},
        {
            "sheet: 3200 x 1220": "sheet: 3200 x 1874",
            "birch ply: {density: 700 kg/m3, sheet: 2440": "birch ply: {density: 700 kg/m3, sheet: 3078",
        },
        "its back, 1874 wide and 1574 high. It is made in 2, joined on the middle of a partition: "
        "left back 937 x 1574 and right back 937 x 1574.",
    ),
    *(Case(*pair) for pair in (*PAIRS, *FLAPS)),
)


def checked(tmp_path: Path, lines: Lines, design: Path) -> Job:
    return check(written(tmp_path, lines, design), house=HOUSE, user_house=False)


@pytest.mark.parametrize("one", CASES, ids=lambda c: f"{c.code}-{c.level}")
def test_past_the_limit(tmp_path: Path, one: Case) -> None:
    job = checked(tmp_path, one.bad, one.design)
    found = [p for p in job.problems if (p.code, p.level) == (one.code, one.level)]
    assert found, [(p.code, p.level, p.message) for p in job.problems]
    assert any(one.says in p.message for p in found), [p.message for p in found]
    assert job.exit_status == (1 if one.level == "stop" else 0)
    for problem in found:
        assert problem.found
        assert problem.allowed
        assert problem.level == "note" or problem.fix
        assert problem.where is not None
        assert problem.where.line > 0


@pytest.mark.parametrize("one", CASES, ids=lambda c: f"{c.code}-{c.level}")
def test_at_the_limit(tmp_path: Path, one: Case) -> None:
    job = checked(tmp_path, one.at_limit, one.design)
    assert job.resolved is not None, [p.message for p in job.problems]
    assert (one.code, one.level) not in {(p.code, p.level) for p in job.problems}, [
        p.message for p in job.problems
    ]


def test_every_rule_has_its_pair() -> None:
    tried = {one.code for one in CASES}
    for rule in CASE_RULES:
        module = inspect.getmodule(rule)
        assert module is not None
        # what a rule asks of the cases themselves stands in their own files
        named = {f.__module__ for f in vars(module).values() if inspect.isfunction(f)}
        asked = [sys.modules[name] for name in sorted(named) if name.endswith("_faults")]
        source = "".join(map(inspect.getsource, (module, *asked)))
        codes = set(re.findall(r'(?:code=|_problem\(\s*)"(\w+)"', source))
        assert codes, rule.__name__
        assert codes <= tried, (rule.__name__, codes - tried)


def test_every_change_finds_its_line() -> None:
    for one in CASES:
        text = one.design.read_text(encoding="utf-8")
        for lines in (one.bad, one.at_limit):
            assert all(old in text for old in lines), one


def test_what_a_plain_shelf_is_offered(tmp_path: Path) -> None:
    """1.462 deep would do: 1-1/2; half the span sags a sixteenth; 0.902 thick: 29/32; 37."""
    job = checked(tmp_path, PLAIN, BOOKCASE)
    (found,) = (p for p in job.problems if p.code == "shelf_sags")
    assert "`lip: 3/4 x 1-1/2` in shelf" in found.fix
    assert "a divider under its middle (0.013 then)" in found.fix
    assert "29/32 thick" in found.fix
    assert "its span 36-31/32 or less" in found.fix


def test_a_fixed_shelf_takes_no_lip(tmp_path: Path) -> None:
    """Between what lies on it and what hangs under it: it sags as one on pins does without a lip."""
    inside = "  inside: [shelf space: equal, hanging: equal]\n"
    lines = {"  top to bottom: [open: rest]\n": inside, SHELVES: ""}
    problems = checked(tmp_path, lines, BOOKCASE).problems
    (found,) = (p for p in problems if p.code == "shelf_sags")
    assert found.message.startswith("A fixed shelf of cabinet, 44-1/2 clear, would sag 0.202 under")
    assert found.fix.startswith("Give it a divider under its middle")


def test_a_divider_holds_it(tmp_path: Path) -> None:
    bays = "  left to right: [{bay: equal, shelves: 3}, {bay: equal, shelves: 3}]\n"
    lines = {**PLAIN, "  top to bottom: [open: rest]\n": bays, SHELVES: ""}
    job = checked(tmp_path, lines, BOOKCASE)
    assert job.exit_status == 0
    assert "shelf_sags" not in {p.code for p in job.problems}


def test_a_case_hung_on_the_wall_is_lifted_there(tmp_path: Path) -> None:
    """It is neither tipped up nor can it tip over."""
    job = checked(tmp_path, {"height: 63-1/8": "height: 64-1/2"}, BOOKCASE)
    assert {"cannot_be_stood_up", "may_tip_over"} & {p.code for p in job.problems} == set()


def test_from_its_side(tmp_path: Path) -> None:
    """A tower 300 wide and 900 deep: hypot(2273, 300) = 2292.7 goes where 2444.6 does not."""
    lines = {
        "cabinet press: 789": "cabinet press: 300",
        "depth: 580": "depth: 900",
        FRONTS: "  top to bottom: [open: rest]\n",
        "middle: 800": "middle: 320",
    }
    (found,) = (
        p for p in checked(tmp_path, lines, CHEST).problems if p.code == "cannot_be_stood_up"
    )
    assert "Tipped up from its side it rises 2292.7 only." in found.message
    assert "tip it up from there" in found.fix
    lower = {**lines, "middle: 2385": "middle: 2340"}
    (found,) = (
        p for p in checked(tmp_path, lower, CHEST).problems if p.code == "cannot_be_stood_up"
    )
    assert "Tip it up from its side on the floor, then lift it 80" in found.fix


def test_under_a_slope_it_is_stood_up_where_the_ceiling_is_highest(tmp_path: Path) -> None:
    """1950 high under 2100 at the left of 2400: hypot(1950, 580) = 2034.4 on a plinth of 80."""
    lines = {
        "  heights: {left: 2388, middle: 2385, right: 2390}\n": "  floor: level\n  rake: {left: 2100, right: 2400}\n",
        "height: 2273": "height: 1950",
    }
    (found,) = (
        p for p in checked(tmp_path, lines, CHEST).problems if p.code == "cannot_be_stood_up"
    )
    assert "its corner rises 2034.4, and the ceiling is 2020 over that." in found.message
    assert "Where the ceiling is highest there is 2400, which is enough." in found.message


def test_what_comes_in_upright_is_not_tipped_up(tmp_path: Path) -> None:
    """1900 goes under a door's head; hypot(1900, 580) = 1986.6 does not stand under 1985 and a plinth.

    Through a way in 1850 high it comes lying down.
    """
    heights = "  heights: {left: 2388, middle: 2385, right: 2390}\n"
    low = {"height: 2273": "height: 1900", heights: "  heights: {middle: 1985}\n"}
    codes = {p.code for p in checked(tmp_path, low, CHEST).problems}
    assert "cannot_be_stood_up" not in codes
    measured = {**low, "  widths:": "  route: 900 x 1850 x 3000\n  widths:"}
    codes = {p.code for p in checked(tmp_path, measured, CHEST).problems}
    assert "cannot_be_stood_up" in codes


def test_cases_of_a_run_are_named_together(tmp_path: Path) -> None:
    """Three presses say it once, and so do twenty; what is numbered on is said from and to."""
    run = "  left to right: [cabinet press: 789, filler: at least 0]\n"
    three = "  left to right: [cabinet press: 789, cabinet press: 789, cabinet press: 789]\n"
    lines = {run: three, "middle: 800": "middle: 2367"}
    problems = checked(tmp_path, lines, CHEST).problems
    for code in ("may_tip_over", "cannot_be_stood_up", "heavy_case"):
        (found,) = (p for p in problems if p.code == code)
        assert "abinet press 1 to 3" in found.message
    (once,) = (p for p in problems if p.code == "hinge_step_just_passed")
    assert once.message.startswith("A leaf 1601 high takes 4 hinges")


def test_names_together() -> None:
    assert together(["cabinet a"]) == "cabinet a"
    assert together(["cabinet a 1", "cabinet b", "cabinet a 2"]) == (
        "cabinet a 1, cabinet a 2 and cabinet b"
    )
    assert together([f"cabinet a {n}" for n in (1, 2, 3, 5)]) == "cabinet a 1 to 3 and cabinet a 5"


def test_under_a_counter_it_is_a_note(tmp_path: Path) -> None:
    """A counter ties its cases together and is screwed to all of them."""
    lines = {
        "height: 2273": "height: 800",
        FRONTS: "  top to bottom: [drawer: equal, drawer: equal]\n",
        "  shelves: 2\n": "",
        PLINTH: PLINTH + "  counter: 38\n",
    }
    (found,) = (p for p in checked(tmp_path, lines, CHEST).problems if p.code == "may_tip_over")
    assert found.level == "note"


def test_the_alcove_is_not_cried_over(tmp_path: Path) -> None:
    """Its upper case stands up on the counter, and nothing in it draws out."""
    codes = {p.code for p in checked(tmp_path, {}, ALCOVE).problems}
    assert {"cannot_be_stood_up", "may_tip_over", "heavy_case"} & codes == set()
