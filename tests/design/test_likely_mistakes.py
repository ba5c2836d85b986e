"""The likeliest mistakes of a maker, made in Larch Hill: each is answered on its line, in words.

The rows follow the list of mistakes in the language's description. Whatever `check` can decide
of a door stands here; a row that needs a kind of door or a part that this version cannot build
is answered as not built.
"""

from __future__ import annotations

from pathlib import Path
from typing import NamedTuple

import pytest

from parametric.job import check
from parametric.problems import Level
from tests.design.written_files import changed

Lines = tuple[tuple[str, str], ...]


class Mistake(NamedTuple):
    """What is changed, and what must be said of it; `at` stands on the line to point at."""

    lines: Lines
    at: str
    code: str
    says: str
    exit_status: int = 2
    level: Level = "stop"
    alone: bool = True


def added(line: str) -> Lines:
    """A block of its own, before the last of the choices."""
    return (("timber tulipwood:", f"{line}\ntimber tulipwood:"),)


WIDTHS = "widths: {top: 1826, middle: 1824, bottom: 1829}"
HEIGHTS = "{left: 2078, middle: 2074, right: 2069}"
CLOSED_LITES: Lines = (("- lite: equal", "- lite: 521"), ("- lite: equal", "- lite: 521"))

MISTAKES = {
    "no first line": Mistake(
        (("stilewright: 1 ", "# "),),
        "# ",
        "no_version",
        "Somewhere at the margin write `stilewright: 1`, so that this file still opens in ten "
        "years.",
    ),
    "units of another kind": Mistake(
        (("units: mm", "units: cm"),),
        "units: cm",
        "wrong_units",
        'Units are mm or inch, not "cm"; a single value may still be written 60 cm.',
    ),
    "a key misspelt": Mistake(
        (("stiles: 120", "stlies: 120"),),
        "stlies",
        "unknown_key",
        'No such thing as "stlies" in leaf (line 24). Did you mean "stiles"?',
    ),
    "an underscore": Mistake(
        (("floor gap: 12", "floor_gap: 12"),),
        "floor_gap",
        "unknown_key",
        'No such thing as "floor_gap" in door: write "floor gap", lower case, with a space.',
    ),
    "a capital": Mistake(
        (("floor gap: 12", "Floor gap: 12"),),
        "Floor gap",
        "unknown_key",
        'No such thing as "Floor gap" in door: write "floor gap", lower case, with a space.',
    ),
    "a heading misspelt": Mistake(
        (("\ndoor:", "\ndor hall:"),),
        "dor hall",
        "unknown_block",
        'No such block as "dor hall". Did you mean "door hall"?',
    ),
    "a name misspelt": Mistake(
        (("\nleaf:", "\nleaf glazed:"), ("leaves: 2", "leaves: 2\n  leaf: glased")),
        "leaf: glased",
        "unknown_name",
        'door uses leaf "glased", but there is no "leaf glased". Did you mean "glazed"?',
    ),
    "a kind misspelt": Mistake(
        (("kind: bypass", "kind: by-pass"),),
        "by-pass",
        "unknown_word",
        '"by-pass" is not a kind of door. Did you mean "bypass"?',
    ),
    "a word misspelt": Mistake(
        (("hung: on the wall", "hung: inside"),),
        "hung: inside",
        "unknown_word",
        '"inside" is not a way to hang. Did you mean "in the opening"?',
    ),
    "nothing written": Mistake(
        (("floor gap: 12", "floor gap:"),),
        "floor gap:",
        "empty_value",
        'Nothing is written after "floor gap:" (a # starts a comment).',
    ),
    "a comment for a value": Mistake(
        (("floor gap: 12", "floor gap: #8"),),
        "floor gap: #8",
        "empty_value",
        'Nothing is written after "floor gap:" (a # starts a comment).',
    ),
    "a key twice": Mistake(
        (("  stiles: 120", "  stiles: 110\n  stiles: 120"),),
        "  stiles: 120",
        "doubled_key",
        '"stiles" is written twice in leaf, here and on line 24; keep one.',
    ),
    "a heading twice": Mistake(
        (("\ndoor:", "\nsurvey: {widths: {middle: 1820}}\ndoor:"),),
        "survey: {widths: {middle: 1820}}",
        "doubled_key",
        '"survey" is written twice, here and on line 5; keep one.',
    ),
    # 1826 - 182 = 1644
    "a digit lost in a reading": Mistake(
        (("middle: 1824", "middle: 182"),),
        "middle: 182,",
        "reading_far_off",
        "The middle width 182 is 1644 less than the top; was it 1820? Measure again.",
        exit_status=1,
    ),
    # hypot(900, 2000) = 2193.2; 10 * 2193.2 / (2 * 900) = 12.2 for both, twice that for one
    "diagonals against plumb sides": Mistake(
        (
            (
                WIDTHS,
                "widths: {top: 900, middle: 900, bottom: 900}\n  left side: plumb\n"
                "  right side: plumb\n  diagonals: {rising right: 2203, rising left: 2193}",
            ),
            (HEIGHTS, "{left: 2000, middle: 2000, right: 2000}"),
        ),
        "rising right: 2203",
        "survey_contradicts_itself",
        "The diagonals disagree by 10. That needs both sides leaning 12.2 the same way, or one "
        "side 24.1, but you wrote plumb. Measure the 2203 again.",
        exit_status=1,
    ),
    "a width without its place": Mistake(
        ((WIDTHS, "widths: 1826"),),
        "widths: 1826",
        "no_place",
        "Give at least one place: `widths: {middle: 1826}`; three are better, and the tool never "
        "takes a mean.",
    ),
    "a place misspelt": Mistake(
        (("middle: 1824", "mid: 1824"),),
        "mid: 1824",
        "unknown_place",
        'No such place as "mid" in widths. Did you mean "middle"?',
    ),
    "a lap of a door that swings": Mistake(
        (
            ("kind: bypass", "kind: hinged"),
            ("  leaves: 2\n", ""),
            (
                "  hung: on the wall                # no header board; the leaves cover the opening\n",
                "",
            ),
            ("  head lap: 45                     # over the head\n", ""),
            (
                "  overlap: stile                   # shut, one meeting stile stands behind the other\n",
                "",
            ),
        ),
        "side lap",
        "unknown_key",
        '"side lap" belongs to doors that slide; this door is hinged. Did you mean "hinge gap"?',
        alone=False,
    ),
    "one leaf": Mistake(
        (("leaves: 2", "leaves: 1"),),
        "leaves: 1",
        "too_few_leaves",
        'One leaf has none to pass. Did you mean "kind: sliding"?',
    ),
    # 120 + 521 + 90 + 521 + 150 + 438 + 240 = 2080; 2102 - 2080 = 22
    "bands that fall short": Mistake(
        (*CLOSED_LITES, ("panel: 460", "panel: 438")),
        "top to bottom:",
        "bands_do_not_add_up",
        "Your rails and openings add to 2080; the door is 2102. 22 is unallocated: make one line "
        '"rest", or add 22 to the panel, or to the bottom rail.',
        exit_status=1,
    ),
    "rest twice": Mistake(
        (("- lite: equal", "- lite: rest"), ("90\n    - lite: equal", "90\n    - lite: rest")),
        "90\n    - lite: rest",
        "rest_twice",
        '"rest" stands on lines 29 and 31; only one can take what is left. Did you mean "equal" '
        "on both?",
    ),
    "a size too few": Mistake(
        (("slot: 12 x 62 x 46", "slot: 12 x 46"),),
        "slot: 12 x 46",
        "wrong_sizes",
        "slot takes three sizes, wide x long x deep; you gave two.",
    ),
    "a colon missing": Mistake(
        (("- dividing rail: 90", "- rail 120"),),
        "- rail 120",
        "no_colon",
        "A colon is missing: write `- rail: 120`.",
    ),
    # held at 785, the lock rail begins at 785 - 150/2 = 710; 240 + 460 = 700 stands below it
    "held with nothing to give": Mistake(
        (("- lock rail: 150", "- {lock rail: 150, centre: 785}"),),
        "centre: 785",
        "pin_has_no_room",
        'The lock rail cannot be held at 785: nothing below it is "equal" or "rest". Free one '
        "size.",
        exit_status=1,
    ),
    # (18 - 14) / 2 = 2; so thin a frame breaks other rules too
    "a groove too wide": Mistake(
        (("thickness: 40", "thickness: 18"), ("groove: 8.2 x 14", "groove: 14 x 14")),
        "groove: 14 x 14",
        "groove_leaves_no_wall",
        "The groove is 14 wide in an 18 frame and leaves 2 each side; at least 5 is needed.",
        exit_status=1,
        alone=False,
    ),
    # so wide a year also takes the panel out of its groove, which is a stop of its own
    "a damp room": Mistake(
        added("moisture: {made: 8 %, driest: 6 %, dampest: 18 %}"),
        "moisture:",
        "moisture_out_of_range",
        "18 % is outside 6 to 14 %, where the movement figures hold; is the timber dry?",
        exit_status=1,
        level="caution",
        alone=False,
    ),
    "ordinary glass": Mistake(
        (("kind: toughened", "kind: ordinary"),),
        "kind: ordinary",
        "glass_not_safety",
        "Glass in a door: safety glass unless a 76 ball cannot pass. Your pane is 778.5 × 515.",
        exit_status=0,
        level="caution",
    ),
    "an arch without one": Mistake(
        (("- top rail: 120", "- {top rail: 120, underside: arch}"),),
        "underside: arch",
        "missing_block",
        'The top rail has an arch underneath, but there is no "arch" block to say its rise.',
        alone=False,
    ),
    # 46 - 40 = 6; the pull no longer lies within so narrow a stile either
    "a slot too deep": Mistake(
        (("stiles: 120", "stiles: 40"),),
        "slot: 12 x 62 x 46",
        "slot_comes_through",
        "The slot comes out of the far edge of the stile by 6; make it shallower or the stile "
        "wider.",
        exit_status=1,
        alone=False,
    ),
    "a density without its unit": Mistake(
        (("density: 480 kg/m3", "density: 480"),),
        "density: 480",
        "no_unit",
        "A density needs its unit: 480 kg/m3 or 30 lb/ft3.",
    ),
    "a comma for a point": Mistake(
        (("stiles: 120", "stiles: 784,5"),),
        "stiles: 784,5",
        "not_a_length",
        "Write 784.5 with a point.",
    ),
    # body corner 3 + fit 0.3 = 3.3, and a cutter of 8 leaves 4
    "a cutter too big": Mistake(
        (("faces: both, cutter: 6", "faces: both, cutter: 8"),),
        "faces: both, cutter: 8",
        "cutter_too_big",
        "A cutter of 8 leaves a corner of 4; the pull's is 3.3. The largest that fits is 6.",
        exit_status=1,
    ),
    "accepted without a reason": Mistake(
        added("accepted: {glass not safety: ok}"),
        "accepted:",
        "wrong_accepted",
        "An accepted caution needs initials, a date and a reason: `JM 2026-11-20, client told`.",
    ),
    "a caution misspelt": Mistake(
        (
            ("kind: toughened", "kind: ordinary"),
            *added('accepted: {glass not safe: "JM 2026-11-20, client told"}'),
        ),
        "accepted:",
        "nothing_to_accept",
        'No caution is called "glass not safe". Did you mean "glass not safety"?',
    ),
    "an anchor": Mistake(
        (("stiles: 120", "stiles: &wide 120"),),
        "&wide",
        "anchor",
        "& and * are not used here; say `like: NAME`.",
    ),
    "tabs and spaces": Mistake(
        (("  stiles: 120", " \tstiles: 120"),),
        "\tstiles",
        "tabs_and_spaces",
        "Use two spaces for each step in; this line mixes tabs and spaces.",
    ),
}


@pytest.mark.parametrize("mistake", MISTAKES.values(), ids=MISTAKES)
def test_answered_on_its_line(
    tmp_path: Path, project: Path, reading_room: Path, mistake: Mistake
) -> None:
    text = changed(reading_room.read_text(encoding="utf-8"), *mistake.lines)
    assert mistake.at in text
    end = text.index(mistake.at) + len(mistake.at)
    line = text[:end].rstrip("\n").count("\n") + 1
    path = tmp_path / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, house=project / "examples" / "house.yaml", user_house=False)
    assert job.exit_status == mistake.exit_status
    found = [p for p in job.problems if (p.code, p.level) == (mistake.code, mistake.level)]
    said = [p for p in found if p.message.startswith(mistake.says)]
    assert said, [(p.code, p.level, p.message) for p in job.problems]
    assert said[0].where == ("design.yaml", line)
    assert said[0].found
    assert said[0].allowed
    assert said[0].fix
    if mistake.alone:
        stopped = [p.message for p in job.problems if p.level == "stop"]
        assert stopped == ([said[0].message] if mistake.level == "stop" else [])
