"""The Mill Lane study's hinges, through the whole tool: places, pull, and an edge that clears."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

import pytest

from parametric.figures import Figure
from parametric.job import Job, check
from parametric.model import Shaped
from parametric.pack.numbers import figures
from tests.hardware.hung import INCH, POUND

DESIGN = Path(__file__).parents[2] / "examples/mill-lane-study/design.yaml"


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, user_house=False)


@pytest.fixture(scope="module")
def numbers(job: Job) -> Mapping[str, Figure]:
    assert job.resolved is not None
    return figures(job.resolved, job.loads)


@pytest.mark.parametrize("leaf", ["A", "B"])
def test_centres(numbers: Mapping[str, Figure], leaf: str) -> None:
    """81.375 - 7 - 2.25 = 72.125; 11 + 2.25 = 13.25; (72.125 + 13.25)/2 = 42.6875 in."""
    found = [
        float(numbers[f"leaf {leaf} / {word} hinge / centre"]) / INCH
        for word in ("top", "middle", "bottom")
    ]
    assert found == pytest.approx([72.125, 42.6875, 13.25], abs=1e-9)


def test_pull_on_the_top_hinge(numbers: Mapping[str, Figure]) -> None:
    """81.5 * (29.8125/2)/(72.125 - 13.25) = 20.6 lb; the leaf's own weight comes to 81.6."""
    weight = float(numbers["leaf A / weight estimate"]) / POUND
    assert weight == pytest.approx(81.5, abs=0.1)
    found = float(numbers["leaf A / hinges / pull on the top hinge"]) / POUND
    assert found == pytest.approx(weight * (29.8125 / 2) / (72.125 - 13.25), abs=1e-9)
    assert found == pytest.approx(20.6, abs=0.06)


def test_planed_edges_ask_for_no_gap_and_nothing_binds(
    job: Job, numbers: Mapping[str, Figure]
) -> None:
    """Square, 0.0513 of the 1/8; planed 3 deg, 0.092 comes off the far corner and it needs none."""
    assert float(numbers["leaf A / gap that the closing edge needs"]) == 0.0
    assert float(numbers["leaf A / bevel across the edge"]) / INCH == pytest.approx(
        0.0917, abs=5e-5
    )
    assert not {p.code for p in job.problems} & {"leaf_binds", "heel_binds"}


def test_mortises_stand_in_both_hinge_stiles_alike(job: Job) -> None:
    """Each as long as its hinge, 4-1/2, from the same heights, whichever way the stile is turned."""
    assert job.assembly is not None
    found = {}
    for part in job.assembly.parts:
        cuts = [c for c in part.cuts if isinstance(c, Shaped) and c.name == "hinge mortise"]
        if cuts:
            found[part.name] = [
                (round(min(v.x for v in c.outline), 6), round(max(v.x for v in c.outline), 6))
                for c in cuts
            ]
    assert sorted(found) == ["leaf A / left stile", "leaf B / right stile"]
    one, other = found.values()
    assert one == other
    assert [high - low for low, high in one] == pytest.approx([4.5 * INCH] * 3)
