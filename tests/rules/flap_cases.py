"""Pairs for rules of flaps: a wall cupboard with one that lifts up, a bureau with one to write on.

The cupboard's is 797 x 340 x 20 and weighs 2.116 kg: level it turns about its hinge line by
2.116 x 9.80665 x 0.17 = 3.527 N m. Its struts are screwed 75 from its hinge edge, so that they
pass its hinge line at 78.75 when it is open (tests/hardware/test_stays.py): two of them hold it
from 3527.3 / (2 x 78.75) = 22.4 N on. The bureau's is 758 x 420 and weighs 2.415 kg; with 20 kg on
its edge its stays are to hold 2.415 x 210 + 20 x 420 = 8907 kg mm, at a lever of 135.76.
"""

from __future__ import annotations

from pathlib import Path

from parametric.problems import Level

Lines = dict[str, str]

LIFT = Path(__file__).with_name("lift.yaml")
BUREAU = Path(__file__).with_name("bureau.yaml")
SEAT = Path(__file__).parents[2] / "templates/window seat.yaml"
STROKE = "  stroke: 85\n"
ON_LEAF = "on leaf: 75 x 8"
STAY = "\nstay:\n"
NO_STAY = "\nstay spare:\n"
"""Called by nobody."""
COUNT = "  count: 2\n"
LIFTS = "    - flap: 340\n      hinge side: top\n"
DROPS = "    - flap: 420\n      hinge side: bottom\n"


def struts(newtons: str) -> Lines:
    return {STROKE: f"{STROKE}  force: {newtons} N\n"}


def on_case(place: str, stroke: str = "85") -> Lines:
    return {STROKE: f"  stroke: {stroke}\n", ON_LEAF: f"{ON_LEAF}\n  on case: {place}"}


OF_DOORS: tuple[tuple[str, Level, Path, Lines, Lines, str], ...] = (
    (
        "flap_has_no_stay",
        "stop",
        LIFT,
        {STAY: NO_STAY},
        {},
        "Leaf A lifts up, and nothing holds it there: it falls on a hand or a head.",
    ),
    (
        "flap_has_no_stay",
        "caution",
        BUREAU,
        {STAY: NO_STAY},
        {},
        "Leaf A drops down, and nothing holds it level",
    ),
    (
        "strut_too_weak",
        "stop",
        LIFT,
        struts("22"),
        struts("22.5"),
        "Leaf A: its struts are too weak, and it falls: 2 of 22 N; open, the flap turns by 3.5 N m "
        "and they turn it back by 3.5 N m; shut, they press it shut by 0.8 N m.",
    ),
    # 1.1 x 22.396 = 24.64
    (
        "strut_too_weak",
        "caution",
        LIFT,
        struts("24.6"),
        struts("24.7"),
        "its struts have little in hand",
    ),
    # (2 x 152 x 78.75 - 3527.3) / 340 = 60.04 N, of 151 59.57
    (
        "strut_too_strong",
        "caution",
        LIFT,
        struts("152"),
        struts("151"),
        "60 N at its free edge is needed to bring it down",
    ),
    # nearer the hinge edge the struts pass before the hinge line when it is shut
    (
        "flap_springs_open",
        "caution",
        LIFT,
        {ON_LEAF: "on leaf: 65 x 8"},
        {},
        "Leaf A: it does not stay shut by itself",
    ),
    # 8907.1 / (2 x 135.755) = 32.81
    (
        "lid_stay_overloaded",
        "stop",
        BUREAU,
        {COUNT: f"{COUNT}  carries: 32.8 kg\n"},
        {COUNT: f"{COUNT}  carries: 32.9 kg\n"},
        "open, with 20 kg leaning on its free edge, each of its 2 stays is pulled by 32.8 kg, and is "
        "made for 32.8 kg.",
    ),
    (
        "flap_falls",
        "caution",
        LIFT,
        {},
        {LIFTS: "    - door pair: 340\n"},
        "Leaf A falls shut from below about 14 deg, and above that rises by itself",
    ),
    (
        "flap_falls",
        "caution",
        BUREAU,
        {},
        {DROPS: "    - drawer: 420\n"},
        "Leaf A weighs 2.4 kg and drops open when it is let go",
    ),
)

PAIRS: tuple[tuple[str, Level, Path, Lines, Lines, str], ...] = (
    # (797 - 35) / 2 = 381
    (
        "hinges_overlap",
        "stop",
        BUREAU,
        {"from ends: 100": "from ends: 362"},
        {"from ends: 100": "from ends: 340"},
        "The left hinge of leaf A reaches 379.5 from its left end, and the right hinge begins at",
    ),
    # its cup begins 17.5 before its middle, and the joint ends at the stile, 60
    (
        "cup_on_a_joint",
        "stop",
        LIFT,
        {"from ends: 100": "from ends: 77"},
        {"from ends: 100": "from ends: 77.5"},
        "The left hinge of leaf A is bored from 59.5 to 94.5 from its left end, and the joints of its "
        "top rail keep 60 to 737 free.",
    ),
    # 5 + 35 and a groove of 10 and 5 of wood are 55
    (
        "cup_off_the_rail",
        "stop",
        LIFT,
        {"top rail: 60": "top rail: 54.5"},
        {"top rail: 60": "top rail: 55"},
        "leaves 4.5 of the top rail of leaf A, 54.5 wide with a groove of 10; at least 5 is needed.",
    ),
    (
        "cup_too_deep",
        "stop",
        BUREAU,
        {"kind: cup,": "kind: cup, depth: 15.5,"},
        {"kind: cup,": "kind: cup, depth: 15,"},
        "A cup 15.5 deep leaves 4.5 of leaf A, 20 thick; at least 5 is needed.",
    ),
    # root(2) x root(49^2 + 28^2) = 79.8 and of 50 81.0; 85 of stroke less 5 to spare are 80
    (
        "stay_has_no_place",
        "stop",
        LIFT,
        {ON_LEAF: "on leaf: 49 x 8"},
        {ON_LEAF: "on leaf: 50 x 8"},
        "its gas strut has 80 to push in but for its spare, and its fixing on the flap travels 79.8 "
        "from shut to open.",
    ),
    # hypot(238 - 28, 30 + 20 + 75) = 244.4; of 237 243.5
    (
        "stay_has_no_place",
        "stop",
        LIFT,
        on_case("30 x 238"),
        on_case("30 x 237"),
        "its gas strut is 244 long, and 244.4 is needed when the flap is open.",
    ),
    # hypot(234 - 28, 125) = 240.96, 3.04 short of 244; of 235 241.8
    (
        "stay_has_no_place",
        "stop",
        LIFT,
        on_case("30 x 234"),
        on_case("30 x 235"),
        "only 241 is between its fixings when the flap is open by 90 deg: it opens farther.",
    ),
    # hypot(237 - 75, 50 - 28) = 163.49
    (
        "stay_has_no_place",
        "stop",
        LIFT,
        on_case("30 x 237", "80"),
        on_case("30 x 237", "81"),
        "its gas strut can be pushed in to 164, and 163.5 is left for it when the flap is shut.",
    ),
    # 40 behind, and the fixing on the open flap 220 before: 260
    (
        "stay_has_no_place",
        "stop",
        BUREAU,
        {"length: 300": "length: 260"},
        {"length: 300": "length: 261"},
        "its lid stay is 260 long, and 260 is needed when the flap is open.",
    ),
    # 6.5 of wood: half a pilot of 3, and the house's 5
    (
        "stay_finds_no_wood",
        "stop",
        LIFT,
        {ON_LEAF: "on leaf: 84 x 8"},
        {ON_LEAF: "on leaf: 82 x 8"},
        "the fixing of its gas strut on the case comes 1.8 behind the case's front edges; 6.5 to 295.5 "
        "has wood for it.",
    ),
    # the case's side is 16.5 in from the flap's edge: 45 beside it are 61.5, past a stile of 60
    (
        "stay_finds_no_wood",
        "stop",
        LIFT,
        {COUNT: f"{COUNT}  beside: 37.5\n"},
        {COUNT: f"{COUNT}  beside: 37\n"},
        "the fixing of its gas strut on the flap comes 54 from its edge, and its stile is 60 wide",
    ),
    (
        "stay_meets_a_shelf",
        "stop",
        BUREAU,
        {DROPS: f"{DROPS}      shelves: 1\n"},
        {},
        "Leaf A: its lid stay comes through cabinet bureau / shelf 1.",
    ),
    # open by 100 deg its edge is 420 x sin(10) = 72.9 under its hinge line, before a drawer that is out
    (
        "flap_and_front_meet",
        "caution",
        BUREAU,
        {COUNT: f"{COUNT}  opens: 100 deg\n"},
        {},
        "Leaf A and leaf B meet when both are open.",
    ),
    # 100 deg lift its edge 340 x sin(10) = 59.0 over its hinge line, which is 1.5 under the case's
    # top: 57.5, and where 57 is left it scrapes by 0.5
    (
        "flap_meets_something",
        "stop",
        LIFT,
        {"above floor: 1450": "above floor: 1625", ON_LEAF: "on leaf: 65 x 8\n  opens: 100 deg"},
        {"above floor: 1450": "above floor: 1622", ON_LEAF: "on leaf: 65 x 8\n  opens: 100 deg"},
        "Leaf A hits the ceiling when it has opened",
    ),
    (
        "lid_falls",
        "caution",
        SEAT,
        {},
        {"  lid: 24": "  counter: 24"},
        "and falls shut when it is let go, on a hand or a head",
    ),
)
