"""Larch Hill reading room: every number a maker works out by hand, with the arithmetic.

The left column is the sum as it stands in the brief; the tool's figure of that name must
agree at full precision wherever the sum's own inputs are exact, and to the last printed
digit where the brief went on from a rounded one.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.cnc.setups import set_ups
from parametric.figures import Figure
from parametric.job import Job, check
from parametric.model import Groove, Pocket, Slot, Trim
from parametric.pack.numbers import figures
from parametric.trade.cutlist import cut_list

DESIGN = Path(__file__).parents[2] / "examples/larch-hill-reading-room/design.yaml"


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


@pytest.fixture(scope="module")
def numbers(job: Job) -> dict[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


PANEL_WIDTH = (784.5 + 2 * 14 - 2 * 1) / (1 + 0.00289 * (11 - 8))
SLOPE = (26.5 - 15) / 75

EXACT = {
    # Cover from the largest width, then two leaves and one overlap of a stile.
    "cover": 1829 + 2 * 50,
    "leaf width": (1929 + 120) / 2,
    "leaf height": 2069 + 45 - 12,
    "floor gap left": 12 + 2078 - 2069,
    "floor gap middle": 12 + 2074 - 2069,
    "floor gap right": 12,
    "head above the foot": 2069 - 12,
    "leaf A / stile blank length": 2102 + 2 * 12,
    "leaf A / shoulder": 1024.5 - 2 * 120,
    "leaf A / lite 1 / height": (2102 - 120 - 90 - 150 - 240 - 460) / 2,
    "leaf A / lite 2 / height": 521,
    # Rail edges up from the finished bottom: 0 / 240 / 700 / 850 / 1371 / 1461 / 1982 / 2102.
    "leaf A / bottom rail / foot": 0,
    "leaf A / bottom rail / top": 240,
    "leaf A / panel / top": 240 + 460,
    "leaf A / lock rail / top": 240 + 460 + 150,
    "leaf A / dividing rail / foot": 850 + 521,
    "leaf A / dividing rail / slot / centre": 1371 + 90 / 2,
    "leaf A / dividing rail / top": 1461,
    "leaf A / top rail / foot": 1982,
    "leaf A / top rail / top": 2102,
    # Glass between stops.
    "leaf A / lite 1 / glass / width": 784.5 - 2 * 3,
    "leaf A / lite 1 / glass / height": 521 - 2 * 3,
    "leaf A / lite 1 / glass / weight": 778.5 * 515 * 6 * 2.5 / 1_000_000,
    # The panel, floating.
    "leaf A / panel / size across the grain": PANEL_WIDTH,
    "leaf A / panel / size along the grain": 460 + 2 * (14 - 1.5),
    "leaf A / panel / seasonal movement": PANEL_WIDTH * 0.00289 * (11 - 6),
    "leaf A / panel / engagement at the driest": (PANEL_WIDTH * (1 + 0.00289 * (6 - 8)) - 784.5)
    / 2,
    "leaf A / panel / engagement as made": (PANEL_WIDTH - 784.5) / 2,
    "leaf A / panel / engagement at the dampest": 14 - 1,
    "leaf A / panel / field below the frame's face": 40 / 2 + 8 / 2 + 5 - 28,
    # The two saw steps.
    "leaf A / panel / blade tilt": math.degrees(math.atan((26.5 - 15) / 75)),
    "leaf A / panel / bevel slope": SLOPE,
    "leaf A / panel / thickness at the tongue shoulder": 15 + 15 * SLOPE,
    "leaf A / panel / blade reach when tilted": 79 * math.cos(math.atan((26.5 - 15) / 75)),
    "leaf A / panel / area whole": PANEL_WIDTH * 485,
    "leaf A / panel / area at the shoulder": (PANEL_WIDTH - 30) * (485 - 30),
    "leaf A / panel / area of the field": (PANEL_WIDTH - 150) * (485 - 150),
    # Weights.
    "leaf A / frame volume": 2 * 120 * 2102 * 40 + (120 + 90 + 150 + 240) * 784.5 * 40,
    "leaf A / frame weight": 39007200 * 480 / 10**9,
    # Track, clear way, passing.
    "track length": 1929,
    "brackets a track": math.ceil(1929 / 400) + 1,
    "screw through board into timber": 12.5 + 38,
    "lap each side where narrowest": (1929 - 1824) / 2,
    "clear way": 1824 - (1024.5 - (1929 - 1824) / 2),
    "gap between passing leaves": 52 - 40,
    "inner track off the wall": 86 - 52,
    # The pull and its pockets.
    "leaf A / pull / flange pocket length": 160 + 2 * 0.3,
    "leaf A / pull / flange pocket width": 42 + 2 * 0.3,
    "leaf A / pull / flange pocket depth": 1.5,
    "leaf A / pull / flange pocket corner": 6.3,
    "leaf A / pull / body pocket length": 150 + 2 * 0.3,
    "leaf A / pull / body pocket width": 32 + 2 * 0.3,
    "leaf A / pull / body pocket depth": 14 + 0.2,
    "leaf A / pull / body pocket corner": 3.3,
    "leaf A / pull / cutter": 6,
    "leaf A / pull / centre above the foot": 1000 - 12,
    "leaf A / pull / centre from the left edge": 60,
    "leaf B / pull / centre from the left edge": 1024.5 - 60,
    "leaf A / pull / body pocket low end": 988 - 150.6 / 2,
    "leaf A / pull / body pocket high end": 988 + 150.6 / 2,
    "leaf A / pull / web behind the pockets": 40 - 2 * 14.2,
    # The floor guide.
    "leaf A / guide groove / passes": math.ceil((9 - 6) / 6) + 1,
    "leaf A / guide groove / shift of the last pass": 9 - 6,
    "leaf A / wood over the guide groove": 40 - 18,
    "leaf A / wood over the guide groove after site trim": 22 - 15,
    # Slots up the stile, centres and ends.
    "leaf A / bottom rail / slot 1 / low end": 40,
    "leaf A / bottom rail / slot 1 / centre": 71,
    "leaf A / bottom rail / slot 1 / high end": 102,
    "leaf A / bottom rail / slot 2 / low end": 158,
    "leaf A / bottom rail / slot 2 / centre": 189,
    "leaf A / bottom rail / slot 2 / high end": 220,
    "leaf A / lock rail / slot / low end": 754,
    "leaf A / lock rail / slot / centre": 785,
    "leaf A / lock rail / slot / high end": 816,
    "leaf A / dividing rail / slot / low end": 1385,
    "leaf A / dividing rail / slot / high end": 1447,
    "leaf A / top rail / slot / low end": 2011,
    "leaf A / top rail / slot / centre": 2042,
    "leaf A / top rail / slot / high end": 2073,
    "leaf A / cover over the top slot": 2102 - 2073,
    # The stopped groove, and what a dado blade would make of it.
    "leaf A / panel / stile groove low end": 240 - 14,
    "leaf A / panel / stile groove high end": 700 + 14,
    "leaf A / panel / saw ramp": math.sqrt(203 * 14 - 14**2),
    "leaf A / panel / saw ramp low end": 226 - math.sqrt(203 * 14 - 14**2),
    "leaf A / panel / saw ramp high end": 714 + math.sqrt(203 * 14 - 14**2),
}

PRINTED = {
    # (expected as the brief prints it, tolerance of half its last digit)
    "leaf A / panel / size across the grain": (803.53, 0.005),
    "leaf A / panel / seasonal movement": (11.61, 0.005),
    "leaf A / panel / engagement at the driest": (7.19, 0.005),
    # The brief goes on from 803.53 rounded, (803.53 - 784.5) / 2: half a digit of each.
    "leaf A / panel / engagement as made": (9.51, 0.005 + 0.0025),
    "leaf A / panel / blade tilt": (8.72, 0.005),
    "leaf A / panel / blade reach when tilted": (78.1, 0.05),
    "leaf A / panel / weight": (4.48, 0.005),
    "leaf A / lite 1 / glass / weight": (6.01, 0.005),
    "leaf A / frame weight": (18.72, 0.005),
    "leaf A / weight estimate": (35.2, 0.05),
    "leaf A / weight without glass": (23.2, 0.05),
    "load per hanger": (17.6, 0.05),
    "leaf A / panel / saw ramp": (51.4, 0.05),
    "leaf A / panel / saw ramp low end": (174.6, 0.05),
    "leaf A / panel / saw ramp high end": (765.4, 0.05),
}


@pytest.mark.parametrize("name", EXACT)
def test_figure_equals_the_brief(numbers: dict[str, Figure], name: str) -> None:
    assert float(numbers[name]) == pytest.approx(EXACT[name], rel=1e-12, abs=1e-9)


@pytest.mark.parametrize("name", PRINTED)
def test_figure_prints_as_the_brief(numbers: dict[str, Figure], name: str) -> None:
    expected, half_a_digit = PRINTED[name]
    assert float(numbers[name]) == pytest.approx(expected, abs=half_a_digit)


def test_bands_add_to_the_leaf(numbers: dict[str, Figure]) -> None:
    """240 + 460 + 150 + 521 + 90 + 521 + 120 = 2102."""
    bands = ("bottom rail", "panel", "lock rail", "lite 2", "dividing rail", "lite 1", "top rail")
    assert sum(float(numbers[f"leaf A / {band} / height"]) for band in bands) == 2102


def test_dividing_rail_is_the_middle_of_the_glazed_field(numbers: dict[str, Figure]) -> None:
    """(850 + 2102 - 120) / 2 = 1416."""
    middle = float(numbers["leaf A / dividing rail / slot / centre"])
    assert middle == (850 + 2102 - 120) / 2 == 1416


def test_panel_volume_by_the_two_steps(numbers: dict[str, Figure]) -> None:
    """The brief's own sum from a panel of 803.53 gives 9323220 mm3; within half a per cent.

    8*389712 + (15 + 15*0.15333 - 8)*351956 + 0.15333*(22542922 - 5560262) + 1.5*218933.
    """
    by_hand = (
        8 * 389712
        + (15 + 15 * 0.15333 - 8) * 351956
        + 0.15333 * (22542922 - 5560262)
        + (28 - 26.5) * 218933
    )
    assert by_hand == pytest.approx(9323220, abs=30)
    volume = float(numbers["leaf A / panel / volume"])
    assert volume == pytest.approx(by_hand, rel=5e-5)
    assert float(numbers["leaf A / panel / integral to the fillet"]) == pytest.approx(
        22542922, rel=1e-5
    )
    assert float(numbers["leaf A / panel / integral to the shoulder"]) == pytest.approx(
        5560262, rel=1e-5
    )


def test_both_leaves_share_every_rail_line(numbers: dict[str, Figure]) -> None:
    lines = [n for n in numbers if n.startswith("leaf A / ") and n.endswith(("/ foot", "/ top"))]
    assert len(lines) == 2 * 7
    for name in lines:
        assert float(numbers[name]) == float(numbers[name.replace("leaf A", "leaf B", 1)])


def test_cut_list(job: Job) -> None:
    """Stile 4 @ 2126 x 120 x 40; rails 2 each @ 784.5; panel 2 @ 485 x 803.5 x 28; glass 4 @
    778.5 x 515 x 6; stops, mitred, both faces: per pane 2 @ 784.5 and 2 @ 521 a face.
    """
    assert job.assembly is not None
    rows = cut_list(job.assembly)
    found = {
        (row.noun, row.number, float(row.length), float(row.width), float(row.thickness))
        for row in rows
        if row.noun != "raised panel"
    }
    assert found == {
        ("stile with pull", 2, 2126.0, 120.0, 40.0),
        ("stile", 2, 2126.0, 120.0, 40.0),
        ("top rail", 2, 784.5, 120.0, 40.0),
        ("dividing rail", 2, 784.5, 90.0, 40.0),
        ("lock rail", 2, 784.5, 150.0, 40.0),
        ("bottom rail", 2, 784.5, 240.0, 40.0),
        ("toughened glass", 4, 778.5, 515.0, 6.0),
        ("stop across", 16, 784.5, 12.0, 14.5),
        ("stop upright", 16, 521.0, 12.0, 14.5),
        ("loose tenon", 20, 90.0, 60.0, 12.0),
    }
    (panel,) = (row for row in rows if row.noun == "raised panel")
    assert (panel.number, float(panel.length), float(panel.thickness)) == (2, 485.0, 28.0)
    assert float(panel.width) == pytest.approx(803.53, abs=0.005)


def test_slots_in_both_members(job: Job) -> None:
    """2*2*(1 + 1 + 1 + 2) = 20 a leaf counting both parts; both leaves 40."""
    assert job.assembly is not None
    for name in ("leaf A", "leaf B"):
        group = next(g for g in job.assembly.groups if g.name == name)
        slots = [c for part in group.parts for c in part.cuts if isinstance(c, Slot)]
        assert len(slots) == 2 * 2 * (1 + 1 + 1 + 2)
        assert {(float(s.width), float(s.u1 - s.u0), float(s.depth)) for s in slots} == {
            (12.0, 62.0, 46.0)
        }


def test_cuts_of_a_stile_with_pull(job: Job) -> None:
    """From the blank's foot everything is 12 more than from the finished foot."""
    assert job.assembly is not None
    stile = next(p for p in job.assembly.parts if p.name == "leaf A / left stile")
    slots = [c for c in stile.cuts if isinstance(c, Slot)]
    assert [(float(s.u0) - 12, float(s.u1) - 12) for s in slots] == [
        (40, 102),
        (158, 220),
        (754, 816),
        (1385, 1447),
        (2011, 2073),
    ]
    panel_groove = next(c for c in stile.cuts if isinstance(c, Groove) and c.name == "panel groove")
    assert (float(panel_groove.u0) - 12, float(panel_groove.u1) - 12) == (226, 714)
    assert (float(panel_groove.width), float(panel_groove.depth)) == (8.2, 14)
    guide = next(c for c in stile.cuts if isinstance(c, Groove) and c.face == "low end")
    assert (float(guide.width), float(guide.depth) - float(guide.surface)) == (9, 18)
    pockets = [c for c in stile.cuts if isinstance(c, Pocket)]
    assert len(pockets) == 4
    assert {(float(p.u) - 12, float(p.v)) for p in pockets} == {(988, 60)}
    assert [float(c.length) for c in stile.cuts if isinstance(c, Trim)] == [12, 12]


def test_leaf_files_of_the_machine(job: Job) -> None:
    """Flange outline 160.6*42.6 - (4 - pi)*6.3**2 = 6807.5; body 150.6*32.6 - (4 - pi)*3.3**2."""
    assert job.assembly is not None
    found = {s.file: s for s in set_ups(job.assembly)}
    for file, across in (("leaf-A-front.dxf", 60.0), ("leaf-B-front.dxf", 964.5)):
        set_up = found[file]
        assert (float(set_up.length), float(set_up.width)) == (1024.5, 2102.0)
        assert [op.layer for op in set_up.operations] == ["pocket_d1.5", "pocket_d14.2"]
        for op in set_up.operations:
            xs, ys = [v.x for v in op.outline], [v.y for v in op.outline]
            assert ((min(xs) + max(xs)) / 2, (min(ys) + max(ys)) / 2) == pytest.approx(
                (across, 988.0)
            )


def test_problems_of_the_brief(job: Job) -> None:
    """Each at its level, and no other stop or caution that the brief would call a false alarm."""
    found = {(p.code, p.level) for p in job.problems}
    assert {
        ("uneven_floor_gap", "caution"),
        ("blade_will_not_reach", "caution"),
        ("little_wood_over_guide", "caution"),
        ("sawn_groove_meets_slot", "note"),
        ("cutter_too_big", "note"),
        ("glass_not_safety", "note"),
        ("fingers_between_leaves", "caution"),
    } <= found
    assert found.isdisjoint(
        {
            (code, level)
            for code in ("panel_leaves_groove", "field_stands_proud", "pockets_leave_no_web")
            for level in ("stop", "caution", "note")
        }
    )
    assert job.exit_status == 0
    said = {p.code: p.message for p in job.problems}
    assert "21, 17, 12" in said["uneven_floor_gap"]
    assert "78.1" in said["blade_will_not_reach"]
    assert "75" in said["blade_will_not_reach"]
    assert "leaves 7" in said["little_wood_over_guide"]
    for number in ("51.4", "174.6", "765.4", "158 to 220", "754 to 816"):
        assert number in said["sawn_groove_meets_slot"]
    assert "toughened" in said["glass_not_safety"]
