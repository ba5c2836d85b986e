"""What cases are held by and what their shelves lie on, counted by hand."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from parametric.job import check
from parametric.trade.hardware_item import HardwareItem
from parametric.trade.hardware_list import hardware_list

EXAMPLES = Path(__file__).parents[2] / "examples"
HOUSE = Path(__file__).parents[2] / "examples/house.yaml"


@cache
def items(text: str, folder: Path) -> dict[str, HardwareItem]:
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, house=HOUSE, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    return {item.what: item for item in hardware_list(job.resolved, job.loads)}


FEN_ROAD = (EXAMPLES / "fen-road-wardrobe/design.yaml").read_text(encoding="utf-8")


def test_the_wardrobe_is_dowelled(tmp_path: Path) -> None:
    """Three cases, bottom and top, both ends, 6 of 580: 3 x 4 x 6 = 72."""
    found = items(FEN_ROAD, tmp_path)["case dowel"]
    assert (found.number, found.size, found.length) == (72, "8 × 30", 30)


def test_four_pins_a_shelf(tmp_path: Path) -> None:
    """3 + 2 + 3 shelves: 32 pins, whose stems go 13 deep."""
    found = items(FEN_ROAD, tmp_path)["shelf pin"]
    assert (found.number, found.size) == (32, "5 dia")
    assert found.asked == "its stem no longer than 13"


def test_it_may_be_screwed(tmp_path: Path) -> None:
    """As many, and 4 of head, 7 of shank, 5 of thread."""
    text = FEN_ROAD.replace("  kind: frameless\n", "  kind: frameless\n  corners: screw\n", 1)
    found = items(text, tmp_path)
    assert "case dowel" not in found
    screw = found["one-piece carcass screw"]
    assert (screw.number, screw.size) == (72, "7 × 50")
    assert screw.asked == "stepped: head 10, shank 7, thread to cut into a hole of 5"


def test_it_may_be_screwed_through_pockets(tmp_path: Path) -> None:
    """As many, 32 long in boards of 18."""
    text = FEN_ROAD.replace(
        "  kind: frameless\n", "  kind: frameless\n  corners: pocket screw\n", 1
    )
    found = items(text, tmp_path)["pocket screw"]
    assert (found.number, found.size) == (72, "4 × 32")
    assert found.asked == "pan head, to sink into pockets of 9.5; no hole before it"


def test_it_may_be_held_by_loose_tenons(tmp_path: Path) -> None:
    """As many as dowels: 580 takes steps of 96 for both, which leave 64 between slots of 32."""
    text = FEN_ROAD.replace("  kind: frameless\n", "  kind: frameless\n  corners: loose tenon\n", 1)
    found = items(text, tmp_path)
    assert "case dowel" not in found
    tenon = found["loose tenon"]
    assert (tenon.number, tenon.size, tenon.length) == (72, "6 × 30 × 30", 30)
    assert tenon.asked == "beech, its edges rounded, to slots 32 long"
