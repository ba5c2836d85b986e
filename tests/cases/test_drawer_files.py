"""Drawer boxes through every file: machine files and lists, models, each read back by other code."""

from __future__ import annotations

import functools
from fractions import Fraction

import pytest

from parametric.model import Assembly, Groove
from parametric.pack.verifying.known import Known
from parametric.pack.verifying.model_glb import check_glb
from parametric.pack.verifying.model_step import check_step
from parametric.pack.verifying.rebuilt import check_cutting
from parametric.trade.groove_ends import runs_out
from tests.cases.drawers import JOINTS, assembly_of, box_of
from tests.verify.lopsided import FINGERPRINT, cutting

BOXES = [(joint, kind) for joint in JOINTS for kind in ("side slides", "under slides")]


@functools.cache
def assembly(joint: str, kind: str) -> Assembly:
    return assembly_of(box_of(joint=joint, kind=kind))


def known(made: Assembly) -> Known:
    return Known(
        assembly=made,
        figures={},
        opening=(),
        fingerprint=FINGERPRINT,
        unit="mm",
        wood_step=Fraction(1, 2),
        fine_step=Fraction(1, 10),
    )


@pytest.mark.parametrize(("joint", "kind"), BOXES)
def test_machine_files_and_bench_lists_say_every_cut(joint: str, kind: str) -> None:
    made = assembly(joint, kind)
    verdict = check_cutting(cutting(made), known(made))
    assert verdict.faults == ()
    cuts = {p.mark: len(p.cuts) for p in made.parts if not p.supplied}
    assert verdict.looked_at["outlines"] + verdict.looked_at["saw and bench cuts"] >= sum(
        cuts.values()
    )


def test_a_routed_groove_that_runs_into_a_rebate_is_square_there() -> None:
    """A side let into the front and tailed behind: its groove is open in the rebate, round in the tail."""
    made = assembly_of(box_of(joint="rebate", back_joint="through dovetail"))
    assert check_cutting(cutting(made), known(made)).faults == ()
    (side,) = (p for p in made.parts if p.name.endswith("left side"))
    groove = next(cut for cut in side.cuts if isinstance(cut, Groove))
    assert groove.making.by == "router"
    assert runs_out(groove, side.blank, side.cuts) == (True, False)


@pytest.mark.kernel
@pytest.mark.parametrize(("joint", "kind"), BOXES)
def test_models_read_back(joint: str, kind: str) -> None:
    from parametric.solids.solid_set import build_solids
    from parametric.writers.glb import write_glb
    from parametric.writers.step import write_step

    made = assembly(joint, kind)
    solids = build_solids(made.parts)
    assert check_glb(write_glb(made, solids), known(made)).faults == ()
    assert check_step(write_step(made, solids), known(made)).faults == ()
