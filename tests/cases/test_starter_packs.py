"""Starters of cabinets as whole packs: every file reads back, and no sheet has a finding."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from parametric.job import build

TEMPLATES = Path(__file__).parents[2] / "templates"


@pytest.mark.kernel
@pytest.mark.parametrize("starter", ["bookcase", "bureau", "wall cupboard"])
def test_a_starter_builds_to_a_pack_that_says_what_the_design_says(
    starter: str, tmp_path: Path
) -> None:
    # a pack that does not read back as the design raises, and nothing is written
    built = build(TEMPLATES / f"{starter}.yaml", out=tmp_path / "pack", user_house=False)
    assert built.folder is not None, built.job.problems
    found = json.loads((built.folder / "numbers.json").read_text())["verification"]
    assert found["sheets"]["findings"] == []
    # what was read: the sheets of cabinets, boards and fronts, and every dimension on them
    assert found["drawings"]["drawings"] >= 5
    assert found["drawings"]["dimensions"] >= 30
