"""Sheets of a design, drawn as the pack draws them."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from parametric.drawing import Drawings, draw
from parametric.drawing.sheet import Sheet
from parametric.job import check
from parametric.trade.paperwork import paperwork

ROOT = Path(__file__).parents[2]
LARCH_HILL = ROOT / "examples/larch-hill-reading-room/design.yaml"


def drawn(path: Path) -> Drawings:
    job = check(path, user_house=False)
    assert job.resolved is not None, job.problems
    assert job.assembly is not None
    return draw(
        job.resolved,
        job.assembly,
        job.loads,
        job.problems,
        mark="0123-4567",
        paper=None if job.exit_status else paperwork(job.resolved, job.assembly, job.loads),
        not_for_making=job.exit_status != 0,
    )


def sheet_of(drawings: Drawings, document: str) -> Sheet:
    """The first sheet of a kind."""
    return next(sheet for sheet in drawings.sheets if sheet.title.document == document)


@cache
def larch_hill() -> Drawings:
    return drawn(LARCH_HILL)
