"""Drawers where they stand: behind their fronts, on what they run on, clear of all else as they open.

The press of `tests/rules/chest.yaml`: three drawers of 220 at the foot of a case 753 clear.
"""

from __future__ import annotations

import math
from pathlib import Path

import pytest

from parametric.job import Job, check
from tests.rules.test_every_rule import HOUSE, written

CHEST = Path(__file__).parents[1] / "rules/chest.yaml"
SLIDES = "slides: 12.7,"
WAYS = {
    "side slides": {SLIDES: "slides: 12.7, joint: half-blind dovetail,"},
    "under slides": {SLIDES: "kind: under slides, joint: box,"},
    "wooden runners": {
        SLIDES: "kind: wooden runners, kicker: 30 x 12, joint: rebate,",
        "height: 160": "height: 150",
    },
}


SETS = {"shop/drawings", "shop/bench", "shop/labels", "order/hardware", "cnc/set-ups"}
"""Where drawers are drawn."""


def job_of(tmp_path: Path, way: str) -> Job:
    job = check(written(tmp_path, WAYS[way], CHEST), house=HOUSE, user_house=False)
    assert not [p.message for p in job.problems if p.level == "stop"]
    assert not [p.message for p in job.problems if "drawer" in p.code or "runner" in p.code]
    return job


@pytest.mark.kernel
@pytest.mark.parametrize("way", WAYS)
def test_drawers_stand_clear_shut_and_open(tmp_path: Path, way: str) -> None:
    from parametric.solids.clash import clashes_in_all_states, touching
    from parametric.solids.solid_set import build_solids

    assembly = job_of(tmp_path, way).assembly
    assert assembly is not None
    solids = build_solids(assembly.parts)
    assert clashes_in_all_states(assembly, solids) == ()
    shut = assembly.states[0]
    for leaf in "CDE":
        near = touching(assembly, shut, solids, f"leaf {leaf} / drawer / box front")
        assert f"leaf {leaf} / bottom rail" in near
        if way != "wooden runners":
            continue
        runner = f"cabinet press / leaf {leaf} / left runner"
        assert {"cabinet press / left side", f"leaf {leaf} / drawer / left side"} <= set(
            touching(assembly, shut, solids, runner)
        )


def test_a_box_goes_with_its_front_and_runners_stay(tmp_path: Path) -> None:
    assembly = job_of(tmp_path, "wooden runners").assembly
    assert assembly is not None
    of = {part.name: group.name for group in assembly.groups for part in group.parts}
    assert of["leaf D / drawer / bottom"] == "leaf D"
    assert of["cabinet press / leaf D / right kicker"] == "cabinet press"
    runners = [name for name in of if name.endswith(("runner", "kicker"))]
    assert len(runners) == 3 * 4


def test_slides_are_ordered(tmp_path: Path) -> None:
    """Three pairs of 550."""
    from parametric.trade.hardware_for_slides import hardware_for_slides, on_slides
    from parametric.trade.printed import printed

    job = job_of(tmp_path, "side slides")
    assert job.resolved is not None
    (slides,) = hardware_for_slides(on_slides(job.resolved, job.loads), printed(job.resolved))
    assert (float(slides.number), slides.length) == (3.0, 550)


def test_one_cases_fronts_have_its_own_drawers(tmp_path: Path) -> None:
    """Beside a second press, each has three; narrowed to one, three."""
    from parametric.trade.hardware_for_slides import on_slides
    from parametric.trade.loads import loads_of

    two = {
        "left to right: [cabinet press: 789,": "left to right: [cabinet press: 389, "
        "cabinet press: 389,",
        **WAYS["side slides"],
    }
    job = check(written(tmp_path, two, CHEST), house=HOUSE, user_house=False)
    assert job.resolved is not None
    assert len(on_slides(job.resolved, job.loads)) == 6
    for door in job.resolved.doors:
        assert len(on_slides(job.resolved.of(door), loads_of(door, job.loads))) == 3


@pytest.mark.parametrize("way", WAYS)
def test_every_sheet_of_a_press_with_drawers_is_clean(tmp_path: Path, way: str) -> None:
    """Boxes are drawn part by part: neither the leaves' sheets nor the plan of hinges show them."""
    from parametric.cnc.setups import set_ups
    from parametric.drawing.audit import audit
    from parametric.drawing.drawings import draw
    from parametric.drawing.primitives import Label
    from parametric.drawing.sheet import primitives
    from parametric.pack.machine_pictures import machine_work
    from parametric.trade.paperwork import paperwork
    from parametric.trade.printed import printed

    job = job_of(tmp_path, way)
    assert job.resolved is not None
    assert job.assembly is not None
    router = job.resolved.shop.router
    drawn = draw(
        job.resolved,
        job.assembly,
        job.loads,
        job.problems,
        mark="0123-4567",
        paper=paperwork(job.resolved, job.assembly, job.loads),
        machine=machine_work(
            job.assembly, set_ups(job.assembly, router.cutters), printed(job.resolved).fine
        ),
    )
    found = [
        (f.sheet, f.fault, f.what)
        for own in drawn.sets
        if own.file in SETS
        for sheet in own.sheets
        for f in audit(sheet)
    ]
    assert found == []
    assert {own.file for own in drawn.sets} >= SETS
    leaves = [s for s in drawn.sheets if s.title is not None and s.title.document == "Leaves"]
    # the cut list of the job stands on the first of them
    _, *drawers = leaves
    said = {
        p.text for s in drawers for e in s.elements for p in primitives(e) if isinstance(p, Label)
    }
    assert "R3" in said
    assert not any(text.startswith("W") and text[1:].isdigit() for text in said)


def test_boxes_of_the_same_pieces_are_glued_up_together(tmp_path: Path) -> None:
    """hypot(727.6, 550) = 912.08 across. Without a height each box takes what room there is."""
    from parametric.trade.bench_order import shop_order
    from parametric.trade.paperwork import paperwork

    job = job_of(tmp_path, "side slides")
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    (one,) = paper.drawer_glue_ups
    assert [box.name for box in one.boxes] == [f"leaf {leaf} / drawer" for leaf in "CDE"]
    assert float(one.diagonal) == pytest.approx(math.hypot(727.6, 550))
    assert "diagonals 912" in " ".join(one.steps)
    steps = shop_order(paper, job.assembly)
    assert [step.marks for step in steps if step.work == "Glue up 3 drawer boxes"] == [one.marks]
    stick = [step for step in steps if "story stick" in step.work]
    assert not any(mark.startswith("W") for step in stick for mark in step.marks)
    free = check(written(tmp_path, {" height: 160,": ""}, CHEST), house=HOUSE, user_house=False)
    assert free.resolved is not None
    assert free.assembly is not None
    lots = paperwork(free.resolved, free.assembly, free.loads).drawer_glue_ups
    # 223 of room for the two upper ones, 205 over the bottom; less 12 below and 6 above
    assert [(len(lot.boxes), float(lot.box.height)) for lot in lots] == [(2, 205.0), (1, 187.0)]
