"""Corners a cutter cannot make, relieved: a pocket's on the diagonal, a groove's along it.

A circle of radius R through a square corner, its middle on the diagonal at R / root 2 from
either wall, reaches R (1 - 1 / root 2) past them and cuts the walls R root 2 from the corner:
half of it stands outside the chord, so a corner gains pi R2 / 2 - R2. Plane geometry.
"""

from __future__ import annotations

import dataclasses
import math
from functools import cache
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from parametric.cnc.bench_work import bench_work
from parametric.cnc.notes import Stamp
from parametric.cnc.setups import set_ups
from parametric.cnc.tool_list import (
    BENCH_LIST_HEADER,
    TOOL_LIST_HEADER,
    bench_list,
    tool_list,
)
from parametric.job import Job, check
from parametric.model import Assembly, Groove, Making, Pocket, relief_past, removed_volume
from parametric.outlines import bounds_of
from parametric.pack.verifying.known import known_design
from parametric.pack.verifying.outlines import relieved_rectangle
from parametric.pack.verifying.rebuilt import check_cutting
from parametric.trade.fingerprint import _cut as counted
from parametric.trade.fingerprint import fingerprint, mark
from parametric.writers.csv import write_csv
from parametric.writers.dxf import write_cnc_dxf
from tests.cnc.pieces import ODD, odd_block
from tests.invariants.designs import bypass_designs
from tests.readers.cnc_dxf import read

ROOT = Path(__file__).parents[2]
DESIGN = ROOT / "examples/larch-hill-reading-room/design.yaml"
HOUSE = ROOT / "examples/house.yaml"


def pocket(corner: float, relief: float, *, length: float = 40.0, width: float = 30.0) -> Pocket:
    return Pocket(
        name="pocket",
        face="high face",
        u=110.0,
        v=45.0,
        length=length,
        width=width,
        corner=corner,
        depth=7.0,
        relief=relief,
        making=Making(by="router", cutter=2 * relief if relief else 6.0),
    )


def test_a_square_corner_by_hand() -> None:
    """R 4: each corner gains 8 pi - 16 = 9.13; 4 x 0.2929 = 1.1716 past each wall."""
    cut = pocket(0.0, 4.0)
    assert removed_volume(cut, ODD) == pytest.approx((1200 + 4 * (8 * math.pi - 16)) * 7)
    (made,) = set_ups(odd_block((cut,)))[0].operations
    past = 4 * (1 - math.sqrt(0.5))
    assert past == pytest.approx(1.1716, abs=1e-4)
    assert bounds_of(made.outline) == pytest.approx((90 - past, 30 - past, 130 + past, 60 + past))
    # half circles, from 4 root 2 along one wall to 4 root 2 along the other
    assert [v.bulge for v in made.outline if v.bulge] == pytest.approx([1.0] * 4)
    assert made.outline[0][:2] == pytest.approx((130 - 4 * math.sqrt(2), 30.0))
    assert (made.cutter, made.corner) == (8, 4)
    assert made.note == "run the cutter into the corners, as drawn"


CORNERS = st.tuples(st.integers(0, 6000), st.integers(10, 3000)).map(
    lambda t: (t[0] / 1000, (t[0] + t[1]) / 1000)
)


@given(CORNERS)
def test_all_that_the_corner_needs_is_cut_and_little_more(sizes: tuple[float, float]) -> None:
    """Every point of the corner's own arc lies in the cutter's circle, and the volume in the file."""
    corner, relief = sizes
    cut = pocket(corner, relief)
    (made,) = set_ups(odd_block((cut,)))
    inset = relief - relief_past(corner, relief)
    for step in range(19):
        turn = math.radians(5 * step)
        x, y = (corner * (1 - math.sin(turn)), corner * (1 - math.cos(turn)))
        assert math.hypot(x - inset, y - inset) <= relief + 1e-9
    (back,) = read(write_cnc_dxf(made, STAMP)).removals
    assert back.volume == pytest.approx(removed_volume(cut, ODD), rel=1e-6)
    assert back.area == pytest.approx(relieved_rectangle(40.0, 30.0, corner, relief).area, rel=1e-6)
    bare = removed_volume(dataclasses.replace(cut, relief=0.0), ODD)
    assert 0 < removed_volume(cut, ODD) - bare < 4 * relief**2 * 7


STAMP = Stamp(job="Larch Hill reading room", fingerprint="0123-4567", revision="B")


def test_a_relief_no_larger_than_the_corner_changes_nothing() -> None:
    plain, relieved = pocket(3.0, 0.0), pocket(3.0, 3.0)
    assert removed_volume(plain, ODD) == removed_volume(relieved, ODD)
    assert set_ups(odd_block((plain,))) == set_ups(odd_block((relieved,)))


def test_reliefs_that_meet_are_refused() -> None:
    """R 4 in square corners takes 4 root 2 = 5.66 of each side: 11.31 of 11."""
    with pytest.raises(ValueError, match="do not fit"):
        set_ups(odd_block((pocket(0.0, 4.0, width=11.0),)))


@pytest.mark.kernel
@pytest.mark.parametrize(("corner", "relief"), [(0.0, 4.0), (3.3, 4.0), (2.0, 6.0)])
def test_the_solid_has_it(corner: float, relief: float) -> None:
    from parametric.solids.shape import part_solid, volume

    part = odd_block((pocket(corner, relief),)).parts[0]
    assert volume(part_solid(part)) == pytest.approx(part.volume, rel=1e-9)


# --- Larch Hill, relieved -------------------------------------------------------------------


@cache
def job(text: tuple[str, str], folder: Path) -> Job:
    path = folder / "design.yaml"
    written = DESIGN.read_text(encoding="utf-8").replace(*text)
    path.write_text(f"{written}router: {{inside corners: relieve}}\n", encoding="utf-8")
    return check(path, house=HOUSE, user_house=False)


@pytest.fixture(scope="module")
def relieved(tmp_path_factory: pytest.TempPathFactory) -> Job:
    """With the 8 cutter that the brief refuses for its pull, corners kept."""
    made = job(("cutter: 6}\nfinish", "cutter: 8}\nfinish"), tmp_path_factory.mktemp("relieved"))
    assert made.exit_status == 0, made.problems
    return made


def assembly(of: Job) -> Assembly:
    assert of.assembly is not None
    return of.assembly


def test_the_stile_groove_runs_on_under_the_rails(relieved: Job) -> None:
    """226 - 8 / 2 = 222 to 714 + 4 = 718; the slots keep 6 clear: 222 - 6 = 216, 718 + 6 = 724.

    The bottom rail's upper slot is then 154 to 216, and the lock rail's stands in the middle of
    724 to 850: 787, 756 to 818. The end of the groove, 222, stays under the rail's 0 to 240.
    """
    stile = assembly(relieved).groups[0].parts[0]
    (groove,) = (c for c in stile.cuts if isinstance(c, Groove) and c.name == "panel groove")
    assert (groove.u0 - 12, groove.u1 - 12) == (222, 718)
    assert (groove.corner, groove.squared) == (4, False)
    ends = [(c.u0 - 12, c.u1 - 12) for c in stile.cuts if c.name.startswith("slot")]
    assert ends[:3] == [(40, 102), (154, 216), (756, 818)]
    # no end is left for a chisel
    assert not any(c.what.startswith("chop") for c in bench_work(assembly(relieved)))


def test_the_panels_square_corner_goes_home(relieved: Job) -> None:
    """The tongue, 8 thick and ending 1.5 short of 226, lies where the groove is still 8.2 wide."""
    stile = assembly(relieved).groups[0].parts[0]
    (groove,) = (c for c in stile.cuts if isinstance(c, Groove) and c.name == "panel groove")
    straight_from = groove.u0 - 12 + groove.corner
    assert straight_from == 226
    assert straight_from <= 227.5


def test_the_pull_pocket_of_the_8_cutter(relieved: Job) -> None:
    """(4 - 3.3) (1 - 1 / root 2) = 0.205 past its sides; the flange lies 4.7 past them."""
    assert "corners_relieved" in {p.code for p in relieved.problems}
    front = next(s for s in set_ups(assembly(relieved)) if s.file == "leaf-A-front.dxf")
    body = next(op for op in front.operations if op.name == "pull body")
    x0, y0, x1, y1 = bounds_of(body.outline)
    past = 0.7 * (1 - math.sqrt(0.5))
    assert (x1 - x0, y1 - y0) == pytest.approx((32.6 + 2 * past, 150.6 + 2 * past))
    assert (body.cutter, body.corner) == (8, 4)


def files(of: Job, cut: Assembly) -> dict[str, bytes]:
    assert of.resolved is not None
    stamp = Stamp(
        job=of.resolved.job, fingerprint=mark(fingerprint(of.resolved, assembly(of))), revision="B"
    )
    found = set_ups(cut, of.resolved.shop.router.cutters)
    return {
        **{f"cnc/{one.file}": write_cnc_dxf(one, stamp) for one in found},
        "cnc/tool-list.csv": write_csv(TOOL_LIST_HEADER, tool_list(found)),
        "cnc/saw-and-bench-work.csv": write_csv(BENCH_LIST_HEADER, bench_list(bench_work(cut))),
    }


def test_relieved_files_read_back_and_unrelieved_ones_do_not(relieved: Job) -> None:
    assert relieved.resolved is not None
    known = known_design(relieved.resolved, assembly(relieved), relieved.loads)
    assert check_cutting(files(relieved, assembly(relieved)), known).faults == ()

    def left(cut: object) -> object:
        if isinstance(cut, Pocket) and cut.relief:
            making = dataclasses.replace(cut.making, cutter=6.0)
            return dataclasses.replace(cut, relief=0.0, making=making)
        return cut

    groups = tuple(
        dataclasses.replace(
            g,
            parts=tuple(
                dataclasses.replace(p, cuts=tuple(left(c) for c in p.cuts))  # type: ignore[misc]
                for p in g.parts
            ),
        )
        for g in assembly(relieved).groups
    )
    spoiled = files(relieved, dataclasses.replace(assembly(relieved), groups=groups))
    faults = "\n".join(check_cutting(spoiled, known).faults)
    assert "leaf-A-front.dxf: pull body of leaf A / left stile" in faults


@settings(max_examples=15, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(bypass_designs())
def test_random_designs_relieved_read_back_and_hide_it(tmp_path: Path, text: str) -> None:
    """Files, lists and parts agree; a groove ends under its rail, and off its slots by what was asked."""
    path = tmp_path / "design.yaml"
    path.write_text(f"{text}router: {{inside corners: relieve}}\n", encoding="utf-8")
    made = check(path, user_house=False)
    if made.exit_status:
        return
    assert made.resolved is not None
    known = known_design(made.resolved, assembly(made), made.loads)
    assert check_cutting(files(made, assembly(made)), known).faults == ()
    for leaf in made.resolved.door.leaves:
        for field in leaf.panels:
            rails = [r for r in leaf.rails if r.top == field.foot or r.foot == field.top]
            assert min(r.foot for r in rails) <= field.groove_low
            assert field.groove_high <= max(r.top for r in rails)
            for slot in (slot for rail in rails for slot in rail.slots):
                clear = max(field.groove_low - slot.high, slot.low - field.groove_high)
                assert clear >= leaf.joint.off_groove - 1e-9


@pytest.mark.parametrize(
    ("change", "says"),
    [
        # the flange 0.1 past the pocket's sides: 0.2 of relief would be seen
        (
            ("flange: 160 x 42 x 1.5", "flange: 160 x 32.8 x 1.5"),
            "0.2 past its sides and show beside the flange",
        ),
        (("flange corner: 6,", "flange corner: 3,"), "a relief there is seen"),
    ],
)
def test_a_relief_that_would_show_is_refused(
    change: tuple[str, str], says: str, tmp_path: Path
) -> None:
    text = DESIGN.read_text(encoding="utf-8").replace("cutter: 6}\nfinish", "cutter: 8}\nfinish")
    assert change[0] in text
    path = tmp_path / "design.yaml"
    text = text.replace(*change)
    path.write_text(f"{text}router: {{inside corners: relieve}}\n", encoding="utf-8")
    found = check(path, house=HOUSE, user_house=False)
    assert found.exit_status == 1
    assert any(says in p.message for p in found.problems if p.code == "cutter_too_big")


def test_kept_corners_refuse_the_8_cutter(tmp_path: Path) -> None:
    path = tmp_path / "design.yaml"
    text = DESIGN.read_text(encoding="utf-8").replace("cutter: 6}\nfinish", "cutter: 8}\nfinish")
    path.write_text(text, encoding="utf-8")
    found = check(path, house=HOUSE, user_house=False)
    (refused,) = (p for p in found.problems if p.code == "cutter_too_big" and p.level == "stop")
    assert refused.message.startswith("A cutter of 8 leaves a corner of 4; the pull's is 3.3.")
    assert "inside corners: relieve" in refused.fix


def test_designs_signed_before_there_were_reliefs_keep_their_mark() -> None:
    """A pocket as it was before it knew of reliefs counts for the same; a relief does not."""
    fields = [f.name for f in dataclasses.fields(Pocket) if f.name != "relief"]
    before = dataclasses.make_dataclass("Pocket", fields)
    now = pocket(3.0, 0.0)
    assert counted(before(*(getattr(now, name) for name in fields))) == counted(now)
    assert counted(now) != counted(pocket(3.0, 4.0))
