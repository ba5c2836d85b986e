"""Every sheet of a pairwise door, and its proposal, stands clear: the audit finds nothing.

Every sixth door, in which each choice of the list stands; `make pairwise` holds the
sheets of all of them in their packs.
"""

from __future__ import annotations

import dataclasses
from pathlib import Path

import pytest

from parametric.cnc.setups import set_ups
from parametric.drawing import draw
from parametric.drawing.subject import subject
from parametric.job import check
from parametric.pack.machine_pictures import machine_work
from parametric.pack.preview import preview_page
from parametric.pack.proposal import proposal
from parametric.trade.fingerprint import fingerprint, mark
from parametric.trade.paperwork import paperwork
from parametric.trade.printed import printed
from parametric.writers.svg import write_svg
from tests.pairwise.cases import CASES, FACTORS, Case
from tests.pairwise.written import written

DRAWN = CASES[::6]


@pytest.mark.parametrize("case", DRAWN, ids=lambda case: ", ".join(case))
def test_its_sheets_stand_clear(case: Case, tmp_path: Path) -> None:
    """Numbers and drawings alone, no kernel: shop, bench, full size, orders, site, machine, client."""
    path = tmp_path / "design.yaml"
    path.write_text(written(case), encoding="utf-8")
    job = check(path, user_house=False)
    resolved, assembly = job.resolved, job.assembly
    assert resolved is not None
    assert assembly is not None
    whole = fingerprint(resolved, assembly)
    paper = paperwork(resolved, assembly, job.loads)
    made = set_ups(assembly, resolved.shop.router.cutters, resolved.shop.layers)
    drawings = draw(
        resolved,
        assembly,
        job.loads,
        job.own,
        mark=mark(whole),
        paper=paper,
        machine=machine_work(assembly, made, printed(resolved).fine),
    )
    assert len(drawings.sheets) > 10
    assert [str(finding) for finding in drawings.findings] == []
    page = preview_page(
        resolved,
        job.loads,
        fingerprint=whole,
        elevations=tuple(map(write_svg, drawings.elevations)),
        problems=job.own,
        paper=paper,
    )
    page = dataclasses.replace(page, job=resolved.design.whole_title)
    signed = proposal(subject(resolved, assembly, job.loads, job.own), page, paper)
    assert [str(finding) for finding in signed.findings] == []


def test_each_choice_is_drawn() -> None:
    for factor, choices in FACTORS.items():
        assert {getattr(case, factor) for case in DRAWN} == set(choices), factor
