"""Random cabinets whose fronts are matched: every set in order out of its blank, and nothing else moved."""

from __future__ import annotations

import re
from fractions import Fraction

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from parametric.figures import named
from parametric.pack.verifying.cutting_plan import PLAN, check_cutting_plan
from parametric.pack.verifying.known import Known
from parametric.problems import stops
from parametric.resolve.matched_fronts import matched_sets
from parametric.trade.cutting_tables import cutting_table
from parametric.trade.printed import printed
from parametric.trade.sheet_order import board_order
from parametric.trade.stock.blanks import SheetPiece, in_order
from parametric.trade.stock.sheet_plan import SheetStock
from parametric.writers.csv import write_csv
from tests.invariants.casework import casework
from tests.invariants.test_casework import checked
from tests.stock.replay import faults_of_sheets


@settings(max_examples=15, suppress_health_check=[HealthCheck.too_slow])
@given(casework(), st.sampled_from(["up", "across"]))
def test_matched_fronts_keep_together_and_change_no_size(text: str, way: str) -> None:
    level = ", grain: level" if way == "across" else ""
    plain = text.replace("panel: {kind: board", f"panel: {{kind: board{level}", 1)
    matched = re.sub(r"(?m)^(cabinet.*:)$", rf"\1\n  fronts matched: {way}", plain)
    before, job = checked(plain), checked(matched)
    assert bool(stops(before.problems)) == bool(stops(job.problems))
    if job.resolved is None or stops(job.problems):
        return
    assert job.assembly is not None
    assert before.assembly is not None
    sizes = [
        [(p.name, p.blank, p.placement) for p in one.parts]
        for one in (before.assembly, job.assembly)
    ]
    assert sizes[0] == sizes[1]
    sets = matched_sets(job.resolved.doors)
    panels = [panel.name for own in sets for panel in own.panels]
    assert len(panels) == len(set(panels))
    assert {p.name for p in job.assembly.parts if p.matched} == set(panels)
    lots = board_order(job.resolved, job.assembly)
    blanks = [one for lot in lots for one in lot.matched]
    told = [p for p in job.problems if p.code == "match_breaks_off"]
    assert bool(told) == (
        sum(len(one.rows) for one in blanks) < sum(len(o.rows) for o in sets)
        or (len(blanks) > len(sets))
    )
    for lot in lots:
        own = [piece for one in lot.matched for piece in in_order(one.piece.rows)]
        known = {piece.mark for piece in own}
        others = [
            SheetPiece(
                mark=r.mark,
                length=float(r.length),
                width=float(r.width),
                count=r.number,
                turns=True,
            )
            for r in lot.pieces
            if r.mark not in known
        ]
        sheet = SheetStock(
            length=float(lot.sheet_length), width=float(lot.sheet_width), trim=float(lot.trim)
        )
        found = faults_of_sheets(lot.plan, [*own, *others], sheet, (), float(lot.kerf))
        # a part of a run may be sawn in lengths, which its row does not say
        assert [
            fault for fault in found if "made {" not in fault and "another size" not in fault
        ] == []
    table = cutting_table(lots, printed(job.resolved))
    reader = Known(
        assembly=job.assembly,
        figures={"saw kerf": named("saw kerf", job.resolved.shop.saw.kerf)},
        opening=(),
        fingerprint="",
        unit=job.resolved.design.unit,
        wood_step=Fraction(1, 2),
        fine_step=Fraction(1, 10),
    )
    plan = write_csv(table.header, table.rows)
    assert check_cutting_plan({PLAN: plan}, reader).faults == ()
