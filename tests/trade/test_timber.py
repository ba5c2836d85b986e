"""The timber order against handbook sums, and Larch Hill's by hand."""

from __future__ import annotations

import math

import pytest

from parametric.catalog.lumber import BOARD_FOOT, CLASSES, board_feet, sawn_for
from parametric.figures import Figure
from parametric.job import Job
from parametric.trade.paperwork import Paperwork
from tests.trade.conftest import Edited, paper_of

INCH = 25.4


@pytest.mark.parametrize(
    ("thick", "wide", "long", "feet"),
    [
        # T x W x L / 144, inches. Source: NHLA rules, board measure, unrounded.
        (1, 9, 96, 6.0),
        (1.5, 9, 96, 9.0),
        (2, 4, 14 * 12, 9.33),
        # Under 1 inch counts as 1 inch.
        (0.75, 9, 96, 6.0),
    ],
)
def test_board_feet_as_handbooks_have_them(
    thick: float, wide: float, long: float, feet: float
) -> None:
    face = Figure(wide * INCH * long * INCH, unit="mm2")
    assert float(board_feet(face, thick * INCH)) == pytest.approx(feet, abs=0.005)


def test_a_board_foot_is_a_twelfth_of_a_cubic_foot() -> None:
    assert float(BOARD_FOOT) == pytest.approx(304.8**3 / 12, rel=1e-12)


def test_classes_plane_to_less_than_they_are_sawn_and_come_in_order() -> None:
    sawn = [float(c.rough) for c in CLASSES]
    planed = [float(c.surfaced) for c in CLASSES]
    assert sawn == sorted(sawn)
    assert planed == sorted(planed)
    assert all(p < s for p, s in zip(planed, sawn, strict=True))


@pytest.mark.parametrize(
    ("finished", "name"),
    [
        # Surfaced two sides, NHLA: 4/4 13/16, 5/4 1-1/16, 6/4 1-5/16, 8/4 1-3/4.
        (40.0, "8/4"),
        (28.0, "6/4"),
        (26.9, "5/4"),
        (13 / 16 * INCH, "4/4"),
        (13 / 16 * INCH + 0.1, "5/4"),
        (3.75 * INCH, "16/4"),
        (3.75 * INCH + 0.1, None),
    ],
)
def test_thinnest_class_that_planes_to_a_thickness(finished: float, name: str | None) -> None:
    found = sawn_for(finished)
    assert (found.name if found else None) == name


def test_larch_hill_order(paper: Paperwork) -> None:
    """Length + 25, width + 6, a quarter over: 4 stiles, 2 each of the rails, 12 panel boards."""
    lots = {float(lot.thickness): lot for lot in paper.timber.lots}
    assert set(lots) == {40.0, 30.0, 14.5, 12.0}
    face = {
        40.0: 4 * (2126 + 25) * (120 + 6)
        + 2 * (784.5 + 25) * ((120 + 6) + (90 + 6) + (150 + 6) + (240 + 6)),
        # 6 boards a panel of the 140 stock: 134.9 and 6 over would be wider than it is.
        # They are planed to 28 + 2, and the panel to 28 when it is glued.
        30.0: 2 * 6 * (485 + 25) * 140,
        14.5: 16 * (784.5 + 25) * (12 + 6) + 16 * (521 + 25) * (12 + 6),
        12.0: 20 * (90 + 25) * (60 + 6),
    }
    sawn = {40.0: 2.0, 30.0: 1.5, 14.5: 1.0, 12.0: 0.75}
    for thick, lot in lots.items():
        assert float(lot.face) == pytest.approx(face[thick], rel=1e-12)
        assert float(lot.volume) == pytest.approx(face[thick] * thick * 1.25 / 1e9, rel=1e-12)
        assert float(lot.sawn) == pytest.approx(sawn[thick] * INCH)
        counted = max(sawn[thick], 1.0)
        feet = face[thick] / INCH**2 * counted / 144 * 1.25
        assert float(lot.board_feet) == pytest.approx(feet, rel=1e-12)
    # 0.1047 + 0.0321 + 0.0071 + 0.0023 m3; 56.4 + 17.3 + 5.3 + 2.0 board feet.
    assert float(paper.timber.volume) == pytest.approx(0.1462, abs=5e-5)
    assert float(paper.timber.board_feet) == pytest.approx(80.9, abs=0.05)
    (boards,) = lots[30.0].blanks
    assert (boards.pieces, int(boards.number)) == (2, 12)
    assert "little is left for jointing" in boards.note
    assert float(lots[40.0].longest) == 2151


def test_every_part_of_timber_is_ordered_once(job: Job, paper: Paperwork) -> None:
    assert job.assembly is not None
    made = [p for p in job.assembly.parts if not p.supplied and p.material.look == "timber"]
    ordered = {blank.mark: blank.pieces for lot in paper.timber.lots for blank in lot.blanks}
    assert sum(ordered.values()) == len(made)
    assert set(ordered) == {p.mark for p in made}


def test_stock_that_leaves_enough_for_jointing_is_ordered_narrower(edited: Edited) -> None:
    """From 200 stock: ceil(809.5 / 200) = 5 boards of 161.9, and 6 over is less than 200."""
    paper = paper_of(edited(("stock: 140", "stock: 200")))
    (glued,) = paper.panel_glue_ups
    assert int(glued.boards) == math.ceil(809.53 / 200) == 5
    boards = next(b for lot in paper.timber.lots for b in lot.blanks if b.mark == "P1")
    assert float(boards.width) == pytest.approx(809.5329 / 5 + 6, abs=1e-4)
    assert boards.note == "boards of a panel, which is planed to 28 when glued"
