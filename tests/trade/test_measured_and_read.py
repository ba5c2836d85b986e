"""What is measured before glass is ordered, and read off data sheets before hardware is."""

from __future__ import annotations

import math

import pytest

from parametric.figures import Figure
from parametric.trade.data_sheets import ToRead
from parametric.trade.paperwork import Paperwork
from tests.trade.conftest import Edited, paper_of


def needed(paper: Paperwork) -> dict[tuple[str, str], str]:
    return {(own.of, own.what): own.needed for own in paper.data_sheets}


def test_how_far_diagonals_may_differ(paper: Paperwork, numbers: dict[str, Figure]) -> None:
    """Clearance 3 a side: 6, less 1/16 in of tolerance, less the 3 that are kept: 1.4125 over.

    On 784.5 x 521, diagonal 941.75: 2 x 521 x 1.4125 / 941.75 = 1.563.
    """
    opening = paper.glazing.openings[0]
    over = 6 - 25.4 / 16 - 3
    assert math.hypot(784.5, 521) == pytest.approx(941.75, abs=0.01)
    assert float(opening.diagonals) == pytest.approx(2 * 521 * over / 941.75, abs=1e-3)
    assert float(opening.diagonals) == pytest.approx(1.563, abs=1e-3)
    assert numbers["leaf A / lite 1 / diagonals may differ"] == opening.diagonals


def test_a_pane_still_goes_in_where_the_diagonals_differ_that_much(paper: Paperwork) -> None:
    """By corners: an opening slanted until its diagonals differ by the limit, at its drawn sizes.

    The pane at the top of its tolerance, with half its clearance round it, stands level on the
    sill; its upper corner must not pass the slanted side.
    """
    for opening in paper.glazing.openings:
        width, height = float(opening.width), float(opening.height)
        low, high = 0.0, 50.0
        for _ in range(80):
            slant = (low + high) / 2
            differ = math.hypot(width + slant, height) - math.hypot(width - slant, height)
            low, high = (slant, high) if differ < float(opening.diagonals) else (low, slant)
        free = width - high
        assert free >= float(opening.least_width) - 1e-6


def test_what_is_too_tight_leaves_the_diagonals_nothing(edited: Edited) -> None:
    """1 of clearance is less than the pane's own tolerance of 1.6."""
    paper = paper_of(edited(("clearance: 3}", "clearance: 1}")))
    assert {float(opening.diagonals) for opening in paper.glazing.openings} == {0.0}


def test_the_mark_keeps_clear_of_the_stops(paper: Paperwork, edited: Edited) -> None:
    """Stops 12 wide over a clearance of 3 cover 9."""
    assert "clear of the 9 at each edge" in paper.glazing.stamp
    ordinary = paper_of(edited(("kind: toughened", "kind: ordinary")))
    assert ordinary.glazing.stamp == ""


def test_weights_stand_beside_what_hangers_carry(paper: Paperwork, edited: Edited) -> None:
    """35.8 kg by the larger weight over two hangers; no rating is made up."""
    assert [own.leaf for own in paper.carried] == ["leaf A", "leaf B"]
    first = paper.carried[0]
    assert float(first.mass) == pytest.approx(2 * float(first.each))
    assert float(first.each) == pytest.approx(17.9, abs=0.05)
    assert first.rated is None
    rated = paper_of(edited(("bearing: 60}", "bearing: 60, carries: 40 kg}")))
    assert rated.carried[0].rated == 40.0


def test_data_sheets_are_read_for_what_the_design_needs(paper: Paperwork) -> None:
    assert needed(paper) == {
        ("hanger", "carries, each"): "17.9 kg or more",
        ("hanger", "heaviest leaf of the set"): "35.8 kg or more, on 2 hangers",
        ("hanger", "thickness of leaf it takes"): "40",
        ("hanger", "height adjustment, either way"): "2 or more",
        ("bracket", "middle of the track off the wall"): "86 and 34",
        ("bracket", "top of the leaf up to the screw"): "to be written on the install sheet",
        ("bracket", "bearing below the screw"): "60 or more",
        ("bracket", "its thickness"): "added to a screw of 50.5",
        ("bracket", "pull that its screw holds"): "0.252 kN or more",
        ("bracket", "how far apart at most"): "400 or more",
        ("floor guide", "thickness, and height in the groove"): "under 9, under 18",
        ("floor guide", "length along the leaf"): "120 or less",
    }


def test_what_was_not_measured_asks_for_no_number(edited: Edited) -> None:
    paper = paper_of(
        edited(
            ("board over fixing: 12.5", "board over fixing: not measured"), (", bearing: 60", "")
        )
    )
    asked = needed(paper)
    assert asked["bracket", "bearing below the screw"].startswith("not written")
    assert ("bracket", "its thickness") not in asked
    assert ("bracket", "pull that its screw holds") not in asked
    assert all(isinstance(own, ToRead) and own.needed for own in paper.data_sheets)


def test_the_largest_piece_is_a_leaf(paper: Paperwork) -> None:
    assert paper.delivery.largest in paper.delivery.items
    assert [float(side) for side in paper.delivery.largest.sizes] == [1024.5, 2102.0, 40.0]


def test_seasons_and_yearly_checks(paper: Paperwork, edited: Edited) -> None:
    """803.53 x 0.00289 x 5 = 11.61 mm (brief); without a panel nothing is said of one."""
    assert paper.care.movement is not None
    assert float(paper.care.movement) == pytest.approx(11.61, abs=0.005)
    assert "11.6 larger" in paper.care.seasons[0]
    assert len(paper.care.checks) == 5
    bare = paper_of(edited(("    - panel: 460\n", "    - lite: 460\n")))
    assert bare.care.movement is None
    assert not any("panel" in line.lower() for line in bare.care.seasons)
