"""What must be true of the paper of every sound design, tried on random ones."""

from __future__ import annotations

import pytest
from hypothesis import given, settings

from parametric.figures import Figure
from parametric.model import Assembly
from parametric.pack.numbers import figures
from parametric.trade.cutlist import cut_list, of_timber
from parametric.trade.order_tables import (
    finish_table,
    glass_gate_table,
    glazing_table,
    hardware_table,
    timber_table,
    timber_totals,
)
from parametric.trade.paperwork import Paperwork
from parametric.trade.printed import printed
from parametric.trade.site_tables import delivery_table, fixing_table, pane_table, work_table
from parametric.writers.csv import write_csv
from tests.invariants.designs import bypass_designs
from tests.invariants.test_invariants import checked, sound
from tests.trade.conftest import paper_of


@settings(max_examples=50)
@given(bypass_designs())
def test_paper_of_every_sound_design(text: str) -> None:
    job = checked(text)
    found = sound(job)
    if found is None:
        return
    resolved, assembly = found
    paper = paper_of(job)
    _cuts_have_their_settings(assembly, paper)
    _passes_make_their_groove(paper)
    _orders_are_the_cut_list(assembly, paper)
    _names_are_whole(figures(resolved, job.loads, paper))
    said = printed(resolved)
    for table in (
        timber_table(paper.timber, said),
        timber_totals(paper.timber, said),
        hardware_table(paper.hardware, said),
        finish_table(paper.finish),
        glazing_table(paper.glazing, said),
        glass_gate_table(paper.glazing, said),
        delivery_table(paper.delivery, said),
        fixing_table(paper.install, said),
        work_table(paper.install),
        pane_table(paper.care, said),
    ):
        assert write_csv(table.header, table.rows).endswith(b"\r\n")


def _cuts_have_their_settings(assembly: Assembly, paper: Paperwork) -> None:
    asked = {
        (part.name, index)
        for part in assembly.parts
        if not part.supplied and part.material.look != "glass"
        for index in range(len(part.cuts))
    }
    assert {cut for s in paper.milling for run in s.runs for cut in run.covers} == asked
    codes = [setting.code for setting in paper.milling]
    assert len(set(codes)) == len(codes)


def _passes_make_their_groove(paper: Paperwork) -> None:
    for setting in paper.milling:
        if setting.kind != "groove" or setting.cutter is None or setting.width is None:
            continue
        left = float(setting.fence[0]) - float(setting.cutter) / 2
        right = float(setting.fence[-1]) + float(setting.cutter) / 2
        assert right - left == pytest.approx(float(setting.width))


def _orders_are_the_cut_list(assembly: Assembly, paper: Paperwork) -> None:
    rows = of_timber(cut_list(assembly))
    ordered = {b.mark: b.pieces for lot in paper.timber.lots for b in lot.blanks}
    assert ordered == {row.mark: row.number for row in rows}
    # More is ordered than is made of it: the blanks hold their parts.
    made = sum(p.blank.volume for p in assembly.parts if p.material.look == "timber") / 1e9
    assert float(paper.timber.volume) > made
    assert float(paper.timber.sawn_volume) > float(paper.timber.volume)


def _names_are_whole(known: dict[str, Figure]) -> None:
    assert not any("," in name for name in known)
    assert all(figure.name == name for name, figure in known.items())
