"""Sheets of cabinets: clean, true to the room as measured, and holding the numbers of the briefs."""

from __future__ import annotations

import dataclasses
from functools import cache
from pathlib import Path

import pytest

from parametric.drawing.audit import audit
from parametric.drawing.cases import draw_casework
from parametric.drawing.cases.room import rooms
from parametric.drawing.dimensions import Dimension, Ordinate
from parametric.drawing.on_site.cabinets import draw_cabinets
from parametric.drawing.primitives import Label, Stroke
from parametric.drawing.sheet import Sheet, TitleBlock, primitives
from parametric.drawing.subject import Subject, subject
from parametric.figures import collect
from parametric.job import check
from parametric.model import Placement
from parametric.pack.verifying.drawings import check_drawings
from parametric.pack.verifying.known import known_design
from parametric.trade.paperwork import paperwork
from parametric.writers.dxf_sheets import write_dxf

ROOT = Path(__file__).parents[2]
HOUSE = ROOT / "examples/house.yaml"
FEN_ROAD = ROOT / "examples/fen-road-wardrobe/design.yaml"
QUARRY_STREET = ROOT / "examples/quarry-street-alcove/design.yaml"
OTHERS = (
    "tests/cases/kitchen.yaml",
    "tests/designs/old/version-1-casework.yaml",
    "tests/designs/old/version-1-stairs.yaml",
    "tests/designs/old/version-1-media.yaml",
    "tests/rules/alcove.yaml",
    "tests/rules/bookcase.yaml",
    "tests/rules/chest.yaml",
    "templates/alcove pair.yaml",
    "templates/desk.yaml",
    "templates/kitchen run.yaml",
    "templates/pantry tower.yaml",
    "templates/under stair.yaml",
    "templates/window seat.yaml",
)
BLOCK = TitleBlock(
    owner="",
    document="Arrangement",
    title="",
    second_line="",
    drawn="",
    approved="",
    date="",
    scale="",
    sizes="",
    number="",
    revision="",
    fingerprint="",
)
INCH = 25.4


@cache
def job_of(path: Path) -> Subject:
    job = check(path, house=HOUSE, user_house=False)
    assert job.resolved is not None, job.problems
    assert job.assembly is not None
    return subject(job.resolved, job.assembly, job.loads, job.own)


@cache
def sheets_of(path: Path) -> tuple[Sheet, ...]:
    return draw_casework(job_of(path), BLOCK)


def sheet_of(path: Path, document: str) -> Sheet:
    return next(sheet for sheet in sheets_of(path) if sheet.title.document == document)


def chains(sheet: Sheet, view: str, axis: str) -> list[list[Dimension]]:
    """Dimensions of a view that stand on one line, in order along it."""
    across = 1 if axis == "across" else 0
    found: dict[float, list[Dimension]] = {}
    for element in sheet.elements:
        if isinstance(element, Dimension) and element.view == view and element.axis == axis:
            found.setdefault(round(element.a[across], 3), []).append(element)
    which = 1 - across
    return [sorted(own, key=lambda d: d.a[which]) for own in found.values()]


def texts(sheet: Sheet) -> list[str]:
    return [
        part.text
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
    ]


@pytest.mark.parametrize(
    "path", [FEN_ROAD, QUARRY_STREET, *(ROOT / one for one in OTHERS)], ids=str
)
def test_nothing_overlaps_and_nothing_is_left_out(path: Path) -> None:
    sheets = sheets_of(path)
    assert sheets
    assert [str(finding) for sheet in sheets for finding in audit(sheet)] == []


def test_widths_add_up_to_the_plumb_clear_width() -> None:
    """31 + 3 x 789 + 31 = 2429, the least of the right wall less the most of the left one."""
    sheet = sheet_of(FEN_ROAD, "Cabinets")
    across = chains(sheet, "plan A-A", "across")
    assert [link.text for link in across[0]] == ["31", "789", "789", "789", "31"]
    assert [link.text for link in across[1]] == ["2429 clear, plumb"]
    assert sum(link.value for link in across[0]) == pytest.approx(across[1][0].value)
    assert across[1][0].value == pytest.approx(min(2440, 2434, 2441) - 5)


def test_heights_add_up_from_the_floor_to_the_ceiling_on_either_side() -> None:
    """Left 85 + 2273 + 33 = 2388 + 3; right 80 + 2273 + 35 = 2390 - 2."""
    up = chains(sheet_of(FEN_ROAD, "Cabinets"), "cabinets from the front", "up")
    columns = [[link.text for link in one] for one in up]
    assert ["85", "2273", "33"] in columns
    assert ["80", "2273", "35"] in columns
    assert ["2391"] in columns
    assert ["2388"] in columns
    assert ["82", "30"] in columns, "plinth and top filler at the middle"


def test_fillers_and_their_blanks_stand_on_the_sheet() -> None:
    """Seen at the wall's readings: 36, 33, 31 and 37, 31, 38; blanks are the most and 6."""
    said = texts(sheet_of(FEN_ROAD, "Cabinets"))
    left, right = said.index("Left filler, seen"), said.index("Right filler, seen")
    assert said[left + 1 : left + 5] == ["36", "33", "31", "42"]
    assert said[right + 1 : right + 5] == ["37", "31", "38", "44"]
    top, plinth = said.index("Top filler, seen"), said.index("Plinth, high")
    assert said[top + 1 : top + 5] == ["33", "30", "35", "41"]
    assert said[plinth + 1 : plinth + 4] == ["85", "82", "80"]


def test_fronts_are_lettered_and_their_gaps_told() -> None:
    """From the foot: 1.5 of the edge, 220, 3, 220, 3, 220, 3, 1601, 1.5 of the edge: 2273."""
    sheet = sheet_of(FEN_ROAD, "Cabinets")
    assert set("ABCDEFGHJ") <= set(texts(sheet))
    (front,) = chains(sheet, "section B-B", "up")
    assert [link.text for link in front] == [
        "1.5",
        "220",
        "3",
        "220",
        "3",
        "220",
        "3",
        "1601",
        "1.5",
    ]
    assert sum(link.value for link in front) == pytest.approx(2273)


def test_a_face_frame_is_made_to_the_widest_point_and_its_openings_are_equal() -> None:
    """2-1/8 + 21-1/4 + 1-1/2 + 21-1/4 + 2-1/4 = 48-3/8; kick, rail, opening, rail make 30."""
    sheet = sheet_of(QUARRY_STREET, "Cabinets")
    frame, cabinets, clear = chains(sheet, "plan A-A", "across")
    assert [link.text for link in frame] == ["2-1/8", "21-1/4", "1-1/2", "21-1/4", "2-1/4"]
    assert sum(link.value for link in frame) == pytest.approx(48.375 * INCH)
    assert [link.text for link in cabinets] == ["3/4", "46", "3/4"]
    assert clear[0].value == pytest.approx(47.5 * INCH)
    (front,) = chains(sheet, "section B-B", "up")
    assert [link.text for link in front] == ["3-1/2", "1-1/2", "23-1/2", "1-1/2"]


def test_scribes_stand_on_the_front_drawing_at_foot_middle_and_top() -> None:
    """At the wall's readings off the left stile 1/8, 1/4, 3/8; off the right one 1/2, 1/2, 1/8."""
    said = texts(sheet_of(QUARRY_STREET, "Cabinets"))
    left = said.index("Left wall stile, scribe off")
    right = said.index("Right wall stile, scribe off")
    assert said[left + 1 : left + 5] == ["1/8", "1/4", "3/8", "2-1/8"]
    assert said[right + 1 : right + 5] == ["1/2", "1/2", "1/8", "2-1/4"]
    # Beside the stile itself, which ends 30 up a wall that leans 1/8 in 47-15/16: at its foot
    # 1/8 + 3-1/2/383.5 = 0.134, in its middle 0.169, at its top 0.203.
    beside = [text for text in said if text.endswith(" off") and text[0].isdigit()]
    assert beside == [
        *("1/8 off", "5/32 off", "7/32 off"),
        *("1/2 off", "1/2 off", "1/2 off"),
    ]


def test_what_comes_off_and_what_is_seen_make_the_blank() -> None:
    sheet = sheet_of(QUARRY_STREET, "Scribing")
    level = [view.name for view in sheet.views if "wall stile" in view.name]
    assert len(level) == 6
    for view in level:
        rows = chains(sheet, view, "across")
        parts, blank = next(one for one in rows if len(one) == 2), rows[1]
        assert sum(link.value for link in parts) == pytest.approx(blank[0].value)
    top = [view.name for view in sheet.views if "top filler" in view.name]
    seen = [
        link.text
        for view in top
        for one in chains(sheet, view, "up")
        for link in one
        if link.after == "seen"
    ]
    assert seen == ["1-7/8 seen", "1-1/2 seen"]


def test_cases_alike_share_a_sheet() -> None:
    sheets = [sheet for sheet in sheets_of(FEN_ROAD) if sheet.title.document == "Case"]
    assert [sheet.title.second_line for sheet in sheets] == [
        "Cabinet outer 1 and cabinet outer 2, 2 off",
        "Cabinet middle, 1 off",
    ]


def test_a_case_is_sized_on_its_sheet() -> None:
    """789 - 2 x 18 = 753; to the back 560, the back 8, behind it 12: 580.

    Three shelves leave four equal spaces of (2237 - 3 x 18) / 4 = 545.75: undersides at 563.75,
    1127.5 and 1691.25. Pins stand from 144.5 on, 32 apart, and a shelf lies 2.5 over their middle:
    147 + 13 x 32 = 563, 147 + 31 x 32 = 1139, 147 + 48 x 32 = 1683, and 18 more.
    """
    sheet = sheet_of(FEN_ROAD, "Case")
    front = [[link.text for link in one] for one in chains(sheet, "from the front", "across")]
    assert front == [["753"], ["789"]]
    upright = [[link.text for link in one] for one in chains(sheet, "cut upright", "across")]
    assert upright == [["12", "8", "560"], ["580"]]
    heights = {
        element.text: element.value for element in sheet.elements if isinstance(element, Ordinate)
    }
    assert heights.keys() == {"18  C3", "581  C5", "1157  C5", "1701  C5", "2255  C4"}
    said = texts(sheet)
    row = said.index("left side")
    assert said[row - 1 : row + 4] == ["C1", "left side", "1", "2273 × 580 × 18", "front"]
    row = said.index("back")
    assert said[row + 1 : row + 4] == ["1", "2251 × 767 × 8", "–"]


@pytest.mark.parametrize("path", [FEN_ROAD, QUARRY_STREET], ids=str)
def test_walls_are_drawn_as_they_were_measured(path: Path) -> None:
    """The left wall's line has a corner at its middle reading, which no plumb line has."""
    (room,) = rooms(job_of(path))
    opening = room.opening
    middle = (float(opening.lean["middle"]), float(opening.head) / 2)
    assert middle[0] > 0, "the wall of the brief is not plumb"
    sheet = sheet_of(path, "Cabinets")
    view = sheet.view("cabinets from the front")
    corners = [
        view.back(point)
        for element in sheet.elements
        if isinstance(element, Stroke) and element.layer == "cut" and element.view == view.name
        for point in element.points
    ]
    assert any(point == pytest.approx(middle, abs=1e-6) for point in corners)


def test_the_fitter_is_told_what_to_expect_at_every_wall() -> None:
    """Beside the order of work: the stile of the brief, to the sixteenth that a tape is read to."""
    job = job_of(QUARRY_STREET)
    paper = paperwork(job.resolved, job.assembly, job.loads)
    sheets = draw_cabinets(job, paper, BLOCK)
    said = [text for sheet in sheets for text in texts(sheet)]
    row = said.index("cabinet base / face frame / left wall stile")
    assert said[row + 1 : row + 6] == ["comes off", '1/8"', '3/16"', '3/16"', '2-1/8"']
    row = said.index("cabinet upper / top filler")
    assert said[row + 1 : row + 6] == ["seen", '1-7/8"', "–", '1-1/2"', '2-1/8"']
    known = collect(paper)
    assert float(known["cabinet base / face frame / left wall stile / seen at its foot"]) > 0


@pytest.mark.parametrize(
    "path",
    [
        FEN_ROAD,
        QUARRY_STREET,
        ROOT / "templates/alcove pair.yaml",
        ROOT / "templates/kitchen run.yaml",
        ROOT / "templates/bookcase.yaml",
        # two on a wall that no one level cuts
        ROOT / "tests/designs/old/version-1-flaps.yaml",
    ],
    ids=str,
)
def test_drawings_read_back_say_what_the_design_says(path: Path) -> None:
    """By the pack's own readers, which share nothing with the writers: sizes, their names, fronts."""
    job = job_of(path)
    known = known_design(job.resolved, job.assembly, job.loads)
    files = {
        f"shop/drawing-{number}.dxf": write_dxf(sheet)
        for number, sheet in enumerate(sheets_of(path), 1)
    }
    verdict = check_drawings(files, known)
    assert verdict.faults == ()
    assert verdict.looked_at["fronts"] == len(rooms(job)) * ["cabinets from the front"]


def test_a_front_drawn_out_of_its_place_is_found() -> None:
    """The room said to begin 10 farther right: no front stands where it is drawn."""
    job = job_of(FEN_ROAD)
    known = known_design(job.resolved, job.assembly, job.loads)
    (room,) = known.rooms
    moved = dataclasses.replace(room, stands=Placement(origin=(10.0, 0.0, 0.0)))
    files = {"shop/drawing-1.dxf": write_dxf(sheet_of(FEN_ROAD, "Cabinets"))}
    verdict = check_drawings(files, dataclasses.replace(known, rooms=(moved,)))
    assert any("is not drawn" in fault for fault in verdict.faults)
