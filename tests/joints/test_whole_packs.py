"""Whole packs of the kinds of panels and joints: built, read back, and every sheet as it should be.

`build` raises where a file of the pack does not say what the design says; what the audit of the
sheets finds, a text crossed, covered or without room, stands in `numbers.json`.
"""

from __future__ import annotations

import csv
import json
from pathlib import Path

import pytest

from parametric.job import Built, build
from tests.infill.filled import filled

pytestmark = pytest.mark.kernel

HERE = Path(__file__).parent
TONGUED = (
    "kind: flat, thickness: 20, groove: 10.2 x 15, clearance: 1, tongue: 10 x 17, back rebate: 4"
)
BOARD = "kind: board, board: fibreboard, thickness: 9, groove: 9 x 12, clearance: 1"


def audited(built: Built) -> list[str]:
    """What the audit found on any sheet, or on the proposal."""
    numbers = json.loads((built.folder / "numbers.json").read_text(encoding="utf-8"))
    checked = numbers["verification"]
    assert checked["sheets"]["sheets"] > 10
    return [*checked["sheets"]["findings"], *checked["proposal"]["findings"]]


@pytest.mark.parametrize("panel", [TONGUED, BOARD], ids=["tongued", "board"])
def test_a_hinged_door_with_two_panels(panel: str, tmp_path: Path) -> None:
    design = tmp_path / "design.yaml"
    design.write_text(filled(panel), encoding="utf-8")
    built = build(design, out=tmp_path / "pack", user_house=False)
    assert audited(built) == []
    listed = (built.folder / "order/cut-list.csv").read_text(encoding="utf-8")
    rows = [row for row in csv.DictReader(listed.splitlines()) if row["part"].endswith("panel")]
    assert {row["material"] for row in rows} == {
        "fibreboard" if panel == BOARD else "white oak",
    }
    assert (built.folder / "order/boards.csv").exists() == (panel == BOARD)


def test_a_cupboards_door_on_stub_tenons_in_inches(tmp_path: Path) -> None:
    built = build(HERE / "cupboard-door.yaml", out=tmp_path / "pack", user_house=False)
    assert audited(built) == []
    listed = (built.folder / "order/cut-list.csv").read_text(encoding="utf-8")
    sizes = {
        row["part"]: (row["length"], row["width"]) for row in csv.DictReader(listed.splitlines())
    }
    # 21.0625 - 2*2.25 + 2*0.375 = 17.3125; less 2*0.0625 the panel is 17.1875, and 19.4375 high.
    assert sizes["top rail"] == ("17-5/16", "2-1/4")
    assert sizes["board panel"] == ("19-7/16", "17-3/16")
    assert not list((built.folder / "cnc").glob("T*"))
