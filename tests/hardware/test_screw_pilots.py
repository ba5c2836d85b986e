"""Pilots for a hinge's screws: seven or nine tenths of the thread's root, which is two thirds of them.

The sums follow the Wood Handbook's chapter on fastenings and the National Design Specification's
limit of a specific gravity of 0.6, both from memory.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.design.starters import templates
from parametric.figures import Figure
from parametric.hardware.butt_hinge import pilot_share
from parametric.job import check
from parametric.pack.numbers import figures
from tests.hardware.hung import butts, edge


@pytest.mark.parametrize(
    ("density", "share"),
    [(450.0, 0.7 * 2 / 3), (640.0, 0.7 * 2 / 3), (640.1, 0.6), (755.0, 0.6)],
)
def test_share_of_a_screw_by_the_wood(density: float, share: float) -> None:
    """9/10 of 2/3 is 6/10; exactly at the limit the wood is still light."""
    assert float(pilot_share(Figure(density, unit="kg/m3"))) == pytest.approx(share, abs=1e-12)


@pytest.mark.parametrize(("density", "drill"), [(450.0, 1.8666667), (755.0, 2.4)])
def test_drill_of_a_screw_of_four(density: float, drill: float) -> None:
    hinges = butts(edge(density=density), screw="4 x 30")
    assert hinges.screw is not None
    assert float(hinges.screw.pilot) == pytest.approx(drill, abs=1e-6)
    assert hinges.screw.pilot.name == "leaf A / hinges / screw pilot"


def starter(folder: Path, kind: str, *lines: tuple[str, str]) -> dict[str, Figure]:
    text = (templates() / f"{kind}.yaml").read_text(encoding="utf-8")
    for old, new in lines:
        assert old in text
        text = text.replace(old, new, 1)
    path = folder / "design.yaml"
    path.write_text(text, encoding="utf-8")
    job = check(path, user_house=False)
    assert job.resolved is not None, [p.message for p in job.problems]
    return figures(job.resolved, job.loads)


def test_a_folding_leafs_pivot_stands_where_it_is_written(tmp_path: Path) -> None:
    """A leaf (2402 - 12 - 6 - 8)/4 = 594; folded, each stack is 6 + 40 + 20 + 40 + 12 = 118; with
    the pivots 50 in it is 10 more, and 20 less are clear: 2402 - 2 x 128 = 2146.
    """
    usual = starter(tmp_path, "bifold")
    assert float(usual["pivot from the end of the leaf"]) == 40
    assert usual["pivot from the end of the leaf"].source == "common practice, no source"
    assert float(usual["clear way"]) == 2402 - 2 * 118
    found = starter(tmp_path, "bifold", ("  fold gap: 3", "  pivot in: 50\n  fold gap: 3"))
    assert float(found["pivot from the end of the leaf"]) == 50
    assert float(found["clear way"]) == 2402 - 2 * 128
