"""Cases put together and drawers in them, by hand, from the starter of a base cupboard.

996 wide, 860 high on a kick of 100, board 18, under two stretchers; over two doors two fronts 150 high.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.trade.bench_order import shop_order
from parametric.trade.case_glue_ups import case_glue_ups
from parametric.trade.drawer_places import drawer_places
from parametric.trade.paperwork import paperwork

STARTER = Path(__file__).parents[2] / "templates/base cupboard.yaml"


@pytest.fixture(scope="module")
def job() -> Job:
    return check(STARTER, user_house=False)


def test_the_diagonal_of_its_back(job: Job) -> None:
    """hypot(996, 860) = sqrt(992016 + 739600) = 1315.9."""
    assert job.resolved is not None
    assert job.assembly is not None
    (one,) = case_glue_ups(job.resolved, job.assembly)
    assert one.diagonal is not None
    assert float(one.diagonal) == pytest.approx(1315.9, abs=0.01)
    said = " ".join(one.steps)
    assert "both diagonals of the back 1316, alike within 1.5" in said
    # its partition stands between bottom and stretchers, so these three go together first
    assert "Partition C7 on C3, C4 and C5 first" in said
    assert "Kick board C6 between the sides, its face 60 behind their front edges" in said


def test_where_its_drawers_run(job: Job) -> None:
    """A front from 860 - 1.5 - 150 = 708.5 up; its room begins half a gap of 3 lower, at 707, and
    the box 12 over that, at 719; it is 842 - 719 - 6 = 117 high, its slides at 719 + 58.5 = 777.5.

    The bay is 18 to 489; 12.7 for a slide leaves the box from 30.7 on, 471 - 25.4 = 445.6 wide. The
    front begins at 1.5 and is (996 - 3 - 3)/2 = 495 wide: 29.2 past the box there, 20.2 at the middle.
    """
    assert job.resolved is not None
    left, right = drawer_places(job.resolved)
    assert (left.called, right.called) == ("A", "C")
    assert left.slides is not None
    assert left.covers is not None
    assert right.covers is not None
    found = (left.up, left.slides, left.covers.below, left.covers.left, left.covers.right)
    assert found == pytest.approx((719.0, 777.5, 10.5, 29.2, 20.2))
    assert (right.covers.left, right.covers.right) == pytest.approx((20.2, 29.2))


def test_the_order_of_work_puts_it_together_after_its_drawers(job: Job) -> None:
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    steps = [step.work for step in shop_order(paper, job.assembly)]
    banded, boxes, case, finish = (
        next(n for n, step in enumerate(steps) if step.startswith(words))
        for words in ("Band the edges", "Glue up 2 drawer boxes", "Put cabinet together", "Finish")
    )
    assert banded < boxes < case < finish
