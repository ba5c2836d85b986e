"""Edge band: the brief's metres with the arithmetic, edges by kind, the order and its paper."""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from parametric.catalog.shop import Shop
from parametric.job import Job, check
from parametric.model import Assembly
from parametric.trade.edge_band import edge_bands
from parametric.trade.order_tables import edge_band_table
from parametric.trade.printed import printed

ROOT = Path(__file__).parents[2]
DESIGN = ROOT / "examples/fen-road-wardrobe/design.yaml"


@pytest.fixture(scope="module")
def job() -> Job:
    return check(DESIGN, house=ROOT / "examples/house.yaml", user_house=False)


def _of(job: Job) -> tuple[Shop, Assembly]:
    assert job.shop is not None
    assert job.assembly is not None
    return job.shop, job.assembly


def test_fronts_of_carcasses_take_what_the_brief_says(job: Job) -> None:
    """(6 x 2273 + 6 x 753 + 8 x 752) / 1000 = 24.172 m; 24.172 x 1.1 = 26.589 m, sold by the tenth."""
    (band,) = edge_bands(*_of(job))
    assert float(band.net) == pytest.approx((6 * 2273 + 6 * 753 + 8 * 752) / 1000)
    assert float(band.order) == pytest.approx(24.172 * 1.1)
    assert sum(edge.number for edge in band.edges) == 6 + 6 + 8
    assert job.resolved is not None
    rows = edge_band_table((band,), printed(job.resolved)).rows
    assert rows[-1][-2:] == ("24.17", "26.6")


def test_an_end_is_as_long_as_its_board_is_wide(job: Job) -> None:
    """Both ends of every back banded as well: 6 x 767 more, of another board by its thickness."""
    shop, assembly = _of(job)
    groups = tuple(
        dataclasses.replace(
            group,
            parts=tuple(
                dataclasses.replace(part, banded=("low end", "high end"))
                if part.noun == "back"
                else part
                for part in group.parts
            ),
        )
        for group in assembly.groups
    )
    thick, thin = edge_bands(shop, dataclasses.replace(assembly, groups=groups))
    assert (float(thick.thickness), float(thin.thickness)) == (18, 8)
    assert float(thin.net) == pytest.approx(6 * 767 / 1000)
    assert float(thick.net) == pytest.approx(24.172)


def test_boards_without_a_band_ask_for_none() -> None:
    doors = check(ROOT / "examples/larch-hill-reading-room/design.yaml", user_house=False)
    assert edge_bands(*_of(doors)) == ()
