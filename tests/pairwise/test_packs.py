"""Whole packs of the pairwise doors: every file is made, read back and held to the design.

The pack of a door takes some seconds, so these are run by `make pairwise` alone.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from parametric.job import build
from tests.pairwise.cases import CASES, Case
from tests.pairwise.written import written

pytestmark = [pytest.mark.kernel, pytest.mark.packs]


@pytest.mark.parametrize("case", CASES, ids=lambda case: ", ".join(case))
def test_its_pack_is_whole(case: Case, tmp_path: Path) -> None:
    """`build` raises where a file that is read back is not the design; no sheet has a finding."""
    path = tmp_path / "design.yaml"
    path.write_text(written(case), encoding="utf-8")
    built = build(path, out=tmp_path / "pack", user_house=False)
    assert [p.message for p in built.job.problems if p.level == "stop"] == []
    assert built.folder is not None
    for wanted in ("client/preview.html", "model", "shop", "cnc", "order", "site"):
        assert (built.folder / wanted).exists(), wanted
    verified = json.loads((built.folder / "numbers.json").read_text("utf-8"))["verification"]
    assert verified["sheets"]["sheets"] > 10
    assert verified["sheets"]["findings"] == []
    assert verified["proposal"]["findings"] == []
