"""Wooden runners: where they lie by hand, and a box that stands on them and touches nothing else."""

from __future__ import annotations

import pytest

from parametric.cases.drawer import DrawerBox
from parametric.cases.drawer_runners import DrawerRunners, size_runners
from parametric.cases.drawer_written import WoodenRunnersSpec
from parametric.figures import Figure
from parametric.model import Assembly, Group, Placement
from parametric.parts.drawer import drawer_parts
from parametric.parts.drawer_runners import runner_parts
from tests.cases.drawers import CUTTERS, SHUT, box_of


def runners(box: DrawerBox, pack: float = 0.0) -> DrawerRunners:
    spec = box.written
    assert isinstance(spec, WoodenRunnersSpec)
    return size_runners(
        spec, box, name="cabinet base / drawer 1", pack=Figure(pack), stuff=box.stuff
    )


def test_runners_by_hand() -> None:
    """Strips of 30 x 20 under a box that stands 20 up: from 0 to 20; 562 - 20 = 542 long.

    A kicker 2 over sides 160 high: 20 + 160 + 2 = 182. Behind a face frame of 25 the runner is
    30 + 25 = 55 wide, and a guide 25 thick fills up to the frame.
    """
    box = box_of(kind="wooden runners", kicker="30 x 12")
    plain = runners(box)
    assert (float(plain.runner.foot), float(plain.runner.width), float(plain.length)) == (
        0,
        30,
        542,
    )
    assert plain.guide is None
    assert plain.kicker is not None
    assert float(plain.kicker.foot) == 182
    framed = runners(box, 25.0)
    assert float(framed.runner.width) == 55
    assert framed.guide is not None
    assert (float(framed.guide.thickness), float(framed.guide.foot)) == (25, 20)


def assembly(pack: float) -> tuple[DrawerBox, Assembly]:
    box = box_of(kind="wooden runners", kicker="30 x 12")
    at = Placement(origin=(float(box.room_beside), 0.0, float(box.foot)))
    parts = (*drawer_parts(box, at=at, cutters=CUTTERS), *runner_parts(runners(box, pack)))
    group = Group(name="drawer", placement=Placement(), parts=parts)
    return box, Assembly(name="a drawer", groups=(group,), states=(SHUT,))


@pytest.mark.kernel
@pytest.mark.parametrize("pack", [0.0, 25.0])
def test_the_box_stands_on_its_runners(pack: float) -> None:
    """Sides 15 wide lie on them from 20 back to 550: 15 x 530; guides stand 1 off the box."""
    from parametric.solids.clash import clashes, contact_area, gap, standing
    from parametric.solids.solid_set import build_solids

    _, whole = assembly(pack)
    solids = build_solids(whole.parts)
    assert clashes(whole, SHUT, solids) == ()
    found = {piece.part.name.rpartition(" / ")[2]: piece for piece in standing(whole, SHUT)}
    for side in ("left", "right"):
        box_side = found[f"{side} side"]
        area = contact_area(box_side, found[f"{side} runner"], solids)
        assert area == pytest.approx(15 * 530, rel=1e-6)
        assert gap(box_side, found[f"{side} kicker"], solids) == pytest.approx(2.0)
        if pack:
            assert gap(box_side, found[f"{side} guide"], solids) == pytest.approx(1.0)
            guided = contact_area(found[f"{side} guide"], found[f"{side} runner"], solids)
            assert guided == pytest.approx(25 * 542, rel=1e-6)
