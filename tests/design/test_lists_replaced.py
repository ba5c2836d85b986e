"""A list that is written replaces the other shape of list that came with `like`."""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.cases.cabinet import CabinetSpec
from parametric.design import load
from parametric.job import check

KITCHEN = (Path(__file__).parents[2] / "templates/kitchen run.yaml").read_text(encoding="utf-8")
SINK = "  top to bottom:\n    - door pair: rest\n\ncabinet stores"


def cabinet(folder: Path, lines: dict[str, str], name: str) -> CabinetSpec:
    text = KITCHEN
    for old, new in lines.items():
        assert old in text, old
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    assert not [p.message for p in check(path, user_house=False).problems if p.level == "stop"]
    found = load(path, user_house=False)
    assert found.design is not None
    block = found.design.block("cabinet", name)
    assert isinstance(block, CabinetSpec)
    return block


def test_bays_replace_the_fronts_of_one_bay(tmp_path: Path) -> None:
    bays = "  left to right:\n    - door: equal\n    - door: equal\n\ncabinet stores"
    sink = cabinet(tmp_path, {SINK: bays}, "sink")
    assert sink.top_to_bottom is None
    assert [bay.word for bay in sink.bays] == ["door", "door"]
    # what is no list came with `like` as before
    assert sink.drawer_leaf == "front"


def test_the_fronts_of_one_bay_replace_bays(tmp_path: Path) -> None:
    sink = cabinet(tmp_path, {"  like: bank\n": "  like: stores\n"}, "sink")
    assert sink.left_to_right is None
    assert [front.kind for front in sink.fronts_of(sink.bays[0])] == ["door pair"]


def test_shelves_of_the_model_go_with_its_list(tmp_path: Path) -> None:
    model = "  drawer leaf: front\n  shelves: 1\n  top to bottom:\n    - open: rest\n    - drawer: 200\n"
    bank = (
        "  drawer leaf: front\n  top to bottom:\n    - drawer: 140\n    - drawer: equal\n"
        "    - drawer: equal\n"
    )
    bays = "  left to right:\n    - door: equal\n    - door: equal\n\ncabinet stores"
    sink = cabinet(tmp_path, {bank: model, SINK: bays}, "sink")
    assert sink.shelves is None


@pytest.mark.parametrize("own", ["  shelves: 2\n", "  inside: [shelf space: rest]\n"])
def test_both_in_one_block_are_still_two_lists(tmp_path: Path, own: str) -> None:
    bays = f"{own}  left to right:\n    - door: equal\n    - door: equal\n\ncabinet stores"
    path = tmp_path / "design.yaml"
    path.write_text(KITCHEN.replace(SINK, bays, 1), encoding="utf-8")
    assert [p.code for p in check(path, user_house=False).problems] == ["two_lists"]
