"""Stub tenons in the panel groove: sizes, cuts and faces that meet, on a wardrobe's pair of doors
in mm and on a cupboard's door in inches. The sums are worked by hand beside each number.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from parametric.job import Job, check
from parametric.model import Groove, Part, Shaped
from parametric.trade.cutlist import cut_list
from parametric.trade.paperwork import paperwork
from parametric.trade.seasons import stile_growth

HERE = Path(__file__).parent
WARDROBE, CUPBOARD = HERE / "wardrobe-pair.yaml", HERE / "cupboard-door.yaml"
INCH = 25.4


def job_of(path: Path, folder: Path, *changes: tuple[str, str]) -> Job:
    text = path.read_text(encoding="utf-8")
    for old, new in changes:
        assert old in text, old
        text = text.replace(old, new, 1)
    design = folder / "design.yaml"
    design.write_text(text, encoding="utf-8")
    return check(design, user_house=False)


def sizes(job: Job) -> dict[str, set[tuple[float, float, float]]]:
    assert job.assembly is not None, [p.message for p in job.problems]
    found: dict[str, set[tuple[float, float, float]]] = {}
    for row in cut_list(job.assembly):
        size = (float(row.length), float(row.width), float(row.thickness))
        found.setdefault(row.noun, set()).add(tuple(round(s, 6) for s in size))  # type: ignore[arg-type]
    return found


def part(job: Job, name: str) -> Part:
    assert job.assembly is not None
    return next(one for one in job.assembly.parts if one.name == name)


def test_a_wardrobes_pair(tmp_path: Path) -> None:
    job = job_of(WARDROBE, tmp_path)
    found = sizes(job)
    # A case 789 wide and 2273 high: (789 - 2*1.5 - 3)/2 = 391.5 wide, 2273 - 2*1.5 = 2270 high.
    assert found["stile"] == {(2270.0, 80.0, 22.0)}
    # 391.5 - 2*80 + 2*10 = 251.5
    assert {size for noun in ("top rail", "mid rail", "bottom rail") for size in found[noun]} == {
        (251.5, 80.0, 22.0)
    }
    # 391.5 - 2*80 + 2*10 - 2 = 249.5; (2270 - 3*80)/2 + 2*10 - 2 = 1033
    assert found["board panel"] == {(1033.0, 249.5, 9.0)}
    assert "loose tenon" not in found
    # (2*80*2270 + 3*80*(391.5 - 160))*22*480/10**9 = 4.42; 2*249.5*1033*9*750/10**9 = 3.48.
    assert job.resolved is not None
    leaf = job.resolved.door.leaves[0]
    assert float(leaf.weights.frame) == pytest.approx(4.42, abs=0.005)
    assert float(leaf.weights.panels) == pytest.approx(3.48, abs=0.005)
    assert float(leaf.weights.estimate) == pytest.approx(7.90, abs=0.005)
    assert float(stile_growth(leaf, job.resolved.shop)) > 0


def test_a_cupboards_door_in_inches(tmp_path: Path) -> None:
    found = sizes(job_of(CUPBOARD, tmp_path))
    # 21.25 - 2*3/32 = 21.0625 wide, 23.5 - 2*3/32 = 23.3125 high.
    assert found["stile"] == {tuple(round(s * INCH, 6) for s in (23.3125, 2.25, 0.75))}
    # 21.0625 - 2*2.25 + 2*0.375 = 17.3125
    assert found["top rail"] == {tuple(round(s * INCH, 6) for s in (17.3125, 2.25, 0.75))}
    # 17.3125 - 2*0.0625... = 17.1875 wide, 23.3125 - 2*2.25 + 2*0.375 - 2*0.0625 = 19.4375 high.
    assert found["board panel"] == {tuple(round(s * INCH, 6) for s in (19.4375, 17.1875, 0.25))}


def test_the_groove_runs_from_end_to_end_and_through_the_tenons(tmp_path: Path) -> None:
    job = job_of(WARDROBE, tmp_path, ("trim: 0", "trim: 6"))
    (groove,) = (c for c in part(job, "leaf A / left stile").cuts if isinstance(c, Groove))
    # A blank of 2270 + 2*6, the groove between the trims.
    assert (float(groove.u0), float(groove.u1)) == (6.0, 2276.0)
    assert (float(groove.width), float(groove.depth), float(groove.v)) == (9.0, 10.0, 11.0)
    assert not groove.squared
    rail = part(job, "leaf A / mid rail")
    cheeks = [c for c in rail.cuts if isinstance(c, Shaped)]
    # (22 - 9)/2 = 6.5 off either face, 10 from either end.
    assert sorted((c.face, float(min(v.x for v in c.outline)), float(c.depth)) for c in cheeks) == [
        ("high face", 0.0, 6.5),
        ("high face", 241.5, 6.5),
        ("low face", 0.0, 6.5),
        ("low face", 241.5, 6.5),
    ]
    edges = [c for c in rail.cuts if isinstance(c, Groove)]
    assert {(c.face, float(c.u0), float(c.u1)) for c in edges} == {
        ("low edge", 0.0, 251.5),
        ("high edge", 0.0, 251.5),
    }
    # 80 x 251.5 x 22 less four cheeks 10 x 80 x 6.5 and two grooves 251.5 x 9 x 10.
    assert rail.volume == pytest.approx(80 * 251.5 * 22 - 4 * 10 * 80 * 6.5 - 2 * 251.5 * 9 * 10)


def test_what_the_bench_is_told(tmp_path: Path) -> None:
    job = job_of(WARDROBE, tmp_path)
    assert job.resolved is not None
    assert job.assembly is not None
    paper = paperwork(job.resolved, job.assembly, job.loads)
    assert paper.loose_tenons == ()
    cheeks = [s for s in paper.milling if s.title == "stub tenon cheek"]
    # One setting for six rails, four cheeks each.
    assert [(s.by, int(s.cuts), float(s.depth or 0)) for s in cheeks] == [("saw", 24, 6.5)]
    assert any("dado set" in caution.lower() for caution in cheeks[0].cautions)
    (groove,) = (s for s in paper.milling if s.kind == "groove")
    assert not groove.stopped
    assert not [line for line in paper.stops if line.cut.startswith("slot")]
    glued = paper.leaf_glue_ups[0]
    # Three rails, a tenon at either end.
    assert (int(glued.slots), glued.goes_in) == (6, "tenons")
    assert not any("slot" in step for step in glued.steps)


@pytest.mark.parametrize(
    ("change", "says"),
    [
        (("panel: equal", "lite: equal"), "A stub tenon beside a lite"),
        (("trim: 0", "sticking: ovolo\n  trim: 0"), "A stub tenon in moulded stiles"),
    ],
)
def test_what_it_cannot_stand_in_is_said(
    tmp_path: Path, change: tuple[str, str], says: str
) -> None:
    extra = (("joint:", "glass: {kind: toughened, thickness: 4}\njoint:"),)
    job = job_of(WARDROBE, tmp_path, change, *extra)
    found = [p for p in job.problems if p.level == "stop"]
    assert [p.code for p in found] == ["not_built_yet"], [p.message for p in found]
    assert says in found[0].message
    assert found[0].where is not None


def test_loose_tenons_are_not_counted_on_it(tmp_path: Path) -> None:
    job = job_of(WARDROBE, tmp_path, ("- bottom rail: 80", "- {bottom rail: 80, tenons: 2}"))
    (found,) = (p for p in job.problems if p.level == "stop")
    assert found.code == "tenons_of_another_joint"


@pytest.mark.kernel
@pytest.mark.parametrize("path", [WARDROBE, CUPBOARD], ids=lambda p: p.stem)
def test_faces_meet_and_nothing_overlaps(path: Path, tmp_path: Path) -> None:
    """Shoulders close on the stile, cheeks and the tenon's end lie in its groove; see the areas."""
    from parametric.solids.clash import (
        clashes,
        contact_area,
        gap,
        standing,
    )
    from parametric.solids.solid_set import build_solids

    job = job_of(path, tmp_path)
    assert job.assembly is not None
    assert job.resolved is not None
    shut = job.assembly.states[0]
    solids = build_solids(job.assembly.parts)
    assert clashes(job.assembly, shut, solids) == ()
    there = {one.part.name: one for one in standing(job.assembly, shut)}
    leaf = job.resolved.door.leaves[0]
    rail, stile = there["leaf A / bottom rail"], there["leaf A / left stile"]
    assert gap(rail, stile, solids) <= 1e-3
    unit = INCH if path == CUPBOARD else 1.0
    high, thick, groove, deep = (
        (2.25 * unit, 0.75 * unit, 0.25 * unit, 0.375 * unit)
        if path == CUPBOARD
        else (80.0, 22.0, 9.0, 10.0)
    )
    # Two shoulders (thick - groove) x high in all; the tenon, less the groove at its upper edge:
    # two cheeks and its end.
    tenon = high - deep
    area = (thick - groove) * high + 2 * deep * tenon + groove * tenon
    assert contact_area(rail, stile, solids) == pytest.approx(area, rel=1e-6)
    panel = there[leaf.panels[-1].name]
    assert gap(panel, stile, solids) <= 1e-3
