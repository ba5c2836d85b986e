"""Sheets as sold and as measured: what the standards allow, what is ordered, what is told.

PS 1: 3/4 in panels are 18.26 to 19.84 mm thick; birch plywood of 18 mm +0.7 -0.9; fibreboard of
ANSI A208.2 within 0.125. As published; kept in the catalogue with its source.
"""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from parametric.cases.sheet_faults import sheet_faults
from parametric.catalog.boards import Board, known_board, sold_between
from parametric.design import load
from parametric.figures import Figure, Where, plain
from parametric.problems import Problem
from parametric.resolve.panel_field import board_thickness, resolve_board

HERE = Where("design.yaml", 9)


def board(name: str, sold: float | None = None, measured: float | None = None) -> Board:
    known = known_board(name, "mm")
    assert known is not None
    return dataclasses.replace(
        known,
        nominal=None if sold is None else Figure(sold),
        measured=None if measured is None else Figure(measured, where=Where("design.yaml", 4)),
    )


@pytest.mark.parametrize(
    ("name", "sold", "low", "high"),
    [
        ("plywood", 0.75 * 25.4, 18.26, 19.84),
        ("plywood", 0.25 * 25.4, 5.56, 7.14),
        ("plywood", 18.0, 17.1, 18.7),
        ("fibreboard", 18.0, 17.875, 18.125),
        ("fibreboard", 25.4, 25.275, 25.525),
    ],
)
def test_what_is_sold_as_a_thickness(name: str, sold: float, low: float, high: float) -> None:
    found = sold_between(name, sold)
    assert found is not None
    assert (found.least, found.most) == pytest.approx((low, high))


def test_a_label_of_three_quarters_is_within_what_is_sold_so() -> None:
    """PS 1 suggests 0.734 in on the label of a 3/4 in panel: 18.64 mm."""
    found = sold_between("plywood", 19.05)
    assert found is not None
    assert found.least < 0.734 * 25.4 < found.most


def test_no_standard_is_known_of_some() -> None:
    assert sold_between("plywood", 15.0) is None
    assert sold_between("chipboard", 18.0) is None


def test_what_is_measured_is_ordered_as_it_is_sold() -> None:
    own = board("plywood", 18.0, 17.6)
    assert own.sold_as(Figure(17.6)) == 18
    # the back is of the same board, and no sheet of 18
    assert own.sold_as(Figure(6.0)) == 6
    assert board("plywood").sold_as(Figure(17.6)) == 17.6


def faults(own: Board, thickness: float, *, let_in: bool = True) -> list[Problem]:
    return list(
        sheet_faults(
            own, Figure(thickness), name="cabinet base", let_in=let_in, said=plain, here=HERE
        )
    )


@pytest.mark.parametrize(
    ("own", "let_in", "found"),
    [
        # nobody measured it: loose by up to 0.9, or by 0.125
        (board("plywood", 18.0), True, [("board_not_measured", "caution")]),
        (board("fibreboard", 18.0), True, [("board_not_measured", "note")]),
        (board("chipboard", 18.0), True, [("board_not_measured", "caution")]),
        # nothing is cut to it
        (board("plywood", 18.0), False, []),
        # measured, at either limit and past it
        (board("plywood", 18.0, 17.1), True, []),
        (board("plywood", 18.0, 18.7), True, []),
        (board("plywood", 18.0, 17.05), True, [("board_measured_wrong", "caution")]),
        (board("plywood", 18.0, 18.75), True, [("board_measured_wrong", "caution")]),
        # of 15 no standard is known: a tenth of it is 1.5
        (board("plywood", 15.0, 13.5), True, []),
        (board("plywood", 15.0, 13.4), True, [("board_measured_wrong", "caution")]),
    ],
)
def test_what_is_told(own: Board, let_in: bool, found: list[tuple[str, str]]) -> None:
    told = faults(own, 18.0, let_in=let_in)
    assert [(one.code, one.level) for one in told] == found


def test_the_words() -> None:
    (told,) = faults(board("plywood", 18.0), 18.0)
    assert told.message == (
        "cabinet base: dadoes are cut 18 wide, as the board is sold, and plywood sold as 18 may be "
        "17.1 to 18.7."
    )
    assert told.where == HERE
    (wrong,) = faults(board("plywood", 18.0, 12.0), 12.0)
    assert wrong.where == Where("design.yaml", 4)


DESIGN = """
stilewright: 1
job: a store
units: mm
survey:
  widths: {middle: 900}
  heights: {middle: 2100}
door: {kind: hinged, hinge side: left}
leaf:
  timber: tulipwood
  thickness: 40
  stiles: 100
  top to bottom: [top rail: 100, panel: rest, bottom rail: 160]
joint: {slot: 12 x 62 x 46, tenon: 12 x 60 x 90}
hinge: {kind: butt, length: 102}
panel: {kind: board, thickness: 9, groove: 9 x 10}
"""


@pytest.mark.parametrize(
    ("blocks", "thick", "sold", "measured"),
    [
        ("", 18, None, None),
        ("board: {thickness: 16}", 16, 16, None),
        ("board: {thickness: 18, measured: 17.6}", 17.6, 18, 17.6),
        # sold as usual, where nobody says
        ("board: {measured: 17.6}", 17.6, 18, 17.6),
        # a board's own block goes before the one for all
        ("board: {measured: 17.6}\nboard plywood: {thickness: 15}", 15, 15, None),
    ],
)
def test_cases_go_by_what_was_measured(
    tmp_path: Path, blocks: str, thick: float, sold: float | None, measured: float | None
) -> None:
    path = tmp_path / "design.yaml"
    path.write_text(DESIGN + blocks + "\n", encoding="utf-8")
    design = load(path, user_house=False).design
    assert design is not None
    assert board_thickness(design, "plywood") == thick
    found = resolve_board(design, "plywood")
    assert (found.nominal, found.measured) == (sold, measured)
