"""The proposal of cabinets: drawn room by room, sized as the page sizes them, ready to be signed."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from parametric.drawing.cases.room import rooms
from parametric.drawing.subject import subject
from parametric.job import check
from parametric.writers.page_words import WORDS
from tests.pack.proposals import proposed, read

ROOT = Path(__file__).parents[2]
EXAMPLES = ROOT / "examples"
CORNER = ROOT / "tests/designs/old/version-1-corner.yaml"
DOORS = ROOT / "tests/several/study_and_hall.yaml"
BESIDE = """
survey landing:
  widths: {middle: 1860}
  left side: plumb
  right side: plumb
  heights: {left: 2412, right: 2408}
  floor: {left: 0, right: 3}
  fixing: studs

cabinet books:
  in: landing
  kind: frameless
  width: 1240
  height: 2040
  depth: 290
  from left: 310
  inside: [shelf space: rest]

board: {thickness: 18, sheet: 2440 x 1220}

back: {held: rebate, thickness: 9}
"""


def scenario(name: str, folder: Path) -> Path:
    """A design of a brief beside the house file that it was written for."""
    shutil.copy(ROOT / "examples/house.yaml", folder / "house.yaml")
    return Path(shutil.copy(EXAMPLES / name / "design.yaml", folder / "design.yaml"))


def test_a_wardrobe_is_told_and_drawn_and_signed(tmp_path: Path) -> None:
    """Two surveyed inner walls 2391 and 2388 high; three cabinets of 789 by 2273, 580 deep."""
    made = proposed(scenario("fen-road-wardrobe", tmp_path))
    assert made.findings == ()
    first, drawing, get, yes = read(made.file)
    assert "Three fitted cabinets, six doors, three drawers" in first.words
    for size in ("2391", "2388", "2273", "789", "580"):
        assert size in [line.text for line in drawing.lines], size
    for letter in "ABCDEFGHJ":
        assert letter in [line.text for line in drawing.lines], letter
    for said in ("Fronts in tulipwood", "Three pairs of drawer slides", "cut to your room"):
        assert said in get.words
    for said in (
        WORDS["superseded"],
        "Three fitted cabinets",
        "I have seen that doors and drawers",
    ):
        assert said in yes.words


def test_a_face_frame_in_inches_is_drawn_as_one(tmp_path: Path) -> None:
    made = proposed(scenario("quarry-street-alcove", tmp_path))
    assert made.findings == ()
    assert made.pages == 4
    assert "Face frame, fillers and counter, cut to your room" in read(made.file)[2].words


@pytest.mark.parametrize("name", ["bookcase", "kitchen run", "under stair", "window seat"])
def test_a_starter_stands_clear(name: str, tmp_path: Path) -> None:
    shutil.copy(ROOT / "templates/house.yaml", tmp_path / "house.yaml")
    made = proposed(Path(shutil.copy(ROOT / f"templates/{name}.yaml", tmp_path / "design.yaml")))
    assert made.findings == ()
    assert made.pages == 4


def test_cabinets_round_a_corner_are_seen_from_their_own_walls() -> None:
    """Each front lies between its walls and on the floor's side of the ceiling, three rooms of it."""
    made = proposed(CORNER)
    assert made.findings == ()
    assert made.pages == 6
    job = check(CORNER, user_house=False)
    assert job.resolved is not None
    assert job.assembly is not None
    found = rooms(subject(job.resolved, job.assembly, job.loads, job.problems))
    assert len(found) == 3
    for room in found:
        assert room.fronts
        for front in room.fronts:
            assert room.box.x0 <= front.box.x0 < front.box.x1 <= room.box.x1
        assert room.pieces
        for case in room.cases:
            assert case.stands.origin[0] == pytest.approx(float(case.left))


def test_doors_in_walls_stand_beside_the_cabinets(tmp_path: Path) -> None:
    """A drawing of each door, then one of the room with cabinets; doors are not counted as theirs."""
    path = tmp_path / "design.yaml"
    path.write_text(DOORS.read_text(encoding="utf-8") + BESIDE, encoding="utf-8")
    made = proposed(path)
    assert made.findings == ()
    first, study, hall, cabinets, get, yes = read(made.file)
    assert "Fitted cabinet, open shelves" in first.words
    assert "Study: a hinged door" in first.words
    heads = [page.lines for page in (study, hall, cabinets)]
    assert any("The drawing: Study" in line.text for line in heads[0])
    assert any("The drawing: Hall" in line.text for line in heads[1])
    assert any("The drawing: the cabinets" in line.text for line in heads[2])
    assert "Study: one door, 858.5 × 2026" in get.words
    assert "Study: one door, 858.5 × 2026" in yes.words
