"""Part sheets of casework: boards that are only sawn share a list, others show the side that is cut."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from parametric.drawing import Drawings, draw
from parametric.drawing.part_sheets.plain_boards import fitted_on_site
from parametric.drawing.primitives import Label
from parametric.drawing.sheet import Sheet, primitives
from parametric.job import Job, check
from parametric.pack.verifying.drawings import check_drawings
from parametric.pack.verifying.known import known_design
from parametric.trade.paperwork import paperwork
from parametric.writers.dxf_sheets import write_dxf

ROOT = Path(__file__).parents[2]


@cache
def job() -> Job:
    return check(
        ROOT / "examples/fen-road-wardrobe/design.yaml",
        house=ROOT / "examples/house.yaml",
        user_house=False,
    )


@cache
def drawn() -> Drawings:
    found = job()
    assert found.resolved is not None
    assert found.assembly is not None
    return draw(
        found.resolved,
        found.assembly,
        found.loads,
        found.own,
        mark="0123-4567",
        paper=paperwork(found.resolved, found.assembly, found.loads),
    )


def texts(sheet: Sheet) -> list[str]:
    return [
        part.text
        for element in sheet.elements
        for part in primitives(element)
        if isinstance(part, Label)
    ]


def parts_sheets() -> list[Sheet]:
    return [sheet for sheet in drawn().sheets if sheet.title.document.startswith(("Part", "Plain"))]


def test_every_sheet_of_the_wardrobe_is_clean() -> None:
    assert [str(finding) for finding in drawn().findings] == []


def test_every_board_is_on_one_sheet_and_no_more() -> None:
    """Marks of cases, backs and runs: those that are cut on a sheet of their own, others listed."""
    assembly = job().assembly
    assert assembly is not None
    (plain,) = (sheet for sheet in parts_sheets() if sheet.title.document == "Plain boards")
    listed = texts(plain)
    own = {sheet.title.document.removeprefix("Part ") for sheet in parts_sheets()}
    boards = {p.mark: p for p in assembly.parts if p.mark[0] in "CXY" and not p.supplied}
    assert boards
    for mark, part in boards.items():
        assert (mark in listed) == fitted_on_site(part)
        assert (mark in own) != fitted_on_site(part)


def test_the_list_has_sizes_counts_and_homes() -> None:
    """Eight shelves 752 x 560 x 18 of two kinds of cabinet; a filler leaves the shop as a strip."""
    (plain,) = (sheet for sheet in parts_sheets() if sheet.title.document == "Plain boards")
    said = texts(plain)
    at = said.index("shelf")
    assert said[at + 1 : at + 7] == ["8", "752", "560", "18", "plywood", "front edge"]
    assert "3 in cabinet outer 1, 2 in cabinet middle, 3 in cabinet outer 2" in said
    at = said.index("left filler")
    assert said[at + 1 : at + 5] == ["1", "2273", "42", "18"]
    assert "scribed on site" in said


def test_a_side_is_drawn_from_inside_with_its_foot_at_the_left() -> None:
    """Its groove lies in the inside, whichever of the blank's faces that is: one view, not two."""
    for mark in ("C1", "C2"):
        sheet = next(s for s in parts_sheets() if s.title.document == f"Part {mark}")
        said = texts(sheet)
        assert "inside" in said
        assert "outside" not in said
        assert any("datum 0 is the finished foot" in text for text in said)
        assert any(text.startswith("Front edge banded") for text in said)


def test_what_is_said_of_cabinets_stands_on_their_sheets_and_not_on_the_leaves() -> None:
    """Weights, scribes and the way a case stands up are the fitter's; the leaf's bench has none."""
    sheets = {
        kind: " ".join(
            text
            for sheet in drawn().sets[0].sheets
            if sheet.title.document == kind
            for text in texts(sheet)
        )
        for kind in ("Cabinets", "Cabinets open", "Leaves")
    }
    assert "shows 36 at the bottom" in sheets["Cabinets"]
    assert "tipped up on the plinth" in sheets["Cabinets open"]
    assert "tipped up" not in sheets["Leaves"]
    assert "at the bottom" not in sheets["Leaves"]
    for sheet in drawn().sets[0].sheets:
        if sheet.title.document == "Leaves":
            assert "shelf" not in texts(sheet), "boards of cases are in no leaf's cut list"


def test_fronts_alike_share_their_sheets() -> None:
    """H and J of the second outer cabinet are as A and B of the first: drawn once, by all letters."""
    lines = [
        sheet.title.second_line
        for sheet in drawn().sets[0].sheets
        if sheet.title.document == "Leaves"
    ]
    assert lines[0] == "Leaves A and B on one datum; H as A; J as B"
    assert not [line for line in lines[1:] if "H" in line or "J" in line]
    first = next(s for s in drawn().sets[0].sheets if s.title.document == "Leaves")
    assert first.title.title.endswith("cabinet outer 1 and cabinet outer 2")


def test_a_door_in_a_wall_stands_beside_cabinets_in_one_set_of_drawings() -> None:
    """Each arrangement is read back against what it shows; the page is given the door's alone."""
    found = check(ROOT / "tests/cases/door-and-cabinets.yaml", user_house=False)
    assert found.resolved is not None
    assert found.assembly is not None
    paper = paperwork(found.resolved, found.assembly, found.loads)
    drawings = draw(
        found.resolved, found.assembly, found.loads, found.own, mark="0123-4567", paper=paper
    )
    assert [str(finding) for finding in drawings.findings] == []
    assert len(drawings.elevations) == len(found.resolved.walls) == 1
    files = {
        f"shop/drawing-{number}.dxf": write_dxf(sheet)
        for number, sheet in enumerate(drawings.sets[0].sheets, 1)
    }
    verdict = check_drawings(files, known_design(found.resolved, found.assembly, found.loads))
    assert verdict.faults == ()
    shown = ["cabinets from the front", "front elevation", "leaf A", "leaf B", "leaf C"]
    assert verdict.looked_at["fronts"] == shown
