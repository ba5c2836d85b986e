"""The machine files of Larch Hill, read back by a reader that shares nothing with the writer."""

from __future__ import annotations

import math
from functools import cache
from pathlib import Path

import pytest

from parametric.cnc.notes import Stamp
from parametric.cnc.operations import routed, squaring
from parametric.cnc.setups import file_cut, part_types, set_ups
from parametric.job import check
from parametric.model import Assembly, Groove, removed_volume
from parametric.writers.dxf import write_cnc_dxf
from tests.readers.cnc_dxf import MachineFile, read

DESIGN = Path(__file__).parents[2] / "examples/larch-hill-reading-room/design.yaml"
STAMP = Stamp(job="Larch Hill reading room", fingerprint="0123-4567", revision="B")


@cache
def assembly() -> Assembly:
    job = check(DESIGN, user_house=False)
    assert job.assembly is not None
    return job.assembly


@cache
def files() -> dict[str, MachineFile]:
    return {s.file: read(write_cnc_dxf(s, STAMP)) for s in set_ups(assembly(), (6.0, 8.0, 12.0))}


@pytest.mark.parametrize(
    ("file", "across"),
    [
        ("leaf-A-front.dxf", 60.0),
        ("leaf-B-front.dxf", 1024.5 - 60),
        # Turned over about the upright, the leaf's left is at the right.
        ("leaf-A-back.dxf", 1024.5 - 60),
        ("leaf-B-back.dxf", 60.0),
    ],
)
def test_pull_pockets_of_the_brief(file: str, across: float) -> None:
    """160.6*42.6 - (4 - pi)*6.3**2 = 6807.5; 150.6*32.6 - (4 - pi)*3.3**2 = 4900.2 mm2."""
    leaf = files()[file]
    assert (leaf.length, leaf.width) == (1024.5, 2102.0)
    (flange,) = leaf.on("pocket_d1.5")
    (body,) = leaf.on("pocket_d14.2")
    assert flange.area == pytest.approx(160.6 * 42.6 - (4 - math.pi) * 6.3**2, abs=1e-3)
    assert flange.area == pytest.approx(6807.5, abs=0.05)
    assert body.area == pytest.approx(4900.2, abs=0.05)
    for pocket in (flange, body):
        assert pocket.centre == pytest.approx((across, 988.0), abs=1e-6)
    assert len(leaf.removals) == 2


def test_slots_and_groove_of_a_stile() -> None:
    """From the blank's foot 12 more than from the finished foot; slots 62 x 12, r 6, 46 deep."""
    stile = files()["S1-stile-with-pull-inner-edge.dxf"]
    assert (stile.length, stile.width) == (2126.0, 40.0)
    slots = sorted(stile.on("slot_d46"), key=lambda r: r.box)
    assert [(r.box[0] - 12, r.box[2] - 12) for r in slots] == [
        pytest.approx(span)
        for span in ((40, 102), (158, 220), (754, 816), (1385, 1447), (2011, 2073))
    ]
    for slot in slots:
        assert slot.area == pytest.approx((62 - 12) * 12 + math.pi * 6**2, abs=1e-3)
        assert slot.centre[1] == pytest.approx(20.0)
    (groove,) = stile.on("groove_d14")
    assert (groove.box[0] - 12, groove.box[2] - 12) == pytest.approx((226.0, 714.0))
    # Routed with a cutter of 8 the ends are round; chopping them square is on the bench list.
    assert groove.area == pytest.approx(488 * 8.2 - (4 - math.pi) * 4**2, abs=1e-3)


@pytest.mark.kernel
def test_blank_less_files_less_bench_work_is_the_solid() -> None:
    """For every part type: what the files take, what saw and bench take, and the kernel's volume."""
    from parametric.solids.shape import part_solid, volume

    pockets = {
        name: sum(
            files()[f"{name.replace(' ', '-')}-{side}.dxf"].volume for side in ("front", "back")
        )
        for name in ("leaf A", "leaf B")
    }
    checked = 0
    for kind in part_types(assembly()):
        part = kind.part
        routed_away = sum(
            read_back.volume
            for file, read_back in files().items()
            if file.startswith(f"{part.mark}-")
        )
        at_the_bench = sum(
            removed_volume(cut, part.blank) for cut in part.cuts if file_cut(cut, part) is None
        )
        at_the_bench += sum(
            squaring(cut, part.blank, part.cuts)
            for cut in part.cuts
            if isinstance(cut, Groove) and cut.squared and routed(cut) is not None
        )
        on_the_leaf = pockets[part.name.split(" / ")[0]] if part.noun == "stile with pull" else 0.0
        left = part.blank.volume - routed_away - at_the_bench - on_the_leaf
        assert left == pytest.approx(part.volume, rel=1e-9), part.name
        assert left == pytest.approx(volume(part_solid(part)), rel=1e-6), part.name
        checked += 1
    assert checked == 11
