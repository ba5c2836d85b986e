"""Three layers of one language: the tool's defaults, the house file, the design."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.catalog.defaults import BAND_DEFAULTS, DEFAULTS, INCH_DEFAULTS, PRACTICE
from parametric.catalog.shop import Shop
from parametric.design import load
from parametric.design.language import DOOR_KEYS, KINDS, keys_of, specs
from parametric.design.language import PLAIN as PLAIN_BLOCKS
from parametric.design.leaf import Band, LeafSpec
from parametric.figures import Figure, Where
from parametric.hangings import DoorSpec
from parametric.infill.glass import GlassSpec
from parametric.problems import exit_status
from tests.design.written_files import HOUSE, PLAIN, changed, loaded


def door_of(folder: Path, design: str, house: str | None = None) -> DoorSpec:
    found = loaded(folder, design, house)
    assert found.design is not None, [p.message for p in found.problems]
    return found.design.doors[0][1]


def shop_of(folder: Path, design: str, house: str | None = None) -> Shop:
    found = loaded(folder, design, house)
    assert found.shop is not None, [p.message for p in found.problems]
    return found.shop


def test_the_tool_alone(tmp_path: Path) -> None:
    """A dozen values make a door; the rest is assumed, and says so."""
    found = loaded(tmp_path, PLAIN)
    assert found.problems == ()
    assert found.house_file is None
    assert found.design is not None
    gap = found.design.doors[0][1].floor_gap
    assert gap == 10
    assert (gap.origin, gap.where, gap.source) == ("assumed", None, PRACTICE)
    assert found.design.job == "design"


def test_the_later_layer_wins_key_by_key(tmp_path: Path) -> None:
    house = HOUSE + "door: {floor gap: 8, side lap: 35}\n"
    door = door_of(
        tmp_path, changed(PLAIN, ("{kind: bypass}", "{kind: bypass, side lap: 50}")), house
    )
    assert (door.floor_gap, door.floor_gap.origin) == (8, "house")
    assert door.floor_gap.where == Where("house.yaml", 3)
    assert (door.side_lap, door.side_lap.origin) == (50, "chosen")
    assert door.side_lap.where == Where("design.yaml", 4)
    assert (door.head_lap, door.head_lap.origin) == (40, "assumed")
    assert door.origin("floor gap") == "house"
    assert door.line("floor gap") == Where("house.yaml", 3)
    assert door.line("head lap") == Where("design.yaml", 4)


def test_each_file_has_its_own_unit(tmp_path: Path) -> None:
    house = "stilewright: 1\nunits: inch\ndoor: {floor gap: 1/2, side lap: 20 mm}\n"
    door = door_of(tmp_path, PLAIN, house)
    assert (door.floor_gap, door.side_lap) == (12.7, 20)


def test_a_list_is_replaced_whole(tmp_path: Path) -> None:
    design = PLAIN + "router: {cutters: [10, 16]}\n"
    assert shop_of(tmp_path, design, HOUSE + "router: {cutters: [6, 8]}\n").router.cutters == (
        10,
        16,
    )
    assert shop_of(tmp_path, PLAIN, HOUSE + "router: {cutters: [6]}\n").router.cutters == (6,)


def test_a_setting_is_overridden_for_one_job(tmp_path: Path) -> None:
    shop = shop_of(tmp_path, PLAIN + "limits: {engagement: 4}\n", HOUSE + "limits: {passing: 7}\n")
    limits = shop.limits
    assert (limits.engagement, limits.engagement.origin) == (4, "chosen")
    assert (limits.passing, limits.passing.origin) == (7, "house")
    assert (limits.pocket_wall, limits.pocket_wall.origin) == (6, "assumed")


def test_a_named_block_lies_on_the_house_and_not_on_the_unnamed_one(tmp_path: Path) -> None:
    design = changed(
        PLAIN,
        ("{kind: bypass}", "{kind: bypass, leaf: tall}"),
        (
            "joint:",
            "leaf tall:\n  timber: ash\n  thickness: 44\n  stiles: 90\n"
            "  top to bottom: [top rail: 90, panel: rest, bottom rail: 180]\njoint:",
        ),
        ("  stiles: 100", "  stiles: 100\n  trim: 20"),
    )
    found = loaded(tmp_path, design, HOUSE + "leaf: {site trim: 7}\n")
    assert found.design is not None
    tall = found.design.block("leaf", "tall")
    assert isinstance(tall, LeafSpec)
    assert (tall.trim, tall.trim.origin) == (12, "assumed")
    assert (tall.site_trim, tall.site_trim.origin) == (7, "house")


def test_like_takes_all_keys_and_then_its_own(tmp_path: Path) -> None:
    design = changed(
        PLAIN,
        ("{kind: bypass}", "{kind: bypass, leaf: short}"),
        ("leaf:\n", "leaf short: {like: plain, thickness: 36}\nleaf plain:\n"),
    )
    found = loaded(tmp_path, design)
    assert found.design is not None, found.problems
    short = found.design.block("leaf", "short")
    assert isinstance(short, LeafSpec)
    assert (short.thickness, short.stiles) == (36, 100)
    assert short.stiles.where == Where("design.yaml", 9)
    assert [band.kind for band in short.top_to_bottom] == ["top rail", "panel", "bottom rail"]
    assert short.heading == "leaf short"


def test_a_record_of_the_house_is_called_by_name(tmp_path: Path) -> None:
    house = HOUSE + "track heavy: {spacing: 60, off wall: 95, bearing: 70, carries: 80 kg}\n"
    design = changed(PLAIN, ("{kind: bypass}", "{kind: bypass, track: heavy}"))
    found = loaded(
        tmp_path, changed(design, ("track: {spacing: 54, off wall: 90, bearing: 60}\n", "")), house
    )
    assert found.design is not None, found.problems
    track = found.design.block("track", "heavy")
    assert track is not None
    assert track.here == Where("house.yaml", 3)


def test_habits_of_the_house_are_no_hardware_yet(tmp_path: Path) -> None:
    """`pull: {fit: 0.3}` in a house file puts no pull on a door, and is no fault either."""
    found = loaded(tmp_path, PLAIN, HOUSE + "pull: {fit: 0.3}\nglass: {clearance: 4}\n")
    assert found.problems == ()
    assert found.design is not None
    assert found.design.block("pull") is None


def test_habits_for_other_doors_are_left_alone(tmp_path: Path) -> None:
    door = door_of(tmp_path, PLAIN, HOUSE + "door: {floor gap: 9, hinge gap: 2}\n")
    assert door.floor_gap == 9


def test_what_waits_for_a_later_version_may_stay_in_the_house(tmp_path: Path) -> None:
    house = HOUSE + "rates: {bench: 60 per hour}\nslats deep: {width: 15}\nblanks: {rough: 8/4}\n"
    found = loaded(tmp_path, PLAIN, house)
    assert found.design is not None
    assert [(p.level, p.code, p.about) for p in found.problems] == [
        ("note", "not_used_yet", "rates"),
        ("note", "not_used_yet", "slats deep"),
        ("note", "not_used_yet", "rough"),
    ]


@pytest.mark.parametrize(
    "block",
    [
        "survey: {widths: {middle: 900}}",
        "job: Somewhere",
        "door study: {kind: bypass}",
        "accepted: {glass not safety: JM 2026-11-20, told}",
        "revisions: {A: 2026-11-20 first}",
    ],
)
def test_what_belongs_to_one_job(tmp_path: Path, block: str) -> None:
    found = loaded(tmp_path, PLAIN, HOUSE + block + "\n")
    assert [(p.code, p.where) for p in found.problems] == [
        ("not_of_a_house", Where("house.yaml", 3))
    ]
    assert exit_status(found.problems) == 2


def test_one_line_of_the_house_is_answered_once(tmp_path: Path) -> None:
    """It lies under every block of its kind."""
    design = changed(
        PLAIN,
        ("{kind: bypass}", "{kind: bypass, leaf: short}"),
        ("leaf:\n", "leaf short: {like: plain}\nleaf plain:\n"),
    )
    found = loaded(tmp_path, design, HOUSE + "leaf: {trim: 1,5}\n")
    assert [(p.code, p.where) for p in found.problems] == [
        ("decimal_comma", Where("house.yaml", 3))
    ]
    found = loaded(tmp_path, design, HOUSE + "leaf: {trim: wide}\n")
    assert [(p.code, p.where) for p in found.problems] == [("not_a_length", Where("house.yaml", 3))]


def test_measured_chosen_and_doubted(tmp_path: Path) -> None:
    design = changed(
        PLAIN,
        ("widths: {middle: 1400}", "widths: {middle: about 1400, top: not measured}"),
        ("bearing: 60}", "bearing: 60, measured: with callipers 2026-11-02}"),
    )
    found = loaded(tmp_path, design)
    assert found.design is not None
    survey = found.design.block("survey")
    middle, top = survey.widths  # type: ignore[union-attr]
    assert isinstance(middle.reading, Figure)
    assert (middle.reading, middle.reading.about, middle.reading.origin) == (1400, True, "measured")
    assert top.reading.where == Where("design.yaml", 3)
    track = found.design.block("track")
    assert track.spacing.origin == "measured"  # type: ignore[union-attr]
    leaf = found.design.block("leaf")
    assert leaf.stiles.origin == "chosen"  # type: ignore[union-attr]


def test_every_default_has_its_key_and_its_source() -> None:
    """A default that no block takes would never be used, and one without a source never is."""
    for heading, keys in DEFAULTS.items():
        block = next(
            k for k in (*KINDS, *PLAIN_BLOCKS) if heading == k or heading.startswith(f"{k} ")
        )
        word = heading.removeprefix(block).strip()
        known = {key for spec in specs(block) for key in keys_of(spec)}
        if word:
            known = set(keys_of(KINDS[block][word]))
        for key, default in keys.items():
            assert key in known, (heading, key)
            assert default.source, (heading, key)
    for keys in BAND_DEFAULTS.values():
        assert set(keys) <= set(keys_of(Band))
    for heading, keys in INCH_DEFAULTS.items():
        assert set(keys) <= set(DEFAULTS[heading]), heading
        assert all(default.source for default in keys.values())


IN_INCHES = """\
stilewright: 1
units: inch
survey: {widths: {middle: 55}, heights: {middle: 79}}
door: {kind: bypass}
leaf:
  timber: ash
  thickness: 1-5/8
  stiles: 4
  top to bottom: [top rail: 4, panel: rest, bottom rail: 8]
joint: {slot: 1/2 x 2 x 1-5/8, tenon: 1/2 x 1-15/16 x 3}
panel: {kind: raised, thickness: 1, tongue: 5/16 x 5/8, edge thickness: 1/2, bevel run: 2-1/2}
track: {spacing: 2-1/8, off wall: 3-1/2, bearing: 60}
"""


@pytest.mark.parametrize(
    ("units", "house", "papers"),
    [
        ("mm", "", ("A4", "A3")),
        ("inch", "", ("letter", "tabloid")),
        ("inch", "shop: {drawing paper: A2}", ("letter", "A2")),
        ("mm", "shop: {bench paper: letter, drawing paper: tabloid}", ("letter", "tabloid")),
    ],
)
def test_paper_follows_the_unit_unless_the_house_says_otherwise(
    tmp_path: Path, units: str, house: str, papers: tuple[str, str]
) -> None:
    """The unit of the design, whatever the house file itself is written in."""
    design = PLAIN if units == "mm" else IN_INCHES
    paper = shop_of(tmp_path, design, f"stilewright: 1\nunits: mm\n{house}\n").paper
    assert (paper.bench_paper, paper.drawing_paper) == papers


def test_the_doors_that_build_have_the_keys_of_the_language() -> None:
    for word, spec in KINDS["door"].items():
        assert set(keys_of(spec)) <= set(DOOR_KEYS[word])


# Settings of the hand calculations of Larch Hill: what the house file of the examples says, and
# what the tool takes without one. Common practice, no source, unless the file names one.
HAND = {
    "paper.print_to": 0.5,
    "paper.print_glass_and_pockets_to": 0.1,
    "limits.engagement": 5,
    "limits.tongue_spare": 1,
    "limits.groove_wall": 5,
    "limits.pocket_wall": 6,
    "limits.below_guide": 10,
    "limits.passing": 6,
    "limits.screw_in_timber": 38,
    "limits.one_person": 25,
    "limits.reach_spare": 5,
    "accuracy.reading": 1.5,
    "accuracy.marking": 0.3,
    "accuracy.slot": 0.2,
    "accuracy.clamping": 0.3,
    "accuracy.hanging": 0.5,
    "moisture.made": 8,
    "moisture.driest": 6,
    "moisture.dampest": 11,
    "blanks.length": 25,
    "blanks.width": 6,
    "blanks.panel": 6,
    "saw.blade": 254,
    "saw.most_height": 79,
    "saw.dado_set": 203,
    "clamps.caul": 0,
    "finish.primer_covers": 11,
    "finish.top_coat_covers": 12,
    "finish.spare": 15,
}


@pytest.mark.parametrize("with_house", [True, False])
def test_settings_of_the_hand_calculations(
    project: Path, reading_room: Path, tmp_path: Path, with_house: bool
) -> None:
    if with_house:
        found = load(reading_room, house=project / "examples/house.yaml", user_house=False)
    else:
        found = loaded(tmp_path, reading_room.read_text(encoding="utf-8"))
    assert found.shop is not None
    assert found.problems == ()
    for path, value in HAND.items():
        part, key = path.split(".")
        figure = getattr(getattr(found.shop, part), key)
        assert figure == value, path
        assert figure.origin == ("house" if with_house else "assumed")
    assert found.shop.router.cutters == (6, 8, 12)
    assert found.shop.accuracy.marked == "together"


def test_tape_is_a_habit_of_the_house(project: Path, reading_room: Path, tmp_path: Path) -> None:
    """Without one, glass bears on the stops."""
    for found, tape in (
        (load(reading_room, house=project / "examples/house.yaml"), 1.5),
        (loaded(tmp_path, reading_room.read_text(encoding="utf-8")), 0),
    ):
        assert found.design is not None
        glass = found.design.block("glass")
        assert isinstance(glass, GlassSpec)
        assert glass.tape == tape
        assert glass.stop == (12, 14.5)


@pytest.mark.parametrize(
    ("house", "mm", "inch"),
    [("0.5", "1/2", "1/32"), ("1/16 in", "1/2", "1/16"), ("1", "1", "1/32")],
)
def test_a_step_serves_paper_in_its_own_unit(
    tmp_path: Path, house: str, mm: str, inch: str
) -> None:
    paper = shop_of(tmp_path, PLAIN, HOUSE + f"shop: {{print to: {house}}}\n").paper
    assert (str(paper.wood_step("mm")), str(paper.wood_step("inch"))) == (mm, inch)
